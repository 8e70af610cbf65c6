"""Where an edition still speaks of another league, as it may after it was started from that one's pages."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from pathlib import Path

from build_tools.loading.reading import Reading

_OWN_RECORD = "history"


def still_named(folder: Path, names: Collection[str], handbook: Reading) -> Iterator[str]:
    """Yield a remark for each line of an edition's files that names another league.

    folder: the edition's. names: of the other leagues.
    """
    if not names:
        return
    named = re.compile(rf"\b({'|'.join(map(re.escape, sorted(names, key=len, reverse=True)))})\b")
    for path in sorted(folder.rglob("*")):
        if path.suffix not in (".md", ".yml") or path.is_symlink() or _OWN_RECORD in path.parts:
            continue
        lines = path.read_text(encoding="utf-8", errors="replace").splitlines()
        for number, line in enumerate(lines, 1):
            if found := named.search(line):
                yield f"{handbook.told(path)} line {number} still names {found[1]}. Write your own words there."

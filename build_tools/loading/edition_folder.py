"""What an edition's folder must be like: its name, the address it is built for, no file that nobody reads."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from build_tools.editions.league import League
from build_tools.loading.mistakes import Mistake
from build_tools.loading.reading import Loaded, Reading
from build_tools.loading.slugs import slug_of
from build_tools.schema.common import SLUG
from build_tools.schema.kinds import LIST_FILES

_NOT_A_FOLDER = re.compile(r"[?#]|://[^/]+/(?:.*/)?(?:[^/]*\.[^/]*|[^/]*\.html?/+)$")


def check_name(content: Path, folder: Path) -> Iterator[Mistake]:
    """Yield the mistake of a folder that is there and has a name that no edition can have."""
    there = {path.name for path in folder.parent.glob("*") if path.is_dir()}
    if folder.name in there and not SLUG.fullmatch(folder.name):
        expected = "a folder named in the letters a to z, words joined by hyphens; rename the folder"
        told = Path(content.name) / folder.relative_to(content)
        yield Mistake(told, 1, "", expected, f'"{folder.name}"', slug_of(folder.name) or None)


def check_address(reading: Reading, league: Loaded[League]) -> Iterator[Mistake]:
    """Yield the mistake of an address that is not that of a folder."""
    address = league.model.site_url
    if address and _NOT_A_FOLDER.search(address):
        expected = (
            "the address of the edition's folder alone, like https://example.org/handbook/; "
            "take off the file's name and all from ? or # on"
        )
        path, line = reading.told(league.path), league.line(("site_url",))
        yield Mistake(path, line, "site_url", expected, f'"{address}"')


def unread(reading: Reading, folder: Path) -> Iterator[str]:
    """Say which files in an edition's lists/ and rules/ nobody reads."""
    lists = {folder / name for name in LIST_FILES.values()}
    for path in sorted((*(folder / "lists").glob("*"), *(folder / "rules").glob("*"))):
        is_rule_set = path.parent.name == "rules" and path.suffix == ".yml"
        if not (path in lists or is_rule_set or path.name.startswith(".")):
            yield f"{reading.told(path)} is not read; rename it or take it out."

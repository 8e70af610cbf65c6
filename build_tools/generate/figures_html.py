"""Grip figures as HTML, for either hand, kept from one build to the next.

A figure takes half a second to work out and seldom changes. It is kept under a mark of everything it is made
from: the entry, the code that draws, and the language's words. The drawing itself is `build_tools.figures`.
"""

from __future__ import annotations

import hashlib
from html import escape
from pathlib import Path

from build_tools.figures import grip_figures
from build_tools.generate.writer import Edition
from build_tools.schema.grip import Grip

_CODE = Path(__file__).resolve().parent.parent / "figures"


class FigureStore:
    """Figures already drawn, in a folder of the build.

    folder: where they are kept; made when the first one is.
    """

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._used: set[Path] = set()
        code = b"".join(path.read_bytes() for path in sorted((*_CODE.glob("*.py"), Path(__file__))))
        self._code_mark = hashlib.sha256(code).digest()

    def html(self, grip: Grip, edition: Edition) -> str:
        """Return the figures of a grip; empty where the entry does not say where the fingers are."""
        if grip.hold is None:
            return ""
        entry = grip.model_dump_json(exclude={"reviewed", "order", "cues", "drills", "faults"})
        made_from = (self._code_mark, edition.words_mark, entry.encode())
        mark = hashlib.sha256(b"\0".join(made_from)).hexdigest()[:24]
        kept = self._folder / f"{mark}.html"
        self._used.add(kept)
        if kept.is_file():
            return kept.read_text(encoding="utf-8")
        drawn = _drawn(grip, edition)
        self._folder.mkdir(parents=True, exist_ok=True)
        kept.write_text(drawn, encoding="utf-8")
        return drawn

    def forget_others(self) -> None:
        """Remove the figures that nothing asked for since this store was opened."""
        for path in self._folder.glob("*.html"):
            if path not in self._used:
                path.unlink()


def _drawn(grip: Grip, edition: Edition) -> str:
    """Both hands of a view side by side: they are nearly the same letters, and pack best as neighbours."""
    views = zip(*(grip_figures(grip, hand, edition.catalogue) for hand in ("right", "left")), strict=True)
    return "".join(
        f'<figure><div class="for-right">{right.svg}</div><div class="for-left">{left.svg}</div>'
        f"<figcaption>{escape(edition.speak(right.caption))}</figcaption></figure>"
        for right, left in views
    )

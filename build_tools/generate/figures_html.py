"""Grip figures as HTML, for either hand, kept from one build to the next.

A figure takes half a second to work out and seldom changes. It is kept under a mark of everything it is made
from: the entry, the code that draws, and the language's words. The drawing itself is `build_tools.figures`.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from html import escape
from pathlib import Path

from build_tools.figures import grip_figures
from build_tools.figures.scene import View
from build_tools.figures.small_figure import small_figure
from build_tools.generate.writer import Edition
from build_tools.schema.grip import Grip

_NOT_DRAWN = {"reviewed", "review_by", "draft", "order", "cues", "drills", "faults"}
_CODE = Path(__file__).resolve().parent.parent / "figures"


class FigureStore:
    """Figures already drawn, in a folder of the build.

    folder: where they are kept; made when the first one is.
    beside: another build's folder, from which figures are taken where they are there already.
    """

    def __init__(self, folder: Path, beside: Path | None = None) -> None:
        self._folder = folder
        self._beside = beside
        self._used: set[Path] = set()
        code = b"".join(path.read_bytes() for path in sorted((*_CODE.glob("*.py"), Path(__file__))))
        self._code_mark = hashlib.sha256(code).digest()

    def html(self, grip: Grip, edition: Edition) -> str:
        """Return the figures of a grip; empty where the entry does not say where the fingers are."""
        return self._kept(grip, edition, "views", lambda: _drawn(grip, edition))

    def small(self, grip: Grip, edition: Edition, view: View = "pitcher") -> str:
        """Return one view of a grip, small and without words; empty where `html` is."""
        return self._kept(grip, edition, view, lambda: small_figure(grip, edition.catalogue, view))

    def _kept(self, grip: Grip, edition: Edition, what: str, draw: Callable[[], str]) -> str:
        if grip.hold is None:
            return ""
        entry = grip.model_dump_json(exclude=_NOT_DRAWN)
        made_from = (self._code_mark, edition.words_mark, entry.encode(), what.encode())
        mark = hashlib.sha256(b"\0".join(made_from)).hexdigest()[:24]
        kept = self._folder / f"{mark}-{what}.html"
        self._used.add(kept)
        if kept.is_file():
            return kept.read_text(encoding="utf-8")
        other = self._beside / kept.name if self._beside else kept
        drawn = other.read_text(encoding="utf-8") if other.is_file() else draw()
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

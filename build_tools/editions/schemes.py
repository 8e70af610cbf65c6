"""The handbook's light and dark colors, read from the style sheet, and a league's color laid over them."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Literal, get_args

from build_tools.places import THEME

Scheme = Literal["light", "dark"]
SCHEMES: tuple[Scheme, ...] = get_args(Scheme)

_SELECTORS: Mapping[Scheme, str] = {
    "light": '[data-md-color-scheme="default"]',
    "dark": '[data-md-color-scheme="slate"]',
}
_GROUNDS = ("paper", "paper-deep", "seam-ink")
"""What a league's color is read on, or stands behind, in either scheme."""


def grounds(style_sheet: Path = THEME / "bendbook.css") -> Mapping[Scheme, Mapping[str, str]]:
    """Return, by scheme, the colors that a league's own color meets, by their names in the style sheet."""
    text = style_sheet.read_text(encoding="utf-8")
    return {scheme: _named(text, selector, _GROUNDS) for scheme, selector in _SELECTORS.items()}


def style(colors: Mapping[Scheme, str], style_sheet: Path = THEME / "bendbook.css") -> str:
    """Return the style sheet of an edition with these colors.

    The seam of a drawn ball keeps its own red: it is a picture of a thing, not a part of the look.
    """
    text = style_sheet.read_text(encoding="utf-8")
    rules = []
    for scheme, selector in _SELECTORS.items():
        seam = _named(text, selector, ("seam",))["seam"]
        rules.append(f"{selector} {{ --seam: {colors[scheme]}; }}")
        rules.append(f"{selector} svg.drawing {{ --seam: {seam}; }}")
    paper = f"[data-md-color-scheme] {{ --seam: {colors['light']}; }}"
    rules.append(f"@media print {{ {paper} [data-md-color-scheme] svg.drawing {{ --seam: #000; }} }}")
    return "\n".join(rules) + "\n" + (style_sheet.parent / "edition.css").read_text(encoding="utf-8")


def _named(text: str, selector: str, names: tuple[str, ...]) -> dict[str, str]:
    start = text.index("{", text.index(selector)) + 1
    block = text[start : text.index("}", start)]
    found = dict(re.findall(r"--([a-z-]+):\s*(#[0-9a-f]{6});", block))
    return {name: found[name] for name in names}

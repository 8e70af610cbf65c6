"""The look's own files: the style sheets, and the typefaces it names, from the theme or from npm."""

from __future__ import annotations

import re
from pathlib import Path

_FONT = re.compile(r'url\("fonts/([^"]+)"\)')


class MissingFontError(Exception):
    """The style sheet names a typeface that is nowhere to be found."""


def assets(theme: Path, node_modules: Path) -> dict[str, bytes]:
    """Return path inside docs/ to content.

    theme: holds bendbook.css, print.css and assets/. node_modules: holds @fontsource packages.
    Raises MissingFontError, naming the file.
    """
    style = theme / "bendbook.css"
    found = {f"assets/{sheet.name}": sheet.read_bytes() for sheet in (style, theme / "print.css")}
    for path in sorted((theme / "assets").rglob("*")):
        if path.is_file():
            found[f"assets/{path.relative_to(theme / 'assets').as_posix()}"] = path.read_bytes()
    for name in _FONT.findall(style.read_text(encoding="utf-8")):
        if f"assets/fonts/{name}" not in found:
            found[f"assets/fonts/{name}"] = _font(name, node_modules)
    return found


def _font(name: str, node_modules: Path) -> bytes:
    for path in node_modules.glob(f"@fontsource/*/files/{name}"):
        return path.read_bytes()
    raise MissingFontError(f"There is no {name} under {node_modules}/@fontsource. Run: npm ci")

"""A league's logo: an SVG cleaned of everything that could act, or a PNG; anything else is refused.

What stays of an SVG is a list of drawing elements and attributes; what is not on it goes. A file with a
document type is refused, because a few lines of one can stand for gigabytes.
"""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ElementTree
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

MOST_BYTES = 200_000
DEEPEST = 200
LONGEST_NAME = 100
_PNG = b"\x89PNG\r\n\x1a\n"
_SVG = "http://www.w3.org/2000/svg"
_XLINK = "http://www.w3.org/1999/xlink"

_SHAPE_NAMES = "circle ellipse line path polygon polyline rect text use"
_OTHER_NAMES = "svg g defs symbol title desc tspan clipPath mask linearGradient radialGradient stop style"
_ATTRIBUTE_NAMES = """
    class clip-path clip-rule clipPathUnits cx cy d dx dy fill fill-opacity fill-rule font-family font-size
    font-style font-weight fx fy gradientTransform gradientUnits height href id letter-spacing mask
    maskContentUnits maskUnits offset opacity points preserveAspectRatio r rx ry spreadMethod stop-color
    stop-opacity stroke stroke-dasharray stroke-linecap stroke-linejoin stroke-miterlimit stroke-opacity
    stroke-width style text-anchor transform version viewBox width x x1 x2 y y1 y2
"""
_SHAPES = frozenset(_SHAPE_NAMES.split())
_ELEMENTS = _SHAPES | frozenset(_OTHER_NAMES.split())
_ATTRIBUTES = frozenset(_ATTRIBUTE_NAMES.split())
_REACHES_OUT = re.compile(
    r"url\(\s*(?!['\"]?#)|(?:image|image-set|cross-fade|src)\(|@import|expression|javascript:|\\",
    re.IGNORECASE,
)


class LogoError(Exception):
    """The logo cannot be used. `expected` and `found` are the halves of a mistake."""

    def __init__(self, expected: str, found: str) -> None:
        self.expected = expected
        self.found = found
        super().__init__(f"{expected}; found {found}")


@dataclass(frozen=True)
class Logo:
    """A logo as it is put on the site. left_out: what was taken out of it, in words."""

    name: str
    content: bytes
    left_out: str = ""


def read_logo(folder: Path, name: str) -> Logo:
    """Read, check and clean a logo.

    folder: the edition's own folder. name: the file's name in it, whatever its letters.
    Raises LogoError, which says what to do.
    """
    if len(name.encode("utf-8", "replace")) > LONGEST_NAME or not name.isprintable():
        expected = f"a name of at most {LONGEST_NAME} letters, without control characters; rename the file"
        raise LogoError(expected, f'"{ascii(name[:40])[1:-1]}"')
    path = folder / name
    if not path.resolve().is_relative_to(folder.resolve()):
        raise LogoError("a file in the edition's own folder", f'"{name}", which leads out of it')
    if not path.is_file():
        raise LogoError(f"a file of this name in {folder.name}/; put it there or take this line out", "none")
    content = path.read_bytes()
    if len(content) > MOST_BYTES:
        raise LogoError(
            f"a logo of at most {MOST_BYTES // 1000} kB; save it smaller", f"{len(content)} bytes"
        )
    if content.startswith(_PNG):
        if (
            content[12:16] != b"IHDR"
            or content[-8:-4] != b"IEND"
            or b"\0" * 4 in (content[16:20], content[20:24])
        ):
            raise LogoError(
                "a whole PNG, with its IHDR and IEND; save it again", f'"{name}", which is cut short'
            )
        return Logo("logo.png", content)
    if path.suffix.lower() == ".svg":
        return _cleaned(content)
    raise LogoError("an SVG or a PNG; save it as one of these", f'"{name}"')


def _cleaned(content: bytes) -> Logo:
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise LogoError("an SVG saved as UTF-8", "other letters") from error
    if "<!DOCTYPE" in text.upper() or "<!ENTITY" in text.upper():
        mend = "an SVG without a document type; take the line that starts with <!DOCTYPE out"
        raise LogoError(mend, "one with it")
    try:
        root = ElementTree.fromstring(text)
    except ElementTree.ParseError as error:
        raise LogoError("an SVG that can be read; save it again", str(error)) from error
    if root.tag != f"{{{_SVG}}}svg":
        raise LogoError("an SVG, whose outermost element is svg", f'"{_local(root.tag)}"')
    _not_too_deep(root)
    gone: Counter[str] = Counter()
    _clean(root, gone)
    _no_use_in_use(root)
    if not any(_local(element.tag) in _SHAPES for element in root.iter()):
        raise LogoError("an SVG that draws something by itself, without pictures from elsewhere", "nothing")
    if "viewBox" not in root.attrib and not {"width", "height"} <= root.attrib.keys():
        raise LogoError("a viewBox on the svg element, so that it can be made small", "none")
    for element in root.iter():
        _sized(element.get("viewBox"))
    ElementTree.register_namespace("", _SVG)
    ElementTree.register_namespace("xlink", _XLINK)
    left_out = ", ".join(f"{name} ({count})" for name, count in sorted(gone.items()))
    return Logo("logo.svg", ElementTree.tostring(root, encoding="utf-8"), left_out)


def _not_too_deep(root: ElementTree.Element) -> None:
    level = [root]
    for _ in range(DEEPEST):
        level = [child for element in level for child in element]
    if level:
        raise LogoError(f"at most {DEEPEST} elements inside one another; draw it flatter", "more")


def _no_use_in_use(root: ElementTree.Element) -> None:
    """Refuse a shape used again that uses others: a few such lines can stand for millions of shapes."""
    use = f"{{{_SVG}}}use"
    with_use = {element.get("id") for element in root.iter() if element.find(f".//{use}") is not None}
    with_use |= {element.get("id") for element in root.iter(use)}
    for element in root.iter(use):
        for name in ("href", f"{{{_XLINK}}}href"):
            target = element.get(name, "").removeprefix("#")
            if target and target in with_use:
                mend = "use elements that refer to shapes without a use in them; draw that shape out"
                raise LogoError(mend, f'"#{target[:40]}"')


def _sized(box: str | None) -> None:
    if box is None:
        return
    try:
        numbers = [float(number) for number in box.replace(",", " ").split()]
    except ValueError:
        numbers = []
    if len(numbers) != 4 or not all(map(math.isfinite, numbers)) or min(numbers[2:]) <= 0:
        raise LogoError('a viewBox of four numbers, the last two above 0, like "0 0 64 64"', f'"{box[:40]}"')


def _clean(element: ElementTree.Element, gone: Counter[str]) -> None:
    for name in list(element.attrib):
        local = _local(name)
        known = local in _ATTRIBUTES and (not name.startswith("{") or name == f"{{{_XLINK}}}href")
        value = element.attrib[name]
        leads_out = local == "href" and not value.startswith("#")
        if not known or leads_out or _REACHES_OUT.search(value):
            del element.attrib[name]
            gone[local] += 1
    for child in list(element):
        local = _local(child.tag) if isinstance(child.tag, str) else "instruction"
        drawn = isinstance(child.tag, str) and child.tag == f"{{{_SVG}}}{local}" and local in _ELEMENTS
        if not drawn or (local == "style" and _REACHES_OUT.search("".join(child.itertext()))):
            element.remove(child)
            gone[local] += 1
        else:
            _clean(child, gone)


def _local(name: str) -> str:
    return name.rpartition("}")[2]

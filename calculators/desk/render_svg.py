"""Turns a `Drawing` into inline SVG. Colours come from the style sheet through the ink's class name."""

from __future__ import annotations

import math
from collections.abc import Sequence
from html import escape

from calculators.desk.drawing import Circle, Drawing, Ink, Label, Mark, Path, Point
from calculators.words import Catalogue, speak

ARROW_LENGTH = 7.0
ARROW_HALF_WIDTH = 3.0


def svg(drawing: Drawing, catalogue: Catalogue, ident: str) -> str:
    """Return the drawing as one `<svg>` element.

    ident: a name unique on the page; the title and the description carry it.
    """
    size = f"{_n(drawing.left)} {_n(drawing.top)} {_n(drawing.width)} {_n(drawing.height)}"
    marks = "".join(_mark(mark, drawing.text_size, catalogue) for mark in drawing.marks)
    return (
        f'<svg class="drawing" viewBox="{size}" role="img" xmlns="http://www.w3.org/2000/svg"'
        f' aria-labelledby="{ident}-title {ident}-description">'
        f'<title id="{ident}-title">{escape(speak(drawing.title, catalogue))}</title>'
        f'<desc id="{ident}-description">{escape(speak(drawing.description, catalogue))}</desc>'
        f"{marks}</svg>"
    )


def _mark(mark: Mark, text_size: float, catalogue: Catalogue) -> str:
    if isinstance(mark, Path):
        return _path(mark)
    if isinstance(mark, Circle):
        return (
            f'<circle cx="{_n(mark.centre[0])}" cy="{_n(mark.centre[1])}" r="{_n(mark.radius)}"'
            f"{_look(mark.ink, mark.fill, mark.dashed, mark.width)}/>"
        )
    return _label(mark, text_size, catalogue)


def _path(path: Path) -> str:
    if len(path.points) < 2:
        return ""
    route = _smooth(path.points) if path.smooth and len(path.points) > 2 else _straight(path.points)
    if path.closed:
        route += "Z"
    drawn = f'<path d="{route}"{_look(path.ink, path.fill, path.dashed, path.width)}/>'
    return drawn + (_arrow_head(path) if path.arrow else "")


def _straight(points: Sequence[Point]) -> str:
    return "M" + "L".join(f"{_n(x)} {_n(y)}" for x, y in points)


def _smooth(points: Sequence[Point]) -> str:
    """Join the points by cubic curves whose tangents follow the neighbours (Catmull-Rom)."""
    route = f"M{_n(points[0][0])} {_n(points[0][1])}"
    for index in range(len(points) - 1):
        before = points[max(index - 1, 0)]
        start, end = points[index], points[index + 1]
        after = points[min(index + 2, len(points) - 1)]
        first = (start[0] + (end[0] - before[0]) / 6, start[1] + (end[1] - before[1]) / 6)
        second = (end[0] - (after[0] - start[0]) / 6, end[1] - (after[1] - start[1]) / 6)
        route += "C" + " ".join(f"{_n(x)} {_n(y)}" for x, y in (first, second, end))
    return route


def _arrow_head(path: Path) -> str:
    (x0, y0), (x1, y1) = path.points[-2], path.points[-1]
    length = math.hypot(x1 - x0, y1 - y0)
    if length == 0:
        return ""
    along = ((x1 - x0) / length, (y1 - y0) / length)
    base = (x1 - ARROW_LENGTH * along[0], y1 - ARROW_LENGTH * along[1])
    side = (-along[1] * ARROW_HALF_WIDTH, along[0] * ARROW_HALF_WIDTH)
    corners = ((x1, y1), (base[0] + side[0], base[1] + side[1]), (base[0] - side[0], base[1] - side[1]))
    return f'<path class="arrow ink-{path.ink}" d="{_straight(corners)}Z"/>'


def _label(label: Label, text_size: float, catalogue: Catalogue) -> str:
    weight = ' font-weight="700"' if label.bold else ""
    return (
        f'<text class="words ink-{label.ink}" x="{_n(label.at[0])}" y="{_n(label.at[1])}"'
        f' font-size="{_n(text_size * label.size)}" text-anchor="{label.anchor}"{weight}>'
        f"{escape(speak(label.text, catalogue))}</text>"
    )


def _look(ink: Ink, fill: Ink | None, dashed: bool, width: float | None) -> str:
    dash = " dashed" if dashed else ""
    filled = f" fill-{fill}" if fill else ""
    stroke = f' stroke-width="{_n(width)}"' if width is not None else ""
    plain = "" if fill else ' fill="none"'
    return f' class="mark ink-{ink}{filled}{dash}"{plain}{stroke}'


def _n(value: float) -> str:
    text = f"{value:.1f}"
    return text[:-2] if text.endswith(".0") else text

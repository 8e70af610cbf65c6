"""Writes one view as SVG: fills, lines, labels and dials, with no color of its own."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from xml.sax.saxutils import escape

from build_tools.figures.curves import Flat, patch, simplify, smooth
from build_tools.figures.labels import LINE_HEIGHT, Set, breadth
from build_tools.figures.scene import Line, Scene
from build_tools.figures.seam import RADIUS

WIDTH = 320.0
SCALE = 1.55
"""Drawing units to the millimetre: the ball is about a third as wide as the figure."""
TEXT = 13.0
_EDGE = 6.0
_LINE_TOLERANCE = 0.12
_PATCH_TOLERANCE = 0.45

PAPER = "var(--figure-paper, #fffefa)"
SKIN = "var(--figure-skin, #fbf1e4)"
INK = "var(--ink, currentColor)"
SEAM = "var(--seam, currentColor)"
SHADE = "var(--figure-shade, #000)"

NAMESPACES = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
"""`xlink:href` and not `href`, because the theme, changing pages, takes every `href` for a link's address."""


@dataclass(frozen=True)
class Sheet:
    """How millimetres become places on the page: the ball's center, and the sign that mirrors a left hand.

    coarse: how many times farther than usual a line may run from its points; more makes fewer letters.
    """

    center: Flat
    mirrored: bool
    height: float
    coarse: float = 1.0

    def at(self, point: Flat) -> Flat:
        """Return the page's place of a point of the scene."""
        x = self.center[0] + SCALE * point[0]
        return (WIDTH - x if self.mirrored else x, self.center[1] - SCALE * point[1])

    def line(self, line: Line) -> list[Flat]:
        """Return the page's places of a line's points, without those that do not show."""
        return [self.at(point) for point in simplify(line, self.coarse * _LINE_TOLERANCE / SCALE)]

    def patch(self, line: Line) -> list[Flat]:
        """Return the page's places of a patch's corners, coarser, for its edge has a line over it."""
        tolerance = self.coarse * _PATCH_TOLERANCE / SCALE
        return [self.at(point) for point in simplify((*line, line[0]), tolerance)[:-1]]


def _stroke(data: str, name: str, width: float, ink: str = INK) -> str:
    return (
        f'<path class="{name}" d="{data}" fill="none" stroke="{ink}" stroke-width="{width:g}" '
        'stroke-linecap="round" stroke-linejoin="round"/>'
    )


def _lines(sheet: Sheet, lines: Iterable[Line], name: str, width: float, ink: str = INK) -> str:
    data = "".join(smooth(sheet.line(line)) for line in lines)
    return _stroke(data, name, width, ink) if data else ""


def _dashed(sheet: Sheet, lines: Iterable[Line]) -> str:
    """Return the seam where it runs under a finger."""
    return _lines(sheet, lines, "seam-under", 0.9, SEAM).replace("/>", ' stroke-dasharray="2.5 2.5"/>')


def _round(center: Flat, radius: float) -> str:
    return (
        f"M{center[0] - radius:.1f} {center[1]:.1f}"
        f"a{radius:.1f} {radius:.1f} 0 1 0 {2 * radius:.1f} 0"
        f"a{radius:.1f} {radius:.1f} 0 1 0 {-2 * radius:.1f} 0Z"
    )


def hand_and_ball(scene: Scene, sheet: Sheet, name: str) -> str:
    """Return the hand on the ball. `name` starts the ids, which must be the page's only ones.

    A left hand is the right hand's drawing turned over as a whole, so that both are the same letters and a
    page that carries both packs to the size of one.
    """
    drawn = _right_hand_and_ball(scene, replace(sheet, mirrored=False), name)
    return f'<g transform="matrix(-1 0 0 1 {WIDTH:g} 0)">{drawn}</g>' if sheet.mirrored else drawn


def _right_hand_and_ball(scene: Scene, sheet: Sheet, name: str) -> str:
    ball = sheet.at((0.0, 0.0))
    light = (ball[0] - 4.5, ball[1] - 6.0)
    behind = "".join(patch(sheet.patch(line)) for line in scene.behind)
    front = "".join(patch(sheet.patch(line)) for line in scene.front)
    radius = RADIUS * SCALE
    skin = f'fill="{SKIN}" stroke="{SKIN}" stroke-width=".6"'
    return "".join(
        (
            f'<defs><clipPath id="{name}-ball"><path d="{_round(ball, radius)}"/></clipPath>',
            f'<path id="{name}-flesh" d="{front}"/></defs>',
            f'<path class="figure-skin" d="{behind}" {skin}/>' if behind else "",
            f'<path class="figure-ball" d="{_round(ball, radius)}" fill="{PAPER}"/>',
            f'<g class="figure-shade" clip-path="url(#{name}-ball)" fill="{SHADE}" fill-opacity=".09">',
            f'<path d="{_round(ball, radius)}{_round(light, radius)}" fill-rule="evenodd"/></g>',
            _lines(sheet, scene.seam, "seam-line", 1.0, SEAM),
            _lines(sheet, scene.stitches, "seam-stitch", 0.9, SEAM),
            f'<g class="figure-shade" clip-path="url(#{name}-ball)" fill="{SHADE}" fill-opacity=".16">',
            f'<use xlink:href="#{name}-flesh" transform="translate(2.4 3.4)"/></g>',
            f'<use class="figure-skin" xlink:href="#{name}-flesh" {skin}/>',
            _dashed(sheet, scene.under),
            _lines(sheet, scene.ball, "ink-line", 1.6),
            _lines(sheet, scene.outlines, "ink-line", 1.6),
            _lines(sheet, scene.details, "ink-detail", 0.8),
        )
    )


def text(lines: Sequence[str], x: float, y: float, anchor: str) -> str:
    """Return words, one line under the other from the base line y."""
    spans = "".join(
        f'<tspan x="{x:g}"' + (f' dy="{LINE_HEIGHT:g}"' if number else "") + f">{escape(line)}</tspan>"
        for number, line in enumerate(lines)
    )
    return (
        f'<text class="words" x="{x:g}" y="{y:.1f}" text-anchor="{anchor}" font-size="{TEXT:g}" '
        f'fill="{INK}">{spans}</text>'
    )


def note(label: Set) -> str:
    """Return a label in its column and the line from it to what it names, which ends in a dot."""
    left = label.side == "left"
    x = _EDGE if left else WIDTH - _EDGE
    wide = max(breadth(line) for line in label.lines) * TEXT
    middle = label.top - TEXT * 0.32 + LINE_HEIGHT * (len(label.lines) - 1) / 2.0
    start = (x + wide + 3.0 if left else x - wide - 3.0, middle)
    if (label.at[0] < start[0] + 4.0) == left:
        below = label.at[1] > middle
        end = label.top + LINE_HEIGHT * (len(label.lines) - 1) + 4.0 if below else label.top - TEXT
        start = (x + wide * 0.5 if left else x - wide * 0.5, end)
    return (
        f'<path class="ink-leader" d="M{start[0]:.1f} {start[1]:.1f}L{label.at[0]:.1f} {label.at[1]:.1f}" '
        f'fill="none" stroke="{INK}" stroke-width=".8"/>'
        f'<circle class="ink-dot" cx="{label.at[0]:.1f}" cy="{label.at[1]:.1f}" r="1.7" fill="{INK}"/>'
        + text(label.lines, x, label.top, "start" if left else "end")
    )


def _on_dial(center: Flat, radius: float, degrees: float) -> Flat:
    a = math.radians(degrees)
    return (center[0] + radius * math.sin(a), center[1] - radius * math.cos(a))


def _dial(center: Flat, radius: float) -> str:
    ticks = "".join(
        "M{:.1f} {:.1f}L{:.1f} {:.1f}".format(
            *_on_dial(center, radius, hour * 30.0),
            *_on_dial(center, radius - (4.5 if hour % 3 == 0 else 2.5), hour * 30.0),
        )
        for hour in range(12)
    )
    return (
        f'<path class="ink-line" d="{_round(center, radius)}" fill="{PAPER}" stroke="{INK}" '
        'stroke-width="1.2"/>' + _stroke(ticks, "ink-detail", 0.9)
    )


def thumb_dial(center: Flat, radius: float, first_deg: float, last_deg: float) -> str:
    """Return a clock face with two fingers at 12:00 and the thumb at its time, or over its range."""
    fingers = "".join(
        f'<rect x="{center[0] + shift:.1f}" y="{center[1] - radius - 5:.1f}" width="5" height="13" rx="2.5" '
        f'fill="{SKIN}" stroke="{INK}" stroke-width="1.1"/>'
        for shift in (-5.6, 0.6)
    )
    count = 1 + round(abs(last_deg - first_deg) / 5.0)
    turns = [first_deg + (last_deg - first_deg) * k / max(count - 1, 1) for k in range(count)]
    if count > 1:
        arc = [_on_dial(center, radius - 1.0, turn) for turn in turns]
        band = _stroke(smooth(arc), "figure-thumb", 9.0, INK) + _stroke(
            smooth(arc), "figure-thumb", 7.0, SKIN
        )
    else:
        dot = _on_dial(center, radius - 1.0, first_deg)
        band = (
            f'<circle class="figure-thumb" cx="{dot[0]:.1f}" cy="{dot[1]:.1f}" r="4.2" fill="{SKIN}" '
            f'stroke="{INK}" stroke-width="1.1"/>'
        )
    return _dial(center, radius) + fingers + band


def spin_dial(center: Flat, radius: float, toward_deg: float) -> str:
    """Return a clock face with an arrow the way the spin pushes the ball, seen from behind."""
    tail, head = (
        _on_dial(center, radius - 6.0, toward_deg + 180.0),
        _on_dial(center, radius - 2.0, toward_deg),
    )
    wings = [_on_dial(head, 8.0, toward_deg + 180.0 + side) for side in (-26.0, 26.0)]
    tip = "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in (head, *wings)) + "Z"
    neck = _on_dial(head, 6.0, toward_deg + 180.0)
    shaft = f"M{tail[0]:.1f} {tail[1]:.1f}L{neck[0]:.1f} {neck[1]:.1f}"
    return (
        _dial(center, radius)
        + _stroke(shaft, "seam-line", 2.4, SEAM)
        + f'<path class="seam-fill" d="{tip}" fill="{SEAM}"/>'
    )

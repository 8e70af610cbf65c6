"""One view of a grip as fills and lines, in millimetres, right and up from the ball's center."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from build_tools.figures.body import Body
from build_tools.figures.details import Mark, marks
from build_tools.figures.flesh import Tube, skin
from build_tools.figures.outline import Disc, Spot, arc, outline
from build_tools.figures.seam import RADIUS, STITCHES, Placed
from build_tools.figures.solid import BALL, Chain, Solid, seen
from build_tools.figures.vectors import Matrix, Vec, Y, along, apply, cross, mul, sub, unit

View = Literal["pitcher", "side", "catcher"]
Flat = tuple[float, float]
Line = tuple[Flat, ...]

_PER_STITCH = 8
_STITCH_LONG = 3.1
_STITCH_SLANT = 2.0
_GAP = 0.5


def _camera(toward: Vec) -> Matrix:
    """Return the axes of a viewer who stands in a direction: his right, his up, and toward him."""
    out = unit(toward)
    right = unit(cross(Y, out))
    return right, cross(out, right), out


CAMERAS: dict[View, Matrix] = {
    "pitcher": _camera((0.0, math.sin(math.radians(60.0)), math.cos(math.radians(60.0)))),
    "side": _camera((-1.0, 0.0, 0.0)),
    "catcher": _camera((0.0, 0.26, -1.0)),
}
"""pitcher: from behind and above his own hand; side: from the thumb's side; catcher: from the front."""


@dataclass(frozen=True)
class Scene:
    """What is drawn, from back to front: flesh behind the ball, ball, seam, flesh before it, lines.

    `points` are places to which labels can point: a digit's name with "tip", "last" or "second".
    """

    behind: tuple[Line, ...]
    front: tuple[Line, ...]
    ball: tuple[Line, ...]
    seam: tuple[Line, ...]
    stitches: tuple[Line, ...]
    under: tuple[Line, ...]
    outlines: tuple[Line, ...]
    details: tuple[Line, ...]
    points: Mapping[str, Flat]


def _flat(spots: Sequence[Spot]) -> Line:
    return tuple((spot.x, spot.y) for spot in spots)


def _stretches(chain: Chain, front: bool) -> Iterator[list[Disc]]:
    """Yield a tube's stretches that lie on one side of the plane through the ball's middle."""
    stretch: list[Disc] = []
    for disc in (*chain.discs, None):
        if disc is not None and disc.front == front:
            stretch.append(disc)
            continue
        if len(stretch) > 1:
            yield stretch
        stretch = []


def _fills(solid: Solid, front: bool) -> Iterator[Line]:
    """Yield the patches of flesh behind the ball, or before it."""
    for chain in solid.chains:
        for stretch in _stretches(chain, front):
            yield _flat(outline(stretch))


def _seam(ball: Placed, solid: Solid, rows: Matrix) -> tuple[list[Line], list[Line], list[Line]]:
    """Return the visible seam, its visible stitches, and the seam that fingers cover."""
    points = ball.points(STITCHES * _PER_STITCH)
    count = len(points)

    def spot(at: Vec) -> Spot:
        return Spot(*apply(rows, at))

    def hidden(one: Spot) -> bool:
        return one.z < 0.0 or solid.hides(one, outer=False)

    spots = [spot(mul(point, RADIUS)) for point in points]
    start = next((k for k in range(count) if hidden(spots[k])), 0)
    ring = [spots[(start + k) % count] for k in range(count + 1)]
    stitches: list[Line] = []
    for k in range(0, count, _PER_STITCH):
        if spots[k].z < 2.0:
            continue
        normal = points[k]
        ahead = unit(sub(points[(k + 1) % count], points[k - 1]))
        side = cross(ahead, normal)
        middle = mul(normal, RADIUS)
        for hand in (1.0, -1.0):
            near = spot(along(middle, side, hand * _GAP))
            out = along(along(middle, side, hand * _STITCH_LONG), ahead, -_STITCH_SLANT)
            far = spot(mul(unit(out), RADIUS))
            if not hidden(near) and not hidden(far):
                stitches.append(_flat((near, far)))
    shown = [_flat(run) for run in seen(ring, hidden)]
    under = [_flat(run) for run in seen(ring, lambda one: one.z < 0.0 or not solid.under_finger(one))]
    return shown, stitches, under


def _long(run: Sequence[Spot], name: str) -> bool:
    """Tell a line from a crumb; the web's edge leaves larger ones where it meets the palm."""
    least = 5.0 if name == "web" else 1.5
    return sum(math.hypot(b.x - a.x, b.y - a.y) for a, b in pairwise(run)) > least


def _outlines(solid: Solid) -> Iterator[Line]:
    for chain in solid.chains:
        for front in (False, True):
            for stretch in _stretches(chain, front):
                yield from (
                    _flat(run) for run in seen(outline(stretch), solid.hides) if _long(run, chain.name)
                )


def _details(body: Body, solid: Solid, rows: Matrix) -> Iterator[Line]:
    for number, part in enumerate(body.tubes):
        for mark in marks(part):
            yield from (_flat(run) for run in _drawn_mark(mark, part, solid.chains[number], solid, rows))


def _drawn_mark(mark: Mark, part: Tube, chain: Chain, solid: Solid, rows: Matrix) -> list[list[Spot]]:
    """Return the visible stretches of a small line on the skin."""
    facing: dict[Spot, float] = {}
    spots: list[Spot] = []
    for place, round_deg in mark.places:
        at, normal = skin(part, place, round_deg)
        disc = chain.discs[min(round(place), len(part.rings) - 1)]
        spot = Spot(*apply(rows, at), disc.part, disc.place, False, disc.front)
        facing[spot] = apply(rows, normal)[2]
        spots.append(spot)

    def hidden(spot: Spot) -> bool:
        return facing.get(spot, 1.0) < mark.facing or solid.hides(spot, outer=False)

    least = len(spots) if mark.whole else 3
    return [run for run in seen(spots, hidden) if len(run) >= least]


def scene(body: Body, ball: Placed, view: View) -> Scene:
    """Return one view of a hand on a ball, a right-hander's."""
    rows = CAMERAS[view]
    solid = Solid(body, rows)
    edge = [
        Spot(spot.x, spot.y, 0.0, BALL, 0)
        for spot in arc(Disc(0.0, 0.0, 0.0, RADIUS, BALL, 0), 0.0, 2.0 * math.pi, 0.05)
    ]
    seams, stitches, under = _seam(ball, solid, rows)
    return Scene(
        tuple(_fills(solid, False)),
        tuple(_fills(solid, True)),
        tuple(_flat(run) for run in seen(edge, lambda spot: solid.hides(spot, outer=False))),
        tuple(seams),
        tuple(stitches),
        tuple(under),
        tuple(_outlines(solid)),
        tuple(_details(body, solid, rows)),
        {
            f"{part.name} {name}": apply(rows, part.rings[place].center)[:2]
            for part in body.tubes
            for name, place in zip(("tip", "last", "second"), part.joints[:0:-1], strict=False)
        },
    )

"""The ball and its seam, computed.

The seam is the curve of Gray (1998, p. 927), quoted in Allison, Diaz and Miller (Loci 8, 2008):
polar angle pi/2 - (pi/2 - c) cos t, azimuth t/2 + c sin 2t, for t from 0 to 4 pi. At t = 0 and
t = 2 pi its two strands pass c either side of the pole, so the narrowest arc between them is 2 c R.
Thompson (1998), "Designing a Baseball Cover": circumference 9 1/8 in, narrowest arc 1 3/16 in.
"""

from __future__ import annotations

import functools
import itertools
import math
from dataclasses import dataclass

from build_tools.figures.vectors import (
    Matrix,
    Vec,
    across,
    angle,
    apply,
    columns,
    cross,
    length,
    sub,
    turn,
    unit,
)

INCH = 25.4
CIRCUMFERENCE = 9.125 * INCH
"""Millimetres: the middle of the 9 to 9 1/4 in of Official Baseball Rules 3.01."""
RADIUS = CIRCUMFERENCE / (2.0 * math.pi)
NARROWEST = (1.0 + 3.0 / 16.0) * INCH
"""Millimetres along the ball between the seam's two strands where they run closest (Thompson 1998)."""
SHAPE = NARROWEST / (2.0 * RADIUS)
"""Gray's c, radians, chosen so that 2 c R is the narrowest arc."""
ROUND = 4.0 * math.pi
"""The parameter's full way round the seam."""
STITCHES = 108
"""Double stitches on the ball, as the trade counts them."""


def seam_point(t: float) -> Vec:
    """Return the seam's point at parameter t (0 to 4 pi) on a ball of radius one."""
    polar = math.pi / 2.0 - (math.pi / 2.0 - SHAPE) * math.cos(t)
    azimuth = t / 2.0 + SHAPE * math.sin(2.0 * t)
    return (
        math.sin(polar) * math.cos(azimuth),
        math.sin(polar) * math.sin(azimuth),
        math.cos(polar),
    )


@functools.cache
def seam_points(count: int = 720) -> tuple[Vec, ...]:
    """Return `count` points spaced evenly along the seam, the first not repeated at the end."""
    fine = [seam_point(ROUND * k / 4000) for k in range(4001)]
    run = [0.0]
    for a, b in itertools.pairwise(fine):
        run.append(run[-1] + length(sub(b, a)))
    points: list[Vec] = []
    k = 0
    for step in range(count):
        goal = run[-1] * step / count
        while run[k + 1] < goal:
            k += 1
        share = (goal - run[k]) / (run[k + 1] - run[k])
        points.append(seam_point(ROUND * (k + share) / 4000))
    return tuple(points)


@dataclass(frozen=True)
class Placed:
    """The ball as it lies in the hand: `rows` turn ball directions into hand directions."""

    rows: Matrix

    def points(self, count: int = 720) -> tuple[Vec, ...]:
        """Return the seam in the hand frame, on a ball of radius one."""
        return tuple(apply(self.rows, point) for point in seam_points(count))

    def distance(self, direction: Vec) -> float:
        """Return how far along the ball, in millimetres, a point lies from the nearest seam."""
        near = min(angle(direction, point) for point in self.points(1440))
        return math.radians(near) * RADIUS


def on_ball(across_deg: float, over_deg: float) -> Vec:
    """Return the direction of a place on the ball in the hand frame.

    `across_deg` is the place's clock as an angle, from 12:00 toward the little-finger side;
    `over_deg` is how far past that, away from the palm.
    """
    a, o = math.radians(across_deg), math.radians(over_deg)
    return (math.sin(a) * math.cos(o), math.cos(a) * math.cos(o), -math.sin(o))


def lay(t: float, across_deg: float, over_deg: float, heading_deg: float) -> Placed:
    """Lay the ball in the hand so that the seam's point t sits at a given place.

    `heading_deg` is the way the seam runs there: 0 along the fingers toward their tips, 90 across
    them toward the little finger.
    """
    normal = on_ball(across_deg, over_deg)
    ahead = unit(across(sub(on_ball(across_deg, over_deg + 0.01), normal), normal))
    heading = turn(ahead, normal, -heading_deg)
    here = seam_point(t)
    step = sub(seam_point(t + 1e-4), seam_point(t - 1e-4))
    seam_ahead = unit(across(step, here))
    ball = (here, seam_ahead, cross(here, seam_ahead))
    hand = columns((normal, heading, cross(normal, heading)))
    return Placed(
        tuple(apply(columns(ball), row) for row in hand)  # type: ignore[arg-type]
    )

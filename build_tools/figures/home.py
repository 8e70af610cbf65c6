"""The drawing on the home page: one curveball, caught eight times on its way, beside a ball without spin.

Path and turning are computed from the same flight as the calculators. Heights are stretched and the ball
is drawn larger than it is, as the caption says.
"""

from __future__ import annotations

from build_tools.figures.seam import seam_points
from build_tools.figures.vectors import turn
from calculators.desk.drawing import Circle, Drawing, Label, Mark, Path, Point
from calculators.physics.aim import pitch_to
from calculators.physics.flight import PLATE_FRONT, Flight, Release, fly
from calculators.physics.spin import Spin, spin_vector
from calculators.physics.units import FOOT, INCH, MPH, RPM
from calculators.words import say

WIDTH, HEIGHT = 360.0, 150.0
LEFT, GROUND = 22.0, 132.0
ACROSS = 5.9 / FOOT
UP = 15.5 / FOOT
BALL = 12.5
TIMES = 8
STEPS = 4 * (TIMES - 1)
LABELLED = 3 * STEPS // 4
TURN_SHOWN = 52.0
"""Degrees the drawn ball turns from one picture to the next; the real one turns more than once."""

RELEASE = (-1.6 * FOOT, 54.5 * FOOT, 5.6 * FOOT)
AIM = (0.0, 22 * INCH)
SPEED = 68 * MPH
CURVE = Spin(2100 * RPM, 6.6, 0.9)


def home_drawing() -> Drawing:
    """Return the drawing; a high-school curve on its way from the hand to the plate."""
    aimed = pitch_to(AIM, RELEASE, SPEED, CURVE).start
    spin = spin_vector(CURVE, aimed.velocity)
    curve = fly(Release(aimed.position, aimed.velocity, spin), steps=STEPS)
    straight = fly(Release(aimed.position, aimed.velocity, (0.0, 0.0, 0.0)), steps=STEPS)
    marks: list[Mark] = [
        Path(((6.0, GROUND), (WIDTH - 6.0, GROUND)), "faint"),
        *_plate(),
        Path(_points(straight), "ghost", smooth=True),
        Path(_points(curve), "accent", smooth=True, width=1.2),
    ]
    for index, moment in enumerate(curve.moments[:: STEPS // (TIMES - 1)]):
        marks += _ball(_place(moment.position), index * TURN_SHOWN)
    over, under = _place(straight.moments[LABELLED].position), _place(curve.moments[LABELLED].position)
    marks += [
        Label((over[0], over[1] - 9.0), say("no spin"), "start", "faint"),
        Label((under[0] - 6.0, under[1] + 28.0), say("curve"), "end", "accent", bold=True),
    ]
    return Drawing(
        title=say("One curveball, caught eight times on its way"),
        description=say(
            "A ball leaves the hand at the left, climbs a little, then falls to the plate at the right. "
            "A dashed line shows the same throw without spin; it ends higher."
        ),
        width=WIDTH,
        height=HEIGHT,
        marks=tuple(marks),
        text_size=13.0,
    )


def _place(position: tuple[float, float, float]) -> Point:
    return (LEFT + (RELEASE[1] - position[1]) * ACROSS, GROUND - position[2] * UP)


def _points(flight: Flight[float]) -> tuple[Point, ...]:
    return tuple(_place(moment.position) for moment in flight.moments)


def _plate() -> tuple[Mark, ...]:
    front, tip = _place((0.0, PLATE_FRONT, 0.0))[0], _place((0.0, 0.0, 0.0))[0]
    return (Path(((front, GROUND), (tip, GROUND)), "strong", width=4.0),)


def _ball(centre: Point, turned: float) -> list[Mark]:
    seams = [Path(run, "seam", width=1.1) for run in _front_seams(centre, turned)]
    return [Circle(centre, BALL, "line", fill="paper", width=1.4), *seams]


def _front_seams(centre: Point, turned: float) -> list[tuple[Point, ...]]:
    """The runs of the seam that face the reader, the ball turned forward about the axis across the page."""
    runs: list[list[Point]] = [[]]
    for point in (*seam_points(120), seam_points(120)[0]):
        right, up, toward = turn(point, (0.0, 0.0, 1.0), -turned)
        if toward > 0.05:
            runs[-1].append((centre[0] + BALL * right, centre[1] - BALL * up))
        elif runs[-1]:
            runs.append([])
    return [tuple(run) for run in runs if len(run) > 2]

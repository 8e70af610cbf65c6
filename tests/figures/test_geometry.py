"""The figures' arithmetic against reference libraries and against what outlines must be."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from build_tools.figures.body import body
from build_tools.figures.outline import Disc, Spot, outline
from build_tools.figures.pose import pose
from build_tools.figures.scene import CAMERAS, scene
from build_tools.figures.seam import RADIUS, on_ball
from build_tools.figures.solid import Solid, seen
from build_tools.figures.vectors import angle, apply, columns, cross, dot, length, mul, turn, unit
from build_tools.schema.grip import Grip

NUMBER = st.floats(-100.0, 100.0, allow_subnormal=False)
VECTOR = st.tuples(NUMBER, NUMBER, NUMBER)


@given(a=VECTOR, axis=VECTOR, degrees=st.floats(-360.0, 360.0))
def test_turning_agrees_with_scipy(
    a: tuple[float, float, float], axis: tuple[float, float, float], degrees: float
) -> None:
    assume(length(axis) > 0.1)
    turned = Rotation.from_rotvec(np.array(unit(axis)) * math.radians(degrees)).apply(a)
    assert turn(a, unit(axis), degrees) == pytest.approx(turned, abs=1e-6)


@given(a=VECTOR, b=VECTOR)
def test_products_agree_with_numpy(a: tuple[float, float, float], b: tuple[float, float, float]) -> None:
    assert dot(a, b) == pytest.approx(np.dot(a, b), abs=1e-6)
    assert cross(a, b) == pytest.approx(np.cross(a, b), abs=1e-6)


@pytest.mark.parametrize("view", CAMERAS)
def test_a_camera_only_turns_the_scene(view: str) -> None:
    rows = np.array(CAMERAS[view])  # type: ignore[index]
    assert rows @ rows.T == pytest.approx(np.eye(3), abs=1e-12)
    assert np.linalg.det(rows) == pytest.approx(1.0)


def test_the_views_show_the_sides_they_are_named_for() -> None:
    thumb_side, forward, back = (-1.0, 0.0, 0.0), (0.0, 0.0, -1.0), (0.0, 0.0, 1.0)
    assert apply(CAMERAS["side"], thumb_side)[2] == pytest.approx(1.0)
    assert apply(CAMERAS["catcher"], forward)[2] > 0.9
    assert apply(CAMERAS["pitcher"], back)[2] > 0.4
    assert apply(CAMERAS["pitcher"], thumb_side)[0] == pytest.approx(-1.0), "a right thumb is on the left"
    assert apply(CAMERAS["catcher"], thumb_side)[0] == pytest.approx(1.0), "and on the right from the front"


def test_columns_undo_a_camera() -> None:
    there = apply(CAMERAS["pitcher"], (3.0, -4.0, 5.0))
    assert apply(columns(CAMERAS["pitcher"]), there) == pytest.approx((3.0, -4.0, 5.0))


STEP = st.tuples(st.floats(-6.0, 6.0), st.floats(-6.0, 6.0), st.floats(3.0, 12.0))


@given(steps=st.lists(STEP, min_size=2, max_size=20))
def test_an_outline_reaches_as_far_as_the_flesh_in_every_direction(
    steps: list[tuple[float, float, float]],
) -> None:
    x = y = 0.0
    discs = []
    for place, (dx, dy, radius) in enumerate(steps):
        x, y = x + dx, y + dy
        discs.append(Disc(x, y, 0.0, radius, 0, place))
    spots = np.array([(spot.x, spot.y) for spot in outline(discs)])
    for a in np.linspace(0.0, 2.0 * math.pi, 12, endpoint=False):
        toward = np.array([math.cos(a), math.sin(a)])
        reach = max(disc.x * toward[0] + disc.y * toward[1] + disc.radius for disc in discs)
        assert (spots @ toward).max() == pytest.approx(reach, abs=0.05)


@given(edge=st.floats(0.5, 8.5))
def test_a_line_is_cut_where_it_goes_out_of_sight(edge: float) -> None:
    line = [Spot(float(k), 0.0, 0.0) for k in range(10)]
    (run,) = seen(line, lambda spot: spot.x > edge)
    assert run[0].x == 0.0
    assert run[-1].x == pytest.approx(edge, abs=0.03)


@pytest.mark.parametrize("view", CAMERAS)
def test_only_the_near_half_of_the_seam_is_drawn_and_inside_the_ball(grip: Grip, view: str) -> None:
    assert grip.hold is not None
    posed = pose(grip.hold)
    drawn = scene(body(posed), posed.ball, view)  # type: ignore[arg-type]
    near = [apply(CAMERAS[view], point) for point in posed.ball.points(2000)]  # type: ignore[index]
    front = np.array([point[:2] for point in near if point[2] > -0.01]) * RADIUS
    for x, y in (point for line in drawn.seam for point in line):
        assert np.hypot(*(front - (x, y)).T).min() < 0.6


def test_the_ball_hides_what_is_behind_it_and_a_finger_what_is_under_it(grip: Grip) -> None:
    assert grip.hold is not None
    flesh = body(pose(grip.hold))
    front = Solid(flesh, CAMERAS["catcher"])
    assert front.hides(Spot(0.0, 0.0, -RADIUS, 0, 0, False, False))
    assert not front.hides(Spot(0.0, 0.0, 5.0 * RADIUS), outer=False)
    pad = on_ball(grip.hold.middle.across_deg, grip.hold.middle.over_deg)
    under = Spot(*apply(CAMERAS["pitcher"], mul(pad, RADIUS)))
    assert Solid(flesh, CAMERAS["pitcher"]).hides(under, outer=False)


def test_a_right_angle_is_ninety_degrees() -> None:
    assert angle((1.0, 0.0, 0.0), (0.0, 2.0, 0.0)) == pytest.approx(90.0)

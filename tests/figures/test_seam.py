"""The drawn ball and its seam against the rule book and the published cover design.

Thompson (1998), "Designing a Baseball Cover", College Mathematics Journal: circumference 9 1/8 in,
narrowest place 1 3/16 in along the ball, two congruent pieces of cover.
Official Baseball Rules 3.01: circumference 9 to 9 1/4 in.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from build_tools.figures.seam import CIRCUMFERENCE, INCH, RADIUS, ROUND, lay, on_ball, seam_point, seam_points
from build_tools.figures.vectors import angle, sub, unit

TURNS = np.linspace(0.0, ROUND, 8001)
SEAM = np.array([seam_point(t) for t in TURNS])


def test_the_ball_has_the_rule_books_size() -> None:
    assert 9.0 <= CIRCUMFERENCE / INCH <= 9.25


def test_the_narrowest_place_is_one_and_three_sixteenths_of_an_inch_along_the_ball() -> None:
    near, far = TURNS < 1.5, np.abs(TURNS - 2.0 * math.pi) < 1.5
    arcs = np.arccos(np.clip(SEAM[near] @ SEAM[far].T, -1.0, 1.0)) * RADIUS / INCH
    assert arcs.min() == pytest.approx(1.0 + 3.0 / 16.0, abs=0.005)


def test_every_point_of_the_seam_lies_on_the_ball() -> None:
    assert np.linalg.norm(SEAM, axis=1) == pytest.approx(1.0)


def test_the_two_pieces_of_cover_are_congruent() -> None:
    """A quarter turn about the pole, then a mirror through the equator, lays one piece on the other."""
    x, y, z = SEAM.T
    other = np.stack([-y, x, -z], axis=1)
    gaps = [np.linalg.norm(SEAM - point, axis=1).min() for point in other[::97]]
    assert max(gaps) < 0.002


def test_each_piece_covers_half_the_ball() -> None:
    """The area round the pole, by the integral of (1 - cos polar) over azimuth, is half of 4 pi."""
    azimuth = np.unwrap(np.arctan2(SEAM[:, 1], SEAM[:, 0]))
    height = (SEAM[1:, 2] + SEAM[:-1, 2]) / 2.0
    assert np.sum((1.0 - height) * np.diff(azimuth)) == pytest.approx(2.0 * math.pi, abs=1e-6)


def test_the_whole_seam_is_near_sixteen_inches_long() -> None:
    """*Estimate*: the length that Gray's curve (1998) has at Thompson's narrowest place."""
    steps = np.linalg.norm(np.diff(SEAM, axis=0), axis=1)
    assert steps.sum() * RADIUS / INCH == pytest.approx(16.0, abs=0.1)


def test_stitches_are_evenly_spaced() -> None:
    points = np.array(seam_points(108))
    steps = np.linalg.norm(np.roll(points, -1, axis=0) - points, axis=1)
    assert steps.max() / steps.min() < 1.01


PLACES = st.floats(-80.0, 80.0)


@given(t=st.floats(0.0, ROUND), across=PLACES, over=PLACES, heading=st.floats(-180.0, 180.0))
def test_the_seam_lies_where_it_is_laid(t: float, across: float, over: float, heading: float) -> None:
    at = on_ball(across, over)
    ball = lay(t, across, over, heading)
    assert ball.distance(at) < 0.3
    rows = np.array(ball.rows)
    assert rows @ rows.T == pytest.approx(np.eye(3), abs=1e-6)
    assert np.linalg.det(rows) == pytest.approx(1.0, abs=1e-6), "a real ball is never mirrored"


def test_laid_along_the_fingers_the_seam_runs_along_them() -> None:
    ball = lay(math.pi / 2.0, 0.0, 0.0, 0.0)
    near = min(ball.points(1440), key=lambda point: angle(point, on_ball(0.0, 6.0)))
    fingers = sub(on_ball(0.0, 6.0), on_ball(0.0, 0.0))
    assert angle(unit(sub(near, on_ball(0.0, 0.0))), fingers) < 10.0

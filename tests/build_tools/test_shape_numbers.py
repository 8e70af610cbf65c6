"""The inches on a shape's page come out of the same flights as everything else."""

from __future__ import annotations

import datetime

import pytest

from build_tools.schema.shape import Level, Levels, Shape
from build_tools.shape_numbers import ShapeNumbers, shape_numbers


def numbers(mph: float, rpm: float, clock: str, active: float) -> dict[str, ShapeNumbers]:
    """Return level to numbers of a pitch without any range, thrown as hard as the fastball."""
    level = Level(fastball_mph=(mph, mph), spin_rpm=(rpm, rpm))
    shape = Shape(
        title="A pitch",
        summary="For a test.",
        reviewed=datetime.date(2026, 1, 2),
        speed_percent=(100, 100),
        clock=(clock, clock),
        clock_middle=clock,
        active_percent=(active, active),
        levels=Levels(adult=level, high_school=level, twelve_and_under=level),
        slots=(),
        looks_like="A pitch.",
        youngest=13,
    )
    return {one.level: one for one in shape_numbers(shape)}


@pytest.mark.parametrize(
    ("level", "mph", "rpm", "clock", "active", "up", "glove_side"),
    # Flights R02, R05 and R07 of tests/published/reference_trajectories.csv, solved by a general-purpose
    # solver: 55 ft from the plate's tip in a 60.5 ft game, 41.5 ft in a 46 ft game. Those were aimed
    # elsewhere and are not rounded, so an inch is allowed.
    [
        ("high_school", 75, 2500, "6:00", 100, -25.1, 0.0),
        ("high_school", 80, 2400, "9:00", 100, -0.1, 23.3),
        ("twelve_and_under", 48, 1300, "7:02", 85, -9.6, 6.1),
    ],
)
def test_a_pitch_without_a_range_moves_as_the_reference_flight(
    level: str, mph: float, rpm: float, clock: str, active: float, up: float, glove_side: float
) -> None:
    found = numbers(mph, rpm, clock, active)[level]
    assert found.up[0] == found.up[1] == pytest.approx(up, abs=1.0)
    assert found.glove_side[0] == found.glove_side[1] == pytest.approx(glove_side, abs=1.0)


def test_a_shorter_way_to_the_plate_leaves_less_than_two_thirds_of_the_movement() -> None:
    # At one speed and spin the push is the same, and what it adds up to grows with the square of the way.
    found = numbers(60, 1800, "6:00", 100)
    share = found["twelve_and_under"].up[0] / found["high_school"].up[0]
    assert share == pytest.approx((41.5 / 55) ** 2, abs=0.06)

"""The starting profile is recognised as a coach would: scattered first, then by clock, speed and spin."""

from __future__ import annotations

from dataclasses import replace

import pytest

from calculators.coaching.profiles import recognise
from tests.coaching.handbook import profiles
from tests.coaching.pens import breaking_balls

FASTBALL = 80.0


@pytest.mark.parametrize(
    ("profile", "made_of"),
    [
        ("downer", {"clock": 6.2, "speed": 65.0}),
        ("three-quarter-drop", {"clock": 7.1, "speed": 66.0}),
        ("slurve", {"clock": 7.85, "speed": 67.0, "active": 70.0}),
        ("sweeping", {"clock": 9.0, "speed": 67.0, "active": 70.0}),
        ("loopy", {"clock": 6.6, "speed": 56.0}),
        ("bullet", {"clock": 8.5, "speed": 71.0, "active": 30.0, "clock_spread": 2.5}),
        ("arm-side", {"clock": 3.0, "speed": 66.0, "active": 60.0}),
    ],
)
def test_a_pitch_in_the_middle_of_a_profile_is_that_profile(profile: str, made_of: dict[str, float]) -> None:
    found = recognise(breaking_balls(15, **made_of), FASTBALL, "right", profiles())
    assert found.profile == profile
    assert found.support[0][0] == profile
    assert found.support[0][1] >= 0.9


def test_a_left_hander_is_read_in_the_mirror() -> None:
    sweeping = breaking_balls(15, clock=3.0, active=70.0, speed=67.0)
    assert recognise(sweeping, FASTBALL, "left", profiles()).profile == "sweeping"
    assert recognise(sweeping, FASTBALL, "right", profiles()).profile == "arm-side"


@pytest.mark.parametrize("made_of", [{"clock_spread": 1.4}, {"speed_spread": 4.0}])
def test_throws_that_do_not_match_are_scattered_whatever_their_average(made_of: dict[str, float]) -> None:
    assert recognise(breaking_balls(20, **made_of), FASTBALL, "right", profiles()).profile == "scattered"


@pytest.mark.parametrize(("speeds", "scattered"), [((63.1, 66.9), False), ((62.8, 67.2), True)])
def test_ten_throws_that_lie_more_than_four_mph_apart_are_scattered(
    speeds: tuple[float, float], scattered: bool
) -> None:
    # content/lists/profiles.yml (estimate).
    thrown = [replace(throw, speed=speeds[throw.number % 2]) for throw in breaking_balls(10)]
    assert (recognise(thrown, FASTBALL, "right", profiles()).profile == "scattered") is scattered


@pytest.mark.parametrize(("clocks", "scattered"), [((5.55, 6.95), False), ((5.4, 7.1), True)])
def test_ten_throws_whose_clock_wanders_more_than_an_hour_and_a_half_are_scattered(
    clocks: tuple[float, float], scattered: bool
) -> None:
    # content/lists/profiles.yml (estimate).
    thrown = [replace(throw, clock=clocks[throw.number % 2]) for throw in breaking_balls(10)]
    assert (recognise(thrown, FASTBALL, "right", profiles()).profile == "scattered") is scattered


def test_an_ordinary_high_school_pitcher_is_seldom_called_scattered() -> None:
    """Half an hour and 1.6 mph from throw to throw are usual at that level; ten throws may mislead."""
    days = [
        recognise(
            breaking_balls(10, seed=seed, clock_spread=0.5, speed_spread=1.6), FASTBALL, "right", profiles()
        ).profile
        for seed in range(60)
    ]
    assert days.count("scattered") <= 9


def test_one_wild_throw_does_not_make_a_pitch_scattered() -> None:
    thrown = breaking_balls(12)
    wild = replace(thrown[0], clock=2.0, speed=50.0)
    assert recognise([wild, *thrown[1:]], FASTBALL, "right", profiles()).profile == "downer"


def test_a_pitch_on_the_border_says_so() -> None:
    found = recognise(breaking_balls(10, clock=6.75, clock_spread=0.35), FASTBALL, "right", profiles())
    assert {slug for slug, _ in found.support} == {"downer", "three-quarter-drop"}
    assert found.support[0][1] < 0.95


def test_no_throw_is_no_breaking_ball_and_a_few_are_too_few() -> None:
    assert recognise([], FASTBALL, "right", profiles()).profile == "none-yet"
    assert recognise(breaking_balls(4), FASTBALL, "right", profiles()).profile is None


def test_a_radar_gun_alone_can_see_slow_but_no_direction() -> None:
    slow = [replace(throw, clock=None, active=None) for throw in breaking_balls(8, speed=56.0)]
    firm = [replace(throw, clock=None, active=None) for throw in breaking_balls(8, speed=66.0)]
    assert recognise(slow, FASTBALL, "right", profiles()).profile == "loopy"
    assert recognise(firm, FASTBALL, "right", profiles()).profile is None
    assert recognise(slow, None, "right", profiles()).profile is None

"""Arrival times, the hitter's budget and camera arithmetic, against figures from outside."""

from __future__ import annotations

import math

import pytest

from calculators.coaching.batting import commit_time
from calculators.coaching.camera import (
    Filming,
    blur_turn,
    frame_rate_needed,
    mean_speed,
    release_speed,
    spin_rate,
)
from calculators.coaching.elsewhere import SamePitch, from_distance
from calculators.physics.aim import pitch_to
from calculators.physics.drag import speed_after, time_over
from calculators.physics.flight import PLATE_FRONT, STILL_AIR, Conditions, Release, arrive
from calculators.physics.spin import Spin
from calculators.physics.units import FOOT, INCH, MPH, RPM

SLOWING = STILL_AIR.air_grip * STILL_AIR.drag
EXTENSIONS = {46.0: 4.5, 50.0: 5.0, 54.0: 5.0, 60.5: 5.5}

# Arrival times worked out elsewhere from the same law (C_D 0.35, air 1.197 kg/m3, the middle ball of the rule
# book, to the front of the plate): rubber to plate, fast and slow mph, times, gap, feet still to go.
ARRIVALS = [
    (46.0, 50, 40, 0.5677, 0.7096, 141.9, 7.78),
    (46.0, 55, 45, 0.5161, 0.6308, 114.7, 7.07),
    (46.0, 60, 50, 0.4731, 0.5677, 94.6, 6.47),
    (50.0, 60, 50, 0.5161, 0.6193, 103.2, 7.02),
    (54.0, 65, 55, 0.5221, 0.6170, 94.9, 7.05),
    (60.5, 70, 60, 0.5491, 0.6406, 91.5, 7.33),
    (60.5, 80, 70, 0.4805, 0.5491, 68.6, 6.41),
    (60.5, 90, 75, 0.4271, 0.5125, 85.4, 8.56),
    (60.5, 90, 80, 0.4271, 0.4805, 53.4, 5.69),
]


def flight_time(mound: float, mph: float) -> float:
    """Return the time of a level flight without spin or gravity, flown and not from the formula."""
    start = (mound - EXTENSIONS[mound]) * FOOT
    release = Release((0.0, start, 1.5), (0.0, -mph * MPH, 0.0), (0.0, 0.0, 0.0))
    return arrive(release, Conditions(gravity=0.0)).time


@pytest.mark.parametrize(("mound", "fast", "slow", "t_fast", "t_slow", "gap", "short"), ARRIVALS)
def test_when_two_speeds_arrive(
    mound: float, fast: float, slow: float, t_fast: float, t_slow: float, gap: float, short: float
) -> None:
    first, second = flight_time(mound, fast), flight_time(mound, slow)
    assert first == pytest.approx(t_fast, abs=6e-5)
    assert second == pytest.approx(t_slow, abs=6e-5)
    assert 1000 * (second - first) == pytest.approx(gap, abs=0.06)
    assert 1000 * first * (fast / slow - 1) == pytest.approx(gap, abs=0.06)
    distance = (mound - EXTENSIONS[mound]) * FOOT - PLATE_FRONT
    covered = math.log1p(SLOWING * slow * MPH * first) / SLOWING
    assert (distance - covered) / FOOT == pytest.approx(short, abs=0.006)


def test_a_fastball_gives_a_quarter_of_a_second_before_the_swing() -> None:
    # Adair, The Physics of Baseball: of a flight of 400 ms the swing takes 150, so that it starts about
    # 250 ms after release; before it lie 100 for seeing, 75 for making sense of it and 25 for deciding.
    assert commit_time(0.400) == pytest.approx(0.250)
    assert commit_time(0.400) - (0.100 + 0.075 + 0.025) == pytest.approx(0.050)


def test_a_ninety_mph_fastball_flies_about_four_tenths() -> None:
    # Healey & Wang: a fastball's flight takes about 400 ms.
    assert flight_time(60.5, 95) == pytest.approx(0.400, abs=0.01)


def test_the_speed_behind_a_time_is_the_exact_one() -> None:
    # Drag alone: 90 mph over 55 ft less 17 in takes 0.42706832 s and ends at 81.381569 mph.
    distance = 55 * FOOT - 17 * INCH
    assert release_speed(distance, 0.42706832, SLOWING) / MPH == pytest.approx(90, abs=1e-5)
    assert speed_after(distance, 90, SLOWING) == pytest.approx(81.381569, abs=1e-5)


def test_the_average_is_about_five_percent_below_the_release_speed() -> None:
    # Worked out elsewhere: about 5 percent over 54 ft.
    time = time_over(54 * FOOT, 80 * MPH, SLOWING)
    assert mean_speed(54 * FOOT, time) / (80 * MPH) == pytest.approx(0.95, abs=0.003)


@pytest.mark.parametrize(("turns", "lost"), [(1, 343), (2, 185), (5, 77), (10, 39)])
def test_one_frame_more_costs_less_the_more_turns_are_counted(turns: int, lost: float) -> None:
    # Worked out elsewhere: 2400 rpm at 240 frames a second is 6 frames a turn.
    frames = 6 * turns
    assert 60 * spin_rate(turns, frames, 240) == pytest.approx(2400)
    assert 60 * spin_rate(turns, frames + 1, 240) == pytest.approx(2400 - lost, abs=0.6)


@pytest.mark.parametrize(("fps", "frames"), [(30, 0.75), (60, 1.5), (120, 3), (240, 6), (480, 12)])
def test_frames_to_a_turn_at_2400_rpm(fps: float, frames: float) -> None:
    # Worked out elsewhere.
    assert Filming(fps).frames_a_repeat(40) == pytest.approx(frames)


def test_the_rate_must_exceed_the_spin_in_rpm_over_thirty() -> None:
    # More than two frames a turn for one mark; twice that for a pattern that is alike on two sides.
    assert frame_rate_needed(2400 / 60, 1, 2) == pytest.approx(2400 / 30)
    assert frame_rate_needed(2400 / 60, 2, 2) == pytest.approx(2 * 2400 / 30)
    assert not Filming(60).sees(40)
    assert Filming(120).sees(40)
    assert not Filming(120, repeats=2).sees(40)


def test_blur_at_a_thousandth_of_a_second() -> None:
    # Worked out elsewhere: 14.4 degrees at 2400 rpm; at 90 mph the ball travels 40 mm.
    assert math.degrees(blur_turn(40, 1 / 1000)) == pytest.approx(14.4)
    travel = 90 * MPH / 1000
    assert travel == pytest.approx(0.040, abs=5e-4)


@pytest.mark.parametrize(("mound", "mph"), [(46.0, 45.0), (60.5, 60.0), (60.5, 80.0)])
def test_a_ball_that_arches_was_at_most_a_hundredth_faster_than_its_timed_speed(
    mound: float, mph: float
) -> None:
    hand = (0.0, (mound - EXTENSIONS[mound]) * FOOT, 5 * FOOT)
    flight = pitch_to((0.0, 2 * FOOT), hand, mph * MPH, Spin(1500 * RPM, 6.0, 0.8))
    timed = release_speed(hand[1] - PLATE_FRONT, flight.end.time, SLOWING)
    assert 0 <= 1 - timed / (mph * MPH) < 0.012


CURVE = SamePitch(6.0 * FOOT, -2 * FOOT, 6.0 * FOOT, 78 * MPH, Spin(2500 * RPM, 7.0, 0.7), 28 * INCH)


def test_a_curve_in_thin_air_loses_about_a_fifth() -> None:
    # Adair and Stephen, 1991: in air 17 percent thinner a curve of 14 inches becomes one of 11; give or take
    # 0.7 inches.
    usual = from_distance(CURVE, 60.5 * FOOT, STILL_AIR).moved.amount
    thin = from_distance(CURVE, 60.5 * FOOT, Conditions(density=0.83 * STILL_AIR.density)).moved.amount
    assert 14 * thin / usual == pytest.approx(11, abs=0.7)


def test_a_hundred_mph_arrives_three_thousandths_sooner_in_thin_air() -> None:
    # Adair and Stephen, 1991: 0.003 s, give or take one thousandth.
    fastball = SamePitch(6.0 * FOOT, 0.0, 6.0 * FOOT, 100 * MPH, Spin(2200 * RPM, 12.0, 0.95), 30 * INCH)
    usual = from_distance(fastball, 60.5 * FOOT, STILL_AIR).flight.end.time
    thin = from_distance(fastball, 60.5 * FOOT, Conditions(density=0.83 * STILL_AIR.density)).flight.end.time
    assert usual - thin == pytest.approx(0.003, abs=0.001)

"""How soon a fastball arrives, when a swing must start and what a camera must catch, against figures from outside."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from calculators.coaching.batting import commit_time
from calculators.coaching.camera import Filming, frame_rate_needed, mean_speed, release_speed
from calculators.physics.aim import pitch_to
from calculators.physics.drag import speed_after, time_over
from calculators.physics.flight import PLATE_FRONT, STILL_AIR, Conditions, Release, fly
from calculators.physics.spin import Spin
from calculators.physics.units import FOOT, MPH, RPM

SLOWING = STILL_AIR.air_grip * STILL_AIR.drag
WAY = 55 * FOOT - PLATE_FRONT


def still_to_go(mph: float, time: float) -> float:
    """Return how far a level ball without spin is from the plate [ft] at a time after release, as we fly it."""
    release = Release((0.0, WAY, 0.0), (0.0, -mph * MPH, 0.0), (0.0, 0.0, 0.0))
    moments = fly(release, Conditions(gravity=0.0), 0.0, steps=1000).moments
    before = max((moment for moment in moments if moment.time <= time), key=lambda moment: moment.time)
    return (before.position[1] + before.velocity[1] * (time - before.time)) / FOOT


def solved(mph: float, distance: float) -> tuple[float, float]:
    """Return time [s] and last speed [mph] over a distance by scipy's general-purpose solver of the bare law.

    A ball of 9 1/8 in and 5 1/8 oz (the rule book's middle), C_D 0.35, air of 1.197 kg/m3; nothing of ours.
    """
    area, mass = (9.125 * 0.0254) ** 2 / (4 * math.pi), 5.125 * 0.028349523125

    def slowed(_: float, state: np.ndarray) -> list[float]:
        return [state[1], -1.197 * area * 0.35 / (2 * mass) * state[1] ** 2]

    def arrived(_: float, state: np.ndarray) -> float:
        return float(state[0] - distance)

    arrived.terminal = True
    path = solve_ivp(slowed, (0, 5), [0.0, mph * 0.44704], events=arrived, rtol=1e-11, atol=1e-11)
    return float(path.t[-1]), float(path.y[1, -1] / 0.44704)


def test_a_fastball_gives_a_quarter_of_a_second_before_the_swing() -> None:
    # adair-physics: of a flight of 400 ms the swing takes 150, so that it starts about 250 ms after release.
    assert commit_time(0.400) == pytest.approx(0.250)


def test_a_ninety_mph_fastball_is_there_in_about_four_tenths() -> None:
    # Adair at the AAAS meeting of 2000, BBC News, 20 February 2000: 90 mph, only 400 ms to the plate, and
    # after 225 ms the ball is 25 ft (7.5 m) away. To the nearest tenth of a second, and the nearest foot.
    assert still_to_go(90, 0.225) == pytest.approx(25, abs=0.5)
    assert round(time_over(WAY, 90 * MPH, SLOWING), 1) == 0.4


@pytest.mark.parametrize("mph", [45, 68, 90, 100])
def test_the_speed_behind_a_time_is_the_solvers(mph: float) -> None:
    time, last = solved(mph, WAY)
    assert release_speed(WAY, time, SLOWING) / MPH == pytest.approx(mph, rel=1e-7)
    assert speed_after(WAY, mph, SLOWING) == pytest.approx(last, rel=1e-7)


def test_the_average_is_about_five_percent_below_the_release_speed() -> None:
    way = 54 * FOOT
    time, _ = solved(80, way)
    assert time_over(way, 80 * MPH, SLOWING) == pytest.approx(time, rel=1e-7)
    assert mean_speed(way, time) / (80 * MPH) == pytest.approx(0.95, abs=0.003)


def test_the_rate_must_exceed_the_spin_in_rpm_over_thirty() -> None:
    # Shannon, Proc. IRE 37 (1949) 10: more than two frames a turn for one mark; twice that for a pattern that
    # is alike on two sides.
    assert frame_rate_needed(2400 / 60, 1, 2) == pytest.approx(2400 / 30)
    assert frame_rate_needed(2400 / 60, 2, 2) == pytest.approx(2 * 2400 / 30)
    assert not Filming(60).sees(40)
    assert Filming(120).sees(40)
    assert not Filming(120, repeats=2).sees(40)


@pytest.mark.parametrize(("way", "mph"), [(41.5, 45.0), (55.0, 60.0), (55.0, 80.0)])
def test_a_ball_that_arches_was_at_most_a_hundredth_faster_than_its_timed_speed(
    way: float, mph: float
) -> None:
    hand = (0.0, way * FOOT, 5 * FOOT)
    flight = pitch_to((0.0, 2 * FOOT), hand, mph * MPH, Spin(1500 * RPM, 6.0, 0.8))
    timed = release_speed(hand[1] - PLATE_FRONT, flight.end.time, SLOWING)
    assert 0 <= 1 - timed / (mph * MPH) < 0.012

"""The error the integration leaves at the plate, against scipy's DOP853 at a relative tolerance of 1e-12.

The reference is written apart from the handbook's code: by time, with numpy, stopped by an event.
"""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from calculators.physics.aim import launch_velocity, thrown
from calculators.physics.flight import (
    PLATE_FRONT,
    STEP_TOLERANCE,
    STILL_AIR,
    Conditions,
    Release,
    fly,
    steps_needed,
)
from calculators.physics.spin import Spin
from calculators.physics.units import DEGREE, FOOT, MPH, RPM


def reference_crossing(release: Release[float], conditions: Conditions) -> tuple[float, float]:
    """Return x and z [m] at the plate by the reference solver."""
    radius, grip = conditions.ball.radius, conditions.air_grip
    spin, wind = np.array(release.spin), np.array(conditions.wind)

    def forces(_: float, state: np.ndarray) -> np.ndarray:
        through_air = state[3:] - wind
        speed = np.linalg.norm(through_air)
        push = np.cross(spin, through_air)
        transverse = np.linalg.norm(push) / speed
        acceleration = -grip * conditions.drag * speed * through_air
        if transverse > 0:
            ratio = radius * transverse / speed
            lift = 1.5 * ratio if ratio < 0.1 else 0.09 + 0.6 * ratio
            acceleration = acceleration + grip * lift * speed**2 * push / np.linalg.norm(push)
        return np.concatenate([state[3:], acceleration - [0, 0, conditions.gravity]])

    def plate(_: float, state: np.ndarray) -> float:
        return float(state[1] - PLATE_FRONT)

    plate.terminal = True  # type: ignore[attr-defined]
    start = np.array([*release.position, *release.velocity])
    solved = solve_ivp(forces, (0, 3), start, "DOP853", rtol=1e-12, atol=1e-13, events=plate, max_step=0.02)
    crossing = solved.y_events[0][0]
    return float(crossing[0]), float(crossing[2])


def some_release(seed: int) -> Release[float]:
    """A pitch of any kind the handbook accepts, half of them with spin near the corner of the lift fit."""
    draw = random.Random(seed)
    speed = draw.uniform(30, 105) * MPH
    position = (
        draw.uniform(-1, 1),
        draw.choice([41.0, 45.0, 49.0, 55.0, 57.0]) * FOOT,
        draw.uniform(0.5, 2.2),
    )
    rate = draw.uniform(0, 3600) * RPM
    active = draw.random()
    if seed % 2:
        active = min(1.0, draw.uniform(0.085, 0.11) * speed / (STILL_AIR.ball.radius * rate))
    steepest = 25 if speed < 20 else 8
    velocity = launch_velocity(speed, draw.uniform(-4, steepest) * DEGREE, draw.uniform(-4, 4) * DEGREE)
    return thrown(position, velocity, Spin(rate, draw.uniform(0, 12), active))


def error_at_plate(release: Release[float], steps: int | None, conditions: Conditions = STILL_AIR) -> float:
    """Return the distance at the plate between our flight and the reference [m]."""
    end = fly(release, conditions, steps=steps).end
    x, z = reference_crossing(release, conditions)
    return math.hypot(end.position[0] - x, end.position[2] - z)


@pytest.mark.parametrize("seed", range(60))
def test_the_usual_steps_keep_to_the_tolerance(seed: int) -> None:
    assert error_at_plate(some_release(seed), None) < STEP_TOLERANCE


@pytest.mark.parametrize("seed", range(0, 60, 6))
def test_a_tighter_tolerance_is_met_by_more_steps(seed: int) -> None:
    release = some_release(seed)
    tight = STEP_TOLERANCE / 100
    speed = math.dist(release.velocity, (0, 0, 0))
    steps = steps_needed(release.position[1] - PLATE_FRONT, speed, STILL_AIR, tight)
    assert steps > len(fly(release).moments)
    assert error_at_plate(release, steps) < tight


def test_away_from_the_corner_half_the_step_leaves_a_sixteenth_of_the_error() -> None:
    # The mark of a rule of order four.
    velocity = launch_velocity(75 * MPH, 2 * DEGREE, 2 * DEGREE)
    release = thrown((-0.6, 55 * FOOT, 1.8), velocity, Spin(2500 * RPM, 7.5, 0.9))
    coarse, fine = error_at_plate(release, 3), error_at_plate(release, 6)
    assert coarse / fine == pytest.approx(16, rel=0.15)


def test_wind_enters_as_motion_through_the_air() -> None:
    windy = Conditions(wind=(2.0, -3.0, 0.0))
    velocity = launch_velocity(75 * MPH, 2 * DEGREE, 2 * DEGREE)
    release = thrown((-0.6, 55 * FOOT, 1.8), velocity, Spin(2500 * RPM, 7.5, 0.9))
    assert error_at_plate(release, None, windy) < STEP_TOLERANCE

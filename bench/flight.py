"""Our flight beside scipy's `solve_ivp` at the same error, and a batch of pitches with numpy."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy.integrate import solve_ivp

from bench.measure import Figure, best_seconds
from calculators.physics.aim import launch_velocity, thrown
from calculators.physics.flight import PLATE_FRONT, STILL_AIR, Release, arrive
from calculators.physics.spin import Spin
from calculators.physics.units import DEGREE, FOOT, MPH, RPM

PITCHES = 100_000

Changes = Callable[[float, NDArray[np.float64]], Any]


def figures() -> Iterator[Figure]:
    """Measure and yield each figure.

    The solver is given the forces twice: with numpy, as they are usually written for it, and in plain
    floats, which suits it best.
    """
    release = one_pitch()
    exact = _by_scipy(release, 1e-12, _plain_changes(release))
    ours = arrive(release).position
    error = max(abs(ours[0] - exact[0]), abs(ours[2] - exact[1]))
    our_time = best_seconds(lambda: [arrive(release) for _ in range(200)]) / 200
    for written, changes, bound in (
        ("with numpy", _numpy_changes(release), 20.0),
        ("in plain floats", _plain_changes(release), 8.0),
    ):
        tolerance = _loosest_tolerance(release, exact, error, changes)
        times = _scipy_seconds(release, tolerance, changes) / our_time
        yield Figure(f"flight: times faster than solve_ivp, forces {written}, same error", times, bound, True)
    batch = many_pitches()
    yield Figure(
        f"flight: {PITCHES:,} pitches with numpy, seconds", best_seconds(lambda: arrive(batch), 3), 2
    )


def one_pitch() -> Release[float]:
    """Return a high-school curve on its way."""
    velocity = launch_velocity(70 * MPH, 3 * DEGREE, 1 * DEGREE)
    return thrown((-0.5, 54.5 * FOOT, 1.7), velocity, Spin(2100 * RPM, 6.8, 0.75))


def many_pitches() -> Release[NDArray[np.float64]]:
    """Return many pitches with speeds, directions and spins drawn with a fixed seed."""
    draw = np.random.default_rng(7)
    speed = draw.uniform(45, 95, PITCHES) * MPH
    velocity = launch_velocity(
        speed, draw.uniform(-2, 5, PITCHES) * DEGREE, draw.uniform(-2, 2, PITCHES) * DEGREE
    )
    spin = Spin(
        draw.uniform(1000, 2800, PITCHES) * RPM,
        draw.uniform(0, 12, PITCHES),
        draw.uniform(0.3, 1.0, PITCHES),
    )
    places = tuple(np.full(PITCHES, at) for at in (-0.5, 54.5 * FOOT, 1.7))
    return thrown((places[0], places[1], places[2]), velocity, spin)


def _loosest_tolerance(
    release: Release[float], exact: tuple[float, float], error: float, changes: Changes
) -> float:
    """Return the loosest relative tolerance at which the solver's own error is no larger than ours."""
    for tolerance in (10.0**power for power in range(-3, -12, -1)):
        found = _by_scipy(release, tolerance, changes)
        if max(abs(found[0] - exact[0]), abs(found[1] - exact[1])) <= error:
            return tolerance
    raise AssertionError("the solver never reaches our error")


def _scipy_seconds(release: Release[float], tolerance: float, changes: Changes) -> float:
    return best_seconds(lambda: [_by_scipy(release, tolerance, changes) for _ in range(20)]) / 20


def _plain_changes(release: Release[float]) -> Changes:
    sx, sy, sz = release.spin
    grip, drag, gravity = STILL_AIR.air_grip, STILL_AIR.drag, STILL_AIR.gravity
    radius = STILL_AIR.ball.radius

    def changes(_: float, state: NDArray[np.float64]) -> list[float]:
        vx, vy, vz = float(state[3]), float(state[4]), float(state[5])
        speed = (vx * vx + vy * vy + vz * vz) ** 0.5
        px, py, pz = sy * vz - sz * vy, sz * vx - sx * vz, sx * vy - sy * vx
        push = (px * px + py * py + pz * pz) ** 0.5
        ratio = radius * push / speed**2
        lift = grip * (1.5 * ratio if ratio < 0.1 else 0.09 + 0.6 * ratio) * speed**2 / push
        slow = grip * drag * speed
        return [vx, vy, vz, lift * px - slow * vx, lift * py - slow * vy, lift * pz - slow * vz - gravity]

    return changes


def _numpy_changes(release: Release[float]) -> Changes:
    spin, down = np.array(release.spin), np.array([0.0, 0.0, STILL_AIR.gravity])
    grip, drag, radius = STILL_AIR.air_grip, STILL_AIR.drag, STILL_AIR.ball.radius

    def changes(_: float, state: NDArray[np.float64]) -> NDArray[np.float64]:
        velocity = state[3:]
        speed = np.linalg.norm(velocity)
        push = np.cross(spin, velocity)
        ratio = radius * np.linalg.norm(push) / speed**2
        lift = 1.5 * ratio if ratio < 0.1 else 0.09 + 0.6 * ratio
        force = grip * lift * speed**2 * push / np.linalg.norm(push) - grip * drag * speed * velocity
        return np.concatenate([velocity, force - down])

    return changes


def _by_scipy(release: Release[float], tolerance: float, changes: Changes) -> tuple[float, float]:
    def plate(_: float, state: NDArray[np.float64]) -> float:
        return float(state[1]) - PLATE_FRONT

    plate.terminal = True  # type: ignore[attr-defined]
    start = [*release.position, *release.velocity]
    solved = solve_ivp(changes, (0, 3), start, "DOP853", rtol=tolerance, atol=tolerance / 10, events=plate)
    crossing = solved.y_events[0][0]
    return float(crossing[0]), float(crossing[2])

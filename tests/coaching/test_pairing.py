"""Two pitches side by side: nothing between twins, a mirror for the other hand, the parabola's hump."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.coaching.batting import commit_time
from calculators.coaching.pairing import (
    Pair,
    Part,
    Pitch,
    Setting,
    aimed,
    angle_apart,
    changed,
    crossing,
    doubts,
    merge,
    on_line_of,
    place_at_distance,
    place_at_time,
    pulls,
    split,
    too_close_in_speed,
)
from calculators.physics.aim import thrown
from calculators.physics.flight import PLATE_FRONT, STILL_AIR, Conditions, fly
from calculators.physics.spin import Spin, other_hand
from calculators.physics.units import FOOT, INCH, MPH, RPM

RIGHT_HANDER = Setting((-1.5 * FOOT, 55 * FOOT, 5.6 * FOOT))
ZONE = (0.0, 28 * INCH)
FASTBALL = Pitch(76 * MPH, Spin(2000 * RPM, 0.8, 0.93))
CURVE = Pitch(63 * MPH, Spin(2050 * RPM, 7.0, 0.78))

pitches = st.builds(
    lambda mph, rpm, clock, active: Pitch(mph * MPH, Spin(rpm * RPM, clock, active)),
    st.floats(50, 95),
    st.floats(800, 2800),
    st.floats(0, 12, exclude_max=True),
    st.floats(0, 1),
)


def mirrored(pitch: Pitch) -> Pitch:
    return Pitch(pitch.speed, other_hand(pitch.spin))


LEFT_HANDER = Setting((1.5 * FOOT, 55 * FOOT, 5.6 * FOOT))


@given(pitches)
def test_a_pitch_beside_itself_is_nowhere_apart(pitch: Pitch) -> None:
    flight = aimed(pitch, ZONE, RIGHT_HANDER)
    pair = Pair(flight, aimed(pitch, ZONE, RIGHT_HANDER))
    assert pair.later == 0
    assert pair.at_time(0.3).off_line == 0
    assert pair.hump() == 0
    assert angle_apart(pair.first, pair.second) == 0
    line = flight.start.velocity
    same = crossing(pitch, line, RIGHT_HANDER)
    assert split(same, same).apart == 0


@given(pitches, pitches)
def test_a_left_hander_throwing_the_mirror_image_gets_the_mirror_image(a: Pitch, b: Pitch) -> None:
    right = Pair(aimed(a, ZONE, RIGHT_HANDER), aimed(b, ZONE, RIGHT_HANDER))
    left = Pair(aimed(mirrored(a), ZONE, LEFT_HANDER), aimed(mirrored(b), ZONE, LEFT_HANDER))
    assert left.later == pytest.approx(right.later, abs=1e-9)
    assert left.hump() == pytest.approx(right.hump(), abs=1e-9)
    ours, theirs = right.at_time(0.25), left.at_time(0.25)
    assert (theirs.across, theirs.up, theirs.behind) == pytest.approx(
        (-ours.across, ours.up, ours.behind), abs=1e-9
    )


@given(pitches, pitches)
def test_every_small_change_works_alike_for_both_hands(a: Pitch, b: Pitch) -> None:
    line = aimed(a, ZONE, RIGHT_HANDER).start.velocity
    mirror_line = (-line[0], line[1], line[2])
    now, right = pulls(a, b, line, RIGHT_HANDER, right_handed=True)
    then, left = pulls(mirrored(a), mirrored(b), mirror_line, LEFT_HANDER, right_handed=False)
    assert then.apart == pytest.approx(now.apart, abs=1e-9)
    by_part = {pull.part: pull.apart for pull in left}
    assert {pull.part: pytest.approx(pull.apart, abs=1e-9) for pull in right} == by_part


@given(st.floats(50, 95), st.floats(30, 95))
def test_drag_cancels_from_the_ratio_of_flight_times(fast: float, slow: float) -> None:
    # With drag alone t = (e^(k d) - 1) / (k v0): times are as speeds turned over, whatever the drag.
    setting = replace(RIGHT_HANDER, conditions=Conditions(gravity=0.0))
    no_spin = Spin(0.0, 0.0, 1.0)
    line = (0.0, -1.0, 0.0)
    first = crossing(Pitch(fast * MPH, no_spin), line, setting).time
    second = crossing(Pitch(slow * MPH, no_spin), line, setting).time
    assert second / first == pytest.approx(fast / slow, rel=1e-6)


def test_the_hump_of_two_balls_without_air_is_the_gap_between_two_parabolas() -> None:
    # Thrown from one point to one point in a vacuum, two balls differ in height after a share s of the way
    # by g d^2 s (1 - s) (1/v2^2 - 1/v1^2) / 2, with v along the ground.
    setting = Setting((0.0, 55 * FOOT, 5.6 * FOOT), Conditions(density=1e-9))
    no_spin = Spin(0.0, 0.0, 1.0)
    pair = Pair(
        aimed(Pitch(80 * MPH, no_spin), ZONE, setting), aimed(Pitch(60 * MPH, no_spin), ZONE, setting)
    )
    v1, v2 = (-flight.start.velocity[1] for flight in (pair.first, pair.second))
    distance, gravity = 55 * FOOT - PLATE_FRONT, STILL_AIR.gravity
    for share in (0.2, 1 / 3, 0.5):
        gap = gravity * distance**2 * share * (1 - share) * (1 / v2**2 - 1 / v1**2) / 2
        assert pair.hump(share) == pytest.approx(gap, abs=2e-4)


@pytest.mark.parametrize(
    ("share_of_fastball", "ends_at", "inches"),
    [(0.82, 27.6, 13), (0.82, 14.4, 8), (0.72, 27.6, 18), (0.72, 14.4, 13), (0.91, 27.6, 7)],
)
def test_the_hump_is_as_large_as_coaches_meet_it(
    share_of_fastball: float, ends_at: float, inches: float
) -> None:
    # Common practice, high school: a downer at 82 percent rides 13 inches above the fastball for a strike
    # and 8 for a chase, a slow loop 18 and 13, a bullet slider 7. Taken to a quarter.
    fastball = Pitch(78 * MPH, Spin(2000 * RPM, 0.9, 0.93))
    slider, downer = Spin(2050 * RPM, 9.0, 0.4), Spin(2050 * RPM, 6.4, 0.88)
    curve = Pitch(share_of_fastball * fastball.speed, slider if share_of_fastball > 0.9 else downer)
    pair = Pair(
        aimed(fastball, (0.0, 27.6 * INCH), RIGHT_HANDER),
        aimed(curve, (0.0, ends_at * INCH), RIGHT_HANDER),
    )
    assert pair.hump() / INCH == pytest.approx(inches, rel=0.25)


def test_firmer_and_lower_shrink_the_hump() -> None:
    # Common practice: only firmer, lower or less depth makes the hump smaller.
    fast = aimed(FASTBALL, ZONE, RIGHT_HANDER)

    def hump(pitch: Pitch, height: float) -> float:
        return Pair(fast, aimed(pitch, (0.0, height), RIGHT_HANDER)).hump()

    plain = hump(CURVE, ZONE[1])
    assert hump(replace(CURVE, speed=66 * MPH), ZONE[1]) < plain
    assert hump(CURVE, 14 * INCH) < plain
    less_depth = replace(CURVE, spin=replace(CURVE.spin, active=0.5))
    assert hump(less_depth, ZONE[1]) < plain


def test_a_pitch_on_the_fastballs_line_leaves_in_its_direction() -> None:
    fast = aimed(FASTBALL, ZONE, RIGHT_HANDER)
    curve = on_line_of(fast, CURVE, RIGHT_HANDER)
    assert angle_apart(fast, curve) == pytest.approx(0, abs=1e-7)
    found = split(fast.end, curve.end)
    assert found == split(fast.end, crossing(CURVE, fast.start.velocity, RIGHT_HANDER))
    assert found.lower > 0
    assert found.across > 0, "a right-hander's curve at 7:00 moves to the catcher's right"


@pytest.mark.parametrize(
    ("part", "step"),
    [
        ("speed", lambda p: p.speed / MPH),
        ("rate", lambda p: p.spin.rate / RPM),
        ("clock", lambda p: p.spin.clock),
        ("active", lambda p: p.spin.active),
    ],
)
def test_each_change_touches_one_number_only(part: Part, step: Callable[[Pitch], float]) -> None:
    other = changed(CURVE, part, right_handed=True)
    by = {"speed": 1, "rate": 100, "clock": 0.25, "active": 0.05}[part]
    assert step(other) - step(CURVE) == pytest.approx(by)
    back = {
        "speed": replace(other, speed=CURVE.speed),
        "rate": replace(other, spin=replace(other.spin, rate=CURVE.spin.rate)),
        "clock": replace(other, spin=replace(other.spin, clock=CURVE.spin.clock)),
        "active": replace(other, spin=replace(other.spin, active=CURVE.spin.active)),
    }[part]
    assert back == CURVE


def test_an_active_share_that_cannot_rise_falls() -> None:
    whole = replace(CURVE, spin=replace(CURVE.spin, active=1.0))
    assert changed(whole, "active", right_handed=True).spin.active == pytest.approx(0.95)


def test_a_firmer_curve_comes_sooner_and_nearer_and_a_cleaner_one_farther() -> None:
    line = aimed(FASTBALL, ZONE, RIGHT_HANDER).start.velocity
    now, found = pulls(FASTBALL, CURVE, line, RIGHT_HANDER, right_handed=True)
    by_part = {pull.part: pull for pull in found}
    assert by_part["speed"].apart < 0
    assert by_part["speed"].split.later < now.later
    assert by_part["active"].apart > 0
    assert by_part["rate"].apart > 0
    sizes = [abs(pull.apart) for pull in found]
    assert sizes == sorted(sizes, reverse=True)


def test_doubts_name_every_number_of_both_pitches_once() -> None:
    line = aimed(FASTBALL, ZONE, RIGHT_HANDER).start.velocity
    found = doubts(FASTBALL, CURVE, line, RIGHT_HANDER, right_handed=True)
    named = {(each.which, each.cause) for each in found}
    assert named == {
        (which, cause)
        for which in ("first", "second")
        for cause in ("speed", "rate", "clock", "active", "lift")
    }
    assert len(found) == len(named)


@given(pitches, st.floats(0.02, 0.98))
def test_between_its_steps_the_path_is_the_one_a_finer_flight_takes(pitch: Pitch, share: float) -> None:
    flight = aimed(pitch, ZONE, RIGHT_HANDER)
    release = thrown(RIGHT_HANDER.hand, flight.start.velocity, pitch.spin)
    finer = fly(release, RIGHT_HANDER.conditions, steps=20 * (len(flight.moments) - 1))
    y = flight.start.position[1] + share * (PLATE_FRONT - flight.start.position[1])
    nearest = min(finer.moments, key=lambda moment: abs(moment.position[1] - y))
    at_distance = place_at_distance(flight, nearest.position[1])
    at_time = place_at_time(flight, nearest.time)
    for axis in range(3):
        assert at_distance[axis] == pytest.approx(nearest.position[axis], abs=3e-4)
        assert at_time[axis] == pytest.approx(nearest.position[axis], abs=1e-3)


def test_two_breaking_balls_within_an_hour_and_four_mph_run_into_one() -> None:
    # Common practice.
    assert merge(7.0, 70 * MPH, 8.0, 74 * MPH)
    assert not merge(7.0, 70 * MPH, 8.1, 74 * MPH)
    assert not merge(7.0, 70 * MPH, 8.0, 74.5 * MPH)
    assert merge(11.75, 70 * MPH, 0.25, 70 * MPH), "an hour is an hour across twelve as well"


def test_a_step_on_the_ladder_is_four_percent() -> None:
    # Common practice.
    assert too_close_in_speed(80.0, 77.0)
    assert not too_close_in_speed(80.0, 76.0)


def test_a_swing_at_a_ball_that_flies_four_tenths_starts_a_quarter_second_after_release() -> None:
    # Adair, The Physics of Baseball: a swing takes about 150 ms.
    assert commit_time(0.400) == pytest.approx(0.250)
    assert commit_time(0.1) == 0

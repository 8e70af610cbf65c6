"""Frames counted on a phone: what they say of speed and spin, and when they say something else."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.coaching.camera import (
    Filming,
    blur_turn,
    frame_rate_needed,
    longest_exposure,
    mean_speed,
    release_speed,
    spin_rate,
    stripe_clock,
)
from calculators.physics.drag import time_over
from calculators.physics.flight import Conditions, Release, arrive
from calculators.physics.spin import Spin, other_hand_clock, spin_vector
from calculators.physics.units import FOOT, MPH

RPM_OF = 60.0


@given(st.floats(10, 50), st.floats(5, 20), st.floats(1e-4, 0.02))
def test_undoing_drag_gives_back_the_speed_that_was_put_in(
    speed: float, distance: float, slowing: float
) -> None:
    # Wilcox, Basic Fluid Mechanics, problem 10.28: t = (e^(k d) - 1) / (k v0), solved for v0.
    assert release_speed(distance, time_over(distance, speed, slowing), slowing) == pytest.approx(speed)


def test_without_drag_the_speed_is_the_average() -> None:
    assert release_speed(16.0, 0.5, 0.0) == mean_speed(16.0, 0.5) == 32.0


def test_little_drag_is_no_trouble_for_the_arithmetic() -> None:
    assert release_speed(16.0, 0.5, 1e-12) == pytest.approx(32.0, rel=1e-9)


def test_a_mark_at_a_steady_rate_is_the_slowest_spin_with_the_same_pictures() -> None:
    # Sampling: a wheel with one spoke that makes 2700 turns a minute, filmed at 60 pictures a second, looks
    # as if it made 900 the other way round.
    film = Filming(60)
    assert film.looks_like(2700 / RPM_OF) * RPM_OF == pytest.approx(900)
    assert film.looks_like(3600 / RPM_OF) == pytest.approx(0)


def test_every_reading_with_the_same_pictures_is_listed_and_no_other() -> None:
    film = Filming(60)
    others = [rate * RPM_OF for rate in film.same_pictures(900 / RPM_OF, 5000 / RPM_OF)]
    assert others == pytest.approx([2700, 4500])


def pictures(turns_per_second: float, film: Filming) -> list[tuple[float, float]]:
    """Return where the mark is seen in twelve pictures; a mark with two equal halves is seen doubled."""
    angles = [2 * math.pi * turns_per_second * film.repeats * i / film.frames_per_second for i in range(12)]
    return [(math.cos(angle), abs(math.sin(angle))) for angle in angles]


@given(st.floats(5, 60), st.sampled_from([30, 60, 120, 240]), st.sampled_from([1, 2]))
def test_the_readings_listed_do_give_the_same_pictures_up_to_the_sense_of_turning(
    rate: float, frames_per_second: int, repeats: int
) -> None:
    film = Filming(frames_per_second, repeats)
    for other in film.same_pictures(rate, 80):
        for mine, theirs in zip(pictures(rate, film), pictures(other, film), strict=True):
            assert mine == pytest.approx(theirs, abs=1e-6)


@given(st.floats(5, 60), st.sampled_from([1, 2]))
def test_more_than_two_frames_in_each_repeat_leave_no_slower_reading(rate: float, repeats: int) -> None:
    # Shannon, Proc. IRE 37 (1949) 10.
    film = Filming(2.05 * rate * repeats, repeats)
    assert film.sees(rate)
    assert film.looks_like(rate) == pytest.approx(rate)
    assert not Filming(1.95 * rate * repeats, repeats).sees(rate)


@pytest.mark.parametrize(("fps", "frames"), [(30, 0.75), (60, 1.5), (120, 3), (240, 6), (480, 12)])
def test_frames_to_a_turn_at_2400_rpm(fps: float, frames: float) -> None:
    """2400 rpm is 40 turns a second."""
    assert Filming(fps).frames_a_repeat(2400 / RPM_OF) == pytest.approx(frames)


@pytest.mark.parametrize(("turns", "lost"), [(1, 2400 / 7), (2, 2400 / 13), (5, 2400 / 31), (10, 2400 / 61)])
def test_one_frame_more_costs_less_the_more_turns_are_counted(turns: int, lost: float) -> None:
    """At 240 frames a second 2400 rpm is six frames a turn, so a frame too many is one in seven, thirteen, ..."""
    assert spin_rate(turns, 6 * turns, 240) * RPM_OF == pytest.approx(2400)
    assert spin_rate(turns, 6 * turns + 1, 240) * RPM_OF == pytest.approx(2400 - lost)


def test_a_thousandth_of_a_second_is_a_twenty_fifth_of_a_turn_at_2400_rpm() -> None:
    assert math.degrees(blur_turn(2400 / RPM_OF, 1 / 1000)) == pytest.approx(360 / 25)


def test_a_spin_shorter_than_the_longest_exposure_does_not_smear() -> None:
    rate = 2400 / RPM_OF
    assert blur_turn(rate, longest_exposure(rate)) == pytest.approx(math.radians(10))
    assert frame_rate_needed(rate, 1, 4) == pytest.approx(160)


@given(st.floats(0, 12, exclude_max=True), st.booleans())
def test_a_camera_in_front_sees_the_mirror_image_of_one_behind(end: float, toward: bool) -> None:
    # The stripe's end is seen mirrored, and the side in front runs the other way than the side behind.
    behind = stripe_clock(end, toward, from_the_catcher=False)
    in_front = stripe_clock(other_hand_clock(end), not toward, from_the_catcher=True)
    assert math.cos(math.pi / 6 * (behind - in_front)) == pytest.approx(1)


@given(st.floats(0, 12, exclude_max=True))
def test_the_stripe_clock_is_where_the_ball_really_goes(clock: float) -> None:
    # The surface behind the ball moves with spin x place; it runs away from where spin pushes the ball.
    velocity = (0.0, -30.0, 0.0)
    spin = spin_vector(Spin(200.0, clock, 1.0), velocity)
    towards_pitcher = (0.0, 1.0, 0.0)
    surface = (
        spin[1] * towards_pitcher[2] - spin[2] * towards_pitcher[1],
        spin[0] * towards_pitcher[1] - spin[1] * towards_pitcher[0],
    )
    seen_end = math.atan2(-surface[0], surface[1]) * 6 / math.pi
    read = stripe_clock(seen_end % 12, runs_toward_end=True, from_the_catcher=False)
    moved = arrive(Release((0.0, 15.0, 2.0), velocity, spin), Conditions(gravity=0.0))
    x, _, z = moved.position
    pushed = math.atan2(-x, z - 2.0) * 6 / math.pi
    assert math.cos(math.pi / 6 * (read - pushed)) == pytest.approx(1, abs=1e-3)
    assert math.cos(math.pi / 6 * (read - clock)) == pytest.approx(1, abs=1e-9)


def test_half_a_foot_and_a_frame_change_speed_by_their_share() -> None:
    distance, time = 57 * FOOT, 145 / 240
    plain = release_speed(distance, time, 0.0062)
    assert release_speed(distance, 144 / 240, 0.0062) / plain == pytest.approx(145 / 144)
    assert plain / MPH == pytest.approx(67.9, abs=0.2)
    assert spin_rate(5, 35, 240) * RPM_OF == pytest.approx(2057, abs=1)

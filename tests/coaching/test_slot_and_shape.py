"""What an arm reaches, against what coaches hold: measure the fastball, mirror it, do not force the slot."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.coaching.clock_faces import hours_apart, read_clock
from calculators.coaching.slot_and_shape import (
    Arm,
    Reach,
    Shape,
    Slot,
    arm_angle,
    clock_doubt,
    fastball_clock,
    hours_to,
    instead_of,
    natural_shape,
    reach,
    read_shapes,
    read_slots,
    shape_for,
    slot_of,
)
from tests.coaching.content import handbook_shelf

SHAPES = {shape.slug: shape for shape in read_shapes(handbook_shelf().shapes)}
SLOTS = {slot.slug: slot for slot in read_slots(handbook_shelf().slots)}


def arm_from(slot: str) -> Arm:
    return Arm(SLOTS[slot].fastball.middle, SLOTS[slot])


def measured(clock: str) -> Arm:
    hours = read_clock(clock)
    return Arm(hours, slot_of(hours, SLOTS.values()))


def test_the_comparison_pitches_are_no_breaking_balls() -> None:
    assert set(SHAPES) == {
        "straight-downer",
        "hard-downer",
        "three-quarter-drop",
        "slurve",
        "sweeping-curve",
        "sweeper",
        "bullet-slider",
        "slow-loop",
    }


@pytest.mark.parametrize(
    ("slot", "not_to_be_forced"),
    [
        ("overhand", {"sweeping-curve", "sweeper"}),
        ("high-three-quarter", {"sweeper"}),
        ("three-quarter", {"straight-downer"}),
        ("low-three-quarter", {"straight-downer", "hard-downer"}),
        ("sidearm", {"straight-downer", "hard-downer", "three-quarter-drop"}),
    ],
)
def test_what_coaches_do_not_ask_of_a_slot_is_refused(slot: str, not_to_be_forced: set[str]) -> None:
    # Common practice, slot by slot.
    for shape in not_to_be_forced:
        assert reach(SHAPES[shape], arm_from(slot)) == Reach.FORCED


@pytest.mark.parametrize(
    ("slot", "realistic"),
    [
        ("overhand", {"straight-downer", "hard-downer", "slow-loop"}),
        (
            "high-three-quarter",
            {"straight-downer", "hard-downer", "three-quarter-drop", "bullet-slider", "slow-loop"},
        ),
        ("three-quarter", {"three-quarter-drop", "slurve", "sweeper", "bullet-slider"}),
        ("low-three-quarter", {"slurve", "sweeping-curve", "sweeper", "bullet-slider"}),
        ("sidearm", {"sweeping-curve", "sweeper", "bullet-slider"}),
    ],
)
def test_what_coaches_call_realistic_for_a_slot_is_never_refused(slot: str, realistic: set[str]) -> None:
    # Common practice, slot by slot.
    for shape in realistic:
        assert reach(SHAPES[shape], arm_from(slot)) < Reach.FORCED


def test_a_straight_downer_asked_from_low_three_quarter_gets_the_slurve() -> None:
    arm = arm_from("low-three-quarter")
    downer = SHAPES["straight-downer"]
    assert reach(downer, arm) == Reach.FORCED
    instead = instead_of((downer,), SHAPES.values(), arm)
    assert instead is not None
    assert instead.slug == "slurve"


def test_a_strike_is_stolen_from_low_three_quarter_with_a_shape_that_arm_reaches() -> None:
    pick = shape_for("steal-a-strike", SHAPES.values(), arm_from("low-three-quarter"))
    assert pick is not None
    assert "steal-a-strike" in pick.roles
    assert reach(pick, arm_from("low-three-quarter")) < Reach.FORCED


def test_no_shape_is_offered_for_a_role_that_would_force_the_arm() -> None:
    assert shape_for("slow-the-game", SHAPES.values(), arm_from("sidearm")) is None


@pytest.mark.parametrize(
    ("fastball", "natural"),
    [
        ("12:10", "straight-downer"),
        ("12:55", "three-quarter-drop"),
        ("1:45", "slurve"),
        ("2:30", "sweeping-curve"),
    ],
)
def test_the_natural_curve_is_the_one_opposite_the_fastball(fastball: str, natural: str) -> None:
    # Kimura and others 2023: the curve's direction follows from the four-seam fastball's.
    found = natural_shape(SHAPES.values(), measured(fastball))
    assert found is not None
    assert found.slug == natural


@pytest.mark.parametrize(
    ("minutes_away", "expected"),
    [(0, Reach.NATURAL), (44, Reach.NATURAL), (46, Reach.EDGE), (59, Reach.EDGE), (61, Reach.FORCED)],
)
def test_forty_five_minutes_are_in_reach_and_more_than_an_hour_is_not(
    minutes_away: int, expected: Reach
) -> None:
    # Common practice: the fastball's opposite plus or minus 0:45; beyond 1:00 the slot must change.
    shape = SHAPES["three-quarter-drop"]
    mirror = shape.clock.start - minutes_away / 60
    assert reach(shape, Arm((mirror + 6) % 12, slot=None)) == expected


def test_bullet_spin_has_no_clock_to_reach_for() -> None:
    for slot in SLOTS:
        assert reach(SHAPES["bullet-slider"], arm_from(slot)) == Reach.NATURAL


def test_the_slot_has_its_say_even_where_the_clock_would_allow() -> None:
    downer = SHAPES["straight-downer"]
    arm = measured("1:20")
    assert arm.slot == SLOTS["three-quarter"]
    assert hours_to(downer, arm) < 0.75
    assert reach(downer, arm) == Reach.FORCED


@pytest.mark.parametrize(
    ("out", "up", "degrees", "clock"),
    [(0, 30, 90, "12:00"), (30, 30, 45, "1:30"), (40, 0, 0, "3:00"), (30, -30, -45, "4:30")],
)
def test_the_arm_points_where_its_fastball_goes(out: float, up: float, degrees: float, clock: str) -> None:
    angle = arm_angle(out, up)
    assert math.degrees(angle) == pytest.approx(degrees)
    assert hours_apart(fastball_clock(angle), read_clock(clock)) == pytest.approx(0, abs=1e-9)


def test_two_thirds_explained_leaves_more_than_half_the_spread() -> None:
    # Int. J. Sports Sci. Coaching 2025: 67 percent of the variance, so 0.57 of the standard deviation stays.
    photo_apart = clock_doubt() ** 2 - (10 / 30) ** 2
    assert math.sqrt(photo_apart) / (20 / 30) == pytest.approx(0.57, abs=0.005)


@given(st.floats(0, 3.5))
def test_every_fastball_between_overhand_and_sidearm_has_a_slot(clock: float) -> None:
    assert slot_of(clock, SLOTS.values()) is not None


def test_a_clock_outside_every_slot_has_none() -> None:
    assert slot_of(read_clock("11:30"), SLOTS.values()) is None


@given(st.floats(10.5, 16), st.sampled_from(sorted(SHAPES)))
def test_what_is_offered_instead_never_forces_the_arm(fastball: float, asked: str) -> None:
    clock = fastball % 12
    arm = Arm(clock, slot_of(clock, SLOTS.values()))
    instead = instead_of((SHAPES[asked],), SHAPES.values(), arm)
    assert instead is None or reach(instead, arm) == Reach.NATURAL


def test_where_two_slots_meet_the_lower_one_is_taken() -> None:
    assert slot_of(read_clock("12:30"), SLOTS.values()) == SLOTS["high-three-quarter"]


def test_slots_and_shapes_are_read_as_written() -> None:
    assert isinstance(SLOTS["overhand"], Slot)
    downer = SHAPES["straight-downer"]
    assert isinstance(downer, Shape)
    assert downer.speed == pytest.approx((0.78, 0.84))
    assert downer.clock.start == pytest.approx(read_clock("5:45"))

"""The target: role and arm first, then the box, what it costs and what it must differ from."""

from __future__ import annotations

import pytest

from calculators.coaching.clock_faces import hours_apart
from calculators.coaching.target import Choice, Owned, Pitcher, Role, TargetError, targets
from calculators.coaching.throws import Hand
from tests.coaching.handbook import shapes, slots

ROLES: tuple[Role, ...] = (
    "swing-and-miss",
    "steal-a-strike",
    "ground-ball",
    "same-hand-hitter",
    "opposite-hand-hitter",
    "slow-the-game",
    "first-pitch",
)


def choose(role: Role, pitcher: Pitcher, *arsenal: Owned) -> Choice:
    return targets(role, pitcher, arsenal, shapes(), slots())


@pytest.mark.parametrize(
    ("slot", "reached", "forced"),
    [
        # The trade's chart from arm slot to curve: what is realistic, what not to force.
        ("overhand", {"straight-downer", "hard-downer", "slow-loop"}, {"sweeping-curve", "sweeper"}),
        ("three-quarter", {"three-quarter-drop", "slurve", "sweeper", "bullet-slider"}, {"straight-downer"}),
        ("low-three-quarter", {"slurve", "sweeping-curve", "sweeper"}, {"straight-downer", "hard-downer"}),
        ("sidearm", {"sweeping-curve", "sweeper"}, {"straight-downer", "hard-downer", "three-quarter-drop"}),
    ],
)
def test_the_arm_slot_decides_what_can_be_a_target(slot: str, reached: set[str], forced: set[str]) -> None:
    offered = {target.shape for role in ROLES for target in choose(role, Pitcher(slot, 18)).targets}
    assert reached <= offered
    assert not forced & offered


@pytest.mark.parametrize(
    ("role", "shape"),
    [
        ("swing-and-miss", "hard-downer"),
        ("steal-a-strike", "three-quarter-drop"),
        ("ground-ball", "hard-downer"),
        ("slow-the-game", "slow-loop"),
        ("first-pitch", "three-quarter-drop"),
    ],
)
def test_the_role_decides_which_of_them(role: Role, shape: str) -> None:
    assert shape in {target.shape for target in choose(role, Pitcher("high-three-quarter", 18)).targets}


def test_swings_and_misses_want_the_firm_half_of_the_speeds() -> None:
    for_swings = next(
        target
        for target in choose("swing-and-miss", Pitcher("overhand", 18)).targets
        if target.shape == "straight-downer"
    )
    for_strikes = next(
        target
        for target in choose("steal-a-strike", Pitcher("overhand", 18)).targets
        if target.shape == "straight-downer"
    )
    low, high = shapes()["straight-downer"]["speed_percent"]
    assert for_swings.box.speed == ((low + high) / 2, high)
    assert for_strikes.box.speed == (low, high)


@pytest.mark.parametrize(
    ("role", "shape", "most"),
    [("same-hand-hitter", "sweeper", 100), ("swing-and-miss", "bullet-slider", 50)],
)
def test_more_active_spin_spoils_a_bullet_slider_and_no_sweeper(role: Role, shape: str, most: float) -> None:
    """A sweeper's page stops at 77 percent; a pitcher with clean hands must not be told to have less."""
    target = next(one for one in choose(role, Pitcher("three-quarter", 18)).targets if one.shape == shape)
    assert target.box.active == (shapes()[shape]["active_percent"][0], most)


def test_a_measured_fastball_says_more_than_a_slot_seen_by_eye() -> None:
    """Seen as high three-quarter, but the fastball runs like a low arm's: no straight downer."""
    seen = choose("steal-a-strike", Pitcher("high-three-quarter", 18))
    measured = choose("steal-a-strike", Pitcher("high-three-quarter", 18, fastball_clock=2.25))
    assert "straight-downer" in {target.shape for target in seen.targets}
    assert "straight-downer" in {shape.shape for shape in measured.ruled_out}


def test_the_box_lies_where_the_arm_reaches() -> None:
    for role in ROLES:
        for slot in slots():
            for target in choose(role, Pitcher(slot, 18)).targets:
                if target.box.clock is not None and not target.edge:
                    assert target.hours <= 0.75
                    assert target.box.clock.half_width >= 0.24


def test_a_left_hander_gets_the_mirror_image() -> None:
    right = choose("same-hand-hitter", Pitcher("three-quarter", 18, "right", 1.5)).targets[0]
    left = choose("same-hand-hitter", Pitcher("three-quarter", 18, "left", 10.5)).targets[0]
    assert left.shape == right.shape
    assert left.box.speed == right.box.speed
    assert left.box.clock is not None
    assert right.box.clock is not None
    assert hours_apart(left.box.clock.start, 12 - right.box.clock.end) == pytest.approx(0)
    assert hours_apart(left.box.clock.end, 12 - right.box.clock.start) == pytest.approx(0)


def test_no_breaking_ball_is_a_target_before_thirteen() -> None:
    for role in ROLES:
        found = choose(role, Pitcher("high-three-quarter", 12))
        assert found.targets == ()
        assert found.ruled_out


def test_a_slider_that_is_too_alike_is_named_and_comes_last() -> None:
    slider = Owned("slider", 85.0, 7.75)
    found = choose("opposite-hand-hitter", Pitcher("three-quarter", 18, fastball=82.0), slider)
    clashing = {target.shape: target.clashes for target in found.targets}
    assert clashing["three-quarter-drop"][0].pitch == "slider"
    assert "merge" in clashing["three-quarter-drop"][0].message.values["apart"].text
    assert [bool(target.clashes) for target in found.targets] == sorted(
        bool(target.clashes) for target in found.targets
    )


def test_pitches_two_hours_apart_need_no_gap_in_speed() -> None:
    changeup = Owned("changeup", 83.0, 2.2, breaking=False)
    found = choose("steal-a-strike", Pitcher("three-quarter", 18), changeup)
    assert all(not target.clashes for target in found.targets)


def test_every_target_says_what_it_costs() -> None:
    for role in ROLES:
        for target in choose(role, Pitcher("high-three-quarter", 18)).targets:
            assert target.costs


@pytest.mark.parametrize(
    ("role", "shape"), [("swing-and-miss", "hard-downer"), ("ground-ball", "bullet-slider")]
)
@pytest.mark.parametrize("minutes", [0, 10, 20, 25])
def test_the_role_and_not_the_minutes_chooses_among_shapes_a_high_arm_has(role, shape, minutes: int) -> None:
    # Common practice: the hard downer before the sliders for a miss, the slider before it for a ground ball.
    found = choose(role, Pitcher("overhand", 18, fastball_clock=minutes / 60))
    assert found.targets[0].shape == shape


def test_a_called_strike_goes_from_the_downer_to_the_drop_with_no_loop_between() -> None:
    first = [
        choose("steal-a-strike", Pitcher("overhand", 18, fastball_clock=minutes / 60)).targets[0].shape
        for minutes in range(0, 91, 5)
    ]
    assert first == ["straight-downer"] * 6 + ["three-quarter-drop"] * 13


@pytest.mark.parametrize("age", [13, 15, 18])
@pytest.mark.parametrize("role", [role for role in ROLES if role != "slow-the-game"])
def test_the_slow_loop_is_never_first_where_another_shape_does_the_role(role: Role, age: int) -> None:
    for minutes in range(0, 211, 5):
        found = choose(role, Pitcher("three-quarter", age, fastball_clock=minutes / 60)).targets
        assert len(found) < 2 or found[0].shape != "slow-loop"


@pytest.mark.parametrize("minutes", range(0, 181, 10))
@pytest.mark.parametrize("hand", ["right", "left"])
def test_a_first_breaking_ball_is_aimed_around_the_opposite_of_the_arms_own_fastball(
    minutes: int, hand: Hand
) -> None:
    # Common practice: for a first breaking ball any direction near the fastball's opposite is taken.
    clock = minutes / 60 if hand == "right" else -minutes / 60 % 12
    found = choose("first-pitch", Pitcher("three-quarter", 13, hand, clock)).targets
    assert found
    for target in found:
        assert target.box.clock is not None
        assert hours_apart(target.box.clock.middle, (clock + 6) % 12) == pytest.approx(0, abs=1e-9)
        assert target.box.clock.half_width == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("clock", "shape"),
    [
        (0.0, "straight-downer"),
        (0.75, "three-quarter-drop"),
        (1.5, "three-quarter-drop"),
        (2 + 1 / 3, "slurve"),
        (2 + 2 / 3, "slurve"),
    ],
)
def test_every_young_arm_has_a_first_breaking_ball_of_its_own(clock: float, shape: str) -> None:
    # Common practice: a slurve is fine for a natural low three-quarter arm.
    found = choose("first-pitch", Pitcher("three-quarter", 13, fastball_clock=clock)).targets
    assert found[0].shape == shape
    assert not found[0].edge


def test_a_first_breaking_ball_may_begin_at_seventy_percent() -> None:
    # Common practice: the first speed is 70 to 75 percent of the fastball.
    found = {
        one.shape: one.box.speed for one in choose("first-pitch", Pitcher("high-three-quarter", 13)).targets
    }
    assert found == {"three-quarter-drop": (70.0, 86.0), "slow-loop": (68.0, 77.0)}
    later = choose("steal-a-strike", Pitcher("high-three-quarter", 13)).targets[0]
    assert later.box.speed == (80.0, 86.0)


@pytest.mark.parametrize(("role", "slot"), [("ground-ball", "underhand"), ("strikeout", "overhand")])
def test_words_the_handbook_does_not_know_are_refused(role: Role, slot: str) -> None:
    with pytest.raises(TargetError, match="there are"):
        choose(role, Pitcher(slot, 18))

"""The target: role and arm first, then the box, what it costs and what it must differ from."""

from __future__ import annotations

import pytest

from calculators.coaching.clock_faces import hours_apart
from calculators.coaching.target import Choice, Owned, Pitcher, Role, TargetError, targets
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


@pytest.mark.parametrize(("role", "slot"), [("ground-ball", "underhand"), ("strikeout", "overhand")])
def test_words_the_handbook_does_not_know_are_refused(role: Role, slot: str) -> None:
    with pytest.raises(TargetError, match="there are"):
        choose(role, Pitcher(slot, 18))

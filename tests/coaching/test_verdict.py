"""Keep, try again or drop: decided by what was aimed at, on enough days, and never with a slow arm."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

import pytest

from calculators.coaching.comparison import Trial, compare
from calculators.coaching.throws import Throw
from calculators.coaching.verdict import Aim, speed_price, standing, verdict
from tests.coaching.pens import MONDAY, trial_day

FASTER = Aim("speed", up=True)
MORE_DROP = Aim("up", up=False)


def days(count: int, gain: float, *, block: int = 10, up: float = 0.0) -> Sequence[Trial]:
    return [
        compare(
            trial_day(
                "box-line", gain, block=block, seed=day + 1, up=up, date=MONDAY + datetime.timedelta(day)
            ),
            "box-line",
        )
        for day in range(count)
    ]


@pytest.mark.parametrize(
    ("count", "block", "stands"),
    [
        (1, 4, "too few"),
        (1, 5, "hint"),
        (1, 10, "hint"),
        (2, 5, "hint"),
        (2, 10, "working answer"),
        (3, 10, "keep or drop"),
        (2, 30, "keep or drop"),
    ],
)
def test_how_far_throws_carry(count: int, block: int, stands: str) -> None:
    # Common practice: a block is a hint, ten and ten on two days a working answer, three outings or sixty
    # throws decide.
    assert standing(days(count, 2.0, block=block)) == stands


def test_two_trials_on_one_day_are_one_day() -> None:
    assert standing([*days(1, 2.0), *days(1, 2.0)]) == "hint"


def test_a_single_good_day_is_tried_again() -> None:
    found = verdict(days(1, 3.0), FASTER)
    assert (found.decision, found.standing) == ("try again", "hint")


def test_a_cue_that_keeps_working_is_kept() -> None:
    assert verdict(days(2, 3.0), FASTER).decision == "keep"
    final = verdict(days(3, 3.0), FASTER)
    assert (final.decision, final.standing) == ("keep", "keep or drop")


def test_a_cue_that_fails_twice_is_dropped_for_another_kind() -> None:
    found = verdict(days(2, 0.0), FASTER)
    assert found.decision == "drop"
    assert "another kind" in found.why.text


def test_a_cue_that_goes_the_wrong_way_is_dropped_at_once() -> None:
    assert verdict(days(1, -4.0), FASTER).decision == "drop"


def test_only_what_was_aimed_at_decides() -> None:
    assert verdict(days(3, 3.0), MORE_DROP).decision == "drop"


def test_slowing_the_arm_to_get_drop_is_a_fault() -> None:
    """Five inches more drop, four mph less: not a gain."""
    found = verdict(days(3, -4.0, up=-5.0), MORE_DROP)
    assert found.decision == "drop"
    assert "slowed down" in found.why.text
    assert found.difference is not None
    assert found.difference.change < -3


def test_drop_that_costs_no_speed_is_kept() -> None:
    assert verdict(days(3, 0.0, up=-5.0), MORE_DROP).decision == "keep"


def test_what_was_not_measured_cannot_be_judged() -> None:
    assert verdict(days(1, 0.0), Aim("strikes", up=True)).difference is not None
    trial = days(1, 0.0)[0]
    bare = Trial(trial.cue, trial.date, trial.before, trial.cued, trial.after, {}, {}, 1, ())
    assert verdict([bare], FASTER).difference is None


def test_short_blocks_on_several_days_are_not_called_a_single_day() -> None:
    found = verdict(days(2, 4.0, block=8), FASTER)
    assert found.decision == "try again"
    assert "single day" not in found.why.text


def test_four_throws_do_not_convict_an_arm_of_slowing() -> None:
    assert verdict(days(1, -6.0, block=4), MORE_DROP).decision == "try again"


BULLET = {"bullet": {"active_percent": [0, 40]}, "slurve": {"clock": ["7:30", "8:30"]}}
TOLD = [
    {"start": "any", "speed": {"goes": "down", "by": [1, 2]}},
    {"start": "bullet", "speed": {"goes": "down", "by": [2, 3]}},
    {"start": "slurve", "speed": {"goes": "down", "by": [3, 4]}, "unwanted": True},
]


@pytest.mark.parametrize(("active", "price"), [(30.0, 3.0), (70.0, 2.0)])
def test_a_cue_may_cost_what_its_entry_says_from_this_start_unless_the_entry_calls_that_bad(
    active: float, price: float
) -> None:
    plain = tuple(Throw(n, "breaking ball", speed=70, clock=8.0, active=active) for n in range(1, 9))
    trial = Trial("pull", MONDAY, plain, plain, (), {}, {}, 1, ())
    assert speed_price({"effects": TOLD}, [trial], "right", BULLET) == price

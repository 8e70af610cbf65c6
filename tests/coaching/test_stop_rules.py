"""When it ends: pain before every number, then a tired arm, then what the day and the age allow."""

from __future__ import annotations

import pytest

from calculators.coaching.stop_rules import Day, breaking_balls_allowed, fastball_drift, slowed, stops
from calculators.coaching.throws import FASTBALL, Throw
from tests.coaching.pens import breaking_balls

WELL = Day(pain=False, tired=False, soreness=0, slept_badly=False, game_yesterday=False)


def fast(*speeds: float) -> list[Throw]:
    return [Throw(number, FASTBALL, speed=speed) for number, speed in enumerate(speeds, start=1)]


def test_pain_silences_every_other_rule() -> None:
    worn = Day(pain=True, tired=True, soreness=8, slept_badly=True, game_yesterday=True)
    assert [stop.weight for stop in stops(worn, 15)] == ["stop"]


def test_a_question_about_pain_that_nobody_asked_comes_first() -> None:
    assert [stop.weight for stop in stops(Day(), 15)] == ["ask first"]


def test_a_day_with_nothing_wrong_holds_nothing_back() -> None:
    assert stops(WELL, 15) == ()


@pytest.mark.parametrize(
    ("day", "weight"),
    [
        (Day(pain=False, soreness=3), "spin throws at most"),
        (Day(pain=False, slept_badly=True), "spin throws at most"),
        (Day(pain=False, game_yesterday=True), "no breaking ball off a mound"),
        (Day(pain=False, tired=True), "end the session"),
    ],
)
def test_common_reasons_to_hold_back(day: Day, weight: str) -> None:
    assert [stop.weight for stop in stops(day, 15)] == [weight]


@pytest.mark.parametrize(
    ("age", "start", "now", "stop"),
    [
        # content/guide and plans: a fastball that has lost 2 mph ends the day; slower ones by their share.
        (16, 75.0, 73.0, True),
        (16, 75.0, 73.5, False),
        (13, 48.0, 46.0, True),
        (13, 45.0, 43.2, True),
        (20, 62.0, 60.1, True),
        (16, 62.0, 60.1, False),
    ],
)
def test_a_slower_fastball_is_a_tired_arm(age: int, start: float, now: float, stop: bool) -> None:
    drift = fastball_drift(fast(*[start] * 5, *[(start + now) / 2] * 4, *[now] * 3))
    assert drift is not None
    assert slowed(drift, age) is stop
    assert ("end the session" in [one.weight for one in stops(WELL, age, drift)]) is stop


def test_one_slow_fastball_among_three_does_not_end_the_day() -> None:
    drift = fastball_drift(fast(75, 75, 75, 75, 75, 75, 66, 75))
    assert drift is not None
    assert drift.lost == 0


def test_too_few_fastballs_say_nothing_about_tiredness() -> None:
    assert fastball_drift([*fast(75, 75, 75, 75), *breaking_balls(20)]) is None


@pytest.mark.parametrize(
    ("age", "throws", "allowed"),
    [
        # content/plans: at 13 and 14 a fifth of the day and never more than 15; later a quarter.
        (12, 80, 0),
        (13, 50, 10),
        (14, 100, 15),
        (15, 60, 15),
        (20, 100, 25),
    ],
)
def test_breaking_balls_are_a_share_of_the_day(age: int, throws: int, allowed: int) -> None:
    assert breaking_balls_allowed(throws, age) == allowed

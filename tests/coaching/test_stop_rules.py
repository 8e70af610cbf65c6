"""When it ends: pain before every number, then a tired arm, then what the day and the age allow."""

from __future__ import annotations

from gettext import NullTranslations

import pytest

from calculators.coaching.next_cue import Learner
from calculators.coaching.session_plan import Plan, Room, plan_session
from calculators.coaching.stop_rules import Day, breaking_balls_allowed, fastball_drift, slowed, stops
from calculators.coaching.throws import FASTBALL, Throw
from calculators.words import speak
from tests.coaching.handbook import drills, stages
from tests.coaching.pens import breaking_balls

WELL = Day(pain=False, tired=False, soreness=0, slept_badly=False, game_yesterday=False)


def fast(*speeds: float) -> list[Throw]:
    return [Throw(number, FASTBALL, speed=speed) for number, speed in enumerate(speeds, start=1)]


def test_pain_silences_every_other_rule() -> None:
    worn = Day(pain=True, tired=True, soreness=8, slept_badly=True, game_yesterday=True)
    assert [stop.weight for stop in stops(worn, 15)] == ["stop"]


@pytest.mark.parametrize("soreness", [6, 7.5, 10])
@pytest.mark.parametrize("pain", [False, None])
def test_high_soreness_counts_as_pain(soreness: float, pain: bool | None) -> None:
    """An estimate of the handbook: from 6 of 10 on it is no ordinary soreness, and nothing is thrown."""
    (stop,) = stops(Day(pain=pain, soreness=soreness, game_yesterday=True), 15)
    assert stop.weight == "stop"
    assert speak(stop.message, NullTranslations()).startswith("That much soreness counts as pain. Stop.")


def test_the_soreness_that_holds_back_begins_at_three_and_ends_below_six() -> None:
    # Common practice: sore 3 of 10 or more means spin throws only, or rest.
    weights = {sore: [stop.weight for stop in stops(Day(False, soreness=sore), 15)] for sore in (2.5, 3, 5.5)}
    assert weights == {2.5: [], 3: ["spin throws at most"], 5.5: ["spin throws at most"]}


def test_a_question_about_pain_that_nobody_asked_comes_first() -> None:
    assert [stop.weight for stop in stops(Day(), 15)] == ["ask first"]


def test_a_day_with_nothing_wrong_holds_nothing_back() -> None:
    assert stops(WELL, 15) == ()


@pytest.mark.parametrize(
    ("day", "weight"),
    [
        (Day(pain=False, soreness=3), "spin throws at most"),
        (Day(pain=False, slept_badly=True), "spin throws at most"),
        (Day(pain=False, game_yesterday=True), "no breaking ball"),
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


def spin_game(age: int, **changed: object) -> Plan:
    """Return the practice of a beginner whose club has one spin drill, written a little differently."""
    drill = {**drills()["soft-ball-spinners"], **changed}
    learner = Learner("none-yet", "spin-only")
    return plan_session(age, learner, WELL, Room(True, 60), {"soft-ball-spinners": drill}, stages())


def test_spin_games_begin_at_nine_whatever_a_drill_says_of_itself() -> None:
    # content/lists/age_gates.yml: no spin work at 8 and under (common practice).
    assert spin_game(8, youngest=6).parts == ()
    assert spin_game(9, youngest=6).parts


def test_fifteen_spin_throws_are_enough_whatever_a_drill_says_of_itself() -> None:
    # content/lists/age_gates.yml: no more than 15 gentle throws (common practice).
    assert spin_game(10, throws=(20, 30)).throws == 15

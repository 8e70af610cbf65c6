"""From a reading to what is missing, and from an entry to what it promises."""

from __future__ import annotations

from dataclasses import replace

import pytest

from calculators.coaching.clock_faces import Band
from calculators.coaching.cue_effects import expected, most_speed_lost, move
from calculators.coaching.gap import (
    Now,
    ball_now,
    level_at,
    mirror_of,
    now_from,
    right_handers,
    shortfalls,
)
from calculators.coaching.reading import read
from calculators.coaching.target import Pitcher, Target, targets
from calculators.coaching.throws import BREAKING_BALL, FASTBALL, Throw
from tests.coaching.handbook import cues, profiles, shapes, slots
from tests.coaching.pens import breaking_balls, fastballs, numbered


def hard_downer(**known) -> Target:
    choice = targets("swing-and-miss", Pitcher("overhand", 18, **known), (), shapes(), slots())
    return next(target for target in choice.targets if target.shape == "hard-downer")


def test_a_reading_tells_where_the_ball_is() -> None:
    now = now_from(read(numbered([*fastballs(10), *breaking_balls(20)]), BREAKING_BALL))
    assert now.speed == pytest.approx(100 * 65 / 80, abs=0.8)
    assert now.clock == pytest.approx(6.3, abs=0.15)
    assert now.active == pytest.approx(82, abs=3)
    assert now.strikes is not None
    assert now_from(read([], BREAKING_BALL)) == Now()


def test_what_may_be_luck_is_not_called_missing() -> None:
    """A value whose interval reaches the box counts as on its edge; one whose does not counts as it is."""
    reading = read(numbered([*fastballs(10), *breaking_balls(20)]), BREAKING_BALL)
    assert reading.speed_percent is not None
    assert reading.speed_percent.interval is not None
    plain, high = now_from(reading), reading.speed_percent.interval.high
    clock = reading.summaries["clock"].typical
    box = replace(
        hard_downer().box,
        speed=(high - 0.01, 99.0),
        clock=Band(clock.interval.high - 0.01, 9.0),
        active=(95.0, 100.0),
    )
    now = now_from(reading, box)
    assert (now.speed, now.clock) == (high - 0.01, clock.interval.high - 0.01)
    assert now.active == plain.active
    assert now_from(reading, replace(box, speed=(high + 0.01, 99.0))).speed == plain.speed


@pytest.mark.parametrize("count", [1, 3, 4])
def test_a_few_throws_decide_no_more_than_the_usual_scatter_lets_them(count: int) -> None:
    """Below five throws there is no interval of their own, and a raw value would count as certain."""
    box = replace(hard_downer().box, speed=(82.5, 99.0), clock=Band(6.6, 9.0), active=(85.0, 100.0))
    near = [Throw(n, BREAKING_BALL, speed=65.0, clock=6.25, active=82.0) for n in range(1, count + 1)]
    far = [replace(throw, speed=58.0, clock=3.0, active=40.0) for throw in near]
    fast = [Throw(n, FASTBALL, speed=80.0) for n in range(20, 30)]
    now = now_from(read([*fast, *near], BREAKING_BALL), box)
    assert (now.speed, now.clock, now.active, now.few) == (None, None, None, True)
    now = now_from(read([*fast, *far], BREAKING_BALL), box)
    assert (now.speed, now.clock, now.active) == (72.5, 3.0, 40.0)


def test_the_usual_scatter_is_that_of_the_level_and_shrinks_with_the_throws() -> None:
    # 1.645 * 20 minutes / sqrt(4) is 16 minutes in adults; 37 minutes at twelve, with 45 between throws.
    throws = [Throw(n, BREAKING_BALL, clock=6.0) for n in range(1, 5)]
    box = replace(hard_downer().box, clock=Band(6.5, 9.0))
    reading = read(throws, BREAKING_BALL)
    assert now_from(reading, box, "adult").clock == 6.0
    assert now_from(reading, box, "twelve_and_under").clock is None
    wide = replace(box, clock=Band(5.25, 6.75))
    assert now_from(reading, wide, "twelve_and_under").clock == 6.0
    assert now_from(reading, replace(box, clock=Band(5.75, 6.75)), "twelve_and_under").clock is None
    assert [level_at(age) for age in (12, 13, 18, 19)] == [
        "twelve_and_under",
        "high_school",
        "high_school",
        "adult",
    ]


def test_throws_enough_for_an_interval_of_their_own_go_by_it() -> None:
    reading = read(numbered([*fastballs(10), *breaking_balls(10)]), BREAKING_BALL)
    assert not now_from(reading, hard_downer().box).few


def test_a_ball_in_its_box_lacks_nothing() -> None:
    target = hard_downer()
    ball = ball_now("downer", Now(88.0, 6.4, 80.0), target, profiles())
    assert not any(shortfalls(ball, target.box).values())


def test_a_slow_downer_lacks_speed_and_nothing_else() -> None:
    target = hard_downer()
    lacking = shortfalls(ball_now("downer", Now(80.5, 6.4, 80.0), target, profiles()), target.box)
    assert {wish for wish, steps in lacking.items() if steps > 0} == {"speed"}
    assert lacking["speed"] == pytest.approx((target.box.speed[0] - 80.5) / 3)


def test_a_sweeping_ball_lacks_drop_on_the_way_to_a_slurve() -> None:
    choice = targets("same-hand-hitter", Pitcher("three-quarter", 18), (), shapes(), slots())
    slurve = next(target for target in choice.targets if target.shape == "slurve")
    lacking = shortfalls(ball_now("sweeping", Now(83.0, 9.0, 70.0), slurve, profiles()), slurve.box)
    assert lacking["clock"] == pytest.approx(0.75 / 0.5)
    assert lacking["drop"] > 0
    assert lacking["side"] == 0


def test_what_an_entry_says_of_a_start_comes_before_what_it_says_of_any() -> None:
    target = hard_downer(fastball=80.0)
    ball = ball_now("downer", Now(80.0, 6.25, 85.0), target, profiles())
    box = right_handers(target.box, target.pitcher)
    effect = expected(cues()["box-line"], "downer")
    change = move(effect, ball, mirror_of(target.pitcher, box), target.pitcher)
    # content/cues/box-line.md, from a downer: 1 to 2 mph more, about 7:00 on the clock, less drop, more side.
    assert change.speed == pytest.approx(100 * 1.5 / 80)
    assert ball.after(change).clock == pytest.approx(7.0)
    assert change.drop < 0 < change.side


@pytest.mark.parametrize(
    ("cue", "start", "mph"),
    [
        ("window-blind", "bullet", 3.0),
        ("handshake-over-the-plate", "sweeping", 1.0),
        ("box-line", "downer", 0.0),
    ],
)
def test_the_price_in_speed_that_an_entry_admits(cue: str, start: str, mph: float) -> None:
    assert most_speed_lost(expected(cues()[cue], start)) == mph

"""A cue trial is fair: plain, cue, plain again; the same pitch; and it says what it could not show."""

from __future__ import annotations

import math
import random
from dataclasses import replace

import pytest
from scipy import stats

from calculators.coaching.comparison import (
    SURE,
    TrialError,
    chance_needed,
    compare,
    false_winner_chance,
    smallest_change,
    together,
)
from calculators.coaching.ranks import chance
from calculators.coaching.throws import BREAKING_BALL, Session, Throw
from tests.coaching.pens import MONDAY, breaking_balls, numbered, trial_day


def texts(messages) -> str:
    return " ".join(message.text for message in messages)


def test_a_cue_worth_three_mph_shows_and_its_interval_holds_it() -> None:
    trial = compare(trial_day("box-line", 3.0), "box-line")
    assert (len(trial.plain), len(trial.cued)) == (20, 10)
    speed = trial.differences["speed"]
    assert speed.interval is not None
    assert speed.interval.holds(3.0)
    assert not speed.interval.holds(0.0)
    assert speed.chance < 0.01
    assert speed.cued - speed.plain == pytest.approx(speed.change, abs=0.6)


def test_a_useless_cue_shows_nothing_and_says_how_small_a_change_it_could_have_shown() -> None:
    speed = compare(trial_day("box-line", 0.0), "box-line").differences["speed"]
    assert speed.interval is not None
    assert speed.interval.holds(0.0)
    assert speed.smallest == pytest.approx(smallest_change(1.0, 20, 10), rel=0.3)


@pytest.mark.parametrize(("plain", "cued"), [(5, 5), (10, 10), (20, 10), (30, 30)])
def test_a_change_of_the_size_told_is_found_four_times_in_five_by_the_test_that_decides(plain, cued) -> None:
    """By simulation, with the rank test itself: the formula for a known scatter promises too much."""
    draw, days = random.Random(1), 1500
    size = smallest_change(1.0, plain, cued)
    found = sum(
        chance([draw.gauss(0, 1) for _ in range(plain)], [draw.gauss(size, 1) for _ in range(cued)]) <= SURE
        for _ in range(days)
    )
    assert 0.75 <= found / days <= 0.85


def test_with_many_throws_only_the_price_of_going_by_rank_is_left() -> None:
    # Hodges and Lehmann 1956: by rank it takes pi / 3 as many throws. Cohen 1988: (1.96 + 0.84) deviations.
    by_size = (stats.norm.ppf(0.975) + stats.norm.ppf(0.80)) * math.sqrt(2 / 5000)
    assert smallest_change(1.0, 5000, 5000) == pytest.approx(by_size * math.sqrt(math.pi / 3), rel=1e-3)


def test_fastballs_between_the_blocks_are_not_compared() -> None:
    trial = compare(trial_day("box-line", 0.0), "box-line")
    assert {throw.pitch for throw in (*trial.plain, *trial.cued)} == {BREAKING_BALL}


def test_one_wild_reading_does_not_decide() -> None:
    day = trial_day("box-line", 0.0)
    throws = [replace(one, speed=99.0) if one.cue and one.number == 14 else one for one in day.throws]
    change = compare(replace(day, throws=tuple(throws)), "box-line").differences["speed"]
    plain = compare(day, "box-line").differences["speed"]
    assert change.change == pytest.approx(plain.change, abs=0.5)


def test_clocks_are_compared_across_twelve() -> None:
    throws = [
        Throw(n, "cutter", cue="stay-closed-longer" if 10 < n <= 20 else "", clock=clock)
        for n, clock in enumerate(
            [11.75, 0.0, 11.9, 11.8, 0.05] * 2 + [0.25, 0.5, 0.4, 0.3, 0.55] * 2, start=1
        )
    ]
    clock = compare(Session(tuple(throws)), "stay-closed-longer", "cutter").differences["clock"]
    assert clock.change == pytest.approx(0.5, abs=0.1)
    assert clock.cued == pytest.approx(0.4, abs=0.05)
    assert clock.plain == pytest.approx(11.9, abs=0.05)


def test_a_trial_without_a_second_plain_block_cannot_tell_tiring_from_the_cue() -> None:
    day = trial_day("box-line", 2.0)
    early = replace(day, throws=tuple(throw for throw in day.throws if throw.block != 3))
    assert "Tiring and the cue cannot be told apart" in texts(compare(early, "box-line").cautions)
    assert "Tiring" not in texts(compare(day, "box-line").cautions)


def test_an_arm_that_slows_by_itself_is_pointed_out() -> None:
    day = trial_day("box-line", 0.0)
    late = [replace(one, speed=one.speed - 3) if one.block == 3 and one.speed else one for one in day.throws]
    trial = compare(replace(day, throws=tuple(late)), "box-line")
    drift = trial.differences["speed"].drift
    assert drift is not None
    assert drift.value == pytest.approx(-3, abs=1)
    assert "changed speed by themselves" in texts(trial.cautions)


def test_a_grip_changed_along_with_the_cue_spoils_the_trial() -> None:
    day = trial_day("box-line", 2.0)
    changed = [replace(one, grip="rails-curve" if one.cue else "basic-downer") for one in day.throws]
    assert "grip changed" in texts(compare(replace(day, throws=tuple(changed)), "box-line").cautions)


def test_only_the_plain_blocks_next_to_the_cue_count() -> None:
    blocks = [("", 1), ("box-line", 2), ("", 3), ("diagonal-slash", 4), ("", 5)]
    throws = [
        replace(throw, cue=cue, block=block)
        for cue, block in blocks
        for throw in breaking_balls(8, seed=block)
    ]
    trial = compare(Session(numbered(throws)), "box-line")
    assert {throw.block for throw in trial.plain} == {1, 3}
    assert trial.tried == 2
    assert "By luck alone" in texts(trial.cautions)


def test_five_by_five_is_a_hint_at_most() -> None:
    assert "hint at most" in texts(compare(trial_day("box-line", 2.0, block=5), "box-line").cautions)


@pytest.mark.parametrize(("tried", "chance"), [(1, 0.05), (2, 0.0975), (5, 0.2262), (10, 0.4013)])
def test_luck_grows_with_the_cues_tried(tried: int, chance: float) -> None:
    # 1 - 0.95 ** n.
    assert false_winner_chance(tried) == pytest.approx(chance, abs=5e-5)
    assert false_winner_chance(tried, chance_needed(tried)) == pytest.approx(0.05)


def test_strikes_are_compared_as_shares() -> None:
    thrown = [
        Throw(n, BREAKING_BALL, cue="start-at-the-mask" if n > 10 else "", strike=n % 2 == 0 or n > 16)
        for n in range(1, 21)
    ]
    strikes = compare(Session(tuple(thrown)), "start-at-the-mask").differences["strikes"]
    assert (strikes.plain, strikes.cued) == (0.5, 0.7)
    assert strikes.interval is not None
    assert strikes.interval.holds(0)


def test_a_steadier_cue_brings_throws_nearer_to_their_own_middle() -> None:
    throws = [
        replace(throw, cue=cue, block=block)
        for cue, block, spread in (("", 1, 1.0), ("set-wrist", 2, 0.2), ("", 3, 1.0))
        for throw in breaking_balls(12, seed=block, clock_spread=spread)
    ]
    clock = compare(Session(numbered(throws)), "set-wrist").steadier["clock"]
    assert clock.change < 0
    assert clock.chance < 0.05


def test_days_with_different_middles_are_put_together_by_what_the_cue_did() -> None:
    first = compare(trial_day("box-line", 2.0, seed=1), "box-line")
    second_day = trial_day("box-line", 2.0, seed=2, date=MONDAY.replace(day=6))
    cold = [replace(throw, speed=throw.speed - 4) if throw.speed else throw for throw in second_day.throws]
    second = compare(replace(second_day, throws=tuple(cold)), "box-line")
    both = together([first, second], "speed")
    assert both is not None
    assert both.interval is not None
    assert both.interval.holds(2.0)
    assert both.chance < 1e-4


def test_a_trial_needs_throws_of_both_kinds() -> None:
    plain_only = Session(numbered(breaking_balls(10)))
    with pytest.raises(TrialError) as caught:
        compare(plain_only, "box-line")
    assert "with the cue" in caught.value.message.text
    with pytest.raises(TrialError) as caught:
        compare(Session(tuple(replace(one, cue="box-line") for one in plain_only.throws)), "box-line")
    assert "without any cue" in caught.value.message.text

"""Promises kept: how often intervals hold the truth, and how often luck passes for a cue, by simulation.

The truth is put in by hand, so nothing but the claim itself is needed to check against: a 90 % interval holds
it 90 times in 100, and a test at 5 % cries wolf 5 times in 100.
"""

from __future__ import annotations

import random

import pytest

from calculators.coaching.comparison import chance_needed, compare, false_winner_chance
from calculators.coaching.intervals import wilson
from calculators.coaching.ranks import chance, shift, typical
from calculators.coaching.throws import Session, Throw

SESSIONS = 8000


def normal(draw: random.Random) -> float:
    return draw.gauss(0, 1.6)


def wild(draw: random.Random) -> float:
    """Mostly steady, one throw in eight wild."""
    return draw.gauss(0, 6 if draw.random() < 0.125 else 1.2)


def lopsided(draw: random.Random) -> float:
    """A long tail toward slow throws."""
    return -draw.expovariate(1 / 1.6)


@pytest.mark.parametrize("scatter", [normal, wild, lopsided], ids=lambda one: one.__name__)
@pytest.mark.parametrize("block", [5, 10])
def test_nine_in_ten_intervals_of_a_trial_hold_the_true_change(scatter, block: int) -> None:
    draw, held, true = random.Random(20), 0, 1.5
    for _ in range(SESSIONS):
        plain = [65 + scatter(draw) for _ in range(2 * block)]
        cued = [65 + true + scatter(draw) for _ in range(block)]
        found = shift(plain, cued).interval
        held += found is not None and found.holds(true)
    assert 0.88 <= held / SESSIONS <= 0.92


@pytest.mark.parametrize("scatter", [normal, wild], ids=lambda one: one.__name__)
def test_nine_in_ten_intervals_of_a_typical_throw_hold_the_true_middle(scatter) -> None:
    draw, held = random.Random(21), 0
    for _ in range(SESSIONS):
        found = typical([65 + scatter(draw) for _ in range(10)]).interval
        held += found is not None and found.holds(65)
    assert 0.88 <= held / SESSIONS <= 0.93


def test_an_arm_that_tires_evenly_does_not_pass_for_a_cue() -> None:
    """One mph lost over thirty throws: plain throws on both sides of the cue cancel it."""
    draw, held = random.Random(22), 0
    for _ in range(SESSIONS):
        speeds = [65 - throw / 30 + normal(draw) for throw in range(30)]
        found = shift([*speeds[:10], *speeds[20:]], speeds[10:20]).interval
        held += found is not None and found.holds(0)
    assert 0.88 <= held / SESSIONS <= 0.92


def test_nine_in_ten_intervals_of_a_share_hold_the_true_share() -> None:
    draw, held = random.Random(23), 0
    for _ in range(SESSIONS):
        true = draw.uniform(0.2, 0.8)
        found = wilson(sum(draw.random() < true for _ in range(20)), 20)
        held += found is not None and found.holds(true)
    assert 0.88 <= held / SESSIONS <= 0.92


def test_five_useless_cues_bring_a_false_winner_about_one_day_in_four() -> None:
    draw, fooled, fooled_when_allowed_for = random.Random(24), 0, 0
    for _ in range(600):
        chances = [
            chance([normal(draw) for _ in range(20)], [normal(draw) for _ in range(10)]) for _ in range(5)
        ]
        fooled += min(chances) <= 0.05
        fooled_when_allowed_for += min(chances) <= chance_needed(5)
    assert false_winner_chance(5) == pytest.approx(0.226, abs=5e-4)
    assert fooled / 600 == pytest.approx(false_winner_chance(5), abs=0.05)
    assert fooled_when_allowed_for / 600 <= 0.075


def test_a_change_of_the_smallest_size_is_found_about_four_days_in_five() -> None:
    """The power formula's promise, kept by the whole comparison with its ranks."""
    draw, found, days = random.Random(25), 0, 300
    for _ in range(days):
        throws = [
            Throw(
                10 * block + number,
                "breaking ball",
                cue="box-line" if block == 1 else "",
                block=block + 1,
                speed=draw.gauss(65 + (1.6 * 1.085 if block == 1 else 0), 1.6),
            )
            for block in range(3)
            for number in range(1, 11)
        ]
        trial = compare(Session(tuple(throws)), "box-line")
        found += trial.differences["speed"].chance <= 0.05
    assert found / days == pytest.approx(0.78, abs=0.06)

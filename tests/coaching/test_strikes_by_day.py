"""Strikes of several days: each day is compared with itself, and shuffling stays inside the day."""

from __future__ import annotations

import itertools
import random

import pytest
from scipy.stats import fisher_exact

from calculators.coaching.strikes_by_day import CalledDay, chance_of_strikes, change_of_strikes

BAD_DAY, GOOD_DAY = CalledDay(6, 30, 2, 10), CalledDay(8, 10, 24, 30)
"""A fifth are strikes on one day and four fifths on the other, with the cue or without it."""


def test_a_good_day_with_more_cued_throws_does_not_speak_for_the_cue() -> None:
    found = change_of_strikes([BAD_DAY, GOOD_DAY])
    assert found.change == pytest.approx(0, abs=1e-12)
    assert found.interval.holds(0)
    assert chance_of_strikes([BAD_DAY, GOOD_DAY]) == pytest.approx(1)


@pytest.mark.parametrize("day", [CalledDay(3, 10, 9, 10), CalledDay(12, 20, 4, 10), CalledDay(5, 7, 0, 6)])
def test_the_chance_of_one_day_is_fishers(day: CalledDay) -> None:
    # scipy's exact test counts the tables no likelier than this one; of equal groups these are those as far out.
    table = [
        [day.cued_strikes, day.cued - day.cued_strikes],
        [day.plain_strikes, day.plain - day.plain_strikes],
    ]
    if day.cued == day.plain:
        assert chance_of_strikes([day]) == pytest.approx(fisher_exact(table).pvalue)
    assert chance_of_strikes([day]) >= fisher_exact(table, "two-sided").pvalue / 2


def test_the_chance_over_days_is_that_of_every_shuffle_inside_the_days() -> None:
    days = [CalledDay(1, 3, 2, 2), CalledDay(1, 2, 2, 3)]
    sums = []
    for first in itertools.combinations((1, 1, 1, 0, 0), 2):
        for second in itertools.combinations((1, 1, 1, 0, 0), 3):
            sums.append(sum(first) + sum(second))
    expected = 2 * 3 / 5 + 3 * 3 / 5
    as_far = sum(abs(one - expected) >= abs(4 - expected) - 1e-9 for one in sums)
    assert chance_of_strikes(days) == pytest.approx(as_far / len(sums))


def test_nine_in_ten_intervals_hold_the_change() -> None:
    """Two uneven days, strikes rising by fifteen in a hundred on each: simulated."""
    draw = random.Random(7).random

    def hits(throws: int, share: float) -> int:
        return sum(draw() < share for _ in range(throws))

    held = sum(
        change_of_strikes(
            [
                CalledDay(hits(20, 0.35), 20, hits(10, 0.50), 10),
                CalledDay(hits(12, 0.60), 12, hits(24, 0.75), 24),
            ]
        ).interval.holds(0.15)
        for _ in range(1500)
    )
    assert 0.87 <= held / 1500 <= 0.93

"""What a cue trial can show at each level, from how much throws usually differ there (estimate)."""

from __future__ import annotations

import pytest

from calculators.coaching.comparison import USUAL_DEVIATION, Level, smallest_change


@pytest.mark.parametrize(
    ("level", "mph", "minutes", "inches"),
    [("adult", 1.7, 28, 2.8), ("high_school", 2.2, 42, 3.5), ("twelve_and_under", 2.8, 63, 2.8)],
)
def test_ten_against_ten_show_no_change_smaller_than_this(
    level: Level, mph: float, minutes: float, inches: float
) -> None:
    # content/drills/cue-trial.md prints the speeds; 20, 30 and 45 minutes from throw to throw give the clock.
    usual = USUAL_DEVIATION[level]
    assert smallest_change(usual["speed"], 10, 10) == pytest.approx(mph, abs=0.05)
    assert 60 * smallest_change(usual["clock"], 10, 10) == pytest.approx(minutes, abs=0.7)
    assert smallest_change(usual["up"], 10, 10) == pytest.approx(inches, abs=0.05)


def test_five_against_five_show_only_a_change_more_than_half_as_big_again() -> None:
    # content/drills/cue-trial.md says so in words.
    assert 1.5 < smallest_change(1.0, 5, 5) / smallest_change(1.0, 10, 10) < 1.6

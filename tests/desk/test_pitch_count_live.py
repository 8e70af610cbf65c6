"""What is called out during a game: the same days as the answer gives afterward, and before the batter comes up."""

from __future__ import annotations

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.desk.counter import answer
from calculators.desk.pitch_count_words import day_words
from calculators.workload.ages import Pitcher
from calculators.workload.availability import availability
from calculators.workload.library import rule_set
from calculators.workload.outings import Outing

TODAY = datetime.date(2026, 5, 16)


@pytest.fixture
def called(answered, spoken):
    def lines(thrown: int | None, before: int | None = None, **typed: object) -> list[str]:
        found = answered(
            "pitch-count",
            **{
                "rules": "little-league",
                "outings": (),
                "tonight": "" if thrown is None else str(thrown),
                "tonight_before": "" if before is None else str(before),
                **typed,
            },
        )
        return [spoken(line) for line in found.live]

    return lines


def test_nothing_is_called_out_without_a_game(called) -> None:
    assert called(None) == []


def test_before_the_first_pitch_nothing_is_owed(called) -> None:
    assert called(0)[0] == "No pitch yet, so nothing is owed for this game."


@pytest.mark.parametrize(
    ("thrown", "before", "leaving", "staying"),
    # Little League, Regulation VI: the first pitch to the last batter decides the rest. Examples kept by local
    # leagues (fcll.org: 45 before, 51 after; crnewtown.org: 34 before, 39 after, one day), and the step after each.
    [
        (51, 45, "Tuesday, May 19", "Wednesday, May 20"),
        (39, 34, "Monday, May 18", "Tuesday, May 19"),
        (35, 30, "Monday, May 18", "Tuesday, May 19"),
        (20, 15, "Sunday, May 17", "Monday, May 18"),
    ],
)
def test_what_the_next_batter_would_cost_is_called_out_first(
    called, thrown, before, leaving, staying
) -> None:
    lines = called(thrown, before)
    assert lines[0] == f"Before the next batter: one pitch to that batter moves the first day to {staying}."
    assert lines[1] == f"Leaving now: not before {leaving}."


def test_with_relief_only_a_batter_begun_past_the_step_counts(called) -> None:
    assert called(34, 30)[-1] == "A batter whose first pitch is number 36 moves it to Tuesday, May 19."


@pytest.mark.parametrize("away", range(2, 7))
def test_without_relief_a_step_within_one_batter_is_called_out_first(called, away) -> None:
    """One batter is taken as six pitches (estimate)."""
    assert called(36 - away, rules="usa-joint-2015")[0] == (
        "The next batter may see pitch number 36. That moves it to Tuesday, May 19."
    )


@pytest.mark.parametrize("away", [7, 11])
def test_farther_away_the_step_comes_last(called, away) -> None:
    assert called(36 - away, rules="usa-joint-2015")[-1] == (
        f"{away} more pitches, up to number 36, move it to Tuesday, May 19."
    )


class TestTheLimit:
    def test_it_is_called_out_one_batter_before_and_says_whether_a_batter_may_be_finished(
        self, called
    ) -> None:
        assert (
            called(80)[0] == "5 pitches to the limit of 85 pitches. A batter begun before it may be finished."
        )
        assert called(80, rules="usa-joint-2015")[0].endswith("These rules know no finishing of the batter.")

    def test_at_the_limit_there_is_no_further_batter(self, called) -> None:
        assert called(85, 80)[0] == "85 pitches: the limit today is reached. No further batter."
        assert called(85, rules="usa-joint-2015")[0].endswith("The pitcher leaves now.")

    def test_an_earlier_game_that_day_leaves_less(self, called) -> None:
        """PONY lets a pitcher come back in a second game that day; the counts add up."""
        earlier = ({"date": "2026-05-16", "pitches": "60"},)
        assert called(20, rules="pony", outings=earlier)[0].startswith(
            "5 pitches to the limit of 25 pitches."
        )


def test_who_may_not_pitch_tonight_is_stopped(called) -> None:
    lines = called(3, outings=({"date": "2026-05-15", "pitches": "60"},))
    assert lines == ["Stop: not eligible today under these rules (rest owed)."]


def test_rules_that_count_outs_say_that_pitches_do_not_decide(called) -> None:
    (line,) = called(12, rules="usssa-baseball")
    assert "count outs" in line


def test_two_rule_sets_call_out_the_stricter(called) -> None:
    alone = called(51, 45)
    both = called(51, 45, also="usa-joint-2015")
    assert "Leaving now: not before Tuesday, May 19." in alone
    assert "Leaving now: not before Wednesday, May 20." in both


def test_a_rule_set_that_counts_outs_does_not_silence_the_other(called) -> None:
    lines = called(51, 45, also="usssa-baseball")
    assert "Leaving now: not before Tuesday, May 19." in lines
    assert lines[-1].startswith("USSSA baseball, outs: These rules count outs.")


def test_rules_that_count_outs_stop_whoever_may_not_pitch_tonight(called) -> None:
    """USSSA: ten outs or more owe a day of rest."""
    yesterday = ({"date": "2026-05-15", "outs": "12"},)
    assert called(3, rules="usssa-baseball", outings=yesterday) == [
        "Stop: not eligible today under these rules (rest owed)."
    ]


class TestTheCatcher:
    """Regulation VI: 41 pitches end catching that day, 21 for whoever caught before; from 15 on, 31."""

    NEXT = "Before the next batter: one pitch to that batter ends catching today."

    def test_the_batter_whose_first_pitch_is_number_41_ends_it(self, called) -> None:
        assert self.NEXT in called(40, 36)
        assert not any("catching" in line for line in called(39, 36))
        assert "No more catching today: the limit for that, 41 pitches, is reached." in called(46, 40)

    def test_begun_before_it_the_batter_does_not_end_it(self, called) -> None:
        assert not any("No more catching" in line for line in called(44, 39))

    @pytest.mark.parametrize(("age", "limit"), [("12", 21), ("15", 31)])
    def test_whoever_caught_before_has_less(self, called, age, limit) -> None:
        caught = ({"date": "2026-05-16", "pitches": "0", "caught": "3"},)
        typed = {"age": age, "outings": caught}
        assert self.NEXT in called(limit - 1, limit - 3, **typed)
        assert f"The next batter may see pitch number {limit}. That ends catching today." in called(
            limit - 4, limit - 6, **typed
        )


def test_pain_stops_the_counter_whatever_else_is_wrong(answered, spoken) -> None:
    (line,) = answered("pitch-count", pain="yes", age="ninety", today="never", tonight="x").live
    assert spoken(line).startswith("Stop.")


@given(
    thrown=st.integers(1, 120),
    to_last=st.integers(0, 15),
    rules=st.sampled_from(["little-league", "usa-joint-2015", "pony", "kbsa-high-school-2019"]),
)
def test_the_day_called_out_is_the_day_the_answer_gives(arm_shelf, spoken, thrown, to_last, rules) -> None:
    before = max(0, thrown - 1 - to_last)
    typed = {"pain": "no", "rules": rules, "age": "12", "today": TODAY.isoformat(), "outings": ()}
    found = answer("pitch-count", {**typed, "tonight": str(thrown), "tonight_before": str(before)}, arm_shelf)
    alone = availability(
        rule_set(rules, arm_shelf.rules),
        Pitcher(age=12),
        [Outing(TODAY, thrown, before_last_batter=before)],
        TODAY,
    )
    day = spoken(day_words(alone.first_day, TODAY))
    assert any(line.startswith(f"Leaving now: not before {day}") for line in map(spoken, found.live))

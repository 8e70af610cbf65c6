"""A row that names pitcher and day but cannot be read in full is an outing of at least the daily limit."""

from __future__ import annotations

import datetime

import pytest

from calculators.workload.ages import Pitcher
from calculators.workload.availability import availability
from calculators.workload.board import board
from calculators.workload.cells import key_of
from calculators.workload.days import add_up_log
from calculators.workload.flags import flags
from calculators.workload.outings import Outing
from calculators.workload.reading import read_outings
from calculators.workload.totals import recent
from tests.workload.shelf import rules

SATURDAY = datetime.date(2026, 5, 16)
ANA = {"Ana": Pitcher(age=12)}
HEADS = "pitcher,date,pitches,before last batter,game,came back"


@pytest.mark.parametrize(
    ("row", "column", "trouble"),
    [
        ("Ana,2026-05-16,forty,,,", "pitches", "not a whole number"),
        ("Ana,2026-05-16,85.0,,,", "pitches", "not a whole number"),
        ("Ana,2026-05-16,-5,,,", "pitches", "not a whole number"),
        ("Ana,2026-05-16,+7,,,", "pitches", "not a whole number"),
        ("Ana,2026-05-16,400,,,", "pitches", "out of range"),
        ("Ana,2026-05-16,٤٠,,,", "pitches", "not a whole number"),
        ("Ana,2026-05-16,40,41,,", "before last batter", "more before the last batter than pitches"),
        ("Ana,2026-05-16,40,,first,", "game", "not a whole number"),
        ("Ana,2026-05-16,40,,,maybe", "came back", "not yes or no"),
        ("Ana,2026-05-16,40,,,,spare", "pitcher", "more cells than heads"),
    ],
)
def test_it_counts_as_the_daily_limit_and_is_reported(row, column, trouble) -> None:
    """Unknown count: the daily maximum. 85 pitches at 12 owe four days (Regulation VI)."""
    found = read_outings(f"{HEADS}\n{row}\n".encode(), ANA)
    assert (found.rows, found.used, found.refused) == (1, 1, ())
    assert [(note.row, note.column, note.trouble, note.as_limit) for note in found.notes] == [
        (2, column, trouble, True)
    ]
    (ana,) = board(rules("little-league"), ANA, found.outings, SATURDAY).rows
    assert ana.first_day == datetime.date(2026, 5, 21)
    assert (ana.last_7.known, ana.last_7.missing) == (0, 1)


def test_what_can_be_read_of_it_still_counts_where_that_is_more() -> None:
    found = read_outings(f"{HEADS}\nAna,2026-05-16,99,100,,\n".encode(), ANA)
    (day,) = add_up_log(rules("little-league"), ANA["Ana"], found.outings["Ana"]).values()
    assert day.total == 99


def test_without_a_day_the_row_is_left_out_and_its_pitcher_is_known() -> None:
    found = read_outings(f"{HEADS}\nAna,2026-05-1O,40,,,\n".encode(), ANA)
    assert (found.used, len(found.refused), found.left_out) == (0, 1, {"Ana"})


@pytest.mark.parametrize("other", ["O\u2019Neil", "O\u02bcNeil", "o'neil\u200b", "O\ufeff'Neil"])
def test_curly_apostrophes_and_signs_nobody_sees_do_not_make_another_name(other) -> None:
    assert key_of(other) == key_of("O'Neil")


def test_a_name_of_nothing_that_is_seen_is_no_name() -> None:
    found = read_outings(f"{HEADS}\n\u200b,2026-05-16,40,,,\n".encode(), ANA)
    assert [note.trouble for note in found.refused] == ["no name"]


def test_whoever_only_caught_is_asked_for_a_0() -> None:
    found = read_outings(b"pitcher,date,pitches,innings caught\nAna,2026-05-16,,3\n", ANA)
    assert [note.trouble for note in found.notes] == ["caught, no count"]


class TestOneGameWithTwoCounts:
    """A count that was corrected in a second row: the larger one counts, and it is said."""

    FIRST, AGAIN = Outing(SATURDAY, 30, game=1), Outing(SATURDAY, 31, game=1)

    @pytest.mark.parametrize("written", [(FIRST, AGAIN), (AGAIN, FIRST)])
    def test_the_larger_counts_once(self, written) -> None:
        answer = availability(rules("usa-joint-2015"), Pitcher(age=12), written, SATURDAY)
        assert answer.log[SATURDAY.toordinal()].total == 31
        assert "two counts" in [flag.kind for flag in flags(answer)]
        assert recent(written, SATURDAY)[0].known == 31

    @pytest.mark.parametrize(
        "other",
        [
            Outing(SATURDAY, 31, game=2),
            Outing(SATURDAY, 31, game=1, team="Blues"),
            Outing(SATURDAY, 31, game=1, reentered=True),
            Outing(SATURDAY, 31),
        ],
    )
    def test_another_game_another_team_or_a_second_stint_adds_up(self, other) -> None:
        answer = availability(rules("pony"), Pitcher(age=12), (self.FIRST, other), SATURDAY)
        assert answer.log[SATURDAY.toordinal()].total == 61

    def test_the_file_says_so(self) -> None:
        rows = "Ana,2026-05-16,30,,1,\nAna,2026-05-16,31,,1,\n"
        found = read_outings(f"{HEADS}\n{rows}".encode(), ANA)
        assert [(note.row, note.trouble) for note in found.notes] == [(3, "two counts")]


def test_totals_reach_back_from_the_first_day_there_is() -> None:
    assert recent((), datetime.date.min)[0].known == 0

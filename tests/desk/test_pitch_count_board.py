"""The league's board in words: on a page, in a spreadsheet and in a calendar."""

from __future__ import annotations

import datetime
import gettext
from typing import get_args

from calculators.desk.pitch_count_board import (
    TROUBLES,
    board_calendar,
    board_csv,
    board_table,
    row_note_words,
)
from calculators.words import speak
from calculators.workload.ages import Pitcher
from calculators.workload.board import board
from calculators.workload.cells import Trouble
from calculators.workload.outings import Outing
from calculators.workload.reading import RowNote
from calculators.workload.rest import ONE_DAY
from calculators.workload.tables import read_table
from tests.workload.shelf import rules

ENGLISH = gettext.NullTranslations()
DAY = datetime.date(2026, 5, 16)
ROSTER = {"=Ana": Pitcher(age=12), "Bo": Pitcher(age=12), "Cy": Pitcher(), "Di": Pitcher(age=30)}
OUTINGS = {
    "=Ana": [Outing(DAY, 66), Outing(DAY + ONE_DAY, 5)],
    "Bo": [Outing(DAY - 3 * ONE_DAY, 30), Outing(DAY - 2 * ONE_DAY, 10)],
}
LEAGUE = board(rules("little-league"), ROSTER, OUTINGS, DAY)


def cells(name: str) -> list[str]:
    spoken = [[speak(cell, ENGLISH) for cell in row] for row in board_table(LEAGUE).rows]
    return next(row for row in spoken if row[0] == name)


def test_a_pitcher_who_may_not_pitch_has_a_day_and_a_reason() -> None:
    row = cells("=Ana")
    assert row[2:5] == ["not yet", "none", "Thursday, May 21"]
    assert "66 pitches on Saturday, May 16: 4 days of rest owed" in row[5]
    assert row[8] == "1 outing after this day is not used."


def test_a_rule_that_was_passed_stands_beside_who_is_eligible() -> None:
    row = cells("Bo")
    assert row[2:5] == ["eligible", "85 pitches", "Saturday, May 16"]
    assert "pitched when a rule forbade it (rest owed)" in row[8]


def test_an_unknown_age_is_said() -> None:
    assert "the youngest group is used: Ages 7-8" in cells("Cy")[8]


def test_somebody_the_rules_do_not_cover_is_left_to_the_league() -> None:
    assert cells("Di")[1:4] == ["no group in these rules", "ask the league", "none"]


def test_the_caption_says_what_eligible_does_not_mean() -> None:
    assert "does not mean fit to pitch" in speak(board_table(LEAGUE).caption, ENGLISH)


def test_the_file_holds_a_row_a_pitcher_and_no_formula() -> None:
    table = read_table(board_csv(LEAGUE, ENGLISH).encode())
    assert [row.cells["pitcher"] for row in table.rows] == ["'=Ana", "Bo", "Cy", "Di"]


def test_the_calendar_holds_only_days_to_come() -> None:
    written = datetime.datetime(2026, 5, 16, tzinfo=datetime.UTC)
    text = board_calendar(LEAGUE, ENGLISH, written)
    assert text.count("BEGIN:VEVENT") == 1
    assert "DTSTART;VALUE=DATE:20260521" in text
    assert "fit to pitch" in text.replace("\r\n ", "")


def test_every_trouble_of_a_file_has_words_that_mend() -> None:
    assert set(TROUBLES) == set(get_args(Trouble))
    assert speak(row_note_words(RowNote(7, "pitches", "not a whole number", "forty")), ENGLISH) == (
        'Row 7, column "pitches", "forty": Use digits only, without decimals.'
    )

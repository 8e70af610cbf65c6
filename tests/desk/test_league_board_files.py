"""The files of a league's board: read however they were saved, every row accounted for, nothing lost or run."""

from __future__ import annotations

from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.desk.counter import answer
from calculators.desk.files import as_typed
from calculators.desk.league_board_words import TROUBLES, row_note_words
from calculators.workload.cells import Trouble
from calculators.workload.reading import RowNote
from calculators.workload.tables import read_table, write_table
from tests.desk.board_files import BOARD, OUTINGS, file


class TestOtherPeoplesFiles:
    """What office files look like. Heads: asked. Dates: asked. Encodings and line ends: read."""

    def test_a_missing_head_is_asked_for_with_the_heads_there_are(self, question) -> None:
        field, words, offers = question(roster="Player;Squad;Yrs\nAce;Reds;12\n")
        assert field == "roster_pitcher"
        assert "The first row has: player, squad, yrs. Which one is it?" in words
        assert offers == ("player", "squad", "yrs")

    def test_the_tapped_head_is_taken(self, board, cells) -> None:
        found = board(
            "Player;Squad;Yrs\nAce;Reds;12\n",
            "Who,When,Count\nAce,2026-05-15,66\n",
            roster_pitcher="Player",
            roster_team="squad",
            roster_age="yrs",
            outings_pitcher="who",
            outings_date="When",
            outings_pitches="COUNT",
        )
        assert cells(found, "Reds")[0][:3] == ["Ace", "Ages 11-12", "✕ not before Wed, May 20"]

    def test_a_head_that_is_not_there_is_asked_for_again(self, question) -> None:
        field, words, _ = question(roster_age="years old")
        assert field == "roster_age"
        assert 'There is no column "years old"' in words

    def test_without_any_age_or_count_the_board_asks_before_it_assumes(self, question, board, cells) -> None:
        assert question(roster="pitcher,yrs\nAce,12\n")[0] == "roster_age"
        assert question(outings="pitcher,date,count\nBo,2026-05-13,30\n")[::2] == (
            "outings_pitches",
            ("count", "-"),
        )
        found = board(outings="pitcher,date,count\nBo,2026-05-13,30\n", outings_pitches="-")
        assert any("There is no count" in row[1] for row in cells(found, "2 rows used"))

    @pytest.mark.parametrize("entered", ["5/6/2026", "13/5/2026", "5.6.2026", "05-06-2026"])
    def test_a_date_that_can_be_read_two_ways_is_asked_about_and_never_guessed(
        self, question, entered
    ) -> None:
        field, words, _ = question(outings=f"pitcher,date,pitches\nBo,{entered},30\n")
        assert field == "dates"
        assert f'Row 2 says "{entered}". Does the month or the day come first?' in words

    @pytest.mark.parametrize(
        ("order", "first_day"), [("month first", "Sat, May 9"), ("day first", "Mon, Jun 8")]
    )
    def test_the_answer_holds_for_the_whole_file(self, board, cells, order, first_day) -> None:
        found = board(
            "pitcher,age\nBo,12\n", "pitcher,date,pitches\nBo,5/6/2026,36\n", dates=order, today="2026-06-05"
        )
        state = cells(found, "Friday")[0][2]
        assert state == (
            "○ eligible, at most 85 pitches" if order == "month first" else f"✕ not before {first_day}"
        )

    def test_a_day_that_does_not_exist_in_that_order_is_refused(self, board, cells) -> None:
        found = board(outings="pitcher,date,pitches\nBo,13/5/2026,30\nBo,5/13/26,30\n", dates="month first")
        assert len(cells(found, "2 rows not used")) == 2

    def test_two_players_of_one_name_are_not_made_into_one(self, board, cells) -> None:
        found = board(
            "pitcher,team,age\nAce,Reds,12\nAce,Blues,9\n", "pitcher,date,pitches\nAce,2026-05-15,3\n"
        )
        assert (
            'Row 3, column "pitcher", "Ace": This name stands on the roster already'
            in cells(found, "1 row not")[0][1]
        )

    @pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
    @pytest.mark.parametrize("ends", ["\n", "\r\n", "\r"])
    @pytest.mark.parametrize("delimiter", [",", ";", "\t"])
    def test_it_is_read_however_it_was_saved(self, board, cells, asked, encoding, ends, delimiter) -> None:
        def saved(text: str) -> str:
            return file(text.replace(",", delimiter).replace("\n", ends), encoding)

        found = asked(
            BOARD,
            rules="little-league",
            roster=saved("pitcher,age\nZoë,12\n,\n"),
            outings=saved("pitcher,date,pitches\n\nzoë,2026-05-15,66\n"),
        )
        assert cells(found, "Saturday")[0][2] == "✕ not before Wed, May 20"

    def test_a_thousand_stray_columns_do_no_harm(self, board, spoken) -> None:
        heads = ",".join(f"extra {number}" for number in range(1000))
        found = board(
            outings=f"pitcher,date,pitches,{heads}\nBo,2026-05-13,30{',x' * 1000}\nBo,2026-05-12,1{',y' * 1001}\n"
        )
        facts = {spoken(fact.label): fact for fact in found.facts}
        assert spoken(facts["Rows of the outings"].note) == "2 used, 0 not used"
        assert spoken(facts["Columns not read"].value).endswith("(1000)")

    @pytest.mark.parametrize("data", [b"", b"PK\x03\x04\x00", b'pitcher,age\n"Ace,12\n'])
    def test_what_is_no_table_is_said_at_its_field(self, asked, data) -> None:
        found = asked(BOARD, roster=as_typed(data), outings=file(OUTINGS))
        assert [one.field for one in found] == ["roster"]


CELL = st.text(alphabet='Ab0123456789-/,;" \n\t=ë', max_size=10)
NAME = st.sampled_from(["=Ana", "bo", "Nobody", "", "Bo "])


class TestNothingIsLost:
    @given(
        st.lists(st.tuples(NAME, CELL, CELL), max_size=8), st.lists(st.tuples(NAME, CELL, CELL), max_size=6)
    )
    def test_rows_in_are_rows_computed_and_rows_reported(self, arm_shelf, rows, people) -> None:
        roster = write_table(("pitcher", "team", "age"), [*people, ("Bo", "", "12")])
        outings = write_table(("pitcher", "date", "pitches"), rows)
        found = answer(
            BOARD,
            {
                "rules": "little-league",
                "today": "2026-05-16",
                "roster": file(roster),
                "outings": file(outings),
                "dates": "month first",
            },
            arm_shelf,
        )
        roster_fact, outings_fact = found.facts[:2]
        counted = roster_fact.note.values
        assert int(counted["pitchers"]) + int(counted["joined"]) + int(counted["refused"]) == 1 + sum(
            any(cell.strip() for cell in row) for row in people
        )
        counted = outings_fact.note.values
        assert int(counted["used"]) + int(counted["refused"]) == sum(
            any(cell.strip() for cell in row) for row in rows
        )


class TestFilesToTakeAway:
    def test_no_cell_is_run_by_a_spreadsheet(self, board, files) -> None:
        table = read_table(files(board())["board-2026-05-16.csv"].encode())
        assert [row.cells["pitcher"] for row in table.rows] == ["'=Ana", "Bo", "Cy", "Di"]

    def test_the_board_as_a_table_has_days_as_iso_8601_writes_them(self, board, files) -> None:
        table = read_table(files(board())["board-2026-05-16.csv"].encode())
        ana = table.rows[0].cells
        assert (ana["may pitch under these rules"], ana["first day"]) == ("no", "2026-05-21")

    def test_the_rows_to_mend_are_all_in_their_file(self, board, files) -> None:
        outings = "pitcher,date,pitches\n" + "Nobody,2026-05-01,3\n" * 350
        table = read_table(files(board(outings=outings))["rows-to-mend-2026-05-16.csv"].encode())
        assert sum(row.cells["used"] == "no" for row in table.rows) == 350

    def test_the_calendar_holds_only_days_to_come(self, board, files) -> None:
        text = files(board())["first-days-2026-05-16.ics"]
        assert text.count("BEGIN:VEVENT") == 1
        assert "DTSTART;VALUE=DATE:20260521" in text


def test_every_trouble_of_a_file_has_words_that_mend(spoken) -> None:
    assert set(TROUBLES) == set(get_args(Trouble))
    assert spoken(row_note_words(RowNote(7, "pitches", "not a whole number", "forty"))) == (
        'Row 7, column "pitches", "forty": Use digits only, without decimals.'
    )

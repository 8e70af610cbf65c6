"""A league's files as they really come: every row is used or refused, and every refusal is placed."""

from __future__ import annotations

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.workload.ages import Pitcher
from calculators.workload.cells import civil_date
from calculators.workload.outings import Outing
from calculators.workload.reading import read_outings, read_roster
from calculators.workload.tables import MissingHeadError, TableError, defused, fused, read_table, write_table

ROSTER = {"Ana": Pitcher(age=12), "Zoë B": Pitcher(age=10)}


def outings(text: str):
    return read_outings(text.encode(), ROSTER)


def placed(notes) -> list[tuple[int, str, str]]:
    return [(note.row, note.column, note.trouble) for note in notes]


class TestTheFile:
    PLAIN = "pitcher,date,pitches\nAna,2026-05-16,40\nZoë B,2026-05-15,22\n"

    @pytest.mark.parametrize(
        ("data", "encoding"),
        [
            (PLAIN.encode(), "utf-8"),
            (b"\xef\xbb\xbf" + PLAIN.encode(), "utf-8-sig"),
            (PLAIN.encode("utf-16"), "utf-16"),
            (PLAIN.encode("latin-1"), "cp1252"),
            (PLAIN.replace("\n", "\r\n").encode(), "utf-8"),
            (PLAIN.replace("\n", "\r").encode(), "utf-8"),
            (PLAIN.replace(",", ";").encode(), "utf-8"),
            (PLAIN.replace(",", "\t").encode(), "utf-8"),
            (PLAIN.replace("\nZoë", "\n,,\n\nZoë").encode(), "utf-8"),
            (PLAIN.replace("pitcher,", "  PITCHER ,").encode(), "utf-8"),
        ],
    )
    def test_it_is_read_however_it_was_saved(self, data, encoding) -> None:
        found = read_outings(data, ROSTER)
        assert found.outings == {
            "Ana": [Outing(datetime.date(2026, 5, 16), 40)],
            "Zoë B": [Outing(datetime.date(2026, 5, 15), 22)],
        }
        assert (found.rows, found.used, found.refused, found.encoding) == (2, 2, (), encoding)

    def test_a_line_end_inside_quotes_is_part_of_the_cell(self) -> None:
        found = outings('pitcher,date,pitches\n"Zoë\nB",2026-05-16,40\nNobody,2026-05-16,1\n')
        assert found.outings == {"Zoë B": [Outing(datetime.date(2026, 5, 16), 40)]}
        assert placed(found.refused) == [(3, "pitcher", "not on the roster")]

    def test_a_quote_that_never_ends_is_refused_whole(self) -> None:
        """Else the rest of the file would vanish into one cell."""
        with pytest.raises(TableError, match="cannot be read"):
            outings('pitcher,date,pitches\nAna,2026-05-16,"40\nAna,2026-05-15,40\n')

    @pytest.mark.parametrize(
        ("data", "mend"),
        [
            (b"", "first row must hold the heads"),
            (b"pitcher,pitches\nAna,3\n", 'no column "date"'),
            (b"pitcher,date,date\n", "written twice"),
            (b"PK\x03\x04\x00\x00", "is not text"),
            (b"\xff\xfea", "is not. Save it as CSV again"),
        ],
    )
    def test_what_is_no_table_is_refused_with_what_to_do(self, data, mend) -> None:
        with pytest.raises(TableError, match=mend):
            read_outings(data, ROSTER)

    def test_heads_nobody_reads_are_named(self) -> None:
        assert outings("pitcher,date,speed\nAna,2026-05-16,60\n").unused_heads == ("speed",)


class TestOutings:
    @pytest.mark.parametrize(
        ("row", "column", "trouble"),
        [
            ("Anna,2026-05-16,40,,,", "pitcher", "not on the roster"),
            (",2026-05-16,40,,,", "pitcher", "no name"),
            ("Ana,5/16/2026,40,,,", "date", "not a date"),
            ("Ana,2026-02-30,40,,,", "date", "not a date"),
            ("Ana,,40,,,", "date", "not a date"),
        ],
    )
    def test_a_row_that_names_no_pitcher_or_no_day_is_refused_with_row_and_column(
        self, row, column, trouble
    ) -> None:
        heads = "pitcher,date,pitches,before last batter,game,came back"
        found = outings(f"{heads}\nAna,2026-05-01,10,,,\n{row}\nAna,2026-05-02,10,,,yes\n")
        assert placed(found.refused) == [(3, column, trouble)]
        assert (found.rows, found.used) == (3, 2)

    def test_names_match_whatever_the_capitals_and_spaces(self) -> None:
        found = outings("pitcher,date,pitches\n zoë   b ,2026-05-16,40\nZOË B,2026-05-12,40\n")
        assert list(found.outings) == ["Zoë B"]

    def test_a_name_in_letters_put_together_is_the_same_name(self) -> None:
        assert list(outings("pitcher,date\nZoe\u0308 B,2026-05-16\n").outings) == ["Zoë B"]

    def test_a_blank_count_is_unknown_and_noted(self) -> None:
        found = outings("pitcher,date,pitches\nAna,2026-05-16,\n")
        assert found.outings["Ana"][0].pitches is None
        assert placed(found.notes) == [(2, "pitches", "no count")]

    def test_no_pitches_stay_no_pitches(self) -> None:
        assert outings("pitcher,date,pitches\nAna,2026-05-16,0\n").outings["Ana"][0].pitches == 0

    def test_the_same_numbered_game_twice_is_refused_once(self) -> None:
        found = outings("pitcher,date,pitches,game\nAna,2026-05-16,40,1\nAna,2026-05-16,40,1\n")
        assert (found.used, placed(found.refused)) == (1, [(3, "pitcher", "written twice")])

    def test_without_a_game_number_it_may_be_a_second_game_and_counts(self) -> None:
        found = outings("pitcher,date,pitches\nAna,2026-05-16,40\nAna,2026-05-16,40\n")
        assert (found.used, placed(found.notes)) == (2, [(3, "pitcher", "written twice")])

    CELL = st.text(alphabet='Ana0123456789-,;" \n\tëZ=', max_size=12)

    @given(st.lists(st.tuples(st.sampled_from(["Ana", "zoë b", "Nobody", ""]), CELL, CELL), max_size=8))
    def test_rows_in_are_rows_used_and_rows_refused(self, rows) -> None:
        text = write_table(("pitcher", "date", "pitches"), rows)
        found = outings(text)
        filled = sum(any(cell.strip() for cell in row) for row in rows)
        assert found.rows == filled == found.used + len(found.refused)


class TestRoster:
    def test_ages_come_as_years_birth_dates_or_levels(self) -> None:
        found = read_roster(
            b"pitcher,age,born,level\nA,12,,\nB,,2014-08-31,\nC,,2014-02,\nD,,2014,\nE,,,Grades 9-12\n"
        )
        assert found.pitchers == {
            "A": Pitcher(age=12),
            "B": Pitcher(born=datetime.date(2014, 8, 31)),
            "C": Pitcher(born=datetime.date(2014, 2, 28)),
            "D": Pitcher(born=datetime.date(2014, 12, 31)),
            "E": Pitcher(level="grades-9-12"),
        }

    @pytest.mark.parametrize(
        ("row", "notes"),
        [
            ("A,,", [(2, "age", "no age")]),
            ("A,twelve,", [(2, "age", "not a whole number"), (2, "age", "no age")]),
            ("A,99,", [(2, "age", "out of range"), (2, "age", "no age")]),
            ("A,,31.8.2014", [(2, "born", "not a date"), (2, "age", "no age")]),
            ("A,12,2014-08-31", [(2, "age", "two ages")]),
        ],
    )
    def test_an_age_that_is_missing_or_wrong_is_noted_and_stays_unknown(self, row, notes) -> None:
        found = read_roster(f"pitcher,age,born\n{row}\n".encode())
        assert placed(found.notes) == notes
        assert (found.rows, len(found.pitchers), found.refused) == (1, 1, ())

    def test_a_name_twice_is_refused_the_second_time(self) -> None:
        found = read_roster(b"pitcher,age\nAna,12\nANA,10\n,9\n")
        assert found.pitchers == {"Ana": Pitcher(age=12)}
        assert placed(found.refused) == [(3, "pitcher", "name twice"), (4, "pitcher", "no name")]
        assert found.rows == len(found.pitchers) + len(found.refused)

    @pytest.mark.parametrize("born", ["9999-12", "0000", "0000-05", "2014-13"])
    def test_no_birth_date_breaks_the_reading(self, born) -> None:
        assert read_roster(f"pitcher,born\nA,{born}\n".encode()).rows == 1


class TestOneArmOnTwoTeams:
    def test_the_same_name_and_age_on_another_team_is_one_arm(self) -> None:
        found = read_roster(b"pitcher,team,age\nAna,Reds,12\nana,Blues,12\n")
        assert found.pitchers == {"Ana": Pitcher(age=12)}
        assert found.teams == {"Ana": ("Reds", "Blues")}
        assert (found.rows, found.joined, placed(found.notes)) == (2, 1, [(3, "pitcher", "on two teams")])

    @pytest.mark.parametrize("row", ["Ana,Blues,11", "Ana,Blues,", "Ana,Reds,12", "Ana,,12"])
    def test_whoever_may_be_somebody_else_is_refused(self, row) -> None:
        found = read_roster(f"pitcher,team,age\nAna,Reds,12\n{row}\n".encode())
        assert placed(found.refused) == [(3, "pitcher", "name twice")]
        assert found.teams == {"Ana": ("Reds",)}


class TestPain:
    def test_a_mark_of_pain_is_read(self) -> None:
        found = read_roster(b"pitcher,age,pain\nAna,12,Yes\nBo,12,no\nCy,12,\n")
        assert found.in_pain == {"Ana"}

    def test_a_mark_that_cannot_be_read_counts_as_pain(self) -> None:
        found = read_roster(b"pitcher,age,pain\nAna,12,a little\n")
        assert found.in_pain == {"Ana"}
        assert placed(found.notes) == [(2, "pain", "pain not told")]

    def test_pain_marked_with_either_team_is_pain(self) -> None:
        found = read_roster(b"pitcher,team,age,pain\nAna,Reds,12,\nAna,Blues,12,yes\n")
        assert found.in_pain == {"Ana"}


class TestOtherHeads:
    def test_a_column_is_read_under_the_head_it_has(self) -> None:
        headings = {"pitcher": "Player  Name", "date": "GAME DATE", "pitches": "np"}
        found = read_outings(b"player name;game date;NP\nAna;2026-05-16;40\n", ROSTER, headings)
        assert found.outings == {"Ana": [Outing(datetime.date(2026, 5, 16), 40)]}

    def test_a_mapped_head_wins_over_our_own_of_that_name(self) -> None:
        found = read_outings(
            b"pitcher,who,date,pitches\ncoach,Ana,2026-05-16,4\n", ROSTER, {"pitcher": "who"}
        )
        assert list(found.outings) == ["Ana"]
        assert found.unused_heads == ("pitcher (-)",)

    def test_a_column_that_is_said_not_to_be_there_is_not_read(self) -> None:
        found = read_outings(b"pitcher,date,pitches\nAna,2026-05-16,4\n", ROSTER, {"pitches": "-"})
        assert found.outings["Ana"][0].pitches is None

    def test_a_head_the_file_lacks_is_named_with_those_it_has(self) -> None:
        with pytest.raises(MissingHeadError) as missing:
            read_outings(b"Who,When\nAna,2026-05-16\n", ROSTER, {"pitcher": "who", "date": "day"})
        assert (missing.value.column, missing.value.heads) == ("date", ("who", "when"))


class TestDates:
    @pytest.mark.parametrize(
        ("order", "entered", "day"),
        [
            ("year first", "2026-05-06", datetime.date(2026, 5, 6)),
            ("year first", "5/6/2026", None),
            ("month first", "5/6/2026", datetime.date(2026, 5, 6)),
            ("day first", "5/6/2026", datetime.date(2026, 6, 5)),
            ("day first", "05.06.2026", datetime.date(2026, 6, 5)),
            ("month first", "2026-05-06", datetime.date(2026, 5, 6)),
            ("month first", "13/5/2026", None),
            ("month first", "5/6/26", None),
            ("month first", "5/6-2026", None),
            ("day first", "31/4/2026", None),
        ],
    )
    def test_a_date_is_read_in_the_order_it_was_said_to_have_or_not_at_all(self, order, entered, day) -> None:
        assert civil_date(entered, order) == day


class TestFormulas:
    @pytest.mark.parametrize(
        "cell", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "＝1+1", " =1+1", "'=1+1", "''=1"]
    )
    def test_a_cell_a_spreadsheet_would_run_is_written_as_text(self, cell) -> None:
        """The signs that start a formula: OWASP, CSV Injection, and their full-width forms."""
        assert defused(cell) == "'" + cell
        assert fused(defused(cell)) == cell

    @given(st.text(alphabet="=+-@'\t\r\n ab1", max_size=6))
    def test_the_way_back_is_exact(self, cell) -> None:
        assert fused(defused(cell)) == cell

    def test_what_is_written_is_read_again(self) -> None:
        rows = [("=cmd", 'say "hi"', "a,b"), ("Zoë", "two\nlines", "x;y")]
        table = read_table(write_table(("one", "two", "three"), rows).encode())
        assert [tuple(fused(cell) for cell in row.cells.values()) for row in table.rows] == rows

    def test_lines_end_as_rfc_4180_has_it(self) -> None:
        assert write_table(("a", "b"), [("1", "2")]) == "a,b\r\n1,2\r\n"

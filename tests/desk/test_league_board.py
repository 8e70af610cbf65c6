"""The league's board: every row accounted for, nothing guessed, the same answer as for one pitcher alone."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable

import pytest

from calculators.desk.answers import Answer
from calculators.desk.counter import answer
from calculators.workload.tables import read_table
from tests.desk.board_files import BOARD, OUTINGS, ROSTER, file


@pytest.fixture
def told_alone(arm_shelf, spoken) -> Callable[..., str]:
    """The first day, as a table writes it, that the page for one pitcher tells a 12-year-old of Little League."""

    def ask(**typed: object) -> str:
        known = {"pain": "no", "rules": "little-league", "age": "12", "today": "2026-05-16"}
        alone = answer("pitch-count", {**known, **typed}, arm_shelf)
        day = re.search(r"(\w{3})\w*, (\w{3})\w* (\d+)\.", spoken(alone.headline))
        return f"{day[1]}, {day[2]} {day[3]}"

    return ask


class TestTheMadeUpLeague:
    """content/demo, whose mistakes were put in on purpose, with the answer counted by hand."""

    def test_the_headline_counts_who_is_eligible(self, answered, spoken) -> None:
        found = answered(BOARD)
        assert spoken(found.headline) == (
            "On Saturday, May 16, 8 of 15 pitchers are eligible under USA Baseball and MLB joint guideline."
        )

    def test_every_row_is_accounted_for(self, answered, spoken) -> None:
        facts = {
            spoken(fact.label): (spoken(fact.value), spoken(fact.note)) for fact in answered(BOARD).facts[:2]
        }
        assert facts == {
            "Rows of the roster": ("16", "15 pitchers, 1 joined to one of them, 0 not used"),
            "Rows of the outings": ("24", "22 used, 2 not used"),
        }

    def test_what_cannot_be_used_stands_with_row_column_and_mend(self, answered, cells) -> None:
        assert cells(answered(BOARD), "2 rows not used") == [
            [
                "Outings",
                'Row 24, column "pitcher", "Tugbaot": '
                "This name is not on the roster. Correct it, or add it to the roster.",
            ],
            [
                "Outings",
                'Row 25, column "date", "2026-05-1O": Write the date as year-month-day, like 2026-05-16.',
            ],
        ]

    def test_each_rule_that_was_broken_is_quoted(self, answered, cells) -> None:
        assert cells(answered(BOARD), "4 rules broken") == [
            ["Fri, May 15", "Number 21", "pitched on day 3 in a row", "At most 2 days in a row."],
            [
                "Thu, May 14",
                "Comet",
                "pitched again after 45 pitches on Wed, May 13",
                "45 pitches in a day owe 2 days of rest: not before Sat, May 16.",
            ],
            [
                "Wed, May 13",
                "Dumpling",
                "pitched again after 50 pitches on Mon, May 11",
                "50 pitches in a day owe 2 days of rest: not before Thu, May 14.",
            ],
            ["Sat, May 9", "Number 7", "88 pitches that day", "At most 85 pitches in a day."],
        ]

    def test_an_arm_on_two_teams_is_one_arm_and_stands_on_both_sheets(self, answered, cells) -> None:
        found = answered(BOARD)
        for team, other in (("Quarry", "Saturday Nine"), ("Saturday Nine", "Quarry")):
            row = next(row for row in cells(found, team) if row[0] == "Comet")
            assert row[4] == "75; 75"
            assert f"Pitches for {other} too; all of it counts." in row[5]

    def test_pain_leaves_no_day_and_no_ceiling(self, answered, cells, files) -> None:
        found = answered(BOARD)
        row = next(row for row in cells(found, "Herons") if row[0] == "Waffle")
        assert row[2:4] == ["✕ stop: pain. See a clinician", "–"]
        assert "Waffle" not in files(found)["first-days-2026-05-16.ics"]
        table = read_table(files(found)["board-2026-05-16.csv"].encode())
        waffle = next(one.cells for one in table.rows if one.cells["pitcher"] == "Waffle")
        assert (waffle["at most"], waffle["first day"]) == ("", "")

    def test_it_says_that_it_is_made_up(self, answered, spoken) -> None:
        assert any("made up" in spoken(line) for line in answered(BOARD).more)

    def test_it_never_stands_beside_a_file_of_the_readers_own(self, asked, spoken) -> None:
        found = asked(BOARD, roster=file(ROSTER))
        assert found[0].field == "outings"
        assert "made up" in spoken(found[0].message)


class TestStandings:
    def test_whoever_may_not_pitch_has_a_day_and_a_reason(self, board, cells) -> None:
        row = cells(board(), "Reds")[0]
        assert row[:3] == ["=Ana", "Ages 11-12", "✕ not before Thu, May 21"]
        assert "66 pitches on Saturday, May 16: 4 days of rest owed" in row[3]
        assert row[5] == "1 outing after this day is not used."

    def test_a_broken_rule_does_not_make_a_pitcher_less_eligible(self, board, cells) -> None:
        row = cells(board(), "Reds")[1]
        assert row[2] == "○ eligible, at most 85 pitches"
        assert "1 rule broken" in row[5]

    def test_an_unknown_age_is_the_youngest_group(self, board, cells) -> None:
        row = cells(board(), "Saturday")[0]
        assert row[:2] == ["Cy", "Ages 7-8"]
        assert "No age given" in row[5]

    def test_somebody_the_rules_do_not_cover_is_left_to_the_league(self, board, cells) -> None:
        assert cells(board(), "Blues")[0][1:3] == ["no group in these rules", "? ask the league"]

    def test_each_sheet_says_what_eligible_does_not_mean(self, board, spoken) -> None:
        sheets = [table for table in board().tables if table.sheet]
        assert len(sheets) == 3
        assert all("Eligible does not mean fit." in spoken(sheet.caption) for sheet in sheets)

    def test_everyone_gets_the_answer_the_page_for_one_pitcher_gives(self, board, told_alone, spoken) -> None:
        outings = [("2026-05-12", "40"), ("2026-05-13", "22"), ("2026-05-15", "")]
        written = "pitcher,date,pitches\n" + "".join(f"Ace,{day},{count}\n" for day, count in outings)
        sheet = next(table for table in board("pitcher,age\nAce,12\n", written).tables if table.sheet)
        alone = told_alone(outings=[{"date": day, "pitches": count} for day, count in outings])
        assert spoken(sheet.rows[0][2]) == f"✕ not before {alone}"


class TestTeamsUnderDifferentRules:
    ROSTER = (
        "pitcher,team,born,rules\nComet,Quarry,2014-03-09,\nComet,Nine,2014-03-09,pony baseball\n"
        "Moth,Quarry,2014-03-09,\nKettle,Nine,2014-03-09,usssa-baseball\nOtter,Nine,2014-03-09,Sandlot\n"
    )
    OUTINGS = (
        "pitcher,date,pitches,outs\nComet,2026-05-14,36,\nMoth,2026-05-14,36,\nKettle,2026-05-15,36,12\n"
    )

    @pytest.fixture
    def two_rules(self, board: Callable[..., Answer]) -> Callable[..., Answer]:
        return lambda **typed: board(self.ROSTER, self.OUTINGS, **typed)

    def test_an_arm_under_two_of_them_is_told_what_the_page_for_one_pitcher_tells(
        self, two_rules, told_alone, cells
    ) -> None:
        row = cells(two_rules(), "Quarry")[0]
        alone = told_alone(also="pony", outings=[{"date": "2026-05-14", "pitches": "36"}])
        assert row[2] == f"✕ not before {alone}"
        assert row[1].startswith("Little League Baseball, Regulation VI: Ages 11-12. PONY Baseball: ")
        assert row[3].startswith("Little League Baseball, Regulation VI: 36 pitches on Thursday, May 14")

    def test_each_team_goes_by_its_own(self, two_rules, cells) -> None:
        rows = cells(two_rules(), "Nine")
        assert rows[1][1].startswith("USSSA baseball, outs: ")
        assert "12 outs on Friday, May 15" in rows[1][3]

    def test_rules_nobody_knows_leave_no_day(self, two_rules, cells, files) -> None:
        found = two_rules()
        assert cells(found, "Nine")[2][1:3] == ["rules not known", "? ask the league"]
        assert cells(found, "2 rows used")[1] == [
            "Roster",
            'Row 6, column "rules", "Sandlot": No rules here have this name. Copy one from the list of rules.',
        ]
        assert "Otter" not in files(found)["first-days-2026-05-16.ics"]

    def test_the_headline_and_the_sheets_do_not_name_one_of_them_for_all(self, two_rules, spoken) -> None:
        found = two_rules()
        assert spoken(found.headline).endswith("eligible under the rules named for each.")
        sheets = [spoken(table.caption) for table in found.tables if table.sheet]
        assert sheets[0] == (
            "Quarry: Saturday, May 16, under the rules named for each pitcher. Eligible does not mean fit."
        )
        titles = [spoken(fact.value) for fact in found.facts if spoken(fact.label) == "Rules"]
        assert titles == ["Little League Baseball, Regulation VI", "PONY Baseball", "USSSA baseball, outs"]

    def test_rules_nobody_checked_need_a_word_also_for_one_row(self, asked) -> None:
        roster = "pitcher,age,rules\nAce,12,\nBo,17,usa-joint-later\n"
        written = {"roster": file(roster), "outings": file(OUTINGS), "rules": "little-league"}
        assert [one.field for one in asked(BOARD, **written)] == ["unverified"]
        assert isinstance(asked(BOARD, **written, unverified="yes"), Answer)

    def test_a_level_and_an_age_may_stand_in_the_rows_of_one_arm(self, board, cells) -> None:
        roster = "pitcher,team,age,level,rules\nAce,School,,varsity,cif-california\nAce,Summer,17,,\n"
        row = cells(
            board(roster, "pitcher,date,pitches\nAce,2026-05-01,3\n", rules="usa-joint-2015"), "School"
        )[0]
        assert row[1] == (
            "CIF California, school baseball: Varsity. USA Baseball and MLB joint guideline: Ages 17-18."
        )


class TestBesideTheJointGuideline:
    def test_one_more_column_says_the_day_it_would_name(self, board, cells, spoken, files) -> None:
        found = board(beside="yes")
        sheet = next(table for table in found.tables if table.sheet)
        assert spoken(sheet.heads[3]) == "Joint guideline"
        assert [row[3] for row in cells(found, "Reds")] == ["the same day", "the same day"]
        table = read_table(files(found)["board-2026-05-16.csv"].encode())
        assert table.rows[0].cells["first day under usa baseball and mlb joint guideline"] == "2026-05-21"

    def test_the_later_day_is_called_later(self, board, cells) -> None:
        outings = "pitcher,date,pitches,before last batter\nBo,2026-05-15,37,34\n"
        row = cells(board(outings=outings, beside="yes"), "Reds")[1]
        assert row[2:4] == ["✕ not before Sun, May 17", "later: Mon, May 18"]

    def test_pain_leaves_no_day_there_either(self, answered, cells) -> None:
        found = answered(BOARD, rules="little-league", beside="yes")
        row = next(row for row in cells(found, "Herons") if row[0] == "Waffle")
        assert row[2:5] == ["✕ stop: pain. See a clinician", "–", "–"]

    def test_it_is_not_set_beside_itself(self, answered) -> None:
        sheet = next(table for table in answered(BOARD, beside="yes").tables if table.sheet)
        assert len(sheet.heads) == 6


def test_rules_nobody_checked_need_a_word_from_the_reader(asked) -> None:
    found = asked(BOARD, rules="usa-joint-later")
    assert [one.field for one in found] == ["unverified"]
    assert isinstance(asked(BOARD, rules="usa-joint-later", unverified="yes"), Answer)


def test_nothing_on_the_board_promises_or_scores(answered, spoken) -> None:
    found = answered(BOARD)
    said = [spoken(found.headline), *map(spoken, found.more)]
    said += [spoken(cell) for table in found.tables for row in (table.heads, *table.rows) for cell in row]
    forbidden = re.compile(r"\b(safe|cleared|ready|injury|risk|score|rank|best|worst)\b|%", re.IGNORECASE)
    assert not [line for line in said if forbidden.search(line)]


def test_the_made_up_names_are_nobodys(arm_shelf) -> None:
    """Nicknames and numbers: no second word that could be a family name."""
    rows = read_table(arm_shelf.demo["league-roster.csv"].encode()).rows
    assert all(re.fullmatch(r"[A-Z][a-z]+|Number \d+", row.cells["pitcher"]) for row in rows)
    assert datetime.date.fromisoformat(
        read_table(arm_shelf.demo["league-outings.csv"].encode()).rows[0].cells["date"]
    )

"""Where rules were not read, end too soon or differ between editions: the stricter is kept, and it is said."""

from __future__ import annotations

import pytest

from calculators.desk.answers import Answer
from tests.desk.board_files import file

PAGE, PLAN, BOARD = "pitch-count", "season-plan", "league-board"


@pytest.fixture
def said(answered, spoken):
    """Everything an answer of the pitch count page says in words, headline first."""

    def ask(**typed: object) -> list[str]:
        found = answered(PAGE, **typed)
        facts = (fact.value for fact in found.facts)
        return [spoken(one) for one in (found.headline, *found.more, *facts)]

    return ask


def games(*rows: tuple[str, ...]) -> tuple[dict[str, str], ...]:
    return tuple(
        dict(zip(("date", "pitches", "before", "outs", "caught"), row, strict=False)) for row in rows
    )


CIF = {"rules": "cif-california.varsity", "today": "2026-05-15"}
WEEK = games(("2026-05-11", "20", "", "14"), ("2026-05-13", "20", "", "15"))

JUNIOR = {
    "rules": "nysphsaa-2017.junior-varsity-and-freshman",
    "unverified": "yes",
    "first": "2026-03-01",
    "last": "2026-06-20",
    "game_day": "5",
    "second_game_day": "6",
}


class TestTwoEditions:
    """The joint guideline of 2015 owes four days for 110 pitches at 19, the later edition five."""

    def test_the_later_day_is_kept_and_both_are_named(self, said, answered, files) -> None:
        typed = {"age": "19", "outings": games(("2026-05-16", "110"))}
        lines = said(**typed)
        assert "Friday, May 22" in lines[0]
        assert any(
            "names Thursday, May 21" in line and "names Friday, May 22. Keep to the later day" in line
            for line in lines
        )
        assert "20260522" in files(answered(PAGE, **typed))["first-day.ics"]

    def test_where_both_owe_the_same_nothing_is_said(self, said) -> None:
        assert not any("editions" in line for line in said(age="19", outings=games(("2026-05-16", "105"))))

    def test_where_the_later_edition_owes_less_the_one_of_2015_stays(self, said) -> None:
        lines = said(age="17", outings=games(("2026-05-16", "78")))
        assert lines[0].endswith("is Thursday, May 21.")

    def test_it_is_the_later_edition_that_stands_beside_other_rules(self, said) -> None:
        lines = said(rules="uil-texas.grades-9-12", age="19", outings=games(("2026-05-16", "110")))
        assert any("the first day is later: Friday, May 22." in line for line in lines)

    def test_the_board_keeps_the_later_day_too(self, answered, cells) -> None:
        found = answered(
            BOARD,
            roster=file("pitcher,age\nAce,19\n"),
            outings=file("pitcher,date,pitches\nAce,2026-05-16,110\n"),
        )
        (row,) = cells(found, "Saturday")
        assert row[2] == "✕ not before Fri, May 22"
        assert "Two editions of these rules differ. The later day is kept." in row[-1]

    def test_the_season_planner_keeps_the_lower_ceiling(self, answered, cells, spoken) -> None:
        """Saturday to Thursday leaves four days: any count by the edition of 2015, up to 105 by the later one."""
        found = answered(PLAN, age="19", game_day="5", second_game_day="3")
        rows = {row[0]: row[2] for row in cells(found, "A week in the season")}
        assert rows["Saturday"] == "105 pitches"
        assert any("Its lower ceiling is kept." in spoken(line) for line in found.more)


class TestBesideTheGuideline:
    def test_past_its_table_no_day_is_promised(self, said) -> None:
        """51 pitches at age 8: the joint guideline's row stops at 50."""
        lines = said(rules="little-league", age="8", outings=games(("2026-05-16", "51")))
        assert any("does not reach this count" in line and "ask the league first" in line for line in lines)
        assert not any("same day" in line for line in lines)

    def test_where_the_own_rules_name_no_day_it_is_not_the_same_one(self, said) -> None:
        rules = "nysphsaa-2017.junior-varsity-and-freshman"
        lines = said(rules=rules, unverified="yes", age="15", outings=games(("2026-05-16", "20")))
        assert any("Your own rules name no day: ask the league." in line for line in lines)
        assert not any("same day" in line or "come first" in line for line in lines)


class TestOutsBesidePitches:
    """CIF: 110 pitches a day and 30 outs a week from Monday, both at once. May 15, 2026 is a Friday."""

    def test_the_outs_left_of_the_week_stand_beside_the_pitches(self, said, answered, cells) -> None:
        typed = {**CIF, "outings": WEEK}
        assert "110 pitches, and 1 out" in said(**typed)
        week = cells(answered(PAGE, **typed), "The next days")
        assert week[0][1] == "eligible, at most 110 pitches and 1 out"
        assert week[3][1] == "eligible, at most 110 pitches and 30 outs"

    def test_unknown_outs_are_asked_for_before_anyone_pitches(self, said, answered, cells) -> None:
        typed = {**CIF, "outings": games(("2026-05-11", "20"), ("2026-05-13", "20", "", "15"))}
        lines = said(**typed)
        assert "some are not known: ask before" in lines[0]
        assert "ask first: the outs of this week are not known" in lines
        week = cells(answered(PAGE, **typed), "The next days")
        assert [row[1] for row in week[:4]] == ["ask the league"] * 3 + [
            "eligible, at most 110 pitches and 30 outs"
        ]

    @pytest.mark.parametrize(
        ("outs", "state"), [("14", "○ eligible, at most 110 pitches and 1 out"), ("", "? ask the league")]
    )
    def test_the_board_says_the_same(self, answered, cells, outs, state) -> None:
        found = answered(
            BOARD,
            rules="cif-california",
            today="2026-05-15",
            roster=file("pitcher,level\nAce,Varsity\n"),
            outings=file(f"pitcher,date,pitches,outs\nAce,2026-05-11,20,{outs}\nAce,2026-05-13,20,15\n"),
        )
        assert cells(found, "Friday")[0][2] == state

    def test_a_game_still_going_is_told_what_outs_are_left(self, said, answered, spoken) -> None:
        typed = {**CIF, "outings": WEEK, "tonight": "10"}
        assert "100 pitches, and 1 out" in said(**typed)
        live = [spoken(line) for line in answered(PAGE, **typed).live]
        assert "Outs have a limit too: at most 1 out today. The counter does not count them." in live


class TestSeasonWithoutRestTable:
    def test_no_ceiling_is_named(self, answered, cells, spoken, files) -> None:
        found = answered(PLAN, **JUNIOR)
        rows = {row[0]: row[2] for row in cells(found, "A week in the season")}
        assert (rows["Saturday"], rows["Sunday"]) == ("ask the league", "ask the league")
        assert [row[1] for row in cells(found, "The first weeks")[:2]] == ["ask the league"] * 2
        assert any("no ceiling can be named" in spoken(line) for line in found.more)
        assert "at most" not in files(found)["season.ics"]

    def test_how_the_rules_were_read_is_said_as_on_the_other_page(self, answered, spoken) -> None:
        sure = answered(PLAN, **JUNIOR).how_sure
        assert spoken(sure.sentence).startswith("These rules were read in a copy")
        assert any("Historical." in spoken(line) for line in sure.causes)


class TestFinishingTheBatter:
    @pytest.mark.parametrize(
        ("rules", "thrown", "words"),
        [
            (
                "baseball-alberta-league",
                "76",
                "Whether the batter may be finished was not read: ask the league.",
            ),
            ("kbsa-high-school-2019", "101", "These rules know no finishing of the batter."),
            ("pony", "81", "A batter begun before it may be finished."),
        ],
    )
    def test_not_read_is_not_no(self, answered, spoken, rules, thrown, words) -> None:
        found = answered(PAGE, rules=rules, age="12", outings=(), tonight=thrown)
        assert any(spoken(line).endswith(words) for line in found.live)

    def test_a_count_over_the_limit_may_be_a_finished_batter(self, said) -> None:
        """Little League at 10: 75 pitches a day, and a batter begun under it may be finished."""
        hint = "write the count when that batter came up"
        told = {"rules": "little-league", "age": "10"}
        assert any(hint in line for line in said(**told, outings=games(("2026-05-16", "76"))))
        assert not any(hint in line for line in said(**told, outings=games(("2026-05-16", "76", "75"))))
        assert not any(hint in line for line in said(outings=games(("2026-05-16", "86"))))

    def test_without_relief_the_table_ends_at_the_limit(self, said) -> None:
        """UIL: a batter begun under 110 may be finished; the table ends at 110, and all pitches count."""
        lines = said(rules="uil-texas.grades-9-12", age="", outings=games(("2026-05-16", "112", "108")))
        assert any("112 were thrown. Those past the limit only finished the batter" in line for line in lines)
        assert not any("first pitch to the last batter" in line for line in lines)


class TestCatchers:
    def test_whoever_caught_without_a_count_is_asked_whether_they_pitched(self, asked, spoken) -> None:
        found = asked(PAGE, outings=games(("2026-05-16", "", "", "", "3")))
        assert not isinstance(found, Answer)
        assert found[0].field == "outings"
        assert "Write the pitches, or 0 if not." in spoken(found[0].message)

    def test_pitching_and_then_catching_is_not_called_forbidden(self, said) -> None:
        lines = said(rules="little-league", outings=games(("2026-05-15", "20", "", "", "4")))
        assert any(line.endswith("Check which came first.") for line in lines)
        assert not any("a rule forbade it" in line for line in lines)


def test_an_unknown_count_under_two_rule_sets_names_them(said) -> None:
    """12 years: 80 pitches in Alberta's 13U, 85 under the joint guideline."""
    lines = said(rules="baseball-alberta-league", also="usa-joint-2015", outings=games(("2026-05-16", "")))
    assert any(line.startswith("Baseball Alberta") and "counts as 80 pitches" in line for line in lines)
    assert any(line.startswith("USA Baseball") and "counts as 85 pitches" in line for line in lines)


@pytest.mark.parametrize("page", [PAGE, BOARD])
@pytest.mark.parametrize("today", ["0001-01-01", "1999-12-31", "9999-12-31"])
def test_a_day_that_nobody_means_is_asked_about_at_its_field(asked, page, today) -> None:
    found = asked(page, today=today)
    assert not isinstance(found, Answer)
    assert found[0].field == "today"


def test_a_pitcher_whose_row_could_not_be_read_is_marked_on_the_own_row(answered, cells, files) -> None:
    found = answered(
        BOARD,
        roster=file("pitcher,age\nAce,12\nBo,12\n"),
        outings=file("pitcher,date,pitches\nAce,2026-05-15,85.0\nBo,2026-05-1O,20\n"),
    )
    ace, bo = cells(found, "Saturday")
    words = "A row of this pitcher could not be read: counted as the daily limit."
    assert ace[2] == "✕ not before Wed, May 20"
    assert words in ace[-1]
    assert "A row of this pitcher was not used" in bo[-1]
    assert words in files(found)["board-2026-05-16.csv"]
    assert "Until then the game counts as the daily limit." in cells(found, "1 row used")[0][1]

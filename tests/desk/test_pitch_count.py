"""The pitch count page: what it asks, what it answers, and what it must never say."""

from __future__ import annotations

import gettext
import re

import pytest

from calculators.desk.answers import Answer
from calculators.desk.fields import Problem, RowsField, read_fields
from calculators.desk.pitch_count import CALCULATOR
from calculators.desk.pitch_count_words import MONTHS, WEEKDAYS
from calculators.desk.render_text import answer_text
from calculators.words import Message, speak
from tests.workload.shelf import shelf

ENGLISH = gettext.NullTranslations()
SHELF = shelf()
ASKED = {"pain": "no", "rules": "usa-joint-2015", "age": "12", "today": "2026-05-16", "outings": ()}


def outcome(**typed) -> Answer | tuple[Problem, ...]:
    values, problems = read_fields(CALCULATOR.fields(SHELF), {**ASKED, **typed})
    return problems or CALCULATOR.work_out(values, SHELF)


def text(**typed) -> str:
    found = outcome(**typed)
    assert isinstance(found, Answer), found
    return answer_text(found, SHELF, ENGLISH)


def problem(**typed) -> tuple[str, str]:
    found = outcome(**typed)
    assert not isinstance(found, Answer)
    return found[0].field, speak(found[0].message, ENGLISH)


def headline(**typed) -> str:
    return text(**typed).splitlines()[0]


def games(*rows: tuple[str, ...]) -> tuple[dict[str, str], ...]:
    return tuple(
        dict(zip(("date", "pitches", "before", "outs", "caught"), row, strict=False)) for row in rows
    )


class TestPain:
    """Pain overrides every number: one answer, and no day to come back."""

    def test_it_is_asked_first_and_must_be_answered(self) -> None:
        assert CALCULATOR.fields(SHELF)[0].name == "pain"
        assert problem(pain="")[0] == "pain"

    def test_it_stops_everything_else(self) -> None:
        found = outcome(pain="yes", outings=games(("2026-05-16", "66")))
        assert isinstance(found, Answer)
        assert found.stop
        assert (found.facts, found.tables, found.drawings) == ((), (), ())

    def test_it_shows_no_day_and_no_number(self) -> None:
        said = text(pain="yes", outings=games(("2026-05-16", "66")))
        assert not re.search(r"\d", said)
        for name in (*WEEKDAYS, *(month for month in MONTHS if month.text not in {"May", "March"})):
            assert name.text not in said
        assert not re.search(r"\b(May|March)\b", said)

    def test_it_sends_the_pitcher_to_a_clinician(self) -> None:
        assert headline(pain="yes").startswith("Stop.")
        assert "clinician" in headline(pain="yes")


class TestTheDay:
    def test_the_worked_example_names_the_day(self) -> None:
        values, problems = read_fields(CALCULATOR.fields(SHELF), CALCULATOR.example)
        assert not problems
        answer = CALCULATOR.work_out(values, SHELF)
        assert speak(answer.headline, ENGLISH) == (
            "Under this guideline, the first day the pitcher may pitch again is Thursday, May 21."
        )

    def test_it_says_eligible_under_the_rules_and_not_fit_to_pitch(self) -> None:
        said = text(outings=games(("2026-05-16", "66")))
        assert "eligible under USA Baseball and MLB joint guideline. It does not mean fit to pitch." in said

    def test_every_rule_that_decided_is_said(self) -> None:
        said = text(rules="little-league", outings=games(("2026-05-15", "36"), ("2026-05-16", "40")))
        assert "36 pitches on Friday, May 15: 2 days of rest owed" in said
        assert "40 pitches on Saturday, May 16: 2 days of rest owed" in said
        assert "Pitched 2 days in a row" in said
        assert "forbid a second game" in said

    def test_without_games_the_pitcher_is_eligible_today(self) -> None:
        assert headline() == "Under this guideline, the pitcher is eligible today, Saturday, May 16."

    def test_a_day_of_another_year_carries_its_year(self) -> None:
        said = headline(today="2026-12-30", outings=games(("2026-12-30", "66")))
        assert said.endswith("is Monday, January 4, 2027.")

    def test_the_next_seven_days_stand_in_words(self) -> None:
        answer = outcome(outings=games(("2026-05-16", "66")))
        rows = [[speak(cell, ENGLISH) for cell in row] for row in answer.tables[0].rows]
        assert len(rows) == 7
        assert rows[4] == ["Wed, May 20", "not yet", "advised against", "rest owed"]
        assert rows[5] == [
            "Thu, May 21",
            "eligible, at most 85 pitches",
            "advised against",
            "daily limit",
        ]

    def test_the_joint_guideline_stands_beside_other_rules(self) -> None:
        """45 before the last batter and 51 after: two days by Regulation VI, three by the guideline."""
        said = text(rules="little-league", outings=games(("2026-05-16", "51", "45")))
        assert "first day the pitcher may pitch again is Tuesday, May 19." in said
        assert "the first day is later: Wednesday, May 20. Where two differ, keep to the later one." in said

    def test_edition_and_day_of_the_last_check_are_shown(self) -> None:
        said = text()
        assert "Edition: Page whose text refers to April 1, 2015" in said
        assert "Last checked: November 25, 2026" in said

    def test_totals_of_seven_and_twenty_eight_days(self) -> None:
        said = text(outings=games(("2026-05-11", "30"), ("2026-05-01", "20"), ("2026-05-12", "")))
        assert "Last 7 days, all teams: 30 pitches and 1 outing with an unknown count" in said
        assert "Last 28 days, all teams: 50 pitches" in said


class TestTonight:
    def test_what_is_left_is_the_daily_limit_less_what_was_thrown(self) -> None:
        assert "Pitches left today, at most: 43 pitches" in text(tonight="42")

    def test_the_day_is_told_as_if_the_pitcher_stopped_now(self) -> None:
        assert headline(tonight="42") == (
            "If the pitcher stops now, the first day they may pitch again under this guideline "
            "is Tuesday, May 19."
        )

    def test_nothing_is_left_while_rest_is_owed(self) -> None:
        assert "at most: none" in text(tonight="5", outings=games(("2026-05-15", "60")))

    def test_nothing_is_left_after_an_earlier_game_that_day(self) -> None:
        assert "at most: none" in text(tonight="5", outings=games(("2026-05-16", "10")))


class TestDoubtfulEntries:
    def test_an_unknown_count_counts_as_the_daily_limit(self) -> None:
        said = text(outings=games(("2026-05-16", "")))
        assert said.splitlines()[0].endswith("Thursday, May 21.")
        assert "the count is not known. It counts as 85 pitches. Ask the scorer." in said

    def test_no_age_means_the_youngest_group(self) -> None:
        said = text(age="")
        assert "No age given, so the youngest group is used: Ages 7-8." in said
        assert "Pitches left today, at most: 50 pitches" in said

    def test_a_game_after_today_must_be_corrected(self) -> None:
        field, message = problem(outings=games(("2026-05-17", "20")))
        assert field == "outings"
        assert message == "Sunday, May 17 is after today. Correct this date or today's."

    def test_a_game_written_twice_is_pointed_out(self) -> None:
        said = text(outings=games(("2026-05-10", "20"), ("2026-05-10", "20")))
        assert "the same outing is written 2 times, and each counts" in said

    def test_games_may_be_written_in_any_order(self) -> None:
        first, second = ("2026-05-14", "30"), ("2026-05-16", "20")
        assert headline(outings=games(first, second)) == headline(outings=games(second, first))

    def test_no_pitches_are_no_outing(self) -> None:
        assert "eligible today" in headline(outings=games(("2026-05-16", "0")))

    def test_over_the_daily_limit_is_pointed_out(self) -> None:
        said = text(outings=games(("2026-05-16", "86")))
        assert said.splitlines()[0].endswith("Thursday, May 21.")
        assert "86 pitches is over the daily limit of 85. Tell the league." in said

    def test_past_the_end_of_the_table_there_is_no_promise(self) -> None:
        said = text(age="8", outings=games(("2026-05-16", "51")))
        assert said.startswith("The rest table does not reach this count. Not before Wednesday, May 20")
        assert "ask the league" in said
        assert "Wed, May 20  ask the league" in said

    def test_more_pitches_before_the_last_batter_than_in_all_must_be_corrected(self) -> None:
        field, message = problem(outings=games(("2026-05-16", "20", "30")))
        assert field == "outings"
        assert "is more than the pitches" in message

    @pytest.mark.parametrize("age", ["6", "24"])
    def test_an_age_outside_the_rules_says_which_ages_there_are(self, age) -> None:
        field, message = problem(age=age)
        assert field == "age"
        assert "covers ages 7 to 22" in message

    def test_half_years_are_refused(self) -> None:
        assert problem(age="12.5") == ("age", "Enter the age in whole years.")

    def test_innings_caught_today_bar_pitching(self) -> None:
        said = text(rules="little-league", outings=games(("2026-05-16", "0", "", "", "4")))
        assert "Caught 4 innings on Saturday, May 16" in said
        assert "at most: none" in said


class TestUnverifiedRules:
    def test_rules_from_memory_do_not_compute(self) -> None:
        field, message = problem(rules="usa-joint-later", age="17")
        assert field == "unverified"
        assert "from memory" in message

    def test_they_compute_when_the_reader_says_so_and_carry_the_mark(self) -> None:
        said = text(rules="usa-joint-later", age="17", unverified="yes", outings=games(("2026-05-16", "78")))
        assert "is Wednesday, May 20." in said
        assert "Nobody has checked them at the source." in said

    def test_they_are_marked_in_the_list(self) -> None:
        labels = [speak(choice.label, ENGLISH) for choice in rule_field().choices]
        assert any(label.endswith("17 and over (not checked)") for label in labels)


def rule_field():
    return next(field for field in CALCULATOR.fields(SHELF) if field.name == "rules")


def test_the_joint_guideline_comes_first_in_the_list() -> None:
    assert rule_field().choices[0].value == "usa-joint-2015"


def test_the_rest_table_of_the_joint_guideline_is_there_for_paper() -> None:
    (table,) = CALCULATOR.common_cases(SHELF)
    rows = [[speak(cell, ENGLISH) for cell in row] for row in table.rows]
    heads = [speak(cell, ENGLISH) for cell in table.heads]
    assert heads[2:4] == ["0 days of rest", "1 day of rest"]
    assert rows[2] == ["Ages 11-12", "85", "1 to 20", "21 to 35", "36 to 50", "51 to 65", "66 or more"]
    assert rows[0][-2:] == ["–", "–"]


FORBIDDEN = re.compile(
    r"\b(safe|safely|cleared|ready|injury|risk|score|percent|percentage|ratio|he|she|his|her|him)\b|%", re.I
)


@pytest.mark.parametrize(
    "typed",
    [
        {},
        {"pain": "yes"},
        {"age": "8", "outings": games(("2026-05-16", "51"))},
        {"tonight": "42"},
        {"rules": "little-league", "outings": games(("2026-05-15", "90"), ("2026-05-16", "", "", "3", "4"))},
        {"rules": "usa-joint-later", "age": "19", "unverified": "yes"},
    ],
)
def test_no_answer_promises_scores_or_assumes(typed) -> None:
    assert not FORBIDDEN.findall(text(**typed))


def test_no_question_promises_scores_or_assumes() -> None:
    for field in CALCULATOR.fields(SHELF):
        columns = field.columns if isinstance(field, RowsField) else ()
        for part in (field, *columns):
            for words in (part.label, part.help):
                assert not FORBIDDEN.findall(speak(words, ENGLISH) if isinstance(words, Message) else "")


def test_days_are_spoken_in_another_language() -> None:
    """Weekday, month and sentence are separate messages, so that a language can order them its own way."""

    known = {"Thursday": "jueves", "May": "mayo", "{weekday}, {month} {day}": "{weekday} {day} de {month}"}

    class Words(gettext.NullTranslations):
        def gettext(self, message: str) -> str:
            return known.get(message, message)

    answer = outcome(outings=games(("2026-05-16", "66")))
    assert speak(answer.headline, Words()).endswith("jueves 21 de mayo.")

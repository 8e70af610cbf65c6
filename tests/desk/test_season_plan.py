"""The season planner: ceilings that the rules give, months off, an order; never a throwing program."""

from __future__ import annotations

import datetime
import re

import pytest

from calculators.desk.answers import Answer

PLAN = "season-plan"


def test_the_ceilings_of_a_week_keep_each_next_game_day_open(answered, cells) -> None:
    """Saturday to Tuesday is two whole days: at most 50. Tuesday to Saturday is three: at most 65."""
    rows = {row[0]: row[1:] for row in cells(answered(PLAN), "A week in the season")}
    assert rows["Tuesday"][:2] == ["game", "65 pitches"]
    assert rows["Saturday"][:2] == ["game", "50 pitches"]
    assert rows["Sunday"][0] == "the day after: no mound"


def test_one_game_a_week_may_reach_the_daily_limit_and_no_more(answered, cells) -> None:
    rows = {row[0]: row[1:] for row in cells(answered(PLAN, second_game_day=""), "A week in the season")}
    assert rows["Saturday"][1] == "95 pitches"


def test_a_third_day_in_a_row_is_not_planned(answered, cells) -> None:
    days = {"game_day": "0", "second_game_day": "1", "third_game_day": "2"}
    rows = {row[0]: row[1:] for row in cells(answered(PLAN, **days), "A week in the season")}
    pitching = [day for day in ("Monday", "Tuesday", "Wednesday") if rows[day][1] != "none"]
    assert len(pitching) == 2


def test_breaking_balls_are_capped_by_age(answered, cells, spoken) -> None:
    """15 in 100 at 13 and 14, none up to 12, as the age gates of this handbook say."""
    assert [row[3] for row in cells(answered(PLAN), "A week in the season") if row[1] == "game"] == [
        "at most 9",
        "at most 7",
    ]
    young = answered(PLAN, age="12")
    assert {row[3] for row in cells(young, "Before the first game")} == {"none"}
    assert any("no breaking balls up to 12" in spoken(line) for line in young.more)


def test_months_off_are_held_against_the_guidelines_advice(answered, spoken) -> None:
    """The joint guideline: four months off, two to three of them in a row."""
    enough, short = answered(PLAN), answered(PLAN, last="2026-12-01")
    assert any(
        "4 months off or more" in spoken(line) and "leaves them" in spoken(line) for line in enough.more
    )
    assert any("leaves too few" in spoken(line) for line in short.more)


def test_the_first_games_stay_below_the_ceiling(answered, cells) -> None:
    """Half of 95 in the first week. In the second, three quarters would be more than Saturday's 50."""
    rows = cells(answered(PLAN), "The first weeks with games")
    assert [row[1] for row in rows[:2]] == ["47 pitches", "50 pitches"]


def test_the_plan_goes_into_a_calendar(answered, files) -> None:
    text = files(answered(PLAN))["season.ics"].replace("\r\n ", "")
    starts = re.findall(r"DTSTART;VALUE=DATE:(\d{8})\r\n.*?\r\nSUMMARY:([^\r]*)", text)
    found = dict(starts)
    assert found["20260214"] == "Easy catch"
    assert found["20260411"] == "Game day: at most 47 pitches"
    assert found["20260502"] == "Game day: at most 50 pitches"
    assert found["20260712"] == "Time off begins"
    days = {
        datetime.datetime.strptime(day, "%Y%m%d").weekday()
        for day, words in starts
        if words.startswith("Game")
    }
    assert days == {1, 5}


@pytest.mark.parametrize("typed", [{}, {"first": "", "age": "x"}])
def test_pain_or_a_way_back_from_injury_gets_no_plan(answered, typed) -> None:
    found = answered(PLAN, pain="yes", **typed)
    assert found.stop
    assert (found.tables, found.files) == ((), ())


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"last": "2026-04-10"}, "last"),
        ({"last": "2027-04-10"}, "last"),
        ({"age": "30"}, "age"),
        ({"build_up": "4.5"}, "build_up"),
        ({"rules": "usa-joint-later", "age": "19"}, "unverified"),
    ],
)
def test_what_cannot_be_planned_says_what_to_mend(asked, typed, field) -> None:
    found = asked(PLAN, **typed)
    assert not isinstance(found, Answer)
    assert found[0].field == field


def test_it_never_says_how_much_to_throw(answered, spoken) -> None:
    found = answered(PLAN)
    said = [spoken(found.headline), *map(spoken, (*found.more, *found.cannot_tell, *found.cautions))]
    said += [spoken(cell) for table in found.tables for row in table.rows for cell in row]
    assert not [line for line in said if re.search(r"\bthrow \d|\b\d+ throws|\bsafe\b|\bready\b", line)]
    assert any("ceilings and an order" in line for line in said)

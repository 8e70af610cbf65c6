"""A season's week and months: ceilings found by playing weeks through, months counted by the calendar."""

from __future__ import annotations

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from build_tools.loading.marked_yaml import read_yaml
from build_tools.places import Places
from build_tools.schema.rules import RuleSet as RuleSetEntry
from calculators.workload.ages import Pitcher
from calculators.workload.availability import availability
from calculators.workload.outings import Outing
from calculators.workload.rest import ONE_DAY
from calculators.workload.rules import RuleSet, read
from calculators.workload.season import Season, longest_off, months_of, week_of_games

DAY = datetime.date(2026, 5, 13)
TWELVE = Pitcher(age=12)


@pytest.fixture(scope="module")
def rules():
    def load(slug: str) -> RuleSet:
        text = (Places().content / "rules" / f"{slug}.yml").read_text("utf-8")
        return read(slug, RuleSetEntry.model_validate(read_yaml(text).value).model_dump(mode="json"))

    return load


def most(found) -> list[int | None]:
    return [game.most for game in found]


@pytest.mark.parametrize(
    ("weekdays", "ceilings"),
    # The table of the joint guideline at 11 and 12: 20, 35, 50 and 65 pitches owe 0, 1, 2 and 3 days.
    [((5,), [85]), ((1, 5), [65, 50]), ((0, 2, 4), [35, 35, 50]), ((2, 3), [20, 85])],
)
def test_a_ceiling_is_the_most_whose_rest_is_over_by_the_next_game_day(rules, weekdays, ceilings) -> None:
    assert most(week_of_games(rules("usa-joint-2015"), TWELVE, weekdays, DAY)) == ceilings


def test_where_three_days_in_a_row_are_barred_one_is_given_up(rules) -> None:
    assert 0 in most(week_of_games(rules("little-league"), TWELVE, (0, 1, 2), DAY))


def test_a_weekly_limit_holds_over_the_week(rules) -> None:
    """Japan's rubber-ball rule: 70 a day, 210 in any seven days."""
    found = week_of_games(
        rules("japan-rubber-ball-elementary"), Pitcher(level="grades-5-6"), (0, 2, 4, 6), DAY
    )
    assert sum(game.most or 0 for game in found) <= 210


@given(st.sets(st.integers(0, 6), min_size=1, max_size=4))
def test_whoever_keeps_to_the_ceilings_is_eligible_on_every_day_that_has_one(rules, weekdays) -> None:
    guideline = rules("usa-joint-2015")
    week = {game.weekday: game.most or 0 for game in week_of_games(guideline, TWELVE, sorted(weekdays), DAY)}
    monday = DAY - DAY.weekday() * ONE_DAY
    log: list[Outing] = []
    for day in (monday + number * ONE_DAY for number in range(28)):
        count = week.get(day.weekday(), 0)
        if count:
            assert availability(guideline, TWELVE, log, day, days=1).days[0].may_pitch
            log.append(Outing(day, count))


def test_a_month_counts_for_what_is_done_in_any_part_of_it() -> None:
    season = Season(datetime.date(2026, 4, 11), datetime.date(2026, 7, 1), (5,), build_up=8)
    uses = [use for _, use in months_of(season)]
    assert season.starts == datetime.date(2026, 2, 14)
    assert uses == ["build-up"] * 2 + ["games"] * 4 + ["off"] * 6


def test_months_off_run_on_over_the_turn_of_the_year() -> None:
    season = Season(datetime.date(2026, 9, 5), datetime.date(2026, 10, 31), (5,), build_up=4)
    months = months_of(season)
    assert [month.month for month, use in months if use == "off"] == [11, 12, 1, 2, 3, 4, 5, 6, 7]
    assert longest_off(months) == 9


def test_game_days_are_the_weekdays_asked_for_and_the_first_and_the_last() -> None:
    season = Season(datetime.date(2026, 4, 10), datetime.date(2026, 4, 20), (5,), build_up=8)
    assert [day.day for day in season.game_days()] == [10, 11, 18, 20]

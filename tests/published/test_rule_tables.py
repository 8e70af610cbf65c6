"""Every rest table against a second transcription, cell by cell.

The rows below were copied a second time from the pages named beside them, as upper ends of the
steps, so that a slip of the hand in content/rules shows here. Read in November 2026.
"""

from __future__ import annotations

import datetime

import pytest

from calculators.workload.ages import Pitcher, group_for
from calculators.workload.availability import availability
from calculators.workload.outings import Outing
from calculators.workload.rest import ONE_DAY, owed
from calculators.workload.rules import WEEKDAYS
from tests.workload.shelf import rules

OPEN = 10_000
DAY = datetime.date(2026, 5, 16)

# USA Baseball and Major League Baseball, Guidelines for Youth and Adolescent Pitchers, page whose text
# refers to 1 April 2015. Age: most in a day, then the last count that owes 0, 1, 2, ... days.
JOINT_2015 = {
    7: (50, 20, 35, 50),
    8: (50, 20, 35, 50),
    9: (75, 20, 35, 50, 65, OPEN),
    10: (75, 20, 35, 50, 65, OPEN),
    11: (85, 20, 35, 50, 65, OPEN),
    12: (85, 20, 35, 50, 65, OPEN),
    13: (95, 20, 35, 50, 65, OPEN),
    14: (95, 20, 35, 50, 65, OPEN),
    15: (95, 30, 45, 60, 75, OPEN),
    16: (95, 30, 45, 60, 75, OPEN),
    17: (105, 30, 45, 60, 75, OPEN),
    18: (105, 30, 45, 60, 75, OPEN),
    19: (120, 30, 45, 60, 75, OPEN),
    22: (120, 30, 45, 60, 75, OPEN),
}

# The same bodies, later page; from memory apart from the heads of its columns.
JOINT_LATER = {
    17: (105, 30, 45, 60, 80, OPEN),
    18: (105, 30, 45, 60, 80, OPEN),
    19: (120, 30, 45, 60, 80, 105, OPEN),
    22: (120, 30, 45, 60, 80, 105, OPEN),
}

# Little League International, Regulation VI, as kept by nw45ll.com and vplittleleague.net;
# the row for 15 and 16 as printed by the Record Observer of 22 July 2016.
LITTLE_LEAGUE = {
    7: (50, 20, 35, 50, 65, OPEN),
    8: (50, 20, 35, 50, 65, OPEN),
    9: (75, 20, 35, 50, 65, OPEN),
    10: (75, 20, 35, 50, 65, OPEN),
    11: (85, 20, 35, 50, 65, OPEN),
    12: (85, 20, 35, 50, 65, OPEN),
    13: (95, 20, 35, 50, 65, OPEN),
    14: (95, 20, 35, 50, 65, OPEN),
    15: (95, 30, 45, 60, 75, OPEN),
    16: (95, 30, 45, 60, 75, OPEN),
}

# PONY Baseball, from 2018, takes over the joint guideline's rows (fvbsa.org, southernchesapeake.com).
PONY = {age: row for age, row in JOINT_2015.items() if age < 19}

# Babe Ruth League, Rule 11.05 paragraph 4, 2018 (docslib.org/doc/1756592).
BABE_RUTH = {
    7: (50, 20, 35, OPEN),
    8: (50, 20, 35, OPEN),
    9: (75, 40, 65, OPEN),
    10: (75, 40, 65, OPEN),
    11: (85, 40, 65, OPEN),
    12: (85, 40, 65, OPEN),
    13: (95, 45, 75, OPEN),
    15: (95, 45, 75, OPEN),
    16: (105, 45, 75, OPEN),
    18: (105, 45, 75, OPEN),
}

# Baseball Alberta, handbook, league play (2024 or later), by the age turned in the year.
ALBERTA = {
    11: (70, 20, 30, 44, 54, 70),
    13: (80, 25, 35, 54, 64, 80),
    15: (90, 30, 40, 59, 74, 90),
    18: (100, 30, 44, 64, 79, 100),
}

# USSSA by-laws, outs: 9 at most to pitch the next day as well, and the most in one day.
USSSA = {7: (18, 9, OPEN), 12: (18, 9, OPEN), 13: (21, 9, OPEN), 14: (21, 9, OPEN)}

# Rules that go by level. UIL Texas, baseball manual; CIF bylaw 1501; NYSPHSAA as printed in the Democrat
# and Chronicle of 5 May 2017 (nights, so the first step owes one); PIAA as printed in the Times-Tribune,
# January 2017; OHSAA as printed in the News Democrat of 2 February 2017; KBSA as copied from a newspaper
# of 10 January 2019.
BY_LEVEL = [
    ("uil-texas", "grades-9-12", 110, 0, (30, 45, 65, 85, 110)),
    ("uil-texas", "grades-7-8", 85, 0, (20, 35, 50, 65, 85)),
    ("cif-california", "varsity", 110, 0, (30, 50, 75, OPEN)),
    ("cif-california", "lower-levels", 90, 0, (30, 50, 75, OPEN)),
    ("nysphsaa-2017", "varsity-regular-season", 105, 1, (30, 65, 95, 105)),
    ("nysphsaa-2017", "varsity-postseason", 125, 1, (40, 71, 102, 125)),
    ("piaa-pennsylvania", "high-school", 100, 0, (25, 50, 75, OPEN)),
    ("ohsaa-ohio", "high-school", 125, 0, (30, 50, 75, OPEN)),
    ("kbsa-high-school-2019", "high-school", 105, 0, (45, 60, 75, 90, 105)),
]

BY_AGE = [
    (slug, age, daily_max, last_counts)
    for slug, table in (
        ("usa-joint-2015", JOINT_2015),
        ("usa-joint-later", JOINT_LATER),
        ("little-league", LITTLE_LEAGUE),
        ("pony", PONY),
        ("babe-ruth-tournament-2018", BABE_RUTH),
        ("baseball-alberta-league", ALBERTA),
        ("usssa-baseball", USSSA),
    )
    for age, (daily_max, *last_counts) in table.items()
]


@pytest.mark.parametrize(("slug", "age", "daily_max", "last_counts"), BY_AGE)
def test_rest_and_daily_limit_are_those_printed_for_the_age(slug, age, daily_max, last_counts) -> None:
    printed = rules(slug)
    band = group_for(printed, Pitcher(age=age), DAY).band
    assert band.daily_max == daily_max
    for count in range(1, min(last_counts[-1], 130) + 1):
        rest = next(days for days, last in enumerate(last_counts) if count <= last)
        assert (count, owed(printed, band, count).rest) == (count, rest)
        assert not owed(printed, band, count).beyond_table


@pytest.mark.parametrize(("slug", "level", "daily_max", "least", "last_counts"), BY_LEVEL)
def test_rest_and_daily_limit_are_those_printed_for_the_level(
    slug, level, daily_max, least, last_counts
) -> None:
    printed = rules(slug)
    band = group_for(printed, Pitcher(level=level), DAY).band
    assert band.daily_max == daily_max
    for count in range(1, min(last_counts[-1], 140) + 1):
        rest = least + next(index for index, last in enumerate(last_counts) if count <= last)
        assert (count, owed(printed, band, count).rest) == (count, rest)


@pytest.mark.parametrize(
    ("slug", "pitcher", "limits"),
    [
        # Baseball Alberta: most in any four days.
        ("baseball-alberta-league", Pitcher(age=11), [(115, "pitches", "rolling", 4)]),
        ("baseball-alberta-league", Pitcher(age=13), [(120, "pitches", "rolling", 4)]),
        ("baseball-alberta-league", Pitcher(age=15), [(135, "pitches", "rolling", 4)]),
        ("baseball-alberta-league", Pitcher(age=18), [(150, "pitches", "rolling", 4)]),
        # USSSA: 24 outs in three days.
        ("usssa-baseball", Pitcher(age=12), [(24, "outs", "rolling", 3)]),
        # CIF: 30 outs and three appearances in a week.
        (
            "cif-california",
            Pitcher(level="varsity"),
            [(30, "outs", "week", 7), (3, "appearances", "week", 7)],
        ),
        # PIAA: 200 in a calendar week, 150 in junior high (York Dispatch, 21 July 2019).
        ("piaa-pennsylvania", Pitcher(level="high-school"), [(200, "pitches", "week", 7)]),
        ("piaa-pennsylvania", Pitcher(level="junior-high"), [(150, "pitches", "week", 7)]),
        # Japan High School Baseball Federation, 29 November 2019: 500 in seven days.
        ("japan-high-school", Pitcher(), [(500, "pitches", "rolling", 7)]),
        # Japan Rubber Baseball Association, notice of 24 October 2025.
        ("japan-rubber-ball-elementary", Pitcher(level="grades-5-6"), [(210, "pitches", "rolling", 7)]),
        (
            "japan-rubber-ball-elementary",
            Pitcher(level="grade-4-and-below"),
            [(180, "pitches", "rolling", 7)],
        ),
    ],
)
def test_limits_over_several_days_are_those_printed(slug, pitcher, limits) -> None:
    band = group_for(rules(slug), pitcher, DAY).band
    assert [(cap.most, cap.unit, cap.window, cap.days) for cap in band.caps] == limits


def test_weeks_begin_on_the_printed_day() -> None:
    """California Monday (CIF blue book); Pennsylvania junior high Sunday (York Dispatch, 21 July 2019)."""
    (outs, _) = rules("cif-california").bands[0].caps
    (pitches,) = rules("piaa-pennsylvania").bands[1].caps
    assert (WEEKDAYS[outs.week_starts], WEEKDAYS[pitches.week_starts]) == ("Monday", "Sunday")


def test_twenty_pitches_owe_no_rest_and_twenty_one_owe_a_day() -> None:
    """A misreading seen in print shifts the band by one; the printed steps hold both their ends."""
    joint = rules("usa-joint-2015")
    for age in range(7, 15):
        band = group_for(joint, Pitcher(age=age), DAY).band
        assert [owed(joint, band, count).rest for count in (20, 21)] == [0, 1]


def test_the_steps_are_rest_owed_after_throwing_not_pitches_allowed_after_rest() -> None:
    """Another misreading: after one day of rest the daily limit is whole again, not 21 to 35 pitches."""
    answer = availability(rules("usa-joint-2015"), Pitcher(age=12), [Outing(DAY, 35)], DAY)
    two_days_later = answer.days[2]
    assert answer.first_day == DAY + 2 * ONE_DAY == two_days_later.date
    assert two_days_later.most == 85


@pytest.mark.parametrize(
    ("age", "innings"),
    # paceryouthbaseball.org (8 and under, 9 to 12) and the mlb.com page for ages 13 to 14.
    [(8, 60), (9, 80), (12, 80), (13, 100), (14, 100), (19, None)],
)
def test_the_guideline_advises_a_most_innings_in_a_year(age, innings) -> None:
    assert group_for(rules("usa-joint-2015"), Pitcher(age=age), DAY).band.year_innings == innings


@pytest.mark.parametrize(
    ("age", "months", "running"),
    # paceryouthbaseball.org (8 and under, 9 to 12) and the mlb.com pages for ages 13 to 14 and 19 to 22:
    # "2 to 3" in a row is held as at least 2.
    [(8, 4, 2), (12, 4, 2), (14, 4, 2), (20, 3, None)],
)
def test_the_guideline_advises_months_off(age, months, running) -> None:
    band = group_for(rules("usa-joint-2015"), Pitcher(age=age), DAY).band
    assert (band.months_off, band.months_off_running) == (months, running)

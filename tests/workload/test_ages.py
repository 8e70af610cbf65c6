"""Which group a pitcher is in, by the day that fixes the age."""

from __future__ import annotations

import datetime

import pytest

from calculators.workload.ages import NoGroupError, Pitcher, age_on, group_for
from tests.workload.shelf import rules

DAY = datetime.date(2026, 5, 16)


def test_actual_age_turns_on_the_birthday() -> None:
    joint = rules("usa-joint-2015")
    born = datetime.date(2011, 6, 10)
    assert [age_on(born, datetime.date(2026, 6, day), joint) for day in (9, 10)] == [14, 15]


def test_born_on_a_leap_day_turns_a_year_older_on_the_first_of_march() -> None:
    joint = rules("usa-joint-2015")
    born = datetime.date(2012, 2, 29)
    ages = [age_on(born, day, joint) for day in (datetime.date(2027, 2, 28), datetime.date(2027, 3, 1))]
    assert ages == [14, 15]
    assert age_on(born, datetime.date(2028, 2, 29), joint) == 16


@pytest.mark.parametrize("age", [6, 23])
def test_an_age_outside_the_rules_is_refused_with_the_ages_there_are(age) -> None:
    with pytest.raises(NoGroupError) as err:
        group_for(rules("usa-joint-2015"), Pitcher(age=age), DAY)
    assert (err.value.lowest, err.value.highest) == (7, 22)

"""Which age group or level of a rule set a pitcher belongs to on a day.

Rule sets fix the age in different ways. What is not known is taken to be the younger group.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from typing import NamedTuple

from calculators.workload.rules import Band, RuleSet


@dataclass(frozen=True)
class Pitcher:
    """What is known of a pitcher's age. Everything may be missing.

    age: whole years, by the way the rule set in use counts them.
    born: birth date; used instead of `age` where it is known.
    level: a band's level name, for rule sets that go by school level.
    """

    age: int | None = None
    born: datetime.date | None = None
    level: str | None = None


class Group(NamedTuple):
    """The band that holds for a pitcher; `assumed` where the age or level was not known."""

    band: Band
    assumed: bool


class NoGroupError(LookupError):
    """The rule set has no band for this age or level. Holds the ages or levels there are."""

    def __init__(self, rules: RuleSet, given: str) -> None:
        self.lowest = min(rules.by_age, default=None)
        self.highest = max(rules.by_age, default=None)
        there = (
            ", ".join(band.level for band in rules.bands)
            if self.lowest is None
            else f"ages {self.lowest} to {self.highest}"
        )
        super().__init__(f"{rules.title} has no group for {given}; it covers {there}.")


def age_on(born: datetime.date, day: datetime.date, rules: RuleSet) -> int:
    """Return the age in whole years that the rule set goes by on a day.

    A league age is the age on the rule set's reference day in the year of `day`. By birth year it
    is the age turned in that year. Someone born on 29 February has a birthday on 1 March in other
    years: the rule books seen are silent, and the later day keeps the younger group.
    """
    if rules.age_basis == "birth year":
        return day.year - born.year
    month_and_day = (day.month, day.day)
    if rules.age_basis == "league age" and rules.age_reference is not None:
        month_and_day = rules.age_reference
    return day.year - born.year - (month_and_day < (born.month, born.day))


def group_for(rules: RuleSet, pitcher: Pitcher, day: datetime.date) -> Group:
    """Return the pitcher's group on a day, the youngest one where nothing is known.

    Raises NoGroupError where the age or level lies outside the rule set.
    """
    if rules.by_level:
        return _group_by_level(rules, pitcher.level)
    age = pitcher.age if pitcher.born is None else age_on(pitcher.born, day, rules)
    if age is None:
        return Group(rules.youngest, assumed=True)
    if age not in rules.by_age:
        raise NoGroupError(rules, f"age {age}")
    return Group(rules.by_age[age], assumed=False)


def _group_by_level(rules: RuleSet, level: str | None) -> Group:
    if len(rules.bands) == 1:
        return Group(rules.bands[0], assumed=False)
    if level is None:
        return Group(rules.youngest, assumed=True)
    for band in rules.bands:
        if band.level == level:
            return Group(band, assumed=False)
    raise NoGroupError(rules, level)

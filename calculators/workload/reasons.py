"""Why a rule forbids a day: each rule looked at on its own, against the log up to that day."""

from __future__ import annotations

import datetime
from typing import Literal, NamedTuple

from calculators.workload.caps import used, within
from calculators.workload.days import Day, Log
from calculators.workload.rest import LONGEST_REST, Owed
from calculators.workload.rules import Band, Cap, RuleSet, SecondGame

Rule = Literal["rest", "days running", "several days", "second game", "daily limit", "caught"]


class Reason(NamedTuple):
    """Why one rule forbids a day.

    rule: which rule. because: the outing's day, or the last day that counts toward it.
    until: the first day on which this rule alone forbids nothing any more.
    counted: what was counted; limit: what the rule allows. rest: days or nights owed.
    thrown: all that was thrown, where the rest goes by less than that.
    second_game: what the rules say about a second game that day; None where they do not settle it.
    """

    rule: Rule
    because: datetime.date
    until: datetime.date
    counted: int = 0
    limit: int | None = None
    rest: Owed | None = None
    cap: Cap | None = None
    thrown: int | None = None
    second_game: SecondGame | None = None


def reasons_against(rules: RuleSet, band: Band, log: Log, day: int) -> tuple[Reason, ...]:
    """Return every reason why a rule forbids pitching, or pitching on, on one day.

    band: the pitcher's group that day. log: days added up, earliest first; a later day counts only
    where it makes this one worse. day: as an ordinal, like `date.toordinal()`.
    """
    return (
        *rest_owed(log, day),
        *_days_running(band, log, day),
        *_caps(rules, band, log, day),
        *_same_day(band, log.get(day)),
    )


def rest_owed(log: Log, day: int) -> list[Reason]:
    """Return the outings whose rest is not over on a day."""
    before = [log[ordinal] for ordinal in range(day - LONGEST_REST, day) if ordinal in log]
    for ordinal in reversed(log):
        if ordinal <= day:
            break
        before.append(log[ordinal])
    return [
        Reason(
            "rest",
            one.date,
            datetime.date.fromordinal(one.until),
            one.for_rest,
            rest=one.owed,
            thrown=one.total if one.relieved else None,
        )
        for one in before
        if one.until > day and one.appearances
    ]


def days_running(log: Log, day: int, most: int) -> bool:
    """True where the `most` days before `day` all have an appearance."""
    for ordinal in range(day - most, day):
        before = log.get(ordinal)
        if before is None or not before.appearances:
            return False
    return True


def _days_running(band: Band, log: Log, day: int) -> list[Reason]:
    most = band.most_days_running
    if most is None or not days_running(log, day, most):
        return []
    date = datetime.date.fromordinal
    return [Reason("days running", date(day - 1), date(day + 1), most, limit=most)]


def _caps(rules: RuleSet, band: Band, log: Log, day: int) -> list[Reason]:
    found = []
    for cap in band.caps:
        counting = within(cap, log, day)
        amount = used(cap, counting, rules)
        if amount >= cap.most:
            last = max(one.date for one in counting if one.appearances)
            until = datetime.date.fromordinal(day + 1)
            found.append(Reason("several days", last, until, amount, cap.most, cap=cap))
    return found


def _same_day(band: Band, day: Day | None) -> list[Reason]:
    if day is None:
        return []
    found = []
    tomorrow = datetime.date.fromordinal(day.date.toordinal() + 1)
    caught_limit = band.catching.no_pitching_after_innings
    if caught_limit is not None and day.innings_caught >= caught_limit:
        found.append(Reason("caught", day.date, tomorrow, day.innings_caught, caught_limit))
    if day.appearances == 0:
        return found
    small = band.second_game_first_most
    allowed = band.second_game == "allowed" or (
        band.second_game == "after a small first game" and small is not None and day.total <= small
    )
    if not allowed:
        found.append(
            Reason("second game", day.date, tomorrow, day.total, small, second_game=band.second_game)
        )
    elif band.daily_max is not None and day.total >= band.daily_max:
        found.append(Reason("daily limit", day.date, tomorrow, day.total, band.daily_max))
    return found

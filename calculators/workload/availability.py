"""When a pitcher may pitch again under a rule set: every rule is applied, the latest date wins.

A day that no rule forbids is a day on which the pitcher is eligible under those rules. It says
nothing about whether anybody is fit to pitch.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import dataclass

from calculators.workload.ages import Group, Pitcher, group_for
from calculators.workload.caps import left, unchecked, within
from calculators.workload.days import Log, add_up_log
from calculators.workload.outings import Outing
from calculators.workload.reasons import Reason, reasons_against
from calculators.workload.rules import Band, Cap, RuleSet


@dataclass(frozen=True)
class Outlook:
    """One coming day: the reasons against it, and the most the rules let through if there are none.

    most: in the rule set's unit; None where no limit on one day is set.
    held_by: the limit over several days that makes `most` less than the daily limit.
    outs: outs left of a limit over several days, where the rules count something else and limit outs too;
        None without such a limit. outs_unknown: it cannot be checked, because an outing has no outs.
    """

    date: datetime.date
    reasons: tuple[Reason, ...]
    most: int | None
    held_by: Cap | None
    outs: int | None = None
    outs_unknown: bool = False

    @property
    def may_pitch(self) -> bool:
        """True where no rule forbids the day."""
        return not self.reasons


@dataclass(frozen=True)
class Availability:
    """The answer under one rule set.

    first_day: the first day from today on which no rule forbids pitching. A day already pitched on
        is not one, also where the rules allow a second game; `days` says what is left of it.
    reasons: every rule that stood in the way before it, the latest date first.
    days: the days asked for, today first. log: the outings added up by day.
    outs_unknown: a limit on outs that holds on the first day cannot be checked: an outing has no outs.
    """

    rules: RuleSet
    group: Group
    today: datetime.date
    first_day: datetime.date
    reasons: tuple[Reason, ...]
    days: tuple[Outlook, ...]
    log: Log
    outs_unknown: bool = False

    @property
    def rest_unknown(self) -> bool:
        """True where the rules have a rest table that was not found, so that no day can be named."""
        return "rest" in self.group.band.gaps

    @property
    def beyond_table(self) -> bool:
        """True where a count lies past the end of the rest table, so that the league must be asked."""
        return any(reason.rest is not None and reason.rest.beyond_table for reason in self.reasons)


def availability(
    rules: RuleSet,
    pitcher: Pitcher,
    outings: Iterable[Outing],
    today: datetime.date,
    days: int = 7,
    level_since: datetime.date | None = None,
) -> Availability:
    """Work out when a pitcher may pitch again.

    outings: in any order; one dated after today holds the pitcher back like any other.
    days: how many days to look at, today first.
    level_since: first day of the present tournament level, for rules that start each level afresh.
    Raises NoGroupError where the rule set has no band for the pitcher.
    """
    log = add_up_log(rules, pitcher, outings, level_since)
    return from_log(rules, pitcher, log, today, days)


def from_log(rules: RuleSet, pitcher: Pitcher, log: Log, today: datetime.date, days: int) -> Availability:
    """Work out when a pitcher may pitch again from a log added up already."""
    group = group_for(rules, pitcher, today)

    def band_on(day: int) -> Band:
        if pitcher.born is None:
            return group.band
        return group_for(rules, pitcher, datetime.date.fromordinal(day)).band

    first = today.toordinal()
    looked_at = {day: reasons_against(rules, band_on(day), log, day) for day in range(first, first + days)}
    seen: dict[tuple[str, datetime.date, Cap | None], Reason] = {}
    day = first
    while True:
        reasons = looked_at.get(day)
        if reasons is None:
            reasons = reasons_against(rules, band_on(day), log, day)
        for reason in reasons:
            seen[reason.rule, reason.because, reason.cap] = reason
        if not reasons and not (day in log and log[day].appearances):
            break
        day += 1
    return Availability(
        rules=rules,
        group=group,
        today=today,
        first_day=datetime.date.fromordinal(day),
        reasons=tuple(sorted(seen.values(), key=lambda reason: reason.until, reverse=True)),
        days=tuple(_outlook(rules, band_on(day), log, day, found) for day, found in looked_at.items()),
        log=log,
        outs_unknown=_outs_left(rules, band_on(day), log, day)[1],
    )


def strictest(answers: Iterable[Availability]) -> Availability:
    """Return the answer with the latest first day, for a pitcher who is under several rule sets."""
    return max(answers, key=lambda answer: answer.first_day)


def most_on(rules: RuleSet, band: Band, log: Log, day: int) -> tuple[int | None, Cap | None]:
    """Return the most the limits let through on a day (an ordinal), and the several-day limit behind it.

    None where there is no limit on one day, or where the daily limit decides.
    """
    already = log[day].total if day in log else 0
    most = None if band.daily_max is None else max(0, band.daily_max - already)
    held_by: Cap | None = None
    for cap in band.caps:
        if cap.unit == rules.counts:
            rest_of_it = left(cap, log, day, rules)
            if most is None or rest_of_it < most:
                most, held_by = rest_of_it, cap
    return most, held_by


def _outlook(rules: RuleSet, band: Band, log: Log, day: int, reasons: tuple[Reason, ...]) -> Outlook:
    most, held_by = most_on(rules, band, log, day)
    return Outlook(datetime.date.fromordinal(day), reasons, most, held_by, *_outs_left(rules, band, log, day))


def _outs_left(rules: RuleSet, band: Band, log: Log, day: int) -> tuple[int | None, bool]:
    """Return the outs left on a day where outs are limited beside what is counted, and whether any lack."""
    limits = [cap for cap in band.caps if cap.unit == "outs" and rules.counts != "outs"]
    lefts = [left(cap, log, day, rules) for cap in limits]
    lacking = any(unchecked(cap, within(cap, log, day), rules) for cap in limits)
    return min(lefts, default=None), lacking

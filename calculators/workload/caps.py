"""Limits over several days: a rolling window, or a calendar week."""

from __future__ import annotations

from collections.abc import Iterable

from calculators.workload.days import Day, Log
from calculators.workload.rules import Cap, RuleSet


def within(cap: Cap, log: Log, day: int) -> list[Day]:
    """Return the logged days that count with `day` (an ordinal): the rolling days up to it, or its week."""
    if cap.window == "rolling":
        first, length = day - cap.days + 1, cap.days
    else:
        first, length = day - ((day + 6 - cap.week_starts) % 7), 7
    return [log[ordinal] for ordinal in range(first, first + length) if ordinal in log]


def used(cap: Cap, days: Iterable[Day], rules: RuleSet) -> int:
    """Return what some days add to the limit together, in its unit."""
    if cap.unit == rules.counts:
        return sum([day.total for day in days])
    if cap.unit == "appearances":
        return sum([day.appearances for day in days])
    return sum([day.outs if cap.unit == "outs" else day.pitches for day in days])


def known(cap: Cap, days: Iterable[Day], rules: RuleSet) -> int:
    """Return the part of `used` that was written down, without what is assumed for unknown counts."""
    if cap.unit == rules.counts:
        return sum([day.known for day in days])
    return used(cap, days, rules)


def left(cap: Cap, log: Log, day: int, rules: RuleSet) -> int:
    """Return what is left of the limit on a day (an ordinal); 0 where it is used up."""
    return max(0, cap.most - used(cap, within(cap, log, day), rules))


def unchecked(cap: Cap, days: Iterable[Day], rules: RuleSet) -> bool:
    """True where a day lacks what the limit counts, so that it could not be checked."""
    return cap.unit == "outs" and rules.counts != "outs" and any(day.outs_missing for day in days)

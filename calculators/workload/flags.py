"""What to look at twice in a log of outings: limits passed, rest cut short, entries in doubt.

A flag never makes a date earlier. It says what a coordinator must check, and with which number.
"""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Sequence
from typing import Literal, NamedTuple

from calculators.workload.availability import Availability
from calculators.workload.caps import known, unchecked, used, within
from calculators.workload.catching import bar_to_catching
from calculators.workload.days import Day, Log
from calculators.workload.outings import Outing
from calculators.workload.reasons import Reason, days_running, reasons_against
from calculators.workload.rules import Band, RuleSet

FlagKind = Literal[
    "over the daily limit",
    "finished the batter",
    "past the rest table",
    "over a limit of several days",
    "limit not checked",
    "too soon",
    "second game",
    "caught and pitched",
    "pitched and caught",
    "unknown count",
    "unknown age",
    "two counts",
    "duplicate",
    "after today",
    "several teams",
    "unconfirmed",
]

VIOLATIONS = frozenset(
    ("over the daily limit", "past the rest table", "over a limit of several days", "too soon", "second game")
)
"""The kinds of flag that say a rule was broken."""


class Flag(NamedTuple):
    """One thing to look at.

    counted: what was counted; limit: what the rules allow. reason: the rule that was broken.
    name: the limit or team labels the flag speaks of. may_have_finished: passed by a batter whom the rules
        may have let the pitcher finish; the count before that batter is not known.
    """

    kind: FlagKind
    date: datetime.date | None = None
    counted: int = 0
    limit: int | None = None
    reason: Reason | None = None
    name: str = ""
    may_have_finished: bool = False


def flags(answer: Availability) -> tuple[Flag, ...]:
    """Return everything in a pitcher's log worth a second look, in order of date."""
    found: list[Flag] = []
    if answer.group.assumed:
        found.append(Flag("unknown age", name=answer.group.band.label))
    found += [Flag("unconfirmed", name=name) for name in sorted(answer.group.band.unconfirmed)]
    teams: set[str] = set()
    for day in answer.log.values():
        if len(day.outings) > 1 or day.date > answer.today:
            found += entry_flags(day.outings, answer.today)
        if day.innings_caught and (bar := bar_to_catching(day.band, day)):
            found.append(Flag("caught and pitched", day.date, bar.count, bar.limit))
        if day.two_counts:
            found.append(Flag("two counts", day.date, day.known))
        if day.unknown:
            found.append(Flag("unknown count", day.date, day.total))
        teams.update(outing.team for outing in day.outings)
    found += violations(answer.rules, answer.log)
    teams.discard("")
    if len(teams) > 1:
        found.append(Flag("several teams", counted=len(teams), name=", ".join(sorted(teams))))
    return tuple(found)


def entry_flags(outings: Sequence[Outing], today: datetime.date) -> list[Flag]:
    """Return the entries of one day that look mistaken: written twice, or dated after today."""
    found = []
    if len(outings) > 1:
        times_written = Counter(outings).items()
        found = [Flag("duplicate", one.date, times) for one, times in times_written if times > 1]
    if outings[0].date > today:
        found.append(Flag("after today", outings[0].date))
    return found


def violations(rules: RuleSet, log: Log) -> list[Flag]:
    """Return every passed limit of a log, and every batter finished past one, by day.

    A day is judged by the days before it, never by later ones.
    """
    found: list[Flag] = []
    before: Log = {}
    held_until = 0
    for ordinal, day in log.items():
        if day.appearances:
            band = day.band
            spent, over = _several_days(rules, before, ordinal, day) if band.caps else (False, ())
            most = band.most_days_running
            if spent or ordinal < held_until or (most and days_running(before, ordinal, most)):
                found += [
                    Flag("too soon", day.date, reason=reason)
                    for reason in reasons_against(rules, band, before, ordinal)
                ]
            found += _within_the_day(rules, band, day)
            found += over
            held_until = max(held_until, day.until)
        before[ordinal] = day
    return found


def _several_days(rules: RuleSet, before: Log, ordinal: int, day: Day) -> tuple[bool, Sequence[Flag]]:
    """Return whether a limit of several days was used up before a day, and what the day does to them."""
    spent = False
    found = []
    for cap in day.band.caps:
        counting = within(cap, before, ordinal)
        spent = spent or used(cap, counting, rules) >= cap.most
        counting.append(day)
        if unchecked(cap, counting, rules):
            found.append(Flag("limit not checked", day.date, limit=cap.most, name=cap.unit))
        count = known(cap, counting, rules)
        if count > cap.most:
            reason = Reason("several days", day.date, day.date, count, cap.most, cap=cap)
            found.append(Flag("over a limit of several days", day.date, count, cap.most, reason))
    return spent, found


def _within_the_day(rules: RuleSet, band: Band, day: Day) -> list[Flag]:
    found = []
    if band.daily_max is not None and day.known > band.daily_max:
        kind: FlagKind = "finished the batter" if day.finishing else "over the daily limit"
        untold = bool(rules.finish_batter) and all(one.before_last_batter is None for one in day.outings)
        found.append(Flag(kind, day.date, day.known, band.daily_max, may_have_finished=untold))
    if day.owed.beyond_table:
        found.append(Flag("past the rest table", day.date, day.for_rest, band.table_end))
    limit = band.catching.no_pitching_after_innings
    if limit is not None and day.innings_caught >= limit:
        found.append(Flag("pitched and caught", day.date, day.innings_caught, limit))
    if len(day.outings) > 1:
        games = sum(outing.pitched for outing in day.outings)
        if games > 1 and not _second_game_allowed(band, day):
            found.append(Flag("second game", day.date, games, band.second_game_first_most))
    return found


def _second_game_allowed(band: Band, day: Day) -> bool:
    if band.second_game != "after a small first game" or band.second_game_first_most is None:
        return band.second_game == "allowed"
    games = sorted((outing for outing in day.outings if outing.pitched), key=lambda o: o.game or 0)
    if any(outing.game is None for outing in games):
        return False
    first = games[0].pitches
    return first is not None and first <= band.second_game_first_most

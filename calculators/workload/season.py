"""A season before it begins: the weeks of the build-up, the ceilings of a week with games, the months off.

It plans around limits. It never says how much to throw: every number is a ceiling that a rule set gives.
"""

from __future__ import annotations

import datetime
import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from calculators.workload.ages import Pitcher, group_for
from calculators.workload.availability import availability
from calculators.workload.outings import Outing
from calculators.workload.rest import ONE_DAY
from calculators.workload.rules import Band, RuleSet

ONE_WEEK = 7 * ONE_DAY

DECIDES_A_CEILING = frozenset(("daily_max", "rest", "caps", "most_days_running"))
"""The limits without which nobody can say what keeps the next game day open."""

Use = Literal["off", "build-up", "games"]


@dataclass(frozen=True)
class Season:
    """first, last: the days of the first and the last game. weekdays: game days, 0 is Monday.

    build_up: weeks of throwing before the first game.
    """

    first: datetime.date
    last: datetime.date
    weekdays: tuple[int, ...]
    build_up: int

    @property
    def starts(self) -> datetime.date:
        """The first day of throwing."""
        return self.first - self.build_up * ONE_WEEK

    @property
    def weeks(self) -> int:
        """Weeks with games, a part of a week counting whole."""
        return (self.last - self.first).days // 7 + 1

    def game_days(self) -> Iterator[datetime.date]:
        """Yield the game days, the first and the last day of the season included."""
        day = self.first
        while day <= self.last:
            if day.weekday() in self.weekdays or day in (self.first, self.last):
                yield day
            day += ONE_DAY


@dataclass(frozen=True)
class GameDay:
    """A weekday with games and the most that keeps the next one open.

    most: in the rule set's unit; 0 where pitching at all closes the next game day; None without any limit.
    barred: the rules forbid the day itself, though the games before it stayed within their ceilings.
    ask: a limit that decides the ceiling was not found, so that only the league can name it.
    """

    weekday: int
    most: int | None
    barred: bool = False
    ask: bool = False


def week_of_games(
    rules: RuleSet, pitcher: Pitcher, weekdays: Sequence[int], on: datetime.date
) -> tuple[GameDay, ...]:
    """Return each game day of a week with its ceiling, where a pitcher pitches on every one of them.

    weekdays: 0 is Monday, at least one. on: a day of the season, which decides the group.
    Three weeks are played through and the last is told, so that earlier games count.
    Raises NoGroupError where the rules have no group for the pitcher.
    """
    monday = on - on.weekday() * ONE_DAY
    days = [
        monday + week * ONE_WEEK + weekday * ONE_DAY for week in range(4) for weekday in sorted(set(weekdays))
    ]
    band = group_for(rules, pitcher, on).band
    if band.gaps & DECIDES_A_CEILING:
        return tuple(GameDay(weekday, None, ask=True) for weekday in sorted(set(weekdays)))
    log: list[Outing] = []
    found: list[GameDay] = []
    for day, following in itertools.pairwise(days):
        today = availability(rules, pitcher, log, day, days=1).days[0]
        if not today.may_pitch:
            found.append(GameDay(day.weekday(), 0, barred=True))
            continue
        counts = _counts(band, today.most)
        if not counts:
            found.append(GameDay(day.weekday(), today.most))
            continue
        most = next((n for n in counts if _keeps_open(rules, pitcher, log, day, following, n)), 0)
        found.append(GameDay(day.weekday(), most))
        if most:
            log.append(_outing(rules, day, most))
    last_week = len(set(weekdays)) * 2
    return tuple(found[last_week : last_week + len(set(weekdays))])


def lower_of(one: Sequence[GameDay], other: Sequence[GameDay]) -> tuple[GameDay, ...]:
    """Return the same week with the lower ceiling of each game day, for a pitcher under two rule sets."""
    return tuple(
        min(pair, key=lambda game: (not game.ask, not game.barred, game.most is None, game.most or 0))
        for pair in zip(one, other, strict=True)
    )


def months_of(season: Season) -> tuple[tuple[datetime.date, Use], ...]:
    """Return twelve months, each by its first day, from the one in which the throwing begins."""
    month = season.starts.replace(day=1)
    found = []
    for _ in range(12):
        following = (month + 31 * ONE_DAY).replace(day=1)
        last_day = following - ONE_DAY
        use: Use = "off"
        if season.first <= last_day and season.last >= month:
            use = "games"
        elif season.starts <= last_day and season.first > month:
            use = "build-up"
        found.append((month, use))
        month = following
    return tuple(found)


def longest_off(months: Sequence[tuple[datetime.date, Use]]) -> int:
    """Return how many months off stand in a row at most, the year going round."""
    uses = [use for _, use in months]
    if all(use == "off" for use in uses):
        return len(uses)
    longest = run = 0
    for use in (*uses, *uses):
        run = run + 1 if use == "off" else 0
        longest = max(longest, run)
    return longest


def _counts(band: Band, most: int | None) -> list[int]:
    """Return the counts at which a rest step ends, and the day's most, largest first."""
    ends = {step.high for step in band.rest if step.high is not None}
    if most is not None:
        ends = {end for end in ends if end <= most} | {most}
    return sorted((end for end in ends if end > 0), reverse=True)


def _keeps_open(
    rules: RuleSet,
    pitcher: Pitcher,
    log: Sequence[Outing],
    day: datetime.date,
    following: datetime.date,
    count: int,
) -> bool:
    found = availability(rules, pitcher, (*log, _outing(rules, day, count)), following, days=1)
    return found.days[0].may_pitch and not found.beyond_table


def _outing(rules: RuleSet, day: datetime.date, count: int) -> Outing:
    return Outing(day, outs=count) if rules.counts == "outs" else Outing(day, pitches=count)

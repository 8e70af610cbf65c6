"""What the outings of one day come to under one rule set."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from typing import NamedTuple

from calculators.workload.ages import NoGroupError, Pitcher, group_for
from calculators.workload.outings import Outing, by_day, one_count_a_game
from calculators.workload.rest import Owed, days_held, owed
from calculators.workload.rules import Band, RuleSet


class Day(NamedTuple):
    """All outings of one day under one rule set, in the unit that rule set counts.

    band: the pitcher's group that day.
    known: what was counted. unknown: some count is missing.
    total: what limits go by; with a missing count, the daily limit if that is more.
    for_rest: what the rest table goes by. relieved: the last batter's pitches were left out of it.
    finishing: over the daily limit only to finish a batter, where the rules allow that.
    appearances: outings to batters. pitches, outs: the known sums. outs_missing: an outing has none.
    two_counts: a game was written with two counts, and the larger one counts.
    owed: the rest owed. until: the first day after it, as an ordinal like `date.toordinal()`.
    """

    date: datetime.date
    band: Band
    outings: tuple[Outing, ...]
    known: int
    unknown: bool
    total: int
    for_rest: int
    relieved: bool
    finishing: bool
    appearances: int
    pitches: int
    outs: int
    outs_missing: bool
    innings_caught: int
    owed: Owed
    until: int
    two_counts: bool = False


Log = dict[int, Day]
"""The days of one pitcher by their ordinal, earliest first."""


def add_up_log(
    rules: RuleSet,
    pitcher: Pitcher,
    outings: Iterable[Outing],
    level_since: datetime.date | None = None,
) -> Log:
    """Add outings up by day, each under the group the pitcher was in on that day.

    A birthday after an outing does not shorten the rest it owes.
    level_since: first day of the present tournament level, for rules that start each level afresh.
    """
    if rules.resets_each_level and level_since is not None:
        outings = [outing for outing in outings if outing.date >= level_since]
    fixed = group_for(rules, pitcher, datetime.date.min).band if pitcher.born is None else None
    return {
        date.toordinal(): add_up(rules, fixed or _band_then(rules, pitcher, date), of_day)
        for date, of_day in by_day(outings).items()
    }


def _band_then(rules: RuleSet, pitcher: Pitcher, date: datetime.date) -> Band:
    """Return the group on a past day; somebody then outside all groups counts as the youngest."""
    try:
        return group_for(rules, pitcher, date).band
    except NoGroupError:
        return rules.youngest


def add_up(rules: RuleSet, band: Band, outings: tuple[Outing, ...]) -> Day:
    """Add up one day's outings (at least one, all on that day) under a rule set and a band.

    A game that is written with two counts counts once, with the larger one.
    """
    written, outings = len(outings), outings if len(outings) == 1 else one_count_a_game(outings)
    known = pitches = outs = appearances = 0
    unknown = outs_missing = last_batter_told = False
    pitched = []
    for outing in outings:
        if not outing.pitched or (outing.called_off and not rules.no_game_counts):
            continue
        pitched.append(outing)
        count = counted(rules, outing)
        known += count or 0
        unknown = unknown or outing.unsure or count is None
        last_batter_told = last_batter_told or outing.before_last_batter is not None
        pitches += outing.pitches or 0
        outs += outing.outs or 0
        outs_missing = outs_missing or outing.unsure or outing.outs is None
        appearances += 2 if outing.reentered and rules.reentry_is_second_appearance else 1
    total = max(known, band.unknown_as) if unknown else known
    for_rest, finishing = total, False
    if last_batter_told and not unknown:
        for_rest, finishing = _for_rest(rules, band, pitched, total)
    rest = owed(rules, band, for_rest)
    date = outings[0].date
    held = days_held(rules, rest.rest) if appearances else 0
    return Day(
        date,
        band,
        outings,
        known,
        unknown,
        total,
        for_rest,
        for_rest < total,
        finishing,
        appearances,
        pitches,
        outs,
        outs_missing,
        _innings_caught(outings),
        rest,
        date.toordinal() + held,
        len(outings) < written,
    )


def counted(rules: RuleSet, outing: Outing) -> int | None:
    """Return what one outing counts under a rule set, None where that is not known."""
    if rules.counts == "outs":
        return outing.outs
    if outing.pitches is None:
        return None
    warmups = (outing.other_throws or 0) if rules.warmups_count else 0
    return outing.pitches + rules.automatic_walk_pitches * outing.automatic_walks + warmups


def _for_rest(rules: RuleSet, band: Band, pitched: list[Outing], total: int) -> tuple[int, bool]:
    """Return the count the rest table goes by, and whether the daily limit was passed to finish a batter.

    Where a rest step passed during the last at-bat does not count, the first pitch to that batter
    decides the step. Without the count before the last batter, the total decides, which is stricter.
    """
    last = _last(pitched)
    if last is None or last.before_last_batter is None or last.pitches is None or rules.counts != "pitches":
        return total, False
    to_last_batter = last.pitches - last.before_last_batter
    before = total - to_last_batter
    finishing = bool(rules.finish_batter) and band.daily_max is not None and before < band.daily_max < total
    for_rest = total
    if rules.threshold_relief and to_last_batter > 0:
        for_rest = before + 1
    elif finishing and band.daily_max is not None and band.table_end == band.daily_max:
        for_rest = band.daily_max
    return for_rest, finishing


def _last(pitched: list[Outing]) -> Outing | None:
    """Return the day's last outing, None where the order of several games is not known."""
    if len(pitched) == 1:
        return pitched[0]
    games = [outing.game for outing in pitched if outing.game is not None]
    if not games or len(games) < len(pitched) or len(set(games)) < len(games):
        return None
    return next(outing for outing in pitched if outing.game == max(games))


def _innings_caught(outings: tuple[Outing, ...]) -> int:
    """Return the most innings caught in one game; rows without a game number may be one game."""
    if len(outings) == 1:
        return outings[0].innings_caught or 0
    games: dict[int | None, int] = {}
    for outing in outings:
        games[outing.game] = games.get(outing.game, 0) + (outing.innings_caught or 0)
    return max(games.values())

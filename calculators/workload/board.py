"""The league's board: who is eligible on a day, from a roster and everybody's outings.

It uses the same rules, one pitcher after the other, as the page for one pitcher does. It compares
no pitcher with another and ranks nobody: rows stand in the order of the roster.
"""

from __future__ import annotations

import datetime
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from calculators.workload.ages import NoGroupError, Pitcher
from calculators.workload.availability import from_log
from calculators.workload.days import add_up_log
from calculators.workload.flags import Flag, flags
from calculators.workload.outings import Outing
from calculators.workload.reasons import Reason
from calculators.workload.rules import RuleSet
from calculators.workload.totals import Total, recent


class BoardRow(NamedTuple):
    """One pitcher on the board.

    name: the roster's own label. group: the band's label; None where the rules have none for them.
    eligible: no rule forbids pitching on the board's day. most: the ceiling that day, None for none.
    first_day: the first day no rule forbids; None where it was not found. ask_league: the rules as
        read do not settle it, so that the league must be asked.
    reasons: what stands in the way. flags: what to look at twice, violations among it.
    set_aside: outings dated after the board's day, which it does not use.
    in_pain: marked with pain. Then there is no day, no ceiling and no reason: see a clinician.
    """

    name: str
    group: str | None
    eligible: bool
    most: int | None
    first_day: datetime.date | None
    ask_league: bool
    reasons: tuple[Reason, ...]
    flags: tuple[Flag, ...]
    last_7: Total
    last_28: Total
    set_aside: int
    in_pain: bool = False


class UnverifiedRulesError(ValueError):
    """The rule set has not been checked at its source, and nobody asked for it all the same."""


@dataclass(frozen=True)
class Board:
    """A league on one day, under one rule set."""

    rules: RuleSet
    day: datetime.date
    rows: tuple[BoardRow, ...]


def board(
    rules: RuleSet,
    roster: Mapping[str, Pitcher],
    outings: Mapping[str, Sequence[Outing]],
    day: datetime.date,
    unverified: bool = False,
    in_pain: Collection[str] = (),
) -> Board:
    """Work out a whole league for one day.

    roster: what is known of each pitcher, by name. outings: each pitcher's outings, in any order;
    a pitcher who is not on the roster is left out, so read files with `reading`, which reports them.
    unverified: use rules from memory or in doubt; else they raise UnverifiedRulesError.
    in_pain: names of those who are marked with pain, which overrides every count.
    """
    if not unverified and (rules.status == "from memory" or rules.doubt is not None):
        raise UnverifiedRulesError(f"{rules.title} is not checked at its source. Ask the body, or say so.")
    rows = tuple(
        _stopped(name, outings.get(name, ()), day)
        if name in in_pain
        else _row(rules, name, pitcher, outings.get(name, ()), day)
        for name, pitcher in roster.items()
    )
    return Board(rules, day, rows)


def group_by_name(outings: Iterable[tuple[str, Outing]]) -> dict[str, list[Outing]]:
    """Collect outings by the name of the pitcher."""
    found: dict[str, list[Outing]] = {}
    for name, outing in outings:
        found.setdefault(name, []).append(outing)
    return found


def _stopped(name: str, outings: Sequence[Outing], day: datetime.date) -> BoardRow:
    last_7, last_28 = recent([outing for outing in outings if outing.date <= day], day)
    later = sum(outing.date > day for outing in outings)
    return BoardRow(name, None, False, 0, None, False, (), (), last_7, last_28, later, in_pain=True)


def _row(
    rules: RuleSet, name: str, pitcher: Pitcher, outings: Sequence[Outing], day: datetime.date
) -> BoardRow:
    past = [outing for outing in outings if outing.date <= day]
    last_7, last_28 = recent(past, day)
    later = len(outings) - len(past)
    try:
        answer = from_log(rules, pitcher, add_up_log(rules, pitcher, past), day, days=1)
    except NoGroupError:
        return BoardRow(name, None, False, None, None, True, (), (), last_7, last_28, later)
    today = answer.days[0]
    ask_league = answer.rest_unknown or answer.beyond_table
    return BoardRow(
        name,
        answer.group.band.label,
        today.may_pitch and not ask_league,
        today.most if today.may_pitch and not ask_league else 0,
        None if answer.rest_unknown else answer.first_day,
        ask_league,
        answer.reasons,
        tuple(flag for flag in flags(answer) if flag.kind != "unconfirmed"),
        last_7,
        last_28,
        later,
    )

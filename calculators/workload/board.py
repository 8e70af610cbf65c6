"""The league's board: who is eligible on a day, from a roster and everybody's outings.

It uses the same rules, one pitcher after the other, as the page for one pitcher does. Whoever is under
several rule sets is eligible only where each of them allows it. It compares no pitcher with another and
ranks nobody: rows stand in the order of the roster.
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


class Standing(NamedTuple):
    """Where one pitcher stands under one rule set.

    group: the band's label; None where the rules have none for them.
    eligible: these rules do not forbid pitching on the board's day. most: their ceiling that day, in
        their own unit; None for none. outs: outs left that day where they limit outs beside it.
    outs_unknown: their limit on outs cannot be checked.
    first_day: the first day they do not forbid; None where it was not found. ask_league: the rules as
        read do not settle it, so that the league must be asked.
    reasons: what stands in the way. flags: what to look at twice, violations among it.
    """

    rules: RuleSet
    group: str | None
    eligible: bool
    most: int | None
    first_day: datetime.date | None
    ask_league: bool
    outs: int | None = None
    outs_unknown: bool = False
    reasons: tuple[Reason, ...] = ()
    flags: tuple[Flag, ...] = ()


class BoardRow(NamedTuple):
    """One pitcher on the board.

    name: the roster's own label. standings: one for each rule set the pitcher is under; none for
        whoever is in pain, and none where it is not known which rules hold.
    last_7, last_28: pitches, all teams together. set_aside: outings dated after the board's day, which
        it does not use.
    in_pain: marked with pain. Then there is no day, no ceiling and no reason: see a clinician.
    beside: where the pitcher would stand under the rules set beside; None where there are none.
    """

    name: str
    standings: tuple[Standing, ...]
    last_7: Total
    last_28: Total
    set_aside: int
    in_pain: bool = False
    beside: Standing | None = None

    @property
    def ask_league(self) -> bool:
        """True where a rule set does not settle it, or nobody knows which rules hold."""
        return not self.in_pain and (
            not self.standings or any(standing.ask_league for standing in self.standings)
        )

    @property
    def eligible(self) -> bool:
        """True where no rule of any of the pitcher's rule sets forbids the board's day."""
        return bool(self.standings) and all(standing.eligible for standing in self.standings)

    @property
    def latest(self) -> Standing | None:
        """The standing with the latest first day; None where a first day was not found."""
        if not self.standings or any(standing.first_day is None for standing in self.standings):
            return None
        return max(self.standings, key=lambda standing: standing.first_day or datetime.date.min)

    @property
    def first_day(self) -> datetime.date | None:
        """The first day that none of the pitcher's rule sets forbids; None where it was not found."""
        return self.latest.first_day if self.latest else None


class UnverifiedRulesError(ValueError):
    """The rule set has not been checked at its source, and nobody asked for it all the same."""


@dataclass(frozen=True)
class Board:
    """A league on one day, under the rule sets its pitchers are under; one at least."""

    rules: tuple[RuleSet, ...]
    day: datetime.date
    rows: tuple[BoardRow, ...]


def board(
    rules: RuleSet,
    roster: Mapping[str, Pitcher],
    outings: Mapping[str, Sequence[Outing]],
    day: datetime.date,
    unverified: bool = False,
    in_pain: Collection[str] = (),
    own_rules: Mapping[str, Sequence[RuleSet]] | None = None,
    beside: RuleSet | None = None,
    editions: Mapping[str, RuleSet] | None = None,
) -> Board:
    """Work out a whole league for one day.

    rules: for everybody who has no rule set of their own.
    roster: what is known of each pitcher, by name. outings: each pitcher's outings, in any order;
    a pitcher who is not on the roster is left out, so read files with `reading`, which reports them.
    unverified: use rules from memory or in doubt; else they raise UnverifiedRulesError.
    in_pain: names of those who are marked with pain, which overrides every count.
    own_rules: by name, the rule sets of those who are not under `rules`; empty where nobody knows which.
    beside: rules to set beside everybody's own, for comparison; they decide nothing.
    editions: by the slug of a rule set, another edition of it, which comes first where it names a later day.
    """
    own = own_rules or {}
    in_use = {one.slug: one for name in roster for one in own.get(name, (rules,))} or {rules.slug: rules}
    for one in in_use.values():
        if not unverified and one.unchecked:
            raise UnverifiedRulesError(f"{one.title} is not checked at its source. Ask the body, or say so.")
    rows = tuple(
        _row(
            own.get(name, (rules,)),
            name,
            pitcher,
            outings.get(name, ()),
            day,
            name in in_pain,
            beside,
            editions or {},
        )
        for name, pitcher in roster.items()
    )
    return Board(tuple(in_use.values()), day, rows)


def group_by_name(outings: Iterable[tuple[str, Outing]]) -> dict[str, list[Outing]]:
    """Collect outings by the name of the pitcher."""
    found: dict[str, list[Outing]] = {}
    for name, outing in outings:
        found.setdefault(name, []).append(outing)
    return found


def _row(
    rulings: Sequence[RuleSet],
    name: str,
    pitcher: Pitcher,
    outings: Sequence[Outing],
    day: datetime.date,
    in_pain: bool,
    beside: RuleSet | None,
    editions: Mapping[str, RuleSet],
) -> BoardRow:
    past = [outing for outing in outings if outing.date <= day]
    last_7, last_28 = recent(past, day)
    set_aside = len(outings) - len(past)
    if in_pain:
        return BoardRow(name, (), last_7, last_28, set_aside, in_pain=True)
    under = (*rulings, *(() if beside is None else (beside,)))
    standings = [_with_edition(rules, editions.get(rules.slug), pitcher, past, day) for rules in under]
    compared = None if beside is None else standings.pop()[-1]
    return BoardRow(
        name,
        tuple(standing for each in standings for standing in each),
        last_7,
        last_28,
        set_aside,
        beside=compared,
    )


def _with_edition(
    rules: RuleSet, edition: RuleSet | None, pitcher: Pitcher, past: Sequence[Outing], day: datetime.date
) -> list[Standing]:
    """Return where a pitcher stands, and also under another edition where that one names a later day."""
    own = _standing(rules, pitcher, past, day)
    if edition is None or own.first_day is None:
        return [own]
    other = _standing(edition, pitcher, past, day)
    later = other.first_day is not None and other.first_day > own.first_day
    return [own, other._replace(flags=())] if later else [own]


def _standing(rules: RuleSet, pitcher: Pitcher, past: Sequence[Outing], day: datetime.date) -> Standing:
    try:
        answer = from_log(rules, pitcher, add_up_log(rules, pitcher, past), day, days=1)
    except NoGroupError:
        return Standing(rules, None, False, None, None, ask_league=True)
    today = answer.days[0]
    ask_league = answer.rest_unknown or answer.beyond_table or (today.may_pitch and today.outs_unknown)
    eligible = today.may_pitch and not ask_league
    return Standing(
        rules,
        answer.group.band.label,
        eligible,
        today.most if eligible else 0,
        None if answer.rest_unknown else answer.first_day,
        ask_league,
        today.outs if eligible else None,
        today.outs_unknown,
        answer.reasons,
        tuple(flag for flag in flags(answer) if flag.kind != "unconfirmed"),
    )

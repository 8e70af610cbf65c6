"""What is called out beside the counter of a game that is going on, before the next batter comes up."""

from __future__ import annotations

import dataclasses
import datetime
from collections.abc import Sequence
from dataclasses import dataclass

from calculators.desk.pitch_count_words import amount, day_words, short_reason
from calculators.words import Message, say, say_count
from calculators.workload.ages import Pitcher
from calculators.workload.availability import Availability, availability
from calculators.workload.catching import CatchingBar, bar_to_catching
from calculators.workload.outings import Outing
from calculators.workload.rules import RuleSet

ONE_BATTER = 6
"""A step this many pitches away may come while the next batter bats. An estimate: few bats last longer."""


OUTS_ONLY = say("These rules count outs. Enter the outs below; the counter counts pitches only.")


@dataclass(frozen=True)
class Tonight:
    """A game that is going on.

    rulings: each rule set with the pitcher's age as it counts. before: outings already over.
    thrown: pitches so far; to_last: how many of them when the last batter came up, None if not known.
    """

    rulings: Sequence[tuple[RuleSet, Pitcher]]
    before: Sequence[Outing]
    today: datetime.date
    thrown: int
    to_last: int | None

    def under(self, thrown: int, to_last: int | None) -> list[Availability]:
        """Return the answer under each rule set if the pitcher leaves after `thrown` pitches."""
        outing = Outing(self.today, pitches=thrown, before_last_batter=to_last)
        return [
            availability(rules, pitcher, (*self.before, outing), self.today, days=1)
            for rules, pitcher in self.rulings
        ]

    def first_day(self, thrown: int, to_last: int | None) -> datetime.date:
        """Return the first day that no rule set forbids if the pitcher leaves after `thrown` pitches."""
        return max(answer.first_day for answer in self.under(thrown, to_last))


def called_out(tonight: Tonight) -> tuple[Message, ...]:
    """Return the lines to call out, the most pressing first."""
    if barred := _barred(tonight):
        return barred
    by_pitches = [(rules, pitcher) for rules, pitcher in tonight.rulings if rules.counts == "pitches"]
    if not by_pitches:
        return (OUTS_ONLY,)
    by_outs = [rules for rules, _ in tonight.rulings if rules.counts != "pitches"]
    return (
        *_by_pitches(dataclasses.replace(tonight, rulings=by_pitches)),
        *(say("{title}: {words}", title=rules.title, words=OUTS_ONLY) for rules in by_outs),
    )


def _by_pitches(tonight: Tonight) -> tuple[Message, ...]:
    """Return the lines of the rule sets that count pitches, the most pressing first."""
    if any(answer.rest_unknown for answer in tonight.under(0, None)):
        return (say("The rest these rules ask for was not found. Ask the league."),)
    leaving = tonight.first_day(tonight.thrown, tonight.to_last)
    staying = tonight.first_day(tonight.thrown + 1, tonight.thrown)
    step = _next_step(tonight, staying)
    pressing = step is not None and not _relieved(tonight) and step[0] - tonight.thrown <= ONE_BATTER
    ended, ending = _catching(tonight)
    told = () if step is None else (_step_words(tonight, *step, pressing),)
    return (
        *_limit(tonight),
        *_next_batter(tonight, leaving, staying),
        *(told if pressing else ()),
        *ending,
        _leaving_now(tonight, leaving),
        *(() if pressing else told),
        *ended,
        *_outs_too(tonight),
    )


def _barred(tonight: Tonight) -> tuple[Message, ...]:
    """Return why a rule forbids pitching tonight at all; the game that is going on is no reason."""
    reasons = [
        reason
        for rules, pitcher in tonight.rulings
        for reason in availability(rules, pitcher, tonight.before, tonight.today, days=1).days[0].reasons
    ]
    return tuple(
        say("Stop: not eligible today under these rules ({reason}).", reason=short_reason(reason))
        for reason in reasons[:1]
    )


def _limit(tonight: Tonight) -> tuple[Message, ...]:
    """Return what to know about the nearest daily limit, where it is reached or one batter away."""
    lefts = [
        (answer.days[0].most, rules)
        for answer, (rules, _) in zip(tonight.under(0, None), tonight.rulings, strict=True)
    ]
    known = [(most, rules) for most, rules in lefts if most is not None]
    if not known:
        return ()
    most, rules = min(known, key=lambda one: (one[0], bool(one[1].finish_batter)))
    left = most - tonight.thrown
    limit = amount(most, "pitches")
    if left <= 0:
        if rules.finish_batter:
            return (say("{limit}: the limit today is reached. No further batter.", limit=limit),)
        return (say("{limit}: the limit today is reached. The pitcher leaves now.", limit=limit),)
    if left > ONE_BATTER:
        return ()
    said = say_count(
        "{count} pitch to the limit of {limit}.",
        "{count} pitches to the limit of {limit}.",
        left,
        limit=limit,
    )
    if rules.finish_batter:
        return (say("{said} A batter begun before it may be finished.", said=said),)
    if rules.finish_batter is None:
        return (say("{said} Whether the batter may be finished was not read: ask the league.", said=said),)
    return (say("{said} These rules know no finishing of the batter.", said=said),)


def _catching(tonight: Tonight) -> tuple[tuple[Message, ...], tuple[Message, ...]]:
    """Return that tonight's pitches have ended the catching, or else that the next batter may end it."""
    if bar := _bar(tonight, tonight.thrown, tonight.to_last):
        limit = amount(bar.limit, "pitches")
        return (say("No more catching today: the limit for that, {limit}, is reached.", limit=limit),), ()
    if tonight.thrown == 0:
        return (), ()
    if bar := _bar(tonight, tonight.thrown + 1, tonight.thrown):
        return (), (say("Before the next batter: one pitch to that batter ends catching today."),)
    for thrown in range(tonight.thrown + 2, tonight.thrown + ONE_BATTER + 1):
        if _bar(tonight, thrown, tonight.thrown):
            return (), (
                say("The next batter may see pitch number {at}. That ends catching today.", at=str(thrown)),
            )
    return (), ()


def _bar(tonight: Tonight, thrown: int, to_last: int | None) -> CatchingBar | None:
    """Return what ends the catching if the pitcher leaves after `thrown` pitches; the lowest limit of all."""
    bars = []
    for answer in tonight.under(thrown, to_last):
        day = answer.log[tonight.today.toordinal()]
        if (bar := bar_to_catching(day.band, day)) is not None:
            bars.append(bar)
    return min(bars, key=lambda bar: bar.limit, default=None)


def _outs_too(tonight: Tonight) -> tuple[Message, ...]:
    """Return the outs left tonight, where rules that count pitches limit the outs of a week as well."""
    days = [
        availability(rules, pitcher, tonight.before, tonight.today, days=1).days[0]
        for rules, pitcher in tonight.rulings
    ]
    if any(day.outs_unknown for day in days):
        return (say("Outs of this week have a limit too, and some are not known: ask before going on."),)
    if lefts := [day.outs for day in days if day.outs is not None]:
        most = amount(min(lefts), "outs")
        return (
            say("Outs have a limit too: at most {most} today. The counter does not count them.", most=most),
        )
    return ()


def _next_batter(tonight: Tonight, leaving: datetime.date, staying: datetime.date) -> tuple[Message, ...]:
    if staying <= leaving or tonight.thrown == 0:
        return ()
    return (
        say(
            "Before the next batter: one pitch to that batter moves the first day to {day}.",
            day=day_words(staying, tonight.today),
        ),
    )


def _leaving_now(tonight: Tonight, leaving: datetime.date) -> Message:
    if tonight.thrown == 0:
        return say("No pitch yet, so nothing is owed for this game.")
    day = day_words(leaving, tonight.today)
    if any(answer.beyond_table for answer in tonight.under(tonight.thrown, tonight.to_last)):
        return say("Leaving now: not before {day}, and ask the league first.", day=day)
    return say("Leaving now: not before {day}.", day=day)


def _next_step(tonight: Tonight, staying: datetime.date) -> tuple[int, datetime.date] | None:
    """Return the next count at which the first day moves, after the first pitch to the next batter."""
    earlier = sum(outing.pitches or 0 for outing in tonight.before if outing.date == tonight.today)
    lows = {step.low for answer in tonight.under(0, None) for step in answer.group.band.rest}
    for at in sorted(low - earlier for low in lows if low - earlier > tonight.thrown + 1):
        day = tonight.first_day(at, at - 1)
        if day > staying:
            return at, day
    return None


def _relieved(tonight: Tonight) -> bool:
    """True where a step passed during an at-bat does not count under any of the rule sets."""
    return all(rules.threshold_relief for rules, _ in tonight.rulings)


def _step_words(tonight: Tonight, at: int, date: datetime.date, pressing: bool) -> Message:
    day = day_words(date, tonight.today)
    if _relieved(tonight):
        return say("A batter whose first pitch is number {at} moves it to {day}.", at=str(at), day=day)
    if pressing:
        return say("The next batter may see pitch number {at}. That moves it to {day}.", at=str(at), day=day)
    return say_count(
        "{count} more pitch, number {at}, moves it to {day}.",
        "{count} more pitches, up to number {at}, move it to {day}.",
        at - tonight.thrown,
        at=str(at),
        day=day,
    )

"""The tables of the pitch count calculator: the coming days, and the rest table on paper."""

from __future__ import annotations

from calculators.desk.answers import Table
from calculators.desk.pitch_count_words import amount, day_words, rest_words, short_reason
from calculators.words import Message, say
from calculators.workload.availability import Availability, Outlook
from calculators.workload.rules import Band, RestStep, RuleSet


def coming_days(answer: Availability) -> Table:
    """Return the coming days in words: whether a rule forbids the day, the ceiling, and why."""
    return Table(
        caption=say("The next days under these rules"),
        heads=(say("Day"), say("Under these rules"), say("Ceiling that day"), say("Why")),
        rows=tuple(_day_row(answer, outlook) for outlook in answer.days),
    )


def rest_table(rules: RuleSet) -> Table:
    """Return a rule set's daily limits and rest steps, one age group or level a row."""
    rests = sorted({step.rest for band in rules.bands for step in band.rest})
    unit = say("Most outs in a day") if rules.counts == "outs" else say("Most pitches in a day")
    return Table(
        caption=say("Rest owed under the {title}, by what was thrown that day", title=rules.title),
        heads=(say("Group"), unit, *(rest_words(rules, rest) for rest in rests)),
        rows=tuple(
            (
                say(band.label),
                _number_or_dash(band.daily_max),
                *(_steps(band, rest) for rest in rests),
            )
            for band in rules.bands
        ),
    )


def _day_row(answer: Availability, outlook: Outlook) -> tuple[Message, ...]:
    day = day_words(outlook.date, answer.today)
    if outlook.reasons:
        first, *others = {reason.rule: reason for reason in outlook.reasons}.values()
        why = short_reason(first)
        for reason in others:
            why = say("{first}; {second}", first=why, second=short_reason(reason))
        return (day, say("not yet"), say("none"), why)
    if answer.rest_unknown or answer.beyond_table:
        return (day, say("ask the league"), say("none"), say("the rest table does not say"))
    if outlook.most is None:
        return (day, say("eligible"), say("no daily limit"), say("no rule forbids it"))
    why = say("limit over several days") if outlook.held_by else say("daily limit")
    return (day, say("eligible"), amount(outlook.most, answer.rules.counts), why)


def _steps(band: Band, rest: int) -> Message:
    for step in band.rest:
        if step.rest == rest:
            return _span(step)
    return say("–")


def _span(step: RestStep) -> Message:
    if step.high is None:
        return say("{low} or more", low=str(step.low))
    return say("{low} to {high}", low=str(step.low), high=str(step.high))


def _number_or_dash(value: int | None) -> Message:
    return say("–") if value is None else say("{value}", value=str(value))

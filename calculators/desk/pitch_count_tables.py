"""The rest table of a rule set, for paper and for a page without the calculator."""

from __future__ import annotations

from calculators.desk.answers import Table
from calculators.desk.pitch_count_words import rest_words
from calculators.words import Message, say
from calculators.workload.rules import Band, RestStep, RuleSet


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

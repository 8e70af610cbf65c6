"""What a pitcher threw over weeks and months, as lines of an answer. Sums only, without a verdict."""

from __future__ import annotations

import datetime
from collections.abc import Iterable

from calculators.desk.answers import Fact
from calculators.desk.pitch_count_words import amount
from calculators.words import Message, say, say_count
from calculators.workload.outings import Outing
from calculators.workload.rules import Band
from calculators.workload.totals import Total, Totals, totals


def load_facts(outings: Iterable[Outing], today: datetime.date, band: Band) -> tuple[Fact, ...]:
    """Return the totals of 7 and 28 days and of twelve months.

    band: the group whose advice on innings and months off stands beside them.
    """
    load = totals(outings, today)
    return (
        Fact(say("Last 7 days, all teams"), amount(load.last_7.known, "pitches"), note=_missing(load.last_7)),
        Fact(
            say("Last 28 days, all teams"), amount(load.last_28.known, "pitches"), note=_missing(load.last_28)
        ),
        *_breaking(load),
        *_months(load, band),
        *_innings(load, band),
    )


def _missing(total: Total) -> Message | None:
    if not total.missing:
        return None
    return say_count(
        "and {count} outing with an unknown count",
        "and {count} outings with an unknown count",
        total.missing,
    )


def _breaking(load: Totals) -> tuple[Fact, ...]:
    told = load.breaking_28.outings - load.breaking_28.missing
    if not told:
        return ()
    return (
        Fact(
            say("Breaking balls in 28 days"),
            say("{count}", count=str(load.breaking_28.known)),
            note=say_count(
                "They are inside the pitches above. Told for {count} of {all} outings.",
                "They are inside the pitches above. Told for {count} of {all} outings.",
                told,
                all=str(load.breaking_28.outings),
            ),
        ),
    )


def _months(load: Totals, band: Band) -> tuple[Fact, ...]:
    if not load.months:
        return ()
    advice = None
    if band.months_off is not None:
        advice = say(
            "Of the months you entered games for. The guideline asks for {off} or more without.",
            off=str(band.months_off),
        )
    facts = [
        Fact(say("Months pitched in, of the last 12"), say("{count}", count=str(load.months)), note=advice)
    ]
    if load.longest_gap is not None:
        facts.append(
            Fact(
                say("Longest time between two games"),
                say_count("{count} day", "{count} days", load.longest_gap),
            )
        )
    return tuple(facts)


def _innings(load: Totals, band: Band) -> tuple[Fact, ...]:
    year, most = load.year_outs, band.year_innings
    if year.outings == year.missing:
        return ()
    return (
        Fact(
            say("Innings in the last 12 months"),
            say(
                "{innings} and {outs}",
                innings=str(year.known // 3),
                outs=say_count("{count} out", "{count} outs", year.known % 3),
            ),
            note=None
            if most is None
            else say(
                "The guideline advises at most {most}. Games without outs are not in it.", most=str(most)
            ),
        ),
    )

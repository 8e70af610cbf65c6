"""Puts the answer of the pitch count calculator together: the sentence first, then all that decided it."""

from __future__ import annotations

import datetime
from collections.abc import Mapping

from calculators.desk.answers import Answer, Fact, HowSure
from calculators.desk.pitch_count_tables import coming_days
from calculators.desk.pitch_count_words import (
    amount,
    day_words,
    flag_words,
    plain_day,
    reason_words,
)
from calculators.words import Message, say, say_count
from calculators.workload.ages import NoGroupError, Pitcher
from calculators.workload.availability import Availability, availability
from calculators.workload.catching import bar_to_catching
from calculators.workload.flags import flags
from calculators.workload.outings import Outing
from calculators.workload.rules import RuleSet, Status
from calculators.workload.totals import Total, totals

HOW_READ: Mapping[Status, Message] = {
    "read at the body": say("These rules were read on the page of the body that makes them."),
    "read in a copy": say("These rules were read in a copy that others keep. Check the current book."),
    "from memory": say("These rules are from memory. Nobody has checked them at the source."),
}

CANNOT_TELL = (
    say("Whether the pitcher is fit to pitch. No count can tell that."),
    say("Anything about games, warm-ups and bullpens that were not entered."),
    say("Whether your league has stricter rules, or a newer book."),
)

CAUTIONS = (
    say("A limit is a ceiling, not a target. Take the pitcher out sooner when the arm is tired."),
    say("Pain overrides every number here. With pain, stop and see a licensed clinician."),
    say("Your league's own rules come first where they are stricter."),
    say("This is not medical advice."),
)


def answer_for(
    rules: RuleSet,
    pitcher: Pitcher,
    outings: tuple[Outing, ...],
    today: datetime.date,
    tonight: int | None,
    joint: RuleSet | None,
) -> Answer:
    """Return the whole answer for one pitcher.

    tonight: pitches so far in a game still going today; None where there is none.
    joint: the joint guideline to set beside the rules; None where the rules are the guideline.
    Raises NoGroupError where the rules have no group for the pitcher.
    """
    logged = outings if not tonight else (*outings, Outing(today, pitches=tonight))
    found = availability(rules, pitcher, logged, today)
    return Answer(
        headline=_headline(found, tonight),
        more=(
            *_eligible_only(found),
            *(reason_words(reason, rules, today) for reason in found.reasons),
            *_second_game_today(found, tonight),
            *_compared(found, pitcher, logged, joint),
            *(flag_words(flag, rules, today) for flag in flags(found)),
            *_catching(found),
        ),
        facts=(
            Fact(_left_label(rules), _left_today(found, outings, tonight)),
            *_load(found, logged),
            Fact(say("Rules"), say("{title}", title=rules.title)),
            Fact(say("Group"), say(found.group.band.label)),
            Fact(say("Edition"), say(rules.edition)),
            Fact(say("Last checked"), plain_day(rules.last_checked)),
            Fact(say("Read the rules at"), say("{link}", link=rules.link)),
        ),
        tables=(coming_days(found),),
        how_sure=HowSure(
            HOW_READ[rules.status],
            tuple(
                say(note)
                for note in (
                    *((rules.doubt,) if rules.doubt else ()),
                    *found.group.band.notes,
                    *rules.notes,
                )
            ),
        ),
        cannot_tell=CANNOT_TELL,
        cautions=CAUTIONS,
        sources=(rules.source,)
        if joint is None or joint.source == rules.source
        else (rules.source, joint.source),
    )


def _headline(found: Availability, tonight: int | None) -> Message:
    day = day_words(found.first_day, found.today)
    guideline = found.rules.kind == "guideline"
    if found.beyond_table:
        return say(
            "The rest table does not reach this count. Not before {day}, and ask the league first.", day=day
        )
    if found.rest_unknown:
        return say("The rest these rules ask for was not found. Ask the league for the day.")
    if found.first_day == found.today:
        if guideline:
            return say("Under this guideline, the pitcher is eligible today, {day}.", day=day)
        return say("Under these rules, the pitcher is eligible today, {day}.", day=day)
    if tonight:
        if guideline:
            return say(
                "If the pitcher stops now, the first day they may pitch again under this guideline is {day}.",
                day=day,
            )
        return say(
            "If the pitcher stops now, the first day they may pitch again under these rules is {day}.",
            day=day,
        )
    if guideline:
        return say("Under this guideline, the first day the pitcher may pitch again is {day}.", day=day)
    return say("Under these rules, the first day the pitcher may pitch again is {day}.", day=day)


def _eligible_only(found: Availability) -> tuple[Message, ...]:
    if found.rest_unknown:
        return ()
    title = found.rules.title
    return (say("That means eligible under {title}. It does not mean fit to pitch.", title=title),)


def _left_label(rules: RuleSet) -> Message:
    return say("Outs left today, at most") if rules.counts == "outs" else say("Pitches left today, at most")


def _left_today(found: Availability, before: tuple[Outing, ...], tonight: int | None) -> Message:
    outlook = found.days[0]
    forbidden = [reason for reason in outlook.reasons if reason.rule != "second game"]
    earlier_today = any(outing.date == found.today and outing.pitched for outing in before)
    if forbidden or (outlook.reasons and (earlier_today or not tonight)):
        return say("none")
    if outlook.most is None:
        return say("no daily limit in these rules")
    return amount(outlook.most, found.rules.counts)


def _second_game_today(found: Availability, tonight: int | None) -> tuple[Message, ...]:
    pitched_today = any(day.date == found.today and day.appearances for day in found.log.values())
    if tonight or not pitched_today or not found.days[0].may_pitch:
        return ()
    return (
        say(
            "These rules allow a second game today. Its count adds to the first, "
            "and the rest goes by the sum."
        ),
    )


def _compared(
    found: Availability, pitcher: Pitcher, outings: tuple[Outing, ...], joint: RuleSet | None
) -> tuple[Message, ...]:
    if joint is None:
        return ()
    if pitcher.age is None:
        return (say("Enter the age to see the day under the joint US guideline as well."),)
    try:
        other = availability(joint, pitcher, outings, found.today)
    except NoGroupError:
        return ()
    day = day_words(other.first_day, found.today)
    title = joint.title
    if other.first_day > found.first_day:
        return (
            say(
                "Under the {title} the first day is later: {day}. Where two differ, keep to the later one.",
                title=title,
                day=day,
            ),
        )
    if other.first_day < found.first_day:
        return (
            say(
                "Under the {title} the first day would be {day}. Your rules are stricter and come first.",
                title=title,
                day=day,
            ),
        )
    return (say("Under the {title} it is the same day.", title=title),)


def _catching(found: Availability) -> tuple[Message, ...]:
    for day in found.log.values():
        bar = bar_to_catching(found.group.band, day) if day.date == found.today else None
        if bar is not None:
            return (
                say(
                    "No catching for the rest of today: {count} pitched, and the limit for that is {limit}.",
                    count=str(bar.count),
                    limit=str(bar.limit),
                ),
            )
    return ()


def _load(found: Availability, outings: tuple[Outing, ...]) -> tuple[Fact, ...]:
    load = totals(outings, found.today)
    facts = [
        Fact(say("Last 7 days, all teams"), _total(load.last_7), note=_missing(load.last_7)),
        Fact(say("Last 28 days, all teams"), _total(load.last_28), note=_missing(load.last_28)),
    ]
    year = load.year_outs
    most = found.group.band.year_innings
    if most is not None and year.outings > year.missing:
        facts.append(
            Fact(
                say("Innings in the last 12 months"),
                say("{innings} and {outs}", innings=str(year.known // 3), outs=_outs(year.known % 3)),
                note=say(
                    "The guideline advises at most {most}. Games without outs are not in it.",
                    most=str(most),
                ),
            )
        )
    return tuple(facts)


def _outs(outs: int) -> Message:
    return say_count("{count} out", "{count} outs", outs)


def _total(total: Total) -> Message:
    return amount(total.known, "pitches")


def _missing(total: Total) -> Message | None:
    if not total.missing:
        return None
    return say_count(
        "and {count} outing with an unknown count",
        "and {count} outings with an unknown count",
        total.missing,
    )

"""Puts the answer of the pitch count calculator together: the sentence first, then all that decided it."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from calculators.desk.answers import Answer, Fact, HowSure
from calculators.desk.files import OutFile
from calculators.desk.pitch_count_calendar import first_day_entry
from calculators.desk.pitch_count_live import Tonight, called_out
from calculators.desk.pitch_count_load import load_facts
from calculators.desk.pitch_count_week import week, week_strip, week_table
from calculators.desk.pitch_count_words import (
    amount,
    day_words,
    flag_words,
    plain_day,
    reason_words,
)
from calculators.desk.rule_choice import rule_maker
from calculators.words import Catalogue, Message, say
from calculators.workload.ages import NoGroupError, Pitcher, group_for
from calculators.workload.availability import Availability, availability, strictest
from calculators.workload.catching import bar_to_catching
from calculators.workload.flags import flags
from calculators.workload.icalendar import calendar_text
from calculators.workload.outings import Outing
from calculators.workload.rules import Band, RuleSet, Status

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


@dataclass(frozen=True)
class Question:
    """What is known of one pitcher.

    rulings: each rule set that holds with the pitcher as it sees them; one at least.
    outings: games that are over. thrown: pitches so far in a game still going today, None where there is
    none, and `to_last` how many of them when the last batter came up.
    joint: the joint guideline to set beside the rules; None where it is one of them.
    joint_age: the age for it, None where it is not known. nickname: for the calendar, may be blank.
    """

    rulings: tuple[tuple[RuleSet, Pitcher], ...]
    outings: tuple[Outing, ...]
    today: datetime.date
    thrown: int | None = None
    to_last: int | None = None
    joint: RuleSet | None = None
    joint_age: int | None = None
    nickname: str = ""

    @property
    def logged(self) -> tuple[Outing, ...]:
        """All outings, the one that is going on included."""
        if not self.thrown:
            return self.outings
        return (*self.outings, Outing(self.today, pitches=self.thrown, before_last_batter=self.to_last))

    @property
    def several(self) -> bool:
        """True where more than one rule set holds."""
        return len(self.rulings) > 1


def answer_for(question: Question) -> Answer:
    """Return the whole answer for one pitcher; raises NoGroupError where some rules have no group for them."""
    found = [
        availability(rules, pitcher, question.logged, question.today) for rules, pitcher in question.rulings
    ]
    lead = strictest(found)
    lines = week(found)
    return Answer(
        headline=_headline(found, question),
        more=(
            *_eligible_only(found),
            *_reasons(found),
            *_second_game_today(found, question),
            *_compared(lead, question),
            *_flags(found),
            *_catching(found),
        ),
        drawings=(week_strip(lines, question.today),),
        facts=(
            *(Fact(_left_label(one.rules, question), _left_today(one, question)) for one in found),
            *load_facts(question.logged, question.today, _guideline_band(lead, question)),
            *(fact for one in found for fact in _about_rules(one)),
        ),
        tables=(week_table(lines),),
        how_sure=_how_sure(found),
        cannot_tell=CANNOT_TELL,
        cautions=CAUTIONS,
        sources=_sources(found, question),
        files=_calendar(found, question),
        live=_live(question),
    )


def _headline(found: Sequence[Availability], question: Question) -> Message:
    lead = strictest(found)
    first = lead.first_day
    day = day_words(first, question.today)
    if any(one.rest_unknown for one in found):
        return say("The rest these rules ask for was not found. Ask the league for the day.")
    if any(one.beyond_table for one in found):
        return say(
            "The rest table does not reach this count. Not before {day}, and ask the league first.", day=day
        )
    if question.several:
        if first == question.today:
            return say("Under both rule sets, the pitcher is eligible today, {day}.", day=day)
        return say("Under both rule sets, the first day the pitcher may pitch again is {day}.", day=day)
    guideline = lead.rules.kind == "guideline"
    if first == question.today:
        if guideline:
            return say("Under this guideline, the pitcher is eligible today, {day}.", day=day)
        return say("Under these rules, the pitcher is eligible today, {day}.", day=day)
    if question.thrown:
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


def _eligible_only(found: Sequence[Availability]) -> tuple[Message, ...]:
    if any(one.rest_unknown for one in found):
        return ()
    title = say("{title}", title=found[0].rules.title)
    for one in found[1:]:
        title = say("{first} and {second}", first=title, second=one.rules.title)
    return (say("That means eligible under {title}. It does not mean fit to pitch.", title=title),)


def _reasons(found: Sequence[Availability]) -> tuple[Message, ...]:
    """Return every rule that stood in the way; with its rule set and day where there are several."""
    if len(found) == 1:
        return tuple(reason_words(reason, found[0].rules, found[0].today) for reason in found[0].reasons)
    said = []
    for one in found:
        day = day_words(one.first_day, one.today)
        said.append(say("{title}: first day {day}.", title=one.rules.title, day=day))
        said += [
            say("{title}: {reason}", title=one.rules.title, reason=reason_words(reason, one.rules, one.today))
            for reason in one.reasons
        ]
    return tuple(said)


def _flags(found: Sequence[Availability]) -> tuple[Message, ...]:
    """Return what to look at twice, each once, though several rule sets may point at it."""
    said = {}
    for one in found:
        for flag in flags(one):
            words = flag_words(flag, one.rules, one.today)
            said[repr(words)] = words
    return tuple(said.values())


def _left_label(rules: RuleSet, question: Question) -> Message:
    label = say("Outs left today, at most") if rules.counts == "outs" else say("Pitches left today, at most")
    return say("{label} ({title})", label=label, title=rules.title) if question.several else label


def _left_today(found: Availability, question: Question) -> Message:
    outlook = found.days[0]
    forbidden = [reason for reason in outlook.reasons if reason.rule != "second game"]
    earlier_today = any(outing.date == found.today and outing.pitched for outing in question.outings)
    if forbidden or (outlook.reasons and (earlier_today or not question.thrown)):
        return say("none")
    if outlook.most is None:
        return say("no daily limit in these rules")
    return amount(outlook.most, found.rules.counts)


def _second_game_today(found: Sequence[Availability], question: Question) -> tuple[Message, ...]:
    pitched_today = any(
        day.date == one.today and day.appearances for one in found for day in one.log.values()
    )
    if question.thrown or not pitched_today or not all(one.days[0].may_pitch for one in found):
        return ()
    return (
        say(
            "These rules allow a second game today. Its count adds to the first, "
            "and the rest goes by the sum."
        ),
    )


def _compared(lead: Availability, question: Question) -> tuple[Message, ...]:
    joint = question.joint
    if joint is None:
        return ()
    if question.joint_age is None:
        return (say("Enter the age to see the day under the joint US guideline as well."),)
    try:
        other = availability(joint, Pitcher(age=question.joint_age), question.logged, question.today)
    except NoGroupError:
        return ()
    day = day_words(other.first_day, question.today)
    title = joint.title
    if other.first_day > lead.first_day:
        return (
            say(
                "Under the {title} the first day is later: {day}. Where two differ, keep to the later one.",
                title=title,
                day=day,
            ),
        )
    if other.first_day < lead.first_day:
        return (
            say(
                "Under the {title} the first day would be {day}. Your rules are stricter and come first.",
                title=title,
                day=day,
            ),
        )
    return (say("Under the {title} it is the same day.", title=title),)


def _guideline_band(lead: Availability, question: Question) -> Band:
    """Return the group whose advice for the year goes with the totals: the joint guideline's if there is one."""
    if question.joint is None or question.joint_age is None:
        return lead.group.band
    try:
        return group_for(question.joint, Pitcher(age=question.joint_age), question.today).band
    except NoGroupError:
        return lead.group.band


def _catching(found: Sequence[Availability]) -> tuple[Message, ...]:
    """Return that today's pitches end the catching, if any of the rules says so: by the lowest of their limits."""
    today = [(one, day) for one in found for day in one.log.values() if day.date == one.today]
    bars = [bar for one, day in today if (bar := bar_to_catching(one.group.band, day)) is not None]
    if not bars:
        return ()
    bar = min(bars, key=lambda bar: bar.limit)
    return (
        say(
            "No catching for the rest of today: {count} pitched, and the limit for that is {limit}.",
            count=str(bar.count),
            limit=str(bar.limit),
        ),
    )


def _about_rules(found: Availability) -> tuple[Fact, ...]:
    rules = found.rules
    return (
        Fact(say("Rules"), say("{title}", title=rules.title)),
        Fact(say("Group"), say(found.group.band.label)),
        Fact(say("Edition"), say(rules.edition)),
        Fact(say("Last checked"), plain_day(rules.last_checked)),
        rule_maker(rules),
    )


def _how_sure(found: Sequence[Availability]) -> HowSure:
    """Return how the least well read of the rule sets was read, and every doubt there is."""
    worst = max(found, key=lambda one: list(HOW_READ).index(one.rules.status))
    notes = dict.fromkeys(
        note
        for one in found
        for note in (
            *((one.rules.doubt,) if one.rules.doubt else ()),
            *one.group.band.notes,
            *one.rules.notes,
        )
    )
    return HowSure(HOW_READ[worst.rules.status], tuple(say(note) for note in notes))


def _sources(found: Sequence[Availability], question: Question) -> tuple[str, ...]:
    joint = () if question.joint is None else (question.joint.source,)
    return tuple(dict.fromkeys((*(one.rules.source for one in found), *joint)))


def _calendar(found: Sequence[Availability], question: Question) -> tuple[OutFile, ...]:
    """Return the first day as a calendar file, where there is one to come."""
    lead = strictest(found)
    if lead.first_day == question.today or any(one.rest_unknown or one.beyond_table for one in found):
        return ()
    written = datetime.datetime.combine(question.today, datetime.time(), datetime.UTC)

    def write(catalogue: Catalogue) -> str:
        entry = first_day_entry(lead.rules, question.nickname, lead.first_day, catalogue)
        return calendar_text((entry,), written)

    return (OutFile("first-day.ics", "text/calendar", say("The day as a calendar file"), write),)


def _live(question: Question) -> tuple[Message, ...]:
    if question.thrown is None:
        return ()
    return called_out(
        Tonight(question.rulings, question.outings, question.today, question.thrown, question.to_last)
    )

"""Puts the answer of the pitch count calculator together: the sentence first, then all that decided it."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass

from calculators.desk.answers import Answer, Fact
from calculators.desk.files import OutFile
from calculators.desk.pitch_count_calendar import first_day_entry
from calculators.desk.pitch_count_compared import compared, edition_words
from calculators.desk.pitch_count_live import Tonight, called_out
from calculators.desk.pitch_count_load import load_facts
from calculators.desk.pitch_count_week import week, week_strip, week_table
from calculators.desk.pitch_count_words import (
    amount,
    day_words,
    flag_lines,
    plain_day,
    reason_words,
)
from calculators.desk.rule_choice import rule_maker
from calculators.desk.rule_doubts import how_sure
from calculators.words import Catalogue, Message, say
from calculators.workload.ages import NoGroupError, Pitcher, group_for
from calculators.workload.availability import Availability, Outlook, availability, strictest
from calculators.workload.catching import bar_to_catching
from calculators.workload.flags import flags
from calculators.workload.icalendar import calendar_text
from calculators.workload.outings import Outing
from calculators.workload.rules import Band, RuleSet

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
    editions: other editions of those rule sets that owe more rest in places, each with the pitcher.
    joint: the joint guideline and its other editions, to set beside the rules; none where it is one of them.
    joint_age: the age for it, None where it is not known. nickname: for the calendar, may be blank.
    """

    rulings: tuple[tuple[RuleSet, Pitcher], ...]
    outings: tuple[Outing, ...]
    today: datetime.date
    thrown: int | None = None
    to_last: int | None = None
    editions: tuple[tuple[RuleSet, Pitcher], ...] = ()
    joint: tuple[RuleSet, ...] = ()
    joint_age: int | None = None
    nickname: str = ""

    @property
    def logged(self) -> tuple[Outing, ...]:
        """All outings, the one that is going on included."""
        if not self.thrown:
            return self.outings
        return (*self.outings, Outing(self.today, pitches=self.thrown, before_last_batter=self.to_last))


def answer_for(question: Question) -> Answer:
    """Return the whole answer for one pitcher; raises NoGroupError where some rules have no group for them."""
    own = _answers(question.rulings, question)
    lead = strictest(own)
    editions = [one for one in _answers(question.editions, question) if one.first_day > lead.first_day]
    found = [*own, *editions]
    lines = week(found)
    return Answer(
        headline=_headline(found, question),
        more=(
            *_eligible_only(found),
            *(edition_words(lead, one) for one in editions),
            *_reasons(found),
            *_second_game_today(found, question),
            *_compared(found, question),
            *flag_lines([(one.rules, flag) for one in found for flag in flags(one)], question.today),
            *_catching(found),
        ),
        drawings=(week_strip(lines, question.today),),
        facts=(
            *(
                Fact(_left_label(one.rules, several=len(found) > 1), _left_today(one, question))
                for one in found
            ),
            *load_facts(question.logged, question.today, _guideline_band(lead, question)),
            *(fact for one in found for fact in _about_rules(one)),
        ),
        tables=(week_table(lines),),
        how_sure=how_sure([(one.rules, one.group.band) for one in found]),
        cannot_tell=CANNOT_TELL,
        cautions=CAUTIONS,
        sources=_sources(found, question),
        files=_calendar(found, question),
        live=_live(question),
    )


def _answers(rulings: Sequence[tuple[RuleSet, Pitcher]], question: Question) -> list[Availability]:
    return [availability(rules, pitcher, question.logged, question.today) for rules, pitcher in rulings]


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
    if any(one.outs_unknown for one in found):
        return say(
            "Not before {day}. The outs of that week have a limit too, and some are not known: "
            "ask before the pitcher pitches.",
            day=day,
        )
    if len(found) > 2:
        return say("Under all these rule sets, the first day the pitcher may pitch is {day}.", day=day)
    if len(found) > 1:
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


def _left_label(rules: RuleSet, several: bool) -> Message:
    label = say("Outs left today, at most") if rules.counts == "outs" else say("Pitches left today, at most")
    return say("{label} ({title})", label=label, title=rules.title) if several else label


def _left_today(found: Availability, question: Question) -> Message:
    outlook = found.days[0]
    before = outlook if not question.thrown else _before_tonight(found, question)
    if before.reasons or outlook.most == 0:
        return say("none")
    if before.outs_unknown:
        return say("ask first: the outs of this week are not known")
    most = say("no daily limit in these rules")
    if outlook.most is not None:
        most = amount(outlook.most, found.rules.counts)
    if before.outs is None:
        return most
    return say("{pitches}, and {outs}", pitches=most, outs=amount(before.outs, "outs"))


def _before_tonight(found: Availability, question: Question) -> Outlook:
    """Return today without the game that is going on, whose outs nobody has entered yet."""
    pitcher = next(who for rules, who in (*question.rulings, *question.editions) if rules is found.rules)
    return availability(found.rules, pitcher, question.outings, question.today, days=1).days[0]


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


def _compared(found: Sequence[Availability], question: Question) -> tuple[Message, ...]:
    if not question.joint:
        return ()
    if question.joint_age is None:
        return (say("Enter the age to see the day under the joint US guideline as well."),)
    return compared(found, question.joint, question.joint_age, question.logged)


def _guideline_band(lead: Availability, question: Question) -> Band:
    """Return the group whose advice for the year goes with the totals: the joint guideline's if there is one."""
    if not question.joint or question.joint_age is None:
        return lead.group.band
    try:
        return group_for(question.joint[0], Pitcher(age=question.joint_age), question.today).band
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


def _sources(found: Sequence[Availability], question: Question) -> tuple[str, ...]:
    every = (*(one.rules for one in found), *question.joint)
    return tuple(dict.fromkeys(rules.source for rules in every))


def _calendar(found: Sequence[Availability], question: Question) -> tuple[OutFile, ...]:
    """Return the first day as a calendar file, where there is one to come."""
    lead = strictest(found)
    if lead.first_day == question.today or any(
        one.rest_unknown or one.beyond_table or one.outs_unknown for one in found
    ):
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
        Tonight(
            (*question.rulings, *question.editions),
            question.outings,
            question.today,
            question.thrown,
            question.to_last,
        )
    )

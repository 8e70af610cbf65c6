"""The next seven days of one pitcher, under one or several rule sets: as a strip of signs and as a table."""

from __future__ import annotations

import dataclasses
import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from calculators.desk.answers import Table
from calculators.desk.drawing import Circle, Drawing, Label, Mark, Path
from calculators.desk.pitch_count_words import amount, day_words, short_day, short_reason, short_weekday
from calculators.words import Message, say
from calculators.workload.availability import Availability, Outlook
from calculators.workload.catching import bar_to_catching
from calculators.workload.rules import Catching

State = Literal["eligible", "not yet", "ask"]

STATES: dict[State, Message] = {
    "eligible": say("eligible"),
    "not yet": say("not yet"),
    "ask": say("ask the league"),
}

UNLIMITED = say("no daily limit")
"""The ceiling of a day on which these rules set none."""

CELL = 48.0
HEIGHT = 104.0


@dataclass(frozen=True)
class DayLine:
    """One day in words. most: the ceiling of that day, short enough for the strip in `sign`."""

    date: datetime.date
    state: State
    most: Message
    sign: Message
    catching: Message
    why: Message


def week(answers: Sequence[Availability]) -> tuple[DayLine, ...]:
    """Return the days that all the answers look at; a day one rule set forbids is forbidden.

    answers: the same pitcher on the same days under each rule set, one at least.
    """
    return tuple(
        _line(answers, [answer.days[index] for answer in answers]) for index in range(len(answers[0].days))
    )


def week_table(lines: Sequence[DayLine]) -> Table:
    """Return the days as a table: whether a rule forbids the day, the ceiling, catching, and why."""
    return Table(
        caption=say("The next days under these rules"),
        heads=(say("Day"), say("Pitching"), say("Catching"), say("Why")),
        rows=tuple((short_day(line.date), _pitching(line), line.catching, line.why) for line in lines),
    )


def week_strip(lines: Sequence[DayLine], today: datetime.date) -> Drawing:
    """Return the days as a strip: a ring is an eligible day with its ceiling, a cross a day that is not."""
    marks: list[Mark] = []
    described = say("Starting today.")
    for index, line in enumerate(lines):
        marks += _cell(index * CELL, line)
        described = say(
            "{before} {day}: {state}, {most}.",
            before=described,
            day=day_words(line.date, today),
            state=STATES[line.state],
            most=line.most,
        )
    return Drawing(
        title=say("The next seven days. A ring: eligible, with the ceiling below it. A cross: not yet."),
        description=described,
        width=len(lines) * CELL,
        height=HEIGHT,
        marks=tuple(marks),
        text_size=13.0,
    )


def _pitching(line: DayLine) -> Message:
    if line.state != "eligible" or line.most == UNLIMITED:
        return STATES[line.state]
    return say("eligible, at most {most}", most=line.most)


def _cell(left: float, line: DayLine) -> list[Mark]:
    middle, edge = left + CELL / 2, left + CELL
    marks: list[Mark] = [
        Path(((left, 0), (edge, 0), (edge, HEIGHT), (left, HEIGHT)), "faint", closed=True, fill="paper"),
        Label((middle, 18), short_weekday(line.date), "middle", bold=True),
        Label((middle, 35), say("{day}", day=str(line.date.day)), "middle"),
        Label((middle, 94), line.sign, "middle", bold=line.state == "eligible"),
    ]
    if line.state == "eligible":
        marks.append(Circle((middle, 60), 12, "strong", width=3))
    elif line.state == "not yet":
        for slope in (-1, 1):
            marks.append(
                Path(((middle - 10, 60 - slope * 10), (middle + 10, 60 + slope * 10)), "strong", width=3)
            )
    else:
        marks.append(Label((middle, 67), say("?"), "middle", size=1.6, bold=True))
    return marks


def _line(answers: Sequence[Availability], outlooks: Sequence[Outlook]) -> DayLine:
    pairs = list(zip(answers, outlooks, strict=True))
    catching = _catching(pairs)
    if any(outlook.reasons for outlook in outlooks):
        return DayLine(outlooks[0].date, "not yet", say("none"), say("none"), catching, _why(pairs))
    if any(answer.rest_unknown or answer.beyond_table for answer in answers):
        why = say("the rest table does not say")
        return DayLine(outlooks[0].date, "ask", say("none"), say("ask"), catching, why)
    if any(outlook.outs_unknown for outlook in outlooks):
        why = say("the outs of that week are not known")
        return DayLine(outlooks[0].date, "ask", say("none"), say("ask"), catching, why)
    most, sign = _most(pairs)
    held = any(outlook.held_by for outlook in outlooks)
    limited = any(outlook.most is not None for outlook in outlooks)
    why = say("limit over several days") if held else say("daily limit")
    return DayLine(
        outlooks[0].date, "eligible", most, sign, catching, why if limited else say("no rule forbids it")
    )


def _why(pairs: Sequence[tuple[Availability, Outlook]]) -> Message:
    """Return each rule that forbids the day once, with its rule set where there are several."""
    said: list[Message] = []
    for answer, outlook in pairs:
        for reason in {reason.rule: reason for reason in outlook.reasons}.values():
            short = short_reason(reason)
            if len(pairs) > 1:
                short = say("{reason} ({title})", reason=short, title=answer.rules.title)
            said.append(short)
    why = said[0]
    for short in said[1:]:
        why = say("{first}; {second}", first=why, second=short)
    return why


def _most(pairs: Sequence[tuple[Availability, Outlook]]) -> tuple[Message, Message]:
    """Return the ceiling of a day in words and short: the lowest of each unit that is counted."""
    lowest: dict[str, int] = {}
    for answer, outlook in pairs:
        if outlook.most is not None:
            counted = answer.rules.counts
            lowest[counted] = min(outlook.most, lowest.get(counted, outlook.most))
        if outlook.outs is not None:
            lowest["outs"] = min(outlook.outs, lowest.get("outs", outlook.outs))
    if not lowest:
        return UNLIMITED, say("–")
    (unit, most), *others = lowest.items()
    words, sign = amount(most, unit), say("{most}", most=str(most))
    for other, least in others:
        words = say("{first} and {second}", first=words, second=amount(least, other))
        sign = say("{first}+{second}", first=sign, second=str(least))
    return words, sign


def _catching(pairs: Sequence[tuple[Availability, Outlook]]) -> Message:
    ruled = advised = False
    for answer, outlook in pairs:
        band = answer.group.band
        day = answer.log.get(outlook.date.toordinal())
        if day is not None and bar_to_catching(band, day) is not None:
            return say("not that day")
        ruled = ruled or dataclasses.replace(band.catching, advised_against=False) != Catching()
        advised = advised or band.catching.advised_against
    if advised:
        return say("advised against")
    return say("no rule forbids it") if ruled else say("not ruled")

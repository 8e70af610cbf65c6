"""What a session says, in sentences, facts and tables."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from calculators.coaching.box import Box, share_inside
from calculators.coaching.session_file import CellProblem
from calculators.coaching.throws import QUANTITIES, Quantity, Reason, Throw
from calculators.desk.answers import Fact, HowSure, Table
from calculators.desk.measures import Measures
from calculators.desk.quantities import (
    IN_A_SENTENCE,
    MISSING,
    NAMES,
    between,
    joined,
    spread_words,
    value_words,
)
from calculators.physics.units import MPH
from calculators.words import Message, number, say, say_count

if TYPE_CHECKING:
    from calculators.desk.read_session import SessionRead

FEWEST_TO_TRUST = 10
FEWEST_MEASURED = 8
"""Ten throws, less a bad reading or two (common practice)."""
FIRM = 0.8


def headline(found: SessionRead, title: str, slowed: bool) -> Message:
    """Say what comes first: to stop, how many were inside the target, or what kind of ball it is."""
    if any(stop.weight == "end the session" for stop in found.stops):
        if slowed:
            return say("End it here. The fastball has slowed down, and that is a tired arm.")
        return say("End it here. The arm is tired, whatever the numbers say.")
    inside = found.inside
    if inside is not None and inside.judged:
        if inside.inside == 0:
            return say_count(
                "None of {count} throw was inside the target yet.",
                "None of {count} throws was inside the target yet.",
                inside.judged,
            )
        return say_count(
            "{inside} of {count} throw was inside the target.",
            "{inside} of {count} throws were inside the target.",
            inside.judged,
            inside=str(inside.inside),
        )
    if title:
        return say("Today's breaking ball is what the handbook calls: {title}.", title=title.lower())
    return say_count(
        "{count} breaking ball was read. It is not enough to name it.",
        "{count} breaking balls were read. It is not enough to name them.",
        len(found.balls),
    )


def more(found: SessionRead, title: str, measures: Measures) -> Iterator[Message]:
    """Say what kind of ball it is and why, how the fastball held, and what holds back today."""
    for stop in found.stops:
        yield stop.message
    if title:
        yield say("It is what the handbook calls: {title}.", title=title.lower())
    yield from found.recognition.why
    inside = found.inside
    if inside is not None and inside.interval is not None and inside.judged:
        yield say(
            "That fits a pitcher who hits it {low} to {high} times in 100.",
            low=number(100 * inside.interval.low),
            high=number(100 * inside.interval.high),
        )
    if inside is not None and inside.judged and found.aiming.target is not None:
        yield from _judged_by(found, inside.by, found.aiming.target.box)
    if inside is not None and inside.not_judged:
        yield say_count(
            "{count} throw could not be judged, because something was not measured.",
            "{count} throws could not be judged, because something was not measured.",
            inside.not_judged,
        )
    if found.aiming.target is None:
        yield say("Set a target first to see how many throws were inside it.")
    if found.drift is not None:
        yield _drift(found.drift.lost, measures)
    else:
        yield say("To see whether the arm tires, measure five fastballs first and three at the end.")


def _judged_by(found: SessionRead, by: Sequence[Quantity], box: Box) -> Iterator[Message]:
    """Say what decided where the target asks for more than was measured."""
    if "speed" not in by and found.reading.summaries.get("speed") is None:
        yield say("Judged by clock alone, no speed was measured.")
    elif "speed" not in by:
        yield say("Judged by clock alone, no fastball was measured.")
    elif "clock" not in by and "clock" in box.decides:
        yield say("Judged by speed alone, no clock was measured.")


def _drift(lost: float, measures: Measures) -> Message:
    if abs(lost) < 0.05:
        return say("The fastball is as fast as at the start.")
    amount = measures.speed(abs(lost) * MPH, 1)
    if lost > 0:
        return say("The fastball is {amount} slower than at the start.", amount=amount)
    return say("The fastball is {amount} faster than at the start.", amount=amount)


def facts(found: SessionRead, measures: Measures) -> Iterator[Fact]:
    """Yield the middles with their intervals, in the order in which a coach asks for them."""
    reading = found.reading
    thrown = say("{count}", count=str(len(found.balls)))
    date = found.session.date
    yield Fact(
        say("Breaking balls"), thrown, note=None if date is None else say("{day}", day=date.isoformat())
    )
    if reading.speed_percent is not None:
        percent = reading.speed_percent
        yield Fact(
            say("Speed beside the fastball"),
            say("{percent}%", percent=number(percent.value)),
            None
            if percent.interval is None
            else say(
                "{low} to {high}%", low=number(percent.interval.low), high=number(percent.interval.high)
            ),
        )
    for name, summary in reading.summaries.items():
        yield Fact(
            NAMES[name],
            value_words(name, summary.typical.value, measures),
            between(name, summary.typical.interval, measures),
        )
    if reading.called:
        strikes = say("{strikes} of {called}", strikes=str(reading.strikes), called=str(reading.called))
        interval = reading.strike_share
        yield Fact(
            say("Strikes"),
            strikes,
            None
            if interval is None
            else say(
                "so {low} to {high} in 100",
                low=number(100 * interval.low),
                high=number(100 * interval.high),
            ),
        )
    yield from _inside_by_cue(found)
    if reading.guesses:
        right = say("{right} of {all}", right=str(reading.guesses_right), all=str(reading.guesses))
        yield Fact(say("The pitcher's guesses that were right"), right)


def _inside_by_cue(found: SessionRead) -> Iterator[Fact]:
    """Yield how many were inside the target with each cue and without, where a cue was given."""
    target = found.aiming.target
    cues = dict.fromkeys(throw.cue for throw in found.balls)
    if target is None or not any(cues):
        return
    by = share_inside(found.balls, target.box, found.fastball).by
    for cue in cues:
        given = [throw for throw in found.balls if throw.cue == cue]
        share = share_inside(given, target.box, found.fastball, by=by)
        label = say("Inside, with {cue}", cue=cue) if cue else say("Inside, plain")
        yield Fact(label, say("{inside} of {all}", inside=str(share.inside), all=str(share.judged)))


def summary_table(found: SessionRead, measures: Measures) -> Table:
    """Return every quantity with its middle, its spread, and what is missing."""
    rows = []
    for name in QUANTITIES:
        summary = found.reading.summaries.get(name)
        if summary is None:
            reasons = Counter(throw.why_missing(name) or "not measured" for throw in found.balls)
            rows.append((NAMES[name], say("none"), say("none"), say("0"), _missing(reasons)))
            continue
        spread = summary.deviation
        rows.append(
            (
                NAMES[name],
                value_words(name, summary.typical.value, measures),
                say("none") if spread is None else spread_words(name, spread, measures),
                say("{count}", count=str(summary.count)),
                _missing(summary.missing),
            )
        )
    heads = (say("Quantity"), say("Middle"), say("Throw to throw"), say("Measured"), say("Missing"))
    return Table(say("The breaking balls of the day"), heads, tuple(rows))


def _missing(reasons: Mapping[Reason, int]) -> Message:
    """Say how many values are missing, by reason."""
    told = [
        say("{count} {reason}", count=str(count), reason=MISSING[reason]) for reason, count in reasons.items()
    ]
    return joined(told) if told else say("none")


def missing_table(found: SessionRead, cells: Sequence[CellProblem], measures: Measures) -> Table | None:
    """Return every reading that does not count, and why; None where all of them do."""
    rows: list[tuple[Message, ...]] = [
        (
            say("{number}", number=str(one.number)),
            NAMES[one.quantity],
            say("read {value}, outside your own limit", value=value_words(one.quantity, one.value, measures)),
        )
        for one in found.aside
    ]
    rows += [
        (say("line {line}", line=str(cell.row)), say("{column}", column=cell.column), cell.message)
        for cell in cells
    ]
    aside = {(one.number, one.quantity) for one in found.aside}
    for throw in found.balls:
        bad = _bad(throw, aside)
        if bad:
            rows.append((say("{number}", number=str(throw.number)), bad, say("marked as a bad read")))
    if not rows:
        return None
    heads = (say("Throw"), say("What"), say("Why it is left out"))
    return Table(say("Bad readings, left out and not counted as zero"), heads, tuple(rows))


def _bad(throw: Throw, aside: set[tuple[int, Quantity]]) -> Message | None:
    told = [
        IN_A_SENTENCE[name]
        for name, reason in throw.missing
        if reason == "bad read" and (throw.number, name) not in aside
    ]
    return joined(told) if told else None


def how_sure(found: SessionRead) -> HowSure:
    """Say how far these throws carry."""
    causes = [
        say("Nine such intervals in ten hold what the pitcher really throws."),
        say("One day is one day. Arm, ball and weather differ from day to day."),
    ]
    support = found.recognition.support
    if found.recognition.profile is not None and support and support[0][1] < FIRM:
        causes.insert(0, say("Drawn again at random, these throws do not always get the same name."))
    if found.session.movement == "not known":
        causes.append(say("Nobody knows how movement was counted, so its box is a guide only."))
    if len(found.balls) < FEWEST_TO_TRUST:
        return HowSure(say("Fewer than ten throws. Take it as a hint."), tuple(causes))
    return HowSure(_enough(found), tuple(causes))


def _enough(found: SessionRead) -> Message:
    """Say what was measured often enough to be trusted."""
    counts = {name: summary.count for name, summary in found.reading.summaries.items()}
    speed, clock = (counts.get(name, 0) >= FEWEST_MEASURED for name in ("speed", "clock"))
    if speed and clock:
        return say("Enough for speed and clock. Never enough for strikes.")
    if speed:
        return say("Enough for speed. Not enough clocks were measured, and strikes are never enough.")
    if clock:
        return say("Enough for the clock. Not enough speeds were measured, and strikes are never enough.")
    return say("Too few speeds and clocks were measured, and strikes are never enough. Take it as a hint.")


def cautions(found: SessionRead) -> Iterator[Message]:
    """Yield what to keep in mind."""
    yield say("Any pain in elbow, shoulder or forearm comes before every number here. Stop, and see someone.")
    if any(throw.cue for throw in found.balls):
        yield say(
            "Throws with and without a cue are read together here. The cue trial page keeps them apart."
        )
    if found.session.movement in ("with gravity", "spin, part of the flight"):
        yield say("Movement is counted another way than the target's, so no box is drawn for it.")
    if found.aside:
        yield say("Bad readings were set aside by your own rule. Set the rule before you look.")
    yield say("Look at the middle and the spread. The best throw of the day says little.")

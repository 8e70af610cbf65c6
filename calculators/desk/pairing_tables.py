"""Tables of the pairing calculator: the small changes, the ladder of speeds, and time gaps for paper."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.coaching.pairing import Pull, Split, too_close_in_speed
from calculators.desk.answers import Table
from calculators.desk.measures import Measures
from calculators.desk.movement_tables import clock_words
from calculators.desk.pairing_fields import TypedPair
from calculators.physics.drag import time_over
from calculators.physics.flight import PLATE_FRONT, STILL_AIR
from calculators.physics.units import FOOT, MPH, RPM
from calculators.words import Message, number, say, signed

SLOWER_BY = (8, 10, 12, 15)
FASTBALLS = ((46.0, 4.5, (50, 60)), (50.0, 5.0, (60,)), (54.0, 5.0, (65,)), (60.5, 5.5, (70, 80, 90)))
"""Rubber to plate and extension [ft], and fastballs [mph] one meets there (estimate)."""


def change_name(pull: Pull, pair: TypedPair, measures: Measures) -> Message:
    """Say a small change from what to what: "Clock 7:00 to 7:15"."""
    old, new = pair.breaking, pull.pitch
    if pull.part == "speed":
        return say("Firmer: {old} to {new}", old=measures.speed(old.speed), new=measures.speed(new.speed))
    if pull.part == "rate":
        return say(
            "More spin: {old} to {new} rpm",
            old=number(old.spin.rate / RPM),
            new=number(new.spin.rate / RPM),
        )
    if pull.part == "clock":
        return say("Clock: {old} to {new}", old=clock_words(old.spin.clock), new=clock_words(new.spin.clock))
    return say(
        "Active share: {old} to {new}%",
        old=number(100 * old.spin.active),
        new=number(100 * new.spin.active),
    )


def changes_table(pulls: tuple[Pull, ...], pair: TypedPair, now: Split, measures: Measures) -> Table:
    """Return what each small change does to distance, lateness and drop, against the split as it is now."""
    rows = tuple(
        (
            change_name(pull, pair, measures),
            measures.small_signed(pull.apart, 1),
            say("{value} ms", value=signed(1000 * (pull.split.later - now.later), 1)),
            measures.small_signed(pull.split.lower - now.lower, 1),
        )
        for pull in pulls
    )
    return Table(
        say("What one small change of the breaking ball does, both pitches thrown on one line"),
        (say("Change"), say("Farther apart"), say("Later"), say("Lower")),
        rows,
    )


@dataclass(frozen=True)
class Rung:
    """A pitch on the ladder of speeds: its name and speed [m/s]."""

    name: Message
    speed: float


def ladder(pair: TypedPair) -> tuple[Rung, ...]:
    """Return all pitches named, the fastest first."""
    names = {
        "breaking": say("Second breaking ball"),
        "changeup": say("Changeup"),
        "fastball": say("Second fastball"),
    }
    rungs = [
        Rung(say("Fastball"), pair.fastball.speed),
        Rung(say("Breaking ball"), pair.breaking.speed),
        *(Rung(names[other.kind], other.speed) for other in pair.others),
    ]
    return tuple(sorted(rungs, key=lambda rung: rung.speed, reverse=True))


def ladder_table(pair: TypedPair, measures: Measures) -> Table:
    """Return the ladder of speeds; a step too small to be one is said to be so."""
    rungs = ladder(pair)

    def step(index: int) -> Message:
        if index == 0:
            return say("–")
        above, here = rungs[index - 1].speed, rungs[index].speed
        amount = measures.speed(above - here)
        return say("{amount}, too close", amount=amount) if too_close_in_speed(above, here) else amount

    rows = tuple(
        (
            rung.name,
            measures.speed(rung.speed),
            say("{percent}%", percent=number(100 * rung.speed / pair.fastball.speed)),
            step(index),
        )
        for index, rung in enumerate(rungs)
    )
    return Table(
        say("The ladder of speeds. By common practice a step is at least 4 percent."),
        (say("Pitch"), say("Speed"), say("Of the fastball"), say("Below the one above")),
        rows,
    )


def time_gaps() -> Table:
    """Return how much later a slower pitch arrives, for the usual distances and speeds."""
    slowing = STILL_AIR.air_grip * STILL_AIR.drag

    def later(mound: float, extension: float, fast: float, slow: float) -> float:
        distance = (mound - extension) * FOOT - PLATE_FRONT
        return time_over(distance, slow * MPH, slowing) - time_over(distance, fast * MPH, slowing)

    rows = tuple(
        (
            say("{feet} ft, {mph} mph", feet=f"{mound:g}", mph=number(fast)),
            *(
                say("{value} ms", value=number(1000 * later(mound, extension, fast, fast - slower)))
                for slower in SLOWER_BY
            ),
        )
        for mound, extension, speeds in FASTBALLS
        for fast in speeds
    )
    heads = (say("Fastball"), *(say("{mph} mph slower", mph=number(slower)) for slower in SLOWER_BY))
    return Table(say("How many milliseconds later a slower pitch arrives, from level paths"), heads, rows)

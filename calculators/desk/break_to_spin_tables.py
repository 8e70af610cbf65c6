"""Tables of the spin behind a movement: by the way it was counted, and by speed for paper."""

from __future__ import annotations

from collections.abc import Iterator

from calculators.coaching.found_spin import Crossed, likely, spin_behind
from calculators.coaching.movement_counts import Count
from calculators.desk.answers import Table
from calculators.desk.break_to_spin_fields import TypedBreak
from calculators.desk.movement_tables import clock_words
from calculators.physics.aim import OutOfReachError
from calculators.physics.flight import STILL_AIR
from calculators.physics.inverse import SpinNotFoundError
from calculators.physics.movement import Movement
from calculators.physics.units import FOOT, INCH, MPH, RPM
from calculators.words import Message, number, say

COUNTS: tuple[tuple[Count, Message], ...] = (
    ("whole", say("By spin alone, over the whole flight")),
    ("forty", say("By spin alone, over the last 40 feet")),
    ("gravity", say("With gravity, below the line it starts on")),
)

PAPER_SPEEDS = (60, 65, 70, 75, 80)
PAPER_MOVEMENTS = (6, 9, 12, 15, 18)


def counts_table(typed: TypedBreak) -> Table | None:
    """Return what the same numbers would mean if counted another way; None if no other way fits."""

    def rows() -> Iterator[tuple[Message, ...]]:
        for how, name in COUNTS:
            if how == typed.how or not likely(typed.counted, how, typed.crossed):
                continue
            try:
                _, found = spin_behind(typed.counted, how, typed.crossed)
            except (OutOfReachError, SpinNotFoundError):
                continue
            if not found.capped:
                rpm = number(10 * round(found.rate / RPM / 10))
                yield (name, say("{rpm} rpm", rpm=rpm), say("{clock}", clock=clock_words(found.clock)))

    found = tuple(rows())
    if not found:
        return None
    heads = (say("Counted"), say("Active spin"), say("Clock"))
    return Table(say("If the same numbers were counted another way"), heads, found)


def spins_table() -> Table:
    """Return the active spin a drop needs at high-school speeds, for paper."""
    position = (-1.5 * FOOT, 55 * FOOT, 5.6 * FOOT)

    def cell(mph: float, inches: float) -> Message:
        crossed = Crossed(position, mph * MPH, (0.0, 28.5 * INCH), STILL_AIR)
        _, found = spin_behind(Movement(0.0, -inches * INCH), "whole", crossed)
        return say("{rpm}", rpm=number(50 * round(found.rate / RPM / 50)))

    rows = tuple(
        (say("{mph} mph", mph=number(mph)), *(cell(mph, inches) for inches in PAPER_MOVEMENTS))
        for mph in PAPER_SPEEDS
    )
    heads = (say("Speed"), *(say("{value} in", value=number(inches)) for inches in PAPER_MOVEMENTS))
    caption = say("Active spin in rpm that moves a ball so far by spin alone, 60.5 ft, at sea level")
    return Table(caption, heads, rows)

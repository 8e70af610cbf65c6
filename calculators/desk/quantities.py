"""What is measured of a throw, put into words: names, units, and differences."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from calculators.coaching.comparison import Measured
from calculators.coaching.intervals import Interval
from calculators.coaching.throws import Quantity
from calculators.desk.measures import Measures
from calculators.desk.movement_tables import clock_words
from calculators.physics.units import INCH, KMH, MPH
from calculators.words import Message, number, say, signed

NAMES: Mapping[Measured, Message] = {
    "speed": say("Speed"),
    "spin": say("Spin"),
    "clock": say("Clock"),
    "active": say("Active share"),
    "up": say("Up (drop is minus)"),
    "glove": say("To the glove side"),
    "strikes": say("Strikes"),
}
IN_A_SENTENCE: Mapping[Measured, Message] = {
    "speed": say("speed"),
    "spin": say("spin"),
    "clock": say("clock"),
    "active": say("active share"),
    "up": say("drop"),
    "glove": say("side movement"),
    "strikes": say("strikes"),
}
MISSING: Mapping[str, Message] = {
    "not measured": say("not measured"),
    "bad read": say("bad read"),
    "did not throw": say("did not throw"),
}


def value_words(name: Measured, value: float, measures: Measures) -> Message:
    """Say a value in the unit in which throws are kept: mph, rpm, hours, percent, inches, a share."""
    if name == "speed":
        return measures.speed(value * MPH, 1)
    if name == "spin":
        return say("{rpm} rpm", rpm=number(value))
    if name == "clock":
        return say("{clock}", clock=clock_words(value))
    if name == "active":
        return say("{percent}%", percent=number(value))
    if name == "strikes":
        return say("{percent}%", percent=number(100 * value))
    return measures.small_signed(value * INCH, 1)


def spread_words(name: Quantity, value: float, measures: Measures) -> Message:
    """Say how much throws differ from each other, without a sign."""
    if name == "clock":
        return say("{minutes} min", minutes=number(60 * value))
    if name in ("up", "glove"):
        return measures.small(value * INCH, 1)
    return value_words(name, value, measures)


def change_words(name: Measured, value: float, measures: Measures) -> Message:
    """Say a change with its sign; a clock in minutes, later is plus; shares in points."""
    if name == "speed":
        if measures.system == "metric":
            return say("{amount} km/h", amount=signed(value * MPH / KMH, 1))
        return say("{amount} mph", amount=signed(value, 1))
    if name == "spin":
        return say("{amount} rpm", amount=signed(value))
    if name == "clock":
        return say("{amount} min", amount=signed(60 * value))
    if name == "active":
        return say("{amount} points", amount=signed(value))
    if name == "strikes":
        return say("{amount} points", amount=signed(100 * value))
    return measures.small_signed(value * INCH, 1)


def between(name: Measured, interval: Interval | None, measures: Measures, change: bool = False) -> Message:
    """Say an interval from end to end, the unit once; or that there are too few throws for one."""
    if interval is None:
        return say("too few throws")
    write = change_words if change else value_words
    low, high = (write(name, end, measures) for end in (interval.low, interval.high))
    return say("{low} to {high}", low=next(iter(low.values.values())), high=high)


def joined(parts: Sequence[Message]) -> Message:
    """Say several things in a row, a comma between them; there is at least one."""
    told = parts[0]
    for part in parts[1:]:
        told = say("{one}, {two}", one=told, two=part)
    return told

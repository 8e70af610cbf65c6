"""Movement worked out beforehand, for paper: by speed and active share, and how a clock splits it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from calculators.desk.answers import Table
from calculators.physics.aim import pitch_to
from calculators.physics.flight import STILL_AIR, Release, arrive
from calculators.physics.movement import movement, spinless
from calculators.physics.spin import Spin, other_hand_clock, spin_vector
from calculators.physics.units import FOOT, INCH, MPH, RPM
from calculators.words import Message, number, say

SHARES = (0.5, 0.7, 0.9)


@dataclass(frozen=True)
class Level:
    """A typical curve of one level (estimate): mound and extension in ft, height in ft, mph and rpm."""

    name: Message
    mound: float
    extension: float
    height: float
    speeds: tuple[float, ...]
    rpm: float


LEVELS = (
    Level(say("Twelve and under"), 46, 4.5, 4.5, (40, 45, 50), 1400),
    Level(say("High school"), 60.5, 5.5, 5.6, (60, 66, 72), 2050),
    Level(say("Adult"), 60.5, 6.0, 6.0, (74, 78, 82), 2500),
)


def movement_tables() -> tuple[Table, ...]:
    """Return one table a level, and one that splits ten inches by the clock."""
    return (*(_level_table(level) for level in LEVELS), _clock_table())


def drop_of(level: Level, mph: float, share: float) -> float:
    """Return how far spin makes the level's curve drop at a speed and an active share, clock 6:00 [m]."""
    position = (0.0, (level.mound - level.extension) * FOOT, level.height * FOOT)
    spin = Spin(level.rpm * RPM, 6.0, share)
    flight = pitch_to((0.0, 26 * INCH), position, mph * MPH, spin)
    velocity = flight.start.velocity
    release = Release(position, velocity, spin_vector(spin, velocity))
    return -movement(flight.end, arrive(spinless(release), STILL_AIR)).up


def _level_table(level: Level) -> Table:
    caption = say(
        "{level}: what spin adds to the drop of a curve at 6:00 ({feet} ft, {rpm} rpm, an estimate)",
        level=level.name,
        feet=f"{level.mound:g}",
        rpm=f"{level.rpm:,.0f}",
    )
    heads = (say("Speed"), *(say("{share}% active", share=number(100 * share)) for share in SHARES))
    rows = tuple(
        (
            say("{value} mph", value=number(mph)),
            *(say("{value} in", value=number(drop_of(level, mph, share) / INCH)) for share in SHARES),
        )
        for mph in level.speeds
    )
    return Table(caption, heads, rows)


def _clock_table() -> Table:
    heads = (say("Right-hander"), say("Left-hander"), say("Down"), say("Glove side"))
    rows = tuple(
        (
            say("{clock}", clock=clock_words(clock)),
            say("{clock}", clock=clock_words(other_hand_clock(clock))),
            say("{value} in", value=number(-10 * math.cos(math.pi * clock / 6), 1)),
            say("{value} in", value=number(-10 * math.sin(math.pi * clock / 6), 1)),
        )
        for clock in (6.0, 6.5, 7.0, 7.5, 8.0, 8.5, 9.0)
    )
    return Table(say("How the clock splits ten inches of movement"), heads, rows)


def clock_words(clock: float) -> str:
    """Write a clock time in hours as h:mm, to the nearest minute."""
    minutes = round(clock * 60) % 720
    hours, minutes = divmod(minutes, 60)
    return f"{hours or 12}:{minutes:02d}"

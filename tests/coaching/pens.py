"""Made-up practice sessions for the tests: throws drawn around given middles, the same each time."""

from __future__ import annotations

import datetime
import random
from dataclasses import replace

from calculators.coaching.throws import BREAKING_BALL, FASTBALL, Session, Throw, to_the_minute

MONDAY = datetime.date(2026, 5, 4)


def breaking_balls(
    count: int,
    *,
    seed: int = 1,
    speed: float = 65.0,
    clock: float = 6.3,
    active: float = 82.0,
    up: float = -11.0,
    glove: float = 3.0,
    clock_spread: float = 0.3,
    speed_spread: float = 1.0,
) -> list[Throw]:
    """Return breaking balls around the given middles."""
    draw = random.Random(seed)
    return [
        Throw(
            number,
            BREAKING_BALL,
            strike=draw.random() < 0.5,
            speed=round(draw.gauss(speed, speed_spread), 1),
            spin=float(round(draw.gauss(2000, 90))),
            clock=to_the_minute(draw.gauss(clock, clock_spread) % 12),
            active=round(min(100.0, max(0.0, draw.gauss(active, 4))), 1),
            up=round(draw.gauss(up, 2), 1),
            glove=round(draw.gauss(glove, 2.5), 1),
        )
        for number in range(1, count + 1)
    ]


def fastballs(count: int, *, seed: int = 2, speed: float = 80.0, spread: float = 0.8) -> list[Throw]:
    """Return fastballs around a speed."""
    draw = random.Random(seed)
    return [
        Throw(
            number,
            FASTBALL,
            speed=round(draw.gauss(speed, spread), 1),
            clock=to_the_minute(draw.gauss(1.0, 0.2)),
            up=round(draw.gauss(15, 1.5), 1),
            glove=round(draw.gauss(-7, 1.5), 1),
        )
        for number in range(1, count + 1)
    ]


def numbered(throws: list[Throw]) -> tuple[Throw, ...]:
    """Return throws counted through."""
    return tuple(replace(throw, number=number) for number, throw in enumerate(throws, start=1))


def trial_day(
    cue: str, gain: float, *, block: int = 10, seed: int = 5, date: datetime.date = MONDAY, up: float = 0.0
) -> Session:
    """Return a plain block, one with a cue worth `gain` mph and `up` inches, and a plain block again."""
    throws: list[Throw] = []
    for part, (word, mph, rise) in enumerate((("", 0.0, 0.0), (cue, gain, up), ("", 0.0, 0.0)), start=1):
        thrown = breaking_balls(block, seed=seed * 10 + part, speed=65 + mph, up=-11 + rise)
        throws += [replace(throw, cue=word, block=part) for throw in thrown]
        throws += fastballs(3, seed=seed * 10 + part)
    return Session(numbered(throws), date, movement="spin, whole flight")

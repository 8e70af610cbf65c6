"""A long sheet of throws, read from CSV and compared, and a session of two hundred."""

from __future__ import annotations

import random
from collections.abc import Iterator

from bench.measure import Figure, best_seconds
from calculators.coaching.comparison import compare
from calculators.coaching.reading import read
from calculators.coaching.session_file import Imported, own_mapping, read_sheet
from calculators.coaching.sheet import open_sheet
from calculators.coaching.throws import BREAKING_BALL

MANY = 10_000
SESSION = 200


def figures() -> Iterator[Figure]:
    """Measure and yield each figure."""
    text = sheet(MANY)
    yield Figure(
        f"session: {MANY:,} throws read and compared, seconds",
        best_seconds(lambda: compare(_read(text).sessions[0], "box-line"), 3),
        1,
    )
    (session,) = _read(sheet(SESSION)).sessions
    spent = best_seconds(lambda: (read(session.throws, BREAKING_BALL), compare(session, "box-line")), 10)
    yield Figure(f"session: {SESSION} throws read and compared, ms", spent * 1000, 50)


def sheet(throws: int) -> str:
    """Return an invented session in the handbook's own columns: plain throws, cued ones, plain ones again.

    Every tenth throw is a fastball.
    """
    draw = random.Random(3)
    lines = ["pitch,cue,block,speed mph,spin rpm,active percent"]
    for number in range(throws):
        if number % 10 == 0:
            lines.append(f"fastball,,,{draw.gauss(80, 1):.1f},{draw.gauss(2100, 90):.0f},")
            continue
        block = 1 + 3 * number // throws
        cue = "box-line" if block == 2 else ""
        speed = draw.gauss(66.5 if cue else 65.0, 1.6)
        lines.append(
            f"breaking ball,{cue},{block},{speed:.1f},{draw.gauss(2000, 110):.0f},{draw.gauss(75, 7):.0f}"
        )
    return "\n".join(lines) + "\n"


def _read(text: str) -> Imported:
    opened = open_sheet(text)
    return read_sheet(opened, own_mapping(opened, "right"))

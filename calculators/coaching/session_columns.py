"""The columns of a session file: what each holds, in which units it may come, and how a cell is read.

The handbook's own file has the headings of `COLUMNS`, one row a throw, a comma between cells and a point in
decimals. Movement and clock in it are the pitcher's view.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Literal, get_args

from calculators.coaching.clock_faces import read_clock
from calculators.coaching.throws import REASONS, TEXT, MovementKind, Place, Reason, to_the_minute
from calculators.physics.units import CENTIMETRE, FOOT, INCH, KMH, MPH
from calculators.words import Message, say

Name = Literal[
    "date",
    "number",
    "pitch",
    "grip",
    "cue",
    "block",
    "strike",
    "speed",
    "spin",
    "clock",
    "active",
    "up",
    "side",
    "rating",
    "guess_speed",
    "guess_clock",
    "missing",
    "place",
    "distance",
    "ball",
    "effort",
    "system",
    "movement",
]


@dataclass(frozen=True)
class Missing:
    """What a cell holds that says why a measurement has no value."""

    reason: Reason


Cell = float | str | bool | datetime.date | Missing | None


@dataclass(frozen=True)
class Column:
    """One kind of column: its own heading, the units it may come in (its own first), and what it holds."""

    name: Name
    heading: str
    units: tuple[str, ...]
    holds: Message


COLUMNS: tuple[Column, ...] = (
    Column("date", "date", ("year-month-day", "month/day/year", "day/month/year"), say("The day.")),
    Column("number", "throw", ("",), say("Which throw of the day, from 1.")),
    Column("pitch", "pitch", ("",), say("Fastball, breaking ball, or your own name for the pitch.")),
    Column("grip", "grip", ("",), say("The grip, in the handbook's words or your own.")),
    Column("cue", "cue", ("",), say("The cue that was given. Blank means none.")),
    Column("block", "block", ("",), say("Which block of a trial, from 1.")),
    Column("strike", "strike", ("",), say("Strike or ball.")),
    Column("speed", "speed mph", ("mph", "km/h", "m/s"), say("Speed at release.")),
    Column("spin", "spin rpm", ("rpm", "turns/s"), say("All of the spin.")),
    Column(
        "clock",
        "clock",
        ("h:mm", "degrees from 12:00", "degrees from 6:00"),
        say("Where the spin pushes the ball. Degrees run the way the hands of a clock go."),
    ),
    Column("active", "active percent", ("percent", "share"), say("How much of the spin moves the ball.")),
    Column("up", "up in", ("in", "cm"), say("Movement up. Below zero is drop.")),
    Column("side", "glove side in", ("in", "cm"), say("Movement to the glove side. Below zero is arm side.")),
    Column("rating", "rating", ("",), say("The pitcher's own, 1 to 5, before any number was seen.")),
    Column("guess_speed", "guess speed mph", ("mph", "km/h", "m/s"), say("The pitcher's own guess.")),
    Column("guess_clock", "guess clock", ("h:mm",), say("The pitcher's own guess.")),
    Column(
        "missing", "missing", ("",), say("Why something has no value, as in: speed=bad read; spin=bad read.")
    ),
    Column("place", "place", ("",), say("Mound, flat ground or indoors.")),
    Column("distance", "distance ft", ("ft", "m"), say("From the plate to the pitcher.")),
    Column("ball", "ball", ("",), say("Which ball.")),
    Column("effort", "effort percent", ("percent",), say("The effort asked for.")),
    Column("system", "system", ("",), say("What measured.")),
    Column("movement", "movement", ("",), say("How movement is counted.")),
)

COLUMN: Mapping[Name, Column] = {column.name: column for column in COLUMNS}

ONE_A_SESSION: tuple[Name, ...] = ("place", "distance", "ball", "effort", "system", "movement")
"""Columns that say the same on every row of a session."""

FACTORS: Mapping[str, float] = {
    "km/h": KMH / MPH,
    "m/s": 1 / MPH,
    "turns/s": 60.0,
    "cm": CENTIMETRE / INCH,
    "share": 100.0,
    "m": 1 / FOOT,
}
"""From a unit to the handbook's own."""

_NUMBER = re.compile(r"[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?")
_CLOCK = re.compile(r"(\d{1,2}):([0-5]\d)")
_DATES = {
    "year-month-day": (re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})"), (0, 1, 2)),
    "month/day/year": (re.compile(r"(\d{1,2})/(\d{1,2})/(\d{4})"), (2, 0, 1)),
    "day/month/year": (re.compile(r"(\d{1,2})/(\d{1,2})/(\d{4})"), (2, 1, 0)),
}
_CHOICES: Mapping[Name, tuple[str, ...]] = {"place": get_args(Place), "movement": get_args(MovementKind)}
_REASON: Mapping[str, Reason] = {reason: reason for reason in REASONS}
_YES = frozenset({"strike", "yes", "y", "s", "1", "true"})
_NO = frozenset({"ball", "no", "n", "b", "0", "false"})


class CellError(ValueError):
    """A cell cannot be read; `message` says how to put it right."""

    def __init__(self, message: Message) -> None:
        super().__init__(message.text)
        self.message = message


def reader(name: Name, unit: str, decimal_comma: bool = False) -> Callable[[str], Cell]:
    """Return the function that reads a trimmed, non-blank cell of a column.

    It returns the value in the handbook's own unit, or `Missing` where the cell says why there is none. It
    raises CellError.
    """
    if name == "clock":
        return _reason_or(_clock if unit == "h:mm" else _degrees(unit, decimal_comma))
    if name == "guess_clock":
        return _clock
    if name in ("number", "block", "rating"):
        return _whole
    if name in ("speed", "spin", "active", "up", "side"):
        return _reason_or(_number(FACTORS.get(unit, 1.0), decimal_comma))
    if name in ("guess_speed", "distance", "effort"):
        return _number(FACTORS.get(unit, 1.0), decimal_comma)
    if name == "strike":
        return _strike
    if name == "date":
        return _date(unit)
    if name in _CHOICES:
        return _one_of(_CHOICES[name])
    return str if name == "missing" else _text


def _one_of(allowed: tuple[str, ...]) -> Callable[[str], Cell]:
    def read(cell: str) -> str:
        if cell not in allowed:
            raise CellError(say("Write one of: {words}.", words="; ".join(allowed)))
        return cell

    return read


def _reason_or(read: Callable[[str], Cell]) -> Callable[[str], Cell]:
    return lambda cell: Missing(_REASON[cell]) if cell in _REASON else read(cell)


def _number(factor: float, decimal_comma: bool) -> Callable[[str], Cell]:
    def read(cell: str) -> float:
        plain = cell.replace("\u2212", "-")
        if decimal_comma:
            plain = plain.replace(",", ".")
        if not _NUMBER.fullmatch(plain):
            raise CellError(say("Not a number. Write digits and a point, or leave it blank."))
        return float(plain) * factor if factor != 1.0 else float(plain)

    return read


def _degrees(unit: str, decimal_comma: bool) -> Callable[[str], Cell]:
    number, start = _number(1 / 30, decimal_comma), 6.0 if unit == "degrees from 6:00" else 0.0

    def read(cell: str) -> float:
        hours = number(cell)
        assert isinstance(hours, float)
        if not 0 <= hours <= 12:
            raise CellError(say("Degrees run from 0 to 360."))
        return to_the_minute(hours + start)

    return read


def _clock(cell: str) -> float:
    match = _CLOCK.fullmatch(cell)
    if not match or not 1 <= int(match[1]) <= 12:
        raise CellError(say("Write a clock time from 1:00 to 12:59, like 7:30."))
    return read_clock(cell)


def _whole(cell: str) -> float:
    if not re.fullmatch(r"\d{1,6}", cell):
        raise CellError(say("Write a whole number."))
    return float(cell)


def _strike(cell: str) -> bool:
    word = cell.casefold()
    if word not in _YES and word not in _NO:
        raise CellError(say("Write strike or ball."))
    return word in _YES


def _date(unit: str) -> Callable[[str], Cell]:
    pattern, order = _DATES[unit]

    def read(cell: str) -> datetime.date:
        match = pattern.fullmatch(cell)
        if not match:
            raise CellError(say("Write the date as {form}.", form=unit))
        parts = [int(match[1 + place]) for place in order]
        try:
            return datetime.date(parts[0], parts[1], parts[2])
        except ValueError:
            raise CellError(say("There is no such day.")) from None

    return read


def _text(cell: str) -> str:
    if not TEXT.fullmatch(cell):
        raise CellError(say("Begin with a letter or digit, on one line, and use at most 60 letters."))
    return cell

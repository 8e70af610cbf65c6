"""Throws as they were written down: what was thrown, what was measured, and why something was not.

Speed [mph], spin [rpm] and movement [in] are kept in the units of the instrument or the sheet they came from,
so that a record is the same after it was saved and opened again.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal, get_args

from calculators.coaching.clock_faces import FULL_TURN

Hand = Literal["right", "left"]
Quantity = Literal["speed", "spin", "clock", "active", "up", "glove"]
Reason = Literal["not measured", "bad read", "did not throw"]
Place = Literal["mound", "flat ground", "indoors", "not known"]
MovementKind = Literal["spin, whole flight", "spin, part of the flight", "with gravity", "not known"]

QUANTITIES: tuple[Quantity, ...] = get_args(Quantity)
REASONS: tuple[Reason, ...] = get_args(Reason)
FASTBALL = "fastball"
BREAKING_BALL = "breaking ball"

LIMITS: Mapping[Quantity, tuple[float, float]] = {
    "speed": (15, 110),
    "spin": (0, 4000),
    "clock": (0, 12),
    "active": (0, 100),
    "up": (-90, 90),
    "glove": (-60, 60),
}
"""What a measured value may be at all; outside it no baseball thrown by hand was read."""

CLOCK_NEEDS_ACTIVE = 35
"""Below this active share [percent] the clock is noise and is not averaged (common practice)."""


TEXT = re.compile(r"[^\W_][^\x00-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff]{0,59}")
"""What a name may be: one line, at most 60 letters, a letter or digit first, so that no sheet computes it."""


class ThrowError(ValueError):
    """A throw or session holds something that cannot be. Names the field and the mend."""

    def __init__(self, field: str, mend: str) -> None:
        super().__init__(f"{field}: {mend}")
        self.field = field
        self.mend = mend


@dataclass(frozen=True, slots=True)
class Throw:
    """One throw. None means not known, never zero.

    number: its place in the session, from 1. pitch: "fastball", "breaking ball" or the reader's word.
    grip, cue: entries of the handbook or words of the reader's own; an empty cue means that none was given.
    block: which block of a trial it belongs to, from 1; None outside blocks.
    speed [mph], spin [rpm], active share of the spin [percent].
    clock [hours, 0 up to 12]: where the spin pushes, as the pitcher sees it, for the pitcher's own hand.
    up, glove: movement up and to the glove side [in].
    rating: the pitcher's own, 1 to 5, and guess_speed [mph], guess_clock [hours]: the pitcher's own guess;
    all three given before any number was seen.
    missing: why a quantity has no value; a quantity left out of it was not measured.
    """

    number: int
    pitch: str
    grip: str = ""
    cue: str = ""
    block: int | None = None
    strike: bool | None = None
    speed: float | None = None
    spin: float | None = None
    clock: float | None = None
    active: float | None = None
    up: float | None = None
    glove: float | None = None
    rating: int | None = None
    guess_speed: float | None = None
    guess_clock: float | None = None
    missing: tuple[tuple[Quantity, Reason], ...] = ()

    def __post_init__(self) -> None:
        """Refuse what cannot be; raises ThrowError."""
        if self.number < 1:
            raise ThrowError("number", "count throws from 1")
        if not self.pitch:
            raise ThrowError("pitch", "name the pitch")
        for text, value in (("pitch", self.pitch), ("grip", self.grip), ("cue", self.cue)):
            _check_text(text, value)
        if self.block is not None and self.block < 1:
            raise ThrowError("block", "count blocks from 1")
        if self.rating is not None and not 1 <= self.rating <= 5:
            raise ThrowError("rating", "give 1 to 5")
        for name, (low, high) in LIMITS.items():
            value = getattr(self, name)
            if value is not None and not low <= value <= high:
                _check(name, value, low, high)
        _check("guess_speed", self.guess_speed, *LIMITS["speed"])
        _check("guess_clock", self.guess_clock, *LIMITS["clock"])
        if FULL_TURN in (self.clock, self.guess_clock):
            raise ThrowError("clock", "write twelve o'clock as 0")
        for name, reason in self.missing:
            if name not in QUANTITIES or reason not in REASONS:
                raise ThrowError("missing", f"give a quantity and one of: {', '.join(REASONS)}")
            if getattr(self, name) is not None:
                raise ThrowError("missing", f"{name} has a value, so it is not missing")

    def why_missing(self, quantity: Quantity) -> Reason | None:
        """Return why a quantity has no value, None where it has one."""
        if getattr(self, quantity) is not None:
            return None
        return dict(self.missing).get(quantity, "not measured")

    @property
    def steady_clock(self) -> float | None:
        """The clock [hours] where enough of the spin is active for it to mean something."""
        return None if self.active is not None and self.active < CLOCK_NEEDS_ACTIVE else self.clock


def _check(name: str, value: float | None, low: float, high: float) -> None:
    if value is not None and not low <= value <= high:
        raise ThrowError(name, f"give {low:g} to {high:g}, or leave it out")


def _check_text(name: str, text: str) -> None:
    if text and not _is_name(text):
        raise ThrowError(name, "begin with a letter or digit, on one line, at most 60 letters")


@lru_cache(maxsize=256)
def _is_name(text: str) -> bool:
    return TEXT.fullmatch(text) is not None


@dataclass(frozen=True)
class Session:
    """The throws of one day at one place.

    distance: from the plate to where the pitcher stands [ft]. effort: asked for [percent].
    system: what measured, in the reader's own words. movement: how up and glove are counted; movement
    counted in different ways is never compared.
    """

    throws: tuple[Throw, ...]
    date: datetime.date | None = None
    place: Place = "not known"
    distance: float | None = None
    ball: str = ""
    effort: float | None = None
    system: str = ""
    movement: MovementKind = "not known"

    def __post_init__(self) -> None:
        """Refuse what cannot be; raises ThrowError."""
        _check("distance", self.distance, 3, 120)
        _check("effort", self.effort, 0, 100)
        _check_text("ball", self.ball)
        _check_text("system", self.system)


def of_pitch(throws: Iterable[Throw], pitch: str) -> tuple[Throw, ...]:
    """Return the throws of one pitch."""
    return tuple(throw for throw in throws if throw.pitch == pitch)


def values(throws: Iterable[Throw], quantity: Quantity) -> list[float]:
    """Return the measured values of a quantity; clocks only where they mean something."""
    name = "steady_clock" if quantity == "clock" else quantity
    return [value for throw in throws if (value := getattr(throw, name)) is not None]


def strikes(throws: Iterable[Throw]) -> tuple[int, int]:
    """Return how many were strikes, of how many that were called."""
    called = [throw.strike for throw in throws if throw.strike is not None]
    return sum(called), len(called)


def written_clock(clock: float) -> str:
    """Write a clock [hours] as h:mm, to the nearest minute."""
    hours, minutes = divmod(round(clock * 60) % 720, 60)
    return f"{hours or 12}:{minutes:02d}"


def to_the_minute(clock: float) -> float:
    """Return a clock [hours] rounded to the minute, as files keep it."""
    hours, minutes = divmod(round(clock * 60) % 720, 60)
    return hours + minutes / 60

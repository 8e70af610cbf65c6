"""Numbers that do not look like what their column says: asked about, never put right in silence.

The bounds are what pitchers of an age are commonly seen to throw, with room on both sides (estimate).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from calculators.coaching.clock_statistics import mean_clock
from calculators.coaching.spread import median
from calculators.coaching.throws import Hand
from calculators.physics.spin import other_hand_clock
from calculators.words import Message, number, say

Key = Literal[
    "view",
    "movement",
    "fastball name",
    "speed unit",
    "mixed speeds",
    "spin unit",
    "active unit",
    "clock unit",
    "movement unit",
    "mirrored clock",
    "upside-down clock",
    "mirrored movement",
]

_USUAL_FASTBALL: tuple[tuple[int, float, float], ...] = (
    (12, 35, 68),
    (14, 45, 80),
    (18, 55, 97),
    (99, 62, 104),
)
_ANY_FASTBALL = (35.0, 104.0)
_KMH_RATIO = (1.50, 1.72)
_MOST_MOVEMENT = 24.0
_LEAST_FASTBALL_MOVEMENT = 5.0
_FEWEST = 3
_FULL_DISTANCE = 60.5
_ARM_SIDE_LEAST = -3.0


@dataclass(frozen=True)
class Question:
    """A doubt about a whole column, to be answered before anything is kept."""

    key: Key
    message: Message


@dataclass(frozen=True)
class Numbers:
    """The numbers of a file in the handbook's own units, as its columns claim them; None where blank.

    Clocks in hours and movement are already in the pitcher's view, as the answers so far have it.
    """

    pitches: Sequence[str]
    fastball: str
    hand: Hand
    age: int | None
    distance: float | None
    with_gravity: bool
    columns: Mapping[str, Sequence[float | None]]

    def of(self, name: str, fastballs: bool | None = None) -> list[float]:
        """Return the numbers of a column, of fastballs only or of other pitches only where that is asked."""
        return [
            value
            for value, pitch in zip(self.columns.get(name, ()), self.pitches, strict=False)
            if value is not None and fastballs in (None, pitch == self.fastball)
        ]


def doubts(numbers: Numbers) -> list[Question]:
    """Return what looks mixed up, each with the question to ask."""
    found = [*_speed(numbers), *_spin(numbers), *_active(numbers), *_movement(numbers), *_view(numbers)]
    return [Question(key, message) for key, message in found]


_Found = list[tuple[Key, Message]]


def _speed(numbers: Numbers) -> _Found:
    fastballs, everything = numbers.of("speed", True), numbers.of("speed")
    if not everything:
        return []
    typical = median(fastballs or everything)
    low, high = next(
        (
            (low, high)
            for oldest, low, high in _USUAL_FASTBALL
            if numbers.age is not None and numbers.age <= oldest
        ),
        _ANY_FASTBALL,
    )
    low = low if fastballs else 0.6 * low
    if typical > high:
        hint = say("A typical {mph} mph is very fast. Are the speeds in km/h?", mph=number(typical))
        return [("speed unit", hint)]
    if typical < low:
        hint = say("A typical {mph} mph is very slow. Are the speeds in m/s?", mph=number(typical))
        return [("speed unit", hint)]
    return _mixed(numbers)


def _mixed(numbers: Numbers) -> _Found:
    apart = 0
    for group in (numbers.of("speed", True), numbers.of("speed", False)):
        middle = median(group) if len(group) >= _FEWEST else None
        for value in group if middle is not None else ():
            assert middle is not None
            ratio = max(value / middle, middle / value) if value > 0 else 0.0
            apart += _KMH_RATIO[0] <= ratio <= _KMH_RATIO[1]
    if not apart:
        return []
    return [
        (
            "mixed speeds",
            say(
                "{count} speeds differ from the rest as km/h from mph. Are two units mixed?", count=str(apart)
            ),
        )
    ]


def _spin(numbers: Numbers) -> _Found:
    spins = numbers.of("spin")
    if not spins or median(spins) > 200:
        return []
    return [("spin unit", say("The spin is far too low for rpm. Is it in turns a second?"))]


def _active(numbers: Numbers) -> _Found:
    shares = numbers.of("active")
    if len(shares) < _FEWEST or max(shares) > 1:
        return []
    return [
        ("active unit", say("No active share is above 1. Is it a share, where 1 means all, and no percent?"))
    ]


def _movement(numbers: Numbers) -> _Found:
    if numbers.with_gravity:
        return []
    distance = numbers.distance or _FULL_DISTANCE
    scale = ((distance - 6) / (_FULL_DISTANCE - 6)) ** 2
    amounts, fastballs = _amounts(numbers, None), _amounts(numbers, True)
    if amounts and median(amounts) > _MOST_MOVEMENT * scale:
        return [
            ("movement unit", say("The movement is very large. Is it in centimeters, or with gravity in it?"))
        ]
    if len(fastballs) >= _FEWEST and median(fastballs) < _LEAST_FASTBALL_MOVEMENT * scale:
        return [
            ("movement unit", say("The fastballs hardly move. Are the numbers inches that were called cm?"))
        ]
    return []


def _amounts(numbers: Numbers, fastballs: bool | None) -> list[float]:
    pairs = zip(
        numbers.columns.get("up", ()), numbers.columns.get("glove", ()), numbers.pitches, strict=False
    )
    return [
        (up * up + glove * glove) ** 0.5
        for up, glove, pitch in pairs
        if up is not None and glove is not None and fastballs in (None, pitch == numbers.fastball)
    ]


def _view(numbers: Numbers) -> _Found:
    """Ask about the view where fastballs lean to the glove side: hardly any do."""
    found: _Found = []
    clocks = numbers.of("clock", True)
    mean = mean_clock(clocks) if len(clocks) >= _FEWEST else None
    if mean is not None:
        clock = other_hand_clock(mean) if numbers.hand == "left" else mean
        if 8 <= clock <= 11.5:
            found.append(
                (
                    "mirrored clock",
                    say("The fastballs lean to the glove side. Are the clocks the catcher's view?"),
                )
            )
        elif 4 < clock < 8:
            found.append(
                ("upside-down clock", say("The fastballs point down. Do the clocks show something else?"))
            )
    sides = numbers.of("glove", True)
    if len(sides) >= _FEWEST and median(sides) > -_ARM_SIDE_LEAST:
        found.append(
            ("mirrored movement", say("The fastballs run to the glove side. Is the side movement mirrored?"))
        )
    return found

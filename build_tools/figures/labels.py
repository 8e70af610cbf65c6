"""Words beside a figure: each set in a column at one side, with a thin line to what it names."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from calculators.words import Message

Flat = tuple[float, float]
Side = Literal["left", "right"]

LINE_HEIGHT = 15.0
_GAP = 7.0


@dataclass(frozen=True)
class Note:
    """Words about a point of the figure. `height` is where they would like to stand, from the top."""

    text: Message
    at: Flat
    side: Side
    height: float
    columns: int = 14


@dataclass(frozen=True)
class Set:
    """Words as they stand: their lines, the first one's base line, and the point they name."""

    lines: tuple[str, ...]
    side: Side
    top: float
    at: Flat


def wrap(text: str, columns: int) -> tuple[str, ...]:
    """Break words into lines of about so many letters; a longer word stays whole."""
    lines: list[str] = []
    for word in text.split():
        if lines and len(lines[-1]) + 1 + len(word) <= columns:
            lines[-1] += " " + word
        else:
            lines.append(word)
    return tuple(lines)


def breadth(text: str) -> float:
    """Return about how wide words are set, in text heights."""
    return sum(0.3 if letter in "iljtfI.,:;'! " else 0.88 if letter in "mwMW" else 0.56 for letter in text)


def arrange(notes: Sequence[tuple[Note, str]], top: float, bottom: float) -> tuple[Set, ...]:
    """Stand the notes, already spoken, in their columns without overlap between two heights."""
    done: list[Set] = []
    sides: tuple[Side, ...] = ("left", "right")
    for side in sides:
        column = sorted((pair for pair in notes if pair[0].side == side), key=lambda pair: pair[0].height)
        wrapped = [wrap(text, note.columns) for note, text in column]
        tops: list[float] = []
        free = top
        for (note, _), lines in zip(column, wrapped, strict=True):
            tops.append(max(free, note.height - LINE_HEIGHT * (len(lines) - 1) / 2.0))
            free = tops[-1] + LINE_HEIGHT * len(lines) + _GAP
        limit = bottom
        for k in range(len(tops) - 1, -1, -1):
            tops[k] = min(tops[k], limit - LINE_HEIGHT * (len(wrapped[k]) - 1))
            limit = tops[k] - LINE_HEIGHT - _GAP
        done += [
            Set(lines, side, height, note.at)
            for (note, _), lines, height in zip(column, wrapped, tops, strict=True)
        ]
    return tuple(done)

"""What a cue trial is about and what came of it, in words, and what blocks of throws can show."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from calculators.coaching.comparison import (
    SURE,
    USUAL_DEVIATION,
    Level,
    Measured,
    Trial,
    smallest_change,
    together,
)
from calculators.coaching.throws import Quantity
from calculators.coaching.verdict import Aim, Verdict
from calculators.desk.answers import Shelf, Table
from calculators.desk.measures import Measures
from calculators.desk.quantities import NAMES, spread_words
from calculators.words import Message, number, say

AIMS: Mapping[str, tuple[Aim, Message]] = {
    "speed up": (Aim("speed", True), say("More speed")),
    "clock later": (Aim("clock", True), say("A later clock (7:00 toward 8:00)")),
    "clock earlier": (Aim("clock", False), say("An earlier clock (8:00 toward 7:00)")),
    "active up": (Aim("active", True), say("More active share")),
    "active down": (Aim("active", False), say("Less active share")),
    "drop": (Aim("up", False), say("More drop")),
    "side": (Aim("glove", True), say("More to the glove side")),
    "spin up": (Aim("spin", True), say("More spin")),
    "strikes": (Aim("strikes", True), say("More strikes")),
}
"""What a cue can be meant to change, and which way; chosen before the first throw."""

DECISIONS: Mapping[str, Message] = {
    "keep": say("Keep it"),
    "try again": say("Try it again"),
    "drop": say("Drop it"),
}
STANDINGS: Mapping[str, Message] = {
    "too few": say("too few throws to say"),
    "hint": say("a hint"),
    "working answer": say("a working answer"),
    "keep or drop": say("enough to keep or drop it"),
}
LEVELS: Mapping[Level, Message] = {
    "adult": say("Adult"),
    "high_school": say("High school"),
    "twelve_and_under": say("Twelve and under"),
}
BLOCKS_ON_PAPER = (5, 10, 20, 30)
STRIKES_FELL = 0.15
"""A fall in the share of strikes that is pointed out (estimate)."""


def size_words(name: Measured, value: float, measures: Measures) -> Message:
    """Say the size of a change, without a sign."""
    if name == "strikes":
        return say("{points} points", points=number(100 * value))
    if name == "active":
        return say("{points} points", points=number(value))
    return spread_words(name, value, measures)


def strikes_fell(trials: Sequence[Trial], aim: Aim, verdict: Verdict) -> tuple[Message, ...]:
    """Return the warning that strikes fell with a cue that is not dropped, if they did."""
    found = None if verdict.decision == "drop" else together(trials, "strikes")
    if aim.quantity == "strikes" or found is None or round(found.change, 9) > -STRIKES_FELL:
        return ()
    if found.chance <= SURE:
        return (say("Strikes fell too, by more than luck. Weigh that before you keep the cue."),)
    return (say("Strikes fell too. So few throws say little about that: count them again."),)


def common_cases(shelf: Shelf) -> tuple[Table, ...]:
    """Return what blocks of throws can show, for paper."""
    measures = Measures()
    names: tuple[Quantity, ...] = ("speed", "clock", "active", "up")
    heads = (say("Throws in each block"), *(NAMES[name] for name in names))
    tables = []
    for level, words in LEVELS.items():
        spreads = USUAL_DEVIATION[level]
        rows = tuple(
            (
                say("{count} and {count}", count=str(count)),
                *(size_words(name, smallest_change(spreads[name], count, count), measures) for name in names),
            )
            for count in BLOCKS_ON_PAPER
        )
        caption = say("{level}: the smallest change that can be counted on to show (estimate)", level=words)
        tables.append(Table(caption, heads, rows))
    return tuple(tables)

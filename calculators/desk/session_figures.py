"""Pictures of a session: where spin moved each throw, and strips of speed and clock, over the target."""

from __future__ import annotations

import math
from collections.abc import Sequence

from calculators.coaching.box import Box
from calculators.coaching.clock_statistics import mean_clock
from calculators.coaching.reading import cloud
from calculators.coaching.spread import median
from calculators.coaching.throws import Throw, values
from calculators.desk.drawing import Drawing, Ink
from calculators.desk.loop_figures import (
    Cloud,
    Row,
    TargetBand,
    along_the_line,
    clock_on_line,
    movement_chart,
    strip,
    tick_step,
)
from calculators.desk.measures import Measures
from calculators.desk.movement_tables import clock_words
from calculators.desk.target_movement import MovementBox
from calculators.physics.units import KMH, MPH
from calculators.words import Message, number, say

Kind = tuple[Message, Sequence[Throw], Ink]
"""A kind of throw: its name, its throws, and its ink."""


def session_drawings(
    kinds: Sequence[Kind],
    fastball: float | None,
    box: Box | None,
    moved: MovementBox | None,
    left_handed: bool,
    measures: Measures,
    description: Message,
    both_clocks: bool = False,
) -> tuple[Drawing, ...]:
    """Return the pictures for which there are numbers. The first kind is the one that is read.

    fastball: the same day's typical one [mph]. moved: the target's movement; None leaves its box out.
    both_clocks: the clocks of all kinds are shown, and not only those of the first.
    """
    found = [
        _chart(kinds, moved, left_handed, measures, description),
        _speeds(kinds, fastball, box, measures, description),
        _clocks(kinds if both_clocks else kinds[:1], box, description),
    ]
    return tuple(drawing for drawing in found if drawing is not None)


def _chart(
    kinds: Sequence[Kind],
    moved: MovementBox | None,
    left_handed: bool,
    measures: Measures,
    description: Message,
) -> Drawing | None:
    clouds = []
    for index, (name, throws, ink) in enumerate(kinds):
        pairs = tuple(
            (throw.up, throw.glove) for throw in throws if throw.up is not None and throw.glove is not None
        )
        if pairs:
            half = cloud(throws)
            clouds.append(Cloud(name, pairs, None if half is None else half.ellipse, index == 0, ink))
    if not clouds:
        return None
    title = say("Where spin moved each throw, as the pitcher sees it. A dashed ring holds half of its kind.")
    return movement_chart(moved, clouds, left_handed, measures, title, description)


def _speeds(
    kinds: Sequence[Kind], fastball: float | None, box: Box | None, measures: Measures, description: Message
) -> Drawing | None:
    factor = 1.0 if measures.system == "imperial" else MPH / KMH
    rows = []
    for name, throws, ink in kinds:
        speeds = [factor * value for value in values(throws, "speed")]
        if speeds:
            middle = median(speeds)
            rows.append(Row(name, tuple(speeds), middle, measures.speed(middle / factor * MPH, 1), ink))
    if not rows:
        return None
    band = None
    if box is not None and fastball is not None:
        low, high = (factor * percent * fastball / 100 for percent in box.speed)
        words = say("target {low} to {high}", low=number(low), high=measures.speed(high / factor * MPH))
        band = TargetBand(low, high, words)
    everything = along_the_line(rows, band)
    step = tick_step(min(everything), max(everything))
    first = step * math.ceil(min(everything) / step)
    ticks = [
        (float(tick), say("{tick}", tick=str(tick))) for tick in range(first, int(max(everything)) + 1, step)
    ]
    return strip(rows, band, ticks, say("Speed of each throw. The bar is the middle."), description)


def _clocks(kinds: Sequence[Kind], box: Box | None, description: Message) -> Drawing | None:
    """Draw the clocks that mean something; those of bullet spin are left out."""
    measured = [(name, values(throws, "clock"), ink) for name, throws, ink in kinds]
    every = [clock for _, clocks, _ in measured for clock in clocks]
    band = box.clock if box is not None else None
    middle = band.middle if band is not None else mean_clock(every)
    if not every or middle is None:
        return None

    def hours(clock: float) -> float:
        return clock_on_line(clock, middle)

    rows = []
    for name, clocks, ink in measured:
        mean = mean_clock(clocks)
        if mean is not None:
            line = tuple(hours(clock) for clock in clocks)
            rows.append(Row(name, line, hours(mean), say("{clock}", clock=clock_words(mean)), ink))
    span = None
    if band is not None:
        words = say("target {start} to {end}", start=clock_words(band.start), end=clock_words(band.end))
        span = TargetBand(hours(band.start), hours(band.end), words)
    everything = along_the_line(rows, span)
    first, last = math.floor(min(everything)), math.ceil(max(everything))
    ticks = [(float(hour), say("{hour}", hour=str((hour - 1) % 12 + 1))) for hour in range(first, last + 1)]
    return strip(rows, span, ticks, say("Clock of each throw. The bar is the middle."), description)

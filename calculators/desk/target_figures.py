"""Pictures of a target: where spin moves a ball inside it, and the other pitches on clock and speed."""

from __future__ import annotations

import math

from calculators.coaching.clock_faces import FULL_TURN
from calculators.coaching.target import Target
from calculators.desk.drawing import Drawing
from calculators.desk.loop_fields import Aiming
from calculators.desk.loop_figures import Row, TargetBand, clock_on_line, movement_chart, strip
from calculators.desk.measures import Measures
from calculators.desk.movement_tables import clock_words
from calculators.desk.target_movement import MovementBox
from calculators.words import Message, number, say

STRIP_TICKS = (70.0, 80.0, 90.0, 100.0)


def target_drawings(
    aiming: Aiming, target: Target, moved: MovementBox | None, measures: Measures, headline: Message
) -> tuple[Drawing, ...]:
    """Return the pictures of a target: movement, clock and speed, with the other pitches beside it."""
    found = [_speed_strip(aiming, target, headline)]
    if target.box.clock is not None:
        found.insert(0, _clock_strip(aiming, target, headline))
    if moved is not None:
        title = say("Where spin moves a ball that is inside the target. As the pitcher sees it.")
        chart = movement_chart(moved, (), aiming.hand == "left", measures, title, headline)
        found.insert(0, chart)
    return tuple(found)


def _clock_strip(aiming: Aiming, target: Target, headline: Message) -> Drawing:
    band = target.box.clock
    assert band is not None
    middle = band.middle

    def hours(clock: float) -> float:
        return clock_on_line(clock, middle)

    rows = [
        Row(
            say("{pitch}", pitch=owned.name),
            (hours(owned.clock),),
            words=say("{clock}", clock=clock_words(owned.clock)),
        )
        for owned in aiming.arsenal
        if owned.clock is not None
    ]
    if target.pitcher.fastball_clock is not None:
        mirror = (target.pitcher.fastball_clock + 6) % FULL_TURN
        words = say("{clock}", clock=clock_words(mirror))
        rows.insert(0, Row(say("opposite of the fastball"), (hours(mirror),), hours(mirror), words))
    first = math.floor(middle) - 2
    ticks = [(float(hour), say("{hour}", hour=str((hour - 1) % 12 + 1))) for hour in range(first, first + 6)]
    start, end = clock_words(band.start), clock_words(band.end)
    return strip(
        rows or [Row(say("no other pitch was given"), ())],
        TargetBand(hours(band.start), hours(band.end), say("target {start} to {end}", start=start, end=end)),
        ticks,
        say("On the clock. Two hours apart, pitches are told apart whatever their speed."),
        headline,
    )


def _speed_strip(aiming: Aiming, target: Target, headline: Message) -> Drawing:
    slow, fast = target.box.speed
    rows = [
        Row(
            say("{pitch}", pitch=owned.name),
            (owned.speed,),
            words=say("{percent}%", percent=number(owned.speed)),
        )
        for owned in aiming.arsenal
    ]
    rows.insert(0, Row(say("fastball"), (100.0,), 100.0, say("{percent}%", percent="100")))
    return strip(
        rows,
        TargetBand(slow, fast, say("target {slow} to {fast}%", slow=number(slow), fast=number(fast))),
        [(tick, say("{percent}%", percent=number(tick))) for tick in STRIP_TICKS],
        say("In speed, as a share of the same day's fastball."),
        headline,
    )

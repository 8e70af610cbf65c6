"""Pictures of a pair: both paths from the side, and what each small change does."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from calculators.coaching.pairing import HUMP_SHARE, place_at_distance, place_at_time
from calculators.desk.drawing import Circle, Drawing, Label, Mark, Path, Point
from calculators.desk.flight_figures import FIELD_LEFT, LINE_HEIGHT, TEXT_SIZE, WIDTH
from calculators.desk.pairing_fields import TypedPair
from calculators.physics.flight import PLATE_FRONT, Flight
from calculators.words import Message, say

RIGHT = 284.0
TALLEST = 150.0
DOT = 4.5
NAMES_SHARE = 0.5


def paths(pair: TypedPair, commit: float, hump: Message | None, description: Message) -> Drawing:
    """Draw both paths from the side, the pitcher on the left, a dot on each where the swing must start.

    commit: time after release [s]. hump: how far the breaking ball climbs above the fastball, to be written
    beside it, or None.
    """
    first, second = pair.pair.first, pair.pair.second
    start = first.start.position[1]
    per_metre = (RIGHT - FIELD_LEFT) / (start - PLATE_FRONT)
    moments = (*first.moments, *second.moments)
    highest = max(pair.zone.top, *(moment.position[2] for moment in moments))
    stretch = max(1, math.floor(TALLEST / (highest * per_metre)))
    ground = 2 * LINE_HEIGHT + highest * stretch * per_metre

    def place(y: float, z: float) -> Point:
        return (FIELD_LEFT + (start - y) * per_metre, ground - z * stretch * per_metre)

    def line(flight: Flight[float]) -> tuple[Point, ...]:
        return tuple(place(moment.position[1], moment.position[2]) for moment in flight.moments)

    def dot(flight: Flight[float]) -> Point:
        _, y, z = place_at_time(flight, commit)
        return place(y, z)

    ends = [line(first)[-1], line(second)[-1]]
    lowest = max(ground, *(y for _, y in ends))
    plate_x, floor = place(PLATE_FRONT, pair.zone.bottom)
    roof = place(PLATE_FRONT, pair.zone.top)[1]
    marks: list[Mark] = [
        Path(((0, ground), (WIDTH, ground)), "faint"),
        Path((place(PLATE_FRONT, 0), place(0, 0)), "strong", width=4),
        Path(((plate_x, roof), (plate_x, floor)), "faint", width=5),
        Label((plate_x + 8, roof + 8), say("zone"), ink="faint"),
        Label((plate_x, ground + LINE_HEIGHT), say("plate"), "middle", "faint"),
        Path(line(first), "line", smooth=True),
        Path(line(second), "accent", smooth=True),
        Circle(dot(first), DOT, "line", "strong"),
        Circle(dot(second), DOT, "accent", "accent"),
        *_hump(pair, place, hump),
        *_names(pair, place),
        Label((FIELD_LEFT, lowest + 36), say("Dots: both balls when the swing must start."), ink="faint"),
        Label(
            (FIELD_LEFT, lowest + 36 + LINE_HEIGHT),
            say("Heights are drawn {times} times too tall.", times=str(stretch)),
            ink="faint",
        ),
    ]
    height = lowest + 44 + LINE_HEIGHT
    return Drawing(say("From the side"), description, WIDTH, height, tuple(marks), TEXT_SIZE)


def _hump(pair: TypedPair, place: Callable[[float, float], Point], hump: Message | None) -> list[Mark]:
    if hump is None:
        return []
    first, second = (_after(flight, HUMP_SHARE) for flight in (pair.pair.first, pair.pair.second))
    low, high = place(*first), place(*second)
    roomy = low[1] - high[1] > 1.5 * LINE_HEIGHT
    beside = (low[0] + 5, (low[1] + high[1]) / 2 + 4) if roomy else (high[0], high[1] - 7)
    return [
        Path((low, high), "ghost"),
        Label(beside, hump, "start" if roomy else "middle", "faint"),
    ]


def _names(pair: TypedPair, place: Callable[[float, float], Point]) -> list[Mark]:
    """Name the upper path above and to the right of it, the lower one below and to the left."""
    first = place(*_after(pair.pair.first, NAMES_SHARE))
    second = place(*_after(pair.pair.second, NAMES_SHARE))
    second_is_upper = second[1] <= first[1]
    upper, lower = (second, first) if second_is_upper else (first, second)
    fastball, breaking = say("fastball"), say("breaking ball")
    return [
        Label((upper[0] + 4, upper[1] - 8), breaking if second_is_upper else fastball, "start", "strong"),
        Label((lower[0] - 4, lower[1] + 18), fastball if second_is_upper else breaking, "end", "strong"),
    ]


def _after(flight: Flight[float], share: float) -> tuple[float, float]:
    """Return distance and height of the ball after a share of the way [m]."""
    start, end = flight.start.position[1], flight.end.position[1]
    _, y, z = place_at_distance(flight, start + share * (end - start))
    return y, z


@dataclass(frozen=True)
class Bar:
    """One small change: its words, and how much farther apart it brings the pitches, signed, with words."""

    name: Message
    value: float
    amount: Message


ROW = 46.0
BAR_LEFT, BAR_RIGHT = 84.0, 256.0
BAR_HEIGHT = 11.0


def bars(rows: Sequence[Bar], title: Message, description: Message) -> Drawing:
    """Draw the changes as bars from a middle line: to the right is farther apart, to the left closer."""
    most = max(abs(row.value) for row in rows) or 1.0
    middle = (BAR_LEFT + BAR_RIGHT) / 2
    per_value = (BAR_RIGHT - middle) / most
    top = 2 * LINE_HEIGHT
    marks: list[Mark] = [
        Label((middle - 6, LINE_HEIGHT), say("← closer"), "end", "faint"),
        Label((middle + 6, LINE_HEIGHT), say("farther apart →"), ink="faint"),
    ]
    for index, row in enumerate(rows):
        level = top + index * ROW
        end = middle + row.value * per_value
        marks.append(Label((FIELD_LEFT, level + 4), row.name))
        over, under = level + 12, level + 12 + BAR_HEIGHT
        corners = ((middle, over), (end, over), (end, under), (middle, under))
        marks.append(Path(corners, "accent", closed=True, fill="accent"))
        beside = end + 7 if row.value >= 0 else end - 7
        marks.append(
            Label((beside, level + 22), row.amount, "start" if row.value >= 0 else "end", bold=index == 0)
        )
    bottom = top + len(rows) * ROW - 12
    marks.insert(0, Path(((middle, LINE_HEIGHT + 6), (middle, bottom)), "faint"))
    return Drawing(title, description, WIDTH, bottom + 8, tuple(marks), TEXT_SIZE)

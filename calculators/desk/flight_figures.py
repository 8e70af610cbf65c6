"""Pictures of a flight: from the side and from above.

Each track is named where it ends; a dashed one is what would have been. Heights and sideways distances
are stretched by a whole number, and the picture says so.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calculators.desk.drawing import Drawing, Ink, Label, Mark, Path, Point
from calculators.physics.flight import PLATE_FRONT, Flight
from calculators.physics.units import INCH
from calculators.words import Message, say

WIDTH = 340.0
TEXT_SIZE = 13.0
LINE_HEIGHT = 15.0
FIELD_LEFT, FIELD_RIGHT = 12.0, 254.0
TALLEST, WIDEST = 130.0, 110.0
PLATE_HALF_WIDTH = 8.5 * INCH


@dataclass(frozen=True)
class Track:
    """A flight to draw, the words at its end and its ink; a dashed one is what would have been."""

    flight: Flight[float]
    name: Message
    ink: Ink = "accent"
    dashed: bool = False

    @property
    def start(self) -> float:
        """Distance of the release from the plate's rear tip [m]."""
        return self.flight.start.position[1]

    @property
    def crossing(self) -> tuple[float, float]:
        """Where it crosses the front of the plate: toward the catcher's right, and up [m]."""
        x, _, z = self.flight.end.position
        return x, z

    def path(self, points: Sequence[Point]) -> Path:
        """Return the line through the points in the manner of this track."""
        return Path(tuple(points), self.ink, dashed=self.dashed, smooth=True)


@dataclass(frozen=True)
class Zone:
    """The strike zone: its lower and upper edge above the ground [m]."""

    bottom: float
    top: float

    @property
    def middle(self) -> float:
        """Height of its middle [m]."""
        return (self.bottom + self.top) / 2


def side_view(tracks: Sequence[Track], zone: Zone, description: Message) -> Drawing:
    """Draw the flights from the side, the pitcher on the left."""
    start, per_metre = _lengthwise(tracks)
    highest = max(zone.top, *(m.position[2] for track in tracks for m in track.flight.moments))
    stretch = max(1, math.floor(TALLEST / (highest * per_metre)))
    ground = 2 * LINE_HEIGHT + highest * stretch * per_metre

    def place(y: float, z: float) -> Point:
        return (FIELD_LEFT + (start - y) * per_metre, ground - z * stretch * per_metre)

    plate_x, zone_bottom = place(PLATE_FRONT, zone.bottom)
    zone_top = place(0, zone.top)[1]
    ends = [place(PLATE_FRONT, track.crossing[1]) for track in tracks]
    lowest_end = max(y for _, y in ends)
    lowest = max(ground, lowest_end)
    zone_label = zone_top - 5 if lowest_end > zone_bottom else zone_bottom + LINE_HEIGHT - 2
    climbs = tracks[0].flight.start.velocity[2] > 0
    release = place(*tracks[0].flight.start.position[1:])
    marks: list[Mark] = [
        Path(((0, ground), (WIDTH, ground)), "faint"),
        Path((place(PLATE_FRONT, 0), place(0, 0)), "strong"),
        Path(_box(plate_x - 3, zone_top, 6, zone_bottom - zone_top), "faint", closed=True, fill="shade"),
        Label((plate_x + 8, ground + LINE_HEIGHT), say("plate"), "middle", "faint"),
        Label((release[0] - 8, release[1] + (19 if climbs else -10)), say("release"), ink="faint"),
        *(
            track.path([place(m.position[1], m.position[2]) for m in track.flight.moments])
            for track in tracks
        ),
        *_names(tracks, ends),
        Label((plate_x, zone_label), say("zone"), "middle", "faint"),
        _stretched(say("Heights are drawn {times} times too tall.", times=str(stretch)), lowest + 36),
    ]
    return Drawing(say("From the side"), description, WIDTH, lowest + 44, tuple(marks), TEXT_SIZE)


def top_view(tracks: Sequence[Track], glove_side_up: bool, description: Message) -> Drawing:
    """Draw the flights from above, the pitcher on the left.

    glove_side_up: whether the pitcher's glove side is the upper side of the picture, as a right-hander's is.
    """
    start, per_metre = _lengthwise(tracks)
    asides = [m.position[0] for track in tracks for m in track.flight.moments]
    most_up, most_down = max(PLATE_HALF_WIDTH, *asides), -min(-PLATE_HALF_WIDTH, *asides)
    stretch = max(1, math.floor(WIDEST / ((most_up + most_down) * per_metre)))
    middle = 2 * LINE_HEIGHT + most_up * stretch * per_metre
    bottom = middle + most_down * stretch * per_metre

    def place(y: float, x: float) -> Point:
        return (FIELD_LEFT + (start - y) * per_metre, middle - x * stretch * per_metre)

    half, shoulder = PLATE_HALF_WIDTH, PLATE_FRONT / 2
    plate = (
        place(PLATE_FRONT, half),
        place(shoulder, half),
        place(0, 0),
        place(shoulder, -half),
        place(PLATE_FRONT, -half),
    )
    upper, lower = say("glove side"), say("arm side")
    if not glove_side_up:
        upper, lower = lower, upper
    ends = [place(PLATE_FRONT, track.crossing[0]) for track in tracks]
    marks: list[Mark] = [
        Path((place(start, 0), place(0, 0)), "faint"),
        Path(plate, "line", closed=True, fill="paper"),
        Label((FIELD_LEFT, LINE_HEIGHT), upper, ink="faint"),
        Label((FIELD_LEFT, bottom + 22), lower, ink="faint"),
        *(
            track.path([place(m.position[1], m.position[0]) for m in track.flight.moments])
            for track in tracks
        ),
        *_names(tracks, [(x + 12, y) for x, y in ends]),
        _stretched(say("Sideways is drawn {times} times too wide.", times=str(stretch)), bottom + 42),
    ]
    return Drawing(say("From above"), description, WIDTH, bottom + 50, tuple(marks), TEXT_SIZE)


def _lengthwise(tracks: Sequence[Track]) -> tuple[float, float]:
    """Return where the longest way starts [m] and how many units of the picture make a metre of it."""
    start = max(track.start for track in tracks)
    return start, (FIELD_RIGHT - FIELD_LEFT) / (start - PLATE_FRONT)


def _names(tracks: Sequence[Track], ends: Sequence[Point]) -> list[Label]:
    """Return the tracks' names beside their ends, moved apart so that none covers another."""
    in_order = sorted(range(len(tracks)), key=lambda i: ends[i][1])
    heights = [ends[i][1] for i in in_order]
    for later in range(1, len(heights)):
        overlap = LINE_HEIGHT - (heights[later] - heights[later - 1])
        if overlap > 0:
            heights[later - 1] -= overlap / 2
            heights[later] += overlap / 2
    return [
        Label((ends[i][0] + 8, height + 4), tracks[i].name, ink=tracks[i].ink)
        for i, height in zip(in_order, heights, strict=True)
    ]


def _box(left: float, top: float, width: float, height: float) -> tuple[Point, ...]:
    return ((left, top), (left + width, top), (left + width, top + height), (left, top + height))


def _stretched(words: Message, at_height: float) -> Label:
    return Label((FIELD_LEFT, at_height), words, ink="faint")

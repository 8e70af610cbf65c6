"""The picture of a trial's answer: the change, its interval, nothing, and what the throws could show."""

from __future__ import annotations

from calculators.coaching.comparison import Difference, Measured
from calculators.coaching.intervals import Interval
from calculators.desk.drawing import Circle, Drawing, Label, Mark, Path
from calculators.desk.flight_figures import TEXT_SIZE, WIDTH
from calculators.desk.measures import Measures
from calculators.desk.quantities import NAMES, change_words
from calculators.words import Message, say

HEIGHT = 118.0
LEFT, RIGHT = 22.0, 318.0
LEVEL = 66.0


def change_strip(
    quantity: Measured, found: Difference, interval: Interval, measures: Measures, description: Message
) -> Drawing:
    """Draw the change on a line with zero on it: the middle, its interval, and the band of luck."""
    smallest = found.smallest or 0.0
    low, high = min(interval.low, -smallest, 0.0), max(interval.high, smallest, 0.0)
    room = 0.08 * (high - low or 1.0)
    low, high = low - room, high + room

    def x(value: float) -> float:
        return LEFT + (value - low) / (high - low) * (RIGHT - LEFT)

    def words(value: float) -> Message:
        return change_words(quantity, value, measures)

    near, far = x(-smallest), x(smallest)
    corners = ((near, 40.0), (far, 40.0), (far, 86.0), (near, 86.0))
    at = min(max(x(found.change), 50.0), WIDTH - 50.0)
    marks: list[Mark] = [
        Path(corners, "faint", closed=True, fill="shade"),
        Label(((near + far) / 2, 102), say("too small to count on"), "middle", "faint", size=0.9),
        Path(((x(0), 34), (x(0), 92)), "line"),
        Label((x(0), 30), say("no change"), "middle", "faint", size=0.9),
        Path(((x(interval.low), LEVEL), (x(interval.high), LEVEL)), "accent", width=3),
        *(
            Path(((x(end), LEVEL - 6), (x(end), LEVEL + 6)), "accent")
            for end in (interval.low, interval.high)
        ),
        Circle((x(found.change), LEVEL), 5, "accent", "accent"),
        Label((at, LEVEL - 12), words(found.change), "middle", "accent", bold=True),
        Label((LEFT - 12, 15), NAMES[quantity], bold=True),
    ]
    title = say("How the cue changed it, with give or take. Grey: what these throws may miss.")
    return Drawing(title, description, WIDTH, HEIGHT, tuple(marks), TEXT_SIZE)

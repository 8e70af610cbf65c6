"""The movement of one pitch by distance, here and at sea level, as bars."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from calculators.desk.drawing import Drawing, Ink, Label, Mark, Path
from calculators.desk.flight_figures import TEXT_SIZE, WIDTH
from calculators.desk.measures import Measures
from calculators.words import Message, say

BAR_LEFT, LONGEST = 62.0, 166.0
ROW_HEIGHT, BAR_HEIGHT = 50.0, 12.0
FULL: tuple[Ink, Ink] = ("accent", "accent")
OPEN: tuple[Ink, Ink] = ("line", "paper")


@dataclass(frozen=True)
class Distance:
    """Movement from one distance: rubber to plate, movement here and at sea level [m]."""

    mound: float
    here: float
    at_sea: float


def bars(distances: Sequence[Distance], measures: Measures, description: Message) -> Drawing:
    """Draw a pair of bars for each distance: a full one here, an open one at sea level."""
    most = max(max(each.here, each.at_sea) for each in distances) or 1.0
    marks: list[Mark] = []
    for index, each in enumerate(distances):
        level = 14 + index * ROW_HEIGHT
        marks.append(Label((10, level + 17), measures.far(each.mound)))
        for row, (value, full) in enumerate(((each.here, True), (each.at_sea, False))):
            top = level + row * (BAR_HEIGHT + 4)
            end = BAR_LEFT + LONGEST * value / most
            corners = (
                (BAR_LEFT, top),
                (end, top),
                (end, top + BAR_HEIGHT),
                (BAR_LEFT, top + BAR_HEIGHT),
            )
            line, fill = FULL if full else OPEN
            marks.append(Path(corners, line, closed=True, fill=fill, width=1.4))
            amount = measures.small(value)
            words = say("{amount} here", amount=amount) if full else say("{amount} at the sea", amount=amount)
            marks.append(Label((end + 6, top + 11), words, bold=full))
    height = 14 + len(distances) * ROW_HEIGHT
    return Drawing(
        say("Movement by spin from each distance"), description, WIDTH, height, tuple(marks), TEXT_SIZE
    )

"""The picture of a practice: its parts in order, and how much of each is breaking balls."""

from __future__ import annotations

from collections.abc import Sequence

from calculators.desk.drawing import Drawing, Label, Mark, Path
from calculators.desk.flight_figures import TEXT_SIZE, WIDTH
from calculators.words import Message, say, say_count

LEFT, RIGHT = 14.0, 326.0
ROW_HEIGHT = 44.0
BAR_HEIGHT = 13.0


def plan_bars(parts: Sequence[tuple[Message, int, int]], description: Message) -> Drawing:
    """Draw a bar for each part: its name, all its throws, and, filled, the breaking balls among them."""
    longest = max(throws for _, throws, _ in parts)
    per_throw = (RIGHT - LEFT) / longest
    marks: list[Mark] = []
    for index, (name, throws, breaking) in enumerate(parts):
        level = 20 + index * ROW_HEIGHT
        marks.append(Label((LEFT, level), name, bold=True))
        counted = say_count("{count} throw", "{count} throws", throws)
        marks.append(Label((RIGHT, level), counted, "end", "faint"))
        marks.append(_bar(throws * per_throw, level + 7, filled=False))
        if breaking:
            marks.append(_bar(breaking * per_throw, level + 7, filled=True))
    height = 14 + len(parts) * ROW_HEIGHT
    title = say("The practice in order. Filled: breaking balls. Open: all the other throws.")
    return Drawing(title, description, WIDTH, height, tuple(marks), TEXT_SIZE)


def _bar(length: float, top: float, filled: bool) -> Path:
    corners = (
        (LEFT, top),
        (LEFT + length, top),
        (LEFT + length, top + BAR_HEIGHT),
        (LEFT, top + BAR_HEIGHT),
    )
    if filled:
        return Path(corners, "accent", closed=True, fill="accent", width=1.4)
    return Path(corners, "strong", closed=True, fill="paper", width=1.4)

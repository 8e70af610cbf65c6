"""The picture of ranked cues: a bar each, as long as the steps nearer to the target that it should bring."""

from __future__ import annotations

from collections.abc import Sequence

from calculators.desk.drawing import Drawing, Label, Mark, Path
from calculators.desk.flight_figures import TEXT_SIZE, WIDTH
from calculators.words import Message, number, say

LEFT, RIGHT = 14.0, 284.0
ROW_HEIGHT = 36.0
BAR_HEIGHT = 9.0


def offer_bars(offers: Sequence[tuple[str, float]], description: Message) -> Drawing:
    """Draw the cues and their scores [steps], in the order given; there is at least one above 0."""
    longest = max(score for _, score in offers)
    marks: list[Mark] = []
    for index, (name, score) in enumerate(offers):
        level = 20 + index * ROW_HEIGHT
        end = LEFT + (RIGHT - LEFT) * max(score, 0.0) / longest
        under = level + 6 + BAR_HEIGHT
        corners = ((LEFT, level + 6), (end, level + 6), (end, under), (LEFT, under))
        marks.append(Label((LEFT, level), say("{name}", name=name), bold=index == 0))
        marks.append(
            Path(corners, "accent", closed=True, fill="accent" if index == 0 else "paper", width=1.6)
        )
        steps = say("{steps} steps", steps=number(score, 1))
        marks.append(Label((min(end + 6, WIDTH - 52), under), steps, ink="faint", size=0.9))
    height = 20 + len(offers) * ROW_HEIGHT
    title = say("Steps nearer to the target that each should bring. Ten throws can show about one.")
    return Drawing(title, description, WIDTH, height, tuple(marks), TEXT_SIZE)

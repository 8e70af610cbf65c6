"""A picture of the spin found: where the ball was moved, and how much of the spin did it."""

from __future__ import annotations

from calculators.desk.drawing import Circle, Drawing, Label, Mark, Path, Point
from calculators.desk.flight_figures import TEXT_SIZE, WIDTH
from calculators.desk.measures import Measures
from calculators.physics.movement import Movement
from calculators.words import Message, number, say

CENTRE: Point = (170.0, 96.0)
LONGEST = 66.0
BAR_LEFT, BAR_RIGHT = 20.0, 320.0
BAR_TOP, BAR_HEIGHT = 236.0, 16.0


def movement_figure(
    moved: Movement[float],
    clock: str,
    left_handed: bool,
    share: float | None,
    measures: Measures,
    description: Message,
) -> Drawing:
    """Draw the movement as the pitcher sees it, and below it the active share, if known, as a bar."""
    scale = LONGEST / max(moved.amount, 1e-6)
    end = (CENTRE[0] - scale * moved.across, CENTRE[1] - scale * moved.up)
    left, right = say("← glove side"), say("arm side →")
    if left_handed:
        left, right = say("← arm side"), say("glove side →")
    off = (end[0] - CENTRE[0]) / LONGEST
    words = say("{clock}, {amount}", clock=clock, amount=measures.small(moved.amount))
    anchor_x = end[0] + (8 if off > 0.6 else -8 if off < -0.6 else 0)
    level = end[1] + (18 if end[1] > CENTRE[1] else -8)
    marks: list[Mark] = [
        Path(((CENTRE[0] - 76, CENTRE[1]), (CENTRE[0] + 76, CENTRE[1])), "faint"),
        Path(((CENTRE[0], CENTRE[1] - 76), (CENTRE[0], CENTRE[1] + 76)), "faint"),
        Circle(CENTRE, 6, "ghost", "paper", dashed=True),
        Path((CENTRE, end), "accent", arrow=True),
        _no_spin(end),
        Label(
            (anchor_x, level),
            words,
            "start" if off > 0.6 else "end" if off < -0.6 else "middle",
            bold=True,
        ),
        Label((8, 206), left, ink="faint"),
        Label((WIDTH - 8, 206), right, "end", "faint"),
    ]
    height = 216.0
    if share is not None and share <= 1:
        marks += _bar(share)
        height = BAR_TOP + BAR_HEIGHT + 30
    title = say("Where spin moved the ball, as the pitcher sees it")
    return Drawing(title, description, WIDTH, height, tuple(marks), TEXT_SIZE)


def _no_spin(end: Point) -> Label:
    """Name the middle in the quarter of the picture that the arrow leaves free."""
    to_the_right, above = end[0] > CENTRE[0], end[1] < CENTRE[1]
    x = CENTRE[0] - 10 if to_the_right else CENTRE[0] + 10
    y = CENTRE[1] + 20 if above else CENTRE[1] - 8
    return Label((x, y), say("no spin"), "end" if to_the_right else "start", "faint")


def _bar(share: float) -> list[Mark]:
    edge = BAR_LEFT + share * (BAR_RIGHT - BAR_LEFT)
    under = BAR_TOP + BAR_HEIGHT

    def box(start: float, end: float) -> tuple[Point, ...]:
        return ((start, BAR_TOP), (end, BAR_TOP), (end, under), (start, under))

    active = say("active {percent}%", percent=number(100 * share))
    return [
        Path(box(BAR_LEFT, BAR_RIGHT), "line", closed=True, fill="paper", width=1.4),
        Path(box(BAR_LEFT, edge), "accent", closed=True, fill="accent", width=1.4),
        Label((BAR_LEFT, under + 18), active, bold=True),
        Label((BAR_RIGHT, under + 18), say("all of the spin"), "end", "faint"),
    ]

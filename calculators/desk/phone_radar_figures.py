"""Pictures for a film: the striped ball with the way it is pushed, and the mark from frame to frame."""

from __future__ import annotations

import math

from calculators.desk.drawing import Circle, Drawing, Label, Mark, Path, Point
from calculators.desk.flight_figures import TEXT_SIZE, WIDTH
from calculators.desk.movement_tables import clock_words
from calculators.words import Message, number, say

CENTRE: Point = (170.0, 92.0)
BALL = 44.0


def striped_ball(clock: float, left_handed: bool) -> Drawing:
    """Draw the ball from behind the pitcher: the stripe, and the clock to which spin pushes the ball."""

    def at(hours: float, radius: float) -> Point:
        angle = hours * math.pi / 6
        return (CENTRE[0] + radius * math.sin(angle), CENTRE[1] - radius * math.cos(angle))

    shown = say("{clock}", clock=clock_words(clock))
    words = say("Spin pushes the ball to {clock}.", clock=shown)
    left, right = say("← glove side"), say("arm side →")
    if left_handed:
        left, right = say("← arm side"), say("glove side →")
    end = at(clock, BALL + 30)
    off = (end[0] - CENTRE[0]) / BALL
    anchor_x = end[0] + (6 if off > 0.6 else -6 if off < -0.6 else 0)
    level = end[1] + (16 if end[1] > CENTRE[1] else -6)
    marks: list[Mark] = [
        Circle(CENTRE, BALL, "line", "paper"),
        Path((at(clock, BALL), at(clock + 6, BALL)), "seam", width=7),
        Path((at(clock, BALL + 4), end), "strong", arrow=True),
        Label(
            (anchor_x, level), shown, "start" if off > 0.6 else "end" if off < -0.6 else "middle", bold=True
        ),
        Label((8, 188), left, ink="faint"),
        Label((WIDTH - 8, 188), right, "end", "faint"),
    ]
    title = say("The stripe as the pitcher sees it, and where spin pushes the ball")
    return Drawing(title, words, WIDTH, 198, tuple(marks), TEXT_SIZE)


SMALL = 17.0
SHOWN = 8


def frame_by_frame(frames_a_turn: float, description: Message) -> Drawing:
    """Draw the mark on the ball in eight frames in a row, seen from the side of the ball."""
    step = WIDTH / SHOWN
    marks: list[Mark] = []
    for frame in range(SHOWN):
        centre = (step * (frame + 0.5), 26.0)
        angle = 2 * math.pi * frame / frames_a_turn
        dot = (centre[0] + 0.7 * SMALL * math.sin(angle), centre[1] - 0.7 * SMALL * math.cos(angle))
        marks += [
            Circle(centre, SMALL, "line", "paper"),
            Path((centre, dot), "faint"),
            Circle(dot, 4, "accent", "accent"),
            Label((centre[0], 62), say("{frame}", frame=str(frame + 1)), "middle", "faint"),
        ]
    words = say("{frames} frames to a turn", frames=number(frames_a_turn, 1))
    marks.append(Label((WIDTH / 2, 84), words, "middle"))
    return Drawing(say("The mark in eight frames in a row"), description, WIDTH, 94, tuple(marks), TEXT_SIZE)

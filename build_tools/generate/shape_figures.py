"""The drawings on the pages of shapes as HTML: the movement charts and the clock faces, for either hand."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape

from build_tools.charts.clock_face import clock_face
from build_tools.charts.movement_chart import Box, Hand, box, movement_chart, small_chart
from build_tools.generate.clocks import other_hand
from build_tools.generate.shape_rows import LEVELS
from build_tools.generate.writer import Edition
from build_tools.loading.reading import Loaded
from build_tools.schema.shape import Shape
from build_tools.shape_numbers import shape_numbers
from calculators.desk.drawing import Drawing
from calculators.desk.render_svg import svg
from calculators.words import Message, say

HANDS: tuple[Hand, ...] = ("right", "left")
_HAND_WORDS = {"right": say("right-hander"), "left": say("left-hander")}

Draw = Callable[[Sequence[Box], Hand, Message, Message], Drawing]


def index_charts(shapes: Sequence[Loaded[Shape]], edition: Edition) -> str:
    """Return the three charts of all shapes, one a level, for the list of shapes."""
    return "".join(
        _figure(shapes, level, movement_chart, edition, f"movement-{level}".replace("_", "-"))
        for level in LEVELS
    )


def page_charts(shape: Loaded[Shape], shapes: Sequence[Loaded[Shape]], edition: Edition) -> str:
    """Return the charts for a shape's own page: adults with names, the other levels small beside each other.

    A level that should not throw the shape has no chart.
    """
    highlight = shape.model.title
    targets = {one.level for one in shape_numbers(shape.model) if one.target}

    def large(boxes: Sequence[Box], hand: Hand, title: Message, description: Message) -> Drawing:
        return movement_chart(boxes, hand, title, description, highlight)

    def small(boxes: Sequence[Box], hand: Hand, title: Message, description: Message) -> Drawing:
        return small_chart(boxes, hand, title, description, highlight)

    first, *others = LEVELS
    adult = _figure(shapes, first, large, edition, "movement", highlight)
    beside = "".join(
        _figure(shapes, level, small, edition, f"movement-{level}".replace("_", "-"), highlight)
        for level in others
        if level in targets
    )
    return f'{adult}<div class="small-charts">{beside}</div>' if beside else adult


def _figure(
    shapes: Sequence[Loaded[Shape]],
    level: str,
    draw: Draw,
    edition: Edition,
    ident: str,
    highlight: str = "",
) -> str:
    speak = edition.speak
    boxes = [
        box(one.model.title, numbers, one.model.reference)
        for one in shapes
        for numbers in shape_numbers(one.model)
        if numbers.level == level and numbers.target
    ]
    level_words = LEVELS[level]
    described = (
        say(
            "Boxes on a chart of inches, seen from behind. {shape} stands out. The table has its numbers.",
            shape=highlight,
        )
        if highlight
        else say("One box a shape on a chart of inches, seen from behind. The table has the numbers.")
    )
    drawn = {
        hand: svg(
            draw(
                boxes,
                hand,
                say(
                    "How far the spin moves the ball: {level}, {hand}",
                    level=level_words,
                    hand=_HAND_WORDS[hand],
                ),
                described,
            ),
            edition.catalogue,
            f"{ident}-{hand}",
        )
        for hand in HANDS
    }
    return (
        f'<figure class="chart"><figcaption>{escape(speak(level_words))}</figcaption>'
        f'<div class="for-right">{drawn["right"]}</div><div class="for-left">{drawn["left"]}</div></figure>'
    )


def clock_figure(shape: Shape, edition: Edition) -> str:
    """Return the clock face of a shape, for either hand."""
    drawn = {}
    for hand in HANDS:
        ends = shape.clock if hand == "right" else tuple(other_hand(clock) for clock in reversed(shape.clock))
        title = say(
            "The spin's clock, {first} to {last}, {hand}", first=ends[0], last=ends[1], hand=_HAND_WORDS[hand]
        )
        described = say("A clock face seen from behind the pitcher, with that part of its edge marked.")
        drawn[hand] = svg(clock_face(shape, hand, title, described), edition.catalogue, f"clock-{hand}")
    caption = (
        say("The way the spin pushes the ball, seen from behind the pitcher. 6:00 is straight down.")
        if shape.clock_steady
        else say("Where the push may point, seen from behind. It wanders, and it is weak.")
    )
    return (
        f'<figure class="chart clock-face"><div class="for-right">{drawn["right"]}</div>'
        f'<div class="for-left">{drawn["left"]}</div>'
        f"<figcaption>{escape(edition.speak(caption))}</figcaption></figure>"
    )

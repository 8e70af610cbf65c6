"""A pitch as the catcher sees it: the zone, where the ball crosses, and where it would have without spin."""

from __future__ import annotations

from calculators.desk.drawing import Circle, Drawing, Label, Mark, Path, Point
from calculators.desk.flight_figures import LINE_HEIGHT, PLATE_HALF_WIDTH, TEXT_SIZE, WIDTH, Track, Zone
from calculators.desk.measures import Measures
from calculators.desk.movement_words import down_or_up, glove_or_arm_side
from calculators.physics.ball import RULE_BOOK_BALL
from calculators.physics.units import INCH
from calculators.words import Message, say

TALLEST = 290.0
UNITS_PER_INCH = 5.3
ROOM_FOR_WORDS = 92.0


def catcher_view(
    pitch: Track,
    companion: Track,
    zone: Zone,
    glove_side_right: bool,
    measures: Measures,
    description: Message,
) -> Drawing:
    """Draw where a pitch and its spinless companion cross the plate, in true proportions.

    glove_side_right: whether the pitcher's glove side is on the catcher's right, as a right-hander's is.
    """
    (x1, z1), (x0, z0) = pitch.crossing, companion.crossing
    top = max(zone.top, z0, z1) + 8 * INCH
    bottom = min(0.0, z0 - 5 * INCH, z1 - 5 * INCH)
    aside = max(abs(x0), abs(x1), 1 * INCH)
    per_metre = min(UNITS_PER_INCH / INCH, TALLEST / (top - bottom), (WIDTH / 2 - ROOM_FOR_WORDS) / aside)

    def place(x: float, z: float) -> Point:
        return (WIDTH / 2 + x * per_metre, (top - z) * per_metre)

    there, here, ground = place(x0, z0), place(x1, z1), place(0, 0)[1]
    left, right = place(-PLATE_HALF_WIDTH, 0)[0], place(PLATE_HALF_WIDTH, 0)[0]
    roof, floor = place(0, zone.top)[1], place(0, zone.bottom)[1]
    zone_end = right if x1 >= x0 else left
    radius = RULE_BOOK_BALL.radius * per_metre
    height = place(0, bottom)[1] + 2 * LINE_HEIGHT
    right_side, left_side = say("glove side →"), say("← arm side")
    if not glove_side_right:
        right_side, left_side = say("arm side →"), say("← glove side")
    marks: list[Mark] = [
        Path(((0, ground), (WIDTH, ground)), "faint"),
        Path(((left, ground), (right, ground)), "strong"),
        Path(((left, roof), (right, roof), (right, floor), (left, floor)), closed=True),
        Label((zone_end, floor + LINE_HEIGHT - 2), say("zone"), "end" if x1 >= x0 else "start", "faint"),
        Label(((left + right) / 2, ground - 6), say("plate"), "middle", "faint"),
        Label((8, height - 8), left_side, ink="faint"),
        Label((WIDTH - 8, height - 8), right_side, "end", "faint"),
        *_legs(there, here, radius, measures, (x1 - x0 if glove_side_right else x0 - x1, z1 - z0)),
        Circle(there, radius, "ghost", "paper", dashed=True),
        Circle(here, radius, pitch.ink, pitch.ink),
        *_names(there, here, radius, pitch, companion),
    ]
    return Drawing(say("As the catcher sees it"), description, WIDTH, height, tuple(marks), TEXT_SIZE)


def _legs(
    there: Point, here: Point, radius: float, measures: Measures, moved: tuple[float, float]
) -> list[Mark]:
    """Draw the way from the spinless ball to the pitch: one leg up or down, one to the side.

    moved: movement toward the glove side and up [m].
    """
    glove, up = moved
    to_the_right, downward = here[0] >= there[0], here[1] >= there[1]
    aside, upright = abs(here[0] - there[0]), abs(here[1] - there[1])
    has_side_leg = measures.whole(glove) > 0
    marks: list[Mark] = []
    if measures.whole(up):
        long_leg = upright > 4 * radius
        stop = 0.0 if has_side_leg else radius
        end = (there[0], here[1] - stop if downward else here[1] + stop)
        clear = 7 if long_leg else radius + 5
        beside = there[0] - clear if to_the_right else there[0] + clear
        marks += [
            Path((there, end), "line", arrow=long_leg),
            Label(
                (beside, (there[1] + here[1]) / 2 + 4),
                down_or_up(up, measures, 0),
                "end" if to_the_right else "start",
            ),
        ]
    if has_side_leg:
        touch = (here[0] - radius if to_the_right else here[0] + radius, here[1])
        level = here[1] + radius + LINE_HEIGHT if downward else here[1] - radius - 6
        marks += [
            Path(((there[0], here[1]), touch), "line", arrow=aside > 4 * radius),
            Label(((there[0] + here[0]) / 2, level), glove_or_arm_side(glove, measures, 0), "middle"),
        ]
    return marks


def _names(there: Point, here: Point, radius: float, pitch: Track, companion: Track) -> list[Mark]:
    """Name the spinless ball on its far side, the pitch beyond where it came from."""
    to_the_right = here[0] >= there[0]
    above = there[1] <= here[1]
    beside = here[0] + radius + 5 if to_the_right else here[0] - radius - 5
    level = there[1] - radius - 5 if above else there[1] + radius + LINE_HEIGHT
    return [
        Label((there[0], level), companion.name, "middle", "ghost"),
        Label((beside, here[1] + 4), pitch.name, "start" if to_the_right else "end", "accent"),
    ]

"""Movement put into a coach's words: down or up, glove side or arm side, in whole inches."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.desk.measures import Measures
from calculators.words import Message, number, say


@dataclass(frozen=True)
class Moved:
    """Movement as a pitcher counts it [m]: `glove` toward the glove side, `up`; both signed."""

    glove: float
    up: float


def movement_sentence(moved: Moved, measures: Measures) -> Message:
    """Say what spin does to the pitch in one sentence; what rounds to nothing is not counted."""
    ups, sides = measures.spelled(moved.up), measures.spelled(moved.glove)
    moves_up_or_down = measures.whole(moved.up) > 0
    if measures.whole(moved.glove) == 0:
        if not moves_up_or_down:
            return say("It flies like a pitch without spin.")
        if moved.up < 0:
            return say("It drops {ups} more than a spinless pitch and stays on its line.", ups=ups)
        return say("It drops {ups} less than a spinless pitch and stays on its line.", ups=ups)
    if moved.glove > 0:
        if not moves_up_or_down:
            return say("It drops like a spinless pitch and moves {sides} to the glove side.", sides=sides)
        if moved.up < 0:
            return say(
                "It drops {ups} more than a spinless pitch and moves {sides} to the glove side.",
                ups=ups,
                sides=sides,
            )
        return say(
            "It drops {ups} less than a spinless pitch and moves {sides} to the glove side.",
            ups=ups,
            sides=sides,
        )
    if not moves_up_or_down:
        return say("It drops like a spinless pitch and moves {sides} to the arm side.", sides=sides)
    if moved.up < 0:
        return say(
            "It drops {ups} more than a spinless pitch and moves {sides} to the arm side.",
            ups=ups,
            sides=sides,
        )
    return say(
        "It drops {ups} less than a spinless pitch and moves {sides} to the arm side.", ups=ups, sides=sides
    )


def down_or_up(up: float, measures: Measures, decimals: int = 1) -> Message:
    """Say a movement up or down in short: "14.1 in down"."""
    amount = measures.small(abs(up), decimals)
    return say("{amount} up", amount=amount) if up > 0 else say("{amount} down", amount=amount)


def glove_or_arm_side(glove: float, measures: Measures, decimals: int = 1) -> Message:
    """Say a movement to a side in short: "9.0 in to the glove side"."""
    amount = measures.small(abs(glove), decimals)
    if glove >= 0:
        return say("{amount} to the glove side", amount=amount)
    return say("{amount} to the arm side", amount=amount)


def between_down_and_up(low: float, high: float, measures: Measures) -> Message:
    """Say a range of movement up or down: "12 to 16 in down", or across nothing "1 in up to 2 in down"."""
    low, high = _counted(low, measures), _counted(high, measures)
    if high <= 0 or low >= 0:
        near, far = sorted((abs(low), abs(high)))
        span = say("{near} to {far}", near=_bare(near, measures), far=measures.small(far))
        return say("{span} down", span=span) if low < 0 else say("{span} up", span=span)
    return say("{up} up to {down} down", up=measures.small(high), down=measures.small(-low))


def between_sides(low: float, high: float, measures: Measures) -> Message:
    """Say a range of movement to a side: "7 to 11 in to the glove side"."""
    low, high = _counted(low, measures), _counted(high, measures)
    if high <= 0 or low >= 0:
        near, far = sorted((abs(low), abs(high)))
        span = say("{near} to {far}", near=_bare(near, measures), far=measures.small(far))
        if high > 0:
            return say("{span} to the glove side", span=span)
        return say("{span} to the arm side", span=span)
    return say(
        "{arm} to the arm side up to {glove} to the glove side",
        arm=measures.small(-low),
        glove=measures.small(high),
    )


def _counted(metres: float, measures: Measures) -> float:
    return metres if measures.whole(metres) else 0.0


def _bare(metres: float, measures: Measures) -> str:
    return number(metres / measures.small_unit)

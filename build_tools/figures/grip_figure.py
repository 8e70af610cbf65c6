"""The figures of a grip: three views, for either hand, drawn from the entry's hold."""

from __future__ import annotations

import functools
import gettext
import re
from collections.abc import Mapping
from dataclasses import dataclass
from xml.sax.saxutils import escape

from build_tools.figures.body import body
from build_tools.figures.drawing import (
    NAMESPACES,
    WIDTH,
    Sheet,
    hand_and_ball,
    note,
    spin_dial,
    text,
    thumb_dial,
)
from build_tools.figures.labels import Note, arrange, wrap
from build_tools.figures.pose import Pose, clock_deg, pose
from build_tools.figures.scene import CAMERAS, Scene, View, scene
from build_tools.figures.seam import RADIUS
from build_tools.figures.vectors import X, apply, mul, turn
from build_tools.figures.wording import (
    ThrowingHand,
    caption,
    clock_disagrees,
    daylight_label,
    description,
    index_label,
    middle_label,
    middle_work,
    ring_label,
    spin_label,
    spoken_clock,
    thumb_clock,
    thumb_clocks,
    title,
)
from build_tools.schema.grip import Grip, Hold
from calculators.words import Catalogue, Message, say, speak

_CENTERS: dict[View, tuple[float, float]] = {
    "pitcher": (152.0, 130.0),
    "side": (118.0, 130.0),
    "catcher": (160.0, 130.0),
}
_HEIGHT = 298.0


class HoldError(ValueError):
    """A hold that contradicts its own entry; the message says what to mend."""


@dataclass(frozen=True)
class GripFigure:
    """One view of a grip: the drawing, the line under it, and the same thing in words."""

    view: View
    svg: str
    caption: Message
    description: Message


def grip_figures(
    grip: Grip, hand: ThrowingHand, catalogue: Catalogue | None = None
) -> tuple[GripFigure, ...]:
    """Draw a grip from its three sides.

    catalogue: the language of the words inside the drawings; English when left out.
    Returns no figure when the entry has no hold. Raises HoldError when the hold's thumb lies outside
    the range the entry tells.
    """
    hold = grip.hold
    if hold is None:
        return ()
    if clock_disagrees(grip, hold):
        raise HoldError(
            f"{grip.title}: the hold's thumb clock {hold.thumb.clock} lies outside choices.thumb. "
            "Make the two agree."
        )
    words = catalogue or gettext.NullTranslations()
    posed, scenes = drawn_hold(hold)
    return tuple(_figure(grip, hold, posed, view, scenes[view], hand, words) for view in CAMERAS)


@functools.lru_cache(maxsize=64)
def drawn_hold(hold: Hold) -> tuple[Pose, Mapping[View, Scene]]:
    """Work a hold out once for both hands and every language."""
    posed = pose(hold)
    flesh = body(posed)
    return posed, {view: scene(flesh, posed.ball, view) for view in CAMERAS}


def _figure(
    grip: Grip, hold: Hold, posed: Pose, view: View, drawn: Scene, hand: ThrowingHand, words: Catalogue
) -> GripFigure:
    sheet = Sheet(_CENTERS[view], hand == "left", _HEIGHT)
    name = "-".join((re.sub(r"[^a-z]+", "-", grip.title.lower()).strip("-"), hand, view))
    top = min(0.0, min(sheet.at(point)[1] for line in drawn.outlines for point in line) - 12.0)
    told = description(grip, hold, posed.ball, hand, view)
    notes = [(one, speak(one.text, words)) for one in _notes(grip, hold, posed, drawn, sheet, view)]
    extras = _dials(grip, hold, hand, view, words)
    svg = "".join(
        (
            f'<svg {NAMESPACES} class="drawing grip-figure" role="img" '
            f'viewBox="0 {top:g} {WIDTH:g} {_HEIGHT - top:g}" aria-labelledby="{name}-title {name}-words">',
            f'<title id="{name}-title">{escape(speak(title(grip, hand, view), words))}</title>',
            f'<desc id="{name}-words">{escape(speak(told, words))}</desc>',
            hand_and_ball(drawn, sheet, name),
            "".join(note(label) for label in arrange(notes, 22.0 + top, _HEIGHT - 10.0)),
            extras,
            "</svg>",
        )
    )
    return GripFigure(view, svg, caption(hold, view), told)


def _notes(grip: Grip, hold: Hold, posed: Pose, drawn: Scene, sheet: Sheet, view: View) -> list[Note]:
    """Return the labels of one view; columns change sides with the hand."""

    def put(
        message: Message, point: str | tuple[float, float], right: bool, height: float, columns: int = 14
    ) -> Note:
        at = sheet.at(drawn.points[point] if isinstance(point, str) else point)
        return Note(message, at, "right" if right != sheet.mirrored else "left", height, columns)

    if view == "pitcher":
        return [
            put(index_label(grip, hold), "index last", False, 60.0),
            put(middle_label(hold, posed.ball), "middle last", True, 60.0),
            put(ring_label(hold, posed.ball), "ring second", True, 158.0, 11),
        ]
    if view == "side":
        bent = (
            [put(index_label(grip, hold), "index second", False, 26.0)] if hold.index.bend != "flat" else []
        )
        gap = apply(CAMERAS[view], mul(turn(posed.frame.back, X, 24.0), RADIUS + hold.daylight_mm * 0.6))[:2]
        return [
            *bent,
            put(say("middle finger"), "middle tip", False, 80.0 if bent else 40.0, 7 if bent else 14),
            put(
                thumb_clock(grip.choices.thumb, "left" if sheet.mirrored else "right"),
                "thumb tip",
                False,
                230.0,
                11,
            ),
            put(daylight_label(hold), gap, True, 150.0),
        ]
    return [
        put(middle_work(hold), "middle last", False, 40.0),
        put(say("index finger"), "index last", True, 40.0),
        put(say("thumb"), "thumb last", True, 230.0),
    ]


def _dials(grip: Grip, hold: Hold, hand: ThrowingHand, view: View, words: Catalogue) -> str:
    left_column, right_column = 31.0, WIDTH - 44.0
    if view == "pitcher":
        choice = grip.choices.thumb
        x = left_column if hand == "right" else WIDTH - left_column
        first, last = (clock_deg(clock) for clock in thumb_clocks(choice, hand))
        lines = wrap(speak(thumb_clock(choice, hand), words), 12)
        anchor, edge = ("start", 6.0) if hand == "right" else ("end", WIDTH - 6.0)
        return thumb_dial((x, 238.0), 20.0, first, last) + text(lines, edge, 274.0, anchor)
    if view == "side" and hold.spin_clock is not None:
        x = right_column if hand == "right" else WIDTH - right_column
        lines = wrap(speak(spin_label(hold.spin_clock, hand), words), 10)
        anchor, edge = ("end", WIDTH - 6.0) if hand == "right" else ("start", 6.0)
        dial = spin_dial((x, 30.0), 21.0, clock_deg(spoken_clock(hold.spin_clock, hand)))
        return dial + text(lines, edge, 68.0, anchor)
    return ""

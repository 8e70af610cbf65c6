"""From an entry's hold to a posed hand and a placed ball, both in the right-hander's hand frame."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from build_tools.figures.hand import (
    BUILDS,
    FINGERS,
    Digit,
    Frame,
    Joints,
    Touch,
    beside,
    palm_for,
    reach,
    straighten,
    tuck,
)
from build_tools.figures.seam import Placed, lay
from build_tools.figures.vectors import Vec
from build_tools.schema.grip import Bend, Hold, Lie, Pad, SeamLie, ThumbPad

SEAM_PLACES: Mapping[Lie, tuple[float, float]] = {
    "horseshoe-wall": (math.pi / 2.0, 0.0),
    "across-horseshoe": (math.pi / 2.0, 90.0),
    "rails": (0.0, 0.0),
    "one-seam": (1.5 * math.pi, 0.0),
}
"""For each named lie: the seam's parameter at the place the entry gives, and its heading there."""

PITCH: Mapping[Bend, float] = {
    "flat": 8.0,
    "curled": 30.0,
    "pad-press": 52.0,
    "nail-tip": 78.0,
    "high-knuckle": 98.0,
    "first-knuckle": 158.0,
}
"""How steeply the last bone meets the ball for each bend, degrees (*estimate*, for the drawing)."""

LIFTED = (24.0, 10.0, 6.0)
"""Bends of a finger held off the ball at its three joints, degrees."""
_LITTLE_BESIDE_RING: Vec = (9.0, -13.0, 8.0)
_TILT = 22.0
_STRETCH = 0.95


@dataclass(frozen=True)
class Pose:
    """A hand on a ball."""

    frame: Frame
    joints: Mapping[Digit, Joints]
    ball: Placed


def clock_deg(clock: str) -> float:
    """Return a clock time as an angle from 12:00, clockwise as the pitcher sees it, 0 to 360."""
    hours, minutes = clock.split(":")
    return (int(hours) % 12) * 30.0 + int(minutes) * 0.5


def placed_ball(lie: SeamLie) -> Placed:
    """Return the ball as an entry lays it."""
    at, heading = SEAM_PLACES[lie.base]
    return lay(at, lie.across_deg, lie.over_deg, heading + lie.turn_deg)


def _touch(pad: Pad) -> Touch:
    return Touch(pad.across_deg, pad.over_deg, PITCH[pad.bend])


def _thumb_touch(pad: ThumbPad) -> Touch:
    pitch = {"flat": 5.0, "curled": 28.0, "tucked": 40.0}[pad.bend]
    return Touch(clock_deg(pad.clock), pad.over_deg, pitch)


def pose(hold: Hold) -> Pose:
    """Pose the hand: the middle finger and the daylight place the palm, the others follow."""
    middle = _touch(hold.middle)
    frame = palm_for(middle, hold.daylight_mm, _TILT, _STRETCH, hold.middle.across_deg / 2.0)
    joints: dict[Digit, Joints] = {}
    pads: dict[Digit, Pad] = {
        "index": hold.index,
        "middle": hold.middle,
        "ring": hold.ring,
        "little": hold.little,
    }
    for digit in FINGERS:
        pad, build, root = pads[digit], BUILDS[digit], frame.root(digit)
        if pad.bend == "lifted":
            joints[digit] = straighten(frame, digit, LIFTED)
        elif pad.bend != "tucked":
            joints[digit] = reach(build, root, _touch(pad))
        elif digit == "little" and pads["ring"].bend == "tucked":
            joints[digit] = beside(build, root, joints["ring"], _LITTLE_BESIDE_RING)
        else:
            joints[digit] = tuck(build, root, pad.across_deg, 0.0, 60.0)
    joints["thumb"] = reach(BUILDS["thumb"], frame.root("thumb"), _thumb_touch(hold.thumb))
    return Pose(frame, joints, placed_ball(hold.seam))

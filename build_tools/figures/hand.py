"""A grown hand's bones, and how a digit reaches a ball.

Lengths and girths are round figures for an adult (*estimate*, chosen so that a drawn hand looks right
beside a ball of the rule book's size). Millimetres, in the hand frame of `vectors`.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from build_tools.figures.seam import RADIUS, on_ball
from build_tools.figures.vectors import (
    Vec,
    across,
    add,
    along,
    cross,
    dot,
    length,
    lerp,
    mul,
    sub,
    turn,
    unit,
)

Digit = Literal["thumb", "index", "middle", "ring", "little"]
FINGERS: tuple[Digit, ...] = ("index", "middle", "ring", "little")
DIGITS: tuple[Digit, ...] = ("thumb", *FINGERS)
Joints = tuple[Vec, Vec, Vec, Vec]
"""First knuckle, second, last joint, and the tip of the flesh."""


@dataclass(frozen=True)
class Build:
    """One digit: its three bones, joint to joint and the last to the tip; its place; its thickness."""

    bones: tuple[float, float, float]
    root: tuple[float, float, float]
    """First joint from the middle finger's knuckle: toward the thumb, the fingertips, the back."""
    girth: tuple[float, float, float, float]
    """Half-thickness at the first joint, the second, the last, and of the round of the tip."""


BUILDS: dict[Digit, Build] = {
    "thumb": Build((45.0, 33.0, 29.0), (23.0, -72.0, -16.0), (14.5, 11.4, 10.2, 7.4)),
    "index": Build((41.0, 25.0, 23.5), (21.0, -3.0, -1.5), (11.0, 9.5, 8.3, 6.6)),
    "middle": Build((45.0, 29.0, 24.5), (0.0, 0.0, 0.0), (11.3, 9.7, 8.5, 6.8)),
    "ring": Build((41.0, 27.0, 24.5), (-19.5, -5.0, -2.0), (10.6, 9.0, 7.9, 6.3)),
    "little": Build((33.0, 19.5, 21.5), (-36.0, -14.0, -6.0), (9.8, 7.9, 7.0, 5.6)),
}
PALM_HALF = 12.5
"""From the middle of the palm's thickness to its skin."""

_PAD_SHARE = 0.56
"""Where along the last bone the pad's middle lies."""
_PRESS = 0.86
"""A pad's flesh gives: its middle lies this share of its half-thickness off the ball."""


@dataclass(frozen=True)
class Frame:
    """The palm's own directions: toward the fingertips, the back of the hand, the thumb side."""

    knuckle: Vec
    tips: Vec
    back: Vec
    thumb: Vec

    def place(self, toward_thumb: float, toward_tips: float, toward_back: float) -> Vec:
        """Return the point so many millimetres from the middle finger's knuckle."""
        out = along(self.knuckle, self.thumb, toward_thumb)
        return along(along(out, self.tips, toward_tips), self.back, toward_back)

    def root(self, digit: Digit) -> Vec:
        """Return where a digit's first joint is."""
        return self.place(*BUILDS[digit].root)


@dataclass(frozen=True)
class Touch:
    """A pad or a tip on the ball."""

    across_deg: float
    over_deg: float
    pitch_deg: float
    """How steeply the last bone meets the ball: 0 lies flat, 90 stands on its tip, more folds under."""
    swing_deg: float = 0.0
    """Turn of the last bone on the ball's surface, toward the little finger."""
    lean: float = 0.5
    """How far the bent finger leans out sideways: 0 stays upright, 1 points straight out from the ball."""


def _bend_between(start: Vec, end: Vec, bones: tuple[float, float], outward: Vec) -> Vec:
    """Return the joint between two bones that reach from start to end, bent toward `outward`."""
    first, second = bones
    gap = sub(end, start)
    span = length(gap)
    if span >= first + second:
        return lerp(start, end, first / (first + second))
    foot = (span * span + first * first - second * second) / (2.0 * span)
    height = math.sqrt(max(first * first - foot * foot, 0.0))
    towards = mul(gap, 1.0 / span)
    return along(along(start, towards, foot), unit(across(outward, towards)), height)


def reach(build: Build, root: Vec, touch: Touch) -> Joints:
    """Return the joints of a digit that touches the ball as told."""
    normal = on_ball(touch.across_deg, touch.over_deg)
    if touch.pitch_deg < 45.0:
        depth, behind = (build.girth[3] + 0.6) * _PRESS, _PAD_SHARE * build.bones[2]
    elif touch.pitch_deg < 120.0:
        depth, behind = build.girth[3] * 0.9, build.bones[2] - build.girth[3]
    else:
        depth, behind = build.girth[2] * 0.92, 0.3 * build.bones[2]
    contact = mul(normal, RADIUS + depth)
    ahead = turn(unit(across(sub(contact, root), normal)), normal, -touch.swing_deg)
    last = turn(ahead, cross(ahead, normal), -touch.pitch_deg)
    far = along(contact, last, -behind)
    middle = lerp(root, far, 0.5)
    outward = (middle[0] * touch.lean, middle[1], middle[2])
    knuckle = _bend_between(root, far, build.bones[:2], outward)
    return root, knuckle, far, along(far, last, build.bones[2])


def straighten(
    frame: Frame, digit: Digit, bends: tuple[float, float, float], splay_deg: float = 0.0
) -> Joints:
    """Return the joints of a finger off the ball, bent by the given degrees at its three joints."""
    axis = turn(frame.thumb, frame.back, splay_deg)
    heading = turn(frame.tips, frame.back, splay_deg)
    joints = [frame.root(digit)]
    for bone, bend in zip(BUILDS[digit].bones, bends, strict=True):
        heading = turn(heading, axis, bend)
        joints.append(along(joints[-1], heading, bone))
    return joints[0], joints[1], joints[2], joints[3]


def tuck(build: Build, root: Vec, across_deg: float, slant_deg: float, last_bend_deg: float) -> Joints:
    """Return the joints of a folded finger whose middle bone lies against the ball's side.

    across_deg: the clock, as an angle, that the bone lies against. slant_deg: how far the bone
    points away from the palm rather than down the ball. The first bone's length settles the rest.
    """
    half = build.bones[1] / 2.0
    rest = RADIUS + 0.97 * (build.girth[1] + build.girth[2]) / 2.0

    def bone(over_deg: float) -> tuple[Vec, Vec, Vec, Vec]:
        normal = on_ball(across_deg, over_deg)
        down = unit(sub(on_ball(across_deg + 0.01, over_deg), normal))
        ahead = unit(sub(on_ball(across_deg, over_deg + 0.01), normal))
        lie = turn(down, normal, slant_deg)
        at = mul(normal, rest)
        return along(at, lie, -half), along(at, lie, half), lie, ahead

    near, far = -75.0, 60.0
    for _ in range(40):
        half_way = (near + far) / 2.0
        if length(sub(bone(half_way)[0], root)) > build.bones[0]:
            far = half_way
        else:
            near = half_way
    knuckle, last, lie, ahead = bone(near)
    home = unit(across(mul(ahead, -1.0), lie))
    a = math.radians(last_bend_deg)
    end = add(mul(lie, math.cos(a)), mul(home, math.sin(a)))
    return root, knuckle, last, along(last, end, build.bones[2])


def beside(build: Build, root: Vec, neighbor: Joints, offset: Vec) -> Joints:
    """Return the joints of a finger folded alongside its neighbor.

    offset: from the neighbor's second knuckle to its own, as nearly as its first bone allows.
    """
    joints = [root]
    heading = sub(add(neighbor[1], offset), root)
    lies = (heading, sub(neighbor[2], neighbor[1]), sub(neighbor[3], neighbor[2]))
    for bone, lie in zip(build.bones, lies, strict=True):
        joints.append(along(joints[-1], unit(lie), bone))
    return joints[0], joints[1], joints[2], joints[3]


def palm_for(touch: Touch, daylight: float, tilt_deg: float, stretch: float, knuckle_x: float) -> Frame:
    """Return where the palm is when the middle finger touches the ball as told.

    daylight: millimetres between palm and ball. tilt_deg: lean of the hand over the ball.
    stretch: share of its full reach that the middle finger uses. knuckle_x: place of its knuckle.
    """
    tilt = math.radians(tilt_deg)
    tips: Vec = (0.0, math.cos(tilt), -math.sin(tilt))
    back: Vec = (0.0, math.sin(tilt), math.cos(tilt))
    build = BUILDS["middle"]
    level = along((knuckle_x, 0.0, 0.0), back, RADIUS + daylight + PALM_HALF)
    far = reach(build, level, touch)[2]
    span = (build.bones[0] + build.bones[1]) * stretch
    off = sub(level, far)
    b = dot(off, tips)
    slide = -b - math.sqrt(max(b * b - dot(off, off) + span * span, 0.0))
    return Frame(along(level, tips, slide), tips, back, (-1.0, 0.0, 0.0))


def stretched(joints: Sequence[Vec], build: Build) -> float:
    """Return by how many millimetres a pose asks more of a digit's bones than their length."""
    spans = [length(sub(b, a)) for a, b in itertools.pairwise(joints)]
    return max(abs(span - bone) for span, bone in zip(spans, build.bones, strict=True))

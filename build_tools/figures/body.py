"""A posed hand's flesh: digits that run on through palm and forearm, the knuckle row and the thumb's web."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from build_tools.figures.flesh import STEP, Corner, Ring, Tube, tube
from build_tools.figures.hand import BUILDS, FINGERS, Build, Digit, Joints
from build_tools.figures.pose import Pose
from build_tools.figures.vectors import Vec, X, across, along, lerp, mul, sub, turn, unit

_WRIST: Mapping[Digit, Vec] = {
    "index": (14.0, -84.0, -3.0),
    "middle": (3.0, -84.0, -1.0),
    "ring": (-9.0, -84.0, -2.0),
    "little": (-18.0, -82.0, -5.0),
}
"""Where each finger's line crosses the wrist, from the middle finger's knuckle."""
_FOREARM_SPREAD: Mapping[Digit, float] = {"index": 4.0, "middle": 1.0, "ring": -2.0, "little": -6.0}
_FOREARM = 120.0
_WRIST_BEND = 25.0


_SHARES = (0.25, 0.5, 0.75)


@dataclass(frozen=True)
class Body:
    """All the flesh there is to draw."""

    tubes: tuple[Tube, ...]

    def tube(self, name: str) -> Tube:
        """Return a tube by name. Raises StopIteration when the hand has none of that name."""
        return next(part for part in self.tubes if part.name == name)


def _digit_corners(build: Build, joints: Joints) -> list[Corner]:
    root, second, last, tip = joints
    thick = build.girth
    end = along(tip, unit(sub(tip, last)), -thick[3])
    return [
        Corner(root, thick[0] + 0.2, 12.0, True),
        Corner(lerp(root, second, 0.5), (thick[0] * 0.86 + thick[1]) * 0.49),
        Corner(second, thick[1], 6.5, True),
        Corner(lerp(second, last, 0.5), (thick[1] + thick[2]) * 0.485),
        Corner(last, thick[2], 5.0, True),
        Corner(lerp(last, end, 0.6), thick[2] * 0.99),
        Corner(end, thick[3], 0.0, True),
    ]


def _forearm(posed: Pose, digit: Digit) -> tuple[Vec, Vec]:
    """Return where a finger's line leaves the picture down the forearm, and where it crosses the wrist."""
    frame = posed.frame
    arm = turn(mul(frame.tips, -1.0), X, _WRIST_BEND)
    wrist = frame.place(*_WRIST[digit])
    return along(along(wrist, arm, _FOREARM), frame.thumb, _FOREARM_SPREAD[digit]), wrist


def _finger(posed: Pose, digit: Digit) -> Tube:
    frame, build = posed.frame, BUILDS[digit]
    elbow, wrist = _forearm(posed, digit)
    middle = lerp(wrist, frame.root(digit), 0.55)
    little = digit == "little"
    if little:
        middle = along(along(middle, frame.thumb, -5.0), frame.back, -3.0)
    corners = [
        Corner(elbow, 18.0),
        Corner(wrist, 13.5, 22.0),
        Corner(middle, 13.5 if little else 12.8, 20.0),
        *_digit_corners(build, posed.joints[digit]),
    ]
    return tube(digit, corners, frame.back, bare=4)


def _thumb(posed: Pose) -> Tube:
    build, joints = BUILDS["thumb"], posed.joints["thumb"]
    root, knuckle, last, tip = joints
    thick = build.girth
    end = along(tip, unit(sub(tip, last)), -thick[3])
    elbow, wrist = _forearm(posed, "index")
    corners = [
        Corner(elbow, 14.0),
        Corner(along(wrist, posed.frame.back, -3.0), 11.5, 20.0),
        Corner(root, thick[0], 22.0),
        Corner(lerp(root, knuckle, 0.55), thick[0] + 0.4, 8.0),
        Corner(knuckle, thick[1], 12.0, True),
        Corner(lerp(knuckle, last, 0.5), thick[1] * 0.87),
        Corner(last, thick[2], 8.0, True),
        Corner(lerp(last, end, 0.6), thick[2] * 0.98),
        Corner(end, thick[3], 0.0, True),
    ]
    made = tube("thumb", corners, mul(posed.frame.tips, -1.0), bare=3)
    facing = tuple(replace(ring, back=unit(across(ring.center, ring.ahead))) for ring in made.rings)
    return replace(made, rings=(*made.rings[: made.joints[0]], *facing[made.joints[0] :]))


def _knuckles(posed: Pose) -> Tube:
    frame = posed.frame
    corners = [
        Corner(along(frame.root(digit), frame.tips, -1.0), BUILDS[digit].girth[0] - 0.6, 6.0)
        for digit in FINGERS
    ]
    return tube("knuckles", corners, frame.back, bare=len(corners) - 1)


def _web(posed: Pose, index: Tube, thumb: Tube) -> Tube:
    high, low = thumb.joints[0], index.joints[0]
    at_thumb, at_index = thumb.rings[high - 2].center, index.rings[low - 3].center
    deep = lerp(posed.frame.root("thumb"), posed.frame.root("index"), 0.5)
    sag = lerp(lerp(at_thumb, at_index, 0.5), deep, 0.5)
    corners = [
        Corner(thumb.rings[high + 7].center, 6.5),
        Corner(lerp(at_thumb, sag, 0.25), 7.0, 12.0),
        Corner(sag, 6.5, 16.0),
        Corner(lerp(at_index, sag, 0.25), 7.0, 12.0),
        Corner(index.rings[low + 8].center, 6.5),
    ]
    return tube("web", corners, posed.frame.thumb)


def _pick(part: Tube, start: float, end: float, count: int) -> list[Ring]:
    """Return rings spread evenly over a stretch of a tube."""
    top = len(part.rings) - 1
    places = (round(start + (end - start) * k / count) for k in range(count + 1))
    return [part.rings[max(0, min(top, place))] for place in places]


def _strands(one: Sequence[Ring], other: Sequence[Ring]) -> Iterator[Tube]:
    """Fill the room between two rows of rings with flesh of the palm."""
    for share in _SHARES:
        rings = tuple(
            Ring(
                lerp(a.center, b.center, share),
                0.97 * (a.radius + (b.radius - a.radius) * share),
                a.ahead,
                a.back,
            )
            for a, b in zip(one, other, strict=True)
        )
        yield Tube("palm", rings, (), len(rings))


def body(posed: Pose) -> Body:
    """Put flesh on a posed hand."""
    fingers = [_finger(posed, digit) for digit in FINGERS]
    thumb, index = _thumb(posed), fingers[0]
    web = _web(posed, index, thumb)
    half = (len(web.rings) - 1) / 2.0
    strands: list[Tube] = []
    for one, other in pairwise(fingers):
        strands += _strands(_pick(one, 0, one.joints[0] - 1, 32), _pick(other, 0, other.joints[0] - 1, 32))
    metacarpal = BUILDS["thumb"].bones[0] / STEP
    on_index = (index.joints[0] * 0.6, index.joints[0] * 0.82)
    on_thumb = (thumb.joints[0] - metacarpal, thumb.joints[0] - 0.45 * metacarpal)
    strands += _strands(_pick(index, *on_index, 16), _pick(thumb, *on_thumb, 16))
    strands += _strands(_pick(thumb, on_thumb[1], thumb.joints[0] + 4, 12), _pick(web, half, 0.0, 12))
    strands += _strands(_pick(index, on_index[1], index.joints[0] + 4, 12), _pick(web, half, 2 * half, 12))
    corner = [index.rings[round(on_index[1])], thumb.rings[round(on_thumb[1])]]
    strands += _strands(corner, [web.rings[round(half)]] * 2)
    return Body((*fingers, thumb, _knuckles(posed), web, *strands))

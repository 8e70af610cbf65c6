"""What a figure says: its labels, its caption and its description, all from the same hold."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from build_tools.figures.pose import clock_deg
from build_tools.figures.scene import View
from build_tools.figures.seam import Placed, on_ball
from build_tools.figures.vectors import angle, cross, dot, sub, unit
from build_tools.generate.clocks import other_hand
from build_tools.schema.grip import Bend, Grip, Hold, Pad, Pressure
from build_tools.schema.grip import Thumb as ThumbChoice
from calculators.words import Message, say

ThrowingHand = Literal["right", "left"]
Place = Literal["on", "inside", "outside", "crossing", "leather"]
"""inside: the seam's wall is on the finger's little-finger side; outside: on its thumb side."""

ON_MM = 4.5
"""A pad whose middle is this near a seam lies on it."""
BESIDE_MM = 11.0
"""A pad this near touches the seam's wall with its edge: half a finger's width and the stitches."""
DAYLIGHT_MM = 6.0
"""A smaller gap between palm and ball is not called daylight."""


def seam_place(pad: Pad, ball: Placed) -> Place:
    """Return how a finger's pad lies to the nearest seam."""
    at = on_ball(pad.across_deg, pad.over_deg)
    gap = ball.distance(at)
    if gap > BESIDE_MM:
        return "leather"
    points = ball.points(1440)
    near = max(range(len(points)), key=lambda k: dot(points[k], at))
    heading = unit(sub(points[(near + 1) % len(points)], points[near - 1]))
    finger = unit(sub(on_ball(pad.across_deg, pad.over_deg + 0.1), at))
    slant = angle(heading, finger)
    if 50.0 < slant < 130.0:
        return "crossing" if gap <= ON_MM + 2.0 else "leather"
    if gap <= ON_MM:
        return "on"
    return "inside" if _seam_on_little_finger_side(pad, ball) else "outside"


def _seam_on_little_finger_side(pad: Pad, ball: Placed) -> bool:
    at = on_ball(pad.across_deg, pad.over_deg)
    near = max(ball.points(1440), key=lambda point: dot(point, at))
    ahead = unit(sub(on_ball(pad.across_deg, pad.over_deg + 0.1), at))
    return dot(sub(near, at), cross(ahead, at)) > 0.0


def spoken_clock(clock: str, hand: ThrowingHand) -> str:
    """Return a right-hander's clock time for the given hand."""
    return clock if hand == "right" else other_hand(clock)


def thumb_clocks(choice: ThumbChoice, hand: ThrowingHand) -> tuple[str, str]:
    """Return both ends of the thumb's usual range for the given hand, the earlier first."""
    first, last = choice.clock, choice.to_clock or choice.clock
    return (first, last) if hand == "right" else (other_hand(last), other_hand(first))


def thumb_clock(choice: ThumbChoice, hand: ThrowingHand) -> Message:
    """Return the thumb's clock, or its range."""
    first, last = thumb_clocks(choice, hand)
    if first == last:
        return say("thumb {clock}", clock=first)
    return say("thumb {clock} to {end}", clock=first, end=last)


_MIDDLE: Mapping[Place, Message] = {
    "on": say("middle finger on the seam"),
    "inside": say("middle finger inside the seam wall"),
    "outside": say("middle finger outside the seam wall"),
    "crossing": say("middle finger across the seam"),
    "leather": say("middle finger on leather"),
}
_INDEX_BEND: Mapping[Bend, Message] = {
    "lifted": say("index finger off the ball"),
    "pad-press": say("index finger bent, pad pressing"),
    "nail-tip": say("index finger on its tip"),
    "first-knuckle": say("index finger folded under"),
    "high-knuckle": say("index knuckle high, tip brushing"),
    "tucked": say("index finger folded"),
}
_INDEX: Mapping[Pressure, Message] = {
    "pull": say("index finger pulls"),
    "hold": say("index finger helps"),
    "rest": say("index finger rests"),
    "none": say("index finger loose"),
}
_RING: Mapping[Bend, Message] = {
    "tucked": say("ring finger folded at the side"),
    "lifted": say("ring finger off the ball"),
}
_WORK: Mapping[Pressure, Message] = {
    "pull": say("middle finger pulls"),
    "hold": say("middle finger holds"),
    "rest": say("middle finger rests"),
    "none": say("middle finger loose"),
}


def middle_label(hold: Hold, ball: Placed) -> Message:
    """Return where the middle finger lies."""
    return _MIDDLE[seam_place(hold.middle, ball)]


def middle_work(hold: Hold) -> Message:
    """Return what the middle finger does."""
    return _WORK[hold.middle.pressure]


def index_label(grip: Grip, hold: Hold) -> Message:
    """Return what the index finger does, or how it is bent."""
    if grip.choices.thumb.surface == "circle":
        return say("index finger makes a circle with the thumb")
    return _INDEX_BEND.get(hold.index.bend) or _INDEX[hold.index.pressure]


def ring_label(hold: Hold, ball: Placed) -> Message:
    """Return where the ring finger is."""
    if hold.ring.bend in _RING:
        return _RING[hold.ring.bend]
    if seam_place(hold.ring, ball) == "leather":
        return say("ring finger on the ball")
    return say("ring finger on a seam")


def daylight_label(hold: Hold) -> Message:
    """Return what is to be seen between ball and palm."""
    return say("daylight") if hold.daylight_mm >= DAYLIGHT_MM else say("ball deep in the hand")


def spin_label(clock: str, hand: ThrowingHand) -> Message:
    """Return the spin it aims at."""
    return say("spin aims at {clock}", clock=spoken_clock(clock, hand))


_CAPTIONS: Mapping[View, Message] = {
    "pitcher": say("As you look down at your own hand. A dashed seam runs under a finger."),
    "side": say("From the side of the thumb. The plate is ahead of the fingertips."),
    "catcher": say("From the front, with the hand upright. The thumb shows on the other side from here."),
}
_SPIN_CAPTION = say(
    "{caption} The small clock shows the spin as seen from behind.", caption=_CAPTIONS["side"]
)
_WHERE: Mapping[View, Message] = {
    "pitcher": say("as the pitcher looks down at it"),
    "side": say("from the side of the thumb"),
    "catcher": say("from the front"),
}
_HANDS: Mapping[ThrowingHand, Message] = {"right": say("right hand"), "left": say("left hand")}


def title(grip: Grip, hand: ThrowingHand, view: View) -> Message:
    """Return the figure's name."""
    return say("{grip}, {hand}, {view}", grip=grip.title, hand=_HANDS[hand], view=_WHERE[view])


def caption(hold: Hold, view: View) -> Message:
    """Return the line that stands under a view."""
    return _SPIN_CAPTION if view == "side" and hold.spin_clock is not None else _CAPTIONS[view]


def description(grip: Grip, hold: Hold, ball: Placed, hand: ThrowingHand, view: View) -> Message:
    """Return the figure in words, for readers who do not see it."""
    told = say(
        "{title}. Finger by finger: {index}; {middle}; {ring}. The {work}. {thumb} {gap}",
        title=title(grip, hand, view),
        index=index_label(grip, hold),
        middle=middle_label(hold, ball),
        ring=ring_label(hold, ball),
        work=middle_work(hold),
        thumb=_thumb_sentence(grip.choices.thumb, hand),
        gap=_gap_sentence(hold),
    )
    if hold.spin_clock is None:
        return told
    clock = spoken_clock(hold.spin_clock, hand)
    return say("{told} The spin it aims at is {clock}, seen from behind.", told=told, clock=clock)


def _thumb_sentence(choice: ThumbChoice, hand: ThrowingHand) -> Message:
    first, last = thumb_clocks(choice, hand)
    if first == last:
        return say("With the fingers at 12:00, seen from behind, the thumb is at {clock}.", clock=first)
    return say(
        "With the fingers at 12:00, seen from behind, the thumb is at {clock} to {end}.",
        clock=first,
        end=last,
    )


def _gap_sentence(hold: Hold) -> Message:
    if hold.daylight_mm >= DAYLIGHT_MM:
        return say("There is daylight between the ball and the palm.")
    return say("The ball sits deep, close to the palm.")


def clock_disagrees(grip: Grip, hold: Hold) -> bool:
    """True when the thumb is drawn outside the range that the entry tells."""
    thumb = grip.choices.thumb
    ends = sorted((clock_deg(thumb.clock), clock_deg(thumb.to_clock or thumb.clock)))
    return not ends[0] <= clock_deg(hold.thumb.clock) <= ends[1]

"""A grip: where the ball and the fingers are, step by step, and what it tends to do."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from build_tools.schema.common import (
    Clock,
    CueSlug,
    DrillSlug,
    Entry,
    FaultSlug,
    GripSlug,
    ShapeSlug,
    Strict,
    Text,
)

Base = Literal["four-seam", "two-seam", "one-seam", "offset", "leather"]
Spike = Literal["none", "pad-press", "nail-tip", "first-knuckle", "high-knuckle"]
Depth = Literal["fingertips", "first-joint", "middle", "choked", "palm"]
Family = Literal["curve", "slider", "fastball", "changeup"]


class Thumb(Strict):
    """Where the thumb sits, as the pitcher looks down at the ball with the fingers at 12:00."""

    clock: Clock = Field(description="Right-hander; the left-hander's is computed.")
    to_clock: Clock | None = Field(default=None, description="Other end, where a range is usual.")
    surface: Literal["pad", "side", "tucked", "circle"] = "pad"
    on: Literal["seam", "leather", "either"] = "either"


class Choices(Strict):
    """The four independent choices a coach records."""

    base: Base
    base_turn_deg: float = Field(default=0, ge=-90, le=90, description="Turn of an offset base.")
    thumb: Thumb
    spike: Spike = "none"
    depth: Depth


class Hand(Strict):
    """The rest of the hand, in words."""

    middle: Text
    index: Text
    ring_and_little: Text
    pressure: Text
    palm_at_release: Text
    wrist: Text


Lie = Literal["horseshoe-wall", "across-horseshoe", "rails", "one-seam"]
Bend = Literal["flat", "curled", "pad-press", "nail-tip", "first-knuckle", "high-knuckle", "lifted", "tucked"]
Pressure = Literal["pull", "hold", "rest", "none"]


class SeamLie(Strict):
    """How the ball lies: a named place of the seam, where it sits under the hand, and its turn.

    Places are the view of a right-hander who looks from behind at his hand: `across_deg` from 12:00
    toward the little-finger side, `over_deg` past that, away from the palm.
    """

    base: Lie
    across_deg: float = Field(default=0, ge=-180, le=180)
    over_deg: float = Field(default=15, ge=-90, le=90)
    turn_deg: float = Field(
        default=0, ge=-180, le=180, description="Turns the seam ahead of the fingers to the little finger."
    )


class Pad(Strict):
    """What a finger does: where it meets the ball (see SeamLie), how it is bent, how hard it works."""

    across_deg: float = Field(default=0, ge=-180, le=180)
    over_deg: float = Field(default=30, ge=-90, le=90)
    bend: Bend = "flat"
    pressure: Pressure = "hold"


class ThumbPad(Strict):
    """Where the thumb meets the ball; its clock is the right-hander's."""

    clock: Clock
    over_deg: float = Field(default=10, ge=-90, le=90)
    bend: Literal["flat", "curled", "tucked"] = "flat"
    pressure: Pressure = "hold"


class Hold(Strict):
    """Where ball and pads are, for the drawn figure. Right-hander; the left-hander is mirrored."""

    seam: SeamLie
    index: Pad
    middle: Pad
    ring: Pad
    little: Pad
    thumb: ThumbPad
    daylight_mm: float = Field(ge=0, le=35, description="Gap between ball and palm: 0 deep in the palm.")
    spin_clock: Clock | None = Field(default=None, description="The spin it aims at, for a high arm.")


class Grip(Entry):
    """A grip entry, content/grips/*.md."""

    family: Family
    choices: Choices
    hand: Hand
    steps: tuple[Text, ...] = Field(min_length=3)
    tends: tuple[Text, ...] = Field(min_length=1)
    watch_for: tuple[Text, ...] = Field(min_length=1)
    suits: Text
    small_hands: Text
    youngest: int = Field(ge=7, le=19, description="Age before which the handbook holds it back.")
    age_note: Text
    shapes: tuple[ShapeSlug, ...] = Field(min_length=1)
    cues: tuple[CueSlug, ...] = ()
    drills: tuple[DrillSlug, ...] = ()
    faults: tuple[FaultSlug, ...] = ()
    same_base_other_intent: tuple[GripSlug, ...] = Field(
        default=(), description="Grips with the same hold but another intent at release."
    )
    hold: Hold | None = None

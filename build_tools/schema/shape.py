"""A shape: the target in speed, clock and active share; inches are computed, never typed."""

from __future__ import annotations

from pydantic import Field

from build_tools.schema.common import (
    Clock,
    ClockSpan,
    Entry,
    RoleSlug,
    SlotSlug,
    Span,
    Strict,
    Text,
)


class Level(Strict):
    """What a pitcher at one level brings; the inches are computed from it."""

    fastball_mph: Span
    spin_rpm: Span
    not_a_target: bool = Field(default=False, description="Named only to say: not at this level.")


class Levels(Strict):
    """Adult and high school at 60.5 ft, twelve and under at 46 ft."""

    adult: Level
    high_school: Level
    twelve_and_under: Level


class Shape(Entry):
    """A shape entry, content/shapes/*.md. Right-hander; the left-hander's clock is computed."""

    reference: bool = Field(default=False, description="A pitch shown for comparison only.")
    speed_percent: Span = Field(description="Percent of the same day's fastball.")
    clock: ClockSpan
    clock_middle: Clock
    clock_steady: bool = Field(default=True, description="False where bullet spin makes it noise.")
    active_percent: Span
    levels: Levels
    slots: tuple[SlotSlug, ...] = Field(description="Arm slots that reach it.")
    edge_slots: tuple[SlotSlug, ...] = Field(default=(), description="Slots that reach it just about.")
    not_from: tuple[SlotSlug, ...] = Field(default=(), description="Slots it must not be forced from.")
    roles: tuple[RoleSlug, ...] = ()
    looks_like: Text
    must_differ: tuple[Text, ...] = ()
    pairs_with: tuple[Text, ...] = ()
    youngest: int = Field(ge=7, le=19)

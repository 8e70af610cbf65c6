"""Cues, drills, faults and plans: what is said, done, seen and in what order."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from build_tools.schema.common import (
    CueSlug,
    DrillSlug,
    Entry,
    FaultSlug,
    GripSlug,
    Of,
    ProfileSlug,
    ShapeSlug,
    Slug,
    Span,
    StageSlug,
    Strict,
    Text,
)

Goes = Literal["up", "down", "same", "unknown"]
Turns = Literal["toward six", "toward the mirror", "toward the side", "steadier", "same", "unknown"]


class Change(Strict):
    """Which way a quantity goes, and by how much where anyone has said."""

    goes: Goes
    by: Span | None = Field(default=None, description="Size of the change, both ends positive.")


class ClockChange(Strict):
    """Which way the clock turns."""

    goes: Turns
    about: str | None = Field(default=None, description='A clock time such as "7:00".')


class Effect(Strict):
    """What a cue tends to do to a pitcher who starts from one profile."""

    start: Annotated[Slug, Of("profiles", also=("any",))] = Field(
        description='A profile of content/lists/profiles.yml, or "any".'
    )
    speed: Change = Change(goes="unknown")
    active: Change = Change(goes="unknown")
    clock: ClockChange = ClockChange(goes="unknown")
    drop: Change = Change(goes="unknown")
    side: Change = Change(goes="unknown")
    strikes: Change = Change(goes="unknown")
    leads_to: ProfileSlug | None = Field(default=None, description="Profile it tends to end in.")
    unwanted: bool = Field(default=False, description="True where the result is usually bad.")
    note: str = ""


class Cue(Entry):
    """A cue entry, content/cues/*.md."""

    says: Text = Field(description="The words to the pitcher.")
    focus: Literal["analogy", "outside", "inside", "task"] = Field(
        description="analogy: one picture; outside: on ball or target; inside: on the body; "
        "task: a set-up that makes the wanted throw likely."
    )
    use_when: Text
    starts: tuple[ProfileSlug, ...] = Field(default=(), description="Profiles it is meant for.")
    effects: tuple[Effect, ...] = Field(min_length=1)
    confidence: Literal["low", "medium", "high"]
    over_correction: Text
    stop_sign: Text
    youngest: int = Field(default=7, ge=7, le=19)
    stages: tuple[StageSlug, ...] = ()
    shapes: tuple[ShapeSlug, ...] = Field(default=(), description="Shapes it serves.")
    never_for: tuple[ShapeSlug, ...] = Field(default=(), description="Shapes it spoils.")
    retired: bool = Field(default=False, description="Listed so that it is not used.")


class Drill(Entry):
    """A drill entry, content/drills/*.md."""

    stage: StageSlug
    set_up: Text
    distance_ft: Span | None = None
    distance_note: str = ""
    throws: Span | None = None
    effort_percent: Span | None = None
    kit: tuple[str, ...] = ()
    gate: Text = Field(description="What must be met to go on.")
    if_not: Text = Field(description="What to do when the gate is missed.")
    back_to: tuple[DrillSlug, ...] = Field(default=(), description="Drills to go back to.")
    care: tuple[Text, ...] = ()
    youngest: int = Field(ge=7, le=19)
    steps: tuple[Text, ...] = Field(min_length=2)


class Check(Strict):
    """One thing to look at, and what it takes to see it."""

    by: Literal["eye", "phone", "radar", "tracking", "sheet", "question"]
    look: Text


class Fault(Entry):
    """A fault entry, content/faults/*.md."""

    you_see: Text
    group: Literal["flight", "hand", "arm and body", "arsenal", "practice"]
    causes: tuple[Text, ...] = Field(min_length=1, description="Most common first.")
    checks: tuple[Check, ...] = Field(min_length=1)
    do_now: Text = Field(description="The one thing to do next.")
    cues: tuple[CueSlug, ...] = ()
    drills: tuple[DrillSlug, ...] = ()
    grips: tuple[GripSlug, ...] = ()
    look_also: tuple[FaultSlug, ...] = Field(default=(), description="Faults it is mistaken for.")
    stop: bool = Field(default=False, description="True where the thing to do is to stop for the day.")
    youngest: int = Field(default=13, ge=7, le=19, description="Age from which it is of use.")


class Week(Strict):
    """One week of a plan."""

    week: int = Field(ge=0)
    days: str
    aim: Text
    stage: str
    drills: tuple[DrillSlug, ...] = ()
    breaking_throws: Text
    most_effort_percent: int | None = None
    gate: Text
    teach: Text


class Plan(Entry):
    """A plan entry, content/plans/*.md."""

    for_whom: Text
    before_you_start: tuple[Text, ...] = Field(min_length=1)
    weeks: tuple[Week, ...] = Field(min_length=1)
    each_row: Literal["week", "day"] = Field(
        default="week", description="What one of `weeks` stands for; a day is headed by its `days`."
    )
    if_a_week_is_missed: Text
    stop_the_plan: Text
    youngest: int = Field(ge=7, le=19)

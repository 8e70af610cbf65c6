"""The short lists every entry draws on: slots, roles, profiles, stages, age gates, terms, sources."""

from __future__ import annotations

import datetime
import re
from typing import Annotated, Literal

from pydantic import AfterValidator, Field

from build_tools.schema.common import ClockSpan, Span, Strict, Text, WebAddress


class Slot(Strict):
    """An arm slot: how to see it, the fastball clock that goes with it, and what it mirrors to."""

    title: Text
    see_it: Text
    fastball_clock: ClockSpan
    mirror_clock: ClockSpan


class Role(Strict):
    """What a breaking ball is thrown for."""

    title: Text
    means: Text
    aim: Text
    speed_note: Text
    accept: Text


class Profile(Strict):
    """Where a pitcher's breaking ball is now. Bounds are for a right-hander."""

    title: Text
    recognise: Text
    clock: ClockSpan | None = None
    active_percent: Span | None = None
    speed_percent: Span | None = None


class Stage(Strict):
    """A stage of learning, in order."""

    title: Text
    means: Text


class AgeGate(Strict):
    """What an age group may do, by the guideline and by this handbook's own default."""

    title: Text
    ages: tuple[int, int]
    guideline: Text
    handbook: Text


class Term(Strict):
    """A word of the trade and what it means."""

    term: Text
    meaning: Text
    also: tuple[str, ...] = Field(default=(), description="Other forms that should link here.")
    group: Literal["ball and grip", "arm and body", "flight", "pitches", "use", "practice", "arm care"]
    link: bool = Field(default=True, description="False keeps common words from being linked.")
    see: tuple[str, ...] = Field(default=(), description="Entries as kind/slug.")


SOURCE_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


def _source_id(value: str) -> str:
    if not SOURCE_ID.fullmatch(value):
        raise ValueError("name a source by author or body and year, like lyman-2002")
    return value


SourceId = Annotated[str, AfterValidator(_source_id)]


class Source(Strict):
    """A published source and how much of it has been read."""

    authors: Text
    title: Text
    where: Text
    year: int | None = Field(default=None, ge=1850, le=2100)
    link: WebAddress | None = None
    doi: str | None = None
    read: Literal["whole", "summary", "reported by others", "from memory"]
    finds: Text = Field(description="What it says that the handbook uses, in our own words.")
    limits: str = ""
    checked: datetime.date | None = None

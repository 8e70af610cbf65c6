"""What all entries share: title, summary, evidence, review date, and the small value types."""

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

SLUG = re.compile(r"[a-z][a-z]*(-[a-z]+)*")
CLOCK = re.compile(r"(1[0-2]|[1-9]):[0-5]\d")


def _slug(value: str) -> str:
    if not SLUG.fullmatch(value):
        raise ValueError("use plain words in lower case joined by hyphens, like basic-downer")
    return value


def _clock(value: str) -> str:
    if not CLOCK.fullmatch(value):
        raise ValueError('write a clock time in quotes, from "1:00" to "12:59"')
    return value


@dataclass(frozen=True)
class Of:
    """Marks a slug in the schema as the name of something else in the handbook.

    kind: the folder or list it must be found in, such as "grips" or "profiles".
    also: further words the field takes that name nothing, such as "any".
    """

    kind: str
    also: tuple[str, ...] = ()


def _web_address(value: str) -> str:
    if not re.fullmatch(r"https?://[^\s\"'<>]+", value):
        raise ValueError("a whole web address that begins with https:// or http://")
    return value


Slug = Annotated[str, AfterValidator(_slug)]
GripSlug = Annotated[Slug, Of("grips")]
ShapeSlug = Annotated[Slug, Of("shapes")]
CueSlug = Annotated[Slug, Of("cues")]
DrillSlug = Annotated[Slug, Of("drills")]
FaultSlug = Annotated[Slug, Of("faults")]
SlotSlug = Annotated[Slug, Of("slots")]
RoleSlug = Annotated[Slug, Of("roles")]
ProfileSlug = Annotated[Slug, Of("profiles")]
StageSlug = Annotated[Slug, Of("stages")]

Clock = Annotated[str, AfterValidator(_clock)]
WebAddress = Annotated[str, AfterValidator(_web_address)]
Text = Annotated[str, Field(min_length=2)]
"""Words for readers. May carry [[kind/slug]] links and an evidence mark at the end of a sentence."""

Basis = Literal["published", "common practice", "estimate"]
Span = Annotated[tuple[float, float], AfterValidator(lambda span: _ascending(span))]
ClockSpan = tuple[Clock, Clock]


def _ascending(span: tuple[float, float]) -> tuple[float, float]:
    if span[0] > span[1]:
        raise ValueError("write the smaller number first")
    return span


class Strict(BaseModel):
    """A part of an entry; a name the schema does not know is a mistake, not an extra."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class NextReview(Strict):
    """Who should read an entry through next, by which day. A role, not a person's name."""

    who: Text
    when: datetime.date


class Entry(Strict):
    """What every entry carries."""

    title: Text
    summary: Text = Field(description="One sentence a volunteer understands.")
    also_called: tuple[str, ...] = Field(
        default=(), description="Other trade names, so that search finds the entry."
    )
    basis: Literal["common practice", "estimate"] = Field(
        default="common practice",
        description="How good everything in this entry is unless a sentence carries its own mark.",
    )
    reviewed: datetime.date = Field(description="The day somebody last read the entry through.")
    review_by: NextReview | None = Field(default=None, description="Who should read it next, and by when.")
    order: int = Field(default=100, description="Place in its list, smallest first.")
    draft: bool = Field(default=False, description="True keeps it out of the site, except with --drafts.")

"""Pages of prose: guide pages, and the words beside a calculator."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Literal, get_args

from pydantic import BeforeValidator, Field, model_validator

from build_tools.schema.common import ClockSpan, Entry, Strict, Text
from build_tools.schema.grip import Base, Depth, Spike

Section = Literal["start", "coach", "pitcher", "arm care", "evidence", "about"]
Reader = Literal["volunteer", "anyone", "coordinator"]


def _as_list(value: object) -> object:
    return [value] if isinstance(value, str) else value


class Prose(Entry):
    """A page whose body carries the words."""

    reading: Annotated[tuple[Reader, ...], BeforeValidator(_as_list)] = Field(
        default=("anyone",), min_length=1, description="Who it must be easy for."
    )


Choosing = Literal["base", "thumb", "spike", "depth"]

THUMB_CLOCKS: Mapping[str, ClockSpan] = {
    "under": ("6:00", "6:30"),
    "half-way": ("7:00", "7:30"),
    "side": ("8:00", "9:00"),
}
"""The three parts of the thumb's clock, a right-hander's; a thumb in between belongs to the nearer one."""

VARIANTS: Mapping[Choosing, tuple[str, ...]] = {
    "base": get_args(Base),
    "thumb": tuple(THUMB_CLOCKS),
    "spike": ("none", "lifted", *get_args(Spike)[1:]),
    "depth": get_args(Depth),
}
"""What can be chosen. Of the thumb three parts of its clock, and beside the spikes a finger held off the ball."""


class Variant(Strict):
    """One way to make a choice, beside the others; the grips that show it are looked up."""

    value: str = Field(description="What the grips call it, such as four-seam or nail-tip.")
    title: Text
    find: Text = Field(description="How to find it, or what is seen.")
    tends: Text = Field(description="What changing only this tends to do.")
    sure: Literal["low", "medium", "high"] = Field(description="How sure the trade is.")
    leave: Text = Field(description="When not to.")


class Choice(Strict):
    """One of the four choices of a grip, all its variants side by side."""

    of: Choosing
    variants: tuple[Variant, ...]

    @model_validator(mode="after")
    def _all_of_them(self) -> Choice:
        told = [one.value for one in self.variants]
        if sorted(told) != sorted(VARIANTS[self.of]):
            raise ValueError(f"describe each of these once: {', '.join(VARIANTS[self.of])}")
        return self


class Guide(Prose):
    """A guide page, content/guide/*.md."""

    section: Section = Field(description="Where it stands in the navigation.")
    way_in: Text | None = Field(
        default=None, description="What a reader who needs this page would say; puts it on the home page."
    )
    choice: Choice | None = Field(
        default=None, description="A choice of the grip; its variants stand before the first heading below."
    )
    youngest: int = Field(default=7, ge=7, le=19, description="Age from which it is of use.")


class CalculatorWords(Prose):
    """The words beside a calculator, content/calculators/*.md; the file is named as the calculator."""

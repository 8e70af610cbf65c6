"""Pages of prose: guide pages, and the words beside a calculator."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from build_tools.schema.common import Entry, Text

Section = Literal["start", "coach", "pitcher", "arm care", "evidence", "about"]
Reader = Literal["volunteer", "anyone", "coordinator"]


def _as_list(value: object) -> object:
    return [value] if isinstance(value, str) else value


class Prose(Entry):
    """A page whose body carries the words."""

    reading: Annotated[tuple[Reader, ...], BeforeValidator(_as_list)] = Field(
        default=("anyone",), min_length=1, description="Who it must be easy for."
    )


class Guide(Prose):
    """A guide page, content/guide/*.md."""

    section: Section = Field(description="Where it stands in the navigation.")
    way_in: Text | None = Field(
        default=None, description="What a reader who needs this page would say; puts it on the home page."
    )


class CalculatorWords(Prose):
    """The words beside a calculator, content/calculators/*.md; the file is named as the calculator."""

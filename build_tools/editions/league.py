"""The schema of `edition.yml`: a league, its rules, its ages, its notices and what it hides or replaces."""

from __future__ import annotations

import datetime
import re
from typing import Annotated, Literal

from pydantic import AfterValidator, BeforeValidator, Field, model_validator

from build_tools.editions.colors import COLOR
from build_tools.schema.common import Slug, Strict, Text
from build_tools.schema.lists import SourceId

YOUNGEST_FOR_A_BREAKING_BALL = 13
"""Before this age the joint guideline names fastball and changeup only; a league may ask for later."""

WEB = re.compile(r"https?://[^\s\"'<>]+")
_ADDRESS = re.compile(r"[a-z_]+/[a-z0-9]+(-[a-z0-9]+)*")


def _plain(value: str) -> str:
    if "<" in value or ">" in value:
        raise ValueError("plain words; < and > are not taken")
    return value


def _color(value: object) -> object:
    if value is None:
        raise ValueError('a color in quotes, like "#1f5c3d"; without quotes the # starts a remark')
    if not isinstance(value, str) or not COLOR.fullmatch(value.lower()):
        raise ValueError('a color as # and six digits in quotes, like "#1f5c3d"')
    return value.lower()


def _address(value: str) -> str:
    if not _ADDRESS.fullmatch(value):
        raise ValueError("a name as kind/slug, like grips/sweeper-grip")
    return value


def _web(value: str) -> str:
    if not WEB.fullmatch(value):
        raise ValueError("a whole web address, like https://example.org/handbook/")
    return value


Words = Annotated[Text, AfterValidator(_plain)]
Color = Annotated[str, BeforeValidator(_color)]
Address = Annotated[str, AfterValidator(_address)]
Web = Annotated[str, AfterValidator(_web)]
Phone = Annotated[str, Field(pattern=r"^[0-9+() .-]{3,25}$")]
Email = Annotated[str, Field(pattern=r"^[^\s@<>\"']+@[^\s@<>\"']+$")]


class Colors(Strict):
    """The league's color on the light and on the dark page; each must be readable there."""

    light: Color = Field(description="On the light page, as #rrggbb in quotes.")
    dark: Color = Field(description="On the dark page, as #rrggbb in quotes.")


class Contact(Strict):
    """Whom to ask. A role is enough; a name is not needed."""

    role: Words
    name: Words | None = None
    phone: Phone | None = None
    email: Email | None = None

    @model_validator(mode="after")
    def _reachable(self) -> Contact:
        if self.phone is None and self.email is None:
            raise ValueError("a phone or an email")
        return self


class Division(Strict):
    """A division: its ages as the binding rules count them, and its distance from rubber to plate."""

    name: Words
    ages: tuple[int, int] = Field(description="Youngest and oldest.")
    mound_ft: float = Field(ge=30, le=60.5, description="From rubber to plate, in feet.")

    @model_validator(mode="after")
    def _ascending(self) -> Division:
        if not 4 <= self.ages[0] <= self.ages[1] <= 30:
            raise ValueError("ages from 4 to 30, the younger one first")
        return self


class BreakingBalls(Strict):
    """From which age the league lets a breaking ball be thrown, and whether others see its pages."""

    from_age: int = Field(
        ge=YOUNGEST_FOR_A_BREAKING_BALL, le=30, description="May be later than the guideline, not earlier."
    )
    pages_above_our_ages: Literal["shown", "hidden"] = Field(
        default="shown",
        description="hidden: leaves out pages on breaking balls that no division is old enough for.",
    )


class Notice(Strict):
    """Something the league tells its people, on the home page and on the league's own."""

    title: Words
    text: Text
    until: datetime.date | None = Field(default=None, description="The last day it is shown.")


class Emergency(Strict):
    """What to do when something is badly wrong, here."""

    call: Words = Field(description='Whom to call, such as "Call 911 first."')
    where: Words = Field(description="Where one is, for whoever answers the call.")
    then: tuple[Words, ...] = Field(default=(), description="What to do next, one thing a line.")


class League(Strict):
    """A league's edition, content/editions/<name>/edition.yml."""

    name: Words
    short_name: Annotated[Words, Field(max_length=24)] = Field(description="For headings and small screens.")
    site_url: Web | None = Field(default=None, description="Where the edition will be found.")
    paper: Literal["letter", "a4"] = "letter"
    based_on: Slug | None = Field(
        default=None, description="Another edition whose added, replaced and hidden entries hold here too."
    )
    colors: Colors
    logo: str | None = Field(default=None, description="An SVG or PNG file beside this one.")
    contacts: tuple[Contact, ...] = Field(min_length=1)
    rules: SourceId = Field(
        description="The rule set that binds: a file of content/rules or of this edition."
    )
    rules_review_by: datetime.date = Field(description="The day by which somebody must check them again.")
    divisions: tuple[Division, ...] = Field(min_length=1)
    breaking_balls: BreakingBalls
    emergency: Emergency
    notices: tuple[Notice, ...] = ()
    hides: tuple[Address, ...] = Field(default=(), description="Entries left out, as kind/slug.")
    replaces: tuple[Address, ...] = Field(
        default=(), description="Entries of the handbook for which this edition has a file of its own."
    )

    @property
    def title(self) -> str:
        """What a link to the league's page is called."""
        return self.name

    @property
    def oldest(self) -> int:
        """The oldest age of any division."""
        return max(division.ages[1] for division in self.divisions)

    def own_age(self, youngest: int) -> int:
        """Return from which age something is allowed here, given the handbook's own age for it."""
        if youngest < YOUNGEST_FOR_A_BREAKING_BALL:
            return youngest
        return max(youngest, self.breaking_balls.from_age)

    def divisions_from(self, age: int) -> tuple[Division, ...]:
        """Return the divisions that have players of `age` or older."""
        return tuple(division for division in self.divisions if division.ages[1] >= age)

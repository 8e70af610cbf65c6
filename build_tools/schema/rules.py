"""A rule set: the numbers of one body's pitching rules, as data, with where they were read.

This file says which names and values a rule set may hold. What makes the numbers fit together
(rest steps without gaps, a daily limit inside the table, an override that only tightens) is checked
by `calculators.workload.rules`, the same code that reads a rule set in the browser.
"""

from __future__ import annotations

import datetime
from typing import Literal

from pydantic import Field, field_validator, model_validator

from build_tools.schema.common import Strict, Text, WebAddress
from build_tools.schema.lists import SourceId
from calculators.workload.rules import check

SecondGame = Literal["allowed", "after a small first game", "advised against", "barred"]


class RestStep(Strict):
    """Throwing `low` to `high` (none: or more) owes `rest` days or nights. Both ends belong to the step."""

    low: int = Field(ge=0)
    high: int | None = None
    rest: int = Field(ge=0, le=10)


class Cap(Strict):
    """A limit over more than one day."""

    most: int = Field(ge=1)
    unit: Literal["pitches", "outs", "appearances"]
    window: Literal["rolling", "week"] = Field(
        description="rolling: any `days` days in a row, the day itself included; "
        "week: the calendar week that begins on `week_starts`."
    )
    days: int | None = Field(default=None, ge=2, le=31, description="Length of a rolling window.")
    week_starts: Literal["Monday", "Sunday"] | None = None


class Catching(Strict):
    """What catching and pitching on one day allow."""

    no_pitching_after_innings: int | None = Field(
        default=None, ge=1, description="Innings caught in a game that bar pitching that day."
    )
    no_catching_after_pitches: int | None = Field(
        default=None, ge=1, description="Pitches that bar catching for the rest of the day."
    )
    no_return_after_pitches: int | None = Field(
        default=None, ge=1, description="Pitches that bar a pitcher who had caught from catching again."
    )
    threshold_relief: bool = Field(
        default=False, description="True where a limit passed during the last at-bat does not count."
    )
    advised_against: bool = Field(
        default=False, description="True where a guideline advises pitchers not to catch at all."
    )


class Band(Strict):
    """The limits of one age group or level. Blank: as the rule set says, or not stated at all."""

    label: Text
    age_min: int | None = Field(default=None, ge=4, le=30)
    age_max: int | None = Field(default=None, ge=4, le=30)
    daily_max: int | None = Field(default=None, ge=1)
    rest: tuple[RestStep, ...] = ()
    caps: tuple[Cap, ...] = ()
    second_game: SecondGame | None = None
    second_game_first_most: int | None = Field(
        default=None, ge=1, description="Most in the first game that still allows a second one."
    )
    most_days_running: int | None = Field(default=None, ge=1, description="Days in a row with pitching.")
    catching: Catching | None = None
    year_innings: int | None = Field(
        default=None, ge=1, description="Advice, not a bar: most innings in any 12 months."
    )
    months_off: int | None = Field(
        default=None, ge=1, le=11, description="Advice, not a bar: months of any 12 without pitching."
    )
    months_off_running: int | None = Field(
        default=None, ge=1, le=11, description="Advice: how many of those months come in a row."
    )
    unconfirmed: tuple[str, ...] = Field(
        default=(),
        description="Names of this band's limits that were not read at the body; applied, and said.",
    )
    gaps: tuple[str, ...] = Field(
        default=(), description="Names of limits that exist but were not found; such a band does not compute."
    )
    notes: tuple[Text, ...] = ()


class RuleSet(Strict):
    """A rule set, content/rules/*.yml. With `extends` it names only what it makes stricter."""

    title: Text
    body: Text
    document: Text
    edition: Text
    status: Literal["read at the body", "read in a copy", "from memory"]
    doubt: Text | None = Field(
        default=None, description="Why this edition must not be used unchecked, such as a later change."
    )
    link: WebAddress
    last_checked: datetime.date
    kind: Literal["guideline", "rule"]
    source: SourceId = Field(description="id in content/sources.yml")
    extends: SourceId | None = Field(default=None, description="The rule set a local league makes stricter.")
    looser_because: Text | None = Field(
        default=None,
        description="Why it lets more through in places than the set it extends. Readers see the reason. "
        "Without one, nothing may be looser.",
    )

    counts: Literal["pitches", "outs"] | None = Field(
        default=None, description="What daily_max and the rest table count."
    )
    rest_unit: Literal["days", "nights"] | None = Field(
        default=None,
        description="days: whole days, the outing's own day not counted; nights: its own night is the first.",
    )
    age_basis: Literal["actual age", "league age", "birth year", "school level", "not stated"] | None = None
    age_reference: str | None = Field(default=None, description="MM-DD that fixes a league age.")
    finish_batter: bool | None = Field(
        default=None,
        description="True where a batter begun under the daily limit may be finished. Blank: not read.",
    )
    threshold_relief: bool | None = Field(
        default=None,
        description="True where a rest step passed during the last at-bat does not count. Blank: not read.",
    )
    automatic_walk_pitches: int | None = Field(
        default=None, ge=0, le=4, description="Pitches added for a walk given without throwing."
    )
    warmups_count: bool | None = None
    no_game_counts: bool | None = Field(
        default=None, description="Whether pitches of a game called off count."
    )
    reentry_is_second_appearance: bool | None = None
    resets_each_level: bool | None = Field(
        default=None, description="True where each tournament level begins with a clean sheet."
    )
    stricter_edition: SourceId | None = Field(
        default=None,
        description="Another edition of these rules. Where it owes more rest, it comes first, and readers are told.",
    )
    second_game: SecondGame | None = None
    second_game_first_most: int | None = Field(default=None, ge=1)
    most_days_running: int | None = Field(default=None, ge=1)
    caps: tuple[Cap, ...] = ()
    catching: Catching | None = None
    bands: tuple[Band, ...] = ()
    advice: tuple[Text, ...] = ()
    notes: tuple[Text, ...] = ()

    @field_validator("bands")
    @classmethod
    def _each_band_once(cls, bands: tuple[Band, ...]) -> tuple[Band, ...]:
        named = [f"ages {band.age_min} to {band.age_max}" for band in bands if band.age_min or band.age_max]
        named += [band.label for band in bands]
        twice = next((one for one in named if named.count(one) > 1), None)
        if twice is not None:
            raise ValueError(f'each band once, and "{twice}" stands here twice; take one of the two out')
        return bands

    @model_validator(mode="after")
    def _numbers_fit_together(self) -> RuleSet:
        if self.extends is None:
            check(self.model_dump(mode="json"))
        return self

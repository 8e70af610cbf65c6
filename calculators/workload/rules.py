"""Rule sets: the numbers of one body's pitching rules, as the content holds them.

No number of any rule stands in code. A rule set arrives as the plain mapping the build exported
(dates as ISO text) and becomes frozen values here; what does not fit together is refused by name.
"""

from __future__ import annotations

import dataclasses
import datetime
import itertools
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Literal

from calculators.workload.plain import Plain, RuleSetError

Unit = Literal["pitches", "outs"]
CapUnit = Literal["pitches", "outs", "appearances"]
SecondGame = Literal["allowed", "after a small first game", "advised against", "barred"]
AgeBasis = Literal["actual age", "league age", "birth year", "school level", "not stated"]
Status = Literal["read at the body", "read in a copy", "from memory"]

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")

LIMITS = frozenset(
    (
        "daily_max",
        "rest",
        "caps",
        "second_game",
        "most_days_running",
        "catching",
        "year_innings",
        "months_off",
    )
)
"""The limits of a band that may be named as unconfirmed or as a gap."""


MOST_REST = 10
"""The most days or nights a rest step may owe; more is a slip of the hand."""


@dataclass(frozen=True)
class RestStep:
    """Throwing `low` to `high` (None: or more), both included, owes `rest` days or nights."""

    low: int
    high: int | None
    rest: int


@dataclass(frozen=True)
class Cap:
    """A limit over several days: rolling over `days`, or a calendar week from `week_starts` (0 = Monday)."""

    most: int
    unit: CapUnit
    window: Literal["rolling", "week"]
    days: int = 7
    week_starts: int = 0


@dataclass(frozen=True)
class Catching:
    """What catching and pitching on one day allow; None where the rules say nothing.

    advised_against: a guideline advises pitchers not to catch at all.
    """

    no_pitching_after_innings: int | None = None
    no_catching_after_pitches: int | None = None
    no_return_after_pitches: int | None = None
    threshold_relief: bool = False
    advised_against: bool = False


@dataclass(frozen=True)
class Band:
    """The limits of one age group or level, with what the whole rule set says already filled in.

    level: the label as a plain name, for bands chosen by level instead of age.
    year_innings: advice, the most innings in any 12 months. months_off: advice, months of 12 without
        pitching, and `months_off_running` how many of them in a row.
    unknown_as: what an outing with an unknown count counts as; the daily limit or, without one,
        the highest limit over several days.
    """

    label: str
    level: str
    age_min: int | None
    age_max: int | None
    daily_max: int | None
    rest: tuple[RestStep, ...]
    caps: tuple[Cap, ...]
    second_game: SecondGame | None
    second_game_first_most: int | None
    most_days_running: int | None
    catching: Catching
    year_innings: int | None
    months_off: int | None
    months_off_running: int | None
    unknown_as: int
    unconfirmed: frozenset[str] = frozenset()
    gaps: frozenset[str] = frozenset()
    notes: tuple[str, ...] = ()

    def step_for(self, count: int) -> RestStep | None:
        """Return the rest step `count` (0 or more) falls in, None where the table does not reach it."""
        steps = self._steps_by_count
        return steps[count] if count < len(steps) else steps[-1]

    @cached_property
    def _steps_by_count(self) -> tuple[RestStep | None, ...]:
        """The step of every count up to one past the last the table names."""
        last = max((step.high or step.low for step in self.rest), default=0)
        return tuple(
            next(
                (
                    step
                    for step in self.rest
                    if step.low <= count and (step.high is None or count <= step.high)
                ),
                None,
            )
            for count in range(last + 2)
        )

    @property
    def table_end(self) -> int | None:
        """The last count the rest table names; None for an open end or no table at all."""
        return self.rest[-1].high if self.rest else None


@dataclass(frozen=True)
class RuleSet:
    """One body's rules in one edition, and how well they were read.

    finish_batter: whether a batter begun under the daily limit may be finished; None where it was not read.
    stricter_edition: another edition that owes more rest in places, which then comes first; None for none.
    """

    slug: str
    title: str
    body: str
    document: str
    edition: str
    status: Status
    doubt: str | None
    link: str
    last_checked: datetime.date
    kind: Literal["guideline", "rule"]
    source: str
    counts: Unit
    rest_unit: Literal["days", "nights"]
    age_basis: AgeBasis
    age_reference: tuple[int, int] | None
    finish_batter: bool | None
    threshold_relief: bool
    automatic_walk_pitches: int
    warmups_count: bool
    no_game_counts: bool
    reentry_is_second_appearance: bool
    resets_each_level: bool
    stricter_edition: str | None
    bands: tuple[Band, ...]
    advice: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()

    @cached_property
    def by_level(self) -> bool:
        """True where a band is chosen by school level, not by age."""
        return all(band.age_min is None and band.age_max is None for band in self.bands)

    @cached_property
    def by_age(self) -> Mapping[int, Band]:
        """The band of each age; empty where bands are chosen by level."""
        return {
            age: band
            for band in self.bands
            if band.age_min is not None and band.age_max is not None
            for age in range(band.age_min, band.age_max + 1)
        }

    @cached_property
    def youngest(self) -> Band:
        """The youngest group, made strict enough that no other group would be told a later day."""

        def how_young(band: Band) -> tuple[int, int]:
            return (band.age_min or 0, band.daily_max if band.daily_max is not None else band.unknown_as)

        return dataclasses.replace(
            min(self.bands, key=how_young),
            unknown_as=max(band.unknown_as for band in self.bands),
            rest=_longest_rest(self.bands),
        )

    @property
    def unchecked(self) -> bool:
        """True where the whole rule set is from memory or in doubt."""
        return self.status == "from memory" or self.doubt is not None

    def unverified(self, band: Band) -> bool:
        """True where nobody should rely on this without having checked it at the body."""
        return self.unchecked or bool(band.gaps)


def check(plain: Mapping[str, Any]) -> None:
    """Check a rule set that stands on its own; raises RuleSetError with the field and the mend."""
    read("this rule set", plain)


def read(slug: str, plain: Mapping[str, Any]) -> RuleSet:
    """Turn the plain mapping of a rule set that stands on its own into a RuleSet."""
    own = Plain(slug, plain)
    counts: Unit = own.one_of("counts", ("pitches", "outs"))
    bands = own.parts("bands")
    if not bands:
        raise RuleSetError(slug, "bands", "give at least one age group or level")
    read_bands = tuple(_band(band, own) for band in bands)
    _check_ages(slug, read_bands)
    return RuleSet(
        slug=slug,
        title=own.text("title"),
        body=own.text("body"),
        document=own.text("document"),
        edition=own.text("edition"),
        status=own.one_of("status", ("read at the body", "read in a copy", "from memory")),
        doubt=own.text("doubt") if own.given("doubt") else None,
        link=own.text("link"),
        last_checked=own.date("last_checked"),
        kind=own.one_of("kind", ("guideline", "rule")),
        source=own.text("source"),
        counts=counts,
        rest_unit=own.one_of("rest_unit", ("days", "nights")),
        age_basis=own.one_of(
            "age_basis", ("actual age", "league age", "birth year", "school level", "not stated")
        ),
        age_reference=_month_and_day(own),
        finish_batter=own.yes("finish_batter", missing=False) if own.given("finish_batter") else None,
        threshold_relief=own.yes("threshold_relief", missing=False),
        automatic_walk_pitches=own.count_or_none("automatic_walk_pitches") or 0,
        warmups_count=own.yes("warmups_count", missing=False),
        no_game_counts=own.yes("no_game_counts", missing=True),
        reentry_is_second_appearance=own.yes("reentry_is_second_appearance", missing=True),
        resets_each_level=own.yes("resets_each_level", missing=False),
        stricter_edition=own.text("stricter_edition") if own.given("stricter_edition") else None,
        bands=read_bands,
        advice=own.texts("advice"),
        notes=own.texts("notes"),
    )


def level_name(label: str) -> str:
    """Return a band's label as a plain name: "Grades 9-12" is grades-9-12."""
    return re.sub(r"[^a-z0-9]+", "-", label.lower()).strip("-")


def _band(own: Plain, whole: Plain) -> Band:
    rest = tuple(_step(step) for step in own.parts("rest"))
    daily_max = own.count_or_none("daily_max", least=1)
    caps = tuple(_cap(cap) for cap in (*whole.parts("caps"), *own.parts("caps")))
    counted = [cap.most for cap in caps if cap.unit == whole.text("counts")]
    if daily_max is None and not rest and not counted:
        raise own.error("daily_max", "a band needs a daily limit, a rest table or a limit over several days")
    _check_rest(own, rest, daily_max)
    unknown_as = daily_max if daily_max is not None else max([*counted, *(step.low for step in rest)])
    game_rule = own if own.given("second_game") else whole
    return Band(
        label=own.text("label"),
        level=level_name(own.text("label")),
        age_min=own.count_or_none("age_min"),
        age_max=own.count_or_none("age_max"),
        daily_max=daily_max,
        rest=rest,
        caps=caps,
        second_game=_second_game(game_rule),
        second_game_first_most=game_rule.count_or_none("second_game_first_most"),
        most_days_running=own.count_or_none("most_days_running", least=1)
        or whole.count_or_none("most_days_running", least=1),
        catching=_catching((own if own.given("catching") else whole).part("catching")),
        year_innings=own.count_or_none("year_innings"),
        months_off=own.count_or_none("months_off", most=12),
        months_off_running=own.count_or_none("months_off_running", most=12),
        unknown_as=unknown_as,
        unconfirmed=_limits_named(own, "unconfirmed"),
        gaps=_limits_named(own, "gaps"),
        notes=own.texts("notes"),
    )


def _step(own: Plain) -> RestStep:
    return RestStep(own.count("low"), own.count_or_none("high"), own.count("rest", most=MOST_REST))


def _cap(own: Plain) -> Cap:
    window: Literal["rolling", "week"] = own.one_of("window", ("rolling", "week"))
    most, unit = own.count("most", least=1), own.one_of("unit", ("pitches", "outs", "appearances"))
    if window == "rolling":
        return Cap(most, unit, window, days=own.count("days", least=2, most=31))
    return Cap(most, unit, window, week_starts=WEEKDAYS.index(own.one_of("week_starts", WEEKDAYS)))


def _catching(own: Plain | None) -> Catching:
    if own is None:
        return Catching()
    return Catching(
        own.count_or_none("no_pitching_after_innings"),
        own.count_or_none("no_catching_after_pitches"),
        own.count_or_none("no_return_after_pitches"),
        own.yes("threshold_relief", missing=False),
        own.yes("advised_against", missing=False),
    )


def _second_game(own: Plain) -> SecondGame | None:
    if not own.given("second_game"):
        return None
    said: SecondGame = own.one_of(
        "second_game", ("allowed", "after a small first game", "advised against", "barred")
    )
    if said == "after a small first game" and not own.given("second_game_first_most"):
        raise own.error("second_game_first_most", "say how large the first game may be")
    return said


def _limits_named(own: Plain, name: str) -> frozenset[str]:
    named = frozenset(own.texts(name))
    if wrong := sorted(named - LIMITS):
        raise own.error(name, f"{wrong[0]} is not a limit; there are {', '.join(sorted(LIMITS))}")
    return named


def _month_and_day(own: Plain) -> tuple[int, int] | None:
    if not own.given("age_reference"):
        if own.one_of("age_basis", None) == "league age":
            raise own.error("age_reference", "a league age needs the day that fixes it, as MM-DD")
        return None
    found = re.fullmatch(r"(\d\d)-(\d\d)", own.text("age_reference"))
    if not found:
        raise own.error("age_reference", "write month and day as MM-DD, like 08-31")
    return int(found[1]), int(found[2])


def _longest_rest(bands: tuple[Band, ...]) -> tuple[RestStep, ...]:
    """Return one rest table that owes, at every count, the most that any of the tables owes."""
    steps = [step for band in bands for step in band.rest]
    ends = [step.high for step in steps]
    last = None if None in ends else max((end for end in ends if end is not None), default=None)
    table: list[RestStep] = []
    for low in sorted({step.low for step in steps}):
        rest = max(step.rest for band in bands if (step := band.step_for(low)) is not None)
        if table and rest <= table[-1].rest:
            continue
        if table:
            table[-1] = dataclasses.replace(table[-1], high=low - 1)
        table.append(RestStep(low, last, rest))
    return tuple(table)


def _check_rest(own: Plain, rest: tuple[RestStep, ...], daily_max: int | None) -> None:
    if not rest:
        return
    if rest[0].low > 1:
        raise own.error("rest", "the first step must begin at 0 or 1")
    for step, following in itertools.pairwise(rest):
        if step.high is None:
            raise own.error("rest", "only the last step may be open")
        if following.low != step.high + 1:
            raise own.error("rest", f"a step ends at {step.high}, so the next begins at {step.high + 1}")
        if following.rest <= step.rest:
            raise own.error("rest", "each step must owe more rest than the one before")
    if any(step.high is not None and step.high < step.low for step in rest):
        raise own.error("rest", "a step must not end before it begins")
    end = rest[-1].high
    if daily_max is not None and end is not None and daily_max > end:
        raise own.error("daily_max", f"the rest table stops at {end}, below the daily limit")


def _check_ages(slug: str, bands: tuple[Band, ...]) -> None:
    if len({band.level for band in bands}) < len(bands):
        raise RuleSetError(slug, "bands", "two bands have the same label")
    ages = [(band.age_min, band.age_max) for band in bands]
    if all(low is None and high is None for low, high in ages):
        return
    previous: int | None = None
    for low, high in ages:
        if low is None or high is None:
            raise RuleSetError(slug, "bands", "give every band age_min and age_max, or none of them")
        if high < low:
            raise RuleSetError(slug, "age_max", f"ages {low} to {high} run backward")
        if previous is not None and low != previous + 1:
            raise RuleSetError(
                slug, "age_min", f"a band ends at age {previous}, so the next begins one later"
            )
        previous = high

"""Whether a pitcher may catch for the rest of a day on which they pitched."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calculators.workload.days import Day
from calculators.workload.rules import Band


@dataclass(frozen=True)
class CatchingBar:
    """Why somebody may not catch: the rule, what was counted and the count that bars."""

    rule: Literal["pitched", "caught before"]
    count: int
    limit: int


def bar_to_catching(band: Band, day: Day) -> CatchingBar | None:
    """Return what bars catching for the rest of the day, None where no rule does.

    day: the outings of that day added up under the band.
    """
    rules = band.catching
    count = day.for_rest if rules.threshold_relief else day.total
    if rules.no_catching_after_pitches is not None and count >= rules.no_catching_after_pitches:
        return CatchingBar("pitched", count, rules.no_catching_after_pitches)
    limit = rules.no_return_after_pitches
    if limit is not None and day.innings_caught > 0 and day.total >= limit:
        return CatchingBar("caught before", day.total, limit)
    return None

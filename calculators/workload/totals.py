"""What a pitcher threw over weeks and months. Totals only: no ratio, no score, no forecast."""

from __future__ import annotations

import datetime
import itertools
from collections.abc import Iterable
from dataclasses import dataclass
from typing import NamedTuple

from calculators.workload.outings import Outing, by_day, one_count_a_game


class Total(NamedTuple):
    """A sum of what is known. `missing` outings had no count and are not in `known`."""

    known: int
    outings: int
    missing: int


@dataclass(frozen=True)
class Totals:
    """A pitcher's load up to and with `today`.

    last_7, last_28: pitches in that many days. other_throws: known throws outside the count, 28 days.
    months: calendar months with an outing among the last twelve.
    longest_gap: the most whole days without an outing between two of the last 12 months' outings.
    year_outs: outs in the last 12 months; three are an inning.
    breaking_28: breaking balls among the pitches of 28 days; an outing without their number is missing.
    """

    today: datetime.date
    last_7: Total
    last_28: Total
    other_throws: int
    months: int
    longest_gap: int | None
    year_outs: Total
    breaking_28: Total


def totals(outings: Iterable[Outing], today: datetime.date) -> Totals:
    """Add up a log of one pitcher, all teams together; outings dated after today are left out."""
    logged = [outing for outing in outings if outing.date <= today]
    past = [outing for outing in logged if outing.pitched]
    year = [outing for outing in past if outing.date > _a_year_before(today)]
    days = sorted({outing.date for outing in year})
    gaps = [(later - earlier).days - 1 for earlier, later in itertools.pairwise(days)]
    last_7, last_28 = recent(past, today)
    return Totals(
        today=today,
        last_7=last_7,
        last_28=last_28,
        other_throws=sum(o.other_throws or 0 for o in logged if _within(o.date, today, 28)),
        months=len(_last_twelve_months(today) & {(day.year, day.month) for day in days}),
        longest_gap=max(gaps, default=None),
        year_outs=_total([outing.outs for outing in year]),
        breaking_28=_total([o.breaking for o in past if _within(o.date, today, 28)]),
    )


def recent(outings: Iterable[Outing], today: datetime.date) -> tuple[Total, Total]:
    """Return the pitches of the last 7 and of the last 28 days, today the last of them."""
    of_28 = by_day(o for o in outings if _within(o.date, today, 28) and o.pitched)
    last_28 = [outing for of_day in of_28.values() for outing in one_count_a_game(of_day)]
    last_7 = [_pitches(o) for o in last_28 if _within(o.date, today, 7)]
    return _total(last_7), _total([_pitches(outing) for outing in last_28])


def _pitches(outing: Outing) -> int | None:
    """Return the pitches of an outing, None where its count is in doubt."""
    return None if outing.unsure else outing.pitches


def _within(date: datetime.date, today: datetime.date, days: int) -> bool:
    return 0 <= today.toordinal() - date.toordinal() < days


def _total(counts: list[int | None]) -> Total:
    known = [count for count in counts if count is not None]
    return Total(sum(known), len(counts), len(counts) - len(known))


def _last_twelve_months(today: datetime.date) -> set[tuple[int, int]]:
    newest = today.year * 12 + today.month - 1
    return {(month // 12, month % 12 + 1) for month in range(newest - 11, newest + 1)}


def _a_year_before(today: datetime.date) -> datetime.date:
    if (today.month, today.day) == (2, 29):
        return today.replace(year=today.year - 1, day=28)
    return today.replace(year=today.year - 1)

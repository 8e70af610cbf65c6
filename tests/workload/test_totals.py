"""Totals over weeks and months: sums of what is known, with what is missing beside them."""

from __future__ import annotations

import datetime

from calculators.workload.outings import Outing
from calculators.workload.rest import ONE_DAY
from calculators.workload.totals import totals

TODAY = datetime.date(2026, 5, 16)


def ago(days: int, pitches: int | None, **more: int) -> Outing:
    return Outing(TODAY - days * ONE_DAY, pitches, **more)


def test_seven_days_hold_today_and_the_six_days_before() -> None:
    load = totals([ago(0, 10), ago(6, 20), ago(7, 40)], TODAY)
    assert (load.last_7.known, load.last_28.known) == (30, 70)


def test_twenty_eight_days_end_with_today() -> None:
    load = totals([ago(27, 10), ago(28, 20)], TODAY)
    assert load.last_28.known == 10


def test_a_missing_count_stays_missing() -> None:
    load = totals([ago(1, None), ago(2, 30)], TODAY)
    assert (load.last_7.known, load.last_7.outings, load.last_7.missing) == (30, 2, 1)


def test_outings_after_today_are_left_out() -> None:
    assert totals([ago(-1, 30)], TODAY).last_7.outings == 0


def test_months_are_calendar_months_of_the_last_twelve() -> None:
    outings = [Outing(datetime.date(2026, 5, 1), 10), Outing(datetime.date(2026, 4, 30), 10)]
    old = [Outing(datetime.date(2025, 5, 30), 10), Outing(datetime.date(2025, 6, 1), 10)]
    assert totals(outings + old, TODAY).months == 3


def test_the_longest_gap_counts_whole_days_between_outings() -> None:
    assert totals([ago(0, 10), ago(4, 10), ago(60, 10)], TODAY).longest_gap == 55
    assert totals([ago(0, 10)], TODAY).longest_gap is None


def test_twelve_months_of_outs_begin_a_year_before_today() -> None:
    load = totals([ago(0, 10, outs=4), ago(364, 10, outs=3), ago(365, 10, outs=9), ago(9, 10)], TODAY)
    assert (load.year_outs.known, load.year_outs.missing) == (7, 1)


def test_bullpen_throws_stand_beside_the_count() -> None:
    load = totals([ago(1, 0, other_throws=30), ago(2, 40, other_throws=25)], TODAY)
    assert (load.last_28.known, load.last_28.outings, load.other_throws) == (40, 1, 55)

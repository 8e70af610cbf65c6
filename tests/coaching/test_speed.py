"""Fast enough for a phone at the field: measured here on a computer, with room to spare."""

from __future__ import annotations

import time
from dataclasses import replace

from calculators.coaching.comparison import compare
from calculators.coaching.reading import read
from calculators.coaching.session_file import own_mapping, read_sheet, write_sessions
from calculators.coaching.sheet import open_sheet
from calculators.coaching.throws import BREAKING_BALL, Session
from tests.coaching.pens import breaking_balls, numbered


def day(throws: int) -> Session:
    third = throws // 3
    blocks = [
        replace(throw, cue="box-line" if block == 2 else "", block=block)
        for block in (1, 2, 3)
        for throw in breaking_balls(third + (throws % 3 if block == 3 else 0), seed=block)
    ]
    return Session(numbered(blocks), movement="spin, whole flight")


def fastest(work, times: int) -> float:
    def once() -> float:
        start = time.perf_counter()
        work()
        return time.perf_counter() - start

    return min(once() for _ in range(times))


def test_ten_thousand_throws_are_read_and_compared_within_a_second() -> None:
    text = write_sessions([day(10_000)])

    def work() -> None:
        sheet = open_sheet(text)
        (session,) = read_sheet(sheet, own_mapping(sheet, "right"), ("fastball name",)).sessions
        assert len(session.throws) == 10_000
        assert compare(session, "box-line").differences["speed"].cued_count == 3333

    assert fastest(work, 3) < 1.0


def test_a_session_of_two_hundred_takes_a_small_part_of_that() -> None:
    session = day(200)

    def work() -> None:
        read(session.throws, BREAKING_BALL)
        compare(session, "box-line")

    assert fastest(work, 10) < 0.030

"""A throw holds what was seen: what is not known stays unknown, and why."""

from __future__ import annotations

import pytest

from calculators.coaching.throws import Session, Throw, ThrowError, strikes, values, written_clock


def test_a_missing_value_stays_missing_and_says_why() -> None:
    throw = Throw(1, "breaking ball", missing=(("speed", "bad read"), ("spin", "did not throw")))
    assert throw.speed is None
    assert throw.why_missing("speed") == "bad read"
    assert throw.why_missing("clock") == "not measured"
    assert Throw(1, "breaking ball", speed=70.0).why_missing("speed") is None


def test_a_throw_that_nobody_called_is_neither_strike_nor_ball() -> None:
    thrown = [Throw(1, "fastball", strike=True), Throw(2, "fastball"), Throw(3, "fastball", strike=False)]
    assert strikes(thrown) == (1, 2)


def test_the_clock_of_bullet_spin_is_not_averaged() -> None:
    thrown = [
        # Common practice: with about two thirds of the spin or more turning like a bullet, the clock is noise.
        Throw(1, "slider", clock=9.0, active=33.0),
        Throw(2, "slider", clock=7.0, active=37.0),
        Throw(3, "slider", clock=8.0),
    ]
    assert values(thrown, "clock") == [7.0, 8.0]


@pytest.mark.parametrize(
    ("field", "given"),
    [
        ("speed", {"speed": 128.0}),
        ("spin", {"spin": float("nan")}),
        ("clock", {"clock": 12.0}),
        ("active", {"active": 140.0}),
        ("rating", {"rating": 6}),
        ("number", {"number": 0}),
        ("pitch", {"pitch": ""}),
        ("cue", {"cue": "=1+1"}),
        ("missing", {"speed": 70.0, "missing": (("speed", "bad read"),)}),
    ],
)
def test_what_cannot_be_is_refused_by_name(field: str, given: dict[str, object]) -> None:
    with pytest.raises(ThrowError) as caught:
        Throw(**{"number": 1, "pitch": "fastball", **given})
    assert caught.value.field == field


def test_a_session_from_another_world_is_refused() -> None:
    with pytest.raises(ThrowError):
        Session((), distance=605.0)


@pytest.mark.parametrize(
    ("hours", "written"), [(0.0, "12:00"), (0.75, "12:45"), (7.5, "7:30"), (11.9999, "12:00")]
)
def test_clocks_are_written_as_a_coach_writes_them(hours: float, written: str) -> None:
    assert written_clock(hours) == written

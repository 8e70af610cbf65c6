"""A session read: middles, scatter, strikes, the pitcher's own guess, and what was set aside."""

from __future__ import annotations

from dataclasses import replace

import pytest

from calculators.coaching.box import Box, share_inside
from calculators.coaching.clock_faces import Band
from calculators.coaching.reading import BadReads, area_interval, deviation_interval, read, set_aside
from calculators.coaching.throws import BREAKING_BALL, Throw
from tests.coaching.pens import breaking_balls, fastballs, numbered

SESSION = numbered([*fastballs(10), *breaking_balls(20)])


def test_speed_is_read_against_the_same_days_fastball() -> None:
    found = read(SESSION, BREAKING_BALL)
    assert found.speed_percent is not None
    assert found.speed_percent.interval is not None
    assert found.speed_percent.interval.holds(100 * 65 / 80)
    assert found.speed_percent.value == pytest.approx(100 * 65 / 80, abs=0.8)


def test_without_a_fastball_there_is_no_percent() -> None:
    assert read(breaking_balls(10), BREAKING_BALL).speed_percent is None


def test_clocks_on_both_sides_of_twelve_are_averaged_on_the_dial() -> None:
    thrown = [
        Throw(n, "cutter", clock=clock) for n, clock in enumerate((11.5, 11.75, 0.0, 0.25, 0.5, 0.0), 1)
    ]
    clock = read(thrown, "cutter").summaries["clock"].typical
    assert min(clock.value, 12 - clock.value) == pytest.approx(0, abs=1e-9)
    assert clock.interval is not None
    assert clock.interval.high - clock.interval.low < 1


def test_what_was_not_measured_is_counted_by_its_reason_and_never_as_zero() -> None:
    thrown = [
        replace(SESSION[10], speed=None, missing=(("speed", "bad read"),)),
        replace(SESSION[11], speed=None),
        *SESSION[12:],
    ]
    speed = read(thrown, BREAKING_BALL).summaries["speed"]
    assert speed.count == 18
    assert dict(speed.missing) == {"bad read": 1, "not measured": 1}
    assert speed.typical.value > 60


def test_a_quantity_nobody_measured_is_absent() -> None:
    thrown = [Throw(n, BREAKING_BALL, strike=True) for n in range(1, 6)]
    found = read(thrown, BREAKING_BALL)
    assert found.summaries == {}
    assert (found.strikes, found.called, found.cloud) == (5, 5, None)


def test_bad_reads_are_decided_by_one_rule_for_every_throw_and_listed() -> None:
    odd = replace(SESSION[15], speed=31.0, cue="window-blind")
    rule = BadReads({"speed": (50, 100)})
    kept, aside = set_aside([*SESSION[:15], odd, *SESSION[16:]], rule)
    assert [(one.number, one.quantity, one.value) for one in aside] == [(16, "speed", 31.0)]
    assert len(kept) == len(SESSION)
    assert kept[15].why_missing("speed") == "bad read"
    assert kept[15].clock == odd.clock


def test_the_pitchers_own_guess_is_right_within_two_mph_or_half_an_hour() -> None:
    thrown = [
        Throw(1, BREAKING_BALL, speed=65.0, guess_speed=67.0),
        Throw(2, BREAKING_BALL, speed=65.0, guess_speed=68.0),
        Throw(3, BREAKING_BALL, clock=6.25, guess_clock=6.75),
        Throw(4, BREAKING_BALL, guess_clock=6.75),
    ]
    found = read(thrown, BREAKING_BALL)
    assert (found.guesses_right, found.guesses) == (2, 3)


def test_scatter_intervals_hold_what_was_measured() -> None:
    found = read(SESSION, BREAKING_BALL)
    spread = deviation_interval(SESSION[10:], "clock")
    area = area_interval(SESSION[10:])
    assert spread is not None
    assert area is not None
    assert found.cloud is not None
    assert spread.holds(found.summaries["clock"].deviation)
    assert area.holds(found.cloud.ellipse.area)
    assert deviation_interval(SESSION[:2], "speed") is None
    assert area_interval(SESSION[:2]) is None


class TestShareInside:
    BOX = Box((78, 84), Band(5.75, 6.75), (75, 100))

    @pytest.mark.parametrize(
        ("inside", "given"),
        [
            (True, {"speed": 65.0, "clock": 6.2, "active": 80.0}),
            (True, {"speed": 65.0, "clock": 6.2}),
            (False, {"speed": 65.0, "clock": 7.2}),
            (None, {"clock": 7.2}),
            (None, {"speed": 70.0}),
            (False, {"speed": 65.0, "clock": 6.2, "active": 60.0}),
            (None, {"speed": 65.0}),
            (None, {"clock": 6.2, "active": 80.0}),
            (None, {}),
        ],
    )
    def test_a_throw_counts_only_where_its_numbers_decide(self, inside: bool | None, given) -> None:
        assert self.BOX.holds(Throw(1, BREAKING_BALL, **given), 80.0) is inside

    def test_one_missing_value_never_makes_a_throw_an_outside_one(self) -> None:
        """Else a gun that fails now and then would lower the share: inside needs both, outside only one."""
        whole = [Throw(n, BREAKING_BALL, speed=65.0, clock=6.2 if n <= 6 else 7.5) for n in range(1, 11)]
        failing = [replace(throw, speed=None) if throw.number % 2 else throw for throw in whole]
        for thrown in (whole, failing):
            found = share_inside(thrown, self.BOX, 80.0)
            assert found.inside / found.judged == 0.6

    def test_what_was_measured_on_no_throw_does_not_decide(self) -> None:
        thrown = [Throw(n, BREAKING_BALL, clock=6.2 if n <= 6 else 7.5) for n in range(1, 9)]
        found = share_inside(thrown, self.BOX, 80.0)
        assert (found.inside, found.judged, found.not_judged, found.by) == (6, 8, 0, ("clock",))
        timed = [replace(thrown[0], speed=65.0), *thrown[1:]]
        assert share_inside(timed, self.BOX, 80.0).by == ("speed", "clock")

    def test_an_active_share_alone_decides_nothing(self) -> None:
        found = share_inside([Throw(1, BREAKING_BALL, active=80.0)], self.BOX, 80.0)
        assert (found.judged, found.not_judged, found.by) == (0, 1, ())

    def test_throws_that_cannot_be_judged_stay_out_of_the_share(self) -> None:
        thrown = [
            Throw(1, BREAKING_BALL, speed=65.0, clock=6.2),
            Throw(2, BREAKING_BALL, speed=65.0, clock=7.5),
            Throw(3, BREAKING_BALL, speed=65.0),
        ]
        found = share_inside(thrown, self.BOX, 80.0)
        assert (found.inside, found.judged, found.not_judged) == (1, 2, 1)
        assert found.interval is not None
        assert found.interval.holds(0.5)

    def test_without_a_fastball_no_speed_can_be_judged(self) -> None:
        assert share_inside(breaking_balls(5), Box((78, 84), None, (0, 100)), None).judged == 0

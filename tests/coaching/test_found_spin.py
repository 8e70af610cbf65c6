"""From movement, however it was counted, back to the spin; and the slip behind a spin that cannot be."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.coaching.found_spin import Crossed, likely, mends, rate_doubts, spin_behind
from calculators.coaching.movement_counts import forty_feet_factor, whole_flight
from calculators.physics.aim import pitch_to, thrown
from calculators.physics.flight import STILL_AIR, Conditions, Flight, fly
from calculators.physics.movement import Movement, fall, movement, spinless
from calculators.physics.spin import Spin
from calculators.physics.units import FOOT, INCH, MPH, RPM

HAND = (-1.5 * FOOT, 55 * FOOT, 5.6 * FOOT)
TARGET = (0.0, 28 * INCH)
CROSSED = Crossed(HAND, 68 * MPH, TARGET, STILL_AIR)
SPIN = Spin(2050 * RPM, 7.0, 0.75)


def flown(spin: Spin[float], mph: float = 68) -> tuple[Flight[float], Movement[float]]:
    """Return a flight aimed at the zone, and its movement."""
    flight = pitch_to(TARGET, HAND, mph * MPH, spin)
    plain = fly(spinless(thrown(HAND, flight.start.velocity, spin)))
    return flight, movement(flight.end, plain.end)


@given(st.floats(55, 95), st.floats(1000, 2600), st.floats(4, 9), st.floats(0.5, 0.95))
def test_what_spin_did_leads_back_to_the_spin(mph: float, rpm: float, clock: float, active: float) -> None:
    spin = Spin(rpm * RPM, clock, active)
    _, moved = flown(spin, mph)
    crossed = Crossed(HAND, mph * MPH, TARGET, STILL_AIR)
    _, found = spin_behind(moved, "whole", crossed, spin.rate)
    assert found.rate == pytest.approx(active * spin.rate, rel=0.04)
    assert found.clock == pytest.approx(clock, abs=0.12)


def test_a_drop_with_gravity_in_it_leads_to_the_same_spin() -> None:
    flight, moved = flown(SPIN)
    with_gravity = Movement(moved.across, -fall(flight))
    whole, found = spin_behind(with_gravity, "gravity", CROSSED, SPIN.rate)
    assert whole.up == pytest.approx(moved.up, abs=0.6 * INCH)
    assert found.rate == pytest.approx(0.75 * SPIN.rate, rel=0.06)


def test_without_drag_the_count_over_forty_feet_is_as_the_squares_of_the_ways() -> None:
    # Half the push times time squared, at steady speed: (53.58 / 38.58)^2.
    factor = forty_feet_factor(55 * FOOT, 30.0, Conditions(density=1e-6))
    assert factor == pytest.approx(((55 - 17 / 12) / (40 - 17 / 12)) ** 2, rel=1e-5)


def test_a_release_inside_forty_feet_has_only_one_count() -> None:
    assert forty_feet_factor(39 * FOOT, 30.0, STILL_AIR) == 1.0


def test_the_count_by_spin_over_the_whole_flight_is_left_alone() -> None:
    moved = Movement(0.2, -0.3)
    assert whole_flight(moved, "whole", TARGET, HAND, 30.0, STILL_AIR) == moved


def test_inches_that_were_centimeters_are_found_out() -> None:
    _, moved = flown(SPIN)
    mistaken = Movement(2.54 * moved.across, 2.54 * moved.up)
    slips = {mend.slip: mend.share for mend in mends(mistaken, "whole", CROSSED, SPIN.rate, inches=True)}
    assert slips["centimeters"] == pytest.approx(0.75, abs=0.06)


@pytest.mark.parametrize(
    ("share", "named"),
    # A curve hardly ever has less than a sixth of its spin active, and no ball has more than all of it; a
    # little more may be the doubt of the lift (estimate).
    [(0.10, False), (0.20, True), (1.05, True), (1.30, False)],
)
def test_centimeters_are_named_only_where_they_would_make_a_pitch(share: float, named: bool) -> None:
    _, moved = flown(SPIN)
    _, found = spin_behind(moved, "whole", CROSSED)
    mistaken = Movement(2.54 * moved.across, 2.54 * moved.up)
    slips = {mend.slip for mend in mends(mistaken, "whole", CROSSED, found.rate / share, inches=True)}
    assert ("centimeters" in slips) is named


def test_a_drop_whose_gravity_was_left_in_is_found_out() -> None:
    flight, moved = flown(SPIN)
    mistaken = Movement(moved.across, -fall(flight))
    slips = {mend.slip: mend.share for mend in mends(mistaken, "whole", CROSSED, SPIN.rate, inches=True)}
    assert slips["gravity"] == pytest.approx(0.75, abs=0.06)


def test_a_whole_flight_taken_for_the_last_forty_feet_is_found_out() -> None:
    _, moved = flown(SPIN)
    slips = {mend.slip: mend.share for mend in mends(moved, "forty", CROSSED, SPIN.rate, inches=True)}
    assert slips["whole"] == pytest.approx(0.75, abs=0.06)


def test_a_movement_entered_in_centimeters_is_not_suspected_of_being_so() -> None:
    slips = mends(Movement(0.6, -1.0), "whole", CROSSED, SPIN.rate, inches=False)
    assert "centimeters" not in {mend.slip for mend in slips}


def test_no_pitch_drops_five_feet_by_spin_alone_but_with_gravity_it_does() -> None:
    five_feet = Movement(0.0, -5 * FOOT)
    assert not likely(five_feet, "whole", CROSSED)
    assert likely(five_feet, "gravity", CROSSED)


def test_where_the_lift_curve_is_flat_the_lift_is_the_largest_doubt() -> None:
    # C_L = 0.09 + 0.6 S: at S = 0.2 a tenth of C_L is 0.021, and so 0.035 of S, which is 17 percent.
    _, moved = flown(SPIN)
    _, found = spin_behind(moved, "whole", CROSSED, SPIN.rate)
    found_doubts = rate_doubts(found, moved, CROSSED.speed)
    assert found_doubts[0].cause == "lift"
    ratio = found.spin_ratio
    expected = 0.1 * (0.09 + 0.6 * ratio) / (0.6 * ratio)
    assert found_doubts[0].share == pytest.approx(expected, rel=0.01)

"""Break to spin for those who have no movement: where the pitch left and crossed, or nine numbers."""

from __future__ import annotations

import pytest

from calculators.desk.break_to_spin import CALCULATOR
from calculators.desk.fields import Problem
from calculators.physics.aim import launch_velocity
from calculators.physics.air import density_at
from calculators.physics.flight import Conditions, Release, arrive
from calculators.physics.spin import Spin, spin_vector
from calculators.physics.units import DEGREE, FOOT, INCH, MPH, RPM, celsius
from calculators.words import speak
from tests.desk.test_break_to_spin import ENGLISH, facts, first_number, headline, outcome, text

PUBLISHED = "1.958 50 6.041  -0.469 -115.739 -0.622  -10.947 23.455 -32.665"
"""A public sample of nine numbers, worked by the equations of A. M. Nathan's note on the spin axis (2015) from
55 ft before the plate's tip: 1249.5 rpm active, 79.60 mph there, 72.70 mph and 2.615 ft up at the plate."""


def refused(**typed: str) -> dict[str, str]:
    """Return what is asked or refused, by field."""
    found = outcome(**typed)
    assert isinstance(found, tuple)
    assert all(isinstance(one, Problem) for one in found)
    return {one.field: speak(one.message, ENGLISH) for one in found}


def test_the_published_sample_of_nine_numbers_gives_its_published_spin() -> None:
    # The sample was worked in air of 1.197 kg/m3 (Nathan's equations, 2015), which sea level has at 70 F.
    sample = {"way": "path", "nine": PUBLISHED, "total_spin": "", "extension": "5.5", "altitude": "0"}
    assert first_number(headline(**sample).replace(",", "")) == pytest.approx(1250, abs=15)
    said = text(**sample)
    assert "left the hand at 79.6 mph and crossed at 72.7 mph, 31 in up" in said


def test_nine_numbers_of_a_left_hander_read_as_the_mirror_image() -> None:
    mirrored = "-1.958 50 6.041 0.469 -115.739 -0.622 10.947 23.455 -32.665"
    right = facts(way="path", nine=PUBLISHED, total_spin="")
    left = facts(way="path", nine=mirrored, total_spin="", hand="left")
    assert left["Active spin"] == right["Active spin"]
    hour, minute = (int(part) for part in right["Clock"].split(":"))
    assert left["Clock"] == f"{(12 - hour - (minute > 0)) % 12 or 12}:{(60 - minute) % 60:02}"


@pytest.mark.parametrize(
    ("nine", "mend"),
    [
        ("", "you entered 0"),
        ("1 2 3", "you entered 3"),
        (PUBLISHED.replace("-115.739", "115.739"), "vy is −165 to −40"),
        (PUBLISHED.replace("50", "15.24").replace("-115.739", "-35.3"), "vy is −165 to −40"),
        (PUBLISHED.replace("6.041", "six"), "z0 is not a number"),
    ],
)
def test_nine_numbers_that_are_no_pitch_say_which_one_to_mend(nine: str, mend: str) -> None:
    assert mend in refused(way="path", nine=nine)["nine"]


@pytest.mark.parametrize("hand", ["right", "left"])
def test_where_a_pitch_left_and_crossed_leads_back_to_its_spin(hand: str) -> None:
    glove = -1 if hand == "left" else 1
    position = (-glove * 1.5 * FOOT, 55 * FOOT, 5.6 * FOOT)
    velocity = launch_velocity(68 * MPH, 3.0 * DEGREE, glove * 0.5 * DEGREE)
    spin = Spin(2050 * RPM, 7.0 if glove > 0 else 5.0, 0.75, glove)
    air = Conditions(density=density_at(300 * FOOT, celsius(70.0), 0.5))
    x, _, z = arrive(Release(position, velocity, spin_vector(spin, velocity)), air).position
    told = {
        "angle_up": "3",
        "angle_side": "0.5",
        "aim": f"{z / INCH:.2f}",
        "cross_side": f"{glove * x / INCH:.2f}",
    }
    found = facts(way="crossing", hand=hand, **told)
    assert first_number(found["Active share"]) == pytest.approx(75, abs=1)
    assert found["Clock"] in ("7:00", "5:00")


def test_where_a_pitch_left_and_crossed_needs_all_of_it() -> None:
    assert set(refused(way="crossing")) == {"angle_up", "angle_side", "cross_side", "aim"}
    assert CALCULATOR.example["way"] == "movement"

"""The break-to-spin calculator: what spin it finds behind a movement, and what it does not believe."""

from __future__ import annotations

import gettext
import re
from collections.abc import Mapping

import pytest

from calculators.desk import spin_to_break
from calculators.desk.answers import Answer, Shelf
from calculators.desk.break_to_spin import CALCULATOR
from calculators.desk.fields import Problem, read_fields
from calculators.desk.render_text import answer_text
from calculators.words import speak

ENGLISH = gettext.NullTranslations()
SHELF = Shelf()


def outcome(**typed: str) -> Answer | tuple[Problem, ...]:
    """Work out the example with some fields typed anew."""
    values, problems = read_fields(CALCULATOR.fields(SHELF), {**CALCULATOR.example, **typed})
    return problems or CALCULATOR.work_out(values, SHELF)


def answer(**typed: str) -> Answer:
    """Return the answer where one is due."""
    found = outcome(**typed)
    assert isinstance(found, Answer), [speak(problem.message, ENGLISH) for problem in found]
    return found


def text(**typed: str) -> str:
    return answer_text(answer(**typed), SHELF, ENGLISH)


def headline(**typed: str) -> str:
    return speak(answer(**typed).headline, ENGLISH)


def facts(**typed: str) -> Mapping[str, str]:
    """Return label and value of the facts."""
    return {speak(fact.label, ENGLISH): speak(fact.value, ENGLISH) for fact in answer(**typed).facts}


def first_number(words: str) -> float:
    match = re.search(r"\d+(\.\d+)?", words)
    assert match
    return float(match[0])


def moved(**typed: str) -> tuple[str, str, str]:
    """Return movement up, movement to the glove side and fall with gravity, by spin to break [in]."""
    raw = {**spin_to_break.CALCULATOR.example, **typed}
    values, _ = read_fields(spin_to_break.CALCULATOR.fields(SHELF), raw)
    found = spin_to_break.CALCULATOR.work_out(values, SHELF)
    assert isinstance(found, Answer)
    told = {speak(fact.label, ENGLISH): speak(fact.value, ENGLISH) for fact in found.facts}
    up, side = told["Up and down"], told["To the side"]
    feet, inches = re.findall(r"\d+", told["Total drop"])
    return (
        f"{'-' if 'down' in up else ''}{first_number(up)}",
        f"{'-' if 'arm' in side else ''}{first_number(side)}",
        f"-{12 * int(feet) + int(inches)}",
    )


@pytest.mark.parametrize(
    ("clock", "active", "hand"), [("7:00", 75, "right"), ("6:10", 90, "right"), ("4:20", 60, "left")]
)
def test_what_spin_to_break_says_leads_back_to_its_spin(clock: str, active: int, hand: str) -> None:
    up, side, _ = moved(clock=clock, active=str(active), hand=hand)
    found = facts(up=up, side=side, hand=hand)
    assert first_number(found["Active share"]) == pytest.approx(active, abs=3)
    hours, minutes = (int(part) for part in found["Clock"].split(":"))
    asked_hours, asked_minutes = (int(part) for part in clock.split(":"))
    assert 60 * hours + minutes == pytest.approx(60 * asked_hours + asked_minutes, abs=8)


def test_with_gravity_counted_in_the_share_is_the_same() -> None:
    up, side, total = moved()
    plain = first_number(facts(up=up, side=side)["Active share"])
    counted = first_number(facts(up=total, side=side, how="gravity")["Active share"])
    assert counted == pytest.approx(plain, abs=6)


def test_the_gyro_angle_is_that_of_the_share_and_its_sense_is_not_claimed() -> None:
    # Active share is the cosine of the gyro angle: 71 percent is 45 degrees.
    found = facts(up="-16.4", side="10.2")
    share, angle = first_number(found["Active share"]), first_number(found["Gyro angle"])
    assert share == pytest.approx(71, abs=2)
    assert angle == pytest.approx(45, abs=2)
    assert "cannot be told" in text()


def test_without_the_measured_spin_only_the_active_part_is_given() -> None:
    found = facts(total_spin="")
    assert "Active spin" in found
    assert "Active share" not in found
    assert "Gyro angle" not in found


def test_inches_that_were_centimeters_are_suspected() -> None:
    found = text(up="-40", side="25")
    assert found.startswith("These numbers do not fit.")
    assert "in centimeters" in found


def test_a_drop_with_gravity_left_in_is_suspected() -> None:
    found = text(up="-68", side="10")
    assert found.startswith("These numbers do not fit.")
    assert "counted with gravity" in found


def test_a_count_over_the_whole_flight_is_suspected_where_forty_feet_were_chosen() -> None:
    found = text(up="-16", side="10", how="forty")
    assert found.startswith("These numbers do not fit.")
    assert "over the whole flight" in found


def test_the_same_numbers_over_forty_feet_ask_for_much_more_spin() -> None:
    whole = first_number(facts(total_spin="", up="-8", side="4")["Active spin"])
    forty = first_number(facts(total_spin="", up="-8", side="4", how="forty")["Active spin"])
    assert forty > 1.6 * whole


def test_a_drop_toward_the_arm_side_asks_whether_the_view_was_the_catchers() -> None:
    found = text(up="-14", side="-9", total_spin="")
    assert "catcher's view" in found
    clock = facts(up="-14", side="-9", total_spin="")["Clock"]
    assert clock.startswith(("4:", "5:"))
    assert "the clock is 6:" in found or "the clock is 7:" in found
    assert "catcher's view" not in text()


@pytest.mark.parametrize(
    ("hand", "toward", "side"),
    [
        ("right", "glove", "10"),
        ("right", "catcher", "10"),
        ("right", "pitcher", "-10"),
        ("left", "glove", "10"),
        ("left", "catcher", "-10"),
        ("left", "pitcher", "10"),
    ],
)
def test_the_side_is_read_in_every_direction_it_is_written(hand: str, toward: str, side: str) -> None:
    clock = facts(hand=hand, toward=toward, side=side)["Clock"]
    hours, minutes = (int(part) for part in clock.split(":"))
    from_six = 60 * hours + minutes - 360
    assert from_six == pytest.approx(56 if hand == "right" else -56, abs=2)


def test_where_few_have_measured_the_answer_says_so() -> None:
    # The lift fit rests on spin ratios up to 0.3; read backward it runs away beyond.
    assert "Few measurements reach so far" in text(up="-24", side="12", total_spin="")
    assert "Few measurements" not in text()


def test_more_push_than_was_ever_measured_is_given_as_a_least_value() -> None:
    found = text(up="-45", side="20", total_spin="")
    assert "more than" in found
    assert "No ball with so much push has been measured" in found


def test_a_ball_that_hardly_moved_gets_no_clock() -> None:
    found = text(up="-0.5", side="0.5")
    assert found.startswith("Spin hardly moved this ball.")
    assert not re.search(r"\d:\d\d", found)


@pytest.mark.parametrize(("inches", "clock"), [(1.4, False), (1.6, True)])
def test_from_an_inch_and_a_half_on_the_movement_has_a_clock(inches: float, clock: bool) -> None:
    """Less may be the tracker's own error (estimate)."""
    assert ("Clock" in facts(up=f"-{inches}", side="0", total_spin="")) is clock


def test_a_rise_with_gravity_in_it_names_both_fields() -> None:
    found = outcome(up="10", how="gravity")
    assert not isinstance(found, Answer)
    assert {problem.field for problem in found} == {"up", "how"}


def test_centimeters_and_inches_of_one_movement_are_one_pitch() -> None:
    inches = facts(up="-16", side="10")
    centimeters = facts(up="-40.6", side="25.4", movement_unit="cm")
    for label in ("Clock", "Active share"):
        assert centimeters[label] == inches[label]


def test_a_movement_no_speed_can_have_is_refused_by_its_fields() -> None:
    found = outcome(speed="30", up="-200", side="0")
    assert not isinstance(found, Answer)
    assert {problem.field for problem in found} == {"up", "side", "speed"}


def test_the_paper_table_asks_for_more_spin_for_more_drop() -> None:
    (table,) = CALCULATOR.common_cases(SHELF)
    for row in table.rows:
        spins = [float(speak(cell, ENGLISH)) for cell in row[1:]]
        assert spins == sorted(spins)

"""The slot-and-shape calculator: what it offers an arm, what it refuses, and how it says so."""

from __future__ import annotations

import gettext
import re
from collections.abc import Mapping

import pytest

from calculators.desk.answers import Answer, Shelf
from calculators.desk.fields import Problem, read_fields
from calculators.desk.render_text import answer_text
from calculators.desk.slot_and_shape import CALCULATOR
from calculators.words import speak
from tests.coaching.content import handbook_shelf

ENGLISH = gettext.NullTranslations()
SHELF = handbook_shelf()


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


def fields_refused(**typed: str) -> set[str]:
    """Return the fields a refusal names."""
    found = outcome(**typed)
    assert not isinstance(found, Answer)
    return {problem.field for problem in found}


def fits(**typed: str) -> Mapping[str, str]:
    """Return how well each shape fits, as the table says."""
    (table,) = answer(**typed).tables
    return {speak(row[0], ENGLISH): speak(row[1], ENGLISH) for row in table.rows}


def test_a_straight_downer_is_refused_from_low_three_quarter_with_reason_and_alternative() -> None:
    # Common practice: from a low arm the elbow climbs and the head leaves.
    found = text(known="slot", slot="low-three-quarter", wanted="straight-downer")
    assert found.startswith("Do not ask this arm for a straight downer. Teach the slurve instead.")
    assert "the elbow climbs" in found


def test_a_straight_downer_is_refused_from_a_measured_low_fastball_too() -> None:
    assert headline(fastball_clock="2:20", wanted="straight-downer").startswith("Do not ask this arm")


def test_the_role_decides_what_is_taught_instead() -> None:
    typed = {"known": "slot", "slot": "low-three-quarter", "wanted": "straight-downer"}
    assert "three-quarter drop instead" in headline(**typed, role="steal-a-strike")


def test_overhand_does_not_get_the_sweeper() -> None:
    # Common practice.
    found = text(known="slot", slot="overhand", wanted="sweeper")
    assert found.startswith("Do not ask this arm for a sweeper.")
    assert "the elbow drops" in found
    assert fits(known="slot", slot="overhand")["Sweeper"] == "forced"


def test_overhand_gets_the_straight_downer() -> None:
    assert headline(known="slot", slot="overhand", wanted="straight-downer") == (
        "The straight downer fits this arm."
    )


def test_a_left_handers_high_three_quarter_mirrors_to_a_quarter_to_five_and_half_past() -> None:
    # Common practice: fastball 10:45 to 11:30, curve 4:45 to 5:30.
    (table,) = CALCULATOR.common_cases(SHELF)
    rows = {speak(row[0], ENGLISH): [speak(cell, ENGLISH) for cell in row[1:]] for row in table.rows}
    assert rows["High three-quarter"][0] == "6:30 to 7:15"
    assert rows["High three-quarter"][1] == "4:45 to 5:30"
    assert facts(hand="left", fastball_clock="11:00")["Opposite of the fastball"] == "5:00"


@pytest.mark.parametrize(("right", "left"), [("12:15", "11:45"), ("1:30", "10:30"), ("2:40", "9:20")])
def test_a_left_hander_is_offered_what_the_mirror_image_is(right: str, left: str) -> None:
    assert fits(fastball_clock=right) == fits(hand="left", fastball_clock=left)
    assert headline(fastball_clock=right) == headline(hand="left", fastball_clock=left)


def test_the_reach_is_three_quarters_of_an_hour_either_way() -> None:
    # Common practice.
    assert "from about 6:45 to 8:15" in text(fastball_clock="1:30")
    assert "from about 3:45 to 5:15" in text(hand="left", fastball_clock="10:30")


def test_a_photo_of_an_arm_half_way_up_expects_half_past_one() -> None:
    typed = {"known": "photo", "fastball_clock": "", "hand_out": "30", "hand_up": "30"}
    assert facts(**typed)["Arm angle"] == "45°"
    assert facts(**typed)["Fastball clock"] == "1:30"
    assert "two thirds" in text(**typed)


def test_less_is_known_from_a_photo_than_from_a_measured_fastball() -> None:
    def minutes(found: Answer) -> int:
        match = re.search(r"about (\d+) minutes", answer_text(found, SHELF, ENGLISH).split("How sure")[1])
        assert match
        return int(match[1])

    measured = minutes(answer())
    photo = minutes(answer(known="photo", hand_out="30", hand_up="30"))
    by_eye = minutes(answer(known="slot", slot="three-quarter"))
    assert measured < photo < by_eye


def test_a_pitcher_of_eleven_is_sent_to_fastball_and_changeup() -> None:
    found = text(age="11", wanted="straight-downer")
    assert found.startswith("At 11, throw the fastball and the changeup.")
    assert "joint US guideline" in found


def test_a_shape_the_handbook_holds_back_is_not_offered_below_its_age() -> None:
    assert headline(age="14", fastball_clock="2:10", wanted="sweeper") == (
        "At 14, a sweeper can wait. Teach the slurve first."
    )


def test_a_role_no_shape_does_from_this_arm_is_said_to_be_so() -> None:
    found = headline(known="slot", slot="sidearm", role="slow-the-game")
    assert found.startswith("No shape made for that job fits this arm.")


def test_speeds_are_shares_of_the_fastball() -> None:
    # The straight downer is thrown at 78 to 84 percent: of 80 mph, 62 to 67.
    (table,) = answer(fastball_speed="80").tables
    rows = {speak(row[0], ENGLISH): speak(row[3], ENGLISH) for row in table.rows}
    assert rows["Straight downer"] == "62 mph to 67 mph"
    (bare,) = answer(fastball_speed="").tables
    rows = {speak(row[0], ENGLISH): speak(row[3], ENGLISH) for row in bare.rows}
    assert rows["Straight downer"] == "78 to 84%"


def test_what_goes_with_the_choice_must_be_given() -> None:
    assert fields_refused(fastball_clock="") == {"fastball_clock"}
    assert fields_refused(known="slot") == {"slot"}
    assert fields_refused(known="photo", hand_out="20") == {"hand_up"}
    assert fields_refused(known="photo") == {"hand_out", "hand_up"}


def test_what_cannot_be_together_names_both_fields() -> None:
    assert fields_refused(hand="left", fastball_clock="1:30") == {"hand", "fastball_clock"}
    assert fields_refused(fastball_clock="7:00") == {"hand", "fastball_clock"}
    assert fields_refused(known="photo", hand_out="0", hand_up="0") == {"hand_out", "hand_up"}
    assert fields_refused(known="photo", hand_out="-50", hand_up="-20") == {"hand_out", "hand_up"}


def test_it_never_asks_for_another_arm() -> None:
    assert "Never change the arm slot" in text()


def test_without_the_handbooks_lists_it_still_answers() -> None:
    values, problems = read_fields(CALCULATOR.fields(Shelf()), CALCULATOR.example)
    assert not problems
    assert isinstance(CALCULATOR.work_out(values, Shelf()), Answer)
    assert CALCULATOR.common_cases(Shelf()) == ()

"""The phone radar: speed, spin and clock from counted frames, and what it warns of."""

from __future__ import annotations

import gettext
import re
from collections.abc import Mapping

import pytest

from calculators.desk.answers import Answer, Shelf
from calculators.desk.fields import Problem, read_fields
from calculators.desk.phone_radar import CALCULATOR
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


def fields_refused(**typed: str) -> set[str]:
    """Return the fields a refusal names."""
    found = outcome(**typed)
    assert not isinstance(found, Answer)
    return {problem.field for problem in found}


def first_number(words: str) -> float:
    match = re.search(r"\d+(\.\d+)?", words)
    assert match
    return float(match[0])


def test_a_level_ball_timed_to_the_plate_gives_back_its_speed() -> None:
    # The table of arrivals in tests/published/test_printed_flights.py: 80 mph from 60.5 ft with 5.5 ft extension
    # takes 0.4805 s to the plate's front; at 240 frames a second that is 115.3 frames.
    found = facts(ends="plate", frames="115.3", turns="", turn_frames="")
    assert first_number(found["Speed out of the hand"]) == pytest.approx(80, abs=0.1)


def test_the_average_is_below_the_speed_out_of_the_hand() -> None:
    found = facts()
    average = first_number(found["Average speed on the way"])
    assert 0.93 < average / first_number(found["Speed out of the hand"]) < 0.97


def test_one_frame_either_way_is_shown() -> None:
    (table,) = answer().tables
    rows = {speak(row[0], ENGLISH): first_number(speak(row[1], ENGLISH)) for row in table.rows}
    assert rows["144"] > rows["145"] > rows["146"]
    assert rows["144"] / rows["145"] == pytest.approx(145 / 144, abs=2e-3)


def test_half_a_foot_of_distance_is_worth_what_the_answer_says() -> None:
    label = "Speed out of the hand"
    farther = first_number(facts(mitt="2.5")[label]) - first_number(facts(mitt="2")[label])
    how_sure = answer(mitt="2").how_sure
    assert how_sure
    causes = [speak(cause, ENGLISH) for cause in how_sure.causes]
    said = next(cause for cause in causes if cause.startswith("half a foot of distance: "))
    assert first_number(said) == pytest.approx(farther, abs=0.11)


def test_five_turns_in_thirty_frames_at_240_are_2400_rpm() -> None:
    # 40 turns a second in 240 frames are 6 frames a turn; one frame in 31 costs 77 rpm.
    found = answer(turn_frames="30")
    spin = next(fact for fact in found.facts if speak(fact.label, ENGLISH) == "Spin")
    assert speak(spin.value, ENGLISH) == "2400 rpm"
    assert spin.give_or_take is not None
    assert spin.note is not None
    assert speak(spin.give_or_take, ENGLISH) == "give or take 80 rpm"
    assert speak(spin.note, ENGLISH) == "6.0 frames to a turn"


def test_too_few_frames_are_said_to_leave_the_spin_open() -> None:
    # Sampling: at 60 frames a second 900 and 2700 rpm give the same pictures.
    found = headline(fps="60", frames="36", turns="1", turn_frames="4")
    assert found == "Too few frames for this spin. It may be 900 rpm or 2700."


def test_two_dots_need_twice_the_frame_rate() -> None:
    label = "Frame rate this spin needs"
    one, two = first_number(facts()[label]), first_number(facts(mark="two")[label])
    assert two / one == pytest.approx(2, abs=0.02)


def test_a_slow_shutter_is_warned_of_with_one_that_works() -> None:
    # 40 turns a second turn 0.04 of 360 degrees in 1/1000 s.
    found = answer(turn_frames="30", shutter="1000")
    label = "Turn during one picture"
    assert facts(turn_frames="30", shutter="1000")[label] == "14.4°"
    warned = [speak(caution, ENGLISH) for caution in found.cautions]
    assert any("1/1500 s" in words for words in warned)
    assert not any("shutter" in speak(caution, ENGLISH) for caution in answer().cautions)


def test_a_blurred_ball_is_as_long_as_its_way_during_one_picture() -> None:
    # 68 mph is 1197 inches a second.
    assert facts(shutter="1000")["Travel during one picture"] == "1.2 in"


@pytest.mark.parametrize(
    ("stripe", "runs", "camera", "clock"),
    [
        # From behind, a curve's near side runs up and a fastball's down.
        ("1:00", "toward", "pitcher", "7:00"),
        ("7:00", "away", "pitcher", "7:00"),
        ("1:00", "away", "pitcher", "1:00"),
        # From the catcher the dial is mirrored, and the side in front runs the way the ball is pushed.
        ("11:00", "away", "catcher", "7:00"),
        ("5:00", "toward", "catcher", "7:00"),
        ("11:00", "toward", "catcher", "1:00"),
    ],
)
def test_the_clock_is_read_from_the_stripe(stripe: str, runs: str, camera: str, clock: str) -> None:
    assert facts(stripe=stripe, runs=runs, camera=camera)["Clock"] == clock


def test_each_part_can_be_left_out() -> None:
    assert headline(turns="", turn_frames="", stripe="") == "About 68 mph out of the hand."
    assert headline(frames="", stripe="") == "It spins at about 2060 rpm."
    assert headline(frames="", turns="", turn_frames="") == "Spin pushes this ball to 7:00."


def test_nothing_counted_names_what_could_be() -> None:
    refused = fields_refused(frames="", turns="", turn_frames="", stripe="")
    assert refused == {"frames", "turns", "stripe"}


def test_turns_without_frames_and_frames_without_turns_are_asked_for() -> None:
    assert fields_refused(turn_frames="") == {"turn_frames"}
    assert fields_refused(turns="") == {"turns"}


def test_a_pitch_nobody_throws_names_the_counts_and_the_frame_rate() -> None:
    assert fields_refused(fps="960") == {"fps", "frames"}
    assert fields_refused(turns="20") == {"fps", "turns", "turn_frames"}


def test_metric_is_the_same_pitch() -> None:
    label = "Speed out of the hand"
    metric = first_number(facts(units="metric")[label])
    assert metric == pytest.approx(1.609344 * first_number(facts()[label]), abs=0.15)


def test_nobody_is_sent_where_a_ball_can_hit_him() -> None:
    assert "behind a fence or a screen" in text()


def test_the_paper_table_of_speeds_agrees_with_the_form() -> None:
    table = CALCULATOR.common_cases(SHELF)[0]
    rows = {speak(row[0], ENGLISH): [speak(cell, ENGLISH) for cell in row[1:]] for row in table.rows}
    shown = first_number(facts(frames="140")["Speed out of the hand"])
    assert float(rows["140"][3]) == pytest.approx(shown, abs=0.6)

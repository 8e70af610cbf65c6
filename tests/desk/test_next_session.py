"""The next-session calculator: what it plans, inside which limits, and when it plans nothing."""

from __future__ import annotations

import pytest

from calculators.coaching.pitcher_file import read_pitcher
from calculators.desk import next_cue, target
from calculators.desk.next_session import CALCULATOR
from calculators.desk.pitch_count_stop import STOP
from tests.desk.loop_shelf import answer, asked, facts, file_text, headline, table, text


def test_pain_stops_it() -> None:
    assert answer(CALCULATOR, pain="yes", most="nonsense") == STOP


def test_a_tired_arm_gets_no_practice() -> None:
    assert answer(CALCULATOR, tired="yes").stop


@pytest.mark.parametrize(("age", "share"), [("16", 0.25), ("13", 0.20), ("14", 0.20)])
@pytest.mark.parametrize("most", ["60", "80", "100", "120"])
def test_the_practice_stays_inside_the_day_and_the_share(age: str, share: float, most: str) -> None:
    # Common practice of the handbook: a quarter of the day, a fifth and at most 15 at 13 and 14.
    found = facts(CALCULATOR, age=age, most=most, role="first-pitch")
    thrown, breaking = int(found["Throws, all together"]), int(found["Breaking balls"])
    assert thrown <= int(most)
    assert breaking <= share * thrown + 1e-9
    assert age == "16" or breaking <= 15


def test_the_sheet_has_cue_gate_and_stop_rules() -> None:
    sheet = table(answer(CALCULATOR), "Practice of 2026-03-24")
    assert {"Target", "Cue", "Gate", "If not met", "Stop"} <= set(sheet)
    assert answer(CALCULATOR).tables[0].sheet


def test_there_is_one_cue_at_most_and_none_if_so_wished() -> None:
    assert "one cue: window blind" in headline(CALCULATOR)
    assert "Cue" not in table(answer(CALCULATOR, cue="none"), "Practice")


def test_a_cue_that_is_left_out_is_not_planned_and_said_why() -> None:
    found = text(CALCULATOR, cue="backhand-slap")
    assert "left out today. It spoils the shape you are aiming for." in found
    assert "one cue" not in headline(CALCULATOR, cue="backhand-slap")


@pytest.mark.parametrize("soreness", ["6", "10"])
def test_that_much_soreness_is_answered_as_pain_is(soreness: str) -> None:
    for calculator in (CALCULATOR, next_cue.CALCULATOR):
        found = answer(calculator, soreness=soreness)
        assert (found.stop, found.headline, found.more[1:]) == (True, STOP.headline, STOP.more)
        assert "That much soreness counts as pain." in text(calculator, soreness=soreness)
    assert not answer(CALCULATOR, soreness="5").stop


def test_the_day_after_a_game_is_for_recovery() -> None:
    for stage in ("body-constraint", "catch-play", "bullpen"):
        found = text(CALCULATOR, game_yesterday="yes", stage=stage)
        assert found.startswith("No breaking ball practice on that day.")
        assert "recovery, with no breaking balls" in found
        assert "Light catch with the fastball grip, or rest." in found


def test_after_a_hand_check_that_slid_there_are_short_spin_throws_with_an_easier_grip_first() -> None:
    kept = file_text(answer(target.CALCULATOR, nickname="Juniper", hand_check="slides"))
    found = answer(CALCULATOR, record=kept)
    assert headline(CALCULATOR, record=kept) == "Spin only: 15 short spin throws and no more."
    rows = list(table(found, "Practice"))
    assert rows[0] == "Grip"
    assert "easier grip" in table(found, "Practice")["Grip"][0]


def test_the_gate_of_a_trial_names_the_throws_its_blocks_have() -> None:
    def gate(most: str) -> str:
        return table(answer(CALCULATOR, most=most), "Practice")["Gate"][0]

    assert gate("80").startswith("The 6 throws with the cue differ from the plain ones")
    assert gate("130").startswith("The 10 throws with the cue")
    assert gate("40").endswith("With fewer throws, the same share.")
    assert gate("5") == "None today. So few throws show nothing."


def test_where_rest_is_owed_nothing_comes_off_a_mound() -> None:
    assert headline(CALCULATOR, rested="no").startswith("Spin only")


def test_before_thirteen_there_are_spin_games_only_and_before_nine_none() -> None:
    assert headline(CALCULATOR, age="12") == "Spin only: 15 short spin throws and no more."
    assert headline(CALCULATOR, age="8") == "No breaking ball practice on that day."


def test_a_first_breaking_ball_begins_with_spin() -> None:
    assert headline(CALCULATOR, start="none-yet", role="first-pitch", age="14").startswith("Spin only")


def test_no_room_is_no_practice() -> None:
    assert headline(CALCULATOR, most="0") == "No breaking ball practice on that day."


def test_a_gate_goes_into_the_file_and_two_days_pass_the_stage() -> None:
    first = file_text(answer(CALCULATOR, nickname="Juniper", age="14", gate_met="spin-only"))
    again = file_text(answer(CALCULATOR, record=first, age="14", gate_met="spin-only", today="2026-03-26"))
    assert [stage for stage, _ in read_pitcher(again).gates] == ["spin-only", "spin-only"]
    learner = {"start": "none-yet", "role": "first-pitch", "age": "14", "record": again}
    assert headline(CALCULATOR, **learner).startswith("One thing tied down")


def test_the_file_of_a_child_does_not_answer_for_somebody_older() -> None:
    """Twelve in the file and sixteen in the form: one of the two is wrong, and only the reader knows which."""
    young = file_text(answer(CALCULATOR, nickname="Juniper", age="12"))
    assert "says 12" in asked(CALCULATOR, record=young, age="16", today="2026-03-26")["age"]
    assert "says 12" in asked(CALCULATOR, record=young, age="11", today="2026-03-26")["age"]
    assert answer(CALCULATOR, record=young, age="16", today="2030-03-26")

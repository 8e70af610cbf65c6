"""The next-cue calculator: pain, then the target, then the start; the trade's rules as a reader meets them."""

from __future__ import annotations

import re

import pytest

from calculators.desk.next_cue import CALCULATOR
from calculators.desk.pitch_count_stop import STOP
from tests.desk.loop_shelf import SEASON, answer, asked, facts, headline, shelf, table, text


def offered(**typed: str) -> list[str]:
    """Return the titles of the cues offered, best first."""
    return list(table(answer(CALCULATOR, **typed), "Worth a trial"))


def left_out(**typed: str) -> dict[str, str]:
    reasons = table(answer(CALCULATOR, **typed), "Left out")
    return {cue: why for why, (cues,) in reasons.items() for cue in cues.split("; ")}


def test_pain_stops_it_before_anything_is_read() -> None:
    assert answer(CALCULATOR, pain="yes", age="nonsense") == STOP


def test_a_tired_arm_gets_no_cue() -> None:
    found = answer(CALCULATOR, tired="yes")
    assert found.stop
    assert not found.tables


def test_a_sore_arm_keeps_the_cue_for_another_day() -> None:
    assert headline(CALCULATOR, soreness="4").startswith("Short spin throws at most today.")


def test_no_cue_is_offered_before_the_role_is_known() -> None:
    assert set(asked(CALCULATOR, role="")) == {"role"}


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"shape": "straight-downer"}, "Do not aim for a straight downer"),
        ({"shape": "sweeping-curve", "role": "swing-and-miss"}, "Do not aim for a sweeping curve"),
        ({"age": "12"}, "At 12, throw the fastball and the changeup."),
    ],
)
def test_no_cue_is_offered_toward_a_shape_that_is_no_target(typed: dict[str, str], said: str) -> None:
    found = answer(CALCULATOR, **typed)
    assert headline(CALCULATOR, **typed).startswith(said)
    assert found.tables == ()
    assert found.read_on == ()


def test_before_thirteen_there_is_no_cue() -> None:
    assert headline(CALCULATOR, age="12").startswith("At 12, throw the fastball and the changeup.")


def test_a_slurve_that_wants_drop_gets_the_window_blind() -> None:
    # Common practice: the blind turns a slurve toward a three-quarter drop.
    assert offered()[0] == "Window blind"


def test_a_slow_ball_is_never_told_to_pull_down_more() -> None:
    # Common practice: more drop on a slow ball makes a slower ball.
    assert "Window blind" not in offered(start="loopy")
    assert offered(start="loopy")[0] == "Eighty-five percent"


def test_a_retired_cue_is_left_out_and_said_why() -> None:
    assert "retired" in left_out()["Door handle (retired)"].lower()


def test_every_cue_is_offered_or_left_out_with_a_reason() -> None:
    assert {*offered(), *left_out()} == {str(cue["title"]) for cue in shelf().cues.values()}


def test_a_first_breaking_ball_is_not_taught_on_a_mound() -> None:
    assert "First comes the stage: Spin only" in headline(CALCULATOR, start="none-yet", role="first-pitch")
    passed = {"start": "none-yet", "role": "first-pitch", "stage": "catch-play", "passed": "body-constraint"}
    assert headline(CALCULATOR, **passed).startswith("Next cue")


def test_it_says_what_it_may_break_and_when_to_stop() -> None:
    found = facts(CALCULATOR)
    assert found["It may break"]
    assert "pain" in found["Stop sign"]


def test_a_left_hander_gets_the_same_cues() -> None:
    assert offered(hand="left", fastball_clock="10:30") == offered()


def test_the_start_is_read_from_a_sheet() -> None:
    assert facts(CALCULATOR, start="", sheet="\n".join(SEASON.splitlines()[:19]))["From"] == "Slurve"


def test_without_a_start_or_a_sheet_it_is_asked_for() -> None:
    assert "start" in asked(CALCULATOR, start="")


def test_the_pitchers_own_trials_count() -> None:
    record = (
        '{"kind": "bendbook pitcher", "version": 2, "nickname": "Juniper", "hand": "right", "log": ['
        '{"cue": "window-blind", "date": "2026-03-10", "changes": {"clock": 0.5}, "throws": 10,'
        ' "decision": "drop"}]}'
    )
    assert left_out(record=record)["Window blind"] == "You tried it and dropped it."


@pytest.mark.parametrize("start", ["downer", "slurve", "sweeping", "bullet", "arm-side", "scattered"])
def test_no_mark_or_link_of_the_content_is_read_aloud(start: str) -> None:
    assert not re.search(r"\[\[|\{(published|estimate|common)", text(CALCULATOR, start=start))


def test_the_answer_leads_to_the_pages_of_the_cue_and_of_the_shape_aimed_for() -> None:
    """A reader who is told a cue wants its drill and its picture; a link to no page would help nobody."""
    found = answer(CALCULATOR)
    assert found.read_on == ("cues/window-blind", "shapes/three-quarter-drop")
    assert "Read on: Window blind, Three-quarter drop" in text(CALCULATOR)

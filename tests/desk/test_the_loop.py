"""The guide page that walks the loop says what the calculators say."""

from __future__ import annotations

import re
from pathlib import Path

from calculators.desk import cue_trial, next_cue, next_session, read_session, target
from tests.coaching.handbook import CONTENT
from tests.desk.loop_shelf import OWN_SEASON, SEASON, answer, facts, file_text, headline, text

PAGE = Path(CONTENT / "guide" / "the-loop.md").read_text("utf-8")
UNTIL_THE_SECOND_DAY = "\n".join(line for line in SEASON.splitlines() if "2026-03-17" not in line)


def test_the_target_of_the_page_is_the_calculators() -> None:
    assert "three-quarter drop" in headline(target.CALCULATOR)
    assert "80 to 86 percent of the fastball, and a clock from 6:45 to 7:30" in PAGE
    assert facts(target.CALCULATOR)["Clock"] == "6:45 to 7:30"


def test_the_first_practice_reads_as_the_page_says() -> None:
    found = facts(read_session.CALCULATOR)
    assert f"The clock is {found['Clock']}." in PAGE
    assert f"The speed is {found['Speed beside the fastball'].rstrip('%')} percent of the fastball." in PAGE
    assert headline(read_session.CALCULATOR) == "None of 9 throws was inside the target yet."
    assert "None of the other nine was inside the target." in PAGE
    assert found["Strikes"] == "6 of 10"
    assert "Six of ten were strikes" in PAGE


def test_the_cue_is_the_one_the_page_names() -> None:
    assert headline(next_cue.CALCULATOR) == "Next cue: window blind."
    first_day = "\n".join(line for line in SEASON.splitlines() if not re.match("2026-03-1[07]", line))
    assert headline(next_cue.CALCULATOR, sheet=first_day, start="") == "Next cue: window blind."
    assert "offers [[cues/window-blind]] first" in PAGE


def test_one_day_is_a_hint_and_two_keep_it() -> None:
    assert headline(cue_trial.CALCULATOR, sheet=UNTIL_THE_SECOND_DAY).startswith(
        "Window blind: Try it again."
    )
    assert headline(cue_trial.CALCULATOR).startswith("Window blind: Keep it.")
    assert "hint" in PAGE
    assert "Now it says: keep it." in PAGE


def test_with_the_file_put_in_the_cue_that_was_kept_goes_on() -> None:
    kept = file_text(answer(target.CALCULATOR, nickname="Juniper"))
    kept = file_text(answer(cue_trial.CALCULATOR, record=kept, sheet=OWN_SEASON))
    found = text(next_cue.CALCULATOR, record=kept, start="")
    assert found.splitlines()[0].lower().endswith("cue: window blind.")
    assert "You kept it. Use it, and test without it in a week." in found
    assert "you kept it. Use it, and test without it in a week." in PAGE
    assert facts(next_cue.CALCULATOR, record=kept, start="")["From"] == "Slurve"
    plain = "\n".join(line for line in OWN_SEASON.splitlines() if "window-blind" not in line)
    clock = facts(read_session.CALCULATOR, sheet=plain, day="2026-03-17")["Clock"]
    assert f"Without the cue the clock is {clock}, and that is still a slurve." in PAGE


def test_strikes_are_the_next_thing_to_watch() -> None:
    assert "Strikes fell too." in text(cue_trial.CALCULATOR)
    assert "With the cue there were fewer strikes." in PAGE


def test_the_plan_stays_inside_the_throws_the_page_speaks_of() -> None:
    assert int(facts(next_session.CALCULATOR)["Throws, all together"]) <= 80
    assert "Practice of 2026-03-24" in text(next_session.CALCULATOR)

"""The ball today is the plain one: what a cue does while it is said is not yet what the pitcher throws."""

from __future__ import annotations

import pytest

from calculators.desk import cue_trial, target
from calculators.desk.next_cue import CALCULATOR
from tests.desk.loop_shelf import OWN_SEASON, answer, asked, facts, file_text, headline, text

KEPT = "You kept it. Use it, and test without it in a week."
HEAD, *THROWS = OWN_SEASON.splitlines()


def sheet(*days: str, cued: bool = True, date: str = "") -> str:
    """Return days of the made-up season, with or without the throws with a cue, moved to another date."""
    rows = [row for row in THROWS if row[:10] in days and (cued or ",window-blind," not in row)]
    return "\n".join([HEAD, *((date + row[10:] if date else row) for row in rows)])


def kept_file() -> str:
    """Return the pitcher's file after two days on which the cue worked."""
    record = file_text(answer(target.CALCULATOR, nickname="Juniper"))
    return file_text(answer(cue_trial.CALCULATOR, record=record, sheet=OWN_SEASON))


def test_throws_with_a_cue_do_not_make_a_ball_that_nobody_throws() -> None:
    """The plain throws of 17 March read 7:46 and those with the cue 7:13; the mixture, 7:28, was in the box."""
    both, plain = (sheet("2026-03-17", cued=cued) for cued in (True, False))
    for typed in (both, plain):
        assert facts(CALCULATOR, sheet=typed, start="")["From"] == "Slurve"
        assert headline(CALCULATOR, sheet=typed, start="") == "Next cue: window blind."
    # What is expected of a cue depends on the ball today alone, so the second on the list is the same too.
    seconds = [text(CALCULATOR, sheet=typed, start="").count("Closer to the mitt") for typed in (both, plain)]
    assert seconds[0] == seconds[1] > 0


def test_a_few_plain_throws_are_not_filled_up_with_others() -> None:
    rows = sheet("2026-03-17").splitlines()
    plain = [row for row in rows if ",breaking ball,basic-downer,," in row]
    few = "\n".join(row for row in rows if row not in plain[3:])
    assert asked(CALCULATOR, sheet=few, start="")["start"].startswith("Too few throws to say.")
    assert headline(CALCULATOR, sheet=few, start="slurve") == "Next cue: window blind."


def test_where_next_to_none_were_plain_all_are_read() -> None:
    rows = sheet("2026-03-17").splitlines()
    plain = [row for row in rows if ",breaking ball,basic-downer,," in row]
    two = "\n".join(row for row in rows if row not in plain[2:])
    assert "start" in asked(CALCULATOR, sheet="\n".join([HEAD, *plain[:2]]), start="")
    assert answer(CALCULATOR, sheet=two, start="")


def test_a_day_of_the_sheet_that_no_file_holds_counts_as_one_own_day() -> None:
    found = text(CALCULATOR, sheet=sheet("2026-03-17"), start="")
    assert "Your own 1 day with it" in found
    assert KEPT not in found


def test_a_day_that_the_log_holds_counts_once() -> None:
    found = text(CALCULATOR, sheet=sheet("2026-03-10", "2026-03-17"), start="", record=kept_file())
    assert "Your own 2 days with it" in found


@pytest.mark.parametrize("start", ["", "slurve", "three-quarter-drop"])
def test_a_cue_that_is_kept_goes_on_and_nothing_is_called_unneeded(start: str) -> None:
    found = text(CALCULATOR, record=kept_file(), start=start)
    assert KEPT in found
    assert "No cue needed" not in found


def test_a_later_day_without_the_cue_is_the_test_without_it() -> None:
    """A week later the plain throws alone lie in the box: it was learned, and no cue is in use any more."""
    rows = sheet("2026-03-17", date="2026-03-24").splitlines()
    learned = [row for row in rows if ",basic-downer,," not in row]
    learned = [row.replace(",window-blind,2,", ",,1,") for row in learned]
    assert not headline(CALCULATOR, record=kept_file(), sheet="\n".join(learned), start="").endswith(
        "window blind."
    )

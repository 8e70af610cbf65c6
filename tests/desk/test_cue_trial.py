"""The cue-trial calculator: when it keeps, drops or asks again, and what it warns of."""

from __future__ import annotations

import csv
import io

import pytest

from calculators.coaching.pitcher_file import read_pitcher
from calculators.desk.cue_trial import CALCULATOR
from calculators.desk.pitch_count_stop import STOP
from calculators.words import speak
from tests.desk.loop_shelf import ENGLISH, SEASON, answer, asked, file_text, headline, table, text


def days(*dates: str, **changed: str) -> str:
    """Return the made-up season with only some of its days; `changed` sets cells of throws with the cue."""
    rows = [row for row in csv.DictReader(io.StringIO(SEASON)) if row["date"] in dates]
    for row in rows:
        if row["cue"]:
            row.update({name.replace("_", " "): value for name, value in changed.items()})
    out = io.StringIO()
    writer = csv.DictWriter(out, list(rows[0]))
    writer.writeheader()
    writer.writerows(rows)
    return out.getvalue()


def test_two_days_beyond_luck_are_a_working_answer_and_the_cue_is_kept() -> None:
    # Common practice: ten and ten on two days.
    found = text(CALCULATOR)
    assert found.startswith("Window blind: Keep it. The clock went")
    assert "That is a working answer." in found


def test_one_day_is_a_hint_and_is_tried_again() -> None:
    found = text(CALCULATOR, sheet=days("2026-03-10"))
    assert found.startswith("Window blind: Try it again.")
    assert "That is a hint." in found


def test_a_cue_that_moved_the_wrong_way_is_dropped() -> None:
    assert headline(CALCULATOR, aim="clock later").startswith("Window blind: Drop it.")


def test_a_slow_arm_is_no_gain_whatever_else_it_bought() -> None:
    # Common practice: more than 2 mph lost is a fault.
    slow = days("2026-03-10", "2026-03-17", speed_mph="56.0")
    assert headline(CALCULATOR, sheet=slow).startswith("Window blind: Drop it.")
    assert "The arm slowed down" in text(CALCULATOR, sheet=slow)


def test_no_change_is_told_from_luck() -> None:
    assert "no larger than luck" in headline(CALCULATOR, aim="spin up")


def test_the_smallest_change_is_told_for_each_quantity() -> None:
    rows = table(answer(CALCULATOR), "Plain against cue")
    # With 20 against 20 the smallest change is 0.89 deviations: (1.96 + 0.84) * sqrt(2 / 20).
    assert rows["Speed"][-1] == "0.8 mph"
    assert rows["Strikes"][-1] == "44 points"


@pytest.mark.parametrize(("row", "speed"), [("10 and 10", "2.0 mph"), ("20 and 20", "1.4 mph")])
def test_blocks_on_paper_show_what_the_power_formula_gives(row: str, speed: str) -> None:
    # Cohen 1988, with 1.6 mph from throw to throw: 2.802 * 1.6 * sqrt(2 / n).
    tables = {speak(one.caption, ENGLISH): one for one in CALCULATOR.common_cases(None)}  # type: ignore[arg-type]
    caption = next(name for name in tables if name.startswith("High school"))
    cells = {speak(cells[0], ENGLISH): speak(cells[1], ENGLISH) for cells in tables[caption].rows}
    assert cells[row] == speed


def test_several_cues_on_one_day_bring_the_warning() -> None:
    # Sidak: two useless cues at one in twenty each look good about 10 times in 100.
    two = days("2026-03-10")
    lines = two.splitlines()
    lines.append(lines[10].replace("window-blind", "box-line").replace(",,1,", ",box-line,4,"))
    extra = "\n".join(lines)
    assert "2 cues were tried on one day. By luck alone, at least one looks good 10 times in 100." in text(
        CALCULATOR, sheet=extra, cue="window-blind"
    )


def test_plain_throws_only_are_no_trial() -> None:
    assert "Write it beside each throw" in asked(CALCULATOR, sheet=days("2026-03-03"))["sheet"]


def test_a_cue_that_is_not_in_the_sheet_is_refused() -> None:
    assert "cue" in asked(CALCULATOR, cue="hammer-the-nail")


def test_pain_stops_it() -> None:
    assert answer(CALCULATOR, pain="yes") == STOP


def test_each_day_goes_into_the_log_of_the_pitchers_file() -> None:
    record = read_pitcher(file_text(answer(CALCULATOR, nickname="Juniper")))
    assert [(one.cue, str(one.date), one.decision) for one in record.log] == [
        ("window-blind", "2026-03-10", "keep"),
        ("window-blind", "2026-03-17", "keep"),
    ]


def test_an_earlier_day_in_the_file_counts_toward_the_answer() -> None:
    first = file_text(answer(CALCULATOR, sheet=days("2026-03-10"), nickname="Juniper"))
    assert "That is a working answer." in text(CALCULATOR, sheet=days("2026-03-17"), record=first)

"""The session calculator: what it asks before it reads, what it says, and what stays missing."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable

import pytest

from calculators.coaching.pitcher_file import read_pitcher
from calculators.coaching.session_file import own_mapping, read_sheet, write_sessions
from calculators.coaching.sheet import open_sheet
from calculators.desk.pitch_count_stop import STOP
from calculators.desk.read_session import CALCULATOR
from calculators.words import speak
from tests.desk.loop_shelf import (
    ENGLISH,
    SEASON,
    answer,
    asked,
    facts,
    file_text,
    headline,
    table,
    text,
)

Cell = Callable[[dict[str, str]], None]


def sheet(change: Cell | None = None, heading: dict[str, str] | None = None) -> str:
    """Return the made-up season with its rows changed and headings renamed."""
    rows = list(csv.DictReader(io.StringIO(SEASON)))
    for row in rows:
        if change is not None:
            change(row)
    renamed = [{(heading or {}).get(name, name): value for name, value in row.items()} for row in rows]
    out = io.StringIO()
    writer = csv.DictWriter(out, list(renamed[0]))
    writer.writeheader()
    writer.writerows(renamed)
    return out.getvalue()


def metric(row: dict[str, str]) -> None:
    row["speed mph"] = f"{float(row['speed mph']) * 1.609344:.4f}"


def from_the_catcher(row: dict[str, str]) -> None:
    if row["clock"]:
        hours, minutes = map(int, row["clock"].split(":"))
        total = (720 - (hours % 12 * 60 + minutes)) % 720
        row["clock"] = f"{total // 60 or 12}:{total % 60:02d}"


FOREIGN = {
    "speed mph": "Velocity mph",
    "clock": "Tilt",
    "up in": "Vertical in",
    "glove side in": "Horizontal in",
}


def test_pain_stops_everything_even_an_unreadable_sheet() -> None:
    assert answer(CALCULATOR, pain="yes", sheet="\0") == STOP


def test_nobody_having_asked_about_pain_is_said_first() -> None:
    more = answer(CALCULATOR, pain="").more
    assert speak(more[0], ENGLISH).startswith("Ask about pain before the first throw")


def test_the_start_of_the_made_up_pitcher_is_a_slurve() -> None:
    assert "It is what the handbook calls: slurve." in text(CALCULATOR)


def test_the_middle_of_the_speeds_is_that_of_the_throws() -> None:
    # The Hodges-Lehmann middle, here worked out from the sheet by hand: the median of all pair averages.
    rows = [row for row in csv.DictReader(io.StringIO(SEASON)) if row["date"] == "2026-03-03"]
    speeds = [float(row["speed mph"]) for row in rows if row["pitch"] == "breaking ball"]
    averages = sorted((a + b) / 2 for i, a in enumerate(speeds) for b in speeds[i:])
    half = len(averages) // 2
    middle = averages[half] if len(averages) % 2 else (averages[half - 1] + averages[half]) / 2
    assert facts(CALCULATOR)["Speed"] == f"{middle:.1f} mph"


def test_none_of_ten_is_still_up_to_one_in_five() -> None:
    # Wilson's interval for 0 of 10 at 90 percent: z^2 / (n + z^2) with z = 1.645 is 0.213.
    assert headline(CALCULATOR) == "None of 10 throws was inside the target yet."
    assert "hits it 0 to 21 times in 100" in text(CALCULATOR)


def test_without_a_target_nothing_is_inside_or_outside() -> None:
    found = text(CALCULATOR, role="")
    assert "Set a target first" in found
    assert "inside the target." not in found


def test_a_bad_read_is_listed_and_never_becomes_zero() -> None:
    found = answer(CALCULATOR)
    assert table(found, "The breaking balls")["Spin"][2:] == ("9", "1 bad read")
    assert "marked as a bad read" in str(table(found, "Bad readings"))


def test_a_quantity_that_nobody_measured_stays_missing() -> None:
    def no_spin(row: dict[str, str]) -> None:
        row["spin rpm"], row["missing"] = "", ""

    rows = table(answer(CALCULATOR, sheet=sheet(no_spin)), "The breaking balls")
    assert rows["Spin"] == ("none", "none", "0", "10 not measured")


def test_the_own_rule_for_bad_reads_sets_aside_and_says_so() -> None:
    found = answer(CALCULATOR, speed_least="60")
    assert "outside your own limit" in str(table(found, "Bad readings"))


def test_speeds_in_kilometres_are_asked_about_and_not_put_right() -> None:
    assert "km/h" in asked(CALCULATOR, sheet=sheet(metric))["speed_unit"]
    said = facts(CALCULATOR, sheet=sheet(metric), speed_unit="km/h")
    assert said["Speed"] == facts(CALCULATOR)["Speed"]


def test_the_catchers_view_is_asked_about() -> None:
    assert "catcher's view" in asked(CALCULATOR, sheet=sheet(from_the_catcher))["leans"]
    turned = facts(
        CALCULATOR,
        sheet=sheet(from_the_catcher),
        view="catcher",
    )
    assert turned["Clock"] == facts(CALCULATOR)["Clock"]


def test_columns_of_another_system_are_guessed_and_asked() -> None:
    foreign = sheet(heading=FOREIGN)
    assert "Velocity mph = speed (mph)" in asked(CALCULATOR, sheet=foreign)["columns_right"]
    assert "view" in asked(CALCULATOR, sheet=foreign, columns_right="yes")
    said = facts(CALCULATOR, sheet=foreign, columns_right="yes", view="pitcher", movement="whole")
    assert said["Speed"] == facts(CALCULATOR)["Speed"]


def test_a_wrong_guess_is_put_right_by_the_reader() -> None:
    strange = sheet(heading={"speed mph": "zip"})
    settled = {"columns_right": "yes", "view": "pitcher", "movement": "whole"}
    assert "Speed" not in facts(CALCULATOR, sheet=strange, **settled)
    columns = ({"heading": "zip", "holds": "speed"},)
    assert facts(CALCULATOR, sheet=strange, columns=columns, **settled)["Speed"] == facts(CALCULATOR)["Speed"]


def test_a_sheet_that_does_not_name_the_pitch_is_asked_about() -> None:
    bare = "date,speed mph\n" + "2026-03-03,61\n" * 6
    settled = {"sheet": bare, "columns_right": "yes"}
    assert "which pitch" in asked(CALCULATOR, **settled)["breaking_name"]
    found = facts(CALCULATOR, **settled, breaking_name="breaking ball")
    assert found["Breaking balls"] == "6"


def test_a_cell_that_cannot_be_read_is_reported_with_line_and_column() -> None:
    def spoil(row: dict[str, str]) -> None:
        if row["throw"] == "2" and row["date"] == "2026-03-03":
            row["speed mph"] = "fast"

    assert asked(CALCULATOR, sheet=sheet(spoil))["sheet"].startswith("Line 3, speed mph: Not a number.")
    assert answer(CALCULATOR, sheet=sheet(spoil), bad_cells="yes")


def test_a_day_that_is_not_in_the_sheet_is_refused_with_the_days_that_are() -> None:
    assert "2026-03-17" in asked(CALCULATOR, day="2026-04-01")["day"]


def test_a_slow_fastball_ends_the_session() -> None:
    # Common practice: 2 mph lost is a tired arm.
    def tire(row: dict[str, str]) -> None:
        if row["date"] == "2026-03-03" and int(row["throw"]) > 15:
            row["speed mph"] = f"{float(row['speed mph']) - 4:.1f}"

    assert headline(CALCULATOR, sheet=sheet(tire)).startswith("End it here. The fastball has slowed down")


def test_throws_with_and_without_a_cue_are_also_counted_apart() -> None:
    said = facts(CALCULATOR, day="2026-03-10")
    assert said["Inside, plain"] == "0 of 10"
    assert said["Inside, with window-blind"] == "5 of 10"


def test_without_a_device_the_eye_is_enough() -> None:
    seen = (
        {"throws": "6", "line": "straight", "hump": "big", "dot": "", "end": "high"},
        {"throws": "3", "line": "straight", "hump": "small", "dot": "no", "end": "strike"},
    )
    found = text(CALCULATOR, sheet="", eye=seen)
    assert found.startswith("By eye, this is what the handbook calls slow and loopy.")
    assert "3 of 9" in found


def test_a_dot_on_the_front_is_a_bullet_by_eye() -> None:
    seen = ({"throws": "5", "line": "straight", "hump": "", "dot": "yes", "end": "low"},)
    assert "bullet spinner" in headline(CALCULATOR, sheet="", eye=seen)


def test_nothing_typed_is_asked_for() -> None:
    assert "sheet" in asked(CALCULATOR, sheet="")


def test_the_sessions_go_into_the_pitchers_file() -> None:
    record = read_pitcher(file_text(answer(CALCULATOR, nickname="Juniper")))
    assert [len(session.throws) for session in record.sessions] == [18, 34, 34]


def test_a_session_put_in_twice_is_kept_once() -> None:
    once = file_text(answer(CALCULATOR, nickname="Juniper"))
    assert file_text(answer(CALCULATOR, record=once)) == once


def test_a_sheet_with_all_quantities_missing_comes_back_as_it_was_written() -> None:
    found = read_sheet(open_sheet(SEASON), own_mapping(open_sheet(SEASON), "right"))
    again = open_sheet(write_sessions(found.sessions))
    assert read_sheet(again, own_mapping(again, "right")).sessions == found.sessions


@pytest.mark.parametrize("word", ["risk score", "is safe"])
def test_it_gives_no_risk_and_calls_nothing_safe(word: str) -> None:
    assert word not in text(CALCULATOR).lower()

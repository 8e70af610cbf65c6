"""The session calculator: what it asks before it reads, what it says, and what stays missing."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable

import pytest

from calculators.coaching.pitcher_file import read_pitcher
from calculators.coaching.session_file import own_mapping, read_sheet, write_sessions
from calculators.coaching.sheet import open_sheet
from calculators.desk.eye_rows import eye_field
from calculators.desk.fields import Choice, ChoiceField
from calculators.desk.pitch_count_stop import STOP
from calculators.desk.read_session import CALCULATOR
from calculators.words import say, speak
from tests.desk.loop_shelf import (
    ENGLISH,
    OWN_SEASON,
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


def test_none_of_nine_is_still_up_to_nearly_one_in_four() -> None:
    # Wilson's interval for 0 of 9 at 90 percent: z^2 / (n + z^2) with z = 1.645 is 0.231. The tenth throw had
    # a bad read; its speed alone lies outside, but a throw half read could never have been found inside.
    assert headline(CALCULATOR) == "None of 9 throws was inside the target yet."
    assert "hits it 0 to 23 times in 100" in text(CALCULATOR)
    assert "1 throw could not be judged" in text(CALCULATOR)


def without(*columns: str, pitch: str = "") -> str:
    """Return the made-up season with columns emptied, of one pitch or of all."""

    def empty(row: dict[str, str]) -> None:
        if row["pitch"] == pitch or not pitch:
            row.update(dict.fromkeys(columns, ""), missing="")

    return sheet(empty)


@pytest.mark.parametrize(
    ("left_out", "judged_by", "enough"),
    [
        (without("speed mph"), "clock alone, no speed was measured.", "Enough for the clock."),
        (
            without("speed mph", pitch="fastball"),
            "clock alone, no fastball was measured.",
            "Enough for speed and",
        ),
        (without("clock"), "speed alone, no clock was measured.", "Enough for speed. Not enough clocks"),
    ],
)
def test_what_was_not_measured_decides_nothing_and_is_not_called_enough(
    left_out: str, judged_by: str, enough: str
) -> None:
    found = text(CALCULATOR, sheet=left_out, day="2026-03-17", fastball_speed="")
    assert f"Judged by {judged_by}" in found
    assert f"How sure: {enough}" in found
    assert "Judged by" not in text(CALCULATOR, day="2026-03-17")


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
    assert said["Inside, plain"] == "0 of 9"
    assert said["Inside, with window-blind"] == "5 of 10"


def test_throws_with_a_cue_are_judged_by_the_same_values_as_the_plain_ones() -> None:
    def no_speed_with_the_cue(row: dict[str, str]) -> None:
        if row["cue"]:
            row["speed mph"] = ""

    said = facts(CALCULATOR, sheet=sheet(no_speed_with_the_cue), day="2026-03-10")
    assert (said["Inside, plain"], said["Inside, with window-blind"]) == ("0 of 9", "0 of 0")


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


def test_what_was_not_looked_at_by_eye_is_not_seen() -> None:
    choices = [column for column in eye_field().columns if isinstance(column, ChoiceField)]
    assert [column.choices[0] for column in choices] == [Choice("", say("Not seen"))] * 4
    only_counted = ({"throws": "6", "line": "", "hump": "", "dot": "", "end": ""},)
    found = answer(CALCULATOR, sheet="", eye=only_counted)
    assert headline(CALCULATOR, sheet="", eye=only_counted).startswith("Too little was seen to say anything.")
    assert found.tables[0].rows == ()
    assert "Strikes" not in facts(CALCULATOR, sheet="", eye=only_counted)


def test_strikes_by_eye_are_of_those_whose_end_was_seen() -> None:
    seen = (
        {"throws": "4", "line": "straight", "hump": "", "dot": "", "end": "strike"},
        {"throws": "2", "line": "straight", "hump": "", "dot": "", "end": "low"},
        {"throws": "5", "line": "", "hump": "", "dot": "", "end": ""},
    )
    said = headline(CALCULATOR, sheet="", eye=seen)
    assert said == "By eye, 4 of 6 throws were strikes, and the line holds."
    assert headline(CALCULATOR, sheet="", eye=({**seen[0], "line": "", "throws": "6"},)) == (
        "By eye, 6 of 6 throws were strikes."
    )


@pytest.mark.parametrize(("big", "loopy"), [("4", False), ("5", True)])
def test_by_eye_a_ball_is_called_by_what_more_than_half_of_the_throws_were(big: str, loopy: bool) -> None:
    rest = {"throws": "4", "line": "straight", "hump": "small", "dot": "", "end": "low"}
    said = headline(CALCULATOR, sheet="", eye=({**rest, "throws": big, "hump": "big"}, rest))
    assert ("slow and loopy" in said) is loopy


def test_one_throw_with_a_dot_among_ten_is_no_bullet_by_eye() -> None:
    rest = {"throws": "9", "line": "straight", "hump": "", "dot": "", "end": "low"}
    assert "bullet" not in headline(CALCULATOR, sheet="", eye=(rest, {**rest, "throws": "1", "dot": "yes"}))


def test_nothing_typed_is_asked_for() -> None:
    assert "sheet" in asked(CALCULATOR, sheet="")


def test_the_sessions_go_into_the_pitchers_file() -> None:
    record = read_pitcher(file_text(answer(CALCULATOR, nickname="Juniper", sheet=OWN_SEASON)))
    assert [len(session.throws) for session in record.sessions] == [18, 34, 33]


def test_made_up_throws_never_get_into_a_pitchers_file() -> None:
    assert "made up" in asked(CALCULATOR, nickname="Juniper")["sheet"]


def test_a_session_put_in_twice_is_kept_once() -> None:
    once = file_text(answer(CALCULATOR, nickname="Juniper", sheet=OWN_SEASON))
    assert file_text(answer(CALCULATOR, record=once, sheet=OWN_SEASON)) == once


def test_a_sheet_with_all_quantities_missing_comes_back_as_it_was_written() -> None:
    found = read_sheet(open_sheet(SEASON), own_mapping(open_sheet(SEASON), "right"))
    again = open_sheet(write_sessions(found.sessions))
    assert read_sheet(again, own_mapping(again, "right")).sessions == found.sessions


@pytest.mark.parametrize("word", ["risk score", "is safe"])
def test_it_gives_no_risk_and_calls_nothing_safe(word: str) -> None:
    assert word not in text(CALCULATOR).lower()

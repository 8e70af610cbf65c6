"""The cue-trial calculator: when it keeps, drops or asks again, and what it warns of."""

from __future__ import annotations

import csv
import io
import re

import pytest

from calculators.coaching.pitcher_file import read_pitcher
from calculators.desk.cue_trial import CALCULATOR
from calculators.desk.pitch_count_stop import STOP
from calculators.words import speak
from tests.desk.loop_shelf import ENGLISH, OWN_SEASON, SEASON, answer, asked, file_text, headline, table, text


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
    assert headline(CALCULATOR, aim="spin up").endswith("No change in spin larger than luck was seen.")


def a_little_later(mph: float) -> str:
    """Return one day with ten and ten throws whose speed differs by a little, and no fastballs."""
    rows = ["date,throw,pitch,cue,block,speed mph"]
    spread = [0.0, 1.3, -0.9, 0.4, -1.6, 0.8, -0.3, 1.9, -1.2, 0.2]
    for block, cue in enumerate(("", "window-blind"), start=1):
        rows += [
            f"2026-03-10,{10 * (block - 1) + place},breaking ball,{cue},{block},{61 + move + (mph if cue else 0):.2f}"
            for place, move in enumerate(spread, start=1)
        ]
    return "\n".join(rows)


def test_the_headline_follows_the_decision_where_interval_and_chance_disagree() -> None:
    """An interval of 90 in 100 may leave zero out while luck alone does this more than 5 times in 100."""
    # scipy.stats.mannwhitneyu, exact: p = 0.089 for 1.05 mph more; Hodges and Lehmann's interval is 0.15 to 1.95.
    found = text(CALCULATOR, sheet=a_little_later(1.05), aim="speed up")
    assert found.startswith(
        "Window blind: Try it again. No change in speed larger than luck was seen.\nNo change larger than luck."
    )
    assert re.search(r"It may be luck. The true change may be from \+0.[12] mph to \+(1.9|2.0) mph.", found)


def test_a_change_beyond_luck_is_told_as_one() -> None:
    found = text(CALCULATOR, sheet=a_little_later(2.5), aim="speed up")
    assert found.startswith("Window blind: Try it again. Speed: 2.5 mph more.")
    assert "The change lies between" in found


def test_too_few_throws_are_no_change_at_all() -> None:
    ten_and_four = "\n".join(a_little_later(9.0).splitlines()[:15])
    said = headline(CALCULATOR, sheet=ten_and_four, aim="speed up")
    assert said == "Window blind: Try it again. Too few throws to say anything."


def test_several_days_put_together_may_differ_more_than_the_interval_shows() -> None:
    words = "Days may differ more than this interval shows."
    assert words in text(CALCULATOR)
    assert words not in text(CALCULATOR, sheet=days("2026-03-10"))


def test_strikes_that_fell_are_pointed_out_beside_keep_it() -> None:
    words = "Strikes fell too. So few throws say little about that: count them again."
    assert table(answer(CALCULATOR), "Plain against cue")["Strikes"][:2] == ("65%", "40%")
    assert words in text(CALCULATOR)
    assert words not in text(CALCULATOR, aim="strikes")
    steady = days("2026-03-10", "2026-03-17", strike="strike")
    assert "Strikes fell" not in text(CALCULATOR, sheet=steady)
    none = days("2026-03-10", "2026-03-17", strike="ball")
    assert "Strikes fell too, by more than luck." in text(CALCULATOR, sheet=none)


def test_the_smallest_change_is_told_for_each_quantity() -> None:
    rows = table(answer(CALCULATOR), "Plain against cue")
    # With 20 against 20 the smallest change by rank is 0.94 deviations: (2.02 + 0.85) * sqrt(pi / 3 * 2 / 19.5).
    assert rows["Speed"][-1] == "0.8 mph"
    assert rows["Strikes"][-1] == "47 points"


@pytest.mark.parametrize(("row", "speed"), [("10 and 10", "2.2 mph"), ("20 and 20", "1.5 mph")])
def test_blocks_on_paper_show_what_the_power_formula_gives(row: str, speed: str) -> None:
    # Cohen 1988 with Student's quantiles, by rank, 1.6 mph from throw to throw:
    # (2.10 + 0.86) * 1.6 * sqrt(pi / 3 * 2 / 9.5), and (2.02 + 0.85) * 1.6 * sqrt(pi / 3 * 2 / 19.5).
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
    record = read_pitcher(file_text(answer(CALCULATOR, nickname="Juniper", sheet=OWN_SEASON)))
    assert [(one.cue, str(one.date), one.decision) for one in record.log] == [
        ("window-blind", "2026-03-10", "keep"),
        ("window-blind", "2026-03-17", "keep"),
    ]


def test_made_up_throws_never_get_into_the_log() -> None:
    assert "made up" in asked(CALCULATOR, nickname="Juniper")["sheet"]


def test_the_file_of_another_hand_is_not_taken_for_this_pitcher() -> None:
    first = file_text(answer(CALCULATOR, nickname="Juniper", sheet=days("2026-03-10")))
    own = {"sheet": days("2026-03-17"), "record": first}
    assert "other hand" in asked(CALCULATOR, **own, hand="left")["hand"]


def test_an_earlier_day_in_the_file_counts_toward_the_answer() -> None:
    first = file_text(answer(CALCULATOR, sheet=days("2026-03-10"), nickname="Juniper"))
    assert "That is a working answer." in text(CALCULATOR, sheet=days("2026-03-17"), record=first)

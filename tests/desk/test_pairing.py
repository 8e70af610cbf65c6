"""The pairing calculator: what it says of two pitches, and what it refuses."""

from __future__ import annotations

import gettext
import re
from collections.abc import Mapping

import pytest

from calculators.desk.answers import Answer, Shelf
from calculators.desk.fields import Problem, Raw, read_fields
from calculators.desk.pairing import CALCULATOR
from calculators.desk.render_text import answer_text
from calculators.words import speak

ENGLISH = gettext.NullTranslations()
SHELF = Shelf()
BARE: Raw = {**CALCULATOR.example, "others": ()}


def outcome(**typed: object) -> Answer | tuple[Problem, ...]:
    """Work out the example, without other pitches, with some fields typed anew."""
    values, problems = read_fields(CALCULATOR.fields(SHELF), {**BARE, **typed})  # type: ignore[dict-item]
    return problems or CALCULATOR.work_out(values, SHELF)


def answer(**typed: object) -> Answer:
    """Return the answer where one is due."""
    found = outcome(**typed)
    assert isinstance(found, Answer), [speak(problem.message, ENGLISH) for problem in found]
    return found


def text(**typed: object) -> str:
    return answer_text(answer(**typed), SHELF, ENGLISH)


def facts(**typed: object) -> Mapping[str, str]:
    """Return label and value of the facts."""
    return {speak(fact.label, ENGLISH): speak(fact.value, ENGLISH) for fact in answer(**typed).facts}


def first_number(words: str) -> float:
    match = re.search(r"\d+(\.\d+)?", words)
    assert match
    return float(match[0])


def changes(**typed: object) -> Mapping[str, tuple[str, ...]]:
    """Return the table of small changes: what is changed, and its cells."""
    table = answer(**typed).tables[0]
    rows = [tuple(speak(cell, ENGLISH) for cell in row) for row in table.rows]
    return {row[0].split(":")[0]: row[1:] for row in rows}


def test_the_example_is_answered_in_a_sentence() -> None:
    found = answer()
    assert speak(found.headline, ENGLISH) == (
        "The breaking ball is 13 mph slower and gets to the plate 0.11 seconds later."
    )
    assert found.how_sure is not None
    assert found.cannot_tell
    assert found.sources


def test_the_gap_is_that_of_the_speeds() -> None:
    # With constant drag times are as speeds turned over; aiming the slow ball higher adds a little.
    from_speeds = 1000 * 0.505 * (76 / 63 - 1)
    assert first_number(facts()["Later by"]) == pytest.approx(from_speeds, abs=4)


def test_it_is_geometry_and_gives_no_grade() -> None:
    assert "no grade" in text()
    assert not re.search(r"\bscore\b|out of 10|/100", text())


def test_a_left_hander_with_the_mirror_image_gets_the_same_answer() -> None:
    right = text()
    left = text(hand="left", fast_clock="11:10", curve_clock="5:00")
    assert left.replace("5:00", "7:00").replace("4:45", "7:15") == right


def test_thrown_for_a_chase_the_hump_is_smaller() -> None:
    assert first_number(facts(ends="low")["Hump"]) < first_number(facts()["Hump"])


def test_a_chase_ends_below_the_zone_and_so_apart_from_the_fastball() -> None:
    label = "Apart at the plate, as aimed"
    # The zone of a six-foot batter here is 19 to 38 in: its middle is 28.5 in, a chase 5 in under it 14 in.
    assert first_number(facts(ends="low")[label]) == pytest.approx(14.5, abs=0.1)
    assert label not in facts()


def test_on_the_fastballs_line_there_is_no_hump() -> None:
    assert facts(ends="line")["Hump"] == "none"
    assert facts(ends="line")["Directions out of the hand"].startswith("0.0°")
    assert "There is no hump" in text(ends="line")


def test_small_changes_are_ranked_and_told_from_what_to_what() -> None:
    found = changes()
    amounts = [abs(float(cells[0].split()[0].replace("−", "-"))) for cells in found.values()]
    assert amounts == sorted(amounts, reverse=True)
    assert set(found) == {"Firmer", "More spin", "Clock", "Active share"}
    assert "Clock: 7:00 to 7:15" in text()
    assert "63 mph to 64 mph" in text()


def test_a_firmer_breaking_ball_comes_sooner_and_drops_less() -> None:
    nearer, later, lower = changes()["Firmer"]
    assert nearer.startswith("−")
    assert later.startswith("−")
    assert lower.startswith("−")


@pytest.mark.parametrize(
    ("other", "warned"),
    [
        ({"speed": "66", "clock": "7:50"}, True),
        ({"speed": "66", "clock": "9:15"}, False),
        ({"speed": "69", "clock": "7:50"}, False),
        ({"speed": "66", "clock": ""}, False),
    ],
)
def test_two_breaking_balls_alike_are_told_to_be_one(other: Mapping[str, str], warned: bool) -> None:
    # Common practice: within one hour of clock and 4 mph two breaking balls run into one.
    found = text(others=({"kind": "breaking", **other},))
    assert ("They run into one" in found) == warned


def test_a_changeup_is_no_second_breaking_ball() -> None:
    found = text(others=({"kind": "changeup", "speed": "65", "clock": "7:10"},))
    assert "run into one" not in found


def test_the_ladder_names_a_step_that_is_too_small() -> None:
    # Common practice: neighbours differ by four percent or more.
    table = answer(others=({"kind": "changeup", "speed": "65", "clock": ""},)).tables[1]
    rows = [[speak(cell, ENGLISH) for cell in row] for row in table.rows]
    assert [row[0] for row in rows] == ["Fastball", "Changeup", "Breaking ball"]
    assert rows[2][3] == "2 mph, too close"
    assert rows[1][3] == "11 mph"


def test_speeds_the_wrong_way_round_name_both_fields() -> None:
    found = outcome(fast_speed="63", curve_speed="76")
    assert not isinstance(found, Answer)
    assert {problem.field for problem in found} == {"fast_speed", "curve_speed"}


def test_a_changeup_faster_than_the_fastball_names_both() -> None:
    found = outcome(others=({"kind": "changeup", "speed": "80", "clock": ""},))
    assert not isinstance(found, Answer)
    assert {problem.field for problem in found} == {"fast_speed", "others"}
    assert isinstance(outcome(others=({"kind": "fastball", "speed": "80", "clock": ""},)), Answer)


def test_a_ball_too_slow_for_the_distance_names_both() -> None:
    found = outcome(curve_speed="30", curve_clock="6:00", curve_spin="3600", curve_active="100")
    assert not isinstance(found, Answer)
    assert {problem.field for problem in found} == {"curve_speed", "mound"}


def test_a_slow_loop_and_a_hard_slider_are_called_what_they_are() -> None:
    # Common practice: under 77 percent a get-me-over ball, over 89 percent a slider or cutter.
    assert "slow loop" in text(curve_speed="57")
    assert "slider or a cutter" in text(curve_speed="69")
    assert "slow loop" not in text()


def test_from_youth_distance_the_guideline_is_named() -> None:
    youth = text(
        mound="46", fast_speed="54", curve_speed="45", extension="4.5", release_height="4.5", batter="small"
    )
    assert "joint US guideline" in youth


def test_a_slower_swing_must_start_sooner_and_sees_less_between_the_two() -> None:
    label = "Apart when the swing must start"
    assert first_number(facts(swing="220")[label]) < first_number(facts()[label])


def test_metric_is_the_same_pair() -> None:
    assert first_number(facts(units="metric")["Hump"]) == pytest.approx(
        2.54 * first_number(facts()["Hump"]), abs=0.15
    )


def test_the_paper_table_agrees_with_the_published_law() -> None:
    # Rows worked out elsewhere: 60.5 ft, 90 mph, 15 mph slower: 85.4 ms; 46 ft, 50 mph, 10 slower: 141.9 ms.
    (table,) = CALCULATOR.common_cases(SHELF)
    rows = {speak(row[0], ENGLISH): [speak(cell, ENGLISH) for cell in row[1:]] for row in table.rows}
    assert rows["60.5 ft, 90 mph"][3] == "85 ms"
    assert rows["46 ft, 50 mph"][1] == "142 ms"


@pytest.mark.parametrize(("mound", "cautioned"), [("46", True), ("50", True), ("54", False), ("60.5", False)])
def test_the_fields_of_children_up_to_twelve_are_told_of_the_guideline(mound: str, cautioned: bool) -> None:
    slower = {"fast_speed": "60", "curve_speed": "50", "others": ()}
    assert ("joint US guideline" in text(mound=mound, **slower)) == cautioned

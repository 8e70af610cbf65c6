"""The distance-and-air calculator: the same pitch from every distance and in other air."""

from __future__ import annotations

import gettext
import re
from collections.abc import Mapping

import pytest

from calculators.desk import spin_to_break
from calculators.desk.answers import Answer, Shelf, Table
from calculators.desk.distance_and_air import CALCULATOR
from calculators.desk.fields import Problem, read_fields
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


def rows(table: Table) -> Mapping[str, list[str]]:
    """Return the table's rows by their head."""
    return {speak(row[0], ENGLISH): [speak(cell, ENGLISH) for cell in row[1:]] for row in table.rows}


def first_number(words: str) -> float:
    match = re.search(r"\d+(\.\d+)?", words)
    assert match
    return float(match[0])


def test_all_four_distances_stand_in_both_tables() -> None:
    here, at_sea = answer().tables
    assert list(rows(here)) == list(rows(at_sea)) == ["46 ft", "50 ft", "54 ft", "60.5 ft"]


def test_movement_time_and_drop_grow_with_the_distance() -> None:
    table = rows(answer().tables[0])
    for column in (0, 1, 3):
        values = [first_number(cells[column]) for cells in table.values()]
        assert values == sorted(values)


def test_the_readers_own_distance_agrees_with_spin_to_break() -> None:
    typed = {**CALCULATOR.example, "mound": "54"}
    values, _ = read_fields(spin_to_break.CALCULATOR.fields(SHELF), typed)
    other = spin_to_break.CALCULATOR.work_out(values, SHELF)
    assert isinstance(other, Answer)
    found = rows(answer(mound="54").tables[0])["54 ft"]
    told = {speak(fact.label, ENGLISH): speak(fact.value, ENGLISH) for fact in other.facts}
    assert found[0] == told["Up and down"]
    assert found[1] == told["To the side"]
    assert found[2] == told["Total drop"]


def test_a_mile_up_about_a_fifth_is_gone() -> None:
    # Nathan on altitude: about 20 percent less movement at a mile.
    here, at_sea = answer(altitude="5280", temperature="70").tables
    share = first_number(rows(here)["60.5 ft"][0]) / first_number(rows(at_sea)["60.5 ft"][0])
    assert share == pytest.approx(0.8, abs=0.03)


def test_on_a_mild_day_by_the_sea_nothing_is_different() -> None:
    found = text(altitude="0", temperature="68", humidity="50")
    assert "as thick as at sea level" in found
    here, at_sea = answer(altitude="0", temperature="68", humidity="50").tables
    assert here.rows == at_sea.rows


def test_cold_air_by_the_sea_is_thicker_and_adds_movement() -> None:
    found = text(altitude="0", temperature="30", humidity="50", spin="2800", active="100", speed="70")
    assert "percent thicker" in found
    assert "to the movement" in found


def test_the_paper_table_agrees_with_the_standard_atmosphere() -> None:
    # U.S. Standard Atmosphere 1976: pressure at 5000 ft is 84311 Pa, 83.2 percent of 101325. At one and the
    # same temperature density goes with pressure.
    (table,) = CALCULATOR.common_cases(SHELF)
    found = rows(table)
    share = float(found["5000 ft"][1].rstrip("%")) / float(found["0 ft"][1].rstrip("%"))
    assert share == pytest.approx(0.832, abs=0.008)


def test_a_left_hander_gets_the_same_inches() -> None:
    assert text(hand="left", clock="5:00") == text(hand="right", clock="7:00")


def test_a_pitch_that_does_not_get_there_is_refused() -> None:
    found = outcome(mound="46", speed="30", spin="3600", active="100", clock="6:00")
    assert not isinstance(found, Answer)
    assert found[0].field == "speed"


def test_metric_is_the_same_pitch() -> None:
    imperial, metric = answer().tables[0], answer(units="metric").tables[0]
    ours, theirs = list(rows(imperial).values())[-1], list(rows(metric).values())[-1]
    assert first_number(theirs[0]) == pytest.approx(2.54 * first_number(ours[0]), abs=0.15)
    assert list(rows(metric)) == ["14.0 m", "15.2 m", "16.5 m", "18.4 m"]

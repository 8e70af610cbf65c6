"""A league's own distance from rubber to plate is taken up wherever a page asks how far the rubber is."""

from __future__ import annotations

from dataclasses import replace

import pytest

from calculators.desk.answers import Answer, Shelf
from calculators.desk.counter import CALCULATORS, answer
from calculators.desk.fields import ChoiceField
from calculators.words import speak
from tests.desk.loop_shelf import ENGLISH, shelf

DIVISIONS = [
    {"name": "Sandlot", "ages": [7, 8], "mound_ft": 42},
    {"name": "Minors", "ages": [9, 10], "mound_ft": 46},
    {"name": "Majors", "ages": [11, 12], "mound_ft": 46},
]
LEAGUE = replace(shelf(), edition={"name": "Nobody's", "divisions": DIVISIONS})
NEEDS_RULES = {"pitch-count", "season-plan", "league-board"}
ASKING = [
    name
    for name, calculator in CALCULATORS.items()
    if name not in NEEDS_RULES and any(field.name == "mound" for field in calculator.fields(shelf()))
]


def offered(name: str, where: Shelf) -> list[str]:
    (field,) = (field for field in CALCULATORS[name].fields(where) if field.name == "mound")
    assert isinstance(field, ChoiceField)
    return [speak(choice.label, ENGLISH) for choice in field.choices]


@pytest.mark.parametrize("name", ASKING)
def test_every_page_that_asks_offers_the_leagues_own_distances(name: str) -> None:
    assert offered(name, LEAGUE) == ["42 ft: Sandlot", "46 ft: Minors, Majors", "50 ft", "54 ft", "60.5 ft"]
    assert offered(name, shelf()) == ["46 ft", "50 ft", "54 ft", "60.5 ft"]


@pytest.mark.parametrize("name", ASKING)
def test_and_answers_from_there(name: str) -> None:
    example = CALCULATORS[name].example
    near = answer(name, {**example, "mound": "42"}, LEAGUE)
    assert isinstance(near, Answer), near
    assert isinstance(answer(name, {**example, "mound": "42"}, shelf()), tuple)


def test_spin_has_less_time_from_nearer() -> None:
    """The rules of flight: with the same speed, movement grows with the square of the time of flight."""

    def told(mound: str, label: str) -> float:
        found = answer("spin-to-break", {**CALCULATORS["spin-to-break"].example, "mound": mound}, LEAGUE)
        assert isinstance(found, Answer)
        values = {speak(fact.label, ENGLISH): speak(fact.value, ENGLISH) for fact in found.facts}
        return float(values[label].split()[0])

    near, far = told("42", "Up and down"), told("60.5", "Up and down")
    times = told("42", "Flight time") / told("60.5", "Flight time")
    assert near / far == pytest.approx(times**2, rel=0.05)


def test_the_distance_page_flies_it_from_there_too() -> None:
    found = answer("distance-and-air", CALCULATORS["distance-and-air"].example, LEAGUE)
    assert isinstance(found, Answer)
    assert "from 42 ft" in speak(found.headline, ENGLISH)

"""The numbers to cross off follow the rest table of the rules, step by step, up to the day's limit."""

from __future__ import annotations

from dataclasses import replace

import pytest

from build_tools.generate.calculator_pages import calculator_names
from build_tools.generate.shelf import shelves
from build_tools.hand_outs.pencil import (
    BEYOND,
    WITHOUT_A_LIMIT,
    bands_for_ages,
    steps_to_cross_off,
    within_the_limit,
)
from build_tools.loading.library import load
from build_tools.places import Places
from calculators.workload.library import rule_set
from calculators.workload.rules import RuleSet


@pytest.fixture(scope="module")
def rules() -> dict[str, RuleSet]:
    shelf = shelves(load(Places().content, calculator_names()))["rules"]
    return {slug: rule_set(slug, shelf) for slug in ("usa-joint-2015", "little-league")}


# Little League, Regulation VI(d) and (a): rest steps and daily limit of league ages 11 and 12.
LITTLE_LEAGUE_TWELVE = [(1, 20, 0), (21, 35, 1), (36, 50, 2), (51, 65, 3), (66, 85, 4)]


def test_the_boxes_are_those_of_the_printed_rest_table(rules: dict[str, RuleSet]) -> None:
    little_league = rules["little-league"]
    steps = steps_to_cross_off(little_league, little_league.by_age[12])
    *up_to_the_limit, beyond = [(step.numbers[0], step.numbers[-1], step.rest) for step in steps]
    assert up_to_the_limit == LITTLE_LEAGUE_TWELVE
    assert beyond == (86, 85 + BEYOND, 4), "a batter who was begun may be finished"


def test_every_pitch_has_one_box_and_none_is_left_out(rules: dict[str, RuleSet]) -> None:
    for one in rules.values():
        for band in one.bands:
            numbers = [number for step in steps_to_cross_off(one, band) for number in step.numbers]
            assert numbers == list(range(1, len(numbers) + 1))
            assert band.daily_max is not None
            assert len(numbers) == band.daily_max + (BEYOND if one.finish_batter else 0)


def test_a_guideline_that_lets_nobody_finish_a_batter_ends_at_its_limit(rules: dict[str, RuleSet]) -> None:
    joint = rules["usa-joint-2015"]
    assert steps_to_cross_off(joint, joint.by_age[12])[-1].numbers[-1] == 85


def test_rest_steps_that_no_box_reaches_are_not_printed(rules: dict[str, RuleSet]) -> None:
    joint = rules["usa-joint-2015"]
    ten = replace(joint.by_age[10], daily_max=60)
    assert [step.low for step in ten.rest][-1] == 66
    for finish, limit, last in (
        (False, 60, 51),
        (True, 60, 51),
        (True, 61, 66),
        (False, 65, 51),
        (False, 66, 66),
    ):
        lower = replace(joint, bands=(replace(ten, daily_max=limit),), finish_batter=finish)
        assert within_the_limit(lower).bands[0].rest[-1].low == last
    without = replace(joint, bands=(replace(ten, daily_max=None),))
    assert within_the_limit(without).bands[0].rest == ten.rest


def test_without_a_daily_limit_there_are_boxes_all_the_same(rules: dict[str, RuleSet]) -> None:
    joint = rules["usa-joint-2015"]
    steps = steps_to_cross_off(joint, replace(joint.by_age[12], daily_max=None))
    assert steps[-1].numbers[-1] == WITHOUT_A_LIMIT


def test_a_league_gets_the_sheets_of_its_own_ages_only(rules: dict[str, RuleSet]) -> None:
    joint = rules["usa-joint-2015"]
    assert [band.label for band in bands_for_ages(joint, range(10, 14))] == [
        "Ages 9-10",
        "Ages 11-12",
        "Ages 13-14",
    ]
    assert bands_for_ages(joint, None) == joint.bands

"""The rules that bind: known, read, fitting the league's ages, checked in time, and first everywhere."""

from __future__ import annotations

import datetime
import json
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.generate.build_docs import generate
from build_tools.generate.calculator_pages import worked_examples
from build_tools.generate.shelf import shelves
from build_tools.loading.library import Library
from build_tools.loading.mistakes import ContentError
from build_tools.places import Places, Wanted
from calculators.desk.answers import Answer
from calculators.desk.counter import CALCULATORS, answer, shelf_from
from tests.editions.conftest import TODAY

Say = Callable[[str, str], int]
Told = Callable[..., list[str]]
Open = Callable[..., Library]


def test_a_rule_set_that_is_gone_is_told_with_the_nearest_name(told: Told, say_in_edition: Say) -> None:
    line = say_in_edition("rules: stricter-league", "rules: stricter-leage")
    [mistake] = told()
    assert f"line {line}, rules: " in mistake
    assert 'Did you mean "stricter-league"?' in mistake


def test_rules_from_memory_cannot_bind(told: Told, content: Path) -> None:
    path = content / "rules" / "stricter-league.yml"
    path.write_text(
        path.read_text(encoding="utf-8").replace("read at the body", "from memory"), encoding="utf-8"
    )
    [mistake] = told()
    assert "not fit to bind" in mistake


def test_rules_must_speak_of_every_age_of_the_league(told: Told, say_in_edition: Say) -> None:
    line = say_in_edition("ages: [13, 14]", "ages: [13, 16]")
    [mistake] = told()
    assert f"line {line}, divisions 2.ages: ages that A stricter league speaks of, 11 to 14" in mistake


def test_the_build_stops_from_the_day_after_the_rules_were_to_be_checked(told: Told, opened: Open) -> None:
    due = datetime.date(2026, 12, 1)
    assert told(today=due) == []
    [mistake] = told(today=due + datetime.timedelta(days=1))
    assert mistake.startswith(
        "content/editions/sandlot/edition.yml: line 9, rules_review_by: rules that somebody"
    )
    assert "ask the league whether stricter-league still holds" in mistake


def test_a_build_in_spite_of_it_says_so_on_its_pages(content: Path, tmp_path: Path) -> None:
    late = datetime.date(2026, 12, 2)
    wanted = Wanted("sandlot", allow_overdue=True, today=late)
    places = Places(content, tmp_path / "build", tmp_path / "site", wanted)
    generate(places)
    for page in ("index.md", "league.md", "rules.md"):
        text = (places.docs / page).read_text(encoding="utf-8")
        assert '<p class="care overdue" data-due="2026-12-01">These rules were to be checked' in text


def test_before_that_day_the_warning_lies_ready_for_copies_that_phones_keep(
    content: Path, tmp_path: Path
) -> None:
    places = Places(content, tmp_path / "build", tmp_path / "site", Wanted("sandlot", today=TODAY))
    generate(places)
    text = (places.docs / "league.md").read_text(encoding="utf-8")
    assert '<p class="care overdue" data-due="2026-12-01" hidden>' in text


def test_a_league_may_start_later_than_the_guideline_but_not_earlier(told: Told, say_in_edition: Say) -> None:
    say_in_edition("from_age: 14", "from_age: 12")
    assert "breaking_balls.from_age: 13 or more" in told()[0]


def test_every_calculator_that_asks_for_rules_offers_the_leagues_first_and_answers_by_them(
    opened: Open,
) -> None:
    content = shelves(opened())
    shelf = shelf_from(content)
    examples = worked_examples(content)
    asking = [name for name, one in CALCULATORS.items() if "rules" in one.example]
    assert "pitch-count" in asking
    for name in asking:
        rules = next(field for field in CALCULATORS[name].fields(shelf) if field.name == "rules")
        assert rules.choices[0].value == "stricter-league"
        assert examples[name]["rules"] == "stricter-league"
        assert isinstance(answer(name, examples[name], shelf), Answer)


def test_the_leagues_stricter_limit_is_what_the_pitch_count_page_works_with(
    content: Path, tmp_path: Path
) -> None:
    places = Places(content, tmp_path / "build", tmp_path / "site", Wanted("sandlot", today=TODAY))
    generated = generate(places)
    assert generated.questions["pitch-count"]["rules"] == "stricter-league"
    text = (places.docs / "calculators" / "pitch-count.md").read_text(encoding="utf-8")
    assert '<option value="stricter-league" selected>' in text
    assert text.index("Rest owed under the A stricter league") < text.index("Rest owed under the A guideline")
    shelf = json.loads((places.build / "shelf.json").read_text(encoding="utf-8"))
    assert shelf["edition"]["rules"] == "stricter-league"
    assert [one["name"] for one in shelf["edition"]["divisions"]] == ["Majors", "Juniors"]


def test_the_rules_page_begins_with_the_rules_that_bind(content: Path, tmp_path: Path) -> None:
    places = Places(content, tmp_path / "build", tmp_path / "site", Wanted("sandlot", today=TODAY))
    generate(places)
    text = (places.docs / "rules.md").read_text(encoding="utf-8")
    assert text.index("{: #stricter-league }") < text.index("{: #usa-joint-2015 }")
    assert text.count("These bind in Sandlot") == 1


def test_a_breaking_ball_page_says_the_leagues_age_and_its_divisions(content: Path, tmp_path: Path) -> None:
    places = Places(content, tmp_path / "build", tmp_path / "site", Wanted("sandlot", today=TODAY))
    generate(places)
    text = (places.docs / "grips" / "rolling-curve.md").read_text(encoding="utf-8")
    assert "**Not before 14.**" in text
    assert "In Sandlot: Juniors, and nobody younger than 14 in them." in text


@pytest.mark.parametrize("oldest", [12, 13])
def test_pages_no_division_is_old_enough_for_are_left_out_when_the_league_wants_it(
    opened: Open, say_in_edition: Say, oldest: int
) -> None:
    say_in_edition("  - {name: Juniors, ages: [13, 14], mound_ft: 54}\n", "")
    say_in_edition("ages: [11, 12]", f"ages: [11, {oldest}]")
    assert "rolling-curve" in opened().grips
    say_in_edition("{from_age: 14}", "{from_age: 14, pages_above_our_ages: hidden}")
    library = opened()
    assert set(library.grips) == {"plain-fastball"}
    assert dict(library.shapes) == {}
    assert dict(library.faults) == {}
    assert set(library.cues) == {"twist-it"}, "a retired cue stays, so that nobody uses it"


def test_an_edition_without_a_whole_kind_still_builds_and_leads_nowhere_empty(
    content: Path, tmp_path: Path, say_in_edition: Say
) -> None:
    say_in_edition("  - {name: Juniors, ages: [13, 14], mound_ft: 54}\n", "")
    say_in_edition("{from_age: 14}", "{from_age: 14, pages_above_our_ages: hidden}")
    places = Places(content, tmp_path / "build", tmp_path / "site", Wanted("sandlot", today=TODAY))
    generate(places)
    assert not (places.docs / "faults" / "index.md").exists()
    assert 'href="faults' not in (places.docs / "index.md").read_text(encoding="utf-8")
    assert "faults/index.md" not in (places.build / "navigation.json").read_text(encoding="utf-8")


def test_an_edition_in_which_no_rules_answer_the_example_is_not_built_in_silence(opened: Open) -> None:
    with pytest.raises(ContentError):
        opened(edition="nowhere")

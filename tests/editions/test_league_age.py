"""A league that starts breaking balls later than the handbook: its calculators, words and paper hold to that age."""

from __future__ import annotations

import datetime
import gettext
import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from build_tools.generate.build_docs import generate
from build_tools.generate.calculator_pages import calculator_names
from build_tools.generate.shelf import shelves
from build_tools.loading.library import load
from build_tools.places import Places, Wanted
from calculators.desk import next_cue, next_session, target
from calculators.desk.answers import Answer, Calculator, Shelf
from calculators.desk.counter import answer, shelf_from
from calculators.desk.render_text import answer_text

TODAY = datetime.date(2026, 5, 16)
ENGLISH = gettext.NullTranslations()
LEAGUE_SAYS = "This league starts breaking balls at 14."
LOOP = (target.CALCULATOR, next_cue.CALCULATOR, next_session.CALCULATOR)
FIRST_PITCH = {"role": "first-pitch", "shape": "", "mound": "54"}


@cache
def demonstration() -> Any:
    wanted = Wanted("pennimoor-valley", today=TODAY)
    return shelves(load(Places().content, calculator_names(), wanted))


@cache
def shelf() -> Shelf:
    return shelf_from(demonstration())


def said(calculator: Calculator, **typed: str) -> str:
    found = answer(calculator.name, {**calculator.example, **FIRST_PITCH, **typed}, shelf())
    assert isinstance(found, Answer), found
    return answer_text(found, shelf(), ENGLISH)


def test_nothing_about_breaking_balls_is_for_anybody_younger_than_the_league_allows() -> None:
    assert demonstration()["edition"]["breaking_balls_from"] == 14
    ages = [
        one["youngest"] for kind in ("cues", "drills", "shapes") for one in demonstration()[kind].values()
    ]
    assert 13 not in ages
    assert min(ages) < 13
    assert demonstration()["cues"]["window-blind"]["youngest"] == 14


@pytest.mark.parametrize("calculator", LOOP, ids=lambda one: one.name)
@pytest.mark.parametrize("age", ["12", "13"])
def test_before_that_age_no_breaking_ball_is_offered_and_the_league_is_named(
    calculator: Calculator, age: str
) -> None:
    found = said(calculator, age=age)
    assert LEAGUE_SAYS in found
    assert "Aim for a" not in found
    assert "Next cue" not in found


def test_before_that_age_a_session_is_spin_games_only() -> None:
    assert "Spin games with a soft or light ball" in said(next_session.CALCULATOR, age="13")


@pytest.mark.parametrize("calculator", LOOP, ids=lambda one: one.name)
def test_from_that_age_on_the_answer_is_the_handbooks(calculator: Calculator) -> None:
    found = said(calculator, age="14")
    assert LEAGUE_SAYS not in found
    assert "fastball and the changeup" not in found


PAGES = ("guide/for-parents", "guide/coach-twelve-year-olds", "age-gates", "plans/first-breaking-ball")


@pytest.fixture(scope="module")
def docs(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demonstration edition's pages as Markdown."""
    folder = tmp_path_factory.mktemp("demonstration")
    wanted = Wanted("pennimoor-valley", today=TODAY)
    places = Places(build=folder / "build", site=folder / "site", wanted=wanted)
    generate(places)
    return places.docs


@pytest.mark.parametrize("page", [*PAGES, "print/parents"])
def test_words_and_paper_that_name_the_handbooks_age_name_the_leagues_too(docs: Path, page: str) -> None:
    assert "**In this league: not before 14.**" in (docs / f"{page}.md").read_text(encoding="utf-8")


def test_the_navigation_leads_to_pages_there_are(docs: Path) -> None:
    def files(item: object) -> Iterator[str]:
        if isinstance(item, str):
            yield item
        elif isinstance(item, (list, dict)):
            for part in item.values() if isinstance(item, dict) else item:
                yield from files(part)

    listed = list(files(json.loads((docs.parent / "navigation.json").read_text(encoding="utf-8"))))
    assert "calculators/pitch-count.md" in listed
    assert "calculators/phone-radar.md" not in listed
    assert [file for file in listed if not (docs / file).is_file()] == []


def test_no_rest_row_lies_beyond_the_leagues_limit(docs: Path) -> None:
    for page in ("print/rest", "league"):
        text = (docs / f"{page}.md").read_text(encoding="utf-8")
        row = next(line for line in text.replace("<tr>", "\n<tr>").splitlines() if ">Ages 9-10<" in line)
        assert "60" in row
        assert "66" not in row


def test_every_page_left_out_is_counted(docs: Path) -> None:
    wanted = Wanted("pennimoor-valley", today=TODAY)
    opened = load(Places().content, calculator_names(), wanted).opened
    assert opened is not None
    text = (docs / "league.md").read_text(encoding="utf-8")
    assert f"{len(opened.hidden)} pages of the handbook are left out." in text


def test_codes_are_spoken_of_only_where_there_are_some(content: Path, tmp_path: Path) -> None:
    places = Places(content, tmp_path / "build", tmp_path / "site", Wanted("sandlot", today=TODAY))
    generate(places)
    text = (places.docs / "print" / "index.md").read_text(encoding="utf-8")
    assert "Print what you take along." in text
    assert "lead back here" not in text

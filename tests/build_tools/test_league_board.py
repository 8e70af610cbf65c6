"""The board as a command: the page's own answer, asked from a computer."""

from __future__ import annotations

import csv
import gettext
import html.parser
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from build_tools.generate.calculator_pages import calculator_names
from build_tools.generate.shelf import shelves
from build_tools.league_board import board
from build_tools.loading.library import load
from build_tools.places import Places
from calculators.desk.counter import CALCULATORS, answer, shelf_from

ROSTER = Places().content / "demo" / "league-roster.csv"
OUTINGS = Places().content / "demo" / "league-outings.csv"


@pytest.fixture
def run(tmp_path: Path) -> Callable[..., Result]:
    def command(*more: str, roster: Path = ROSTER, outings: Path = OUTINGS) -> Result:
        files = ("--roster", str(roster), "--outings", str(outings), "--on", "2026-05-16")
        return CliRunner().invoke(board, [*files, *more])

    return command


def test_it_says_what_the_page_says(run) -> None:
    said = run("--rules", "usa-joint-2015").output.splitlines()
    assert said[0].startswith("On Saturday, May 16, 8 of 15 pitchers are eligible under USA Baseball and MLB")
    assert not any("made up" in line for line in said)


def test_its_files_are_the_ones_the_page_hands_out(run, tmp_path) -> None:
    assert run("--csv", str(tmp_path / "b.csv"), "--ical", str(tmp_path / "b.ics")).exit_code == 0
    shelf = shelf_from(shelves(load(Places().content, calculator_names())))
    found = answer("league-board", CALCULATORS["league-board"].example, shelf)
    texts = {file.name: file.write(gettext.NullTranslations()) for file in found.files}
    assert (tmp_path / "b.csv").read_bytes().decode() == texts["board-2026-05-16.csv"]
    assert (tmp_path / "b.ics").read_bytes().decode() == texts["first-days-2026-05-16.ics"]
    rows = list(csv.DictReader((tmp_path / "b.csv").open(encoding="utf-8", newline="")))
    assert len(rows) == 15


def test_the_page_it_writes_stands_alone_and_is_whole(run, tmp_path) -> None:
    assert run("--html", str(tmp_path / "b.html")).exit_code == 0

    class Reader(html.parser.HTMLParser):
        def __init__(self) -> None:
            super().__init__()
            self.open: list[str] = []
            self.addresses: list[str] = []
            self.sheets = 0

        def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
            named = dict(attributes)
            self.sheets += named.get("class") == "sheet"
            if tag != "a" or not str(named.get("href")).startswith("http"):
                self.addresses += [value for key, value in attributes if key in ("src", "href") and value]
            if tag not in ("meta", "input", "br"):
                self.open.append(tag)

        def handle_endtag(self, tag: str) -> None:
            assert self.open.pop() == tag

    reader = Reader()
    reader.feed((tmp_path / "b.html").read_text(encoding="utf-8"))
    assert reader.open == []
    assert reader.sheets == 3
    assert reader.addresses == []


def test_a_question_names_the_option_that_answers_it(run, tmp_path) -> None:
    roster, outings = tmp_path / "r.csv", tmp_path / "o.csv"
    roster.write_text("player,age\nAce,12\n")
    outings.write_text("pitcher,date,pitches\nAce,5/6/2026,40\n")
    first = run(roster=roster, outings=outings)
    assert first.exit_code == 1
    assert "--heading roster_pitcher=HEAD" in first.output
    second = run("--heading", "roster_pitcher=player", roster=roster, outings=outings)
    assert "--dates: Row 2" in second.output
    third = run(
        "--heading", "roster_pitcher=player", "--dates", "month-first", roster=roster, outings=outings
    )
    assert third.output.startswith("On Saturday, May 16, 1 of 1 pitcher is eligible")


@pytest.mark.parametrize(
    ("more", "told"),
    [
        (("--rules", "nobody"), "There are no rules nobody. There are: "),
        (("--rules", "usa-joint-later"), "--unverified: "),
        (("--heading", "age=Years"), "write FIELD=HEAD, where FIELD is one of roster_pitcher"),
    ],
)
def test_what_is_wrong_is_said_with_what_to_do(run, more, told) -> None:
    found = run(*more)
    assert found.exit_code == 1
    assert told in found.output


def test_the_joint_guideline_is_set_beside_when_asked_for(run, tmp_path) -> None:
    assert run("--rules", "little-league", "--beside", "--csv", str(tmp_path / "b.csv")).exit_code == 0
    rows = list(csv.DictReader((tmp_path / "b.csv").open(encoding="utf-8", newline="")))
    beside = {row["pitcher"]: row["first day under USA Baseball and MLB joint guideline"] for row in rows}
    # 66 pitches on May 12 owe four days in both tables; Waffle is marked with pain.
    assert (beside["Biscuit"], beside["Waffle"]) == ("2026-05-17", "")


def test_rules_nobody_checked_are_gone_by_when_asked_for(run) -> None:
    assert run("--rules", "usa-joint-later", "--unverified").exit_code == 0

"""An edition's folder, its address and its days: what cannot be is refused with the place and the mend."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.editions.conftest import Open, Told

Say = Callable[[str, str], int]


@pytest.mark.parametrize("name", ["Alder Créek", "alder_creek", "Sand Lot"])
def test_a_folder_name_that_cannot_be_says_which_letters_may(folder: Path, told: Told, name: str) -> None:
    folder.rename(folder.parent / name)
    [mistake] = told(edition=name)
    assert mistake.startswith(f"content/editions/{name}: ")
    assert "the letters a to z, words joined by hyphens; rename the folder" in mistake


@pytest.mark.parametrize(
    "address",
    ["https://x.example/book/index.html?x=1#y", "https://x.example/book/?x", "https://x.example/book/#y",
     "https://x.example/index.html", "https://x.example/book/index.html/"],
)  # fmt: skip
def test_an_address_that_is_no_folder_is_refused(told: Told, say_in_edition: Say, address: str) -> None:
    line = say_in_edition("hides: []", f'site_url: "{address}"\nhides: []')
    [mistake] = told()
    assert f"line {line}, site_url: the address of the edition's folder alone" in mistake


@pytest.mark.parametrize(
    "address",
    ["https://x.example", "https://x.example/", "https://x.example/book", "http://x.example/v1.2/book/"],
)
def test_an_address_of_a_folder_is_taken(told: Told, say_in_edition: Say, address: str) -> None:
    say_in_edition("hides: []", f"site_url: {address}\nhides: []")
    assert told() == []


@pytest.mark.parametrize("name", ["alder-creek.yaml", "alder-creek.YML"])
def test_a_rule_set_with_another_ending_is_told_to_be_renamed(folder: Path, told: Told, name: str) -> None:
    (folder / "rules").mkdir()
    (folder / "rules" / name).write_text("title: x\n", encoding="utf-8")
    [mistake] = told()
    assert f"rules/{name}" in mistake
    assert "rename it to alder-creek.yml" in mistake


@pytest.mark.parametrize("name", ["lists/slotz.yml", "rules/notes.txt"])
def test_a_file_that_nobody_reads_is_remarked(folder: Path, opened: Open, name: str) -> None:
    (folder / name).parent.mkdir()
    (folder / name).write_text("x", encoding="utf-8")
    assert f"content/editions/sandlot/{name} is not read; rename it or take it out." in opened().remarks


def test_the_same_ages_twice_in_a_rule_set_are_refused(content: Path, told: Told) -> None:
    path = content / "rules" / "stricter-league.yml"
    text = path.read_text(encoding="utf-8")
    bands = text[text.index("\nbands:\n") :].removeprefix("\nbands:")
    path.write_text(text + bands, encoding="utf-8")
    assert any("each band once" in mistake for mistake in told())


def test_rules_cannot_be_checked_in_the_future(content: Path, told: Told) -> None:
    path = content / "rules" / "stricter-league.yml"
    text = path.read_text(encoding="utf-8")
    before, _, after = text.partition("\nlast_checked: ")
    path.write_text(f"{before}\nlast_checked: 2999-01-01\n{after.partition(chr(10))[2]}", encoding="utf-8")
    assert any("last_checked: a day that has been" in mistake for mistake in told())


def test_tomorrow_is_taken_because_it_is_today_elsewhere(content: Path, told: Told) -> None:
    path = content / "guide" / "warning-signs.md"
    tomorrow = datetime.date.today() + datetime.timedelta(days=1)
    text = path.read_text(encoding="utf-8").replace("reviewed: 2026-01-02", f"reviewed: {tomorrow}")
    path.write_text(text, encoding="utf-8")
    assert told() == []


def test_the_next_check_comes_within_two_years(told: Told, say_in_edition: Say) -> None:
    line = say_in_edition("rules_review_by: 2026-12-01", "rules_review_by: 2036-12-01")
    [mistake] = told()
    assert f"line {line}, rules_review_by: a day within two years, " in mistake

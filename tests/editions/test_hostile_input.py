"""Whatever lies in an edition's folder, it is read safely or refused with the file and a mend."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.generate.build_docs import generate
from build_tools.places import Places, Wanted
from tests.editions.conftest import TODAY

Say = Callable[[str, str], int]
Told = Callable[..., list[str]]


def test_a_few_lines_of_yaml_that_stand_for_gigabytes_are_refused(told: Told, folder: Path) -> None:
    path = folder / "edition.yml"
    bomb = 'a: &a ["x","x","x","x","x","x","x","x","x"]\n' + "".join(
        f"{name}: &{name} [{', '.join([f'*{below}'] * 9)}]\n"
        for below, name in zip("abcdefgh", "bcdefghi", strict=True)
    )
    path.write_text(bomb + path.read_text(encoding="utf-8"), encoding="utf-8")
    [mistake] = told()
    assert mistake.startswith("content/editions/sandlot/edition.yml: line ")
    assert "values, counting what aliases" in mistake


def test_a_huge_file_is_not_read_at_all(told: Told, folder: Path) -> None:
    with (folder / "edition.yml").open("a", encoding="utf-8") as file:
        file.write("#" + "x" * 200_000)
    [mistake] = told()
    assert "at most 100 kB" in mistake


@pytest.mark.parametrize("tag", ["!!python/object/apply:os.system [ls]", "!include /etc/passwd"])
def test_a_tag_makes_nothing(told: Told, say_in_edition: Say, tag: str) -> None:
    say_in_edition("short_name: Sandlot", f"short_name: {tag}")
    assert "tags (!) are not read" in told()[0]


@pytest.mark.parametrize("others", [(), ("north",), ("north", "south")])
def test_editions_that_rest_on_each_other_in_a_ring_are_refused(
    content: Path, folder: Path, told: Told, say_in_edition: Say, others: tuple[str, ...]
) -> None:
    ring = ("sandlot", *others)
    say_in_edition("hides: []", f"based_on: {ring[1 % len(ring)]}\nhides: []")
    for index, name in enumerate(others, start=1):
        shutil.copytree(folder, content / "editions" / name)
        path = content / "editions" / name / "edition.yml"
        text = path.read_text(encoding="utf-8")
        old = f"based_on: {ring[1]}"
        path.write_text(text.replace(old, f"based_on: {ring[(index + 1) % len(ring)]}"), encoding="utf-8")
    [mistake] = told()
    assert "an edition that does not rest on this one in its turn" in mistake
    assert f"content/editions/{ring[-1]}/edition.yml" in mistake


def test_rule_sets_that_rest_on_each_other_in_a_ring_are_refused(
    told: Told, folder: Path, content: Path, say_in_edition: Say
) -> None:
    (folder / "rules").mkdir()
    text = (content / "rules" / "stricter-league.yml").read_text(encoding="utf-8")
    for name, below in (("east", "west"), ("west", "east")):
        (folder / "rules" / f"{name}.yml").write_text(text.replace("usa-joint-2015", below), encoding="utf-8")
    say_in_edition("rules: stricter-league", "rules: east")
    assert any("extends: a rule set must not extend itself" in mistake for mistake in told())


@pytest.mark.parametrize(
    ("name", "near"),
    [("mi señal.md", "mi-senal.md"), ("Our Page 2.md", "our-page.md"), ("León.md", "leon.md")],
)
def test_a_file_name_with_spaces_or_accents_is_refused_with_one_that_works(
    told: Told, folder: Path, name: str, near: str
) -> None:
    (folder / "guide").mkdir()
    (folder / "guide" / name).write_text("---\n---\n", encoding="utf-8")
    [mistake] = told()
    assert mistake.startswith(f"content/editions/sandlot/guide/{name}: ")
    assert f'Did you mean "{near}"?' in mistake


@pytest.mark.parametrize(("name", "near"), [("cue", "cues"), ("guides", "guide"), ("picture", None)])
def test_a_folder_nobody_reads_is_not_passed_over(
    told: Told, folder: Path, name: str, near: str | None
) -> None:
    (folder / name).mkdir()
    [mistake] = told()
    assert f"content/editions/sandlot/{name}: " in mistake
    assert near is None or f'Did you mean "{near}"?' in mistake


def test_a_link_to_a_file_elsewhere_is_not_followed(told: Told, folder: Path, tmp_path: Path) -> None:
    secret = tmp_path / "secret.md"
    secret.write_text("---\ntitle: Secret\n---\n", encoding="utf-8")
    (folder / "guide").mkdir()
    (folder / "guide" / "secret.md").symlink_to(secret)
    [mistake] = told()
    assert "not a link to another place" in mistake


def test_an_unknown_field_such_as_a_time_zone_is_told_with_those_there_are(
    told: Told, say_in_edition: Say
) -> None:
    say_in_edition("hides: []", "time_zone: Middle/Nowhere\nhides: []")
    [mistake] = told()
    assert "time_zone" in mistake
    assert "one of these fields: name, short_name" in mistake


@pytest.mark.parametrize("name", ["no-such", "../sandlot", "sandlot/../../..", "Sandlot"])
def test_an_edition_that_is_not_there_is_told_with_those_there_are(told: Told, name: str) -> None:
    [mistake] = told(edition=name)
    assert "one of the editions there are (sandlot)" in mistake


def test_words_of_a_league_cannot_become_markup(told: Told, say_in_edition: Say) -> None:
    say_in_edition("role: Safety officer", "role: Safety <script>alert(1)</script>")
    assert "plain words; < and > are not taken" in told()[0]


def test_signs_that_mean_something_in_html_are_shown_as_they_are(
    content: Path, tmp_path: Path, say_in_edition: Say
) -> None:
    say_in_edition('where: "Field 1, behind the school"', """where: 'Field "1" & 2'""")
    places = Places(content, tmp_path / "build", tmp_path / "site", Wanted("sandlot", today=TODAY))
    generate(places)
    text = (places.docs / "league.md").read_text(encoding="utf-8")
    assert "Field &#34;1&#34; &amp; 2" in text


def test_a_link_in_a_notice_is_checked_like_any_other(told: Told, say_in_edition: Say) -> None:
    notice = 'notices:\n  - {title: Talk., text: "Bring [[guide/welcom]]."}'
    line = say_in_edition("hides: []", f"{notice}\nhides: []")
    [mistake] = told()
    assert f"line {line + 1}, notices 1.text" in mistake
    assert "a name in guide" in mistake

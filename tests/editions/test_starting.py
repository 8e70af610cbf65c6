"""A new edition starts from a handful of answers, asked for or given as options."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from build_tools.editions.commands import new_edition
from build_tools.editions.start import AnswerError, divisions_in
from build_tools.generate.calculator_pages import calculator_names
from build_tools.loading.library import Library, load
from build_tools.loading.slugs import slug_of
from build_tools.places import Wanted

OPTIONS = {
    "--name": "Águilas de San Nadie",
    "--short-name": "Águilas",
    "--light": "#8a1c1c",
    "--dark": "#ffb3a0",
    "--rules": "stricter-league",
    "--review-by": f"{datetime.date.today() + datetime.timedelta(days=300)}",
    "--divisions": "Majors 11-12 46; Juniors 13-14 54",
    "--from-age": "14",
    "--contact": "Presidenta",
    "--reach": "hola@nadie.example",
    "--call": "Call 911 first.",
    "--where": "Campo 1",
    "--site-url": "",
}


def run(content: Path, *flags: str, answers: str = "", **changed: str | None) -> Result:
    options = {**OPTIONS, **{f"--{name.replace('_', '-')}": value for name, value in changed.items()}}
    given = [part for name, value in options.items() if value is not None for part in (name, value)]
    return CliRunner().invoke(new_edition, ["--content", str(content), *given, *flags], input=answers)


def loaded(content: Path, name: str) -> Library:
    return load(content, calculator_names(), Wanted(name))


def test_options_alone_make_an_edition_that_opens_without_a_mistake(content: Path) -> None:
    result = run(content, "--show-older")
    assert result.exit_code == 0, result.output
    assert "make edition NAME=aguilas-de-san-nadie" in result.output
    league = loaded(content, "aguilas-de-san-nadie").league
    assert league is not None
    assert league.name == "Águilas de San Nadie"
    assert league.contacts[0].email == "hola@nadie.example"
    assert [(one.name, one.ages, one.mound_ft) for one in league.divisions] == [
        ("Majors", (11, 12), 46),
        ("Juniors", (13, 14), 54),
    ]
    assert league.breaking_balls.pages_above_our_ages == "shown"


def test_what_no_option_says_is_asked_and_asked_again_until_it_can_be_used(content: Path) -> None:
    answers = "\n".join(["555", "#5b1a8a", "twelve", "15", "yes", ""])
    result = run(content, answers=answers, light=None, dark="#d9b3ff", from_age=None)
    assert result.exit_code == 0, result.output
    assert 'Write the color as # and six digits, like "#1f5c3d".' in result.output
    assert "Write an age of 13 or more" in result.output
    league = loaded(content, "aguilas-de-san-nadie").league
    assert league is not None
    assert league.colors.light == "#5b1a8a"
    assert league.breaking_balls.from_age == 15
    assert league.breaking_balls.pages_above_our_ages == "hidden"


def test_a_color_that_cannot_be_read_is_refused_and_the_nearest_is_named(content: Path) -> None:
    result = run(content, "--show-older", light="#ffe000")
    assert result.exit_code == 1
    assert "The nearest shade that can is #" in result.output
    assert not (content / "editions" / "aguilas-de-san-nadie").exists()


def test_the_dark_shade_is_offered_ready_to_use(content: Path) -> None:
    result = run(content, "--show-older", answers="\n", dark=None)
    assert result.exit_code == 0, result.output
    loaded(content, "aguilas-de-san-nadie")


def test_after_the_pattern_of_another_edition_its_entries_come_along(content: Path, folder: Path) -> None:
    (folder / "guide").mkdir()
    (folder / "guide" / "our-fields.md").write_text(
        "---\ntitle: Our fields\nsummary: Where we play.\nreviewed: 2026-01-02\nsection: coach\n---\nHere.\n",
        encoding="utf-8",
    )
    (folder / "history").mkdir()
    (folder / "history" / "2026-01-02.json").write_text("{}", encoding="utf-8")
    result = run(content, "--show-older", "--like", "sandlot")
    assert result.exit_code == 0, result.output
    assert "our-fields" in loaded(content, "aguilas-de-san-nadie").guide
    assert not (content / "editions" / "aguilas-de-san-nadie" / "history").exists(), "its history is its own"


def test_another_leagues_steps_in_an_emergency_do_not_come_along(
    content: Path, say_in_edition: Callable[[str, str], int]
) -> None:
    say_in_edition('behind the school"}', 'behind the school", then: [The AED hangs at the snack stand.]}')
    assert run(content, "--show-older", "--like", "sandlot").exit_code == 0
    league = loaded(content, "aguilas-de-san-nadie").league
    assert league is not None
    assert league.emergency.then == ()
    text = (content / "editions" / "aguilas-de-san-nadie" / "edition.yml").read_text(encoding="utf-8")
    assert "AED hangs at" not in text
    assert "# Add to emergency" in text


def test_lines_that_still_name_the_other_league_are_told(content: Path, folder: Path) -> None:
    (folder / "guide").mkdir()
    (folder / "guide" / "our-fields.md").write_text(
        "---\ntitle: Our fields\nsummary: Where we play.\nreviewed: 2026-01-02\nsection: coach\n---\n"
        "The fields of Sandlot.\n",
        encoding="utf-8",
    )
    output = run(content, "--show-older", "--like", "sandlot").output
    told = "aguilas-de-san-nadie/guide/our-fields.md line 7 still names Sandlot."
    assert told in output
    assert told in "".join(loaded(content, "aguilas-de-san-nadie").remarks)
    assert not any("still names" in one for one in loaded(content, "sandlot").remarks)


def test_the_address_is_asked_for_and_written(content: Path) -> None:
    result = run(content, "--show-older", answers="https://nadie.example/libro/\n", site_url=None)
    assert "The address where it will be found, or blank" in result.output
    league = loaded(content, "aguilas-de-san-nadie").league
    assert league is not None
    assert league.site_url == "https://nadie.example/libro/"


def test_an_edition_is_never_written_over(content: Path) -> None:
    assert run(content, "--show-older").exit_code == 0
    result = run(content, "--show-older")
    assert result.exit_code == 1
    assert "There is an edition in" in result.output


@pytest.mark.parametrize(
    ("changed", "mend"),
    [
        ({"rules": "no-such-rules"}, "Choose one of those above"),
        ({"review_by": "next spring"}, "year-month-day"),
        ({"divisions": "Majors"}, "Write name, ages and feet"),
        ({"from_age": "11"}, "13 or more"),
        ({"name": "北北"}, "--slug"),
        ({"site_url": "our page"}, "https://example.org/handbook/"),
    ],
)
def test_an_answer_that_cannot_be_used_is_refused_with_a_mend(
    content: Path, changed: dict[str, str], mend: str
) -> None:
    result = run(content, "--show-older", **changed)
    assert result.exit_code == 1
    assert mend in result.output


def test_divisions_are_typed_in_one_line() -> None:
    assert divisions_in("Minors 9-10 46; Big League 13 - 14 60.5 ;") == [
        {"name": "Minors", "ages": [9, 10], "mound_ft": 46},
        {"name": "Big League", "ages": [13, 14], "mound_ft": 60.5},
    ]
    with pytest.raises(AnswerError, match="Minors 9-10 46"):
        divisions_in(" ; ")


@pytest.mark.parametrize(
    ("words", "slug"),
    [
        ("Liga de San José", "liga-de-san-jose"),
        ("  St. John's  East ", "st-johns-east"),
        ("Øst 12", "st"),
        ("北", ""),
    ],
)
def test_a_folder_gets_a_plain_name_whatever_the_league_is_called(words: str, slug: str) -> None:
    assert slug_of(words) == slug

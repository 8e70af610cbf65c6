"""Terms are linked where a reader meets them first, and nowhere else."""

from __future__ import annotations

import re

import pytest

from build_tools.generate.terms import TermLinker
from build_tools.loading.library import Library


@pytest.fixture(scope="module")
def linker(small_library: Library) -> TermLinker:
    return TermLinker(small_library.glossary.values(), "left-hander")


def linked(text: str) -> list[tuple[str, str]]:
    """Return slug and words of each term link."""
    return re.findall(r'<a class="term" href="[^"]*#([a-z-]+)"[^>]*>([^<]*)</a>', text)


def test_the_first_use_on_a_page_is_linked(linker: TermLinker) -> None:
    text = linker.link("A horseshoe.\n\nAnother horseshoe.", "guide/x/")
    assert linked(text) == [("horseshoe", "horseshoe")]
    assert text.startswith('A <a class="term" href="../../glossary/#horseshoe"')


def test_the_longest_term_that_fits_is_taken(linker: TermLinker) -> None:
    text = linker.link("The Magnus push is a push.", "x/")
    assert linked(text) == [("magnus-push", "Magnus push"), ("push", "push")]


@pytest.mark.parametrize(
    ("written", "slug"),
    [
        ("HORSESHOE", "horseshoe"),
        ("Spin\nGames", "spin-game"),
        ("spin push", "magnus-push"),
        ("(horseshoe)", "horseshoe"),
        ("**horseshoe**", "horseshoe"),
        ("<strong>horseshoe</strong>", "horseshoe"),
    ],
)
def test_case_line_breaks_and_other_forms_do_not_matter(linker: TermLinker, written: str, slug: str) -> None:
    assert [found for found, _ in linked(linker.link(f"A {written} here.", "x/"))] == [slug]


@pytest.mark.parametrize(
    "text",
    [
        "horseshoes and horseshoe-shaped, un-horseshoe",
        "a run of games",
        "## The horseshoe",
        "[a horseshoe](other.md)",
        "![a horseshoe](other.png)",
        '<a href="x">the **horseshoe** page</a>',
        "<h2>horseshoe</h2>",
        '<img alt="a horseshoe > b" src="x">',
        "`horseshoe`",
        "``a ` horseshoe``",
        "```\nhorseshoe\n```",
        "<svg><title>horseshoe</title></svg>",
        "<button>horseshoe</button> <label>horseshoe</label>",
        "Words.\n{: .horseshoe }",
        "https://example.org/horseshoe",
        "<!-- horseshoe -->",
        "| horseshoe | x |\n|---|---|",
    ],
)
def test_headings_links_code_and_tags_are_left_alone(linker: TermLinker, text: str) -> None:
    assert linker.link(text, "x/") == text


def test_text_after_what_is_left_alone_is_linked(linker: TermLinker) -> None:
    text = linker.link("## The horseshoe\n\nA horseshoe.\n\n| push |\n|---|\n| spin game |", "x/")
    assert linked(text) == [("horseshoe", "horseshoe"), ("spin-game", "spin game")]


def test_a_page_does_not_link_its_own_term(linker: TermLinker) -> None:
    assert linked(linker.link("A horseshoe.", "grips/rolling-curve/", {"grips/rolling-curve"})) == []
    assert linked(linker.link("A horseshoe.", "glossary/", {"horseshoe"})) == []


def test_the_meaning_rides_along_and_cannot_break_the_page(linker: TermLinker) -> None:
    text = linker.link("A horseshoe. A Magnus push.", "x/")
    assert 'data-meaning="The U-shaped bend in the seam, see rolling curve."' in text
    assert 'data-meaning="Force from &#91;spin&#93; &#124; air."' in text


def test_unclosed_signs_do_not_make_the_linker_backtrack_for_ever(linker: TermLinker) -> None:
    awkward = "a < b ` c [ d ( e ** <span class='f " * 400
    assert linker.link(awkward, "x/").startswith("a < b")

"""Slips of the hand and British spellings are told; words of the trade are not."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from build_tools.checks.spelling import unknown_words
from build_tools.generate.calculator_pages import calculator_names
from build_tools.loading.library import Library, load
from build_tools.places import Places


def library(content: Path) -> Library:
    return load(content, calculator_names())


def test_a_slip_is_told_once_where_it_stands_first_with_the_likeliest_mend(
    small: Path, edit: Callable[[str, str, str], int]
) -> None:
    line = edit("guide/warning-signs.md", "no help then", "no hlep then, no hlep at all")
    [mistake] = [one for one in unknown_words(library(small).kinds, small) if "hlep" in one.found]
    assert mistake.path == Path("content/guide/warning-signs.md")
    assert mistake.line == line
    assert mistake.field == "body"
    assert mistake.nearest == "help"


def test_a_british_spelling_is_told(small: Path, edit: Callable[[str, str, str], int]) -> None:
    edit("cues/rope-pull.md", "says: Pull the rope down.", "says: Pull the grey coloured rope down.")
    found = {one.found: one.nearest for one in unknown_words(library(small).kinds, small)}
    assert found['"coloured"'] == "colored"


def test_what_the_glossary_and_the_list_of_words_know_is_no_slip(
    small: Path, edit: Callable[[str, str, str], int]
) -> None:
    edit("cues/rope-pull.md", "says: Pull the rope down.", "says: Pull the Magnus blorp down.")

    def found() -> set[str]:
        return {one.found for one in unknown_words(library(small).kinds, small)}

    assert '"blorp"' in found()
    assert '"Magnus"' not in found()
    (small / "words.txt").write_text("# ours\nblorp\n", encoding="utf-8")
    assert '"blorp"' not in found()


def test_the_handbook_itself_holds_no_word_that_nobody_knows() -> None:
    content = Places().content
    assert [str(one) for one in unknown_words(library(content).kinds, content)] == []

"""Pages for volunteers are easy to read, by a formula that others publish and apply."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.checks.reading_grade import (
    HIGHEST_GRADE,
    grade,
    reading_report,
    sentences_of,
    too_hard,
    volunteer_grades,
)
from build_tools.generate.calculator_pages import calculator_names
from build_tools.loading.library import Library, load
from build_tools.places import Places


def published(words: int, sentences: int, syllables: int) -> float:
    """Flesch-Kincaid grade, J. P. Kincaid and others, Research Branch Report 8-75 (1975)."""
    return 0.39 * words / sentences + 11.8 * syllables / words - 15.59


@pytest.mark.parametrize(
    ("sentence", "words", "syllables"),
    # Syllables as a dictionary divides the words.
    [
        ("The cat sat on the mat.", 6, 6),
        ("We throw the ball to the catcher.", 7, 8),
        ("The little finger rests beside the ball.", 7, 10),
        ("He and she be the one.", 6, 6),
    ],
)
def test_plain_sentences_get_the_published_grade(sentence: str, words: int, syllables: int) -> None:
    assert grade([sentence]) == pytest.approx(published(words, 1, syllables))


def test_a_hard_sentence_is_not_called_easier_than_it_is() -> None:
    # 13 words of 24 syllables, an example often printed with the formula.
    hard = "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature."
    assert grade([hard]) >= published(13, 1, 24) > 11


def test_headings_tables_links_and_marks_do_not_count() -> None:
    text = (
        "## A heading about circumstances\n\nThrow it. See [[drills/short-toss|the toss]]. {estimate}\n\n"
        "| Extraordinarily | complicated |\n|---|---|\n| consideration | consequences |\n\n- Rest now.\n- Stop."
    )
    assert list(sentences_of(text)) == ["Throw it.", "See the toss.", "Rest now.", "Stop."]


@pytest.fixture(scope="module")
def handbook() -> Library:
    return load(Places().content, calculator_names())


def test_every_page_for_volunteers_is_easy_enough(handbook: Library) -> None:
    grades = volunteer_grades(handbook.kinds)
    graded = {page.loaded.address for page in grades}
    assert {"guide/start-here", "guide/warning-signs", "faults/hangs", "drills/thumb-ladder"} <= graded
    assert {page.loaded.address: page.grade for page in grades if page.grade > HIGHEST_GRADE} == {}
    assert all(page.words > 80 for page in grades)


def test_a_page_that_is_too_hard_is_named_with_its_grade(small: Path) -> None:
    page = small / "drills" / "short-toss.md"
    hard = "Notwithstanding considerable biomechanical uncertainty, supinatory exaggeration necessitates intervention."
    page.write_text(page.read_text(encoding="utf-8") + f"\n{' '.join([hard] * 20)}\n", encoding="utf-8")
    (mistake,) = too_hard(volunteer_grades(load(small, calculator_names()).kinds), small)
    assert mistake.path == Path("content/drills/short-toss.md")
    assert float(mistake.found) > HIGHEST_GRADE
    assert "shorter sentences" in mistake.expected


def test_the_report_tells_the_hardest_page_first(handbook: Library) -> None:
    grades = volunteer_grades(handbook.kinds)
    lines = reading_report(grades, each=True).splitlines()
    assert len(lines) == len(grades) + 1
    assert lines[0].split() == [f"{grades[0].grade:.1f}", grades[0].loaded.address]
    assert f"{len(grades)} pages for volunteers" in reading_report(grades, each=False)

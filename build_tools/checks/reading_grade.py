"""How hard the pages for volunteers are to read: the Flesch-Kincaid grade, at most 7 [1]_.

Counted are the full sentences of a page, not its headings, tables and short labels. The library that counts
gives no syllable to short words such as "the", and one to "little"; what it misses is added, so that a page
is never called easier than it is.

References
----------
[1] J. P. Kincaid and others, Derivation of new readability formulas for Navy enlisted personnel, Research
    Branch Report 8-75 (1975): grade = 0.39 words a sentence + 11.8 syllables a word - 15.59.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from readability import getmeasures
from readability.langdata import LANGDATA

from build_tools.checks.names import strings
from build_tools.loading.marks import plain
from build_tools.loading.mistakes import Mistake
from build_tools.loading.reading import Loaded

HIGHEST_GRADE = 7.0
VOLUNTEER_KINDS = ("faults", "drills", "plans", "cues", "grips")
"""Kinds a volunteer is sent to; of the guide only the pages that say `reading: volunteer`."""

_SYLLABLES_A_WORD = 11.8
_SKIPPED_LINE = re.compile(r"^(?:\s*\||#).*$", re.MULTILINE)
_BREAK = re.compile(r"\n\s*\n|\n(?=\s*(?:[-*]|\d+\.)\s)")
_BULLET = re.compile(r"^\s*(?:[-*]|\d+\.)\s+")
_SENTENCE_END = re.compile(r"(?<=[.!?])[\"\u201d)*]*\s+")
_WORD = re.compile(r"[^\W\d_]+(?:['\u2019-][^\W\d_]+)*|\d+(?:[.,:]\d+)*")
_HARD_LE = re.compile(r"[^aeiouy]le$")


@dataclass(frozen=True)
class PageGrade:
    """A page's grade, and how many words it was worked out from."""

    loaded: Loaded[Any]
    grade: float
    words: int


def volunteer_grades(kinds: Mapping[str, Mapping[str, Loaded[Any]]]) -> tuple[PageGrade, ...]:
    """Return the grade of every page a volunteer should find easy, the hardest first.

    kinds: entries by kind and slug.
    """
    guide = (one for one in kinds["guide"].values() if "volunteer" in one.model.reading)
    entries = [*guide, *(one for kind in VOLUNTEER_KINDS for one in kinds[kind].values())]
    graded = [
        PageGrade(one, grade(told), sum(len(words(sentence)) for sentence in told))
        for one in entries
        if (told := tuple(_sentences(one)))
    ]
    return tuple(sorted(graded, key=lambda page: -page.grade))


def too_hard(grades: Sequence[PageGrade], root: Path) -> Iterator[Mistake]:
    """Yield a mistake for each page above the highest grade.

    root: the content folder.
    """
    for page in grades:
        if page.grade > HIGHEST_GRADE:
            path = Path(root.name) / page.loaded.path.relative_to(root)
            expected = f"a reading grade of at most {HIGHEST_GRADE:g}: shorter sentences, shorter words"
            yield Mistake(path, page.loaded.body_line, "", expected, f"{page.grade:.1f}")


def reading_report(grades: Sequence[PageGrade], each: bool) -> str:
    """Write the grades for a curator.

    each: one line a page before the last one, which tells of all of them.
    """
    lines = [f"{page.grade:5.1f}  {page.loaded.address}" for page in grades] if each else []
    if not grades:
        return "No page for volunteers."
    middle = sum(page.grade for page in grades) / len(grades)
    hardest = grades[0]
    return "\n".join(
        (
            *lines,
            f"Reading grade of {len(grades)} pages for volunteers: {middle:.1f} on average, "
            f"{hardest.grade:.1f} at most ({hardest.loaded.address}); {HIGHEST_GRADE:g} is allowed.",
        )
    )


def grade(sentences: Sequence[str]) -> float:
    """Return the Flesch-Kincaid grade of sentences."""
    tokens = [words(sentence) for sentence in sentences]
    measured = getmeasures("\n".join(" ".join(line) for line in tokens), lang="en")
    every = [word for line in tokens for word in line]
    missed = sum(_missed_syllables(word) for word in every)
    return float(measured["readability grades"]["Kincaid"]) + _SYLLABLES_A_WORD * missed / len(every)


def words(sentence: str) -> list[str]:
    """Return the words of a sentence, numbers included."""
    return _WORD.findall(sentence)


def sentences_of(text: str) -> Iterator[str]:
    """Yield the sentences of Markdown prose, without headings, tables, links and marks."""
    for paragraph in _BREAK.split(plain(_SKIPPED_LINE.sub("", text))):
        for sentence in _SENTENCE_END.split(" ".join(_BULLET.sub("", paragraph).split())):
            if words(sentence):
                yield sentence


def _sentences(loaded: Loaded[Any]) -> Iterator[str]:
    """Yield the sentences of an entry: of its body, and of every field that holds a full sentence."""
    for _, text in strings(loaded.model):
        if " " in text and plain(text).rstrip('"\u201d)*').endswith((".", "?", "!")):
            yield from sentences_of(text)
    yield from sentences_of(loaded.body)


def _missed_syllables(word: str) -> int:
    counted = int(LANGDATA["en"]["syllables"](word))
    lower = word.lower()
    missed = max(0, 1 - counted)
    return missed + bool(_HARD_LE.search(lower) and counted < _vowel_groups(lower))


def _vowel_groups(word: str) -> int:
    return len(re.findall(r"[aeiouy]+", word))

"""A number that comes out of a study carries a mark of its own: an entry's basis is not enough for it.

What speaks of a study and a number, of odds, or of a share of people is looked for paragraph by paragraph (a
list item or a table row counts as one). The mark may follow any later sentence of the same paragraph.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from build_tools.checks.names import strings
from build_tools.loading.marks import Evidence, find_marks
from build_tools.loading.mistakes import Mistake, field_name, show
from build_tools.loading.reading import Reading

NOT_CHECKED = frozenset({"sources", "rules"})
"""Kinds that are evidence themselves."""

_PARAGRAPH_END = re.compile(r"\n\s*\n|\n(?=\s*[-*|])")
_SENTENCE = re.compile(r"[^.!?]+(?:[.!?](?=\d)[^.!?]*)*[.!?]*")
_NUMBER = re.compile(
    r"\d|\b(?:three|four|five|six|seven|eight|nine|ten|eleven|twelve|twenty|half|twice)\b", re.IGNORECASE
)
_STUDY = re.compile(
    r"\b(?:stud(?:y|ies)|surveys?|reviews?|(?:a|one) trial|laborator\w+|labs?)\b", re.IGNORECASE
)
_OUTCOME = re.compile(
    r"\btimes (?:as likely|the (?:odds|risk)|more likely)|\bthe odds of\b"
    r"|\d percent (?:more|less|higher|lower) (?:\w+ )?(?:pain|injur\w+|load)"
    r"|\bpercent of (?:the |all )?(?:pitchers|players|children|caregivers|parents)"
    r"|\b\d+ (?:of|in) (?:\d+|a hundred) (?:pitchers|players|children|caregivers|parents)",
    re.IGNORECASE,
)


def check_evidence(reading: Reading) -> Iterator[Mistake]:
    """Yield a mistake for each study-like number without a mark."""
    for loaded in reading.everything():
        if loaded.kind in NOT_CHECKED:
            continue
        for location, text in strings(loaded.model):
            for _, sentence in unmarked(text):
                line = loaded.line(location)
                yield _mistake(reading, loaded.path, line, field_name((*loaded.inside, *location)), sentence)
        for at, sentence in unmarked(loaded.body):
            line = loaded.body_line + loaded.body.count("\n", 0, at)
            yield _mistake(reading, loaded.path, line, "body", sentence)


def unmarked(text: str) -> Iterator[tuple[int, str]]:
    """Yield the place and the words of each sentence that gives a study's number and has no mark after it."""
    marks: list[int] = []
    for mark in find_marks(text):
        if isinstance(mark, Evidence):
            marks.append(mark.start)
            text = text[: mark.start] + "_" * (mark.end - mark.start) + text[mark.end :]
    start = 0
    for paragraph in _PARAGRAPH_END.split(text):
        begins = text.index(paragraph, start)
        start = begins + len(paragraph)
        for sentence in _SENTENCE.finditer(paragraph):
            after = begins + sentence.end()
            if _is_finding(sentence[0]) and not any(after <= mark <= start for mark in marks):
                yield begins + sentence.start(), " ".join(sentence[0].split())


def _is_finding(sentence: str) -> bool:
    names_study = _STUDY.search(sentence) and _NUMBER.search(sentence)
    return bool(names_study or _OUTCOME.search(sentence))


def _mistake(reading: Reading, path: Path, line: int, field: str, sentence: str) -> Mistake:
    expected = "a mark after a study's number, {published: source-id} or {estimate}, in the same paragraph"
    return Mistake(reading.told(path), line, field, expected, show(sentence))

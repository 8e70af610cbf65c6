"""Words that no dictionary of American English knows: slips of the hand, and British spellings.

The dictionary comes with the library [1]_, so nothing is fetched. What the glossary, the titles of entries
and the authors of sources use is known, and so is what content/words.txt lists.

.. [1] spylls, a reader of Hunspell dictionaries, with its en_US dictionary, https://pypi.org/project/spylls/
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache
from itertools import islice
from pathlib import Path
from typing import Any

from spylls.hunspell import Dictionary

from build_tools.checks.names import strings
from build_tools.loading.marks import plain
from build_tools.loading.mistakes import Mistake, field_name
from build_tools.loading.reading import Loaded
from build_tools.schema.kinds import ENTRY_KINDS

KNOWN_WORDS = "words.txt"
CHECKED = (*ENTRY_KINDS, "glossary", "age_gates", "stages", "roles", "profiles")
"""Kinds whose words readers read as prose."""

_NOT_PROSE = re.compile(r"https?://\S+|`[^`]*`|<[^>]*>|\]\([^)]*\)")
_WORD = re.compile(r"[^\W\d_]+(?:['\u2019][^\W\d_]+)*")


def unknown_words(kinds: Mapping[str, Mapping[str, Loaded[Any]]], content: Path) -> Iterator[Mistake]:
    """Yield each word the dictionary does not know, once, where it stands first, with the likeliest mend.

    kinds: entries by kind and slug. content: the content folder.
    """
    known = _known(kinds, content)
    told: set[str] = set()
    for kind in CHECKED:
        for loaded in kinds[kind].values():
            for line, field, text in _texts(loaded):
                for word in _words(text):
                    if word.lower() not in known and word not in told and not _in_dictionary(word):
                        told.add(word)
                        path = Path(content.name) / loaded.path.relative_to(content)
                        expected = f"a word of American English, or this word in {KNOWN_WORDS}"
                        near = next(islice(_dictionary().suggest(word), 1), None)
                        yield Mistake(path, line, field, expected, f'"{word}"', near)


def _texts(loaded: Loaded[Any]) -> Iterator[tuple[int, str, str]]:
    for location, text in strings(loaded.model):
        yield loaded.line(location), field_name((*loaded.inside, *location)), text
    for offset, text in enumerate(loaded.body.splitlines()):
        yield loaded.body_line + offset, "body", text


def _words(text: str) -> Iterator[str]:
    for found in _WORD.finditer(_NOT_PROSE.sub(" ", plain(text))):
        word = found[0].replace("\u2019", "'")
        yield re.sub(r"'s$|'$", "", word)


def _known(kinds: Mapping[str, Mapping[str, Loaded[Any]]], content: Path) -> frozenset[str]:
    named = [one.model.authors for one in kinds["sources"].values()]
    for one in kinds["glossary"].values():
        named += [one.model.term, *one.model.also]
    for kind in ENTRY_KINDS:
        named += [one.model.title for one in kinds[kind].values()]
    path = content / KNOWN_WORDS
    if path.is_file():
        lines = path.read_text(encoding="utf-8").splitlines()
        named += [line for line in lines if not line.startswith("#")]
    return frozenset(word.lower() for text in named for word in _words(text))


@cache
def _dictionary() -> Any:
    return Dictionary.from_files("en_US")


@cache
def _in_dictionary(word: str) -> bool:
    return bool(_dictionary().lookup(word) or _dictionary().lookup(word.lower()))

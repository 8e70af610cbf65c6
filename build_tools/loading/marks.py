"""The two marks a curator writes inside text: links between entries, and how good a sentence is.

A link is `[[kind/slug]]` or `[[kind/slug|words]]`. An evidence mark follows the full stop of its
sentence: `{published: lyman-2002, dun-2008}`, `{common practice}` or `{estimate}`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from build_tools.loading.mistakes import nearest_name

_LINK = re.compile(r"\[\[([a-z_]+)/([a-z0-9]+(?:-[a-z0-9]+)*)(?:\|([^\[\]|]+))?\]\]")
_ANY_LINK = re.compile(r"\[\[[^\]\n]*\]?\]?")
_MARK = re.compile(r"\{(published):\s*([a-z0-9-]+(?:\s*,\s*[a-z0-9-]+)*)\s*\}|\{(common practice|estimate)\}")
_ANY_MARK = re.compile(r"\{(?![:#])[^}\n]*\}?")


@dataclass(frozen=True)
class Link:
    """A link to an entry, a term, a source, a rule set or a calculator."""

    start: int
    end: int
    kind: str
    slug: str
    words: str | None

    @property
    def address(self) -> str:
        """The target as kind/slug."""
        return f"{self.kind}/{self.slug}"


@dataclass(frozen=True)
class Evidence:
    """How good the sentence before it is; `sources` only where it is published."""

    start: int
    end: int
    basis: str
    sources: tuple[str, ...] = ()


@dataclass(frozen=True)
class Malformed:
    """Something that starts like a mark and is none."""

    start: int
    end: int
    written: str
    expected: str
    nearest: str | None = None


Mark = Link | Evidence | Malformed


def find_marks(text: str) -> Iterator[Mark]:
    """Yield the links and evidence marks of a text in order, and whatever only looks like one."""
    yield from sorted((*_links(text), *_evidence(text)), key=lambda mark: mark.start)


def _links(text: str) -> Iterator[Link | Malformed]:
    for found in _ANY_LINK.finditer(text):
        link = _LINK.match(text, found.start())
        if link:
            yield Link(link.start(), link.end(), link[1], link[2], link[3])
        else:
            expected = "a link as [[kind/slug]] or [[kind/slug|words]]"
            yield Malformed(found.start(), found.end(), found[0], expected)


def _evidence(text: str) -> Iterator[Evidence | Malformed]:
    for found in _ANY_MARK.finditer(text):
        mark = _MARK.match(text, found.start())
        if mark is None:
            expected = "an evidence mark: {published: source-id}, {common practice} or {estimate}"
            near = nearest_name(found[0].strip("{}"), ("common practice", "estimate", "published: source-id"))
            yield Malformed(found.start(), found.end(), found[0], expected, near and f"{{{near}}}")
        elif not text[: mark.start()].rpartition("\n\n")[2].strip():
            expected = "an evidence mark after the sentence it belongs to"
            yield Malformed(found.start(), found.end(), found[0], expected)
        elif mark[1]:
            sources = tuple(source.strip() for source in mark[2].split(","))
            yield Evidence(mark.start(), mark.end(), mark[1], sources)
        else:
            yield Evidence(mark.start(), mark.end(), mark[3])


def plain(text: str) -> str:
    """Return a text without its marks: links become their words, evidence marks go."""
    pieces: list[str] = []
    at = 0
    for mark in find_marks(text):
        before = text[at : mark.start]
        if isinstance(mark, Link):
            pieces += [before, mark.words or mark.slug.replace("-", " ")]
        else:
            pieces.append(before.rstrip())
        at = mark.end
    pieces.append(text[at:])
    return "".join(pieces).strip()

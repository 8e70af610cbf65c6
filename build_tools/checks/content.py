"""Every name resolved, every mark looked at: the mistakes that only show when all entries are known."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from pathlib import Path
from typing import Any

from build_tools.checks.evidence import check_evidence
from build_tools.checks.names import marks, namings
from build_tools.loading.marks import Evidence, Malformed
from build_tools.loading.mistakes import Location, Mistake, field_name, nearest_name
from build_tools.loading.reading import Loaded, Reading
from build_tools.schema.kinds import LISTS
from build_tools.schema.lists import Term

NEEDED = ("guide/warning-signs", "guide/when-to-start")
"""Pages that every fault, drill and age note sends readers to."""

_TITLE_IN_BODY = re.compile(r"#\s")
_OTHER_LINK = re.compile(r"\]\((?!https://)([^)]*)\)")


def check(reading: Reading, calculators: Collection[str]) -> Iterator[Mistake]:
    """Yield every mistake across entries.

    reading: everything read from the content folder.
    calculators: the names of the calculators a link may lead to.
    """
    known: dict[str, Collection[str]] = {**reading.known, "calculators": calculators}
    yield from _calculators(reading, calculators)
    yield from _needed(reading, known)
    yield from check_evidence(reading)
    for loaded in reading.everything():
        yield from _names(reading, loaded, known)
        yield from _marks(reading, loaded)
        yield from _body(reading, loaded)
        if isinstance(loaded.model, Term):
            yield from _see(reading, loaded, loaded.model, known)


def _calculators(reading: Reading, calculators: Collection[str]) -> Iterator[Mistake]:
    for name, loaded in reading.kinds["calculators"].items():
        if name not in calculators:
            near = nearest_name(name, calculators)
            yield Mistake(reading.told(loaded.path), 1, "", "a file named as a calculator", f'"{name}"', near)


def _needed(reading: Reading, known: dict[str, Collection[str]]) -> Iterator[Mistake]:
    for address in NEEDED:
        kind, _, slug = address.partition("/")
        if slug not in known[kind]:
            path = Path(reading.root.name) / kind / f"{slug}.md"
            yield Mistake(path, 1, "", "this page; the templates link to it", "nothing")


def _mistake(
    reading: Reading,
    loaded: Loaded[Any],
    line: int,
    location: Location,
    expected: str,
    found: str,
    near: str | None = None,
) -> Mistake:
    where = field_name((*loaded.inside, *location)) if location else "body"
    return Mistake(reading.told(loaded.path), line, where, expected, found, near)


def _names(reading: Reading, loaded: Loaded[Any], known: dict[str, Collection[str]]) -> Iterator[Mistake]:
    for naming in namings(loaded):
        expected, near = _unknown(naming.kind, naming.slug, known)
        if expected:
            if near and naming.written == naming.address:
                near = f"{near}/{naming.slug}" if naming.kind not in known else f"{naming.kind}/{near}"
            found = f'"{naming.written}"'
            yield _mistake(reading, loaded, naming.line, naming.location, expected, found, near)


def _unknown(kind: str, slug: str, known: dict[str, Collection[str]]) -> tuple[str, str | None]:
    """Return what was expected instead of a name, and the nearest one; empty where the name is known."""
    if kind in LISTS and kind not in known:
        return "", None  # the list itself could not be read, which is told once and not for every name
    if kind not in known:
        return f"a name that starts with one of {', '.join(sorted(known))}", nearest_name(kind, known)
    if slug in known[kind]:
        return "", None
    return f"a name in {kind}", nearest_name(slug, known[kind])


def _marks(reading: Reading, loaded: Loaded[Any]) -> Iterator[Mistake]:
    sources = reading.kinds["sources"]
    for location, line, mark in marks(loaded):
        if isinstance(mark, Malformed):
            found = f'"{mark.written}"'
            yield _mistake(reading, loaded, line, location, mark.expected, found, mark.nearest)
        elif isinstance(mark, Evidence):
            for source in mark.sources:
                if source in sources and sources[source].model.read == "from memory":
                    expected = "{estimate}, or a source that somebody has read"
                    found = f'"{source}", which is from memory'
                    yield _mistake(reading, loaded, line, location, expected, found)


def _body(reading: Reading, loaded: Loaded[Any]) -> Iterator[Mistake]:
    for offset, text in enumerate(loaded.body.splitlines()):
        line = loaded.body_line + offset
        if _TITLE_IN_BODY.match(text):
            expected = "headings that start with ##; the page already has its title"
            yield _mistake(reading, loaded, line, (), expected, f'"{text}"')
        for other in _OTHER_LINK.finditer(text):
            expected = "a link inside the handbook as [[kind/slug|words]]"
            yield _mistake(reading, loaded, line, (), expected, f'"({other[1]})"')


def _see(
    reading: Reading, loaded: Loaded[Any], term: Term, known: dict[str, Collection[str]]
) -> Iterator[Mistake]:
    for index, address in enumerate(term.see):
        kind, _, slug = address.partition("/")
        expected, near = ("an entry as kind/slug", None) if not slug else _unknown(kind, slug, known)
        if expected:
            near = f"{kind}/{near}" if near and kind in known else near
            where: Location = ("see", index)
            yield _mistake(reading, loaded, loaded.line(where), where, expected, f'"{address}"', near)

"""Takes entries out of the handbook: those an edition hides, and drafts.

What named them goes on without them: a list loses their name, and a link in text becomes its words. The
places where text still speaks of them are told, so that an edition can put other words there.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from pydantic import BaseModel

from build_tools.checks.names import marks, slug_fields
from build_tools.loading.marks import Link
from build_tools.loading.mistakes import Location
from build_tools.loading.reading import Loaded, Reading
from build_tools.schema.lists import Term

_LINK = re.compile(r"\[\[([a-z_]+/[a-z0-9-]+)(?:\|([^\[\]|]+))?\]\]")


def without(
    reading: Reading, hidden: Collection[str], titles: Mapping[str, str]
) -> tuple[Reading, list[str]]:
    """Return the reading without the hidden entries, and where text still speaks of them.

    hidden: addresses as kind/slug. titles: address to the words that stand for a link to it.
    """
    if not hidden:
        return reading, []
    left = Reading(reading.root, known=reading.known, mistakes=reading.mistakes)
    told: list[str] = []

    def kept(entries: Mapping[str, Loaded[Any]]) -> dict[str, Loaded[Any]]:
        return {
            name: _without(loaded, hidden, titles, told, reading)
            for name, loaded in entries.items()
            if loaded.address not in hidden
        }

    left.kinds = {kind: kept(entries) for kind, entries in reading.kinds.items()}
    left.variants = {language: kept(entries) for language, entries in reading.variants.items()}
    return left, told


def _without(
    loaded: Loaded[Any],
    hidden: Collection[str],
    titles: Mapping[str, str],
    told: list[str],
    reading: Reading,
) -> Loaded[Any]:
    gone = {
        location for location, kind, slug in slug_fields(loaded.model) if f"{kind}/{slug}" in hidden
    } | _see(loaded.model, hidden)
    spoken = [
        (line, mark.address)
        for _, line, mark in marks(loaded)
        if isinstance(mark, Link) and mark.address in hidden
    ]
    if not gone and not spoken:
        return loaded
    path: Path = reading.told(loaded.path)
    told += [f"{path} line {line} speaks of {address}" for line, address in spoken]

    def unlinked(text: str) -> str:
        return _LINK.sub(lambda found: _words(found, hidden, titles), text)

    model = _rebuilt(loaded.model, (), gone, unlinked)
    return replace(loaded, model=model, body=unlinked(loaded.body))


def _words(found: re.Match[str], hidden: Collection[str], titles: Mapping[str, str]) -> str:
    return (found[2] or titles[found[1]]) if found[1] in hidden else found[0]


def _see(model: BaseModel, hidden: Collection[str]) -> set[Location]:
    if not isinstance(model, Term):
        return set()
    return {("see", index) for index, address in enumerate(model.see) if address in hidden}


def _rebuilt(value: Any, location: Location, gone: Collection[Location], unlinked: Any) -> Any:
    """Return a value without what stands at the places in `gone`, its texts unlinked."""
    if isinstance(value, str):
        return unlinked(value)
    if isinstance(value, BaseModel):
        parts = {name: getattr(value, name) for name in type(value).model_fields}
        changed = {
            name: _rebuilt(part, (*location, name), gone, unlinked)
            for name, part in parts.items()
            if (*location, name) not in gone
        }
        return value.model_copy(update=changed)
    if isinstance(value, tuple):
        return tuple(
            _rebuilt(part, (*location, index), gone, unlinked)
            for index, part in enumerate(value)
            if (*location, index) not in gone
        )
    return value

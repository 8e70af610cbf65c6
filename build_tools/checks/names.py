"""Where an entry names something else of the handbook: in slug fields, and in links and marks in text."""

from __future__ import annotations

import types
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic import BaseModel

from build_tools.loading.marks import Evidence, Link, Mark, find_marks
from build_tools.loading.mistakes import Location
from build_tools.loading.reading import Loaded
from build_tools.schema.common import Of
from build_tools.schema.rules import RuleSet


@dataclass(frozen=True)
class Naming:
    """One thing naming another.

    location: the field it stands in; empty for the body.
    field: the first part of the location, or "body".
    kind, slug: what is named.
    line: where in the file.
    written: the name as it stands there: a slug in a field, kind/slug in a link.
    """

    location: Location
    kind: str
    slug: str
    line: int
    written: str

    @property
    def field(self) -> str:
        """The name of the outermost field, or "body"."""
        return str(self.location[0]) if self.location else "body"

    @property
    def address(self) -> str:
        """What is named, as kind/slug."""
        return f"{self.kind}/{self.slug}"


def namings(loaded: Loaded[Any]) -> Iterator[Naming]:
    """Yield everything that an entry, a line of a list or a rule set names."""
    for location, kind, slug in slug_fields(loaded.model):
        yield Naming(location, kind, slug, loaded.line(location), slug)
    for location, line, mark in marks(loaded):
        if isinstance(mark, Link):
            yield Naming(location, mark.kind, mark.slug, line, mark.address)
        elif isinstance(mark, Evidence):
            for source in mark.sources:
                yield Naming(location, "sources", source, line, source)


def marks(loaded: Loaded[Any]) -> Iterator[tuple[Location, int, Mark]]:
    """Yield every mark in the texts and the body of an entry, with its field and its line.

    In the body the line is exact; in a field it is the line on which the field starts.
    """
    for location, text in strings(loaded.model):
        for mark in find_marks(text):
            yield location, loaded.line(location), mark
    for mark in find_marks(loaded.body):
        yield (), loaded.body_line + loaded.body.count("\n", 0, mark.start), mark


def strings(value: object, location: Location = ()) -> Iterator[tuple[Location, str]]:
    """Yield every string inside a model, with the way to it."""
    if isinstance(value, str):
        yield location, value
    elif isinstance(value, BaseModel):
        for name in type(value).model_fields:
            yield from strings(getattr(value, name), (*location, name))
    elif isinstance(value, tuple):
        for index, one in enumerate(value):
            yield from strings(one, (*location, index))


def slug_fields(model: BaseModel) -> Iterator[tuple[Location, str, str]]:
    """Yield the place, the kind and the slug of everything a model names in a field of its own."""
    yield from _in_model(model, ())
    if isinstance(model, RuleSet):
        yield ("source",), "sources", model.source
        if model.extends is not None:
            yield ("extends",), "rules", model.extends


def _in_model(model: BaseModel, location: Location) -> Iterator[tuple[Location, str, str]]:
    for name, info in type(model).model_fields.items():
        yield from _in_value(info.annotation, info.metadata, getattr(model, name), (*location, name))


def _in_value(
    annotation: Any, metadata: list[Any], value: object, location: Location
) -> Iterator[tuple[Location, str, str]]:
    if isinstance(value, BaseModel):
        yield from _in_model(value, location)
        return
    origin = get_origin(annotation)
    if origin is Annotated:
        inner, *more = get_args(annotation)
        yield from _in_value(inner, [*metadata, *more], value, location)
    elif origin in (Union, types.UnionType):
        for one in get_args(annotation):
            if one is not type(None):
                yield from _in_value(one, metadata, value, location)
    elif isinstance(value, tuple):
        inside = [one for one in get_args(annotation) if one is not Ellipsis]
        for index, one in enumerate(value):
            yield from _in_value(inside[min(index, len(inside) - 1)], [], one, (*location, index))
    elif isinstance(value, str):
        for of in metadata:
            if isinstance(of, Of) and value not in of.also:
                yield location, of.kind, value

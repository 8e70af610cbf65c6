"""What pydantic found wrong, said to a curator: what was expected, what was found, the nearest name."""

from __future__ import annotations

import types
from collections.abc import Iterator
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel, ValidationError

from build_tools.loading.mistakes import Location, nearest_name, show

Explained = tuple[Location, str, str, str | None]
"""Where it is, what was expected, what was found, and the nearest known name."""

_EXPECTED = {
    "string_type": "words; put a number or a date in quotes",
    "int_type": "a whole number",
    "int_parsing": "a whole number",
    "int_from_float": "a whole number",
    "float_type": "a number",
    "float_parsing": "a number",
    "bool_type": "true or false",
    "bool_parsing": "true or false",
    "tuple_type": "a list: one value a line after a hyphen, or [in, brackets]",
    "model_type": "a set of fields",
    "model_attributes_type": "a set of fields",
    "dict_type": "a set of fields",
    "date_type": "a date as year-month-day",
    "date_parsing": "a date as year-month-day, like 2026-05-16",
    "date_from_datetime_parsing": "a date as year-month-day, like 2026-05-16",
    "date_from_datetime_inexact": "a date without a time of day",
}


_MISSING = ("this field", "nothing", None)


def explain(error: ValidationError, model: type[BaseModel]) -> Iterator[Explained]:
    """Yield each thing `error` found wrong with an entry of `model`.

    A field that is missing because its name is misspelt is told once, at the misspelt name.
    """
    found = list(_explained(error, model))
    misspelt = {(*location[:-1], near) for location, _, _, near in found if near and location}
    yield from (one for one in found if one[1:] != _MISSING or one[0] not in misspelt)


def _explained(error: ValidationError, model: type[BaseModel]) -> Iterator[Explained]:
    for detail in error.errors(include_url=False):
        location: Location = detail["loc"]
        kind, context, value = detail["type"], detail.get("ctx", {}), detail["input"]
        if kind == "too_short" and len(value) >= context["min_length"]:
            continue  # pydantic counts only the values that are right; the wrong ones are told by themselves
        if kind == "missing":
            yield _missing(location, model)
        elif kind == "extra_forbidden":
            known = _fields(model, location[:-1])
            name = str(location[-1])
            near = nearest_name(name, known)
            expected = "a field the schema knows" if near else f"one of these fields: {', '.join(known)}"
            yield location, expected, f'"{name}"', near
        elif kind == "literal_error":
            choices = _choices(model, location)
            near = nearest_name(value, choices) if isinstance(value, str) else None
            wanted = _either(choices) if choices else str(context["expected"])
            yield location, wanted, show(value), near
        else:
            yield location, _expected(kind, context, detail["msg"]), show(value), None


def _expected(kind: str, context: dict[str, Any], message: str) -> str:
    if kind in _EXPECTED:
        return _EXPECTED[kind]
    if kind == "value_error":
        return message.removeprefix("Value error, ")
    if kind == "string_too_short":
        return f"at least {context['min_length']} letters"
    if kind == "too_short":
        return f"at least {context['min_length']} in the list"
    if kind == "too_long":
        return f"at most {context['max_length']} in the list"
    if kind == "greater_than_equal":
        return f"{context['ge']:g} or more"
    if kind == "less_than_equal":
        return f"{context['le']:g} or less"
    return message.removeprefix("Input should be ")


def _missing(location: Location, model: type[BaseModel]) -> Explained:
    *around, last = location
    if isinstance(last, int):
        return tuple(around), f"{last + 1} values in the list", f"{last}", None
    return location, *_MISSING


def _either(choices: tuple[str, ...]) -> str:
    return choices[0] if len(choices) == 1 else f"{', '.join(choices[:-1])} or {choices[-1]}"


def _fields(model: type[BaseModel], location: Location) -> tuple[str, ...]:
    inner = _type_at(model, location)
    return tuple(inner.model_fields) if isinstance(inner, type) and issubclass(inner, BaseModel) else ()


def _choices(model: type[BaseModel], location: Location) -> tuple[str, ...]:
    inner = _type_at(model, location)
    return tuple(str(one) for one in get_args(inner)) if get_origin(inner) is Literal else ()


def _type_at(model: type[BaseModel], location: Location) -> Any:
    """Follow a location from field to field and return the type that stands there."""
    here: Any = model
    for part in location:
        here = _bare(here)
        if isinstance(part, int):
            inside = [one for one in get_args(here) if one is not Ellipsis]
            here = inside[min(part, len(inside) - 1)] if inside else None
        elif isinstance(here, type) and issubclass(here, BaseModel) and part in here.model_fields:
            here = here.model_fields[part].annotation
        else:
            return None
    return _bare(here)


def _bare(annotation: Any) -> Any:
    """Take `Annotated[...]` and `... | None` off a type."""
    while True:
        origin = get_origin(annotation)
        if origin is Annotated:
            annotation = get_args(annotation)[0]
        elif origin in (Union, types.UnionType):
            annotation = next(one for one in get_args(annotation) if one is not type(None))
        else:
            return annotation

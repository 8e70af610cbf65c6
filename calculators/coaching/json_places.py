"""Strict reading of JSON: every value knows its place, so that an error can say where it is."""

from __future__ import annotations

import datetime
import json
import math
import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from typing import Any, NoReturn

from calculators.coaching.clock_faces import read_clock
from calculators.words import Message, say

_DATE = re.compile(r"\d{4}-\d{2}-\d{2}")
_CLOCK = re.compile(r"(1[0-2]|[1-9]):[0-5]\d")


class PlaceError(ValueError):
    """A text is not what was expected. `place` says where, `message` what is wrong and how to go on."""

    def __init__(self, place: str, message: Message) -> None:
        super().__init__(f"{place}: {message.text}" if place else message.text)
        self.place = place
        self.message = message


@dataclass(frozen=True)
class At:
    """A value and its place, such as "sessions 2, throws 5, speed"."""

    value: Any
    place: str = ""

    def refuse(self, message: Message) -> NoReturn:
        """Raise PlaceError for this value."""
        raise PlaceError(self.place, message)

    def only(self, names: Collection[str]) -> None:
        """Refuse an object that holds a name the reader does not know: reading on would lose it."""
        if not isinstance(self.value, dict):
            self.refuse(say("Expected an object in braces."))
        for name in self.value:
            if name not in names:
                At(None, self._inside(name)).refuse(say("This name is not known here."))

    def get(self, name: str) -> At:
        """Return a part of an object; its value is None where it is left out."""
        return At(self.value.get(name), self._inside(name))

    def items(self, name: str) -> Iterator[At]:
        """Yield the items of a list inside an object; a list left out is empty."""
        part = self.get(name)
        if part.value is None:
            return
        if not isinstance(part.value, list):
            part.refuse(say("Expected a list in brackets."))
        for place, value in enumerate(part.value, start=1):
            yield At(value, f"{part.place} {place}")

    def _inside(self, name: str) -> str:
        return f"{self.place}, {name}" if self.place else name

    @property
    def given(self) -> bool:
        """False where the value is left out or null."""
        return self.value is not None

    def text(self) -> str:
        """Return a text."""
        if not isinstance(self.value, str):
            self.refuse(say("Expected a text in quotation marks."))
        return self.value

    def one_of(self, allowed: Collection[str]) -> Any:
        """Return a text that is one of those allowed."""
        if not isinstance(self.value, str) or self.value not in allowed:
            self.refuse(say("Expected one of: {words}.", words="; ".join(allowed)))
        return self.value

    def number(self) -> float:
        """Return a finite number."""
        if isinstance(self.value, bool) or not isinstance(self.value, int | float):
            self.refuse(say("Expected a number."))
        try:
            number = float(self.value)
        except OverflowError:
            self.refuse(say("Expected a smaller number."))
        if not math.isfinite(number):
            self.refuse(say("Expected a number."))
        return number

    def whole(self, least: int | None = None, most: int | None = None) -> int:
        """Return a whole number, and refuse one below `least` or above `most`."""
        if isinstance(self.value, bool) or not isinstance(self.value, int):
            self.refuse(say("Expected a whole number."))
        if least is not None and self.value < least:
            self.refuse(say("Expected {least} or more.", least=str(least)))
        if most is not None and self.value > most:
            self.refuse(say("Expected {most} or less.", most=str(most)))
        return self.value

    def yes(self) -> bool:
        """Return true or false."""
        if not isinstance(self.value, bool):
            self.refuse(say("Expected true or false."))
        return self.value

    def date(self) -> datetime.date:
        """Return a civil date."""
        text = self.text()
        try:
            found = datetime.date.fromisoformat(text) if _DATE.fullmatch(text) else None
        except ValueError:
            found = None
        if found is None:
            self.refuse(say("Expected a date as year-month-day."))
        return found

    def clock(self) -> float:
        """Return a clock [hours], written as "7:30" or, finer than a minute, as a number from 0 up to 12."""
        if isinstance(self.value, str) and _CLOCK.fullmatch(self.value):
            return read_clock(self.value)
        if isinstance(self.value, str) or not 0 <= self.number() < 12:
            self.refuse(say("Expected a clock time like 7:30."))
        return self.number()


def read_json(text: str) -> At:
    """Return the object in a JSON text.

    Raises PlaceError with line and column where it is no JSON, with the name where one is given twice.
    """

    def once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        found = dict(pairs)
        if len(found) < len(pairs):
            names = [name for name, _ in pairs]
            twice = next(name for name in names if names.count(name) > 1)
            raise PlaceError(twice, say("This name is given twice."))
        return found

    def no_number(word: str) -> NoReturn:
        raise PlaceError(word, say("Expected a number."))

    try:
        value = json.loads(text.removeprefix("\ufeff"), object_pairs_hook=once, parse_constant=no_number)
    except json.JSONDecodeError as error:
        place = f"line {error.lineno}, column {error.colno}"
        raise PlaceError(place, say("The file is damaged here, or it ends too soon.")) from None
    except (RecursionError, ValueError) as error:
        if isinstance(error, PlaceError):
            raise
        raise PlaceError("", say("The file is damaged.")) from None
    if not isinstance(value, dict):
        raise PlaceError("line 1, column 1", say("This is not a pitcher's file."))
    return At(value)

"""Reads values out of a plain mapping and names the field where one is missing or wrong."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any


class RuleSetError(ValueError):
    """A rule set holds something that cannot be used. Says which rule set, which field and the mend."""

    def __init__(self, where: str, field: str, mend: str) -> None:
        super().__init__(f"{where}, {field}: {mend}")
        self.where = where
        self.field = field
        self.mend = mend


@dataclass(frozen=True)
class Plain:
    """A mapping as it came out of JSON, and what it is part of, for error messages."""

    where: str
    values: Mapping[str, Any]

    def error(self, name: str, mend: str) -> RuleSetError:
        """Make the error for one field of this mapping."""
        return RuleSetError(self.where, name, mend)

    def given(self, name: str) -> bool:
        """True where the field holds something."""
        return self.values.get(name) is not None

    def text(self, name: str) -> str:
        """Return a text that must be there."""
        value = self.values.get(name)
        if not isinstance(value, str) or not value.strip():
            raise self.error(name, "write some text")
        return value

    def texts(self, name: str) -> tuple[str, ...]:
        """Return a list of texts, empty where the field is missing."""
        return tuple(str(value) for value in self._list(name))

    def one_of(self, name: str, allowed: Sequence[str] | None) -> Any:
        """Return a text that is one of `allowed` (None: any)."""
        value = self.text(name)
        if allowed is not None and value not in allowed:
            raise self.error(name, f"choose one of: {', '.join(allowed)}")
        return value

    def yes(self, name: str, missing: bool) -> bool:
        """Return true or false, `missing` where the field holds nothing."""
        value = self.values.get(name)
        if value is None:
            return missing
        if not isinstance(value, bool):
            raise self.error(name, "write true or false")
        return value

    def count(self, name: str, least: int = 0, most: int | None = None) -> int:
        """Return a whole number that must be there."""
        value = self.count_or_none(name, least, most)
        if value is None:
            raise self.error(name, "write a whole number")
        return value

    def count_or_none(self, name: str, least: int = 0, most: int | None = None) -> int | None:
        """Return a whole number from `least` to `most`, None where the field holds nothing."""
        value = self.values.get(name)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, int) or value < least:
            raise self.error(name, f"write a whole number, {least} or more")
        if most is not None and value > most:
            raise self.error(name, f"write a whole number, {most} or less")
        return value

    def date(self, name: str) -> datetime.date:
        """Return a civil date written YYYY-MM-DD."""
        try:
            return datetime.date.fromisoformat(self.text(name))
        except ValueError as err:
            raise self.error(name, "write the date as YYYY-MM-DD") from err

    def part(self, name: str) -> Plain | None:
        """Return a mapping inside this one, None where the field holds nothing."""
        value = self.values.get(name)
        if value is None:
            return None
        if not isinstance(value, Mapping):
            raise self.error(name, "write names and values")
        return Plain(f"{self.where}, {name}", value)

    def parts(self, name: str) -> tuple[Plain, ...]:
        """Return a list of mappings, empty where the field is missing."""
        found = []
        for index, value in enumerate(self._list(name)):
            if not isinstance(value, Mapping):
                raise self.error(name, "write a list of names and values")
            label = value.get("label", index + 1)
            found.append(Plain(f"{self.where}, {name} {label}", value))
        return tuple(found)

    def _list(self, name: str) -> Sequence[Any]:
        value = self.values.get(name)
        if value is None:
            return ()
        if isinstance(value, str) or not isinstance(value, Sequence):
            raise self.error(name, "write a list")
        return value

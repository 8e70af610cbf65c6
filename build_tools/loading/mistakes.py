"""A mistake in the content: where it is, what was expected, what was found, and the likeliest mend."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path

Location = tuple[str | int, ...]
"""The way to a value inside a file: names of fields and places in lists."""


@dataclass(frozen=True)
class Mistake:
    """One thing to put right.

    path: the file, relative to the content folder's parent where possible.
    line: counted from 1.
    field: the way to the value as a curator reads it, such as "choices.thumb.clock"; may be empty.
    expected, found: halves of the sentence a curator is shown; `found` may be empty.
    nearest: the known name most like what was written, if any is close.
    """

    path: Path
    line: int
    field: str
    expected: str
    found: str = ""
    nearest: str | None = None

    def __str__(self) -> str:
        place = f"line {self.line}" + (f", {self.field}" if self.field else "")
        found = f"; found {self.found}" if self.found else ""
        nearest = f'. Did you mean "{self.nearest}"?' if self.nearest else "."
        return f"{place}: {self.expected}{found}{nearest}"


class ContentError(Exception):
    """The content cannot be built. Carries every mistake found, in the order of files and lines."""

    def __init__(self, mistakes: Iterable[Mistake]) -> None:
        unique = dict.fromkeys(mistakes)
        self.mistakes = tuple(sorted(unique, key=lambda one: (str(one.path), one.line, one.field)))
        super().__init__(report(self.mistakes))


def report(mistakes: Sequence[Mistake]) -> str:
    """Write the mistakes for a curator: grouped by file, one a line, with a count at the end."""
    lines: list[str] = []
    for path, of_one_file in groupby(mistakes, key=lambda one: one.path):
        lines.append(str(path))
        lines.extend(f"  {mistake}" for mistake in of_one_file)
    files = len({mistake.path for mistake in mistakes})
    one_or_more = "1 mistake" if len(mistakes) == 1 else f"{len(mistakes)} mistakes"
    lines.append(f"{one_or_more} in {'1 file' if files == 1 else f'{files} files'}. Nothing was built.")
    return "\n".join(lines)


def field_name(location: Location) -> str:
    """Write a location as a curator counts: steps[1] is the second value of the tuple, written steps 2."""
    name = ""
    for part in location:
        if isinstance(part, int):
            name += f" {part + 1}"
        else:
            name += f".{part}" if name else part
    return name


def nearest_name(written: str, known: Iterable[str]) -> str | None:
    """Return the known name most like `written`, or None where nothing is close.

    A name that holds what was written, such as short-toss for toss, counts as close.
    """
    names = sorted(known)
    close = difflib.get_close_matches(written.lower(), names, n=1, cutoff=0.6)
    holding = [name for name in names if len(written) > 2 and written.lower() in name]
    return next(iter([*close, *sorted(holding, key=len)]), None)


def show(value: object) -> str:
    """Write a value as a mistake quotes it: short, and in a curator's words."""
    if value is None:
        return "nothing"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        text = " ".join(value.split())
        return f'"{text[:57]}\u2026"' if len(text) > 60 else f'"{text}"'
    if isinstance(value, (list, tuple)):
        return "an empty list" if not value else f"a list of {len(value)}"
    if isinstance(value, dict):
        return "a set of fields"
    return str(value)

"""A table as it stands in a text file, before anybody says what its columns are."""

from __future__ import annotations

import csv
import io
import re
from dataclasses import dataclass

from calculators.words import Message, say

_MOST_LETTERS = 20_000_000
_DELIMITERS = ",;\t"
_QUOTED = re.compile(r'"[^"]*"')


class SheetError(ValueError):
    """The text is no table at all. `message` says what is expected."""

    def __init__(self, message: Message) -> None:
        super().__init__(message.text)
        self.message = message


@dataclass(frozen=True)
class Sheet:
    """Headings and rows, and the line of the file on which each row ends.

    decimal_comma: decimals may be written with a comma, since it does not part the cells.
    """

    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    lines: tuple[int, ...]
    decimal_comma: bool


def open_sheet(text: str) -> Sheet:
    """Return the table in a text: commas, semicolons or tabs between cells, headings in the first row.

    Wholly blank rows are skipped. Raises SheetError where there are no headings with at least one row.
    """
    if len(text) > _MOST_LETTERS:
        raise SheetError(say("The file is too large. Split it by season."))
    text = text.removeprefix("\ufeff")
    first = next((line for line in text.splitlines() if line.strip()), "")
    if "\0" in text or not first:
        raise _no_table()
    delimiter = max(_DELIMITERS, key=_QUOTED.sub("", first).count)
    lines = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    full: list[tuple[int, tuple[str, ...]]] = []
    try:
        for row in lines:
            cells = tuple(cell.strip() for cell in row)
            if any(cells):
                full.append((lines.line_num, cells))
    except csv.Error:
        raise SheetError(
            say(
                "Line {line} cannot be split into cells. Look for a stray quotation mark.",
                line=str(lines.line_num),
            )
        ) from None
    if len(full) < 2:
        raise _no_table()
    return Sheet(
        full[0][1],
        tuple(row for _, row in full[1:]),
        tuple(line for line, _ in full[1:]),
        delimiter != ",",
    )


def _no_table() -> SheetError:
    return SheetError(say("Choose a text file with headings in the first line and one throw in each row."))

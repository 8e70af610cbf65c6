"""Tables as text files: read as they come out of spreadsheets, written so that no spreadsheet runs them."""

from __future__ import annotations

import csv
import io
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from encodings import cp1252, utf_8_sig, utf_16
from typing import NamedTuple

from calculators.words import Message, say

DELIMITERS = (",", ";", "\t")

_HEADS_NAMED = 12
"""More heads than this are not all named in one sentence."""

_BYTE_ORDER_MARKS = (
    (b"\xef\xbb\xbf", "utf-8-sig"),
    (b"\xff\xfe", "utf-16"),
    (b"\xfe\xff", "utf-16"),
)
_DECODERS = {
    "utf-8-sig": utf_8_sig.decode,
    "utf-16": utf_16.decode,
    "cp1252": cp1252.Codec().decode,
}
"""Named here, because the browser's library keeps only what somebody imports."""
_RUN_BY_SPREADSHEETS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")


class TableError(ValueError):
    """A file cannot be read as a table at all. `said` tells what to do, for any language."""

    def __init__(self, said: Message) -> None:
        super().__init__(said.text.format_map(said.values))
        self.said = said


class MissingHeadError(TableError):
    """A table lacks a column. column: our head for it; heads: those the file has, as it writes them."""

    def __init__(self, column: str, looked_for: str, heads: Sequence[str]) -> None:
        found = ", ".join(heads[:_HEADS_NAMED]) + (", \u2026" if len(heads) > _HEADS_NAMED else "")
        super().__init__(
            say('There is no column "{column}". The first row has: {found}.', column=looked_for, found=found)
        )
        self.column = column
        self.heads = tuple(heads)


class TableRow(NamedTuple):
    """One row below the heads. number: as a spreadsheet counts, the heads being row 1.

    cells: text by head, without space around it; "" for a blank or missing cell.
    extra: cells beyond the last head.
    """

    number: int
    cells: Mapping[str, str]
    extra: tuple[str, ...] = ()


@dataclass(frozen=True)
class TextTable:
    """A table read from a file.

    heads: in lower case and renamed; found_heads: as the file has them, in lower case.
    encoding: what the file turned out to be saved in.
    """

    heads: tuple[str, ...]
    rows: tuple[TableRow, ...]
    encoding: str
    found_heads: tuple[str, ...] = ()


def read_table(data: bytes, renamed: Mapping[str, str] | None = None) -> TextTable:
    """Read a table from the bytes of a file.

    Takes UTF-8 with or without its mark, UTF-16 with its mark, and else Windows-1252 or Latin-1;
    commas, semicolons or tabs; any line ends; line ends inside quotes. Heads are compared in lower
    case. Rows with nothing in them are left out, but keep their number.
    renamed: a head in the file, in lower case, to the one it gets instead.
    Raises TableError for a file without heads or with a head written twice.
    """
    text, encoding = _decoded(data)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=_delimiter(text), strict=True)
    try:
        records = list(reader)
    except csv.Error as err:
        raise TableError(
            say(
                "Line {line} cannot be read: {trouble}. Save the file as CSV again.",
                line=str(reader.line_num),
                trouble=str(err),
            )
        ) from err
    found = tuple(" ".join(head.lower().split()) for head in records[0]) if records else ()
    while found and not found[-1]:
        found = found[:-1]
    if not found:
        raise TableError(say("The first row must hold the heads of the columns."))
    twice = [head for head, times in Counter(found).items() if times > 1]
    if twice:
        raise TableError(say('The head "{head}" is written twice. Rename one of the columns.', head=twice[0]))
    heads = tuple((renamed or {}).get(head, head) for head in found)
    rows = tuple(
        _row(number, heads, record)
        for number, record in enumerate(records[1:], start=2)
        if "".join(record).strip()
    )
    return TextTable(heads, rows, encoding, found)


def _row(number: int, heads: tuple[str, ...], record: list[str]) -> TableRow:
    missing, extra = len(heads) - len(record), record[len(heads) :]
    cells = map(str.strip, record + [""] * missing if missing > 0 else record)
    return TableRow(
        number,
        dict(zip(heads, cells, strict=False)),
        tuple([cell for cell in extra if cell.strip()]) if extra else (),
    )


def write_table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """Write a table as CSV text with CRLF line ends, as RFC 4180 has it, no cell of which is a formula."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow([defused(head) for head in heads])
    writer.writerows([defused(cell) for cell in row] for row in rows)
    return out.getvalue()


def defused(cell: str) -> str:
    """Return a cell that a spreadsheet shows and does not run: an apostrophe before what starts a formula.

    A cell that already has the apostrophe gets another one, so that `fused` is the exact way back.
    """
    return f"'{cell}" if cell.lstrip("' ").startswith(_RUN_BY_SPREADSHEETS) else cell


def fused(cell: str) -> str:
    """Return what `defused` was given."""
    return cell[1:] if cell.startswith("'") and defused(cell) != cell else cell


def _decoded(data: bytes) -> tuple[str, str]:
    for mark, encoding in _BYTE_ORDER_MARKS:
        if data.startswith(mark):
            try:
                return _DECODERS[encoding](data)[0], encoding
            except UnicodeDecodeError as err:
                said = say(
                    "The file says it is {encoding} and is not. Save it as CSV again.", encoding=encoding
                )
                raise TableError(said) from err
    if b"\x00" in data:
        raise TableError(say("The file is not text. Save the sheet as CSV."))
    try:
        return data.decode("utf-8"), "utf-8"
    except UnicodeDecodeError:
        pass
    try:
        return _DECODERS["cp1252"](data)[0], "cp1252"
    except UnicodeDecodeError:
        return data.decode("latin-1"), "latin-1"


def _delimiter(text: str) -> str:
    """Return the delimiter that stands most often in the first record, outside quotes."""
    quoted = False
    seen = dict.fromkeys(DELIMITERS, 0)
    for sign in text:
        if sign == '"':
            quoted = not quoted
        elif not quoted and sign in "\r\n":
            break
        elif not quoted and sign in seen:
            seen[sign] += 1
    return max(DELIMITERS, key=lambda sign: seen[sign])

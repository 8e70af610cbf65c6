"""One cell of a league file at a time: a name, a number, a date. What is unclear is refused, not guessed."""

from __future__ import annotations

import calendar
import datetime
import re
import unicodedata
from functools import lru_cache
from typing import Literal

from calculators.workload.tables import TableRow, fused

Trouble = Literal[
    "no name",
    "name twice",
    "on two teams",
    "not on the roster",
    "not a date",
    "not a whole number",
    "out of range",
    "more cells than heads",
    "more before the last batter than pitches",
    "more breaking balls than pitches",
    "written twice",
    "two counts",
    "not yes or no",
    "pain not told",
    "rules not known",
    "no age",
    "no count",
    "caught, no count",
    "two ages",
]

DateOrder = Literal["year first", "month first", "day first"]
"""How a file writes its dates. Year, month, day is understood in every file."""

_MOST = {
    "age": 40,
    "pitches": 250,
    "before last batter": 250,
    "breaking balls": 250,
    "outs": 99,
    "innings caught": 30,
    "game": 9,
    "automatic walks": 30,
    "other throws": 500,
}
_WHOLE = re.compile(r"\d{1,6}", re.ASCII)
_DATE = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)
_SHORT_DATE = re.compile(r"(\d{1,2})([./-])(\d{1,2})\2(\d{4})", re.ASCII)
_MONTH = re.compile(r"\d{4}-(0[1-9]|1[0-2])", re.ASCII)
_YEAR = re.compile(r"\d{4}", re.ASCII)


class RefusedError(Exception):
    """A cell cannot be used: its column, the trouble, and what stood there."""

    def __init__(self, column: str, trouble: Trouble, entered: str = "") -> None:
        super().__init__(f"{column}: {trouble}")
        self.column, self.trouble, self.entered = column, trouble, entered


_SAME_SIGN = dict.fromkeys(map(ord, "\u2018\u2019\u201b\u02bc\u02b9\u2032`\u00b4"), "'") | dict.fromkeys(
    (0xAD, *range(0x200B, 0x2010), *range(0x202A, 0x202F), *range(0x2060, 0x2065), 0xFEFF)
)
"""Signs that a name may have in one file and not in the other: curly apostrophes, and what is not seen."""


@lru_cache(maxsize=1 << 15)
def key_of(name: str) -> str:
    """Return what two spellings of one name share: letters and apostrophes in one form, no capitals.

    One space stands for several, and signs that nobody sees are left out.
    """
    plain = unicodedata.normalize("NFKC", name.translate(_SAME_SIGN))
    return " ".join(plain.casefold().split())


@lru_cache(maxsize=1 << 15)
def tidy(cell: str) -> str:
    """Return a label as its writer meant it: without a spreadsheet's apostrophe, with single spaces."""
    return " ".join(fused(cell).split())


def name_in(row: TableRow) -> str:
    """Return the pitcher's name of a row; raises RefusedError for a row without one."""
    name = tidy(row.cells["pitcher"])
    if not key_of(name):
        raise RefusedError("pitcher", "no name")
    return name


def no_stray_cells(row: TableRow) -> None:
    """Raise RefusedError for a row with more cells than heads, whose cells may stand in a wrong column."""
    if row.extra:
        raise RefusedError("pitcher", "more cells than heads", row.extra[0])


def whole(row: TableRow, column: str) -> int | None:
    """Return the whole number in a column, None for a blank; raises RefusedError for anything else."""
    entered = row.cells.get(column)
    return _whole(column, entered) if entered else None


@lru_cache(maxsize=1 << 12)
def _whole(column: str, entered: str) -> int:
    if not _WHOLE.fullmatch(entered):
        raise RefusedError(column, "not a whole number", entered)
    value = int(entered)
    if value > _MOST[column]:
        raise RefusedError(column, "out of range", entered)
    return value


def yes(row: TableRow, column: str) -> bool:
    """Return whether a column says yes; a blank is no; raises RefusedError for any other word."""
    entered = row.cells.get(column)
    if not entered:
        return False
    answer = entered.lower()
    if answer not in {"yes", "no"}:
        raise RefusedError(column, "not yes or no", entered)
    return answer == "yes"


def is_short_date(entered: str) -> bool:
    """True for a date such as 5/6/2026, which nobody can read without knowing what comes first."""
    return _SHORT_DATE.fullmatch(entered) is not None


@lru_cache(maxsize=1 << 12)
def civil_date(entered: str, order: DateOrder = "year first") -> datetime.date | None:
    """Return the day a cell names, None where it names none.

    order: what comes first in a date such as 5/6/2026. "year first" reads none of those.
    """
    if _DATE.fullmatch(entered):
        parts = entered.split("-")
        year, month, day = parts
    elif order != "year first" and (short := _SHORT_DATE.fullmatch(entered)):
        first, _, second, year = short.groups()
        month, day = (first, second) if order == "month first" else (second, first)
    else:
        return None
    try:
        return datetime.date(int(year), int(month), int(day))
    except ValueError:
        return None


def born(row: TableRow, order: DateOrder) -> datetime.date | None:
    """Return a birth date; of a year or a month alone, its last day, which keeps the younger group."""
    entered = row.cells.get("born")
    if not entered:
        return None
    if _YEAR.fullmatch(entered) and entered > "0000":
        return datetime.date(int(entered), 12, 31)
    if _MONTH.fullmatch(entered) and entered > "0001":
        year, month = int(entered[:4]), int(entered[5:])
        return datetime.date(year, month, calendar.monthrange(year, month)[1])
    date = civil_date(entered, order)
    if date is None:
        raise RefusedError("born", "not a date", entered)
    return date

"""The questions a calculator asks: each field has a unit, a range and a message that mends.

Raw entries arrive as the reader typed them, as text. `read_fields` turns them into values or into
problems, one a field, each saying how to put it right. Nothing is guessed and nothing becomes zero.
"""

from __future__ import annotations

import datetime
import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from calculators.desk.files import FileField
from calculators.words import Message, number, say

Row = Mapping[str, str]
Raw = Mapping[str, "str | Sequence[Row]"]
"""What a page sends: field name to the text typed, or to a list of such for a table of rows."""

Value = float | str | bytes | datetime.date | bool | None
Values = Mapping[str, "Value | tuple[Mapping[str, Value], ...]"]


@dataclass(frozen=True)
class Problem:
    """What is wrong with one field and how to mend it.

    row: counts from 0 inside a table. offers: answers of which the reader may take one with a tap.
    """

    field: str
    message: Message
    row: int | None = None
    column: str | None = None
    offers: tuple[str, ...] = ()


@dataclass(frozen=True)
class NumberField:
    """A number with a unit. `usual` is what is commonly seen; `low` and `high` are what is accepted.

    taps: steps the reader may add with a tap, for those who cannot type with a glove on.
    """

    name: str
    label: Message
    unit: str
    low: float
    high: float
    usual: tuple[float, float]
    decimals: int = 0
    optional: bool = False
    help: Message | None = None
    taps: tuple[int, ...] = ()

    def read(self, text: str) -> float | Message | None:
        """Return the number, None for an allowed blank, or the message that mends."""
        cleaned = text.strip().replace("\u2212", "-").replace("\u00a0", "")
        if cleaned == "":
            return None if self.optional else say("Enter a number.")
        if re.fullmatch(r"[+-]?\d+,\d{1,2}", cleaned):
            return say("Write the decimals with a point, like 7.5.")
        if re.fullmatch(r"[+-]?\d{1,3}(,\d{3})+(\.\d+)?", cleaned):
            cleaned = cleaned.replace(",", "")
        if not re.fullmatch(r"[+-]?(\d+\.?\d*|\.\d+)", cleaned):
            return say("Use digits only, like {example}.", example=number(self.usual[0], self.decimals))
        value = float(cleaned)
        if not math.isfinite(value):
            return self._out_of_range(cleaned)
        if not self.low <= value <= self.high:
            return self._out_of_range(cleaned)
        if self.decimals == 0 and self.unit in WHOLE_UNITS and value != int(value):
            return say("Enter a whole number.")
        return value

    @property
    def unit_words(self) -> Message:
        """The unit, to be spoken; a sign such as mph is the same in every language."""
        return UNIT_WORDS.get(self.unit, Message(self.unit))

    def _out_of_range(self, entered: str) -> Message:
        usual = say(
            "{label} is usually {low} to {high} {unit}; you entered {entered}.",
            label=self.label,
            low=number(self.usual[0], self.decimals),
            high=number(self.usual[1], self.decimals),
            unit=self.unit_words,
            entered=entered if len(entered) <= 12 else entered[:12] + "\u2026",
        )
        value = float(entered)
        if value > self.high and self.low <= value / 10 <= self.high:
            return say("{usual} A zero too many?", usual=usual)
        if 0 < value < self.low and self.low <= value * 10 <= self.high:
            return say("{usual} A zero too few?", usual=usual)
        return say(
            "{usual} This page takes {low} to {high}.",
            usual=usual,
            low=number(self.low, self.decimals),
            high=number(self.high, self.decimals),
        )


WHOLE_UNITS = frozenset({"pitches", "outs", "innings", "throws", "days"})
UNIT_WORDS: Mapping[str, Message] = {
    words.text: words
    for words in (
        say("pitches"),
        say("outs"),
        say("innings"),
        say("throws"),
        say("days"),
        say("years"),
        say("frames"),
        say("frames a second"),
        say("of a second"),
        say("turns"),
        say("in or cm"),
    )
}
"""Units that are words, and so differ between languages."""


@dataclass(frozen=True)
class ClockField:
    """A clock face as h:mm, the direction in which the spin pushes the ball, seen by the pitcher."""

    name: str
    label: Message
    optional: bool = False
    help: Message | None = None

    def read(self, text: str) -> float | Message | None:
        """Return hours in [0, 12), None for an allowed blank, or the message that mends."""
        cleaned = text.strip()
        if cleaned == "" and self.optional:
            return None
        match = re.fullmatch(r"(\d{1,2})(?:[:.\s]([0-5]\d))?", cleaned)
        if not match or not 1 <= int(match[1]) <= 12:
            return say("Write a clock time from 1:00 to 12:59, like 7:30.")
        return (int(match[1]) % 12) + int(match[2] or 0) / 60


@dataclass(frozen=True)
class Choice:
    """One of the answers a ChoiceField offers."""

    value: str
    label: Message


@dataclass(frozen=True)
class ChoiceField:
    """One answer out of a few. `style` is "select" for a drop-down list or "radio" for buttons."""

    name: str
    label: Message
    choices: tuple[Choice, ...]
    style: str = "radio"
    optional: bool = False
    help: Message | None = None

    def read(self, text: str) -> str | Message | None:
        """Return the chosen value, None for an allowed blank, or the message that mends."""
        if text == "" and self.optional:
            return None
        if text in {choice.value for choice in self.choices}:
            return text
        return say("Choose one of the answers offered.")


@dataclass(frozen=True)
class DateField:
    """A civil date, YYYY-MM-DD."""

    name: str
    label: Message
    optional: bool = False
    help: Message | None = None

    def read(self, text: str) -> datetime.date | Message | None:
        """Return the date, None for an allowed blank, or the message that mends."""
        cleaned = text.strip()
        if cleaned == "":
            return None if self.optional else say("Enter the date.")
        if not re.fullmatch(r"\d{4}-\d{2}-\d{2}", cleaned):
            return say("Write the date as year-month-day, like 2026-05-16.")
        try:
            return datetime.date.fromisoformat(cleaned)
        except ValueError:
            return say("There is no such day: {entered}.", entered=cleaned)


@dataclass(frozen=True)
class TextField:
    """A short text of the reader's own, such as a nickname. A private one stays out of the page's address."""

    name: str
    label: Message
    longest: int = 40
    optional: bool = True
    help: Message | None = None
    private: bool = True

    def read(self, text: str) -> str | Message:
        """Return the text without control characters, or the message that mends."""
        cleaned = "".join(ch for ch in text.strip() if ch.isprintable())
        if len(cleaned) > self.longest:
            return say("Use at most {longest} letters.", longest=str(self.longest))
        return cleaned


@dataclass(frozen=True)
class TextAreaField:
    """A long text, such as a sheet that was pasted or a file that was picked. It stays out of the address.

    accept: kinds of files that may be picked to fill it. rows: how many lines the box shows.
    example_file: name on the shelf's `demo` of the text that `EXAMPLE` stands for.
    """

    name: str
    label: Message
    longest: int = 2_000_000
    accept: str = ".csv,.txt,text/csv"
    rows: int = 6
    example_file: str = ""
    optional: bool = True
    help: Message | None = None

    def read(self, text: str) -> str | Message:
        """Return the text as it stands, or the message that mends."""
        if not text.strip() and not self.optional:
            return say("Paste the text, or choose the file.")
        if len(text) > self.longest:
            return say("The text is too long. Take fewer sessions at a time.")
        if "\ufffd" in text:
            return say("Some letters cannot be read. Save the file again as UTF-8.")
        return text


SimpleField = NumberField | ClockField | ChoiceField | DateField | TextField


@dataclass(frozen=True)
class RowsField:
    """A short table the reader fills, such as a list of outings. Rows left wholly blank are skipped."""

    name: str
    label: Message
    columns: tuple[SimpleField, ...]
    add_label: Message
    most_rows: int = 200
    help: Message | None = None


Field = SimpleField | TextAreaField | RowsField | FileField


def read_fields(fields: Sequence[Field], raw: Raw) -> tuple[Values, tuple[Problem, ...]]:
    """Read all fields of a calculator.

    fields: the calculator's fields, in order.
    raw: field name to text as typed; a missing name counts as blank; unknown names are ignored.
    Returns the values read and the problems found; with any problem the values are incomplete.
    """
    values: dict[str, Value | tuple[Mapping[str, Value], ...]] = {}
    problems: list[Problem] = []
    for field in fields:
        entered = raw.get(field.name, "")
        if isinstance(field, RowsField):
            rows, found = _read_rows(field, () if isinstance(entered, str) else entered)
            values[field.name] = rows
            problems.extend(found)
            continue
        value = field.read(entered if isinstance(entered, str) else "")
        if isinstance(value, Message):
            problems.append(Problem(field.name, value))
        else:
            values[field.name] = value
    return values, tuple(problems)


def _read_rows(
    field: RowsField, entered: Sequence[Row]
) -> tuple[tuple[Mapping[str, Value], ...], list[Problem]]:
    problems: list[Problem] = []
    if len(entered) > field.most_rows:
        message = say("Enter at most {most} rows.", most=str(field.most_rows))
        return (), [Problem(field.name, message)]
    rows: list[Mapping[str, Value]] = []
    for index, row in enumerate(entered):
        typed = {column.name: str(row.get(column.name, "")) for column in field.columns}
        chosen_only = {c.name for c in field.columns if isinstance(c, ChoiceField)}
        if not any(text.strip() for name, text in typed.items() if name not in chosen_only):
            continue
        values: dict[str, Value] = {}
        for column in field.columns:
            value = column.read(typed[column.name])
            if isinstance(value, Message):
                problems.append(Problem(field.name, value, index, column.name))
            else:
                values[column.name] = value
        rows.append(values)
    return tuple(rows), problems

"""A pasted sheet of throws: the questions about its columns, and the sessions read from it.

What the columns are is guessed and then asked; what looks mixed up is asked at the field that settles it.
Nothing is put right in silence.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, Literal, cast

from calculators.coaching.column_guess import guess_columns
from calculators.coaching.session_columns import COLUMN, COLUMNS, Name
from calculators.coaching.session_file import (
    CellProblem,
    Imported,
    Mapped,
    SidePositive,
    is_our_own,
    own_mapping,
    read_sheet,
)
from calculators.coaching.sheet import Sheet, SheetError, open_sheet
from calculators.coaching.throws import BREAKING_BALL, FASTBALL, Hand, MovementKind, Session
from calculators.coaching.unit_doubts import Key
from calculators.desk.answers import Shelf
from calculators.desk.fields import (
    Choice,
    ChoiceField,
    DateField,
    Field,
    Problem,
    RowsField,
    TextAreaField,
    TextField,
    Value,
    Values,
)
from calculators.desk.files import EXAMPLE
from calculators.words import Message, say

DEMO = "season.csv"
"""The handbook's own made-up season on the shelf."""

NO_FASTBALL = "none"
"""What the reader writes for the fastball's name where none was thrown."""

MOST_TOLD = 8
"""More cells than this that cannot be read are counted and not listed."""

COLUMN_NAMES = ("columns_right", "columns")
VIEW_NAMES = ("view", "side_up", "drop_sign", "movement")
UNIT_NAMES = ("speed_unit", "spin_unit", "clock_unit", "active_unit", "movement_unit")
DOUBT_NAMES = ("leans", "one_unit", "bad_cells")
PITCH_NAMES = ("fastball_name", "breaking_name", "sheet_date")

_ASK = Choice("", say("As the heading says"))
_UNIT_FIELDS: Mapping[str, tuple[Message, tuple[Name, ...], Key]] = {
    "speed_unit": (say("Speeds are in"), ("speed", "guess_speed"), "speed unit"),
    "spin_unit": (say("Spin is in"), ("spin",), "spin unit"),
    "clock_unit": (say("Clocks are written as"), ("clock",), "clock unit"),
    "active_unit": (say("Active share is written as"), ("active",), "active unit"),
    "movement_unit": (say("Movement is in"), ("up", "side"), "movement unit"),
}
_UNIT_LABELS: Mapping[str, Message] = {
    "percent": say("percent, 0 to 100"),
    "share": say("a share, 0 to 1"),
    "turns/s": say("turns a second"),
    "h:mm": say("a clock time, like 7:30"),
    "degrees from 12:00": say("degrees from 12:00"),
    "degrees from 6:00": say("degrees from 6:00"),
}
_FIELD_OF_DOUBT: Mapping[Key, str] = {
    **{doubt: field for field, (_, _, doubt) in _UNIT_FIELDS.items()},
    "view": "view",
    "movement": "movement",
    "fastball name": "fastball_name",
    "mixed speeds": "one_unit",
    "mirrored clock": "leans",
    "upside-down clock": "leans",
    "mirrored movement": "leans",
}
_MOVEMENT_KINDS: Mapping[str, tuple[MovementKind, Message]] = {
    "whole": ("spin, whole flight", say("By spin alone, over the whole flight")),
    "part": ("spin, part of the flight", say("By spin alone, over a part of the flight")),
    "gravity": ("with gravity", say("With gravity in it")),
    "unknown": ("not known", say("Nobody knows")),
}


def sheet_field(optional: bool = True) -> TextAreaField:
    """Return the field a sheet is pasted into."""
    return TextAreaField(
        "sheet",
        say("The sheet of throws"),
        optional=optional,
        example_file=DEMO,
        rows=7,
        help=say(
            "Paste it from a spreadsheet, or choose a CSV file. Headings in the first line, one throw a row. "
            "It stays on this device."
        ),
    )


def mapping_fields() -> tuple[Field, ...]:
    """Return the questions about what a sheet's columns are. All may stay blank until the page asks."""
    meanings = tuple(Choice(column.name, Message(column.heading)) for column in COLUMNS)
    return (
        ChoiceField(
            "columns_right",
            say("Are the columns read right?"),
            (Choice("", say("Not looked yet")), Choice("yes", say("Yes"))),
            style="select",
            optional=True,
        ),
        RowsField(
            "columns",
            say("Columns that are something else"),
            (
                TextField("heading", say("Heading in the sheet"), optional=False, longest=80),
                ChoiceField(
                    "holds", say("Holds"), (*meanings, Choice("none", say("nothing of use"))), style="select"
                ),
            ),
            say("Add a column"),
            most_rows=30,
        ),
        ChoiceField(
            "view",
            say("Whose view are clocks and sides?"),
            (
                Choice("", say("Not looked yet")),
                Choice("pitcher", say("The pitcher's")),
                Choice("catcher", say("The catcher's")),
            ),
            style="select",
            optional=True,
        ),
        ChoiceField(
            "side_up",
            say("Side movement counts up toward"),
            (
                Choice("glove side", say("The glove side")),
                Choice("arm side", say("The arm side")),
                Choice("right", say("The right in that view")),
                Choice("left", say("The left in that view")),
            ),
            style="select",
            optional=True,
        ),
        ChoiceField(
            "drop_sign",
            say("A ball that drops has"),
            (Choice("minus", say("a minus sign")), Choice("plus", say("no sign"))),
            style="select",
            optional=True,
        ),
        ChoiceField(
            "movement",
            say("How is movement counted?"),
            (
                Choice("", say("Not looked yet")),
                *(Choice(value, words) for value, (_, words) in _MOVEMENT_KINDS.items()),
            ),
            style="select",
            optional=True,
        ),
        *(_unit_field(name) for name in _UNIT_FIELDS),
        ChoiceField(
            "leans",
            say("Clock and side of the fastballs"),
            (Choice("", say("Ask me if they look odd")), Choice("yes", say("I checked. They are right"))),
            style="select",
            optional=True,
        ),
        ChoiceField(
            "one_unit",
            say("Speeds that differ as km/h from mph"),
            (Choice("", say("Ask me about them")), Choice("yes", say("I checked. They are one unit"))),
            style="select",
            optional=True,
        ),
        ChoiceField(
            "bad_cells",
            say("Measurements that cannot be read"),
            (Choice("", say("Show me each")), Choice("yes", say("Count them as bad readings"))),
            style="select",
            optional=True,
        ),
        TextField(
            "fastball_name",
            say("The sheet's word for the fastball"),
            longest=60,
            private=False,
            help=say("Write none where no fastball was thrown. Then nothing is called slow."),
        ),
        TextField(
            "breaking_name",
            say("The sheet's word for the breaking ball"),
            longest=60,
            private=False,
            help=say("Blank where it says breaking ball, or where there is only one other pitch."),
        ),
        DateField(
            "sheet_date", say("Day of the throws"), optional=True, help=say("Where no column says it.")
        ),
    )


def _unit_field(name: str) -> ChoiceField:
    label, columns, _ = _UNIT_FIELDS[name]
    units = COLUMN[columns[0]].units
    choices = (_ASK, *(Choice(unit, _UNIT_LABELS.get(unit, Message(unit))) for unit in units))
    return ChoiceField(name, label, choices, style="select", optional=True)


@dataclass(frozen=True)
class ReadSheet:
    """The sessions of a sheet, and the readings set aside because the reader said that they were bad."""

    sessions: tuple[Session, ...]
    set_aside: tuple[CellProblem, ...] = ()


def made_up(values: Values, shelf: Shelf) -> Problem | None:
    """Return that the sheet is the worked example's, which must not get into the file of a real pitcher."""
    text = str(values.get("sheet") or "")
    if text.strip() not in (EXAMPLE, shelf.demo.get(DEMO, EXAMPLE).strip()):
        return None
    return Problem("sheet", say("These throws are made up. Put your own in their place, then keep the file."))


def read_typed_sheet(values: Values, shelf: Shelf) -> ReadSheet | tuple[Problem, ...]:
    """Return the sessions in the pasted sheet, or everything that must be asked or mended first."""
    text = str(values.get("sheet") or "")
    if text == EXAMPLE:
        text = shelf.demo.get(DEMO, "")
    if not text.strip():
        return ReadSheet(())
    try:
        sheet = open_sheet(text)
        mapped = _mapped(sheet, values)
        if isinstance(mapped, Problem):
            return (mapped,)
        found = read_sheet(sheet, mapped, _confirmed(values), values.get("bad_cells") == "yes")
    except SheetError as error:
        return (Problem("sheet", error.message),)
    if found.questions or found.problems:
        return _asked(found)
    return ReadSheet(_named(found.sessions, values), found.set_aside)


def _mapped(sheet: Sheet, values: Values) -> Mapped | Problem:
    """Return what the columns are; a problem while the reader has not looked at the guess."""
    hand = cast(Hand, values["hand"])
    age = cast("float | None", values.get("age"))
    if is_our_own(sheet):
        mapped = own_mapping(sheet, hand)
        columns = {place: (name, _unit(name, unit, values)) for place, (name, unit) in mapped.columns.items()}
        view = cast('Literal["pitcher", "catcher"] | None', values.get("view")) or "pitcher"
        mapped = replace(mapped, columns=columns, view=view)
    else:
        guess = dict(guess_columns(sheet))
        unknown = _correct(guess, sheet, values)
        if unknown is not None:
            return unknown
        if values.get("columns_right") != "yes":
            return Problem("columns_right", _guess_in_words(sheet, guess))
        mapped = Mapped(
            {place: (name, _unit(name, unit, values)) for place, (name, unit) in guess.items()},
            hand,
            cast('Literal["pitcher", "catcher"] | None', values.get("view")) or None,
        )
    if all(name != "pitch" for name, _ in mapped.columns.values()):
        if not values.get("breaking_name"):
            return Problem("breaking_name", _NO_PITCH)
        mapped = replace(mapped, pitch=BREAKING_BALL)
    kind = _MOVEMENT_KINDS.get(str(values.get("movement") or ""))
    names = {str(values[name]): own for name, own in _NAMES if values.get(name)}
    extra: dict[str, Any] = {"movement": kind[0]} if kind else {}
    return replace(
        mapped,
        **extra,
        side_positive=cast(SidePositive, values.get("side_up") or "glove side"),
        up_positive=values.get("drop_sign") != "plus",
        date=cast("datetime.date | None", values.get("sheet_date")),
        pitch_names=names,
        age=None if age is None else int(age),
    )


_NO_PITCH = say("No column says which pitch it was. If all are breaking balls, write: breaking ball.")
_NAMES = (("fastball_name", FASTBALL), ("breaking_name", BREAKING_BALL))


def _unit(name: Name, unit: str, values: Values) -> str:
    """Return the unit of a column: what the reader said, or else what the heading says."""
    for field, (_, columns, _) in _UNIT_FIELDS.items():
        if name in columns and values.get(field):
            said = str(values[field])
            return said if said in COLUMN[name].units else unit
    return unit


def _correct(guess: dict[int, tuple[Name, str]], sheet: Sheet, values: Values) -> Problem | None:
    """Put the reader's own columns in place of the guess; a problem where a heading is not in the sheet."""
    places = {heading.casefold(): place for place, heading in enumerate(sheet.headings)}
    for row in cast("tuple[Mapping[str, Value], ...]", values.get("columns", ())):
        heading, holds = str(row["heading"]), str(row["holds"])
        place = places.get(heading.casefold())
        if place is None:
            unknown = say("The sheet has no heading {heading}.", heading=heading)
            return Problem("columns", unknown)
        guess.pop(place, None)
        if holds != "none":
            for other in [other for other, (name, _) in guess.items() if name == holds]:
                del guess[other]
            name = cast(Name, holds)
            guess[place] = (name, COLUMN[name].units[0])
    return None


def _guess_in_words(sheet: Sheet, guess: Mapping[int, tuple[Name, str]]) -> Message:
    read = [
        f"{heading} = {COLUMN[guess[place][0]].name.replace('_', ' ')}"
        + (f" ({guess[place][1]})" if guess[place][1] else "")
        for place, heading in enumerate(sheet.headings)
        if place in guess
    ]
    unread = [heading for place, heading in enumerate(sheet.headings) if place not in guess]
    first = say("The page reads these columns: {columns}.", columns="; ".join(read) or "-")
    if unread:
        first = say("{first} It leaves out: {unread}.", first=first, unread="; ".join(unread))
    return say("{first} If that is right, choose yes. If not, say below what a column holds.", first=first)


def _confirmed(values: Values) -> frozenset[Key]:
    """Return the doubts that the reader has settled by an answer of their own."""
    settled: set[Key] = {doubt for field, (_, _, doubt) in _UNIT_FIELDS.items() if values.get(field)}
    if values.get("leans") == "yes":
        settled |= {"mirrored clock", "upside-down clock", "mirrored movement"}
    if str(values.get("fastball_name") or "").casefold() == NO_FASTBALL:
        settled.add("fastball name")
    if values.get("one_unit") == "yes":
        settled.add("mixed speeds")
    return frozenset(settled)


def _asked(found: Imported) -> tuple[Problem, ...]:
    """Return each question at the field that settles it, and the cells that cannot be read at the sheet."""
    by_field: dict[str, Message] = {}
    for question in found.questions:
        field = _FIELD_OF_DOUBT[question.key]
        earlier = by_field.get(field)
        by_field[field] = (
            question.message if earlier is None else say("{one} {two}", one=earlier, two=question.message)
        )
    problems = [Problem(field, message) for field, message in by_field.items()]
    if found.problems:
        problems.append(Problem("sheet", _cells(found.problems)))
    return tuple(problems)


def _cells(cells: tuple[CellProblem, ...]) -> Message:
    told: Message | None = None
    for cell in cells[:MOST_TOLD]:
        one = say("Line {line}, {column}: {what}", line=str(cell.row), column=cell.column, what=cell.message)
        told = one if told is None else say("{one} {two}", one=told, two=one)
    assert told is not None
    if len(cells) > MOST_TOLD:
        return say("{told} And {count} more.", told=told, count=str(len(cells) - MOST_TOLD))
    return told


def _named(sessions: tuple[Session, ...], values: Values) -> tuple[Session, ...]:
    """Return the sessions with the one pitch beside the fastball called the breaking ball, if there is one."""
    pitches = {throw.pitch for session in sessions for throw in session.throws}
    others = pitches - {FASTBALL}
    if BREAKING_BALL in pitches or len(others) != 1 or values.get("breaking_name"):
        return sessions
    return tuple(
        replace(
            session,
            throws=tuple(
                throw if throw.pitch == FASTBALL else replace(throw, pitch=BREAKING_BALL)
                for throw in session.throws
            ),
        )
        for session in sessions
    )

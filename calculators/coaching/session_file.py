"""A session as a file: written in the handbook's own columns, read from any columns once they are named.

Reading is strict. A cell that cannot be read is reported with its row and column; a column that looks mixed
up is asked about; until all of that is settled nothing is kept, and nothing is ever dropped in silence.
"""

from __future__ import annotations

import csv
import datetime
import io
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache, cached_property
from typing import Any, Literal, cast

from calculators.coaching.session_columns import (
    COLUMNS,
    ONE_A_SESSION,
    Cell,
    CellError,
    Missing,
    Name,
    reader,
)
from calculators.coaching.sheet import Sheet, SheetError
from calculators.coaching.throws import (
    BREAKING_BALL,
    FASTBALL,
    LIMITS,
    QUANTITIES,
    REASONS,
    Hand,
    MovementKind,
    Quantity,
    Session,
    Throw,
    ThrowError,
    written_clock,
)
from calculators.coaching.unit_doubts import Key, Numbers, Question, doubts
from calculators.physics.spin import other_hand_clock
from calculators.words import Message, say

View = Literal["pitcher", "catcher"]
SidePositive = Literal["glove side", "arm side", "right", "left"]

_QUANTITY: Mapping[Name, Quantity] = {
    "speed": "speed",
    "spin": "spin",
    "clock": "clock",
    "active": "active",
    "up": "up",
    "side": "glove",
}
_WHOLE: frozenset[Name] = frozenset({"number", "block", "rating"})
_NOT_OF_A_THROW: frozenset[Name] = frozenset({"date", "missing", "pitch", *ONE_A_SESSION})
_CLOCKS: tuple[Name, ...] = ("clock", "guess_clock")


@dataclass(frozen=True)
class Mapped:
    """What the columns of a sheet are, and what holds for the whole sheet. Asked once.

    columns: position of a column to its name and unit; columns left out are not read.
    view: whose view clocks and right or left are. side_positive: which way the side column counts up;
    "right" and "left" as that view shows them. up_positive: False where the up column counts drop.
    movement: how movement is counted. pitch: the name for all rows where no column names the pitch.
    pitch_names: the file's words for pitches to the pitcher's own, such as FB to fastball.
    """

    columns: Mapping[int, tuple[Name, str]]
    hand: Hand
    view: View | None = None
    side_positive: SidePositive = "glove side"
    up_positive: bool = True
    movement: MovementKind | None = None
    date: datetime.date | None = None
    pitch: str = ""
    pitch_names: Mapping[str, str] = field(default_factory=dict)
    age: int | None = None

    def __post_init__(self) -> None:
        """Refuse two columns of one kind; raises SheetError."""
        names = [name for name, _ in self.columns.values()]
        if len(set(names)) < len(names):
            raise SheetError(say("Two columns were given the same meaning. Leave one of them out."))


@dataclass(frozen=True)
class CellProblem:
    """One cell that cannot be read: the line of the file, the heading of the column, and how to mend it."""

    row: int
    column: str
    message: Message


@dataclass(frozen=True)
class Imported:
    """What came of a sheet.

    sessions: by day, in the order of the file; empty while a problem or a question is open.
    problems: every cell that could not be read. questions: every doubt not yet settled.
    set_aside: cells kept as bad readings because the reader said so.
    """

    sessions: tuple[Session, ...]
    problems: tuple[CellProblem, ...] = ()
    questions: tuple[Question, ...] = ()
    set_aside: tuple[CellProblem, ...] = ()


def is_our_own(sheet: Sheet) -> bool:
    """Return whether all headings are the handbook's own, so that nothing need be asked."""
    known = {column.heading for column in COLUMNS}
    return set(sheet.headings) <= known and "pitch" in sheet.headings


def own_mapping(sheet: Sheet, hand: Hand) -> Mapped:
    """Return the mapping of a sheet in the handbook's own columns."""
    by_heading = {column.heading: column for column in COLUMNS}
    columns = {
        place: (by_heading[heading].name, by_heading[heading].units[0])
        for place, heading in enumerate(sheet.headings)
        if heading in by_heading
    }
    return Mapped(columns, hand, "pitcher", movement="not known")


def read_sheet(
    sheet: Sheet,
    mapped: Mapped,
    confirmed: Collection[Key] = (),
    bad_cells_are_bad_reads: bool = False,
) -> Imported:
    """Return the sessions in a sheet, or everything that stands in the way.

    confirmed: questions the reader has answered with "it is as I said".
    bad_cells_are_bad_reads: the reader's word that cells of measurements that cannot be read were bad
    readings; they are listed and marked as such. Other cells must be put right in the file.
    """
    reading = _Reading(sheet, mapped)
    sessions = reading.sessions()
    questions = tuple(one for one in reading.questions() if one.key not in confirmed)
    aside = tuple(reading.bad_reads) if bad_cells_are_bad_reads else ()
    found = reading.problems if bad_cells_are_bad_reads else [*reading.problems, *reading.bad_reads]
    follows_from_units = any(one.key in _UNITS_OPEN for one in questions)
    problems = () if follows_from_units else tuple(sorted(found, key=lambda one: one.row))
    return Imported(() if questions or problems else sessions, problems, questions, aside)


_UNITS_OPEN: frozenset[Key] = frozenset({"speed unit", "spin unit", "clock unit", "movement unit"})
"""While one of these is open, cells out of range are no news: they follow from it."""


class _Reading:
    """A sheet on its way to sessions: each column read once, then each row put together.

    bad_reads: cells of measurements that cannot be read. problems: all other cells that cannot.
    """

    def __init__(self, sheet: Sheet, mapped: Mapped) -> None:
        self.sheet, self.mapped = sheet, mapped
        self.bad_reads: list[CellProblem] = []
        self.problems: list[CellProblem] = []
        self.bare_clocks = 0
        self.places = {name: place for place, (name, _) in mapped.columns.items()}
        self.cells = {name: self._column(place, name, unit) for place, (name, unit) in mapped.columns.items()}
        for row, cells in enumerate(sheet.rows):
            if len(cells) != len(sheet.headings):
                self._problem(row, None, say("This row has {count} cells.", count=str(len(cells))))
        self._into_our_view()

    def _column(self, place: int, name: Name, unit: str) -> list[Cell]:
        quantity = _QUANTITY.get(name)
        read = cache(_within_limits(reader(name, unit, self.sheet.decimal_comma), quantity))
        found: list[Cell] = []
        for row, cells in enumerate(self.sheet.rows):
            cell = cells[place] if place < len(cells) else ""
            try:
                value = read(cell) if cell else None
            except CellError as error:
                self._problem(row, name, error.message)
                self.bare_clocks += name == "clock" and cell.replace(".", "", 1).isdigit()
                value = None if quantity is None else Missing("bad read")
            found.append(value)
        return found

    def _problem(self, row: int, name: Name | None, message: Message) -> None:
        heading = self.sheet.headings[self.places[name]] if name in self.places else ""
        kind = self.bad_reads if name in _QUANTITY else self.problems
        kind.append(CellProblem(self.sheet.lines[row], heading, message))

    def _into_our_view(self) -> None:
        mapped = self.mapped
        if mapped.view == "catcher":
            for name in _CLOCKS:
                self._change(name, other_hand_clock)
        if not mapped.up_positive:
            self._change("up", lambda value: -value)
        toward_glove = {"glove side": True, "arm side": False}.get(mapped.side_positive)
        if toward_glove is None:
            glove_is_right = (mapped.hand == "left") != (mapped.view == "catcher")
            toward_glove = glove_is_right == (mapped.side_positive == "right")
        if not toward_glove:
            self._change("side", lambda value: -value)

    def _change(self, name: Name, change: Callable[[float], float]) -> None:
        if name in self.cells:
            self.cells[name] = [
                change(value) if isinstance(value, float) else value for value in self.cells[name]
            ]

    def _pitches(self) -> list[str]:
        """Return the name of the pitch on each row, in the pitcher's own words."""
        written = self.cells.get("pitch", [None] * len(self.sheet.rows))
        names = self.mapped.pitch_names
        return [names.get(str(pitch), str(pitch)) if pitch else self.mapped.pitch for pitch in written]

    def questions(self) -> list[Question]:
        """Return everything that must be asked about the sheet as a whole."""
        mapped, pitches = self.mapped, self._pitches()
        found: list[Question] = []
        if mapped.view is None and ("clock" in self.cells or "side" in self.cells):
            found.append(
                Question("view", say("Whose view are the clocks and sides, pitcher's or catcher's?"))
            )
        if mapped.movement is None and ("up" in self.cells or "side" in self.cells):
            found.append(
                Question("movement", say("How does the system count movement: with gravity or without?"))
            )
        if FASTBALL not in pitches and set(pitches) != {BREAKING_BALL} and "speed" in self.cells:
            found.append(
                Question("fastball name", say("No pitch is named fastball. Which word stands for it?"))
            )
        if 2 * self.bare_clocks > len(self.sheet.rows):
            found.append(
                Question("clock unit", say("The clocks look like degrees. Choose which way they run."))
            )
        columns = {
            str(_QUANTITY.get(name, name)): [value if isinstance(value, float) else None for value in cells]
            for name, cells in self.cells.items()
        }
        distance = next((value for value in columns.get("distance", ()) if value is not None), None)
        gravity = mapped.movement == "with gravity"
        numbers = Numbers(pitches, FASTBALL, mapped.hand, mapped.age, distance, gravity, columns)
        return [*found, *doubts(numbers)]

    def sessions(self) -> tuple[Session, ...]:
        """Return the throws by day, in the order in which the days first appear."""
        pitches = self._pitches()
        rows_of_day: dict[datetime.date | None, list[int]] = {}
        for row in range(len(self.sheet.rows)):
            date = self.cells["date"][row] if "date" in self.cells else self.mapped.date
            rows_of_day.setdefault(date if isinstance(date, datetime.date) else None, []).append(row)
        return tuple(self._session(date, rows, pitches) for date, rows in rows_of_day.items())

    def _session(self, date: datetime.date | None, rows: Sequence[int], pitches: Sequence[str]) -> Session:
        thrown = [
            throw
            for place, row in enumerate(rows, start=1)
            if (throw := self._throw(row, place, pitches[row])) is not None
        ]
        conditions = {name: value for name in ONE_A_SESSION if (value := self._same(name, rows)) is not None}
        if self.mapped.movement is not None:
            conditions.setdefault("movement", self.mapped.movement)
        try:
            return Session(tuple(thrown), date, **cast("dict[str, Any]", conditions))
        except ThrowError as error:
            self._problem(rows[0], cast(Name, error.field), say("Put this right: {mend}.", mend=error.mend))
            return Session(tuple(thrown), date)

    @cached_property
    def _of_throws(self) -> list[tuple[str, list[Cell]]]:
        """What the columns say of single throws, by the name a throw gives it."""
        return [
            (
                _QUANTITY.get(name, name),
                [int(value) if isinstance(value, float) else value for value in column]
                if name in _WHOLE
                else column,
            )
            for name, column in self.cells.items()
            if name not in _NOT_OF_A_THROW and any(value is not None for value in column)
        ]

    def _throw(self, row: int, place: int, pitch: str) -> Throw | None:
        missing = self._missing_words(row)
        given: dict[str, Any] = {}
        for name, column in self._of_throws:
            value = column[row]
            if isinstance(value, Missing):
                missing[name] = value.reason
            elif value is not None:
                given[name] = value
        try:
            return Throw(given.pop("number", place), pitch, **given, missing=tuple(missing.items()))
        except ThrowError as error:
            self._problem(row, cast(Name, error.field), say("Put this right: {mend}.", mend=error.mend))
            return None

    def _missing_words(self, row: int) -> dict[Any, Any]:
        """Return the reasons written in the column for them, by quantity."""
        written = self.cells["missing"][row] if "missing" in self.cells else None
        found: dict[str, str] = {}
        for part in str(written).split(";") if written else ():
            quantity, _, reason = (word.strip() for word in part.partition("="))
            if quantity in QUANTITIES and reason in REASONS:
                found[quantity] = reason
            else:
                self._problem(row, "missing", say("Write it like: speed=bad read; spin=not measured"))
        return found

    def _same(self, name: Name, rows: Sequence[int]) -> Cell:
        """Return what a column says of a whole session; reports the first row that says something else."""
        column = self.cells.get(name)
        said = [(row, column[row]) for row in rows if column is not None and column[row] is not None]
        for row, value in said:
            if value != said[0][1]:
                self._problem(row, name, say("Earlier rows of this day say something else. Make them agree."))
                break
        return said[0][1] if said else None


def _within_limits(read: Callable[[str], Cell], quantity: Quantity | None) -> Callable[[str], Cell]:
    """Return a reader that refuses what no baseball does."""
    if quantity is None:
        return read
    low, high = LIMITS[quantity]

    def read_within(cell: str) -> Cell:
        value = read(cell)
        if isinstance(value, float) and not low <= value <= high:
            raise CellError(say("No baseball reads like this. Look at the number and its unit."))
        return value

    return read_within


def write_sessions(sessions: Sequence[Session]) -> str:
    """Return sessions as a table in the handbook's own columns; `read_sheet` gives the same back."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow([column.heading for column in COLUMNS])
    for session in sessions:
        for throw in session.throws:
            writer.writerow([_written(column.name, session, throw) for column in COLUMNS])
    return out.getvalue()


def _written(name: Name, session: Session, throw: Throw) -> str:
    if name == "missing":
        return "; ".join(f"{quantity}={reason}" for quantity, reason in throw.missing)
    if name == "date":
        return "" if session.date is None else session.date.isoformat()
    value = getattr(session if name in ONE_A_SESSION else throw, _QUANTITY.get(name, name))
    if value is None:
        return ""
    if name == "strike":
        return "strike" if value else "ball"
    if name in ("clock", "guess_clock"):
        return written_clock(value)
    return repr(value) if isinstance(value, float) else str(value)

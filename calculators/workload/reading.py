"""A league's files: a roster and a list of outings, read row by row with nothing guessed.

Every row is used, joined to an earlier one or refused, and every refusal names its row and column, so
that rows in the file = rows used + rows joined + rows refused. Notes point at rows that were used and
need a look.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field

from calculators.workload.ages import Pitcher
from calculators.workload.cells import (
    DateOrder,
    RefusedError,
    Trouble,
    born,
    civil_date,
    key_of,
    name_in,
    no_stray_cells,
    tidy,
    whole,
    yes,
)
from calculators.workload.outing_rows import number_columns, outing_of
from calculators.workload.outings import Outing, two_counts
from calculators.workload.rules import level_name
from calculators.workload.tables import MissingHeadError, TableRow, TextTable, read_table

ROSTER_HEADS = ("pitcher", "team", "age", "born", "level", "rules", "pain")
OUTING_HEADS = (
    "pitcher",
    "date",
    "pitches",
    "before last batter",
    "breaking balls",
    "outs",
    "innings caught",
    "game",
    "team",
    "automatic walks",
    "came back",
    "called off",
    "other throws",
)

Headings = Mapping[str, str]
"""Our head to the head that a file has instead. `NO_COLUMN` for a head the file does not have."""

NO_COLUMN = "-"


@dataclass(frozen=True)
class RowNote:
    """One row to look at. row: as a spreadsheet counts; column: the head; entered: what stood there.

    as_limit: an outing that cannot be read in full, and so counts as the daily limit.
    """

    row: int
    column: str
    trouble: Trouble
    entered: str = ""
    as_limit: bool = False


@dataclass(frozen=True)
class RosterFile:
    """A roster as read. rows = len(pitchers) + joined + len(refused).

    teams: the teams each pitcher stands on the roster for. in_pain: whoever is marked with pain, or whose
    mark cannot be read. joined: rows of a pitcher who is there already.
    rules: the rule sets named for each pitcher, "" where a row names none. rules_unclear: whoever has a
    row that names rules nobody here knows.
    heads: the heads, ours in place of those that were mapped to them.
    """

    rows: int
    pitchers: Mapping[str, Pitcher]
    teams: Mapping[str, tuple[str, ...]]
    in_pain: frozenset[str]
    rules: Mapping[str, tuple[str, ...]]
    rules_unclear: frozenset[str]
    joined: int
    refused: tuple[RowNote, ...]
    notes: tuple[RowNote, ...]
    heads: tuple[str, ...]
    encoding: str

    @property
    def unused_heads(self) -> tuple[str, ...]:
        """Heads that nobody reads."""
        return tuple(head for head in self.heads if head not in ROSTER_HEADS)


@dataclass(frozen=True)
class OutingsFile:
    """Outings as read, by the roster's names. rows = used + len(refused).

    left_out: whoever has a row that names no day, so that it is not among the outings.
    """

    rows: int
    used: int
    outings: Mapping[str, list[Outing]]
    left_out: frozenset[str]
    refused: tuple[RowNote, ...]
    notes: tuple[RowNote, ...]
    heads: tuple[str, ...]
    encoding: str

    @property
    def unused_heads(self) -> tuple[str, ...]:
        """Heads that nobody reads."""
        return tuple(head for head in self.heads if head not in OUTING_HEADS)


@dataclass
class _Tally:
    refused: list[RowNote] = field(default_factory=list)
    notes: list[RowNote] = field(default_factory=list)

    def refuse(self, row: TableRow, err: RefusedError) -> None:
        self.refused.append(RowNote(row.number, err.column, err.trouble, err.entered))

    def note_as_limit(self, row: TableRow, err: RefusedError) -> None:
        self.notes.append(RowNote(row.number, err.column, err.trouble, err.entered, as_limit=True))

    def note(self, row: TableRow, column: str, trouble: Trouble, entered: str = "") -> None:
        self.notes.append(RowNote(row.number, column, trouble, entered))


@dataclass
class _Roster:
    """A roster while it is read, row by row."""

    rule_names: Mapping[str, str]
    dates: DateOrder
    names: dict[str, str] = field(default_factory=dict)
    pitchers: dict[str, Pitcher] = field(default_factory=dict)
    teams: dict[str, tuple[str, ...]] = field(default_factory=dict)
    rules: dict[str, tuple[str, ...]] = field(default_factory=dict)
    in_pain: set[str] = field(default_factory=set)
    rules_unclear: set[str] = field(default_factory=set)
    joined: int = 0
    tally: _Tally = field(default_factory=_Tally)

    def add(self, row: TableRow) -> None:
        """Use a row or join it to an earlier one; raises RefusedError where neither can be done."""
        no_stray_cells(row)
        name = name_in(row)
        team = tidy(row.cells.get("team", ""))
        first = self.names.get(key_of(name))
        if first is None:
            self.names[key_of(name)] = first = name
            self.pitchers[name] = _pitcher(row, self.dates, self.tally)
            self.teams[name] = (team,) if team else ()
            self.rules[name] = ()
        else:
            self._join(row, first, team)
        if _in_pain(row, self.tally):
            self.in_pain.add(first)
        self._add_rules(row, first)

    def _join(self, row: TableRow, first: str, team: str) -> None:
        """Join a row to the pitcher of the same name; raises RefusedError where it may be somebody else."""
        one = _one_pitcher(self.pitchers[first], _pitcher(row, self.dates, _Tally()))
        if not team or team in self.teams[first] or one is None:
            raise RefusedError("pitcher", "name twice", first)
        self.pitchers[first] = one
        self.teams[first] = (*self.teams[first], team)
        self.joined += 1
        self.tally.note(row, "pitcher", "on two teams", first)

    def _add_rules(self, row: TableRow, name: str) -> None:
        entered = row.cells.get("rules", "")
        slug = self.rule_names.get(key_of(tidy(entered))) if entered else ""
        if slug is None:
            self.rules_unclear.add(name)
            self.tally.note(row, "rules", "rules not known", entered)
        elif slug not in self.rules[name]:
            self.rules[name] = (*self.rules[name], slug)


def read_roster(
    data: bytes,
    headings: Headings | None = None,
    dates: DateOrder = "year first",
    rule_names: Mapping[str, str] | None = None,
) -> RosterFile:
    """Read a roster: a column `pitcher`, and `age`, `born` (2014-08-31, 2014-08 or 2014) or `level`.

    A pitcher whose age is missing or cannot be read stays on the roster as of unknown age, with a note.
    A name that comes again for another team, with the same age, is one arm on two teams.
    rule_names: by `key_of` of a name that the column `rules` may hold, the rule set it stands for.
    Raises TableError where the file is no table, MissingHeadError where it has no column `pitcher`.
    """
    table = _table(data, headings, ROSTER_HEADS, ("pitcher",))
    roster = _Roster(rule_names or {}, dates)
    for row in table.rows:
        try:
            roster.add(row)
        except RefusedError as err:
            roster.tally.refuse(row, err)
    return RosterFile(
        rows=len(table.rows),
        pitchers=roster.pitchers,
        teams=roster.teams,
        in_pain=frozenset(roster.in_pain),
        rules=roster.rules,
        rules_unclear=frozenset(roster.rules_unclear),
        joined=roster.joined,
        refused=tuple(roster.tally.refused),
        notes=tuple(roster.tally.notes),
        heads=table.heads,
        encoding=table.encoding,
    )


def read_outings(
    data: bytes,
    roster: Mapping[str, Pitcher],
    headings: Headings | None = None,
    dates: DateOrder = "year first",
) -> OutingsFile:
    """Read outings, one a row: columns `pitcher` and `date` at least, others from OUTING_HEADS.

    A blank count stays unknown, with a note, and so does a row that names pitcher and day and cannot be
    read in full. A row that repeats another one is refused where the game
    has a number; without one it may be a second game, so it counts and is noted.
    Raises TableError where the file is no table, MissingHeadError where it lacks a column it needs.
    """
    table = _table(data, headings, OUTING_HEADS, ("pitcher", "date"))
    columns = number_columns(table.heads)
    names = {key_of(name): name for name in roster}
    tally = _Tally()
    outings: dict[str, list[Outing]] = {}
    left_out: set[str] = set()
    days: set[tuple[str, datetime.date]] = set()
    for row in table.rows:
        try:
            name = name_in(row)
            name = names.get(key_of(name)) or _unknown(name)
            outing, doubt = outing_of(row, _day(row, name, dates, left_out), columns)
            day = (name, outing.date)
            repeated = day in days and outing in outings[name]
            if repeated and outing.game is not None:
                raise RefusedError("pitcher", "written twice", name)
        except RefusedError as err:
            tally.refuse(row, err)
            continue
        if doubt is not None:
            tally.note_as_limit(row, doubt)
        if repeated:
            tally.note(row, "pitcher", "written twice", name)
        if day in days and any(two_counts(outing, other) for other in outings[name]):
            tally.note(row, "game", "two counts", row.cells["game"])
        if outing.pitches is None and outing.outs is None and not outing.unsure:
            tally.note(row, "pitches", "caught, no count" if outing.innings_caught else "no count")
        days.add(day)
        outings.setdefault(name, []).append(outing)
    return OutingsFile(
        rows=len(table.rows),
        used=sum(map(len, outings.values())),
        outings=outings,
        left_out=frozenset(left_out),
        refused=tuple(tally.refused),
        notes=tuple(tally.notes),
        heads=table.heads,
        encoding=table.encoding,
    )


def _table(
    data: bytes, headings: Headings | None, ours: tuple[str, ...], needed: tuple[str, ...]
) -> TextTable:
    """Read a file with our heads in place of its own.

    A column that has one of our heads, where that head was mapped to another column, is not read.
    """
    mapped = {head: " ".join(theirs.lower().split()) for head, theirs in (headings or {}).items() if theirs}
    renamed = {head: f"{head} ({NO_COLUMN})" for head in mapped if head in ours}
    renamed |= {theirs: head for head, theirs in mapped.items() if head in ours and theirs != NO_COLUMN}
    table = read_table(data, renamed)
    for head in (*needed, *(head for head, theirs in mapped.items() if head in ours and theirs != NO_COLUMN)):
        if head not in table.heads:
            raise MissingHeadError(head, mapped.get(head, head), table.found_heads)
    return table


def _day(row: TableRow, name: str, dates: DateOrder, left_out: set[str]) -> datetime.date:
    """Return the day of a row; raises RefusedError where it names none, and puts its pitcher in `left_out`."""
    entered = row.cells["date"]
    date = civil_date(entered, dates)
    if date is None:
        left_out.add(name)
        raise RefusedError("date", "not a date", entered)
    return date


def _unknown(name: str) -> str:
    raise RefusedError("pitcher", "not on the roster", name)


def _in_pain(row: TableRow, tally: _Tally) -> bool:
    """Return whether a pitcher is marked with pain; a mark that cannot be read counts as one."""
    try:
        return yes(row, "pain")
    except RefusedError as err:
        tally.note(row, "pain", "pain not told", err.entered)
        return True


def _one_pitcher(first: Pitcher, again: Pitcher) -> Pitcher | None:
    """Return what two rows of one name tell together; None where they may be two people.

    Only the level may stand in one of them alone: a school goes by it, a summer team by the age.
    """
    if first == again:
        return first
    ages = {(one.age, one.born) for one in (first, again)} - {(None, None)}
    levels = {one.level for one in (first, again)} - {None}
    if Pitcher() in (first, again) or len(ages) > 1 or len(levels) > 1:
        return None
    age, birth = next(iter(ages), (None, None))
    return Pitcher(age=age, born=birth, level=next(iter(levels), None))


def _pitcher(row: TableRow, dates: DateOrder, tally: _Tally) -> Pitcher:
    age: int | None = None
    birth: datetime.date | None = None
    try:
        age = whole(row, "age")
        birth = born(row, dates)
    except RefusedError as err:
        tally.note(row, err.column, err.trouble, err.entered)
        age = None
    level = level_name(row.cells.get("level", "")) or None
    if age is not None and birth is not None:
        tally.note(row, "age", "two ages", row.cells["age"])
    if age is None and birth is None and level is None:
        tally.note(row, "age", "no age")
    return Pitcher(age=age, born=birth, level=level)

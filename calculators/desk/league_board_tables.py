"""The league's board as tables: one sheet a team, the rules that were passed, and the rows to mend."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from calculators.desk.answers import NOTHING, Table
from calculators.desk.league_board_words import (
    joined,
    row_note_words,
    rule_quoted,
    state_words,
    total_words,
    what_happened,
)
from calculators.desk.pitch_count_words import day_words, flag_words, reason_words, short_day
from calculators.words import Message, say, say_count
from calculators.workload.board import Board, BoardRow
from calculators.workload.flags import VIOLATIONS, Flag
from calculators.workload.reading import OutingsFile, RosterFile, RowNote

MOST_SHOWN = 200
"""Longer lists are shown this far on the page; the file that goes with them holds all."""


@dataclass(frozen=True)
class League:
    """A board with the files it was worked out from and the teams of each pitcher."""

    board: Board
    roster: RosterFile
    outings: OutingsFile
    teams: Mapping[str, tuple[str, ...]]

    @property
    def passed(self) -> list[tuple[BoardRow, Flag]]:
        """Every rule that was passed, the latest day first."""
        found = [(row, flag) for row in self.board.rows for flag in row.flags if flag.kind in VIOLATIONS]
        return sorted(found, key=lambda one: one[1].date or datetime.date.min, reverse=True)


def team_sheets(league: League) -> tuple[Table, ...]:
    """Return one sheet a team, in the order of the roster; an arm on two teams stands on both."""
    sheets: dict[str, list[BoardRow]] = {}
    for row in league.board.rows:
        for team in league.teams.get(row.name) or ("",):
            sheets.setdefault(team, []).append(row)
    return tuple(_sheet(league, team, rows) for team, rows in sheets.items())


def passed_table(league: League) -> tuple[Table, ...]:
    """Return the rules that were passed, with the rule in our words."""
    passed = league.passed
    if not passed:
        return ()
    board = league.board
    caption = say_count(
        "{count} rule passed, latest first. Tell the league.",
        "{count} rules passed, latest first. Tell the league.",
        len(passed),
    )
    return (
        Table(
            caption=_cut(caption, len(passed)),
            heads=(say("Day"), say("Pitcher"), say("What happened"), say("The rule")),
            rows=tuple(
                (
                    short_day(flag.date) if flag.date else NOTHING,
                    say("{name}", name=row.name),
                    what_happened(flag, board.rules),
                    rule_quoted(flag, board.rules),
                )
                for row, flag in passed[:MOST_SHOWN]
            ),
            stacked=True,
        ),
    )


def mend_tables(league: League) -> tuple[Table, ...]:
    """Return the rows that were not used, and those that were and need a look."""
    refused = notes_of(league.roster.refused, league.outings.refused)
    noted = notes_of(league.roster.notes, league.outings.notes)
    tables = []
    if refused:
        caption = say_count(
            "{count} row not used, to be mended in your file",
            "{count} rows not used, to be mended in your files",
            len(refused),
        )
        tables.append(_notes(_cut(caption, len(refused)), refused))
    if noted:
        caption = say_count(
            "{count} row used, but look at it", "{count} rows used, but look at them", len(noted)
        )
        tables.append(_notes(_cut(caption, len(noted)), noted))
    return tuple(tables)


def notes_of(roster: Sequence[RowNote], outings: Sequence[RowNote]) -> tuple[tuple[Message, RowNote], ...]:
    """Return notes with the file they are about."""
    return (
        *((say("Roster"), note) for note in roster),
        *((say("Outings"), note) for note in outings),
    )


def look_at(league: League, row: BoardRow, team: str | None = None) -> list[Message]:
    """Return what to look at twice about one pitcher; `team` is the one whose sheet it stands on."""
    board = league.board
    found = []
    passed = sum(flag.kind in VIOLATIONS for flag in row.flags)
    if passed:
        found.append(
            say_count("{count} rule passed, see that list.", "{count} rules passed, see that list.", passed)
        )
    found += [
        flag_words(flag, board.rules, board.day)
        for flag in row.flags
        if flag.kind not in VIOLATIONS and flag.kind != "several teams"
    ]
    others = [other for other in league.teams.get(row.name, ()) if other != team]
    if team is not None and others:
        found.append(say("Pitches for {teams} too; all of it counts.", teams=", ".join(others)))
    if row.set_aside:
        found.append(
            say_count(
                "{count} outing after this day is not used.",
                "{count} outings after this day are not used.",
                row.set_aside,
            )
        )
    return found


def _sheet(league: League, team: str, rows: Sequence[BoardRow]) -> Table:
    board = league.board
    day, title = day_words(board.day, board.day), board.rules.title
    return Table(
        caption=say(
            "{team}: {day}, under {title}. Eligible does not mean fit.", team=team, day=day, title=title
        )
        if team
        else say("{day}, under {title}. Eligible does not mean fit.", day=day, title=title),
        heads=(
            say("Pitcher"),
            say("Group"),
            say("Under these rules"),
            say("Why"),
            say("Pitches in 7 and 28 days"),
            say("Look at"),
        ),
        rows=tuple(
            (
                say("{name}", name=row.name),
                group_words(row),
                state_words(row, board.rules),
                joined([reason_words(reason, board.rules, board.day) for reason in row.reasons]),
                say("{week}; {month}", week=total_words(row.last_7), month=total_words(row.last_28)),
                joined(look_at(league, row, team)),
            )
            for row in rows
        ),
        sheet=True,
    )


def group_words(row: BoardRow) -> Message:
    """Return the pitcher's group, or why there is none."""
    if row.group:
        return say(row.group)
    return NOTHING if row.in_pain else say("no group in these rules")


def _notes(caption: Message, notes: Sequence[tuple[Message, RowNote]]) -> Table:
    return Table(
        caption=caption,
        heads=(say("File"), say("What to do")),
        rows=tuple((file, row_note_words(note)) for file, note in notes[:MOST_SHOWN]),
    )


def _cut(caption: Message, length: int) -> Message:
    if length <= MOST_SHOWN:
        return caption
    return say("{caption} (the first {shown}; the file holds all)", caption=caption, shown=str(MOST_SHOWN))

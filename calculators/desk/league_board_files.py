"""The files that go with the league's board: the board, the rows to mend, the rules broken, the calendar.

They hold children's data, and the answer says so. No cell of them is run by a spreadsheet.
"""

from __future__ import annotations

import datetime

from calculators.desk.files import OutFile
from calculators.desk.league_board_tables import League, group_words, look_at, notes_of, why
from calculators.desk.league_board_words import (
    beside_words,
    joined,
    mend_words,
    most_words,
    rule_quoted,
    total_words,
    what_happened,
)
from calculators.desk.pitch_count_calendar import first_day_entry
from calculators.words import Catalogue, Message, say, speak
from calculators.workload.board import Board, BoardRow
from calculators.workload.icalendar import calendar_text
from calculators.workload.tables import write_table

CSV = "text/csv"
CALENDAR = "text/calendar"


def files_of(league: League) -> tuple[OutFile, ...]:
    """Return every file there is something to put into."""
    day = league.board.day.isoformat()
    files = [
        OutFile(f"board-{day}.csv", CSV, say("The board as a table"), lambda words: board_csv(league, words))
    ]
    if any(_returns(row, league.board) for row in league.board.rows):
        files.append(
            OutFile(
                f"first-days-{day}.ics",
                CALENDAR,
                say("The first days as a calendar file"),
                lambda words: board_calendar(league.board, words),
            )
        )
    if league.broken:
        files.append(
            OutFile(
                f"rules-broken-{day}.csv",
                CSV,
                say("The rules broken as a table"),
                lambda words: broken_csv(league, words),
            )
        )
    if _all_notes(league):
        files.append(
            OutFile(
                f"rows-to-mend-{day}.csv",
                CSV,
                say("The rows to mend as a table"),
                lambda words: mend_csv(league, words),
            )
        )
    return tuple(files)


def board_csv(league: League, catalogue: Catalogue) -> str:
    """Return the board as CSV text: one pitcher a row, in the order of the roster, dates as ISO has them."""
    beside = (say("first day under {title}", title=league.beside.title),) if league.beside else ()
    heads = (
        say("pitcher"),
        say("team"),
        say("rules"),
        say("group"),
        say("may pitch under these rules"),
        say("at most"),
        say("first day"),
        *beside,
        say("why"),
        say("last 7 days"),
        say("last 28 days"),
        say("look at"),
    )
    rows = (
        (
            row.name,
            ", ".join(league.teams.get(row.name, ())),
            "; ".join(standing.rules.title for standing in row.standings),
            speak(group_words(row, several=len(row.standings) > 1), catalogue),
            speak(_may_pitch(row), catalogue),
            _most(row, catalogue),
            row.first_day.isoformat() if row.first_day and not row.ask_league else "",
            *((_beside(row, catalogue),) if beside else ()),
            _spoken(why(league, row), catalogue),
            speak(total_words(row.last_7), catalogue),
            speak(total_words(row.last_28), catalogue),
            _spoken(look_at(league, row), catalogue),
        )
        for row in league.board.rows
    )
    return write_table([speak(head, catalogue) for head in heads], rows)


def board_calendar(board: Board, catalogue: Catalogue) -> str:
    """Return a calendar of the first days to come, one entry a pitcher who has one after the board's day."""
    written = datetime.datetime.combine(board.day, datetime.time(), datetime.UTC)
    return calendar_text(
        (
            first_day_entry(row.latest.rules, row.name, row.latest.first_day, catalogue)
            for row in board.rows
            if row.latest and row.latest.first_day and _returns(row, board)
        ),
        written,
    )


def broken_csv(league: League, catalogue: Catalogue) -> str:
    """Return every rule that was broken as CSV text."""
    heads = (say("day"), say("pitcher"), say("what happened"), say("the rule"), say("rules"))
    return write_table(
        [speak(head, catalogue) for head in heads],
        (
            (
                flag.date.isoformat() if flag.date else "",
                row.name,
                speak(what_happened(flag, standing.rules), catalogue),
                speak(rule_quoted(flag, standing.rules), catalogue),
                standing.rules.title,
            )
            for row, standing, flag in league.broken
        ),
    )


def mend_csv(league: League, catalogue: Catalogue) -> str:
    """Return every row that was not used or needs a look as CSV text."""
    heads = (say("file"), say("row"), say("column"), say("what stood there"), say("used"), say("what to do"))
    return write_table(
        [speak(head, catalogue) for head in heads],
        (
            (
                speak(file, catalogue),
                str(note.row),
                note.column,
                note.entered,
                speak(say("yes") if used else say("no"), catalogue),
                speak(mend_words(note), catalogue),
            )
            for used, notes in (
                (False, notes_of(league.roster.refused, league.outings.refused)),
                (True, notes_of(league.roster.notes, league.outings.notes)),
            )
            for file, note in notes
        ),
    )


def _all_notes(league: League) -> bool:
    return any((league.roster.refused, league.outings.refused, league.roster.notes, league.outings.notes))


def _returns(row: BoardRow, board: Board) -> bool:
    return row.first_day is not None and row.first_day > board.day and not row.ask_league


def _may_pitch(row: BoardRow) -> Message:
    if row.in_pain:
        return say("no: pain, see a clinician")
    if row.ask_league:
        return say("ask the league")
    return say("yes") if row.eligible else say("no")


def _most(row: BoardRow, catalogue: Catalogue) -> str:
    return speak(most_words(row.standings) or say("no daily limit"), catalogue) if row.eligible else ""


def _beside(row: BoardRow, catalogue: Catalogue) -> str:
    """Return the day under the rules set beside as ISO 8601 writes it, or why there is none."""
    if row.beside and row.beside.first_day and not row.beside.ask_league:
        return row.beside.first_day.isoformat()
    return speak(beside_words(row), catalogue) if row.beside else ""


def _spoken(parts: list[Message], catalogue: Catalogue) -> str:
    return speak(joined(parts), catalogue) if parts else ""

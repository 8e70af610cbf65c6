"""The league's board in words: as a table, as a file for a spreadsheet, and as a calendar."""

from __future__ import annotations

import datetime

from calculators.desk.answers import Table
from calculators.desk.pitch_count_words import amount, day_words, flag_words, reason_words
from calculators.words import Catalogue, Message, say, say_count, speak
from calculators.workload.board import Board, BoardRow
from calculators.workload.cells import Trouble
from calculators.workload.icalendar import CalendarDay, calendar_text
from calculators.workload.reading import RowNote
from calculators.workload.tables import write_table
from calculators.workload.totals import Total

HEADS = (
    say("Pitcher"),
    say("Group"),
    say("Under these rules"),
    say("Ceiling that day"),
    say("First day"),
    say("Why"),
    say("Last 7 days"),
    say("Last 28 days"),
    say("Look at"),
)

TROUBLES: dict[Trouble, Message] = {
    "no name": say("There is no name. Write one."),
    "name twice": say("This name stands on the roster already. Tell the two apart."),
    "on two teams": say("Named for two teams: both count as one arm. If they are two, give two names."),
    "not on the roster": say("This name is not on the roster. Correct it, or add it to the roster."),
    "not a date": say("Write the date as year-month-day, like 2026-05-16."),
    "not a whole number": say("Use digits only, without decimals."),
    "out of range": say("This number is too large. Check it."),
    "more cells than heads": say("The row has more cells than the first row. Look for a stray comma."),
    "more before the last batter than pitches": say("This is more than the pitches. Correct one."),
    "more breaking balls than pitches": say("This is more than the pitches. Correct one."),
    "written twice": say("This game is written twice. Delete one if it was one game."),
    "not yes or no": say("Write yes or no, or leave it blank."),
    "no age": say("There is no age, so the youngest group is used."),
    "no count": say("There is no count, so the game counts as the daily limit."),
    "two ages": say("There is an age and a birth date. The birth date is used."),
}


def board_table(board: Board) -> Table:
    """Return the board, one pitcher a row, in the order of the roster."""
    return Table(
        caption=say(
            "Who is eligible on {day} under {title}. It does not mean fit to pitch.",
            day=day_words(board.day, board.day),
            title=board.rules.title,
        ),
        heads=HEADS,
        rows=tuple(_cells(board, row) for row in board.rows),
    )


def board_csv(board: Board, catalogue: Catalogue) -> str:
    """Return the board as CSV text. It holds children's data: say so where it is offered."""
    table = board_table(board)
    return write_table(
        [speak(head, catalogue) for head in table.heads],
        ([speak(cell, catalogue) for cell in row] for row in table.rows),
    )


def board_calendar(board: Board, catalogue: Catalogue, written: datetime.datetime) -> str:
    """Return a calendar of the first days to come, one entry a pitcher who is not eligible on the day.

    written: when the file is made, in UTC.
    """
    note = speak(
        say(
            "Eligible under {title}, edition {edition}. It does not mean fit to pitch. "
            "Pain overrides every count.",
            title=board.rules.title,
            edition=board.rules.edition,
        ),
        catalogue,
    )
    return calendar_text(
        (
            CalendarDay(
                row.first_day,
                speak(say("{name}: first day under the rules", name=row.name), catalogue),
                note,
                about=board.rules.slug,
            )
            for row in board.rows
            if row.first_day is not None and row.first_day > board.day and not row.ask_league
        ),
        written,
    )


def row_note_words(note: RowNote) -> Message:
    """Return what is wrong with one row of a file, with its row, column and mend."""
    if note.entered:
        return say(
            'Row {row}, column "{column}", "{entered}": {mend}',
            row=str(note.row),
            column=note.column,
            entered=note.entered,
            mend=TROUBLES[note.trouble],
        )
    return say(
        'Row {row}, column "{column}": {mend}',
        row=str(note.row),
        column=note.column,
        mend=TROUBLES[note.trouble],
    )


def _cells(board: Board, row: BoardRow) -> tuple[Message, ...]:
    return (
        say("{name}", name=row.name),
        say(row.group) if row.group else say("no group in these rules"),
        _state(row),
        _ceiling(board, row),
        day_words(row.first_day, board.day) if row.first_day else say("not known"),
        _joined([reason_words(reason, board.rules, board.day) for reason in row.reasons]),
        _total(row.last_7),
        _total(row.last_28),
        _joined(
            [
                *(flag_words(flag, board.rules, board.day) for flag in row.flags),
                *_set_aside(row),
            ]
        ),
    )


def _state(row: BoardRow) -> Message:
    if row.ask_league:
        return say("ask the league")
    return say("eligible") if row.eligible else say("not yet")


def _ceiling(board: Board, row: BoardRow) -> Message:
    if not row.eligible:
        return say("none")
    return say("no daily limit") if row.most is None else amount(row.most, board.rules.counts)


def _set_aside(row: BoardRow) -> tuple[Message, ...]:
    if not row.set_aside:
        return ()
    return (
        say_count(
            "{count} outing after this day is not used.",
            "{count} outings after this day are not used.",
            row.set_aside,
        ),
    )


def _total(total: Total) -> Message:
    known = amount(total.known, "pitches")
    if not total.missing:
        return known
    return say("{known}, {missing} not known", known=known, missing=str(total.missing))


def _joined(parts: list[Message]) -> Message:
    if not parts:
        return say("–")
    joined = parts[0]
    for part in parts[1:]:
        joined = say("{first} {second}", first=joined, second=part)
    return joined

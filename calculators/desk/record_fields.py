"""The pitcher's file at the desk: one field to put it in, and the file that an answer hands back."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import replace
from typing import cast

from calculators.coaching.json_places import PlaceError
from calculators.coaching.pitcher_file import (
    LONGEST_NOTES,
    HandCheck,
    PitcherFile,
    nickname_problem,
    read_pitcher,
    write_pitcher,
)
from calculators.coaching.throws import Hand, Session
from calculators.desk.fields import (
    Choice,
    ChoiceField,
    Field,
    Problem,
    TextAreaField,
    TextField,
    Values,
)
from calculators.desk.files import OutFile
from calculators.words import Message, say

RECORD_NAMES = ("nickname", "record")
HAND_AND_NOTES = ("hand_check", "notes")

HAND_CHECK_WORDS: Mapping[HandCheck, Message] = {
    "holds": say("The ball stayed"),
    "slides": say("The ball slid, or the hand shook"),
}

EASIER_GRIP = say("In the hand check the ball slid. Take an easier grip and check again before any throw.")
"""Common practice: no grip that the hand cannot hold against a light tug."""

ANY_YEARS = 100
"""So many years may have passed where the file does not say when its age was written down."""

FILE_ENDING = ".pitcher.json"
"""By this ending the page knows the file that it may keep for the reader."""


def record_fields() -> tuple[Field, ...]:
    """Return the questions for a nickname and for the pitcher's file."""
    return (
        TextField(
            "nickname",
            say("Nickname"),
            longest=20,
            help=say("One word, no full name. With it the answer comes with a file to keep."),
        ),
        TextAreaField(
            "record",
            say("The pitcher's file"),
            longest=5_000_000,
            accept=".json,application/json",
            rows=3,
            help=say(
                "What this page gave you last time. It fills what you leave blank and counts past days."
            ),
        ),
    )


def hand_and_notes_fields() -> tuple[Field, ...]:
    """Return the questions for the hand check and for the coach's own notes."""
    return (
        ChoiceField(
            "hand_check",
            say("Hand check"),
            (
                Choice("", say("Not done yet")),
                *(Choice(found, words) for found, words in HAND_CHECK_WORDS.items()),
            ),
            style="select",
            optional=True,
            help=say("The pitcher holds the ball out in the grip. Tug it lightly and count to three."),
        ),
        TextField(
            "notes",
            say("Notes"),
            longest=LONGEST_NOTES,
            help=say("Teams, days, what to try. Leave out names, and what a doctor said."),
        ),
    )


def hand_and_notes(values: Values, record: PitcherFile | None) -> tuple[HandCheck | None, str]:
    """Return the hand check and the notes that were typed, or those of the file where nothing was."""
    typed = cast("HandCheck | None", values.get("hand_check") or None)
    kept = (None, "") if record is None else (record.hand_check, record.notes)
    return typed or kept[0], str(values.get("notes") or "") or kept[1]


def open_record(values: Values) -> PitcherFile | Problem | None:
    """Return the pitcher's file that was put in, None where there is none, or what is wrong with it."""
    text = str(values.get("record") or "")
    if not text.strip():
        return None
    try:
        record = read_pitcher(text)
    except PlaceError as error:
        if not error.place:
            return Problem("record", error.message)
        return Problem("record", say("{place}: {what}", place=error.place, what=error.message))
    return _somebody_else(values, record) or record


def _somebody_else(values: Values, record: PitcherFile) -> Problem | None:
    """Return what in the form cannot be said of the pitcher of the file: another hand, or another age."""
    if record.hand != values["hand"]:
        return Problem("hand", say("The pitcher's file says the other hand. Correct one of them."))
    age, known = cast(float, values["age"]), record.age
    if known is None or known <= age <= known + _years_since(record, values) + 1:
        return None
    return Problem(
        "age",
        say(
            "The pitcher's file says {age}. If that is old, write the age of today where you set a target.",
            age=str(known),
        ),
    )


def _years_since(record: PitcherFile, values: Values) -> int:
    """Return how many years the file can be old: to today, or to its last session where no day is asked."""
    days = [session.date for session in record.sessions if session.date is not None]
    today = values.get("today")
    last = max([*days, *([today] if isinstance(today, datetime.date) else [])], default=record.as_of)
    if record.as_of is None or last is None:
        return ANY_YEARS
    return max(0, last.year - record.as_of.year)


def record_to_keep(values: Values, record: PitcherFile | None) -> PitcherFile | Problem | None:
    """Return the file to go on with: the one put in, a new one for a nickname, or None without either."""
    nickname = str(values.get("nickname") or "")
    if nickname and (problem := nickname_problem(nickname)):
        return Problem("nickname", problem)
    if record is not None:
        if nickname and nickname != record.nickname:
            other = say("The file is of {name}. Correct one of them.", name=record.nickname)
            return Problem("nickname", other)
        return record
    return PitcherFile(nickname, cast(Hand, values["hand"])) if nickname else None


def with_sessions(record: PitcherFile, sessions: tuple[Session, ...]) -> PitcherFile:
    """Return the file with sessions added; a day that is in it already is put in anew."""
    dates = {session.date for session in sessions}
    kept = [session for session in record.sessions if session.date is None or session.date not in dates]
    added = [session for session in sessions if session.date is not None or session not in kept]
    by_day = sorted([*kept, *added], key=lambda session: (session.date is None, str(session.date)))
    return replace(record, sessions=tuple(by_day))


def handed_out(record: PitcherFile) -> OutFile:
    """Return the file as it goes with an answer."""
    text = write_pitcher(record)
    return OutFile(
        f"{_plain(record.nickname)}{FILE_ENDING}",
        "application/json",
        say("Save the pitcher's file"),
        lambda catalogue: text,
    )


def _plain(nickname: str) -> str:
    kept = "".join(letter for letter in nickname.casefold() if letter.isalnum() or letter in "-_")
    return kept or "pitcher"

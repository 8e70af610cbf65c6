"""One pitcher's record as one JSON file, kept by whoever owns it.

The file holds a nickname and no name. A file of an older version is read as if it had been written today; a
newer or damaged one is refused with the place, and stays as it is: reading never writes.

The object has `kind` and `version`, then the names of `PitcherFile`; inside it stand objects with the names of
`Owned`, `PastTarget`, `Logged`, `Session` and `Throw`, and gates as `stage` and `date`. Units are those of
these classes. Clocks are texts like "7:30", dates like "2026-05-04"; `missing` of a throw maps a quantity to
its reason. What is not known is left out. No other name may appear.
"""

from __future__ import annotations

import datetime
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields
from typing import Any, Literal, get_args

from calculators.coaching.comparison import Measured
from calculators.coaching.json_places import At, read_json
from calculators.coaching.next_cue import Logged
from calculators.coaching.target import Owned, Role
from calculators.coaching.throws import (
    LIMITS,
    QUANTITIES,
    REASONS,
    Hand,
    MovementKind,
    Place,
    Session,
    Throw,
    ThrowError,
    to_the_minute,
    written_clock,
)
from calculators.coaching.verdict import Decision
from calculators.words import Message, say

KIND = "bendbook pitcher"
VERSION = 3
LONGEST_NICKNAME = 20
YOUNGEST, OLDEST = 3, 99
"""Ages beyond these [years] are slips of the pen (estimate)."""
LONGEST_NOTES = 200

HandCheck = Literal["holds", "slides"]
"""How the ball behaved when it was held out in the grip and lightly tugged."""

_MEASURED: tuple[Measured, ...] = (*QUANTITIES, "strikes")


class NicknameError(ValueError):
    """A nickname gives away too much, or is none. `message` says what to write."""

    def __init__(self, message: Message) -> None:
        super().__init__(message.text)
        self.message = message


@dataclass(frozen=True)
class PastTarget:
    """A target that was set: the day, what the ball was for, and the shape."""

    date: datetime.date
    role: Role
    shape: str


@dataclass(frozen=True)
class PitcherFile:
    """Everything kept about one pitcher.

    nickname: one word, no full name. age: in whole years on `as_of`. slot, fastball_clock [hours], arsenal:
    for the pitcher's own hand. fastball_speed: the middle of ten [mph]. hand_check: None where it was not
    done. notes: the coach's own, up to `LONGEST_NOTES` letters.
    gates: stage and day of each gate that was met. log: the cue trials.
    """

    nickname: str
    hand: Hand
    age: int | None = None
    as_of: datetime.date | None = None
    slot: str = ""
    start: str = ""
    fastball_clock: float | None = None
    fastball_speed: float | None = None
    hand_check: HandCheck | None = None
    notes: str = ""
    arsenal: tuple[Owned, ...] = ()
    targets: tuple[PastTarget, ...] = ()
    gates: tuple[tuple[str, datetime.date], ...] = ()
    log: tuple[Logged, ...] = ()
    sessions: tuple[Session, ...] = ()

    def __post_init__(self) -> None:
        """Refuse anything but a nickname; raises NicknameError."""
        if problem := nickname_problem(self.nickname):
            raise NicknameError(problem)


def nickname_problem(text: str) -> Message | None:
    """Return what is wrong with a nickname, None where nothing is."""
    if not text or len(text) > LONGEST_NICKNAME or not text.isprintable():
        return say("Write a nickname of 1 to 20 letters.")
    if any(letter.isspace() for letter in text) or "@" in text:
        return say("Use one word, not a full name and no address.")
    if sum(letter.isdigit() for letter in text) > 2:
        return say("Leave out birthdays and long numbers.")
    return None


def write_pitcher(file: PitcherFile) -> str:
    """Return the file as JSON text, version `VERSION`; `read_pitcher` gives the same back."""
    plain: dict[str, Any] = {"kind": KIND, "version": VERSION, "nickname": file.nickname, "hand": file.hand}
    plain["age"] = file.age
    plain["as_of"] = _day(file.as_of)
    plain["slot"], plain["start"] = file.slot or None, file.start or None
    plain["fastball_clock"] = _clock(file.fastball_clock)
    plain["fastball_speed"], plain["hand_check"] = file.fastball_speed, file.hand_check
    plain["notes"] = file.notes or None
    plain["arsenal"] = [
        _short({"name": one.name, "speed": one.speed, "clock": _clock(one.clock), "breaking": one.breaking})
        for one in file.arsenal
    ]
    plain["targets"] = [
        {"date": _day(one.date), "role": one.role, "shape": one.shape} for one in file.targets
    ]
    plain["gates"] = [{"stage": stage, "date": _day(date)} for stage, date in file.gates]
    plain["log"] = [
        _short(
            {
                "cue": one.cue,
                "date": _day(one.date),
                "changes": dict(one.changes),
                "throws": one.throws,
                "decision": one.decision,
            }
        )
        for one in file.log
    ]
    plain["sessions"] = [_session_plain(session) for session in file.sessions]
    return json.dumps(_short(plain), ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def read_pitcher(text: str) -> PitcherFile:
    """Return the record in a file of this or an older version.

    Raises PlaceError, with the place, where the file is damaged, newer than this edition, or of another kind.
    """
    whole = read_json(text)
    if whole.get("kind").value != KIND:
        whole.get("kind").refuse(say("This is not a pitcher's file of this handbook."))
    version = whole.get("version").whole()
    if version > VERSION:
        newer = say(
            "The file is of version {theirs}. This edition reads up to {ours}.",
            theirs=str(version),
            ours=str(VERSION),
        )
        untouched = say("{newer} It is untouched. Open it with a newer edition.", newer=newer)
        whole.get("version").refuse(untouched)
    if version < 1:
        whole.get("version").refuse(say("There is no such version."))
    for older in range(version, VERSION):
        whole = _upgraded(whole, older)
    return _read(whole)


_CAME_LATER: Mapping[int, tuple[str, ...]] = {
    1: ("gates", "log", "as_of"),
    2: ("fastball_speed", "hand_check", "notes"),
}
"""By version, the names that came with the next one; nothing else changed."""


def _upgraded(whole: At, version: int) -> At:
    for later in _CAME_LATER[version]:
        if whole.get(later).given:
            whole.get(later).refuse(
                say("A file of version {version} cannot hold this.", version=str(version))
            )
    return At({**whole.value, "version": version + 1})


def _read(whole: At) -> PitcherFile:
    whole.only(("kind", "version", *(part.name for part in fields(PitcherFile))))
    nickname = whole.get("nickname")
    if problem := nickname_problem(nickname.text()):
        nickname.refuse(problem)
    age, as_of, clock = whole.get("age"), whole.get("as_of"), whole.get("fastball_clock")
    hand_check, notes = whole.get("hand_check"), whole.get("notes")
    if notes.given and len(notes.text()) > LONGEST_NOTES:
        notes.refuse(say("Up to {most} letters.", most=str(LONGEST_NOTES)))
    return PitcherFile(
        nickname.text(),
        whole.get("hand").one_of(get_args(Hand)),
        age.whole(YOUNGEST, OLDEST) if age.given else None,
        as_of.date() if as_of.given else None,
        _text(whole.get("slot")),
        _text(whole.get("start")),
        clock.clock() if clock.given else None,
        _speed(whole.get("fastball_speed")),
        hand_check.one_of(get_args(HandCheck)) if hand_check.given else None,
        _text(notes),
        tuple(_owned(item) for item in whole.items("arsenal")),
        tuple(_target(item) for item in whole.items("targets")),
        tuple(_gate(item) for item in whole.items("gates")),
        tuple(_logged(item) for item in whole.items("log")),
        tuple(_session(item) for item in whole.items("sessions")),
    )


def _text(part: At) -> str:
    return part.text() if part.given else ""


def _number(part: At) -> float | None:
    return part.number() if part.given else None


def _speed(part: At) -> float | None:
    speed = _number(part)
    least, most = LIMITS["speed"]
    if speed is not None and not least <= speed <= most:
        part.refuse(say("Expected {least} to {most} mph.", least=f"{least:g}", most=f"{most:g}"))
    return speed


def _owned(item: At) -> Owned:
    item.only(("name", "speed", "clock", "breaking"))
    clock, breaking = item.get("clock"), item.get("breaking")
    return Owned(
        item.get("name").text(),
        item.get("speed").number(),
        clock.clock() if clock.given else None,
        breaking.yes() if breaking.given else True,
    )


def _target(item: At) -> PastTarget:
    item.only(("date", "role", "shape"))
    return PastTarget(
        item.get("date").date(), item.get("role").one_of(get_args(Role)), item.get("shape").text()
    )


def _gate(item: At) -> tuple[str, datetime.date]:
    item.only(("stage", "date"))
    return item.get("stage").text(), item.get("date").date()


def _logged(item: At) -> Logged:
    item.only(("cue", "date", "changes", "throws", "decision"))
    changes, date = item.get("changes"), item.get("date")
    changes.only(_MEASURED)
    return Logged(
        item.get("cue").text(),
        date.date() if date.given else None,
        {name: changes.get(name).number() for name in _MEASURED if changes.get(name).given},
        item.get("throws").whole(1),
        item.get("decision").one_of(get_args(Decision)),
    )


def _session(item: At) -> Session:
    item.only([part.name for part in fields(Session)])
    date, place, movement = item.get("date"), item.get("place"), item.get("movement")
    throws = tuple(_throw(throw) for throw in item.items("throws"))
    try:
        return Session(
            throws,
            date.date() if date.given else None,
            place.one_of(get_args(Place)) if place.given else "not known",
            _number(item.get("distance")),
            _text(item.get("ball")),
            _number(item.get("effort")),
            _text(item.get("system")),
            movement.one_of(get_args(MovementKind)) if movement.given else "not known",
        )
    except ThrowError as error:
        item.get(error.field).refuse(say("Put this right: {mend}.", mend=error.mend))


def _throw(item: At) -> Throw:
    item.only([part.name for part in fields(Throw)])
    given: dict[str, Any] = {}
    for names, read in _THROW_PARTS:
        for name in names:
            if (part := item.get(name)).given:
                given[name] = read(part)
    reasons = item.get("missing")
    if reasons.given:
        reasons.only(QUANTITIES)
        given["missing"] = tuple((name, reasons.get(name).one_of(REASONS)) for name in reasons.value)
    try:
        return Throw(item.get("number").whole(), item.get("pitch").text(), **given)
    except ThrowError as error:
        item.get(error.field).refuse(say("Put this right: {mend}.", mend=error.mend))


_THROW_PARTS: tuple[tuple[tuple[str, ...], Callable[[At], Any]], ...] = (
    (("grip", "cue"), At.text),
    (("block", "rating"), At.whole),
    (("strike",), At.yes),
    (("speed", "spin", "active", "up", "glove", "guess_speed"), At.number),
    (("clock", "guess_clock"), At.clock),
)


def _session_plain(session: Session) -> dict[str, Any]:
    plain: dict[str, Any] = {"date": _day(session.date)}
    for name in ("place", "distance", "ball", "effort", "system", "movement"):
        value = getattr(session, name)
        plain[name] = value if value != "" else None
    return {**_short(plain), "throws": [_throw_plain(throw) for throw in session.throws]}


def _throw_plain(throw: Throw) -> dict[str, Any]:
    plain: dict[str, Any] = {}
    for part in fields(Throw):
        value = getattr(throw, part.name)
        if part.name in ("clock", "guess_clock"):
            value = _clock(value)
        plain[part.name] = value if value != "" else None
    plain["missing"] = dict(throw.missing) or None
    return _short(plain)


def _day(date: datetime.date | None) -> str | None:
    return None if date is None else date.isoformat()


def _clock(clock: float | None) -> str | float | None:
    """Return a clock as h:mm, or as a number where it is finer than a minute."""
    if clock is None or to_the_minute(clock) != clock:
        return clock
    return written_clock(clock)


def _short(plain: Mapping[str, Any]) -> dict[str, Any]:
    """Return an object without what is not known; lists and counts stay, also when empty or 0."""
    return {name: value for name, value in plain.items() if value is not None}

"""The session calculator: what a pen's numbers, or a coach's eye, say about one breaking ball."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import cast

from calculators.coaching.box import ShareInside, share_inside
from calculators.coaching.pitcher_file import PitcherFile
from calculators.coaching.profiles import Recognition, recognise
from calculators.coaching.reading import BadReads, Reading, SetAside, read, set_aside
from calculators.coaching.stop_rules import Drift, Stop, fastball_drift, slowed, stops
from calculators.coaching.throws import BREAKING_BALL, FASTBALL, Quantity, Session, Throw, of_pitch
from calculators.desk.answers import Answer, Calculator, FieldGroup, Outcome, Shelf, Table
from calculators.desk.day_fields import (
    DAY_NAMES,
    EXAMPLE_DAY,
    day_fields,
    read_day,
    stop_at_pain,
)
from calculators.desk.drawing import Drawing
from calculators.desk.eye_rows import eye_answer, eye_field, read_eye
from calculators.desk.fields import DateField, Field, NumberField, Problem, Value, Values
from calculators.desk.files import EXAMPLE
from calculators.desk.loop_fields import (
    EXAMPLE_PITCHER,
    PITCHER_NAMES,
    TARGET_NAMES,
    Aiming,
    pitcher_fields,
    read_aiming,
    target_fields,
)
from calculators.desk.measures import Measures, units_field
from calculators.desk.record_fields import (
    RECORD_NAMES,
    handed_out,
    open_record,
    record_fields,
    record_to_keep,
    with_sessions,
)
from calculators.desk.session_figures import Kind, session_drawings
from calculators.desk.session_words import (
    cautions,
    facts,
    headline,
    how_sure,
    missing_table,
    more,
    summary_table,
)
from calculators.desk.sheet_fields import (
    COLUMN_NAMES,
    DOUBT_NAMES,
    PITCH_NAMES,
    UNIT_NAMES,
    VIEW_NAMES,
    ReadSheet,
    made_up,
    mapping_fields,
    read_typed_sheet,
    sheet_field,
)
from calculators.desk.target_movement import MovementBox, movement_box
from calculators.words import Message, say

BAD_READ_NAMES = ("speed_least", "spin_least")


def fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, pain first."""
    pain, *day = day_fields(optional=True)
    return (
        pain,
        sheet_field(),
        DateField("day", say("Day to read"), optional=True, help=say("Blank: the last day in the sheet.")),
        eye_field(),
        *target_fields(shelf, optional=True),
        *pitcher_fields(shelf),
        *day,
        *mapping_fields(),
        NumberField("speed_least", say("Speed below"), "mph", 15, 100, (30, 60), 1, optional=True),
        NumberField("spin_least", say("Spin below"), "rpm", 0, 3000, (200, 800), optional=True),
        *record_fields(),
        units_field(),
    )


@dataclass(frozen=True)
class SessionRead:
    """One session and all that was read from it. Throws that were bad readings are marked as such."""

    session: Session
    aiming: Aiming
    balls: tuple[Throw, ...]
    reading: Reading
    recognition: Recognition
    drift: Drift | None
    stops: tuple[Stop, ...]
    inside: ShareInside | None
    moved: MovementBox | None
    aside: tuple[SetAside, ...]

    @property
    def fastball(self) -> float | None:
        """The day's typical fastball [mph]; the one typed where none was measured."""
        found = self.reading.fastball
        return self.aiming.pitcher.fastball if found is None else found.value


def work_out(values: Values, shelf: Shelf) -> Outcome:
    """Return what the session says, or what must be asked or mended first."""
    record = open_record(values)
    if isinstance(record, Problem):
        return (record,)
    kept = record_to_keep(values, record)
    if isinstance(kept, Problem):
        return (kept,)
    if kept is not None and (example := made_up(values, shelf)):
        return (example,)
    seen = read_eye(cast("tuple[Mapping[str, Value], ...]", values["eye"]))
    sheet = read_typed_sheet(values, shelf)
    if not isinstance(sheet, ReadSheet):
        return sheet
    if not sheet.sessions:
        if seen.throws:
            return eye_answer(seen, shelf)
        if values.get("sheet") == EXAMPLE:
            return Answer(say("There is no made-up session in this edition. Paste one of your own."))
        return (Problem("sheet", say("Paste a sheet, or count throws by eye below.")),)
    session = _chosen(sheet.sessions, cast("datetime.date | None", values["day"]))
    if isinstance(session, Problem):
        return (session,)
    aiming = read_aiming(values, shelf, record)
    if not isinstance(aiming, Aiming):
        return aiming
    found = session_read(session, aiming, values, shelf)
    if not found.balls:
        return (Problem("breaking_name", _no_breaking_ball(session)),)
    return _answer(found, sheet, kept, values, shelf)


def session_read(session: Session, aiming: Aiming, values: Values, shelf: Shelf) -> SessionRead:
    """Return everything that is read from one session."""
    throws, aside = set_aside(session.throws, _bad_reads(values))
    balls = of_pitch(throws, BREAKING_BALL)
    reading = read(throws, BREAKING_BALL)
    fastball = aiming.pitcher.fastball if reading.fastball is None else reading.fastball.value
    drift = fastball_drift(throws)
    target = aiming.target
    moved = None
    if target is not None and session.movement in ("spin, whole flight", "not known"):
        mound = session.distance or aiming.mound
        moved = movement_box(target, shelf.shapes[target.shape], mound)
    return SessionRead(
        session,
        aiming,
        balls,
        reading,
        recognise(balls, fastball, aiming.hand, shelf.profiles),
        drift,
        stops(read_day(values), aiming.pitcher.age, drift),
        None if target is None else share_inside(balls, target.box, fastball),
        moved,
        aside,
    )


def _bad_reads(values: Values) -> BadReads:
    """Return the rule for bad readings, which was set before anybody looked."""
    limits: dict[Quantity, tuple[float, float]] = {}
    speed, spin = (cast("float | None", values.get(name)) for name in BAD_READ_NAMES)
    if speed is not None:
        limits["speed"] = (speed, 1000.0)
    if spin is not None:
        limits["spin"] = (spin, 10_000.0)
    return BadReads(limits)


def _chosen(sessions: tuple[Session, ...], day: datetime.date | None) -> Session | Problem:
    """Return the session of the day, or the last one."""
    if day is None:
        return max(sessions, key=lambda session: session.date or datetime.date.min)
    found = [session for session in sessions if session.date == day]
    if not found:
        days = ", ".join(str(session.date) for session in sessions if session.date)
        return Problem("day", say("The sheet has no throws of that day. It has {days}.", days=days or "-"))
    return found[0]


def _no_breaking_ball(session: Session) -> Message:
    names = ", ".join(sorted({throw.pitch for throw in session.throws}))
    return say("No pitch is called breaking ball. The sheet has: {names}. Which is it?", names=names)


def _answer(
    found: SessionRead, sheet: ReadSheet, kept: PitcherFile | None, values: Values, shelf: Shelf
) -> Answer:
    measures = Measures("metric" if values["units"] == "metric" else "imperial")
    profile = found.recognition.profile
    title = str(shelf.profiles[profile]["title"]) if profile and profile in shelf.profiles else ""
    said = headline(found, title, _slowed(found))
    return Answer(
        headline=said,
        more=tuple(more(found, title, measures)),
        drawings=_drawings(found, measures, said),
        facts=tuple(facts(found, measures)),
        tables=tuple(_tables(found, sheet, measures)),
        how_sure=how_sure(found),
        cannot_tell=(
            say("Whether hitters swing over it. Only games say that."),
            say("Why a throw was missed. Watch the hand and the arm, or film it from behind."),
        ),
        cautions=tuple(cautions(found)),
        files=() if kept is None else (handed_out(with_sessions(kept, sheet.sessions)),),
    )


def _slowed(found: SessionRead) -> bool:
    return found.drift is not None and slowed(found.drift, found.aiming.pitcher.age)


def _drawings(found: SessionRead, measures: Measures, said: Message) -> tuple[Drawing, ...]:
    fastballs = of_pitch(found.session.throws, FASTBALL)
    kinds: list[Kind] = [(say("breaking ball"), found.balls, "accent")]
    if fastballs:
        kinds.append((say("fastball"), fastballs, "strong"))
    target = found.aiming.target
    return session_drawings(
        kinds,
        found.fastball,
        None if target is None else target.box,
        found.moved,
        found.aiming.hand == "left",
        measures,
        said,
    )


def _tables(found: SessionRead, sheet: ReadSheet, measures: Measures) -> Iterator[Table]:
    yield summary_table(found, measures)
    missing = missing_table(found, sheet.set_aside, measures)
    if missing is not None:
        yield missing


def common_cases(shelf: Shelf) -> tuple[Table, ...]:
    """Return how far so many throws carry, for paper."""
    rows = (
        (say("1 to 4"), say("Nothing yet")),
        (say("5 to 9"), say("What kind of ball it is, roughly")),
        (say("10"), say("Speed within 1 mph, clock within 20 minutes. Strikes within 31 in 100")),
        (say("30"), say("Strikes within 18 in 100")),
        (say("100"), say("Strikes within 10 in 100")),
    )
    heads = (say("Throws"), say("What they can tell"))
    return (Table(say("How far throws carry, one pitcher, one day (estimate)"), heads, rows),)


CALCULATOR = Calculator(
    name="read-session",
    title=say("Read a session"),
    fields=fields,
    example={
        **EXAMPLE_PITCHER,
        **EXAMPLE_DAY,
        "sheet": EXAMPLE,
        "day": "2026-03-03",
        "eye": (),
        "side_up": "glove side",
        "drop_sign": "minus",
        "units": "imperial",
    },
    work_out=work_out,
    common_cases=common_cases,
    groups=(
        FieldGroup(say("The target"), TARGET_NAMES, open=False),
        FieldGroup(say("The pitcher"), PITCHER_NAMES, open=False),
        FieldGroup(say("The day"), DAY_NAMES, open=False),
        FieldGroup(say("What the columns are"), COLUMN_NAMES, open=False),
        FieldGroup(say("Whose view, which sign"), VIEW_NAMES, open=False),
        FieldGroup(say("Units in the sheet"), UNIT_NAMES, open=False),
        FieldGroup(say("Names and day in the sheet"), PITCH_NAMES, open=False),
        FieldGroup(say("Numbers that look odd"), DOUBT_NAMES, open=False),
        FieldGroup(say("Bad readings, decided before you look"), BAD_READ_NAMES, open=False),
        FieldGroup(say("Keep it"), RECORD_NAMES, open=False),
        FieldGroup(say("How to answer"), ("units",), open=False),
    ),
    stops_first=stop_at_pain,
    tools=("throws", "record"),
)

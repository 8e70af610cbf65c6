"""Where the pitcher stands with the breaking ball: the start, the stage, and what is short by eye."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from typing import cast

from calculators.coaching.comparison import FEWEST_IN_A_GROUP, TrialError, compare
from calculators.coaching.gap import Now, Wish, level_at, now_from
from calculators.coaching.next_cue import Learner, Logged, logged_from
from calculators.coaching.pitcher_file import PitcherFile
from calculators.coaching.profiles import recognise
from calculators.coaching.reading import read
from calculators.coaching.session_plan import stages_passed
from calculators.coaching.throws import BREAKING_BALL, Session, Throw, of_pitch
from calculators.desk.answers import Shelf
from calculators.desk.fields import Choice, ChoiceField, Field, Problem, Values
from calculators.desk.loop_fields import Aiming
from calculators.words import Message, say

START_WORDS: Mapping[str, Message] = {
    "none-yet": say("No breaking ball yet"),
    "downer": say("Straight downer"),
    "loopy": say("Slow and loopy"),
    "three-quarter-drop": say("Three-quarter drop"),
    "slurve": say("Slurve"),
    "sweeping": say("Sweeping"),
    "bullet": say("Bullet spinner"),
    "arm-side": say("Backs up to the arm side"),
    "scattered": say("Scattered, no two alike"),
}
STAGE_WORDS: Mapping[str, Message] = {
    "spin-only": say("Spin only"),
    "body-constraint": say("One thing tied down"),
    "catch-play": say("Catch play"),
    "flat-ground": say("Flat ground"),
    "short-box": say("Mound, short box"),
    "bullpen": say("Bullpen"),
    "live": say("Live hitters"),
    "game": say("Game"),
}
SHORT_WORDS: Mapping[str, Message] = {
    "speed": say("Speed"),
    "drop": say("Drop"),
    "side": say("Side"),
    "active": say("Clean spin"),
    "strikes": say("Strikes"),
    "steady": say("Throws that look alike"),
}
LEARNER_NAMES = ("start", "stage", "passed", "short_of")


def learner_fields() -> tuple[Field, ...]:
    """Return the questions about the start and the stage."""
    stages = tuple(Choice(slug, words) for slug, words in STAGE_WORDS.items())
    return (
        ChoiceField(
            "start",
            say("The breaking ball today"),
            (
                Choice("", say("As the sheet below says")),
                *(Choice(slug, words) for slug, words in START_WORDS.items()),
            ),
            style="select",
            optional=True,
            help=say("What it is now and not what it should be. Write it down before choosing a cue."),
        ),
        ChoiceField("stage", say("Stage today"), stages, style="select"),
        ChoiceField(
            "passed",
            say("Last stage whose gate was met on two days"),
            (Choice("", say("None yet")), *stages),
            style="select",
            optional=True,
            help=say("It matters for a first breaking ball only."),
        ),
        ChoiceField(
            "short_of",
            say("What is missing, by eye"),
            (
                Choice("", say("As the numbers say")),
                *(Choice(wish, words) for wish, words in SHORT_WORDS.items()),
            ),
            style="select",
            optional=True,
        ),
    )


def read_learner(
    values: Values,
    aiming: Aiming,
    session: Session | None,
    record: PitcherFile | None,
    shelf: Shelf,
) -> tuple[Learner, Now, tuple[Wish, ...]] | Problem:
    """Return where the pitcher stands, what was measured, and what the coach misses.

    session: the last one that was thrown, if a sheet was given.
    """
    start, now = str(values.get("start") or ""), Now()
    log = () if record is None else record.log
    if session is not None:
        throws = _as_it_is(session.throws)
        balls, reading = of_pitch(throws, BREAKING_BALL), read(throws, BREAKING_BALL)
        box = None if aiming.target is None else aiming.target.box
        now = now_from(reading, box, level_at(aiming.pitcher.age))
        fastball = aiming.pitcher.fastball if reading.fastball is None else reading.fastball.value
        if not start:
            found = recognise(balls, fastball, aiming.hand, shelf.profiles)
            if found.profile is None:
                return Problem("start", say("{why} Or choose what it is.", why=found.why[0]))
            start = found.profile
    if not start and record is not None:
        start = record.start
    if not start:
        return Problem("start", say("Choose what the breaking ball is today, or paste a sheet."))
    stages, last = tuple(STAGE_WORDS), str(values.get("passed") or "")
    passed = stages[: stages.index(last) + 1] if last else ()
    if record is not None:
        passed = tuple(dict.fromkeys((*passed, *stages_passed(record.gates))))
    wish = cast("Wish | None", values.get("short_of"))
    learner = Learner(
        start, str(values["stage"]), passed, _in_use(session, log), tuple(_trials(session, log))
    )
    return learner, now, (wish,) if wish else ()


def _as_it_is(throws: Sequence[Throw]) -> tuple[Throw, ...]:
    """Return a session without the breaking balls thrown with a cue, where enough plain ones were thrown."""
    plain = tuple(throw for throw in throws if throw.pitch != BREAKING_BALL or not throw.cue)
    return plain if len(of_pitch(plain, BREAKING_BALL)) >= FEWEST_IN_A_GROUP else tuple(throws)


def _in_use(session: Session | None, log: Sequence[Logged]) -> str:
    """Return the cue in use: the last one of the session, or the last one kept if no session came after it."""
    balls = () if session is None else of_pitch(session.throws, BREAKING_BALL)
    thrown = [throw.cue for throw in balls if throw.cue]
    if thrown:
        return thrown[-1]
    if not log or log[-1].decision != "keep":
        return ""
    since = session is not None and session.date and log[-1].date and session.date > log[-1].date
    return "" if since else log[-1].cue


def _trials(session: Session | None, log: Sequence[Logged]) -> Iterator[Logged]:
    """Yield what the session shows of each cue; a day that is in the log already counts there."""
    if session is None:
        return
    logged = {(entry.cue, entry.date) for entry in log}
    for cue in dict.fromkeys(throw.cue for throw in session.throws if throw.cue):
        if (cue, session.date) not in logged:
            with suppress(TrialError):
                yield logged_from(compare(session, cue), "try again")

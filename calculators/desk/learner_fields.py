"""Where the pitcher stands with the breaking ball: the start, the stage, and what is short by eye."""

from __future__ import annotations

from collections.abc import Mapping
from typing import cast

from calculators.coaching.gap import Now, Wish, now_from
from calculators.coaching.next_cue import Learner
from calculators.coaching.pitcher_file import PitcherFile
from calculators.coaching.profiles import recognise
from calculators.coaching.reading import read
from calculators.coaching.session_plan import stages_passed
from calculators.coaching.throws import BREAKING_BALL, Session, of_pitch
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
    if session is not None:
        balls = of_pitch(session.throws, BREAKING_BALL)
        reading = read(session.throws, BREAKING_BALL)
        now = now_from(reading, None if aiming.target is None else aiming.target.box)
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
    return Learner(start, str(values["stage"]), passed), now, (wish,) if wish else ()

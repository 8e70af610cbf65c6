"""The next-cue calculator: pain first, then the target, then one cue with why, what it may break, when to stop."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import cast

from calculators.coaching.next_cue import ONE_THING, Advice, Learner, Offer
from calculators.coaching.next_cue import next_cue as advise
from calculators.coaching.session_plan import SPIN_ONLY
from calculators.coaching.stop_rules import Drift, Stop, fastball_drift, stops
from calculators.coaching.target import Target
from calculators.coaching.throws import Session
from calculators.desk.answers import Answer, Calculator, Fact, FieldGroup, HowSure, Outcome, Shelf, Table
from calculators.desk.content_words import plain_words
from calculators.desk.day_fields import DAY_NAMES, EXAMPLE_DAY, day_fields, read_day, stop_at_pain
from calculators.desk.fields import Field, Problem, Values
from calculators.desk.learner_fields import (
    LEARNER_NAMES,
    STAGE_WORDS,
    START_WORDS,
    learner_fields,
    read_learner,
)
from calculators.desk.loop_fields import (
    ARSENAL_NAMES,
    EXAMPLE_PITCHER,
    PITCHER_NAMES,
    TARGET_NAMES,
    Aiming,
    arsenal_field,
    pitcher_fields,
    read_aiming,
    target_fields,
)
from calculators.desk.next_cue_figures import offer_bars
from calculators.desk.record_fields import open_record, record_fields
from calculators.desk.sheet_fields import (
    COLUMN_NAMES,
    DOUBT_NAMES,
    PITCH_NAMES,
    UNIT_NAMES,
    VIEW_NAMES,
    ReadSheet,
    mapping_fields,
    read_typed_sheet,
    sheet_field,
)
from calculators.desk.target import no_target, title_of
from calculators.words import Message, number, say

MOST_OFFERED = 5
HOLDING = ("stop", "ask first", "end the session")

FOCUS_WORDS = {
    "analogy": say("a picture"),
    "outside": say("ball or target"),
    "inside": say("the body"),
    "task": say("a set-up"),
}
SURE_WORDS = {"low": say("low"), "medium": say("medium"), "high": say("high")}


def fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, pain first, then the target."""
    pain, *day = day_fields()
    _, record = record_fields()
    return (
        pain,
        *target_fields(shelf),
        *learner_fields(),
        *pitcher_fields(shelf),
        arsenal_field(),
        *day,
        sheet_field(),
        *mapping_fields(),
        record,
    )


@dataclass(frozen=True)
class Asked:
    """A question about the next cue, read and answered."""

    aiming: Aiming
    learner: Learner
    advice: Advice
    drift: Drift | None

    @property
    def no_target(self) -> bool:
        """True where no shape does the job from this arm, or not the shape that was asked for."""
        return not self.aiming.target_as_wanted


def work_out(values: Values, shelf: Shelf) -> Outcome:
    """Return the ranked cues, or what must be settled first."""
    asked = read_question(values, shelf)
    if not isinstance(asked, Asked):
        return asked
    advice = asked.advice
    if held := held_back(advice.stops):
        return held_answer(held, advice.stops)
    if asked.no_target:
        return no_target(asked.aiming, shelf)
    if advice.first_stage is not None:
        return _stage_first(advice.first_stage)
    return _answer(asked, shelf) if advice.offers else _nothing(asked, shelf)


def read_question(values: Values, shelf: Shelf) -> Asked | tuple[Problem, ...]:
    """Return the question with its advice, or what must be mended. Without a target nothing is advised."""
    record = open_record(values)
    if isinstance(record, Problem):
        return (record,)
    aiming = read_aiming(values, shelf, record)
    if not isinstance(aiming, Aiming):
        return aiming
    sheet = read_typed_sheet(values, shelf)
    if not isinstance(sheet, ReadSheet):
        return sheet
    sessions = sheet.sessions or (() if record is None else record.sessions)
    session: Session | None = max(sessions, key=lambda one: str(one.date or ""), default=None)
    read = read_learner(values, aiming, session, record, shelf)
    if isinstance(read, Problem):
        return (read,)
    learner, now, short_of = read
    # The drift of an old session says nothing about today; only a sheet given now does.
    drift = fastball_drift(session.throws) if session is not None and sheet.sessions else None
    day = read_day(values)
    if not aiming.target_as_wanted:
        held = stops(day, aiming.pitcher.age, drift)
        return Asked(aiming, learner, Advice((), (), held), drift)
    log = () if record is None else record.log
    advice = advise(
        cast(Target, aiming.target),
        learner,
        day,
        shelf.cues,
        shelf.profiles,
        tuple(shelf.stages),
        now,
        short_of,
        log,
        drift,
    )
    return Asked(aiming, learner, advice, drift)


def held_back(holding: Sequence[Stop]) -> Stop | None:
    """Return the reason that ends the day before any cue, if there is one."""
    return next((stop for stop in holding if stop.weight in HOLDING), None)


def held_answer(held: Stop, holding: Sequence[Stop]) -> Answer:
    """Return what is said where the day ends before any cue."""
    return Answer(
        headline=held.message,
        more=(
            say("No cue and no practice today. A cue does not mend a tired arm."),
            *(stop.message for stop in holding if stop is not held),
        ),
        stop=True,
    )


def _stage_first(stage: str) -> Answer:
    return Answer(
        headline=say("No cue off a mound yet. First comes the stage: {stage}.", stage=STAGE_WORDS[stage]),
        more=(
            say("A first breaking ball takes the stages in order. Each gate is met on two days."),
            say("Choose that stage above, and ask again."),
        ),
    )


def _nothing(asked: Asked, shelf: Shelf) -> Answer:
    target = cast(Target, asked.aiming.target)
    name = title_of(target.shape, shelf).lower()
    return Answer(
        headline=say("No cue needed. Throw the {name} as it is, and count strikes.", name=name),
        more=(
            say("Nothing that was measured is outside the target by a step a coach would notice."),
            *(stop.message for stop in asked.advice.stops),
        ),
        tables=_left_out(asked, shelf),
        cautions=(_PAIN,),
    )


_PAIN = say("Any pain in elbow, shoulder or forearm comes before every cue. Stop, and see someone.")


def _answer(asked: Asked, shelf: Shelf) -> Answer:
    offers = asked.advice.offers
    best = offers[0]
    entry = shelf.cues[best.cue]
    headline = _headline(asked, best, _title(best, shelf).lower())
    bars = [(_title(one, shelf), one.score) for one in offers[:MOST_OFFERED]]
    return Answer(
        headline=headline,
        more=(
            say("Say: {words}", words=plain_words(str(entry["says"]), shelf)),
            ONE_THING,
            *best.why,
            *(stop.message for stop in asked.advice.stops),
            *_kinds(asked.advice),
        ),
        drawings=(offer_bars(bars, headline),),
        facts=tuple(_facts(asked, best, shelf)),
        tables=(*_tables(asked, shelf), *_left_out(asked, shelf)),
        how_sure=HowSure(
            say("A starting point for a trial. The order is an estimate, and no study has tested it."),
            (
                say("What a cue does is what coaches find. The entry says how sure."),
                say("Your own trials count too. After a few days they outweigh the handbook."),
                say("One step is about what ten throws can show."),
            ),
        ),
        cannot_tell=(
            say("Whether this pitcher likes the picture. If it says nothing to them, take the next."),
            say("Whether it works here. Throw plain, with the cue, and plain again."),
        ),
        cautions=(
            _PAIN,
            say("The arm slot stays. If the elbow climbs or drops, end the cue."),
        ),
        read_on=(f"cues/{best.cue}", f"shapes/{cast(Target, asked.aiming.target).shape}"),
        sources=("oki-2018",) if "oki-2018" in shelf.sources else (),
    )


def _headline(asked: Asked, best: Offer, cue: str) -> Message:
    """Say the cue; where the day allows less than the stage asks for, say that first."""
    weights = {stop.weight for stop in asked.advice.stops}
    if "spin throws at most" in weights and asked.learner.stage != SPIN_ONLY:
        return say("Short spin throws at most today. Keep this cue for another day: {cue}.", cue=cue)
    if "no breaking ball" in weights:
        return say("No breaking ball today. Keep this cue for another day: {cue}.", cue=cue)
    return say("Keep this cue: {cue}.", cue=cue) if best.kept else say("Next cue: {cue}.", cue=cue)


def _title(offer: Offer, shelf: Shelf) -> str:
    return str(shelf.cues[offer.cue]["title"])


def _kinds(advice: Advice) -> Iterator[Message]:
    for focus in advice.change_kind:
        yield say("Cues about {kind} failed twice. Try another kind.", kind=FOCUS_WORDS[focus])


def _facts(asked: Asked, best: Offer, shelf: Shelf) -> Iterator[Fact]:
    target = cast(Target, asked.aiming.target)
    start = START_WORDS.get(asked.learner.start)
    if start is not None:
        yield Fact(say("From"), start)
    yield Fact(say("Toward"), say("{shape}", shape=title_of(target.shape, shelf)))
    yield Fact(say("It may break"), say("{text}", text=plain_words(best.may_break, shelf)))
    yield Fact(say("Stop sign"), say("{text}", text=plain_words(best.stop_at, shelf)))
    if best.by_own_days is not None:
        yield Fact(
            say("Your own days"),
            say("{percent}% of the ranking", percent=number(100 * best.own_weight)),
        )


def _tables(asked: Asked, shelf: Shelf) -> Iterator[Table]:
    heads = (say("Cue"), say("Say"), say("It may break"), say("Speaks of"), say("How sure"))
    yield Table(
        say("Worth a trial, best first"),
        heads,
        tuple(
            (
                say("{cue}", cue=_title(one, shelf)),
                say("{words}", words=plain_words(str(shelf.cues[one.cue]["says"]), shelf)),
                say("{text}", text=plain_words(one.may_break, shelf)),
                FOCUS_WORDS[one.focus],
                SURE_WORDS[one.confidence],
            )
            for one in asked.advice.offers[:MOST_OFFERED]
        ),
    )
    if asked.advice.other_targets:
        yield Table(
            say("Would help, but toward another shape"),
            (say("Cue"), say("Leads to")),
            tuple(
                (
                    say("{cue}", cue=str(shelf.cues[one.cue]["title"])),
                    say("{shape}", shape=title_of(one.shape, shelf)),
                )
                for one in asked.advice.other_targets
            ),
        )


def _left_out(asked: Asked, shelf: Shelf) -> tuple[Table, ...]:
    """Return the reasons for which cues are not offered, each with its cues."""
    ordered = sorted(
        asked.advice.left_out, key=lambda one: (one.reason.text, str(one.reason.values), one.cue)
    )
    rows = []
    for reason, those in groupby(ordered, key=lambda one: one.reason):
        titles = [str(shelf.cues[one.cue]["title"]) for one in those]
        rows.append((reason, say("{cues}", cues="; ".join(titles))))
    heads = (say("Why"), say("Cues"))
    return (Table(say("Left out, and why"), heads, tuple(rows), stacked=True),) if rows else ()


def common_cases(shelf: Shelf) -> tuple[Table, ...]:
    """Return, for paper, the cues that are meant for each start."""
    rows = []
    for start, words in START_WORDS.items():
        meant = [
            str(cue["title"])
            for cue in shelf.cues.values()
            if start in cue["starts"] and not cue.get("retired")
        ]
        if meant:
            rows.append((words, say("{cues}", cues=", ".join(meant))))
    if not rows:
        return ()
    heads = (say("The ball today"), say("Cues meant for it"))
    return (Table(say("Cues by start (estimate)"), heads, tuple(rows), stacked=True),)


CALCULATOR = Calculator(
    name="next-cue",
    title=say("Next cue"),
    fields=fields,
    example={
        **EXAMPLE_PITCHER,
        **EXAMPLE_DAY,
        "start": "slurve",
        "stage": "bullpen",
        "passed": "",
        "short_of": "",
        "arsenal": (),
        "sheet": "",
        "side_up": "glove side",
        "drop_sign": "minus",
    },
    work_out=work_out,
    common_cases=common_cases,
    groups=(
        FieldGroup(say("The target"), TARGET_NAMES),
        FieldGroup(say("The ball today"), LEARNER_NAMES),
        FieldGroup(say("The pitcher"), PITCHER_NAMES),
        FieldGroup(say("The day"), DAY_NAMES, open=False),
        FieldGroup(say("Other pitches"), ARSENAL_NAMES, open=False),
        FieldGroup(say("A sheet of throws, if there is one"), ("sheet",), open=False),
        FieldGroup(
            say("If the sheet is not in the handbook's columns"),
            (*COLUMN_NAMES, *VIEW_NAMES, *UNIT_NAMES, *PITCH_NAMES, *DOUBT_NAMES),
            open=False,
        ),
        FieldGroup(say("The pitcher's file"), ("record",), open=False),
    ),
    stops_first=stop_at_pain,
    tools=("record",),
)

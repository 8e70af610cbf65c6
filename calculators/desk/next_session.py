"""The next-session calculator: one practice on one page, inside what the day, the age and the rest allow."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import cast

from calculators.coaching.next_cue import Offer
from calculators.coaching.pitcher_file import PitcherFile
from calculators.coaching.session_plan import (
    FEWEST_IN_A_TRIAL_BLOCK,
    SPIN_ONLY,
    Part,
    Plan,
    Room,
    plan_session,
)
from calculators.coaching.stop_rules import YOUNGEST_FOR_A_BREAKING_BALL
from calculators.desk.answers import Answer, Calculator, Fact, FieldGroup, HowSure, Outcome, Shelf, Table
from calculators.desk.content_words import plain_words
from calculators.desk.day_fields import DAY_NAMES, EXAMPLE_DAY, day_fields, read_day, stop_at_pain
from calculators.desk.fields import Choice, ChoiceField, DateField, Field, NumberField, Problem, Values
from calculators.desk.learner_fields import LEARNER_NAMES, STAGE_WORDS, learner_fields
from calculators.desk.loop_fields import (
    ARSENAL_NAMES,
    EXAMPLE_PITCHER,
    PITCHER_NAMES,
    TARGET_NAMES,
    arsenal_field,
    league_age,
    league_starts,
    pitcher_fields,
    target_fields,
)
from calculators.desk.next_cue import Asked, held_answer, held_back, read_question
from calculators.desk.next_session_figures import plan_bars
from calculators.desk.record_fields import (
    EASIER_GRIP,
    RECORD_NAMES,
    handed_out,
    open_record,
    record_fields,
    record_to_keep,
)
from calculators.desk.sheet_fields import (
    COLUMN_NAMES,
    DOUBT_NAMES,
    PITCH_NAMES,
    UNIT_NAMES,
    VIEW_NAMES,
    mapping_fields,
    sheet_field,
)
from calculators.desk.target import no_target, title_of
from calculators.words import Message, number, say, say_count

BEST, NO_CUE = "best", "none"
ROOM_NAMES = ("most", "rested")


def fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, pain first."""
    pain, *day = day_fields()
    cues = tuple(
        Choice(slug, say("{title}", title=str(cue["title"])))
        for slug, cue in shelf.cues.items()
        if not cue.get("retired")
    )
    stages = tuple(Choice(slug, words) for slug, words in STAGE_WORDS.items())
    return (
        pain,
        DateField("today", say("Day of the practice")),
        NumberField(
            "most",
            say("Throws left for that day, all together"),
            "throws",
            0,
            150,
            (20, 100),
            optional=True,
            help=say("Warm-up, catch and bullpen. The pitch count page says what rest is owed."),
        ),
        ChoiceField(
            "rested",
            say("May the pitcher throw off a mound that day?"),
            (Choice("yes", say("Yes")), Choice("no", say("No, rest is owed"))),
        ),
        *target_fields(shelf),
        *learner_fields(),
        ChoiceField(
            "cue",
            say("The cue"),
            (Choice(BEST, say("What comes first on the list")), Choice(NO_CUE, say("No cue")), *cues),
            style="select",
        ),
        ChoiceField(
            "gate_met",
            say("A gate was met that day"),
            (Choice("", say("No")), *stages),
            style="select",
            optional=True,
            help=say("It goes into the pitcher's file. A stage is passed when its gate is met on two days."),
        ),
        *pitcher_fields(shelf),
        arsenal_field(),
        *day,
        sheet_field(),
        *mapping_fields(),
        *record_fields(),
    )


@dataclass(frozen=True)
class Planned:
    """A plan, what it was made for, and why the cue that was wanted is not in it, if so.

    grip_slides: whether the ball slid in the hand check of the pitcher's file.
    """

    plan: Plan
    asked: Asked
    today: datetime.date
    no_cue: Message | None
    grip_slides: bool


def work_out(values: Values, shelf: Shelf) -> Outcome:
    """Return the practice, or what must be settled first."""
    record = open_record(values)
    if isinstance(record, Problem):
        return (record,)
    kept = record_to_keep(values, record)
    if isinstance(kept, Problem):
        return (kept,)
    asked = read_question(values, shelf)
    if not isinstance(asked, Asked):
        return asked
    if held := held_back(asked.advice.stops):
        return held_answer(held, asked.advice.stops)
    age, too_young = asked.aiming.pitcher.age, asked.aiming.pitcher.age < league_age(shelf)
    if asked.no_target and not too_young:
        return no_target(asked.aiming, shelf)
    offer, no_cue = _cue(values, asked)
    grip_slides = kept is not None and kept.hand_check == "slides"
    most = cast("float | None", values["most"])
    plan = plan_session(
        min(age, YOUNGEST_FOR_A_BREAKING_BALL - 1) if too_young else age,
        asked.learner,
        read_day(values),
        Room(values["rested"] == "yes", None if most is None else int(most)),
        shelf.drills,
        tuple(shelf.stages) or tuple(STAGE_WORDS),
        offer,
        drift=asked.drift,
        grip_slides=grip_slides,
    )
    planned = Planned(plan, asked, cast(datetime.date, values["today"]), no_cue, grip_slides)
    answer = _answer(planned, shelf) if plan.parts else _no_practice(planned)
    if too_young:
        answer = replace(answer, more=(*league_starts(shelf), *answer.more))
    if grip_slides:
        answer = replace(answer, more=(EASIER_GRIP, *answer.more))
    if kept is None:
        return answer
    return replace(answer, files=(handed_out(_with_gate(kept, values, planned)),))


def _cue(values: Values, asked: Asked) -> tuple[Offer | None, Message | None]:
    """Return the cue for the day, or why there is none."""
    wanted, offers = str(values["cue"]), asked.advice.offers
    if wanted == NO_CUE or asked.advice.first_stage is not None or asked.no_target:
        return None, None
    if wanted == BEST:
        return (offers[0], None) if offers else (None, say("No cue fits today. Throw it plain."))
    found = next((one for one in offers if one.cue == wanted), None)
    if found is not None:
        return found, None
    reason = next((one.reason for one in asked.advice.left_out if one.cue == wanted), None)
    why = say("The cue you chose is left out today.")
    return None, why if reason is None else say("{why} {reason}", why=why, reason=reason)


def _with_gate(record: PitcherFile, values: Values, planned: Planned) -> PitcherFile:
    """Return the file with the day's gate and the start that was written down."""
    record = replace(
        record,
        age=planned.asked.aiming.pitcher.age,
        as_of=planned.today,
        start=planned.asked.learner.start,
    )
    gate = str(values.get("gate_met") or "")
    if not gate or (gate, planned.today) in record.gates:
        return record
    return replace(record, gates=(*record.gates, (gate, planned.today)))


def _no_practice(planned: Planned) -> Answer:
    return Answer(
        headline=say("No breaking ball practice on that day."),
        more=(*(stop.message for stop in planned.plan.stops), *planned.plan.notes),
        cautions=planned.plan.stop_signs,
    )


def _answer(planned: Planned, shelf: Shelf) -> Answer:
    plan = planned.plan
    headline = _headline(plan, shelf)
    bars = [(_part_name(part, shelf), part.throws, part.breaking) for part in plan.parts]
    return Answer(
        headline=headline,
        more=(
            *(stop.message for stop in plan.stops),
            *plan.notes,
            *(() if planned.no_cue is None else (planned.no_cue,)),
        ),
        drawings=(plan_bars(bars, headline),),
        facts=tuple(_facts(planned)),
        tables=(_sheet(planned, shelf),),
        how_sure=HowSure(
            say("The limits are a cap and not a goal. Fewer is always allowed."),
            (
                say("The share of breaking balls and the size of blocks are common practice."),
                say("Asked effort is not real effort, so the radar and the arm decide and not the plan."),
            ),
        ),
        cannot_tell=(
            say("What else the arm did this week. School, club and home throws count too."),
            say("What the rule book of the game allows. Ask the pitch count page, and the league."),
        ),
        cautions=plan.stop_signs,
        read_on=tuple(dict.fromkeys(_pages(plan))),
        sources=("fiegen-2023",),
    )


def _headline(plan: Plan, shelf: Shelf) -> Message:
    stage = STAGE_WORDS.get(plan.stage, say("{stage}", stage=plan.stage))
    counts = say_count(
        "{stage}: {count} throw, {breaking} of them breaking balls",
        "{stage}: {count} throws, {breaking} of them breaking balls",
        plan.throws,
        stage=stage,
        breaking=str(plan.breaking),
    )
    if plan.stage == SPIN_ONLY:
        counts = say_count(
            "{stage}: {count} short spin throw and no more",
            "{stage}: {count} short spin throws and no more",
            plan.throws,
            stage=stage,
        )
    if plan.cue is None:
        return say("{counts}.", counts=counts)
    return say("{counts}, one cue: {cue}.", counts=counts, cue=str(shelf.cues[plan.cue]["title"]).lower())


def _facts(planned: Planned) -> Iterator[Fact]:
    plan = planned.plan
    yield Fact(say("Throws, all together"), say("{count}", count=str(plan.throws)))
    note = say("at most {most} that day. Short spin throws are not in it.", most=str(plan.breaking_most))
    if plan.stage != SPIN_ONLY:
        yield Fact(say("Breaking balls"), say("{count}", count=str(plan.breaking)), note=note)


def _pages(plan: Plan) -> Iterator[str]:
    yield from (f"drills/{part.drill}" for part in plan.parts if part.drill)
    if plan.cue is not None:
        yield f"cues/{plan.cue}"


def _part_name(part: Part, shelf: Shelf) -> Message:
    if not part.drill:
        return say("Other throws")
    return say("{title}", title=str(shelf.drills[part.drill]["title"]))


def _sheet(planned: Planned, shelf: Shelf) -> Table:
    """Return the practice as one sheet of paper."""
    plan, target = planned.plan, planned.asked.aiming.target
    rows: list[tuple[Message, ...]] = []
    if target is not None and plan.stage != SPIN_ONLY:
        slow, fast = target.box.speed
        shape = title_of(target.shape, shelf)
        aim = say(
            "{shape}, {slow} to {fast}% of the fastball", shape=shape, slow=number(slow), fast=number(fast)
        )
        rows.append((say("Target"), aim))
    if planned.grip_slides:
        rows.append((say("Grip"), EASIER_GRIP))
    for part in plan.parts:
        what = say("{throws} {how}", throws=_throws(part), how=_how(part, shelf))
        rows.append((_part_name(part, shelf), what))
    if plan.cue is not None:
        says = plain_words(str(shelf.cues[plan.cue]["says"]), shelf)
        rows.append((say("Cue"), say("{says}", says=says)))
    if plan.gate:
        rows.append((say("Gate"), _gate(plan, shelf)))
        rows.append((say("If not met"), say("{text}", text=plain_words(plan.if_not, shelf))))
    rows += [(say("Stop"), sign) for sign in plan.stop_signs]
    rows.append((say("Seen"), say("______________________")))
    caption = say("Practice of {date}", date=planned.today.isoformat())
    return Table(caption, (say("Part"), say("What to do")), tuple(rows), sheet=True)


def _gate(plan: Plan, shelf: Shelf) -> Message:
    """Return the gate of the main drill, for as many throws as there are today."""
    main = next(part for part in reversed(plan.parts) if part.drill)
    gate = say("{text}", text=plain_words(plan.gate, shelf))
    if main.blocks:
        return say(
            "The {count} throws with the cue differ from the plain ones by more than throws differ by "
            "themselves, and the fastball has not changed.",
            count=str(main.blocks),
        )
    if main.throws < FEWEST_IN_A_TRIAL_BLOCK:
        return say("None today. So few throws show nothing.")
    if main.throws < shelf.drills[main.drill]["throws"][1]:
        return say("{gate} With fewer throws, the same share.", gate=gate)
    return gate


def _throws(part: Part) -> Message:
    if part.blocks:
        return say("{block}, {block} and {block} throws.", block=str(part.blocks))
    return say_count("{count} throw.", "{count} throws.", part.throws)


def _how(part: Part, shelf: Shelf) -> Message:
    if not part.drill:
        return say("Warm-up, catch, fastballs and changeups, spread over the practice.")
    drill = shelf.drills[part.drill]
    words = plain_words(str(drill["set_up"]), shelf)
    if part.blocks:
        return say("{set_up} Plain, then the cue, then plain. Three fastballs between.", set_up=words)
    if drill["distance_ft"] is not None:
        low, high = (number(feet) for feet in drill["distance_ft"])
        return say("{set_up} {low} to {high} ft.", set_up=words, low=low, high=high)
    return say("{set_up}", set_up=words)


def common_cases(shelf: Shelf) -> tuple[Table, ...]:
    """Return, for paper, the first drill of each stage and its gate."""
    rows = []
    for stage, words in STAGE_WORDS.items():
        drills = [drill for drill in shelf.drills.values() if drill["stage"] == stage]
        if drills:
            first = min(drills, key=lambda drill: int(drill["order"]))
            gate = say("{gate}", gate=plain_words(str(first["gate"]), shelf))
            rows.append((words, say("{title}", title=str(first["title"])), gate))
    if not rows:
        return ()
    heads = (say("Stage"), say("First drill"), say("Gate"))
    return (Table(say("Stages in order (common practice)"), heads, tuple(rows), stacked=True),)


CALCULATOR = Calculator(
    name="next-session",
    title=say("Next session"),
    fields=fields,
    example={
        **EXAMPLE_PITCHER,
        **EXAMPLE_DAY,
        "today": "2026-03-24",
        "most": "80",
        "rested": "yes",
        "start": "slurve",
        "stage": "bullpen",
        "passed": "",
        "short_of": "",
        "cue": BEST,
        "gate_met": "",
        "arsenal": (),
        "sheet": "",
        "side_up": "glove side",
        "drop_sign": "minus",
    },
    work_out=work_out,
    common_cases=common_cases,
    groups=(
        FieldGroup(say("The day"), ("today", *ROOM_NAMES, *DAY_NAMES)),
        FieldGroup(say("The target"), TARGET_NAMES, open=False),
        FieldGroup(say("The ball today"), (*LEARNER_NAMES, "cue", "gate_met")),
        FieldGroup(say("The pitcher"), PITCHER_NAMES, open=False),
        FieldGroup(say("Other pitches"), ARSENAL_NAMES, open=False),
        FieldGroup(say("A sheet of throws, if there is one"), ("sheet",), open=False),
        FieldGroup(
            say("If the sheet is not in the handbook's columns"),
            (*COLUMN_NAMES, *VIEW_NAMES, *UNIT_NAMES, *PITCH_NAMES, *DOUBT_NAMES),
            open=False,
        ),
        FieldGroup(say("Keep it"), RECORD_NAMES, open=False),
    ),
    stops_first=stop_at_pain,
    tools=("print", "record"),
)

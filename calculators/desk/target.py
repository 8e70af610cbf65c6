"""The target calculator: from arm, role and the pitches there are to a box, written down before a throw."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import cast

from calculators.coaching.pitcher_file import PastTarget, PitcherFile
from calculators.coaching.slot_and_shape import read_shapes
from calculators.coaching.target import USUAL_FASTBALL, Target
from calculators.desk.answers import Answer, Calculator, Fact, FieldGroup, HowSure, Outcome, Shelf, Table
from calculators.desk.fields import DateField, Field, Problem, Values
from calculators.desk.loop_fields import (
    ARSENAL_NAMES,
    EXAMPLE_PITCHER,
    OWN_WORDS,
    PITCHER_NAMES,
    TARGET_NAMES,
    Aiming,
    arsenal_field,
    league_age,
    league_starts,
    pitcher_fields,
    read_aiming,
    target_fields,
)
from calculators.desk.measures import Measures, units_field
from calculators.desk.movement_tables import clock_words
from calculators.desk.movement_words import between_down_and_up, between_sides
from calculators.desk.record_fields import (
    EASIER_GRIP,
    HAND_AND_NOTES,
    HAND_CHECK_WORDS,
    RECORD_NAMES,
    hand_and_notes,
    hand_and_notes_fields,
    handed_out,
    open_record,
    record_fields,
    record_to_keep,
)
from calculators.desk.target_figures import target_drawings
from calculators.desk.target_movement import MovementBox, movement_box
from calculators.physics.units import MPH
from calculators.words import Message, number, say

EYES_CLOCK = 45


def fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, in order."""
    return (
        *target_fields(shelf),
        *pitcher_fields(shelf),
        arsenal_field(),
        DateField("today", say("Day on which the target is written down")),
        *hand_and_notes_fields(),
        *record_fields(),
        units_field(),
    )


def work_out(values: Values, shelf: Shelf) -> Outcome:
    """Return the target for the pitcher, or what must be mended first."""
    record = open_record(values)
    if isinstance(record, Problem):
        return (record,)
    kept = record_to_keep(values, record)
    if isinstance(kept, Problem):
        return (kept,)
    aiming = read_aiming(values, shelf, record)
    if not isinstance(aiming, Aiming):
        return aiming
    if not aiming.target_as_wanted:
        return no_target(aiming, shelf)
    return _card(aiming, values, record, kept, shelf)


def no_target(aiming: Aiming, shelf: Shelf) -> Answer:
    """Return why the shape or role is no target for this arm, and what is."""
    name = title_of(aiming.wanted, shelf).lower()
    role = OWN_WORDS[str(aiming.role)]
    ruled_out = aiming.choice.ruled_out if aiming.choice is not None else ()
    reasons = tuple(
        say("{shape}: {reason}", shape=title_of(one.shape, shelf), reason=one.reason)
        for one in ruled_out
        if aiming.wanted in ("", one.shape)
    )
    if aiming.target is not None:
        instead = title_of(aiming.target.shape, shelf).lower()
        headline = say("Do not aim for a {name} here. Aim for the {instead}.", name=name, instead=instead)
        if not reasons:
            reasons = (say("{role}: this shape is not made for it.", role=role),)
    elif aiming.pitcher.age < league_age(shelf):
        age, reasons = str(aiming.pitcher.age), league_starts(shelf) or reasons
        headline = say("At {age}, throw the fastball and the changeup. A breaking ball can wait.", age=age)
    else:
        headline = say(
            "{role}: no breaking ball of this handbook is a target for this pitcher now.", role=role
        )
    return Answer(
        headline=headline,
        more=reasons,
        cautions=(say("Never change the arm slot to get a shape. Change the shape, the role or the year."),),
        how_sure=HowSure(say("Which arm reaches which shape is common practice, not measured.")),
        cannot_tell=(say("What the hand can hold. Try the grips of the shape."),),
        sources=("kimura-2023",),
    )


def _card(
    aiming: Aiming, values: Values, record: PitcherFile | None, kept: PitcherFile | None, shelf: Shelf
) -> Answer:
    target = cast(Target, aiming.target)
    measures = Measures("metric" if values["units"] == "metric" else "imperial")
    moved = movement_box(target, shelf.shapes[target.shape], aiming.mound)
    headline = _headline(aiming, target, shelf)
    today = cast(datetime.date, values["today"])
    hand_check, notes = hand_and_notes(values, record)
    by_hand = [
        (say("Hand check"), HAND_CHECK_WORDS[hand_check] if hand_check else say("________________")),
        *([(say("Notes"), say("{notes}", notes=notes))] if notes else []),
    ]
    return Answer(
        headline=headline,
        more=(*((EASIER_GRIP,) if hand_check == "slides" else ()), *_more(aiming, target)),
        drawings=target_drawings(aiming, target, moved, measures, headline),
        facts=tuple(_facts(aiming, target, moved, measures)),
        tables=(
            _sheet(aiming, target, moved, measures, today, by_hand, shelf),
            *_tables(aiming, target, shelf),
        ),
        how_sure=_how_sure(aiming, moved),
        cannot_tell=(
            say("Whether hitters will miss it. The box says what to aim for, not what it gets."),
            say("Which cue gets there. Ask for that after the target is written down."),
        ),
        cautions=tuple(_cautions(aiming, target)),
        read_on=(f"shapes/{target.shape}",),
        sources=("kimura-2023", "arm-angle-2025"),
        files=()
        if kept is None
        else (handed_out(replace(_with_target(kept, aiming, today), hand_check=hand_check, notes=notes)),),
    )


def title_of(shape: str, shelf: Shelf) -> str:
    """Return a shape's name; "" for none."""
    return str(shelf.shapes[shape]["title"]) if shape in shelf.shapes else shape


def _headline(aiming: Aiming, target: Target, shelf: Shelf) -> Message:
    name = title_of(target.shape, shelf).lower()
    slow, fast = (number(percent) for percent in target.box.speed)
    if target.box.clock is None:
        return say(
            "Aim for a {name} at {slow} to {fast}% of the fastball. Its clock does not matter.",
            name=name,
            slow=slow,
            fast=fast,
        )
    start, end = clock_words(target.box.clock.start), clock_words(target.box.clock.end)
    return say(
        "Aim for a {name}: {slow} to {fast}% of the fastball, pushed to {start} to {end}.",
        name=name,
        slow=slow,
        fast=fast,
        start=start,
        end=end,
    )


def _more(aiming: Aiming, target: Target) -> Iterator[Message]:
    role = OWN_WORDS[target.role]
    yield say("{role}. Write this down before the first throw, and do not move it afterwards.", role=role)
    for cost in target.costs:
        yield say("What it costs: {cost}", cost=cost)
    for clash in target.clashes:
        yield clash.message
    if aiming.arsenal and not target.clashes:
        yield say("It runs into none of the other pitches.")


def _facts(aiming: Aiming, target: Target, moved: MovementBox | None, measures: Measures) -> Iterator[Fact]:
    box, fastball = target.box, target.pitcher.fastball
    slow, fast = box.speed
    share = say("{slow} to {fast}% of the fastball", slow=number(slow), fast=number(fast))
    if fastball is None:
        yield Fact(say("Speed"), share, note=say("Measure the fastball to know it in mph."))
    else:
        miles = fastball * MPH / 100
        speeds = say("{slow} to {fast}", slow=measures.speed(slow * miles), fast=measures.speed(fast * miles))
        yield Fact(say("Speed"), speeds, note=share)
    if box.clock is None:
        yield Fact(say("Clock"), say("any"), note=say("Bullet spin: the clock jumps and means nothing."))
    else:
        start, end = clock_words(box.clock.start), clock_words(box.clock.end)
        yield Fact(
            say("Clock"),
            say("{start} to {end}", start=start, end=end),
            note=_clock_note(target),
        )
    low, high = box.active
    if high >= 100:
        yield Fact(say("Active share"), say("{low}% or more", low=number(low)))
    else:
        yield Fact(say("Active share"), say("{low} to {high}%", low=number(low), high=number(high)))
    if moved is not None:
        yield Fact(
            say("Up or down"),
            between_down_and_up(*moved.up, measures),
            note=say("by spin alone, from {feet} ft", feet=f"{aiming.mound:g}"),
        )
        yield Fact(say("To the side"), between_sides(*moved.glove, measures))


def _clock_note(target: Target) -> Message | None:
    if target.role == "first-pitch":
        return say("Half an hour around the opposite of this arm's own fastball.")
    return say("The edge of what this arm reaches.") if target.edge else None


def _sheet(
    aiming: Aiming,
    target: Target,
    moved: MovementBox | None,
    measures: Measures,
    today: datetime.date,
    by_hand: Sequence[tuple[Message, ...]],
    shelf: Shelf,
) -> Table:
    """Return the target as one card of paper."""
    rows = [
        (say("For"), OWN_WORDS[target.role]),
        (say("Shape"), say("{name}", name=title_of(target.shape, shelf))),
        *((fact.label, fact.value) for fact in _facts(aiming, target, moved, measures)),
        (say("Good enough"), say("Half of ten inside the box, on two days (estimate)")),
        (say("Stop"), say("Pain at once. A tired fastball. Six throws without the shape.")),
        (say("One grip"), say("________________")),
        (say("One cue, or none"), say("________________")),
        *by_hand,
    ]
    caption = say("Target, written down on {date}", date=today.isoformat())
    return Table(caption, (say("What"), say("Aim")), tuple(rows), sheet=True)


def _tables(aiming: Aiming, target: Target, shelf: Shelf) -> Iterator[Table]:
    others = [one for one in (aiming.choice.targets if aiming.choice else ()) if one is not target]
    if others:
        yield Table(
            say("Other shapes that do it"),
            (say("Shape"), say("Speed"), say("Clock"), say("Runs into")),
            tuple(_other_row(one, shelf) for one in others),
        )
    ruled_out = aiming.choice.ruled_out if aiming.choice else ()
    if ruled_out:
        yield Table(
            say("Not for this pitcher"),
            (say("Shape"), say("Why")),
            tuple((say("{name}", name=title_of(one.shape, shelf)), one.reason) for one in ruled_out),
        )


def _other_row(target: Target, shelf: Shelf) -> tuple[Message, ...]:
    slow, fast = (number(percent) for percent in target.box.speed)
    band = target.box.clock
    clock = say("any")
    if band is not None:
        clock = say("{start} to {end}", start=clock_words(band.start), end=clock_words(band.end))
    names = ", ".join(clash.pitch for clash in target.clashes)
    return (
        say("{name}", name=title_of(target.shape, shelf)),
        say("{slow} to {fast}%", slow=slow, fast=fast),
        clock,
        say("{names}", names=names) if names else say("none"),
    )


def _how_sure(aiming: Aiming, moved: MovementBox | None) -> HowSure:
    causes = [
        say("That a curve comes out near the fastball's opposite is published. The width of the box is not.")
    ]
    if moved is not None:
        causes.append(
            say(
                "Inches of movement come from the speed, and from a spin that is usual at this age (estimate)."
            )
        )
    if moved is not None and aiming.pitcher.fastball is None:
        mph = number(USUAL_FASTBALL)
        causes.append(say("Without a fastball speed, {mph} mph stands in.", mph=mph))
    if aiming.seen == "slot":
        minutes = str(EYES_CLOCK)
        return HowSure(
            say("By eye, the clock of the box may be off by {minutes} minutes.", minutes=minutes),
            tuple(causes),
        )
    return HowSure(say("A sensible box to aim for, not a measured best."), tuple(causes))


def _cautions(aiming: Aiming, target: Target) -> Iterator[Message]:
    if target.role == "first-pitch":
        if all(owned.breaking for owned in aiming.arsenal):
            yield say("No changeup is listed above. It comes before any breaking ball.")
        yield say(
            "First: at least 55 of 100 fastballs are strikes, and a changeup is used in games (common practice)."
        )
        yield say(
            "Also first: no pain for two weeks, four weeks of regular throwing, and no growth spurt now. "
            "The hand holds the grip. A parent or guardian knows, and says yes (common practice)."
        )
    if target.edge:
        yield say("At the edge of the reach, watch the elbow. If it changes, choose another shape.")
    yield say("Never change the arm slot to get a shape. Change the shape.")
    yield say("Any pain in elbow, shoulder or forearm comes before every number here. Stop, and see someone.")


def _with_target(record: PitcherFile, aiming: Aiming, today: datetime.date) -> PitcherFile:
    """Return the file with this target in it, and what was said of the arm."""
    target = cast(Target, aiming.target)
    written = PastTarget(today, target.role, target.shape)
    earlier = tuple(one for one in record.targets if one != written)
    return replace(
        record,
        age=aiming.pitcher.age,
        as_of=today,
        slot=aiming.pitcher.slot,
        fastball_clock=aiming.pitcher.fastball_clock,
        fastball_speed=aiming.pitcher.fastball,
        arsenal=aiming.arsenal,
        targets=(*earlier, written),
    )


def common_cases(shelf: Shelf) -> tuple[Table, ...]:
    """Return what each role asks of a shape, for paper."""
    shapes = read_shapes(shelf.shapes)

    def row(role: str, words: Message) -> tuple[Message, ...]:
        doing = [title_of(shape.slug, shelf).lower() for shape in shapes if role in shape.roles]
        entry: Mapping[str, object] = shelf.roles.get(role, {})
        return (
            words,
            say("{shapes}", shapes=", ".join(doing)) if doing else say("none"),
            say("{aim}", aim=str(entry.get("aim", ""))),
        )

    if not shelf.roles:
        return ()
    heads = (say("What it is for"), say("Shapes"), say("Where to throw it"))
    rows = tuple(row(role, words) for role, words in OWN_WORDS.items())
    return (Table(say("What each job asks for (common practice)"), heads, rows, stacked=True),)


CALCULATOR = Calculator(
    name="target",
    title=say("Set a target"),
    fields=fields,
    example={
        **EXAMPLE_PITCHER,
        "arsenal": ({"name": "changeup", "speed": "66", "clock": "2:30", "breaking": "no"},),
        "today": "2026-03-02",
        "hand_check": "",
        "notes": "",
        "nickname": "",
        "record": "",
        "units": "imperial",
    },
    work_out=work_out,
    common_cases=common_cases,
    groups=(
        FieldGroup(say("What for"), TARGET_NAMES),
        FieldGroup(say("The pitcher"), PITCHER_NAMES),
        FieldGroup(say("Other pitches"), ARSENAL_NAMES, open=False),
        FieldGroup(say("Write it down"), ("today", *HAND_AND_NOTES, *RECORD_NAMES), open=False),
        FieldGroup(say("How to answer"), ("units",), open=False),
    ),
    tools=("record",),
)

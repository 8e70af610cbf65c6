"""The slot-and-shape calculator: which breaking balls an arm reaches, and which would force it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from calculators.coaching.clock_faces import turn_between
from calculators.coaching.slot_and_shape import (
    FORCED_HOURS,
    NATURAL_HOURS,
    Arm,
    Reach,
    Shape,
    Slot,
    hours_to,
    instead_of,
    natural_shape,
    reach,
    read_shapes,
    read_slots,
    shape_for,
)
from calculators.desk.answers import Answer, Calculator, Fact, HowSure, Outcome, Shelf, Table
from calculators.desk.drawing import Drawing
from calculators.desk.fields import Values
from calculators.desk.measures import Measures
from calculators.desk.movement_tables import clock_words
from calculators.desk.slot_and_shape_fields import (
    ARM_GROUPS,
    EXAMPLE_ARM,
    TypedArm,
    arm_fields,
    read_arm,
)
from calculators.desk.slot_and_shape_figures import Row, dial, strip
from calculators.physics.units import DEGREE
from calculators.words import Message, number, say

VERDICTS: Mapping[Reach, Message] = {
    Reach.NATURAL: say("fits"),
    Reach.EDGE: say("just about"),
    Reach.FORCED: say("forced"),
}


def work_out(values: Values, shelf: Shelf) -> Outcome:
    """Return what the arm reaches, or the problems that involve several fields."""
    typed = read_arm(values, shelf)
    if not isinstance(typed, TypedArm):
        return typed
    measures = Measures("metric" if values["units"] == "metric" else "imperial")
    names = {shape.slug: str(shelf.shapes[shape.slug]["title"]) for shape in typed.shapes}
    pick = _pick(typed)
    headline = _headline(typed, pick, names)
    return Answer(
        headline=headline,
        more=tuple(_more(typed, pick, names, shelf)),
        drawings=_drawings(typed, names, headline),
        facts=tuple(_facts(typed, shelf)),
        tables=(_table(typed, names, measures),),
        how_sure=_how_sure(typed),
        cannot_tell=(
            say("Whether the hand can hold the grip, and how much spin there is."),
            say("What the body does. Watch for a climbing elbow, a dropping elbow or a head that leaves."),
            say("Where the seams add movement. That is not counted here."),
        ),
        cautions=tuple(_cautions(typed, pick, names)),
        read_on=() if pick is None else (f"shapes/{pick.slug}",),
        sources=("kimura-2023", "arm-angle-2025", "escamilla-1998"),
    )


def _pick(typed: TypedArm) -> Shape | None:
    """Return the shape to throw: the wanted one if the arm reaches it, or what comes nearest."""
    shapes, wanted, arm = _old_enough(typed), typed.wanted, typed.arm
    if wanted is not None and wanted in shapes and reach(wanted, arm) < Reach.FORCED:
        return wanted
    pick = shape_for(typed.role, shapes, arm) if typed.role else None
    if pick is None and wanted is not None:
        pick = instead_of((wanted,), shapes, arm)
    if pick is None and typed.role is not None:
        pick = instead_of((shape for shape in typed.shapes if typed.role in shape.roles), shapes, arm)
    return pick or natural_shape(shapes, arm)


def _old_enough(typed: TypedArm) -> tuple[Shape, ...]:
    return tuple(shape for shape in typed.shapes if typed.age is None or typed.age >= shape.youngest)


def _headline(typed: TypedArm, pick: Shape | None, names: Mapping[str, str]) -> Message:
    if typed.age is not None and not _old_enough(typed):
        return say(
            "At {age}, throw the fastball and the changeup. A breaking ball can wait.", age=str(typed.age)
        )
    if pick is None:
        return say("No breaking ball of this handbook fits this arm without forcing it.")
    name = names[pick.slug].lower()
    wanted = typed.wanted
    if wanted is None and typed.role is not None and typed.role not in pick.roles:
        return say("No shape made for that job fits this arm. The {name} comes nearest.", name=name)
    if wanted is None or wanted == pick:
        return _fits(typed, pick, name)
    asked = names[wanted.slug].lower()
    if reach(wanted, typed.arm) == Reach.FORCED:
        return say("Do not ask this arm for a {asked}. Teach the {name} instead.", asked=asked, name=name)
    return say(
        "At {age}, a {asked} can wait. Teach the {name} first.", age=str(typed.age), asked=asked, name=name
    )


def _fits(typed: TypedArm, pick: Shape, name: str) -> Message:
    if reach(pick, typed.arm) == Reach.EDGE:
        return say("This arm just about reaches the {name}.", name=name)
    if typed.wanted is None and typed.role is None:
        return say("The {name} is this arm's natural breaking ball.", name=name)
    return say("The {name} fits this arm.", name=name)


def _more(typed: TypedArm, pick: Shape | None, names: Mapping[str, str], shelf: Shelf) -> Iterator[Message]:
    start, end = typed.span(typed.arm.mirror - NATURAL_HOURS, typed.arm.mirror + NATURAL_HOURS)
    yield say(
        "The fastball pushes to {fastball}. The opposite is {mirror}, and a curve comes out near it.",
        fastball=typed.clock(typed.arm.fastball),
        mirror=typed.clock(typed.arm.mirror),
    )
    yield say("Grip and hand reach from about {start} to {end}.", start=start, end=end)
    wanted = typed.wanted
    if wanted is not None and reach(wanted, typed.arm) == Reach.FORCED:
        yield _why_forced(typed, wanted, names[wanted.slug].lower(), shelf)
    if pick is None or typed.role not in shelf.roles:
        return
    role = say("{title}", title=str(shelf.roles[str(typed.role)]["title"]))
    if typed.role not in pick.roles:
        doers = [names[shape.slug].lower() for shape in typed.shapes if typed.role in shape.roles]
        yield say(
            "{role}: this is not what the {name} is made for. Made for it: {shapes}.",
            role=role,
            name=names[pick.slug].lower(),
            shapes=", ".join(doers),
        )
    else:
        yield say("{role}: the {name} is made for it.", role=role, name=names[pick.slug].lower())


def _why_forced(typed: TypedArm, wanted: Shape, name: str, shelf: Shelf) -> Message:
    """Say how far away the wanted shape is, and what a pitcher would do to get there."""
    start, end = typed.span(wanted.clock.start, wanted.clock.end)
    slot, away = typed.arm.slot, hours_to(wanted, typed.arm)
    if turn_between(typed.arm.mirror, wanted.clock.middle) < 0:
        harm = say("To get there the elbow climbs, the head leaves, and the hitter sees it.")
    else:
        harm = say("To get there the elbow drops, and the hitter sees it.")
    if slot is not None and away <= FORCED_HOURS:
        return say(
            "The {name} pushes to {start} to {end}. By common practice a {slot} arm is not asked for it. "
            "{harm}",
            name=name,
            start=start,
            end=end,
            slot=str(shelf.slots[slot.slug]["title"]).lower(),
            harm=harm,
        )
    return say(
        "The {name} pushes to {start} to {end}. That is {minutes} minutes away from this arm's curve. {harm}",
        name=name,
        start=start,
        end=end,
        minutes=number(60 * away),
        harm=harm,
    )


def _drawings(typed: TypedArm, names: Mapping[str, str], headline: Message) -> tuple[Drawing, ...]:
    rows = tuple(
        Row(shape, say("{title}", title=names[shape.slug]), reach(shape, typed.arm), _verdict(shape, typed))
        for shape in typed.shapes
    )
    return (dial(typed, headline), strip(typed, rows, headline))


def _verdict(shape: Shape, typed: TypedArm) -> Message:
    return VERDICTS[reach(shape, typed.arm)] if shape.steady else say("any arm")


def _facts(typed: TypedArm, shelf: Shelf) -> Iterator[Fact]:
    if typed.angle is not None:
        yield Fact(
            say("Arm angle"),
            say("{degrees}°", degrees=number(typed.angle / DEGREE)),
            note=say("above level, from shoulder to hand"),
        )
    yield Fact(
        say("Fastball clock"),
        say("{clock}", clock=typed.clock(typed.arm.fastball)),
        say("give or take {minutes} minutes", minutes=_minutes(typed.doubt)),
        note=None if typed.known == "clock" else say("expected from the arm, not measured"),
    )
    yield Fact(
        say("Opposite of the fastball"),
        say("{clock}", clock=typed.clock(typed.arm.mirror)),
        note=say("where the curve comes out"),
    )
    if typed.arm.slot is not None:
        title = str(shelf.slots[typed.arm.slot.slug]["title"])
        yield Fact(say("Arm slot"), say("{title}", title=title))


def _table(typed: TypedArm, names: Mapping[str, str], measures: Measures) -> Table:
    def row(shape: Shape) -> tuple[Message, ...]:
        start, end = typed.span(shape.clock.start, shape.clock.end)
        slowest, fastest = shape.speed
        if typed.fastball is None:
            speeds = say(
                "{slowest} to {fastest}%", slowest=number(100 * slowest), fastest=number(100 * fastest)
            )
        else:
            speeds = say(
                "{slowest} to {fastest}",
                slowest=measures.speed(slowest * typed.fastball),
                fastest=measures.speed(fastest * typed.fastball),
            )
        return (
            say("{title}", title=names[shape.slug]),
            _verdict(shape, typed),
            say("{start} to {end}", start=start, end=end) if shape.steady else say("not steady"),
            speeds,
            say("{age}", age=str(shape.youngest)),
        )

    in_order = sorted(typed.shapes, key=lambda shape: (reach(shape, typed.arm), hours_to(shape, typed.arm)))
    return Table(
        say("Breaking balls, those that fit this arm first"),
        (say("Shape"), say("Fit"), say("Clock"), say("Speed"), say("From age")),
        tuple(row(shape) for shape in in_order),
    )


def _how_sure(typed: TypedArm) -> HowSure:
    minutes = _minutes(typed.doubt)
    rule = say(
        "That a curve comes out near the fastball's opposite is published. How far grip and hand move it is "
        "common practice: 45 minutes either way, and an hour at most."
    )
    if typed.known == "clock":
        return HowSure(
            say("The clocks are good to about {minutes} minutes if the fastball's is.", minutes=minutes),
            (rule,),
        )
    explained = say(
        "The arm's angle explains two thirds of the differences between fastball clocks, in a published "
        "count of professionals. The rest is hand and wrist."
    )
    seen = (
        say("A photo can mislead by ten degrees, which is 20 minutes (estimate).")
        if typed.known == "photo"
        else say("A slot by eye covers a range of clocks.")
    )
    return HowSure(
        say(
            "The clocks are good to about {minutes} minutes. Measure the fastball to know more.",
            minutes=minutes,
        ),
        (explained, seen, rule),
    )


def _cautions(typed: TypedArm, pick: Shape | None, names: Mapping[str, str]) -> Iterator[Message]:
    yield say("Never change the arm slot to get a shape. Change the shape.")
    if pick is not None and reach(pick, typed.arm) == Reach.EDGE:
        yield say("At the edge of the reach, watch the elbow. If it changes, choose another shape.")
    if pick is not None and typed.age is None:
        yield say(
            "This handbook holds the {name} back until age {age}.",
            name=names[pick.slug].lower(),
            age=str(pick.youngest),
        )
    if typed.age is not None and not _old_enough(typed):
        yield say("To age 12 the joint US guideline asks for fastball and changeup only.")


def _minutes(hours: float) -> str:
    return number(5 * round(12 * hours))


def common_cases(shelf: Shelf) -> tuple[Table, ...]:
    """Return what every arm slot reaches, for both hands."""
    shapes = read_shapes(shelf.shapes)

    def row(slot: Slot) -> tuple[Message, ...]:
        arm = Arm(slot.fastball.middle, slot)
        band = slot.fastball.opposite
        fitting = [
            str(shelf.shapes[shape.slug]["title"]).lower()
            for shape in shapes
            if shape.steady and reach(shape, arm) == Reach.NATURAL
        ]
        forced = [
            str(shelf.shapes[shape.slug]["title"]).lower()
            for shape in shapes
            if reach(shape, arm) == Reach.FORCED
        ]
        return (
            say("{title}", title=str(shelf.slots[slot.slug]["title"])),
            say("{start} to {end}", start=clock_words(band.start), end=clock_words(band.end)),
            say("{start} to {end}", start=clock_words(-band.end % 12), end=clock_words(-band.start % 12)),
            say("{shapes}", shapes=", ".join(fitting)),
            say("{shapes}", shapes=", ".join(forced)) if forced else say("none"),
        )

    slots = read_slots(shelf.slots)
    if not slots or not shapes:
        return ()
    heads = (
        say("Arm slot"),
        say("Curve near, right-hander"),
        say("Curve near, left-hander"),
        say("Fits"),
        say("Do not force"),
    )
    return (Table(say("What each arm slot reaches (common practice)"), heads, tuple(map(row, slots))),)


CALCULATOR = Calculator(
    name="slot-and-shape",
    title=say("Arm slot and shape"),
    fields=arm_fields,
    example=EXAMPLE_ARM,
    work_out=work_out,
    common_cases=common_cases,
    groups=ARM_GROUPS,
    tools=("photo",),
)

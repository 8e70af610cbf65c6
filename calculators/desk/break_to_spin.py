"""The break-to-spin calculator: from what a pitch did to the active spin behind it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from calculators.coaching.found_spin import (
    SPEED_DOUBT,
    Mend,
    RateDoubt,
    Slip,
    mends,
    rate_doubts,
)
from calculators.desk.answers import Answer, Calculator, Fact, HowSure, Outcome, Shelf
from calculators.desk.break_to_spin_fields import (
    BREAK_GROUPS,
    EXAMPLE_BREAK,
    Typed,
    TypedBreak,
    break_fields,
    read_break,
)
from calculators.desk.break_to_spin_figure import movement_figure
from calculators.desk.break_to_spin_tables import counts_table, spins_table
from calculators.desk.break_to_spin_ways import TypedPath
from calculators.desk.fields import Problem, Values
from calculators.desk.measures import Measures
from calculators.desk.movement_tables import clock_words
from calculators.desk.movement_words import down_or_up, glove_or_arm_side
from calculators.physics.aim import OutOfReachError
from calculators.physics.inverse import FoundSpin, SpinNotFoundError
from calculators.physics.lift import STANDARD_LIFT
from calculators.physics.movement import Movement
from calculators.physics.spin import HOURS_TO_RADIANS, gyro_angle, other_hand_clock
from calculators.physics.units import DEGREE, INCH, RPM
from calculators.words import Message, number, say

LEAST_MOVEMENT = 1.5 * INCH
"""Less movement than this tells nothing about a clock (estimate)."""

BULLET_PUSH = 1.4 * INCH
"""How far pure bullet spin moves a ball as its path bends, one way or the other [m]."""

WRONG_SIDE = 3 * INCH
"""A drop that also moves so far to the arm side is rare enough to ask about the view (estimate)."""


@dataclass(frozen=True)
class Found:
    """The spin found for what was entered.

    moved: by spin alone, over the whole flight. doubt: of the active rate, as a share of it. share: active
    share, where all of the spin was measured. mends: slips that would explain a share that cannot be.
    """

    typed: Typed
    measures: Measures
    moved: Movement[float]
    spin: FoundSpin[float]
    doubts: tuple[RateDoubt, ...]
    mends: tuple[Mend, ...]

    @property
    def doubt(self) -> float:
        """How far the active spin may be off, as a share of it."""
        return math.hypot(*(each.share for each in self.doubts))

    @property
    def share(self) -> float | None:
        """Active share; above 1 where the numbers do not fit together; None where spin was not measured."""
        return None if self.typed.total is None else self.spin.rate / self.typed.total

    @property
    def impossible(self) -> bool:
        """Whether more active spin is asked for than was measured, beyond doubt."""
        return self.share is not None and self.share * (1 - min(self.doubt, 0.5)) > 1

    @property
    def clock(self) -> str:
        """The clock, as the pitcher sees it."""
        return clock_words(self.spin.clock)


def work_out(values: Values, _: Shelf) -> Outcome:
    """Return the spin behind the movement, or the problem that involves several fields."""
    typed = read_break(values)
    if isinstance(typed, tuple):
        return typed
    try:
        moved, spin = typed.behind()
    except (OutOfReachError, SpinNotFoundError):
        return _no_such_pitch(typed)
    measures = Measures("metric" if values["units"] == "metric" else "imperial")
    if moved.amount < LEAST_MOVEMENT:
        return _hardly_moved(measures)
    doubts = rate_doubts(spin, moved, typed.speed, typed.doubt)
    found = Found(typed, measures, moved, spin, doubts, ())
    if isinstance(typed, TypedBreak) and found.impossible and typed.total is not None:
        slips = mends(typed.counted, typed.how, typed.crossed, typed.total, typed.inches)
        found = replace(found, mends=slips)
    headline = _headline(found)
    counts = counts_table(typed) if isinstance(typed, TypedBreak) and not found.impossible else None
    return Answer(
        headline=headline,
        more=tuple(_more(found)),
        drawings=(movement_figure(moved, found.clock, typed.glove < 0, found.share, measures, headline),),
        facts=tuple(_facts(found)),
        tables=(counts,) if counts else (),
        how_sure=_how_sure(found),
        cannot_tell=(
            say("Which way the bullet spin turns. It leaves no trace in the movement."),
            say("How much the seams did. Their push is counted as spin here."),
        ),
        cautions=tuple(_cautions(found)),
        sources=("nathan-axis-note", "sawicki-2003", "nathan-2008", "cross-2011", "rulebook-ball"),
    )


def _no_such_pitch(typed: Typed) -> tuple[Problem, ...]:
    if isinstance(typed, TypedBreak):
        names: tuple[str, ...] = ("up", "side", "speed")
        message = say(
            "No pitch of that speed moves like this and crosses there. Check the movement, the speed and "
            "the distance."
        )
    else:
        names = ("angle_up", "angle_side", "aim", "cross_side")
        message = say(
            "No spin carries a ball from there to here. Check both directions out of the hand and where it "
            "crosses."
        )
    return tuple(Problem(name, message) for name in names)


def _hardly_moved(measures: Measures) -> Answer:
    return Answer(
        headline=say("Spin hardly moved this ball."),
        more=(
            say("It had little spin, or nearly all of it was bullet spin."),
            say(
                "Under {amount} of movement the clock means nothing, so none is given.",
                amount=measures.small(LEAST_MOVEMENT, 1),
            ),
        ),
        cannot_tell=(say("How much bullet spin it had. It leaves no trace in the movement."),),
        sources=("nathan-axis-note", "nathan-2008"),
    )


def _headline(found: Found) -> Message:
    rpm = _rpm(found.spin.rate)
    if found.impossible:
        return say(
            "These numbers do not fit. The movement asks for {rpm}, and {total} rpm were measured.",
            rpm=_active_spin(found),
            total=_rpm(found.typed.total or 0.0),
        )
    if found.share is None:
        if found.spin.capped:
            return say("This movement asks for more than {rpm} rpm of active spin.", rpm=rpm)
        return say("About {rpm} rpm of active spin, pushing to {clock}.", rpm=rpm, clock=found.clock)
    if found.share >= 1:
        return say("All of the spin moved this ball, pushing to {clock}.", clock=found.clock)
    return say(
        "{percent} percent of the spin moved this ball, pushing to {clock}.",
        percent=_percent(found.share),
        clock=found.clock,
    )


def _more(found: Found) -> Iterator[Message]:
    if isinstance(found.typed, TypedPath):
        yield found.typed.reads_as
    if found.impossible:
        yield from _mend_words(found)
        return
    if found.share is not None and found.share < 1:
        yield say(
            "{rpm} rpm of it was active. The rest was bullet spin, a gyro angle of {angle}°.",
            rpm=_rpm(found.spin.rate),
            angle=number(gyro_angle(found.share) / DEGREE),
        )
        yield say("Which way the bullet spin turned cannot be told.")
    elif found.share is None:
        yield say("Measure all of the spin, and the active share can be found.")
    yield from _view_words(found)


def _mend_words(found: Found) -> Iterator[Message]:
    reads: Mapping[Slip, Message] = {
        "centimeters": say("the movement was in centimeters"),
        "whole": say("the movement was counted over the whole flight"),
        "forty": say("the movement was counted over the last 40 feet"),
        "gravity": say("the drop was counted with gravity"),
    }
    for mend in found.mends:
        yield say(
            "They would fit if {slip}: then {percent} percent was active.",
            slip=reads[mend.slip],
            percent=_percent(mend.share),
        )
    if not found.mends:
        yield say(
            "No usual slip of units or counting explains it. Check the spin and the speed. Seams may also "
            "have moved the ball."
        )


def _view_words(found: Found) -> Iterator[Message]:
    """Ask about the view where a ball drops and moves to the arm side, as few breaking balls do."""
    glove = found.typed.glove * found.moved.across
    if found.moved.up < 0 and glove < -WRONG_SIDE:
        yield say(
            "A breaking ball that moves to the arm side is rare. If the side was read from the catcher's "
            "view, the clock is {clock}.",
            clock=clock_words(other_hand_clock(found.spin.clock)),
        )


def _facts(found: Found) -> Iterator[Fact]:
    measures = found.measures
    rate = found.spin.rate
    yield Fact(
        say("Active spin"),
        _active_spin(found),
        None if found.spin.capped else say("give or take {rpm} rpm", rpm=_rpm(found.doubt * rate)),
    )
    yield Fact(
        say("Clock"),
        say("{clock}", clock=found.clock),
        say("give or take {minutes} minutes", minutes=number(60 * _clock_doubt(found))),
    )
    if found.share is not None and not found.impossible:
        share = min(1.0, found.share)
        yield Fact(
            say("Active share"),
            say("{percent}%", percent=_percent(share)),
            say("give or take {points} points", points=_percent(found.doubt * share)),
        )
        yield Fact(
            say("Gyro angle"),
            say("{angle}°", angle=number(gyro_angle(share) / DEGREE)),
            note=say("the way it turns is not known"),
        )
    yield Fact(
        say("Movement by spin, whole flight"),
        down_or_up(found.moved.up, measures),
        note=glove_or_arm_side(found.typed.glove * found.moved.across, measures),
    )


def _how_sure(found: Found) -> HowSure:
    words = {
        "lift": say("how hard air pushes a spinning ball"),
        "movement": say(
            "the movement, {amount} either way", amount=found.measures.small(found.typed.doubt, 1)
        ),
        "speed": say("the speed, {speed} either way", speed=found.measures.speed(SPEED_DOUBT)),
    }
    sentence = say(
        "The active spin is good to about {percent} percent. The largest doubt is {cause}.",
        percent=_percent(found.doubt),
        cause=words[found.doubts[0].cause],
    )
    causes = tuple(
        say("{cause}: {percent} percent", cause=words[each.cause], percent=_percent(each.share))
        for each in found.doubts
    )
    sense = say(
        "The bullet spin is taken to turn like a thrown football. Turned the other way, the active share "
        "would be some points larger."
    )
    told = found.share is not None and not isinstance(found.typed, TypedPath)
    return HowSure(sentence, (*causes, sense) if told else causes)


def _cautions(found: Found) -> Iterator[Message]:
    if found.spin.capped:
        yield say("No ball with so much push has been measured. Check the numbers.")
    elif found.spin.beyond(STANDARD_LIFT):
        yield say(
            "Few measurements reach so far. Here a little more movement stands for a lot more spin, so do "
            "not trust the spin to the last hundred."
        )
    yield say("Never mix counts. Movement counted two ways differs by half and more for one pitch.")


def _active_spin(found: Found) -> Message:
    rpm = _rpm(found.spin.rate)
    return say("over {rpm} rpm", rpm=rpm) if found.spin.capped else say("{rpm} rpm", rpm=rpm)


def _clock_doubt(found: Found) -> float:
    """Return how far the movement's own doubt and the bullet spin's push turn the clock [hours]."""
    bullet = math.sqrt(max(0.0, 1 - (found.share or 1.0) ** 2)) * BULLET_PUSH
    return math.atan2(math.hypot(found.typed.doubt, bullet), found.moved.amount) / HOURS_TO_RADIANS


def _rpm(rate: float) -> str:
    return number(10 * round(rate / RPM / 10))


def _percent(share: float) -> str:
    return number(100 * share)


CALCULATOR = Calculator(
    name="break-to-spin",
    title=say("Break to spin"),
    fields=break_fields,
    example=EXAMPLE_BREAK,
    work_out=work_out,
    common_cases=lambda _: (spins_table(),),
    groups=BREAK_GROUPS,
)

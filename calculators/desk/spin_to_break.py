"""The spin-to-break calculator: from speed, spin, clock and active share to what the ball does."""

from __future__ import annotations

import math

from calculators.desk.answers import Answer, Calculator, Fact, HowSure, Outcome, Shelf
from calculators.desk.catcher_figure import catcher_view
from calculators.desk.drawing import Drawing
from calculators.desk.fields import Values
from calculators.desk.flight_figures import Track, side_view, top_view
from calculators.desk.measures import Measures
from calculators.desk.movement_tables import movement_tables
from calculators.desk.movement_words import (
    Moved,
    between_down_and_up,
    between_sides,
    down_or_up,
    glove_or_arm_side,
    movement_sentence,
)
from calculators.desk.pitch_fields import EXAMPLE_PITCH, PITCH_GROUPS, TypedPitch, pitch_fields, read_pitch
from calculators.physics.doubt import Cause, Effect, effects, together
from calculators.physics.flight import Flight, fly
from calculators.physics.lift import FITS_PART_AT, spread
from calculators.physics.movement import fall, movement, slant, speed, spinless, steepness
from calculators.physics.units import DEGREE, FOOT, RPM
from calculators.words import Message, number, say

CAUSES_SHOWN = 4
MOSTLY_BULLET = 0.4
YOUTH_MOUND = 51 * FOOT


def work_out(values: Values, _: Shelf) -> Outcome:
    """Return what the pitch does, or the problem that involves several fields."""
    pitch = read_pitch(values)
    if not isinstance(pitch, TypedPitch):
        return pitch
    measures = Measures("metric" if values["units"] == "metric" else "imperial")
    companion = fly(spinless(pitch.thrown.release), pitch.thrown.conditions)
    shift = movement(pitch.flight.end, companion.end)
    moved = Moved(pitch.glove * shift.across, shift.up)
    doubts = effects(pitch.thrown, pitch.doubts)
    return Answer(
        headline=movement_sentence(moved, measures),
        more=_more(pitch, companion, measures),
        drawings=_drawings(pitch, companion, measures),
        facts=_facts(pitch, companion, moved, doubts, measures),
        how_sure=_how_sure(pitch, moved, doubts, measures),
        cannot_tell=(
            say("How the seams sit. They can add or take away some inches."),
            say("Wind. This is still air."),
            say("How late or sharp the ball looks. The path itself is smooth."),
            say("How much spin is lost on the way. It is little."),
        ),
        cautions=_cautions(pitch),
        sources=(
            "sawicki-2003",
            "nathan-2008",
            "cross-2011",
            "standard-atmosphere-1976",
            "rulebook-ball",
            "rulebook-field",
        ),
    )


def _more(pitch: TypedPitch, companion: Flight[float], measures: Measures) -> tuple[Message, ...]:
    end = pitch.flight.end
    start_angle = steepness(pitch.flight.start) / DEGREE
    angle = number(abs(start_angle), 1)
    sentences = [
        say(
            "It gets to the plate in {seconds} seconds, at {speed}.",
            seconds=number(end.time, 2),
            speed=measures.speed(speed(end)),
        ),
        say(
            "It ends {fall} below the line it starts on. Without spin it would end {plain} below.",
            fall=measures.height(fall(pitch.flight)),
            plain=measures.height(fall(companion)),
        ),
        say("To cross there it starts {angle}° above level.", angle=angle)
        if start_angle >= 0
        else say("To cross there it starts {angle}° below level.", angle=angle),
    ]
    return tuple(sentences)


def _drawings(pitch: TypedPitch, companion: Flight[float], measures: Measures) -> tuple[Drawing, ...]:
    with_spin = Track(pitch.flight, say("with spin"))
    without = Track(companion, say("no spin"), "ghost", dashed=True)
    tracks = (without, with_spin)
    height = measures.small(with_spin.crossing[1])
    plain_height = measures.small(without.crossing[1])
    plain_aside = glove_or_arm_side(pitch.glove * without.crossing[0], measures, 0)
    right = pitch.glove > 0
    return (
        catcher_view(
            with_spin,
            without,
            pitch.zone,
            right,
            measures,
            say(
                "The pitch crosses {height} up, over the middle. The dashed ball without spin crosses "
                "{plain_height} up, {plain_aside}.",
                height=height,
                plain_height=plain_height,
                plain_aside=plain_aside,
            ),
        ),
        side_view(
            tracks,
            pitch.zone,
            say(
                "Both balls start on one line. With spin the ball crosses {height} up, "
                "without spin (dashed) {plain_height} up.",
                height=height,
                plain_height=plain_height,
            ),
        ),
        top_view(
            tracks,
            right,
            say(
                "Both balls start on one line. With spin the ball crosses over the middle, "
                "without spin (dashed) {plain_aside}.",
                plain_aside=plain_aside,
            ),
        ),
    )


def _facts(
    pitch: TypedPitch,
    companion: Flight[float],
    moved: Moved,
    doubts: tuple[Effect, ...],
    measures: Measures,
) -> tuple[Fact, ...]:
    end, glove = pitch.flight.end, pitch.glove

    def give_or_take(amount: Message) -> Message:
        return say("give or take {amount}", amount=amount)

    steep = steepness(end) / DEGREE
    aside = glove * slant(end) / DEGREE
    angle = number(abs(aside), 1)
    plain_x, _, plain_z = companion.end.position
    return (
        Fact(
            say("Up and down"),
            down_or_up(moved.up, measures),
            give_or_take(measures.small(together(each.up for each in doubts), 1)),
            say("by spin alone"),
        ),
        Fact(
            say("To the side"),
            glove_or_arm_side(moved.glove, measures),
            give_or_take(measures.small(together(each.across for each in doubts), 1)),
            say("by spin alone"),
        ),
        Fact(
            say("Total drop"),
            measures.height(fall(pitch.flight)),
            note=say("below the line it starts on, gravity included"),
        ),
        Fact(
            say("Flight time"),
            say("{seconds} s", seconds=number(end.time, 3)),
            give_or_take(say("{seconds} s", seconds=number(together(each.time for each in doubts), 3))),
        ),
        Fact(
            say("Speed at the plate"),
            measures.speed(speed(end), 1),
            give_or_take(measures.speed(together(each.speed for each in doubts), 1)),
        ),
        Fact(
            say("Steepness at the plate"),
            say("{angle}° down", angle=number(-steep, 1))
            if steep <= 0
            else say("{angle}° up", angle=number(steep, 1)),
        ),
        Fact(
            say("Sideways angle at the plate"),
            say("{angle}° toward the glove side", angle=angle)
            if aside >= 0
            else say("{angle}° toward the arm side", angle=angle),
        ),
        Fact(
            say("Crosses the plate"),
            say("{height} up, over the middle", height=measures.small(end.position[2])),
        ),
        Fact(
            say("Without spin it would cross"),
            say(
                "{height} up, {aside}",
                height=measures.small(plain_z),
                aside=glove_or_arm_side(glove * plain_x, measures, 0),
            ),
        ),
    )


def _how_sure(pitch: TypedPitch, moved: Moved, doubts: tuple[Effect, ...], measures: Measures) -> HowSure:
    up = together(each.up for each in doubts)
    across = together(each.across for each in doubts)
    sentence = say(
        "Most likely {up}, and {side}. What makes it unsure, largest first:",
        up=between_down_and_up(moved.up - up, moved.up + up, measures),
        side=between_sides(moved.glove - across, moved.glove + across, measures),
    )
    return HowSure(
        sentence,
        tuple(
            say("{cause}: {amount}", cause=_cause(each.cause, pitch), amount=measures.small(each.amount, 1))
            for each in doubts[:CAUSES_SHOWN]
        ),
    )


def _cause(cause: Cause, pitch: TypedPitch) -> Message:
    doubts = pitch.doubts
    percent = number(100 * spread(pitch.thrown.spin_ratio))
    words: dict[Cause, Message] = {
        "speed": say("The speed"),
        "spin rate": say("The spin rate, {rpm} rpm either way", rpm=number(doubts.rate / RPM)),
        "clock": say("The clock, {minutes} minutes either way", minutes=number(60 * doubts.clock)),
        "active share": say(
            "The active share, {points} points either way", points=number(100 * doubts.active)
        ),
        "air": say("The weather"),
        "ball": say("The ball, which may be lighter or larger within the rules"),
        "lift": say("How hard air pushes a spinning ball, {percent}% either way", percent=percent),
        "drag": say("How hard air slows the ball"),
    }
    return words[cause]


def _cautions(pitch: TypedPitch) -> tuple[Message, ...]:
    spin = pitch.thrown.spin
    found = []
    if pitch.mound < YOUTH_MOUND:
        found.append(
            say("From this distance most of the drop is slowness. Teach clean spin, not inches."),
        )
        found.append(
            say("To age 12 the joint US guideline asks for fastball and changeup only."),
        )
    if pitch.thrown.spin_ratio > FITS_PART_AT:
        found.append(say("This is a lot of spin for the speed. Few such pitches have been measured."))
    if spin.active < MOSTLY_BULLET and not math.isclose(spin.rate, 0.0):
        found.append(say("This is mostly bullet spin. The clock then tells little."))
    return tuple(found)


CALCULATOR = Calculator(
    name="spin-to-break",
    title=say("Spin to break"),
    fields=pitch_fields,
    example=EXAMPLE_PITCH,
    work_out=work_out,
    common_cases=lambda _: movement_tables(),
    groups=PITCH_GROUPS,
)

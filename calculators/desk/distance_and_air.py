"""The distance-and-air calculator: one pitch from every distance, in this town's air and at sea level."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from calculators.coaching.elsewhere import SamePitch, There, from_distance
from calculators.desk.answers import Answer, Calculator, Fact, FieldGroup, HowSure, Outcome, Shelf, Table
from calculators.desk.distance_and_air_figure import Distance, bars
from calculators.desk.distance_and_air_tables import air_table, flight_table
from calculators.desk.fields import Problem, Values
from calculators.desk.measures import Measures
from calculators.desk.mounds import mounds_of
from calculators.desk.pitch_fields import EXAMPLE_PITCH, TypedPitch, pitch_fields, read_pitch
from calculators.physics.aim import OutOfReachError
from calculators.physics.air import density_at
from calculators.physics.doubt import effects, together
from calculators.physics.units import FOOT, MPH
from calculators.physics.vectors import length
from calculators.words import Message, number, say

SEA_LEVEL_CELSIUS = 20.0
SEA_LEVEL_HUMIDITY = 0.5
SEA_LEVEL_AIR = density_at(0.0, SEA_LEVEL_CELSIUS, SEA_LEVEL_HUMIDITY)
"""Air at the sea on a mild day [kg/m3]."""


@dataclass(frozen=True)
class Compared:
    """The pitch as entered, and how it flies from every distance here and at sea level."""

    typed: TypedPitch
    measures: Measures
    here: tuple[There, ...]
    at_sea: tuple[There, ...]

    @property
    def own(self) -> int:
        """Which of the distances is the reader's own."""
        mounds = [there.mound for there in self.here]
        return min(range(len(mounds)), key=lambda i: abs(mounds[i] - self.typed.mound))

    @property
    def thinner(self) -> float:
        """How much thinner than at sea level this air is, as a share; below 0 where it is thicker."""
        return 1 - self.typed.thrown.conditions.density / SEA_LEVEL_AIR


def work_out(values: Values, shelf: Shelf) -> Outcome:
    """Return how the pitch flies from every distance, or the problems that involve several fields."""
    typed = read_pitch(values)
    if not isinstance(typed, TypedPitch):
        return typed
    position, spin = typed.thrown.position, typed.thrown.spin
    pitch = SamePitch(
        typed.mound - position[1],
        position[0],
        position[2],
        length(typed.thrown.velocity),
        spin,
        typed.flight.end.position[2],
    )
    conditions, mounds = typed.thrown.conditions, mounds_of(shelf)
    by_the_sea = replace(conditions, density=SEA_LEVEL_AIR)
    try:
        here = tuple(from_distance(pitch, mound * FOOT, conditions) for mound in mounds)
        at_sea = tuple(from_distance(pitch, mound * FOOT, by_the_sea) for mound in mounds)
    except OutOfReachError:
        message = say(
            "At {mph} mph the ball does not get to the plate from {feet} ft. Enter more speed.",
            mph=number(pitch.speed / MPH),
            feet=f"{mounds[-1]:g}",
        )
        return (Problem("speed", message),)
    measures = Measures("metric" if values["units"] == "metric" else "imperial")
    compared = Compared(typed, measures, here, at_sea)
    headline = _headline(compared)
    return Answer(
        headline=headline,
        more=tuple(_more(compared)),
        drawings=(bars(_distances(compared), measures, headline),),
        facts=tuple(_facts(compared)),
        tables=(
            flight_table(say("In this town's air"), here, typed.glove, measures),
            flight_table(say("At sea level, 68 °F, half humid"), at_sea, typed.glove, measures),
        ),
        how_sure=_how_sure(compared),
        cannot_tell=(
            say("Whether the pitcher throws as hard from another distance. Here the speed stays the same."),
            say("Wind, and how the seams sit."),
        ),
        cautions=(
            say("Never compare inches from two distances as if they were the same pitch."),
            say("A lower mound or a flat ground changes the release. Enter the height again."),
        ),
        sources=("standard-atmosphere-1976", "bahill-2009", "sawicki-2003", "nathan-2008", "rulebook-field"),
    )


def _headline(compared: Compared) -> Message:
    measures = compared.measures
    first, last = compared.here[0], compared.here[-1]
    return say(
        "Spin moves this pitch {short} from {near}, and {long} from {far}.",
        short=measures.spelled(first.moved.amount),
        near=measures.far(first.mound),
        long=measures.spelled(last.moved.amount),
        far=measures.far(last.mound),
    )


def _more(compared: Compared) -> Iterator[Message]:
    measures = compared.measures
    here, sea = compared.here[compared.own], compared.at_sea[compared.own]
    percent = number(abs(100 * compared.thinner))
    lost = sea.moved.amount - here.moved.amount
    if percent == "0":
        yield say("This town's air is as thick as at sea level.")
    elif compared.thinner > 0:
        yield say("This town's air is {percent} percent thinner than at sea level.", percent=percent)
    else:
        yield say("This town's air is {percent} percent thicker than at sea level.", percent=percent)
    mound, amount = measures.far(here.mound), measures.spelled(lost)
    if measures.whole(lost) == 0:
        yield say("From {mound} that is less than anybody can see.", mound=mound)
    elif lost > 0:
        yield say("From {mound} it takes {amount} off the movement.", mound=mound, amount=amount)
    else:
        yield say("From {mound} it adds {amount} to the movement.", mound=mound, amount=amount)


def _distances(compared: Compared) -> tuple[Distance, ...]:
    return tuple(
        Distance(here.mound, here.moved.amount, sea.moved.amount)
        for here, sea in zip(compared.here, compared.at_sea, strict=True)
    )


def _facts(compared: Compared) -> Iterator[Fact]:
    measures = compared.measures
    here, sea = compared.here[compared.own], compared.at_sea[compared.own]
    density = compared.typed.thrown.conditions.density
    yield Fact(
        say("This town's air"),
        say("{density} kg to the cubic meter", density=number(density, 3)),
        note=say("at sea level {density}", density=number(SEA_LEVEL_AIR, 3)),
    )
    yield Fact(
        say("Movement from your distance"),
        measures.small(here.moved.amount, 1),
        note=say("at sea level {amount}", amount=measures.small(sea.moved.amount, 1)),
    )
    yield Fact(
        say("Flight time from your distance"),
        say("{seconds} s", seconds=number(here.flight.end.time, 3)),
        note=say("at sea level {seconds} s", seconds=number(sea.flight.end.time, 3)),
    )


def _how_sure(compared: Compared) -> HowSure:
    measures, typed = compared.measures, compared.typed
    amount = measures.spelled(together(each.amount for each in effects(typed.thrown, typed.doubts)))
    sentence = say(
        "Each movement may be off by about {amount} from your distance. The differences between rows are "
        "surer than the rows: what is wrong with one is wrong with all.",
        amount=amount,
    )
    return HowSure(
        sentence,
        (
            say("Most of it: the numbers of the pitch, and how hard air pushes a spinning ball."),
            say("Altitude is most of the air. Weather adds a few percent, humidity almost nothing."),
            say("The pressure of a weather report is not used. It is reckoned down to the sea."),
        ),
    )


def common_cases(_: Shelf) -> tuple[Table, ...]:
    """Return how much of its sea-level movement a pitch keeps, by altitude and temperature."""
    return (air_table(SEA_LEVEL_AIR),)


CALCULATOR = Calculator(
    name="distance-and-air",
    title=say("Distance and air"),
    fields=pitch_fields,
    example={**EXAMPLE_PITCH, "altitude": "5200", "temperature": "80", "humidity": "30"},
    work_out=work_out,
    common_cases=common_cases,
    groups=(
        FieldGroup(say("This town's air"), ("altitude", "temperature", "humidity")),
        FieldGroup(
            say("Where it leaves the hand"),
            ("mound", "release_height", "release_side", "extension"),
            open=False,
        ),
        FieldGroup(say("Where it crosses the plate"), ("batter", "aim"), open=False),
        FieldGroup(say("How to answer"), ("measured", "units"), open=False),
    ),
)

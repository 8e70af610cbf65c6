"""Tables of one pitch elsewhere: by distance, and what altitude and temperature leave of its movement."""

from __future__ import annotations

from collections.abc import Sequence

from calculators.coaching.elsewhere import There
from calculators.desk.answers import Table
from calculators.desk.measures import Measures
from calculators.desk.movement_words import down_or_up, glove_or_arm_side
from calculators.physics.air import density_at
from calculators.physics.movement import fall, speed
from calculators.physics.units import FOOT, celsius
from calculators.words import Message, number, say

ALTITUDES = (0, 1000, 2000, 3000, 4000, 5000, 6000, 7000)
TEMPERATURES = (50, 70, 90)
PAPER_HUMIDITY = 0.5


def flight_table(caption: Message, places: Sequence[There], glove: int, measures: Measures) -> Table:
    """Return movement, total drop, time and speed at the plate for each distance."""
    rows = tuple(
        (
            measures.far(there.mound),
            down_or_up(there.moved.up, measures),
            glove_or_arm_side(glove * there.moved.across, measures),
            measures.height(fall(there.flight)),
            say("{seconds} s", seconds=number(there.flight.end.time, 3)),
            measures.speed(speed(there.flight.end)),
        )
        for there in places
    )
    heads = (
        say("Rubber to plate"),
        say("By spin, up or down"),
        say("By spin, to the side"),
        say("Total drop"),
        say("Flight time"),
        say("Speed at the plate"),
    )
    return Table(caption, heads, rows)


def air_table(sea_level: float) -> Table:
    """Return what is left of the movement at sea level, in percent; movement goes with the air's density."""
    rows = tuple(
        (
            say("{feet} ft", feet=number(altitude)),
            *(
                say(
                    "{percent}%",
                    percent=number(
                        100 * density_at(altitude * FOOT, celsius(degrees), PAPER_HUMIDITY) / sea_level
                    ),
                )
                for degrees in map(float, TEMPERATURES)
            ),
        )
        for altitude in ALTITUDES
    )
    heads = (say("Altitude"), *(say("{degrees} °F", degrees=str(degrees)) for degrees in TEMPERATURES))
    caption = say("What is left of the movement at sea level on a mild day, half humid")
    return Table(caption, heads, rows)

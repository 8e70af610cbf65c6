"""How the pitcher is today: pain is asked first, and an answer of yes ends every question of the loop."""

from __future__ import annotations

from dataclasses import replace
from typing import cast

from calculators.coaching.stop_rules import AS_PAIN, Day, sore_as_pain
from calculators.desk.answers import Answer, Shelf
from calculators.desk.fields import Choice, ChoiceField, Field, NumberField, Raw, Values
from calculators.desk.pitch_count_stop import STOP
from calculators.words import say

DAY_NAMES = ("tired", "soreness", "slept_badly", "game_yesterday")

EXAMPLE_DAY: Raw = {"pain": "no", "tired": "no", "soreness": "1", "slept_badly": "no", "game_yesterday": "no"}

SORENESS = NumberField(
    "soreness",
    say("Soreness, in the pitcher's own words"),
    "of 10",
    0,
    10,
    (0, 4),
    optional=True,
    help=say("0 is none. Ask about shoulder, elbow and forearm. Write the worst."),
)

_NO_OR_YES = (Choice("no", say("No")), Choice("yes", say("Yes")))


def pain_field(optional: bool = False) -> ChoiceField:
    """Return the question that comes before all others; left open, the answer says to ask it."""
    return ChoiceField(
        "pain",
        say("Any pain in elbow, shoulder or forearm, today or in the last 14 days?"),
        _NO_OR_YES,
        optional=optional,
        help=say("Ask the pitcher, and wait for the answer. Numb or tingling fingers count as yes."),
    )


def day_fields(optional: bool = False) -> tuple[Field, ...]:
    """Return the questions about the day, pain first.

    optional: for days gone by, of which nobody may know.
    """
    return (
        pain_field(optional),
        ChoiceField("tired", say("Says the arm is tired, or looks tired"), _NO_OR_YES, optional=optional),
        SORENESS,
        ChoiceField("slept_badly", say("Slept badly"), _NO_OR_YES, optional=optional),
        ChoiceField("game_yesterday", say("Pitched in a game yesterday"), _NO_OR_YES, optional=optional),
    )


def stop_at_pain(raw: Raw, shelf: Shelf) -> Answer | None:
    """Return the one answer to pain, whatever else is typed or missing; None where there is none.

    Soreness so high that it counts as pain gets the same answer, and why.
    """
    if raw.get("pain") == "yes":
        return STOP
    soreness = SORENESS.read(str(raw.get("soreness") or ""))
    if isinstance(soreness, float) and sore_as_pain(soreness):
        return replace(STOP, more=(AS_PAIN, *STOP.more))
    return None


def read_day(values: Values) -> Day:
    """Return the day as answered; a question that was not asked stays open."""

    def yes(name: str) -> bool | None:
        return values[name] == "yes" if values.get(name) else None

    return Day(
        yes("pain"),
        yes("tired"),
        cast("float | None", values.get("soreness")),
        yes("slept_badly"),
        yes("game_yesterday"),
    )

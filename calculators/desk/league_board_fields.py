"""What the league's board asks: rules, a day, two files, and which of their columns is which."""

from __future__ import annotations

from calculators.desk.answers import FieldGroup, Shelf
from calculators.desk.fields import Choice, ChoiceField, DateField, Field, TextField
from calculators.desk.files import FileField
from calculators.desk.rule_choice import UNVERIFIED, YES_OR_NO, rule_set_choices
from calculators.words import say
from calculators.workload.reading import OUTING_HEADS, ROSTER_HEADS

ROSTER_DEMO = "league-roster.csv"
OUTINGS_DEMO = "league-outings.csv"


def heading_field(file: str, head: str) -> str:
    """Return the name of the field that maps one of our heads in one of the files."""
    return f"{file}_{head.replace(' ', '_')}"


ROSTER_HEADINGS = tuple(heading_field("roster", head) for head in ROSTER_HEADS)
OUTING_HEADINGS = tuple(heading_field("outings", head) for head in OUTING_HEADS)

GROUPS = (
    FieldGroup(
        say("If the first row of your roster has other heads"), ROSTER_HEADINGS, open=False, paired=True
    ),
    FieldGroup(
        say("If the first row of your outings has other heads"), OUTING_HEADINGS, open=False, paired=True
    ),
    FieldGroup(say("Rules that nobody has checked"), ("unverified",), open=False),
)


def fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions; the shelf's rule sets fill the list to choose from."""
    return (
        ChoiceField(
            "rules",
            say("Rules to go by"),
            rule_set_choices(shelf),
            style="select",
            help=say("For everybody without rules of their own in the roster."),
        ),
        DateField("today", say("Who is eligible on")),
        ChoiceField(
            "beside",
            say("Set the joint guideline beside the rules?"),
            YES_OR_NO,
            optional=True,
            help=say("One more column, with the day it would name. It decides nothing."),
        ),
        FileField(
            "roster",
            say("Roster, a CSV file"),
            help=say(
                "One pitcher a row. Columns: pitcher, team, age. It is read on this device "
                "and sent nowhere. Until you choose one, a made-up league is shown."
            ),
        ),
        FileField(
            "outings",
            say("Outings, a CSV file"),
            help=say("One outing a row. Columns: pitcher, date, pitches; more are described below."),
        ),
        ChoiceField(
            "dates",
            say("How the files write dates"),
            (
                Choice("year first", say("2026-05-16")),
                Choice("month first", say("5/16/2026, month first")),
                Choice("day first", say("16/5/2026, day first")),
            ),
        ),
        *(
            TextField(heading_field(file, head), say(head), optional=False, private=False)
            for file, heads in (("roster", ROSTER_HEADS), ("outings", OUTING_HEADS))
            for head in heads
        ),
        UNVERIFIED,
    )

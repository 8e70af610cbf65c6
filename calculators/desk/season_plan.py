"""The season planner: build-up, a week with games and months off, as structure and ceilings."""

from __future__ import annotations

import datetime
from typing import cast

from calculators.desk.answers import Answer, Calculator, FieldGroup, Outcome, Shelf, Table
from calculators.desk.fields import Choice, ChoiceField, DateField, Field, NumberField, Problem, Raw, Values
from calculators.desk.pitch_count import whole
from calculators.desk.pitch_count_stop import STOP
from calculators.desk.pitch_count_words import WEEKDAYS
from calculators.desk.rule_choice import (
    JOINT_GUIDELINE,
    OUT_OF_REACH,
    UNVERIFIED,
    YES_OR_NO,
    is_in_reach,
    rule_choices,
    stricter_editions,
    why_unverified,
)
from calculators.desk.season_plan_answer import Plan, answer_for
from calculators.words import say
from calculators.workload.ages import NoGroupError, Pitcher, group_for
from calculators.workload.library import rule_set
from calculators.workload.rest import ONE_DAY
from calculators.workload.season import Season

MOST_DAYS = 330
"""A season longer than this leaves no month off."""

GAME_DAYS = ("game_day", "second_game_day", "third_game_day")
BUILD_UP = 8
"""Weeks of build-up where the reader gives none: a common practice, not a finding."""


def fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, pain first; the shelf's rule sets fill the list to choose from."""
    weekdays = tuple(Choice(str(number), name) for number, name in enumerate(WEEKDAYS))
    none = Choice("", say("none"))
    return (
        ChoiceField(
            "pain",
            say("Any pain in the pitcher's arm, or coming back from an arm injury?"),
            YES_OR_NO,
            help=say("A way back from pain or injury is planned by a clinician, not here."),
        ),
        ChoiceField("rules", say("Rules to go by"), rule_choices(shelf), style="select"),
        NumberField(
            "age",
            say("Age in the season"),
            "years",
            5,
            30,
            (7, 18),
            optional=True,
            help=say("As these rules count it. Not known: leave it blank, and the youngest group is used."),
        ),
        DateField("first", say("First game")),
        DateField("last", say("Last game")),
        ChoiceField("game_day", say("Game day"), weekdays, style="select"),
        ChoiceField(
            "second_game_day", say("Second game day"), (none, *weekdays), style="select", optional=True
        ),
        ChoiceField(
            "third_game_day", say("Third game day"), (none, *weekdays), style="select", optional=True
        ),
        NumberField(
            "build_up",
            say("Build-up before the first game"),
            "weeks",
            4,
            16,
            (6, 10),
            optional=True,
            help=say("Blank: {weeks} weeks.", weeks=str(BUILD_UP)),
        ),
        UNVERIFIED,
    )


def stop_at_pain(raw: Raw, shelf: Shelf) -> Answer | None:
    """Return the one answer to pain, whatever else is typed or missing; None where there is none."""
    return STOP if raw.get("pain") == "yes" else None


def work_out(values: Values, shelf: Shelf) -> Outcome:
    """Answer for one pitcher's season, or say what must be mended first."""
    if values["pain"] == "yes":
        return STOP
    first, last = cast(datetime.date, values["first"]), cast(datetime.date, values["last"])
    for name, day in (("first", first), ("last", last)):
        if not is_in_reach(day):
            return (Problem(name, OUT_OF_REACH),)
    if last < first:
        return (Problem("last", say("The last game is before the first. Correct one.")),)
    if last - first > MOST_DAYS * ONE_DAY:
        return (Problem("last", say("A season this long leaves no months off. End it sooner.")),)
    for name in ("age", "build_up"):
        number = values.get(name)
        if isinstance(number, float) and number != int(number):
            return (Problem(name, say("Enter a whole number.")),)
    slug, _, level = str(values["rules"]).partition(".")
    rules = rule_set(slug, shelf.rules)
    pitcher = Pitcher(age=whole(values["age"]), level=level or None)
    try:
        group = group_for(rules, pitcher, first)
    except NoGroupError as err:
        return (
            Problem(
                "age",
                say(
                    "{title} covers ages {lowest} to {highest}. Choose other rules, or ask the league.",
                    title=rules.title,
                    lowest=str(err.lowest),
                    highest=str(err.highest),
                ),
            ),
        )
    if rules.unverified(group.band) and values.get("unverified") != "yes":
        return (Problem("unverified", why_unverified(rules)),)
    season = Season(
        first,
        last,
        tuple(sorted({int(str(values[name])) for name in GAME_DAYS if values.get(name)})),
        whole(values.get("build_up")) or BUILD_UP,
    )
    joint = rule_set(JOINT_GUIDELINE, shelf.rules) if JOINT_GUIDELINE in shelf.rules else None
    return answer_for(Plan(season, rules, pitcher, joint, stricter_editions(rules, shelf)))


def common_cases(shelf: Shelf) -> tuple[Table, ...]:
    """Return nothing: the worked example says what there is to say without a reader's dates."""
    return ()


CALCULATOR = Calculator(
    name="season-plan",
    title=say("Season planner"),
    fields=fields,
    example={
        "pain": "no",
        "rules": JOINT_GUIDELINE,
        "age": "13",
        "first": "2026-04-11",
        "last": "2026-07-11",
        "game_day": "5",
        "second_game_day": "1",
        "build_up": "8",
    },
    work_out=work_out,
    common_cases=common_cases,
    groups=(
        FieldGroup(say("The pitcher and the rules"), ("rules", "age")),
        FieldGroup(say("The season"), ("first", "last", *GAME_DAYS, "build_up")),
        FieldGroup(say("Rules that nobody has checked"), ("unverified",), open=False),
    ),
    stops_first=stop_at_pain,
    tools=("print",),
)

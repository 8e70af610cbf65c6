"""The pitch count calculator: which day a pitcher may pitch again under a rule set, and why.

It asks about pain first. With pain there is one answer, to stop and see a clinician, and no date.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import cast

from calculators.desk.answers import Calculator, Outcome, Shelf, Table
from calculators.desk.fields import (
    Choice,
    ChoiceField,
    DateField,
    Field,
    NumberField,
    Problem,
    RowsField,
    Value,
    Values,
)
from calculators.desk.pitch_count_answer import answer_for
from calculators.desk.pitch_count_stop import STOP
from calculators.desk.pitch_count_tables import rest_table
from calculators.desk.pitch_count_words import day_words
from calculators.words import Message, say
from calculators.workload.ages import NoGroupError, Pitcher, group_for
from calculators.workload.library import rule_set, rule_sets
from calculators.workload.outings import Outing, OutingError
from calculators.workload.rules import RuleSet

JOINT_GUIDELINE = "usa-joint-2015"
"""The rule set shown first, printed on paper, and set beside every other one."""

YES_OR_NO = (Choice("no", say("No")), Choice("yes", say("Yes")))


def fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, pain first; the shelf's rule sets fill the list to choose from."""
    return (
        ChoiceField(
            "pain",
            say("Any pain in the pitcher's arm, or an arm more tired than usual?"),
            YES_OR_NO,
            help=say("Ask the pitcher. Ask about today and about the days since the last game."),
        ),
        ChoiceField("rules", say("Rules to go by"), _rule_choices(shelf), style="select"),
        NumberField(
            "age",
            say("Age"),
            "years",
            5,
            30,
            (7, 18),
            optional=True,
            help=say(
                "As these rules count it. Little League: the age on August 31. "
                "Not known: leave it blank, and the youngest group is used."
            ),
        ),
        DateField("today", say("Today's date")),
        RowsField(
            "outings",
            say("Games pitched"),
            (
                DateField("date", say("Date")),
                NumberField("pitches", say("Pitches"), "pitches", 0, 200, (10, 95), optional=True),
                NumberField(
                    "before",
                    say("Count when the last batter came up"),
                    "pitches",
                    0,
                    200,
                    (10, 95),
                    optional=True,
                ),
                NumberField("outs", say("Outs recorded"), "outs", 0, 60, (3, 21), optional=True),
                NumberField("caught", say("Innings caught"), "innings", 0, 20, (1, 7), optional=True),
            ),
            say("Add a game"),
            help=say(
                "Any order, every team. Leave the pitches blank if nobody knows them: "
                "that game then counts as the daily limit."
            ),
        ),
        NumberField(
            "tonight",
            say("Pitches so far in a game that is still going"),
            "pitches",
            0,
            200,
            (10, 95),
            optional=True,
        ),
        ChoiceField(
            "unverified",
            say("Use rules that nobody has checked at the source?"),
            YES_OR_NO,
            optional=True,
            help=say("Only needed for rules marked as not checked."),
        ),
    )


def work_out(values: Values, shelf: Shelf) -> Outcome:
    """Answer for one pitcher, or say what must be mended first."""
    if values["pain"] == "yes":
        return STOP
    slug, _, level = str(values["rules"]).partition(".")
    rules = rule_set(slug, shelf.rules)
    today = cast(datetime.date, values["today"])
    age = cast("float | None", values["age"])
    if age is not None and age != int(age):
        return (Problem("age", say("Enter the age in whole years.")),)
    pitcher = Pitcher(age=None if age is None else int(age), level=level or None)
    try:
        group = group_for(rules, pitcher, today)
    except NoGroupError as err:
        return (_outside(err, rules),)
    if rules.unverified(group.band) and values.get("unverified") != "yes":
        return (Problem("unverified", _why_unverified(rules)),)
    outings, problems = _outings(cast("tuple[Mapping[str, Value], ...]", values["outings"]), today)
    if problems:
        return problems
    tonight = cast("float | None", values["tonight"])
    joint = None
    if slug != JOINT_GUIDELINE and JOINT_GUIDELINE in shelf.rules:
        joint = rule_set(JOINT_GUIDELINE, shelf.rules)
    return answer_for(rules, pitcher, outings, today, None if tonight is None else int(tonight), joint)


def common_cases(shelf: Shelf) -> tuple[Table, ...]:
    """Return the rest table of the joint guideline, for paper and for a page without the calculator."""
    if JOINT_GUIDELINE not in shelf.rules:
        return ()
    return (rest_table(rule_set(JOINT_GUIDELINE, shelf.rules)),)


def _rule_choices(shelf: Shelf) -> tuple[Choice, ...]:
    sets = sorted(
        rule_sets(shelf.rules).values(), key=lambda rules: (rules.slug != JOINT_GUIDELINE, rules.title)
    )
    return tuple(choice for rules in sets for choice in _choices_of(rules))


def _choices_of(rules: RuleSet) -> tuple[Choice, ...]:
    """Return one choice a rule set, or one a level where it goes by level."""
    if not rules.by_level or len(rules.bands) == 1:
        return (Choice(rules.slug, _marked(rules, rules.title, rules.unverified(rules.bands[0]))),)
    return tuple(
        Choice(
            f"{rules.slug}.{band.level}",
            _marked(rules, f"{rules.title}, {band.label}", rules.unverified(band)),
        )
        for band in rules.bands
    )


def _marked(rules: RuleSet, title: str, unverified: bool) -> Message:
    if unverified:
        return say("{title} (not checked)", title=title)
    return say("{title}", title=title)


def _outside(err: NoGroupError, rules: RuleSet) -> Problem:
    if err.lowest is None:
        return Problem("rules", say("Choose one of the levels of these rules."))
    return Problem(
        "age",
        say(
            "{title} covers ages {lowest} to {highest}. Choose other rules, or ask the league.",
            title=rules.title,
            lowest=str(err.lowest),
            highest=str(err.highest),
        ),
    )


def _why_unverified(rules: RuleSet) -> Message:
    mend = say("Ask the league, or choose Yes here to see them anyway.")
    if rules.doubt is not None:
        return say("{doubt} {mend}", doubt=say(rules.doubt), mend=mend)
    if rules.status == "from memory":
        return say("These rules are written from memory, not read at the source. {mend}", mend=mend)
    return say("A part of these rules was not found. {mend}", mend=mend)


def _outings(
    rows: tuple[Mapping[str, Value], ...], today: datetime.date
) -> tuple[tuple[Outing, ...], tuple[Problem, ...]]:
    outings: list[Outing] = []
    problems: list[Problem] = []
    for row in rows:
        date = cast(datetime.date, row["date"])
        day = day_words(date, today)
        if date > today:
            message = say("{day} is after today. Correct this date or today's.", day=day)
            problems.append(Problem("outings", message))
            continue
        try:
            outings.append(
                Outing(
                    date=date,
                    pitches=_whole(row["pitches"]),
                    before_last_batter=_whole(row["before"]),
                    outs=_whole(row["outs"]),
                    innings_caught=_whole(row["caught"]),
                )
            )
        except OutingError:
            message = say(
                "{day}: the count when the last batter came up is more than the pitches. Correct one.",
                day=day,
            )
            problems.append(Problem("outings", message))
    return tuple(outings), tuple(problems)


def _whole(value: Value) -> int | None:
    return int(value) if isinstance(value, float) else None


CALCULATOR = Calculator(
    name="pitch-count",
    title=say("Pitch count and rest"),
    fields=fields,
    example={
        "pain": "no",
        "rules": JOINT_GUIDELINE,
        "age": "12",
        "today": "2026-05-16",
        "outings": ({"date": "2026-05-16", "pitches": "66"},),
    },
    work_out=work_out,
    common_cases=common_cases,
)

"""The pitch count calculator: which day a pitcher may pitch again under a rule set, and why.

It asks about pain first. With pain there is one answer, to stop and see a clinician, and no date.
"""

from __future__ import annotations

import contextlib
import datetime
from collections.abc import Mapping, Sequence
from typing import cast

from calculators.desk.answers import Answer, Calculator, FieldGroup, Outcome, Shelf, Table
from calculators.desk.fields import (
    Choice,
    ChoiceField,
    DateField,
    Field,
    NumberField,
    Problem,
    Raw,
    RowsField,
    TextField,
    Value,
    Values,
)
from calculators.desk.pitch_count_answer import Question, answer_for
from calculators.desk.pitch_count_stop import STOP
from calculators.desk.pitch_count_tables import rest_table
from calculators.desk.pitch_count_words import day_words
from calculators.desk.rule_choice import (
    JOINT_GUIDELINE,
    OUT_OF_REACH,
    UNVERIFIED,
    YES_OR_NO,
    binding_rules,
    is_in_reach,
    rule_choices,
    stricter_editions,
    why_unverified,
)
from calculators.words import say
from calculators.workload.ages import NoGroupError, Pitcher, group_for
from calculators.workload.library import rule_set
from calculators.workload.outings import Outing, OutingError
from calculators.workload.rules import RuleSet


def fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, pain first; the shelf's rule sets fill the list to choose from."""
    choices = rule_choices(shelf)
    return (
        ChoiceField(
            "pain",
            say("Any pain in the pitcher's arm, or an arm more tired than usual?"),
            YES_OR_NO,
            help=say("Ask the pitcher. Ask about today and about the days since the last game."),
        ),
        TextField(
            "nickname",
            say("Nickname"),
            help=say("A nickname or a number, never a full name. It stays on this device."),
        ),
        ChoiceField("rules", say("Rules to go by"), choices, style="select"),
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
        ChoiceField(
            "also",
            say("Rules of a second team"),
            (Choice("", say("No second team")), *choices),
            style="select",
            optional=True,
            help=say("Both rule sets are applied to every game, and the later day wins."),
        ),
        NumberField(
            "also_age",
            say("Age as the second rules count it"),
            "years",
            5,
            30,
            (7, 18),
            optional=True,
            help=say("Blank: the same age."),
        ),
        RowsField(
            "outings",
            say("Games pitched"),
            (
                DateField("date", say("Date")),
                NumberField(
                    "pitches",
                    say("Thrown in the game"),
                    "pitches",
                    0,
                    200,
                    (10, 95),
                    optional=True,
                    taps=(-1, 1, 10),
                ),
                NumberField(
                    "breaking",
                    say("Breaking balls among them"),
                    "pitches",
                    0,
                    200,
                    (0, 20),
                    optional=True,
                ),
                NumberField(
                    "before",
                    say("Count when the last batter came up"),
                    "pitches",
                    0,
                    200,
                    (10, 95),
                    optional=True,
                ),
                NumberField("outs", say("Recorded"), "outs", 0, 60, (3, 21), optional=True),
                NumberField("caught", say("At catcher"), "innings", 0, 20, (1, 7), optional=True),
            ),
            say("Add a game"),
            help=say(
                "Any order, every team. Leave the pitches blank if nobody knows them: "
                "that game then counts as the daily limit. Write 0 if the player only caught."
            ),
        ),
        NumberField(
            "tonight",
            say("Thrown so far in a game that is still going"),
            "pitches",
            0,
            200,
            (10, 95),
            optional=True,
        ),
        NumberField(
            "tonight_before",
            say("Count when the last batter came up"),
            "pitches",
            0,
            200,
            (10, 95),
            optional=True,
            help=say("The counter above fills in both."),
        ),
        UNVERIFIED,
    )


def stop_at_pain(raw: Raw, shelf: Shelf) -> Answer | None:
    """Return the one answer to pain, whatever else is typed or missing; None where there is none."""
    return STOP if raw.get("pain") == "yes" else None


def work_out(values: Values, shelf: Shelf) -> Outcome:
    """Answer for one pitcher, or say what must be mended first."""
    if values["pain"] == "yes":
        return STOP
    today = cast(datetime.date, values["today"])
    if not is_in_reach(today):
        return (Problem("today", OUT_OF_REACH),)
    age, problems = _whole_years(values, "age")
    also_age, more_problems = _whole_years(values, "also_age")
    if problems or more_problems:
        return problems + more_problems
    rulings: list[tuple[RuleSet, Pitcher]] = []
    for name, years in (("rules", age), ("also", age if also_age is None else also_age)):
        if values.get(name):
            ruling = _ruling(str(values[name]), years, today, values, shelf, name)
            if isinstance(ruling, Problem):
                return (ruling,)
            rulings.append(ruling)
    outings, problems = _outings(cast("tuple[Mapping[str, Value], ...]", values["outings"]), today)
    thrown, to_last = whole(values["tonight"]), whole(values.get("tonight_before"))
    if thrown is not None and to_last is not None and to_last > thrown:
        message = say("This is more than the pitches so far. Correct one.")
        problems = (*problems, Problem("tonight_before", message))
    if problems:
        return problems
    slugs = [rules.slug for rules, _ in rulings]
    beside = JOINT_GUIDELINE in shelf.rules and JOINT_GUIDELINE not in slugs
    joint = rule_set(JOINT_GUIDELINE, shelf.rules) if beside else None
    return answer_for(
        Question(
            rulings=tuple(rulings),
            outings=outings,
            today=today,
            thrown=thrown,
            to_last=to_last,
            editions=_editions(rulings, today, shelf),
            joint=() if joint is None else (joint, *stricter_editions(joint, shelf)),
            joint_age=age,
            nickname=str(values.get("nickname") or ""),
        )
    )


def common_cases(shelf: Shelf) -> tuple[Table, ...]:
    """Return the rest tables of what binds and of the joint guideline, for paper and without the calculator."""
    slugs = dict.fromkeys((binding_rules(shelf), JOINT_GUIDELINE))
    return tuple(rest_table(rule_set(slug, shelf.rules)) for slug in slugs if slug in shelf.rules)


def _whole_years(values: Values, name: str) -> tuple[int | None, tuple[Problem, ...]]:
    age = values.get(name)
    if isinstance(age, float) and age != int(age):
        return None, (Problem(name, say("Enter the age in whole years.")),)
    return whole(age), ()


def _ruling(
    chosen: str, age: int | None, today: datetime.date, values: Values, shelf: Shelf, field: str
) -> tuple[RuleSet, Pitcher] | Problem:
    """Return a chosen rule set with the pitcher as it sees them, or why it cannot be gone by."""
    slug, _, level = chosen.partition(".")
    rules = rule_set(slug, shelf.rules)
    pitcher = Pitcher(age=age, level=level or None)
    try:
        group = group_for(rules, pitcher, today)
    except NoGroupError as err:
        return _outside(err, rules, field, values)
    if rules.unverified(group.band) and values.get("unverified") != "yes":
        return Problem("unverified", why_unverified(rules))
    return rules, pitcher


def _editions(
    rulings: Sequence[tuple[RuleSet, Pitcher]], today: datetime.date, shelf: Shelf
) -> tuple[tuple[RuleSet, Pitcher], ...]:
    """Return the stricter editions of the rule sets that hold, where they have a group for the pitcher."""
    found = []
    for rules, pitcher in rulings:
        for edition in stricter_editions(rules, shelf):
            with contextlib.suppress(NoGroupError):
                group_for(edition, pitcher, today)
                found.append((edition, pitcher))
    return tuple(found)


def _outside(err: NoGroupError, rules: RuleSet, field: str, values: Values) -> Problem:
    if err.lowest is None:
        return Problem(field, say("Choose one of the levels of these rules."))
    return Problem(
        "also_age" if field == "also" and values.get("also_age") is not None else "age",
        say(
            "{title} covers ages {lowest} to {highest}. Choose other rules, or ask the league.",
            title=rules.title,
            lowest=str(err.lowest),
            highest=str(err.highest),
        ),
    )


def _outings(
    rows: tuple[Mapping[str, Value], ...], today: datetime.date
) -> tuple[tuple[Outing, ...], tuple[Problem, ...]]:
    outings: list[Outing] = []
    problems: list[Problem] = []
    for row in rows:
        date = cast(datetime.date, row["date"])
        day = day_words(date, today)
        if not is_in_reach(date):
            problems.append(Problem("outings", say("{day}: {mend}", day=day, mend=OUT_OF_REACH)))
            continue
        if date > today:
            message = say("{day} is after today. Correct this date or today's.", day=day)
            problems.append(Problem("outings", message))
            continue
        caught, pitches = whole(row["caught"]), whole(row["pitches"])
        if caught and pitches is None and not whole(row["outs"]):
            message = say("{day}: did the catcher pitch too? Write the pitches, or 0 if not.", day=day)
            problems.append(Problem("outings", message))
            continue
        try:
            outings.append(
                Outing(
                    date=date,
                    pitches=pitches,
                    before_last_batter=whole(row["before"]),
                    outs=whole(row["outs"]),
                    innings_caught=caught,
                    breaking=whole(row["breaking"]),
                )
            )
        except OutingError as err:
            message = say(
                "{day}: the count when the last batter came up is more than the pitches. Correct one.",
                day=day,
            )
            if err.field == "breaking":
                message = say("{day}: more breaking balls than pitches. Correct one.", day=day)
            problems.append(Problem("outings", message))
    return tuple(outings), tuple(problems)


def whole(value: object) -> int | None:
    """Return a number that was typed as a whole one, None where there is none."""
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
    groups=(
        FieldGroup(say("The pitcher"), ("nickname", "rules", "age", "today")),
        FieldGroup(say("A second team"), ("also", "also_age"), open=False),
        FieldGroup(say("Games that are over"), ("outings",)),
        FieldGroup(say("A game still going, typed in"), ("tonight", "tonight_before"), open=False),
        FieldGroup(say("Rules that nobody has checked"), ("unverified",), open=False),
    ),
    stops_first=stop_at_pain,
    tools=("log", "counter"),
)

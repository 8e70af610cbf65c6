"""The league's board: from a roster and a list of outings to who is eligible on a day, team by team."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from typing import cast

from calculators.desk.answers import Answer, Calculator, Fact, HowSure, Outcome, Shelf, Table
from calculators.desk.fields import Problem, Values
from calculators.desk.files import EXAMPLE
from calculators.desk.league_board_fields import GROUPS, fields
from calculators.desk.league_board_files import files_of
from calculators.desk.league_board_reading import Asked, read_files, rules_in_use
from calculators.desk.league_board_tables import League, broken_table, mend_tables, team_sheets, titled
from calculators.desk.pitch_count_answer import CAUTIONS
from calculators.desk.pitch_count_words import day_words, plain_day
from calculators.desk.rule_choice import (
    JOINT_GUIDELINE,
    OUT_OF_REACH,
    is_in_reach,
    rule_maker,
    stricter_editions,
    why_unverified,
)
from calculators.desk.rule_doubts import how_read
from calculators.words import Message, say, say_count
from calculators.workload.board import board
from calculators.workload.cells import key_of
from calculators.workload.library import rule_sets
from calculators.workload.reading import OutingsFile, RosterFile
from calculators.workload.rules import RuleSet

CANNOT_TELL = (
    say("Whether anyone is fit to pitch. Ask every pitcher about pain before every game."),
    say("Anything about outings that are not in the file, such as other leagues or lessons."),
    say("Whether two names are one arm. Use one name for one arm in both files."),
)


def work_out(values: Values, shelf: Shelf) -> Outcome:
    """Answer for a whole league, or say what must be mended or chosen first."""
    today = cast(datetime.date, values["today"])
    if not is_in_reach(today):
        return (Problem("today", OUT_OF_REACH),)
    every = rule_sets(shelf.rules)
    rules = every[str(values["rules"])]
    try:
        roster, outings = read_files(values, shelf.demo, rules, every)
    except Asked as asked:
        return (asked.problem,)
    unverified = values.get("unverified") == "yes"
    in_use = rules_in_use(roster, rules, every)
    for one in in_use:
        if not unverified and one.unchecked:
            return (Problem("unverified", why_unverified(one)),)
    alone = all(one.slug == JOINT_GUIDELINE for one in in_use)
    beside = every.get(JOINT_GUIDELINE) if values.get("beside") == "yes" and not alone else None
    found = board(
        rules,
        roster.pitchers,
        outings.outings,
        today,
        unverified,
        roster.in_pain,
        _own_rules(roster, rules, every),
        beside,
        {one.slug: edition for one in every.values() for edition in stricter_editions(one, shelf)},
    )
    league = League(found, roster, outings, _teams(roster, outings), beside)
    return _answer(league, made_up=values["roster"] == EXAMPLE)


def common_cases(shelf: Shelf) -> tuple[Table, ...]:
    """Return nothing: what a league needs cannot be worked out beforehand."""
    return ()


def _own_rules(
    roster: RosterFile, rules: RuleSet, every: Mapping[str, RuleSet]
) -> dict[str, tuple[RuleSet, ...]]:
    """Return the rules of each pitcher who has some of their own; none where a row's cannot be read."""
    own = {
        name: tuple(every[slug] if slug else rules for slug in slugs)
        for name, slugs in roster.rules.items()
        if slugs != ("",)
    }
    return own | dict.fromkeys(roster.rules_unclear, ())


def _teams(roster: RosterFile, outings: OutingsFile) -> dict[str, tuple[str, ...]]:
    """Return every pitcher's teams: those of the roster, then others named with an outing."""
    teams = {}
    for name in roster.pitchers:
        by_key = {key_of(team): team for team in roster.teams[name]}
        for outing in outings.outings.get(name, ()):
            if outing.team:
                by_key.setdefault(key_of(outing.team), outing.team)
        teams[name] = tuple(by_key.values())
    return teams


def _answer(league: League, made_up: bool) -> Answer:
    rules, rows = league.board.rules, league.board.rows
    return Answer(
        headline=say_count(
            "On {day}, {eligible} of {count} pitcher is eligible under {title}.",
            "On {day}, {eligible} of {count} pitchers are eligible under {title}.",
            len(rows),
            day=day_words(league.board.day, league.board.day),
            eligible=str(sum(row.eligible for row in rows)),
            title=say("the rules named for each") if league.several else say("{title}", title=rules[0].title),
        ),
        more=(
            *((say("This league is made up. Choose your own two files above."),) if made_up else ()),
            say("Eligible means that no rule read here forbids it. It does not mean fit to pitch."),
            *_counted(league),
            say("The files below hold children's data. Look after them."),
        ),
        files=files_of(league),
        facts=_facts(league),
        tables=(*mend_tables(league), *broken_table(league), *team_sheets(league)),
        how_sure=_how_sure(rules),
        cannot_tell=CANNOT_TELL,
        cautions=CAUTIONS,
        sources=tuple(dict.fromkeys(one.source for one in (*rules, *_listed(league.beside)))),
    )


def _counted(league: League) -> tuple[Message, ...]:
    refused = len(league.roster.refused) + len(league.outings.refused)
    if not refused:
        return (say("Every row of both files was used."),)
    return (
        say_count(
            "{count} row was not used. It stands first below, with what to do.",
            "{count} rows were not used. They stand first below, with what to do.",
            refused,
        ),
    )


def _facts(league: League) -> tuple[Fact, ...]:
    roster, outings = league.roster, league.outings
    unread = (*roster.unused_heads, *outings.unused_heads)
    return (
        Fact(
            say("Rows of the roster"),
            say("{rows}", rows=str(roster.rows)),
            note=say(
                "{pitchers} pitchers, {joined} joined to one of them, {refused} not used",
                pitchers=str(len(roster.pitchers)),
                joined=str(roster.joined),
                refused=str(len(roster.refused)),
            ),
        ),
        Fact(
            say("Rows of the outings"),
            say("{rows}", rows=str(outings.rows)),
            note=say(
                "{used} used, {refused} not used", used=str(outings.used), refused=str(len(outings.refused))
            ),
        ),
        *((Fact(say("Columns not read"), say("{heads}", heads=_some(unread))),) if unread else ()),
        *(fact for rules in league.board.rules for fact in _about(rules)),
    )


def _about(rules: RuleSet) -> tuple[Fact, ...]:
    return (
        Fact(say("Rules"), say("{title}", title=rules.title)),
        Fact(say("Edition"), say(rules.edition)),
        Fact(say("Last checked"), plain_day(rules.last_checked)),
        rule_maker(rules),
    )


def _listed(beside: RuleSet | None) -> tuple[RuleSet, ...]:
    return (beside,) if beside else ()


def _some(heads: tuple[str, ...], most: int = 12) -> str:
    named = ", ".join(head or "–" for head in heads[:most])
    return named if len(heads) <= most else f"{named}, \u2026 ({len(heads)})"


def _how_sure(every: Sequence[RuleSet]) -> HowSure:
    """Return how the least well read of the rule sets was read, and every doubt there is."""
    doubts = (
        titled(say(doubt), rules, several=len(every) > 1)
        for rules in every
        for doubt in (*((rules.doubt,) if rules.doubt else ()), *rules.notes)
    )
    return HowSure(how_read(every), tuple(doubts))


CALCULATOR = Calculator(
    name="league-board",
    title=say("League board"),
    fields=fields,
    example={
        "rules": JOINT_GUIDELINE,
        "today": "2026-05-16",
        "roster": EXAMPLE,
        "outings": EXAMPLE,
        "dates": "year first",
    },
    work_out=work_out,
    common_cases=common_cases,
    groups=GROUPS,
    tools=("print",),
)

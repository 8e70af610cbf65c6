"""Reads the two files of the league's board and asks where something in them is not clear. It never guesses."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import cast

from calculators.desk.fields import Problem, Values
from calculators.desk.files import EXAMPLE
from calculators.desk.league_board_fields import OUTINGS_DEMO, ROSTER_DEMO, heading_field
from calculators.words import Message, say
from calculators.workload.cells import DateOrder, is_short_date, key_of
from calculators.workload.reading import (
    NO_COLUMN,
    OUTING_HEADS,
    ROSTER_HEADS,
    OutingsFile,
    RosterFile,
    RowNote,
    read_outings,
    read_roster,
)
from calculators.workload.rules import RuleSet
from calculators.workload.tables import MissingHeadError, TableError

MOST_OFFERED = 12
"""Of a file with more heads than this, only the first are offered to be tapped; any may be typed."""


class Asked(Exception):  # noqa: N818 -- a question to the reader, not an error of ours
    """Something must be chosen before the files can be read."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.field)
        self.problem = problem


def read_files(
    values: Values, demo: Mapping[str, str], rules: RuleSet, shelf: Mapping[str, RuleSet]
) -> tuple[RosterFile, OutingsFile]:
    """Read roster and outings; raises Asked with the question to the reader.

    demo: the made-up files, which stand in until the reader chooses two.
    rules: for everybody without rules of their own. shelf: the rule sets a roster may name, by slug.
    """
    roster_data, outings_data = _bytes(values, "roster", demo), _bytes(values, "outings", demo)
    dates = cast(DateOrder, values["dates"])
    try:
        roster = read_roster(roster_data, _headings(values, "roster", ROSTER_HEADS), dates, _names(shelf))
    except TableError as err:
        raise Asked(_about("roster", err, ROSTER_HEADS)) from err
    in_use = rules_in_use(roster, rules, shelf)
    for one in in_use:
        _ask_for_ages(roster, values, one)
    try:
        outings = read_outings(
            outings_data, roster.pitchers, _headings(values, "outings", OUTING_HEADS), dates
        )
    except TableError as err:
        raise Asked(_about("outings", err, OUTING_HEADS)) from err
    for one in in_use:
        _ask_for_counts(outings, values, one)
    if dates == "year first":
        _ask_for_order((*roster.notes, *outings.refused))
    return roster, outings


def rules_in_use(roster: RosterFile, rules: RuleSet, shelf: Mapping[str, RuleSet]) -> tuple[RuleSet, ...]:
    """Return every rule set that somebody on the roster is under."""
    slugs = dict.fromkeys(slug or rules.slug for of_one in roster.rules.values() for slug in of_one)
    return tuple(shelf[slug] for slug in slugs)


def _names(shelf: Mapping[str, RuleSet]) -> dict[str, str]:
    """Return what a roster may call each rule set: its title or its short name."""
    return {key_of(name): rules.slug for rules in shelf.values() for name in (rules.title, rules.slug)}


def _bytes(values: Values, file: str, demo: Mapping[str, str]) -> bytes:
    """Return a file's bytes; a made-up file never goes with one of the reader's own."""
    other = "outings" if file == "roster" else "roster"
    if values[file] != EXAMPLE:
        return cast(bytes, values[file])
    if values[other] != EXAMPLE:
        raise Asked(Problem(file, say("Choose your own file here too. The one in use is made up.")))
    return demo[ROSTER_DEMO if file == "roster" else OUTINGS_DEMO].encode()


def _headings(values: Values, file: str, heads: Iterable[str]) -> dict[str, str]:
    typed = ((head, values.get(heading_field(file, head))) for head in heads)
    return {head: str(theirs) for head, theirs in typed if theirs}


def _about(file: str, err: TableError, ours: tuple[str, ...]) -> Problem:
    if not isinstance(err, MissingHeadError):
        return Problem(file, err.said)
    said = say("{missing} Which one is it? Tap its head, or type it.", missing=err.said)
    return Problem(heading_field(file, err.column), said, offers=_offers(err.heads, ours))


def _offers(heads: Iterable[str], ours: tuple[str, ...], *more: str) -> tuple[str, ...]:
    """Return the heads that may be meant: those that are none of ours."""
    others = [head for head in heads if head and head not in ours]
    return (*others[:MOST_OFFERED], *more)


def _ask_for_ages(roster: RosterFile, values: Values, rules: RuleSet) -> None:
    """Ask which column tells the age, where none does; `NO_COLUMN` says that there is none."""
    wanted = ("level",) if rules.by_level else ("age", "born")
    if len(rules.bands) == 1 or any(head in roster.heads for head in wanted):
        return
    field = heading_field("roster", wanted[0])
    if values.get(field) == NO_COLUMN:
        return
    said = say(
        "No column tells the {what}. Tap the head of the one that does. Tap - if there is none: "
        "then everybody counts as the youngest group.",
        what=wanted[0],
    )
    raise Asked(Problem(field, said, offers=_offers(roster.heads, ROSTER_HEADS, NO_COLUMN)))


def _ask_for_counts(outings: OutingsFile, values: Values, rules: RuleSet) -> None:
    """Ask which column holds what the rules count, where none does."""
    field = heading_field("outings", rules.counts)
    if rules.counts in outings.heads or values.get(field) == NO_COLUMN:
        return
    said = say(
        "No column holds the {what}. Tap the head of the one that does. Tap - if there is none: "
        "then every game counts as the daily limit.",
        what=rules.counts,
    )
    raise Asked(Problem(field, said, offers=_offers(outings.heads, OUTING_HEADS, NO_COLUMN)))


def _ask_for_order(notes: Iterable[RowNote]) -> None:
    """Ask what comes first in a date such as 5/6/2026, where one stands in a file."""
    for note in notes:
        if note.trouble == "not a date" and is_short_date(note.entered):
            raise Asked(Problem("dates", _order_words(note)))


def _order_words(note: RowNote) -> Message:
    return say(
        'Row {row} says "{entered}". Does the month or the day come first? Choose it here, for both files.',
        row=str(note.row),
        entered=note.entered,
    )

"""The league's board as tables: one sheet a team, the rules that were broken, and the rows to mend."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from calculators.desk.answers import NOTHING, Table
from calculators.desk.league_board_words import (
    beside_words,
    joined,
    row_note_words,
    rule_quoted,
    state_words,
    total_words,
    what_happened,
)
from calculators.desk.pitch_count_words import day_words, flag_lines, reason_words, short_day
from calculators.words import Message, say, say_count
from calculators.workload.board import Board, BoardRow, Standing
from calculators.workload.flags import VIOLATIONS, Flag
from calculators.workload.reading import OutingsFile, RosterFile, RowNote
from calculators.workload.rules import RuleSet

MOST_SHOWN = 200
"""Longer lists are shown this far on the page; the file that goes with them holds all."""


UNLISTED = VIOLATIONS | {"several teams"}
"""Flags that a pitcher's row does not spell out: broken rules have a list, and other teams a line."""


@dataclass(frozen=True)
class League:
    """A board with the files it was worked out from and the teams of each pitcher.

    beside: the rules set beside everybody's own, None for none.
    """

    board: Board
    roster: RosterFile
    outings: OutingsFile
    teams: Mapping[str, tuple[str, ...]]
    beside: RuleSet | None = None

    @property
    def several(self) -> bool:
        """True where not everybody is under the same rules."""
        return len(self.board.rules) > 1

    @property
    def broken(self) -> list[tuple[BoardRow, Standing, Flag]]:
        """Every rule that was broken, the latest day first."""
        found = [
            (row, standing, flag)
            for row in self.board.rows
            for standing in row.standings
            for flag in standing.flags
            if flag.kind in VIOLATIONS
        ]
        return sorted(found, key=lambda one: one[2].date or datetime.date.min, reverse=True)


def team_sheets(league: League) -> tuple[Table, ...]:
    """Return one sheet a team, in the order of the roster; an arm on two teams stands on both."""
    sheets: dict[str, list[BoardRow]] = {}
    for row in league.board.rows:
        for team in league.teams.get(row.name) or ("",):
            sheets.setdefault(team, []).append(row)
    return tuple(_sheet(league, team, rows) for team, rows in sheets.items())


def broken_table(league: League) -> tuple[Table, ...]:
    """Return the rules that were broken, with the rule in our words."""
    broken = league.broken
    if not broken:
        return ()
    caption = say_count(
        "{count} rule broken, latest first. Tell the league.",
        "{count} rules broken, latest first. Tell the league.",
        len(broken),
    )
    return (
        Table(
            caption=_cut(caption, len(broken)),
            heads=(say("Day"), say("Pitcher"), say("What happened"), say("The rule")),
            rows=tuple(
                (
                    short_day(flag.date) if flag.date else NOTHING,
                    say("{name}", name=row.name),
                    what_happened(flag, standing.rules),
                    titled(rule_quoted(flag, standing.rules), standing.rules, league.several),
                )
                for row, standing, flag in broken[:MOST_SHOWN]
            ),
            stacked=True,
        ),
    )


def mend_tables(league: League) -> tuple[Table, ...]:
    """Return the rows that were not used, and those that were and need a look."""
    refused = notes_of(league.roster.refused, league.outings.refused)
    noted = notes_of(league.roster.notes, league.outings.notes)
    tables = []
    if refused:
        caption = say_count(
            "{count} row not used, to be mended in your file",
            "{count} rows not used, to be mended in your files",
            len(refused),
        )
        tables.append(_notes(_cut(caption, len(refused)), refused))
    if noted:
        caption = say_count(
            "{count} row used, but look at it", "{count} rows used, but look at them", len(noted)
        )
        tables.append(_notes(_cut(caption, len(noted)), noted))
    return tuple(tables)


def notes_of(roster: Sequence[RowNote], outings: Sequence[RowNote]) -> tuple[tuple[Message, RowNote], ...]:
    """Return notes with the file they are about."""
    return (
        *((say("Roster"), note) for note in roster),
        *((say("Outings"), note) for note in outings),
    )


def look_at(league: League, row: BoardRow, team: str | None = None) -> list[Message]:
    """Return what to look at twice about one pitcher; `team` is the one whose sheet it stands on."""
    every = [(standing.rules, flag) for standing in row.standings for flag in standing.flags]
    found = []
    broken = sum(flag.kind in VIOLATIONS for _, flag in every)
    if broken:
        found.append(
            say_count("{count} rule broken, see that list.", "{count} rules broken, see that list.", broken)
        )
    unsettled = [(rules, flag) for rules, flag in every if flag.kind not in UNLISTED]
    found += flag_lines(unsettled, league.board.day)
    found += _not_read(league, row)
    slugs = {standing.rules.slug for standing in row.standings}
    if any(standing.rules.stricter_edition in slugs for standing in row.standings):
        found.append(say("Two editions of these rules differ. The later day is kept."))
    others = [other for other in league.teams.get(row.name, ()) if other != team]
    if team is not None and others:
        found.append(say("Pitches for {teams} too; all of it counts.", teams=", ".join(others)))
    if row.set_aside:
        found.append(
            say_count(
                "{count} outing after this day is not used.",
                "{count} outings after this day are not used.",
                row.set_aside,
            )
        )
    return found


def _not_read(league: League, row: BoardRow) -> list[Message]:
    """Return that rows of the outings could not be read and belong to this pitcher."""
    found = []
    written = league.outings.outings.get(row.name, ())
    if any(outing.unsure and outing.date <= league.board.day for outing in written):
        found.append(say("A row of this pitcher could not be read: counted as the daily limit."))
    if row.name in league.outings.left_out:
        found.append(say("A row of this pitcher was not used: its date could not be read."))
    return found


def _sheet(league: League, team: str, rows: Sequence[BoardRow]) -> Table:
    board = league.board
    day = day_words(board.day, board.day)
    title = (
        say("the rules named for each pitcher")
        if league.several
        else say("{title}", title=board.rules[0].title)
    )
    beside = (say("Joint guideline"),) if league.beside else ()
    return Table(
        caption=say(
            "{team}: {day}, under {title}. Eligible does not mean fit.", team=team, day=day, title=title
        )
        if team
        else say("{day}, under {title}. Eligible does not mean fit.", day=day, title=title),
        heads=(
            say("Pitcher"),
            say("Group"),
            say("Under these rules"),
            *beside,
            say("Why"),
            say("Pitches in 7 and 28 days"),
            say("Look at"),
        ),
        rows=tuple(
            (
                say("{name}", name=row.name),
                group_words(row, league.several),
                state_words(row),
                *((beside_words(row),) if beside else ()),
                joined(why(league, row)),
                say("{week}; {month}", week=total_words(row.last_7), month=total_words(row.last_28)),
                joined(look_at(league, row, team)),
            )
            for row in rows
        ),
        sheet=True,
    )


def why(league: League, row: BoardRow) -> list[Message]:
    """Return every reason that stands in a pitcher's way, with its rules where there are several."""
    several = len(row.standings) > 1
    said = []
    for standing in row.standings:
        reasons = [reason_words(reason, standing.rules, league.board.day) for reason in standing.reasons]
        if standing.outs_unknown:
            reasons.append(say("The outs of this week have a limit, and some are not known. Ask first."))
        if reasons:
            said += [titled(reasons[0], standing.rules, several), *reasons[1:]]
    return said


def group_words(row: BoardRow, several: bool) -> Message:
    """Return the pitcher's group, or why there is none; with the rules where there are several."""
    if row.in_pain:
        return NOTHING
    if not row.standings:
        return say("rules not known")
    groups = []
    for one in row.standings:
        group = say(one.group) if one.group else say("no group in these rules")
        groups.append(say("{title}: {words}.", title=one.rules.title, words=group) if several else group)
    return joined(groups)


def titled(words: Message, rules: RuleSet, several: bool) -> Message:
    """Return words with the rules they go by, where there are several."""
    return say("{title}: {words}", title=rules.title, words=words) if several else words


def _notes(caption: Message, notes: Sequence[tuple[Message, RowNote]]) -> Table:
    return Table(
        caption=caption,
        heads=(say("File"), say("What to do")),
        rows=tuple((file, row_note_words(note)) for file, note in notes[:MOST_SHOWN]),
    )


def _cut(caption: Message, length: int) -> Message:
    if length <= MOST_SHOWN:
        return caption
    return say("{caption} (the first {shown}; the file holds all)", caption=caption, shown=str(MOST_SHOWN))

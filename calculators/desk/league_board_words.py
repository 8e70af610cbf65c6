"""The words of the league's board: where a pitcher stands, which rule was broken, what is wrong in a file."""

from __future__ import annotations

from collections.abc import Sequence

from calculators.desk.answers import NOTHING
from calculators.desk.pitch_count_words import (
    MAY_HAVE_FINISHED,
    amount,
    rest_words,
    short_day,
    window_words,
)
from calculators.words import Message, say, say_count
from calculators.workload.board import BoardRow, Standing
from calculators.workload.cells import Trouble
from calculators.workload.flags import Flag
from calculators.workload.reading import RowNote
from calculators.workload.reasons import Reason
from calculators.workload.rules import RuleSet
from calculators.workload.totals import Total

TROUBLES: dict[Trouble, Message] = {
    "no name": say("There is no name. Write one."),
    "name twice": say("This name stands on the roster already. Tell the two apart."),
    "on two teams": say("Named for two teams: both count as one arm. If they are two, give two names."),
    "not on the roster": say("This name is not on the roster. Correct it, or add it to the roster."),
    "not a date": say("Write the date as year-month-day, like 2026-05-16."),
    "not a whole number": say("Use digits only, without decimals."),
    "out of range": say("This number is too large. Check it."),
    "more cells than heads": say("The row has more cells than the first row. Look for a stray comma."),
    "more before the last batter than pitches": say("This is more than the pitches. Correct one."),
    "more breaking balls than pitches": say("This is more than the pitches. Correct one."),
    "written twice": say("This game is written twice. Delete one if it was one game."),
    "not yes or no": say("Write yes or no, or leave it blank."),
    "rules not known": say("No rules here have this name. Copy one from the list of rules."),
    "pain not told": say("Write yes or no. Until then it counts as pain."),
    "no age": say("There is no age, so the youngest group is used."),
    "no count": say("There is no count, so the game counts as the daily limit."),
    "caught, no count": say(
        "There is no count, so the game counts as the daily limit. Write 0 pitches for whoever only caught."
    ),
    "two counts": say("Same game twice with two counts: the larger counts. Delete the wrong one."),
    "two ages": say("There is an age and a birth date. The birth date is used."),
}


def mend_words(note: RowNote) -> Message:
    """Return what to do about one row of a file."""
    if note.as_limit:
        return say("{mend} Until then the game counts as the daily limit.", mend=TROUBLES[note.trouble])
    return TROUBLES[note.trouble]


def row_note_words(note: RowNote) -> Message:
    """Return what is wrong with one row of a file, with its row, column and mend."""
    if note.entered:
        return say(
            'Row {row}, column "{column}", "{entered}": {mend}',
            row=str(note.row),
            column=note.column,
            entered=note.entered,
            mend=mend_words(note),
        )
    return say(
        'Row {row}, column "{column}": {mend}',
        row=str(note.row),
        column=note.column,
        mend=mend_words(note),
    )


def state_words(row: BoardRow) -> Message:
    """Return where a pitcher stands on the board's day, with a sign for whoever runs down the column."""
    if row.in_pain:
        return say("\u2715 stop: pain. See a clinician")
    if row.ask_league:
        return say("? ask the league")
    if not row.eligible:
        if row.first_day is None:
            return say("\u2715 not yet")
        return say("\u2715 not before {day}", day=short_day(row.first_day))
    most = most_words(row.standings)
    return (
        say("\u25cb eligible, at most {most}", most=most) if most else say("\u25cb eligible, no daily limit")
    )


def most_words(standings: Sequence[Standing]) -> Message | None:
    """Return the lowest ceiling of that day, in each unit that is counted; None where there is none."""
    limits = [(one.rules.counts, one.most) for one in standings if one.most is not None]
    limits += [("outs", one.outs) for one in standings if one.outs is not None]
    lowest = [
        amount(min(most for counted, most in limits if counted == unit), unit)
        for unit in dict.fromkeys(unit for unit, _ in limits)
    ]
    if not lowest:
        return None
    return lowest[0] if len(lowest) == 1 else say("{first} and {second}", first=lowest[0], second=lowest[1])


def beside_words(row: BoardRow) -> Message:
    """Return what the rules set beside say of a pitcher, against the day of the pitcher's own rules."""
    beside, own = row.beside, row.first_day
    if beside is None or row.ask_league:
        return NOTHING
    if beside.ask_league or beside.first_day is None or own is None:
        return say("? not settled")
    if beside.first_day == own:
        return say("the same day")
    day = short_day(beside.first_day)
    return say("later: {day}", day=day) if beside.first_day > own else say("earlier: {day}", day=day)


def what_happened(flag: Flag, rules: RuleSet) -> Message:
    """Return what broke a rule, in a few words."""
    reason = flag.reason
    if flag.kind in {"over the daily limit", "past the rest table"}:
        return say("{count} that day", count=amount(flag.counted, rules.counts))
    if flag.kind == "second game":
        return say_count("{count} game that day", "{count} games that day", flag.counted)
    if reason is None:
        return say("pitched too soon")
    if reason.rule == "rest":
        return say(
            "pitched again after {count} on {day}",
            count=amount(reason.counted, rules.counts),
            day=short_day(reason.because),
        )
    if reason.rule == "days running":
        return say("pitched on day {number} in a row", number=str(reason.counted + 1))
    if reason.rule == "several days" and reason.cap is not None:
        return say(
            "{count} {window}",
            count=amount(reason.counted, reason.cap.unit),
            window=window_words(reason.cap),
        )
    return say("pitched again that day")


def rule_quoted(flag: Flag, rules: RuleSet) -> Message:
    """Return the rule that was broken, in our words."""
    if flag.kind == "over the daily limit":
        limit = say("At most {limit} in a day.", limit=amount(flag.limit or 0, rules.counts))
        return say("{limit} {mend}", limit=limit, mend=MAY_HAVE_FINISHED) if flag.may_have_finished else limit
    if flag.kind == "past the rest table":
        return say("The rest table stops at {limit}. The league decides.", limit=str(flag.limit))
    if flag.kind == "second game":
        return _second_game(rules, flag.limit)
    return _reason_quoted(flag.reason, rules) if flag.reason else say("A rule forbade that day.")


def _reason_quoted(reason: Reason, rules: RuleSet) -> Message:
    if reason.rule == "rest":
        return say(
            "{count} in a day owe {rest}: not before {until}.",
            count=amount(reason.counted, rules.counts),
            rest=rest_words(rules, reason.rest.rest if reason.rest else 0),
            until=short_day(reason.until),
        )
    if reason.rule == "days running":
        return say_count("At most {count} day in a row.", "At most {count} days in a row.", reason.limit or 0)
    if reason.rule == "several days" and reason.cap is not None:
        return say(
            "At most {limit} {window}.",
            limit=amount(reason.cap.most, reason.cap.unit),
            window=window_words(reason.cap),
        )
    return _second_game(rules, reason.limit)


def _second_game(rules: RuleSet, first_most: int | None) -> Message:
    if first_most is not None:
        return say(
            "A second game in a day only after at most {limit} in the first.",
            limit=amount(first_most, rules.counts),
        )
    if rules.kind == "guideline":
        return say("The guideline advises against a second game in a day.")
    return say("No second game in a day, as far as these rules were read.")


def total_words(total: Total) -> Message:
    """Return a sum of pitches with what is missing from it."""
    if not total.missing:
        return say("{known}", known=str(total.known))
    return say("{known} and {missing} not known", known=str(total.known), missing=str(total.missing))


def joined(parts: Sequence[Message]) -> Message:
    """Return sentences one after the other; a dash for none."""
    if not parts:
        return NOTHING
    whole = parts[0]
    for part in parts[1:]:
        whole = say("{first} {second}", first=whole, second=part)
    return whole

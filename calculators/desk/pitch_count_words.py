"""The words for days, amounts, rules and flags of the pitch count calculator."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from functools import lru_cache

from calculators.words import Message, say, say_count
from calculators.workload.flags import Flag
from calculators.workload.reasons import Reason
from calculators.workload.rules import Cap, RuleSet

WEEKDAYS = (
    say("Monday"),
    say("Tuesday"),
    say("Wednesday"),
    say("Thursday"),
    say("Friday"),
    say("Saturday"),
    say("Sunday"),
)
SHORT_WEEKDAYS = (say("Mon"), say("Tue"), say("Wed"), say("Thu"), say("Fri"), say("Sat"), say("Sun"))
SHORT_MONTHS = (
    say("Jan"),
    say("Feb"),
    say("Mar"),
    say("Apr"),
    say("May"),
    say("Jun"),
    say("Jul"),
    say("Aug"),
    say("Sep"),
    say("Oct"),
    say("Nov"),
    say("Dec"),
)
MONTHS = (
    say("January"),
    say("February"),
    say("March"),
    say("April"),
    say("May"),
    say("June"),
    say("July"),
    say("August"),
    say("September"),
    say("October"),
    say("November"),
    say("December"),
)


MAY_HAVE_FINISHED = say("Or, if the last batter was only finished, write the count when that batter came up.")
"""What to do about a count over a daily limit that may be passed to finish a batter."""


@lru_cache(maxsize=1 << 12)
def day_words(date: datetime.date, today: datetime.date) -> Message:
    """Return a date as "Thursday, May 21", with the year where it is not this year's."""
    weekday, month = WEEKDAYS[date.weekday()], MONTHS[date.month - 1]
    if date.year == today.year:
        return say("{weekday}, {month} {day}", weekday=weekday, month=month, day=str(date.day))
    return say(
        "{weekday}, {month} {day}, {year}",
        weekday=weekday,
        month=month,
        day=str(date.day),
        year=str(date.year),
    )


@lru_cache(maxsize=1 << 12)
def short_weekday(date: datetime.date) -> Message:
    """Return a weekday in as few letters as a narrow column takes, as "Thu"."""
    return SHORT_WEEKDAYS[date.weekday()]


@lru_cache(maxsize=1 << 12)
def short_day(date: datetime.date) -> Message:
    """Return a day of a table, as "Thu, May 21"."""
    weekday, month = SHORT_WEEKDAYS[date.weekday()], SHORT_MONTHS[date.month - 1]
    return say("{weekday}, {month} {day}", weekday=weekday, month=month, day=str(date.day))


def plain_day(date: datetime.date) -> Message:
    """Return a date without its weekday, as "May 21, 2026"."""
    month = MONTHS[date.month - 1]
    return say("{month} {day}, {year}", month=month, day=str(date.day), year=str(date.year))


@lru_cache(maxsize=1 << 12)
def amount(count: int, unit: str) -> Message:
    """Return a count with its unit: pitches, outs or appearances."""
    if unit == "outs":
        return say_count("{count} out", "{count} outs", count)
    if unit == "appearances":
        return say_count("{count} appearance", "{count} appearances", count)
    return say_count("{count} pitch", "{count} pitches", count)


def rest_words(rules: RuleSet, rest: int) -> Message:
    """Return rest in the rule set's days or nights."""
    if rules.rest_unit == "nights":
        return say_count("{count} night of rest", "{count} nights of rest", rest)
    return say_count("{count} day of rest", "{count} days of rest", rest)


def reason_words(reason: Reason, rules: RuleSet, today: datetime.date) -> Message:
    """Return one rule that stood in the way, as a sentence with its numbers."""
    day = day_words(reason.because, today)
    if reason.rule == "rest":
        return _rest_reason(reason, rules, day, day_words(reason.until, today))
    if reason.rule == "days running":
        return say_count(
            "Pitched {count} day in a row, up to {day}. The rules allow no more in a row.",
            "Pitched {count} days in a row, up to {day}. The rules allow no more in a row.",
            reason.counted,
            day=day,
        )
    if reason.rule == "several days" and reason.cap is not None:
        return say(
            "{used} so far {window}. The limit is {limit}.",
            used=amount(reason.counted, reason.cap.unit),
            window=window_words(reason.cap),
            limit=str(reason.cap.most),
        )
    if reason.rule == "caught":
        return say(
            "Caught {innings} on {day}. From {limit} innings on, a catcher may not pitch that day.",
            innings=say_count("{count} inning", "{count} innings", reason.counted),
            day=day,
            limit=str(reason.limit),
        )
    if reason.rule == "daily limit":
        return say(
            "The daily limit of {limit} is reached on {day}.",
            limit=amount(reason.limit or 0, rules.counts),
            day=day,
        )
    return _second_game(reason, rules, day)


def short_reason(reason: Reason) -> Message:
    """Return one rule in a few words, for a table."""
    if reason.rule == "rest":
        return say("rest owed")
    if reason.rule == "days running":
        return say_count("{count} day in a row", "{count} days in a row", reason.counted)
    if reason.rule == "several days":
        return say("limit over several days")
    if reason.rule == "caught":
        return say("caught that day")
    if reason.rule == "daily limit":
        return say("daily limit reached")
    return say("already pitched that day")


def window_words(cap: Cap) -> Message:
    """Return the time a limit over several days covers."""
    if cap.window == "rolling":
        return say_count("in {count} day", "in {count} days", cap.days)
    return say("in the week from {weekday}", weekday=WEEKDAYS[cap.week_starts])


def flag_words(flag: Flag, rules: RuleSet, today: datetime.date) -> Message:
    """Return what to look at twice, as a sentence that says what to do."""
    unit = rules.counts
    day = day_words(flag.date, today) if flag.date else say("the log")
    if flag.kind == "over the daily limit":
        said = say(
            "{day}: {count} is over the daily limit of {limit}. Tell the league.",
            day=day,
            count=amount(flag.counted, unit),
            limit=str(flag.limit),
        )
        return say("{said} {mend}", said=said, mend=MAY_HAVE_FINISHED) if flag.may_have_finished else said
    if flag.kind == "finished the batter":
        return say(
            "{day}: {count}. Past the limit of {limit} only to finish the batter, which the rules allow.",
            day=day,
            count=amount(flag.counted, unit),
            limit=str(flag.limit),
        )
    if flag.kind == "past the rest table":
        return say(
            "{day}: the rest table stops at {limit}. Ask the league before this pitcher pitches again.",
            day=day,
            limit=amount(flag.limit or 0, unit),
        )
    if flag.kind == "over a limit of several days" and flag.reason and flag.reason.cap:
        return say(
            "{day}: {count} {window} is over the limit of {limit}. Tell the league.",
            day=day,
            count=amount(flag.counted, flag.reason.cap.unit),
            window=window_words(flag.reason.cap),
            limit=str(flag.limit),
        )
    if flag.kind == "limit not checked":
        return say(
            "{day}: the limit of {limit} was not checked, because a number is missing. "
            "Add it, or ask the league before this pitcher pitches again.",
            day=day,
            limit=amount(flag.limit or 0, flag.name),
        )
    if flag.kind == "too soon" and flag.reason is not None:
        return say(
            "{day}: pitched when a rule forbade it ({reason}). Tell the league.",
            day=day,
            reason=short_reason(flag.reason),
        )
    if flag.kind == "second game":
        return say("{day}: more than one outing on a day. Check that the rules allow it.", day=day)
    if flag.kind == "caught and pitched":
        return say(
            "{day}: pitched {count} and caught. From {limit} on there is no catching after that. "
            "Check which came first.",
            day=day,
            count=amount(flag.counted, unit),
            limit=str(flag.limit),
        )
    if flag.kind == "pitched and caught":
        return say(
            "{day}: caught {innings} and pitched. From {limit} innings at catcher on there is no pitching after "
            "that. Check which came first.",
            day=day,
            innings=say_count("{count} inning", "{count} innings", flag.counted),
            limit=str(flag.limit),
        )
    if flag.kind == "two counts":
        return say(
            "{day}: same game twice with two counts: the larger counts. Delete the wrong one.", day=day
        )
    if flag.kind == "unknown count" and unit == "outs":
        return say(
            "{day}: the outs are not known. They count as {count}. Ask the scorer.",
            day=day,
            count=amount(flag.counted, unit),
        )
    if flag.kind == "unknown count":
        return say(
            "{day}: the count is not known. It counts as {count}. Ask the scorer.",
            day=day,
            count=amount(flag.counted, unit),
        )
    if flag.kind == "unknown age":
        return say("No age given, so the youngest group is used: {group}.", group=say(flag.name))
    if flag.kind == "duplicate":
        return say(
            "{day}: the same outing is written {times} times, and each counts. Delete it if it was one game.",
            day=day,
            times=str(flag.counted),
        )
    if flag.kind == "after today":
        return say("{day} is after today. Check the date.", day=day)
    if flag.kind == "several teams":
        return say("Outings for several teams count together. The arm does not know the difference.")
    return _unconfirmed(flag.name)


def flag_lines(flags: Sequence[tuple[RuleSet, Flag]], today: datetime.date) -> list[Message]:
    """Return what to look at twice, each once; with its rules where several of them say it differently."""
    said: dict[tuple[str, datetime.date | None], dict[str, list[Message]]] = {}
    for rules, flag in flags:
        by_rules = said.setdefault((flag.kind, flag.date), {})
        by_rules.setdefault(rules.title, []).append(flag_words(flag, rules, today))
    found: list[Message] = []
    for by_rules in said.values():
        first, *others = by_rules.values()
        for title, lines in by_rules.items():
            alike = all(other == first for other in others)
            named = lines if alike else [say("{title}: {words}", title=title, words=words) for words in lines]
            found += [line for line in named if line not in found]
    return found


def _rest_reason(reason: Reason, rules: RuleSet, day: Message, until: Message) -> Message:
    owed = rest_words(rules, reason.rest.rest if reason.rest else 0)
    if reason.rest is not None and reason.rest.beyond_table:
        return say(
            "{count} on {day}: past the end of the rest table. This page counts at least {rest}.",
            count=amount(reason.counted, rules.counts),
            day=day,
            rest=owed,
        )
    sentence = say(
        "{count} on {day}: {rest} owed, so not before {until}.",
        count=amount(reason.counted, rules.counts),
        day=day,
        rest=owed,
        until=until,
    )
    if reason.thrown is not None and not rules.threshold_relief:
        return say(
            "{sentence} {total} were thrown. Those past the limit only finished the batter, which the rules allow.",
            sentence=sentence,
            total=str(reason.thrown),
        )
    if reason.thrown is not None:
        return say(
            "{sentence} {total} were thrown, but the rest goes by the first pitch to the last batter.",
            sentence=sentence,
            total=str(reason.thrown),
        )
    return sentence


def _second_game(reason: Reason, rules: RuleSet, day: Message) -> Message:
    if reason.second_game == "barred":
        return say("Pitched on {day} already. The rules forbid a second game that day.", day=day)
    if reason.second_game == "advised against":
        return say("Pitched on {day} already. The guideline advises against a second game.", day=day)
    if reason.second_game == "after a small first game":
        return say(
            "{count} on {day} already. A second game that day is allowed only up to {limit}.",
            count=amount(reason.counted, rules.counts),
            day=day,
            limit=str(reason.limit),
        )
    return say(
        "Pitched on {day} already. The rules as read do not settle a second game, so this page says no.",
        day=day,
    )


def _unconfirmed(limit: str) -> Message:
    if limit == "most_days_running":
        return say("The rule on days in a row is not confirmed for this age. It is applied to be strict.")
    if limit == "second_game":
        return say("The line on a second game is not confirmed for this age. It is applied to be strict.")
    if limit == "year_innings":
        return say("The advice on innings in a year is not confirmed for this age.")
    if limit == "months_off":
        return say("The advice on months off is not confirmed for this age.")
    if limit == "catching":
        return say("The catcher rule is not confirmed for this age.")
    return say("One limit of this group is not confirmed. It is applied to be strict.")

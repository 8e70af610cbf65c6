"""Throws judged by eye, without any device: tapped in groups that looked alike, and what they add up to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import cast

from calculators.coaching.intervals import wilson
from calculators.desk.answers import Answer, Fact, HowSure, Shelf, Table
from calculators.desk.fields import Choice, ChoiceField, NumberField, RowsField, Value
from calculators.words import Message, number, say, say_count

HALF = 0.5
FEWEST = 5

NOT_SEEN = say("Not seen")
_LINES: Mapping[str, Message] = {
    "": NOT_SEEN,
    "straight": say("On line, then down"),
    "glove": say("To the glove side"),
    "arm": say("Drifts to the arm side"),
}
_HUMPS: Mapping[str, Message] = {
    "": NOT_SEEN,
    "none": say("None"),
    "small": say("Small"),
    "big": say("Big, climbs out of the hand"),
}
_DOTS: Mapping[str, Message] = {
    "": NOT_SEEN,
    "no": say("No, a tumbling blur"),
    "yes": say("Yes, a dot on the front"),
}
_ENDS: Mapping[str, Message] = {
    "": NOT_SEEN,
    "strike": say("Strike"),
    "low": say("Ball, low"),
    "high": say("Ball, high"),
    "glove": say("Ball, glove side"),
    "arm": say("Ball, arm side"),
    "dirt": say("In the dirt"),
}


def eye_field() -> RowsField:
    """Return the table of breaking balls judged by eye."""
    return RowsField(
        "eye",
        say("Or by eye: breaking balls that looked alike"),
        (
            NumberField("throws", say("How many"), "throws", 1, 60, (1, 10), taps=(-1, 1)),
            _choice("line", say("Line"), _LINES),
            _choice("hump", say("Hump"), _HUMPS),
            _choice("dot", say("Dot"), _DOTS),
            _choice("end", say("Where it ended"), _ENDS),
        ),
        say("Add a group"),
        most_rows=40,
        help=say("Stand behind the catcher or the pitcher. The catcher may call it out."),
    )


def _choice(name: str, label: Message, offered: Mapping[str, Message]) -> ChoiceField:
    choices = tuple(Choice(value, words) for value, words in offered.items())
    return ChoiceField(name, label, choices, style="select", optional=True)


@dataclass(frozen=True)
class Seen:
    """Breaking balls judged by eye: how many there were, and how many of each kind of each question."""

    throws: int
    counts: Mapping[str, Mapping[str, int]]

    def judged(self, question: str) -> int:
        """Return for how many throws a question was answered."""
        return sum(self.counts[question].values())

    def mostly(self, question: str, value: str) -> bool:
        """Return whether more than half of the throws that were judged, and of enough, had this answer."""
        judged = self.judged(question)
        return judged >= FEWEST and self.counts[question].get(value, 0) > HALF * judged


def read_eye(rows: tuple[Mapping[str, Value], ...]) -> Seen:
    """Return what the rows add up to; what was not seen is not counted."""
    counts: dict[str, dict[str, int]] = {name: {} for name in ("line", "hump", "dot", "end")}
    total = 0
    for row in rows:
        throws = int(cast(float, row["throws"]))
        total += throws
        for name, found in counts.items():
            if row[name]:
                found[str(row[name])] = found.get(str(row[name]), 0) + throws
    return Seen(total, counts)


def profile_by_eye(seen: Seen) -> str | None:
    """Return the starting profile that more than half of the throws judged speak for; None where none does.

    Line first, then the dot, then the hump: a ball that backs up or spins like a bullet is that before it is
    anything else (common practice).
    """
    for question, value, profile in (
        ("line", "arm", "arm-side"),
        ("dot", "yes", "bullet"),
        ("hump", "big", "loopy"),
    ):
        if seen.mostly(question, value):
            return profile
    return None


def eye_answer(seen: Seen, shelf: Shelf) -> Answer:
    """Return the answer to throws judged by eye."""
    strikes, called = seen.counts["end"].get("strike", 0), seen.judged("end")
    return Answer(
        headline=_headline(seen, strikes, called, shelf),
        more=(
            say("By eye you see line, hump, dot and place. That is enough to choose the next step."),
            say("Ask the pitcher to rate each throw from 1 to 5 before you say anything."),
        ),
        facts=tuple(_facts(seen, strikes, called)),
        tables=(_table(seen),),
        how_sure=HowSure(
            say("A trained eye tells line, hump and dot. It tells neither speed nor inches (estimate).")
        ),
        cannot_tell=(
            say("Speed, clock and active share. Nothing here stands for a number that was not measured."),
            say("Whether a cue did it. For that, throw plain, with the cue, and plain again."),
        ),
        cautions=(say("Any pain in elbow, shoulder or forearm: stop, whatever the throws look like."),),
    )


def _headline(seen: Seen, strikes: int, called: int, shelf: Shelf) -> Message:
    if seen.throws < FEWEST:
        return say("Too few throws to say anything. Throw at least five.")
    profile = profile_by_eye(seen)
    if profile is not None and profile in shelf.profiles:
        title = str(shelf.profiles[profile]["title"]).lower()
        return say("By eye, this is what the handbook calls {title}.", title=title)
    line_holds = seen.mostly("line", "straight")
    if not called:
        if line_holds:
            return say("By eye, the line holds. Where the throws ended was not seen.")
        return say("Too little was seen to say anything. Look at line, hump, dot and place.")
    counted = say_count(
        "By eye, {strikes} of {count} throw was a strike",
        "By eye, {strikes} of {count} throws were strikes",
        called,
        strikes=str(strikes),
    )
    if line_holds:
        return say("{counted}, and the line holds.", counted=counted)
    return say("{counted}.", counted=counted)


def _facts(seen: Seen, strikes: int, called: int) -> Iterator[Fact]:
    interval = wilson(strikes, called)
    yield Fact(say("Throws"), say("{count}", count=str(seen.throws)))
    if interval is not None:
        yield Fact(
            say("Strikes"),
            say("{strikes} of {called}", strikes=str(strikes), called=str(called)),
            say(
                "so between {low} and {high} in 100",
                low=number(100 * interval.low),
                high=number(100 * interval.high),
            ),
        )


def _table(seen: Seen) -> Table:
    rows = [
        (label, words, say("{count}", count=str(count)))
        for question, label, offered in (
            ("line", say("Line"), _LINES),
            ("hump", say("Hump"), _HUMPS),
            ("dot", say("Dot"), _DOTS),
            ("end", say("Where it ended"), _ENDS),
        )
        for value, words in offered.items()
        if (count := seen.counts[question].get(value, 0))
    ]
    return Table(say("What was seen"), (say("Look at"), say("Seen"), say("Throws")), tuple(rows))

"""How well rule sets were read, as every page about limits and rest says it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from calculators.desk.answers import HowSure
from calculators.words import Message, say
from calculators.workload.rules import Band, RuleSet, Status

HOW_READ: Mapping[Status, Message] = {
    "read at the body": say("These rules were read on the page of the body that makes them."),
    "read in a copy": say("These rules were read in a copy that others keep. Check the current book."),
    "from memory": say("These rules are from memory. Nobody has checked them at the source."),
}


def how_read(every: Sequence[RuleSet]) -> Message:
    """Return how the least well read of the rule sets was read."""
    return HOW_READ[max((rules.status for rules in every), key=list(HOW_READ).index)]


def doubts(groups: Sequence[tuple[RuleSet, Band]]) -> tuple[Message, ...]:
    """Return every doubt about some rule sets and about the pitcher's group in each, each once."""
    notes = dict.fromkeys(
        note
        for rules, band in groups
        for note in (*((rules.doubt,) if rules.doubt else ()), *band.notes, *rules.notes)
    )
    return tuple(say(note) for note in notes)


def how_sure(groups: Sequence[tuple[RuleSet, Band]]) -> HowSure:
    """Return how the least well read of the rule sets was read, and every doubt there is."""
    return HowSure(how_read([rules for rules, _ in groups]), doubts(groups))

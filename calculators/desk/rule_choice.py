"""The choice of a rule set, as every page about limits and rest offers it."""

from __future__ import annotations

import datetime

from calculators.desk.answers import Fact, Shelf
from calculators.desk.fields import Choice, ChoiceField
from calculators.words import Message, say
from calculators.workload.library import rule_set, rule_sets
from calculators.workload.rules import RuleSet

JOINT_GUIDELINE = "usa-joint-2015"
"""The rule set shown first, printed on paper, and set beside every other one."""

YES_OR_NO = (Choice("no", say("No")), Choice("yes", say("Yes")))

UNVERIFIED = ChoiceField(
    "unverified",
    say("Use rules that nobody has checked at the source?"),
    YES_OR_NO,
    optional=True,
    help=say("Only needed for rules marked as not checked."),
)
"""The question a reader answers with yes before rules from memory or in doubt are gone by."""


OUT_OF_REACH = say("Check the year: it must be from 2000 to 2099.")
"""What to do about a date that nobody means."""


def is_in_reach(date: datetime.date) -> bool:
    """True for a date of a season that somebody may keep a log of."""
    return date.year // 100 == 20


def stricter_editions(rules: RuleSet, shelf: Shelf) -> tuple[RuleSet, ...]:
    """Return the other edition of a rule set that owes more rest in places; none where there is none."""
    edition = rules.stricter_edition
    return (rule_set(edition, shelf.rules),) if edition is not None and edition in shelf.rules else ()


def binding_rules(shelf: Shelf) -> str:
    """Return the rule set that binds in this edition; the joint guideline in the handbook itself."""
    return str(shelf.edition.get("rules", JOINT_GUIDELINE))


def rule_choices(shelf: Shelf) -> tuple[Choice, ...]:
    """Return every rule set, or each level of one that goes by level; what binds first, then the guideline."""
    return tuple(choice for rules in _in_order(shelf) for choice in _choices_of(rules))


def rule_set_choices(shelf: Shelf) -> tuple[Choice, ...]:
    """Return every rule set once, for a page on which each pitcher has an own level, in the same order."""
    return tuple(
        Choice(rules.slug, _marked(rules, rules.title, all(map(rules.unverified, rules.bands))))
        for rules in _in_order(shelf)
    )


def rule_maker(rules: RuleSet) -> Fact:
    """Return the line that leads to the rules themselves."""
    return Fact(say("Read them at"), say("{body}", body=rules.body), address=rules.link)


def _in_order(shelf: Shelf) -> list[RuleSet]:
    first = (binding_rules(shelf), JOINT_GUIDELINE)

    def place(rules: RuleSet) -> tuple[int, str]:
        return first.index(rules.slug) if rules.slug in first else len(first), rules.title

    return sorted(rule_sets(shelf.rules).values(), key=place)


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


def why_unverified(rules: RuleSet) -> Message:
    """Return why a rule set is not gone by unless the reader says so."""
    mend = say("Ask the league, or choose Yes here to see them anyway.")
    if rules.doubt is not None:
        return say("{doubt} {mend}", doubt=say(rules.doubt), mend=mend)
    if rules.status == "from memory":
        return say("These rules are written from memory, not read at the source. {mend}", mend=mend)
    return say("A part of these rules was not found. {mend}", mend=mend)

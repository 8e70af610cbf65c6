"""What other rules say of the same pitcher: another edition of the same rules, and the joint guideline."""

from __future__ import annotations

from collections.abc import Sequence

from calculators.desk.pitch_count_words import day_words
from calculators.words import Message, say
from calculators.workload.ages import NoGroupError, Pitcher
from calculators.workload.availability import Availability, availability, strictest
from calculators.workload.outings import Outing
from calculators.workload.rules import RuleSet


def edition_words(earlier: Availability, edition: Availability) -> Message:
    """Return that another edition of the rules names a later day, and that the later day is kept."""
    return say(
        "Two editions differ here. The {title} names {earlier}. The {other} names {later}. "
        "Keep to the later day, and read the current book.",
        title=earlier.rules.title,
        earlier=day_words(earlier.first_day, earlier.today),
        other=edition.rules.title,
        later=day_words(edition.first_day, earlier.today),
    )


def compared(
    found: Sequence[Availability], editions: Sequence[RuleSet], age: int, outings: Sequence[Outing]
) -> tuple[Message, ...]:
    """Return what the joint guideline says beside a pitcher's own answers; nothing where it has no group.

    editions: the guideline, and another edition of it where that is stricter in places. age: whole years.
    """
    today = found[0].today
    under = []
    for rules in editions:
        try:
            under.append(availability(rules, Pitcher(age=age), outings, today))
        except NoGroupError:
            continue
    return (_beside(strictest(found), strictest(under), found),) if under else ()


def _beside(lead: Availability, other: Availability, found: Sequence[Availability]) -> Message:
    day, title = day_words(other.first_day, lead.today), other.rules.title
    if other.rest_unknown:
        return say("The rest under the {title} was not found.", title=title)
    if other.beyond_table:
        return say(
            "The rest table of the {title} does not reach this count. Not before {day}, and ask the league first.",
            title=title,
            day=day,
        )
    if any(one.rest_unknown or one.beyond_table or one.outs_unknown for one in found):
        return say(
            "Under the {title} the first day would be {day}. Your own rules name no day: ask the league.",
            title=title,
            day=day,
        )
    if other.first_day > lead.first_day:
        return say(
            "Under the {title} the first day is later: {day}. Where two differ, keep to the later one.",
            title=title,
            day=day,
        )
    if other.first_day < lead.first_day:
        return say(
            "Under the {title} the first day would be {day}. Your rules are stricter and come first.",
            title=title,
            day=day,
        )
    return say("Under the {title} it is the same day.", title=title)

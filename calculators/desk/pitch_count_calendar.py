"""First days as entries of a calendar. An entry says what the day means and what it does not."""

from __future__ import annotations

import datetime

from calculators.words import Catalogue, say, speak
from calculators.workload.icalendar import CalendarDay
from calculators.workload.rules import RuleSet


def first_day_entry(rules: RuleSet, name: str, day: datetime.date, catalogue: Catalogue) -> CalendarDay:
    """Return the entry of a pitcher's first day under a rule set; `name` may be blank."""
    summary = (
        say("{name}: first day under the rules", name=name)
        if name
        else say("First day to pitch under the rules")
    )
    note = say(
        "Eligible under {title}, edition {edition}. It does not mean fit to pitch. "
        "Pain overrides every count.",
        title=rules.title,
        edition=rules.edition,
    )
    return CalendarDay(day, speak(summary, catalogue), speak(note, catalogue), about=rules.slug)

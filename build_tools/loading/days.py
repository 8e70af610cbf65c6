"""Days written in the content: what was read or checked has been, and the next check is not put off for years."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

from build_tools.editions.league import League
from build_tools.loading.mistakes import Mistake, field_name
from build_tools.loading.reading import Loaded, Reading

PAST = ("reviewed", "last_checked", "checked")
LONGEST = datetime.timedelta(days=731)
"""From today to the next check of the rules: two years."""


def check_past(reading: Reading, today: datetime.date) -> Iterator[Mistake]:
    """Yield every day on which something was read or checked that has not come yet, anywhere on earth."""
    for loaded in reading.everything():
        for field in PAST:
            day = getattr(loaded.model, field, None)
            if isinstance(day, datetime.date) and day > today + datetime.timedelta(days=1):
                expected = f"a day that has been; today is {today}. Put it right, or this computer's clock"
                where = (*loaded.inside, field)
                path, line = reading.told(loaded.path), loaded.line((field,))
                yield Mistake(path, line, field_name(where), expected, day.isoformat())


def check_next(league: Loaded[League], reading: Reading, today: datetime.date) -> Iterator[Mistake]:
    """Yield the mistake of a league that would let years go by before it checks its rules again."""
    latest, due = today + LONGEST, league.model.rules_review_by
    if due > latest:
        expected = f"a day within two years, {latest} at the latest; rules change more often than that"
        line = league.line(("rules_review_by",))
        yield Mistake(reading.told(league.path), line, "rules_review_by", expected, due.isoformat())

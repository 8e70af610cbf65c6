"""Rest owed: how many days or nights an outing costs, and the first day after them."""

from __future__ import annotations

import datetime
from typing import NamedTuple

from calculators.workload.rules import MOST_REST, Band, RuleSet

ONE_DAY = datetime.timedelta(days=1)

LONGEST_REST = MOST_REST + 2
"""Days after which any rest is over: the longest step, one more past its table, and the day itself."""


class Owed(NamedTuple):
    """Rest owed, in the rule set's days or nights.

    beyond_table: the table stops below this count. Then the body has said nothing, `rest` is the
    least this handbook goes by, and the league must be asked.
    """

    rest: int
    beyond_table: bool = False


NOTHING_OWED = Owed(0)


def owed(rules: RuleSet, band: Band, count: int) -> Owed:
    """Return the rest a day's count owes.

    count: pitches or outs, as the rule set counts.
    Past the end of a table: one more than its last step, or what any other group of the rule set
    owes for that count if that is more. Never nothing.
    """
    if count <= 0 or not band.rest or count < band.rest[0].low:
        return NOTHING_OWED
    step = band.step_for(count)
    if step is not None:
        return Owed(step.rest)
    others = [step.rest for other in rules.bands if (step := other.step_for(count)) is not None]
    return Owed(max([band.rest[-1].rest + 1, *others]), beyond_table=True)


def days_held(rules: RuleSet, rest: int) -> int:
    """Return how many days after an outing the first day without rest owed comes.

    Whole days: the day of the outing does not count. Nights: the night of the outing is the first.
    """
    return max(rest, 1) if rules.rest_unit == "nights" else rest + 1

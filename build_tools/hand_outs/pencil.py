"""Numbers to cross off with a pencil: one box a pitch, up to the day's limit, cut where rest begins anew."""

from __future__ import annotations

from dataclasses import dataclass, replace

from calculators.workload.rules import Band, RuleSet

BEYOND = 5
"""Boxes after the limit, for a batter who may be finished."""
WITHOUT_A_LIMIT = 100
"""Boxes where the rules set no daily limit."""


@dataclass(frozen=True)
class Step:
    """The boxes of one rest step, and the days or nights that it owes; `rest` is None past the table."""

    numbers: tuple[int, ...]
    rest: int | None


def steps_to_cross_off(rules: RuleSet, band: Band) -> tuple[Step, ...]:
    """Return the boxes of an age group, step by step, up to its limit and, where a batter may be finished, past it."""
    limit = band.daily_max or WITHOUT_A_LIMIT
    last_box = _last_box(rules, band)
    steps: list[Step] = []
    for number in range(1, limit + 1):
        step = band.step_for(number)
        rest = None if step is None else step.rest
        if steps and steps[-1].rest == rest:
            steps[-1] = Step((*steps[-1].numbers, number), rest)
        else:
            steps.append(Step((number,), rest))
    if last_box is not None and last_box > limit:
        last = band.step_for(last_box)
        over = tuple(range(limit + 1, last_box + 1))
        steps.append(Step(over, None if last is None else last.rest))
    return tuple(steps)


def within_the_limit(rules: RuleSet) -> RuleSet:
    """Return the rules without the rest steps that begin past the last box of their age group."""
    return replace(rules, bands=tuple(_within(rules, band) for band in rules.bands))


def _within(rules: RuleSet, band: Band) -> Band:
    last_box = _last_box(rules, band)
    return replace(band, rest=tuple(step for step in band.rest if last_box is None or step.low <= last_box))


def _last_box(rules: RuleSet, band: Band) -> int | None:
    if band.daily_max is None:
        return None
    return band.daily_max + (BEYOND if rules.finish_batter else 0)


def bands_for_ages(rules: RuleSet, ages: range | None) -> tuple[Band, ...]:
    """Return the age groups that have players of these ages; all of them where no ages are given."""
    if ages is None or rules.by_level:
        return rules.bands
    found = (rules.by_age[age] for age in ages if age in rules.by_age)
    return tuple({band.label: band for band in found}.values())

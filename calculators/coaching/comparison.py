"""A fair trial of one cue: throws without it, with it, and without it again, and what the two kinds share.

The comparison asks whether the throws differ by more than they differ anyway. It goes by rank, so that one
wild throw does not decide. Plain throws before and after the cue are taken together: an arm that slowly tires
or warms up then pulls both ways.

References
----------
[1] Cohen J., Statistical Power Analysis for the Behavioral Sciences, 1988, chapter 2: the smallest difference
    of two groups that a test finds with a given power.
[2] Sidak Z., Rectangular confidence regions, JASA 62, 1967: chances when several things are tried.
[3] Hodges J.L. and Lehmann E.L., Rank methods for combination of independent experiments, Ann. Math. Stat.
    33, 1962: days are put together after each day's own middle is taken off.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from calculators.coaching.clock_faces import FULL_TURN
from calculators.coaching.clock_statistics import mean_clock, unrolled
from calculators.coaching.intervals import LEVEL, Interval, normal_quantile, share_difference
from calculators.coaching.ranks import Estimate, chance, shift
from calculators.coaching.spread import median, pooled_deviation
from calculators.coaching.strikes_by_day import CalledDay, chance_of_strikes, change_of_strikes
from calculators.coaching.throws import (
    BREAKING_BALL,
    QUANTITIES,
    Quantity,
    Session,
    Throw,
    of_pitch,
    values,
)
from calculators.words import Message, number, say, say_count

Measured = Quantity | Literal["strikes"]
Level = Literal["adult", "high_school", "twelve_and_under"]

SURE = 0.05
POWER = 0.80
FULL_BLOCK = 10
FEWEST_IN_A_GROUP = 3
_LOST_TO_STEPS = 0.5

USUAL_DEVIATION: Mapping[Level, Mapping[Quantity, float]] = {
    "adult": {"speed": 1.2, "spin": 80, "clock": 20 / 60, "active": 6, "up": 2, "glove": 2.5},
    "high_school": {"speed": 1.6, "spin": 110, "clock": 30 / 60, "active": 8, "up": 2.5, "glove": 3},
    "twelve_and_under": {"speed": 2.0, "spin": 130, "clock": 45 / 60, "active": 10, "up": 2, "glove": 2},
}
"""How much one pitcher's breaking balls differ from throw to throw, each in its own unit (estimate)."""


class TrialError(ValueError):
    """The throws hold no trial of the cue. `message` says what to throw or write down."""

    def __init__(self, message: Message) -> None:
        super().__init__(message.text)
        self.message = message


@dataclass(frozen=True)
class Difference:
    """One quantity without and with the cue, in its own unit; strikes as a share, 0 to 1.

    plain, cued: medians, mean clocks, or shares. change: how much higher with the cue; for clocks, how many
    hours later. interval: of the change. chance: of a difference this large by shuffling alone (two-sided).
    smallest: the smallest change this many throws could be counted on to show; None for too few.
    drift: how much higher the plain throws after the cue were than those before it; None without both.
    """

    plain: float
    cued: float
    change: float
    interval: Interval | None
    chance: float
    smallest: float | None
    drift: Estimate | None = None


@dataclass(frozen=True)
class Trial:
    """One day's trial of one cue.

    before, cued, after: the throws compared. differences: by what was measured in both kinds.
    steadier: for speed and clock, how much farther from their own middle the throws with the cue lie;
    negative is steadier. tried: how many cues were tried that day.
    """

    cue: str
    date: datetime.date | None
    before: tuple[Throw, ...]
    cued: tuple[Throw, ...]
    after: tuple[Throw, ...]
    differences: Mapping[Measured, Difference]
    steadier: Mapping[Quantity, Difference]
    tried: int
    cautions: tuple[Message, ...]

    @property
    def plain(self) -> tuple[Throw, ...]:
        """The throws without the cue."""
        return (*self.before, *self.after)


def compare(session: Session, cue: str, pitch: str = BREAKING_BALL, level: float = LEVEL) -> Trial:
    """Return the trial of a cue in a session.

    The nearest plain blocks before and after the cue's blocks are compared with them; where throws have no
    blocks, all plain throws are.
    Raises TrialError where fewer than three throws were made with the cue, or without any.
    """
    thrown = of_pitch(session.throws, pitch)
    cued = tuple(throw for throw in thrown if throw.cue == cue)
    before, after = _plain_around(thrown, cued)
    if not cue or len(cued) < FEWEST_IN_A_GROUP:
        raise TrialError(say("Throw at least three with the cue, and write the cue beside each."))
    if len(before) + len(after) < FEWEST_IN_A_GROUP:
        raise TrialError(say("Throw at least three without any cue, and leave the cue blank."))
    differences: dict[Measured, Difference] = {}
    steadier: dict[Quantity, Difference] = {}
    for name in QUANTITIES:
        early, late, with_cue = (values(group, name) for group in (before, after, cued))
        if min(len(early) + len(late), len(with_cue)) < FEWEST_IN_A_GROUP:
            continue
        differences[name] = _difference(name, early, late, with_cue, level)
        if name in ("speed", "clock"):
            steadier[name] = _steadiness(name, [*early, *late], with_cue, level)
    without_calls, with_calls = _calls((*before, *after)), _calls(cued)
    if without_calls and with_calls:
        differences["strikes"] = _strike_difference(without_calls, with_calls, level)
    tried = len({throw.cue for throw in thrown} - {""})
    cautions = _cautions(before, cued, after, differences, tried)
    return Trial(cue, session.date, before, cued, after, differences, steadier, tried, cautions)


def smallest_change(
    deviation: float, plain: float, cued: float, power: float = POWER, sure: float = SURE
) -> float:
    """Return the smallest change, in the unit of `deviation`, that so many throws could be counted on to show.

    plain, cued: throws of each kind, at least one. power: how often a change of that size would be found.
    sure: how often luck alone would pass for one.
    The size that a t test finds [1]_, with Student's quantiles (Abramowitz M. and Stegun I.A., Handbook of
    Mathematical Functions, 1964, 26.7.5). Comparing by rank is worth 3 / pi of that (Hodges and Lehmann, Ann.
    Math. Stat. 27, 1956), and its chances go in steps, which costs about half a throw of each kind (by
    simulation; from five throws of each kind the power is then 0.76 to 0.82).
    """
    degrees = max(1.0, plain + cued - 2)
    deviations = sum(_student(normal_quantile(share), degrees) for share in (1 - sure / 2, power))
    by_rank = math.pi / 3 * (1 / (plain - _LOST_TO_STEPS) + 1 / (cued - _LOST_TO_STEPS))
    return deviations * deviation * math.sqrt(by_rank)


def _student(z: float, degrees: float) -> float:
    """Return the quantile of Student's spread that a normal one has at `z`."""
    return z + (z**3 + z) / (4 * degrees) + (5 * z**5 + 16 * z**3 + 3 * z) / (96 * degrees**2)


def false_winner_chance(tried: int, sure: float = SURE) -> float:
    """Return the chance that at least one of so many useless cues looks good by luck [2]_."""
    return 1 - math.pow(1 - sure, tried)


def chance_needed(tried: int, sure: float = SURE) -> float:
    """Return how small a chance must be to count when so many cues were tried on one day [2]_."""
    return 1 - math.pow(1 - sure, 1 / max(1, tried))


def together(trials: Sequence[Trial], quantity: Measured, level: float = LEVEL) -> Difference | None:
    """Return the difference over several trials of one cue; None where none of them measured it.

    Each day's own middle is taken off first [3]_; strikes are compared day by day. Differences between days
    in what the cue does are not allowed for, so the interval is on the short side.
    """
    usable = [trial for trial in trials if quantity in trial.differences]
    if len(usable) <= 1:
        return usable[0].differences[quantity] if usable else None
    if quantity == "strikes":
        return _strikes_together(usable, level)
    plain: list[float] = []
    cued: list[float] = []
    middles: list[float] = []
    for trial in usable:
        base, without_cue, with_cue = _on_a_line(
            quantity, values(trial.plain, quantity), values(trial.cued, quantity)
        )
        middle = median([*without_cue, *with_cue])
        plain += [value - middle for value in without_cue]
        cued += [value - middle for value in with_cue]
        middles.append(base + middle)
    usual = mean_clock(middles) or 0.0 if quantity == "clock" else median(middles)
    return _contrast(usual, plain, cued, quantity == "clock", level)


def _plain_around(
    thrown: Sequence[Throw], cued: Sequence[Throw]
) -> tuple[tuple[Throw, ...], tuple[Throw, ...]]:
    """Return the plain throws before and after the cue: the nearest block on each side, or by number."""
    plain = [throw for throw in thrown if not throw.cue]
    blocks = [throw.block for throw in cued if throw.block is not None]
    if len(blocks) < len(cued) or any(throw.block is None for throw in plain):
        first = min((throw.number for throw in cued), default=0)
        early = tuple(throw for throw in plain if throw.number < first)
        return early, tuple(throw for throw in plain if throw.number > first)
    numbers = {throw.block for throw in plain if throw.block is not None}
    early_block = max((block for block in numbers if block < min(blocks)), default=None)
    late_block = min((block for block in numbers if block > max(blocks)), default=None)
    return (
        tuple(throw for throw in plain if throw.block == early_block and early_block is not None),
        tuple(throw for throw in plain if throw.block == late_block and late_block is not None),
    )


def _on_a_line(
    quantity: Measured, plain: Sequence[float], cued: Sequence[float]
) -> tuple[float, list[float], list[float]]:
    """Return what was taken off, and the values of both kinds as numbers that can be ordered."""
    if quantity != "clock":
        return 0.0, list(plain), list(cued)
    middle = mean_clock([*plain, *cued]) or 0.0
    return middle, unrolled(plain, middle), unrolled(cued, middle)


def _difference(
    quantity: Quantity, before: list[float], after: list[float], cued: list[float], level: float
) -> Difference:
    base, plain_line, cued_line = _on_a_line(quantity, [*before, *after], cued)
    found = _contrast(base, plain_line, cued_line, quantity == "clock", level)
    if not before or not after:
        return found
    drift = shift(plain_line[: len(before)], plain_line[len(before) :], level)
    return replace(found, drift=drift)


def _contrast(base: float, plain: list[float], cued: list[float], clock: bool, level: float) -> Difference:
    found = shift(plain, cued, level)
    without, with_cue = base + median(plain), base + median(cued)
    can_show = len(plain) > 1 and len(cued) > 1
    return Difference(
        without % FULL_TURN if clock else without,
        with_cue % FULL_TURN if clock else with_cue,
        found.value,
        found.interval,
        chance(plain, cued),
        smallest_change(pooled_deviation([plain, cued]), len(plain), len(cued)) if can_show else None,
    )


def _steadiness(quantity: Quantity, plain: list[float], cued: list[float], level: float) -> Difference:
    def away(side: list[float]) -> list[float]:
        """Return how far each value lies from the middle of its own kind."""
        if quantity == "clock":
            return [abs(hours) for hours in unrolled(side, mean_clock(side) or 0.0)]
        middle = median(side)
        return [abs(value - middle) for value in side]

    return _contrast(0.0, away(plain), away(cued), False, level)


def _calls(throws: Iterable[Throw]) -> list[float]:
    """Return 1 for each strike and 0 for each ball; throws without a call are left out."""
    return [float(throw.strike) for throw in throws if throw.strike is not None]


def _strike_difference(plain: list[float], cued: list[float], level: float) -> Difference:
    plain_hits, cued_hits = round(sum(plain)), round(sum(cued))
    plain_share, cued_share = plain_hits / len(plain), cued_hits / len(cued)
    overall = (plain_hits + cued_hits) / (len(plain) + len(cued))
    return Difference(
        plain_share,
        cued_share,
        cued_share - plain_share,
        share_difference(cued_hits, len(cued), plain_hits, len(plain), level),
        chance(plain, cued),
        smallest_change(math.sqrt(overall * (1 - overall)), len(plain), len(cued)),
    )


def _strikes_together(trials: Sequence[Trial], level: float) -> Difference:
    days = []
    for trial in trials:
        plain, cued = _calls(trial.plain), _calls(trial.cued)
        days.append(CalledDay(round(sum(plain)), len(plain), round(sum(cued)), len(cued)))
    found = change_of_strikes(days, level)
    overall = (found.plain + found.cued) / 2
    size = 2 * found.weight
    return Difference(
        found.plain,
        found.cued,
        found.change,
        found.interval,
        chance_of_strikes(days),
        smallest_change(math.sqrt(overall * (1 - overall)), size, size),
    )


def _cautions(
    before: Sequence[Throw],
    cued: Sequence[Throw],
    after: Sequence[Throw],
    differences: Mapping[Measured, Difference],
    tried: int,
) -> tuple[Message, ...]:
    found: list[Message] = []
    if not after:
        found.append(say("No plain throws came after the cue. Tiring and the cue cannot be told apart."))
    if not before:
        found.append(say("No plain throws came before the cue. Warming up and the cue cannot be told apart."))
    if min(len(cued), len(before) + len(after)) < FULL_BLOCK:
        found.append(say("Fewer than ten throws of a kind. Take this as a hint at most."))
    if len({throw.grip for throw in (*before, *cued, *after)}) > 1:
        found.append(say("The grip changed as well. Nobody can tell which of the two did it."))
    speed = differences.get("speed")
    drift = None if speed is None or speed.drift is None else speed.drift.interval
    if drift is not None and not drift.holds(0):
        found.append(say("The plain throws changed speed by themselves during the session."))
    noise = sum(throw.clock is not None and throw.steady_clock is None for throw in (*before, *cued, *after))
    if noise:
        found.append(
            say_count(
                "The clock of {count} throw was left out. Bullet spin makes it noise.",
                "The clocks of {count} throws were left out. Bullet spin makes them noise.",
                noise,
            )
        )
    if tried > 1:
        found.append(many_cues(tried))
    return tuple(found)


def many_cues(tried: int) -> Message:
    """Return the warning for several cues tried on one day."""
    return say(
        "{tried} cues were tried on one day. By luck alone, at least one looks good {percent} times in 100.",
        tried=str(tried),
        percent=number(100 * false_winner_chance(tried)),
    )

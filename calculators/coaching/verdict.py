"""What to write down after trying a cue: keep it, try again, or drop it, and how much to trust that."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from calculators.coaching.comparison import (
    FULL_BLOCK,
    Difference,
    Measured,
    Trial,
    chance_needed,
    together,
)
from calculators.coaching.cue_effects import CueEntry, expected, most_speed_lost
from calculators.coaching.profiles import Profiles, profile_of
from calculators.coaching.throws import Hand
from calculators.words import Message, say

Standing = Literal["too few", "hint", "working answer", "keep or drop"]
Decision = Literal["keep", "try again", "drop"]

FEWEST_FOR_A_HINT = 5
DAYS_FOR_A_WORKING_ANSWER = 2
DAYS_TO_DECIDE = 3
THROWS_TO_DECIDE = 60
SLOW_ARM = 2.0
"""Losing more than this [mph] to get something else is a slow arm and no gain (common practice), unless the
cue's entry says that from this start the cue costs more."""


@dataclass(frozen=True)
class Aim:
    """What the cue is meant to change, chosen before the first throw, and which way."""

    quantity: Measured
    up: bool


@dataclass(frozen=True)
class Verdict:
    """What to write down, how much stands behind it, the difference it rests on, and why."""

    decision: Decision
    standing: Standing
    difference: Difference | None
    why: Message


def standing(trials: Sequence[Trial]) -> Standing:
    """Return how far the trials of one cue carry (common practice).

    A block of throws is a hint. Ten and ten on two days are a working answer. Three such days, or sixty
    throws with the cue over at least two, decide.
    """
    days = {trial.date for trial in trials if trial.date is not None}
    full = {trial.date for trial in trials if trial.date and _smaller(trial) >= FULL_BLOCK}
    thrown = sum(len(trial.cued) for trial in trials)
    if len(full) >= DAYS_TO_DECIDE or (thrown >= THROWS_TO_DECIDE and len(days) >= DAYS_FOR_A_WORKING_ANSWER):
        return "keep or drop"
    if len(full) >= DAYS_FOR_A_WORKING_ANSWER:
        return "working answer"
    return "hint" if any(_smaller(trial) >= FEWEST_FOR_A_HINT for trial in trials) else "too few"


def _smaller(trial: Trial) -> int:
    """Return how many throws the smaller kind has."""
    return min(len(trial.cued), len(trial.plain))


def verdict(trials: Sequence[Trial], aim: Aim, speed_price: float = SLOW_ARM) -> Verdict:
    """Return the decision on one cue from all its trials.

    trials: at least one, all of the same cue. aim: chosen before the first throw; nothing else decides.
    speed_price: how much speed the cue may cost [mph]; more is a slow arm, whatever else was gained.
    """
    stands = standing(trials)
    found = together(trials, aim.quantity)
    if found is None:
        return Verdict("try again", stands, None, say("What the cue is meant to change was not measured."))
    if stands == "too few":
        return Verdict("try again", stands, found, say("Too few throws to say anything."))
    speed = together(trials, "speed")
    if aim.quantity != "speed" and speed is not None and _lost(speed, speed_price):
        why = say("The arm slowed down to get it. That is a fault and no gain.")
        return Verdict("drop", stands, found, why)
    gained = found.change if aim.up else -found.change
    beyond_luck = found.chance <= chance_needed(max(trial.tried for trial in trials))
    if gained < 0 and beyond_luck:
        return Verdict("drop", stands, found, say("It moved the wrong way, by more than luck."))
    if stands == "hint":
        return Verdict("try again", stands, found, _only_a_hint(len(trials), beyond_luck))
    if not beyond_luck:
        return Verdict(
            "drop", stands, found, say("Still no change larger than luck. Try another kind of cue.")
        )
    if stands == "working answer":
        why = say("It has worked on two days. Keep it for now, and ask again in a week without the cue.")
        return Verdict("keep", stands, found, why)
    return Verdict("keep", stands, found, say("It has worked often enough. Keep it."))


def speed_price(cue: CueEntry, trials: Sequence[Trial], hand: Hand, profiles: Profiles) -> float:
    """Return the most speed [mph] that a cue may cost the pitcher of these trials.

    cue: its entry, which may tell what the cue costs from the pitcher's plain throws; where it calls the
    result bad, nothing more is allowed.
    """
    plain = [throw for trial in trials for throw in trial.plain]
    told = expected(cue, profile_of(plain, None, hand, profiles) or "any")
    return SLOW_ARM if told.unwanted else max(SLOW_ARM, most_speed_lost(told))


def _only_a_hint(days: int, beyond_luck: bool) -> Message:
    if not beyond_luck:
        return say("No change larger than luck. Try it once more on another day.")
    if days == 1:
        return say("It looks good. A single day is a hint, so try it again on another day.")
    return say("It looks good. Blocks this short are a hint, so throw ten and ten on another day.")


def _lost(speed: Difference, price: float) -> bool:
    """Return whether the cue cost more speed than its price, and by more than luck."""
    return -speed.change > price and speed.interval is not None and speed.interval.high < 0

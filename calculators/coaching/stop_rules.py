"""When to end it: pain first, then a tired fastball, then what the day and the age allow.

These are common practice and no medical advice. Local rules and licensed clinicians come first.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from calculators.coaching.spread import median
from calculators.coaching.throws import FASTBALL, Throw, of_pitch, values
from calculators.words import Message, say

Weight = Literal["stop", "ask first", "end the session", "spin throws at most", "no breaking ball"]

FASTBALLS_AT_START = 5
FASTBALLS_NOW = 3
FASTBALL_LOSS = 2.0
"""A fastball this much slower than at the start ends the session [mph]."""
FASTBALL_LOSS_SHARE_ADULT = 0.03
FASTBALL_LOSS_SHARE_YOUNG = 0.04
ADULT = 19
SORE = 3
"""From this soreness on [of 10] it is short spin throws at most (common practice),"""
SORE_AS_PAIN = 6
"""and from this on it counts as pain (estimate)."""
BREAKING_SHARE = 0.25
BREAKING_SHARE_AT_FIRST = 0.20
BREAKING_A_DAY_AT_FIRST = 15
FIRST_AGES = (13, 14)
SPIN_THROWS_A_DAY = 15
YOUNGEST_FOR_SPIN_GAMES = 9
YOUNGEST_FOR_A_BREAKING_BALL = 13
"""The handbook's own age gates and daily limits (common practice; content/lists/age_gates.yml in words)."""


@dataclass(frozen=True)
class Day:
    """How the pitcher is today; None means that nobody asked.

    pain: in elbow, shoulder or forearm, now or in the last 14 days, or numb or tingling fingers, or a joint
    that will not straighten. tired: says so, or shows it. soreness: the pitcher's own, 0 to 10.
    """

    pain: bool | None = None
    tired: bool | None = None
    soreness: float | None = None
    slept_badly: bool | None = None
    game_yesterday: bool | None = None


@dataclass(frozen=True)
class Stop:
    """One reason to stop or hold back, and what to say about it."""

    weight: Weight
    message: Message


@dataclass(frozen=True)
class Drift:
    """The fastball now against the start of the session: medians [mph], and how much is lost."""

    at_start: float
    now: float

    @property
    def lost(self) -> float:
        """How much slower it is now [mph]; negative where it is faster."""
        return self.at_start - self.now

    @property
    def share_lost(self) -> float:
        """The loss as a share of the start."""
        return self.lost / self.at_start


def fastball_drift(throws: Sequence[Throw]) -> Drift | None:
    """Return how the fastball went from the first throws to the last; None with too few measured."""
    speeds = values(of_pitch(throws, FASTBALL), "speed")
    if len(speeds) < FASTBALLS_AT_START + FASTBALLS_NOW:
        return None
    return Drift(median(speeds[:FASTBALLS_AT_START]), median(speeds[-FASTBALLS_NOW:]))


def slowed(drift: Drift, age: int) -> bool:
    """Return whether the fastball has lost enough to end the session."""
    share = FASTBALL_LOSS_SHARE_ADULT if age >= ADULT else FASTBALL_LOSS_SHARE_YOUNG
    return drift.lost >= FASTBALL_LOSS - 1e-9 or drift.share_lost >= share - 1e-9


def stops(day: Day, age: int, drift: Drift | None = None) -> tuple[Stop, ...]:
    """Return every reason to stop or hold back, gravest first; pain silences all others."""
    if day.pain:
        return (pain(),)
    if sore_as_pain(day.soreness):
        return (Stop("stop", say("{why} {stop}", why=AS_PAIN, stop=pain().message)),)
    found: list[Stop] = []
    if day.pain is None:
        found.append(
            Stop("ask first", say("Ask about pain before the first throw, and wait for the answer."))
        )
    if day.tired:
        found.append(Stop("end the session", say("The arm is tired. That is enough for today.")))
    elif drift is not None and slowed(drift, age):
        found.append(
            Stop("end the session", say("The fastball has slowed down. Take that as tired, and end it."))
        )
    if day.soreness is not None and day.soreness >= SORE:
        found.append(Stop("spin throws at most", say("The arm is sore. Short spin throws at most, or rest.")))
    if day.slept_badly:
        found.append(Stop("spin throws at most", say("Short night. Short spin throws at most, or rest.")))
    if day.game_yesterday:
        found.append(
            Stop(
                "no breaking ball",
                say("There was a game yesterday. Today is for recovery, with no breaking balls."),
            )
        )
    return tuple(found)


AS_PAIN = say("That much soreness counts as pain.")


def sore_as_pain(soreness: float | None) -> bool:
    """Return whether soreness [of 10] is so high that it ends the day as pain does."""
    return soreness is not None and soreness >= SORE_AS_PAIN


def pain() -> Stop:
    """Return the stop that overrides every number and every cue."""
    return Stop(
        "stop",
        say("Stop. No throwing and no cue today. Tell a parent or guardian, and see a licensed clinician."),
    )


def breaking_balls_allowed(throws: int, age: int) -> int:
    """Return how many breaking balls a day allows. throws: of the day, its short spin throws left out."""
    if age < YOUNGEST_FOR_A_BREAKING_BALL:
        return 0
    if age <= FIRST_AGES[1]:
        return min(BREAKING_A_DAY_AT_FIRST, int(BREAKING_SHARE_AT_FIRST * throws))
    return int(BREAKING_SHARE * throws)

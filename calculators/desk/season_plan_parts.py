"""The parts of a build-up: what comes before what. Structure only, as many coaches order it."""

from __future__ import annotations

from dataclasses import dataclass

from calculators.words import Message, say


@dataclass(frozen=True)
class Part:
    """A stretch of the build-up.

    until: the share of its weeks after which it is over. what, breaking: what belongs in it.
    """

    until: float
    title: Message
    what: Message
    breaking: Message


PARTS = (
    Part(
        0.25,
        say("Easy catch"),
        say("Short catch on days that are not in a row. No mound."),
        say("none"),
    ),
    Part(
        0.5,
        say("Longer catch"),
        say("Catch a little farther, fastballs only. No mound."),
        say("none"),
    ),
    Part(
        0.75,
        say("First mound throws"),
        say("Short bullpens with days between. Fastball first, then changeup."),
        say("spin throws close in at most"),
    ),
    Part(
        1.0,
        say("Batters"),
        say("Bullpens, then a few batters. Below what the first game may be."),
        say("last to come back, and few"),
    ),
)
"""Common practice. That fastballs come before breaking balls is also what published plans have."""

OPENING = ((1, 50), (2, 75))
"""Week with games, and the percent of the daily limit that is its ceiling. An estimate, made to be low."""


@dataclass(frozen=True)
class Share:
    """The most breaking balls in a hundred pitches up to an age; `why` says where that comes from."""

    up_to: int
    percent: int
    why: Message


SHARES = (
    Share(12, 0, say("The joint guideline has no breaking balls up to 12.")),
    Share(14, 15, say("At most 15 in 100 pitches at 13 and 14: common practice.")),
    Share(99, 25, say("At most 25 in 100 pitches from 15 on: an estimate of this handbook.")),
)


def share_at(age: int | None) -> Share:
    """Return the share of breaking balls for an age; not known counts as the youngest."""
    return next(share for share in SHARES if age is None or age <= share.up_to)

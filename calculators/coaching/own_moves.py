"""What the pitcher's own days with a cue changed, put together, and what a cue does for a pitcher in words.

References
----------
[1] Newcombe R.G., Statistics in Medicine 17, 1998: with ten throws a share of strikes near one half is known
    to about 31 points either way at 95 percent, with sixty to about 13.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from calculators.coaching.comparison import FULL_BLOCK, Measured
from calculators.coaching.gap import Move, Wish, percent_of_fastball
from calculators.coaching.target import Pitcher
from calculators.words import Message, number, say, say_count

OwnDay = tuple[Mapping[Measured, float], int]
"""One day of a cue: its changes, each in its own unit, and how many throws the smaller kind had (at least 1)."""

THROWS_FOR_STRIKES = 60
"""So many throws with a cue, all days together, before its change of strikes counts at all [1]_ (estimate)."""

KEPT = say("You kept it. Use it, and test without it in a week.")
TOO_FEW = say("Too few throws to say what is missing. Throw ten.")


def weight_of(throws: int) -> float:
    """Return how much a day counts, 0 to 1: a full block counts once."""
    return min(1.0, throws / FULL_BLOCK)


def own_move(days: Sequence[OwnDay], pitcher: Pitcher) -> Move:
    """Return the average change of the days, as one of a right-hander's ball.

    A quantity is averaged over the days that measured it. Days are put together before anybody asks what they
    gained: a box rewards no overshoot, so the luck of single days would only ever count against a cue.
    """

    def average(name: Measured) -> float:
        measured = [(weight_of(throws), changes[name]) for changes, throws in days if name in changes]
        whole = sum(weight for weight, _ in measured)
        return sum(weight * change for weight, change in measured) / whole if whole else 0.0

    turn = average("clock")
    called = sum(throws for changes, throws in days if "strikes" in changes)
    return Move(
        speed=percent_of_fastball(average("speed"), pitcher),
        clock=-turn if pitcher.hand == "left" else turn,
        active=average("active"),
        drop=-average("up"),
        side=average("glove"),
        strikes=average("strikes") if called >= THROWS_FOR_STRIKES else 0.0,
    )


_TENDS_TO: Mapping[Wish, Message] = {
    "speed": say("It tends to bring the speed nearer to the target."),
    "clock": say("It tends to turn the clock toward the target."),
    "active": say("It tends to bring the active share nearer to the target."),
    "drop": say("It tends to add the drop that is missing."),
    "side": say("It tends to add the side that is missing."),
    "strikes": say("It tends to bring more strikes."),
    "steady": say("It tends to make the throws more alike."),
}


def why(gains: Mapping[Wish, float], missing: Mapping[Wish, float]) -> tuple[Message, ...]:
    """Return what a cue should do for this pitcher, the largest gain first, and what it makes worse."""
    helped = sorted((wish for wish, gain in gains.items() if gain > 0), key=lambda wish: -gains[wish])
    hurt = [wish for wish, gain in gains.items() if gain < 0 and missing[wish] > 0]
    words = [_TENDS_TO[wish] for wish in helped]
    if hurt:
        words.append(say("It takes a little away elsewhere, so watch the other numbers too."))
    return tuple(words)


def own_words(days: int, gained: float) -> tuple[Message, ...]:
    """Return what so many own days with a cue gained, in steps; nothing without a day."""
    if not days:
        return ()
    return (
        say_count(
            "Your own {count} day with it: {steps} steps nearer to the target.",
            "Your own {count} days with it: {steps} steps nearer to the target, on average.",
            days,
            steps=number(gained, 1),
        ),
    )

"""The box a breaking ball should land in: speed as a share of the fastball, clock, and active share."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from calculators.coaching.clock_faces import Band
from calculators.coaching.intervals import LEVEL, Interval, wilson
from calculators.coaching.throws import Throw


@dataclass(frozen=True)
class Box:
    """A target, for the pitcher's own hand.

    speed: from and to, in percent of the same day's fastball. clock: None where bullet spin makes it noise.
    active: least and most active share [percent]; the most is 100 where more would do no harm.
    """

    speed: tuple[float, float]
    clock: Band | None
    active: tuple[float, float]

    def holds(self, throw: Throw, fastball: float | None) -> bool | None:
        """Return whether a throw is inside; None where nothing that was measured decides it.

        fastball: the same day's typical fastball [mph]. One value outside is enough to be outside; to be
        inside, speed and, where the box has one, the clock must be known. An active share that was not
        measured is not held against a throw.
        """
        speed = None if throw.speed is None or fastball is None else 100 * throw.speed / fastball
        within = [
            None if value is None else low <= value <= high
            for value, (low, high) in ((speed, self.speed), (throw.active, self.active))
        ]
        on_clock = None if self.clock is None or throw.clock is None else self.clock.holds(throw.clock)
        if False in (*within, on_clock):
            return False
        known = within[0] is not None and (self.clock is None or on_clock is not None)
        return True if known else None


@dataclass(frozen=True)
class ShareInside:
    """How many throws were inside, of how many that could be judged, and between what shares (0 to 1)."""

    inside: int
    judged: int
    not_judged: int
    interval: Interval | None


def share_inside(
    throws: Iterable[Throw], box: Box, fastball: float | None, level: float = LEVEL
) -> ShareInside:
    """Return the share of throws inside a box; throws that cannot be judged are counted apart."""
    found = [box.holds(throw, fastball) for throw in throws]
    inside, judged = found.count(True), len(found) - found.count(None)
    return ShareInside(inside, judged, found.count(None), wilson(inside, judged, level))

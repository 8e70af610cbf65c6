"""The box a breaking ball should land in: speed as a share of the fastball, clock, and active share."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from calculators.coaching.clock_faces import Band
from calculators.coaching.intervals import LEVEL, Interval, wilson
from calculators.coaching.throws import Quantity, Throw


@dataclass(frozen=True)
class Box:
    """A target, for the pitcher's own hand.

    speed: from and to, in percent of the same day's fastball. clock: None where bullet spin makes it noise.
    active: least and most active share [percent]; the most is 100 where more would do no harm.
    """

    speed: tuple[float, float]
    clock: Band | None
    active: tuple[float, float]

    @property
    def decides(self) -> tuple[Quantity, ...]:
        """What a throw is judged by."""
        return ("speed",) if self.clock is None else ("speed", "clock")

    def holds(
        self, throw: Throw, fastball: float | None, by: Collection[Quantity] | None = None
    ) -> bool | None:
        """Return whether a throw is inside; None where a value that decides is not known.

        fastball: the same day's typical fastball [mph]. by: what decides; all of `decides` where it is left
        out. A throw that misses one of them is not judged, even where another lies outside: else throws with
        something missing could only ever be outside. An active share that was not measured is not held
        against a throw.
        """
        speed = None if throw.speed is None or fastball is None else 100 * throw.speed / fastball
        within: dict[Quantity, bool | None] = {
            "speed": None if speed is None else self.speed[0] <= speed <= self.speed[1],
            "clock": None if self.clock is None or throw.clock is None else self.clock.holds(throw.clock),
        }
        needed = [within[name] for name in (self.decides if by is None else by)]
        if not needed or None in needed:
            return None
        return all(needed) and (throw.active is None or self.active[0] <= throw.active <= self.active[1])


@dataclass(frozen=True)
class ShareInside:
    """How many throws were inside, of how many that could be judged, and between what shares (0 to 1).

    by: what decided, of all that the box asks for; empty where nothing of it was measured.
    """

    inside: int
    judged: int
    not_judged: int
    interval: Interval | None
    by: tuple[Quantity, ...]


def share_inside(
    throws: Sequence[Throw],
    box: Box,
    fastball: float | None,
    level: float = LEVEL,
    by: tuple[Quantity, ...] | None = None,
) -> ShareInside:
    """Return the share of throws inside a box; throws that cannot be judged are counted apart.

    by: what decides; where it is left out, all that the box asks for and that was measured on any throw.
    """
    if by is None:
        by = tuple(
            name
            for name in box.decides
            if any(box.holds(throw, fastball, (name,)) is not None for throw in throws)
        )
    found = [box.holds(throw, fastball, by) for throw in throws]
    inside, judged = found.count(True), len(found) - found.count(None)
    return ShareInside(inside, judged, found.count(None), wilson(inside, judged, level), by)

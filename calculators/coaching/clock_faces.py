"""Clock faces: how far apart two clocks are, bands of them, and the clock opposite.

Clocks are hours from 0 to 12, the direction in which spin pushes the ball as the pitcher sees it. Twelve
hours are a full turn, so a band may run across 12:00.
"""

from __future__ import annotations

from dataclasses import dataclass

HALF_TURN = 6.0
FULL_TURN = 12.0


def turned(clock: float, hours: float) -> float:
    """Return a clock turned on by `hours`, which may be negative."""
    return (clock + hours) % FULL_TURN


def turn_between(start: float, end: float) -> float:
    """Return the shorter turn from one clock to another in hours: above -6 and up to 6, later is positive."""
    later = (end - start) % FULL_TURN
    return later if later <= HALF_TURN else later - FULL_TURN


def hours_apart(first: float, second: float) -> float:
    """Return how far apart two clocks are, 0 to 6 hours."""
    return abs(turn_between(first, second))


def opposite(clock: float) -> float:
    """Return the clock across the dial: where the same spin pushes when it is thrown the other way round."""
    return turned(clock, HALF_TURN)


def read_clock(text: str) -> float:
    """Return the hours of a clock written as "7:30"; "12:45" is 0.75."""
    hours, _, minutes = text.partition(":")
    return int(hours) % 12 + int(minutes or 0) / 60


@dataclass(frozen=True)
class Band:
    """Clocks from `start` on to `end`, going the way the hands go."""

    start: float
    end: float

    @property
    def half_width(self) -> float:
        """Half the length of the band [hours]."""
        return ((self.end - self.start) % FULL_TURN) / 2

    @property
    def middle(self) -> float:
        """The clock in the middle of the band."""
        return turned(self.start, self.half_width)

    def holds(self, clock: float) -> bool:
        """Return whether a clock lies in the band, its ends included."""
        return self.outside(clock) == 0

    def outside(self, clock: float) -> float:
        """Return how far a clock lies outside the band [hours]; 0 inside."""
        past_start, length = (clock - self.start) % FULL_TURN, (self.end - self.start) % FULL_TURN
        beyond = min(past_start - length, FULL_TURN - past_start)
        return beyond if beyond > 1e-9 else 0.0

    @property
    def opposite(self) -> Band:
        """The band across the dial."""
        return Band(opposite(self.start), opposite(self.end))

    @property
    def other_hand(self) -> Band:
        """The mirror image: the same band for the other hand."""
        return Band(-self.end % FULL_TURN, -self.start % FULL_TURN)


def around(clock: float, hours: float) -> Band:
    """Return the band that reaches `hours` either way of a clock."""
    return Band(turned(clock, -hours), turned(clock, hours))


def read_band(span: tuple[str, str] | list[str]) -> Band:
    """Return the band between two clocks as content writes them, such as ["5:45", "6:45"]."""
    return Band(read_clock(span[0]), read_clock(span[1]))

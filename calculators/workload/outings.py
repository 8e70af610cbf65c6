"""What a pitcher did: outings as they were written down."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

_NOT_LESS = "cannot be less than 0"
_NOT_MORE = "cannot be more than the pitches of the outing"


class OutingError(ValueError):
    """An outing holds a number that cannot be. Names the field and the mend."""

    def __init__(self, field: str, mend: str) -> None:
        super().__init__(f"{field}: {mend}")
        self.field = field
        self.mend = mend


@dataclass(frozen=True)
class Outing:
    """One game of one pitcher. None means not known, never zero.

    date: the civil date on which the game began.
    pitches: thrown to batters. before_last_batter: the count when the last batter came up.
    outs: recorded while pitching. innings_caught: at catcher in that game, a part counting whole.
    game: which game of that day, from 1. team: a label of the reader's own.
    automatic_walks: walks given without throwing. reentered: came back to pitch in the same game.
    called_off: the game does not count as played. other_throws: warm-up and bullpen throws.
    breaking: how many of the pitches were breaking balls; they are inside the count, never on top of it.
    """

    date: datetime.date
    pitches: int | None = None
    before_last_batter: int | None = None
    outs: int | None = None
    innings_caught: int | None = None
    game: int | None = None
    team: str = ""
    automatic_walks: int = 0
    reentered: bool = False
    called_off: bool = False
    other_throws: int | None = None
    breaking: int | None = None

    def __post_init__(self) -> None:
        """Refuse what cannot be; raises OutingError."""
        if (self.pitches or 0) < 0:
            raise OutingError("pitches", _NOT_LESS)
        if (self.before_last_batter or 0) < 0:
            raise OutingError("before_last_batter", _NOT_LESS)
        if (self.outs or 0) < 0:
            raise OutingError("outs", _NOT_LESS)
        if (self.innings_caught or 0) < 0:
            raise OutingError("innings_caught", _NOT_LESS)
        if (self.other_throws or 0) < 0:
            raise OutingError("other_throws", _NOT_LESS)
        if (self.breaking or 0) < 0:
            raise OutingError("breaking", _NOT_LESS)
        if self.automatic_walks < 0:
            raise OutingError("automatic_walks", _NOT_LESS)
        if self.pitches is None:
            return
        if self.before_last_batter is not None and self.before_last_batter > self.pitches:
            raise OutingError("before_last_batter", _NOT_MORE)
        if self.breaking is not None and self.breaking > self.pitches:
            raise OutingError("breaking", _NOT_MORE)

    @property
    def pitched(self) -> bool:
        """False for somebody who faced no batter: no pitch, no out, no automatic walk."""
        return self.pitches != 0 or bool(self.outs) or self.automatic_walks > 0


def by_day(outings: Iterable[Outing]) -> Mapping[datetime.date, tuple[Outing, ...]]:
    """Group outings by date, earliest first; the order in which they were written does not matter."""
    days: dict[datetime.date, tuple[Outing, ...]] = {}
    for outing in sorted(outings, key=_date):
        days[outing.date] = (*days.get(outing.date, ()), outing)
    return {date: _in_order(of_day) if len(of_day) > 1 else of_day for date, of_day in days.items()}


def _date(outing: Outing) -> datetime.date:
    return outing.date


def _in_order(outings: tuple[Outing, ...]) -> tuple[Outing, ...]:
    return tuple(sorted(outings, key=lambda outing: (outing.game or 0, repr(outing))))

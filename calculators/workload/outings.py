"""What a pitcher did: outings as they were written down."""

from __future__ import annotations

import dataclasses
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
    unsure: a part of what was written cannot be read, so the counts here are the least it was.
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
    unsure: bool = False

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
        return self.unsure or self.pitches != 0 or bool(self.outs) or self.automatic_walks > 0


def by_day(outings: Iterable[Outing]) -> Mapping[datetime.date, tuple[Outing, ...]]:
    """Group outings by date, earliest first; the order in which they were written does not matter."""
    days: dict[datetime.date, tuple[Outing, ...]] = {}
    for outing in sorted(outings, key=_date):
        days[outing.date] = (*days.get(outing.date, ()), outing)
    return {date: _in_order(of_day) if len(of_day) > 1 else of_day for date, of_day in days.items()}


def one_count_a_game(outings: Iterable[Outing]) -> tuple[Outing, ...]:
    """Return one day's outings with the larger count of each game that is written with two.

    Those are rows of one team with one game number, both with counts that differ. Rows that are equal, and
    those of somebody who came back in the same game, are left as they are.
    """
    found: list[Outing] = []
    for outing in outings:
        place = next((at for at, other in enumerate(found) if two_counts(outing, other)), None)
        if place is None:
            found.append(outing)
        else:
            found[place] = _larger(found[place], outing)
    return tuple(found)


def two_counts(one: Outing, other: Outing) -> bool:
    """True where two outings are one game of one day that is written with two counts."""
    return (
        one.game is not None
        and (one.date, one.game, one.team) == (other.date, other.game, other.team)
        and (one.pitches, one.outs) != (other.pitches, other.outs)
        and (one.pitches is None) == (other.pitches is None)
        and (one.outs is None) == (other.outs is None)
        and one.pitched
        and other.pitched
        and not (one.reentered or other.reentered)
    )


def _larger(one: Outing, other: Outing) -> Outing:
    """Return the larger of each count of two outings; the count before the last batter where it is one."""
    larger = max(one, other, key=lambda outing: outing.pitches or 0)
    told = one.pitches != other.pitches or one.before_last_batter == other.before_last_batter
    return dataclasses.replace(
        larger,
        before_last_batter=larger.before_last_batter if told else None,
        outs=None if one.outs is None or other.outs is None else max(one.outs, other.outs),
        innings_caught=max(one.innings_caught or 0, other.innings_caught or 0),
        automatic_walks=max(one.automatic_walks, other.automatic_walks),
        called_off=one.called_off and other.called_off,
    )


def _date(outing: Outing) -> datetime.date:
    return outing.date


def _in_order(outings: tuple[Outing, ...]) -> tuple[Outing, ...]:
    return tuple(sorted(outings, key=lambda outing: (outing.game or 0, repr(outing))))

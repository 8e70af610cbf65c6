"""What the handbook expects of a cue from one starting profile, as numbers.

An entry tells the direction of each change and, where anybody has said, its size. What it tells about this
start comes before what it tells about any start.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal

from calculators.coaching.clock_faces import read_clock, turn_between
from calculators.coaching.gap import Ball, Move, percent_of_fastball
from calculators.coaching.target import Pitcher

CueEntry = Mapping[str, Any]
Part = Literal["speed", "active", "clock", "drop", "side", "strikes"]

PARTS: tuple[Part, ...] = ("speed", "active", "clock", "drop", "side", "strikes")

USUAL_SIZE: Mapping[Part, float] = {
    "speed": 1.5,
    "active": 5.0,
    "clock": 0.5,
    "drop": 2.0,
    "side": 2.0,
    "strikes": 0.10,
}
"""Size of a change that an entry gives no size for: mph, percent, hours, inches, share (estimate)."""

_STEADIER = 0.5
_SIX, _SIDE = 6.0, 9.0
_MOST_TURN = 1.0


@dataclass(frozen=True)
class Expected:
    """What a cue tends to do from one start.

    parts: direction and size of each change, as the entry writes it. told: the changes it tells of this very
    start. named: it speaks of this start at all.
    unwanted: it says that the result is usually bad. leads_to: the profile it tends to end in.
    """

    parts: Mapping[Part, Mapping[str, Any]]
    told: frozenset[Part]
    named: bool
    unwanted: bool
    leads_to: str | None
    note: str

    def goes(self, part: Part) -> str:
        """Return the direction of one change, "unknown" where nobody has said."""
        return str(self.parts[part]["goes"])


def expected(cue: CueEntry, start: str) -> Expected:
    """Return what an entry expects of a cue from a starting profile."""
    by_start = {effect["start"]: effect for effect in cue["effects"]}
    here, anywhere = by_start.get(start, {}), by_start.get("any", {})
    parts: dict[Part, Mapping[str, Any]] = {}
    for part in PARTS:
        changes = (effect.get(part) for effect in (here, anywhere))
        known = (change for change in changes if change is not None and change["goes"] != "unknown")
        parts[part] = next(known, {"goes": "unknown"})
    told = frozenset(part for part in PARTS if here.get(part, {}).get("goes", "unknown") != "unknown")
    told_of = here or anywhere
    return Expected(
        parts,
        told,
        bool(here),
        bool(told_of.get("unwanted", False)),
        told_of.get("leads_to"),
        str(told_of.get("note", "")),
    )


def move(effect: Expected, ball: Ball, mirror: float, pitcher: Pitcher) -> Move:
    """Return an expected effect as a change of a right-hander's ball.

    mirror: the clock opposite the fastball's [hours].
    """
    return Move(
        speed=percent_of_fastball(_signed(effect, "speed"), pitcher),
        clock=_turn(effect, ball, mirror),
        active=_signed(effect, "active"),
        drop=_signed(effect, "drop"),
        side=_signed(effect, "side"),
        strikes=_signed(effect, "strikes"),
        steady=_STEADIER if effect.goes("clock") == "steadier" else 0.0,
    )


def most_speed_lost(effect: Expected) -> float:
    """Return the most speed [mph] that the entry says the cue may cost."""
    if effect.goes("speed") != "down":
        return 0.0
    by = effect.parts["speed"].get("by")
    return float(by[1]) if by is not None else USUAL_SIZE["speed"]


def _signed(effect: Expected, part: Part) -> float:
    sign = {"up": 1.0, "down": -1.0}.get(effect.goes(part), 0.0)
    by = effect.parts[part].get("by")
    return sign * (USUAL_SIZE[part] if by is None else (by[0] + by[1]) / 2)


def _turn(effect: Expected, ball: Ball, mirror: float) -> float:
    """Return how many hours later the clock gets, never past where the entry says it ends."""
    toward = {"toward six": _SIX, "toward the side": _SIDE, "toward the mirror": mirror}.get(
        effect.goes("clock")
    )
    if toward is None or ball.clock is None:
        return 0.0
    about = effect.parts["clock"].get("about")
    wanted = turn_between(ball.clock, toward)
    to_end = turn_between(ball.clock, read_clock(about)) if about is not None else None
    if to_end is not None and to_end * wanted > 0:
        return max(-_MOST_TURN, min(_MOST_TURN, to_end))
    size = min(USUAL_SIZE["clock"], abs(wanted))
    return size if wanted > 0 else -size

"""The next practice: which drills, how many throws, one cue, one gate, and when to stop.

The day's room comes from the rest rules and is never exceeded. Breaking balls stay inside their share of the
throws; short spin throws count neither as breaking balls nor among those throws, but in the day's total.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from calculators.coaching.next_cue import Learner, Offer
from calculators.coaching.stop_rules import (
    BREAKING_SHARE,
    BREAKING_SHARE_AT_FIRST,
    FIRST_AGES,
    SPIN_THROWS_A_DAY,
    YOUNGEST_FOR_A_BREAKING_BALL,
    YOUNGEST_FOR_SPIN_GAMES,
    Day,
    Drift,
    Stop,
    breaking_balls_allowed,
    stops,
)
from calculators.words import Message, say

Drills = Mapping[str, Mapping[str, Any]]

TRIAL = "cue-trial"
TRIAL_BLOCK = 10
TRIAL_BLOCK_AT_FIRST = 5
FEWEST_IN_A_TRIAL_BLOCK = 5
FASTBALLS_BETWEEN_BLOCKS = 3
SPIN_THROW_FEET = 15
SPIN_THROWS_WHILE_REST_IS_OWED = 10
"""The most on a day between games (common practice; content/plans/game-week.md)."""
SOFT_BALL_DRILL = "soft-ball-spinners"
"""What comes first under the age of a first breaking ball (common practice)."""
USUAL_DAY = 60
"""Throws planned for where nobody gives a limit (estimate)."""

SPIN_ONLY, PEN = "spin-only", "bullpen"

BREAKING_SHARE_OF_DRILL: Mapping[str, float] = {
    "mixed-catch": 1 / 3,
    "window-catch": 1 / 2,
    "long-side-catch": 1 / 2,
    "pair-throws": 1 / 2,
    "walk-in-throw": 1 / 2,
    "short-box-mix": 1 / 2,
    "blocked-then-mixed": 1 / 2,
    "count-pen": 1 / 2,
    "tell-check": 1 / 2,
    "stand-in-no-swing": 1 / 3,
    "live-at-bats": 1 / 2,
}
"""The share of a drill's throws that are breaking balls; in a drill not named here all of them are."""


@dataclass(frozen=True)
class Room:
    """What the rest rules leave for today: whether the pitcher may throw off a mound, and most throws.

    most: all throws of the day together; None where no limit is known.
    """

    may_pitch: bool = True
    most: int | None = None


@dataclass(frozen=True)
class Part:
    """One part of a practice. `drill` is empty for fastballs and other throws that are no drill.

    blocks: for a trial, how many throws each block has; 0 otherwise. spin: short spin throws among them.
    """

    drill: str
    throws: int
    breaking: int
    blocks: int = 0
    spin: int = 0


@dataclass(frozen=True)
class Plan:
    """A practice, in order.

    stage: what it is for today, which may be an earlier one than was asked for. breaking_most: the most
    breaking balls the day allows. cue: at most one. gate, if_not: of the main drill, in the entry's words.
    stops: what holds back today; with no parts, there is no practice. stop_signs: what ends it.
    """

    stage: str
    parts: tuple[Part, ...]
    breaking_most: int
    cue: str | None
    gate: str
    if_not: str
    stops: tuple[Stop, ...]
    stop_signs: tuple[Message, ...]
    notes: tuple[Message, ...]

    @property
    def throws(self) -> int:
        """All throws together."""
        return sum(part.throws for part in self.parts)

    @property
    def breaking(self) -> int:
        """Breaking balls, short spin throws left out."""
        return sum(part.breaking for part in self.parts)

    @property
    def spin(self) -> int:
        """Short spin throws."""
        return sum(part.spin for part in self.parts)


STOP_SIGNS = (
    say("Any pain in elbow, shoulder or forearm, or numb fingers: stop at once."),
    say("The fastball has lost 2 mph, or the arm looks tired: end it."),
    say("The shape is gone for six throws running: go back one stage today."),
)


def plan_session(
    age: int,
    learner: Learner,
    day: Day,
    room: Room,
    drills: Drills,
    stages: Sequence[str],
    offer: Offer | None = None,
    done: Collection[str] = (),
    drift: Drift | None = None,
    grip_slides: bool = False,
) -> Plan:
    """Return the next practice.

    room: from the rest rules. drills: the handbook's, as plain data by slug; stages: its stages, in order.
    offer: the cue chosen for today, if any. done: drills whose gate has been met. grip_slides: whether the
    ball slid in the hand check.
    """
    holding = stops(day, age, drift)
    nothing = Plan(learner.stage, (), 0, None, "", "", holding, STOP_SIGNS, ())
    if any(stop.weight in ("stop", "ask first", "end the session") for stop in holding):
        return nothing
    if age < YOUNGEST_FOR_SPIN_GAMES:
        return _with(nothing, say("No breaking ball and no spin work at this age. Play catch."))
    if any(stop.weight == "no breaking ball" for stop in holding):
        return _with(nothing, say("No spin throws either. Light catch with the fastball grip, or rest."))
    stage, notes = stage_today(age, learner, holding, room, stages, grip_slides)
    most = USUAL_DAY if room.most is None else room.most
    if room.most is None:
        notes = (*notes, say("No limit for today was given. Your rule book may allow fewer throws."))
    if stage == SPIN_ONLY:
        most_spin = SPIN_THROWS_A_DAY if room.may_pitch else SPIN_THROWS_WHILE_REST_IS_OWED
        parts = _spin_parts(age, min(most, most_spin), drills, done)
    else:
        parts, more = _parts(age, stage, most, drills, stages, offer, done)
        notes = (*notes, *more)
    if not parts:
        return _with(nothing, say("There is no room left today for a useful practice."))
    main = drills[next(part.drill for part in reversed(parts) if part.drill)]
    cue = offer.cue if offer is not None and stage == learner.stage and not grip_slides else None
    if cue is not None and sum(part.breaking + part.spin for part in parts) < FEWEST_IN_A_TRIAL_BLOCK:
        cue, notes = None, (*notes, say("Too few breaking balls today to try a cue. Throw them plain."))
    found = Plan(stage, parts, 0, cue, main["gate"], main["if_not"], holding, STOP_SIGNS, notes)
    return replace(found, breaking_most=breaking_balls_allowed(most - found.spin, age))


def stage_today(
    age: int,
    learner: Learner,
    holding: Sequence[Stop],
    room: Room,
    stages: Sequence[str],
    grip_slides: bool = False,
) -> tuple[str, tuple[Message, ...]]:
    """Return the stage to practise today, and why where it is not the one asked for.

    A first breaking ball starts with spin, then one thing tied down, then catch, and comes to the mound last.
    """
    if age < YOUNGEST_FOR_A_BREAKING_BALL:
        return SPIN_ONLY, (say("Spin games with a soft or light ball, at most 15, and never off a mound."),)
    weights = {stop.weight for stop in holding}
    if "spin throws at most" in weights:
        return SPIN_ONLY, (say("Short spin throws only today."),)
    if not room.may_pitch:
        return SPIN_ONLY, (say("Rest is owed, so no breaking balls today. Short spin throws at most."),)
    if grip_slides:
        why = say("The ball slid in the hand, so no breaking balls today. Short spin throws at most.")
        return SPIN_ONLY, (why,)
    stage = "live" if learner.stage == "game" else learner.stage
    if learner.start == "none-yet":
        asked = stages.index(stage)
        first = next((one for one in stages[:asked] if one not in learner.passed), stage)
        if first != stage:
            why = say("A first breaking ball takes the stages in order. This one comes first.")
            return first, (why,)
    return stage, ()


def stages_passed(gates_met: Iterable[tuple[str, datetime.date]]) -> tuple[str, ...]:
    """Return the stages that count as passed: their gate was met on two different days."""
    days: dict[str, set[datetime.date]] = {}
    for stage, date in gates_met:
        days.setdefault(stage, set()).add(date)
    return tuple(stage for stage, dates in days.items() if len(dates) >= 2)


def stage_after_failing(
    stage: str, stages: Sequence[str], failed_today: int, failed_days_running: int
) -> str:
    """Return the stage to go on with after missed gates (common practice).

    Two missed in a row: one stage back, the same day. Two such days running: two stages back.
    """
    back = 2 if failed_days_running >= 2 else 1 if failed_today >= 2 else 0
    return stages[max(0, stages.index(stage) - back)]


def trial_block(age: int, breaking_most: int) -> int:
    """Return how many throws each of a trial's three blocks can have; 0 where there is no room for one."""
    block = min(TRIAL_BLOCK_AT_FIRST if age <= FIRST_AGES[1] else TRIAL_BLOCK, breaking_most // 3)
    return block if block >= FEWEST_IN_A_TRIAL_BLOCK else 0


def _with(plan: Plan, note: Message) -> Plan:
    return Plan(plan.stage, (), 0, None, "", "", plan.stops, plan.stop_signs, (*plan.notes, note))


def _of_stage(stage: str, age: int, drills: Drills) -> list[str]:
    fitting = [slug for slug, drill in drills.items() if drill["stage"] == stage and drill["youngest"] <= age]
    return sorted(fitting, key=lambda slug: (drills[slug]["order"], slug))


def _most_throws(drill: Mapping[str, Any]) -> int:
    return int(drill["throws"][1]) if drill["throws"] is not None else 0


def _spin_parts(age: int, most: int, drills: Drills, done: Collection[str]) -> tuple[Part, ...]:
    """Return one spin drill of `most` throws or fewer; under 13 the one with a soft ball comes first."""
    choice = _of_stage(SPIN_ONLY, age, drills)
    if age < YOUNGEST_FOR_A_BREAKING_BALL:
        choice.sort(key=lambda slug: slug != SOFT_BALL_DRILL)
    waiting = [slug for slug in choice if slug not in done] or choice
    throws = min(_most_throws(drills[waiting[0]]), most) if waiting else 0
    return (Part(waiting[0], throws, 0, spin=throws),) if throws > 0 else ()


def _parts(
    age: int,
    stage: str,
    most: int,
    drills: Drills,
    stages: Sequence[str],
    offer: Offer | None,
    done: Collection[str],
) -> tuple[tuple[Part, ...], tuple[Message, ...]]:
    allowed, notes = breaking_balls_allowed(most, age), []
    block = trial_block(age, allowed) if offer is not None and stage == PEN and TRIAL in drills else 0
    if block:
        between = 2 * FASTBALLS_BETWEEN_BLOCKS
        main = Part(TRIAL, 3 * block + between, 3 * block, block)
        notes.append(say("First the plain block, then the cue, then plain again. Three fastballs between."))
        if block < TRIAL_BLOCK:
            notes.append(say("The blocks are short, so take the result as a hint at most."))
    else:
        choice = [slug for slug in _of_stage(stage, age, drills) if slug != TRIAL]
        if not choice:
            return (), ()
        slug = next((one for one in choice if one not in done), choice[-1])
        share = BREAKING_SHARE_OF_DRILL.get(slug, 1.0)
        throws = min(_most_throws(drills[slug]), int(allowed / share), most)
        main = Part(slug, throws, math.ceil(throws * share - 1e-9))
    if main.breaking == 0:
        return (), ()
    first = _easier(drills[main.drill], stage, age, drills, stages, allowed - main.breaking)
    parts = [*first, main]
    others = _others(parts, age)
    if sum(part.throws for part in parts) + others > most:
        parts = [main]
        others = _others(parts, age)
    if others:
        parts.insert(0, Part("", others, 0))
        notes.append(say("The other throws are warm-up, catch, fastballs and changeups."))
        notes.append(
            say("If there are fewer of them, throw fewer breaking balls. Add none just to fit more in.")
        )
    return tuple(parts), tuple(notes)


def _others(parts: Sequence[Part], age: int) -> int:
    """Return how many other throws keep the breaking balls inside their share."""
    share = BREAKING_SHARE_AT_FIRST if age <= FIRST_AGES[1] else BREAKING_SHARE
    breaking = sum(part.breaking for part in parts)
    counted = sum(part.throws - part.spin for part in parts)
    return max(0, math.ceil(breaking / share - 1e-9) - counted)


def _easier(
    drill: Mapping[str, Any], stage: str, age: int, drills: Drills, stages: Sequence[str], room: int
) -> tuple[Part, ...]:
    """Return a short turn at the drill one goes back to, where it belongs to an earlier stage."""
    for slug in drill["back_to"]:
        back = drills.get(slug)
        if back is None or back["youngest"] > age or stages.index(back["stage"]) >= stages.index(stage):
            continue
        throws = _most_throws(back) // 2
        far = back["distance_ft"] is None or back["distance_ft"][1] > SPIN_THROW_FEET
        breaking = math.ceil(throws * BREAKING_SHARE_OF_DRILL.get(slug, 1.0)) if far else 0
        part = Part(slug, throws, breaking, spin=0 if far else throws)
        return (part,) if breaking <= room and throws else ()
    return ()

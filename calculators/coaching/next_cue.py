"""The next cue: the handbook's cues ranked for one pitcher, one target and one day.

The order of things is fixed. Pain stops everything. Then what the start, the age, the stage and the target
rule out is left out, and said why. What remains is ranked by how much nearer to the target it should bring
the ball. The handbook's expectation counts as a few days of trials; the pitcher's own days are averaged with
it, so that with enough of them they outweigh it.

References
----------
[1] Efron B. and Morris C., Stein's paradox in statistics, Scientific American 236, 1977: own results are
    drawn toward what is expected, less and less as they add up.
[2] Oki and others, Perceptual and Motor Skills, 2018: thinking of the wrist shortened hard throws, against
    thinking of the outcome.
"""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from calculators.coaching.comparison import FULL_BLOCK, Measured, Trial
from calculators.coaching.cue_effects import CueEntry, Expected, expected, move
from calculators.coaching.gap import (
    STEP,
    Ball,
    Move,
    Now,
    Wish,
    ball_now,
    mirror_of,
    right_handers,
    shortfalls,
)
from calculators.coaching.own_moves import KEPT, TOO_FEW, own_move, own_words, weight_of, why
from calculators.coaching.profiles import Profiles
from calculators.coaching.stop_rules import Day, Drift, Stop, stops
from calculators.coaching.target import Pitcher, Target
from calculators.coaching.verdict import Decision
from calculators.words import Message, say

Focus = Literal["analogy", "outside", "inside", "task"]
Cues = Mapping[str, CueEntry]

BELIEF: Mapping[str, float] = {"low": 0.40, "medium": 0.60, "high": 0.80}
"""How likely an expected change is to come about, by the entry's confidence (estimate)."""

DAYS_THE_HANDBOOK_COUNTS: Mapping[str, int] = {"low": 1, "medium": 2, "high": 4}
"""As how many days of the pitcher's own trials the entry counts, by its confidence (estimate)."""

_MEANT_FOR_THIS_START = 0.20
_SERVES_THE_SHAPE = 0.10
_LEADS_TO_THE_SHAPE = 0.10
_SAID_OF_ANY_START = 0.70
_MEANT_FOR_OTHERS = 0.30
_INSIDE_FOR_SPEED = 0.50
_KIND_FAILED = 0.50
_KIND_FAILS_AFTER = 2
_SLOW_BY = 0.5
"""A ball is called too slow past this many steps below its box, about 1 mph; less may be the gun (estimate)."""
_LEAST_USE = 0.05

ONE_THING = say("One cue at a time. Keep the grip, the ball and the distance as they are.")

ON_A_MOUND: frozenset[str] = frozenset({"short-box", "bullpen", "live", "game"})
"""Stages on a mound, closed to a first breaking ball until the stages before them are passed."""

PROFILE_OF_SHAPE: Mapping[str, str] = {
    "straight-downer": "downer",
    "hard-downer": "downer",
    "three-quarter-drop": "three-quarter-drop",
    "slurve": "slurve",
    "sweeping-curve": "sweeping",
    "sweeper": "sweeping",
    "bullet-slider": "bullet",
    "slow-loop": "loopy",
}
"""The profile that a shape is when it is thrown."""


@dataclass(frozen=True)
class Learner:
    """Where the pitcher stands with the breaking ball.

    start: a profile of the handbook, recorded before choosing a cue. stage: of learning, today.
    passed: stages whose gate was met on two different days. cue: the one in use, if any.
    trials: what the last session shows of cues, where the log does not hold that day yet.
    """

    start: str
    stage: str
    passed: tuple[str, ...] = ()
    cue: str = ""
    trials: tuple[Logged, ...] = ()


@dataclass(frozen=True)
class Logged:
    """What one day's trial of a cue did to this pitcher: cue minus plain, in the unit of each quantity.

    throws: how many the smaller kind had. decision: what was written down.
    """

    cue: str
    date: datetime.date | None
    changes: Mapping[Measured, float]
    throws: int = FULL_BLOCK
    decision: Decision = "try again"


def logged_from(trial: Trial, decision: Decision) -> Logged:
    """Return a trial as an entry of the pitcher's log."""
    changes = {name: difference.change for name, difference in trial.differences.items()}
    return Logged(trial.cue, trial.date, changes, min(len(trial.plain), len(trial.cued)), decision)


@dataclass(frozen=True)
class Offer:
    """One cue worth trying.

    score: steps nearer to the target that it should bring. by_the_handbook, by_own_days: what it is made of;
    the second is None without any. own_weight: the share of the pitcher's own days in it, 0 to 1.
    why: what it should do for this pitcher. may_break and stop_at: the entry's own words.
    kept: the pitcher's log says to keep it.
    """

    cue: str
    focus: Focus
    score: float
    by_the_handbook: float
    by_own_days: float | None
    own_weight: float
    confidence: str
    why: tuple[Message, ...]
    may_break: str
    stop_at: str
    kept: bool = False


@dataclass(frozen=True)
class LeftOut:
    """A cue that is not offered, and why."""

    cue: str
    reason: Message


@dataclass(frozen=True)
class OtherTarget:
    """A cue that would give what is short, but leads away from this shape to another one."""

    cue: str
    shape: str


@dataclass(frozen=True)
class Advice:
    """Cues to try, best first, but a cue that is kept and in use before any other; `ONE_THING` goes with them.

    stops: reasons to stop or hold back; with pain, an open question about it, or a tired arm, there are no
    offers. first_stage: the stage to go back to before any cue on a mound.
    other_targets: cues that would help, but toward another shape. change_kind: kinds that failed twice.
    """

    offers: tuple[Offer, ...]
    left_out: tuple[LeftOut, ...]
    stops: tuple[Stop, ...] = ()
    first_stage: str | None = None
    other_targets: tuple[OtherTarget, ...] = ()
    change_kind: tuple[Focus, ...] = ()


def next_cue(
    target: Target,
    learner: Learner,
    day: Day,
    cues: Cues,
    profiles: Profiles,
    stages: Sequence[str],
    now: Now | None = None,
    short_of: Collection[Wish] = (),
    own: Sequence[Logged] = (),
    drift: Drift | None = None,
) -> Advice:
    """Return the cues worth trying next.

    target: comes first; nothing is offered without one. day, drift: how the pitcher is today.
    cues, profiles: the handbook's, as plain data by slug. stages: the slugs of its stages, in order.
    now: what was measured; short_of: what the coach says is missing.
    own: the pitcher's log of trials, oldest first; entries without throws do not count.
    """
    holding = stops(day, target.pitcher.age, drift)
    if any(stop.weight in ("stop", "ask first", "end the session") for stop in holding):
        return Advice((), (), holding)
    if first := _first_stage(learner, stages):
        return Advice((), (), holding, first)
    now = now or Now()
    asked = _Asked(target, learner, ball_now(learner.start, now, target, profiles, short_of), own, cues)
    offers: list[Offer] = []
    left_out: list[LeftOut] = []
    elsewhere: list[OtherTarget] = []
    for slug, cue in cues.items():
        effect = expected(cue, learner.start)
        if reason := asked.against(slug, cue, effect):
            left_out.append(LeftOut(slug, reason))
            if shape := asked.other_shape(slug, cue, effect):
                elsewhere.append(OtherTarget(slug, shape))
            continue
        offer = asked.offer(slug, cue, effect)
        if offer.score > _LEAST_USE or asked.goes_on(offer):
            offers.append(replace(offer, why=(*offer.why, TOO_FEW)) if now.few else offer)
        else:
            little = TOO_FEW if now.few else say("It does little for what is missing.")
            left_out.append(LeftOut(slug, KEPT if offer.kept else little))
    offers.sort(key=lambda offer: (not asked.goes_on(offer), -offer.score, cues[offer.cue]["order"]))
    return Advice(tuple(offers), tuple(left_out), holding, None, tuple(elsewhere), asked.failed_kinds)


def _first_stage(learner: Learner, stages: Sequence[str]) -> str | None:
    """Return the earliest stage not passed, where a first breaking ball is asked for on a mound too soon."""
    if learner.start != "none-yet" or learner.stage not in ON_A_MOUND:
        return None
    before = stages[: stages.index(learner.stage)] if learner.stage in stages else stages
    return next((stage for stage in before if stage not in learner.passed), None)


class _Asked:
    """All that one question holds, so that each cue can be weighed in turn."""

    def __init__(
        self, target: Target, learner: Learner, ball: Ball, own: Sequence[Logged], cues: Cues
    ) -> None:
        self.target, self.learner, self.ball = target, learner, ball
        self.pitcher: Pitcher = target.pitcher
        self.box = right_handers(target.box, target.pitcher)
        self.mirror = mirror_of(target.pitcher, self.box)
        self.missing = shortfalls(ball, self.box)
        slowest = self.box.speed[0] - _SLOW_BY * STEP["speed"]
        self.too_slow = ball.speed is not None and ball.speed < slowest
        self.own = [entry for entry in own if entry.cue in cues and entry.throws > 0]
        dropped = Counter(cues[entry.cue]["focus"] for entry in self.own if entry.decision == "drop")
        self.failed_kinds: tuple[Focus, ...] = tuple(
            focus for focus, times in dropped.items() if times >= _KIND_FAILS_AFTER
        )

    def against(self, slug: str, cue: CueEntry, effect: Expected) -> Message | None:
        """Return why a cue is not offered, None where nothing stands against it."""
        log = [entry for entry in self.own if entry.cue == slug]
        if cue.get("retired"):
            return say("It is retired. The handbook lists it so that nobody uses it.")
        if self.pitcher.age < cue["youngest"]:
            return say("Not before age {age}.", age=str(cue["youngest"]))
        if log and log[-1].decision == "drop":
            return say("You tried it and dropped it.")
        if cue["stages"] and self.learner.stage not in cue["stages"]:
            return say("Not at this stage.")
        if self.target.shape in cue["never_for"]:
            return say("It spoils the shape you are aiming for.")
        if effect.goes("clock") == "toward six" and not self.target.natural.intersection(cue["shapes"]):
            return say("It asks for more drop than this arm slot reaches.")
        if effect.unwanted and not _proven(log):
            return say("From this start it usually does harm.")
        if self.too_slow and effect.goes("speed") == "down":
            return say("It makes the ball slower, and yours is too slow. A slow arm is no way to more drop.")
        return None

    def other_shape(self, slug: str, cue: CueEntry, effect: Expected) -> str | None:
        """Return the shape a cue would lead to, where it would help this start but spoils the target."""
        meant = self.learner.start in cue["starts"] and not effect.unwanted and not cue.get("retired")
        helps = self.too_slow and effect.goes("speed") == "up"
        spoils = self.target.shape in cue["never_for"]
        return next(iter(cue["shapes"]), None) if meant and helps and spoils else None

    def offer(self, slug: str, cue: CueEntry, effect: Expected) -> Offer:
        """Return a cue with its score: the handbook's expectation and the pitcher's own days, averaged."""
        gains = self._gains(move(effect, self.ball, self.mirror, self.pitcher))
        weighed = {wish: gain * self._trust(wish, gain, cue, effect) for wish, gain in gains.items()}
        by_the_handbook = sum(weighed.values()) * self._belief(cue, effect)
        log = [entry for entry in self.own if entry.cue == slug]
        own = [entry for entry in (*log, *self.learner.trials) if entry.cue == slug and entry.throws > 0]
        own_days = [(entry.changes, entry.throws) for entry in own]
        days, prior = (
            sum(weight_of(entry.throws) for entry in own),
            DAYS_THE_HANDBOOK_COUNTS[cue["confidence"]],
        )
        gained = sum(self._gains(own_move(own_days, self.pitcher)).values())
        kept = _proven(log)
        return Offer(
            slug,
            cue["focus"],
            (prior * by_the_handbook + days * gained) / (prior + days),
            by_the_handbook,
            gained if own else None,
            days / (prior + days),
            cue["confidence"],
            (*((KEPT,) if kept else ()), *why(weighed, self.missing), *own_words(len(own), gained)),
            cue["over_correction"],
            cue["stop_sign"],
            kept,
        )

    def goes_on(self, offer: Offer) -> bool:
        """Return whether a cue is in use and kept, so that no other comes before it."""
        return offer.kept and offer.cue == self.learner.cue

    def _gains(self, change: Move) -> dict[Wish, float]:
        """Return by how many steps a change brings the ball nearer, by what is short; negative is farther."""
        after = shortfalls(self.ball.after(change), self.box)
        return {wish: before - after[wish] for wish, before in self.missing.items()}

    def _belief(self, cue: CueEntry, effect: Expected) -> float:
        belief = BELIEF[cue["confidence"]]
        meant = self.learner.start in cue["starts"]
        if meant:
            belief += _MEANT_FOR_THIS_START
        if self.target.shape in cue["shapes"]:
            belief += _SERVES_THE_SHAPE
        if effect.leads_to is not None and effect.leads_to == PROFILE_OF_SHAPE.get(self.target.shape):
            belief += _LEADS_TO_THE_SHAPE
        return belief * (_KIND_FAILED if cue["focus"] in self.failed_kinds else 1.0)

    def _trust(self, wish: Wish, gain: float, cue: CueEntry, effect: Expected) -> float:
        """Return how far one expected change is trusted: less where it is told of any start, or of others."""
        trust = 1.0
        if self.learner.start not in cue["starts"] and not effect.named:
            trust = _MEANT_FOR_OTHERS
        elif ("clock" if wish == "steady" else wish) not in effect.told:
            trust = _SAID_OF_ANY_START
        inside = cue["focus"] == "inside" and wish in ("speed", "strikes") and gain > 0
        return trust * (_INSIDE_FOR_SPEED if inside else 1.0)


def _proven(log: Sequence[Logged]) -> bool:
    """Return whether the pitcher's own days have settled that a cue is to be kept."""
    return bool(log) and log[-1].decision == "keep"

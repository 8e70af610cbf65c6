"""The pairing calculator: a fastball and a breaking ball side by side, and which way to move them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import combinations

from calculators.coaching.batting import commit_time
from calculators.coaching.pairing import (
    Apart,
    Doubt,
    Pitch,
    Pull,
    Split,
    aimed,
    angle_apart,
    doubts,
    merge,
    pulls,
)
from calculators.desk.answers import Answer, Calculator, Fact, HowSure, Outcome, Shelf
from calculators.desk.drawing import Drawing
from calculators.desk.fields import Values
from calculators.desk.measures import Measures
from calculators.desk.movement_words import glove_or_arm_side
from calculators.desk.pairing_fields import (
    BELOW_THE_ZONE,
    EXAMPLE_PAIR,
    PAIRING_GROUPS,
    TypedPair,
    pairing_fields,
    read_pair,
)
from calculators.desk.pairing_figures import Bar, bars, paths
from calculators.desk.pairing_tables import change_name, changes_table, ladder_table, time_gaps
from calculators.physics.units import DEGREE, FOOT, MPH
from calculators.words import Message, number, say

FIRMER = 3 * MPH
SLOW_LOOP, HARDEST_CURVE = 0.77, 0.89
"""Shares of the fastball's speed outside which a curve is called something else (common practice)."""

MOSTLY_BULLET = 0.4
YOUTH_MOUND = 51 * FOOT
SPEED_DOUBT = 1 * MPH
CAUSES_SHOWN = 4


@dataclass(frozen=True)
class Worked:
    """A pair worked through.

    commit: when the swing must start [s]. hump [m]. split: from one line. pulls and doubts: of that split.
    """

    typed: TypedPair
    measures: Measures
    commit: float
    hump: float
    split: Split
    pulls: tuple[Pull, ...]
    doubts: tuple[Doubt, ...]

    @property
    def later(self) -> float:
        """How much later the breaking ball arrives [s]."""
        return self.typed.pair.later

    @property
    def at_commit(self) -> Apart:
        """How far apart the two are when the swing must start."""
        return self.typed.pair.at_time(self.commit)

    @property
    def climbs(self) -> bool:
        """Whether there is a hump that rounds to anything."""
        return self.hump > 0 and self.measures.whole(self.hump) > 0


def work_out(values: Values, _: Shelf) -> Outcome:
    """Return what is between the two pitches, or the problems that involve several fields."""
    typed = read_pair(values)
    if not isinstance(typed, TypedPair):
        return typed
    measures = Measures("metric" if values["units"] == "metric" else "imperial")
    line = typed.pair.first.start.velocity
    right_handed = typed.glove > 0
    now, pulled = pulls(typed.fastball, typed.breaking, line, typed.setting, right_handed)
    worked = Worked(
        typed,
        measures,
        commit_time(typed.pair.first.end.time, typed.swing),
        typed.pair.hump(),
        now,
        pulled,
        doubts(typed.fastball, typed.breaking, line, typed.setting, right_handed),
    )
    headline = say(
        "The breaking ball is {slower} slower and gets to the plate {seconds} seconds later.",
        slower=measures.speed(typed.fastball.speed - typed.breaking.speed),
        seconds=number(worked.later, 2),
    )
    return Answer(
        headline=headline,
        more=tuple(_more(worked)),
        drawings=_drawings(worked, headline),
        facts=tuple(_facts(worked)),
        tables=(
            changes_table(worked.pulls, typed, now, measures),
            ladder_table(typed, measures),
        ),
        how_sure=_how_sure(worked),
        cannot_tell=(
            say("Whether it gets hitters out. This is geometry and no grade."),
            say("How the arm looks. A slow arm gives the pitch away whatever the gap."),
            say("When one certain hitter decides. Some start sooner, some later."),
        ),
        cautions=tuple(_cautions(worked)),
        sources=("adair-physics", "sawicki-2003", "nathan-2008", "rulebook-ball", "rulebook-field"),
    )


def _more(worked: Worked) -> Iterator[Message]:
    measures, typed = worked.measures, worked.typed
    yield say("It has {percent} percent of the fastball's speed.", percent=_percent(typed))
    apart = worked.at_commit
    behind = _behind(apart, measures)
    height = measures.spelled(apart.up)
    if measures.whole(apart.up) == 0:
        yield say(
            "When a swing at the fastball must start, it is at the same height and {behind} behind.",
            behind=behind,
        )
    elif apart.up > 0:
        yield say(
            "When a swing at the fastball must start, it is {height} higher and {behind} behind.",
            height=height,
            behind=behind,
        )
    else:
        yield say(
            "When a swing at the fastball must start, it is {height} lower and {behind} behind.",
            height=height,
            behind=behind,
        )
    yield from _hump_words(worked)
    yield _one_line(worked)
    first = worked.pulls[0]
    change, amount = change_name(first, typed, measures), measures.small(abs(first.apart), 1)
    if first.apart >= 0:
        yield say(
            "Of four small changes this one parts them most. {change} adds {amount}.",
            change=change,
            amount=amount,
        )
    else:
        yield say(
            "Of four small changes this one counts most. {change} brings them {amount} closer.",
            change=change,
            amount=amount,
        )


def _hump_words(worked: Worked) -> Iterator[Message]:
    typed, measures = worked.typed, worked.measures
    if not worked.climbs:
        yield say("A third of the way to the plate it is not above the fastball's path. There is no hump.")
        return
    yield say(
        "A third of the way to the plate it is {hump} above the fastball's path. That is the hump.",
        hump=measures.spelled(worked.hump),
    )
    if typed.breaking.speed + FIRMER >= typed.fastball.speed:
        return
    height = typed.pair.second.end.position[2]
    firmer = Pitch(typed.breaking.speed + FIRMER, typed.breaking.spin)
    firm = measures.spelled(_hump_of(typed, firmer, height))
    step = measures.speed(FIRMER)
    if typed.ends == "zone":
        low = _hump_of(typed, typed.breaking, typed.zone.bottom - BELOW_THE_ZONE)
        yield say(
            "Thrown {step} firmer, the hump is {firm}. Aimed at the shoe tops, it is {low}.",
            step=step,
            firm=firm,
            low=measures.spelled(low),
        )
    else:
        yield say("Thrown {step} firmer, the hump is {firm}.", step=step, firm=firm)


def _hump_of(typed: TypedPair, pitch: Pitch, height: float) -> float:
    other = replace(typed.pair, second=aimed(pitch, (0.0, height), typed.setting))
    return other.hump()


def _one_line(worked: Worked) -> Message:
    """Say where the breaking ball would go on the fastball's line."""
    typed, measures, now = worked.typed, worked.measures, worked.split
    side = glove_or_arm_side(typed.glove * now.across, measures, 0)
    if typed.pair.first.end.position[2] < now.lower:
        return say(
            "Thrown on the fastball's line it would bounce, {side} of the fastball.",
            side=side,
        )
    lower = measures.spelled(now.lower)
    if now.lower < 0:
        return say(
            "Thrown on the fastball's line it would cross {higher} higher and {side}.",
            higher=lower,
            side=side,
        )
    return say(
        "Thrown on the fastball's line it would cross {lower} lower and {side}.", lower=lower, side=side
    )


def _drawings(worked: Worked, headline: Message) -> tuple[Drawing, ...]:
    typed, measures = worked.typed, worked.measures
    hump = measures.small(worked.hump) if worked.climbs else None
    rows = tuple(
        Bar(change_name(pull, typed, measures), pull.apart, measures.small_signed(pull.apart, 1))
        for pull in worked.pulls
    )
    title = say("Which way to move it")
    told = say(
        "Bars for four small changes of the breaking ball. They show how far the two pitches part. {facts}",
        facts=say("The table below holds the same numbers."),
    )
    return (paths(typed, worked.commit, hump, headline), bars(rows, title, told))


def _facts(worked: Worked) -> Iterator[Fact]:
    typed, measures, now = worked.typed, worked.measures, worked.split
    first, second = typed.pair.first, typed.pair.second
    yield Fact(
        say("Slower by"),
        measures.speed(typed.fastball.speed - typed.breaking.speed, 1),
        note=say("{percent}% of the fastball", percent=_percent(typed)),
    )
    yield Fact(
        say("Later by"),
        say("{value} ms", value=number(1000 * worked.later)),
        say("give or take {value} ms", value=number(1000 * _later_doubt(worked))),
        say(
            "{fast} s for the fastball, {slow} s for the breaking ball",
            fast=number(first.end.time, 3),
            slow=number(second.end.time, 3),
        ),
    )
    apart = worked.at_commit
    yield Fact(
        say("Apart when the swing must start"),
        measures.small(apart.off_line, 1),
        note=say(
            "{behind} behind, {seconds} s after release",
            behind=_behind(apart, measures),
            seconds=number(worked.commit, 2),
        ),
    )
    yield Fact(
        say("Hump"),
        measures.small(worked.hump, 1) if worked.climbs else say("none"),
        note=say("above the fastball's path, a third of the way"),
    )
    at_plate = typed.pair.at_plate()
    if measures.whole(at_plate.off_line):
        yield Fact(
            say("Apart at the plate, as aimed"),
            measures.small(at_plate.off_line, 1),
            note=say("where each crosses, {value} ms apart", value=number(1000 * worked.later)),
        )
    yield Fact(
        say("Apart at the plate, from one line"),
        measures.small(now.apart, 1),
        say("give or take {amount}", amount=measures.small(_apart_doubt(worked), 1)),
        say(
            "{lower} lower, {side}",
            lower=measures.small(now.lower),
            side=glove_or_arm_side(typed.glove * now.across, measures, 0),
        ),
    )
    yield Fact(
        say("Directions out of the hand"),
        say("{angle}° apart", angle=number(angle_apart(first, second) / DEGREE, 1)),
    )


def _how_sure(worked: Worked) -> HowSure:
    measures = worked.measures
    sentence = say(
        "The time gap is good to {later} milliseconds, if each speed is right to {speed}. "
        "The distance from one line is good to {apart}. Its largest doubt is {cause}.",
        later=number(1000 * _later_doubt(worked)),
        speed=measures.speed(SPEED_DOUBT),
        apart=measures.spelled(_apart_doubt(worked)),
        cause=_cause(worked.doubts[0]),
    )
    causes = tuple(
        say("{cause}: {amount}", cause=_cause(each), amount=measures.small(abs(each.apart), 1))
        for each in worked.doubts[:CAUSES_SHOWN]
    )
    when = say(
        "The swing takes about 150 milliseconds by a published count. For a young hitter that is a guess."
    )
    return HowSure(sentence, (*causes, when))


def _cause(doubt: Doubt) -> Message:
    pitch = say("the fastball") if doubt.which == "first" else say("the breaking ball")
    words = {
        "speed": say("the speed of {pitch}, 1 mph either way", pitch=pitch),
        "rate": say("the spin of {pitch}, 100 rpm either way", pitch=pitch),
        "clock": say("the clock of {pitch}, 15 minutes either way", pitch=pitch),
        "active": say("the active share of {pitch}, 5 points either way", pitch=pitch),
        "lift": say("how hard air pushes {pitch}", pitch=pitch),
    }
    return words[doubt.cause]


def _cautions(worked: Worked) -> Iterator[Message]:
    typed = worked.typed
    share = typed.breaking.speed / typed.fastball.speed
    if share < SLOW_LOOP:
        yield say(
            "Below 77 percent of the fastball it is a slow loop, for one easy strike (common practice)."
        )
    if share > HARDEST_CURVE:
        yield say("Above 89 percent of the fastball, call it a slider or a cutter (common practice).")
    breaking = [("", typed.breaking.spin.clock, typed.breaking.speed)]
    breaking += [
        (other.kind, other.clock, other.speed)
        for other in typed.others
        if other.kind == "breaking" and other.clock is not None
    ]
    if any(merge(a[1], a[2], b[1], b[2]) for a, b in combinations(breaking, 2)):
        yield say(
            "Two breaking balls are within one hour of clock and 4 mph. They run into one. "
            "Move one of them, or leave one out (common practice)."
        )
    if typed.breaking.spin.active < MOSTLY_BULLET:
        yield say("This is mostly bullet spin. The clock then tells little.")
    if typed.mound < YOUTH_MOUND:
        yield say("To age 12 the joint US guideline asks for fastball and changeup only.")


def _percent(typed: TypedPair) -> str:
    return number(100 * typed.breaking.speed / typed.fastball.speed)


def _behind(apart: Apart, measures: Measures) -> Message:
    whole = round(apart.behind / FOOT) * FOOT
    return measures.far(whole if measures.system == "imperial" else apart.behind)


def _later_doubt(worked: Worked) -> float:
    """Return how far the time gap may be off where each speed is off by SPEED_DOUBT [s]."""
    typed = worked.typed
    slower, faster = typed.pair.second.end.time, typed.pair.first.end.time
    return SPEED_DOUBT * math.hypot(slower / typed.breaking.speed, faster / typed.fastball.speed)


def _apart_doubt(worked: Worked) -> float:
    return math.hypot(*(each.apart for each in worked.doubts))


CALCULATOR = Calculator(
    name="pairing",
    title=say("Fastball and breaking ball together"),
    fields=pairing_fields,
    example=EXAMPLE_PAIR,
    work_out=work_out,
    common_cases=lambda _: (time_gaps(),),
    groups=PAIRING_GROUPS,
)

"""A made-up league's board: seconds, growth and memory."""

from __future__ import annotations

import datetime
import functools
import json
import random
import tracemalloc
from collections.abc import Iterator, Mapping
from typing import Any

from bench.measure import Figure, best_seconds
from build_tools.places import Places
from calculators.workload.ages import Pitcher
from calculators.workload.board import board
from calculators.workload.library import rule_set
from calculators.workload.outings import Outing
from calculators.workload.rules import RuleSet

DAY = datetime.date(2026, 5, 16)
PITCHERS = 5_000
GAMES = 20
STEPS = (1_000, 10_000, 100_000, 1_000_000)


def figures() -> Iterator[Figure]:
    """Measure and yield each figure."""
    rules = rule_set("little-league", _shelf())
    roster, outings = league(PITCHERS, GAMES)
    whole = best_seconds(lambda: board(rules, roster, outings, DAY), 3)
    yield Figure("league: board of 5,000 pitchers and 100,000 outings, seconds", whole, 1)
    one = {"player 0": roster["player 0"]}
    alone = best_seconds(lambda: board(rules, one, outings, DAY), 20)
    yield Figure("league: one arm's answer, ms", alone * 1000, 20)
    second = rule_set("usa-joint-2015", _shelf())
    both = best_seconds(lambda: board(rules, roster, outings, DAY, beside=second), 3)
    yield Figure("league: the same with the joint guideline beside it, seconds", both, 1)
    yield from _growth(rules)
    tracemalloc.start()
    board(rules, *league(PITCHERS, GAMES), DAY)
    most = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    yield Figure("league: most memory for league and board, MB", most / 1e6, 300)


def league(pitchers: int, games: int) -> tuple[dict[str, Pitcher], dict[str, list[Outing]]]:
    """Invent a league whose pitchers throw about every sixth day."""
    draw = random.Random(1)
    roster = {f"player {number}": Pitcher(age=draw.randint(7, 16)) for number in range(pitchers)}
    outings = {
        name: [
            Outing(DAY - datetime.timedelta(6 * back + draw.randint(0, 2)), draw.randint(5, 70))
            for back in range(games)
        ]
        for name in roster
    }
    return roster, outings


def _growth(rules: RuleSet) -> Iterator[Figure]:
    """Each step has ten times the outings of the one before; a straight line takes ten times the time."""
    spent: list[float] = []
    for outings in STEPS:
        spent.append(best_seconds(functools.partial(board, rules, *league(outings // GAMES, GAMES), DAY), 3))
        if len(spent) > 1:
            yield Figure(
                f"league: ten times the outings, {outings:,}, times the time", spent[-1] / spent[-2], 15
            )


def _shelf() -> Mapping[str, Any]:
    shelf: Mapping[str, Any] = json.loads((Places().build / "shelf.json").read_text(encoding="utf-8"))
    rules: Mapping[str, Any] = shelf["rules"]
    return rules

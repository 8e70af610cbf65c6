"""How a figure is taken and told: the best of a few runs, beside its bound."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True)
class Figure:
    """One measured number and the bound it is held to; `at_least` turns the bound round."""

    name: str
    value: float
    bound: float
    at_least: bool = False

    @property
    def holds(self) -> bool:
        """Whether the bound is kept."""
        return self.value >= self.bound if self.at_least else self.value <= self.bound

    @property
    def line(self) -> str:
        """The figure as one line of the report."""
        kept, way = ("ok  " if self.holds else "OVER"), ("at least" if self.at_least else "at most")
        return f"{kept} {self.value:9.3g}, {way} {self.bound:g}: {self.name}"


def best_seconds(work: Callable[[], object], runs: int = 5) -> float:
    """Return the shortest time the work took, in seconds of this process's own processor time."""
    spent = []
    for _ in range(runs):
        began = time.process_time()
        work()
        spent.append(time.process_time() - began)
    return min(spent)

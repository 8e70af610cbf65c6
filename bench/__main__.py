"""Measure everything and print it: `python -m bench`. The exit code is 1 where a bound is passed."""

from __future__ import annotations

import sys
from collections.abc import Iterator

from bench import build, flight, large_files, league, runtime_start, throws
from bench.measure import Figure
from build_tools.places import Places


def figures() -> Iterator[Figure]:
    """Measure and yield every figure, the quick ones first."""
    yield from flight.figures()
    yield from throws.figures()
    yield from league.figures()
    yield from build.figures()
    yield from large_files.figures(Places().site)
    waiting = runtime_start.measure(Places().site)
    for name, (value, bound) in waiting.checks.items():
        yield Figure(f"browser: {name}", value, bound)


def main() -> int:
    """Print each figure as it is measured."""
    held = True
    for figure in figures():
        print(figure.line, flush=True)
        held = held and figure.holds
    return 0 if held else 1


if __name__ == "__main__":
    sys.exit(main())

"""The largest files the house promises to take, answered in a real browser: seconds and memory."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from pathlib import Path

from playwright.sync_api import Page

from bench.league import DAY, GAMES, PITCHERS, league
from bench.measure import Figure
from bench.runtime_start import examples_of, served
from bench.throws import MANY, sheet
from build_tools.chromium import open_chromium
from calculators.desk.files import as_typed

MOST_SECONDS = 5.0
MOST_MEGABYTES = 300.0


def figures(site: Path) -> Iterator[Figure]:
    """Measure and yield each figure, against a site that was built."""
    examples = examples_of(site)
    with served(site) as address, open_chromium() as browser:
        page = browser.new_page()
        page.goto(address)
        for name, what, typed in (
            ("league-board", f"board of {PITCHERS:,} pitchers and {PITCHERS * GAMES:,} outings", _files()),
            ("read-session", f"{MANY:,} throws read", {"sheet": sheet(MANY), "day": ""}),
            ("cue-trial", f"{MANY:,} throws compared", {"sheet": sheet(MANY)}),
        ):
            seconds, megabytes = _heavy(page, name, examples[name], typed)
            yield Figure(f"browser: {what}, seconds", seconds, MOST_SECONDS)
            yield Figure(f"browser: {what}, memory of the worker, MB", megabytes, MOST_MEGABYTES)


def _heavy(
    page: Page, name: str, example: Mapping[str, object], typed: Mapping[str, str]
) -> tuple[float, float]:
    found = page.evaluate(
        "([small, heavy]) => heavyAnswer(small, heavy)",
        [
            {"name": name, "fields": json.dumps(example)},
            {"name": name, "fields": json.dumps({**example, **typed})},
        ],
    )
    told = json.loads(found["answer"])
    if not told["html"]:
        raise SystemExit(f"{name} did not answer: {str(told)[:400]}")
    return found["milliseconds"] / 1000, found["memory"] / 1e6


def _files() -> dict[str, str]:
    """Return the league of the other figure as an office keeps it: two CSV files."""
    pitchers, outings = league(PITCHERS, GAMES)
    roster = "".join(
        f"{name},team {number % 400},{one.age}\n" for number, (name, one) in enumerate(pitchers.items())
    )
    rows = "".join(
        f"{name},{outing.date},{outing.pitches}\n" for name, of_one in outings.items() for outing in of_one
    )
    return {
        "roster": as_typed(f"pitcher,team,age\n{roster}".encode()),
        "outings": as_typed(f"pitcher,date,pitches\n{rows}".encode()),
        "today": DAY.isoformat(),
    }

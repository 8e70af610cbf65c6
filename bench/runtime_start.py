"""How long a reader waits: from the first tap to the first answer, and for every answer after that.

`python -m bench.runtime_start` measures three ways to the same first answer in one run, each with a fresh
browser profile: Pyodide as it comes, Pyodide with our trimmed library, and ours with PyScript. It also asks
every calculator its worked example with the browser slowed.
"""

from __future__ import annotations

import argparse
import functools
import http.server
import json
import statistics
import sys
import tempfile
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from playwright.sync_api import Browser

from bench.slowed import slowed
from build_tools.chromium import open_chromium
from build_tools.finish.node import NODE_MODULES, bundle
from build_tools.finish.page_script import page_values
from build_tools.generate.calculator_pages import worked_examples
from build_tools.places import Places

WAYS = ("stock", "bare", "ours")
MOST_OF_BARE = 1.2
MOST_OF_STOCK = 0.5
MOST_ANSWER_MS = 50.0
SLOWED = 4.0
HERE = Path(__file__).parent


@dataclass(frozen=True)
class Waiting:
    """Milliseconds: the median to the first answer by way, and those of one answer by calculator, slowed."""

    first: Mapping[str, float]
    answers: Mapping[str, float]

    @property
    def checks(self) -> dict[str, tuple[float, float]]:
        """What is held to a bound: its name, the figure and the bound."""
        return {
            "first answer, as a share of bare Pyodide with our library": (
                self.first["ours"] / self.first["bare"],
                MOST_OF_BARE,
            ),
            "first answer, as a share of Pyodide as it comes": (
                self.first["ours"] / self.first["stock"],
                MOST_OF_STOCK,
            ),
            f"slowest calculator's answer, browser {SLOWED:g} times slower [ms]": (
                max(self.answers.values()),
                MOST_ANSWER_MS,
            ),
        }


def measure(site: Path, rounds: int = 9, slow: float = 1.0) -> Waiting:
    """Measure in Chromium against a site that was built.

    rounds: how often each way is started, one way after the other in turn.
    slow: how many times slower the browser is made for the starts.
    """
    questions = {name: json.dumps(fields) for name, fields in examples_of(site).items()}
    with served(site) as address, open_chromium() as browser:
        spent: dict[str, list[float]] = {way: [] for way in WAYS}
        for _ in range(rounds):
            for way in WAYS:
                spent[way].append(_first_answer(browser, address, way, questions, slow))
        answers = _answers(browser, address, questions)
    return Waiting({way: statistics.median(times) for way, times in spent.items()}, answers)


def examples_of(site: Path) -> dict[str, dict[str, object]]:
    """Return the fields of each calculator's worked example in a site that was built."""
    shelf = json.loads((site / "assets/bendbook/runtime/shelf.json").read_text(encoding="utf-8"))
    return {name: dict(fields) for name, fields in worked_examples(shelf).items()}


def _first_answer(
    browser: Browser, address: str, way: str, questions: Mapping[str, str], slow: float
) -> float:
    name, fields = next(iter(questions.items()))
    page = browser.new_page()
    page.goto(address)
    with slowed(slow):
        taken = page.evaluate(f"question => start.{way}(question)", {"name": name, "fields": fields})
    page.close()
    return float(taken)


def _answers(browser: Browser, address: str, questions: Mapping[str, str]) -> dict[str, float]:
    page = browser.new_page()
    page.goto(address)
    page.evaluate("questions => answerTimes(questions, 1)", questions)
    with slowed(SLOWED):
        spent = page.evaluate("questions => answerTimes(questions, 20)", questions)
    page.close()
    return {name: float(each) for name, each in spent.items()}


@contextmanager
def served(site: Path) -> Iterator[str]:
    """Serve a page, and yield its address, with the site's runtime and Pyodide as it comes."""
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        assets = root / "assets" / "bendbook"
        assets.mkdir(parents=True)
        for part in ("runtime", "pyscript"):
            (assets / part).symlink_to((site / "assets" / "bendbook" / part).resolve())
        (root / "stock").symlink_to(NODE_MODULES / "pyodide")
        bundle(HERE / "runtime_start.js", assets / "bench.js", page_values("bench"))
        (root / "index.html").write_text(
            '<!doctype html><title>bench</title><link rel="icon" href="data:,">'
            '<script type="module" src="assets/bendbook/bench.js"></script>'
        )
        handler = functools.partial(_Quiet, directory=str(root))
        with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
            threading.Thread(target=server.serve_forever, daemon=True).start()
            yield f"http://127.0.0.1:{server.server_port}/"
            server.shutdown()


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None:
        """Say nothing."""


def main() -> int:
    """Print what was measured; the exit code is 1 where a bound is passed."""
    parser = argparse.ArgumentParser(description="Measure how long a reader waits for an answer.")
    parser.add_argument("--site", type=Path, default=Places().site)
    parser.add_argument("--rounds", type=int, default=9)
    parser.add_argument("--slow", type=float, default=1.0, help="times slower, for the starts")
    given = parser.parse_args()
    waiting = measure(given.site, given.rounds, given.slow)
    for way, milliseconds in waiting.first.items():
        print(f"{way:<8} {milliseconds:7.0f} ms to the first answer")
    for name, milliseconds in waiting.answers.items():
        print(f"{name:<24} {milliseconds:6.1f} ms an answer, {SLOWED:g} times slower")
    for name, (figure, bound) in waiting.checks.items():
        print(f"{'ok  ' if figure <= bound else 'OVER'} {figure:6.2f} of {bound:g}  {name}")
    return 0 if all(figure <= bound for figure, bound in waiting.checks.values()) else 1


if __name__ == "__main__":
    sys.exit(main())

"""What only a browser can tell of the reference: names that do not cover each other, and a grip on one sheet."""

from __future__ import annotations

import re
from collections.abc import Callable
from itertools import combinations
from pathlib import Path

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.browser

SMALLEST_LETTERS = 9.5
OVERLAP_ALLOWED = 2.0
"""Pixels by which the boxes round two names may meet; letters leave that much air above and below."""

WORDS_OF_CHARTS = """
() => [...document.querySelectorAll('.chart svg')]
  .filter(svg => svg.getBoundingClientRect().width > 0)
  .map(svg => ({
    title: svg.querySelector('title').textContent,
    frame: svg.getBoundingClientRect().toJSON(),
    words: [...svg.querySelectorAll('text')].map(text => ({
      text: text.textContent,
      place: text.getBoundingClientRect().toJSON(),
      size: parseFloat(text.getAttribute('font-size')) * svg.getBoundingClientRect().width
        / svg.viewBox.baseVal.width,
    })),
  }))
"""


@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize("path", ["shapes/", "shapes/slurve/", "shapes/bullet-slider/"])
def test_on_a_small_phone_every_name_on_a_chart_can_be_read(
    serve: Callable, open_page: Callable, handbook: Path, path: str, hand: str
) -> None:
    page = open_page(serve(handbook), path, viewport={"width": 320, "height": 700})
    page.evaluate("hand => { document.documentElement.dataset.hand = hand }", hand)
    page.evaluate("document.fonts.ready")
    charts = page.evaluate(WORDS_OF_CHARTS)
    assert charts
    for chart in charts:
        assert f"{hand}-hander" in chart["title"]
        for word in chart["words"]:
            assert word["size"] >= SMALLEST_LETTERS, (chart["title"], word["text"])
            assert word["place"]["left"] >= chart["frame"]["left"] - 1, (chart["title"], word["text"])
            assert word["place"]["right"] <= chart["frame"]["right"] + 1, (chart["title"], word["text"])
        for one, other in combinations(chart["words"], 2):
            wide, high = (
                min(one["place"][end], other["place"][end]) - max(one["place"][start], other["place"][start])
                for start, end in (("left", "right"), ("top", "bottom"))
            )
            covers = wide > OVERLAP_ALLOWED and high > OVERLAP_ALLOWED
            lines = abs(one["place"]["top"] - other["place"]["top"]) > SMALLEST_LETTERS
            assert not covers or lines, (chart["title"], one["text"], other["text"])


@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_every_grip_prints_on_one_sheet(
    serve: Callable, open_page: Callable, handbook: Path, paper: str
) -> None:
    server = serve(handbook)
    page = open_page(server)
    sheets: dict[str, int] = {}
    for folder in sorted(path.parent for path in (handbook / "grips").glob("*/index.html")):
        page.goto(f"{server.url}grips/{folder.name}/")
        pdf = page.pdf(format=paper)
        sheets[folder.name] = len(re.findall(rb"/Type\s*/Page\b(?!s)", pdf))
    assert sheets
    assert {name: count for name, count in sheets.items() if count != 1} == {}


def test_the_fault_finder_leads_from_what_is_seen_to_one_thing_to_do(
    serve: Callable, open_page: Callable, handbook: Path
) -> None:
    page = open_page(serve(handbook), "faults/", viewport={"width": 360, "height": 740})
    finder = page.locator("details.path#pops-up")
    assert not finder.locator("text=Do this next").is_visible()
    finder.locator("summary").click()
    for step in ("Most likely", "Check", "Do this next", "Say", "Drill"):
        assert finder.locator(f"dt:has-text('{step}')").first.is_visible(), step
    first = page.locator("article .first-ask").first.bounding_box()
    assert first["y"] < page.locator("details.path").first.bounding_box()["y"]
    finder.locator("a", has_text="All causes and checks").click()
    expect(page.locator("h1").first).to_contain_text("Pops up")


def test_small_pictures_of_grips_turn_over_for_a_left_hander(
    serve: Callable, open_page: Callable, handbook: Path
) -> None:
    page = open_page(serve(handbook), "grips/")
    picture = page.locator("svg.grip-small").first
    assert picture.evaluate("svg => getComputedStyle(svg).transform") == "none"
    page.locator("button[data-hand=left]").first.click()
    assert picture.evaluate("svg => getComputedStyle(svg).transform") == "matrix(-1, 0, 0, 1, 0, 0)"

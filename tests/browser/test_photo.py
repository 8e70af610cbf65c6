"""The arm measured on a photo by two taps, as a coach with a phone does it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser
WAIT_MS = 30_000
SHOULDER, MM_PER_PIXEL = (100, 200), 25.4 / 96
"""CSS, Values and Units Level 3, section 5.2: 96 pixels make an inch, and an inch is 25.4 mm."""


@pytest.fixture
def page(serve: Callable, open_page: Callable, handbook: Path) -> Page:
    return open_page(
        serve(handbook),
        "calculators/slot-and-shape/",
        viewport={"width": 390, "height": 780},
        service_workers="block",
        tolerated=("Service Worker",),
    )


def choose(page: Page, content: bytes, kind: str = "image/png") -> None:
    page.set_input_files("[data-photo-pick]", {"name": "photo", "mimeType": kind, "buffer": content})


def photo(page: Page) -> bytes:
    """A picture of 240 by 300 pixels: what stands on the page, whatever it shows."""
    return page.screenshot(clip={"x": 0, "y": 0, "width": 240, "height": 300})


@pytest.mark.parametrize(
    ("hand", "tapped"), [("right", (160, 140)), ("left", (40, 140)), ("right", (180, 230))]
)
def test_two_taps_give_how_far_out_and_up_the_hand_is(page: Page, hand: str, tapped: tuple[int, int]) -> None:
    page.locator(f"[name=hand][value={hand}]").check(force=True)
    choose(page, photo(page))
    canvas = page.locator("[data-photo-canvas]")
    expect(page.locator("[data-photo-state]")).to_have_text("Tap the throwing shoulder.")
    canvas.click(position={"x": SHOULDER[0], "y": SHOULDER[1]})
    expect(page.locator("[data-photo-state]")).to_have_text("Now tap the throwing hand.")
    canvas.click(position={"x": tapped[0], "y": tapped[1]})
    expect(page.locator("[data-photo-state]")).to_contain_text("Measured.")
    arm_side = 1 if hand == "right" else -1
    for name, pixels in (
        ("hand_out", arm_side * (tapped[0] - SHOULDER[0])),
        ("hand_up", SHOULDER[1] - tapped[1]),
    ):
        typed = float(page.locator(f"[name={name}]").input_value())
        assert typed == pytest.approx(pixels * MM_PER_PIXEL, abs=0.3)
    assert page.locator("[name=known][value=photo]").is_checked() or (
        page.locator("select[name=known]").input_value() == "photo"
    )
    expect(page.locator("[data-example-note]")).to_be_hidden(timeout=WAIT_MS)


def test_taps_can_be_made_again_and_a_file_that_is_no_picture_is_refused(page: Page) -> None:
    choose(page, photo(page))
    canvas = page.locator("[data-photo-canvas]")
    canvas.click(position={"x": 100, "y": 200})
    page.locator("[data-photo-again]").click()
    expect(page.locator("[data-photo-state]")).to_have_text("Tap the throwing shoulder.")
    choose(page, b"no picture")
    expect(page.locator("[data-photo-state]")).to_contain_text("no picture that the browser can open")
    expect(canvas).to_be_hidden()

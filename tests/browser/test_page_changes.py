"""Pages change without a reload, so that what was typed, chosen and started lives on."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser
WAIT_MS = 30_000


def follow(page: Page, address: str, heading: str) -> None:
    """Tap a link to an address, wherever on the page it is, and wait for the page it leads to."""
    with page.expect_event("framenavigated"):
        page.evaluate(
            """address => [...document.querySelectorAll("main a, header a, nav a")]
                .find((link) => link.href === address).click()""",
            address,
        )
    expect(page.locator("h1").first).to_contain_text(heading)
    assert page.url == address


@pytest.mark.parametrize("mount", ["/", "/league/handbook/"])
def test_a_link_changes_the_page_and_the_calculators_need_no_second_start(
    serve: Callable, open_page: Callable, handbook: Path, mount: str
) -> None:
    server = serve(handbook, mount)
    page = open_page(
        server, "calculators/spin-to-break/", service_workers="block", tolerated=("Service Worker",)
    )
    page.evaluate("window.firstPage = true")
    page.locator("form[data-calculator] [type=submit]").click()
    expect(page.locator("[data-example-note]")).to_be_hidden(timeout=WAIT_MS)
    started = len([path for path in server.asked if path.endswith(".wasm")])
    follow(page, f"{server.url}calculators/", "Calculators")
    follow(page, f"{server.url}calculators/break-to-spin/", "Break to spin")
    page.locator("form[data-calculator] [type=submit]").click()
    expect(page.locator("[data-example-note]")).to_be_hidden(timeout=WAIT_MS)
    assert page.evaluate("window.firstPage") is True
    assert started == 1
    assert len([path for path in server.asked if path.endswith(".wasm")]) == 1


def test_a_page_with_drawings_comes_whole_and_back_again_keeps_what_was_typed(
    serve: Callable, open_page: Callable, handbook: Path
) -> None:
    server = serve(handbook)
    page = open_page(
        server, "calculators/spin-to-break/", service_workers="block", tolerated=("Service Worker",)
    )
    page.evaluate("window.firstPage = true")
    speed = page.locator("form[data-calculator] [name=speed]")
    speed.fill("71")
    page.locator("form[data-calculator] [type=submit]").click()
    expect(page.locator("[data-example-note]")).to_be_hidden(timeout=WAIT_MS)
    typed = page.url
    assert "speed=71" in typed
    follow(page, f"{server.url}faults/", "What do you see")
    follow(page, f"{server.url}grips/", "Grips")
    follow(page, f"{server.url}grips/basic-downer/", "downer")
    expect(page.locator("main svg use").first).to_be_attached()
    page.locator("[data-hand-choice] [data-hand=left]").first.click()
    for heading in ("Grips", "What do you see", "Spin to break"):
        page.go_back()
        expect(page.locator("h1").first).to_contain_text(heading)
    assert page.url == typed
    expect(page.locator("form[data-calculator] [name=speed]")).to_have_value("71")
    assert page.evaluate("[window.firstPage, document.documentElement.dataset.hand]") == [True, "left"]

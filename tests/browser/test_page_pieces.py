"""Words explained where they stand, the reader's hand, pages that change without a reload, accessibility."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser
FALL = "calculators/fall/"
TERMS = "guide/terms/"
AXE = Path(__file__).resolve().parents[2] / "node_modules" / "axe-core" / "axe.min.js"


@pytest.fixture
def terms(serve: Callable, open_page: Callable, mini_site: Path) -> Page:
    return open_page(serve(mini_site), TERMS)


def test_a_tap_on_a_term_shows_its_meaning_and_a_second_takes_it_away(terms: Page) -> None:
    terms.click("#term")
    note = terms.locator(".term-note")
    expect(note).to_contain_text("The stitched line of a ball.")
    expect(note.get_by_role("link")).to_have_attribute("href", f"{terms.url.removesuffix(TERMS)}#seam")
    terms.click("#term")
    expect(note).to_have_count(0)


def test_a_term_opens_and_closes_by_keyboard_and_the_focus_stays(terms: Page) -> None:
    terms.focus("#term")
    terms.keyboard.press("Enter")
    expect(terms.locator(".term-note")).to_contain_text("The stitched line")
    expect(terms.locator("#term")).to_be_focused()
    expect(terms.locator("#term")).to_have_attribute("aria-expanded", "true")
    terms.keyboard.press("Tab")
    expect(terms.locator(".term-note a")).to_be_focused()
    terms.keyboard.press("Escape")
    expect(terms.locator(".term-note")).to_have_count(0)
    expect(terms.locator("#term")).to_be_focused()
    terms.keyboard.press("Tab")
    expect(terms.locator("#after")).to_be_focused()


def test_a_tap_elsewhere_and_the_close_button_take_the_meaning_away(terms: Page) -> None:
    terms.click("#term")
    terms.click("h1")
    expect(terms.locator(".term-note")).to_have_count(0)
    terms.click("#term")
    terms.click(".term-note button")
    expect(terms.locator(".term-note")).to_have_count(0)


def test_the_chosen_hand_is_remembered_on_other_pages_and_visits(terms: Page) -> None:
    expect(terms.locator(".for-right")).to_be_visible()
    expect(terms.locator(".for-left")).to_be_hidden()
    terms.click("text=Left-handed")
    expect(terms.locator(".for-left")).to_be_visible()
    expect(terms.locator(".for-right")).to_be_hidden()
    terms.reload()
    expect(terms.locator(".for-left")).to_be_visible()
    expect(terms.locator("text=Left-handed")).to_have_attribute("aria-pressed", "true")
    expect(terms.locator("text=Right-handed")).to_have_attribute("aria-pressed", "false")


CHANGES_PAGES = """
const subscribers = [];
window.document$ = { subscribe: (listener) => { subscribers.push(listener); listener(document); } };
window.goTo = async (address) => {
    const text = await (await fetch(address)).text();
    const page = new DOMParser().parseFromString(text, "text/html");
    document.querySelector("main").replaceWith(page.querySelector("main"));
    history.pushState(null, "", address);
    for (const subscriber of subscribers) subscriber(document);
};
"""
"""As a theme with instant navigation does it: `document$` tells of each page, scripts run once."""


def test_the_worker_lives_on_where_pages_change_without_a_reload(
    serve: Callable, open_page: Callable, mini_site: Path
) -> None:
    server = serve(mini_site)
    page = open_page(
        server, FALL, before=CHANGES_PAGES, service_workers="block", tolerated=("Service Worker",)
    )
    page.fill("#fall-seconds", "2")
    expect(page.locator("[data-answer]")).to_contain_text("19.620 m", timeout=30_000)
    asked = len(server.asked)
    page.evaluate(f"goTo('{server.url}{TERMS}')")
    page.click("#term")
    expect(page.locator(".term-note")).to_have_count(1)
    page.evaluate(f"goTo('{server.url}{FALL}')")
    expect(page.locator("[data-answer]")).to_contain_text("4.905 m")
    page.fill("#fall-seconds", "3")
    expect(page.locator("[data-answer]")).to_contain_text("44.145 m")
    icon = (
        "assets/bendbook/icons/icon.svg"  # a browser asks for it when it likes; it is no part of the worker
    )
    assert [path for path in server.asked[asked:] if path not in (TERMS, FALL, icon)] == []


def test_nothing_on_a_page_in_use_keeps_a_reader_with_a_disability_out(
    serve: Callable, open_page: Callable, mini_site: Path
) -> None:
    server = serve(mini_site)
    page = open_page(server, FALL)
    page.fill("#fall-seconds", "2")
    page.click("[data-add-row]")
    page.keyboard.type("x")
    page.click("text=Work it out")
    expect(page.locator("#fall-drops-0-height-problem")).to_be_visible(timeout=30_000)
    assert violations(page) == []
    page.goto(server.url + TERMS)
    page.click("#term")
    expect(page.locator(".term-note a")).to_be_visible()
    assert violations(page) == []


def violations(page: Page) -> list[str]:
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = page.evaluate("axe.run({ resultTypes: ['violations'] })")["violations"]
    return [f"{one['id']}: {json.dumps([node['html'] for node in one['nodes']])}" for one in found]

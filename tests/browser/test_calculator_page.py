"""A calculator's page: it answers, says what to mend, keeps its fields in the address, and fails readably."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from pathlib import Path
from urllib.parse import parse_qs, urlsplit

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser
FALL = "calculators/fall/"
READY_MS = 30_000


def answered(page: Page, text: str) -> None:
    expect(page.locator("[data-answer]")).to_contain_text(text, timeout=READY_MS)


@pytest.fixture
def fall(serve: Callable, open_page: Callable, mini_site: Path) -> Page:
    return open_page(serve(mini_site), FALL)


def test_a_page_that_nobody_types_in_loads_no_runtime(fall: Page) -> None:
    fall.wait_for_load_state("networkidle")
    loaded = fall.evaluate("performance.getEntriesByType('resource').map(entry => entry.name)")
    assert not [name for name in loaded if "pyscript/" in name or "worker" in name]
    expect(fall.locator("[data-answer]")).to_contain_text("4.905 m")


def test_typing_a_number_brings_the_answer_computed_in_the_browser(fall: Page) -> None:
    # 2 s of free fall: g t^2 / 2 = 9.81 * 4 / 2.
    fall.fill("#fall-seconds", "2")
    answered(fall, "It falls 19.620 m")
    expect(fall.locator("[data-example-note]")).to_be_hidden()


def test_today_is_the_day_of_the_readers_own_calendar(
    serve: Callable, open_page: Callable, mini_site: Path
) -> None:
    # Kiritimati is 14 hours ahead of Greenwich, so its date is often another one.
    page = open_page(serve(mini_site), FALL, timezone_id="Pacific/Kiritimati")
    page.fill("#fall-seconds", "2")
    there = datetime.datetime.now(datetime.UTC) + datetime.timedelta(hours=14)
    answered(page, f"{there.date()}")


def test_a_mistake_is_named_at_its_field_and_the_last_answer_stays(fall: Page) -> None:
    fall.fill("#fall-seconds", "2")
    answered(fall, "19.620 m")
    fall.fill("#fall-seconds", "two")
    fall.click("text=Work it out")
    expect(fall.locator("#fall-seconds-problem")).to_have_text("Enter a number.")
    expect(fall.locator("#fall-seconds")).to_have_attribute("aria-invalid", "true")
    expect(fall.locator("#fall-seconds")).to_be_focused()
    expect(fall.locator("[data-answer]")).to_contain_text("19.620 m")
    expect(fall.locator("[data-answer][data-stale]")).to_be_visible()
    fall.fill("#fall-seconds", "3")
    answered(fall, "44.145 m")
    expect(fall.locator("#fall-seconds-problem")).to_be_hidden()
    expect(fall.locator("[aria-invalid]")).to_have_count(0)


def test_a_field_is_not_called_wrong_while_it_is_still_typed_in(fall: Page) -> None:
    fall.fill("#fall-seconds", "2")
    answered(fall, "19.620 m")
    fall.fill("#fall-seconds", "x")
    fall.wait_for_selector("[data-answer][data-stale]")
    expect(fall.locator("#fall-seconds-problem")).to_be_hidden()
    fall.press("#fall-seconds", "Tab")
    expect(fall.locator("#fall-seconds-problem")).to_be_visible()


def test_rows_are_added_numbered_and_taken_away(fall: Page) -> None:
    fall.fill("#fall-seconds", "1")
    for height in ("10", "20", "x"):
        fall.click("[data-add-row]")
        expect(fall.locator("[data-row]:last-of-type input")).to_be_focused()
        fall.keyboard.type(height)
    fall.click("text=Work it out")
    expect(fall.locator("#fall-drops-2-height-problem")).to_have_text("Enter a number.")
    # Without the first row the bad one is the second.
    fall.locator("[data-remove-row]").first.click()
    expect(fall.locator("#fall-drops-1-height-problem")).to_have_text("Enter a number.")
    fall.fill("#fall-drops-1-height", "5")
    answered(fall, f"{9.81 / 2 + 20 + 5:.3f} m")
    assert fall.locator("[data-row] input").evaluate_all("inputs => inputs.map(input => input.name)") == [
        "drops.0.height",
        "drops.1.height",
    ]


def test_the_address_brings_back_what_was_typed_but_no_nickname_and_no_old_today(
    serve: Callable, open_page: Callable, mini_site: Path
) -> None:
    server = serve(mini_site)
    page = open_page(server, FALL)
    page.fill("#fall-nickname", "Lefty")
    page.fill("#fall-seconds", "2")
    page.check("#fall-planet-moon")
    page.click("[data-add-row]")
    page.fill("#fall-drops-0-height", "7")
    answered(page, "26.620 m (moon")
    kept = parse_qs(urlsplit(page.url).fragment)
    assert kept == {"seconds": ["2"], "planet": ["moon"], "drops.0.height": ["7"]}

    other = open_page(server, FALL + "#" + urlsplit(page.url).fragment)
    answered(other, f"26.620 m (moon, {datetime.date.today()})")
    expect(other.locator("#fall-drops-0-height")).to_have_value("7")


def test_a_day_chosen_on_purpose_goes_along_in_the_address(fall: Page) -> None:
    fall.fill("#fall-seconds", "2")
    fall.fill("#fall-today", "2031-02-03")
    answered(fall, "2031-02-03")
    assert "today=2031-02-03" in fall.url


def test_a_link_to_a_heading_is_left_alone(serve: Callable, open_page: Callable, mini_site: Path) -> None:
    page = open_page(serve(mini_site), FALL + "#common-cases")
    page.wait_for_load_state("networkidle")
    assert page.url.endswith("#common-cases")
    expect(page.locator("[data-answer]")).to_contain_text("2026-05-16")


def test_a_link_is_copied(serve: Callable, open_page: Callable, mini_site: Path) -> None:
    page = open_page(serve(mini_site), FALL, permissions=["clipboard-read", "clipboard-write"])
    page.fill("#fall-seconds", "4")
    answered(page, "78.480 m")
    page.click("[data-copy-link]")
    expect(page.locator(".link-note")).to_contain_text("Link copied.")
    assert "seconds=4" in page.evaluate("navigator.clipboard.readText()")


def test_the_page_works_by_keyboard_alone(fall: Page) -> None:
    fall.focus("#to-terms")
    fall.keyboard.press("Tab")
    expect(fall.locator("#fall-seconds")).to_be_focused()
    fall.keyboard.press("Control+A")
    fall.keyboard.type("2")
    fall.keyboard.press("Enter")
    answered(fall, "19.620 m (earth")
    fall.keyboard.press("Tab")
    fall.keyboard.press("ArrowDown")
    answered(fall, "19.620 m (moon")


def test_a_bug_in_a_calculator_is_said_and_the_page_lives_on(
    serve: Callable, open_page: Callable, mini_site: Path
) -> None:
    page = open_page(serve(mini_site), FALL, tolerated=("Traceback", "File", "LookupError"))
    page.evaluate("document.querySelector('form').dataset.calculator = 'unheard-of'")
    page.fill("#fall-seconds", "2")
    expect(page.locator("[data-status]")).to_contain_text("went wrong", timeout=READY_MS)
    page.evaluate("document.querySelector('form').dataset.calculator = 'fall'")
    page.fill("#fall-seconds", "3")
    answered(page, "44.145 m")


def test_another_language_is_spoken_where_the_edition_has_its_words(
    serve: Callable, open_page: Callable, mini_copy: Path
) -> None:
    html = mini_copy / FALL / "index.html"
    html.write_text(html.read_text().replace('lang="en"', 'lang="es"'))
    page = open_page(serve(mini_copy), FALL)
    page.fill("#fall-seconds", "2")
    answered(page, "Cae 19.620 m")

"""A volunteer's evening and a league's morning on a phone without any network, from pain to paper."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path

import icalendar
import pytest
from playwright.sync_api import Page, expect

from tests.browser.answers import words_of

pytestmark = pytest.mark.browser
WAIT_MS = 60_000


def unfold(page: Page, words: str) -> None:
    page.locator("summary", has_text=words).first.click()


def test_a_volunteers_evening(at_the_field: Callable[[str], Page]) -> None:
    """Count a game, keep the arm's log, ask for the day, save it, lose the phone, load it: the same day."""
    page = at_the_field("calculators/pitch-count/")
    page.click("[data-empty]")
    page.check("#pitch-count-pain-no")
    page.fill("#pitch-count-nickname", "Comet")
    page.select_option("#pitch-count-rules", "little-league")
    page.fill("#pitch-count-age", "12")
    page.fill("#pitch-count-today", "2026-05-16")
    for to_this_batter in (10, 11, 4):
        for _ in range(to_this_batter):
            page.click("[data-move=pitch]")
        page.click("[data-move=batter]")
    # 21 to 35 pitches owe one day (Little League, Regulation VI); the last batter came up at 21.
    expect(page.locator("[data-live]")).to_contain_text("Leaving now", timeout=WAIT_MS)
    page.click("[data-game-over]")
    headline = page.locator("[data-answer] .headline")
    expect(headline).to_contain_text("Monday, May 18", timeout=WAIT_MS)
    told = words_of(page)
    with page.expect_download() as calendar:
        page.get_by_role("link", name="The day as a calendar file").click()
    (event,) = icalendar.Calendar.from_ical(Path(calendar.value.path()).read_bytes()).walk("VEVENT")
    assert event["DTSTART"].dt.isoformat() == "2026-05-18"

    page.click("[data-log] > summary")
    page.click("[data-log-keep]")
    with page.expect_download() as saved:
        page.click("[data-log-save]")
    log = Path(saved.value.path()).read_text(encoding="utf-8")
    assert json.loads(log)["pitchers"][0]["nickname"] == "Comet"
    page.once("dialog", lambda dialog: dialog.accept())
    page.click("[data-log-delete-all]")
    expect(headline).to_have_count(0)

    page = at_the_field("calculators/pitch-count/")
    page.fill("#pitch-count-today", "2026-05-16")
    page.click("[data-log] > summary")
    page.set_input_files(
        "[data-log-load]", {"name": "log.json", "mimeType": "application/json", "buffer": log.encode()}
    )
    page.click("[data-pitcher=Comet]")
    page.check("#pitch-count-pain-no")
    expect(headline).to_contain_text("Monday, May 18", timeout=WAIT_MS)
    assert words_of(page) == told

    page.check("#pitch-count-pain-yes")
    expect(headline).to_contain_text("Stop", timeout=WAIT_MS)
    assert not re.search(r"May \d", page.locator("[data-answer]").inner_text())
    page.locator("[data-answer] a").first.click()
    expect(page.locator("h1").first).to_be_visible()


def test_a_leagues_morning(at_the_field: Callable[[str], Page]) -> None:
    """The board of the made-up league, one team's sheet on paper, and a season laid out."""
    page = at_the_field("calculators/league-board/")
    page.check("#league-board-beside-yes")
    page.select_option("#league-board-rules", "little-league")
    page.locator("form[data-calculator] [type=submit]").click()
    expect(page.locator("[data-answer] .sheet").first).to_contain_text("the same day", timeout=WAIT_MS)
    page.locator(".sheet [data-print]").first.click()
    page.emulate_media(media="print")
    assert "Herons" in page.evaluate("document.body.innerText")
    page.emulate_media(media="screen")
    page.evaluate("dispatchEvent(new Event('afterprint'))")

    page = at_the_field("calculators/season-plan/")
    page.select_option("#season-plan-rules", "little-league")
    page.fill("#season-plan-first", "2027-04-10")
    page.fill("#season-plan-last", "2027-06-26")
    expect(page.locator("[data-answer] .headline")).to_contain_text("April 10", timeout=WAIT_MS)
    with page.expect_download() as calendar:
        page.locator("[data-answer] a[download]").first.click()
    days = icalendar.Calendar.from_ical(Path(calendar.value.path()).read_bytes()).walk("VEVENT")
    assert any(event["DTSTART"].dt.isoformat() == "2027-04-10" for event in days)


@pytest.mark.parametrize(
    "path", ["guide/warning-signs/", "guide/return-to-throwing/", "guide/when-to-start/", "guide/arm-care/"]
)
def test_what_to_do_can_be_read_there(at_the_field: Callable[[str], Page], path: str) -> None:
    assert "clinician" in at_the_field(path).locator("main").inner_text().lower()

"""The made-up season of content/demo, walked through on a phone without any network, with a file that goes along."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from build_tools.places import Places
from tests.browser.answers import words_of

pytestmark = pytest.mark.browser
WAIT_MS = 60_000
HEAD, *ROWS = (Places().content / "demo" / "season.csv").read_text(encoding="utf-8").splitlines()
DAYS = ("2026-03-03", "2026-03-10", "2026-03-17")


def day(date: str) -> str:
    return "\n".join((HEAD, *(row for row in ROWS if row.startswith(date)))) + "\n"


class Walk:
    """One reader with one phone: goes from page to page, types, and keeps the pitcher's file in the browser."""

    def __init__(self, at_the_field: Callable[[str], Page]) -> None:
        self._open = at_the_field

    def go(self, name: str) -> None:
        self.name = name
        self.page = self._open(f"calculators/{name}/")

    def type(self, field: str, text: str) -> None:
        place = self.page.locator(f"#{self.name}-{field}")
        folded = self.page.locator("details.field-group:not([open])", has=place).locator("> summary")
        if folded.count():
            folded.first.click()
        place.fill(text)

    def open_kept(self) -> None:
        self.page.click("[data-record-open]")
        expect(self.page.locator("[data-record-state]")).to_contain_text("file", timeout=WAIT_MS)
        self.say_how_the_day_is()

    def say_how_the_day_is(self) -> None:
        """Answer what a file never answers: pain and the day, and the stage."""
        self.page.evaluate("document.querySelectorAll('details').forEach((one) => (one.open = true))")
        form = self.page.locator("form[data-calculator]")
        for name in ("pain", "tired", "slept_badly", "game_yesterday"):
            for choice in form.locator(f"[name={name}][value=no]").all():
                choice.check()
        for choice in form.locator("[name=rested][value=yes]").all():
            choice.check()
        for choice in form.locator("[name=stage]").all():
            choice.select_option("bullpen")

    def keep(self) -> None:
        button = self.page.locator("[data-record-keep]")
        expect(button).to_be_enabled(timeout=WAIT_MS)
        button.click()
        expect(self.page.locator("[data-record-state]")).to_contain_text("kept in this browser")

    def told(self, words: str) -> None:
        expect(self.page.locator("[data-example-note]")).to_be_hidden(timeout=WAIT_MS)
        expect(self.page.locator("[data-answer] .headline")).to_contain_text(words, timeout=WAIT_MS)

    def kept(self) -> dict:
        return json.loads(
            json.loads(self.page.evaluate("localStorage.getItem('bendbook-pitchers')"))["Juniper"]
        )


def test_from_the_first_questions_to_a_cue_that_was_kept_and_a_plan_on_paper(
    at_the_field: Callable[[str], Page], tmp_path: Path
) -> None:
    walk = Walk(at_the_field)

    walk.go("target")
    walk.type("nickname", "Juniper")
    walk.type("notes", "Tuesdays, with the school team")
    walk.told("Aim for a three-quarter drop")
    walk.keep()

    walk.go("read-session")
    walk.type("sheet", day(DAYS[0]))
    walk.type("day", "")
    walk.open_kept()
    walk.told("None of 9 throws was inside the target yet.")
    walk.keep()
    assert [one["date"] for one in walk.kept()["sessions"]] == [DAYS[0]]

    walk.go("next-cue")
    walk.open_kept()
    walk.told("Next cue: window blind.")

    for date, decision in ((DAYS[1], "Try it again"), (DAYS[2], "Keep it")):
        walk.go("cue-trial")
        walk.type("sheet", day(date))
        walk.open_kept()
        walk.told(f"Window blind: {decision}.")
        walk.keep()
    file = walk.kept()
    assert [one["date"] for one in file["sessions"]] == list(DAYS)
    assert [(one["cue"], one["date"]) for one in file["log"]] == [("window-blind", one) for one in DAYS[1:]]
    assert (file["nickname"], file["notes"]) == ("Juniper", "Tuesdays, with the school team")

    walk.go("next-cue")
    walk.open_kept()
    walk.told("Keep this cue: window blind.")
    before = words_of(walk.page)

    walk.go("next-session")
    walk.type("today", "2026-03-24")
    walk.type("most", "80")
    walk.open_kept()
    walk.told("breaking balls")
    with walk.page.expect_download() as saved:
        walk.page.get_by_role("link", name="Save the pitcher's file").click()
    assert saved.value.suggested_filename == "juniper.pitcher.json"
    assert sheets_of(walk.page, tmp_path) == 1

    walk.page.once("dialog", lambda dialog: dialog.accept())
    walk.page.click("[data-record-forget]")
    assert walk.page.evaluate("localStorage.getItem('bendbook-pitchers')") is None
    walk.go("next-cue")
    expect(walk.page.locator("[data-record-open]")).to_have_count(0)
    walk.page.set_input_files("#next-cue-record-pick", saved.value.path())
    walk.say_how_the_day_is()
    walk.told("Keep this cue: window blind.")
    assert words_of(walk.page) == before


def sheets_of(page: Page, folder: Path) -> int:
    """Print the plan alone, as its own button does, and return how many sheets of Letter it takes."""
    page.locator(".sheet [data-print]").first.click()
    pdf = folder / "plan.pdf"
    page.pdf(path=pdf, format="Letter")
    words = subprocess.run(["pdftotext", pdf, "-"], capture_output=True, text=True, check=True).stdout
    assert "Practice of 2026-03-24" in words
    assert "Stop" in words
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    found = subprocess.run(["pdfinfo", pdf], capture_output=True, text=True, check=True).stdout
    return int(found.partition("Pages:")[2].split()[0])

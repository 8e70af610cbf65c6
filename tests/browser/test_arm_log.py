"""The counter of a game and the log on the device: they count, call out, survive, and are deleted on request."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser
PAGE = "calculators/pitch-count/"
WAIT_MS = 60_000
REFUSES = """for (const name of ["localStorage", "sessionStorage"]) {
    Object.defineProperty(self, name, { get() { throw new DOMException("refused", "SecurityError") } });
}"""


@pytest.fixture
def open_count(serve: Callable, open_page: Callable, handbook: Path) -> Callable[..., Page]:
    def start(**options: object) -> Page:
        options = {
            "viewport": {"width": 390, "height": 780},
            "service_workers": "block",
            "tolerated": ("Service Worker",),
            **options,
        }
        return open_page(serve(handbook), PAGE, **options)

    return start


def begin(page: Page) -> None:
    """Empty the worked example and answer what a game needs."""
    page.click("[data-empty]")
    page.check("#pitch-count-pain-no")
    page.select_option("#pitch-count-rules", "little-league")
    page.fill("#pitch-count-age", "12")


def pitch(page: Page, times: int) -> None:
    for _ in range(times):
        page.click("[data-move=pitch]")


def test_pitches_are_counted_and_the_step_is_called_out_before_the_batter(open_count: Callable) -> None:
    page = open_count()
    begin(page)
    pitch(page, 20)
    page.click("[data-move=batter]")
    expect(page.locator("[data-count]")).to_have_text("20")
    expect(page.locator("[data-to-batter]")).to_have_text("0 to this batter, number 2")
    # 21 pitches owe a day (Little League, Regulation VI); the batter at bat decides, so it is said before.
    expect(page.locator("[data-live] p").first).to_contain_text(
        "Before the next batter: one pitch", timeout=WAIT_MS
    )
    page.click("[data-undo]")
    page.click("[data-undo]")
    expect(page.locator("[data-count]")).to_have_text("19")


def test_the_worked_example_never_mixes_with_a_game_that_is_counted(open_count: Callable) -> None:
    page = open_count()
    pitch(page, 1)
    expect(page.locator("[data-row]")).to_have_count(0)
    expect(page.locator("#pitch-count-age")).to_have_value("")
    expect(page.locator("[data-live]")).to_contain_text("Choose one of the answers offered.", timeout=WAIT_MS)
    page.check("#pitch-count-pain-yes")
    expect(page.locator("[data-live]")).to_contain_text("Stop. No more pitches tonight.", timeout=WAIT_MS)


def test_a_count_survives_a_reload_and_goes_into_the_list(open_count: Callable) -> None:
    page = open_count()
    begin(page)
    pitch(page, 3)
    page.reload()
    expect(page.locator("[data-count]")).to_have_text("3")
    expect(page.locator("#pitch-count-tonight")).to_have_value("3")
    page.click("[data-game-over]")
    expect(page.locator("[data-count]")).to_have_text("0")
    assert page.locator("[data-row]").last.locator("[name$='.pitches']").input_value() == "3"
    assert page.locator("[data-row]").last.locator("[name$='.before']").input_value() == "0"


def test_a_game_that_began_before_midnight_is_of_that_day(open_count: Callable) -> None:
    page = open_count()
    begin(page)
    page.fill("#pitch-count-today", "2026-05-16")
    pitch(page, 2)
    page.reload()
    expect(page.locator("#pitch-count-today")).to_have_value("2026-05-16")
    page.click("[data-game-over]")
    assert page.locator("[data-row]").last.locator("[name$='.date']").input_value() == "2026-05-16"


def test_the_button_stays_under_the_thumb_whatever_is_called_out(open_count: Callable) -> None:
    """Taps on one spot of the screen, through the steps of 21 and 36 pitches: every tap is a pitch."""
    page = open_count(viewport={"width": 360, "height": 740})
    begin(page)
    page.click("[data-move=pitch]")
    box = page.locator("[data-move=pitch]").bounding_box()
    for done in range(2, 38):
        page.mouse.click(box["x"] + box["width"] / 3, box["y"] + box["height"] / 2)
        if done in (20, 21, 22, 35, 36):
            page.wait_for_timeout(700)
    expect(page.locator("[data-count]")).to_have_text("37")
    expect(page.locator("[data-to-batter]")).to_have_text("37 to this batter, number 1")


def test_a_number_is_changed_with_taps(open_count: Callable) -> None:
    page = open_count()
    begin(page)
    page.click("[data-add-row]")
    for step in ("10", "10", "1", "-1", "1"):
        page.click(f"[data-row] [data-tap='{step}']")
    expect(page.locator("#pitch-count-outings-0-pitches")).to_have_value("21")


class TestTheLog:
    def test_nothing_is_kept_until_it_is_asked_for(self, open_count: Callable) -> None:
        page = open_count()
        begin(page)
        page.fill("#pitch-count-nickname", "Ace")
        expect(page.locator("[data-example-note]")).to_be_hidden()
        assert page.evaluate("localStorage.getItem('bendbook-arm-log')") is None

    def test_a_pitcher_is_kept_opened_and_deleted(self, open_count: Callable) -> None:
        page = open_count()
        self.keep(page, "Ace", "2026-05-12", "66")
        page.reload()
        page.click("[data-log] > summary")
        page.click("[data-pitcher=Ace]")
        expect(page.locator("#pitch-count-outings-0-pitches")).to_have_value("66")
        # Yesterday's "no pain" is nobody's answer for today.
        expect(page.locator("#pitch-count-pain-no")).not_to_be_checked()
        page.once("dialog", lambda dialog: dialog.accept())
        page.click("[data-log-delete-all]")
        expect(page.locator("[data-log-state]")).to_have_text("Deleted from this device.")
        assert page.evaluate("localStorage.getItem('bendbook-arm-log')") is None
        expect(page.locator("[data-pitcher]")).to_have_count(0)

    def test_a_nickname_that_is_merely_typed_overwrites_nobody(self, open_count: Callable) -> None:
        page = open_count()
        self.keep(page, "Ace", "2026-05-12", "66")
        before = page.evaluate("localStorage.getItem('bendbook-arm-log')")
        page.reload()
        page.fill("#pitch-count-nickname", "Ace")
        expect(page.locator("[data-log-state]")).to_have_text(
            "Ace is kept here already. Tap the name to open it.", timeout=WAIT_MS
        )
        page.once("dialog", lambda dialog: dialog.dismiss())
        page.click("[data-log] > summary")
        page.click("[data-log-keep]")
        assert page.evaluate("localStorage.getItem('bendbook-arm-log')") == before

    def test_each_pitcher_of_a_game_has_a_count_of_their_own(self, open_count: Callable) -> None:
        page = open_count()
        self.keep(page, "Ace", "2026-05-12", "20")
        self.keep(page, "Bo", "2026-05-12", "10")
        page.click("[data-pitcher=Ace]")
        pitch(page, 5)
        page.click("[data-pitcher=Bo]")
        expect(page.locator("[data-count]")).to_have_text("0")
        expect(page.locator("#pitch-count-tonight")).to_have_value("")
        pitch(page, 2)
        page.click("[data-pitcher=Ace]")
        expect(page.locator("[data-count]")).to_have_text("5")
        page.reload()
        expect(page.locator("#pitch-count-nickname")).to_have_value("Ace")
        expect(page.locator("[data-count]")).to_have_text("5")

    def test_a_saved_file_is_what_the_page_says_it_is_and_is_loaded_elsewhere(
        self, open_count: Callable, tmp_path: Path
    ) -> None:
        page = open_count()
        self.keep(page, "Ace", "2026-05-12", "66")
        with page.expect_download() as saved:
            page.click("[data-log-save]")
        log = json.loads(Path(saved.value.path()).read_text(encoding="utf-8"))
        assert (log["bendbook"], log["version"]) == ("arm log", 1)
        (one,) = log["pitchers"]
        assert one["nickname"] == "Ace"
        assert one["fields"]["outings"] == [
            {"date": "2026-05-12", "pitches": "66", "breaking": "", "before": "", "outs": "", "caught": ""}
        ]
        assert not {"pain", "today", "tonight", "nickname"} & one["fields"].keys()

        file = tmp_path / "arm-log.json"
        file.write_text(json.dumps(log), encoding="utf-8")
        other = open_count()
        other.click("[data-log] > summary")
        other.set_input_files("[data-log-load]", file)
        other.click("[data-pitcher=Ace]")
        expect(other.locator("#pitch-count-outings-0-date")).to_have_value("2026-05-12")

    @pytest.mark.parametrize(
        "text", ["", "[]", '{"bendbook": "arm log", "version": 9, "pitchers": []}', "{}"]
    )
    def test_a_file_that_is_not_ours_changes_nothing(
        self, open_count: Callable, tmp_path: Path, text: str
    ) -> None:
        page = open_count()
        page.click("[data-log] > summary")
        file = tmp_path / "other.json"
        file.write_text(text, encoding="utf-8")
        page.set_input_files("[data-log-load]", file)
        expect(page.locator("[data-log-state]")).to_contain_text("Nothing was changed.")

    def test_a_name_from_a_file_is_shown_and_never_run(self, open_count: Callable, tmp_path: Path) -> None:
        page = open_count()
        page.click("[data-log] > summary")
        file = tmp_path / "log.json"
        name = "<img src=x onerror=alert(1)>"
        pitchers = [
            {
                "nickname": name,
                "fields": {"age": "12", "rules": ["no", {"a": name}], "outings": [{"date": name}]},
            }
        ]
        file.write_text(
            json.dumps({"bendbook": "arm log", "version": 1, "pitchers": pitchers}), encoding="utf-8"
        )
        page.set_input_files("[data-log-load]", file)
        button = page.locator("[data-pitcher]")
        expect(button).to_have_text(name)
        button.click()
        assert page.locator("img[src=x]").count() == 0

    def test_where_storage_is_refused_the_page_still_counts_and_says_so(self, open_count: Callable) -> None:
        # The frame of the site says so itself where it looks for light or dark.
        page = open_count(before=REFUSES, tolerated=("Service Worker", "refused"))
        begin(page)
        pitch(page, 2)
        expect(page.locator("[data-live]")).to_contain_text("Leaving now", timeout=WAIT_MS)
        page.fill("#pitch-count-nickname", "Ace")
        page.click("[data-log] > summary")
        page.click("[data-log-keep]")
        expect(page.locator("[data-log-state]")).to_contain_text("This browser keeps nothing.")
        with page.expect_download() as saved:
            page.click("[data-log-save]")
        assert json.loads(Path(saved.value.path()).read_text(encoding="utf-8"))["pitchers"]

    @staticmethod
    def keep(page: Page, nickname: str, date: str, pitches: str) -> None:
        begin(page)
        page.fill("#pitch-count-nickname", nickname)
        page.click("[data-add-row]")
        page.fill("#pitch-count-outings-0-date", date)
        page.fill("#pitch-count-outings-0-pitches", pitches)
        page.evaluate("document.querySelector('[data-log]').open = true")
        page.click("[data-log-keep]")
        expect(page.locator("[data-log-state]")).to_contain_text(f"{nickname} is kept on this device.")

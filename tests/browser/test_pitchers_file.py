"""A file put into a long text, and the pitcher's file kept in the browser: only when the reader says so."""

from __future__ import annotations

import gettext
import json
import shutil
from collections.abc import Callable
from pathlib import Path

import jinja2
import pytest
from playwright.sync_api import Page, expect

from build_tools.browser.words import words_script
from build_tools.places import PROJECT
from calculators.desk.read_session import CALCULATOR
from calculators.desk.render_html import form_html
from tests.desk.loop_shelf import SEASON, shelf

pytestmark = pytest.mark.browser
ENGLISH = gettext.NullTranslations()
SCRIPT = """
import { serveFills } from "./page/fills.js";
import { serveRecord } from "./page/record.js";
const form = document.querySelector("form");
self.inputs = 0;
form.addEventListener("input", () => (self.inputs += 1));
serveFills(form, () => (self.filled = true), new AbortController().signal);
serveRecord(form);
self.answered = (files) => form.dispatchEvent(new CustomEvent("bendbook:answer", { detail: { files } }));
"""
FILE = {
    "name": "juniper.pitcher.json",
    "type": "application/json",
    "text": '{"kind": "bendbook pitcher", "nickname": "Juniper"}',
}


@pytest.fixture
def page(tmp_path: Path, serve: Callable, open_page: Callable) -> Page:
    shutil.copytree(PROJECT / "build_tools" / "browser" / "page", tmp_path / "page")
    templates = jinja2.Environment(loader=jinja2.FileSystemLoader(PROJECT / "build_tools" / "templates"))
    record = templates.get_template("record.html.j2").render(_=lambda words: words)
    (tmp_path / "script.js").write_text(SCRIPT, encoding="utf-8")
    (tmp_path / "index.html").write_text(
        f'<!doctype html><html lang="en"><title>Form</title><link rel="icon" href="data:,">'
        f"<script>{words_script('en', ENGLISH)}</script>"
        f"<div data-desk>{form_html(CALCULATOR, shelf(), ENGLISH)}{record}</div>"
        f'<script type="module" src="script.js"></script>',
        encoding="utf-8",
    )
    return open_page(serve(tmp_path), "index.html")


def test_the_worked_example_stands_in_the_box(page: Page) -> None:
    assert page.locator("textarea[name=sheet]").input_value() == SEASON


def test_a_picked_file_fills_the_box(page: Page) -> None:
    page.set_input_files(
        "#read-session-sheet-pick",
        {"name": "pen.csv", "mimeType": "text/csv", "buffer": b"pitch,speed mph\nfastball,76\n"},
    )
    expect(page.locator("textarea[name=sheet]")).to_have_value("pitch,speed mph\nfastball,76\n")
    page.wait_for_function("self.filled")


def kept(page: Page) -> dict[str, str]:
    return json.loads(page.evaluate("localStorage.getItem('bendbook-pitchers')") or "{}")


def answered(page: Page, **told: object) -> str:
    """Let an answer come with a file, and return the file's text."""
    text = json.dumps({"kind": "bendbook pitcher", "nickname": "Juniper", **told})
    page.evaluate("file => answered([file])", {**FILE, "text": text})
    return text


def test_nothing_is_kept_until_the_reader_says_so(page: Page) -> None:
    text = answered(page)
    assert page.evaluate("localStorage.length") == 0
    page.click("[data-record-keep]")
    assert kept(page) == {"Juniper": text}
    expect(page.locator("[data-record-state]")).to_have_text("The file of Juniper is kept in this browser.")


def test_what_was_kept_is_put_back_and_can_be_deleted(page: Page) -> None:
    text = answered(page)
    page.click("[data-record-keep]")
    page.reload()
    expect(page.locator("[data-record-keep]")).to_be_disabled()
    page.click("text=Open Juniper")
    expect(page.locator("textarea[name=record]")).to_have_value(text)
    assert page.evaluate("inputs") == 1
    page.on("dialog", lambda dialog: dialog.accept())
    page.click("text=Delete Juniper")
    assert page.evaluate("localStorage.length") == 0
    expect(page.locator("[data-record-open]")).to_have_count(0)


def test_each_pitcher_has_a_file_of_their_own_here(page: Page) -> None:
    first = answered(page)
    page.click("[data-record-keep]")
    second = answered(page, nickname="Maple")
    page.click("[data-record-keep]")
    assert kept(page) == {"Juniper": first, "Maple": second}
    page.once("dialog", lambda dialog: dialog.accept())
    page.click("text=Delete Juniper")
    assert kept(page) == {"Maple": second}


def test_a_season_is_not_overwritten_by_a_file_that_holds_less(page: Page) -> None:
    season = answered(page, sessions=[{}, {}], log=[{}])
    page.click("[data-record-keep]")
    answered(page, sessions=[{}])
    page.once("dialog", lambda dialog: dialog.dismiss())
    page.click("[data-record-keep]")
    assert kept(page) == {"Juniper": season}
    longer = answered(page, sessions=[{}, {}, {}], log=[{}])
    page.click("[data-record-keep]")
    assert kept(page) == {"Juniper": longer}


def test_the_file_takes_the_place_of_the_worked_example_and_pain_is_asked_anew(page: Page) -> None:
    """A made-up sixteen-year-old without pain must not answer for a child of twelve."""
    answered(
        page,
        hand="left",
        age=12,
        as_of="2020-01-01",
        fastball_clock="10:30",
        fastball_speed=55.5,
        targets=[{"role": "swing-and-miss"}, {"role": "first-pitch", "shape": "slow-loop"}],
    )
    page.click("[data-record-keep]")
    page.evaluate("document.querySelectorAll('details').forEach((one) => (one.open = true))")
    page.fill("[name=fastball_speed]", "58")
    page.click("text=Open Juniper")
    assert page.locator("[name=pain]:checked").count() == 0
    expect(page.locator("[name=hand]:checked")).to_have_value("left")
    expect(page.locator("[name=fastball_clock]")).to_have_value("10:30")
    expect(page.locator("[name=fastball_speed]")).to_have_value("58")
    expect(page.locator("[name=role]")).to_have_value("first-pitch")
    expect(page.locator("[name=sheet]")).to_have_value("")
    assert int(page.locator("[name=age]").input_value()) >= 12 + 6


def test_a_sheet_of_ones_own_is_not_read_against_the_examples_target_or_health(page: Page) -> None:
    page.set_input_files(
        "#read-session-sheet-pick",
        {"name": "pen.csv", "mimeType": "text/csv", "buffer": b"pitch,speed mph\n"},
    )
    expect(page.locator("textarea[name=sheet]")).to_have_value("pitch,speed mph\n")
    assert page.locator("[name=pain]:checked").count() == 0
    expect(page.locator("[name=role]")).to_have_value("")
    expect(page.locator("[name=age]")).to_have_value("16")

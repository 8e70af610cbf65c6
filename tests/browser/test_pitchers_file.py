"""A file put into a long text, and the pitcher's file kept in the browser: only when the reader says so."""

from __future__ import annotations

import gettext
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
FILE = {"name": "juniper.pitcher.json", "type": "application/json", "text": '{"kind": "bendbook pitcher"}'}


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


def test_nothing_is_kept_until_the_reader_says_so(page: Page) -> None:
    page.evaluate("file => answered([file])", FILE)
    assert page.evaluate("localStorage.length") == 0
    page.click("[data-record-keep]")
    assert page.evaluate("localStorage.length") == 1
    expect(page.locator("[data-record-state]")).to_have_text("The pitcher's file is kept in this browser.")


def test_what_was_kept_is_put_back_and_can_be_deleted(page: Page) -> None:
    page.evaluate("file => answered([file])", FILE)
    page.click("[data-record-keep]")
    page.reload()
    expect(page.locator("[data-record-keep]")).to_be_disabled()
    page.click("[data-record-open]")
    expect(page.locator("textarea[name=record]")).to_have_value(FILE["text"])
    assert page.evaluate("inputs") == 1
    page.on("dialog", lambda dialog: dialog.accept())
    page.click("[data-record-forget]")
    assert page.evaluate("localStorage.length") == 0
    expect(page.locator("[data-record-open]")).to_be_disabled()

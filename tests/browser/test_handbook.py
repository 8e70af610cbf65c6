"""The handbook itself, built: every calculator answers as CPython does, every page is whole, online and off."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from calculators.desk.counter import CALCULATORS, open_counter
from tests.browser.answers import words_of
from tests.browser.conftest import NO_NETWORK

pytestmark = pytest.mark.browser
WAIT_MS = 30_000
AXE = Path(__file__).resolve().parents[2] / "node_modules" / "axe-core" / "axe.min.js"
TYPED = """form => {
    const typed = {};
    for (const table of form.querySelectorAll("[data-rows]")) typed[table.dataset.rows] = [];
    for (const field of form.elements) {
        if (!field.name || field.type === "file" || (field.type === "radio" && !field.checked)) continue;
        const [table, row, column] = field.name.split(".");
        if (column === undefined) typed[field.name] = field.value;
        else (typed[table][row] ??= {})[column] = field.value;
    }
    for (const file of form.querySelectorAll("[type=file]")) typed[file.name] = file.dataset.unlessPicked;
    return typed;
}"""
"""Read by the test's own means, so that the script under test is not trusted to read for it."""


def addresses(site: Path) -> list[str]:
    pages = sorted(path.relative_to(site).parent.as_posix() for path in site.rglob("index.html"))
    return ["" if page == "." else f"{page}/" for page in pages]


def ask(page: Page) -> None:
    page.locator("form[data-calculator] [type=submit]").click()
    expect(page.locator("[data-example-note]")).to_be_hidden(timeout=WAIT_MS)


@pytest.mark.parametrize("name", CALCULATORS)
def test_a_calculator_answers_in_the_browser_word_for_word_as_in_cpython(
    serve: Callable, open_page: Callable, handbook: Path, name: str
) -> None:
    page = open_page(
        serve(handbook), f"calculators/{name}/", service_workers="block", tolerated=("Service Worker",)
    )
    example = words_of(page, "[data-answer]")
    ask(page)
    shelf = (handbook / "assets/bendbook/runtime/shelf.json").read_text(encoding="utf-8")
    typed = page.locator("form[data-calculator]").evaluate(TYPED)
    in_cpython = json.loads(open_counter(shelf).answer(name, json.dumps(typed)))["html"]
    page.evaluate(
        "html => document.body.insertAdjacentHTML('beforeend', `<div id='cpython'>${html}</div>`)", in_cpython
    )
    assert words_of(page, "[data-answer]") == words_of(page, "#cpython")
    assert drawings_of(page, "[data-answer]") == drawings_of(page, "#cpython")
    if "today" not in typed:
        assert words_of(page, "[data-answer]") == example


def drawings_of(page: Page, place: str) -> list[str]:
    return page.locator(f"{place} svg").evaluate_all("drawings => drawings.map(drawing => drawing.innerHTML)")


@pytest.mark.parametrize("mount", ["/", "/league/handbook/"])
def test_the_whole_handbook_works_with_the_server_gone(
    serve: Callable, open_page: Callable, handbook: Path, mount: str
) -> None:
    server = serve(handbook, mount)
    page = open_page(server, tolerated=NO_NETWORK)
    expect(page.locator("[data-kept]")).to_contain_text("Kept on this device", timeout=60_000)
    server.cut_off()
    page.context.set_offline(True)
    for address in addresses(handbook)[::12]:
        page.goto(server.url + address)
        expect(page.locator("h1").first).to_be_visible()
    for name in CALCULATORS:
        page.goto(server.url + f"calculators/{name}/")
        ask(page)
    page.goto(server.url + "calculators/spin-to-break")
    assert page.url == server.url + "calculators/spin-to-break/"
    page.goto(server.url + "no/such/page/")
    page.locator("header a").first.click()
    expect(page.locator("h1").first).to_be_visible()
    assert page.url.rstrip("./") == server.url.rstrip("/")


def test_search_finds_a_grip_with_the_server_gone(
    serve: Callable, open_page: Callable, handbook: Path
) -> None:
    server = serve(handbook, "/league/handbook/")
    page = open_page(server, tolerated=NO_NETWORK)
    expect(page.locator("[data-kept]")).to_contain_text("Kept on this device", timeout=60_000)
    server.cut_off()
    page.context.set_offline(True)
    page.goto(server.url + "cues/")
    page.locator("[data-md-component=search-query]").first.fill("knuckle")
    page.locator(".md-search-result__link").first.click(timeout=WAIT_MS)
    expect(page.locator("main h1").first).to_contain_text("knuckle", ignore_case=True)
    expect(page.locator(".md-search__output")).to_be_hidden()
    assert "?h=" in page.url


def test_every_page_comes_whole_and_keeps_no_reader_out(
    serve: Callable, open_page: Callable, handbook: Path
) -> None:
    server = serve(handbook)
    page = open_page(server, viewport={"width": 390, "height": 780}, reduced_motion="reduce")
    axe = AXE.read_text(encoding="utf-8")
    faults: dict[str, list[str]] = {}
    for address in addresses(handbook):
        page.goto(server.url + address)
        page.evaluate(axe)
        found = page.evaluate("axe.run({ resultTypes: ['violations'] })")["violations"]
        for one in found:
            faults.setdefault(one["id"], []).append(f"{address}: {one['nodes'][0]['html'][:160]}")
        wide = page.evaluate("document.documentElement.scrollWidth - innerWidth")
        if wide > 0:
            faults.setdefault("wider than a phone", []).append(address)
    assert {rule: pages[:5] for rule, pages in faults.items()} == {}

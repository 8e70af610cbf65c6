"""What the privacy page promises: nothing is sent, and nothing is stored that nobody asked to keep."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Request, expect

from calculators.desk.counter import CALCULATORS

pytestmark = pytest.mark.browser
WAIT_MS = 30_000
THE_LOOK = "/.__palette"
"""Light or dark, which the theme keeps under the site's own path."""

STORED = """async () => ({
    local: Object.keys(localStorage),
    session: Object.keys(sessionStorage),
    databases: (await indexedDB.databases()).map(({ name }) => name),
    cookies: document.cookie,
})"""


def test_every_calculator_is_used_and_nothing_is_sent_or_stored(
    serve: Callable, open_page: Callable, handbook: Path
) -> None:
    server = serve(handbook)
    page = open_page(server, service_workers="block", tolerated=("Service Worker",))
    asked: list[Request] = []
    page.context.on("request", lambda one: asked.append(one))
    for name in CALCULATORS:
        page.goto(f"{server.url}calculators/{name}/")
        nickname = page.locator("form[data-calculator] input[data-private]")
        for one in nickname.all():
            if one.is_visible():
                one.fill("Juniper")
        page.locator("form[data-calculator] [type=submit]").click()
        expect(page.locator("[data-example-note]")).to_be_hidden(timeout=WAIT_MS)
        assert "Juniper" not in page.url
        stored = page.evaluate(STORED)
        assert set(stored.pop("local")) <= {THE_LOOK}, name
        assert stored == {"session": [], "databases": [], "cookies": ""}, name
    assert page.context.cookies() == []
    sent = [one for one in asked if not one.url.startswith(("data:", "blob:"))]
    assert len(sent) > len(CALCULATORS)
    assert {one.method for one in sent} == {"GET"}
    assert [one.url for one in sent if one.post_data is not None or "Juniper" in one.url] == []
    files = {f"{server.url}{path.relative_to(handbook).as_posix()}" for path in handbook.rglob("*")}
    for one in sent:
        address = one.url.split("?")[0].split("#")[0]
        assert address in files or f"{address}index.html" in files


def test_a_pitcher_is_kept_when_asked_and_gone_when_deleted(
    serve: Callable, open_page: Callable, handbook: Path
) -> None:
    page = open_page(
        serve(handbook), "calculators/pitch-count/", service_workers="block", tolerated=("Service Worker",)
    )
    before = set(page.evaluate("Object.keys(localStorage)"))
    page.on("dialog", lambda asked: asked.accept())
    page.locator("[data-log] summary").first.click()
    page.locator("form[data-calculator] [name=nickname]").fill("Juniper")
    page.locator("[data-log] [data-log-keep]").click()
    kept = set(page.evaluate("Object.keys(localStorage)")) - before
    assert len(kept) == 1
    assert "Juniper" in page.evaluate("key => localStorage.getItem(key)", kept.pop())
    page.locator("[data-log] [data-log-delete-all]").click()
    assert "Juniper" not in page.evaluate("Object.values(localStorage).join()")

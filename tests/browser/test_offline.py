"""The copy on the reader's device: whole, in any folder of any server, and never mixed between editions."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path
from types import ModuleType

import pytest
from playwright.sync_api import BrowserContext, Page, Playwright, expect

from tests.browser.conftest import NO_NETWORK

pytestmark = pytest.mark.browser
FALL = "calculators/fall/"
WAIT_MS = 30_000


def until(page: Page, condition: str) -> None:
    """Wait for a condition in the page; the page's own policy forbids Playwright's way of doing so."""
    look = f"async () => {{ while (!({condition})) await new Promise((next) => setTimeout(next, 50)); }}"
    page.evaluate(look)


def kept(page: Page, date: str = "May 16, 2026") -> None:
    """Wait until the page says that an edition is kept."""
    if page.locator("[data-kept]").count():
        expect(page.locator("[data-kept]")).to_contain_text(f"edition of {date}", timeout=WAIT_MS)
    until(page, "navigator.serviceWorker.controller !== null")


def cut_off(page: Page, server: object) -> None:
    server.cut_off()
    page.context.set_offline(True)


def answer_now(page: Page, seconds: str, expected: str) -> None:
    page.fill("#fall-seconds", seconds)
    expect(page.locator("[data-answer]")).to_contain_text(expected, timeout=WAIT_MS)


def kept_addresses(page: Page) -> list[str]:
    """All that lies in the caches of the page's origin."""
    return page.evaluate("""async () => {
        const found = [];
        for (const name of await caches.keys()) {
            for (const request of await (await caches.open(name)).keys()) found.push(request.url);
        }
        return found;
    }""")


@pytest.mark.parametrize("mount", ["/", "/league/handbook/"])
def test_after_one_visit_every_page_and_calculator_works_with_the_server_gone(
    serve: Callable, open_page: Callable, mini_site: Path, mount: str
) -> None:
    server = serve(mini_site, mount)
    page = open_page(server, tolerated=NO_NETWORK)
    kept(page)
    cut_off(page, server)
    page.click("#to-fall")
    answer_now(page, "2", "19.620 m")
    page.click("#to-terms")
    expect(page.locator("h1")).to_have_text("Terms")


def test_it_works_after_the_browser_was_closed_and_opened_without_a_connection(
    serve: Callable, mini_site: Path, tmp_path: Path, playwright: Playwright, chromium_options: dict
) -> None:
    def browser() -> BrowserContext:
        return playwright.chromium.launch_persistent_context(tmp_path / "profile", **chromium_options)

    server = serve(mini_site)
    first = browser()
    page = first.new_page()
    page.goto(server.url)
    kept(page)
    first.close()
    server.cut_off()
    second = browser()
    second.set_offline(True)
    page = second.new_page()
    page.goto(server.url + FALL)
    answer_now(page, "2", "19.620 m")
    second.close()


@pytest.mark.parametrize("mount", ["/", "/league/handbook/"])
def test_addresses_a_reader_may_type_work_offline(
    serve: Callable, open_page: Callable, mini_site: Path, mount: str
) -> None:
    server = serve(mini_site, mount)
    page = open_page(server, tolerated=NO_NETWORK)
    kept(page)
    cut_off(page, server)

    page.goto(server.url + "calculators/fall#seconds=2")
    assert page.url.startswith(server.url + "calculators/fall/#seconds=2")
    expect(page.locator("[data-answer]")).to_contain_text("19.620 m", timeout=WAIT_MS)

    page.goto(server.url + "guide/terms/?h=seam")
    expect(page.locator("h1")).to_have_text("Terms")

    unknown = page.goto(server.url + "no/such/page/")
    assert unknown.status == 404
    expect(page.locator("h1")).to_have_text("Not in this handbook")
    page.click("#to-terms")
    expect(page.locator("h1")).to_have_text("Terms")


def test_an_unknown_address_shows_the_handbooks_own_page_online_too(
    serve: Callable, open_page: Callable, mini_site: Path
) -> None:
    server = serve(mini_site, "/league/handbook/")
    page = open_page(server, tolerated=NO_NETWORK)
    kept(page)
    page.goto(server.url + "no/such/page")
    page.click("#to-terms")
    expect(page.locator("h1")).to_have_text("Terms")


def newer(site: Path, mini: ModuleType, build: Path, **changes: float) -> None:
    """Put a newer edition into a site that is being served."""
    mini.make_site(site, build, edition="second", date="2026-06-01", **changes)


def look_for_new(page: Page) -> None:
    page.evaluate("navigator.serviceWorker.getRegistration().then(found => found.update()).catch(() => {})")


def test_a_new_edition_is_taken_on_a_tap_and_keeps_what_was_typed_in_every_tab(
    serve: Callable, open_page: Callable, mini_copy: Path, mini: ModuleType, mini_build: Path
) -> None:
    server = serve(mini_copy)
    page = open_page(server, FALL)
    other = page.context.new_page()
    other.goto(server.url + FALL)
    for tab, height in ((page, "7"), (other, "9")):
        kept(tab)
        answer_now(tab, "2", "19.620 m")
        tab.fill("#fall-nickname", "Lefty")
        tab.click("[data-add-row]")
        tab.fill("#fall-drops-0-height", height)
    before = set(kept_addresses(page))

    newer(mini_copy, mini, mini_build)
    look_for_new(page)
    banner = page.locator(".edition-banner")
    expect(banner).to_contain_text("June 1, 2026", timeout=WAIT_MS)
    expect(page.locator("main > p").first).to_have_text("first")
    asked_before_tap = len(server.asked)
    banner.get_by_role("button", name="Use the new edition").click()

    for tab, height in ((page, "7"), (other, "9")):
        expect(tab.locator("main > p").first).to_have_text("second", timeout=WAIT_MS)
        expect(tab.locator("#fall-nickname")).to_have_value("Lefty")
        expect(tab.locator("#fall-drops-0-height")).to_have_value(height)
        expect(tab.locator("[data-answer]")).to_contain_text(f"{19.62 + int(height):.3f} m", timeout=WAIT_MS)
        expect(tab.locator(".edition-banner")).to_have_count(0)
    assert [path for path in server.asked[asked_before_tap:] if path != "sw.js"] == []

    # The edition in use is there once, and nothing is left that only the old one had.
    until(page, "(await caches.keys()).length === 1")
    after = kept_addresses(page)
    assert len(after) == len(before)
    assert len(set(after) & before) < len(before)


def test_what_did_not_change_between_editions_is_not_fetched_again(
    serve: Callable, open_page: Callable, mini_copy: Path, mini: ModuleType, mini_build: Path
) -> None:
    server = serve(mini_copy)
    page = open_page(server)
    kept(page)
    page.wait_for_load_state("networkidle")
    server.asked.clear()
    newer(mini_copy, mini, mini_build)
    look_for_new(page)
    expect(page.locator(".edition-banner")).to_be_visible(timeout=WAIT_MS)
    assert set(server.asked) == {"sw.js", "edition.json", "index.html", "calculators/fall/index.html"}


@pytest.mark.parametrize("spoiled", ["calculators/fall/index.html", "assets/bendbook/runtime/shelf.json"])
@pytest.mark.parametrize("how", ["tampered with", "cut short", "missing"])
def test_an_edition_with_a_bad_file_is_not_taken_at_all_and_a_mended_one_is(
    serve: Callable,
    open_page: Callable,
    mini_copy: Path,
    mini: ModuleType,
    mini_build: Path,
    spoiled: str,
    how: str,
) -> None:
    server = serve(mini_copy)
    page = open_page(server, tolerated=(*NO_NETWORK, "integrity", "bad-precaching-response", "digest"))
    kept(page)
    newer(mini_copy, mini, mini_build, gravity=9.80665)
    file = mini_copy / spoiled
    good = file.read_bytes()
    if how == "missing":
        file.unlink()
    else:
        file.write_bytes({"tampered with": good.replace(b"9", b"8"), "cut short": good[:-3]}[how])

    outcome = page.evaluate("""async () => {
        const registration = await navigator.serviceWorker.getRegistration();
        const ended = new Promise(resolve => registration.addEventListener("updatefound", () => {
            const coming = registration.installing;
            coming.addEventListener("statechange", () => resolve(coming.state));
        }));
        await registration.update().catch(() => {});
        return ended;
    }""")
    assert outcome == "redundant"
    expect(page.locator(".edition-banner")).to_have_count(0)
    expect(page.locator("[data-kept]")).to_contain_text("edition of May 16, 2026")
    page.reload()
    expect(page.locator("#edition")).to_have_text("first")
    page.goto(server.url + FALL)
    answer_now(page, "2", "19.620 m")

    file.write_bytes(good)
    look_for_new(page)
    page.get_by_role("button", name="Use the new edition").click(timeout=WAIT_MS)
    expect(page.locator("main > p").first).to_have_text("second", timeout=WAIT_MS)
    answer_now(page, "2", "19.613 m")


def test_a_first_visit_that_broke_off_goes_on_where_it_stopped(
    serve: Callable, open_page: Callable, mini_copy: Path
) -> None:
    server = serve(mini_copy)
    last = mini_copy / "404.html"
    good = last.read_bytes()
    last.unlink()
    page = open_page(server, tolerated=(*NO_NETWORK, "bad-precaching-response"))
    expect(page.locator("[data-kept]")).to_contain_text("No copy is kept yet", timeout=WAIT_MS)
    page.wait_for_load_state("networkidle")
    have = [address.removeprefix(server.url).partition("?")[0] for address in kept_addresses(page)]
    assert have
    last.write_bytes(good)
    server.asked.clear()
    page.reload()
    kept(page)
    assert "404.html" in server.asked
    assert not [path for path in have if path.endswith((".wasm", ".zip")) and path in server.asked]


def test_a_copy_that_could_not_be_made_is_tried_again_without_a_reload(
    serve: Callable, open_page: Callable, mini_copy: Path
) -> None:
    last = mini_copy / "404.html"
    good = last.read_bytes()
    last.unlink()
    page = open_page(serve(mini_copy), tolerated=(*NO_NETWORK, "bad-precaching-response"))
    expect(page.locator("[data-kept]")).to_contain_text("No copy is kept yet", timeout=WAIT_MS)
    last.write_bytes(good)
    kept(page)


def test_two_handbooks_on_one_host_do_not_disturb_each_other(
    serve: Callable,
    open_page: Callable,
    tmp_path: Path,
    mini: ModuleType,
    mini_site: Path,
    mini_copy: Path,
    mini_build: Path,
) -> None:
    host = tmp_path / "host"
    for name in ("one", "two"):
        shutil.copytree(mini_site, host / name)
    server = serve(host)
    page = open_page(server, "one/", tolerated=NO_NETWORK)
    kept(page)
    page.goto(server.url + "two/")
    kept(page)
    newer(host / "two", mini, mini_build)
    look_for_new(page)
    page.get_by_role("button", name="Use the new edition").click(timeout=WAIT_MS)
    expect(page.locator("#edition")).to_have_text("second", timeout=WAIT_MS)
    cut_off(page, server)
    page.goto(server.url + "one/")
    expect(page.locator("#edition")).to_have_text("first")
    page.goto(server.url + "two/" + FALL)
    answer_now(page, "2", "19.620 m")


def test_the_copy_is_kept_for_good_only_on_a_tap_and_says_what_the_browser_promised(
    serve: Callable, open_page: Callable, mini_site: Path
) -> None:
    asked = "window.asked = 0; StorageManager.prototype.persist = async () => Boolean(++window.asked)"
    page = open_page(serve(mini_site), before=asked)
    kept(page)
    assert page.evaluate("asked") == 0
    page.click("[data-keep]")
    expect(page.locator("[data-kept]")).to_contain_text("until you remove it")
    assert page.evaluate("asked") == 1


def test_a_device_set_to_save_data_fetches_the_copy_only_when_asked(
    serve: Callable, open_page: Callable, mini_site: Path
) -> None:
    server = serve(mini_site)
    saving = "Object.defineProperty(navigator, 'connection', { value: { saveData: true } })"
    page = open_page(server, before=saving)
    expect(page.locator("[data-kept]")).to_contain_text("set to save data")
    assert "sw.js" not in server.asked
    page.click("[data-keep]")
    kept(page)


def test_an_authors_preview_keeps_nothing(
    serve: Callable, open_page: Callable, mini: ModuleType, mini_copy: Path, mini_build: Path
) -> None:
    mini.make_preview(mini_copy, mini_build)
    server = serve(mini_copy)
    page = open_page(server, FALL)
    answer_now(page, "2", "19.620 m")
    assert "sw.js" not in server.asked

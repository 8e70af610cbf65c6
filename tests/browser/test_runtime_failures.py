"""When the runtime cannot come or cannot run, the page says so at once and trying again helps."""

from __future__ import annotations

import datetime
import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Playwright, expect

pytestmark = pytest.mark.browser
FALL = "calculators/fall/"
RUNTIME = "assets/bendbook/runtime/"
PYSCRIPT = "assets/bendbook/pyscript/"
WHATEVER_THE_BROWSER_SAYS = ("",)
SOON_MS = 20_000


def spoil(file: Path, how: str) -> Callable[[], None]:
    """Break a file as a bad deployment would; the function returned mends it."""
    good = file.read_bytes()
    bad = {"missing": None, "cut short": good[: len(good) // 2], "garbled": bytes(len(good))}[how]
    if bad is None:
        file.unlink()
    else:
        file.write_bytes(bad)
    return lambda: file.write_bytes(good) and None


@pytest.mark.parametrize(
    ("file", "how", "words"),
    [
        (RUNTIME + "pyodide.asm.wasm", "missing", "could not be fetched"),
        (RUNTIME + "pyodide.asm.wasm", "cut short", "arrived damaged"),
        (RUNTIME + "pyodide.asm.mjs", "missing", "could not be fetched"),
        (RUNTIME + "python_stdlib.zip", "garbled", "did not start"),
        (RUNTIME + "calculators.bin", "garbled", "did not start"),
        (RUNTIME + "shelf.json", "missing", "could not be fetched"),
        (RUNTIME + "interpreter.mjs", "missing", "did not start"),
        (PYSCRIPT + "core.js", "missing", "could not be fetched"),
        (PYSCRIPT + "core-*.js", "missing", "could not be fetched"),
    ],
)
def test_a_broken_file_is_said_soon_and_trying_again_helps_once_it_is_mended(
    serve: Callable, open_page: Callable, mini_copy: Path, file: str, how: str, words: str
) -> None:
    mend = spoil(next(mini_copy.glob(file)), how)
    page = open_page(serve(mini_copy), FALL, tolerated=WHATEVER_THE_BROWSER_SAYS, service_workers="block")
    page.focus("#fall-seconds")
    again = page.get_by_role("button", name="Try again")
    expect(page.locator("[data-status]")).to_contain_text(words, timeout=SOON_MS)
    expect(again).to_be_visible()
    expect(page.locator("[data-answer]")).to_contain_text("4.905 m (earth, 2026-05-16)")
    mend()
    again.click()
    expect(page.locator("[data-answer]")).to_contain_text(f"{datetime.date.today()}", timeout=SOON_MS)
    expect(again).to_have_count(0)


def test_progress_is_counted_in_bytes_and_goes_away(
    serve: Callable, open_page: Callable, mini_site: Path
) -> None:
    page = open_page(serve(mini_site), FALL)
    page.evaluate("""() => {
        window.seen = [];
        const look = () => {
            const bar = document.querySelector("[data-status] progress");
            if (bar?.hasAttribute("value")) window.seen.push([bar.value, bar.max]);
        };
        const status = document.querySelector("[data-status]");
        new MutationObserver(look).observe(status, { attributes: true, childList: true, subtree: true });
    }""")
    page.fill("#fall-seconds", "2")
    expect(page.locator("[data-answer]")).to_contain_text("19.620 m", timeout=SOON_MS)
    expect(page.locator("[data-status] progress")).to_have_count(0)
    sizes = [
        mini_site / RUNTIME / name for name in ("pyodide.asm.wasm", "python_stdlib.zip", "calculators.bin")
    ]
    sizes += [mini_site / RUNTIME / "shelf.json", mini_site / RUNTIME / "words.es.json"]
    total = sum(file.stat().st_size for file in sizes)
    seen = [value for value, most in page.evaluate("seen") if most == total]
    assert seen == sorted(seen)
    assert seen[-1] == total


@pytest.mark.parametrize("lacking", ["WebAssembly", "Worker"])
def test_a_browser_that_lacks_what_it_takes_keeps_the_worked_example(
    serve: Callable, open_page: Callable, mini_site: Path, lacking: str
) -> None:
    page = open_page(serve(mini_site), FALL, before=f"delete window.{lacking}")
    page.fill("#fall-seconds", "2")
    expect(page.locator("[data-status]")).to_contain_text("too old")
    expect(page.locator("[data-answer]")).to_contain_text("4.905 m")


def test_with_scripts_off_the_page_reads_and_shows_no_dead_buttons(
    serve: Callable, open_page: Callable, mini_site: Path
) -> None:
    page = open_page(serve(mini_site), FALL, java_script_enabled=False)
    expect(page.locator("[data-answer]")).to_contain_text("4.905 m")
    assert page.locator("button:visible").count() == 0
    page.goto(page.url.replace(FALL, "guide/terms/"))
    page.click("#term")
    assert page.url.endswith("#seam")


def test_a_calculator_runs_where_no_offline_copy_is_allowed(
    serve: Callable, open_page: Callable, mini_site: Path
) -> None:
    page = open_page(serve(mini_site), FALL, service_workers="block", tolerated=("Service Worker",))
    page.fill("#fall-seconds", "2")
    expect(page.locator("[data-answer]")).to_contain_text("19.620 m", timeout=SOON_MS)


def test_a_calculator_runs_for_a_reader_who_refuses_all_storage(
    serve: Callable, mini_site: Path, tmp_path: Path, playwright: Playwright, chromium_options: dict
) -> None:
    profile = tmp_path / "profile" / "Default"
    profile.mkdir(parents=True)
    refused = {"profile": {"default_content_setting_values": {"cookies": 2}}}
    (profile / "Preferences").write_text(json.dumps(refused))
    server = serve(mini_site)
    context = playwright.chromium.launch_persistent_context(profile.parent, **chromium_options)
    errors: list[str] = []
    context.on("weberror", lambda error: errors.append(str(error.error)))
    page = context.new_page()
    page.goto(server.url + FALL)
    assert (
        page.evaluate("() => { try { localStorage; return 'allowed' } catch { return 'refused' } }")
        == "refused"
    )
    page.fill("#fall-seconds", "2")
    expect(page.locator("[data-answer]")).to_contain_text("19.620 m", timeout=SOON_MS)
    page.goto(server.url)
    expect(page.locator("[data-kept]")).to_contain_text("keeps no copy")
    context.close()
    assert errors == []

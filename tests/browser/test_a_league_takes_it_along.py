"""The demonstration edition, built and printed, goes on a stick and onto a server, and is looked over there."""

from __future__ import annotations

import datetime
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect

from build_tools.disk import put_disk_copy
from tests.browser.conftest import CompressingHandler
from tests.browser.firefox import seen_in_firefox
from tests.browser.test_hosting import visited

pytestmark = pytest.mark.browser
DAY = datetime.date(2026, 5, 16)
ASKED = ("pitch-count", "spin-to-break", "distance-and-air")


@pytest.fixture(scope="module")
def unpacked(league_site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("stick")
    made = put_disk_copy(league_site, folder / "copy.zip", DAY)
    zipfile.ZipFile(made.path).extractall(folder)
    return folder / "Pennimoor Valley"


def test_its_copy_on_a_stick_answers_by_the_leagues_rules_in_chromium(
    chromium: Browser, unpacked: Path
) -> None:
    with chromium.new_context(offline=True, viewport={"width": 360, "height": 740}) as context:
        wrong: list[str] = []
        context.on("weberror", lambda error: wrong.append(str(error.error)))
        page = context.new_page()
        page.goto((unpacked / "calculators" / "pitch-count" / "index.html").as_uri())
        page.locator("form[data-calculator] [type=submit]").click()
        expect(page.locator("[data-example-note]")).to_be_hidden(timeout=60_000)
        assert page.locator("#pitch-count-rules").input_value() == "pennimoor-valley"
        expect(page.locator("[data-answer]")).to_contain_text("Pennimoor Valley")
        page.goto((unpacked / "calculators" / "distance-and-air" / "index.html").as_uri())
        page.locator("form[data-calculator] [type=submit]").click()
        expect(page.locator("[data-answer] .headline")).to_contain_text("from 42 ft", timeout=60_000)
        assert wrong == []


def test_and_in_firefox(unpacked: Path) -> None:
    seen = seen_in_firefox(unpacked, ASKED)
    assert (seen["errors"], seen["foreign"]) == ([], [])
    assert "from 42 ft" in seen["answers"]["distance-and-air"]["answer"]
    assert "Pennimoor Valley" in seen["answers"]["pitch-count"]["answer"]


def test_on_a_server_in_the_folder_that_its_address_names_a_visit_finds_nothing_wrong(
    serve: Callable, league_site: Path
) -> None:
    code, lines = visited(serve(league_site, "/handbook/", CompressingHandler).url)
    assert [line for line in lines if line.startswith("WRONG")] == []
    assert code == 0
    found = "\n".join(lines)
    assert "offline, 4 pages open" in found
    assert "offline, 2 calculators answer" in found

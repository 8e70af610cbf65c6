"""The copy for a memory stick: opened as files, with the network cut, in two browsers."""

from __future__ import annotations

import datetime
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from build_tools.disk import MOST_BYTES, put_disk_copy
from build_tools.disk.links import to_page
from build_tools.finish import FinishError
from calculators.desk.counter import CALCULATORS
from tests.browser.answers import words_of
from tests.browser.firefox import seen_in_firefox

pytestmark = pytest.mark.browser
DAY = datetime.date(2026, 5, 16)
OURS = ("file:", "data:", "blob:")


@pytest.fixture(scope="session")
def packed(handbook: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    return put_disk_copy(handbook, tmp_path_factory.mktemp("disk") / "copy.zip", DAY).path


@pytest.fixture(scope="session")
def unpacked(packed: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The copy in a folder whose name no address may hold as it is."""
    folder = tmp_path_factory.mktemp("disk") / "Année 2026 #1"
    zipfile.ZipFile(packed).extractall(folder)
    return folder / "Bendbook"


@pytest.fixture
def page(chromium: Browser) -> Iterator[Page]:
    """A page with the network cut, on which nothing may go wrong and nothing be asked of a host."""
    context = chromium.new_context(offline=True)
    wrong: list[str] = []
    context.on("console", lambda said: wrong.append(said.text) if said.type == "error" else None)
    context.on("weberror", lambda error: wrong.append(str(error.error)))
    context.on("request", lambda asked: None if asked.url.startswith(OURS) else wrong.append(asked.url))
    yield context.new_page()
    context.close()
    assert wrong == []


def test_it_is_small_enough_and_the_same_on_every_packing(
    handbook: Path, packed: Path, tmp_path: Path
) -> None:
    again = put_disk_copy(handbook, tmp_path / "again.zip", DAY)
    assert again.path.read_bytes() == packed.read_bytes()
    assert again.size < MOST_BYTES


def test_every_link_between_pages_leads_to_a_file(unpacked: Path) -> None:
    lost = []
    for page in unpacked.rglob("*.html"):
        for piece in page.read_text(encoding="utf-8").split(' href="')[1:]:
            address = piece.split('"', 1)[0].split("#")[0].split("?")[0]
            if address and ":" not in address and not (page.parent / address).is_file():
                lost.append(f"{page.relative_to(unpacked)}: {address}")
    assert lost == []


@pytest.mark.parametrize("name", CALCULATORS)
def test_a_calculator_answers_in_chromium(page: Page, unpacked: Path, name: str) -> None:
    page.goto((unpacked / "calculators" / name / "index.html").as_uri())
    example = words_of(page)
    page.locator("form[data-calculator] [type=submit]").click()
    expect(page.locator("[data-example-note]")).to_be_hidden(timeout=60_000)
    if not page.locator("[name=today]").count():
        assert words_of(page) == example


def test_a_new_answer_its_sources_and_the_search_lead_on_in_chromium(page: Page, unpacked: Path) -> None:
    page.goto((unpacked / "index.html").as_uri())
    expect(page.locator("[data-kept]")).to_have_text(
        "This copy is on a disk, edition of May 16, 2026. It needs no connection."
    )
    page.locator("main a", has_text="Spin to break").click()
    before = words_of(page)
    page.locator("[name=speed]").fill("75")
    page.locator("form[data-calculator] [type=submit]").click()
    expect(page.locator("[data-example-note]")).to_be_hidden(timeout=60_000)
    assert words_of(page) != before
    assert "speed=75" in page.url
    page.locator("[data-answer] a", has_text="Sawicki").click()
    expect(page.locator("main h1").first).to_contain_text("Sources")
    query = page.locator("[data-md-component=search-query]").first
    query.fill("knuckle")
    expect(page.locator(".md-search-result__link").first).to_be_attached(timeout=30_000)
    # The test may have typed before the theme was listening; a reader comes to the field later.
    query.blur()
    query.focus()
    page.locator(".md-search-result__link").first.click()
    expect(page.locator("main h1").first).to_contain_text("knuckle", ignore_case=True)


def test_everything_answers_in_firefox_with_the_network_cut(unpacked: Path) -> None:
    seen = seen_in_firefox(unpacked, CALCULATORS)
    assert (seen["errors"], seen["foreign"]) == ([], [])
    assert "edition of May 16, 2026" in seen["kept"]
    assert seen["found"].startswith("/grips/")
    for name in CALCULATORS:
        told = seen["answers"][name]
        if not told["asks_for_today"]:
            assert told["answer"] == told["example"]


def test_a_leagues_copy_leaves_its_pdfs_behind_and_does_not_link_them(
    league_site: Path, tmp_path: Path
) -> None:
    assert list(league_site.rglob("*.pdf"))
    made = put_disk_copy(league_site, tmp_path / "copy.zip", DAY)
    with zipfile.ZipFile(made.path) as packed:
        assert [name for name in packed.namelist() if name.endswith(".pdf")] == []
        bag = packed.read("Pennimoor Valley/print/bag/index.html").decode()
    assert ".pdf</a>" not in bag
    assert '.pdf">' not in bag


def test_without_a_site_it_says_what_to_build(tmp_path: Path) -> None:
    with pytest.raises(FinishError, match="Build it first"):
        put_disk_copy(tmp_path, tmp_path / "copy.zip", DAY)


def test_only_addresses_of_folders_with_a_page_are_led_to_the_page(tmp_path: Path) -> None:
    for folder in ("", "grips", "grips/basic-downer"):
        (tmp_path / folder).mkdir(parents=True, exist_ok=True)
        (tmp_path / folder / "index.html").touch()
    (tmp_path / "assets").mkdir()
    page = tmp_path / "grips"
    led = {
        "../": "../index.html",
        "..": "../index.html",
        "./": "./index.html",
        ".": "./index.html",
        "basic-downer/?h=knuckle#hold": "basic-downer/index.html?h=knuckle#hold",
        "../assets": "../assets",
        "#top": "#top",
        "https://example.org/grips/": "https://example.org/grips/",
        "mailto:coach@example.org": "mailto:coach@example.org",
        "../../": "../../",
    }
    assert {address: to_page(tmp_path, page, address) for address in led} == led
    assert to_page(tmp_path, tmp_path, "") == "index.html"

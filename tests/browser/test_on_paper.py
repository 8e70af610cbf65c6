"""What comes out of a printer: whole sheets, cards that fit, and codes that a phone reads.

Chromium makes the PDFs. Two programs that are not ours look at them: Poppler counts, measures and draws the
pages, ZXing reads the codes in the drawn pages.
"""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path

import numpy as np
import pytest
import zxingcpp
from playwright.sync_api import Page

from build_tools.hand_outs.kinds import HAND_OUTS

pytestmark = pytest.mark.browser
LIVE = "https://pennimoor.example/handbook/"
POINTS = {"Letter": (612, 792), "A4": (595, 842)}
"""Width and height in points: ANSI/ASME Y14.1 A (8.5 x 11 in) and ISO 216 A4 (210 x 297 mm), rounded down."""
MOST_BAG_BYTES = 5_000_000


def asked_of(pdf: Path) -> dict[str, str]:
    told = subprocess.run(["pdfinfo", pdf], capture_output=True, text=True, check=True).stdout
    return dict(re.findall(r"^([^:]+):\s+(.*)$", told, re.MULTILINE))


def pages_of(pdf: Path) -> int:
    return int(asked_of(pdf)["Pages"])


def words_of(pdf: Path) -> list[str]:
    """The words of each page, spaces evened out."""
    told = subprocess.run(
        ["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, check=True
    ).stdout
    return [" ".join(page.split()) for page in told.split("\f")][:-1]


def drawn(pdf: Path, folder: Path, dots_an_inch: int = 150) -> Iterator[np.ndarray]:
    """Yield each page in shades of gray, as a printer of that many dots would lay it down."""
    subprocess.run(["pdftoppm", "-gray", "-r", str(dots_an_inch), pdf, folder / pdf.stem], check=True)
    for path in sorted(folder.glob(f"{pdf.stem}-*.pgm")):
        kind, size, _, pixels = path.read_bytes().split(b"\n", 3)
        assert kind == b"P5"
        width, height = map(int, size.split())
        yield np.frombuffer(pixels, np.uint8).reshape(height, width)


@pytest.fixture(scope="module")
def hand_outs(league_site: Path) -> Path:
    return league_site / "hand-outs"


@pytest.fixture
def paper(serve: Callable, open_page: Callable, league_site: Path) -> Callable[[str], Page]:
    """Open a page as it is when it is printed."""

    def open_(path: str) -> Page:
        page = open_page(
            serve(league_site),
            path,
            service_workers="block",
            tolerated=("Service Worker",),
            viewport={"width": 720, "height": 1000},
        )
        page.emulate_media(media="print")
        return page

    return open_


SHEETS = {"stop": 1, "rest": 2, "pitch-count": 5, "session": 1, "parents": 1}


@pytest.mark.parametrize(("name", "sheets"), SHEETS.items())
def test_each_sheet_for_the_bag_is_as_many_pages_as_it_says(hand_outs: Path, name: str, sheets: int) -> None:
    """Five divisions lie in five age groups of the rules, so there are five pitch-count sheets."""
    assert pages_of(hand_outs / f"{name}-letter.pdf") == sheets


def test_cards_come_four_to_a_sheet(hand_outs: Path, league_site: Path) -> None:
    for kind in ("grips", "cues", "drills"):
        html = (league_site / "print" / kind / "index.html").read_text(encoding="utf-8")
        cards = html.count('class="card ')
        assert cards > 8
        assert pages_of(hand_outs / f"{kind}-letter.pdf") == -(-cards // 4)


def test_the_bag_set_holds_every_sheet_once_and_stays_small(hand_outs: Path) -> None:
    bag = hand_outs / "bag-letter.pdf"
    assert bag.stat().st_size < MOST_BAG_BYTES
    others = sum(pages_of(hand_outs / f"{name}-letter.pdf") for name in HAND_OUTS if name != "bag")
    wall_table_once = 1
    assert pages_of(bag) == others + 1 - wall_table_once
    text = words_of(bag)
    assert "For the bag" in text[0]
    assert "Pennimoor Fields, gate on Mill Lane" in text[0]
    for title in ("Warning signs", "Session sheet", "For parents", "Pitch count, Ages 11-12", "Basic downer"):
        assert any(title in page for page in text[1:])


def test_no_page_of_the_bag_set_is_blank_or_runs_off_the_paper(hand_outs: Path, tmp_path: Path) -> None:
    for page in drawn(hand_outs / "bag-letter.pdf", tmp_path, 50):
        ink = np.argwhere(page < 200)
        assert len(ink) > 500
        edge = 50 * 8 / 25.4
        (top, left), (bottom, right) = ink.min(axis=0), ink.max(axis=0)
        assert min(top, left) > edge, "8 mm at the edges are left to the printer"
        assert max(bottom - page.shape[0], right - page.shape[1]) < -edge


@pytest.mark.parametrize(
    "name", ["bag-letter", "grips-left-letter", "stop-large-letter", "rest-letter", "parents-letter"]
)
def test_every_code_on_paper_leads_a_phone_to_the_live_page(
    hand_outs: Path, league_site: Path, tmp_path: Path, name: str
) -> None:
    read: set[str] = set()
    pages_with_codes = 0
    for page in drawn(hand_outs / f"{name}.pdf", tmp_path):
        found = [
            code.text for code in zxingcpp.read_barcodes(page) if code.format == zxingcpp.BarcodeFormat.QRCode
        ]
        pages_with_codes += bool(found)
        read.update(found)
    assert pages_with_codes == pages_of(hand_outs / f"{name}.pdf")
    assert all(address.startswith(LIVE) for address in read)
    places = {address.removeprefix(LIVE) for address in read}
    assert all((league_site / place / "index.html").is_file() for place in places)
    if name == "bag-letter":
        cards = {
            f"{kind}/{path.parent.name}/"
            for kind in ("grips", "drills")
            for path in league_site.glob(f"{kind}/*/index.html")
        }
        assert places >= cards | {
            "",
            "guide/warning-signs/",
            "calculators/pitch-count/",
            "guide/for-parents/",
        }


def test_no_link_in_a_pdf_leads_to_the_computer_that_made_it(hand_outs: Path) -> None:
    for pdf in sorted(hand_outs.glob("*.pdf")):
        assert b"127.0.0.1" not in pdf.read_bytes()
    links = subprocess.run(
        ["pdfinfo", "-url", hand_outs / "bag-letter.pdf"], capture_output=True, text=True, check=True
    ).stdout
    assert LIVE + "glossary/" in links


def test_a_left_handers_cards_are_not_a_right_handers(hand_outs: Path, tmp_path: Path) -> None:
    right, left = (next(drawn(hand_outs / f"grips-{hand}letter.pdf", tmp_path, 50)) for hand in ("", "left-"))
    assert right.shape == left.shape
    assert (np.abs(right.astype(int) - left) > 100).mean() > 0.005


@pytest.mark.parametrize("name", [name for name in HAND_OUTS if name != "bag"])
def test_no_card_has_more_to_say_than_its_paper_holds(paper: Callable[[str], Page], name: str) -> None:
    page = paper(f"print/{name}/")
    cut = page.locator(".card, .box, .blank").evaluate_all(
        """pieces => pieces
            .filter(one => one.scrollHeight > one.clientHeight + 1 || one.scrollWidth > one.clientWidth + 1)
            .map(one => one.textContent.trim().slice(0, 40))"""
    )
    assert cut == []
    smallest = page.locator(".card li, .card p").evaluate_all(
        "texts => Math.min(99, ...texts.map(text => parseFloat(getComputedStyle(text).fontSize) * 72 / 96))"
    )
    assert smallest >= 6.5


def test_the_numbers_to_cross_off_end_at_the_leagues_own_limit(hand_outs: Path) -> None:
    """The demonstration's limits, as its rule set has them: 40, 60, 75, 85, and the guideline's own 95."""
    for text, limit in zip(words_of(hand_outs / "pitch-count-letter.pdf"), (40, 60, 75, 85, 95), strict=True):
        assert f" {limit} " in text
        assert f" {limit + 1} " not in text


def test_the_sheets_are_kept_on_a_phone_and_the_heavy_cards_are_not(league_site: Path) -> None:
    worker = (league_site / "sw.js").read_text(encoding="utf-8")
    for name in SHEETS:
        assert f'"print/{name}/index.html"' in worker
    for name in ("bag", "grips", "cues", "drills"):
        assert f'"print/{name}/index.html"' not in worker
    assert ".pdf" not in worker


def test_pdfs_are_linked_where_they_are_and_only_those(league_site: Path) -> None:
    index = (league_site / "print" / "index.html").read_text(encoding="utf-8")
    links = re.findall(r'<a href="\.\./(hand-outs/[^"]+\.pdf)"', index)
    assert "hand-outs/bag-letter.pdf" in links
    assert {
        (league_site / "hand-outs" / path.name).name for path in (league_site / "hand-outs").iterdir()
    } == {Path(link).name for link in links}


ENTRIES = {
    "cues": 2,
    "drills": 2,
    "faults": 2,
    "grips": 1,
    "guide": 3,
    "plans": 2,
    "shapes": 3,
    "calculators": 5,
}
"""Kind of page to the most sheets one of it may take."""
FRAME = (
    ".md-header, .md-sidebar, .md-footer, .md-search, .hand-choice, .headerlink, [data-needs-script], button"
)


@pytest.mark.parametrize("format_", POINTS)
@pytest.mark.parametrize(("kind", "most"), ENTRIES.items())
def test_a_page_prints_on_few_sheets_without_what_only_a_screen_needs(
    paper: Callable[[str], Page], league_site: Path, tmp_path: Path, kind: str, most: int, format_: str
) -> None:
    every = sorted(path.parent.name for path in league_site.glob(f"{kind}/*/index.html"))
    page = paper(f"{kind}/{every[0]}/")
    root = page.url.removesuffix(f"{kind}/{every[0]}/")
    for name in every[:: max(1, len(every) // 6)]:
        page.goto(f"{root}{kind}/{name}/")
        page.locator("html:not(.no-js)").wait_for()
        shown = page.locator(FRAME).evaluate_all(
            "parts => parts.filter(part => part.checkVisibility()).map(part => part.outerHTML.slice(0, 80))"
        )
        assert shown == []
        pdf = tmp_path / f"{name}.pdf"
        page.pdf(path=pdf, format=format_, print_background=True)
        told = asked_of(pdf)
        width, height = (int(float(one)) for one in re.findall(r"[\d.]+", told["Page size"])[:2])
        assert (width, height) == POINTS[format_]
        assert int(told["Pages"]) <= most, f"{kind}/{name}"
        title = page.locator("h1").first.inner_text()
        assert title.split()[0] in words_of(pdf)[0]

"""The league's board in a real browser: files stay on the device, what is unclear is asked, it works offline."""

from __future__ import annotations

import random
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import NO_NETWORK

pytestmark = pytest.mark.browser
BOARD = "calculators/league-board/"
WAIT_MS = 60_000
PHONE = {"viewport": {"width": 390, "height": 780}}


@pytest.fixture
def office(tmp_path: Path) -> tuple[Path, Path]:
    """Files as an office may have them: other heads, semicolons, Windows letters, dates with the month first."""
    roster, outings = tmp_path / "roster.csv", tmp_path / "outings.csv"
    roster.write_bytes("Player;Squad;Yrs\r\nZoë;Reds;12\r\nBo;Blues;11\r\n".encode("cp1252"))
    outings.write_text(
        "Who,When,Count\nzoë,5/15/2026,66\nBo,5/6/2026,40\nNobody,5/7/2026,3\n", encoding="utf-8-sig"
    )
    return roster, outings


def pick(page: Page, roster: Path, outings: Path) -> None:
    page.set_input_files("#league-board-roster", roster)
    page.set_input_files("#league-board-outings", outings)


def tap(page: Page, field: str, offer: str) -> None:
    problem = page.locator(f"#league-board-{field}-problem")
    expect(problem).to_be_visible(timeout=WAIT_MS)
    problem.get_by_role("button", name=offer, exact=True).click()


def answer_questions(page: Page) -> None:
    tap(page, "roster_pitcher", "player")
    tap(page, "roster_age", "yrs")
    tap(page, "outings_pitcher", "who")
    tap(page, "outings_date", "when")
    tap(page, "outings_pitches", "count")
    expect(page.locator("#league-board-dates-problem")).to_contain_text(
        "Does the month or the day come first?"
    )
    page.get_by_label("month first").check()
    page.fill("#league-board-today", "2026-05-16")
    expect(page.locator("[data-answer]")).to_contain_text("1 of 2 pitchers", timeout=WAIT_MS)


def test_heads_and_dates_are_asked_for_with_a_tap_and_the_board_stands(
    serve: Callable, open_page: Callable, handbook: Path, office: tuple[Path, Path]
) -> None:
    page = open_page(serve(handbook), BOARD, service_workers="block", tolerated=("Service Worker",), **PHONE)
    pick(page, *office)
    answer_questions(page)
    sheet = page.locator("[data-answer] .sheet").first
    expect(sheet).to_contain_text("not before Wed, May 20")
    expect(page.locator("[data-answer]")).to_contain_text("1 row not used")
    assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0


def test_nothing_of_a_file_leaves_the_device_or_stays_in_the_address(
    serve: Callable, open_page: Callable, handbook: Path, office: tuple[Path, Path]
) -> None:
    server = serve(handbook)
    page = open_page(server, BOARD, service_workers="block", tolerated=("Service Worker",))
    sent: list[str] = []
    page.context.on(
        "request", lambda request: sent.append(f"{request.method} {request.url} {request.post_data}")
    )
    pick(page, *office)
    answer_questions(page)
    told = " ".join([*sent, *server.asked, page.url])
    assert not any(word in told for word in ("Zo", "zo%", "Nobody", "Reds", "base64"))
    assert not any(one.startswith("POST") for one in sent)
    assert page.evaluate("localStorage.length + sessionStorage.length") == page.evaluate(
        "Object.keys(localStorage).filter(key => !/Zo|Reds/.test(localStorage[key])).length"
        " + Object.keys(sessionStorage).filter(key => !/Zo|Reds/.test(sessionStorage[key])).length"
    )


def test_the_files_it_hands_out_are_saved(
    serve: Callable, open_page: Callable, handbook: Path, office: tuple[Path, Path]
) -> None:
    page = open_page(serve(handbook), BOARD, service_workers="block", tolerated=("Service Worker",))
    pick(page, *office)
    answer_questions(page)
    with page.expect_download() as saved:
        page.get_by_role("link", name="The board as a table").click()
    assert saved.value.suggested_filename == "board-2026-05-16.csv"
    assert (
        Path(saved.value.path())
        .read_bytes()
        .decode()
        .splitlines()[1]
        .startswith("Zoë,,USA Baseball and MLB joint guideline,Ages 11-12,no,,2026-05-20")
    )
    with page.expect_download() as saved:
        page.get_by_role("link", name="The first days as a calendar file").click()
    assert b"DTSTART;VALUE=DATE:20260520\r\n" in Path(saved.value.path()).read_bytes()


def test_a_phone_without_any_network_makes_the_same_board(
    serve: Callable, open_page: Callable, handbook: Path, office: tuple[Path, Path]
) -> None:
    server = serve(handbook)
    page = open_page(server, tolerated=NO_NETWORK, **PHONE)
    expect(page.locator("[data-kept]")).to_contain_text("Kept on this device", timeout=WAIT_MS)
    server.cut_off()
    page.context.set_offline(True)
    page.goto(server.url + BOARD)
    pick(page, *office)
    answer_questions(page)


def test_one_teams_sheet_is_printed_alone(serve: Callable, open_page: Callable, handbook: Path) -> None:
    page = open_page(
        serve(handbook),
        BOARD,
        service_workers="block",
        tolerated=("Service Worker",),
        before="window.print = () => {}",
    )
    page.locator(".sheet [data-print]").nth(1).click()
    page.emulate_media(media="print")
    printed = page.evaluate("document.body.innerText")
    assert "Quarry" in printed
    assert "Herons" not in printed
    page.emulate_media(media="screen")
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    expect(page.locator(".paper")).to_have_count(0)
    expect(page.locator("h1")).to_be_visible()


def test_a_league_of_five_thousand_is_worked_out_and_printed(
    serve: Callable, open_page: Callable, handbook: Path, tmp_path: Path
) -> None:
    chance = random.Random(5)
    day = date(2026, 5, 16)
    people = [f"player {number}" for number in range(5_000)]
    roster, outings = tmp_path / "roster.csv", tmp_path / "outings.csv"
    roster.write_text(
        "pitcher,team,age\n" + "".join(f"{one},team {index % 400},12\n" for index, one in enumerate(people))
    )
    outings.write_text(
        "pitcher,date,pitches\n"
        + "".join(
            f"{one},{day - timedelta(days=6 * back)},{chance.randint(0, 70)}\n"
            for one in people
            for back in range(20)
        )
    )
    page = open_page(
        serve(handbook),
        BOARD,
        service_workers="block",
        tolerated=("Service Worker",),
        before="window.print = () => {}",
    )
    pick(page, roster, outings)
    page.fill("#league-board-today", "2026-05-16")
    expect(page.locator("[data-answer] .headline")).to_contain_text("of 5000 pitchers", timeout=WAIT_MS)
    expect(page.locator("[data-answer]")).to_contain_text("100000 used, 0 not used")
    assert page.locator(".sheet").count() == 400
    assert page.locator(".sheet tbody tr").count() == 5_000
    page.locator(".form-end [data-print]").click()
    page.emulate_media(media="print")
    assert page.locator(".paper .sheet tbody tr").count() == 5_000

"""A league's edition in a real browser: readable in its own colors, first by its own rules, honest about dates."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser
AXE = Path(__file__).resolve().parents[2] / "node_modules" / "axe-core" / "axe.min.js"
SCHEMES = {"light": "#0f5a6b", "dark": "#7fd0e0"}
WAIT_MS = 30_000


def addresses(site: Path) -> list[str]:
    pages = sorted(path.relative_to(site).parent.as_posix() for path in site.rglob("index.html"))
    return ["" if page == "." else f"{page}/" for page in pages]


def on_day(day: str) -> str:
    """A script that makes the reader's calendar show `day`, at noon."""
    return f"""const Real = Date;
        self.Date = class extends Real {{
            constructor(...parts) {{ if (parts.length) super(...parts); else super("{day}T12:00:00"); }}
            static now() {{ return new Real("{day}T12:00:00").getTime(); }}
        }};"""


@pytest.fixture
def league_page(serve: Callable, open_page: Callable, league_site: Path) -> Callable[..., Page]:
    def open_(path: str = "", **options: object) -> Page:
        return open_page(
            serve(league_site), path, service_workers="block", tolerated=("Service Worker",), **options
        )

    return open_


@pytest.mark.parametrize("scheme", SCHEMES)
def test_no_page_of_the_edition_keeps_a_reader_out_in_its_own_colors(
    league_page: Callable[..., Page], league_site: Path, scheme: str
) -> None:
    page = league_page(
        "", viewport={"width": 390, "height": 780}, color_scheme=scheme, reduced_motion="reduce"
    )
    root = page.url
    axe = AXE.read_text(encoding="utf-8")
    every = addresses(league_site)
    seen = [one for one in every if one.count("/") < 2 or one.startswith(("print/", "calculators/"))] + every[
        ::9
    ]
    faults: dict[str, list[str]] = {}
    for address in dict.fromkeys(seen):
        page.goto(root + address)
        page.evaluate(axe)
        for one in page.evaluate("axe.run({ resultTypes: ['violations'] })")["violations"]:
            faults.setdefault(one["id"], []).append(f"{address}: {one['nodes'][0]['html'][:160]}")
        if page.evaluate("document.documentElement.scrollWidth - innerWidth") > 0:
            faults.setdefault("wider than a phone", []).append(address)
    assert {rule: pages[:5] for rule, pages in faults.items()} == {}


@pytest.mark.parametrize("scheme", SCHEMES)
def test_links_take_the_leagues_color_and_the_seam_of_a_drawn_ball_does_not(
    league_page: Callable[..., Page], scheme: str
) -> None:
    page = league_page("", color_scheme=scheme)
    channels = ", ".join(str(int(SCHEMES[scheme][at : at + 2], 16)) for at in (1, 3, 5))
    link = page.locator("ul.entries a strong").first
    assert link.evaluate("link => getComputedStyle(link).color") == f"rgb({channels})"
    seam = page.locator("svg.drawing .ink-seam, svg.drawing .ink-accent").first
    assert seam.evaluate("seam => getComputedStyle(seam).stroke") != f"rgb({channels})"


def test_the_pitch_count_page_answers_by_the_leagues_rules_in_the_browser(
    league_page: Callable[..., Page],
) -> None:
    page = league_page("calculators/pitch-count/")
    expect(page.locator("select[name=rules]")).to_have_value("pennimoor-valley")
    page.locator("form[data-calculator] [type=submit]").click()
    expect(page.locator("[data-example-note]")).to_be_hidden(timeout=WAIT_MS)
    expect(page.locator("[data-answer]")).to_contain_text("Pennimoor Valley pitching rules")


@pytest.mark.parametrize(("day", "shown"), [("2027-04-10", True), ("2027-04-11", False)])
def test_a_notice_goes_after_its_last_day_even_in_a_kept_copy(
    league_page: Callable[..., Page], day: str, shown: bool
) -> None:
    page = league_page("", before=on_day(day))
    expect(page.locator("[data-until]")).to_be_visible(visible=shown)
    expect(page.locator(".notice:not([data-until])")).to_be_visible()


@pytest.mark.parametrize(("day", "late"), [("2027-09-01", False), ("2027-09-02", True)])
def test_a_kept_copy_warns_once_its_rules_are_due_for_a_check(
    league_page: Callable[..., Page], day: str, late: bool
) -> None:
    for path in ("", "league/", "rules/"):
        page = league_page(path, before=on_day(day))
        expect(page.locator("[data-due]")).to_be_visible(visible=late)


def test_what_to_do_in_an_emergency_stands_first_among_the_warning_signs(
    league_page: Callable[..., Page],
) -> None:
    page = league_page("guide/warning-signs/")
    box = page.locator(".emergency")
    expect(box).to_contain_text("Call 911 first.")
    assert box.evaluate("box => box.getBoundingClientRect().top") < page.locator("h2").first.evaluate(
        "heading => heading.getBoundingClientRect().top"
    )
    assert box.locator("a").count() == 0


def test_hidden_pages_are_nowhere_and_no_link_leads_to_one(league_site: Path) -> None:
    for address in ("grips/hard-curve-bridge", "calculators/phone-radar"):
        assert not (league_site / address).exists()
        naming = [
            path for path in league_site.rglob("*.html") if f"{address}/" in path.read_text(encoding="utf-8")
        ]
        assert naming == []
        index = (league_site / "search" / "search_index.json").read_text(encoding="utf-8")
        assert address not in index


def test_the_home_screen_calls_the_edition_by_its_league(league_site: Path) -> None:
    manifest = json.loads((league_site / "manifest.webmanifest").read_text(encoding="utf-8"))
    assert manifest["name"] == "Bendbook of Pennimoor Valley Youth Baseball"
    assert manifest["short_name"] == "Pennimoor Valley"


def test_large_print_is_remembered_and_may_be_asked_for_in_the_address(
    league_page: Callable[..., Page],
) -> None:
    page = league_page("guide/warning-signs/")
    size = "parseFloat(getComputedStyle(document.querySelector('article li')).fontSize)"
    normal = page.evaluate(size)
    page.locator("footer [data-large-print]").click()
    assert page.evaluate(size) > 1.2 * normal
    page.reload()
    expect(page.locator("footer [data-large-print]")).to_have_attribute("aria-pressed", "true")
    page.locator("footer [data-large-print]").click()
    assert page.evaluate(size) == normal
    other = league_page("guide/warning-signs/?large", viewport={"width": 390, "height": 780})
    assert other.evaluate(size) > 1.2 * normal
    assert other.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0

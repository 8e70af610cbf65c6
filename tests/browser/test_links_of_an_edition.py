"""An edition leaves pages out; no link of what is left leads nowhere."""

from __future__ import annotations

import re
from pathlib import Path
from urllib.parse import unquote, urljoin, urlsplit

import pytest

pytestmark = pytest.mark.browser
_WAY = re.compile(r'<(?:a|link|img|script)\b[^>]*?\s(?:href|src)=["\']?([^"\'\s>]+)')


def dead_ways(site: Path) -> set[str]:
    """Return page and way of every link inside the site that leads to no file."""
    dead = set()
    for page in site.rglob("index.html"):
        here = page.relative_to(site).as_posix()
        for way in set(_WAY.findall(page.read_text(encoding="utf-8"))):
            if urlsplit(way).scheme:
                continue
            there = site / unquote(urljoin(f"/{here}", urlsplit(way).path)).lstrip("/")
            if not (there / "index.html" if there.is_dir() else there).is_file():
                dead.add(f"{here}: {way}")
    return dead


def test_no_link_of_the_demonstration_edition_leads_nowhere(league_site: Path) -> None:
    assert not (league_site / "calculators" / "phone-radar").exists()
    assert dead_ways(league_site) == set()


def test_a_link_to_a_page_that_is_not_there_is_found(tmp_path: Path) -> None:
    (tmp_path / "grips").mkdir()
    (tmp_path / "grips" / "index.html").write_text(
        '<a href="../gone/">x</a> <a class="b" href=./#top>y</a> <a href="https://example.org/">z</a>',
        encoding="utf-8",
    )
    assert dead_ways(tmp_path) == {"grips/index.html: ../gone/"}

"""The pages of the hand-outs: links to PDFs only where they are, codes only where the address is known."""

from __future__ import annotations

import datetime
import json
import re
import shutil
from html import escape
from pathlib import Path

import pytest

from build_tools.finish.edition import put_edition
from build_tools.generate.build_docs import generate
from build_tools.hand_outs.codes import qr_code
from build_tools.hand_outs.kinds import HAND_OUTS, NOT_KEPT_OFFLINE, files_of
from build_tools.hand_outs.linking import link_files
from build_tools.places import Places

SMALL = Path(__file__).resolve().parents[1] / "build_tools" / "small_content"


@pytest.fixture
def places(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Places:
    monkeypatch.delenv("SITE_URL", raising=False)
    content = Path(shutil.copytree(SMALL, tmp_path / "content"))
    shutil.copytree(Places().content / "demo", content / "demo")
    return Places(content, tmp_path / "build", tmp_path / "site")


def page(places: Places, name: str) -> str:
    return (places.docs / "print" / f"{name}.md").read_text(encoding="utf-8")


def test_every_hand_out_there_is_something_for_gets_a_page(places: Places) -> None:
    generate(places)
    made = {path.stem for path in (places.docs / "print").glob("*.md")} - {"index"}
    assert made == HAND_OUTS.keys() - {"parents"}, "the small handbook has no page for parents"
    assert all("search:\n  exclude: true" in page(places, name) for name in made)


def test_without_an_address_paper_names_the_page_instead_of_a_code(places: Places) -> None:
    generate(places)
    assert '<svg role="img" aria-label="QR code' not in page(places, "grips")
    assert "Bendbook: grips/rolling-curve/" in page(places, "grips")


def test_with_an_address_each_card_carries_the_code_of_its_page(
    places: Places, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("SITE_URL", "https://example.org/handbook")
    generate(places)
    found = re.findall(r'aria-label="QR code of ([^"]+)"', page(places, "grips"))
    assert found == [
        f"https://example.org/handbook/grips/{name}/" for name in ("rolling-curve", "plain-fastball")
    ]


def test_a_card_holds_every_step_and_the_age(places: Places) -> None:
    generate(places)
    text = page(places, "grips")
    for step in (
        "Find the horseshoe.",
        "Lay the middle finger on its wall.",
        "Put the thumb under the ball.",
    ):
        assert step in re.sub(r"<[^>]+>", "", text)
    assert '<span class="card-age">from 13</span>' in text


def test_a_retired_cue_gets_no_card(places: Places) -> None:
    generate(places)
    assert "Rope pull" in page(places, "cues")
    assert "Twist it" not in page(places, "cues")


def test_a_bad_address_is_not_drawn_as_markup() -> None:
    drawn = qr_code("https://example.org/", 'a "quoted" <label>')
    assert 'aria-label="a &quot;quoted&quot; &lt;label&gt;"' in drawn


def test_links_to_pdfs_come_and_go_with_the_files(tmp_path: Path) -> None:
    folder = tmp_path / "print" / "grips"
    folder.mkdir(parents=True)
    may_be = [["../../hand-outs/a.pdf", "A & B"], ["../../hand-outs/b.pdf", "B"]]
    files = escape(json.dumps(may_be))
    html = f'<p class="hand-out-files" data-hand-out-files="{files}" hidden></p>'
    (folder / "index.html").write_text(html, encoding="utf-8")
    assert link_files(tmp_path) == 0
    assert "hidden" in (folder / "index.html").read_text(encoding="utf-8")
    (tmp_path / "hand-outs").mkdir()
    (tmp_path / "hand-outs" / "a.pdf").write_bytes(b"%PDF")
    assert link_files(tmp_path) == 1
    text = (folder / "index.html").read_text(encoding="utf-8")
    assert '<a href="../../hand-outs/a.pdf">A &amp; B</a>' in text
    assert "b.pdf</a>" not in text
    (tmp_path / "hand-outs" / "a.pdf").unlink()
    assert link_files(tmp_path) == 0
    assert (folder / "index.html").read_text(encoding="utf-8") == html


def test_no_two_files_share_a_name() -> None:
    names = [file.name for hand_out in HAND_OUTS for file in files_of(hand_out)]
    assert len(names) == len(set(names))


def test_the_offline_copy_leaves_out_pdfs_and_the_heavy_cards(tmp_path: Path) -> None:
    for address in (
        "index.html",
        "print/stop/index.html",
        "hand-outs/stop-letter.pdf",
        "es/print/bag/index.html",
    ):
        path = tmp_path / address
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("x", encoding="utf-8")
    for name in NOT_KEPT_OFFLINE:
        (tmp_path / "print" / name).mkdir()
        (tmp_path / "print" / name / "index.html").write_text("x", encoding="utf-8")
    kept = [file.path for file in put_edition(tmp_path, datetime.date(2026, 5, 16), "/").files]
    assert kept == ["edition.json", "index.html", "print/stop/index.html"]

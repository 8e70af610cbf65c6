"""The handbook as it is built: every link arrives, nothing is far from the start, and search finds it."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from typing import Any

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config

from build_tools.generate.build_docs import generate
from build_tools.generate.calculator_pages import calculator_names
from build_tools.loading.library import Library, load
from build_tools.places import PROJECT, Places
from tests.build_tools.web import Reader, broken_links, read, taps_from_start

MOST_TAPS = 3
HEAVIEST_LIST = 400_000
"""Bytes of a list of entries as written; about a quarter of it is sent."""

NAMED_KINDS = ("grips", "shapes", "cues", "drills", "faults")
LISTED_KINDS = (*NAMED_KINDS, "plans", "guide", "calculators")
LATER = ("assets/bendbook", "manifest.webmanifest")
"""What the finish step adds: scripts and icons, none of them a page."""


@dataclass(frozen=True)
class Built:
    """The site in a folder, its pages read, and the library it was made from."""

    folder: Path
    pages: dict[PurePosixPath, Reader]
    library: Library


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Built:
    """The whole handbook, generated and built by mkdocs as `build` does it."""
    places = Places(build=tmp_path_factory.mktemp("build"), site=tmp_path_factory.mktemp("site"))
    generate(places)
    config = load_config(
        str(PROJECT / "mkdocs.yml"), docs_dir=str(places.docs), site_dir=str(places.site), strict=True
    )
    build(config)
    pages = {
        PurePosixPath(path.parent.relative_to(places.site).as_posix()): read(path.read_text(encoding="utf-8"))
        for path in places.site.rglob("index.html")
    }
    return Built(places.site, pages, load(places.content, calculator_names()))


def test_every_link_of_the_site_arrives(built: Built) -> None:
    files = frozenset(
        PurePosixPath(path.relative_to(built.folder).as_posix())
        for path in built.folder.rglob("*")
        if path.is_file()
    )
    broken = [one for one in broken_links(built.pages, files) if not any(part in one for part in LATER)]
    assert broken == []
    assert sum(len(page.links_in_article) for page in built.pages.values()) > 2000


def test_everything_lies_within_three_taps_of_the_start_without_opening_the_menu(built: Built) -> None:
    taps = taps_from_start(built.pages)
    assert set(built.pages) - set(taps) == set()
    assert {page: count for page, count in taps.items() if count > MOST_TAPS} == {}


def test_no_name_is_given_twice_on_a_page(built: Built) -> None:
    for address, page in built.pages.items():
        twice = {name for name in page.anchors if page.anchors.count(name) > 1}
        assert twice == set(), address


@pytest.mark.parametrize("kind", LISTED_KINDS)
def test_the_list_of_a_kind_leads_to_every_entry_of_it(built: Built, kind: str) -> None:
    links = {link.split("#")[0] for link in built.pages[PurePosixPath(kind)].links_in_article}
    names = built.library.calculators if kind == "calculators" else built.library.kinds[kind]
    assert {f"{name}/" for name in names} <= links


@pytest.mark.parametrize("kind", LISTED_KINDS)
def test_a_list_with_pictures_stays_light_enough_for_a_field(built: Built, kind: str) -> None:
    assert (built.folder / kind / "index.html").stat().st_size < HEAVIEST_LIST


@pytest.fixture(scope="module")
def found(built: Built) -> dict[str, str]:
    """Page to all its words in the search index."""
    index: dict[str, Any] = json.loads((built.folder / "search" / "search_index.json").read_text("utf-8"))
    words: dict[str, str] = {}
    for part in index["docs"]:
        page = part["location"].partition("#")[0]
        words[page] = f"{words.get(page, '')} {part['title']} {part['text']}".lower()
    return words


@pytest.mark.parametrize("kind", NAMED_KINDS)
def test_search_knows_an_entry_by_each_of_its_trade_names(
    built: Built, found: dict[str, str], kind: str
) -> None:
    entries = built.library.kinds[kind]
    missing = [
        (slug, name)
        for slug, loaded in entries.items()
        for name in (loaded.model.title, *loaded.model.also_called)
        if not all(word in found[f"{kind}/{slug}/"] for word in name.lower().split())
    ]
    assert missing == []
    assert sum(len(loaded.model.also_called) for loaded in entries.values()) > len(entries)

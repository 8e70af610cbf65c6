"""The generate step writes what changed, takes away what went, and gives the calculators their content."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from mkdocs.config import load_config
from mkdocs.exceptions import Abort

from build_tools import hooks
from build_tools.generate import figures_html
from build_tools.generate.build_docs import generate
from build_tools.generate.source_names import short_name
from build_tools.loading.mistakes import ContentError, Mistake
from build_tools.places import PROJECT, Places
from build_tools.schema.lists import Source
from calculators.desk.counter import shelf_from


def test_a_second_run_writes_nothing(places: Places) -> None:
    first = generate(places)
    stamps = {path: path.stat().st_mtime_ns for path in places.build.rglob("*") if path.is_file()}
    second = generate(places)
    assert second.written.changed == 0
    assert second.written.kept == first.written.changed
    assert {path: path.stat().st_mtime_ns for path in places.build.rglob("*") if path.is_file()} == stamps


def test_a_changed_title_is_written_on_the_pages_that_show_it_and_no_others(places: Places, edit) -> None:
    generate(places)
    before = {path: path.read_bytes() for path in places.docs.rglob("*.md")}
    edit("cues/rope-pull.md", "title: Rope pull", "title: Bell rope")
    generate(places)
    changed = {path for path in before if path.read_bytes() != before[path]}
    assert changed == {path for path, text in before.items() if b"Rope pull" in text}
    assert changed


def test_a_figure_is_drawn_again_only_when_its_grip_changes(
    places: Places, edit, monkeypatch: pytest.MonkeyPatch
) -> None:
    drawn: list[str] = []
    real = figures_html.grip_figures

    def counted(grip, hand, catalogue):
        drawn.append(hand)
        return real(grip, hand, catalogue)

    monkeypatch.setattr(figures_html, "grip_figures", counted)
    generate(places)
    generate(places)
    assert drawn == ["right", "left"]
    edit("grips/rolling-curve.md", 'clock: "6:35", over_deg: 10', 'clock: "6:55", over_deg: 10')
    generate(places)
    assert drawn == ["right", "left"] * 2
    assert len(list((places.build / "figures").glob("*-views.html"))) == 1


def test_the_page_of_an_entry_that_went_goes_too(places: Places, small: Path, edit) -> None:
    generate(places)
    (small / "cues" / "twist-it.md").unlink()
    assert generate(places).written.removed == 1
    assert not (places.docs / "cues" / "twist-it.md").exists()


def test_a_mistake_leaves_the_pages_of_before_in_place(places: Places, edit) -> None:
    generate(places)
    before = sorted(places.docs.rglob("*"))
    edit("cues/rope-pull.md", "confidence: low", "confidence: some")
    with pytest.raises(Exception, match="rope-pull"):
        generate(places)
    assert sorted(places.docs.rglob("*")) == before


def test_calculators_get_rule_sets_shapes_cues_and_names_of_sources(places: Places) -> None:
    generate(places)
    shelf = shelf_from(json.loads((places.build / "shelf.json").read_text()))
    assert shelf.rules["usa-joint-2015"]["bands"][0]["daily_max"] == 85
    assert shelf.shapes["forward-drop"]["clock"] == ["6:30", "7:30"]
    assert shelf.cues["rope-pull"]["effects"][0]["speed"] == {"goes": "down", "by": [1, 2]}
    assert shelf.sources["study-2002"] == "Study 2002"


@pytest.mark.parametrize(
    ("ident", "authors", "name"),
    [
        ("lyman-2002", "Lyman S, Fleisig GS", "Lyman 2002"),
        ("van-der-graaff-2018", "van der Graaff E and others", "van der Graaff 2018"),
        ("usa-joint-guideline-2015", "USA Baseball and Major League Baseball", "USA joint guideline 2015"),
        ("asmi-2009", "American Sports Medicine Institute", "ASMI 2009"),
        ("standard-atmosphere-1976", "NOAA, NASA", "Standard atmosphere 1976"),
    ],
)
def test_a_source_is_named_as_its_authors_write_themselves(ident: str, authors: str, name: str) -> None:
    source = Source(authors=authors, title="A title", where="A journal", read="whole", finds="Something.")
    assert short_name(ident, source) == name


def test_the_navigation_does_not_grow_with_the_entries(places: Places, small: Path) -> None:
    generate(places)
    before = (places.build / "navigation.json").read_text()
    entry = (small / "cues" / "twist-it.md").read_text()
    for name in ("one", "two", "three"):
        (small / "cues" / f"{name}-more.md").write_text(entry)
    generate(places)
    assert (places.build / "navigation.json").read_text() == before
    assert "cues/index.md" in before


def test_mkdocs_is_handed_navigation_and_words(places: Places) -> None:
    generate(places)
    config = load_config(str(PROJECT / "mkdocs.yml"), docs_dir=str(places.docs), hooks=[])
    hooks.on_startup("build")
    hooks.on_config(config)
    assert config.nav == json.loads((places.build / "navigation.json").read_text())
    assert config.extra["words"]["hand_right"] == "Right-handed"
    assert config.extra["page_language"] == "en"
    words = (places.docs / "assets" / "bendbook" / "words.en.js").read_text(encoding="utf-8")
    assert '"try_again": "Try again"' in words


def test_under_serve_mkdocs_asks_for_fresh_pages(places: Places, monkeypatch: pytest.MonkeyPatch) -> None:
    generate(places)
    asked: list[Places] = []
    monkeypatch.setattr(hooks, "generate", asked.append)
    config = load_config(str(PROJECT / "mkdocs.yml"), docs_dir=str(places.docs), hooks=[])
    hooks.on_startup("serve")
    hooks.on_config(config)
    hooks.on_startup("build")
    hooks.on_config(config)
    assert len(asked) == 1


def test_under_serve_a_mistake_is_told_and_the_server_stays(
    places: Places, monkeypatch: pytest.MonkeyPatch
) -> None:
    generate(places)
    mistake = Mistake(Path("content/cues/rope-pull.md"), 3, "says", "words", "nothing")

    def refuse(_: Places) -> None:
        raise ContentError([mistake])

    monkeypatch.setattr(hooks, "generate", refuse)
    config = load_config(str(PROJECT / "mkdocs.yml"), docs_dir=str(places.docs), hooks=[])
    hooks.on_startup("serve")
    with pytest.raises(Abort, match="line 3, says: words; found nothing"):
        hooks.on_config(config)
    hooks.on_startup("build")

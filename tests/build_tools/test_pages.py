"""What a reader finds on the pages."""

from __future__ import annotations

import gettext
import re
from pathlib import Path, PurePosixPath

import markdown
import pytest

from build_tools.generate.build_docs import editions
from build_tools.generate.calculator_pages import calculator_names, calculator_pages, calculator_titles
from build_tools.generate.figures_html import FigureStore
from build_tools.generate.pages import all_pages
from build_tools.generate.shelf import shelves
from build_tools.generate.writer import Edition, Writer
from build_tools.loading.library import Library, load
from build_tools.places import Places
from tests.build_tools.web import Reader, broken_links, read

MARKDOWN = ["admonition", "attr_list", "def_list", "md_in_html", "tables", "toc"]
"""The extensions that mkdocs.yml names."""


def pages_of(edition: Edition) -> dict[str, str]:
    figures = FigureStore(Places().build / "figures")
    calculators = calculator_pages(shelves(edition.library), edition.catalogue)
    return {page.file: page.text for page in all_pages(Writer(edition), calculators, figures)}


@pytest.fixture(scope="module")
def pages(small_library: Library) -> dict[str, str]:
    """File to Markdown of every page of the small content."""
    words = gettext.NullTranslations()
    return pages_of(Edition(small_library, "en", words, "", calculator_titles(words)))


def html_of(text: str) -> str:
    body = text.split("---\n", 2)[2]
    return markdown.markdown(body, extensions=MARKDOWN)


def read_page(text: str) -> Reader:
    return read(html_of(text))


def web_address(file: str) -> PurePosixPath:
    path = PurePosixPath(file)
    return path.parent if path.name == "index.md" else path.with_suffix("")


def test_every_page_has_one_title_no_skipped_heading_and_no_link_in_a_link(pages: dict[str, str]) -> None:
    for file, text in pages.items():
        reader = read_page(text)
        assert reader.headings.count(1) == 1, file
        assert all(b <= a + 1 for a, b in zip([0, *reader.headings], reader.headings, strict=False)), file
        assert reader.links_in_links == 0, file
        assert len(reader.anchors) == len(set(reader.anchors)), file


def test_no_mark_of_the_content_is_left_on_a_page(pages: dict[str, str]) -> None:
    for file, text in pages.items():
        assert "[[" not in text, file
        assert "{published" not in text, file
        assert "{common practice}" not in text, file
        assert "{estimate}" not in text, file
        assert "\x02" not in text, file


def test_every_fault_asks_about_pain_before_anything_else(
    pages: dict[str, str], small_library: Library
) -> None:
    for slug in small_library.faults:
        text = pages[f"faults/{slug}.md"]
        first = text.index("First ask: any pain or unusual tiredness?")
        assert "guide/warning-signs/" in text[first : first + 200]
        assert first < text.index("## You see")
    assert "Stop for the day" in pages["faults/goes-sideways.md"].split("## You see")[0]


def test_every_breaking_ball_says_from_what_age(pages: dict[str, str]) -> None:
    for file in (
        "grips/rolling-curve.md",
        "shapes/forward-drop.md",
        "cues/rope-pull.md",
        "drills/short-toss.md",
        "plans/one-week.md",
    ):
        assert "**Not before 13.**" in pages[file], file
    assert "age-note" not in pages["grips/plain-fastball.md"]


def test_evidence_is_said_in_words_and_leads_to_the_source(pages: dict[str, str]) -> None:
    drill = pages["drills/short-toss.md"]
    assert 'published: <a href="../../sources/#study-2002">Study 2002</a>' in drill
    assert '<a href="../../sources/#guide-body-2015">Guide Body 2015</a>' in drill
    grip = pages["grips/rolling-curve.md"]
    assert 'forward. <span class="evidence evidence-common-practice">common practice</span>' in grip
    assert '. <span class="evidence evidence-estimate">estimate</span>' in grip


def test_a_source_says_how_much_was_read_and_where_it_is_used(pages: dict[str, str]) -> None:
    entry = pages["sources.md"].split('id="study-2002"')[1].split("<dt")[0]
    assert "We read all of it." in entry
    assert 'Used in <a href="../drills/short-toss/">Short toss</a>.' in entry
    assert "https://doi.org/10.1000/182" in entry


def test_other_trade_names_stand_in_the_text_for_the_search(pages: dict[str, str]) -> None:
    assert "Also called: barrel roll." in pages["grips/rolling-curve.md"]


def test_a_shape_shows_its_movement_and_who_should_not_throw_it(pages: dict[str, str]) -> None:
    text = pages["shapes/forward-drop.md"]
    assert re.search(r"\| Adult, 60.5 feet \|.*86 to 94.*\|.*71 to 77.*\|.* drop.*\|.* glove side.*\|", text)
    assert re.search(r"\| 12 and under, 46 feet \|.*not a target at this level", text)


def test_a_calculator_shows_a_worked_answer_before_any_script_runs(pages: dict[str, str]) -> None:
    for name in calculator_names():
        text = pages[f"calculators/{name}.md"]
        assert f'data-calculator="{name}"' in text
        assert '<p class="headline">' in text


def test_a_calculator_of_one_pitch_has_tables_of_common_cases_for_paper(pages: dict[str, str]) -> None:
    for name in ("spin-to-break", "break-to-spin", "pairing", "slot-and-shape", "phone-radar", "pitch-count"):
        assert "<table>" in pages[f"calculators/{name}.md"].split("## Common cases")[1], name


def test_a_left_handers_thumb_is_shown_beside_the_right_handers(pages: dict[str, str]) -> None:
    text = pages["grips/rolling-curve.md"]
    assert '<span class="for-right">6:30 to 7:00</span>' in text
    assert '<span class="for-left">5:00 to 5:30</span>' in text
    assert "handed: true" in text.split("---")[1]
    assert "handed" not in pages["guide/welcome.md"].split("---")[1]


def test_terms_are_linked_outside_headings_and_links(pages: dict[str, str]) -> None:
    text = pages["guide/welcome.md"]
    assert text.count("#horseshoe") == 1
    assert "## The horseshoe comes first" in text
    assert ">The horseshoe page</a>" in text
    assert "`horseshoe`" in text
    assert text.count("#magnus-push") == 1


def test_another_language_has_its_own_pages_and_falls_back_to_english(places: Places, small: Path) -> None:
    folder = small / "locale" / "es" / "LC_MESSAGES"
    folder.mkdir(parents=True)
    (folder / "bendbook.po").write_text(
        'msgid ""\nmsgstr "Content-Type: text/plain; charset=utf-8\\n"\n\n'
        'msgid "Hold it"\nmsgstr "Agárralo"\n',
        encoding="utf-8",
    )
    library = load(small, calculator_names())
    english, spanish = (pages_of(edition) for edition in editions(library, places))
    assert {f"es/{file}" for file in english} == set(spanish)
    page = spanish["es/grips/rolling-curve.md"]
    assert "# Curva que rueda" in page
    assert "## Agárralo" in page
    assert "language: es" in page
    assert "# Plain fastball" in spanish["es/grips/plain-fastball.md"]
    shown = {web_address(file): read_page(text) for file, text in spanish.items()}
    # The calculators name sources that the small content does not have; hand-outs and changes are made elsewhere.
    elsewhere = ("es/calculators/", "es: print", "es/guide: ../changes/")
    assert [link for link in broken_links(shown, frozenset()) if not link.startswith(elsewhere)] == []

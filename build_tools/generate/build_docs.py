"""The generate step: content in, build/docs and build/shelf.json out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from build_tools.browser.words import words_script
from build_tools.changes.page import changes_page
from build_tools.changes.snapshots import history, recorded
from build_tools.dates import edition_date
from build_tools.editions.pages import edition_files, frame, league_pages
from build_tools.generate.assets import assets
from build_tools.generate.calculator_pages import (
    calculator_names,
    calculator_pages,
    calculator_titles,
    worked_examples,
)
from build_tools.generate.figures_html import FigureStore
from build_tools.generate.navigation import navigation
from build_tools.generate.output import Written, as_json, write_files, write_if_changed
from build_tools.generate.pages import all_pages
from build_tools.generate.shelf import shelves
from build_tools.generate.writer import Edition, Writer
from build_tools.hand_outs.pages import hand_out_pages
from build_tools.loading.library import Library, load
from build_tools.places import PROJECT, THEME, Places, site_url
from build_tools.schema.export import schema_text
from build_tools.schema.pitcher_file import pitcher_file_schema
from build_tools.words.catalogue import (
    SOURCE_LANGUAGE,
    languages,
    open_catalogue,
    words_for_browser,
    words_mark,
)
from calculators.desk.fields import Raw


@dataclass(frozen=True)
class Generated:
    """What the generate step did: pages made, and files written, kept and removed.

    questions: calculator name to its worked example, to be asked of the finished site.
    remarks: for whoever builds an edition, a sentence each.
    """

    pages: int
    written: Written
    questions: Mapping[str, Raw]
    remarks: tuple[str, ...] = ()


def generate(places: Places) -> Generated:
    """Check the content and write every page, the shelf and the navigation.

    Raises ContentError with every mistake in the content.
    """
    library = load(places.content, calculator_names(), places.wanted)
    date = edition_date()
    address = site_url(library.league.site_url if library.league else None)
    snapshots = recorded(history(places.content, places.wanted.edition))
    files: dict[str, bytes] = {}
    questions: Mapping[str, Raw] = {}
    figures = FigureStore(places.build / "figures", Places().build / "figures" if library.league else None)
    for edition in editions(library, places):
        content = shelves(edition.library)
        calculators = tuple(
            one for one in calculator_pages(content, edition.catalogue) if one.name in library.calculators
        )
        writer = Writer(edition)
        for page in (
            *all_pages(writer, calculators, figures),
            *league_pages(writer),
            changes_page(writer, snapshots, date),
            *hand_out_pages(writer, figures, address, date),
        ):
            files[page.file] = page.text.encode()
        if edition.folder:
            words = words_for_browser(places.locale, edition.language)
            write_if_changed(places.build / f"words.{edition.language}.json", as_json(words))
        else:
            write_if_changed(places.build / "shelf.json", as_json(content))
            write_if_changed(places.build / "navigation.json", as_json(navigation(edition)))
            write_if_changed(places.frame, as_json(frame(edition)))
            questions = {
                name: raw for name, raw in worked_examples(content).items() if name in library.calculators
            }
    figures.forget_others()
    pages = len(files)
    files |= assets(THEME, PROJECT / "node_modules")
    files |= edition_files(library)
    files |= {f"assets/demo/{name}": text.encode() for name, text in library.demo.items()}
    for language in languages(places.locale):
        script = words_script(language, open_catalogue(places.locale, language))
        files[f"assets/bendbook/words.{language}.js"] = script.encode()
    files["assets/pitcher-file.json"] = schema_text(pitcher_file_schema()).encode()
    return Generated(pages, write_files(places.docs, files), questions, library.remarks)


def editions(library: Library, places: Places) -> Iterator[Edition]:
    """Yield the handbook in each language there are words for, the source language first."""
    for language in languages(places.locale):
        catalogue = open_catalogue(places.locale, language)
        yield Edition(
            library=library.in_language(language),
            language=language,
            catalogue=catalogue,
            folder="" if language == SOURCE_LANGUAGE else f"{language}/",
            calculators=calculator_titles(catalogue),
            words_mark=words_mark(places.locale, language),
        )

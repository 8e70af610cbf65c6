"""The generate step: content in, build/docs and build/shelf.json out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from build_tools.generate.assets import assets
from build_tools.generate.calculator_pages import calculator_names, calculator_pages, calculator_titles
from build_tools.generate.figures_html import FigureStore
from build_tools.generate.navigation import navigation
from build_tools.generate.output import Written, as_json, write_files, write_if_changed
from build_tools.generate.pages import all_pages
from build_tools.generate.shelf import shelves
from build_tools.generate.writer import Edition, Writer
from build_tools.loading.library import Library, load
from build_tools.places import PROJECT, THEME, Places
from build_tools.words.catalogue import (
    SOURCE_LANGUAGE,
    languages,
    open_catalogue,
    words_for_browser,
    words_mark,
)


@dataclass(frozen=True)
class Generated:
    """What the generate step did: pages made, and files written, kept and removed."""

    pages: int
    written: Written


def generate(places: Places) -> Generated:
    """Check the content and write every page, the shelf and the navigation.

    Raises ContentError with every mistake in the content.
    """
    library = load(places.content, calculator_names())
    files: dict[str, bytes] = {}
    figures = FigureStore(places.build / "figures")
    for edition in editions(library, places):
        content = shelves(edition.library)
        calculators = calculator_pages(content, edition.catalogue)
        for page in all_pages(Writer(edition), calculators, figures):
            files[page.file] = page.text.encode()
        if edition.folder:
            words = words_for_browser(places.locale, edition.language)
            write_if_changed(places.build / f"words.{edition.language}.json", as_json(words))
        else:
            write_if_changed(places.build / "shelf.json", as_json(content))
            write_if_changed(places.build / "navigation.json", as_json(navigation(edition)))
    figures.forget_others()
    pages = len(files)
    files |= assets(THEME, PROJECT / "node_modules")
    return Generated(pages, write_files(places.docs, files))


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

"""Takes the words out of the code and the templates, into a catalogue for translators."""

from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from babel import Locale
from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_dir
from babel.messages.pofile import read_po, write_po

from build_tools.places import PROJECT
from build_tools.words.catalogue import DOMAIN, SOURCE_LANGUAGE, catalogue_path, languages

METHODS = [
    ("calculators/**.py", "python"),
    ("build_tools/**.py", "python"),
    ("build_tools/templates/**.j2", "jinja2"),
]
KEYWORDS: dict[str, Any] = {"say": None, "say_count": (1, 2), "_": None, "_n": (1, 2)}
"""Names of the functions that mark words, and which of their arguments are words."""


LEFT_OUT = tuple(
    f'"{name}:'
    for name in (
        "Project-Id-Version",
        "Report-Msgid-Bugs-To",
        "POT-Creation-Date",
        "PO-Revision-Date",
        "Generated-By",
        "Last-Translator",
        "Language-Team",
    )
)
"""Lines of a catalogue's head that say nothing here, or change by themselves."""


def template_of_words() -> Catalog:
    """Return every word of the code and the templates, in the order of files."""
    template = Catalog(header_comment="# The words of Bendbook.", charset="utf-8", fuzzy=False)
    for folder in ("calculators", "build_tools"):
        found = extract_from_dir(
            PROJECT / folder,
            method_map=[(pattern.removeprefix(f"{folder}/"), how) for pattern, how in METHODS],
            keywords=KEYWORDS,
            comment_tags=("Translators:",),
        )
        for file, line, message, comments, context in sorted(found, key=lambda one: (one[0], one[1])):
            template.add(message, None, [(f"{folder}/{file}", line)], auto_comments=comments, context=context)
    return template


def po_text(catalogue: Catalog, heading: str) -> str:
    """Return a catalogue as it stands in its file: no dates, so that the same words give the same text."""
    catalogue.header_comment = heading
    file = io.BytesIO()
    write_po(file, catalogue, width=100, include_lineno=False, sort_by_file=True)
    lines = file.getvalue().decode().splitlines(keepends=True)
    return "".join(line for line in lines if not line.startswith(LEFT_OUT))


def update_words(locale: Path, add: str | None = None) -> Iterator[Path]:
    """Write the template and bring every language up to date with it; yields the files that changed.

    locale: content/locale. add: a language to start.
    """
    template = template_of_words()
    yield from _write(locale / f"{DOMAIN}.pot", po_text(template, "# The words of Bendbook."))
    for language in dict.fromkeys((*languages(locale), *((add,) if add else ()))):
        path = catalogue_path(locale, language)
        heading = f"# The words of Bendbook in {Locale.parse(language).get_display_name('en')}."
        yield from _write(path, po_text(updated(path, language, template), heading))


def updated(path: Path, language: str, template: Catalog) -> Catalog:
    """Return a language's catalogue with the template's messages; translations that still fit stay."""
    catalogue = Catalog(locale=language, charset="utf-8", fuzzy=False)
    if path.is_file():
        with path.open("rb") as file:
            catalogue = read_po(file, locale=language)
    catalogue.update(template, no_fuzzy_matching=language == SOURCE_LANGUAGE, update_header_comment=False)
    catalogue.obsolete.clear()
    return catalogue


def _write(path: Path, text: str) -> Iterator[Path]:
    if not path.is_file() or path.read_text(encoding="utf-8") != text:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
        yield path

"""Every word of code and templates is in the catalogue, and none is spoken past it."""

from __future__ import annotations

import gettext
import html
import re
import shutil
from typing import get_args

import pytest

from build_tools.generate.calculator_pages import calculator_names, calculator_pages, calculator_titles
from build_tools.generate.figures_html import FigureStore
from build_tools.generate.labels import LABELS
from build_tools.generate.pages import all_pages
from build_tools.generate.shelf import shelves
from build_tools.generate.writer import Edition, Writer
from build_tools.loading.library import Library
from build_tools.places import Places
from build_tools.schema.coaching import Change, Check, ClockChange, Cue, Fault
from build_tools.schema.grip import Choices, Grip, Thumb
from build_tools.schema.guide import Guide
from build_tools.schema.lists import Source, Term
from build_tools.schema.rules import RuleSet
from build_tools.words.catalogue import open_catalogue, words_for_browser
from build_tools.words.extraction import template_of_words, update_words
from calculators.desk.counter import TranslatedWords
from calculators.words import say, say_count, speak


def test_the_catalogues_are_up_to_date(tmp_path) -> None:
    locale = tmp_path / "locale"
    shutil.copytree(Places().locale, locale)
    stale = [path.name for path in update_words(locale)]
    assert stale == [], "Run: python -m build_tools words"


def test_words_are_taken_from_calculators_templates_and_the_page_script() -> None:
    messages = {message.id: [place for place, _ in message.locations] for message in template_of_words()}
    assert "calculators/desk/fields.py" in messages["Enter a number."]
    assert "build_tools/templates/grip.md.j2" in messages["Hold it"]
    assert "build_tools/browser/words.py" in messages["Try again"]
    assert any(isinstance(ident, tuple) for ident in messages)


class Brackets(gettext.NullTranslations):
    """A language in which every message stands in double brackets."""

    def gettext(self, message: str) -> str:
        return f"\u27e6{message}\u27e7"

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return self.gettext(msgid1 if n == 1 else msgid2)


SIGNS = {"mph", "rpm", "ft", "in", "cm", "mm", "ms"}
"""Units that are signs, the same in every language."""


@pytest.mark.parametrize("name", calculator_names())
def test_no_word_of_a_calculator_page_is_spoken_past_the_catalogue(
    small_library: Library, name: str, tmp_path
) -> None:
    words = Brackets()
    edition = Edition(small_library, "en", words, "", calculator_titles(words))
    calculators = calculator_pages(shelves(small_library), words)
    figures = FigureStore(tmp_path)
    pages = {page.file: page.text for page in all_pages(Writer(edition), calculators, figures)}
    text = pages[f"calculators/{name}.md"].split("---\n", 2)[2]
    text = re.sub(r'<p class="sources">.*?</p>', "", text)  # names of sources are not translated
    text = re.sub(r"<textarea.*?</textarea>", "", text, flags=re.S)  # nor is a reader's own sheet
    left = set(re.findall(r"[^\W\d_]{2,}", outside_brackets(text)))
    assert left <= SIGNS | words_of_the_content(small_library, name)


def outside_brackets(page: str) -> str:
    """Return the words a reader sees or hears on a page that stand in no bracket."""
    heard = re.findall(r'(?:aria-label|title|placeholder|alt)="([^"]*)"', page)
    text = html.unescape(re.sub(r"<[^>]*>", " ", page) + " ".join(heard))
    text = re.sub(r"\{:[^}]*\}", " ", text)
    while (shorter := re.sub(r"\u27e6[^\u27e6\u27e7]*\u27e7", " ", text)) != text:
        text = shorter
    return text


def words_of_the_content(library: Library, name: str) -> set[str]:
    """Return the words that a page takes from entries, which are translated as entries."""
    texts = [one.model.title + one.model.body for one in library.rules.values()]
    texts += [band.label for one in library.rules.values() for band in one.model.bands]
    texts += [f"{one.model.title} {one.model.summary}" for one in library.guide.values()]
    texts += [
        one.model.title
        for one in (*library.cues.values(), *library.drills.values(), *library.shapes.values())
    ]
    if name in library.calculator_words:
        words = library.calculator_words[name]
        texts += [words.model.summary, words.body]
    return set(re.findall(r"[^\W\d_]{2,}", " ".join(texts)))


@pytest.mark.parametrize(
    ("group", "model", "field"),
    [
        ("family", Grip, "family"),
        ("base", Choices, "base"),
        ("base_short", Choices, "base"),
        ("spike", Choices, "spike"),
        ("depth", Choices, "depth"),
        ("surface", Thumb, "surface"),
        ("on", Thumb, "on"),
        ("focus", Cue, "focus"),
        ("confidence", Cue, "confidence"),
        ("speed_goes", Change, "goes"),
        ("goes", Change, "goes"),
        ("turns", ClockChange, "goes"),
        ("by", Check, "by"),
        ("fault_group", Fault, "group"),
        ("term_group", Term, "group"),
        ("section", Guide, "section"),
        ("read", Source, "read"),
        ("status", RuleSet, "status"),
        ("rule_kind", RuleSet, "kind"),
    ],
)
def test_every_choice_of_the_schema_can_be_said(group: str, model, field: str) -> None:
    assert set(LABELS[group]) == set(get_args(model.model_fields[field].annotation))


def test_a_translation_reaches_pages_and_calculators_alike(tmp_path) -> None:
    paths = {path.name: path for path in update_words(tmp_path, add="es")}
    assert set(paths) == {"bendbook.pot", "bendbook.po"}
    path = tmp_path / "es" / "LC_MESSAGES" / "bendbook.po"
    text = path.read_text(encoding="utf-8")
    assert 'msgid "Enter a number."\nmsgstr ""' in text
    text = text.replace(
        'msgid "Enter a number."\nmsgstr ""', 'msgid "Enter a number."\nmsgstr "Escribe un número."'
    )
    text += '\nmsgid "{count} ball"\nmsgid_plural "{count} balls"\n'
    text += 'msgstr[0] "{count} pelota"\nmsgstr[1] "{count} pelotas"\n'
    path.write_text(text, encoding="utf-8")
    for catalogue in (open_catalogue(tmp_path, "es"), TranslatedWords(words_for_browser(tmp_path, "es"))):
        assert speak(say("Enter a number."), catalogue) == "Escribe un número."
        assert (
            speak(say("Use digits only, like {example}.", example="7"), catalogue)
            == "Use digits only, like 7."
        )
        assert speak(say_count("{count} ball", "{count} balls", count=1), catalogue) == "1 pelota"
        assert speak(say_count("{count} ball", "{count} balls", count=3), catalogue) == "3 pelotas"


def test_new_words_leave_translations_in_place(tmp_path) -> None:
    list(update_words(tmp_path, add="es"))
    path = tmp_path / "es" / "LC_MESSAGES" / "bendbook.po"
    text = path.read_text(encoding="utf-8").replace(
        'msgid "Hold it"\nmsgstr ""', 'msgid "Hold it"\nmsgstr "Agárralo"'
    )
    path.write_text(text, encoding="utf-8")
    assert list(update_words(tmp_path)) == []
    assert 'msgstr "Agárralo"' in path.read_text(encoding="utf-8")

"""A language's catalogue, read from content/locale/<language>/LC_MESSAGES/bendbook.po."""

from __future__ import annotations

import gettext
import hashlib
import io
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.mofile import write_mo
from babel.messages.pofile import PoFileError, read_po

SOURCE_LANGUAGE = "en"
DOMAIN = "bendbook"


class CatalogueError(Exception):
    """A catalogue cannot be read."""


def catalogue_path(locale: Path, language: str) -> Path:
    """Return the file that holds a language's words."""
    return locale / language / "LC_MESSAGES" / f"{DOMAIN}.po"


def languages(locale: Path) -> tuple[str, ...]:
    """Return the languages there are words for, the source language first."""
    found = sorted(path.parent.parent.name for path in locale.glob(f"*/LC_MESSAGES/{DOMAIN}.po"))
    return (SOURCE_LANGUAGE, *(language for language in found if language != SOURCE_LANGUAGE))


def open_catalogue(locale: Path, language: str) -> gettext.NullTranslations:
    """Return a language's catalogue; a message without a translation is spoken in English.

    Raises CatalogueError where the file is missing or broken.
    """
    if language == SOURCE_LANGUAGE and not catalogue_path(locale, language).is_file():
        return gettext.NullTranslations()
    compiled = io.BytesIO()
    write_mo(compiled, _read(locale, language))
    compiled.seek(0)
    return gettext.GNUTranslations(compiled)


def words_mark(locale: Path, language: str) -> bytes:
    """Return a mark that changes with any word of a language's catalogue."""
    path = catalogue_path(locale, language)
    return hashlib.sha256(path.read_bytes() if path.is_file() else b"").digest()


def words_for_browser(locale: Path, language: str) -> dict[str, str | list[str]]:
    """Return English text to its translation, or to its forms for one and for many, as plain data."""
    words: dict[str, str | list[str]] = {}
    for message in _read(locale, language):
        if isinstance(message.string, str):
            if message.id and message.string:
                words[str(message.id)] = message.string
        elif message.string and all(message.string):
            words[message.id[0]] = list(message.string)
    return words


def _read(locale: Path, language: str) -> Catalog:
    path = catalogue_path(locale, language)
    try:
        with path.open("rb") as file:
            return read_po(file, locale=language, abort_invalid=True)
    except (OSError, PoFileError, UnicodeDecodeError) as error:
        mend = f"Start it with: python -m build_tools words --add {language}"
        raise CatalogueError(f"{path} cannot be read: {error}. {mend}") from error

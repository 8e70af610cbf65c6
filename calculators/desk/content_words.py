"""Sentences of the handbook's entries, made plain for an answer: without links and marks of evidence."""

from __future__ import annotations

import re

from calculators.desk.answers import Shelf

_MARK = re.compile(r"\s*\{(published:[^}]*|common practice|estimate)\}")
_LINK = re.compile(r"\[\[([a-z_]+)/([a-z0-9-]+)(?:\|([^\]]*))?\]\]")


def plain_words(text: str, shelf: Shelf) -> str:
    """Return a text of an entry as it is read aloud; a link becomes its label or the entry's title."""

    def named(link: re.Match[str]) -> str:
        kind, slug, label = link[1], link[2], link[3]
        entries = getattr(shelf, kind, {})
        return label or str(entries[slug]["title"] if slug in entries else slug.replace("-", " ")).lower()

    return _LINK.sub(named, _MARK.sub("", text)).strip()

"""Short names of sources, made from their ids: lyman-2002 is Lyman 2002, asmi-2009 is ASMI 2009."""

from __future__ import annotations

import re

from build_tools.schema.lists import Source

_WORD = re.compile(r"[^\W\d_]+(?:[-'][^\W\d_]+)*")


def short_name(ident: str, source: Source) -> str:
    """Return the short name of a source, its id in words written as its authors write theirs."""
    written = {word.lower(): word for word in _WORD.findall(source.authors)}
    initials = "".join(word[0] for word in _WORD.findall(source.authors) if word[0].isupper())
    words = [_as_written(word, written, initials) for word in ident.split("-")]
    name = " ".join(words)
    return name if words[0] in written.values() else name[:1].upper() + name[1:]


def _as_written(word: str, written: dict[str, str], initials: str) -> str:
    if word in written:
        return written[word]
    if len(word) > 2 and word.upper() in initials:
        return word.upper()
    return word

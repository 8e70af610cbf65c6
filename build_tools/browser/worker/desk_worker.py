"""What answers inside the reader's browser: the counter is opened once a language and kept open."""

from __future__ import annotations

import functools
import json
import pathlib
import traceback

from calculators.desk.counter import Counter, open_counter

FOLDER = pathlib.Path("/bendbook")
"""Where the interpreter module put the content: `shelf.json` and, for a translation, `words.<language>.json`."""


@functools.cache
def counter_in(language: str) -> Counter:
    """Return the counter that speaks `language`; English where the edition has no words for it."""
    shelf = (FOLDER / "shelf.json").read_text(encoding="utf-8")
    words = FOLDER / f"words.{language}.json"
    return open_counter(shelf, words.read_text(encoding="utf-8") if words.exists() else None)


def answer(name: str, fields_json: str, language: str) -> str:
    """Answer a page; see `Counter.answer`.

    An error of ours comes back as `{"failed": text}`, because an exception would be swallowed on its
    way through the worker and the page would wait for ever.
    """
    try:
        return counter_in(language).answer(name, fields_json)
    except Exception as error:
        traceback.print_exc()
        return json.dumps({"failed": f"{type(error).__name__}: {error}"})

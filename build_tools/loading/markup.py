"""Finds what could act or reach out in words from the content: scripts, handlers, forms, other hosts' files.

Code is left alone, but only code on one line or between fences, and only in a text without tags of its own:
inside a tag's block Markdown takes no backtick for code.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterator

from build_tools.loading.mistakes import Location

NO_SCRIPTS = "this written in Markdown; scripts have no place in a page"

_CODE = re.compile(
    r"^(?P<fence>```+|~~~+)[\w-]*\n.*?^(?P=fence)[ ]*$"
    r"|(?<![\\`])(?P<tick>`+)(?!`)[^\n]*?(?<!`)(?P=tick)(?!`)",
    re.MULTILINE | re.DOTALL,
)
_TAG = re.compile(r"<[a-z!/?]", re.IGNORECASE)
_ATTRIBUTES = re.compile(r"<[a-z]|\{", re.IGNORECASE)
"""Where attributes may begin: those of a tag, or those that Markdown takes in braces."""
_HANDLER = re.compile(r"(?<=[\s/\"':{])on[a-z]+\s*=", re.IGNORECASE)
_ACTS = re.compile(r"<\s*(?:script|iframe|frame|object|embed|form|base|meta)\b", re.IGNORECASE)
_ELSEWHERE = re.compile(
    r"<(?:img|image|link|source|video|audio)\b[^<>]*?(?:https?:)?//|!\[[^\[\]]*\]\(\s*<?(?:https?:)?//", re.I
)
_RUNS = re.compile(r"\s*".join("javascript") + r"\s*:", re.IGNORECASE)


def unsafe(text: str) -> Iterator[tuple[int, str]]:
    """Yield what may not stand in a text: how many lines down it is, and how it is written."""
    outside = _CODE.sub(lambda code: "\n" * code[0].count("\n"), text)
    if _TAG.search(outside):
        outside = text
    attributes = _ATTRIBUTES.search(outside)
    handlers = _HANDLER.finditer(outside, attributes.start()) if attributes else ()
    for found in (*_ACTS.finditer(outside), *handlers, *_ELSEWHERE.finditer(outside)):
        yield outside[: found.start()].count("\n"), " ".join(found[0].split())[:40]
    plain = html.unescape(outside)
    for found in _RUNS.finditer(plain):
        yield plain[: found.start()].count("\n"), "javascript:"


def words_in(value: object, location: Location = ()) -> Iterator[tuple[Location, str]]:
    """Yield every text inside a value read from YAML, with the way to it."""
    if isinstance(value, str):
        yield location, value
    elif isinstance(value, dict):
        for name, inside in value.items():
            yield from words_in(inside, (*location, name))
    elif isinstance(value, list):
        for index, inside in enumerate(value):
            yield from words_in(inside, (*location, index))

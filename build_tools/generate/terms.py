"""Links the first use of each glossary term on a page, and shows clock times for either hand.

The text is looked through once, from the start. Headings, links, code, HTML tags and a few elements that
must stay as they are get passed over; in what is left, the longest term that fits is taken.

Clock times in running text are a right-hander's. They are left alone in a sentence that says so, and on a
page that speaks of left-handers, because there the author has given both.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable
from dataclasses import dataclass
from html import escape

from build_tools.generate.addresses import place_of, way
from build_tools.generate.clocks import (
    CLOCK_TIME,
    for_either_hand,
    is_length_of_time,
    names_left_hand,
    names_right_hand,
    other_hand,
)
from build_tools.loading.marks import plain
from build_tools.loading.reading import Loaded
from build_tools.schema.lists import Term

_UNTOUCHED = re.compile(
    r"""
    ^```.*?^```                                      # a block of code
    | ^\#{1,6}[ ][^\n]*                              # a heading
    | ^\|[^\n]*\n\|[-:|\ ]+\|[ ]*$                        # the head of a table
    | <!--.*?-->
    | <(?P<element>a|button|caption|code|dt|figure|h[1-6]|label|legend|option|pre|script|style|summary|svg
      |textarea|th)\b[^>]*>.*?</(?P=element)\s*>      # an element whose words are a name, a link or a drawing
    | <span[ ]class="(?:for-right|for-left|hand-gap)">.*?</span>
    | </?[a-zA-Z](?:[^>"']|"[^"]*"|'[^']*')*>        # any other tag
    | !?\[(?:[^\[\]]|\[[^\]]*\])*\]\([^)]*\)         # a link or a picture
    | \{[:\#][^}\n]*\}                               # a list of attributes
    | (?P<ticks>`+)(?!`).+?(?<!`)(?P=ticks)(?!`)     # code in a line
    | https?://\S+
    | \x02\d+\x03                                    # HTML that is put in at the end
    """,
    re.VERBOSE | re.MULTILINE | re.DOTALL,
)

_HAND_GAP = re.compile(r'<span class="hand-gap">.*?</span>')
_SENTENCE_END = re.compile(r"[.!?][\"\u201d)]?\s|\n\s*\n|\n\s*(?:[-|]|\d+\.)|\||</?(?:li|p|dd|td)\b")


@dataclass(frozen=True)
class _Meant:
    slug: str
    meaning: str
    see: frozenset[str]


class TermLinker:
    """Links terms on pages. One linker serves all pages of a language.

    glossary: the terms.
    left_hander: the word before a left-hander's clock time where both hands are read.
    folder: what the places of this language start with.
    """

    def __init__(self, glossary: Iterable[Loaded[Term]], left_hander: str, folder: str = "") -> None:
        self._left_hander = left_hander
        self._folder = folder
        self._meant: dict[str, _Meant] = {}
        for loaded in glossary:
            term = loaded.model
            if not term.link:
                continue
            meant = _Meant(loaded.slug, plain(term.meaning), frozenset(term.see))
            for form in (term.term, *term.also):
                self._meant.setdefault(_key(form), meant)
        self._pattern = re.compile(
            "|".join(
                (
                    f"(?P<untouched>{_UNTOUCHED.pattern})",
                    f"(?P<clock>{CLOCK_TIME.pattern})",
                    f"(?P<term>{_any_of(self._meant)})",
                )
            ),
            re.VERBOSE | re.MULTILINE | re.DOTALL,
        )

    def link(self, text: str, here: str, without: Collection[str] = ()) -> str:
        """Return the text of a page with terms linked and clock times shown for either hand.

        here: the place of the page.
        without: slugs of terms and kind/slug of entries that must not be linked, such as the page itself.
        """
        done = set(without)
        gives_both_hands = names_left_hand(_HAND_GAP.sub("", text))

        def replaced(found: re.Match[str]) -> str:
            if found["clock"]:
                return found[0] if gives_both_hands else self._clock(found)
            if not found["term"]:
                return found[0]
            meant = self._meant[_key(found["term"])]
            if meant.slug in done or meant.see & done:
                return found[0]
            done.add(meant.slug)
            href = way(here, self._folder + place_of(f"glossary/{meant.slug}"))
            return f'<a class="term" href="{href}" data-meaning="{attribute(meant.meaning)}">{found[0]}</a>'

        return self._pattern.sub(replaced, text)

    def _clock(self, found: re.Match[str]) -> str:
        text, start, end = found.string, found.start(), found.end()
        before = text[max(0, start - 400) : start]
        after = text[end : end + 400]
        begins = max((one.end() for one in _SENTENCE_END.finditer(before)), default=0)
        ending = _SENTENCE_END.search(after)
        sentence = before[begins:] + found[0] + after[: ending.start() if ending else len(after)]
        if is_length_of_time(before[begins:]) or names_right_hand(sentence):
            return found[0]
        return for_either_hand(found[0], other_hand(found[0]), self._left_hander)


def attribute(text: str) -> str:
    """Escape text for an HTML attribute inside Markdown, where brackets and ticks mean something too."""
    escaped = escape(" ".join(text.split()))
    for sign in "\\`[]{}|*_":
        escaped = escaped.replace(sign, f"&#{ord(sign)};")
    return escaped


def _key(form: str) -> str:
    return " ".join(form.lower().split())


def _any_of(forms: Iterable[str]) -> str:
    """Return a pattern for the forms, whatever their case, the longest first.

    They are sorted by first letter, so that at most places one look at a letter settles the matter.
    """
    by_letter: dict[str, list[str]] = {}
    for form in sorted(forms, key=lambda form: (-len(form), form)):
        rest = re.escape(form[1:]).replace(r"\ ", r"\s+")
        by_letter.setdefault(form[0], []).append(rest)
    if not by_letter:
        return "(?!)"
    branches = (
        f"[{re.escape(letter)}{re.escape(letter.upper())}](?i:{'|'.join(rests)})"
        for letter, rests in by_letter.items()
    )
    return rf"(?<![\w-])(?:{'|'.join(branches)})(?![\w-])"

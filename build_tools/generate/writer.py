"""Writes one page: template, then links and marks, then terms and clock times, then front matter."""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from html import escape
from typing import Any

import yaml
from babel.dates import format_date
from jinja2 import Environment, FileSystemLoader, StrictUndefined

from build_tools.generate.addresses import markdown_file, place_of, way
from build_tools.generate.clocks import for_either_hand, other_hand
from build_tools.generate.labels import LABELS
from build_tools.generate.source_names import short_name
from build_tools.generate.terms import TermLinker
from build_tools.generate.wide_tables import stackable
from build_tools.loading.library import Library
from build_tools.loading.marks import Evidence, Link, find_marks, plain
from build_tools.places import TEMPLATES
from calculators.words import Catalogue, Message, number, say, say_count, speak

_DEPENDS_ON_HAND = ("for-left", "grip-small")
"""What shows that a page looks different for a left-hander: both versions, or a drawing to turn over."""

_PUT_IN = re.compile("\x02(\\d+)\x03")


@dataclass(frozen=True)
class Page:
    """A finished page: its file inside the docs folder and its text."""

    file: str
    text: str


@dataclass(frozen=True)
class Edition:
    """The handbook in one language, as templates meet it.

    language: its two letters. folder: what its places start with; "" for the first language.
    calculators: name to title, spoken. words_mark: changes with any word of the catalogue.
    """

    library: Library
    language: str
    catalogue: Catalogue
    folder: str
    calculators: Mapping[str, str]
    words_mark: bytes = b""

    def speak(self, message: Message) -> str:
        """Return a message in this edition's language."""
        return speak(message, self.catalogue)

    def title(self, address: str) -> str:
        """Return what a link to kind/slug is called."""
        kind, _, slug = address.partition("/")
        if kind == "calculators":
            return self.calculators[slug]
        loaded = self.library.get(address)
        if kind == "sources":
            return short_name(slug, loaded.model)
        return str(loaded.model.term if kind == "glossary" else loaded.model.title)


@dataclass
class Writer:
    """Writes the pages of one edition."""

    edition: Edition
    _put_in: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self._here = ""
        edition = self.edition
        left_hander = edition.speak(say("left-hander"))
        self._terms = TermLinker(edition.library.glossary.values(), left_hander, edition.folder)
        self._environment = self._make_environment()

    def write(
        self,
        place: str,
        template: str,
        title: str,
        description: str,
        context: Mapping[str, object],
        *,
        without: tuple[str, ...] = (),
        indexed: bool = False,
        meta: Mapping[str, object] | None = None,
    ) -> Page:
        """Write the page at `place`.

        template: its file in build_tools/templates. title, description: for its head.
        context: what the template needs. without: terms and entries the page must not link its words to.
        indexed: true for the first page of a folder. meta: more front matter.
        """
        self._here = self.edition.folder + place
        self._put_in.clear()
        text = self._environment.get_template(template).render({**context, "page_title": title})
        text = self._marked(text)
        text = self._terms.link(text, self._here, without)
        handed = any(sign in html for html in (text, *self._put_in) for sign in _DEPENDS_ON_HAND)
        text = _PUT_IN.sub(lambda found: self._put_in[int(found[1])], text)
        front: dict[str, object] = {
            "title": title,
            "description": plain(description),
            "language": self.edition.language,
        }
        if handed:
            front["handed"] = True
        front_matter = yaml.safe_dump({**front, **(meta or {})}, allow_unicode=True, sort_keys=False)
        body = stackable(re.sub(r"\n{3,}", "\n\n", text).strip())
        return Page(markdown_file(self._here, indexed), f"---\n{front_matter}---\n\n{body}\n")

    def fragment(self, template: str, **context: object) -> str:
        """Return a template's HTML as it is, for a page that puts it in verbatim."""
        return self._environment.get_template(template).render(**context)

    def clock_span(self, pair: tuple[str, str]) -> str:
        """Return a span of a right-hander's clock, shown for either hand."""
        first, last = pair
        right, left = self._to(first, last), self._to(other_hand(last), other_hand(first))
        return for_either_hand(right, left, self.edition.speak(say("left-hander")))

    def _make_environment(self) -> Environment:
        environment = Environment(
            loader=FileSystemLoader(TEMPLATES),
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            autoescape=False,  # the output is Markdown; what goes into an attribute is escaped there
        )
        edition = self.edition
        globals_: dict[str, Any] = {
            "library": edition.library,
            "title": edition.title,
            "link": lambda address: f"[[{address}]]",
            "league": edition.library.league,
            "league_slug": edition.library.opened.league.slug if edition.library.opened else "",
            "overdue_now": edition.library.opened is not None and edition.library.opened.overdue is not None,
            "own_age": self._own_age,
            "url": self._url,
            "label": lambda group, choice: edition.speak(LABELS[group][choice]),
            "verbatim": self._verbatim,
            "_": self._say,
            "_n": self._say_count,
        }
        environment.globals.update(globals_)
        filters: dict[str, Any] = {
            "attribute": lambda text: escape(plain(text)),
            "clock": self._clock,
            "day": lambda day: _day(day, edition.language),
            "plain": plain,
            "span": self._span,
            "clock_span": self.clock_span,
        }
        environment.filters.update(filters)
        return environment

    def _own_age(self, youngest: int) -> int:
        """Return from which age a breaking ball is allowed: the handbook's own age, or a league's later one."""
        league = self.edition.library.league
        return youngest if league is None else league.own_age(youngest)

    def _say(self, text: str, /, **values: str | Message) -> str:
        return self.edition.speak(say(text, **values))

    def _say_count(self, one: str, many: str, count: int, /, **values: str | Message) -> str:
        return self.edition.speak(say_count(one, many, count, **values))

    def _url(self, address_or_place: str) -> str:
        """Return the way to a kind/slug, or to a place such as "glossary/"."""
        kind, slash, slug = address_or_place.partition("/")
        is_address = slash and slug and kind in self.edition.library.kinds
        place = place_of(address_or_place) if is_address else address_or_place
        return way(self._here, self.edition.folder + place)

    def _verbatim(self, html: str) -> str:
        """Put finished HTML on the page so that nothing on the way changes it."""
        self._put_in.append(html)
        return f"\x02{len(self._put_in) - 1}\x03"

    def _clock(self, clock: str) -> str:
        return for_either_hand(clock, other_hand(clock), self.edition.speak(say("left-hander")))

    def _to(self, low: str, high: str) -> str:
        return low if low == high else self.edition.speak(say("{low} to {high}", low=low, high=high))

    def _span(self, pair: tuple[float, float]) -> str:
        return self._to(*(number(value, 0 if value == int(value) else 1) for value in pair))

    def _marked(self, text: str) -> str:
        """Turn [[links]] and {evidence marks} into HTML."""
        pieces: list[str] = []
        at = 0
        for mark in find_marks(text):
            before = text[at : mark.start]
            if isinstance(mark, Link):
                words = mark.words or self.edition.title(mark.address)
                pieces += [before, f'<a href="{self._url(mark.address)}">{words}</a>']
            elif isinstance(mark, Evidence):
                pieces += [before.rstrip(), " ", self._evidence(mark)]
            else:
                raise AssertionError(f"a template wrote {mark.written}, which is no mark")
            at = mark.end
        pieces.append(text[at:])
        return "".join(pieces)

    def _evidence(self, mark: Evidence) -> str:
        if mark.basis == "published":
            named = ", ".join(
                f'<a href="{self._url(f"sources/{ident}")}">{self.edition.title(f"sources/{ident}")}</a>'
                for ident in mark.sources
            )
            words = self.edition.speak(say("published: {sources}", sources=named))
        elif mark.basis == "estimate":
            words = self.edition.speak(say("estimate"))
        else:
            words = self.edition.speak(say("common practice"))
        kind = mark.basis.replace(" ", "-")
        return f'<span class="evidence evidence-{kind}">{words}</span>'


def _day(day: datetime.date, language: str) -> str:
    return format_date(day, format="long", locale=language)

"""Pages as a reader's browser sees them: their links, their anchors, and how far apart they are."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from html.parser import HTMLParser
from pathlib import PurePosixPath

VOID = frozenset(
    {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "wbr"}
)


class Reader(HTMLParser):
    """Collects a page's links, anchors and headings; of its `article`, the words and the links by themselves."""

    def __init__(self) -> None:
        super().__init__()
        self.links: list[str] = []
        self.links_in_article: list[str] = []
        self.anchors: list[str] = []
        self.headings: list[int] = []
        self.open: list[str] = []
        self.links_in_links = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        values = dict(attrs)
        if tag == "a" and values.get("href") is not None:
            self.links_in_links += "a" in self.open
            self.links.append(str(values["href"]))
            if "article" in self.open:
                self.links_in_article.append(str(values["href"]))
        if values.get("id"):
            self.anchors.append(str(values["id"]))
        if re.fullmatch("h[1-6]", tag):
            self.headings.append(int(tag[1]))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag: str) -> None:
        while self.open and self.open.pop() != tag:
            pass


def read(html: str) -> Reader:
    """Return what a page holds."""
    reader = Reader()
    reader.feed(html)
    return reader


def leads_away(link: str) -> bool:
    """True for a link to somebody else's site, or to no page at all."""
    return re.match(r"[a-z]+:", link) is not None


def target(address: PurePosixPath, link: str) -> tuple[PurePosixPath, str]:
    """Return the page a link on the page at `address` leads to, and the anchor on it."""
    page, _, anchor = link.partition("#")
    parts = [part for part in address.parts if part != "."]
    for step in page.rstrip("/").split("/"):
        if step == "..":
            parts.pop()
        elif step not in ("", "."):
            parts.append(step)
    return PurePosixPath(*parts), anchor


def broken_links(pages: Mapping[PurePosixPath, Reader], files: frozenset[PurePosixPath]) -> Iterator[str]:
    """Yield every link that arrives nowhere.

    pages: address to page. files: what else the site has, such as tables to download.
    """
    for address, reader in pages.items():
        for link in reader.links:
            if leads_away(link):
                continue
            page, anchor = target(address, link)
            if page in files:
                continue
            if page not in pages or (anchor and anchor not in pages[page].anchors):
                yield f"{address}: {link}"


def taps_from_start(pages: Mapping[PurePosixPath, Reader]) -> dict[PurePosixPath, int]:
    """Return address to the fewest taps that lead there from the start page, the menu left closed."""
    start = PurePosixPath(".")
    taps = {start: 0}
    edge = [start]
    while edge:
        after: list[PurePosixPath] = []
        for address in edge:
            for link in pages[address].links_in_article:
                page = address if leads_away(link) else target(address, link)[0]
                if page in pages and page not in taps:
                    taps[page] = taps[address] + 1
                    after.append(page)
        edge = after
    return taps

"""Puts links to the PDFs into the built pages, once the PDFs are there."""

from __future__ import annotations

import json
import re
from html import escape, unescape
from pathlib import Path

_PLACE = re.compile(r'<p class="hand-out-files" data-hand-out-files="(?P<files>[^"]*)"(?: hidden)?>.*?</p>')


def link_files(site: Path) -> int:
    """Link every PDF that lies in the site from the pages that speak of it; returns how many links there are.

    A page names the files there may be; those that are missing are not linked.
    """
    count = 0
    for page in sorted(site.rglob("print/**/index.html")):
        text = page.read_text(encoding="utf-8")

        def linked(found: re.Match[str], folder: Path = page.parent) -> str:
            nonlocal count
            there = [(way, words) for way, words in _files(found) if (folder / way).is_file()]
            count += len(there)
            links = " ".join(f'<a href="{escape(way)}">{escape(words)}</a>' for way, words in there)
            hidden = "" if there else " hidden"
            return f'<p class="hand-out-files" data-hand-out-files="{found["files"]}"{hidden}>{links}</p>'

        mended = _PLACE.sub(linked, text)
        if mended != text:
            page.write_text(mended, encoding="utf-8")
    return count


def _files(found: re.Match[str]) -> list[tuple[str, str]]:
    return [(str(way), str(words)) for way, words in json.loads(unescape(found["files"]))]

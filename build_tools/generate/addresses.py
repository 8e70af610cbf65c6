"""Where each thing of the handbook stands on the site, and the way there from another page.

An address is kind/slug, as in `[[kind/slug]]`. A place is the part of a web address after the site's own:
"grips/basic-downer/", or "" for the home page. Pages end in a slash, so that the site works in any folder.
"""

from __future__ import annotations

import posixpath

from build_tools.schema.kinds import ENTRY_KINDS

ANCHORED = {
    "glossary": "glossary/#{slug}",
    "sources": "sources/#{slug}",
    "rules": "rules/#{slug}",
    "age_gates": "age-gates/#{slug}",
    "slots": "starting-points/#slot-{slug}",
    "roles": "starting-points/#role-{slug}",
    "profiles": "starting-points/#profile-{slug}",
    "stages": "starting-points/#stage-{slug}",
    "editions": "league/",
}
"""Kinds that share a page, and the heading of one of them on it."""


def place_of(address: str) -> str:
    """Return the place of an address, with its heading where it shares a page."""
    kind, _, slug = address.partition("/")
    if kind in ENTRY_KINDS:
        return f"{kind}/{slug}/"
    return ANCHORED[kind].format(slug=slug)


def way(here: str, there: str) -> str:
    """Return the relative web address from the page at `here` to the place `there`."""
    page, hash_sign, heading = there.partition("#")
    if page == here and hash_sign:
        return f"#{heading}"
    steps = posixpath.relpath(page or ".", here or ".")
    return f"{steps}/{hash_sign}{heading}"


def markdown_file(place: str, indexed: bool = False) -> str:
    """Return the Markdown file, inside the docs folder, that becomes the page at `place`.

    indexed: true for the first page of a folder, such as the list of all grips.
    """
    if place == "" or indexed:
        return f"{place}index.md"
    return f"{place.rstrip('/')}.md"

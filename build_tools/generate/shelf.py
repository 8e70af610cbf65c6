"""What the calculators need of the content, as plain data: build/shelf.json."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from build_tools.generate.source_names import short_name
from build_tools.loading.library import Library

Shelves = Mapping[str, Mapping[str, Any]]


def shelves(library: Library) -> Shelves:
    """Return rule sets, entries and lists by slug, the short names of sources, and made-up files.

    In a league's edition, `edition` says which rule set binds and which divisions there are.
    """
    return {
        **{
            kind: {slug: one.model.model_dump(mode="json") for slug, one in library.kinds[kind].items()}
            for kind in ("rules", "shapes", "cues", "slots", "roles", "profiles", "drills", "stages")
        },
        "sources": {ident: short_name(ident, one.model) for ident, one in library.sources.items()},
        "edition": _edition(library),
        "demo": library.demo,
    }


def _edition(library: Library) -> Mapping[str, Any]:
    league = library.league
    if league is None:
        return {}
    return league.model_dump(mode="json", include={"name", "rules", "divisions"})

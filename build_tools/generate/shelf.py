"""What the calculators need of the content, as plain data: build/shelf.json."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pydantic import BaseModel

from build_tools.editions.league import League
from build_tools.generate.source_names import short_name
from build_tools.loading.library import Library
from build_tools.schema.coaching import Cue, Drill
from build_tools.schema.shape import Shape

Shelves = Mapping[str, Mapping[str, Any]]

AGED = (Cue, Drill, Shape)
"""What a league's own age for breaking balls holds for."""


def shelves(library: Library) -> Shelves:
    """Return rule sets, entries and lists by slug, the short names of sources, and made-up files.

    In a league's edition, `edition` says which rule set binds, which divisions there are and from which age
    a breaking ball is allowed; that age is the least of every entry about one.
    """
    return {
        **{
            kind: {slug: _dumped(one.model, library.league) for slug, one in library.kinds[kind].items()}
            for kind in ("rules", "shapes", "cues", "slots", "roles", "profiles", "drills", "stages")
        },
        "sources": {ident: short_name(ident, one.model) for ident, one in library.sources.items()},
        "edition": _edition(library),
        "demo": library.demo,
    }


def _dumped(entry: BaseModel, league: League | None) -> dict[str, Any]:
    dumped = entry.model_dump(mode="json")
    if league is not None and isinstance(entry, AGED):
        dumped["youngest"] = league.own_age(entry.youngest)
    return dumped


def _edition(library: Library) -> Mapping[str, Any]:
    league = library.league
    if league is None:
        return {}
    return {
        **league.model_dump(mode="json", include={"name", "rules", "divisions"}),
        "breaking_balls_from": league.breaking_balls.from_age,
    }

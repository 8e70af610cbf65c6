"""What the calculators need of the content, as plain data: build/shelf.json."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from build_tools.generate.source_names import short_name
from build_tools.loading.library import Library

Shelves = Mapping[str, Mapping[str, Any]]


def shelves(library: Library) -> Shelves:
    """Return rule sets, shapes, cues, arm slots and roles by slug, and the short names of sources by id."""
    return {
        **{
            kind: {slug: one.model.model_dump(mode="json") for slug, one in library.kinds[kind].items()}
            for kind in ("rules", "shapes", "cues", "slots", "roles")
        },
        "sources": {ident: short_name(ident, one.model) for ident, one in library.sources.items()},
    }

"""Who should read which entry through next, and by when."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from build_tools.loading.library import Library
from build_tools.schema.kinds import ENTRY_KINDS


@dataclass(frozen=True)
class Due:
    """One review that somebody has asked for."""

    when: datetime.date
    address: str
    who: str


def reviews_due(library: Library) -> tuple[Due, ...]:
    """Return the reviews asked for in `review_by`, the earliest first."""
    found = (
        Due(loaded.model.review_by.when, loaded.address, loaded.model.review_by.who)
        for kind in ENTRY_KINDS
        for loaded in library.kinds[kind].values()
        if loaded.model.review_by is not None
    )
    return tuple(sorted(found, key=lambda one: (one.when, one.address)))

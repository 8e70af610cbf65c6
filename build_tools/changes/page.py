"""The page that tells a reader of an older edition what reads differently now."""

from __future__ import annotations

import datetime
from collections.abc import Iterable

from build_tools.changes.comparison import compared
from build_tools.changes.snapshots import Snapshot, taken
from build_tools.generate.pages import TITLES
from build_tools.generate.writer import Page, Writer

MOST_EDITIONS = 6
"""Editions that the page looks back to; who has an older one reads under the last heading."""


def changes_page(writer: Writer, snapshots: Iterable[Snapshot], date: datetime.date) -> Page:
    """Return the page of what changed since each recorded snapshot.

    snapshots: newest first. date: the day of this edition.
    """
    now = taken(writer.edition.library, date)
    since = [(then, compared(then, now)) for then in list(snapshots)[:MOST_EDITIONS]]
    title = writer.edition.speak(TITLES["changes"])
    return writer.write("changes/", "changes.md.j2", title, title, {"now": now, "since": since})

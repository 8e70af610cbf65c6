"""A snapshot of the handbook: of each entry its hash, its title and the day it was last read through.

One JSON file a day of record in content/history, or in an edition's own history folder. The hash covers what
a reader can read: not the order of a list, nor who should read the entry through next.
"""

from __future__ import annotations

import datetime
import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from build_tools.editions.opening import EDITIONS
from build_tools.loading.library import Library
from build_tools.loading.reading import Loaded
from build_tools.schema.kinds import ENTRY_KINDS

FOLDER = "history"
RECORDED = (*ENTRY_KINDS, "rules", "age_gates")
"""Kinds whose changes a reader of an older edition should hear of."""

_NOT_READ = {"reviewed", "review_by", "order", "draft", "last_checked"}


class SnapshotError(Exception):
    """A recorded snapshot cannot be read. The message names the file and what to do."""


@dataclass(frozen=True)
class Known:
    """What a snapshot knows of one entry.

    reviewed: the day it was last read through or checked; None for the lists, which carry no such day.
    """

    mark: str
    title: str
    reviewed: datetime.date | None


@dataclass(frozen=True)
class Snapshot:
    """The handbook as it stood on a day, by kind/slug."""

    date: datetime.date
    entries: Mapping[str, Known]


def taken(library: Library, date: datetime.date) -> Snapshot:
    """Return the snapshot of a library as of `date`."""
    entries = {
        loaded.address: Known(mark_of(loaded), str(loaded.model.title), _reviewed(loaded))
        for kind in RECORDED
        for loaded in library.kinds[kind].values()
    }
    return Snapshot(date, entries)


def mark_of(loaded: Loaded[Any]) -> str:
    """Return a mark that changes with what a reader can read of an entry."""
    fields = loaded.model.model_dump(mode="json", exclude=_NOT_READ)
    text = json.dumps([fields, loaded.body.split()], ensure_ascii=False, sort_keys=True)
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def history(content: Path, edition: str | None = None) -> Path:
    """Return the folder of the snapshots: the handbook's own or an edition's."""
    return (content if edition is None else content / EDITIONS / edition) / FOLDER


def record(snapshot: Snapshot, folder: Path) -> Path:
    """Write a snapshot; one of the same day is overwritten. Returns the file."""
    folder.mkdir(exist_ok=True)
    path = folder / f"{snapshot.date.isoformat()}.json"
    told = {
        address: [known.mark, known.title, known.reviewed.isoformat() if known.reviewed else ""]
        for address, known in sorted(snapshot.entries.items())
    }
    path.write_text(json.dumps(told, ensure_ascii=False, indent=0) + "\n", encoding="utf-8")
    return path


def recorded(folder: Path) -> tuple[Snapshot, ...]:
    """Return the snapshots of a folder, newest first; none where nothing was recorded.

    Raises SnapshotError where a file is not what `record` writes.
    """
    return tuple(_read(path) for path in sorted(folder.glob("*.json"), reverse=True))


def _read(path: Path) -> Snapshot:
    try:
        date = datetime.date.fromisoformat(path.stem)
        told = json.loads(path.read_text(encoding="utf-8"))
        entries = {
            str(address): Known(
                str(mark), str(title), datetime.date.fromisoformat(reviewed) if reviewed else None
            )
            for address, (mark, title, reviewed) in told.items()
        }
    except (ValueError, TypeError, AttributeError) as error:
        mend = "delete it, then run: python -m build_tools record"
        raise SnapshotError(f"{path} is no snapshot; {mend} ({error})") from error
    return Snapshot(date, entries)


def _reviewed(loaded: Loaded[Any]) -> datetime.date | None:
    found = getattr(loaded.model, "reviewed", None) or getattr(loaded.model, "last_checked", None)
    return found if isinstance(found, datetime.date) else None

"""Two snapshots compared: what is new, what reads differently, what was read through again, what is gone."""

from __future__ import annotations

from dataclasses import dataclass

from build_tools.changes.snapshots import Known, Snapshot


@dataclass(frozen=True)
class Changes:
    """What changed from one snapshot to another; each a list of kind/slug, `gone` with the titles of then."""

    added: tuple[str, ...]
    changed: tuple[str, ...]
    confirmed: tuple[str, ...]
    gone: tuple[tuple[str, str], ...]

    @property
    def any(self) -> bool:
        """True where a reader of the older one would read anything else today."""
        return bool(self.added or self.changed or self.gone)


def compared(then: Snapshot, now: Snapshot) -> Changes:
    """Compare an older snapshot with a newer one.

    confirmed: entries that somebody read through again and left as they were.
    """
    both = [address for address in now.entries if address in then.entries]
    same = [address for address in both if now.entries[address].mark == then.entries[address].mark]
    return Changes(
        added=tuple(address for address in now.entries if address not in then.entries),
        changed=tuple(address for address in both if address not in same),
        confirmed=tuple(one for one in same if _read_since(then.entries[one], now.entries[one])),
        gone=tuple(
            (address, known.title) for address, known in then.entries.items() if address not in now.entries
        ),
    )


def _read_since(then: Known, now: Known) -> bool:
    return then.reviewed is not None and now.reviewed is not None and now.reviewed > then.reviewed

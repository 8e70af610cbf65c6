"""A first guess at what the columns of a sheet are, for the reader to confirm. By plain words only."""

from __future__ import annotations

import re
from collections.abc import Mapping

from calculators.coaching.session_columns import COLUMN, COLUMNS, Name
from calculators.coaching.sheet import Sheet

_WORDS: tuple[tuple[Name, frozenset[str]], ...] = (
    ("guess_speed", frozenset({"guess", "speed"})),
    ("guess_clock", frozenset({"guess", "clock"})),
    ("date", frozenset({"date"})),
    ("date", frozenset({"day"})),
    ("speed", frozenset({"speed"})),
    ("speed", frozenset({"velocity"})),
    ("active", frozenset({"active"})),
    ("active", frozenset({"efficiency"})),
    ("clock", frozenset({"clock"})),
    ("clock", frozenset({"tilt"})),
    ("spin", frozenset({"spin"})),
    ("up", frozenset({"vertical"})),
    ("up", frozenset({"up"})),
    ("side", frozenset({"horizontal"})),
    ("side", frozenset({"side"})),
    ("strike", frozenset({"strike"})),
    ("rating", frozenset({"rating"})),
    ("cue", frozenset({"cue"})),
    ("grip", frozenset({"grip"})),
    ("block", frozenset({"block"})),
    ("distance", frozenset({"distance"})),
    ("effort", frozenset({"effort"})),
    ("ball", frozenset({"ball"})),
    ("place", frozenset({"place"})),
    ("number", frozenset({"number"})),
    ("pitch", frozenset({"pitch"})),
    ("pitch", frozenset({"type"})),
)
_UNITS: Mapping[str, str] = {
    "mph": "mph",
    "kmh": "km/h",
    "kph": "km/h",
    "ms": "m/s",
    "rpm": "rpm",
    "in": "in",
    "inches": "in",
    "cm": "cm",
    "ft": "ft",
    "m": "m",
    "percent": "percent",
    "degrees": "degrees from 12:00",
    "deg": "degrees from 12:00",
}


def guess_columns(sheet: Sheet) -> Mapping[int, tuple[Name, str]]:
    """Return a guess at the columns: position to name and unit. Each name is given at most once.

    The handbook's own headings are known exactly. Where a heading names no unit, the handbook's own is taken.
    """
    own = {column.heading: column.name for column in COLUMNS}
    found: dict[int, tuple[Name, str]] = {}
    taken: set[Name] = set()
    for place, heading in enumerate(sheet.headings):
        words = set(re.findall(r"[a-z]+", heading.casefold().replace("km/h", "kmh").replace("m/s", "ms")))
        name = own.get(heading) or next(
            (known for known, needed in _WORDS if needed <= words and known not in taken), None
        )
        if name is None or name in taken:
            continue
        units = COLUMN[name].units
        named = (_UNITS[word] for word in sorted(words) if word in _UNITS)
        found[place] = (name, next((unit for unit in named if unit in units), units[0]))
        taken.add(name)
    return found

"""One row of a league's list of outings. Where a part of it cannot be read, the rest is the least it was."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence

from calculators.workload.cells import RefusedError, Trouble, no_stray_cells, tidy, whole, yes
from calculators.workload.outings import Outing, OutingError
from calculators.workload.tables import TableRow

_WHOLE_COLUMNS = {
    "pitches": "pitches",
    "before last batter": "before_last_batter",
    "breaking balls": "breaking",
    "outs": "outs",
    "innings caught": "innings_caught",
    "game": "game",
    "other throws": "other_throws",
}
"""Column to the part of an outing that its number is; a blank stays unknown."""

_TROUBLES: Mapping[str, tuple[str, Trouble]] = {
    "before_last_batter": ("before last batter", "more before the last batter than pitches"),
    "breaking": ("breaking balls", "more breaking balls than pitches"),
}
"""Part of an outing that does not fit the others to the column it stands in and the trouble."""


def number_columns(heads: Sequence[str]) -> tuple[tuple[str, str], ...]:
    """Return the columns of a file that hold numbers, each with the part of an outing it is."""
    return tuple((head, part) for head, part in _WHOLE_COLUMNS.items() if head in heads)


def outing_of(
    row: TableRow, date: datetime.date, columns: Sequence[tuple[str, str]]
) -> tuple[Outing, RefusedError | None]:
    """Return the outing of a row, and what in it cannot be read.

    An outing that cannot be read in full is unsure: what can be read of it is the least it was.
    """
    try:
        no_stray_cells(row)
        read = Outing(
            date=date,
            team=tidy(row.cells.get("team", "")),
            automatic_walks=whole(row, "automatic walks") or 0,
            reentered=yes(row, "came back"),
            called_off=yes(row, "called off"),
            unsure=False,
            **{part: whole(row, head) for head, part in columns},
        )
    except OutingError as err:
        column, trouble = _TROUBLES[err.field]
        return _at_least(row, date), RefusedError(column, trouble, row.cells.get(column, ""))
    except RefusedError as err:
        return _at_least(row, date), err
    return read, None


def _at_least(row: TableRow, date: datetime.date) -> Outing:
    return Outing(
        date=date,
        pitches=_readable(row, "pitches"),
        outs=_readable(row, "outs"),
        innings_caught=_readable(row, "innings caught"),
        team="" if row.extra else tidy(row.cells.get("team", "")),
        automatic_walks=_readable(row, "automatic walks") or 0,
        unsure=True,
    )


def _readable(row: TableRow, column: str) -> int | None:
    try:
        return whole(row, column)
    except RefusedError:
        return None

"""Tables with many columns or long cells, made so that a phone can stack them: one row a block, every cell with its head."""

from __future__ import annotations

import re
from html import escape

MOST_COLUMNS = 3
"""A table with no more columns than this fits a phone as it is,"""
LONGEST_CELL = 70
"""unless it has as many, and a cell of more letters than this."""

_TABLE = re.compile(
    r"(?P<head>^\|[^\n]*\|[ ]*\n)(?P<rule>\|[-:| ]+\|[ ]*\n)(?P<rows>(?:\|[^\n]*\|[ ]*(?:\n|\Z))+)",
    re.MULTILINE,
)
_CELL_END = re.compile(r"(?<!\\)\|")
_TAG = re.compile(r"<[^>]*>")


def stackable(text: str) -> str:
    """Return Markdown in which every table too wide for a phone carries its heads in its cells."""
    return _TABLE.sub(_stackable, text)


def _stackable(table: re.Match[str]) -> str:
    heads = _cells(table["head"])
    if _fits_a_phone(heads, table["rows"]):
        return table[0]
    rows = "\n".join(
        "|".join(
            (
                "",
                *(_headed(cell, head) for cell, head in zip(_cells(row), ["", *heads[1:]], strict=False)),
                "",
            )
        )
        for row in table["rows"].splitlines()
    )
    return (
        f'<div class="table-frame wide" markdown="1" tabindex="0" role="group"'
        f' aria-label="{escape(_plain(heads[0]))}">\n\n{table["head"]}{table["rule"]}{rows}\n\n</div>\n'
    )


def _fits_a_phone(heads: list[str], rows: str) -> bool:
    if len(heads) != MOST_COLUMNS:
        return len(heads) < MOST_COLUMNS
    return all(len(_plain(cell)) <= LONGEST_CELL for row in rows.splitlines() for cell in _cells(row))


def _cells(row: str) -> list[str]:
    return [cell.strip() for cell in _CELL_END.split(row.strip().strip("|"))]


def _headed(cell: str, head: str) -> str:
    return f' <span>{cell}</span> {{: data-head="{escape(_plain(head))}" }} ' if head else f" {cell} "


def _plain(words: str) -> str:
    return _TAG.sub("", words)

"""Two small files of a made-up league, as a reader would choose them."""

from __future__ import annotations

from calculators.desk.files import as_typed

BOARD = "league-board"
ROSTER = "pitcher,team,age\n=Ana,Reds,12\nBo,Reds,12\nCy,,\nDi,Blues,30\n"
OUTINGS = "pitcher,date,pitches\n=Ana,2026-05-16,66\n=Ana,2026-05-17,5\nBo,2026-05-13,30\nBo,2026-05-14,10\n"


def file(text: str, encoding: str = "utf-8") -> str:
    """Return a file as the page hands it over."""
    return as_typed(text.encode(encoding))

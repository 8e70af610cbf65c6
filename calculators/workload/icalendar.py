"""A calendar file of whole days, as RFC 5545 has it, to carry first days into anybody's calendar."""

from __future__ import annotations

import datetime
import hashlib
from collections.abc import Iterable
from dataclasses import dataclass

_LONGEST_LINE = 75
"""Octets in a line without its end (RFC 5545, section 3.1)."""


@dataclass(frozen=True)
class CalendarDay:
    """One whole-day entry. `about` tells entries of one day apart; it is hashed and never written."""

    date: datetime.date
    summary: str
    description: str = ""
    about: str = ""


def calendar_text(days: Iterable[CalendarDay], written: datetime.datetime) -> str:
    """Return a calendar file.

    written: when the file is made, in UTC; RFC 5545 wants it on every entry.
    """
    stamp = written.strftime("%Y%m%dT%H%M%SZ")
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Bendbook//Pitch count//EN", "CALSCALE:GREGORIAN"]
    for day in days:
        after = day.date + datetime.timedelta(days=1)
        lines += [
            "BEGIN:VEVENT",
            f"UID:{_uid(day)}",
            f"DTSTAMP:{stamp}",
            f"DTSTART;VALUE=DATE:{_written(day.date)}",
            f"DTEND;VALUE=DATE:{_written(after)}",
            f"SUMMARY:{escaped(day.summary)}",
            *([f"DESCRIPTION:{escaped(day.description)}"] if day.description else []),
            "TRANSP:TRANSPARENT",
            "END:VEVENT",
        ]
    lines.append("END:VCALENDAR")
    return "".join(folded(line) + "\r\n" for line in lines)


def escaped(text: str) -> str:
    """Return text with what RFC 5545, section 3.3.11, asks to be escaped; other control signs fall out."""
    plain = text.replace("\r\n", "\n").replace("\r", "\n")
    plain = "".join(sign for sign in plain if sign.isprintable() or sign == "\n")
    for sign, written in (("\\", "\\\\"), (";", "\\;"), (",", "\\,"), ("\n", "\\n")):
        plain = plain.replace(sign, written)
    return plain


def folded(line: str) -> str:
    """Return a line folded so that no part is longer than 75 octets; no letter is cut in two."""
    if line.isascii():
        return "\r\n ".join([line[:_LONGEST_LINE], *_pieces(line[_LONGEST_LINE:], _LONGEST_LINE - 1)])
    parts = [""]
    length = 0
    for sign in line:
        octets = len(sign.encode())
        if length + octets > _LONGEST_LINE:
            parts.append(" ")
            length = 1
        parts[-1] += sign
        length += octets
    return "\r\n".join(parts)


def _written(day: datetime.date) -> str:
    """Return a date as RFC 5545 writes it; `strftime` leaves a year below 1000 too short."""
    return day.isoformat().replace("-", "")


def _pieces(text: str, length: int) -> list[str]:
    return [text[start : start + length] for start in range(0, len(text), length)]


def _uid(day: CalendarDay) -> str:
    told = "\x00".join((day.date.isoformat(), day.summary, day.about))
    return f"{hashlib.sha256(told.encode()).hexdigest()[:32]}@bendbook.invalid"

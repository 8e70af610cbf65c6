"""Clock times for either hand. Content is written for a right-hander; the left-hander's is computed."""

from __future__ import annotations

import re

CLOCK_TIME = re.compile(r"(?<![\d:.])(1[0-2]|[1-9]):([0-5]\d)(?![\d:])")

_RIGHT_HAND = re.compile(r"right-hand|diestr[oa]", re.IGNORECASE)
_LEFT_HAND = re.compile(r"left-hand|zurd[oa]", re.IGNORECASE)
_LENGTH_OF_TIME = re.compile(r"(more than|less than|within|by|spread of|\u00b1)\s*$", re.IGNORECASE)


def other_hand(clock: str) -> str:
    """Return the clock time of the mirror image: 12:00 minus `clock`, both as h:mm."""
    hours, minutes = clock.split(":")
    mirrored = (12 * 60 - int(hours) * 60 - int(minutes)) % (12 * 60)
    return f"{mirrored // 60 or 12}:{mirrored % 60:02d}"


def for_either_hand(right: str, left: str, left_hander: str) -> str:
    """Return HTML that shows `right` or `left`, by the reader's choice of hand.

    left_hander: the word that goes before `left` where both are read, without style sheet or script.
    """
    if right == left:
        return right
    return (
        f'<span class="for-right">{right}</span><span class="hand-gap"> ({left_hander} </span>'
        f'<span class="for-left">{left}</span><span class="hand-gap">)</span>'
    )


def names_right_hand(text: str) -> bool:
    """True where a text says that it speaks of a right-hander."""
    return _RIGHT_HAND.search(text) is not None


def names_left_hand(text: str) -> bool:
    """True where a text says that it speaks of a left-hander."""
    return _LEFT_HAND.search(text) is not None


def is_length_of_time(before: str) -> bool:
    """True where the words before a time make it a length, such as "within 0:30", not a direction."""
    return _LENGTH_OF_TIME.search(before) is not None

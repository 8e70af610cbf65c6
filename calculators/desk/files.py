"""Files at the desk: one the reader picks, whose bytes travel as text, and one an answer hands out."""

from __future__ import annotations

import base64
import binascii
from collections.abc import Callable
from dataclasses import dataclass

from calculators.words import Catalogue, Message, say

EXAMPLE = "example"
"""What a file field sends until a file is picked: the handbook's own made-up file is meant."""

MOST_BYTES = 20_000_000
"""The largest file taken; a league of 5,000 with 100,000 outings is about a fifth of it."""


@dataclass(frozen=True)
class FileField:
    """A file on the reader's own device. Its bytes are read in the browser and go nowhere else."""

    name: str
    label: Message
    accept: str = ".csv,.txt,text/csv"
    optional: bool = False
    help: Message | None = None

    def read(self, text: str) -> bytes | str | Message | None:
        """Return the file's bytes, `EXAMPLE`, None for an allowed blank, or the message that mends.

        text: what `as_typed` makes of the bytes, which is also what a browser's FileReader makes of them.
        """
        if text == EXAMPLE:
            return EXAMPLE
        if text == "":
            return None if self.optional else say("Choose a file.")
        head, comma, encoded = text.partition(",")
        if not comma or not head.startswith("data:") or not head.endswith(";base64"):
            return say("Choose the file again.")
        if len(encoded) > MOST_BYTES * 4 // 3:
            return say("This file is too large. Save only the sheet with the table.")
        try:
            return base64.b64decode(encoded, validate=True)
        except binascii.Error:
            return say("Choose the file again.")


def as_typed(data: bytes) -> str:
    """Return a file's bytes as the text that a page sends for them."""
    return "data:;base64," + base64.b64encode(data).decode("ascii")


@dataclass(frozen=True)
class OutFile:
    """A file that goes with an answer.

    name: with its ending. label: what the link to it says. write: makes its text in a language.
    """

    name: str
    type: str
    label: Message
    write: Callable[[Catalogue], str]

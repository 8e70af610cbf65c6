"""The hand-outs there are: what each is called, whom it is for, and the files made of it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from calculators.words import Message, say

Paper = Literal["letter", "a4"]
PAPERS: Mapping[Paper, Message] = {"letter": say("Letter"), "a4": say("A4")}

CARDS = ("grips", "cues", "drills")
"""Hand-outs with a card for each entry of a kind."""

NOT_KEPT_OFFLINE = ("bag", *CARDS)
"""Hand-outs too heavy to keep on every phone."""


@dataclass(frozen=True)
class HandOut:
    """One hand-out. handed: true where a left-hander's differs. large: true where there is a large print."""

    title: Message
    about: Message
    handed: bool = False
    large: bool = True


HAND_OUTS: Mapping[str, HandOut] = {
    "bag": HandOut(
        say("The bag set"),
        say("Everything below in one file, for a team's bag. Codes lead to the live pages."),
        handed=True,
        large=False,
    ),
    "stop": HandOut(
        say("Stop cards"), say("When to stop a pitcher, and when to call for help. Four to a sheet.")
    ),
    "rest": HandOut(
        say("Rest table"), say("Daily limits and rest, for the dugout wall and as pocket cards.")
    ),
    "pitch-count": HandOut(
        say("Pitch-count sheets"), say("Numbers to cross off with a pencil, one sheet an age group.")
    ),
    "session": HandOut(
        say("Session sheet"), say("A blank sheet for one practice: first ask, then throws, then a verdict.")
    ),
    "parents": HandOut(
        say("Parents' sheet"), say("What a child is learning, how much is allowed, what to watch for.")
    ),
    "grips": HandOut(say("Grip cards"), say("One grip a card, four to a sheet."), handed=True),
    "cues": HandOut(say("Cue cards"), say("What to say, when, and when to stop saying it. Four to a sheet.")),
    "drills": HandOut(say("Drill cards"), say("Set up, do, go on or go back. Four to a sheet.")),
}
"""Its part of the address to a hand-out, in the order in which they are listed."""


@dataclass(frozen=True)
class PdfFile:
    """One file made of a hand-out: for which hand, in which print, on which paper."""

    hand_out: str
    paper: Paper
    left: bool = False
    large: bool = False

    @property
    def name(self) -> str:
        """The file's name, such as grips-left-letter.pdf."""
        parts = (self.hand_out, "left" if self.left else "", "large" if self.large else "", self.paper)
        return "-".join(part for part in parts if part) + ".pdf"

    @property
    def label(self) -> Message:
        """What a link to it is called."""
        paper = PAPERS[self.paper]
        if self.left:
            return say("PDF for left-handers, {paper}", paper=paper)
        if self.large:
            return say("PDF in large print, {paper}", paper=paper)
        return say("PDF, {paper}", paper=paper)


def files_of(hand_out: str, papers: tuple[Paper, ...] = ("letter", "a4")) -> Iterator[PdfFile]:
    """Yield every file there may be of a hand-out."""
    kind = HAND_OUTS[hand_out]
    for paper in papers:
        yield PdfFile(hand_out, paper)
        if kind.handed:
            yield PdfFile(hand_out, paper, left=True)
        if kind.large:
            yield PdfFile(hand_out, paper, large=True)

"""What a calculator gives back: an answer as data. A renderer makes it HTML or text, nothing else does."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from calculators.desk.drawing import Drawing
from calculators.desk.fields import Field, Problem, Raw, Values
from calculators.desk.files import OutFile
from calculators.words import Message, say


@dataclass(frozen=True)
class Fact:
    """One line of the answer: a label, a value already in its unit, and the give or take of it.

    address: of a page elsewhere that the value names.
    """

    label: Message
    value: Message
    give_or_take: Message | None = None
    note: Message | None = None
    address: str | None = None


NOTHING = say("–")
"""A cell with nothing in it; where cells are stacked on a narrow page it is left out."""


@dataclass(frozen=True)
class Table:
    """Rows and columns: a caption, column heads, and rows whose first cell heads the row.

    sheet: set for a table that somebody wants on a sheet of paper of its own.
    stacked: set for a table whose cells are too long to stand side by side on a phone.
    """

    caption: Message
    heads: tuple[Message, ...]
    rows: tuple[tuple[Message, ...], ...]
    sheet: bool = False
    stacked: bool = False


@dataclass(frozen=True)
class HowSure:
    """How far to trust the answer: one sentence, then what drives the doubt, largest first."""

    sentence: Message
    causes: tuple[Message, ...] = ()


@dataclass(frozen=True)
class Answer:
    """A complete answer.

    headline: the answer as a sentence a coach would say.
    more: further sentences, in reading order.
    stop: set where the answer is to stop and see someone; then nothing else is shown but `more`.
    facts, tables, drawings: the numbers behind it, after the sentence.
    read_on: pages of the handbook that the answer speaks of, such as "cues/window-blind"; see `Shelf.title`.
    sources: ids in content/sources.yml.
    files: files to hand out, such as a calendar.
    live: what is called out beside the counter of a game that is going on.
    """

    headline: Message
    more: tuple[Message, ...] = ()
    stop: bool = False
    drawings: tuple[Drawing, ...] = ()
    facts: tuple[Fact, ...] = ()
    tables: tuple[Table, ...] = ()
    how_sure: HowSure | None = None
    cannot_tell: tuple[Message, ...] = ()
    cautions: tuple[Message, ...] = ()
    read_on: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    files: tuple[OutFile, ...] = ()
    live: tuple[Message, ...] = ()


@dataclass(frozen=True)
class Shelf:
    """Content a calculator may need, as plain data by slug."""

    rules: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    shapes: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    cues: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    slots: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    roles: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    profiles: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    drills: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    stages: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    """Stages of learning, in order."""
    sources: Mapping[str, str] = field(default_factory=dict)
    """Source id to its short name, such as "Dun 2008"."""
    demo: Mapping[str, str] = field(default_factory=dict)
    """Name of a made-up file, such as "league-roster.csv", to its text."""
    edition: Mapping[str, Any] = field(default_factory=dict)
    """A league's own edition: its name, the rule set that binds, its divisions. Empty in the handbook itself."""

    def title(self, address: str) -> str | None:
        """Return the title of the cue, drill or shape at an address such as "cues/window-blind"; None for no such page."""
        kind, _, slug = address.partition("/")
        pages = {"cues": self.cues, "drills": self.drills, "shapes": self.shapes}.get(kind, {})
        return str(pages[slug]["title"]) if slug in pages else None


Outcome = Answer | tuple[Problem, ...]

Tool = Literal["counter", "log", "print", "record", "photo", "throws"]
"""counter: counts a game that is going on; log: keeps the form on the device; print: prints the answer;
record: keeps the pitcher's file in the browser; photo: measures the arm on a photo; throws: writes
throws into the sheet one by one."""


@dataclass(frozen=True)
class FieldGroup:
    """Fields that belong together under one heading; a closed group is opened with a tap.

    paired: set for short fields, two of which stand side by side.
    """

    label: Message
    names: tuple[str, ...]
    open: bool = True
    paired: bool = False


@dataclass(frozen=True)
class Calculator:
    """One calculator: its questions, a worked example, and the work.

    name: its slug, which is its page's address.
    fields: given the shelf, the questions in order (rule sets and shapes fill some choices).
    example: what the form holds before anyone types; `work_out` must answer it.
    work_out: values read without a problem -> an answer, or problems that involve several fields.
    common_cases: tables worked out at build time that answer the usual questions on paper.
    groups: how the form is laid out; fields in no group come first, in order.
    stops_first: looks at what was typed before any field is read; an answer from it ends the matter.
    tools: pieces of the page beside the form that this calculator uses.
    """

    name: str
    title: Message
    fields: Callable[[Shelf], tuple[Field, ...]]
    example: Raw
    work_out: Callable[[Values, Shelf], Outcome]
    common_cases: Callable[[Shelf], tuple[Table, ...]]
    groups: tuple[FieldGroup, ...] = ()
    stops_first: Callable[[Raw, Shelf], Answer | None] | None = None
    tools: tuple[Tool, ...] = ()

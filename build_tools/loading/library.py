"""The library: everything the handbook says, checked and joined, ready to be written as pages."""

from __future__ import annotations

import datetime
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, cast

from build_tools.checks.content import check
from build_tools.checks.holds import check_holds
from build_tools.checks.names import namings
from build_tools.checks.rules import check_rules
from build_tools.editions.hiding import without
from build_tools.editions.league import League
from build_tools.editions.opening import EDITIONS, Opened, open_edition
from build_tools.editions.overlay import KEPT
from build_tools.loading.days import check_next, check_past
from build_tools.loading.edition_folder import check_address, check_name, unread
from build_tools.loading.mistakes import ContentError, Mistake
from build_tools.loading.reading import Loaded, Reading, read_content
from build_tools.places import THE_HANDBOOK, Wanted
from build_tools.schema.coaching import Cue, Drill, Fault, Plan
from build_tools.schema.grip import Grip
from build_tools.schema.guide import CalculatorWords, Guide
from build_tools.schema.kinds import ENTRY_KINDS
from build_tools.schema.lists import AgeGate, Profile, Role, Slot, Source, Stage, Term
from build_tools.schema.rules import RuleSet
from build_tools.schema.shape import Shape


@dataclass(frozen=True)
class Mention:
    """One entry naming another: who names it, and in which field."""

    address: str
    field: str


@dataclass(frozen=True)
class Library:
    """All content by kind and slug, in the order it is listed, and who names whom.

    kinds: "grips", "shapes", ... and the lists "slots", "glossary", ... each by slug.
    variants: language to kind/slug to the entry in that language.
    mentions: kind/slug to everything that names it.
    calculators: the names of the calculators.
    opened: the league's edition this is, if it is one. remarks: for whoever builds it.
    demo: the made-up files of content/demo, name to text.
    """

    kinds: Mapping[str, Mapping[str, Loaded[Any]]]
    variants: Mapping[str, Mapping[str, Loaded[Any]]]
    calculators: tuple[str, ...]
    mentions: Mapping[str, tuple[Mention, ...]] = field(default_factory=dict)
    opened: Opened | None = None
    remarks: tuple[str, ...] = ()
    demo: Mapping[str, str] = field(default_factory=dict)

    @property
    def league(self) -> League | None:
        """The league whose edition this is; None in the handbook itself."""
        if self.opened is None:
            return None
        return cast(League, self.kinds[EDITIONS][self.opened.league.slug].model)

    @property
    def grips(self) -> Mapping[str, Loaded[Grip]]:
        """Grips by slug."""
        return cast(Mapping[str, Loaded[Grip]], self.kinds["grips"])

    @property
    def shapes(self) -> Mapping[str, Loaded[Shape]]:
        """Shapes by slug."""
        return cast(Mapping[str, Loaded[Shape]], self.kinds["shapes"])

    @property
    def cues(self) -> Mapping[str, Loaded[Cue]]:
        """Cues by slug."""
        return cast(Mapping[str, Loaded[Cue]], self.kinds["cues"])

    @property
    def drills(self) -> Mapping[str, Loaded[Drill]]:
        """Drills by slug."""
        return cast(Mapping[str, Loaded[Drill]], self.kinds["drills"])

    @property
    def faults(self) -> Mapping[str, Loaded[Fault]]:
        """Faults by slug."""
        return cast(Mapping[str, Loaded[Fault]], self.kinds["faults"])

    @property
    def plans(self) -> Mapping[str, Loaded[Plan]]:
        """Plans by slug."""
        return cast(Mapping[str, Loaded[Plan]], self.kinds["plans"])

    @property
    def guide(self) -> Mapping[str, Loaded[Guide]]:
        """Guide pages by slug."""
        return cast(Mapping[str, Loaded[Guide]], self.kinds["guide"])

    @property
    def calculator_words(self) -> Mapping[str, Loaded[CalculatorWords]]:
        """The words beside the calculators, by the calculator's name."""
        return cast(Mapping[str, Loaded[CalculatorWords]], self.kinds["calculators"])

    @property
    def slots(self) -> Mapping[str, Loaded[Slot]]:
        """Arm slots by slug."""
        return cast(Mapping[str, Loaded[Slot]], self.kinds["slots"])

    @property
    def roles(self) -> Mapping[str, Loaded[Role]]:
        """Roles of a breaking ball by slug."""
        return cast(Mapping[str, Loaded[Role]], self.kinds["roles"])

    @property
    def profiles(self) -> Mapping[str, Loaded[Profile]]:
        """Starting profiles by slug."""
        return cast(Mapping[str, Loaded[Profile]], self.kinds["profiles"])

    @property
    def stages(self) -> Mapping[str, Loaded[Stage]]:
        """Stages of learning by slug, in order."""
        return cast(Mapping[str, Loaded[Stage]], self.kinds["stages"])

    @property
    def age_gates(self) -> Mapping[str, Loaded[AgeGate]]:
        """Age gates by slug, youngest first as written."""
        return cast(Mapping[str, Loaded[AgeGate]], self.kinds["age_gates"])

    @property
    def glossary(self) -> Mapping[str, Loaded[Term]]:
        """Terms by slug."""
        return cast(Mapping[str, Loaded[Term]], self.kinds["glossary"])

    @property
    def sources(self) -> Mapping[str, Loaded[Source]]:
        """Sources by id."""
        return cast(Mapping[str, Loaded[Source]], self.kinds["sources"])

    @property
    def rules(self) -> Mapping[str, Loaded[RuleSet]]:
        """Rule sets by slug."""
        return cast(Mapping[str, Loaded[RuleSet]], self.kinds["rules"])

    def get(self, address: str) -> Loaded[Any]:
        """Return what stands at kind/slug."""
        kind, _, slug = address.partition("/")
        return self.kinds[kind][slug]

    def in_order(self, kind: str, slugs: Iterable[str]) -> tuple[Loaded[Any], ...]:
        """Return the entries of one kind that are named by `slugs`, in that order."""
        return tuple(self.kinds[kind][slug] for slug in slugs)

    def naming(self, address: str, kind: str, field: str | None = None) -> tuple[Loaded[Any], ...]:
        """Return the entries of one kind that name `address`, in the order of their kind.

        field: where given, only those that name it in this field ("body" for the text below).
        """
        found = {
            mention.address
            for mention in self.mentions.get(address, ())
            if mention.address.startswith(f"{kind}/") and field in (None, mention.field)
        }
        return tuple(one for one in self.kinds[kind].values() if one.address in found)

    def in_language(self, language: str) -> Library:
        """Return the library with every entry that exists in `language` in that language."""
        here = self.variants.get(language, {})
        kinds = {
            kind: {slug: here.get(loaded.address, loaded) for slug, loaded in entries.items()}
            for kind, entries in self.kinds.items()
        }
        return replace(self, kinds=kinds)


def load(root: Path, calculators: Collection[str], wanted: Wanted = THE_HANDBOOK) -> Library:
    """Read, check and join the content folder.

    root: the content folder.
    calculators: the names of the calculators that links may lead to.
    wanted: which edition, and whether with drafts.
    Raises ContentError with every mistake found.
    """
    today = wanted.today or datetime.date.today()
    reading = read_content(root)
    opened = None
    hidden: frozenset[str] = frozenset()
    if wanted.edition is not None:
        if misnamed := list(check_name(root, root / EDITIONS / wanted.edition)):
            raise ContentError(misnamed)
        opened = open_edition(wanted.edition, reading, today)
        reading, hidden = opened.whole, opened.hidden
    found = (
        reading.mistakes,
        check(reading, calculators),
        check_rules(reading),
        check_holds(reading),
        check_past(reading, max(today, datetime.date.today())),
        check_next(opened.league, reading, today) if opened else (),
        check_address(reading, opened.league) if opened else (),
        _needed_drafts(reading, wanted),
        [opened.overdue] if opened and opened.overdue and not wanted.allow_overdue else (),
    )
    mistakes = [mistake for some in found for mistake in some]
    if mistakes:
        raise ContentError(mistakes)
    drafts = () if wanted.drafts else _drafts(reading)
    left, spoken = without(reading, {*hidden, *drafts}, _titles(reading, calculators))
    return Library(
        left.kinds,
        left.variants,
        tuple(name for name in calculators if f"calculators/{name}" not in hidden),
        _mentions(left),
        opened,
        (*_remarks(reading, opened), *spoken),
        {path.name: path.read_text("utf-8") for path in sorted((root / "demo").glob("*.csv"))},
    )


def _remarks(reading: Reading, opened: Opened | None) -> Iterator[str]:
    if opened is not None:
        yield from opened.remarks
        yield from unread(reading, opened.league.path.parent)


def _drafts(reading: Reading) -> Iterator[str]:
    for kind in ENTRY_KINDS:
        yield from (one.address for one in reading.kinds[kind].values() if one.model.draft)


def _needed_drafts(reading: Reading, wanted: Wanted) -> Iterator[Mistake]:
    """A page that others rest on cannot be kept back as a draft."""
    for address in () if wanted.drafts else KEPT.intersection(_drafts(reading)):
        kind, _, slug = address.partition("/")
        loaded = reading.kinds[kind][slug]
        line = loaded.line(("draft",))
        yield Mistake(reading.told(loaded.path), line, "draft", "false; other pages rest on it", "true")


def _titles(reading: Reading, calculators: Collection[str]) -> dict[str, str]:
    """Return address to the words that stand for a link to it where it is left out."""
    titles = {f"calculators/{name}": name.replace("-", " ") for name in calculators}
    for kind in (*ENTRY_KINDS, "rules"):
        titles |= {one.address: one.model.title for one in reading.kinds[kind].values()}
    return titles


def _mentions(reading: Reading) -> dict[str, tuple[Mention, ...]]:
    found: dict[str, dict[Mention, None]] = {}
    for entries in reading.kinds.values():
        for loaded in entries.values():
            for naming in namings(loaded):
                if naming.address != loaded.address:
                    found.setdefault(naming.address, {})[Mention(loaded.address, naming.field)] = None
    return {address: tuple(mentions) for address, mentions in found.items()}

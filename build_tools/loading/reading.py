"""Reading the content folder: every file through YAML and the schema, every mistake kept."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Generic, TypeVar

from pydantic import BaseModel, ValidationError

from build_tools.loading.explain import explain
from build_tools.loading.front_matter import NoFrontMatterError, cut
from build_tools.loading.marked_yaml import MarkedData, YamlError, read_yaml
from build_tools.loading.markup import NO_SCRIPTS, unsafe, words_in
from build_tools.loading.mistakes import Location, Mistake, field_name
from build_tools.loading.slugs import slug_of
from build_tools.schema.common import SLUG, Entry, Strict
from build_tools.schema.kinds import ENTRY_KINDS, LIST_FILES, LISTS, RULE_SET
from build_tools.schema.lists import SOURCE_ID

M = TypeVar("M", bound=BaseModel, covariant=True)
V = TypeVar("V", bound=BaseModel)

_ENTRY_FILE = re.compile(r"([^.]+)(?:\.([a-z]{2}))?\.md")


@dataclass(frozen=True)
class Loaded(Generic[M]):
    """One entry, line of a list or rule set, and where it was written.

    model: what the schema made of it.
    body: the Markdown below the front matter; empty for lists and rule sets.
    inside: where the model starts inside its file, for lists.
    """

    kind: str
    slug: str
    model: M
    path: Path
    data: MarkedData
    body: str = ""
    body_line: int = 1
    inside: Location = ()

    @property
    def address(self) -> str:
        """Its name anywhere in the handbook, as kind/slug."""
        return f"{self.kind}/{self.slug}"

    def line(self, location: Location) -> int:
        """Return the line of a field, given the way to it inside the model."""
        return self.data.line((*self.inside, *location))


@dataclass
class Reading:
    """Everything read so far. `known` also holds the names of entries that have mistakes.

    under: where this is an edition's own content, the reading it is laid over.
    """

    root: Path
    under: Reading | None = None
    kinds: dict[str, dict[str, Loaded[Any]]] = field(default_factory=dict)
    variants: dict[str, dict[str, Loaded[Any]]] = field(default_factory=dict)
    known: dict[str, set[str]] = field(default_factory=dict)
    mistakes: list[Mistake] = field(default_factory=list)

    def everything(self) -> Iterable[Loaded[Any]]:
        """Every model read, variants in other languages included."""
        for of_one_kind in (*self.kinds.values(), *self.variants.values()):
            yield from of_one_kind.values()

    def told(self, path: Path) -> Path:
        """Return a path as a mistake shows it: from the content folder on."""
        top = self.root if self.under is None else self.under.root
        return Path(top.name) / path.relative_to(top)

    def is_known(self, kind: str, slug: str) -> bool:
        """True where an entry of this name stands here or in what this is laid over."""
        here = slug in self.known.get(kind, ())
        return here or (self.under is not None and self.under.is_known(kind, slug))


def read_content(root: Path) -> Reading:
    """Read every file of the content folder. Nothing is raised: mistakes are collected."""
    return read_into(Reading(root))


def read_into(reading: Reading) -> Reading:
    """Read every file of the reading's own folder; an edition's need not hold every list."""
    for kind, entry_model in ENTRY_KINDS.items():
        _read_entries(reading, kind, entry_model)
    for name, list_model in LISTS.items():
        _read_list(reading, name, list_model)
    _read_rules(reading)
    return reading


def _read_entries(reading: Reading, kind: str, model: type[Entry]) -> None:
    entries: dict[str, Loaded[Any]] = {}
    known = reading.known.setdefault(kind, set())
    languages: list[tuple[str, str, Path]] = []
    for path in sorted((reading.root / kind).glob("*")):
        if path.name.startswith("."):
            continue
        name = _ENTRY_FILE.fullmatch(path.name)
        if name is None or not SLUG.fullmatch(name[1]):
            expected = "a file named in plain lower-case words joined by hyphens, like basic-downer.md"
            near = f"{slug_of(path.stem)}.md" if slug_of(path.stem) else None
            reading.mistakes.append(Mistake(reading.told(path), 1, "", expected, f'"{path.name}"', near))
        elif name[2]:
            languages.append((name[1], name[2], path))
        else:
            known.add(name[1])
            loaded = _read_entry(reading, kind, name[1], model, path)
            if loaded is not None:
                entries[name[1]] = loaded
    in_order = sorted(entries.values(), key=lambda one: (one.model.order, one.model.title))
    reading.kinds[kind] = {loaded.slug: loaded for loaded in in_order}
    for slug, language, path in languages:
        if not reading.is_known(kind, slug):
            expected = f"an English entry {slug}.md for this one to stand in for"
            reading.mistakes.append(Mistake(reading.told(path), 1, "", expected))
        loaded = _read_entry(reading, kind, slug, model, path)
        if loaded is not None:
            reading.variants.setdefault(language, {})[loaded.address] = loaded


def _read_entry(
    reading: Reading, kind: str, slug: str, model: type[Entry], path: Path
) -> Loaded[Entry] | None:
    text = _read_text(reading, path)
    if text is None:
        return None
    try:
        halves = cut(text)
    except NoFrontMatterError as error:
        reading.mistakes.append(Mistake(reading.told(path), error.line, "", error.expected))
        return None
    data = _read_yaml(reading, path, halves.front, halves.front_line)
    if data is None:
        return None
    entry = _validate(reading, path, data, model, data.value, ())
    for down, found in unsafe(halves.body):
        line = halves.body_line + down
        reading.mistakes.append(Mistake(reading.told(path), line, "body", NO_SCRIPTS, f'"{found}"'))
    return None if entry is None else Loaded(kind, slug, entry, path, data, halves.body, halves.body_line)


def _read_list(reading: Reading, name: str, model: type[Strict]) -> None:
    path = reading.root / LIST_FILES[name]
    lines: dict[str, Loaded[Any]] = {}
    reading.kinds[name] = lines
    if not path.is_file():
        if reading.under is not None:
            return
        reading.mistakes.append(Mistake(reading.told(path), 1, "", "this file", "nothing"))
        return
    text = _read_text(reading, path)
    data = _read_yaml(reading, path, text, 1) if text is not None else None
    if data is None:
        return
    known = reading.known.setdefault(name, set())
    if not isinstance(data.value, dict):
        expected = "a name, a colon, then its fields further in"
        reading.mistakes.append(Mistake(reading.told(path), 1, "", expected))
        return
    allowed = SOURCE_ID if name == "sources" else SLUG
    for slug, value in data.value.items():
        known.add(slug)
        if not allowed.fullmatch(slug):
            expected = "a name in lower-case words joined by hyphens"
            line = data.line((slug,))
            reading.mistakes.append(Mistake(reading.told(path), line, slug, expected, f'"{slug}"'))
        model_read = _validate(reading, path, data, model, value, (slug,))
        if model_read is not None:
            lines[slug] = Loaded(name, slug, model_read, path, data, inside=(slug,))


def _read_rules(reading: Reading) -> None:
    rules: dict[str, Loaded[Any]] = {}
    reading.kinds["rules"] = rules
    known = reading.known.setdefault("rules", set())
    for path in sorted((reading.root / "rules").glob("*")):
        if path.suffix != ".yml":
            if path.suffix.lower() in (".yml", ".yaml"):
                expected = f"a file whose name ends in .yml; rename it to {path.stem}.yml"
                reading.mistakes.append(Mistake(reading.told(path), 1, "", expected, f'"{path.name}"'))
            continue
        slug = path.stem
        known.add(slug)
        if not SOURCE_ID.fullmatch(slug):
            expected = "a file named in plain lower-case words joined by hyphens, like little-league.yml"
            reading.mistakes.append(Mistake(reading.told(path), 1, "", expected, f'"{path.name}"'))
        rule_set = read_one(reading, "rules", slug, RULE_SET, path)
        if rule_set is not None:
            rules[slug] = rule_set


def read_one(reading: Reading, kind: str, slug: str, model: type[V], path: Path) -> Loaded[V] | None:
    """Read a YAML file that holds one thing; None, and mistakes in the reading, where it cannot be read."""
    text = _read_text(reading, path)
    data = _read_yaml(reading, path, text, 1) if text is not None else None
    if data is None:
        return None
    found = _validate(reading, path, data, model, data.value, ())
    return None if found is None else Loaded(kind, slug, found, path, data)


def _read_text(reading: Reading, path: Path) -> str | None:
    if path.is_dir():
        expected = "a file of this name; rename the folder, or take it out"
        reading.mistakes.append(Mistake(reading.told(path), 1, "", expected, "a folder"))
        return None
    try:
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError as error:
        line = path.read_bytes()[: error.start].count(b"\n") + 1
        expected = "text saved as UTF-8; a letter here is saved in another way"
        reading.mistakes.append(Mistake(reading.told(path), line, "", expected))
        return None


def _read_yaml(reading: Reading, path: Path, text: str, first_line: int) -> MarkedData | None:
    try:
        return read_yaml(text, first_line)
    except YamlError as error:
        for fault in error.faults:
            where = field_name(fault.location)
            reading.mistakes.append(
                Mistake(reading.told(path), fault.line, where, fault.expected, fault.found)
            )
        return None


def _validate(
    reading: Reading, path: Path, data: MarkedData, model: type[V], value: object, inside: Location
) -> V | None:
    if not isinstance(value, Mapping):
        expected = "a set of fields, one a line: a name, a colon, the value"
        line = data.line(inside)
        reading.mistakes.append(Mistake(reading.told(path), line, field_name(inside), expected))
        return None
    try:
        found = model.model_validate(value)
    except ValidationError as error:
        for location, expected, written, near in explain(error, model):
            whole = (*inside, *location)
            reading.mistakes.append(
                Mistake(reading.told(path), data.line(whole), field_name(whole), expected, written, near)
            )
        return None
    for location, words in words_in(value, inside):
        line, where = data.line(location), field_name(location)
        for _, written in unsafe(words):
            reading.mistakes.append(Mistake(reading.told(path), line, where, NO_SCRIPTS, f'"{written}"'))
    return found

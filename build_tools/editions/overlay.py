"""What an edition adds to the handbook and replaces in it, laid over what the handbook says."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from build_tools.checks.content import NEEDED
from build_tools.editions.league import League
from build_tools.loading.mistakes import Location, Mistake, field_name, nearest_name
from build_tools.loading.reading import Loaded, Reading, read_into
from build_tools.schema.kinds import ENTRY_KINDS, LIST_FILES

JOINT_GUIDELINE = "rules/usa-joint-2015"
KEPT = frozenset({*NEEDED, "calculators/pitch-count", JOINT_GUIDELINE})
"""What no edition may leave out: other pages, and every pitcher's arm, rest on it."""

EDITION_FILE = "edition.yml"
_FOLDERS = (*ENTRY_KINDS, "rules", "lists", "history")
_FILES = (EDITION_FILE, *(name for name in LIST_FILES.values() if "/" not in name))
_OTHER_FILES = re.compile(r"(?i).+\.(svg|png)|readme.*|\..*")


def read_overlay(folder: Path, under: Reading) -> Reading:
    """Read an edition's own entries, lists and rule sets.

    folder: the edition's folder. under: what they are laid over.
    """
    overlay = Reading(folder, under)
    overlay.mistakes += _strange_files(overlay)
    if not any(path.is_symlink() for path in folder.rglob("*")):
        read_into(overlay)
    return overlay


def laid_over(under: Reading, overlay: Reading, league: Loaded[League]) -> tuple[Reading, tuple[str, ...]]:
    """Return the handbook with an edition's own content in it, and remarks for its makers.

    Mistakes of the edition are added to the reading's; `hides` is checked here and done later.
    """
    whole = Reading(under.root)
    whole.mistakes = [
        *under.mistakes,
        *overlay.mistakes,
        *_replacing(under, overlay, league),
        *_hiding(under, overlay, league),
    ]
    for kind, below in under.kinds.items():
        above = overlay.kinds.get(kind, {})
        whole.kinds[kind] = _in_order(kind, {**below, **above})
        whole.known[kind] = under.known.get(kind, set()) | overlay.known.get(kind, set())
    for kind in under.known.keys() - whole.known.keys():
        whole.known[kind] = under.known[kind]
    replaced = {loaded.address for entries in overlay.kinds.values() for loaded in entries.values()}
    for language in {*under.variants, *overlay.variants}:
        below = under.variants.get(language, {})
        stay = {address: loaded for address, loaded in below.items() if address not in replaced}
        whole.variants[language] = {**stay, **overlay.variants.get(language, {})}
    return whole, tuple(_outrun(under, overlay, league))


def _in_order(kind: str, entries: Mapping[str, Loaded[Any]]) -> dict[str, Loaded[Any]]:
    if kind not in ENTRY_KINDS:
        return dict(entries)
    in_order = sorted(entries.values(), key=lambda one: (one.model.order, one.model.title))
    return {loaded.slug: loaded for loaded in in_order}


def _replacing(under: Reading, overlay: Reading, league: Loaded[League]) -> Iterator[Mistake]:
    said = league.model.replaces
    for index, address in enumerate(said):
        kind, _, slug = address.partition("/")
        where: Location = ("replaces", index)
        if slug not in under.known.get(kind, ()):
            yield _gone(under, league, where, address)
        elif slug not in overlay.known.get(kind, ()):
            expected = f"a file for it in this edition, or this line taken out; {kind}/ has none named {slug}"
            yield _at(under, league, where, expected, f'"{address}"')
    for kind, slugs in overlay.known.items():
        for slug in sorted(slugs & under.known.get(kind, set())):
            if f"{kind}/{slug}" not in said:
                yield _unsaid(under, overlay, kind, slug)


def _unsaid(under: Reading, overlay: Reading, kind: str, slug: str) -> Mistake:
    loaded = overlay.kinds[kind].get(slug)
    path = overlay.root / LIST_FILES.get(kind, f"{kind}/{slug}.{'yml' if kind == 'rules' else 'md'}")
    expected = (
        f"a name the handbook does not have, or the line {kind}/{slug} under replaces in {EDITION_FILE}"
    )
    line = loaded.line(()) if loaded is not None and loaded.inside else 1
    return Mistake(under.told(path), line, "", expected, f'"{slug}"')


def _hiding(under: Reading, overlay: Reading, league: Loaded[League]) -> Iterator[Mistake]:
    for index, address in enumerate(league.model.hides):
        kind, _, slug = address.partition("/")
        where: Location = ("hides", index)
        found = f'"{address}"'
        if kind not in ENTRY_KINDS and kind != "rules":
            hidable = (*ENTRY_KINDS, "rules")
            expected = f"a name that starts with one of {', '.join(hidable)}"
            yield _at(under, league, where, expected, found, nearest_name(kind, hidable))
        elif slug in overlay.known.get(kind, ()):
            yield _at(
                under, league, where, "one of the two: hide it, or give it a file in this edition", found
            )
        elif slug not in under.known.get(kind, ()) and kind != "calculators":
            yield _gone(under, league, where, address)
        elif address in KEPT or address in _rested_on(under, overlay, league.model):
            yield _at(under, league, where, "this to stay; other pages or rules rest on it", found)


def _rested_on(under: Reading, overlay: Reading, league: League) -> set[str]:
    """Return the rule set that binds, and every one that another rule set makes stricter."""
    sets = (*under.kinds["rules"].values(), *overlay.kinds.get("rules", {}).values())
    return {f"rules/{slug}" for slug in (league.rules, *(one.model.extends for one in sets)) if slug}


def _gone(under: Reading, league: Loaded[League], where: Location, address: str) -> Mistake:
    """The edition names something that the handbook does not have, perhaps not any more."""
    kind, _, slug = address.partition("/")
    known = [f"{kind}/{one}" for one in under.known.get(kind, ())]
    known = known or [f"{one}/{slug}" for one in under.known if slug in under.known[one]]
    expected = "an entry the handbook has; it may have gone or got another name"
    return _at(under, league, where, expected, f'"{address}"', nearest_name(address, known))


def _at(
    under: Reading,
    league: Loaded[League],
    where: Location,
    expected: str,
    found: str = "",
    near: str | None = None,
) -> Mistake:
    return Mistake(under.told(league.path), league.line(where), field_name(where), expected, found, near)


def _outrun(under: Reading, overlay: Reading, league: Loaded[League]) -> Iterator[str]:
    """Say which of the handbook's entries were read through after the edition's own version of them."""
    for address in league.model.replaces:
        kind, _, slug = address.partition("/")
        below, above = under.kinds.get(kind, {}).get(slug), overlay.kinds.get(kind, {}).get(slug)
        if below is None or above is None or kind not in ENTRY_KINDS:
            continue
        if below.model.reviewed > above.model.reviewed:
            yield (
                f"{under.told(above.path)}: the handbook's own {address} was read through on "
                f"{below.model.reviewed}, after this one ({above.model.reviewed}). Compare the two."
            )


def _strange_files(overlay: Reading) -> Iterator[Mistake]:
    for path in sorted(overlay.root.rglob("*")):
        if path.is_symlink():
            yield Mistake(
                overlay.told(path), 1, "", "a file of its own, not a link to another place", "a link"
            )
    for kind in ENTRY_KINDS:
        for path in sorted((overlay.root / kind).glob("index.*")):
            expected = "another file name; index is the page that lists the others"
            yield Mistake(overlay.told(path), 1, "", expected, f'"{path.name}"', f"our-{kind}.md")
    for path in sorted(overlay.root.iterdir()):
        known = _FOLDERS if path.is_dir() else _FILES
        if path.name not in known and not (path.is_file() and _OTHER_FILES.fullmatch(path.name)):
            kind = "a folder" if path.is_dir() else "a file"
            expected = f"{kind} that an edition has: {', '.join(known)}"
            near = nearest_name(path.name, known)
            yield Mistake(overlay.told(path), 1, "", expected, f'"{path.name}"', near)

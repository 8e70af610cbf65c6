"""Opens an edition: its description, its content over the handbook's, and what it leaves out."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from build_tools.editions.checks import Checker
from build_tools.editions.league import YOUNGEST_FOR_A_BREAKING_BALL, League
from build_tools.editions.logo import Logo
from build_tools.editions.other_names import still_named
from build_tools.editions.overlay import EDITION_FILE, laid_over, read_overlay
from build_tools.loading.mistakes import ContentError, Mistake, nearest_name
from build_tools.loading.reading import Loaded, Reading, read_one
from build_tools.schema.coaching import Cue
from build_tools.schema.common import SLUG, Entry
from build_tools.schema.grip import Grip
from build_tools.schema.shape import Shape

EDITIONS = "editions"
"""Folder of content/ that holds one folder an edition."""

MOST_BYTES = 100_000
"""Bytes of an edition.yml; the longest so far has 3,000."""


@dataclass(frozen=True)
class Opened:
    """An edition and the handbook as it reads in it.

    hidden: addresses it leaves out. overdue: set where its rules were due for a check that did not come.
    remarks: for whoever builds it, a sentence each.
    """

    league: Loaded[League]
    whole: Reading
    hidden: frozenset[str]
    logo: Logo | None
    overdue: Mistake | None
    remarks: tuple[str, ...]


def edition_names(content: Path) -> tuple[str, ...]:
    """Return the names of the editions in a content folder."""
    return tuple(sorted(path.parent.name for path in (content / EDITIONS).glob(f"*/{EDITION_FILE}")))


def open_edition(name: str, handbook: Reading, today: datetime.date) -> Opened:
    """Open an edition by its name.

    handbook: everything read from the content folder. today: the day its rules must hold.
    Mistakes are added to those of the returned reading. Raises ContentError where there is no such edition,
    or where its description cannot be read.
    """
    league, whole, hidden, remarks = _opened(name, handbook, ())
    checker = Checker(whole, league, today)
    logo, bad_logo = checker.logo()
    whole.mistakes += [*checker.mistakes(), *bad_logo]
    if logo and logo.left_out:
        path = whole.told(league.path.parent / str(league.model.logo))
        remarks += (f"{path}: left out of the logo: {logo.left_out}.",)
    remarks += tuple(still_named(league.path.parent, _other_leagues(league, handbook), handbook))
    whole.kinds[EDITIONS] = {league.slug: league}
    return Opened(league, whole, hidden | above_age(whole, league.model), logo, checker.overdue(), remarks)


def _other_leagues(league: Loaded[League], handbook: Reading) -> frozenset[str]:
    """Return the names of the leagues beside this one, those it rests on left out."""
    found: set[str] = set()
    for name in set(edition_names(handbook.root)) - {league.slug, league.model.based_on}:
        try:
            other = _description(handbook.root / EDITIONS / name, handbook).model
        except ContentError:
            continue  # told where that edition is checked
        found |= {other.name, other.short_name}
    return frozenset(found - {league.model.name, league.model.short_name})


def above_age(whole: Reading, league: League) -> frozenset[str]:
    """Return the pages that no division of the league is old enough for, if it hides them."""
    if league.breaking_balls.pages_above_our_ages == "shown":
        return frozenset()
    return frozenset(address for address, age in _ages(whole, league) if age > league.oldest)


def _ages(whole: Reading, league: League) -> Iterator[tuple[str, int]]:
    """Yield each page and the age from which it is of use in this league."""
    for entries in whole.kinds.values():
        for loaded in entries.values():
            entry = loaded.model
            if not isinstance(entry, Entry) or (isinstance(entry, Cue) and entry.retired):
                continue  # a retired cue stands there so that nobody uses it
            youngest = int(getattr(entry, "youngest", 0))
            if _about_breaking_balls(entry):
                youngest = league.own_age(max(youngest, YOUNGEST_FOR_A_BREAKING_BALL))
            yield loaded.address, youngest


def _about_breaking_balls(entry: Entry) -> bool:
    if isinstance(entry, Grip):
        return entry.family in ("curve", "slider")
    if isinstance(entry, Shape):
        return not entry.reference
    return int(getattr(entry, "youngest", 0)) >= YOUNGEST_FOR_A_BREAKING_BALL


Layers = tuple[Loaded[League], Reading, frozenset[str], tuple[str, ...]]


def _opened(name: str, handbook: Reading, above: tuple[str, ...]) -> Layers:
    folder = handbook.root / EDITIONS / name
    if not SLUG.fullmatch(name) or not (folder / EDITION_FILE).is_file():
        raise ContentError([_no_such_edition(name, handbook, above)])
    league = _description(folder, handbook)
    under: Reading = handbook
    hidden: frozenset[str] = frozenset()
    remarks: tuple[str, ...] = ()
    base = league.model.based_on
    if base is not None:
        if base in (*above, name):
            expected = "an edition that does not rest on this one in its turn"
            where = handbook.told(league.path)
            raise ContentError(
                [Mistake(where, league.line(("based_on",)), "based_on", expected, f'"{base}"')]
            )
        _, under, hidden, remarks = _opened(base, handbook, (*above, name))
    overlay = read_overlay(folder, under)
    whole, more = laid_over(under, overlay, league)
    own = {f"{kind}/{slug}" for kind, slugs in overlay.known.items() for slug in slugs}
    return league, whole, (hidden - own) | frozenset(league.model.hides), (*remarks, *more)


def _description(folder: Path, handbook: Reading) -> Loaded[League]:
    path = folder / EDITION_FILE
    reading = Reading(handbook.root)
    if path.is_symlink():
        raise ContentError([Mistake(handbook.told(path), 1, "", "a file of its own, not a link", "a link")])
    if path.stat().st_size > MOST_BYTES:
        expected = f"at most {MOST_BYTES // 1000} kB"
        found = f"{path.stat().st_size // 1000} kB"
        raise ContentError([Mistake(handbook.told(path), 1, "", expected, found)])
    league = read_one(reading, EDITIONS, folder.name, League, path)
    if league is None:
        raise ContentError(reading.mistakes)
    return league


def _no_such_edition(name: str, handbook: Reading, above: tuple[str, ...]) -> Mistake:
    names = edition_names(handbook.root)
    there = ", ".join(names) if names else "none yet; start one with: python -m build_tools new-edition"
    path = Path(handbook.root.name) / EDITIONS
    expected = f"one of the editions there are ({there})"
    if above:
        path = path / above[-1] / EDITION_FILE
    return Mistake(path, 1, "based_on" if above else "", expected, f'"{name}"', nearest_name(name, names))

"""The pages only an edition has, and what its look needs: the league's page, its style and its frame."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from build_tools.editions.league import Division, League
from build_tools.editions.schemes import SCHEMES, style
from build_tools.generate.shelf import shelves
from build_tools.generate.writer import Edition, Page, Writer
from build_tools.hand_outs.pencil import within_the_limit
from build_tools.loading.library import Library
from build_tools.loading.reading import Loaded
from build_tools.schema.kinds import ENTRY_KINDS
from calculators.desk.pitch_count_tables import rest_table
from calculators.desk.render_html import table_html
from calculators.words import say
from calculators.workload.library import rule_set
from calculators.workload.rules import RuleSet

STYLE = "assets/edition.css"
LOGO_FOLDER = "assets/edition/"


def binding_rules(library: Library) -> RuleSet:
    """Return the rule set that binds in a league's edition, with what it makes stricter worked in."""
    assert library.league is not None
    return rule_set(library.league.rules, shelves(library)["rules"])


def binding_table(edition: Edition) -> str:
    """Return the rest table of the rules that bind, as HTML."""
    return table_html(rest_table(within_the_limit(binding_rules(edition.library))), edition.catalogue)


def league_pages(writer: Writer) -> Iterator[Page]:
    """Yield the page of the league; none in the handbook itself."""
    edition = writer.edition
    league = edition.library.league
    if league is None:
        return
    hidden = edition.library.opened.hidden if edition.library.opened else ()
    context = {
        "left_out": len(hidden),
        "binding": edition.library.rules[league.rules],
        "binding_table": binding_table(edition),
        "divisions": [(one, _most_a_day(one, edition)) for one in league.divisions],
        "added": _own_entries(edition.library, league, replaced=False),
        "replaced": _own_entries(edition.library, league, replaced=True),
    }
    summary = edition.speak(say("The rules, ages and contacts of {league}.", league=league.name))
    yield writer.write("league/", "league.md.j2", league.name, summary, context)


def edition_files(library: Library) -> Mapping[str, bytes]:
    """Return the files of an edition's look: path inside the docs folder to content."""
    if library.opened is None:
        return {}
    colors = library.opened.league.model.colors
    files = {STYLE: style({scheme: getattr(colors, scheme) for scheme in SCHEMES}).encode()}
    if library.opened.logo is not None:
        files[LOGO_FOLDER + library.opened.logo.name] = library.opened.logo.content
    return files


def frame(edition: Edition) -> Mapping[str, Any]:
    """Return what the frame of every page needs to know: names, addresses, styles, the league's contacts."""
    library = edition.library
    league = library.league
    if league is None or library.opened is None:
        return {"name": "Bendbook", "short_name": "Bendbook", "site_url": "", "styles": [], "logo": ""}
    logo = library.opened.logo
    return {
        "name": edition.speak(say("Bendbook of {league}", league=league.name)),
        "short_name": league.short_name,
        "site_url": league.site_url or "",
        "styles": [STYLE],
        "logo": LOGO_FOLDER + logo.name if logo else "",
        "league": {"name": league.name, "contacts": [one.model_dump() for one in league.contacts]},
    }


def _most_a_day(division: Division, edition: Edition) -> str:
    """Say the most that the binding rules let a pitcher of a division throw in a day."""
    rules = binding_rules(edition.library)
    ages = range(division.ages[0], division.ages[1] + 1)
    bands = [rules.by_age[age] for age in ages if not rules.by_level and age in rules.by_age]
    limits = sorted({band.daily_max for band in bands if band.daily_max is not None})
    if not limits:
        return "\u2013"
    least, most = limits[0], limits[-1]
    if least == most:
        return str(least)
    return edition.speak(say("{low} to {high}, by age", low=str(least), high=str(most)))


def _own_entries(library: Library, league: League, replaced: bool) -> list[Loaded[Any]]:
    assert library.opened is not None
    folder = library.opened.league.path.parent
    own: Iterable[Loaded[Any]] = (
        loaded
        for kind in ENTRY_KINDS
        for loaded in library.kinds[kind].values()
        if loaded.path.is_relative_to(folder)
    )
    return [loaded for loaded in own if (loaded.address in league.replaces) == replaced]

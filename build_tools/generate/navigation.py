"""The navigation: guide pages and the list of each kind. Single entries are reached from their list.

With every entry in it, the navigation of every page would grow with the handbook, and the site with its
square.
"""

from __future__ import annotations

from typing import Any, get_args

from build_tools.generate.addresses import markdown_file
from build_tools.generate.labels import LABELS
from build_tools.generate.pages import HOME, TITLES
from build_tools.generate.writer import Edition
from build_tools.schema.guide import Section
from calculators.words import say

Item = dict[str, Any]

LISTS_OF = ("faults", "grips", "shapes", "cues", "drills", "plans")


def navigation(edition: Edition) -> list[Item]:
    """Return the navigation as mkdocs reads it: title to file, or title to a list of such."""
    items: list[Item] = [{edition.speak(HOME): "index.md"}]
    if edition.library.league is not None:
        items.append({edition.library.league.name: markdown_file("league/")})
    for section in get_args(Section):
        pages = [
            {loaded.model.title: markdown_file(f"guide/{loaded.slug}/")}
            for loaded in edition.library.guide.values()
            if loaded.model.section == section
        ]
        pages += [_page(edition, place) for place in BESIDE.get(section, ())]
        if section == "arm care":
            items.append(
                {
                    edition.speak(say("Library")): [
                        _list(edition, kind) for kind in LISTS_OF if edition.library.kinds[kind]
                    ]
                }
            )
            items.append(_calculators(edition))
            items.append(_list(edition, "print"))
        if pages:
            items.append({edition.speak(LABELS["section"][section]): pages})
    return items


BESIDE = {
    "arm care": ("age-gates", "rules"),
    "evidence": ("sources",),
    "about": ("glossary", "starting-points", "changes"),
}
"""Section of the guide to the pages, not guide pages themselves, that stand with it."""


def _page(edition: Edition, place: str) -> Item:
    return {edition.speak(TITLES[place]): markdown_file(f"{place}/")}


def _list(edition: Edition, kind: str) -> Item:
    return {edition.speak(TITLES[kind]): markdown_file(f"{kind}/", indexed=True)}


def _calculators(edition: Edition) -> Item:
    pages = [
        {title: markdown_file(f"calculators/{name}/")}
        for name, title in edition.calculators.items()
        if name in edition.library.calculators
    ]
    return {edition.speak(TITLES["calculators"]): [markdown_file("calculators/", indexed=True), *pages]}

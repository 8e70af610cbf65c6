"""The pages under /print/: each a hand-out, ready to be printed from a browser or made into a PDF."""

from __future__ import annotations

import datetime
import json
import re
from collections.abc import Iterator, Mapping
from typing import Any

from build_tools.generate.figures_html import FigureStore
from build_tools.generate.labels import LABELS
from build_tools.generate.pages import TITLES
from build_tools.generate.shelf import shelves
from build_tools.generate.writer import Edition, Page, Writer
from build_tools.hand_outs.codes import qr_code
from build_tools.hand_outs.kinds import CARDS, HAND_OUTS, files_of
from build_tools.hand_outs.pencil import bands_for_ages, steps_to_cross_off, within_the_limit
from build_tools.loading.library import Library
from build_tools.loading.reading import Loaded
from build_tools.schema.coaching import Cue
from calculators.desk.pitch_count_words import rest_words
from calculators.desk.rule_choice import JOINT_GUIDELINE
from calculators.words import say
from calculators.workload.library import rule_set
from calculators.workload.rules import Band

FOLDER = "hand-outs"
"""Folder of the site that holds the PDFs, where they were made."""

_UNITS = {"pitches": say("pitches"), "outs": say("outs")}
_HEADS = {"pitches": say("Pitches"), "outs": say("Outs")}
_SESSION_HEADS = (
    say("Throw"),
    say("Pitch"),
    say("Block"),
    say("Strike?"),
    say("Rating"),
    say("Clock"),
    say("Speed"),
    say("What you saw"),
)


def hand_out_pages(
    writer: Writer, figures: FigureStore, site_url: str, date: datetime.date
) -> Iterator[Page]:
    """Yield the list of hand-outs and every hand-out.

    site_url: the address that the codes lead to; empty where nobody has said, then there are no codes.
    date: the day of this edition.
    """
    edition = writer.edition
    context = {
        **_rules(edition),
        **_entries(edition, figures),
        "edition_day": date,
        "codes": _Codes(site_url + edition.folder, edition) if site_url else _NoCodes(),
        "paper_name": _name(edition),
        "session_heads": [edition.speak(head) for head in _SESSION_HEADS],
        "in_the_bag": [
            (edition.speak(kind.title), edition.speak(kind.about))
            for slug, kind in HAND_OUTS.items()
            if slug != "bag" and _holds(edition.library, slug)
        ],
    }
    for slug, kind in HAND_OUTS.items():
        if not _holds(edition.library, slug):
            continue
        title, about = edition.speak(kind.title), edition.speak(kind.about)
        ways = writer.fragment("print/ways.html.j2", files=_files(slug, edition, "../../"))
        yield writer.write(
            f"print/{slug}/",
            "print/hand_out.md.j2",
            title,
            about,
            {**context, "hand_out": slug, "about": about, "ways": ways},
            meta={"kind": "print", "search": {"exclude": True}, "hide": ["toc"]},
        )
    listed = [
        (
            slug,
            {"title": edition.speak(kind.title), "about": edition.speak(kind.about)},
            _files(slug, edition, "../"),
        )
        for slug, kind in HAND_OUTS.items()
        if _holds(edition.library, slug)
    ]
    title = edition.speak(TITLES["print"])
    yield writer.write(
        "print/",
        "print/index.md.j2",
        title,
        title,
        {"hand_outs": listed, "with_codes": bool(site_url)},
        indexed=True,
    )


def _holds(library: Library, hand_out: str) -> bool:
    """True where there is anything to hand out: an edition may have left out a page or a whole kind."""
    if hand_out == "parents":
        return "for-parents" in library.guide
    return hand_out not in CARDS or bool(library.kinds[hand_out])


def _files(hand_out: str, edition: Edition, up: str) -> str:
    """Return, as JSON, the way and the words of each PDF there may be; those that were made are linked later."""
    up += "../" * edition.folder.count("/")
    return json.dumps(
        [[f"{up}{FOLDER}/{file.name}", edition.speak(file.label)] for file in files_of(hand_out)],
        ensure_ascii=False,
    )


def _name(edition: Edition) -> str:
    league = edition.library.league
    return (
        "Bendbook" if league is None else edition.speak(say("Bendbook of {league}", league=league.short_name))
    )


class _NoCodes(dict[str, str]):
    """No code for any place."""

    def __missing__(self, place: str) -> str:
        return ""


class _Codes(_NoCodes):
    """Codes drawn when they are asked for, once a place."""

    def __init__(self, base: str, edition: Edition) -> None:
        super().__init__()
        self._base = base
        self._edition = edition

    def __missing__(self, place: str) -> str:
        address = self._base + place
        label = self._edition.speak(say("QR code of {address}", address=address))
        self[place] = qr_code(address, label)
        return self[place]


def _rules(edition: Edition) -> Mapping[str, Any]:
    """Return what the sheets need of the rules that bind, or of the joint guideline where none do."""
    library = edition.library
    league = library.league
    rules = rule_set(league.rules if league else JOINT_GUIDELINE, shelves(library)["rules"])
    entry = library.rules[rules.slug].model
    ages = None
    if league is not None:
        ages = range(min(one.ages[0] for one in league.divisions), league.oldest + 1)
    status = edition.speak(LABELS["status"][entry.status])
    note = say("Rest in whole days; the day of the game is not one of them.")
    heading = say("Days of rest for so many {unit}", unit=_UNITS[rules.counts])
    if rules.rest_unit == "nights":
        note = say("Rest in nights; the night after the game is the first.")
        heading = say("Nights of rest for so many {unit}", unit=_UNITS[rules.counts])
    rules = within_the_limit(rules)
    bands = bands_for_ages(rules, ages)
    rests = sorted({step.rest for band in bands for step in band.rest})
    return {
        "rules": rules,
        "rules_about": f"{entry.body}: {entry.document}, {entry.edition}. {status}",
        "rules_notes": entry.notes,
        "rest_note": edition.speak(note),
        "rules_unit": edition.speak(_HEADS[rules.counts]),
        "rest_heading": edition.speak(heading),
        "rests": rests,
        "count_sheets": [
            {
                "label": band.label,
                "limit": band.daily_max,
                "spans": [_span(band, rest) for rest in rests],
                "steps": [
                    {
                        "numbers": step.numbers,
                        "words": "?" if step.rest is None else edition.speak(rest_words(rules, step.rest)),
                    }
                    for step in steps_to_cross_off(rules, band)
                ],
            }
            for band in bands
        ],
    }


def _span(band: Band, rest: int) -> str:
    """Write the counts that owe `rest`, such as 21 to 35 with a dash, or 66+."""
    for step in band.rest:
        if step.rest == rest:
            return f"{step.low}+" if step.high is None else f"{step.low}\u2013{step.high}"
    return "\u2013"


def _on_paper(body: str) -> str:
    """Return a page's text for a sheet: smaller headings, and no link that only says there is more."""
    shorter = re.sub(r"\s*\[\[[a-z/-]+\|More\]\]\.", "", body.strip())
    return re.sub(r"^## ", "### ", shorter, flags=re.MULTILINE)


def _entries(edition: Edition, figures: FigureStore) -> Mapping[str, Any]:
    library = edition.library
    on_cards = {
        kind: [one for one in library.kinds[kind].values() if not _retired(one)]
        for kind in CARDS
        if library.kinds[kind]
    }
    pictures = {
        slug: [figures.small(one.model, edition, "pitcher"), figures.small(one.model, edition, "side")]
        for slug, one in library.grips.items()
    }
    warning_signs, for_parents = library.guide["warning-signs"], library.guide.get("for-parents")
    return {
        "on_cards": on_cards,
        "pictures": pictures,
        "warning_signs": warning_signs,
        "warning_signs_on_paper": _on_paper(warning_signs.body),
        "for_parents": for_parents,
        "for_parents_on_paper": _on_paper(for_parents.body) if for_parents else "",
    }


def _retired(loaded: Loaded[Any]) -> bool:
    return isinstance(loaded.model, Cue) and loaded.model.retired

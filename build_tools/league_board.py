"""The league's board as a command: the page's own calculator, asked from a computer. Nothing is sent anywhere."""

from __future__ import annotations

import gettext
from dataclasses import replace
from html import escape
from pathlib import Path

import click

from build_tools.generate.calculator_pages import calculator_names
from build_tools.generate.shelf import shelves
from build_tools.loading.library import load
from build_tools.places import Places
from calculators.desk.answers import Answer, Shelf
from calculators.desk.counter import answer, shelf_from
from calculators.desk.fields import Problem, Raw
from calculators.desk.files import as_typed
from calculators.desk.league_board_fields import OUTING_HEADINGS, ROSTER_HEADINGS
from calculators.desk.render_html import answer_html
from calculators.desk.render_text import answer_text
from calculators.desk.rule_choice import binding_rules
from calculators.words import speak

ENGLISH = gettext.NullTranslations()
NAME = "league-board"
STYLE = """
:root { color-scheme: light dark }
body { font: 16px/1.45 system-ui, sans-serif; max-width: 70rem; margin: 1rem auto; padding: 0 1rem }
.headline { font-size: 1.4rem; font-weight: bold }
table { border-collapse: collapse; width: 100% }
caption { text-align: left; font-weight: bold; padding: .4rem 0 }
th, td { text-align: left; vertical-align: top; padding: .3rem .8rem .3rem 0; border-top: 1px solid #888 }
th { font-weight: normal }
thead th { font-weight: bold }
tr { break-inside: avoid }
dl.facts > div { display: flex; gap: 1rem }
dt { min-width: 14rem }
dd { margin: 0 }
[data-print], [data-files] { display: none }
@media print { .sheet { break-before: page } body { font-size: 10pt; max-width: none; margin: 0 } }
"""


@click.command()
@click.option("--roster", type=click.Path(exists=True, dir_okay=False, path_type=Path), required=True)
@click.option("--outings", type=click.Path(exists=True, dir_okay=False, path_type=Path), required=True)
@click.option("--on", "day", required=True, metavar="DATE", help="The day, like 2026-05-16.")
@click.option("--rules", metavar="SLUG", help="A file of content/rules without its ending.")
@click.option(
    "--dates",
    type=click.Choice(("year-first", "month-first", "day-first")),
    default="year-first",
    show_default=True,
    help="How the files write dates.",
)
@click.option(
    "--heading",
    "headings",
    multiple=True,
    metavar="FIELD=HEAD",
    help='The head your file has instead of ours, like roster_pitcher="Player". May be given again.',
)
@click.option("--unverified", is_flag=True, help="Go by rules that nobody has checked at the source.")
@click.option("--beside", is_flag=True, help="Set the joint guideline beside the rules.")
@click.option("--html", type=click.Path(dir_okay=False, path_type=Path), help="Write a page to print.")
@click.option("--csv", type=click.Path(dir_okay=False, path_type=Path), help="Write the board as a table.")
@click.option("--ical", type=click.Path(dir_okay=False, path_type=Path), help="Write the first days.")
def board(
    roster: Path,
    outings: Path,
    day: str,
    rules: str | None,
    dates: str,
    headings: tuple[str, ...],
    unverified: bool,
    beside: bool,
    html: Path | None,
    csv: Path | None,
    ical: Path | None,
) -> None:
    """Say who is eligible on a day, from a roster and a list of outings.

    The files hold children's data. They are read here and go nowhere else.
    """
    shelf = shelf_from(shelves(load(Places().content, calculator_names())))
    raw: Raw = {
        "rules": rules or binding_rules(shelf),
        "today": day,
        "roster": as_typed(roster.read_bytes()),
        "outings": as_typed(outings.read_bytes()),
        "dates": dates.replace("-", " "),
        "unverified": "yes" if unverified else "no",
        "beside": "yes" if beside else "no",
        **_headings(headings),
    }
    if raw["rules"] not in shelf.rules:
        raise click.ClickException(f"There are no rules {raw['rules']}. There are: {', '.join(shelf.rules)}.")
    found = answer(NAME, raw, shelf)
    if not isinstance(found, Answer):
        raise click.ClickException("\n".join(_asked(problem) for problem in found))
    click.echo(answer_text(found, shelf, ENGLISH))
    if html:
        html.write_text(page_of(found, shelf), encoding="utf-8")
    for path, begins in ((csv, "board-"), (ical, "first-days-")):
        if path:
            _write(found, begins, path)


def page_of(found: Answer, shelf: Shelf) -> str:
    """Return the board as one page that stands alone, ready to be printed team by team."""
    title = escape(speak(found.headline, ENGLISH))
    # Without the links to the handbook's own list of sources, which lead nowhere from here.
    body = answer_html(replace(found, sources=()), shelf, ENGLISH, "board")
    return (
        f'<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>{title}</title>'
        f'<meta name="viewport" content="width=device-width"><style>{STYLE}</style></head>'
        f"<body>{body}</body></html>\n"
    )


def _headings(given: tuple[str, ...]) -> dict[str, str]:
    named = {}
    for heading in given:
        field, equals, head = heading.partition("=")
        if not equals or field not in (*ROSTER_HEADINGS, *OUTING_HEADINGS):
            known = ", ".join((*ROSTER_HEADINGS, *OUTING_HEADINGS))
            raise click.ClickException(
                f"--heading {heading}: write FIELD=HEAD, where FIELD is one of {known}."
            )
        named[field] = head
    return named


def _asked(problem: Problem) -> str:
    """Return a question of the board with the option that answers it."""
    options = {"today": "--on", "dates": "--dates", "unverified": "--unverified"}
    option = options.get(problem.field, f"--{problem.field}")
    if problem.field in (*ROSTER_HEADINGS, *OUTING_HEADINGS):
        option = f"--heading {problem.field}=HEAD"
    offered = f" ({', '.join(problem.offers)})" if problem.offers else ""
    return f"{option}: {speak(problem.message, ENGLISH)}{offered}"


def _write(found: Answer, begins: str, path: Path) -> None:
    for file in found.files:
        if file.name.startswith(begins):
            # Line ends are part of both formats.
            path.write_text(file.write(ENGLISH), encoding="utf-8", newline="")
            return
    click.echo(f"{path} is not written: nobody has a first day to come.")

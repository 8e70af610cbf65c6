"""`new-edition`: asks what an edition needs, or takes it from options, and writes the edition."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

from build_tools.editions.league import WEB
from build_tools.editions.start import (
    AnswerError,
    Answers,
    color_on,
    dark_shade,
    description_of,
    divisions_in,
    start,
)
from build_tools.generate.calculator_pages import calculator_names
from build_tools.loading.library import load
from build_tools.loading.reading import read_content
from build_tools.places import Places, Wanted

A = TypeVar("A")


@click.command("new-edition")
@click.option(
    "--content", type=click.Path(exists=True, file_okay=False, path_type=Path), default=Places().content
)
@click.option("--like", metavar="NAME", help="Start from this edition: its own entries come along.")
@click.option("--slug", default="", help="The folder's name.  [made from the league's name]")
@click.option("--name", help="The league's whole name.")
@click.option("--short-name", help="For headings and small screens.")
@click.option("--light", help='Color on the light page, like "#1f5c3d".')
@click.option("--dark", help="Color on the dark page.")
@click.option("--rules", help="The rule set that binds.")
@click.option("--review-by", help="Day by which the rules must be checked again, year-month-day.")
@click.option("--divisions", help='Like "Minors 9-10 46; Majors 11-12 46": name, ages, feet.')
@click.option("--from-age", type=int, help="Age from which a breaking ball may be thrown.")
@click.option(
    "--hide-older/--show-older", default=None, help="Leave out pages no division is old enough for."
)
@click.option("--contact", help="Whom to ask, as a role.")
@click.option("--reach", help="Phone or email.")
@click.option("--call", help='What to do first in an emergency, like "Call 911 first."')
@click.option("--where", help="Where one is, for whoever answers the call.")
@click.option("--site-url", help="The address where it will be found.")
def new_edition(content: Path, like: str | None, slug: str, **given: Any) -> None:
    """Start a league's own edition. What no option says is asked."""
    try:
        folder = start(content, _answers(content, like, given), like, slug)
    except AnswerError as error:
        raise click.ClickException(str(error)) from error
    click.echo(f"{folder} written. Read {folder / 'edition.yml'} through and change what you like.")
    for remark in load(content, calculator_names(), Wanted(folder.name)).remarks:
        click.echo(f"  {remark}")
    click.echo(f"Then build it: make edition NAME={folder.name}")


def _answers(content: Path, like: str | None, given: dict[str, Any]) -> Answers:
    other = {} if like is None else description_of(content, like)
    colors = other.get("colors", {})
    emergency = other.get("emergency", {})
    known = sorted(read_content(content).kinds["rules"])
    next_year = datetime.date.today() + datetime.timedelta(days=365)

    def asked(option: str, question: str, default: str | None, read: Callable[[str], A]) -> A:
        """Return the option as given, or ask until the answer can be used."""
        if given[option] is not None:
            return read(str(given[option]))
        while True:
            try:
                return read(str(click.prompt(question, default=default)))
            except AnswerError as error:
                click.echo(f"  {error}")

    name = asked("name", "Name of the league", None, _words)
    light = asked(
        "light",
        "Color on the light page",
        colors.get("light", "#1f5c3d"),
        lambda text: color_on("light", text),
    )
    dark = colors.get("dark") if light == colors.get("light") else dark_shade(light)
    click.echo(f"Rule sets: {', '.join(known)}")
    return Answers(
        name=name,
        short_name=asked("short_name", "Short name", " ".join(name.split()[:2])[:24].strip(), _words),
        light=light,
        dark=asked("dark", "Color on the dark page", dark, lambda text: color_on("dark", text)),
        rules=asked(
            "rules",
            "Rule set that binds",
            "usa-joint-2015",
            lambda text: _one_of(text.strip(), [*known, str(other.get("rules", ""))]),
        ),
        rules_review_by=asked(
            "review_by", "Day by which the rules must be checked again", next_year.isoformat(), _date
        ),
        divisions=asked(
            "divisions", "Divisions: name, ages, feet; next one", _divisions_of(other), _divisions
        ),
        from_age=asked("from_age", "Breaking balls from age", "14", _age),
        pages_above_our_ages=asked(
            "hide_older",
            "Leave out breaking-ball pages no division is old enough for (yes or no)",
            "no",
            _hide,
        ),
        contact=asked("contact", "Whom to ask, as a role", "Player safety officer", _words),
        reach=asked("reach", "Phone or email of that person", None, _words),
        call=asked(
            "call", "First thing to do in an emergency", emergency.get("call", "Call 911 first."), _words
        ),
        where=asked("where", "Where one is, to say on the phone", None, _words),
        site_url=asked("site_url", "The address where it will be found, or blank", "", _address),
    )


def _words(text: str) -> str:
    if len(text.strip()) < 2:
        raise AnswerError("Write at least two letters.")
    return text.strip()


def _address(text: str) -> str:
    text = text.strip()
    if text and not WEB.fullmatch(text):
        raise AnswerError("Write the whole address, like https://example.org/handbook/, or nothing.")
    return text


def _one_of(text: str, known: list[str]) -> str:
    if text not in known:
        raise AnswerError(f"There is no rule set named {text}. Choose one of those above.")
    return text


def _date(text: str) -> datetime.date:
    try:
        return datetime.date.fromisoformat(text.strip())
    except ValueError as error:
        raise AnswerError("Write the day as year-month-day, like 2027-02-01.") from error


def _age(text: str) -> int:
    if not text.strip().isdigit() or int(text) < 13:
        raise AnswerError(
            "Write an age of 13 or more: the joint guideline names no breaking ball before that."
        )
    return int(text)


def _hide(text: str) -> str:
    answer = text.strip().lower()
    if answer in ("yes", "y", "true"):
        return "hidden"
    if answer in ("no", "n", "false"):
        return "shown"
    raise AnswerError("Answer yes or no.")


def _divisions(text: str) -> str:
    divisions_in(text)
    return text


def _divisions_of(other: Any) -> str | None:
    """Write another edition's divisions as they are typed."""
    divisions = other.get("divisions", ())
    typed = (f"{one['name']} {one['ages'][0]}-{one['ages'][1]} {one['mound_ft']:g}" for one in divisions)
    return "; ".join(typed) or None

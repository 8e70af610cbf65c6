"""The command line: everything that makes, checks and serves the handbook and its editions."""

from __future__ import annotations

import datetime
import functools
import os
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import replace
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any, TypeVar, cast

import click

from build_tools.changes.reviews import reviews_due
from build_tools.changes.snapshots import SnapshotError, history, taken
from build_tools.changes.snapshots import record as write_snapshot
from build_tools.checks.reading_grade import reading_report, too_hard, volunteer_grades
from build_tools.checks.spelling import unknown_words
from build_tools.chromium import ChromiumError
from build_tools.dates import edition_date
from build_tools.disk.commands import disk
from build_tools.editions.commands import new_edition
from build_tools.editions.opening import edition_names
from build_tools.finish import FinishError, finish
from build_tools.generate.assets import MissingFontError
from build_tools.generate.build_docs import Generated
from build_tools.generate.build_docs import generate as generate_docs
from build_tools.generate.calculator_pages import WorkedExampleError, calculator_names
from build_tools.hand_outs.commands import hand_outs
from build_tools.hosting.commands import print_headers, visit
from build_tools.league_board import board
from build_tools.loading.library import load
from build_tools.loading.mistakes import ContentError
from build_tools.new_entry import new_entry
from build_tools.places import PROJECT, Places, Wanted, of_edition, site_base
from build_tools.schema.export import write_schemas
from build_tools.session import session
from build_tools.words.catalogue import CatalogueError
from build_tools.words.extraction import update_words

Command = TypeVar("Command", bound=Callable[..., Any])

TOLD = (
    ContentError,
    WorkedExampleError,
    CatalogueError,
    MissingFontError,
    FinishError,
    SnapshotError,
    ChromiumError,
)
"""Errors that say by themselves what to do; shown without a traceback."""


def _places(command: Command) -> Command:
    """Give a command the options that say where things lie and which handbook is wanted, as `places`."""
    folder = functools.partial(click.Path, file_okay=False, path_type=Path)

    @functools.wraps(command)
    def with_places(
        content: Path,
        build_folder: Path | None,
        site: Path | None,
        edition: str | None,
        drafts: bool,
        allow_overdue: bool,
        **options: Any,
    ) -> Any:
        usual = of_edition(edition)
        wanted = Wanted(edition, drafts, allow_overdue)
        places = Places(content, build_folder or usual.build, site or usual.site, wanted)
        return command(places=places, **options)

    for option in (
        click.option(
            "--allow-overdue",
            is_flag=True,
            help="Build an edition whose rules are due for a check, and say so.",
        ),
        click.option("--drafts", is_flag=True, help="With entries that are marked as drafts."),
        click.option("--edition", metavar="NAME", help="A league's edition: a folder of content/editions."),
        click.option("--site", type=folder(), help="The finished site.  [site, or site-NAME]"),
        click.option("--build", "build_folder", type=folder(), help="Files in between.  [build]"),
        click.option("--content", type=folder(exists=True), default=Places().content, help="The entries."),
    ):
        with_places = option(with_places)
    return cast(Command, with_places)


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
def commands() -> None:
    """Build the handbook from its entries."""


@commands.command()
@_places
@click.option("--reading", is_flag=True, help="Tell the reading grade of each page for volunteers.")
def check(places: Places, reading: bool) -> None:
    """Check every entry, drafts included, and every edition; nothing is written."""
    if places.wanted.edition is None:
        library = load(places.content, calculator_names(), replace(places.wanted, drafts=True))
        entries = sum(len(of_one_kind) for of_one_kind in library.kinds.values())
        grades = volunteer_grades(library.kinds)
        if mistakes := tuple(too_hard(grades, places.content)):
            raise ContentError(mistakes)
        click.echo(f"{entries} entries, no mistakes.")
        click.echo(reading_report(grades, each=reading))
        _remarks(tuple(f"{one.path} {one}" for one in unknown_words(library.kinds, places.content)))
    named = places.wanted.edition
    for edition in edition_names(places.content) if named is None else (named,):
        library = load(places.content, calculator_names(), replace(places.wanted, edition=edition))
        click.echo(f"Edition {edition}: no mistakes.")
        _remarks(library.remarks)


@commands.command()
@_places
def generate(places: Places) -> None:
    """Write every page as Markdown into build/docs."""
    _generate(places)


@commands.command()
@_places
def build(places: Places) -> None:
    """Build the whole site: pages, site builder, calculators and offline copy."""
    generated = _generate(places)
    start = time.perf_counter()
    _mkdocs(places, "build", "--quiet", "--clean", "--site-dir", str(places.site.resolve()))
    click.echo(f"Site built in {time.perf_counter() - start:.1f} s.")
    report = finish(places.site, places.build, questions=generated.questions, base=site_base(places))
    click.echo(report.text)
    click.echo(f"The handbook is in {places.site}.")
    _remarks(generated.remarks)


@commands.command()
@_places
@click.option("--port", type=int, default=8000, show_default=True)
def serve(places: Places, port: int) -> None:
    """Serve the site that was built, as a reader gets it."""
    if not (places.site / "index.html").is_file():
        wanted = f" --edition {places.wanted.edition}" if places.wanted.edition else ""
        raise click.ClickException(
            f"There is no site in {places.site}. Run: python -m build_tools build{wanted}"
        )
    handler = functools.partial(SimpleHTTPRequestHandler, directory=str(places.site))
    with ThreadingHTTPServer(("127.0.0.1", port), handler) as server:
        click.echo(f"The handbook is at http://127.0.0.1:{server.server_port}/ until you press Ctrl-C.")
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            click.echo("Stopped.")


@commands.command()
@_places
@click.option("--port", type=int, default=8000, show_default=True)
def edit(places: Places, port: int) -> None:
    """Show the pages while you edit entries; calculators and offline copy are left out."""
    _remarks(_generate(places).remarks)
    _mkdocs(places, "serve", "--livereload", "--dev-addr", f"127.0.0.1:{port}")


@commands.command()
@_places
def schema(places: Places) -> None:
    """Write the JSON Schemas of the entries for editors."""
    count = write_schemas(places.content)
    click.echo(f"{count} schemas written." if count else "The schemas are up to date.")


@commands.command()
@click.option("--add", metavar="LANGUAGE", help="Start the catalogue of another language, such as es.")
@_places
def words(places: Places, add: str | None) -> None:
    """Bring the catalogue of words up to date with the code and the templates."""
    for path in update_words(places.locale, add):
        click.echo(f"{path} written.")


@commands.command()
@_places
def record(places: Places) -> None:
    """Record what the edition says today, so that a later one can tell what changed."""
    library = load(places.content, calculator_names(), places.wanted)
    folder = history(places.content, places.wanted.edition)
    click.echo(f"{write_snapshot(taken(library, edition_date()), folder)} written.")


@commands.command()
@_places
def reviews(places: Places) -> None:
    """List who should read which entry through next, and by when; what is late comes first."""
    library = load(places.content, calculator_names(), replace(places.wanted, drafts=True))
    due = reviews_due(library)
    for one in due:
        late = "LATE, " if one.when < datetime.date.today() else ""
        click.echo(f"{late}{one.when}  {one.address}: {one.who}")
    if not due:
        click.echo("No entry names who should read it next. See `review_by` in DEVELOPERS.md.")


commands.add_command(board)
commands.add_command(session)
commands.add_command(new_edition)
commands.add_command(new_entry)
commands.add_command(hand_outs)
commands.add_command(disk)
commands.add_command(print_headers)
commands.add_command(visit)


def _remarks(remarks: tuple[str, ...]) -> None:
    if remarks:
        click.echo("Worth a look:")
    for remark in remarks:
        click.echo(f"  {remark}")


def _generate(places: Places) -> Generated:
    start = time.perf_counter()
    generated = generate_docs(places)
    written = generated.written
    click.echo(
        f"{generated.pages} pages in {time.perf_counter() - start:.1f} s: {written.changed} files written, "
        f"{written.kept} as they were, {written.removed} taken away."
    )
    return generated


def _mkdocs(places: Places, *arguments: str) -> None:
    environment = os.environ | places.environment()
    environment |= {"NO_MKDOCS_2_WARNING": "1", "PYTHONPATH": str(PROJECT)}
    config = str(PROJECT / "mkdocs.yml")
    done = subprocess.run(
        [sys.executable, "-m", "mkdocs", *arguments, "--config-file", config], env=environment, check=False
    )
    if done.returncode:
        sys.exit(done.returncode)


def main() -> None:
    """Run a command; a mistake in the content is told in plain words and ends with exit code 1."""
    try:
        commands.main(standalone_mode=False)
    except click.ClickException as error:
        error.show()
        sys.exit(error.exit_code)
    except click.exceptions.Abort:
        sys.exit(130)
    except TOLD as error:
        click.echo(str(error), err=True)
        sys.exit(1)

"""The command line: check, generate, build, serve, edit, schema, words."""

from __future__ import annotations

import functools
import os
import subprocess
import sys
import time
from collections.abc import Callable
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any, TypeVar
from urllib.parse import urlsplit

import click

from build_tools.finish import FinishError, finish
from build_tools.generate.assets import MissingFontError
from build_tools.generate.build_docs import generate as generate_docs
from build_tools.generate.calculator_pages import WorkedExampleError, calculator_names, worked_examples
from build_tools.loading.library import load
from build_tools.loading.mistakes import ContentError
from build_tools.places import PROJECT, Places
from build_tools.schema.export import write_schemas
from build_tools.words.catalogue import CatalogueError
from build_tools.words.extraction import update_words

Command = TypeVar("Command", bound=Callable[..., Any])

TOLD = (ContentError, WorkedExampleError, CatalogueError, MissingFontError, FinishError)
"""Errors that say by themselves what to do; shown without a traceback."""


def _folders(command: Command) -> Command:
    """Give a command the options for the folders it works on."""
    places = Places()
    folder = functools.partial(click.Path, file_okay=False, path_type=Path)
    for option in (
        click.option("--site", type=folder(), default=places.site, help="The finished site."),
        click.option(
            "--build", "build_folder", type=folder(), default=places.build, help="Files in between."
        ),
        click.option("--content", type=folder(exists=True), default=places.content, help="The entries."),
    ):
        command = option(command)
    return command


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
def commands() -> None:
    """Build the handbook from its entries."""


@commands.command()
@_folders
def check(content: Path, build_folder: Path, site: Path) -> None:
    """Check every entry; nothing is written."""
    library = load(content, calculator_names())
    entries = sum(len(of_one_kind) for of_one_kind in library.kinds.values())
    click.echo(f"{entries} entries, no mistakes.")


@commands.command()
@_folders
def generate(content: Path, build_folder: Path, site: Path) -> None:
    """Write every page as Markdown into build/docs."""
    _generate(Places(content, build_folder, site))


@commands.command()
@_folders
def build(content: Path, build_folder: Path, site: Path) -> None:
    """Build the whole site: pages, site builder, calculators and offline copy."""
    places = Places(content, build_folder, site)
    _generate(places)
    start = time.perf_counter()
    _mkdocs(places, "build", "--quiet", "--clean", "--site-dir", str(site.resolve()))
    click.echo(f"Site built in {time.perf_counter() - start:.1f} s.")
    report = finish(site, build_folder, questions=worked_examples(), base=_base())
    click.echo(report.text)
    click.echo(f"The handbook is in {site}.")


@commands.command()
@_folders
@click.option("--port", type=int, default=8000, show_default=True)
def serve(content: Path, build_folder: Path, site: Path, port: int) -> None:
    """Serve the site that was built, as a reader gets it."""
    if not (site / "index.html").is_file():
        raise click.ClickException(f"There is no site in {site}. Run: python -m build_tools build")
    handler = functools.partial(SimpleHTTPRequestHandler, directory=str(site))
    with ThreadingHTTPServer(("127.0.0.1", port), handler) as server:
        click.echo(f"The handbook is at http://127.0.0.1:{server.server_port}/ until you press Ctrl-C.")
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            click.echo("Stopped.")


@commands.command()
@_folders
@click.option("--port", type=int, default=8000, show_default=True)
def edit(content: Path, build_folder: Path, site: Path, port: int) -> None:
    """Show the pages while you edit entries; calculators and offline copy are left out."""
    places = Places(content, build_folder, site)
    _generate(places)
    _mkdocs(places, "serve", "--livereload", "--dev-addr", f"127.0.0.1:{port}")


@commands.command()
@_folders
def schema(content: Path, build_folder: Path, site: Path) -> None:
    """Write the JSON Schemas of the entries for editors."""
    count = write_schemas(content)
    click.echo(f"{count} schemas written." if count else "The schemas are up to date.")


@commands.command()
@click.option("--add", metavar="LANGUAGE", help="Start the catalogue of another language, such as es.")
@_folders
def words(content: Path, build_folder: Path, site: Path, add: str | None) -> None:
    """Bring the catalogue of words up to date with the code and the templates."""
    for path in update_words(Places(content, build_folder, site).locale, add):
        click.echo(f"{path} written.")


def _base() -> str:
    """Return the path of the address the site is built for, "/" unless SITE_URL says otherwise."""
    path = urlsplit(os.environ.get("SITE_URL", "")).path
    return path if path.endswith("/") else f"{path}/"


def _generate(places: Places) -> None:
    start = time.perf_counter()
    generated = generate_docs(places)
    written = generated.written
    click.echo(
        f"{generated.pages} pages in {time.perf_counter() - start:.1f} s: {written.changed} files written, "
        f"{written.kept} as they were, {written.removed} taken away."
    )


def _mkdocs(places: Places, *arguments: str) -> None:
    if places.docs.resolve() != Places().docs:
        raise click.ClickException(f"mkdocs.yml reads {Places().docs}; leave out --build for this command.")
    environment = os.environ | {"NO_MKDOCS_2_WARNING": "1", "PYTHONPATH": str(PROJECT)}
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

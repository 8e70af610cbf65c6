"""`new-entry`: a new entry after the pattern of one there is, marked as a draft until it says something else."""

from __future__ import annotations

import datetime
import re
from pathlib import Path

import click

from build_tools.loading.mistakes import nearest_name
from build_tools.places import Places
from build_tools.schema.common import SLUG
from build_tools.schema.kinds import ENTRY_KINDS


class NewEntryError(Exception):
    """The entry cannot be started; the message says how to mend it."""


def start_entry(content: Path, address: str, like: str, today: datetime.date) -> Path:
    """Write a new entry and return its file.

    content: the content folder. address: the new entry as kind/slug. like: the slug of its pattern, of the
    same kind. Raises NewEntryError.
    """
    kind, _, slug = address.partition("/")
    if kind not in ENTRY_KINDS or not SLUG.fullmatch(slug):
        known = ", ".join(ENTRY_KINDS)
        raise NewEntryError(f'"{address}" is no name. Write kind/name-in-words, the kind one of {known}.')
    path, pattern = content / kind / f"{slug}.md", content / kind / f"{like}.md"
    if path.exists():
        raise NewEntryError(f"{path} is there already.")
    if not pattern.is_file():
        near = nearest_name(like, [one.stem for one in (content / kind).glob("*.md")])
        hint = f" Did you mean {near}?" if near else ""
        raise NewEntryError(f"There is no {kind}/{like} to start from.{hint}")
    text = pattern.read_text(encoding="utf-8")
    title = slug.replace("-", " ").capitalize()
    text = re.sub(r"^title: .*$", f"title: {title}", text, count=1, flags=re.MULTILINE)
    text = re.sub(r"^reviewed: .*$", f"reviewed: {today}\ndraft: true", text, count=1, flags=re.MULTILINE)
    text = re.sub(r"^also_called: .*\n", "", text, count=1, flags=re.MULTILINE)
    path.write_text(text, encoding="utf-8")
    return path


@click.command("new-entry")
@click.argument("address", metavar="KIND/NAME")
@click.option("--like", required=True, metavar="NAME", help="An entry of the same kind to start from.")
@click.option(
    "--content", type=click.Path(exists=True, file_okay=False, path_type=Path), default=Places().content
)
def new_entry(address: str, like: str, content: Path) -> None:
    """Start an entry from another of its kind, as a draft."""
    try:
        path = start_entry(content, address, like, datetime.date.today())
    except NewEntryError as error:
        raise click.ClickException(str(error)) from error
    click.echo(
        f"{path} written, as a draft. Change every line, then see it: python -m build_tools edit --drafts"
    )

"""The command that packs the copy for a memory stick."""

from __future__ import annotations

from pathlib import Path

import click

from build_tools.dates import edition_date
from build_tools.disk import put_disk_copy
from build_tools.places import PROJECT, of_edition


@click.command()
@click.option("--edition", metavar="NAME", help="A league's edition: a folder of content/editions.")
@click.option(
    "--site",
    type=click.Path(file_okay=False, path_type=Path),
    help="The finished site.  [site, or site-NAME]",
)
@click.option("--out", type=click.Path(dir_okay=False, path_type=Path), help="The zip file to write.")
def disk(edition: str | None, site: Path | None, out: Path | None) -> None:
    """Pack a finished site as a zip that opens by double-click, with no server and no network."""
    site = site or of_edition(edition).site
    out = out or PROJECT / "build" / f"{edition or 'bendbook'}-on-a-stick.zip"
    made = put_disk_copy(site, out, edition_date())
    click.echo(f"{made.path}, {made.size / 1e6:.2f} MB. Unpack it, then double-click index.html.")

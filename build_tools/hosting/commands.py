"""`headers` and `visit`: what a server should send, and whether a copy on one is as it should be."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from build_tools.hosting.headers import SERVERS, headers
from build_tools.hosting.visit import visit as visit_address
from build_tools.places import of_edition, site_base


@click.command("headers")
@click.option("--edition", metavar="NAME", help="A league's edition.")
@click.option(
    "--site",
    type=click.Path(file_okay=False, path_type=Path),
    help="The finished site.  [site, or site-NAME]",
)
@click.option("--for", "server", type=click.Choice(list(SERVERS)), default="headers-file", show_default=True)
def print_headers(edition: str | None, site: Path | None, server: str) -> None:
    """Print what a server of a finished site should send with it, in the server's own words."""
    places = of_edition(edition)
    folder = site or places.site
    for needed in (folder / "index.html", places.frame):
        if not needed.is_file():
            raise click.ClickException(f"There is no site in {needed.parent}. Build it first.")
    click.echo(SERVERS[server](headers(folder), site_base(places)), nl=False)


@click.command()
@click.argument("address")
def visit(address: str) -> None:
    """Visit a handbook on a server as a phone does, and say what is good and what is not."""
    if not address.lower().startswith(("https://", "http://")):
        raise click.ClickException(f"Begin the address with https:// or http://: {address}")
    good = True
    for finding in visit_address(address):
        click.echo(f"{'good ' if finding.good else 'WRONG'}  {finding.what}")
        good = good and finding.good
    if not good:
        sys.exit(1)

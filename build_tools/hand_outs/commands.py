"""`hand-outs`: makes the PDFs of a built site and links them from its pages."""

from __future__ import annotations

from pathlib import Path
from typing import cast

import click

from build_tools.dates import edition_date
from build_tools.finish.edition import put_edition
from build_tools.hand_outs.kinds import PAPERS, Paper
from build_tools.hand_outs.linking import link_files
from build_tools.hand_outs.pages import FOLDER
from build_tools.hand_outs.printing import PrintingError, print_hand_outs
from build_tools.places import Places, of_edition, site_address, site_base


@click.command("hand-outs")
@click.option("--edition", metavar="NAME", help="A league's edition.")
@click.option(
    "--site", type=click.Path(file_okay=False, path_type=Path), help="The site.  [site, or site-NAME]"
)
@click.option("--build", "build_folder", type=click.Path(file_okay=False, path_type=Path), help="  [build]")
@click.option(
    "--out",
    type=click.Path(file_okay=False, path_type=Path),
    help=f"Where the PDFs go.  [{FOLDER}/ in the site]",
)
@click.option(
    "--paper", "papers", type=click.Choice(list(PAPERS)), multiple=True, help="Once a size.  [both]"
)
def hand_outs(
    edition: str | None,
    site: Path | None,
    build_folder: Path | None,
    out: Path | None,
    papers: tuple[str, ...],
) -> None:
    """Print cards, sheets and the bag set of a built site as PDFs, and link them from its pages."""
    usual = of_edition(edition)
    places = Places(build=build_folder or usual.build, site=site or usual.site)
    for needed in (places.site / "index.html", places.frame):
        if not needed.is_file():
            raise click.ClickException(f"There is no site in {needed.parent}. Build it first.")
    target = out or places.site / FOLDER
    sizes = cast("tuple[Paper, ...]", papers or tuple(PAPERS))
    try:
        made = print_hand_outs(places.site, target, sizes, site_address(places))
    except PrintingError as error:
        raise click.ClickException(str(error)) from error
    for path in made:
        click.echo(f"{path.stat().st_size / 1e6:5.2f} MB  {path}")
    if target.resolve().is_relative_to(places.site.resolve()):
        links = link_files(places.site)
        put_edition(places.site, edition_date(), site_base(places))
        click.echo(f"{links} links to them put into the pages of {places.site}.")

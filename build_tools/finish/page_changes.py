"""Lets the theme change pages without a reload wherever the site is put.

The theme reads the pages' addresses from the sitemap, and wants them whole. A handbook that may be copied to any
host and any folder does not know them, so they are written from the handbook's own root on, and the theme's
script is told to read them from there.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from xml.sax.saxutils import escape

from build_tools.finish.errors import FinishError

READ_WHOLE = re.compile(r"new URL\((\w+)\.textContent\),(\w+)\)")
READ_FROM_ROOT = r"new URL(\1.textContent,\2),\2)"
SITEMAP = """<?xml version="1.0" encoding="UTF-8"?>
<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">
{pages}
</urlset>
"""


def let_pages_change(site: Path) -> None:
    """Write the sitemap of a site that was built without its address, and let the theme's script read it.

    Raises FinishError where the script no longer reads the sitemap in the way known here.
    """
    sitemap = site / "sitemap.xml"
    if not sitemap.is_file() or "<loc>" in sitemap.read_text(encoding="utf-8"):
        return
    pages = "\n".join(f"<url><loc>{escape(address)}</loc></url>" for address in sorted(_addresses(site)))
    sitemap.write_text(SITEMAP.format(pages=pages), encoding="utf-8")
    for script in site.glob("assets/javascripts/bundle.*.js"):
        mended, times = READ_WHOLE.subn(READ_FROM_ROOT, script.read_text(encoding="utf-8"))
        if times != 1:
            raise FinishError(
                f"{script.name} reads the sitemap in a new way. Look how it makes addresses, and mend "
                f"READ_WHOLE in {Path(__file__).name}, or build with SITE_URL set."
            )
        script.write_text(mended, encoding="utf-8")


def _addresses(site: Path) -> Iterator[str]:
    """Yield the addresses of the pages from the root on; the root's own is a point."""
    for page in site.rglob("index.html"):
        folder = page.parent.relative_to(site).as_posix()
        yield "./" if folder == "." else f"{folder}/"

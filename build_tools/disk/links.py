"""Addresses on a disk: a folder's address leads to the page in it only on a server."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import unquote, urlsplit


def to_page(root: Path, folder: Path, address: str) -> str:
    """Return an address with index.html put in where it leads to a folder with a page.

    root: the site. folder: that of the page on which the address stands. address: as written there; one that
    leads elsewhere comes back as it is.
    """
    parts = urlsplit(address)
    if parts.scheme or parts.netloc or (not parts.path and address.startswith(("#", "?"))):
        return address
    target = (folder / unquote(parts.path)).resolve()
    if not target.is_relative_to(root.resolve()) or not (target / "index.html").is_file():
        return address
    path = f"{parts.path.rstrip('/')}/index.html" if parts.path.strip("/") else "index.html"
    return parts._replace(path=path).geturl()

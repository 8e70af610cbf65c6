"""The pages of the copy on a disk: links that lead to files, scripts that a browser loads from a file."""

from __future__ import annotations

import html
import json
import os
import re
from pathlib import Path

from build_tools.disk.links import to_page
from build_tools.disk.scripts import WORKER_SHIM
from build_tools.hosting.policy import FROM_DISK, with_policy

HREF = re.compile(r'(?<=\shref=")([^"]*)(?=")')
SERVER_ONLY = re.compile(r'\s*<link rel="(?:manifest|preload)"[^>]*>')
"""A page opened from a file may not load these, and says so in its console."""

OUR_SCRIPT = re.compile(r'<script src="([^"]*assets/bendbook/bendbook\.js)" type="module"></script>')
THEME_SCRIPT = re.compile(r'(?=<script src="[^"]*assets/javascripts/bundle\.)')

FRAME_WISHES = re.compile(r'(?<=<script id="__config" type="application/json">)[^<]*')
NOT_FROM_DISK = "navigation.instant"
"""Asked for on a page opened from a file, it keeps the theme from telling that the page is there."""


def open_from_disk(copy: Path) -> None:
    """Mend every page of a copy so that it works when opened as a file."""
    for page in copy.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        page.write_text(_mended(text, page.parent, copy), encoding="utf-8")


def _mended(text: str, folder: Path, root: Path) -> str:
    def lead(found: re.Match[str]) -> str:
        return html.escape(to_page(root, folder, html.unescape(found[0])))

    def wish(found: re.Match[str]) -> str:
        wishes = json.loads(found[0])
        wishes["features"] = [feature for feature in wishes["features"] if feature != NOT_FROM_DISK]
        return json.dumps(wishes)

    shim = Path(os.path.relpath(root / WORKER_SHIM, folder)).as_posix()
    text = with_policy(text, FROM_DISK)
    text = HREF.sub(lead, text)
    text = FRAME_WISHES.sub(wish, text)
    text = SERVER_ONLY.sub("", text)
    text = OUR_SCRIPT.sub(r'<script src="\1" defer></script>', text)
    return THEME_SCRIPT.sub(f'<script src="{shim}"></script>', text, count=1)

"""Makes the PDFs: opens each hand-out of a built site in Chromium and prints it.

A site is served from this computer while it is printed, so every link in the PDF is first led to the live
address, or taken off where nobody has said what that is.
"""

from __future__ import annotations

import functools
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

from playwright.sync_api import Page

from build_tools.chromium import open_chromium
from build_tools.hand_outs.kinds import HAND_OUTS, Paper, PdfFile, files_of

MARGIN = "10mm"

_LEAD_LINKS = """([here, live]) => {
    for (const link of document.querySelectorAll("a[href]")) {
        const way = link.href;
        if (!way.startsWith(here)) continue;
        if (live && !way.startsWith(`${location.href.split("#")[0]}#`)) link.href = live + way.slice(here.length);
        else link.removeAttribute("href");
    }
}"""


class PrintingError(Exception):
    """There is nothing to print. The message says what to do."""


def print_hand_outs(site: Path, out: Path, papers: tuple[Paper, ...], live: str = "") -> list[Path]:
    """Print every hand-out of a built site and return the files made.

    site: a finished site. out: the folder for the PDFs; made where it is missing. papers: sizes of paper.
    live: the address the site is found at, for links in the PDFs; empty where nobody has said.
    Raises PrintingError where there is no such site, and ChromiumError where there is no Chromium.
    """
    wanted = [slug for slug in HAND_OUTS if (site / "print" / slug / "index.html").is_file()]
    if not wanted:
        raise PrintingError(f"{site} holds no hand-outs. Build it first: python -m build_tools build")
    out.mkdir(parents=True, exist_ok=True)
    made: list[Path] = []
    with _served(site) as here, open_chromium() as browser:
        page = browser.new_page(service_workers="block")
        for file in (file for slug in wanted for file in files_of(slug, papers)):
            _open(page, f"{here}print/{file.hand_out}/", file)
            page.evaluate(_LEAD_LINKS, [here, live])
            path = out / file.name
            page.pdf(
                path=path,
                format=file.paper.capitalize(),
                margin={"top": MARGIN, "right": MARGIN, "bottom": MARGIN, "left": MARGIN},
                print_background=True,
                tagged=True,
            )
            made.append(path)
    return made


def _open(page: Page, address: str, file: PdfFile) -> None:
    page.emulate_media(media="print", color_scheme="light")
    page.goto(address + ("?large" if file.large else ""))
    page.locator("html:not(.no-js)").wait_for()
    page.evaluate("hand => document.documentElement.dataset.hand = hand", "left" if file.left else "right")
    page.evaluate("document.fonts.ready")


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, *_: Any) -> None:
        """Say nothing."""


@contextmanager
def _served(site: Path) -> Iterator[str]:
    handler = functools.partial(_Quiet, directory=str(site))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}/"
        server.shutdown()

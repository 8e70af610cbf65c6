"""The Chromium of this computer, for printing hand-outs and for looking over a copy on a server."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Browser, Error, sync_playwright

CHROMIUM = "/usr/bin/chromium"
FLAGS = ("--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--disable-background-networking")


class ChromiumError(Exception):
    """Chromium does not start. The message says how to name it."""


@contextmanager
def open_chromium() -> Iterator[Browser]:
    """Open the browser that BENDBOOK_CHROMIUM names, or Debian's, and close it in the end.

    Raises ChromiumError where it does not start.
    """
    executable = os.environ.get("BENDBOOK_CHROMIUM", CHROMIUM)
    with sync_playwright() as running:
        try:
            browser = running.chromium.launch(executable_path=executable, args=list(FLAGS))
        except Error as failed:
            raise ChromiumError(
                f"Chromium did not start from {executable}. Install it, or name it in BENDBOOK_CHROMIUM."
            ) from failed
        yield browser
        browser.close()

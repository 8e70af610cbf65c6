"""Looks over a handbook on a server, as a reader's browser meets it."""

from __future__ import annotations

import json
import re
import time
import urllib.request
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from urllib.parse import urljoin, urlsplit

from playwright.sync_api import (
    BrowserContext,
    ConsoleMessage,
    Error,
    Page,
    Request,
    Response,
    ViewportSize,
    expect,
)

from build_tools.browser.words import PAGE_WORDS
from build_tools.chromium import open_chromium

PHONE: ViewportSize = {"width": 390, "height": 780}
FIRST_COPY_MS = 180_000
ANSWER_MS = 60_000
MOST_SENT = 8_000_000
IS_KEPT = PAGE_WORDS["kept"].text.partition(",")[0]
NOT_KEPT = [PAGE_WORDS[f"kept_{why}"].text for why in ("impossible", "failed", "full", "saving")]
TRY_AGAIN = PAGE_WORDS["kept_failed"].text
"""What it says where a file did not come: that the page be opened again."""
SETTLED = re.compile("|".join(map(re.escape, (IS_KEPT, *NOT_KEPT))))
"""What the page says of its copy once that is settled, in English."""
BROKE_OFF = "The copy broke off."
"""How a page begins its warning on the console when a file did not come."""
CALCULATORS = ("calculators/spin-to-break/", "calculators/pitch-count/")
PAGES = ("", "guide/warning-signs/", "grips/", "print/")
MAY_BE_HIDDEN = ("grips/", "calculators/spin-to-break/")
"""What a league may leave out of its edition."""

UNKNOWN = "no-such-page/at-all/"
SHEET = re.compile(r"""<link[^>]*\bhref=["']?([^"'\s>]+\.css)""")

KEPT = """async () => {
    const kept = [];
    for (const name of await caches.keys()) {
        for (const { url } of await (await caches.open(name)).keys()) kept.push(url.split("?")[0]);
    }
    return kept;
}"""
"""The addresses of what the browser's copy holds."""


@dataclass(frozen=True)
class Finding:
    """One thing looked at: whether it is as it should be, and what was found."""

    good: bool
    what: str


def visit(address: str) -> Iterator[Finding]:
    """Visit a handbook on a server with a fresh browser and yield what is found; ends where nothing answers.

    address: of its first page, such as https://example.org/league/handbook/.
    """
    with open_chromium() as browser, browser.new_context(viewport=PHONE) as context:
        yield from _Visit(address, context).findings()


class _Visit:
    """A visit to one address; notes what the browser asks for and what goes wrong."""

    def __init__(self, address: str, context: BrowserContext) -> None:
        self.address = address if address.endswith("/") else f"{address}/"
        self.context = context
        self.foreign: list[str] = []
        self.wrong: list[str] = []
        self.broke_off: list[str] = []
        context.on("request", self._note)
        context.on("console", self._hear)
        context.on("weberror", lambda error: self.wrong.append(str(error.error)))

    def _note(self, request: Request) -> None:
        parts = urlsplit(request.url)
        if parts.scheme not in ("data", "blob") and parts.netloc != urlsplit(self.address).netloc:
            self.foreign.append(parts.netloc)

    def _hear(self, said: ConsoleMessage) -> None:
        if said.type == "warning" and said.text.startswith(BROKE_OFF):
            self.broke_off.append(said.text)

    def findings(self) -> Iterator[Finding]:
        page = self.context.new_page()
        try:
            first = page.goto(self.address)
        except Error as error:
            yield Finding(False, f"{self.address} cannot be reached: {error.message.splitlines()[0]}")
            return
        if first is None or not first.ok:
            yield Finding(False, f"{self.address} answers {first.status if first else 'nothing'}")
            return
        yield Finding(True, f"{self.address} answers")
        yield _policy(page, first)
        yield self._edition(page)
        yield from self._not_found(page)
        kept = self._copy(page)
        yield kept
        if kept.good:
            addresses = page.evaluate(KEPT)
            yield _size(addresses)
            self.context.set_offline(True)
            yield self._pages_offline(page, self._there(PAGES, addresses))
            yield self._calculators_offline(page, self._there(CALCULATORS, addresses))
        yield Finding(
            not self.foreign, f"asks other hosts: {', '.join(dict.fromkeys(self.foreign)) or 'none'}"
        )
        yield Finding(not self.wrong, f"errors on pages: {'; '.join(self.wrong[:3]) or 'none'}")

    def _edition(self, page: Page) -> Finding:
        answer = page.request.get(urljoin(self.address, "edition.json"))
        if not answer.ok:
            return Finding(False, "edition.json is missing; was the whole site put there?")
        try:
            told = json.loads(answer.body())
            return Finding(True, f"edition {told['edition']} of {told['date']}, {told['files']} files")
        except (ValueError, KeyError, TypeError):
            return Finding(False, "edition.json is another page; was the whole site put there?")

    def _not_found(self, page: Page) -> Iterator[Finding]:
        """Look at the page for an unknown address, where the server shows the handbook's."""
        answer = page.request.get(urljoin(self.address, UNKNOWN))
        text = answer.text() if answer.status == 404 else ""
        sheets = [urljoin(answer.url, sheet) for sheet in SHEET.findall(text)]
        if "bendbook" not in text or not sheets:
            return
        lost = next((sheet for sheet in sheets if not page.request.get(sheet).ok), None)
        said = f"{lost} does not come; set site_url and build again" if lost else "is dressed as the others"
        yield Finding(lost is None, f"the page for an unknown address: {said}")

    def _copy(self, page: Page) -> Finding:
        if not page.evaluate("isSecureContext"):
            return Finding(False, "keeps no copy: the address must begin with https")
        begun = time.monotonic()
        said = self._said_of_copy(page)
        again = said == TRY_AGAIN
        if again:
            page.reload()
            said = self._said_of_copy(page)
        if not said:
            return Finding(False, f"no copy is kept after {FIRST_COPY_MS / 1000:.0f} s")
        if IS_KEPT not in said:
            return Finding(
                False, f"keeps no copy; the page says: {said} {' '.join(self.broke_off[-1:])}".rstrip()
            )
        at_last = ", at the second try" if again else ""
        return Finding(True, f"copy kept after {time.monotonic() - begun:.1f} s{at_last}")

    def _said_of_copy(self, page: Page) -> str:
        """Return what the page says of its copy once that is settled; nothing where it never is."""
        try:
            expect(page.locator("[data-kept]")).to_contain_text(SETTLED, timeout=FIRST_COPY_MS)
        except AssertionError:
            return ""
        return page.locator("[data-kept]").inner_text()

    def _there(self, paths: Sequence[str], addresses: Sequence[str]) -> list[str]:
        """Return the paths but those that this league has hidden, which its copy then lacks."""

        def kept(path: str) -> bool:
            url = urljoin(self.address, path)
            return url in addresses or f"{url}index.html" in addresses

        return [path for path in paths if path not in MAY_BE_HIDDEN or kept(path)]

    def _pages_offline(self, page: Page, paths: Sequence[str]) -> Finding:
        for path in paths:
            try:
                page.goto(urljoin(self.address, path))
                expect(page.locator("main h1").first).to_be_visible()
            except (Error, AssertionError):
                return Finding(False, f"offline, /{path} does not open")
        return Finding(True, f"offline, {len(paths)} pages open")

    def _calculators_offline(self, page: Page, paths: Sequence[str]) -> Finding:
        for path in paths:
            try:
                page.goto(urljoin(self.address, path))
                page.locator("form[data-calculator] [type=submit]").click()
                expect(page.locator("[data-example-note]")).to_be_hidden(timeout=ANSWER_MS)
            except (Error, AssertionError):
                return Finding(False, f"offline, /{path} does not answer")
        return Finding(True, f"offline, {len(paths)} calculators answer")


def _policy(page: Page, first: Response) -> Finding:
    header = first.headers.get("content-security-policy")
    in_page = page.locator("meta[http-equiv=Content-Security-Policy]")
    policy = header or (in_page.get_attribute("content") if in_page.count() else None) or ""
    way = "as a header" if header else "in the page" if policy else "missing"
    return Finding("default-src 'none'" in policy, f"policy against other hosts: {way}")


def _size(addresses: Iterable[str]) -> Finding:
    total = sum(map(_sent, addresses))
    small = total <= MOST_SENT
    mend = "" if small else "; let the server compress what it sends"
    return Finding(small, f"{total / 1e6:.2f} MB sent for the whole copy{mend}")


def _sent(address: str) -> int:
    """Return the bytes that a server sends for a file to a browser, which unpacks."""
    asked = urllib.request.Request(address, headers={"Accept-Encoding": "gzip, br"})
    with urllib.request.urlopen(asked, timeout=30) as answer:
        return len(answer.read())

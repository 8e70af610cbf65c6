"""A server that can be cut off, a real Chromium, and pages on which nothing may go wrong unseen."""

from __future__ import annotations

import functools
import gzip
import http.server
import importlib.util
import io
import os
import shutil
import subprocess
import sys
import threading
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from types import ModuleType
from typing import Any
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, expect, sync_playwright

CHROMIUM = os.environ.get("BENDBOOK_CHROMIUM", "/usr/bin/chromium")
FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-dev-shm-usage",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
HERE = Path(__file__).parent


class Handler(http.server.SimpleHTTPRequestHandler):
    """Serves a folder at a path as a plain static host does: no special headers, its own 404 page."""

    extensions_map = {  # noqa: RUF012
        **http.server.SimpleHTTPRequestHandler.extensions_map,
        ".mjs": "text/javascript",
        ".wasm": "application/wasm",
        ".webmanifest": "application/manifest+json",
    }

    def __init__(self, *args: Any, mount: str, asked: list[str], **options: Any) -> None:
        self._mount = mount
        self._asked = asked
        super().__init__(*args, **options)

    def translate_path(self, path: str) -> str:
        """Return the file below the mounted folder; a file that is not there for any other path."""
        asked = urlsplit(path).path
        if not asked.startswith(self._mount):
            return str(Path(self.directory) / "outside the site")
        self._asked.append(asked.removeprefix(self._mount))
        return super().translate_path("/" + self._asked[-1])

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        """Answer an unknown address with the site's 404 page."""
        page = Path(self.directory) / "404.html"
        if code != 404 or not page.is_file():
            super().send_error(code, message, explain)
            return
        content = page.read_bytes()
        self.send_response(404)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        self.wfile.write(content)

    def log_message(self, *_: Any) -> None:
        """Say nothing."""


class CompressingHandler(Handler):
    """Serves as a host does that compresses what it sends."""

    def send_head(self) -> Any:
        """Answer with the file compressed, where the browser takes that and it is no folder."""
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() and self.path.endswith("/") else path
        if not path.is_file() or "gzip" not in self.headers.get("Accept-Encoding", ""):
            return super().send_head()
        content = gzip.compress(path.read_bytes(), 6)
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        return io.BytesIO(content)


class QuietServer(http.server.ThreadingHTTPServer):
    """Says nothing where a browser hangs up in the middle of a file."""

    request_queue_size = 64

    def handle_error(self, request: Any, client_address: Any) -> None:
        """Report everything but a connection that was dropped."""
        if not isinstance(sys.exc_info()[1], ConnectionError):
            super().handle_error(request, client_address)


class Server:
    """A static server of one folder, which can be cut off and come back at the same address.

    asked: the paths asked for so far, within the site.
    """

    def __init__(self, folder: Path, mount: str = "/", port: int = 0, handler: type = Handler) -> None:
        self.folder = folder
        self._handler = handler
        self._mount = mount
        self._port = port
        self.asked: list[str] = []
        self.start()

    @property
    def url(self) -> str:
        """The address of the site, with a slash at its end."""
        return f"http://127.0.0.1:{self._port}{self._mount}"

    def start(self) -> None:
        """Serve, at the same address as before."""
        handler = functools.partial(
            self._handler, directory=str(self.folder), mount=self._mount, asked=self.asked
        )
        self._server = QuietServer(("127.0.0.1", self._port), handler)
        self._port = self._server.server_port
        threading.Thread(target=self._server.serve_forever, args=(0.02,), daemon=True).start()

    def cut_off(self) -> None:
        """Stop answering: the port refuses every connection."""
        self._server.shutdown()
        self._server.server_close()


@dataclass
class Watch:
    """What went wrong on a page without anyone asking: console errors, exceptions, foreign hosts."""

    allowed_hosts: set[str] = field(default_factory=set)
    errors: list[str] = field(default_factory=list)
    foreign: list[str] = field(default_factory=list)

    def over(self, context: BrowserContext) -> None:
        """Watch every page and worker of a context."""
        context.on("console", lambda said: self.errors.append(said.text) if said.type == "error" else None)
        context.on("weberror", lambda error: self.errors.append(str(error.error)))
        context.on("request", self._note)

    def _note(self, request: Any) -> None:
        address = urlsplit(request.url)
        if address.scheme not in ("blob", "data") and address.netloc not in self.allowed_hosts:
            self.foreign.append(request.url)


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    with sync_playwright() as running:
        yield running


@pytest.fixture(scope="session")
def chromium_options() -> dict[str, Any]:
    return {"executable_path": CHROMIUM, "args": list(FLAGS)}


@pytest.fixture(scope="session")
def chromium(playwright: Playwright, chromium_options: dict[str, Any]) -> Iterator[Browser]:
    browser = playwright.chromium.launch(**chromium_options)
    yield browser
    browser.close()


@pytest.fixture
def serve() -> Iterator[Callable[..., Server]]:
    servers: list[Server] = []

    def start(folder: Path, mount: str = "/", handler: type = Handler) -> Server:
        servers.append(Server(folder, mount, handler=handler))
        return servers[-1]

    yield start
    for server in servers:
        server.cut_off()


@pytest.fixture
def open_page(chromium: Browser) -> Iterator[Callable[..., Page]]:
    """Open a page of a server in a fresh context; at the end nothing may have gone wrong on it.

    `tolerated` names pieces of console errors that the test itself brings about.
    """
    opened: list[tuple[BrowserContext, Watch, tuple[str, ...]]] = []

    def open_(server: Server, path: str = "", *, tolerated: tuple[str, ...] = (), **options: Any) -> Page:
        script = options.pop("before", None)
        context = chromium.new_context(**options)
        watch = Watch({urlsplit(server.url).netloc})
        watch.over(context)
        opened.append((context, watch, tolerated))
        page = context.new_page()
        if script:
            page.add_init_script(script)
        page.set_default_timeout(30_000)
        page.goto(server.url + path)
        return page

    yield open_
    for context, watch, tolerated in opened:
        context.close()
        assert watch.foreign == []
        assert [text for text in watch.errors if not any(part in text for part in tolerated)] == []


@pytest.fixture(scope="session")
def mini() -> ModuleType:
    """The module that makes the small site."""
    spec = importlib.util.spec_from_file_location("mini_pages", HERE / "mini" / "pages.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="session")
def mini_build(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("mini") / "build"


@pytest.fixture(scope="session")
def mini_site(tmp_path_factory: pytest.TempPathFactory, mini: ModuleType, mini_build: Path) -> Path:
    """The small site, built once; a test that changes it works on a copy."""
    site = tmp_path_factory.mktemp("mini") / "site"
    mini.make_site(site, mini_build)
    return site


@pytest.fixture
def mini_copy(mini_site: Path, tmp_path: Path) -> Path:
    return Path(shutil.copytree(mini_site, tmp_path / "site"))


@pytest.fixture(scope="session")
def handbook() -> Path:
    """The handbook itself as `make site` leaves it, or as BENDBOOK_SITE names it; built here if it is not."""
    site = Path(os.environ.get("BENDBOOK_SITE", HERE.parents[1] / "site"))
    if not (site / "sw.js").is_file():
        subprocess.run(
            [sys.executable, "-m", "build_tools", "build", "--site", str(site)],
            check=True,
            cwd=HERE.parents[1],
        )
    return site


LIVE = "https://pennimoor.example/handbook/"
"""Where the demonstration edition says that it is found."""


@pytest.fixture(scope="session")
def league_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demonstration edition with its hand-outs on Letter, or one already built, named in BENDBOOK_LEAGUE_SITE."""
    built = os.environ.get("BENDBOOK_LEAGUE_SITE")
    if built:
        return Path(built)
    folder = tmp_path_factory.mktemp("league")
    places = (
        "--site",
        str(folder / "site"),
        "--build",
        str(folder / "build"),
        "--edition",
        "pennimoor-valley",
    )
    for command in (("build", *places), ("hand-outs", *places, "--paper", "letter")):
        subprocess.run(
            [sys.executable, "-m", "build_tools", *command],
            check=True,
            cwd=HERE.parents[1],
            env=os.environ | {"SITE_URL": LIVE},
        )
    return folder / "site"


PHONE = {"viewport": {"width": 360, "height": 740}, "has_touch": True, "is_mobile": True}
"""A small phone, held upright."""

NO_NETWORK = (
    "ERR_INTERNET_DISCONNECTED",
    "ERR_CONNECTION_REFUSED",
    "Failed to load resource",
    "Failed to fetch",
)
"""What a browser complains of once the network is cut."""


@pytest.fixture
def at_the_field(serve: Callable, open_page: Callable, handbook: Path) -> Callable[[str], Page]:
    """A phone that was on the handbook once; after that there is no network. Opens a page by its path."""
    server = serve(handbook)
    page = open_page(server, tolerated=NO_NETWORK, before="window.print = () => {}", **PHONE)
    expect(page.locator("[data-kept]")).to_contain_text("Kept on this device", timeout=60_000)
    server.cut_off()
    page.context.set_offline(True)

    def open_(path: str) -> Page:
        page.goto(server.url + path)
        expect(page.locator("h1").first).to_be_visible()
        assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
        return page

    return open_

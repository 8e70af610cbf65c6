"""The handbook on a server: what it lets a page do, and what a visit to it finds."""

from __future__ import annotations

import base64
import hashlib
import shutil
import socket
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser

from build_tools.hosting.headers import KEPT_FOLDERS, SERVERS, headers
from build_tools.hosting.policy import INLINE_SCRIPT, policy_of, with_policy
from tests.browser.conftest import CompressingHandler, Handler

pytestmark = pytest.mark.browser
PROJECT = Path(__file__).resolve().parents[2]


def visited(address: str) -> tuple[int, list[str]]:
    """Visit an address by the command and return its exit code and lines."""
    done = subprocess.run(
        [sys.executable, "-m", "build_tools", "visit", address],
        cwd=PROJECT,
        capture_output=True,
        text=True,
        timeout=300,
        check=False,
    )
    assert not done.stderr
    return done.returncode, done.stdout.splitlines()


def test_every_page_says_what_it_may_load_before_it_loads_anything(handbook: Path) -> None:
    for page in handbook.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        policy = text.index('<meta http-equiv="Content-Security-Policy"')
        assert policy < min(text.index("<link"), text.index("<script")), page
        # W3C, Content Security Policy Level 3: the hash is that of the script's text in UTF-8.
        for script in INLINE_SCRIPT.findall(text):
            digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
            assert f"'sha256-{digest}'" in text, page


def test_a_page_can_ask_nothing_of_another_host_and_run_nothing_put_into_it(
    serve: Callable, chromium: Browser, handbook: Path
) -> None:
    tried = """async () => {
        const refused = [];
        document.addEventListener("securitypolicyviolation", (event) => refused.push(event.effectiveDirective));
        await fetch("https://pennimoor.example/").catch(() => {});
        const put = (name, given) => document.head.append(Object.assign(document.createElement(name), given));
        put("script", { textContent: "self.ran = true" });
        put("script", { src: "https://pennimoor.example/a.js" });
        put("img", { src: "https://pennimoor.example/a.png" });
        put("link", { rel: "stylesheet", href: "https://pennimoor.example/a.css" });
        await new Promise((next) => setTimeout(next, 500));
        return [self.ran ?? false, refused.sort()];
    }"""
    with chromium.new_context(service_workers="block") as context:
        page = context.new_page()
        page.goto(serve(handbook).url + "grips/")
        ran, refused = page.evaluate(tried)
    assert not ran
    assert refused == ["connect-src", "img-src", "script-src-elem", "script-src-elem", "style-src-elem"]


def test_a_visit_finds_a_whole_handbook_in_a_folder_and_a_server_that_does_not_compress(
    serve: Callable, handbook: Path
) -> None:
    code, lines = visited(serve(handbook, "/league/handbook/").url)
    assert code == 1
    unknown, size = (line for line in lines if line.startswith("WRONG"))
    assert "/assets/" in unknown
    assert unknown.endswith("does not come; set site_url and build again")
    assert size.endswith("MB sent for the whole copy; let the server compress what it sends")
    found = "\n".join(lines)
    for good in (
        "answers",
        "policy against other hosts: in the page",
        "copy kept after",
        "offline, 4 pages open",
        "offline, 2 calculators answer",
        "asks other hosts: none",
        "errors on pages: none",
    ):
        assert good in found


def test_a_visit_tells_of_a_copy_that_was_put_there_in_part(
    serve: Callable, handbook: Path, tmp_path: Path
) -> None:
    site = shutil.copytree(handbook, tmp_path / "site")
    (site / "sw.js").unlink()
    (site / "edition.json").unlink()
    page = (site / "index.html").read_text(encoding="utf-8")
    (site / "index.html").write_text(page.replace("Content-Security-Policy", "X-Nothing"), encoding="utf-8")
    code, lines = visited(serve(site).url)
    assert code == 1
    wrong = "\n".join(line for line in lines if line.startswith("WRONG"))
    assert "policy against other hosts: missing" in wrong
    assert "edition.json is missing" in wrong
    assert "keeps no copy; the page says: This browser keeps no copy" in wrong


def test_a_visit_names_the_file_that_keeps_a_copy_from_being_whole(
    serve: Callable, handbook: Path, tmp_path: Path
) -> None:
    site = shutil.copytree(handbook, tmp_path / "site")
    (site / "glossary" / "index.html").unlink()
    code, lines = visited(serve(site, handler=CompressingHandler).url)
    assert code == 1
    (wrong,) = (line for line in lines if line.startswith("WRONG"))
    assert "the page says: No copy is kept yet. Open this page again" in wrong
    assert "glossary/" in wrong


class SameForAll(Handler):
    """Answers whatever is asked for with the first page."""

    def translate_path(self, path: str) -> str:
        """Return the first page."""
        return super().translate_path("/index.html")


def test_a_visit_to_a_server_with_one_answer_for_all_says_what_is_wrong(
    serve: Callable, tmp_path: Path
) -> None:
    (tmp_path / "index.html").write_text(
        '<!doctype html><meta http-equiv="Content-Security-Policy" content="x"><p data-kept>'
        "This browser keeps no copy. You need a connection to read on.</p>",
        encoding="utf-8",
    )
    code, lines = visited(serve(tmp_path, handler=SameForAll).url)
    assert code == 1
    assert "WRONG  edition.json is another page; was the whole site put there?" in lines


class DropsTheFirst(CompressingHandler):
    """Hangs up on whoever asks for the glossary, but only once."""

    dropped = False

    def send_head(self) -> Any:
        """Answer as ever from the second time on."""
        if self.path.endswith("/glossary/index.html") and not DropsTheFirst.dropped:
            DropsTheFirst.dropped = True
            self.connection.shutdown(socket.SHUT_RDWR)
            return None
        return super().send_head()


def test_a_visit_gives_a_copy_that_broke_off_one_more_try(serve: Callable, handbook: Path) -> None:
    code, lines = visited(serve(handbook, handler=DropsTheFirst).url)
    assert DropsTheFirst.dropped
    assert code == 0
    assert [line for line in lines if line.endswith("at the second try")]


def test_a_visit_to_nobody_says_so(serve: Callable, tmp_path: Path) -> None:
    server = serve(tmp_path)
    server.cut_off()
    code, lines = visited(server.url)
    assert (code, len(lines)) == (1, 1)
    assert "cannot be reached" in lines[0]
    server.start()


def test_a_page_gets_one_policy_however_often_it_is_finished() -> None:
    page = '<head><meta charset="utf-8"><script>a()</script></head>'
    once = with_policy(page, policy_of([page]))
    assert with_policy(once, policy_of([once])) == once
    assert once.count("Content-Security-Policy") == 1


@pytest.mark.parametrize("server", SERVERS)
def test_a_server_is_told_to_ask_again_but_for_files_whose_address_changes_with_them(
    handbook: Path, server: str
) -> None:
    told = SERVERS[server](headers(handbook), "/league/handbook/")
    assert told.index("no-cache") < told.index("immutable")
    assert "frame-ancestors 'none'" in told
    for folder in KEPT_FOLDERS:
        assert folder in told
    assert "/league/handbook/" in told

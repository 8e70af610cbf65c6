"""A finished site: the same on every build, whole, small, and honest about what a browser must fetch."""

from __future__ import annotations

import base64
import datetime
import hashlib
import json
import re
import shutil
import subprocess
import zipfile
from pathlib import Path
from types import ModuleType

import pytest

from build_tools.browser.words import PAGE_WORDS
from build_tools.finish import FinishError, edition_date, finish
from build_tools.finish.page_changes import let_pages_change
from build_tools.finish.tidy import tidy

PROJECT = Path(__file__).resolve().parents[2]
PAGE_SCRIPTS = PROJECT / "build_tools" / "browser" / "page"
ASSETS = Path("assets") / "bendbook"


def files_of(site: Path) -> dict[str, str]:
    found = sorted(path for path in site.rglob("*") if path.is_file())
    return {
        path.relative_to(site).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest() for path in found
    }


def kept_files(site: Path) -> dict[str, str]:
    """Address -> SHA-256, as the offline worker was told."""
    listed = re.search(r"files:(\[\[.+?\]\])", (site / "sw.js").read_text(encoding="utf-8"))
    assert listed
    return {path: sha256 for path, sha256, _ in json.loads(listed[1])}


def test_two_builds_give_the_same_files_to_the_byte(
    mini: ModuleType, mini_site: Path, tmp_path: Path
) -> None:
    mini.make_site(tmp_path / "site", tmp_path / "build-without-cache")
    assert files_of(tmp_path / "site") == files_of(mini_site)


def test_the_worker_keeps_every_file_with_its_own_hash_and_nothing_else(mini_site: Path) -> None:
    expected = {
        path: base64.b64encode(bytes.fromhex(digest)).decode()
        for path, digest in files_of(mini_site).items()
        if path != "sw.js"
    }
    assert kept_files(mini_site) == expected
    assert "404.html" in expected
    assert "edition.json" in expected


def test_the_trimmed_library_is_compiled_and_half_the_stock_one(mini_site: Path) -> None:
    trimmed = mini_site / ASSETS / "runtime" / "python_stdlib.zip"
    names = zipfile.ZipFile(trimmed).namelist()
    assert {Path(name).suffix for name in names} == {".pyc"}
    stock = PROJECT / "node_modules" / "pyodide" / "python_stdlib.zip"
    assert trimmed.stat().st_size < 0.55 * stock.stat().st_size


def test_a_calculator_that_does_not_answer_stops_the_build(mini: ModuleType, tmp_path: Path) -> None:
    mini.make_site(tmp_path / "site", tmp_path / "build")
    with pytest.raises(FinishError, match="fall does not answer its example"):
        finish(
            tmp_path / "site",
            tmp_path / "build",
            questions={"fall": {"seconds": "never"}},
            package=mini.HERE / "calculators",
        )


def test_a_library_module_that_the_trimming_lost_stops_the_build(mini: ModuleType, tmp_path: Path) -> None:
    package = Path(shutil.copytree(mini.HERE / "calculators", tmp_path / "calculators"))
    counter = package / "desk" / "counter.py"
    # Hidden from the packer, as an import that some library makes only when it is called.
    hidden = 'fields = __import__("color" + "sys") and json.loads(fields_json)'
    counter.write_text(counter.read_text().replace("fields = json.loads(fields_json)", hidden))
    mini.make_site(tmp_path / "site", tmp_path / "build")
    with pytest.raises(FinishError, match="No module named 'colorsys'"):
        finish(tmp_path / "site", tmp_path / "build", questions=mini.QUESTIONS, package=package)


def test_a_handbook_too_large_for_a_phone_stops_the_build(mini: ModuleType, tmp_path: Path) -> None:
    report = mini.make_site(tmp_path / "site", tmp_path / "build")
    sent = sum(report.sent.values())
    assert f"{sent / 1e6:5.2f} MB sent" in report.text
    with pytest.raises(FinishError, match="on its way to a phone"):
        finish(
            tmp_path / "site",
            tmp_path / "build",
            questions=mini.QUESTIONS,
            package=mini.HERE / "calculators",
            most_sent=sent // 2,
        )


def test_without_content_the_message_says_what_to_do_first(mini: ModuleType, tmp_path: Path) -> None:
    with pytest.raises(FinishError, match="Build the pages first"):
        finish(tmp_path, tmp_path, questions={})
    (tmp_path / "index.html").write_text("<p>")
    with pytest.raises(FinishError, match=r"shelf\.json is missing"):
        finish(tmp_path, tmp_path, questions={}, package=mini.HERE / "calculators")


def test_an_edition_is_of_the_day_that_reproducible_builds_name(monkeypatch: pytest.MonkeyPatch) -> None:
    # https://reproducible-builds.org/specs/source-date-epoch/: seconds since 1970 in UTC.
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1779235199")
    assert edition_date() == datetime.date(2026, 5, 19)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1779235200")
    assert edition_date() == datetime.date(2026, 5, 20)


def test_a_sitemap_does_not_tell_the_day_of_the_build(tmp_path: Path) -> None:
    page = "<url>\n<loc>https://example.org/</loc>"
    (tmp_path / "sitemap.xml").write_text(f"<urlset>{page}\n<lastmod>2026-05-16</lastmod></url></urlset>")
    (tmp_path / "sitemap.xml.gz").write_bytes(b"packed with its date")
    tidy(tmp_path)
    assert (tmp_path / "sitemap.xml").read_text() == f"<urlset>{page}</url></urlset>"
    assert not (tmp_path / "sitemap.xml.gz").exists()


def put_frame(site: Path, sitemap: str, script: str) -> tuple[Path, Path]:
    """Put what the theme leaves of the sitemap and its script into a site with two pages."""
    for page in (
        site / "index.html",
        site / "cues" / "index.html",
        site / "assets" / "javascripts" / "bundle.1.js",
    ):
        page.parent.mkdir(parents=True, exist_ok=True)
        page.write_text(script, encoding="utf-8")
    (site / "sitemap.xml").write_text(sitemap, encoding="utf-8")
    return site / "sitemap.xml", site / "assets" / "javascripts" / "bundle.1.js"


def test_a_site_that_does_not_know_its_address_lists_its_pages_from_its_root(tmp_path: Path) -> None:
    sitemap, script = put_frame(tmp_path, "<urlset></urlset>", "i=[f(new URL(n.textContent),t)]")
    let_pages_change(tmp_path)
    assert re.findall("<loc>(.*?)</loc>", sitemap.read_text()) == ["./", "cues/"]
    assert script.read_text() == "i=[f(new URL(n.textContent,t),t)]"


def test_a_site_that_knows_its_address_keeps_its_sitemap(tmp_path: Path) -> None:
    whole = "<urlset><url><loc>https://example.org/</loc></url></urlset>"
    sitemap, script = put_frame(tmp_path, whole, "f(new URL(n.textContent),t)")
    let_pages_change(tmp_path)
    assert (sitemap.read_text(), script.read_text()) == (whole, "f(new URL(n.textContent),t)")


def test_a_theme_that_reads_the_sitemap_otherwise_is_not_taken_silently(tmp_path: Path) -> None:
    put_frame(tmp_path, "<urlset></urlset>", "f(URL.parse(n.textContent))")
    with pytest.raises(FinishError, match="READ_WHOLE"):
        let_pages_change(tmp_path)


@pytest.mark.parametrize(
    ("languages", "left"),
    [(["en"], []), (["en", "es"], ["lunr.es.min.js", "lunr.multi.min.js", "lunr.stemmer.support.min.js"])],
)
def test_only_the_stemmers_of_the_handbooks_languages_stay(
    tmp_path: Path, languages: list[str], left: list[str]
) -> None:
    lunr = tmp_path / "assets" / "javascripts" / "lunr"
    (lunr / "min").mkdir(parents=True)
    for name in ("lunr.es", "lunr.de", "lunr.multi", "lunr.stemmer.support"):
        (lunr / "min" / f"{name}.min.js").write_text("")
    (lunr / "wordcut.js").write_text("")
    (tmp_path / "search").mkdir()
    (tmp_path / "search" / "search_index.json").write_text(json.dumps({"config": {"lang": languages}}))
    tidy(tmp_path)
    assert sorted(path.name for path in lunr.rglob("*.js")) == left


def test_source_maps_and_what_points_at_them_are_gone(tmp_path: Path) -> None:
    (tmp_path / "bundle.js").write_text("run()\n//# sourceMappingURL=bundle.js.map\n")
    (tmp_path / "main.css").write_text("a{}\n/*# sourceMappingURL=main.css.map */")
    (tmp_path / "bundle.js.map").write_text("{}")
    tidy(tmp_path)
    assert (tmp_path / "bundle.js").read_text().strip() == "run()"
    assert (tmp_path / "main.css").read_text().strip() == "a{}"
    assert not (tmp_path / "bundle.js.map").exists()


def test_the_page_script_and_its_words_agree_on_every_name() -> None:
    script = "\n".join(path.read_text(encoding="utf-8") for path in PAGE_SCRIPTS.glob("*.js"))
    asked = set(re.findall(r'(?:word|button)\("(\w+)"', script))
    assert asked <= set(PAGE_WORDS)
    prefixes = tuple(re.findall(r"word\(`(\w+_)\$\{", script))
    named = set(re.findall(r'"(\w+)"', script))
    assert {name for name in PAGE_WORDS if name not in named and not name.startswith(prefixes)} == set()


def test_every_state_of_the_kept_copy_has_its_sentence() -> None:
    script = (PAGE_SCRIPTS / "edition.js").read_text(encoding="utf-8")
    worker = (PAGE_SCRIPTS.parent / "offline" / "service_worker.js").read_text(encoding="utf-8")
    states = set(re.findall(r'to\(\{ name: "(\w+)"', script)) - {"kept", "keeping"}
    states |= set(re.findall(r'failed: full \? "(\w+)" : "(\w+)"', worker)[0])
    assert {f"kept_{state}" for state in states} <= set(PAGE_WORDS)


def test_scripts_keep_to_what_the_reader_may_refuse() -> None:
    """Storage is asked for in one place only, because a refusal can throw."""
    for path in PAGE_SCRIPTS.glob("*.js"):
        text = path.read_text(encoding="utf-8")
        if path.name != "storage.js":
            assert not re.search(r"(?:local|session)Storage[.\[]", text), path.name


def test_icons_are_squares_of_the_size_that_their_names_say() -> None:
    icons = PROJECT / "build_tools" / "browser" / "icons"
    for icon in icons.glob("*.png"):
        header = icon.read_bytes()[:24]
        assert header[:8] == b"\x89PNG\r\n\x1a\n"
        width, height = (int.from_bytes(header[at : at + 4], "big") for at in (16, 20))
        assert f"-{width}.png" in icon.name
        assert width == height


def test_the_scripts_of_the_browser_are_valid_for_node_too() -> None:
    for path in (PROJECT / "build_tools" / "browser" / "pack").glob("*.mjs"):
        subprocess.run(["node", "--check", str(path)], check=True)

"""Our build beside plain mkdocs-material on the same Markdown, and how it grows with the content.

Every figure that needs drawing has been drawn once before (a build keeps drawings); the first build of a
fresh clone is measured apart.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from bench.measure import Figure
from build_tools.places import PROJECT, Places

PLAIN = """
site_name: Plain
docs_dir: {docs}
site_dir: {site}
theme: {{name: material, font: false}}
plugins: [search]
markdown_extensions: [admonition, attr_list, def_list, md_in_html, tables, toc]
"""
COPIED_KIND = "cues"


def figures() -> Iterator[Figure]:
    """Measure and yield each figure."""
    with tempfile.TemporaryDirectory() as folder:
        work = Path(folder)
        places = Places(build=PROJECT / "build", site=work / "site")
        _ours(places.content, places.site)
        ours = _seconds(lambda: _ours(places.content, places.site))
        config = work / "plain.yml"
        config.write_text(PLAIN.format(docs=places.docs, site=work / "plain"), encoding="utf-8")
        plain = _seconds(lambda: _run(sys.executable, "-m", "mkdocs", "build", "--quiet", "-f", str(config)))
        yield Figure("build: ours, as times plain mkdocs-material on the same pages", ours / plain, 2)
        small = _generated(work, 0)
        for entries in (500, 2000):
            grown = _generated(work, entries)
            per_entry = (grown.seconds - small.seconds) / (grown.pages - small.pages)
            alone = small.seconds / small.pages
            yield Figure(
                f"build: pages made at {grown.pages} entries, time an entry as times today's",
                per_entry / alone,
                2,
            )


@dataclass(frozen=True)
class _Grown:
    pages: int
    seconds: float


def _generated(work: Path, extra: int) -> _Grown:
    """Time the generate step on the content with `extra` copies of one cue."""
    content = work / f"content-{extra}"
    shutil.copytree(PROJECT / "content", content)
    model = next((content / COPIED_KIND).glob("*.md")).read_text(encoding="utf-8")
    for number in range(extra):
        name = "".join("abcdefghij"[int(digit)] for digit in f"{number:05d}")
        (content / COPIED_KIND / f"copy-{name}.md").write_text(model, encoding="utf-8")
    build = work / f"build-{extra}"
    shutil.copytree(PROJECT / "build" / "figures", build / "figures")
    command = ("generate", "--content", str(content), "--build", str(build))
    seconds = _seconds(lambda: _run(sys.executable, "-m", "build_tools", *command))
    return _Grown(len(list((build / "docs").rglob("*.md"))), seconds)


def _ours(content: Path, site: Path) -> None:
    _run(sys.executable, "-m", "build_tools", "build", "--content", str(content), "--site", str(site))


def _seconds(work: Callable[[], None]) -> float:
    began = time.perf_counter()
    work()
    return time.perf_counter() - began


def _run(*command: str) -> None:
    environment = os.environ | {"NO_MKDOCS_2_WARNING": "1"}
    subprocess.run(command, cwd=PROJECT, env=environment, check=True, capture_output=True)

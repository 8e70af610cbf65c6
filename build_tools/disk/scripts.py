"""The scripts of the copy on a disk: the page's own, the packed runtime, and the search index."""

from __future__ import annotations

import base64
import gzip
import json
from pathlib import Path

from build_tools.disk.links import to_page
from build_tools.finish.node import BROWSER, NODE_MODULES, bundle
from build_tools.finish.page_script import page_values

ASSETS = Path("assets") / "bendbook"
FETCHED = ("*.mjs", "*.wasm", "*.zip", "*.bin", "*.json")
WORKER_SHIM = Path("assets") / "javascripts" / "iframe-worker.js"
"""Lets the theme's search run where a browser starts no worker from a file."""

KEEP_REAL_WORKER = "self.bendbookWorker = self.Worker;\n"
"""The calculators need the browser's own kind, which the shim replaces."""


def put_scripts(site: Path, copy: Path, date: str) -> None:
    """Put into `copy` the scripts that take the place of what a server's page fetches.

    site: the finished site. date: the day the edition is of, YYYY-MM-DD.
    """
    runtime = site / ASSETS / "runtime"
    wanted = {
        file.name: file
        for pattern in FETCHED
        for file in runtime.glob(pattern)
        if file.name != "interpreter.mjs"
    }
    packed = {name: _packed(file) for name, file in sorted(wanted.items())}
    script = f"self.bendbookRuntime={json.dumps(packed, separators=(',', ':'))};\n"
    (copy / ASSETS / "runtime_packed.js").write_text(script, encoding="utf-8")
    values = page_values("", on_disk_since=date)
    bundle(BROWSER / "page" / "bendbook.js", copy / ASSETS / "bendbook.js", values, classic=True)
    shim = (NODE_MODULES / "iframe-worker" / "shim" / "index.js").read_text(encoding="utf-8")
    (copy / WORKER_SHIM).write_text(KEEP_REAL_WORKER + shim, encoding="utf-8")
    _put_search(copy)


def _put_search(copy: Path) -> None:
    """Turn the search index into the script that the theme looks for on a page opened from a disk."""
    index = copy / "search" / "search_index.json"
    found = json.loads(index.read_text(encoding="utf-8"))
    for entry in found["docs"]:
        entry["location"] = to_page(copy, copy, entry["location"])
    text = json.dumps(found, separators=(",", ":"), ensure_ascii=False)
    index.with_suffix(".js").write_text(f"var __index = {text};\n", encoding="utf-8")
    index.unlink()


def _packed(file: Path) -> str:
    return base64.b64encode(gzip.compress(file.read_bytes(), 9, mtime=0)).decode()

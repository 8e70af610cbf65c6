"""Runs the few scripts that need node: esbuild bundles, and Pyodide compiles for itself."""

from __future__ import annotations

import json
import subprocess
import tempfile
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from build_tools.finish.errors import FinishError

PROJECT = Path(__file__).resolve().parents[2]
NODE_MODULES = PROJECT / "node_modules"
BROWSER = PROJECT / "build_tools" / "browser"


def run_node(script: Path, job: Mapping[str, Any]) -> str:
    """Run a script of ours with its job and return what it printed.

    Raises FinishError with the script's own message, or saying how to install node's packages.
    """
    if not NODE_MODULES.is_dir():
        raise FinishError("The browser's packages are missing. Run `npm ci` in the project's folder.")
    with tempfile.TemporaryDirectory() as folder:
        described = Path(folder) / "job.json"
        described.write_text(json.dumps(job), encoding="utf-8")
        try:
            done = subprocess.run(
                ["node", str(script), str(described)],
                cwd=PROJECT,
                capture_output=True,
                text=True,
                check=False,
            )
        except FileNotFoundError as missing:
            raise FinishError("node is missing. Install Node.js 20 or newer.") from missing
    if done.returncode:
        raise FinishError(f"{script.name} failed:\n{done.stderr.strip()}")
    return done.stdout


def bundle(
    entry: Path,
    out: Path,
    define: Mapping[str, Any],
    external: tuple[str, ...] = (),
    *,
    classic: bool = False,
) -> None:
    """Bundle a script and what it imports into one file; `define` puts the build's values in.

    classic: not as a module; a page opened from a disk can load no other.
    """
    out.parent.mkdir(parents=True, exist_ok=True)
    job = {
        "entry": str(entry),
        "out": str(out),
        "define": dict(define),
        "external": list(external),
        "classic": classic,
    }
    run_node(BROWSER / "pack" / "bundle.mjs", job)

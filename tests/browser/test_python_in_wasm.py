"""The calculators under the reader's own kind of Python: the same tests pass, the same numbers come out."""

from __future__ import annotations

import ast
import json
import math
import re
import subprocess
import sys
import sysconfig
from pathlib import Path

import pytest

HERE = Path(__file__).parent
PROJECT = HERE.parents[1]
RUNNER = HERE / "run_in_pyodide.mjs"
ROOMS = ("physics", "coaching", "workload", "desk", "published")
NOT_IN_WASM = re.compile(
    r"^\s*(?:from|import) (?:numpy|scipy|hypothesis|pydantic|build_tools|time)\b", re.MULTILINE
)
"""What has no wasm build here, and clocks, whose bounds are those of another machine."""
REPLACED = {PROJECT / "tests/workload/shelf.py", PROJECT / "tests/coaching/handbook.py"}
"""Helpers for which shelf_stand_ins.py puts others that need nothing but the shelf."""


def runs_in_wasm(path: Path) -> bool:
    """Say whether a test, with the helpers of ours that it imports, needs only what is there."""
    text = path.read_text(encoding="utf-8")
    helpers = helpers_of(text)
    shared = path.with_name("conftest.py")
    if path.name.startswith("test_") and shared.is_file():
        helpers.add(shared)
    return not NOT_IN_WASM.search(text) and all(runs_in_wasm(helper) for helper in helpers)


def helpers_of(text: str) -> set[Path]:
    """Return the modules below tests/ that a source imports."""
    imports = [node for node in ast.walk(ast.parse(text)) if isinstance(node, ast.ImportFrom)]
    named = [(node.module or "", alias.name) for node in imports for alias in node.names]
    paths = {PROJECT / f"{module.replace('.', '/')}.py" for module, _ in named if module.startswith("tests.")}
    paths |= {
        PROJECT / module.replace(".", "/") / f"{name}.py"
        for module, name in named
        if module.startswith("tests")
    }
    return {path for path in paths if path.is_file()} - REPLACED


def in_wasm(shelf: Path, *args: str) -> subprocess.CompletedProcess[str]:
    packages = sysconfig.get_path("purelib")
    command = ["node", str(RUNNER), str(PROJECT), packages, str(shelf), *args]
    return subprocess.run(command, capture_output=True, text=True, check=False)


@pytest.fixture
def shelf(handbook: Path) -> Path:
    return handbook / "assets" / "bendbook" / "runtime" / "shelf.json"


def test_the_calculators_own_tests_pass_in_the_readers_python(shelf: Path) -> None:
    files = [path for room in ROOMS for path in sorted((PROJECT / "tests" / room).glob("test_*.py"))]
    chosen = [path for path in files if runs_in_wasm(path)]
    assert {path.parent.name for path in chosen} >= {"physics", "workload", "published", "desk"}
    done = in_wasm(shelf, *(str(path.relative_to(PROJECT)) for path in chosen))
    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]
    passed = re.search(r"(\d+) passed", done.stdout)
    assert passed
    assert int(passed[1]) > 200


def test_both_pythons_give_the_same_numbers_to_a_millionth_of_a_millionth(shelf: Path) -> None:
    # Not to the last bit: the two come with different mathematical libraries.
    program = HERE / "numbers_of_flights.py"
    done = in_wasm(shelf, "--program", str(program.relative_to(PROJECT)))
    assert done.returncode == 0, done.stderr[-2000:]
    in_browser = json.loads(done.stdout.strip().splitlines()[-1])
    here = subprocess.run(
        [sys.executable, str(program)], capture_output=True, text=True, check=True, cwd=PROJECT
    )
    in_cpython = json.loads(here.stdout)
    assert in_browser.keys() == in_cpython.keys()
    assert len(in_cpython) >= 32
    for flight, figures in in_cpython.items():
        for browsers, ours in zip(in_browser[flight], figures, strict=True):
            assert math.isclose(browsers, ours, rel_tol=1e-12, abs_tol=1e-13), flight

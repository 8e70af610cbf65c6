"""What a curator meets at the command line."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from build_tools.places import PROJECT


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "build_tools", *arguments]
    return subprocess.run(command, cwd=PROJECT, capture_output=True, text=True, check=False)


def test_right_content_is_counted(small: Path) -> None:
    done = run("check", "--content", str(small))
    assert done.returncode == 0
    assert "entries, no mistakes" in done.stdout


def test_a_mistake_ends_with_one_and_is_told_without_a_traceback(small: Path, edit) -> None:
    line = edit("cues/rope-pull.md", "leads_to: straight", "leads_to: strait")
    done = run("check", "--content", str(small))
    assert done.returncode == 1
    assert "Traceback" not in done.stderr
    assert done.stderr.splitlines() == [
        "content/cues/rope-pull.md",
        f'  line {line}, effects 1.leads_to: a name in profiles; found "strait". Did you mean "straight"?',
        "1 mistake in 1 file. Nothing was built.",
    ]


def test_generate_says_what_it_wrote(small: Path, tmp_path: Path) -> None:
    arguments = ("generate", "--content", str(small), "--build", str(tmp_path / "build"))
    assert "0 as they were" in run(*arguments).stdout
    assert "0 files written" in run(*arguments).stdout


def test_serve_without_a_site_says_what_to_run_first(tmp_path: Path) -> None:
    done = run("serve", "--site", str(tmp_path / "nothing"))
    assert done.returncode == 1
    assert "python -m build_tools build" in done.stderr

"""The steps that content/editions/README.md tells a league are run here as they stand there."""

from __future__ import annotations

import json
import os
import re
import shutil
import signal
import socket
import subprocess
import time
import urllib.request
from pathlib import Path

import pytest

pytestmark = pytest.mark.browser
PROJECT = Path(__file__).resolve().parents[2]
README = PROJECT / "content" / "editions" / "README.md"
NAME = "quillon-flats-youth-baseball"

READ_A_MINUTE = 200
"""Words that somebody takes in a minute who reads instructions with care (estimate)."""
TYPED_A_MINUTE = 100
"""Letters an unpractised typist writes in a minute: 20 words of 5 letters (estimate)."""
MOST_MINUTES = 10


def steps() -> str:
    text = README.read_text(encoding="utf-8")
    return text[text.index("## A new edition") : text.index("## What an edition may hold")]


def commands() -> list[str]:
    return re.findall(r"```sh\n\s*(.+)\n\s*```", steps())


def answers() -> list[str]:
    rows = re.findall(r"^\s*\| ([^|]+) \|([^|]*)\|\s*$", steps(), re.MULTILINE)
    return [typed.strip() for question, typed in rows if question != "It asks"]


@pytest.fixture(scope="module")
def tree(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The project as somebody has it who has just run `make ready`."""
    tree = tmp_path_factory.mktemp("project") / "bendbook"
    left_out = shutil.ignore_patterns(
        ".*", "node_modules", "site*", "build", "tests", "*.egg-info", "__pycache__"
    )
    shutil.copytree(PROJECT, tree, ignore=left_out)
    for kept in ("figures", "cache"):
        if (PROJECT / "build" / kept).is_dir():
            shutil.copytree(PROJECT / "build" / kept, tree / "build" / kept)
    for name in (".venv", "node_modules"):
        (tree / name).mkdir()
        for path in (PROJECT / name).iterdir():
            if path.name != "ready":
                (tree / name / path.name).symlink_to(path)
    for name in (".venv", "node_modules"):
        (tree / name / "ready").touch()
    return tree


def run(tree: Path, command: str, typed: str = "") -> str:
    environment = {name: value for name, value in os.environ.items() if name != "SITE_URL"}
    done = subprocess.run(
        command,
        shell=True,
        cwd=tree,
        input=typed,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, f"{command}\n{done.stdout}\n{done.stderr}"
    return done.stdout


def test_reading_and_typing_take_less_than_ten_minutes() -> None:
    text = steps()
    assert len(re.findall(r"^\d+\. ", text, re.MULTILINE)) == 6
    assert "in six steps" in text
    words = len(re.findall(r"\w+", text))
    typed = sum(len(line) + 1 for line in (*commands(), *answers()))
    assert len(commands()) == 5
    assert len(answers()) == 14
    assert words / READ_A_MINUTE + typed / TYPED_A_MINUTE < MOST_MINUTES


def test_every_command_of_the_steps_does_what_they_say(tree: Path) -> None:
    typed = "".join(f"{answer}\n" for answer in answers())
    for command in commands():
        run(tree, command, typed if command == "make new-edition" else "")
    site = tree / f"site-{NAME}"
    assert "Quillon Flats Youth Baseball" in (site / "league" / "index.html").read_text(encoding="utf-8")
    assert json.loads((site / "edition.json").read_text(encoding="utf-8"))["files"] > 100
    assert (site / "hand-outs" / "bag-letter.pdf").read_bytes().startswith(b"%PDF")
    assert "hand-outs/bag-letter.pdf" in (site / "print" / "index.html").read_text(encoding="utf-8")
    assert not (site / "grips" / "sweeper-grip").exists(), "no division is old enough for it"

    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    served = subprocess.Popen(
        ["make", "serve-edition", f"NAME={NAME}", f"PORT={port}"],
        cwd=tree,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        start_new_session=True,
    )
    try:
        for _ in range(100):
            try:
                with urllib.request.urlopen(f"http://127.0.0.1:{port}/league/") as answered:
                    assert answered.status == 200
                break
            except OSError:
                time.sleep(0.1)
        else:
            pytest.fail("the edition is not served")
    finally:
        os.killpg(served.pid, signal.SIGTERM)
        served.wait(10)


def test_an_edition_after_the_pattern_of_the_demonstration_is_whole_too(tree: Path) -> None:
    typed = "".join(f"{answer}\n" for answer in ("Second League of Nowhere", *answers()[1:]))
    output = run(tree, "make new-edition LIKE=pennimoor-valley", typed)
    assert "second-league-of-nowhere/edition.yml" in output
    assert "Edition second-league-of-nowhere: no mistakes." in run(tree, "make check")

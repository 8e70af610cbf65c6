"""Slips of a hand end in a message that says how to put them right, never in a traceback."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.build_tools.conftest import Edit, Mistakes
from tests.build_tools.test_command_line import run


@pytest.mark.parametrize("command", ["hand-outs", "headers", "disk"])
def test_a_command_on_a_site_that_was_not_built_says_to_build_it(command: str) -> None:
    done = run(command, "--edition", "nope")
    assert done.returncode == 1
    assert "Build it first." in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize("address", ["127.0.0.1:8303/book/", "league.example", "ftp://league.example/"])
def test_an_address_to_visit_begins_with_http(address: str) -> None:
    done = run("visit", address)
    assert done.returncode == 1
    assert done.stderr.startswith("Error: Begin the address with https:// or http://")


@pytest.mark.parametrize("name", ["guide/our-dir.md", "rules/foo.yml"])
def test_a_folder_with_the_name_of_a_file_is_told(small: Path, mistakes: Mistakes, name: str) -> None:
    (small / name).mkdir()
    told = [f"{one.path} {one}" for one in mistakes()]
    assert any(name in one and "rename the folder, or take it out" in one for one in told)


def test_a_number_of_thousands_of_digits_is_told(edit: Edit, mistakes: Mistakes) -> None:
    edit("guide/warning-signs.md", "\nsummary: ", f"\norder: {'9' * 5000}\nsummary: ")
    assert "order: a number of at most 40 digits" in str(mistakes()[0])

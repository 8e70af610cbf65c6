"""A small handbook with one league's edition in it, to change and to break."""

from __future__ import annotations

import datetime
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.generate.calculator_pages import calculator_names
from build_tools.loading.library import Library, load
from build_tools.loading.mistakes import ContentError
from build_tools.places import Places, Wanted

SMALL = Path(__file__).resolve().parents[1] / "build_tools" / "small_content"
EDITION = Path(__file__).parent / "edition.yml"
TODAY = datetime.date(2026, 5, 16)

Open = Callable[..., Library]
Told = Callable[..., list[str]]


@pytest.fixture
def content(tmp_path: Path) -> Path:
    """A writable copy of the small handbook, with the edition `sandlot` in it."""
    copy = Path(shutil.copytree(SMALL, tmp_path / "content"))
    shutil.copytree(Places().content / "demo", copy / "demo")
    folder = copy / "editions" / "sandlot"
    folder.mkdir(parents=True)
    shutil.copyfile(EDITION, folder / "edition.yml")
    return copy


@pytest.fixture
def folder(content: Path) -> Path:
    """The edition's folder."""
    return content / "editions" / "sandlot"


@pytest.fixture
def say_in_edition(folder: Path) -> Callable[[str, str], int]:
    """Replace text in edition.yml; returns the line of the change."""

    def replace(old: str, new: str) -> int:
        path = folder / "edition.yml"
        text = path.read_text(encoding="utf-8")
        assert text.count(old) == 1, f"edition.yml does not hold {old!r} once"
        path.write_text(text.replace(old, new), encoding="utf-8")
        return text[: text.index(old)].count("\n") + 1

    return replace


@pytest.fixture
def opened(content: Path) -> Open:
    """Open the edition as it stands now; more of Wanted may be given."""

    def open_(**wanted: object) -> Library:
        whole = Wanted(**{"edition": "sandlot", "today": TODAY, **wanted})
        return load(content, calculator_names(), whole)

    return open_


@pytest.fixture
def told(opened: Open) -> Told:
    """Open the edition and return what its maker is told is wrong: file, then line, field and mend."""

    def told_(**wanted: object) -> list[str]:
        try:
            opened(**wanted)
        except ContentError as error:
            return [f"{mistake.path}: {mistake}" for mistake in error.mistakes]
        return []

    return told_

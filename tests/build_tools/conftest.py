"""A small content folder to break, and the real one to break in a copy."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.generate.calculator_pages import calculator_names
from build_tools.loading.library import Library, load
from build_tools.loading.mistakes import ContentError, Mistake
from build_tools.places import Places

SMALL = Path(__file__).parent / "small_content"

Edit = Callable[[str, str, str], int]
Mistakes = Callable[[], tuple[Mistake, ...]]


def copy_small(folder: Path) -> Path:
    """Copy the small content, and beside it the made-up files that the calculators' examples read."""
    content = Path(shutil.copytree(SMALL, folder / "content"))
    shutil.copytree(Places().content / "demo", content / "demo")
    return content


@pytest.fixture
def small(tmp_path: Path) -> Path:
    """A writable copy of the small content."""
    return copy_small(tmp_path)


@pytest.fixture
def edit(small: Path) -> Edit:
    """Replace text in a file of the small content; returns the line of the change."""

    def replace(name: str, old: str, new: str) -> int:
        path = small / name
        text = path.read_text(encoding="utf-8")
        assert text.count(old) >= 1, f"{name} does not hold {old!r}"
        path.write_text(text.replace(old, new, 1), encoding="utf-8")
        return text[: text.index(old)].count("\n") + 1

    return replace


@pytest.fixture
def mistakes(small: Path) -> Mistakes:
    """Check the small content; returns its mistakes, none where it is right."""

    def found() -> tuple[Mistake, ...]:
        try:
            load(small, calculator_names())
        except ContentError as error:
            return error.mistakes
        return ()

    return found


@pytest.fixture(scope="session")
def small_library(tmp_path_factory: pytest.TempPathFactory) -> Library:
    """The small content, loaded."""
    return load(copy_small(tmp_path_factory.mktemp("small")), calculator_names())


@pytest.fixture
def places(small: Path, tmp_path: Path) -> Places:
    """The small content and somewhere to build it."""
    return Places(content=small, build=tmp_path / "build", site=tmp_path / "site")

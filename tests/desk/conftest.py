"""Rule sets and made-up files as the build hands them to the desk, and questions asked of the counter."""

from __future__ import annotations

import gettext
from collections.abc import Callable, Mapping

import pytest

from calculators.desk.answers import Answer, Outcome, Shelf
from calculators.desk.counter import CALCULATORS, answer
from calculators.words import Message, speak
from tests.desk.board_files import BOARD, OUTINGS, ROSTER, file
from tests.workload.shelf import shelf

ENGLISH = gettext.NullTranslations()


@pytest.fixture(scope="session")
def arm_shelf() -> Shelf:
    """A shelf with the handbook's rule sets and its made-up league."""
    return shelf()


@pytest.fixture(scope="session")
def asked(arm_shelf: Shelf) -> Callable[..., Outcome]:
    """Ask a calculator: its worked example with some fields changed."""

    def ask(name: str, **typed: object) -> Outcome:
        return answer(name, {**CALCULATORS[name].example, **typed}, arm_shelf)

    return ask


@pytest.fixture(scope="session")
def answered(asked: Callable[..., Outcome]) -> Callable[..., Answer]:
    """Ask a calculator what it must be able to answer."""

    def ask(name: str, **typed: object) -> Answer:
        found = asked(name, **typed)
        assert isinstance(found, Answer), [(one.field, speak(one.message, ENGLISH)) for one in found]
        return found

    return ask


@pytest.fixture(scope="session")
def spoken() -> Callable[[Message], str]:
    """Speak a message in English."""
    return lambda message: speak(message, ENGLISH)


@pytest.fixture(scope="session")
def cells() -> Callable[..., list[list[str]]]:
    """Speak the rows of one of an answer's tables, found by the beginning of its caption."""

    def rows(found: Answer, caption: str) -> list[list[str]]:
        tables = [table for table in found.tables if speak(table.caption, ENGLISH).startswith(caption)]
        assert len(tables) == 1, [speak(table.caption, ENGLISH) for table in found.tables]
        return [[speak(cell, ENGLISH) for cell in row] for row in tables[0].rows]

    return rows


@pytest.fixture(scope="session")
def files() -> Callable[[Answer], Mapping[str, str]]:
    """Write an answer's files: the name up to its date, to the text."""

    def write(found: Answer) -> Mapping[str, str]:
        return {file.name: file.write(ENGLISH) for file in found.files}

    return write


@pytest.fixture
def board(answered: Callable[..., Answer]) -> Callable[..., Answer]:
    """Ask the board under one rule set, with the two small files or others."""

    def ask(roster: str = ROSTER, outings: str = OUTINGS, **typed: str) -> Answer:
        files = {"roster": file(roster), "outings": file(outings)}
        return answered(BOARD, **{"rules": "little-league", **files, **typed})

    return ask


@pytest.fixture
def question(asked: Callable, spoken: Callable) -> Callable[..., tuple[str, str, tuple[str, ...]]]:
    """What the board asks back: the field, the words, and what may be tapped."""

    def ask(roster: str = ROSTER, outings: str = OUTINGS, **typed: str) -> tuple[str, str, tuple[str, ...]]:
        found = asked(
            BOARD, **{"rules": "little-league", "roster": file(roster), "outings": file(outings), **typed}
        )
        assert not isinstance(found, Answer)
        return found[0].field, spoken(found[0].message), found[0].offers

    return ask

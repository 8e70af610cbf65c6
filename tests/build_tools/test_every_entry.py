"""No entry of the handbook can be broken without the build stopping and naming it."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest

from build_tools.generate.calculator_pages import calculator_names
from build_tools.loading.library import load
from build_tools.loading.mistakes import ContentError
from build_tools.places import Places
from build_tools.schema.kinds import ENTRY_KINDS, LIST_FILES

CONTENT = Places().content
KINDS = [*(f"{kind}/*.md" for kind in ENTRY_KINDS), "rules/*.yml", *LIST_FILES.values()]
PATTERNS = [pattern for pattern in KINDS if any(CONTENT.glob(pattern))]


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the handbook's content, put right again after each test."""
    return Path(shutil.copytree(CONTENT, tmp_path_factory.mktemp("whole") / "content"))


@pytest.mark.parametrize("pattern", PATTERNS)
def test_whichever_entry_is_broken_the_build_stops_and_names_it(whole: Path, pattern: str) -> None:
    texts = {path: path.read_text(encoding="utf-8") for path in whole.glob(pattern)}
    expected = {
        (f"content/{path.relative_to(whole).as_posix()}", misspell_a_name(path, text))
        for path, text in texts.items()
    }
    try:
        with pytest.raises(ContentError) as error:
            load(whole, calculator_names())
    finally:
        for path, text in texts.items():
            path.write_text(text, encoding="utf-8")
    told = {(one.path.as_posix(), one.line) for one in error.value.mistakes if "titel" in one.field}
    assert told == expected


def misspell_a_name(path: Path, text: str) -> int:
    """Misspell the first field that every entry of this kind must have; returns its line."""
    field = re.search(r"^( *)(title|term|authors): *", text, re.MULTILINE)
    assert field is not None
    path.write_text(f"{text[: field.start()]}{field[1]}titel: {text[field.end() :]}", encoding="utf-8")
    return text[: field.start()].count("\n") + 1


def test_the_handbook_itself_has_no_mistakes() -> None:
    try:
        load(CONTENT, calculator_names())
    except ContentError as error:
        pytest.fail(str(error))

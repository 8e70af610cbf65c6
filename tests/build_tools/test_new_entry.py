"""An entry starts from a neighbour, as a draft, and is right as it stands."""

from __future__ import annotations

import datetime
import json
import re
from pathlib import Path

import pytest

from build_tools.generate.calculator_pages import calculator_names
from build_tools.loading.library import load
from build_tools.loading.mistakes import ContentError
from build_tools.new_entry import NewEntryError, start_entry
from build_tools.places import PROJECT, Wanted

TODAY = datetime.date(2026, 5, 16)


def test_it_is_checked_at_once_and_shown_only_with_drafts(small: Path) -> None:
    path = start_entry(small, "cues/long-arrow", "rope-pull", TODAY)
    assert path == small / "cues" / "long-arrow.md"
    with_drafts = load(small, calculator_names(), Wanted(drafts=True)).cues["long-arrow"].model
    assert (with_drafts.title, with_drafts.reviewed, with_drafts.draft) == ("Long arrow", TODAY, True)
    assert "long-arrow" not in load(small, calculator_names()).cues


@pytest.mark.parametrize(
    ("address", "like", "mend"),
    [
        ("cue/long-arrow", "rope-pull", "the kind one of grips"),
        ("cues/Long Arrow", "rope-pull", "kind/name-in-words"),
        ("cues/rope-pull", "twist-it", "is there already"),
        ("cues/long-arrow", "rope-pul", "Did you mean rope-pull?"),
        ("cues/../../evil", "rope-pull", "kind/name-in-words"),
    ],
)
def test_what_cannot_be_started_is_told_with_a_mend(small: Path, address: str, like: str, mend: str) -> None:
    with pytest.raises(NewEntryError, match=re.escape(mend)):
        start_entry(small, address, like, TODAY)


def test_the_editors_task_finds_file_line_and_message_in_what_the_check_tells(small: Path) -> None:
    """VS Code reads the check's report with the patterns of .vscode/tasks.json, first the file, then each line."""
    path = start_entry(small, "cues/long-arrow", "rope-pull", TODAY)
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("focus: analogy", "focus: analogie").replace("youngest: 13", "youngest: x"))
    with pytest.raises(ContentError) as told:
        load(small, calculator_names())
    report = str(told.value).splitlines()
    tasks = json.loads((PROJECT / ".vscode" / "tasks.json").read_text(encoding="utf-8"))["tasks"]
    first, second = tasks[0]["problemMatcher"]["pattern"]
    files = [found[first["file"]] for line in report if (found := re.match(first["regexp"], line))]
    lines = [found for line in report if (found := re.match(second["regexp"], line))]
    assert files == ["content/cues/long-arrow.md"]
    wrong = [
        number
        for number, line in enumerate(path.read_text().splitlines(), 1)
        if re.search("analogie|: x$", line)
    ]
    assert [int(found[second["line"]]) for found in lines] == wrong
    assert 'Did you mean "analogy"?' in lines[0][second["message"]]

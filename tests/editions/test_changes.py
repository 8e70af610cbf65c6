"""What changed since an edition that was handed out, told from what can be read and from days of review."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from build_tools.changes.comparison import compared
from build_tools.changes.reviews import reviews_due
from build_tools.changes.snapshots import SnapshotError, history, mark_of, record, recorded, taken
from build_tools.generate.build_docs import generate
from build_tools.generate.calculator_pages import calculator_names
from build_tools.loading.library import Library, load
from build_tools.places import Places, Wanted
from tests.editions.conftest import TODAY

THEN, NOW = datetime.date(2026, 3, 1), datetime.date(2026, 5, 16)


@pytest.fixture
def handbook(content: Path) -> Callable[[], Library]:
    return lambda: load(content, calculator_names())


def change(content: Path, name: str, old: str, new: str) -> None:
    path = content / name
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def test_added_changed_confirmed_and_gone_are_told_apart(
    content: Path, handbook: Callable[[], Library]
) -> None:
    then = taken(handbook(), THEN)
    change(content, "cues/rope-pull.md", "says: Pull the rope down.", "says: Pull the long rope down.")
    change(content, "cues/rope-pull.md", "reviewed: 2026-01-02", "reviewed: 2026-05-10")
    change(content, "faults/stays-up.md", "reviewed: 2026-01-02", "reviewed: 2026-05-11")
    (content / "cues" / "twist-it.md").rename(content / "cues" / "turn-it.md")
    changes = compared(then, taken(handbook(), NOW))
    assert changes.changed == ("cues/rope-pull",)
    assert changes.confirmed == ("faults/stays-up",)
    assert changes.added == ("cues/turn-it",)
    assert changes.gone == (("cues/twist-it", "Twist it"),)


@pytest.mark.parametrize(
    ("name", "old", "new"),
    [
        ("cues/rope-pull.md", "confidence: low", "order: 3\nconfidence: low"),
        ("cues/rope-pull.md", "stages: [toss]", "stages:\n  - toss"),
        ("cues/rope-pull.md", "Pull late.", "Pull\nlate."),
        (
            "cues/rope-pull.md",
            "confidence: low",
            "review_by: {who: a clinician, when: 2027-01-01}\nconfidence: low",
        ),
    ],
)
def test_what_a_reader_cannot_see_is_no_change(
    content: Path, handbook: Callable[[], Library], name: str, old: str, new: str
) -> None:
    before = mark_of(handbook().cues["rope-pull"])
    change(content, name, old, new)
    assert mark_of(handbook().cues["rope-pull"]) == before


def test_a_changed_limit_in_a_rule_set_is_a_change(content: Path, handbook: Callable[[], Library]) -> None:
    then = taken(handbook(), THEN)
    change(content, "rules/stricter-league.yml", "daily_max: 75", "daily_max: 70")
    assert compared(then, taken(handbook(), NOW)).changed == ("rules/stricter-league",)


def test_a_snapshot_reads_back_as_it_was_taken(handbook: Callable[[], Library], tmp_path: Path) -> None:
    snapshot = taken(handbook(), THEN)
    path = record(snapshot, tmp_path / "history")
    assert path.name == "2026-03-01.json"
    assert recorded(tmp_path / "history") == (snapshot,)


def test_snapshots_come_newest_first(handbook: Callable[[], Library], tmp_path: Path) -> None:
    for date in (THEN, NOW, datetime.date(2025, 12, 24)):
        record(replace(taken(handbook(), THEN), date=date), tmp_path)
    assert [one.date for one in recorded(tmp_path)] == [NOW, THEN, datetime.date(2025, 12, 24)]


@pytest.mark.parametrize("text", ["{", "[]", '{"cues/x": 3}', '{"cues/x": ["a", "b", "yesterday"]}'])
def test_a_spoiled_snapshot_is_refused_with_its_name_and_a_mend(tmp_path: Path, text: str) -> None:
    (tmp_path / "2026-03-01.json").write_text(text, encoding="utf-8")
    with pytest.raises(SnapshotError, match=r"2026-03-01\.json is no snapshot; delete it"):
        recorded(tmp_path)


def test_the_page_lists_changes_under_the_day_of_the_edition_one_has(content: Path, tmp_path: Path) -> None:
    places = Places(content, tmp_path / "build", tmp_path / "site")
    record(taken(load(content, calculator_names()), THEN), history(content))
    change(content, "cues/rope-pull.md", "says: Pull the rope down.", "says: Pull the long rope down.")
    (content / "cues" / "twist-it.md").unlink()
    generate(places)
    text = (places.docs / "changes.md").read_text(encoding="utf-8")
    assert "## If yours is of March 1, 2026 or later {: #since-2026-03-01 }" in text
    assert (
        '<a href="../cues/rope-pull/">Rope pull</a> <span class="by">(read through on January 2, 2026)</span>'
        in text
    )
    assert "### Gone\n\n- Twist it" in text


def test_an_edition_has_a_history_of_its_own(
    content: Path, tmp_path: Path, opened: Callable[..., Library]
) -> None:
    record(taken(opened(), THEN), history(content, "sandlot"))
    assert (content / "editions" / "sandlot" / "history" / "2026-03-01.json").is_file()
    places = Places(content, tmp_path / "build", tmp_path / "site", Wanted("sandlot", today=TODAY))
    generate(places)
    assert "Nothing reads differently since." in (places.docs / "changes.md").read_text(encoding="utf-8")


def test_who_should_read_what_next_is_listed_and_shown_on_the_page(content: Path, tmp_path: Path) -> None:
    due = "review_by: {who: an athletic trainer, when: 2027-02-01}\nfocus: analogy"
    change(content, "cues/rope-pull.md", "focus: analogy", due)
    change(content, "drills/short-toss.md", "stage:", "review_by: {who: a coach, when: 2026-08-01}\nstage:")
    library = load(content, calculator_names())
    assert [(one.address, one.who) for one in reviews_due(library)] == [
        ("drills/short-toss", "a coach"),
        ("cues/rope-pull", "an athletic trainer"),
    ]
    places = Places(content, tmp_path / "build", tmp_path / "site")
    generate(places)
    text = (places.docs / "cues" / "rope-pull.md").read_text(encoding="utf-8")
    assert "To be read next by February 1, 2027: an athletic trainer." in text

"""The page of all rule sets says what was not read or not found, and does not show it as a rule or as none."""

from __future__ import annotations

import pytest
from jinja2 import Environment, FileSystemLoader

from build_tools.loading.marked_yaml import read_yaml
from build_tools.places import TEMPLATES, Places
from build_tools.schema.rules import RuleSet


def limits(slug: str) -> str:
    """Return what the page says of a rule set's limits, one point a line."""
    environment = Environment(loader=FileSystemLoader(TEMPLATES), trim_blocks=True, lstrip_blocks=True)
    environment.globals["_"] = lambda text, **values: text.format(**values)
    path = Places().content / "rules" / f"{slug}.yml"
    rules = RuleSet.model_validate(read_yaml(path.read_text("utf-8")).value)
    return str(environment.get_template("rule_limits.md.j2").module.beyond_a_day(rules))  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("slug", "words"),
    [
        ("little-league", "A batter begun under the limit may be finished."),
        ("little-league", "Rest goes by the first pitch to the last batter"),
        ("kbsa-high-school-2019", "No finishing of the batter"),
        ("baseball-alberta-league", "Whether a batter may be finished past the limit: not read."),
        ("baseball-alberta-league", "Whether the last batter's pitches count toward rest: not read."),
        ("uil-texas", "Rest goes by every pitch of the day"),
    ],
)
def test_what_holds_for_the_last_batter_is_said_or_said_to_be_unread(slug: str, words: str) -> None:
    assert words in limits(slug)


def test_a_limit_from_memory_carries_a_mark() -> None:
    assert "Ages 15-16: " in limits("little-league")
    assert "not confirmed for this group: catching." in limits("little-league")
    assert "not confirmed" not in limits("pony").replace("not confirmed for this group: rest.", "")


def test_41_pitches_themselves_bar_catching() -> None:
    assert "After 41 or more pitches, no catching" in limits("little-league")

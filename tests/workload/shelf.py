"""The handbook's own rule sets, read from content/rules for the tests."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from build_tools.loading.marked_yaml import read_yaml
from build_tools.schema.rules import RuleSet as RuleSetEntry
from calculators.desk.answers import Shelf
from calculators.workload.library import rule_set
from calculators.workload.rules import RuleSet

CONTENT = Path(__file__).parents[2] / "content"
FOLDER = CONTENT / "rules"


@cache
def load_rules() -> Mapping[str, Mapping[str, Any]]:
    """Return every rule set of content/rules as the plain data the build exports."""
    return {
        path.stem: RuleSetEntry.model_validate(read_yaml(path.read_text("utf-8")).value).model_dump(
            mode="json"
        )
        for path in sorted(FOLDER.glob("*.yml"))
    }


def shelf() -> Shelf:
    """Return a shelf that holds the handbook's rule sets and its made-up league."""
    demo = {path.name: path.read_text("utf-8") for path in sorted((CONTENT / "demo").glob("league-*.csv"))}
    return Shelf(rules=load_rules(), demo=demo)


def rules(slug: str) -> RuleSet:
    """Return one of the handbook's rule sets."""
    return rule_set(slug, load_rules())

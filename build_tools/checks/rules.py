"""Rule sets that rest on another one: laid over it they must still fit together, and only tighten."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.loading.mistakes import Mistake
from build_tools.loading.reading import Reading
from calculators.workload.library import rule_set
from calculators.workload.plain import RuleSetError


def check_rules(reading: Reading) -> Iterator[Mistake]:
    """Yield the first mistake of each rule set that extends another."""
    shelf = {slug: one.model.model_dump(mode="json") for slug, one in reading.kinds["rules"].items()}
    for slug, loaded in reading.kinds["rules"].items():
        if loaded.model.extends not in shelf:
            continue  # stands alone, or what it extends is missing or broken, which is told elsewhere
        try:
            rule_set(slug, shelf)
        except RuleSetError as error:
            field = error.field
            yield Mistake(reading.told(loaded.path), loaded.line((field,)), field, error.mend)

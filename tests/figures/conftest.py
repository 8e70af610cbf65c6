"""The handbook's own grips, for the figures to be tried on."""

from __future__ import annotations

from functools import cache

from build_tools.loading.reading import read_content
from build_tools.places import Places
from build_tools.schema.grip import Grip


@cache
def _grips() -> dict[str, Grip]:
    loaded = read_content(Places().content).kinds["grips"]
    return {slug: entry.model for slug, entry in loaded.items()}


def pytest_generate_tests(metafunc) -> None:  # type: ignore[no-untyped-def]
    """Run each test that asks for `grip` over every grip."""
    if "grip" in metafunc.fixturenames:
        grips = _grips()
        metafunc.parametrize("grip", list(grips.values()), ids=list(grips))

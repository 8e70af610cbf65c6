"""A shelf with the handbook's own shapes, arm slots and roles."""

from __future__ import annotations

from functools import cache

from calculators.desk.answers import Shelf
from tests.coaching.handbook import roles, shapes, slots


@cache
def handbook_shelf() -> Shelf:
    """Return a shelf with the shapes, slots and roles as the build exports them."""
    return Shelf(shapes=shapes(), slots=slots(), roles=roles())

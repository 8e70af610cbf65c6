"""How far the rubber is from the plate: the usual distances, and those of a league's own divisions."""

from __future__ import annotations

from calculators.desk.answers import Shelf
from calculators.desk.fields import Choice, ChoiceField
from calculators.words import Message, say

MOUNDS = (46.0, 50.0, 54.0, 60.5)
"""The distances that most leagues play on [ft]."""


def mounds_of(shelf: Shelf) -> tuple[float, ...]:
    """Return the distances to choose from [ft], nearest first: the usual ones and those of the edition."""
    own = (float(division["mound_ft"]) for division in shelf.edition.get("divisions", ()))
    return tuple(sorted({*MOUNDS, *own}))


def mound_field(shelf: Shelf) -> ChoiceField:
    """Return the question for the distance; a league's own divisions stand beside theirs."""
    return ChoiceField(
        "mound",
        say("Rubber to plate"),
        tuple(Choice(f"{feet:g}", _words(feet, shelf)) for feet in mounds_of(shelf)),
    )


def _words(feet: float, shelf: Shelf) -> Message:
    names = [str(one["name"]) for one in shelf.edition.get("divisions", ()) if float(one["mound_ft"]) == feet]
    if names:
        return say("{feet} ft: {divisions}", feet=f"{feet:g}", divisions=", ".join(names))
    return say("{feet} ft", feet=f"{feet:g}")

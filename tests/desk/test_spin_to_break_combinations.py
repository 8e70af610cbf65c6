"""Any combination the spin-to-break form accepts is answered in full, or refused with words that mend."""

from __future__ import annotations

import gettext

from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.desk.answers import Answer, Shelf
from calculators.desk.drawing import Drawing, Label
from calculators.desk.fields import ChoiceField, NumberField, read_fields
from calculators.desk.render_text import answer_text
from calculators.desk.spin_to_break import CALCULATOR
from calculators.words import speak

ENGLISH = gettext.NullTranslations()
SHELF = Shelf()
FIELDS = CALCULATOR.fields(SHELF)
LETTER_WIDTH = 0.55
"""Width of an average letter as a share of the text size, a little on the wide side."""


def labels_outside(drawing: Drawing) -> list[str]:
    """Return the labels that stick out of the drawing."""
    outside = []
    for mark in drawing.marks:
        if isinstance(mark, Label):
            words = speak(mark.text, ENGLISH)
            width = LETTER_WIDTH * drawing.text_size * mark.size * len(words)
            left = mark.at[0] - {"start": 0.0, "middle": width / 2, "end": width}[mark.anchor]
            if left < 0 or left + width > drawing.width or not 8 <= mark.at[1] <= drawing.height:
                outside.append(words)
    return outside


def some_entry() -> st.SearchStrategy[dict[str, str]]:
    """Entries anywhere in the accepted ranges, in any combination."""
    parts: dict[str, st.SearchStrategy[str]] = {
        "clock": st.tuples(st.integers(1, 12), st.integers(0, 59)).map(lambda hm: f"{hm[0]}:{hm[1]:02d}")
    }
    for field in FIELDS:
        if isinstance(field, NumberField):
            parts[field.name] = st.floats(field.low, field.high).map(lambda value: f"{value:.2f}")
        elif isinstance(field, ChoiceField):
            parts[field.name] = st.sampled_from([choice.value for choice in field.choices])
    return st.fixed_dictionaries(parts)


@settings(max_examples=150, deadline=None)
@given(some_entry())
def test_every_combination_in_range_is_answered_or_mended(typed: dict[str, str]) -> None:
    values, problems = read_fields(FIELDS, typed)
    assert not problems
    found = CALCULATOR.work_out(values, SHELF)
    if isinstance(found, Answer):
        assert answer_text(found, SHELF, ENGLISH)
        assert [labels_outside(drawing) for drawing in found.drawings] == [[], [], []]
        return
    assert found[0].field in {"active", "speed"}
    assert speak(found[0].message, ENGLISH)

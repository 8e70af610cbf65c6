"""A shelf with all that the calculators of the coach's loop need, and how the tests ask them."""

from __future__ import annotations

import gettext
from collections.abc import Mapping, Sequence
from functools import cache

from calculators.desk.answers import Answer, Calculator, Shelf
from calculators.desk.fields import Problem, read_fields
from calculators.desk.render_text import answer_text
from calculators.words import speak
from tests.coaching import handbook

ENGLISH = gettext.NullTranslations()
Typed = str | Sequence[Mapping[str, str]]
SEASON = (handbook.CONTENT / "demo" / "season.csv").read_text("utf-8")
OWN_SEASON = "".join(SEASON.splitlines(keepends=True)[:-1])
"""A sheet of the reader's own: the made-up season without its last throw."""


@cache
def shelf() -> Shelf:
    """Return the handbook's shelf."""
    return Shelf(
        shapes=handbook.shapes(),
        cues=handbook.cues(),
        slots=handbook.slots(),
        roles=handbook.roles(),
        profiles=handbook.profiles(),
        drills=handbook.drills(),
        stages=handbook.stage_entries(),
        demo={"season.csv": SEASON},
    )


def ask(calculator: Calculator, **typed: Typed) -> Answer | tuple[Problem, ...]:
    """Work out a calculator's example with some fields typed anew, as the counter does."""
    raw = {**calculator.example, **typed}
    if calculator.stops_first is not None and (stopped := calculator.stops_first(raw, shelf())):
        return stopped
    values, problems = read_fields(calculator.fields(shelf()), raw)
    return problems or calculator.work_out(values, shelf())


def answer(calculator: Calculator, **typed: Typed) -> Answer:
    """Return the answer where one is due."""
    found = ask(calculator, **typed)
    assert isinstance(found, Answer), [(one.field, speak(one.message, ENGLISH)) for one in found]
    return found


def text(calculator: Calculator, **typed: Typed) -> str:
    """Return the answer as text."""
    return answer_text(answer(calculator, **typed), shelf(), ENGLISH)


def headline(calculator: Calculator, **typed: Typed) -> str:
    """Return the answer's first sentence."""
    return speak(answer(calculator, **typed).headline, ENGLISH)


def asked(calculator: Calculator, **typed: Typed) -> Mapping[str, str]:
    """Return what is asked or refused, by field."""
    found = ask(calculator, **typed)
    assert not isinstance(found, Answer), speak(found.headline, ENGLISH)
    return {one.field: speak(one.message, ENGLISH) for one in found}


def facts(calculator: Calculator, **typed: Typed) -> Mapping[str, str]:
    """Return label and value of the facts."""
    found = answer(calculator, **typed).facts
    return {speak(fact.label, ENGLISH): speak(fact.value, ENGLISH) for fact in found}


def table(found: Answer, caption: str) -> Mapping[str, tuple[str, ...]]:
    """Return a table's rows by their heads; the caption begins as given."""
    one = next(table for table in found.tables if speak(table.caption, ENGLISH).startswith(caption))
    return {speak(row[0], ENGLISH): tuple(speak(cell, ENGLISH) for cell in row[1:]) for row in one.rows}


def file_text(found: Answer) -> str:
    """Return the text of the one file that goes with an answer."""
    (file,) = found.files
    return file.write(ENGLISH)

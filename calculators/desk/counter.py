"""The counter a page comes to: a calculator's name and what was typed go in, JSON comes out."""

from __future__ import annotations

import gettext
import importlib
import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields
from typing import Any

from calculators.desk.answers import Answer, Calculator, Outcome, Shelf
from calculators.desk.fields import Problem, Raw, read_fields
from calculators.desk.files import OutFile
from calculators.desk.render_html import answer_html
from calculators.words import Catalogue, speak

NAMES = (
    "spin-to-break",
    "break-to-spin",
    "pairing",
    "slot-and-shape",
    "phone-radar",
    "distance-and-air",
    "target",
    "read-session",
    "cue-trial",
    "next-cue",
    "next-session",
    "pitch-count",
    "league-board",
    "season-plan",
)


class _ImportedWhenAsked(Mapping[str, Calculator]):
    """Calculators by name, each imported when it is first asked for: a phone waits for every module it imports."""

    def __getitem__(self, name: str) -> Calculator:
        if name not in NAMES:
            raise KeyError(name)
        module = importlib.import_module(f"calculators.desk.{name.replace('-', '_')}")
        calculator: Calculator = module.CALCULATOR
        return calculator

    def __contains__(self, name: object) -> bool:
        return name in NAMES

    def __iter__(self) -> Iterator[str]:
        return iter(NAMES)

    def __len__(self) -> int:
        return len(NAMES)


CALCULATORS: Mapping[str, Calculator] = _ImportedWhenAsked()
"""Every calculator by its name, in the order in which the handbook lists them."""


class UnknownCalculatorError(LookupError):
    """A page asked for a calculator that does not exist."""


def answer(name: str, raw: Raw, shelf: Shelf) -> Outcome:
    """Work out one answer.

    name: the calculator's name, as in `CALCULATORS`.
    raw: field name to the text typed.
    Returns the answer, or the problems to be mended first.
    Raises UnknownCalculatorError, naming the calculators there are.
    """
    calculator = _find(name)
    if calculator.stops_first is not None and (stopped := calculator.stops_first(raw, shelf)):
        return stopped
    values, problems = read_fields(calculator.fields(shelf), raw)
    return problems or calculator.work_out(values, shelf)


@dataclass(frozen=True)
class Counter:
    """A shelf of content and a language, kept open for many questions."""

    shelf: Shelf
    catalogue: Catalogue

    def answer(self, name: str, fields_json: str) -> str:
        """Answer a page: JSON object of typed fields in; JSON with `html`, `problems`, `stop` and more out.

        files: each with `name`, `type`, `text` and `label`. live: texts beside the counter of a game.
        With problems, `html` is null and each has `field`, `row`, `column`, `text` and `offers`.
        """
        outcome = answer(name, json.loads(fields_json), self.shelf)
        if isinstance(outcome, Answer):
            return json.dumps(
                {
                    "html": answer_html(outcome, self.shelf, self.catalogue, f"answer-{name}"),
                    "problems": [],
                    "stop": outcome.stop,
                    "files": [self._file(file) for file in outcome.files],
                    "live": [speak(line, self.catalogue) for line in outcome.live],
                }
            )
        problems = [self._problem(problem) for problem in outcome]
        return json.dumps({"html": None, "problems": problems, "stop": False, "files": [], "live": []})

    def _file(self, file: OutFile) -> dict[str, str]:
        label = speak(file.label, self.catalogue)
        return {"name": file.name, "type": file.type, "text": file.write(self.catalogue), "label": label}

    def _problem(self, problem: Problem) -> dict[str, Any]:
        return {
            "field": problem.field,
            "row": problem.row,
            "column": problem.column,
            "text": speak(problem.message, self.catalogue),
            "offers": problem.offers,
        }


def open_counter(shelf_json: str, words_json: str | None = None) -> Counter:
    """Open a counter from the content as the build wrote it and, for other languages, its words.

    shelf_json: an object with rules, shapes, cues, slots, roles and sources.
    words_json: English text to translation, or to a list of plural forms; None for English.
    """
    shelf = shelf_from(json.loads(shelf_json))
    if words_json is None:
        return Counter(shelf, gettext.NullTranslations())
    return Counter(shelf, TranslatedWords(json.loads(words_json)))


def shelf_from(content: Mapping[str, Mapping[str, Any]]) -> Shelf:
    """Return the shelf for content that was read from JSON; missing parts are empty."""
    return Shelf(**{part.name: content.get(part.name, {}) for part in fields(Shelf)})


@dataclass(frozen=True)
class TranslatedWords:
    """A catalogue from a plain mapping: one text, or [one, many] for wording that counts."""

    words: Mapping[str, str | list[str]]

    def gettext(self, message: str) -> str:
        """Return the translation, or the English where there is none."""
        found = self.words.get(message, message)
        return found if isinstance(found, str) else found[0]

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """Return the form for one or for many."""
        found = self.words.get(msgid1)
        one, many = found if isinstance(found, list) else (msgid1, msgid2)
        return one if n == 1 else many


def _find(name: str) -> Calculator:
    if name not in CALCULATORS:
        known = ", ".join(CALCULATORS)
        raise UnknownCalculatorError(f"There is no calculator named {name}; there are {known}.")
    return CALCULATORS[name]

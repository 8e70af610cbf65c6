"""Calculators as pages: the form, a full worked answer, and tables of the common cases."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from build_tools.generate.shelf import Shelves
from calculators.desk.answers import Answer, Calculator, Shelf, Tool
from calculators.desk.counter import CALCULATORS, answer, shelf_from
from calculators.desk.fields import Raw
from calculators.desk.render_html import answer_html, form_html, table_html
from calculators.desk.rule_choice import rule_choices
from calculators.words import Catalogue, speak

YOUNGEST, OLDEST = 7, 18
"""Ages tried for an example where the rules that bind do not speak of its own."""


class WorkedExampleError(Exception):
    """A calculator does not answer its own worked example."""


@dataclass(frozen=True)
class CalculatorPage:
    """What a calculator's page shows, as finished HTML, and the sources its answer names."""

    name: str
    title: str
    headline: str
    form: str
    answer: str
    tables: tuple[str, ...]
    sources: tuple[str, ...]
    tools: tuple[Tool, ...] = ()


def calculator_names() -> tuple[str, ...]:
    """Return the names of the calculators, in the order in which they are listed."""
    return tuple(CALCULATORS)


def worked_examples(shelves: Shelves) -> Mapping[str, Raw]:
    """Return name to the fields of its worked example, as typed, under the rules that bind here."""
    shelf = shelf_from(shelves)
    return {name: _example(one, shelf) for name, one in CALCULATORS.items()}


def calculator_titles(catalogue: Catalogue) -> Mapping[str, str]:
    """Return name to title, spoken."""
    return {name: speak(one.title, catalogue) for name, one in CALCULATORS.items()}


def calculator_pages(shelves: Shelves, catalogue: Catalogue) -> tuple[CalculatorPage, ...]:
    """Work out every calculator's example and tables.

    Raises WorkedExampleError, with the problems, where an example is not answered.
    """
    shelf = shelf_from(shelves)
    return tuple(
        _page(replace(one, example=_example(one, shelf)), shelf, catalogue) for one in CALCULATORS.values()
    )


def _example(calculator: Calculator, shelf: Shelf) -> Raw:
    """Return the worked example, by an edition's own rules where it asks for rules.

    The example's age or level may be none of theirs; then the first of theirs that is answered stands in.
    """
    binding = shelf.edition.get("rules")
    if binding is None or "rules" not in calculator.example:
        return calculator.example
    choices = [choice.value for choice in rule_choices(shelf) if choice.value.split(".")[0] == binding]
    ages = [calculator.example.get("age"), *map(str, range(YOUNGEST, OLDEST + 1))]
    for choice in choices:
        for age in ages if "age" in calculator.example else ages[:1]:
            tried = {**calculator.example, "rules": choice} | ({} if age is None else {"age": age})
            if isinstance(answer(calculator.name, tried, shelf), Answer):
                return tried
    return {**calculator.example, "rules": str(binding)}


def _page(calculator: Calculator, shelf: Shelf, catalogue: Catalogue) -> CalculatorPage:
    outcome = answer(calculator.name, calculator.example, shelf)
    if not isinstance(outcome, Answer):
        problems = "; ".join(f"{one.field}: {speak(one.message, catalogue)}" for one in outcome)
        raise WorkedExampleError(f"{calculator.name} does not answer its worked example. {problems}")
    return CalculatorPage(
        name=calculator.name,
        title=speak(calculator.title, catalogue),
        headline=speak(outcome.headline, catalogue),
        form=form_html(calculator, shelf, catalogue),
        answer=answer_html(outcome, shelf, catalogue, f"answer-{calculator.name}"),
        tables=tuple(table_html(table, catalogue) for table in calculator.common_cases(shelf)),
        sources=outcome.sources,
        tools=calculator.tools,
    )

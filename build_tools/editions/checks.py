"""What an edition must get right beyond the schema: readable colors, a logo, rules that fit its ages."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from dataclasses import dataclass

from build_tools.editions.colors import TEXT, nearest_passing, weakest
from build_tools.editions.league import League
from build_tools.editions.logo import Logo, LogoError, read_logo
from build_tools.editions.schemes import SCHEMES, grounds
from build_tools.loading.mistakes import Location, Mistake, field_name, nearest_name
from build_tools.loading.reading import Loaded, Reading
from build_tools.schema.rules import RuleSet
from calculators.workload.ages import NoGroupError, Pitcher, group_for
from calculators.workload.library import rule_set
from calculators.workload.plain import RuleSetError


@dataclass(frozen=True)
class Checker:
    """Looks one edition over, on the day `today`, against everything that it may name."""

    whole: Reading
    league: Loaded[League]
    today: datetime.date

    def mistakes(self) -> Iterator[Mistake]:
        """Yield what stops the build."""
        yield from self._colors()
        yield from self._rules()

    def logo(self) -> tuple[Logo | None, tuple[Mistake, ...]]:
        """Return the cleaned logo, if there is one, or why it cannot be used."""
        name = self.league.model.logo
        if name is None:
            return None, ()
        try:
            return read_logo(self.league.path.parent, name), ()
        except LogoError as error:
            return None, (self._at(("logo",), error.expected, error.found),)

    def overdue(self) -> Mistake | None:
        """Return the mistake of rules that were not checked in time; None before their day."""
        due = self.league.model.rules_review_by
        if self.today <= due:
            return None
        expected = (
            f"rules that somebody has checked; ask the league whether {self.league.model.rules} still holds, "
            "then write the day of the next check here"
        )
        return self._at(("rules_review_by",), expected, due.isoformat())

    def _at(self, where: Location, expected: str, found: str = "", near: str | None = None) -> Mistake:
        path = self.whole.told(self.league.path)
        return Mistake(path, self.league.line(where), field_name(where), expected, found, near)

    def _colors(self) -> Iterator[Mistake]:
        for scheme in SCHEMES:
            color = getattr(self.league.model.colors, scheme)
            ground = grounds()[scheme].values()
            if (least := weakest(color, ground)) < TEXT:
                near = nearest_passing(color, ground)
                expected = (
                    f"a color that can be read on the {scheme} page: contrast {TEXT} or more (WCAG 2.2)"
                )
                yield self._at(("colors", scheme), expected, f"{color}, which has {_down(least)}", near)

    def _rules(self) -> Iterator[Mistake]:
        known = self.whole.known["rules"]
        slug = self.league.model.rules
        if slug not in known:
            expected = "a rule set of content/rules or of this edition's own rules/"
            yield self._at(("rules",), expected, f'"{slug}"', nearest_name(slug, known))
            return
        loaded = self.whole.kinds["rules"].get(slug)
        if loaded is None:
            return  # it has mistakes of its own, which are told
        if loaded.model.status == "from memory" or loaded.model.doubt:
            expected = "a rule set that somebody has read at its source; this one is not fit to bind"
            yield self._at(("rules",), expected, f'"{slug}"')
            return
        yield from self._ages(loaded.model)

    def _ages(self, binding: RuleSet) -> Iterator[Mistake]:
        shelf = {slug: one.model.model_dump(mode="json") for slug, one in self.whole.kinds["rules"].items()}
        try:
            rules = rule_set(self.league.model.rules, shelf)
        except RuleSetError:
            return  # told where the rule set stands
        if rules.by_level:
            return
        for index, division in enumerate(self.league.model.divisions):
            for age in range(division.ages[0], division.ages[1] + 1):
                try:
                    group_for(rules, Pitcher(age=age), self.today)
                except NoGroupError as error:
                    where: Location = ("divisions", index, "ages")
                    expected = f"ages that {binding.title} speaks of, {error.lowest} to {error.highest}"
                    yield self._at(where, expected, f"{division.ages[0]} to {division.ages[1]}")
                    break


def _down(ratio: float) -> str:
    """Write a ratio with one decimal, never rounded up to one that would pass."""
    return f"{int(ratio * 10) / 10:.1f}"

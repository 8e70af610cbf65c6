"""The rule sets on the shelf, with what a local league made stricter worked in.

A local set names the set it `extends` and only what it changes. It may tighten and not loosen: the reader of
a local rule must not be told a date earlier than the rule it rests on. Where a body has indeed made a rule
looser, its set says why (`looser_because`), and every reader is told.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from typing import Any

from calculators.workload.plain import RuleSetError
from calculators.workload.rest import owed
from calculators.workload.rules import Band, Catching, RuleSet, SecondGame, read

Shelves = Mapping[str, Mapping[str, Any]]

_STRICTNESS: Mapping[SecondGame | None, int] = {
    "allowed": 0,
    "after a small first game": 1,
    None: 2,
    "advised against": 2,
    "barred": 3,
}
_HIGHEST_COUNT = 300


def rule_set(slug: str, shelf: Shelves) -> RuleSet:
    """Return one rule set of the shelf.

    slug: its name on the shelf; shelf: rule sets as plain mappings, by name.
    Raises RuleSetError, naming rule set and field, if it is missing, does not fit together, or
    loosens what it extends without a reason.
    """
    return _resolve(slug, shelf, ())[0]


def rule_sets(shelf: Shelves) -> Mapping[str, RuleSet]:
    """Return every rule set of the shelf by its name; raises RuleSetError as `rule_set` does."""
    return {slug: rule_set(slug, shelf) for slug in shelf}


def _resolve(slug: str, shelf: Shelves, above: tuple[str, ...]) -> tuple[RuleSet, Mapping[str, Any]]:
    if slug not in shelf:
        raise RuleSetError(above[-1] if above else slug, "extends", f"there is no rule set named {slug}")
    if slug in above:
        raise RuleSetError(slug, "extends", "a rule set must not extend itself")
    plain = shelf[slug]
    if plain.get("extends") is None:
        return read(slug, plain), plain
    base, base_plain = _resolve(plain["extends"], shelf, (*above, slug))
    whole = _laid_over(slug, base_plain, plain)
    local = read(slug, whole)
    bands = tuple(
        dataclasses.replace(band, unknown_as=under.unknown_as)
        for band, under in zip(local.bands, base.bands, strict=True)
    )
    local = dataclasses.replace(local, bands=bands)
    _same_in_kind(base, local)
    reason = plain.get("looser_because")
    if reason is None:
        _only_stricter(base, local)
        return local, whole
    told = f"In places looser than {base.title}. {reason}"
    return dataclasses.replace(local, notes=(told, *local.notes)), whole


def _laid_over(slug: str, base: Mapping[str, Any], local: Mapping[str, Any]) -> Mapping[str, Any]:
    stated = {name: value for name, value in local.items() if value not in (None, [], ())}
    changes = {str(band.get("label")): band for band in stated.pop("bands", ())}
    bands = []
    for band in base["bands"]:
        change = changes.pop(band["label"], {})
        laid = {**band, **{name: value for name, value in change.items() if value not in (None, [], ())}}
        laid["caps"] = [*band.get("caps", ()), *change.get("caps", ())]
        bands.append(laid)
    if changes:
        raise RuleSetError(slug, "bands", f"{next(iter(changes))} is not a band of the extended rule set")
    caps = [*base.get("caps", ()), *stated.get("caps", ())]
    return {**base, **stated, "bands": bands, "caps": caps, "extends": None}


def _same_in_kind(base: RuleSet, local: RuleSet) -> None:
    for name in ("counts", "rest_unit", "age_basis", "age_reference"):
        if getattr(base, name) != getattr(local, name):
            mend = f"leave it as in {base.slug}, or write a rule set that extends none"
            raise RuleSetError(local.slug, name, mend)


def _only_stricter(base: RuleSet, local: RuleSet) -> None:
    def refuse(field: str, mend: str) -> RuleSetError:
        told = f"{mend}; a local rule may only be stricter than {base.slug}, unless looser_because says why"
        return RuleSetError(local.slug, field, told)

    for name in ("finish_batter", "threshold_relief", "resets_each_level"):
        if getattr(local, name) and not getattr(base, name):
            raise refuse(name, "leave it at false")
    for name in ("warmups_count", "no_game_counts", "reentry_is_second_appearance"):
        if getattr(base, name) and not getattr(local, name):
            raise refuse(name, "leave it at true")
    if local.automatic_walk_pitches < base.automatic_walk_pitches:
        raise refuse("automatic_walk_pitches", f"give at least {base.automatic_walk_pitches}")
    for under, over in zip(base.bands, local.bands, strict=True):
        if field := _loosened(base, under, local, over):
            raise refuse(f"bands {over.label}, {field}", "this is looser")


def _loosened(base_rules: RuleSet, base: Band, rules: RuleSet, local: Band) -> str | None:
    if (base.age_min, base.age_max) != (local.age_min, local.age_max):
        return "age_min"
    if _above(local.daily_max, base.daily_max):
        return "daily_max"
    if base.rest and any(
        owed(rules, local, n).rest < owed(base_rules, base, n).rest for n in range(_HIGHEST_COUNT)
    ):
        return "rest"
    if _STRICTNESS[local.second_game] < _STRICTNESS[base.second_game]:
        return "second_game"
    if local.second_game == base.second_game and _above(
        local.second_game_first_most, base.second_game_first_most
    ):
        return "second_game_first_most"
    if _above(local.most_days_running, base.most_days_running):
        return "most_days_running"
    return "catching" if _catching_loosened(base.catching, local.catching) else None


def _catching_loosened(base: Catching, local: Catching) -> bool:
    return (
        _above(local.no_pitching_after_innings, base.no_pitching_after_innings)
        or _above(local.no_catching_after_pitches, base.no_catching_after_pitches)
        or _above(local.no_return_after_pitches, base.no_return_after_pitches)
        or (local.threshold_relief and not base.threshold_relief)
        or (base.advised_against and not local.advised_against)
    )


def _above(local: int | None, base: int | None) -> bool:
    """True where the local limit lets more through than the one it rests on."""
    return base is not None and (local is None or local > base)

"""What cues change, as short words with an arrow: the cells of the matrix of starting points and changes.

An arrow says more or less of the quantity that its words name, so that neither needs the other.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from build_tools.generate.clocks import for_either_hand, other_hand
from build_tools.generate.writer import Edition
from build_tools.loading.reading import Loaded
from build_tools.schema.coaching import Change, ClockChange, Cue, Effect
from calculators.words import Message, number, say

QUANTITIES: Mapping[str, Message] = {
    "speed": say("Speed"),
    "active": say("Active share"),
    "clock": say("Clock"),
    "drop": say("Drop"),
    "side": say("Sideways"),
    "strikes": say("Strikes"),
}
"""What a cue can change, in the order of the columns."""

_CHANGES: Mapping[str, Mapping[str, Message]] = {
    "speed": {
        "up": say("\u2191\u00a0faster"),
        "down": say("\u2193\u00a0slower"),
        "same": say("=\u00a0same speed"),
    },
    "active": {
        "up": say("\u2191\u00a0more active"),
        "down": say("\u2193\u00a0less active"),
        "same": say("=\u00a0same share"),
    },
    "drop": {
        "up": say("\u2191\u00a0more drop"),
        "down": say("\u2193\u00a0less drop"),
        "same": say("=\u00a0same drop"),
    },
    "side": {
        "up": say("\u2191\u00a0more side"),
        "down": say("\u2193\u00a0less side"),
        "same": say("=\u00a0same side"),
    },
    "strikes": {
        "up": say("\u2191\u00a0more strikes"),
        "down": say("\u2193\u00a0fewer strikes"),
        "same": say("=\u00a0same strikes"),
    },
}

_TURNS: Mapping[str, Message] = {
    "toward six": say("\u2192\u00a0toward 6:00"),
    "toward the mirror": say("\u2192\u00a0toward the fastball's opposite"),
    "toward the side": say("\u2192\u00a0toward the side"),
    "steadier": say("=\u00a0steadier"),
    "same": say("=\u00a0same clock"),
}

_BY: Mapping[str, Message] = {
    "speed": say("{change}, {span} mph"),
    "active": say("{change}, {span} points"),
    "drop": say("{change}, {span} inches"),
    "side": say("{change}, {span} inches"),
    "strikes": say("{change}, {span} in a hundred"),
}


@dataclass(frozen=True)
class EffectRow:
    """A row of the matrix: a cue's effect, and a cell for each quantity; empty where nobody has said."""

    cue: Loaded[Cue]
    effect: Effect
    cells: Mapping[str, str]


def effect_rows(cue: Loaded[Cue], edition: Edition) -> tuple[EffectRow, ...]:
    """Return a row for each starting point of a cue."""
    return tuple(_row(cue, effect, edition) for effect in cue.model.effects)


def columns(rows: Iterable[EffectRow], edition: Edition) -> dict[str, str]:
    """Return quantity to head of column for what any of the rows has something to say about."""
    told = {name for row in rows for name, cell in row.cells.items() if cell}
    return {name: edition.speak(head) for name, head in QUANTITIES.items() if name in told}


def rows_from(
    profile: str, cues: Iterable[Loaded[Cue]], edition: Edition
) -> tuple[tuple[EffectRow, ...], tuple[EffectRow, ...]]:
    """Return what cues do to a ball that starts from a profile: those to use, and usually bad trades.

    To be used are the cues meant for the profile. What a cue says of this start comes before what it says of
    any start.
    """
    use: list[EffectRow] = []
    bad: list[EffectRow] = []
    for cue in cues:
        effects = {effect.start: effect for effect in cue.model.effects}
        own = effects.get(profile)
        if own is not None and own.unwanted:
            bad.append(_row(cue, own, edition))
        elif profile in cue.model.starts:
            anywhere = effects.get("any", Effect(start="any"))
            use.append(_row(cue, own or anywhere, edition, anywhere))
    return tuple(use), tuple(bad)


def _row(cue: Loaded[Cue], effect: Effect, edition: Edition, anywhere: Effect | None = None) -> EffectRow:
    cells = _cells(effect, edition)
    if anywhere is not None:
        general = _cells(anywhere, edition)
        cells = {name: cell or general[name] for name, cell in cells.items()}
    return EffectRow(cue, effect, cells)


def _cells(effect: Effect, edition: Edition) -> dict[str, str]:
    return {
        name: _clock(effect.clock, edition)
        if name == "clock"
        else _change(name, getattr(effect, name), edition)
        for name in QUANTITIES
    }


def _change(name: str, change: Change, edition: Edition) -> str:
    if change.goes == "unknown":
        return ""
    words = _CHANGES[name][change.goes]
    if change.by is None:
        return edition.speak(words)
    low, high = (number(end, 0 if end == int(end) else 1) for end in change.by)
    span = say("{value}", value=low) if low == high else say("{low} to {high}", low=low, high=high)
    return edition.speak(say(_BY[name].text, change=words, span=span))


def _clock(change: ClockChange, edition: Edition) -> str:
    if change.goes == "unknown":
        return ""
    words = edition.speak(_TURNS[change.goes])
    if not change.about:
        return words
    left_hander = edition.speak(say("left-hander"))
    about = for_either_hand(change.about, other_hand(change.about), left_hander)
    return edition.speak(say("{change}, about {clock}", change=words, clock=about))

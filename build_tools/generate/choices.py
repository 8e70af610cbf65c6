"""The four choices of a grip side by side: which grips show which variant, and what they look like."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from build_tools.figures.scene import View
from build_tools.generate.figures_html import FigureStore
from build_tools.generate.writer import Edition
from build_tools.loading.reading import Loaded
from build_tools.schema.grip import Grip, Thumb
from build_tools.schema.guide import THUMB_CLOCKS, Choice, Choosing, Variant
from build_tools.shape_numbers import hours

MOST_PICTURES = 2
"""Pictures of one variant. More would make the page heavy; the other grips are named."""

VIEWS: dict[Choosing, View] = {"base": "pitcher", "thumb": "side", "spike": "pitcher", "depth": "side"}
"""The view that shows a choice best: thumb and gap hide behind the ball when the pitcher looks down."""

_PICTURED_FIRST = ("curve", "slider", "fastball", "changeup")


@dataclass(frozen=True)
class ShownVariant:
    """A variant as its card shows it: what is said of it, pictures of grips, and all grips by family."""

    variant: Variant
    clocks: tuple[str, str] | None
    pictures: tuple[tuple[Loaded[Grip], str], ...]
    families: tuple[tuple[str, tuple[Loaded[Grip], ...]], ...]


def variant_of(choosing: Choosing, grip: Grip) -> str:
    """Return which variant of a choice a grip shows."""
    choices = grip.choices
    if choosing == "base":
        return choices.base
    if choosing == "depth":
        return choices.depth
    if choosing == "thumb":
        return _part_of_the_clock(choices.thumb)
    lifted = grip.hold is not None and grip.hold.index.bend == "lifted"
    return "lifted" if lifted and choices.spike == "none" else choices.spike


def _part_of_the_clock(thumb: Thumb) -> str:
    def middle(first: str, last: str) -> float:
        return (hours(first) + hours(last)) / 2

    here = middle(thumb.clock, thumb.to_clock or thumb.clock)
    return min(THUMB_CLOCKS, key=lambda part: abs(middle(*THUMB_CLOCKS[part]) - here))


def shown_variants(
    choice: Choice, grips: Iterable[Loaded[Grip]], figures: FigureStore, edition: Edition
) -> tuple[ShownVariant, ...]:
    """Return the variants of a choice with the grips that show them, curves first."""
    in_order = sorted(grips, key=lambda one: _PICTURED_FIRST.index(one.model.family))
    return tuple(_shown(choice.of, variant, in_order, figures, edition) for variant in choice.variants)


def _shown(
    choosing: Choosing,
    variant: Variant,
    grips: list[Loaded[Grip]],
    figures: FigureStore,
    edition: Edition,
) -> ShownVariant:
    those = [one for one in grips if variant_of(choosing, one.model) == variant.value]
    drawn = [one for one in those if one.model.hold is not None][:MOST_PICTURES]
    families = (
        (family, tuple(one for one in those if one.model.family == family)) for family in _PICTURED_FIRST
    )
    return ShownVariant(
        variant,
        THUMB_CLOCKS[variant.value] if choosing == "thumb" else None,
        tuple((one, figures.small(one.model, edition, VIEWS[choosing])) for one in drawn),
        tuple((family, some) for family, some in families if some),
    )

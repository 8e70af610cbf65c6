"""A grip small and without words, to stand beside its like.

It is drawn once, for a right-hander; the style sheet turns it over for a left-hander. The grip's own page has
the figures with words, for either hand.
"""

from __future__ import annotations

import re
from xml.sax.saxutils import quoteattr

from build_tools.figures.drawing import NAMESPACES, Sheet, hand_and_ball, thumb_dial
from build_tools.figures.grip_figure import drawn_hold
from build_tools.figures.pose import clock_deg
from build_tools.figures.scene import View
from build_tools.figures.wording import thumb_clocks
from build_tools.schema.grip import Grip
from calculators.words import Catalogue, Message, say, speak

_COARSE = 7.0
_CENTERS: dict[View, tuple[float, float]] = {"pitcher": (118.0, 100.0), "side": (84.0, 104.0)}
_BOX = (0.0, 12.0, 200.0, 176.0)
"""What of the sheet is shown: left, top, width and height."""
_DIAL = (27.0, 156.0)
_DIAL_RADIUS = 19.0


def small_figure(grip: Grip, catalogue: Catalogue, view: View = "pitcher") -> str:
    """Return a grip as one `<svg>`; empty where the entry does not say where the fingers are.

    view: "pitcher", with the thumb on a small clock, because it hides behind the ball; or "side", which
    shows the gap between ball and palm.
    """
    if grip.hold is None:
        return ""
    name = f"{re.sub(r'[^a-z]+', '-', grip.title.lower()).strip('-')}-small-{view}"
    sheet = Sheet(_CENTERS[view], mirrored=False, height=_BOX[3], coarse=_COARSE)
    box = " ".join(f"{value:g}" for value in _BOX)
    first, last = (clock_deg(clock) for clock in thumb_clocks(grip.choices.thumb, "right"))
    dial = thumb_dial(_DIAL, _DIAL_RADIUS, first, last) if view == "pitcher" else ""
    return (
        f'<svg {NAMESPACES} class="drawing grip-small" role="img" viewBox="{box}" '
        f"aria-label={quoteattr(speak(_told(grip, view), catalogue))}>"
        f"{hand_and_ball(drawn_hold(grip.hold)[1][view], sheet, name)}{dial}</svg>"
    )


def _told(grip: Grip, view: View) -> Message:
    if view == "pitcher":
        return say("{grip}, as the pitcher sees it, the thumb on a clock", grip=grip.title)
    return say("{grip}, from the thumb's side", grip=grip.title)

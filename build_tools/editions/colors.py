"""Contrast between colors by WCAG 2.2, and the nearest shade that passes.

.. [1] Web Content Accessibility Guidelines 2.2, relative luminance and contrast ratio,
   https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio
.. [2] Success criteria 1.4.3 (text, 4.5:1) and 1.4.11 (parts of controls, 3:1) of the same.
"""

from __future__ import annotations

import colorsys
import re
from collections.abc import Iterable

TEXT = 4.5
"""Least contrast of text with what it stands on; not rounded, so 4.499 fails [2]_."""

COLOR = re.compile(r"#[0-9a-f]{6}")


def luminance(color: str) -> float:
    """Return the relative luminance [1]_ of a color.

    color: as #rrggbb.
    Returns 0 for black to 1 for white.
    """
    red, green, blue = (_linear(channel) for channel in _channels(color))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio [1]_ of two colors, from 1 (the same) to 21 (black on white)."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def weakest(color: str, grounds: Iterable[str]) -> float:
    """Return the least contrast of a color with any of the grounds it is used on."""
    return min(contrast(color, ground) for ground in grounds)


def nearest_passing(color: str, grounds: Iterable[str], least: float = TEXT) -> str | None:
    """Return the shade of `color` nearest in lightness that passes on every ground.

    color: as #rrggbb; its hue stays. grounds: what it is used on. least: the contrast it must reach.
    Returns the color itself where it passes, and None where no shade does.
    """
    grounds = tuple(grounds)
    red, green, blue = (channel / 255 for channel in _channels(color))
    hue, lightness, saturation = colorsys.rgb_to_hls(red, green, blue)
    if weakest(color, grounds) >= least:
        return color
    for step in range(1, 256):
        for lighter in (lightness - step / 255, lightness + step / 255):
            if not 0 <= lighter <= 1:
                continue
            shade = _written(colorsys.hls_to_rgb(hue, lighter, saturation))
            if weakest(shade, grounds) >= least:
                return shade
    return None


def _channels(color: str) -> tuple[int, int, int]:
    return int(color[1:3], 16), int(color[3:5], 16), int(color[5:7], 16)


def _linear(channel: int) -> float:
    share = channel / 255
    return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)


def _written(channels: tuple[float, float, float]) -> str:
    return "#" + "".join(f"{round(255 * channel):02x}" for channel in channels)

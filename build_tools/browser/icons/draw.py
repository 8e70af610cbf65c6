"""Draws the handbook's icon, a ball with its seam, and writes it here as SVG and PNG.

Run `python build_tools/browser/icons/draw.py` after a change; the files it writes are kept with the source.
The PNGs are made by Chromium, so this is not a part of the build.
"""

from __future__ import annotations

import math
from pathlib import Path

from build_tools.chromium import open_chromium

HERE = Path(__file__).parent
PAPER, INK, SEAM = "#fcfaf4", "#1c1a16", "#a1241c"
Point = tuple[float, float, float]


def seam(turn: float) -> Point:
    """Return the point of the seam on a unit ball at `turn` in [0, 1): one closed curve, twice folded."""
    angle = math.tau * turn
    wide, narrow = 0.72, 0.28
    depth = 2 * math.sqrt(wide * narrow)
    return (
        wide * math.cos(angle) + narrow * math.cos(3 * angle),
        depth * math.sin(2 * angle),
        wide * math.sin(angle) - narrow * math.sin(3 * angle),
    )


def tilted(point: Point) -> Point:
    """Turn the ball so that both bends of the seam come into view."""
    x, y, z = point
    y, z = _turned(y, z, math.radians(-90))
    x, z = _turned(x, z, math.radians(20))
    x, y = _turned(x, y, math.radians(-20))
    return x, y, z


def _turned(first: float, second: float, angle: float) -> tuple[float, float]:
    cos, sin = math.cos(angle), math.sin(angle)
    return first * cos - second * sin, first * sin + second * cos


def icon(ball_radius: float, ground: str | None) -> str:
    """Return the icon as SVG in a square of 512.

    ball_radius: in the units of the square; an icon that a phone may crop keeps within 205.
    ground: the colour behind the ball, or None for a clear one.
    """
    stitches: list[str] = []
    lines: list[list[tuple[float, float]]] = [[]]
    steps = 720
    for step in range(steps + 1):
        x, y, z = tilted(seam(step / steps))
        if z < 0.0:
            if lines[-1]:
                lines.append([])
            continue
        lines[-1].append((256 + ball_radius * x, 256 - ball_radius * y))
        if step % 16 == 8 and z > 0.22:
            stitches.append(_stitch(step / steps, ball_radius))
    paths = "".join(
        f'<path d="M{" L".join(f"{x:.1f} {y:.1f}" for x, y in line)}"/>' for line in lines if line
    )
    behind = f'<rect width="512" height="512" fill="{ground}"/>' if ground else ""
    width = ball_radius / 20
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512">'
        f'{behind}<circle cx="256" cy="256" r="{ball_radius}" fill="{PAPER}"/>'
        f'<g fill="none" stroke="{SEAM}" stroke-width="{width * 0.7:.1f}" stroke-linecap="round"'
        f' stroke-linejoin="round">{paths}{"".join(stitches)}</g>'
        f'<circle cx="256" cy="256" r="{ball_radius}" fill="none" stroke="{INK}" stroke-width="{width:.1f}"/></svg>\n'
    )


def _stitch(turn: float, radius: float) -> str:
    """Return one V of thread across the seam, lying on the ball: two strokes that meet on the seam."""
    here, ahead = tilted(seam(turn)), tilted(seam(turn + 0.004))
    along = _unit(tuple(b - a for a, b in zip(here, ahead, strict=True)))
    across = _crossed(here, along)
    strokes = []
    for side in (1, -1):
        end = _unit(tuple(p + 0.07 * t + side * 0.1 * s for p, t, s in zip(here, along, across, strict=True)))
        strokes.append(f"{256 + radius * end[0]:.1f} {256 - radius * end[1]:.1f}")
    x, y = 256 + radius * here[0], 256 - radius * here[1]
    return f'<path d="M{strokes[0]} L{x:.1f} {y:.1f} L{strokes[1]}"/>'


def _unit(vector: tuple[float, ...]) -> Point:
    length = math.hypot(*vector)
    x, y, z = (part / length for part in vector)
    return x, y, z


def _crossed(a: Point, b: Point) -> Point:
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


def draw() -> None:
    """Write the icons."""
    (HERE / "icon.svg").write_text(icon(236, None), encoding="utf-8")
    sizes: dict[str, tuple[int, int, str | None]] = {
        "icon-192.png": (192, 236, None),
        "icon-512.png": (512, 236, None),
        "icon-maskable-512.png": (512, 196, INK),
        "icon-180.png": (180, 216, INK),
    }
    with open_chromium() as browser:
        for name, (size, radius, ground) in sizes.items():
            page = browser.new_page(viewport={"width": size, "height": size})
            page.set_content(f'<body style="margin:0">{icon(radius, ground)}')
            page.screenshot(path=HERE / name, omit_background=True)
            page.close()


if __name__ == "__main__":
    draw()

"""From points to short, smooth SVG path data."""

from __future__ import annotations

import math
from collections.abc import Sequence

Flat = tuple[float, float]
_CORNER = math.cos(math.radians(50.0))


def simplify(points: Sequence[Flat], tolerance: float) -> list[Flat]:
    """Drop points that lie within `tolerance` of the line through those kept (Ramer, Douglas, Peucker)."""
    if len(points) < 3:
        return list(points)
    keep = {0, len(points) - 1}
    spans = [(0, len(points) - 1)]
    while spans:
        first, last = spans.pop()
        far, at = tolerance, -1
        for k in range(first + 1, last):
            gap = _off(points[k], points[first], points[last])
            if gap > far:
                far, at = gap, k
        if at > 0:
            keep.add(at)
            spans += [(first, at), (at, last)]
    return [points[k] for k in sorted(keep)]


def _off(p: Flat, a: Flat, b: Flat) -> float:
    dx, dy = b[0] - a[0], b[1] - a[1]
    span = dx * dx + dy * dy
    share = 0.0 if span == 0.0 else ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / span
    share = max(0.0, min(1.0, share))
    return math.hypot(p[0] - a[0] - share * dx, p[1] - a[1] - share * dy)


class _Pen:
    """Writes path data with relative steps, to a tenth of a unit, without letting rounding add up."""

    def __init__(self, start: Flat) -> None:
        self._x, self._y = round(start[0] * 10), round(start[1] * 10)
        self.data = f"M{_tenths(self._x)}{_joined(self._y)}"
        self._last = "M"

    def to(self, command: str, *points: Flat) -> None:
        """Add a step through control points to an end point."""
        numbers: list[int] = []
        x = y = 0
        for point in points:
            x, y = round(point[0] * 10), round(point[1] * 10)
            numbers += [x - self._x, y - self._y]
        if not any(numbers):
            return
        head = _tenths(numbers[0])
        self.data += (_joined(numbers[0]) if command == self._last else command + head) + "".join(
            _joined(number) for number in numbers[1:]
        )
        self._x, self._y, self._last = x, y, command


def _tenths(value: int) -> str:
    sign, size = "-" if value < 0 else "", abs(value)
    whole = str(size // 10) if size >= 10 or size == 0 else ""
    return sign + whole + (f".{size % 10}" if size % 10 else "")


def _joined(value: int) -> str:
    text = _tenths(value)
    return text if text.startswith("-") else " " + text


def _turns_sharply(a: Flat, b: Flat, c: Flat) -> bool:
    first, second = (b[0] - a[0], b[1] - a[1]), (c[0] - b[0], c[1] - b[1])
    sizes = math.hypot(*first) * math.hypot(*second)
    return sizes > 0 and (first[0] * second[0] + first[1] * second[1]) / sizes < _CORNER


def smooth(points: Sequence[Flat]) -> str:
    """Return an open path: a curve guided by the points, sharp only where the line truly turns."""
    pen = _Pen(points[0])
    ended = False
    for k in range(1, len(points) - 1):
        before, here, end = points[k - 1], points[k], points[k + 1]
        ended = k == len(points) - 2
        if _turns_sharply(before, here, end):
            pen.to("l", here)
            ended = False
            continue
        if not ended:
            end = ((here[0] + end[0]) / 2.0, (here[1] + end[1]) / 2.0)
        pen.to("q", here, end)
    if not ended:
        pen.to("l", points[-1])
    return pen.data


def area(points: Sequence[Flat]) -> float:
    """Return a closed line's signed area."""
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, [*points[1:], points[0]], strict=True)) / 2.0


def patch(points: Sequence[Flat]) -> str:
    """Return a closed path, always wound the same way so that patches that overlap add up."""
    if len(points) < 3:
        return ""
    wound = list(points) if area(points) >= 0.0 else list(reversed(points))
    pen = _Pen(wound[0])
    for point in wound[1:]:
        pen.to("l", point)
    return pen.data + "Z"

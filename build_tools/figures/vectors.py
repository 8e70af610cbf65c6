"""Small vector arithmetic for the figures: three-number tuples, nothing else.

The hand frame, in millimetres with the ball's center as origin, is a right-hander's: x to the
little-finger side (arm side), y up toward the fingers (12:00), z back toward the pitcher.
"""

from __future__ import annotations

import math

Vec = tuple[float, float, float]
Matrix = tuple[Vec, Vec, Vec]

X: Vec = (1.0, 0.0, 0.0)
Y: Vec = (0.0, 1.0, 0.0)
Z: Vec = (0.0, 0.0, 1.0)


def add(a: Vec, b: Vec) -> Vec:
    """Return a + b."""
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2])


def sub(a: Vec, b: Vec) -> Vec:
    """Return a - b."""
    return (a[0] - b[0], a[1] - b[1], a[2] - b[2])


def mul(a: Vec, k: float) -> Vec:
    """Return a stretched k times."""
    return (a[0] * k, a[1] * k, a[2] * k)


def along(a: Vec, direction: Vec, distance: float) -> Vec:
    """Return the point `distance` from a in a direction of unit length."""
    return (a[0] + direction[0] * distance, a[1] + direction[1] * distance, a[2] + direction[2] * distance)


def lerp(a: Vec, b: Vec, share: float) -> Vec:
    """Return the point that lies `share` (0 to 1) of the way from a to b."""
    return add(mul(a, 1.0 - share), mul(b, share))


def dot(a: Vec, b: Vec) -> float:
    """Return the scalar product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vec, b: Vec) -> Vec:
    """Return the vector product, right-handed."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def length(a: Vec) -> float:
    """Return how long a is."""
    return math.sqrt(dot(a, a))


def unit(a: Vec) -> Vec:
    """Return a at length one. Raises ZeroDivisionError for the zero vector, which has no direction."""
    return mul(a, 1.0 / length(a))


def across(a: Vec, normal: Vec) -> Vec:
    """Return the part of a that is square to a unit normal."""
    return along(a, normal, -dot(a, normal))


def turn(a: Vec, axis: Vec, degrees: float) -> Vec:
    """Return a turned right-handedly about a unit axis (Rodrigues's formula)."""
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return add(add(mul(a, c), mul(cross(axis, a), s)), mul(axis, dot(axis, a) * (1.0 - c)))


def apply(m: Matrix, a: Vec) -> Vec:
    """Return the matrix times the column a; the rows of m are the new axes."""
    return (dot(m[0], a), dot(m[1], a), dot(m[2], a))


def columns(m: Matrix) -> Matrix:
    """Return the transpose, which undoes a rotation."""
    return (
        (m[0][0], m[1][0], m[2][0]),
        (m[0][1], m[1][1], m[2][1]),
        (m[0][2], m[1][2], m[2][2]),
    )


def angle(a: Vec, b: Vec) -> float:
    """Return the angle between two directions, degrees from 0 to 180."""
    return math.degrees(math.atan2(length(cross(a, b)), dot(a, b)))

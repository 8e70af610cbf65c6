"""Vectors (x, y, z): x toward the catcher's right, y from the plate toward the pitcher, z up."""

from __future__ import annotations

from calculators.physics.quantity import N

Vector = tuple[N, N, N]


def dot(a: Vector[N], b: Vector[N]) -> N:
    """Return the scalar product of two vectors."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vector[N], b: Vector[N]) -> Vector[N]:
    """Return the vector product a x b."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def plus(a: Vector[N], b: Vector[N]) -> Vector[N]:
    """Return the sum of two vectors."""
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2])


def minus(a: Vector[N], b: Vector[N]) -> Vector[N]:
    """Return the difference a - b."""
    return (a[0] - b[0], a[1] - b[1], a[2] - b[2])


def times(a: Vector[N], factor: N | float) -> Vector[N]:
    """Return the vector stretched by `factor`."""
    return (a[0] * factor, a[1] * factor, a[2] * factor)


def length(a: Vector[N]) -> N:
    """Return the length of a vector."""
    return dot(a, a) ** 0.5


def unit(a: Vector[N]) -> Vector[N]:
    """Return the vector of length 1 along `a`, which must not be zero."""
    return times(a, 1.0 / length(a))

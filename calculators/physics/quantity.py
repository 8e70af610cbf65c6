"""One piece of arithmetic for a single pitch and for many at once.

The physics is written with plain operators, so a quantity may be a float or an array. Where an angle
needs more than operators, `maths_for` fetches the functions from the array itself.

References
----------
[1] Python array API standard, 2022.12: an array names its functions by `__array_namespace__`.
"""

from __future__ import annotations

import math
from typing import Any, Protocol, Self, TypeVar, cast


class Quantity(Protocol):
    """What the physics asks of a number: a float has it, and so has an array of floats."""

    def __add__(self, other: Self | float, /) -> Self: ...
    def __radd__(self, other: float, /) -> Self: ...
    def __sub__(self, other: Self | float, /) -> Self: ...
    def __rsub__(self, other: float, /) -> Self: ...
    def __mul__(self, other: Self | float, /) -> Self: ...
    def __rmul__(self, other: float, /) -> Self: ...
    def __truediv__(self, other: Self | float, /) -> Self: ...
    def __rtruediv__(self, other: float, /) -> Self: ...
    def __pow__(self, other: float, /) -> Self: ...
    def __rpow__(self, other: float, /) -> Self: ...
    def __mod__(self, other: float, /) -> Self: ...
    def __neg__(self) -> Self: ...
    def __abs__(self) -> Self: ...
    def __gt__(self, other: Self | float, /) -> Any: ...


N = TypeVar("N", bound=Quantity)

TINY = 1e-300
"""Added to a length before dividing by it, so that nothing over nothing is nothing."""


class Maths(Protocol):
    """The functions of an angle that operators cannot express."""

    def sin(self, angle: Any, /) -> Any:
        """Return the sine of an angle in radians."""
        ...

    def cos(self, angle: Any, /) -> Any:
        """Return the cosine of an angle in radians."""
        ...

    def atan2(self, y: Any, x: Any, /) -> Any:
        """Return the angle of the point (x, y) in radians."""
        ...

    def log(self, x: Any, /) -> Any:
        """Return the natural logarithm."""
        ...


def maths_for(value: Quantity) -> Maths:
    """Return the functions that suit `value`: the standard library's, or the array's own [1]_."""
    own = getattr(value, "__array_namespace__", None)
    return cast(Maths, math if own is None else own())


def greatest(value: Quantity) -> float:
    """Return the largest element of an array, or the number itself."""
    largest = getattr(value, "max", None)
    return float(cast(float, value) if largest is None else largest())


def size(value: N) -> N:
    """Return the value without its sign."""
    return cast(N, abs(value))


def lesser(a: N, b: N) -> N:
    """Return the smaller of two, element by element."""
    return (a + b - size(a - b)) * 0.5


def greater(a: N, b: N) -> N:
    """Return the larger of two, element by element."""
    return (a + b + size(a - b)) * 0.5

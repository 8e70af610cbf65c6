"""Lengths and speeds in the reader's units: inches, feet and miles per hour, or metric."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calculators.desk.fields import Choice, ChoiceField
from calculators.physics.units import CENTIMETRE, FOOT, INCH, KMH, MPH
from calculators.words import Message, number, say, say_count, signed

System = Literal["imperial", "metric"]


def units_field() -> ChoiceField:
    """Return the question in which units an answer is wanted."""
    return ChoiceField(
        "units",
        say("Answer in"),
        (Choice("imperial", say("Inches, feet, mph")), Choice("metric", say("Centimeters, meters, km/h"))),
        help=say("Only the answer changes. Keep typing feet, mph and °F above."),
    )


@dataclass(frozen=True)
class Measures:
    """Says SI values in one system of units."""

    system: System = "imperial"

    @property
    def small_unit(self) -> float:
        """The unit of movement [m]."""
        return INCH if self.system == "imperial" else CENTIMETRE

    def whole(self, metres: float) -> int:
        """Return the size of a movement in whole inches or centimetres."""
        return round(abs(metres) / self.small_unit)

    def spelled(self, metres: float) -> Message:
        """Say a movement for a sentence: "14 inches"."""
        if self.system == "imperial":
            return say_count("{count} inch", "{count} inches", self.whole(metres))
        return say_count("{count} centimeter", "{count} centimeters", self.whole(metres))

    def small(self, metres: float, decimals: int = 0) -> Message:
        """Say a movement or a height over the plate in short: "14.2 in"."""
        value = number(metres / self.small_unit, decimals)
        return say("{value} in", value=value) if self.system == "imperial" else say("{value} cm", value=value)

    def small_signed(self, metres: float, decimals: int = 0) -> Message:
        """Say a movement in short with its sign: "+9.1 in"."""
        value = signed(metres / self.small_unit, decimals)
        return say("{value} in", value=value) if self.system == "imperial" else say("{value} cm", value=value)

    def height(self, metres: float) -> Message:
        """Say a height or a fall of some feet: "5 ft 2 in"."""
        if self.system == "metric":
            return say("{value} m", value=number(metres, 2))
        feet, inches = divmod(round(metres / INCH), 12)
        return say("{feet} ft {inches} in", feet=str(feet), inches=str(inches))

    def far(self, metres: float) -> Message:
        """Say a distance down the field: "46 ft"."""
        if self.system == "metric":
            return say("{value} m", value=number(metres, 1))
        feet = round(metres / FOOT, 1)
        return say("{value} ft", value=number(feet, 0 if feet == round(feet) else 1))

    def speed(self, metres_per_second: float, decimals: int = 0) -> Message:
        """Say a speed: "78 mph"."""
        if self.system == "metric":
            return say("{value} km/h", value=number(metres_per_second / KMH, decimals))
        return say("{value} mph", value=number(metres_per_second / MPH, decimals))

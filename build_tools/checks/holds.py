"""A grip's figure and its words must agree about the thumb."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.figures.wording import clock_disagrees
from build_tools.loading.mistakes import Mistake
from build_tools.loading.reading import Reading


def check_holds(reading: Reading) -> Iterator[Mistake]:
    """Yield a mistake for each grip whose drawn thumb lies outside the range its choices give."""
    for loaded in reading.kinds["grips"].values():
        grip = loaded.model
        if grip.hold is not None and clock_disagrees(grip, grip.hold):
            thumb = grip.choices.thumb
            told = thumb.clock if thumb.to_clock is None else f"{thumb.clock} to {thumb.to_clock}"
            line = loaded.line(("hold", "thumb", "clock"))
            expected = f"a clock inside choices.thumb, {told}"
            found = f'"{grip.hold.thumb.clock}"'
            yield Mistake(reading.told(loaded.path), line, "hold.thumb.clock", expected, found)

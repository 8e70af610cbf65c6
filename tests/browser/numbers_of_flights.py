"""Prints the numbers of many flights as JSON; run in CPython and in the wasm Python, to compare them."""

from __future__ import annotations

import csv
import json
import math
from pathlib import Path

from calculators.physics.flight import Release, fly
from calculators.physics.movement import movement, spinless
from calculators.physics.units import FOOT

TABLE = Path(__file__).parents[1] / "published" / "reference_trajectories.csv"


def numbers() -> dict[str, list[float]]:
    """Return, for each flight of the table and for weaker and stronger spins, where the ball comes in."""
    found = {}
    with TABLE.open(encoding="utf-8") as opened:
        for row in csv.DictReader(opened):
            start, velocity, spin = (
                tuple(float(row[name]) for name in names.split())
                for names in ("x0_ft y0_ft z0_ft", "vx0_mps vy0_mps vz0_mps", "wx_rad_s wy_rad_s wz_rad_s")
            )
            for share in (0.25, 0.5, 1.0, 1.25):
                x, y, z = (feet * FOOT for feet in start)
                release = Release((x, y, z), velocity, tuple(part * share for part in spin))
                end = fly(release).end
                moved = movement(end, fly(spinless(release)).end)
                figures = [*end.position, *end.velocity, end.time, moved.across, moved.up]
                figures.append(math.atan2(moved.across, moved.up))
                found[f"{row['description']} at {share} of its spin"] = figures
    return found


if __name__ == "__main__":
    print(json.dumps(numbers()))

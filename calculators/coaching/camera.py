"""What a phone's slow motion can tell: speed and spin from counted frames, and what it takes to see them.

References
----------
[1] D. C. Wilcox, Basic Fluid Mechanics, problem 10.28: the time a ball takes over a distance with drag alone.
[2] C. E. Shannon, "Communication in the presence of noise", Proc. IRE 37 (1949) 10: a pattern must be sampled
    more than twice in each of its repeats.
[3] T. Ijiri and others, "Automatic spin measurements for pitched baseballs via consumer-grade high-speed
    cameras", Signal, Image and Video Processing 11 (2017) 1197: it can be done in daylight.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from calculators.coaching.clock_faces import opposite
from calculators.physics.spin import other_hand_clock

LEAST_FRAMES_A_REPEAT = 2.0
"""Frames in each repeat of the mark below which the count can be of another spin altogether [2]_."""

EASY_FRAMES_A_REPEAT = 4.0
"""Frames in each repeat with which a mark can be followed by eye (common practice)."""

LONGEST_BLUR = math.radians(10)
"""Turn of the ball during one exposure above which a stripe smears out (estimate)."""


def mean_speed(distance: float, time: float) -> float:
    """Return the average speed [m/s] over `distance` [m] covered in `time` [s]."""
    return distance / time


def release_speed(distance: float, time: float, slowing: float) -> float:
    """Return the speed [m/s] with which a ball started that took `time` [s] over `distance` [m].

    slowing: air grip x C_D [1/m], zero or more. The way is taken as level and straight [1]_.
    """
    if slowing == 0:
        return mean_speed(distance, time)
    return math.expm1(slowing * distance) / (slowing * time)


def spin_rate(turns: float, frames: float, frames_per_second: float) -> float:
    """Return the spin [turns a second] of a ball that turned `turns` times in `frames` frame steps."""
    return frames_per_second * turns / frames


@dataclass(frozen=True)
class Filming:
    """How the ball was filmed.

    frames_per_second: true frame rate. repeats: how often in one turn the ball looks the same: 1 for a single
    dot, 2 for two dots on opposite sides or a stripe round the ball that tumbles end over end.
    """

    frames_per_second: float
    repeats: int = 1

    def frames_a_repeat(self, turns_per_second: float) -> float:
        """Return how many frames show each repeat of the mark."""
        return self.frames_per_second / (turns_per_second * self.repeats)

    def sees(self, turns_per_second: float) -> bool:
        """Return whether each repeat is caught more than twice, so that the count can be trusted [2]_."""
        return self.frames_a_repeat(turns_per_second) > LEAST_FRAMES_A_REPEAT

    def looks_like(self, turns_per_second: float) -> float:
        """Return the slowest spin [turns a second] that would give the same pictures."""
        repeats_a_second = turns_per_second * self.repeats
        nearest = round(repeats_a_second / self.frames_per_second)
        return abs(repeats_a_second - nearest * self.frames_per_second) / self.repeats

    def same_pictures(self, turns_per_second: float, fastest: float) -> tuple[float, ...]:
        """Return every other spin up to `fastest` [turns a second] that would give the same pictures."""
        seen = self.looks_like(turns_per_second)
        jump = self.frames_per_second / self.repeats
        candidates = {seen}
        for jumps in range(1, math.floor(fastest / jump + 1) + 1):
            candidates |= {jumps * jump - seen, jumps * jump + seen}
        different = (rate for rate in candidates if abs(rate - turns_per_second) > 1e-6 * jump)
        return tuple(sorted(rate for rate in different if 0 < rate <= fastest))


def frame_rate_needed(turns_per_second: float, repeats: int, frames_a_repeat: float) -> float:
    """Return the frames a second that show each repeat of a mark `frames_a_repeat` times."""
    return turns_per_second * repeats * frames_a_repeat


def blur_turn(turns_per_second: float, exposure: float) -> float:
    """Return the angle [rad] through which a ball turns during an exposure [s]."""
    return 2 * math.pi * turns_per_second * exposure


def longest_exposure(turns_per_second: float) -> float:
    """Return the exposure [s] in which the ball turns through LONGEST_BLUR."""
    return LONGEST_BLUR / (2 * math.pi * turns_per_second)


def stripe_clock(end: float, runs_toward_end: bool, from_the_catcher: bool) -> float:
    """Return the clock, as the pitcher sees it, of a ball whose stripe stands still and runs along itself.

    end: where one end of the stripe points in the picture, in hours.
    runs_toward_end: whether the side that faces the camera runs toward that end.
    from_the_catcher: filmed from behind the plate, not from behind the pitcher.

    Spin pushes the ball the way its front runs. A camera behind the pitcher sees the back, which runs the
    other way; a camera behind the plate sees the front, with left and right exchanged.
    """
    if from_the_catcher:
        return other_hand_clock(end if runs_toward_end else opposite(end))
    return opposite(end) if runs_toward_end else end % 12.0

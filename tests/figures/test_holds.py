"""Every grip's hold says the same as its words, and a hand can do it."""

from __future__ import annotations

import pytest

from build_tools.figures.body import body
from build_tools.figures.hand import BUILDS, DIGITS, stretched
from build_tools.figures.pose import clock_deg, placed_ball, pose
from build_tools.figures.seam import RADIUS, on_ball
from build_tools.figures.vectors import length
from build_tools.figures.wording import clock_disagrees, seam_place
from build_tools.loading.reading import read_content
from build_tools.places import Places
from build_tools.schema.grip import Grip, Hold

HALF_A_FINGER_MM = BUILDS["middle"].girth[2]


def hold_of(grip: Grip) -> Hold:
    assert grip.hold is not None, f"{grip.title} has no hold"
    return grip.hold


def test_the_thumb_is_drawn_where_the_entry_says(grip: Grip) -> None:
    assert not clock_disagrees(grip, hold_of(grip))


def test_a_thumb_meant_for_a_seam_has_one_under_it(grip: Grip) -> None:
    hold, thumb = hold_of(grip), grip.choices.thumb
    gap = placed_ball(hold.seam).distance(on_ball(clock_deg(hold.thumb.clock), hold.thumb.over_deg))
    if thumb.on == "seam":
        assert gap < BUILDS["thumb"].girth[2]
    elif thumb.on == "leather":
        assert gap > BUILDS["thumb"].girth[2]


def test_the_middle_finger_lies_on_a_seam_or_presses_its_wall(grip: Grip) -> None:
    pad = hold_of(grip).middle
    ball = placed_ball(hold_of(grip).seam)
    assert ball.distance(on_ball(pad.across_deg, pad.over_deg)) <= HALF_A_FINGER_MM
    assert seam_place(pad, ball) != "leather"


WORDS = {
    "inner wall": {"inside"},
    "outer wall": {"outside"},
    "on top of the rail": {"on"},
    "across": {"crossing"},
}


def test_the_middle_finger_is_drawn_as_its_words_say(grip: Grip) -> None:
    told = grip.hand.middle.lower()
    place = seam_place(hold_of(grip).middle, placed_ball(hold_of(grip).seam))
    for words, places in WORDS.items():
        if words in told and "or across" not in told:
            assert place in places, grip.hand.middle


def test_the_spiked_finger_is_bent_as_the_choices_say(grip: Grip) -> None:
    spike, bend = grip.choices.spike, hold_of(grip).index.bend
    assert bend == spike if spike != "none" else bend in {"flat", "curled", "lifted"}


BASES = {
    "four-seam": {"horseshoe-wall", "across-horseshoe"},
    "two-seam": {"rails"},
    "one-seam": {"one-seam"},
    "offset": {"horseshoe-wall", "rails", "one-seam"},
}


def test_the_ball_lies_on_the_base_the_choices_name(grip: Grip) -> None:
    choices, seam = grip.choices, hold_of(grip).seam
    assert seam.base in BASES[choices.base]
    if choices.base == "offset":
        off = abs((seam.turn_deg + 90.0) % 180.0 - 90.0)
        assert off == pytest.approx(choices.base_turn_deg, abs=8.0)


DAYLIGHT_MM = {
    "fingertips": (16, 35),
    "first-joint": (10, 16),
    "middle": (6, 10),
    "choked": (1, 6),
    "palm": (0, 1),
}


def test_the_deeper_the_hold_the_less_daylight(grip: Grip) -> None:
    least, most = DAYLIGHT_MM[grip.choices.depth]
    assert least <= hold_of(grip).daylight_mm <= most


def test_the_spin_is_one_that_the_grips_shapes_have(grip: Grip) -> None:
    shapes = read_content(Places().content).kinds["shapes"]
    clock = hold_of(grip).spin_clock
    if clock is None:
        assert not any(shapes[slug].model.clock_steady for slug in grip.shapes)
        return
    spans = [[clock_deg(end) for end in shapes[slug].model.clock] for slug in grip.shapes]
    assert any((clock_deg(clock) - start) % 360.0 <= (end - start) % 360.0 for start, end in spans)


def test_no_finger_has_to_grow_to_reach_the_ball(grip: Grip) -> None:
    posed = pose(hold_of(grip))
    for digit in DIGITS:
        assert stretched(posed.joints[digit], BUILDS[digit]) < 0.5, digit


def test_no_finger_goes_through_the_ball(grip: Grip) -> None:
    """Flesh may flatten on the ball by four tenths of its half-thickness, no more."""
    for part in body(pose(hold_of(grip))).tubes:
        if part.name in DIGITS:
            for ring in part.rings:
                assert length(ring.center) > RADIUS + 0.6 * ring.radius, part.name


def test_the_ball_is_off_the_palm_by_the_daylight(grip: Grip) -> None:
    hold = hold_of(grip)
    palm = body(pose(hold)).tube("middle")
    skin = min(length(ring.center) - ring.radius for ring in palm.rings[: palm.joints[0] - 4])
    assert skin - RADIUS == pytest.approx(hold.daylight_mm, abs=6.0)

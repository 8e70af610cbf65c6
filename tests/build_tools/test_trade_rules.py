"""What the trade commonly teaches about grips and arms holds in the handbook's own entries.

All of these are common practice, not measurements: a curve is held on a seam from one of two bases; its thumb
lies under the ball or half-way round; the spiked index finger belongs to the curve; nobody holds a breaking
ball far out on the fingertips; and a high curve is not forced out of a low arm.
"""

from __future__ import annotations

import gettext
from collections import Counter

import pytest

from build_tools.figures.pose import pose
from build_tools.figures.wording import middle_label
from build_tools.generate.calculator_pages import calculator_names
from build_tools.generate.choices import variant_of
from build_tools.loading.library import Library, load
from build_tools.places import Places
from build_tools.schema.grip import Grip
from calculators.coaching.clock_faces import read_band
from calculators.coaching.slot_and_shape import NATURAL_HOURS
from calculators.words import speak


@pytest.fixture(scope="module")
def handbook() -> Library:
    return load(Places().content, calculator_names())


def of_family(handbook: Library, family: str) -> list[Grip]:
    return [one.model for one in handbook.grips.values() if one.model.family == family]


def mostly(some: int, of: int) -> bool:
    return some > of / 2


def test_most_curves_start_from_the_wide_horseshoe_or_the_narrow_seams(handbook: Library) -> None:
    curves = of_family(handbook, "curve")
    bases = Counter(grip.choices.base for grip in curves)
    assert mostly(bases["four-seam"] + bases["two-seam"], len(curves))
    assert {"four-seam", "two-seam"} <= set(bases)


def test_most_curves_are_pulled_by_a_middle_finger_on_a_seam(handbook: Library) -> None:
    curves = of_family(handbook, "curve")
    on_seam = 0
    for grip in curves:
        assert grip.hold is not None, grip.title
        # Worked out from the drawn hold: where the pad lies on the ball, and where the seam runs.
        told = speak(middle_label(grip.hold, pose(grip.hold).ball), gettext.NullTranslations())
        on_seam += "seam" in told
    assert mostly(on_seam, len(curves))
    assert all(grip.choices.base != "leather" for grip in curves)


def test_the_thumb_of_most_curves_lies_under_the_ball_or_half_way_round(handbook: Library) -> None:
    curves = of_family(handbook, "curve")
    thumbs = Counter(variant_of("thumb", grip) for grip in curves)
    assert mostly(thumbs["under"] + thumbs["half-way"], len(curves))
    assert thumbs["under"] > thumbs["side"]


def test_a_spiked_finger_is_commoner_on_curves_than_on_sliders(handbook: Library) -> None:
    def share(family: str) -> float:
        grips = of_family(handbook, family)
        return sum(grip.choices.spike != "none" for grip in grips) / len(grips)

    assert share("curve") > share("slider")
    assert share("fastball") == share("changeup") == 0


def test_only_fastballs_and_changeups_are_held_far_out_on_the_fingertips(handbook: Library) -> None:
    # The trade gives the fingertip hold to changeups too. Those of this handbook are held deeper, for small
    # hands, so the data can only say what it is not for.
    far_out = {one.model.family for one in handbook.grips.values() if one.model.choices.depth == "fingertips"}
    assert far_out
    assert far_out <= {"fastball", "changeup"}


def test_the_first_grip_for_a_curve_is_the_simplest(handbook: Library) -> None:
    first = of_family(handbook, "curve")[0]
    assert (first.choices.base, first.choices.spike, first.choices.depth) == (
        "four-seam",
        "none",
        "first-joint",
    )
    assert first.youngest == min(grip.youngest for grip in of_family(handbook, "curve"))


def test_a_straight_downer_is_not_forced_out_of_a_low_arm(handbook: Library) -> None:
    downer = handbook.shapes["straight-downer"].model
    assert {"low-three-quarter", "sidearm"} <= set(downer.not_from)
    assert "overhand" in downer.slots


def test_what_an_arm_reaches_lies_near_the_opposite_of_its_fastball(handbook: Library) -> None:
    for loaded in handbook.shapes.values():
        shape = loaded.model
        if shape.reference or not shape.clock_steady:
            continue
        band = read_band(list(shape.clock))
        for slug in shape.slots:
            mirror = read_band(list(handbook.slots[slug].model.mirror_clock))
            nearest = min(band.outside(mirror.start), band.outside(mirror.end))
            assert nearest <= NATURAL_HOURS, (loaded.slug, slug)
        for slug in shape.not_from:
            mirror = read_band(list(handbook.slots[slug].model.mirror_clock))
            assert band.outside(mirror.middle) > NATURAL_HOURS, (loaded.slug, slug)


def test_a_slider_is_held_back_longer_than_a_first_curve(handbook: Library) -> None:
    # One season-long study linked sliders, more than curves, with elbow pain at 9 to 14 (lyman-2002).
    curve = min(grip.youngest for grip in of_family(handbook, "curve"))
    slider = min(grip.youngest for grip in of_family(handbook, "slider"))
    assert curve >= 13
    assert slider > curve


def test_every_fault_ends_in_something_to_do(handbook: Library) -> None:
    for slug, loaded in handbook.faults.items():
        fault = loaded.model
        assert fault.causes, slug
        assert fault.checks, slug
        assert fault.do_now, slug
        assert fault.stop or fault.cues or fault.drills, slug


def test_every_grip_with_a_twin_says_what_the_other_one_is_for(handbook: Library) -> None:
    twins = [
        (handbook.grips[slug], loaded)
        for loaded in handbook.grips.values()
        for slug in loaded.model.same_base_other_intent
    ]
    assert twins
    for twin, loaded in twins:
        assert twin.slug != loaded.slug
        assert set(twin.model.shapes) != set(loaded.model.shapes), (loaded.slug, twin.slug)

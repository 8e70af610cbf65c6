"""Clock times for a left-hander: the mirror image, 12:00 minus the right-hander's."""

from __future__ import annotations

import pytest

from build_tools.generate.clocks import for_either_hand, other_hand
from build_tools.generate.terms import TermLinker
from calculators.physics.spin import other_hand_clock


@pytest.mark.parametrize(
    ("right", "left"),
    # A mirror swaps 3:00 and 9:00 and leaves 12:00 and 6:00 where they are; all else follows.
    [("12:00", "12:00"), ("6:00", "6:00"), ("9:00", "3:00"), ("7:30", "4:30"), ("12:15", "11:45")],
)
def test_a_mirror_swaps_the_sides_of_the_dial(right: str, left: str) -> None:
    assert other_hand(right) == left
    assert other_hand(left) == right


def test_the_pages_mirror_as_the_calculators_do() -> None:
    for minutes in range(0, 720, 5):
        hours = minutes / 60
        clock = f"{int(hours) or 12}:{minutes % 60:02d}"
        hour, minute = other_hand(clock).split(":")
        assert int(hour) % 12 + int(minute) / 60 == pytest.approx(other_hand_clock(hours))


def test_a_clock_that_is_its_own_mirror_is_written_once() -> None:
    assert for_either_hand("6:00", "6:00", "left-hander") == "6:00"


def test_both_hands_can_be_read_without_style_sheet() -> None:
    html = for_either_hand("7:30", "4:30", "left-hander")
    assert 'class="for-right">7:30<' in html
    assert 'class="for-left">4:30<' in html
    words = "".join(part.split(">")[-1] for part in html.split("<"))
    assert words == "7:30 (left-hander 4:30)"


def shown(text: str) -> bool:
    """True where the linker shows 7:30 for either hand."""
    return "4:30" in TermLinker((), "left-hander").link(text, "")


@pytest.mark.parametrize(
    "text",
    [
        "The spin pushes toward 7:30.",
        "A right-hander throws. Then it pushes toward 7:30.",
        "| clock |\n|---|\n| 7:30 |",
        "- thumb at 7:30, on leather",
    ],
)
def test_a_clock_time_in_running_text_is_shown_for_either_hand(text: str) -> None:
    assert shown(text)


@pytest.mark.parametrize(
    "text",
    [
        "A right-hander sees 7:30, most of the time.",
        "It lies at 7:30 for a right-hander.",
        "It wanders by more than 7:30.",
        "Stay within 7:30 of it.",
        "## From 7:30 on",
        '<svg><text>7:30</text></svg> <a href="x">7:30</a> `7:30`',
        "It took 17:30 minutes, or 7:305.",
        "Thumb at 7:30.\n\nThe left-hander's page says 5:15.",
    ],
)
def test_other_clock_times_stay_as_written(text: str) -> None:
    assert not shown(text)

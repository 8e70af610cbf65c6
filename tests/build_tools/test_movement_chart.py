"""The movement chart: computed boxes, named in place, seen from behind either hand."""

from __future__ import annotations

import gettext
import math
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from build_tools.charts.clock_face import clock_face
from build_tools.charts.label_places import Area, Named, places
from build_tools.charts.movement_chart import LARGE, Box, box, movement_chart, small_chart
from build_tools.generate.calculator_pages import calculator_names
from build_tools.loading.library import load
from build_tools.places import Places
from build_tools.shape_numbers import THROWS, shape_numbers
from calculators.desk.drawing import Circle, Drawing, Label, Path
from calculators.words import say, speak

SHAPES = {slug: one.model for slug, one in load(Places().content, calculator_names()).shapes.items()}
LEVELS = tuple(THROWS)


def boxes_at(level: str) -> list[Box]:
    return [
        box(shape.title, numbers, shape.reference)
        for shape in SHAPES.values()
        for numbers in shape_numbers(shape)
        if numbers.level == level and numbers.target
    ]


def drawn(level: str, hand="right", highlight: str = "") -> Drawing:
    return movement_chart(boxes_at(level), hand, say("A chart"), say("Boxes."), highlight)


def rectangles(drawing: Drawing) -> list[Area]:
    found = []
    for mark in drawing.marks:
        if isinstance(mark, Path) and mark.closed:
            xs, ys = zip(*mark.points, strict=True)
            found.append(Area(min(xs), min(ys), max(xs), max(ys)))
    return found


def words(drawing: Drawing) -> list[str]:
    return [speak(mark.text, gettext.NullTranslations()) for mark in drawing.marks if isinstance(mark, Label)]


@pytest.mark.parametrize("level", LEVELS)
def test_every_box_is_as_wide_and_high_as_the_flights_say(level: str) -> None:
    origin = LARGE.at(0, 0)
    seen = {
        tuple(
            round(inches)
            for inches in (
                (origin[0] - one.right) / LARGE.per_inch,
                (origin[0] - one.left) / LARGE.per_inch,
                (origin[1] - one.bottom) / LARGE.per_inch,
                (origin[1] - one.top) / LARGE.per_inch,
            )
        )
        for one in rectangles(drawn(level))
    }
    assert seen == {(*one.glove_side, *one.up) for one in boxes_at(level)}


@pytest.mark.parametrize("level", LEVELS)
def test_the_sheet_has_room_for_every_box(level: str) -> None:
    for one in rectangles(drawn(level)):
        assert one.left >= 0
        assert one.right <= LARGE.width
        assert one.top >= 0
        assert one.bottom <= LARGE.height


def test_a_right_handers_glove_side_is_on_the_left_and_a_left_handers_on_the_right() -> None:
    sweeper = next(one for one in boxes_at("adult") if one.name == "Sweeper")
    assert LARGE.area(sweeper).right < LARGE.at(0, 0)[0]
    assert any("\u2190 glove side" in word for word in words(drawn("adult", "right")))
    assert any("glove side \u2192" in word for word in words(drawn("adult", "left")))


@pytest.mark.parametrize("level", LEVELS)
def test_the_left_handers_chart_is_the_mirror_image(level: str) -> None:
    right, left = (rectangles(drawn(level, hand)) for hand in ("right", "left"))
    mirrored = [Area(LARGE.width - one.right, one.top, LARGE.width - one.left, one.bottom) for one in right]
    for one, other in zip(mirrored, left, strict=True):
        assert (one.left, one.right) == pytest.approx((other.left, other.right))
        assert (one.top, one.bottom) == (other.top, other.bottom)


@pytest.mark.parametrize("level", LEVELS)
def test_every_shape_is_named_once_and_a_level_that_should_not_throw_it_does_not_show_it(level: str) -> None:
    told = " ".join(words(drawn(level))).split()
    for shape in SHAPES.values():
        target = next(one.target for one in shape_numbers(shape) if one.level == level)
        name = shape.title.split()
        times = sum(told[at : at + len(name)] == name for at in range(len(told)))
        assert times == int(target), shape.title


def test_the_shape_of_the_page_stands_out_without_color() -> None:
    chart = drawn("adult", highlight="Slurve")
    closed = [mark for mark in chart.marks if isinstance(mark, Path) and mark.closed]
    thick = [mark for mark in closed if (mark.width or 0) > 2]
    assert len(thick) == 1
    assert thick[0].fill is not None
    bold = [mark for mark in chart.marks if isinstance(mark, Label) and mark.bold]
    assert [speak(mark.text, gettext.NullTranslations()) for mark in bold] == ["Slurve"]
    small = small_chart(boxes_at("adult"), "right", say("A chart"), say("Boxes."), "Slurve")
    assert sum((mark.width or 0) > 2 for mark in small.marks if isinstance(mark, Path) and mark.closed) == 1


def test_shapes_that_are_only_compared_have_dashed_boxes() -> None:
    closed = [mark for mark in drawn("adult").marks if isinstance(mark, Path) and mark.closed]
    assert sum(mark.dashed for mark in closed) == sum(shape.reference for shape in SHAPES.values())


def test_the_chart_is_no_wider_than_its_words_can_be_read_on_a_small_phone() -> None:
    # A phone of 320 px leaves the figure 280 px. Letters under 10 px are hard to read.
    chart = drawn("adult")
    sizes = [chart.text_size * mark.size for mark in chart.marks if isinstance(mark, Label)]
    assert min(sizes) * 280 / chart.width > 9.5


spot = st.floats(60, 280)
size = st.floats(8, 60)


@given(st.lists(st.tuples(spot, spot, size, size), min_size=1, max_size=9))
def test_names_never_cover_each_other(corners: list[tuple[float, float, float, float]]) -> None:
    sheet = Area(0, 0, 340, 345)
    named = [
        Named(Area(left, top, min(left + wide, 340), min(top + high, 345)), 54.0, 28.0)
        for left, top, wide, high in corners
    ]
    found = places(named, sheet, [])
    assert len(found) == len(named)
    for one, other in combinations(found, 2):
        assert one.area.shared(other.area) == 0
    for place in found:
        assert sheet.holds((place.area.left, place.area.top))
        assert sheet.holds((place.area.right, place.area.bottom))


def test_a_name_stands_beside_its_own_box() -> None:
    left, right = Area(20, 150, 60, 200), Area(260, 150, 300, 200)
    first, second = places([Named(left, 50, 14), Named(right, 50, 14)], Area(0, 0, 340, 345), [])
    assert first.area.apart(left) < first.area.apart(right)
    assert second.area.apart(right) < second.area.apart(left)


def test_a_name_keeps_off_what_is_taken() -> None:
    one = Area(150, 150, 190, 190)
    taken = [Area(0, 0, 340, 148), Area(0, 0, 148, 345)]
    (place,) = places([Named(one, 50, 14)], Area(0, 0, 340, 345), taken)
    assert all(place.area.shared(area) == 0 for area in taken)


@pytest.mark.parametrize(("hand", "clock"), [("right", 7 + 50 / 60), ("left", 4 + 10 / 60)])
def test_the_clock_faces_arrow_points_at_the_shapes_clock(hand, clock: float) -> None:
    # The slurve's 7:50; a left-hander's is 12:00 less that.
    face = clock_face(SHAPES["slurve"], hand, say("A clock"), say("A band."))
    (arrow,) = (mark for mark in face.marks if isinstance(mark, Path) and mark.arrow)
    (x0, y0), (x1, y1) = arrow.points
    assert math.atan2(x1 - x0, y0 - y1) * 6 / math.pi % 12 == pytest.approx(clock)


def test_a_clock_that_means_little_has_a_dashed_band_and_no_arrow() -> None:
    face = clock_face(SHAPES["bullet-slider"], "right", say("A clock"), say("A band."))
    assert not any(isinstance(mark, Path) and mark.arrow for mark in face.marks)
    assert any(isinstance(mark, Path) and mark.dashed for mark in face.marks)
    assert any(isinstance(mark, Circle) for mark in face.marks)

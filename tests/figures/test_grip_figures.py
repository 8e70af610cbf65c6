"""The figures as a reader meets them: whole, light, without color of their own, and true for either hand."""

from __future__ import annotations

import gettext
import itertools
import re
import xml.etree.ElementTree as ET

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from build_tools.figures import GripFigure, HoldError, grip_figures
from build_tools.figures.curves import area, patch, simplify, smooth
from build_tools.figures.drawing import TEXT, WIDTH
from build_tools.figures.labels import LINE_HEIGHT, Note, arrange, breadth, wrap
from build_tools.generate.clocks import other_hand
from build_tools.schema.grip import Grip
from calculators.words import say, speak

ENGLISH = gettext.NullTranslations()
SVG = "{http://www.w3.org/2000/svg}"
HANDS = ("right", "left")


def all_figures(grip: Grip) -> list[GripFigure]:
    return [figure for hand in HANDS for figure in grip_figures(grip, hand)]


def told(figure: GripFigure) -> str:
    return speak(figure.description, ENGLISH)


def test_each_hand_has_three_views(grip: Grip) -> None:
    for hand in HANDS:
        assert [figure.view for figure in grip_figures(grip, hand)] == ["pitcher", "side", "catcher"]


def test_figures_are_light_enough_for_a_phone(grip: Grip) -> None:
    assert all(len(figure.svg.encode()) < 25_000 for figure in all_figures(grip))


def test_ids_are_the_pages_only_ones_and_name_title_and_words(grip: Grip) -> None:
    seen: list[str] = []
    for figure in all_figures(grip):
        root = ET.fromstring(figure.svg)
        ids = {node.get("id"): node for node in root.iter() if node.get("id")}
        seen += ids
        title, words = (ids[name] for name in root.get("aria-labelledby", "").split())
        assert (title.tag, words.tag, root.get("role")) == (f"{SVG}title", f"{SVG}desc", "img")
        assert words.text == told(figure)
        used = re.findall(r'(?:href="|url\()#([^")]+)', figure.svg)
        assert set(used) <= set(ids)
    assert len(seen) == len(set(seen))


def test_color_comes_from_the_page_alone(grip: Grip) -> None:
    for figure in all_figures(grip):
        for value in re.findall(r'(?:fill|stroke)="([^"]+)"', figure.svg):
            assert value == "none" or value.startswith("var(--")
        assert "style=" not in figure.svg


def test_the_words_give_the_thumb_clock_mirrored_for_a_left_hander(grip: Grip) -> None:
    thumb = grip.choices.thumb
    for clock in filter(None, (thumb.clock, thumb.to_clock)):
        assert all(clock in told(figure) for figure in grip_figures(grip, "right"))
        assert all(other_hand(clock) in told(figure) for figure in grip_figures(grip, "left"))


def test_the_words_give_the_spin_mirrored_for_a_left_hander(grip: Grip) -> None:
    assert grip.hold is not None
    if grip.hold.spin_clock is not None:
        assert grip.hold.spin_clock in told(grip_figures(grip, "right")[0])
        assert other_hand(grip.hold.spin_clock) in told(grip_figures(grip, "left")[0])


def points(data: str) -> list[tuple[float, float]]:
    """Read back the points of path data that moves with M and steps with l, q, a and Z."""
    here, found = (0.0, 0.0), []
    for command, rest in re.findall(r"([MlqaLQZ])([^MlqaLQZ]*)", data):
        numbers = [float(text) for text in re.findall(r"-?(?:\d+\.?\d*|\.\d+)", rest)]
        size = {"M": 2, "l": 2, "L": 2, "q": 4, "Q": 4, "a": 7, "Z": 1}[command]
        for k in range(0, len(numbers), size):
            part = numbers[k : k + size]
            pairs = [tuple(part[-2:])] if command == "a" else list(zip(part[::2], part[1::2], strict=True))
            base = here if command in "lqa" else (0.0, 0.0)
            placed = [(base[0] + x, base[1] + y) for x, y in pairs]
            found += placed
            here = placed[-1]
    return found


TURNED_OVER = re.compile(r'<g transform="matrix\(-1 0 0 1 ([\d.]+) 0\)">')


def lines_of(svg: str, name: str) -> list[list[tuple[float, float]]]:
    """The lines as they stand on the page, a turned-over drawing taken into account."""
    lines = [points(data) for data in re.findall(rf'<path class="{name}" d="([^"]+)"', svg)]
    turned = TURNED_OVER.search(svg)
    return [[(float(turned[1]) - x, y) for x, y in line] for line in lines] if turned else lines


@pytest.mark.parametrize(
    ("name", "count"),
    [("ink-line", 2), ("seam-line", 1), ("seam-stitch", 1), ("seam-under", 1), ("ink-detail", 1)],
)
def test_the_left_hand_is_the_right_hands_mirror_image(grip: Grip, name: str, count: int) -> None:
    for right, left in zip(grip_figures(grip, "right"), grip_figures(grip, "left"), strict=True):
        pairs = zip(lines_of(right.svg, name)[:count], lines_of(left.svg, name)[:count], strict=True)
        for one, other in pairs:
            mirrored = np.array(one) * (-1.0, 1.0) + (WIDTH, 0.0)
            assert mirrored == pytest.approx(np.array(other), abs=0.11)


def test_words_are_not_mirrored_and_stay_inside_the_figure(grip: Grip) -> None:
    for figure in all_figures(grip):
        root = ET.fromstring(figure.svg)
        top, height = (float(text) for text in root.get("viewBox", "").split()[1::2])
        turned_over = [group for group in root.iter(f"{SVG}g") if "matrix" in group.get("transform", "")]
        assert not any(list(group.iter(f"{SVG}text")) for group in turned_over)
        for text in root.iter(f"{SVG}text"):
            assert text.get("transform") is None
            for number, line in enumerate(text):
                wide = breadth(line.text or "") * TEXT
                x, y = float(line.get("x", "0")), float(text.get("y", "0")) + number * LINE_HEIGHT
                left = x if text.get("text-anchor") == "start" else x - wide
                assert left >= 0.0
                assert left + wide <= WIDTH
                assert top + TEXT * 0.7 <= y <= top + height


def test_labels_speak_the_pages_language(grip: Grip) -> None:
    class Shouting(gettext.NullTranslations):
        def gettext(self, message: str) -> str:
            return re.sub(r"(?<![{\w])\w+(?![}\w])", lambda word: word[0].upper(), message)

    for figure in grip_figures(grip, "right", Shouting()):
        for text in ET.fromstring(figure.svg).iter(f"{SVG}tspan"):
            assert text.text == (text.text or "").upper()


def test_a_hold_whose_thumb_contradicts_its_entry_is_refused(grip: Grip) -> None:
    assert grip.hold is not None
    thumb = grip.hold.thumb.model_copy(update={"clock": "3:00"})
    wrong = grip.model_copy(update={"hold": grip.hold.model_copy(update={"thumb": thumb})})
    with pytest.raises(HoldError, match=r"3:00.*Make the two agree"):
        grip_figures(wrong, "right")


def test_an_entry_without_a_hold_has_no_figure(grip: Grip) -> None:
    assert grip_figures(grip.model_copy(update={"hold": None}), "right") == ()


WORD = st.text("abcdefgh", min_size=1, max_size=12)
NOTES = st.lists(
    st.tuples(
        st.builds(
            Note,
            text=st.just(say("thumb")),
            at=st.just((100.0, 100.0)),
            side=st.sampled_from(["left", "right"]),
            height=st.floats(20.0, 280.0),
        ),
        st.lists(WORD, min_size=1, max_size=4).map(" ".join),
    ),
    max_size=6,
)


@given(notes=NOTES)
def test_labels_in_a_column_never_overlap(notes: list[tuple[Note, str]]) -> None:
    for side in ("left", "right"):
        column = [label for label in arrange(notes, 20.0, 600.0) if label.side == side]
        tops = [(label.top, len(label.lines)) for label in column]
        for (first, lines), (second, _) in itertools.pairwise(tops):
            assert second >= first + lines * LINE_HEIGHT


@given(words=st.lists(WORD, min_size=1), columns=st.integers(4, 20))
def test_wrapping_keeps_every_word_in_order(words: list[str], columns: int) -> None:
    lines = wrap(" ".join(words), columns)
    assert " ".join(lines).split() == words
    assert all(len(line) <= max(columns, max(map(len, words))) for line in lines)


FLAT = st.tuples(st.floats(0.0, 300.0), st.floats(0.0, 300.0))


@given(line=st.lists(FLAT, min_size=3, max_size=30), tolerance=st.floats(0.1, 5.0))
def test_a_simpler_line_stays_by_the_points_it_drops(
    line: list[tuple[float, float]], tolerance: float
) -> None:
    kept = simplify(line, tolerance)
    assert (kept[0], kept[-1]) == (line[0], line[-1])
    steps = list(itertools.pairwise(kept))
    for x, y in line:
        assert min(distance((x, y), a, b) for a, b in steps) <= tolerance + 1e-6


def distance(p: tuple[float, float], a: tuple[float, float], b: tuple[float, float]) -> float:
    span = complex(b[0] - a[0], b[1] - a[1])
    off = complex(p[0] - a[0], p[1] - a[1])
    share = 0.0 if span == 0 else max(0.0, min(1.0, (off * span.conjugate()).real / abs(span) ** 2))
    return abs(off - share * span)


@given(line=st.lists(FLAT, min_size=2, max_size=30))
def test_a_smooth_line_starts_and_ends_where_it_should(line: list[tuple[float, float]]) -> None:
    drawn = points(smooth(line))
    assert drawn[0] == pytest.approx(line[0], abs=0.06)
    assert drawn[-1] == pytest.approx(line[-1], abs=0.06)


@given(line=st.lists(FLAT, min_size=3, max_size=12))
def test_patches_are_all_wound_the_same_way(line: list[tuple[float, float]]) -> None:
    assume(abs(area(line)) > 400.0)
    for data in (patch(line), patch(line[::-1])):
        assert area(points(data)) > 0.0

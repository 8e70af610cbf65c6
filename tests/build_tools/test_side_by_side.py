"""Choices of a grip side by side, cues by what they change, and wide tables on a narrow phone."""

from __future__ import annotations

import gettext
import re
from pathlib import Path

import markdown
import pytest

from build_tools.figures.small_figure import small_figure
from build_tools.generate.calculator_pages import calculator_names, calculator_titles
from build_tools.generate.choices import MOST_PICTURES, shown_variants, variant_of
from build_tools.generate.cue_effects import columns, effect_rows, rows_from
from build_tools.generate.figures_html import FigureStore
from build_tools.generate.wide_tables import stackable
from build_tools.generate.writer import Edition
from build_tools.loading.library import Library, load
from build_tools.places import Places
from build_tools.schema.guide import VARIANTS

WORDS = gettext.NullTranslations()


@pytest.fixture(scope="module")
def handbook() -> Library:
    return load(Places().content, calculator_names())


@pytest.fixture(scope="module")
def edition(handbook: Library) -> Edition:
    return Edition(handbook, "en", WORDS, "", calculator_titles(WORDS))


@pytest.mark.parametrize("choosing", ["base", "thumb", "spike", "depth"])
def test_every_grip_stands_under_one_variant_of_each_choice(
    handbook: Library, edition: Edition, choosing, tmp_path: Path
) -> None:
    choice = handbook.guide[f"choose-a-{choosing}"].model.choice
    figures = FigureStore(tmp_path, beside=Places().build / "figures")
    shown = shown_variants(choice, handbook.grips.values(), figures, edition)
    listed = [grip.slug for one in shown for _, grips in one.families for grip in grips]
    assert sorted(listed) == sorted(handbook.grips)
    assert {one.variant.value for one in shown} == set(VARIANTS[choosing])
    for one in shown:
        several = sum(len(grips) for _, grips in one.families)
        assert len(one.pictures) == min(several, MOST_PICTURES)


@pytest.mark.parametrize(
    ("grip", "choosing", "variant"),
    [
        ("basic-downer", "thumb", "under"),
        ("slurve-grip", "thumb", "half-way"),
        ("sweeping-curve-grip", "thumb", "side"),
        ("pointer-up", "spike", "lifted"),
        ("fingertip-spike", "spike", "nail-tip"),
        ("rails-curve", "base", "two-seam"),
        ("three-finger-change", "depth", "choked"),
    ],
)
def test_a_grip_shows_the_variant_its_steps_describe(
    handbook: Library, grip: str, choosing, variant: str
) -> None:
    assert variant_of(choosing, handbook.grips[grip].model) == variant


def test_small_figures_of_all_grips_can_stand_on_one_page(handbook: Library) -> None:
    drawn = [
        small_figure(one.model, WORDS, view)
        for one in list(handbook.grips.values())[:4]
        for view in ("pitcher", "side")
    ]
    names = re.findall(r'\bid="([^"]+)"', "".join(drawn))
    assert len(names) == len(set(names)) > 0
    for svg in drawn:
        assert set(re.findall(r"#([\w-]+)", svg)) <= set(names) | set(
            re.findall(r"#(fff\w*|000|fbf1e4)", svg)
        )
        assert "<text" not in svg
        assert len(svg) < 14_000


def test_a_cue_says_in_words_and_arrows_what_it_changes(small_library: Library) -> None:
    edition = Edition(small_library, "en", WORDS, "", calculator_titles(WORDS))
    first, anywhere = effect_rows(small_library.cues["rope-pull"], edition)
    assert first.cells["speed"] == "\u2193\u00a0slower, 1 to 2 mph"
    assert first.cells["drop"] == "\u2191\u00a0more drop"
    assert "toward 6:00, about" in first.cells["clock"]
    assert 'class="for-left">4:45<' in first.cells["clock"]
    assert first.cells["side"] == ""
    assert set(columns((first, anywhere), edition)) == {"speed", "clock", "drop"}


def test_a_cue_that_is_a_bad_trade_from_a_start_is_not_offered_there(
    handbook: Library, edition: Edition
) -> None:
    for profile in handbook.profiles:
        use, bad = rows_from(profile, handbook.cues.values(), edition)
        assert not {row.cue.slug for row in use} & {row.cue.slug for row in bad}
        for row in bad:
            assert row.effect.unwanted
        for row in use:
            assert profile in row.cue.model.starts
    use, bad = rows_from("downer", handbook.cues.values(), edition)
    assert "window-blind" in {row.cue.slug for row in bad}
    assert "box-line" in {row.cue.slug for row in use}


def html(text: str) -> str:
    return markdown.markdown(stackable(text), extensions=["attr_list", "md_in_html", "tables"])


def test_each_cell_of_a_wide_table_knows_the_head_of_its_column() -> None:
    page = html('| A | B "b" | C | <a href="#">D</a> |\n|---|---|---|---|\n| one | two | *three* | four |\n')
    assert '<td data-head="B &quot;b&quot;"><span>two</span></td>' in page
    assert '<td data-head="C"><span><em>three</em></span></td>' in page
    assert '<td data-head="D"><span>four</span></td>' in page
    assert "<td>one</td>" in page
    assert 'class="table-frame wide"' in page


def test_a_table_that_fits_a_phone_and_a_bar_inside_a_cell_are_left_alone() -> None:
    narrow = "| A | B | C |\n|---|---|---|\n| 1 | 2 | 3 |\n"
    assert stackable(narrow) == narrow
    page = html("| A | B | C | D |\n|---|---|---|---|\n| 1 | 2 \\| 2 | 3 | 4 |\n")
    assert '<td data-head="B"><span>2 | 2</span></td>' in page
    assert '<td data-head="D"><span>4</span></td>' in page


def test_three_columns_with_a_long_cell_are_stacked_too_and_marks_do_not_count_as_letters() -> None:
    marked = f'| A | B | C |\n|---|---|---|\n| 1 | 2 | <a href="{"#" * 99}">{"x" * 70}</a> |\n'
    assert stackable(marked) == marked
    assert 'class="table-frame wide"' in html(marked.replace("x" * 70, "x" * 71))

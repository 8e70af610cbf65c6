"""Colors can be told apart by the rules of WCAG 2.2, on the light and on the dark page."""

from __future__ import annotations

import colorsys
from collections.abc import Callable

import pytest

from build_tools.editions.colors import TEXT, contrast, luminance, nearest_passing, weakest
from build_tools.editions.schemes import SCHEMES, grounds, style
from build_tools.places import THEME

# W3C, ACT rule afw4f7 "Text has minimum contrast", test cases: passed examples 1, 5, 8 and failed
# examples 1 and 9, with the ratio printed there.
ACT_EXAMPLES = [
    ("#333333", "#ffffff", 12.6),
    ("#000000", "#666666", 3.6),
    ("#000000", "#ffffff", 21.0),
    ("#aaaaaa", "#ffffff", 2.3),
    ("#777777", "#eeeeee", 3.85),
]


@pytest.mark.parametrize(("text", "ground", "printed"), ACT_EXAMPLES)
def test_the_ratio_is_the_one_printed_beside_the_example(text: str, ground: str, printed: float) -> None:
    """Printed ratios are cut or rounded to the digits shown; both lie within one of the last digit."""
    last_digit = 0.01 if printed == 3.85 else 0.1
    assert contrast(text, ground) == pytest.approx(printed, abs=last_digit)
    assert contrast(text, ground) == contrast(ground, text)


def test_the_darkest_gray_that_fails_on_white_is_not_rounded_up() -> None:
    """W3C, Understanding 1.4.3: 4.499 to 1 does not meet 4.5 to 1."""
    assert 4.47 < contrast("#777777", "#ffffff") < TEXT
    assert contrast("#767676", "#ffffff") > TEXT


def test_luminance_of_the_primaries_are_the_weights_of_the_definition() -> None:
    """WCAG 2.2, relative luminance: L = 0.2126 R + 0.7152 G + 0.0722 B, black 0 and white 1."""
    found = [luminance(color) for color in ("#000000", "#ff0000", "#00ff00", "#0000ff", "#ffffff")]
    assert found == pytest.approx([0, 0.2126, 0.7152, 0.0722, 1])


def test_a_dark_channel_is_linear_below_the_knee_of_srgb() -> None:
    """IEC 61966-2-1, as WCAG 2.2 has it: up to 0.04045 the value is divided by 12.92."""
    assert luminance("#0a0a0a") == pytest.approx(10 / 255 / 12.92)
    assert luminance("#0b0b0b") == pytest.approx(((11 / 255 + 0.055) / 1.055) ** 2.4)


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize("color", ["#ffd400", "#ff8800", "#7fb2ff", "#2b2b8f", "#c00000", "#808080"])
def test_the_named_shade_passes_and_no_nearer_one_does(scheme: str, color: str) -> None:
    ground = tuple(grounds()[scheme].values())
    near = nearest_passing(color, ground)
    assert near is not None
    assert weakest(near, ground) >= TEXT

    def lightness(one: str) -> float:
        return colorsys.rgb_to_hls(*(int(one[at : at + 2], 16) / 255 for at in (1, 3, 5)))[1]

    away = abs(lightness(near) - lightness(color))
    hue, own, saturation = colorsys.rgb_to_hls(*(int(color[at : at + 2], 16) / 255 for at in (1, 3, 5)))
    for step in range(int(away * 255) - 1):
        for other in (own - step / 255, own + step / 255):
            channels = colorsys.hls_to_rgb(hue, min(1, max(0, other)), saturation)
            shade = "#" + "".join(f"{round(255 * one):02x}" for one in channels)
            assert weakest(shade, ground) < TEXT


def test_a_color_nobody_can_read_is_refused_with_the_nearest_one_that_works(
    say_in_edition: Callable[[str, str], int], told: Callable[..., list[str]]
) -> None:
    line = say_in_edition('light: "#0f5a6b"', 'light: "#ffd400"')
    [mistake] = told()
    assert mistake.startswith(f"content/editions/sandlot/edition.yml: line {line}, colors.light: ")
    near = nearest_passing("#ffd400", grounds()["light"].values())
    assert f'Did you mean "{near}"?' in mistake
    say_in_edition("#ffd400", str(near))
    assert told() == []


def test_the_dark_page_is_checked_by_itself(
    say_in_edition: Callable[[str, str], int], told: Callable[..., list[str]]
) -> None:
    say_in_edition('dark: "#7fd0e0"', 'dark: "#0f5a6b"')
    [mistake] = told()
    assert "colors.dark" in mistake
    assert "the dark page" in mistake


@pytest.mark.parametrize(
    ("written", "mend"),
    [
        ("#1f5c3d", "in quotes"),
        ('"green"', "six digits"),
        ('"#1f5"', "six digits"),
        ('"url(x)"', "six digits"),
    ],
)
def test_what_is_no_color_is_refused_with_an_example(
    say_in_edition: Callable[[str, str], int], told: Callable[..., list[str]], written: str, mend: str
) -> None:
    say_in_edition('"#0f5a6b"', written)
    [mistake] = told()
    assert mend in mistake


def test_the_look_follows_the_color_but_a_drawn_seam_stays_red() -> None:
    text = style({"light": "#0f5a6b", "dark": "#7fd0e0"})
    red = "#a1241c"
    assert f"--seam: {red};" in (THEME / "bendbook.css").read_text(encoding="utf-8")
    assert '[data-md-color-scheme="default"] { --seam: #0f5a6b; }' in text
    assert f'[data-md-color-scheme="default"] svg.drawing {{ --seam: {red}; }}' in text

"""A logo may draw and nothing else: what could act, or reach out, is taken out or refused by name."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ElementTree
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.editions.logo import LogoError, read_logo

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 9 9"'
CIRCLE = '<circle cx="4" cy="4" r="4" fill="#123456"/>'

ACTING = {
    "a script": f"{HEAD}><script>alert(1)</script>{CIRCLE}</svg>",
    "a handler": f'{HEAD} onload="alert(1)">{CIRCLE}</svg>',
    "a handler in capitals": f'{HEAD}><rect width="1" height="1" ONCLICK="alert(1)"/>{CIRCLE}</svg>',
    "a link that runs": f'{HEAD}><a xlink:href="javascript:alert(1)">{CIRCLE}</a>{CIRCLE}</svg>',
    "a page inside": f"{HEAD}><foreignObject><b xmlns='http://www.w3.org/1999/xhtml'>x</b></foreignObject>{CIRCLE}</svg>",
    "a picture from elsewhere": f'{HEAD}><image href="https://example.org/x.png"/>{CIRCLE}</svg>',
    "a shape from elsewhere": f'{HEAD}><use xlink:href="https://example.org/x.svg#a"/>{CIRCLE}</svg>',
    "a style sheet from elsewhere": f"{HEAD}><style>@import url(https://example.org/x.css);</style>{CIRCLE}</svg>",
    "a fill from elsewhere": f'{HEAD}><rect width="1" height="1" style="fill:url(https://example.org/x)"/>{CIRCLE}</svg>',
    "a set of pictures": f"{HEAD}><path d='M0 0' style=\"mask:image-set('https://example.org/x' 1x)\"/>{CIRCLE}</svg>",
    "a set of pictures in a style": f"{HEAD}><style>a{{mask:image-set('https://example.org/x' 1x)}}</style>{CIRCLE}</svg>",
    "an address in parts": f"{HEAD}><rect width='1' height='1' fill='url(/**/https://example.org/x)'/>{CIRCLE}</svg>",
    "an animation of a link": f'{HEAD}><a><animate attributeName="href" values="javascript:alert(1)"/></a>{CIRCLE}</svg>',
    "a set handler": f'{HEAD}><set attributeName="onmouseover" to="alert(1)"/>{CIRCLE}</svg>',
}


PNG = b"\x89PNG\r\n\x1a\n" + bytes.fromhex(
    "0000000d49484452000000010000000108060000001f15c489"
    "0000000d49444154789c6360606060000000050001a5f645400000000049454e44ae426082"
)
"""One clear dot."""


def put(folder: Path, text: str, name: str = "logo.svg") -> str:
    (folder / name).write_text(text, encoding="utf-8")
    return name


@pytest.mark.parametrize("how", ACTING)
def test_what_could_act_is_taken_out_and_named(folder: Path, how: str) -> None:
    logo = read_logo(folder, put(folder, ACTING[how]))
    left = logo.content.decode()
    assert not re.search(
        r"script|alert|\bon\w+=|foreign|https://example|@import|animate|<set", left, re.IGNORECASE
    )
    assert len(ElementTree.fromstring(left).findall("{http://www.w3.org/2000/svg}circle")) >= 1
    assert logo.left_out


def test_a_plain_drawing_comes_through_as_it_is(folder: Path) -> None:
    drawing = (
        f'{HEAD}><defs><linearGradient id="g"><stop offset="0" stop-color="#fff"/></linearGradient></defs>'
        f'<path d="M0 0L9 9" fill="url(#g)"/><use xlink:href="#g"/>{CIRCLE}</svg>'
    )
    logo = read_logo(folder, put(folder, drawing))
    assert logo.left_out == ""
    assert ElementTree.canonicalize(logo.content.decode()) == ElementTree.canonicalize(drawing)


def test_a_few_lines_that_stand_for_gigabytes_are_refused(folder: Path) -> None:
    bomb = (
        '<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>'
        + f"{HEAD}>&b;{CIRCLE}</svg>"
    )
    with pytest.raises(LogoError, match="document type"):
        read_logo(folder, put(folder, bomb))


@pytest.mark.parametrize(
    ("text", "mend"),
    [
        ("<svg>", "saved|again|read"),
        ("<html xmlns='http://www.w3.org/1999/xhtml'/>", "outermost element is svg"),
        (f'{HEAD}><image href="x.png"/></svg>', "draws something by itself"),
        (f"<svg xmlns='http://www.w3.org/2000/svg'>{CIRCLE}</svg>", "viewBox"),
        ("x" * 300_000, "save it smaller"),
        (f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 0 0'>{CIRCLE}</svg>", "like"),
        (f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='a b c'>{CIRCLE}</svg>", "four numbers"),
        (f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 inf 9'>{CIRCLE}</svg>", "four numbers"),
        (f"{HEAD}>{'<g>' * 9000}{CIRCLE}{'</g>' * 9000}</svg>", "draw it flatter"),
        (
            f'{HEAD}><g id="a">{CIRCLE}</g><g id="b"><use href="#a"/></g><use href="#b"/></svg>',
            "draw that shape out",
        ),
        (f'{HEAD}>{CIRCLE}<use id="a" href="#b"/><use id="b" href="#a"/></svg>', "draw that shape out"),
    ],
)
def test_what_is_no_drawing_is_refused_with_a_mend(folder: Path, text: str, mend: str) -> None:
    with pytest.raises(LogoError, match=mend):
        read_logo(folder, put(folder, text))


def test_a_png_is_known_by_what_is_in_it_and_not_by_its_name(folder: Path) -> None:
    (folder / "a.png").write_bytes(PNG)
    assert read_logo(folder, "a.png").name == "logo.png"
    with pytest.raises(LogoError, match="SVG or a PNG"):
        read_logo(folder, put(folder, f"{HEAD}>{CIRCLE}</svg>", "b.png"))


@pytest.mark.parametrize("length", [8, 20, len(PNG) - 12])
def test_a_png_that_is_cut_short_is_refused(folder: Path, length: int) -> None:
    (folder / "a.png").write_bytes(PNG[:length])
    with pytest.raises(LogoError, match="save it again"):
        read_logo(folder, "a.png")


@pytest.mark.parametrize("name", ["a\0b.svg", "a" * 5000 + ".svg", "a\nb.svg"])
def test_a_name_no_file_can_have_is_refused(folder: Path, name: str) -> None:
    with pytest.raises(LogoError, match="rename the file"):
        read_logo(folder, name)


def test_any_file_name_will_do_because_the_site_gives_it_its_own(folder: Path) -> None:
    logo = read_logo(folder, put(folder, f"{HEAD}>{CIRCLE}</svg>", "Nuestro león (1).svg"))
    assert logo.name == "logo.svg"


def test_a_logo_outside_the_editions_folder_is_never_read(folder: Path, content: Path) -> None:
    put(content, f"{HEAD}>{CIRCLE}</svg>", "secret.svg")
    with pytest.raises(LogoError, match="own folder"):
        read_logo(folder, "../../secret.svg")


def test_a_missing_logo_is_told_at_its_line(
    say_in_edition: Callable[[str, str], int], told: Callable[..., list[str]]
) -> None:
    line = say_in_edition("hides: []", "logo: lion.svg\nhides: []")
    [mistake] = told()
    assert mistake.startswith(f"content/editions/sandlot/edition.yml: line {line}, logo: a file of this name")

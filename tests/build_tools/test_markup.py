"""Words from the content stay words: what could act or reach out is refused with its place."""

from __future__ import annotations

import time

import pytest

from build_tools.loading.markup import NO_SCRIPTS, unsafe
from tests.build_tools.conftest import Edit, Mistakes

REFUSED = (
    "Read <script>alert(1)</script>",
    "<SCRIPT SRC=x",
    '<a title="<" onclick="alert(1)">x</a>',
    "<svg/onload=alert(1)>",
    "[x](https://league.example){: onclick='alert(1)'}",
    "[x](https://league.example){#x onclick='alert(1)'}",
    "[x](javascript:alert(1))",
    "[x](java&#115;cript&colon;alert(1))",
    '<a href="java\nscript:alert(1)">x</a>',
    "<iframe src='x'>",
    "<object data=x>",
    "<embed src=x>",
    "<form action=x>",
    "<meta http-equiv=refresh content=0>",
    '<img alt="x" src="//league.example/x.png">',
    '<link rel="stylesheet" href="https://league.example/x.css">',
    "![x](https://league.example/x.png)",
    "<div>`<script>alert(1)</script>`</div>",
    "`a\n<script>alert(1)</script>\nb`",
    "\\`<script>alert(1)</script>\\`",
)

TAKEN = (
    "Write `<script>` in code.",
    "```html\n<script>alert(1)</script>\n```",
    'Take <a href="../../assets/a.csv" download>the sheet</a>.',
    "Under 5 < 6 innings once = one.",
    "A league's [page](https://league.example/).",
)


@pytest.mark.parametrize("text", REFUSED)
def test_what_could_act_is_found(text: str) -> None:
    assert list(unsafe(text))


@pytest.mark.parametrize("text", TAKEN)
def test_code_and_plain_links_are_let_be(text: str) -> None:
    assert not list(unsafe(text))


def test_a_long_text_is_looked_over_in_a_moment() -> None:
    begun = time.monotonic()
    for part in ("<a ", "<img ", "![", "{", "`", "java", "```\n"):
        list(unsafe(part * 20_000))
    assert time.monotonic() - begun < 5


def test_a_script_in_a_body_is_refused_at_its_line(edit: Edit, mistakes: Mistakes) -> None:
    line = edit("guide/warning-signs.md", "\n---\n", "\n---\n\n<script>alert(1)</script>\n") + 3
    [mistake] = [one for one in mistakes() if one.expected == NO_SCRIPTS]
    assert (str(mistake.path), mistake.line) == ("content/guide/warning-signs.md", line)


def test_a_script_in_a_field_is_refused_at_its_line(edit: Edit, mistakes: Mistakes) -> None:
    line = edit("guide/warning-signs.md", "\nsummary: ", "\nsummary: <iframe src=x> ") + 1
    [mistake] = [one for one in mistakes() if one.expected == NO_SCRIPTS]
    assert (mistake.line, mistake.field) == (line, "summary")


@pytest.mark.parametrize("address", ["javascript:alert(1)", "ftp://x", "www.league.example"])
def test_a_rule_set_and_a_source_are_read_at_a_web_address(
    edit: Edit, mistakes: Mistakes, address: str
) -> None:
    edit("rules/usa-joint-2015.yml", "\nlink: ", f'\nlink: "{address}" # ')
    assert any("begins with https:// or http://" in one.expected for one in mistakes())

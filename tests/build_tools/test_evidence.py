"""A number out of a study says which study; what a coach has seen for years needs no mark of its own."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from build_tools.checks.evidence import unmarked
from build_tools.loading.mistakes import Mistake


@pytest.mark.parametrize(
    "text",
    [
        "In one study of 29 pitchers the load was lower.",
        "A tired arm went with nearly eight times the odds of an injury.",
        "Sliders went with 86 percent more elbow pain.",
        "About 42 percent of pitchers were sore.",
        "A review of ten lab reports found nothing. {published: study-2002}\n\nA survey of 754 players did.",
        "It is safe to say. {common practice}\n\n- In a laboratory, twelve pitchers threw.\n- More. {estimate}",
        "| Study | Found |\n|---|---|\n| A study of 12 | less load |\n| Another | more. {published: a-2001} |",
    ],
)
def test_a_finding_without_a_mark_is_found(text: str) -> None:
    assert list(unmarked(text))


@pytest.mark.parametrize(
    "text",
    [
        "In one study of 29 pitchers the load was lower. {published: study-2002}",
        "One trial had players of 9 to 11. Fewer were hurt. {published: study-2002}",
        "Throw at 60 percent effort, ten times.",
        "Three of four throws reach the mitt.",
        "Study the grip before you throw.",
        "We know of no study that tested this.",
    ],
)
def test_a_marked_finding_and_a_coachs_number_are_left_alone(text: str) -> None:
    assert list(unmarked(text)) == []


def test_the_place_of_the_sentence_is_told(
    edit: Callable[[str, str, str], int], mistakes: Callable[[], tuple[Mistake, ...]]
) -> None:
    assert mistakes() == ()
    line = edit(
        "cues/rope-pull.md", "use_when: ", "use_when: In one study of 12 players it helped. Use it when "
    )
    (mistake,) = mistakes()
    assert (mistake.line, mistake.field) == (line, "use_when")
    assert "12 players" in mistake.found

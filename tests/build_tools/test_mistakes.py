"""A curator's mistakes: each is told with file, line, field, what was expected and the nearest name."""

from __future__ import annotations

import pytest

from build_tools.loading.mistakes import ContentError, Mistake


def the_one(found: tuple[Mistake, ...]) -> Mistake:
    assert len(found) == 1, "\n".join(map(str, found))
    return found[0]


def test_the_small_content_has_no_mistakes(mistakes) -> None:
    assert mistakes() == ()


@pytest.mark.parametrize(
    ("file", "old", "new", "field", "expected", "nearest"),
    [
        ("grips/rolling-curve.md", "family: curve", "family: curv", "family", "curve, slider", "curve"),
        ("grips/rolling-curve.md", '"6:30"', '"6:75"', "choices.thumb.clock", '"1:00" to "12:59"', None),
        ("grips/rolling-curve.md", '"6:30"', '"13:00"', "choices.thumb.clock", '"1:00" to "12:59"', None),
        ("grips/rolling-curve.md", "wrist: Firm.", "wirst: Firm.", "hand.wirst", "schema knows", "wrist"),
        ("grips/rolling-curve.md", "youngest: 13", "youngest: 5", "youngest", "7 or more", None),
        ("grips/rolling-curve.md", "youngest: 13", "youngest: young", "youngest", "a whole number", None),
        ("grips/rolling-curve.md", "2026-01-02", "2026-13-02", "reviewed", "year-month-day", None),
        ("shapes/forward-drop.md", "[80, 84]", "[84, 80]", "speed_percent", "smaller number first", None),
        ("shapes/forward-drop.md", "[80, 84]", "80", "speed_percent", "a list", None),
        ("cues/rope-pull.md", "goes: down", "goes: dwon", "effects 1.speed.goes", "up, down", "down"),
        ("drills/short-toss.md", "steps: [Hold the ball., Toss it.]", "steps: [Hold.]", "steps", "2", None),
        ("faults/stays-up.md", "by: eye", "by: eyes", "checks 1.by", "eye, phone", "eye"),
        ("plans/one-week.md", "week: 1", "week: first", "weeks 1.week", "a whole number", None),
        ("guide/welcome.md", "section: start", "section: strat", "section", "start, coach", "start"),
        ("glossary.yml", "group: practice", "group: practise", "spin-game.group", "practice", "practice"),
        ("sources.yml", "read: whole", "read: hole", "study-2002.read", "whole", "whole"),
        ("rules/usa-joint-2015.yml", "kind: guideline", "kind: guide", "kind", "guideline", "guideline"),
    ],
)
def test_a_wrong_value_is_told_where_it_stands(
    edit, mistakes, file: str, old: str, new: str, field: str, expected: str, nearest: str | None
) -> None:
    line = edit(file, old, new)
    found = the_one(mistakes())
    assert found.path.as_posix() == f"content/{file}"
    assert (found.line, found.field, found.nearest) == (line, field, nearest)
    assert expected in found.expected


@pytest.mark.parametrize(
    ("file", "old", "new", "field", "nearest"),
    [
        ("grips/rolling-curve.md", "cues: [rope-pull]", "cues: [rope-pul]", "cues 1", "rope-pull"),
        ("grips/rolling-curve.md", "shapes: [forward-drop]", "shapes: [forward]", "shapes 1", "forward-drop"),
        ("shapes/forward-drop.md", "[high-slot]", "[hi-slot]", "slots 1", "high-slot"),
        ("shapes/forward-drop.md", "[strike-taker]", "[strike-take]", "roles 1", "strike-taker"),
        ("cues/rope-pull.md", "leads_to: straight", "leads_to: strait", "effects 1.leads_to", "straight"),
        ("cues/rope-pull.md", "start: any", "start: anywhere", "effects 2.start", None),
        ("cues/rope-pull.md", "[toss]", "[tosses]", "stages 1", "toss"),
        ("drills/short-toss.md", "stage: toss", "stage: tos", "stage", "toss"),
        ("faults/stays-up.md", "[goes-sideways]", "[goes-side]", "look_also 1", "goes-sideways"),
        ("plans/one-week.md", "drills: [short-toss]", "drills: [toss]", "weeks 1.drills 1", "short-toss"),
        (
            "rules/stricter-league.yml",
            "extends: usa-joint-2015",
            "extends: usa-joint",
            "extends",
            "usa-joint-2015",
        ),
        (
            "rules/stricter-league.yml",
            "source: guide-body-2015",
            "source: guide-body",
            "source",
            "guide-body-2015",
        ),
        (
            "glossary.yml",
            "see: [grips/rolling-curve]",
            "see: [grips/rolling]",
            "horseshoe.see 1",
            "grips/rolling-curve",
        ),
        (
            "guide/when-to-start.md",
            "[[grips/rolling-curve]]",
            "[[grips/rolling-curv]]",
            "body",
            "grips/rolling-curve",
        ),
        (
            "guide/when-to-start.md",
            "[[calculators/pitch-count]]",
            "[[calculators/pitchcount]]",
            "body",
            "calculators/pitch-count",
        ),
        (
            "guide/when-to-start.md",
            "[[grips/rolling-curve]]",
            "[[grip/rolling-curve]]",
            "body",
            "grips/rolling-curve",
        ),
        ("guide/when-to-start.md", "guide-body-2015", "guide-body-2016", "body", "guide-body-2015"),
        ("drills/short-toss.md", "study-2002, ", "study-2020, ", "care 1", "study-2002"),
    ],
)
def test_a_name_that_leads_nowhere_is_told_with_the_nearest_one(
    edit, mistakes, file: str, old: str, new: str, field: str, nearest: str | None
) -> None:
    line = edit(file, old, new)
    found = the_one(mistakes())
    assert found.path.as_posix() == f"content/{file}"
    assert (found.line, found.field, found.nearest) == (line, field, nearest)


@pytest.mark.parametrize(
    ("new", "expected"),
    [
        ("Not before 13. {publised: guide-body-2015}", "an evidence mark"),
        ("Not before 13. {published}", "an evidence mark"),
        ("Not before 13. {common  practice}", "an evidence mark"),
        ("{estimate} Not before 13.", "after the sentence"),
        ("Not before 13. [[grips]]", "a link as [[kind/slug]]"),
        ("Not before 13. [[grips/rolling-curve", "a link as [[kind/slug]]"),
        ("Not before 13. [a page](../grips/rolling-curve.md)", "as [[kind/slug|words]]"),
        ("# Not before 13.", "headings that start with ##"),
        ("Not before 13. {published: recalled-1990}", "{estimate}, or a source that somebody has read"),
    ],
)
def test_a_mark_that_is_none_is_told(edit, mistakes, new: str, expected: str) -> None:
    line = edit("guide/when-to-start.md", "Not before 13. {published: guide-body-2015}", new)
    found = the_one(mistakes())
    assert found.line == line
    assert expected in found.expected


def test_all_mistakes_of_all_files_are_told_at_once(edit, mistakes) -> None:
    edit("grips/rolling-curve.md", "family: curve", "family: bend")
    edit("grips/rolling-curve.md", "youngest: 13", "youngest: 40")
    edit("cues/rope-pull.md", "confidence: low", "confidence: some")
    edit("faults/stays-up.md", "do_now: Aim lower.\n", "")
    found = mistakes()
    assert [(one.path.name, one.field) for one in found] == [
        ("rope-pull.md", "confidence"),
        ("stays-up.md", "do_now"),
        ("rolling-curve.md", "family"),
        ("rolling-curve.md", "youngest"),
    ]
    told = str(ContentError(found))
    assert told.count("content/grips/rolling-curve.md") == 1
    assert told.endswith("4 mistakes in 3 files. Nothing was built.")


def test_a_mistake_in_one_entry_makes_no_mistakes_of_the_links_to_it(edit, mistakes) -> None:
    edit("cues/rope-pull.md", "confidence: low", "confidence: some")
    assert the_one(mistakes()).path.name == "rope-pull.md"


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("grips/RollingCurve.md", "plain lower-case words joined by hyphens"),
        ("grips/curve2.md", "plain lower-case words joined by hyphens"),
        ("grips/notes.txt", "plain lower-case words joined by hyphens"),
        ("grips/other-curve.es.md", "an English entry other-curve.md"),
        ("calculators/spin-to-brake.md", "a file named as a calculator"),
    ],
)
def test_a_file_must_be_named_as_an_entry(small, mistakes, name: str, expected: str) -> None:
    pattern = "calculators/spin-to-break.md" if name.startswith("calc") else "grips/plain-fastball.md"
    (small / name).write_text((small / pattern).read_text())
    assert expected in the_one(mistakes()).expected


@pytest.mark.parametrize(
    ("text", "line", "expected"),
    [
        ("title: No hyphens\n", 1, "a first line of three hyphens"),
        ("---\ntitle: Never closed\n", 2, "three hyphens (---) after the last field"),
        ("---\n- a list\n---\n", 2, "a set of fields"),
        ("---\ntitle: A\ntitle: B\n---\n", 3, "each name once"),
    ],
)
def test_front_matter_must_be_front_matter(small, mistakes, text: str, line: int, expected: str) -> None:
    (small / "grips" / "broken.md").write_text(text)
    found = the_one(mistakes())
    assert found.line == line
    assert expected in found.expected


def test_a_file_saved_in_another_way_than_utf_8_is_told(small, mistakes) -> None:
    path = small / "guide" / "welcome.md"
    path.write_bytes(path.read_bytes() + "ein Wörtchen\n".encode("latin-1"))
    found = the_one(mistakes())
    assert "UTF-8" in found.expected
    assert found.line == path.read_bytes().count(b"\n")


def test_a_missing_list_is_told_once_and_not_for_every_name_in_it(small, mistakes) -> None:
    (small / "lists" / "slots.yml").unlink()
    assert the_one(mistakes()).path.as_posix() == "content/lists/slots.yml"


def test_pages_that_the_templates_link_to_must_be_there(small, mistakes) -> None:
    (small / "guide" / "warning-signs.md").unlink()
    assert {one.path.as_posix() for one in mistakes()} == {"content/guide/warning-signs.md"}


def test_a_local_rule_set_may_not_loosen_what_it_rests_on(edit, mistakes) -> None:
    edit("rules/stricter-league.yml", "daily_max: 75", "daily_max: 99")
    found = the_one(mistakes())
    assert found.path.name == "stricter-league.yml"
    assert "stricter" in found.expected


def test_the_drawn_thumb_must_lie_where_the_words_say(edit, mistakes) -> None:
    line = edit("grips/rolling-curve.md", 'clock: "6:35"', 'clock: "8:00"')
    found = the_one(mistakes())
    assert (found.line, found.field) == (line, "hold.thumb.clock")
    assert "6:30 to 7:00" in found.expected


def test_a_variant_in_another_language_is_checked_too(edit, mistakes) -> None:
    line = edit("grips/rolling-curve.es.md", "[[grips/plain-fastball]]", "[[grips/plain-fast]]")
    found = the_one(mistakes())
    assert (found.path.name, found.line) == ("rolling-curve.es.md", line)
    assert found.nearest == "grips/plain-fastball"

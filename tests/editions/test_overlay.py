"""An edition adds, replaces and hides entries, and says by name and line what does not fit."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.loading.library import Library

Say = Callable[[str, str], int]
Told = Callable[..., list[str]]
Open = Callable[..., Library]

PAGE = """---
title: {title}
summary: {title} of the league.
reviewed: {reviewed}
section: coach
---
{body}
"""


def page(folder: Path, name: str, body: str = "Words.", reviewed: str = "2026-01-02") -> Path:
    path = folder / "guide" / f"{name}.md"
    path.parent.mkdir(exist_ok=True)
    path.write_text(PAGE.format(title="Our own page", body=body, reviewed=reviewed), encoding="utf-8")
    return path


def test_an_edition_that_only_describes_itself_holds_the_whole_handbook(opened: Open, content: Path) -> None:
    library = opened()
    assert library.league is not None
    assert library.league.name == "Sandlot League of Nowhere"
    assert set(library.grips) == {"rolling-curve", "plain-fastball"}


def test_an_added_page_stands_among_the_others_and_may_link_to_them(opened: Open, folder: Path) -> None:
    page(folder, "our-fields", "See [[grips/rolling-curve]].")
    library = opened()
    assert library.guide["our-fields"].model.title == "Our own page"
    assert "our-fields" in {one.slug for one in library.naming("grips/rolling-curve", "guide")}


def test_a_page_with_the_name_of_another_takes_its_place_only_when_that_is_said(
    opened: Open, told: Told, folder: Path, say_in_edition: Say
) -> None:
    page(folder, "welcome")
    [mistake] = told()
    assert mistake.startswith("content/editions/sandlot/guide/welcome.md: line 1: ")
    assert "under replaces" in mistake
    say_in_edition("replaces: []", "replaces: [guide/welcome]")
    assert opened().guide["welcome"].model.title == "Our own page"


def test_a_replacement_for_something_gone_is_told_with_the_nearest_name(
    told: Told, say_in_edition: Say
) -> None:
    line = say_in_edition("replaces: []", "replaces: [guide/welcom]")
    [mistake] = told()
    assert mistake.startswith(
        f"content/editions/sandlot/edition.yml: line {line}, replaces 1: an entry the handbook has"
    )
    assert 'Did you mean "guide/welcome"?' in mistake


def test_a_replacement_without_a_file_is_told(told: Told, say_in_edition: Say) -> None:
    say_in_edition("replaces: []", "replaces: [guide/welcome]")
    [mistake] = told()
    assert "guide/ has none named welcome" in mistake


def test_hiding_something_gone_is_told_with_the_nearest_name(told: Told, say_in_edition: Say) -> None:
    line = say_in_edition("hides: []", "hides: [grips/rolling-curv]")
    [mistake] = told()
    assert f"line {line}, hides 1" in mistake
    assert 'Did you mean "grips/rolling-curve"?' in mistake


def test_a_hidden_entry_is_gone_from_lists_and_its_links_become_words(
    opened: Open, say_in_edition: Say
) -> None:
    assert opened().grips["plain-fastball"].model.same_base_other_intent == ("rolling-curve",)
    say_in_edition("hides: []", "hides: [grips/rolling-curve]")
    library = opened()
    assert "rolling-curve" not in library.grips
    assert library.grips["plain-fastball"].model.same_base_other_intent == ()
    assert library.guide["when-to-start"].body.endswith(
        "Then Rolling curve. Work it out with [[calculators/pitch-count]]."
    )
    assert not library.naming("grips/rolling-curve", "guide")
    assert "grips/rolling-curve" not in library.variants.get("es", {})


def test_the_places_that_still_speak_of_a_hidden_entry_are_listed_with_their_lines(
    opened: Open, say_in_edition: Say
) -> None:
    say_in_edition("hides: []", "hides: [grips/rolling-curve]")
    assert "content/guide/when-to-start.md line 8 speaks of grips/rolling-curve" in opened().remarks


def test_a_notice_that_speaks_of_a_hidden_page_loses_its_link_too(opened: Open, say_in_edition: Say) -> None:
    say_in_edition(
        "hides: []", 'notices: [{title: Talk., text: "Read [[guide/welcome]]."}]\nhides: [guide/welcome]'
    )
    library = opened()
    assert library.league is not None
    assert library.league.notices[0].text == "Read Welcome."
    assert any("edition.yml line" in remark for remark in library.remarks)


@pytest.mark.parametrize(
    "address",
    ["guide/warning-signs", "guide/when-to-start", "calculators/pitch-count", "rules/usa-joint-2015"],
)
def test_what_every_arm_rests_on_cannot_be_hidden(told: Told, say_in_edition: Say, address: str) -> None:
    say_in_edition("hides: []", f"hides: [{address}]")
    [mistake] = told()
    assert "this to stay" in mistake


def test_the_rule_set_that_binds_cannot_be_hidden(told: Told, say_in_edition: Say) -> None:
    say_in_edition("hides: []", "hides: [rules/stricter-league]")
    assert "this to stay" in told()[0]


def test_lists_are_not_hidden_piece_by_piece(told: Told, say_in_edition: Say) -> None:
    say_in_edition("hides: []", "hides: [stages/toss]")
    assert "a name that starts with one of" in told()[0]


def test_a_mistake_in_an_entry_of_the_edition_is_told_in_its_own_file(told: Told, folder: Path) -> None:
    page(folder, "our-fields", "See [[grips/rolling-curv]].")
    [mistake] = told()
    assert mistake.startswith("content/editions/sandlot/guide/our-fields.md: line 7, body: ")


def test_a_version_that_the_handbook_has_outrun_is_remarked_on(
    opened: Open, folder: Path, say_in_edition: Say
) -> None:
    page(folder, "welcome", reviewed="2025-12-31")
    say_in_edition("replaces: []", "replaces: [guide/welcome]")
    [remark] = opened().remarks
    assert remark.startswith(
        "content/editions/sandlot/guide/welcome.md: the handbook's own guide/welcome was read"
    )


def test_the_editions_own_rules_terms_and_sources_are_laid_over_the_handbooks(
    opened: Open, folder: Path, say_in_edition: Say
) -> None:
    (folder / "rules").mkdir()
    rules = (folder.parents[1] / "rules" / "stricter-league.yml").read_text(encoding="utf-8")
    rules = rules.replace("source: guide-body-2015", "source: our-sheet-2026").replace(
        "daily_max: 75", "daily_max: 70"
    )
    (folder / "rules" / "ours.yml").write_text(rules, encoding="utf-8")
    (folder / "sources.yml").write_text(
        "our-sheet-2026: {authors: The league, title: Its sheet, where: By mail, read: whole, finds: Fewer.}\n",
        encoding="utf-8",
    )
    say_in_edition("rules: stricter-league", "rules: ours")
    library = opened()
    assert library.rules["ours"].model.bands[0].daily_max == 70
    assert "our-sheet-2026" in library.sources
    assert "guide-body-2015" in library.sources


def test_an_edition_may_rest_on_another_one(
    content: Path, opened: Open, folder: Path, say_in_edition: Say
) -> None:
    page(folder, "our-fields")
    say_in_edition("hides: []", "hides: [faults/goes-sideways]")
    own = content / "editions" / "north"
    own.mkdir()
    text = (folder / "edition.yml").read_text(encoding="utf-8")
    text = text.replace("hides: [faults/goes-sideways]", "hides: [cues/rope-pull]\nbased_on: sandlot")
    (own / "edition.yml").write_text(text, encoding="utf-8")
    library = opened(edition="north")
    assert "our-fields" in library.guide
    assert set(library.faults) == {"stays-up"}
    assert set(library.cues) == {"twist-it"}


def test_a_draft_stays_out_until_drafts_are_wanted(content: Path, opened: Open) -> None:
    path = content / "guide" / "welcome.md"
    path.write_text(path.read_text(encoding="utf-8").replace("section: start", "section: start\ndraft: true"))
    assert "welcome" not in opened().guide
    assert "welcome" in opened(drafts=True).guide


def test_a_page_that_others_rest_on_cannot_be_kept_back_as_a_draft(content: Path, told: Told) -> None:
    path = content / "guide" / "warning-signs.md"
    path.write_text(
        path.read_text(encoding="utf-8").replace("section: arm care", "section: arm care\ndraft: true")
    )
    [mistake] = told()
    assert mistake.startswith("content/guide/warning-signs.md: line 6, draft: false; other pages rest on it")


def test_a_page_named_index_is_refused_with_another_name(told: Told, folder: Path) -> None:
    page(folder, "index")
    [mistake] = told()
    assert mistake.startswith("content/editions/sandlot/guide/index.md: ")
    assert 'Did you mean "our-guide.md"?' in mistake

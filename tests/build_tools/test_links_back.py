"""Links back are the links, read the other way round."""

from __future__ import annotations

from build_tools.checks.names import namings
from build_tools.loading.library import Library


def test_whoever_names_an_entry_is_found_from_that_entry(small_library: Library) -> None:
    forward = {
        (loaded.address, naming.field, naming.address)
        for entries in small_library.kinds.values()
        for loaded in entries.values()
        for naming in namings(loaded)
    }
    back = {
        (mention.address, mention.field, address)
        for address, mentions in small_library.mentions.items()
        for mention in mentions
    }
    assert back == forward
    assert len(forward) > 30


def test_a_cue_lists_the_faults_that_call_for_it(small_library: Library) -> None:
    assert [one.slug for one in small_library.naming("cues/rope-pull", "faults", "cues")] == ["stays-up"]
    assert [one.slug for one in small_library.naming("shapes/forward-drop", "grips", "shapes")] == [
        "rolling-curve",
        "plain-fastball",
    ]


def test_a_source_knows_everything_that_rests_on_it(small_library: Library) -> None:
    users = {mention.address for mention in small_library.mentions["sources/guide-body-2015"]}
    assert users == {
        "grips/rolling-curve",
        "drills/short-toss",
        "guide/when-to-start",
        "age_gates/thirteen",
        "rules/usa-joint-2015",
        "rules/stricter-league",
    }


def test_entries_stand_in_their_order(small_library: Library) -> None:
    assert list(small_library.grips) == ["rolling-curve", "plain-fastball"]


def test_an_entry_is_read_in_a_language_where_there_is_one(small_library: Library) -> None:
    spanish = small_library.in_language("es")
    assert spanish.grips["rolling-curve"].model.title == "Curva que rueda"
    assert spanish.grips["plain-fastball"].model.title == "Plain fastball"
    assert small_library.grips["rolling-curve"].model.title == "Rolling curve"

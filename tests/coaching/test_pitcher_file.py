"""The pitcher's file: it comes back whole, older ones open, damaged or newer ones are refused by place."""

from __future__ import annotations

import datetime
import json
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.coaching.comparison import compare
from calculators.coaching.json_places import PlaceError
from calculators.coaching.next_cue import logged_from
from calculators.coaching.pitcher_file import (
    VERSION,
    NicknameError,
    PastTarget,
    PitcherFile,
    nickname_problem,
    read_pitcher,
    write_pitcher,
)
from calculators.coaching.target import Owned
from calculators.coaching.throws import Session, Throw
from tests.coaching.pens import MONDAY, trial_day

DAY = trial_day("box-line", 2.0)
WHOLE = PitcherFile(
    nickname="Lefty",
    hand="left",
    age=14,
    as_of=MONDAY,
    slot="three-quarter",
    start="slurve",
    fastball_clock=10.5,
    fastball_speed=61.5,
    hand_check="holds",
    notes="Two teams. Plays shortstop too.",
    arsenal=(Owned("fastball", 100.0, 10.5, breaking=False), Owned("changeup", 90.0, breaking=False)),
    targets=(PastTarget(MONDAY, "same-hand-hitter", "slurve"),),
    gates=(("spin-only", MONDAY), ("spin-only", datetime.date(2026, 5, 6))),
    log=(logged_from(compare(DAY, "box-line"), "try again"),),
    sessions=(DAY, Session((Throw(1, "breaking ball", missing=(("speed", "bad read"),)),))),
)
TEXT = write_pitcher(WHOLE)


def changed(path: list, value) -> str:
    plain = json.loads(TEXT)
    part = plain
    for step in path[:-1]:
        part = part[step]
    part[path[-1]] = value
    return json.dumps(plain)


def test_everything_comes_back() -> None:
    assert read_pitcher(TEXT) == WHOLE
    assert write_pitcher(read_pitcher(TEXT)) == TEXT


@given(
    st.floats(0, 11.999),
    st.one_of(st.none(), st.floats(20, 100)),
    st.one_of(st.none(), st.floats(0, 100)),
    st.text(st.characters(categories=["L", "Nd"]), min_size=1, max_size=12),
)
def test_numbers_and_words_come_back_to_the_last_digit(clock, speed, effort, word) -> None:
    throw = Throw(1, word, clock=clock, speed=speed, guess_clock=clock)
    file = replace(WHOLE, fastball_clock=clock, sessions=(Session((throw,), effort=effort, ball=word),))
    assert read_pitcher(write_pitcher(file)) == file


def test_a_file_of_the_first_version_opens() -> None:
    first = {
        "kind": "bendbook pitcher",
        "version": 1,
        "nickname": "Lefty",
        "hand": "left",
        "age": 14,
        "slot": "three-quarter",
        "arsenal": [{"name": "changeup", "speed": 90, "breaking": False}],
        "sessions": [{"date": "2026-05-04", "throws": [{"number": 1, "pitch": "fastball", "speed": 60}]}],
    }
    found = read_pitcher(json.dumps(first))
    assert (found.nickname, found.age, found.log, found.gates) == ("Lefty", 14, (), ())
    assert found.arsenal == (Owned("changeup", 90.0, breaking=False),)
    assert found.sessions[0].throws[0].speed == 60.0
    assert json.loads(write_pitcher(found))["version"] == VERSION


def test_a_file_of_the_second_version_opens_and_cannot_hold_what_came_later() -> None:
    plain = json.loads(TEXT) | {"version": 2}
    for later in ("fastball_speed", "hand_check", "notes"):
        with pytest.raises(PlaceError) as caught:
            read_pitcher(json.dumps(plain))
        assert caught.value.place == later
        del plain[later]
    found = read_pitcher(json.dumps(plain))
    assert found == replace(WHOLE, fastball_speed=None, hand_check=None, notes="")
    assert json.loads(write_pitcher(found))["version"] == VERSION


@pytest.mark.parametrize(
    ("text", "place"),
    [
        (changed(["fastball_speed"], 300), "fastball_speed"),
        (changed(["hand_check"], "perhaps"), "hand_check"),
        (changed(["notes"], "x" * 201), "notes"),
        (changed(["version"], VERSION + 1), "version"),
        (changed(["version"], 0), "version"),
        (changed(["kind"], "shopping list"), "kind"),
        (changed(["hand"], "both"), "hand"),
        (changed(["age"], 14.5), "age"),
        (changed(["age"], 2), "age"),
        (changed(["age"], 100), "age"),
        (changed(["log", 0, "throws"], 0), "log 1, throws"),
        (changed(["log", 0, "throws"], -20), "log 1, throws"),
        (changed(["shoe_size"], 11), "shoe_size"),
        (changed(["fastball_clock"], "13:00"), "fastball_clock"),
        (changed(["sessions", 0, "throws", 4, "speed"], "fast"), "sessions 1, throws 5, speed"),
        (changed(["sessions", 0, "throws", 4, "speed"], True), "sessions 1, throws 5, speed"),
        (changed(["sessions", 0, "throws", 4, "speed"], 900), "sessions 1, throws 5, speed"),
        (changed(["sessions", 0, "throws", 4, "sped"], 70), "sessions 1, throws 5, sped"),
        (
            changed(["sessions", 1, "throws", 0, "missing", "speed"], "lost"),
            "sessions 2, throws 1, missing, speed",
        ),
        (changed(["sessions", 0, "date"], "2026-02-30"), "sessions 1, date"),
        (changed(["sessions", 0, "distance"], 10**400), "sessions 1, distance"),
        (changed(["log", 0, "changes", "speed"], None), None),
        (changed(["log", 0, "decision"], "perhaps"), "log 1, decision"),
        (changed(["gates", 1], "spin-only"), "gates 2"),
        (changed(["targets"], {}), "targets"),
        (TEXT.replace('"hand": "left"', '"hand": "left", "hand": "right"'), "hand"),
        (TEXT.replace('"age": 14', '"age": NaN'), "NaN"),
        ("[]", "line 1, column 1"),
        ("", "line 1, column 1"),
        ("[" * 100_000, ""),
    ],
)
def test_a_damaged_or_newer_file_is_refused_with_the_place(text: str, place: str | None) -> None:
    if place is None:
        assert "speed" not in read_pitcher(text).log[0].changes
        return
    with pytest.raises(PlaceError) as caught:
        read_pitcher(text)
    assert caught.value.place == place
    assert caught.value.message.text


@pytest.mark.parametrize("age", [3, 99])
def test_the_youngest_and_the_oldest_age_and_a_log_of_one_throw_are_read(age: int) -> None:
    assert read_pitcher(changed(["age"], age)).age == age
    assert read_pitcher(changed(["log", 0, "throws"], 1)).log[0].throws == 1


def test_a_newer_file_says_that_it_is_untouched() -> None:
    with pytest.raises(PlaceError) as caught:
        read_pitcher(changed(["version"], 99))
    assert "untouched" in caught.value.message.text


def test_a_file_cut_short_names_the_line_where_it_ends() -> None:
    lines = TEXT.splitlines()
    with pytest.raises(PlaceError) as caught:
        read_pitcher("\n".join(lines[:40]))
    assert caught.value.place.startswith("line 4")


@settings(max_examples=150, deadline=None)
@given(st.integers(0, len(TEXT) - 1), st.integers(1, 30), st.text(max_size=6))
def test_any_damage_is_either_harmless_or_refused(start: int, length: int, instead: str) -> None:
    try:
        found = read_pitcher(TEXT[:start] + instead + TEXT[start + length :])
    except PlaceError:
        return
    assert read_pitcher(write_pitcher(found)) == found


@pytest.mark.parametrize("name", ["Lefty", "Số7", "K", "Zoe22"])
def test_a_nickname_is_one_word(name: str) -> None:
    assert nickname_problem(name) is None


@pytest.mark.parametrize(
    "name", ["", "John Q Public", "kid@home.example", "born20120504", "x" * 21, "a\tb", "a\u202eb"]
)
def test_full_names_addresses_and_birthdays_stay_out(name: str) -> None:
    assert nickname_problem(name) is not None
    with pytest.raises(NicknameError):
        PitcherFile(name, "right")
    with pytest.raises(PlaceError) as caught:
        read_pitcher(changed(["nickname"], name))
    assert caught.value.place == "nickname"

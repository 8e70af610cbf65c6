"""The league's board: the same answer as for one pitcher, for everybody."""

from __future__ import annotations

import datetime
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.workload.ages import Pitcher
from calculators.workload.availability import availability
from calculators.workload.board import UnverifiedRulesError, board, group_by_name
from calculators.workload.flags import VIOLATIONS
from calculators.workload.outings import Outing
from calculators.workload.rest import ONE_DAY
from tests.workload.shelf import rules

DAY = datetime.date(2026, 5, 16)


def league(pitchers: int, games: int, seed: int) -> tuple[dict[str, Pitcher], dict[str, list[Outing]]]:
    """Invent a league whose pitchers throw about every sixth day up to a day after DAY."""
    chance = random.Random(seed)
    roster = {f"player {number}": Pitcher(age=chance.randint(7, 16)) for number in range(pitchers)}
    outings = group_by_name(
        (
            name,
            Outing(
                DAY - (6 * back - chance.randint(0, 2)) * ONE_DAY,
                chance.choice([None, *range(101)]),
                game=chance.choice([None, 1]),
                innings_caught=chance.choice([None, 0, 2, 4]),
            ),
        )
        for name in roster
        for back in range(games)
    )
    return roster, outings


@pytest.mark.parametrize("slug", ["little-league", "baseball-alberta-league", "usssa-baseball"])
def test_every_row_is_what_the_pitcher_would_be_told_alone(slug) -> None:
    roster, outings = league(60, 12, seed=4)
    roster = {name: Pitcher(age=13) for name in roster}
    for row in board(rules(slug), roster, outings, DAY).rows:
        past = [outing for outing in outings[row.name] if outing.date <= DAY]
        alone = availability(rules(slug), roster[row.name], past, DAY)
        assert (row.first_day, row.standings[0].reasons) == (alone.first_day, alone.reasons)
        assert row.eligible == (alone.days[0].may_pitch and not alone.beyond_table)


def test_rows_stand_in_the_order_of_the_roster() -> None:
    roster = {"b": Pitcher(age=12), "a": Pitcher(age=12)}
    assert [row.name for row in board(rules("little-league"), roster, {}, DAY).rows] == ["b", "a"]


def test_a_day_in_the_past_is_judged_without_what_came_later() -> None:
    outings = {"a": [Outing(DAY - 9 * ONE_DAY, 30), Outing(DAY + ONE_DAY, 60)]}
    (row,) = board(rules("little-league"), {"a": Pitcher(age=12)}, outings, DAY).rows
    assert (row.eligible, row.set_aside) == (True, 1)


def test_violations_are_named_with_their_day() -> None:
    outings = {"a": [Outing(DAY - 9 * ONE_DAY, 90), Outing(DAY - 7 * ONE_DAY, 10)]}
    (row,) = board(rules("little-league"), {"a": Pitcher(age=12)}, outings, DAY).rows
    passed = [(flag.kind, flag.date) for flag in row.standings[0].flags if flag.kind in VIOLATIONS]
    assert passed == [
        ("over the daily limit", DAY - 9 * ONE_DAY),
        ("too soon", DAY - 7 * ONE_DAY),
    ]


def test_a_pitcher_the_rules_have_no_group_for_is_never_eligible() -> None:
    (row,) = board(rules("little-league"), {"a": Pitcher(age=40)}, {}, DAY).rows
    assert (row.standings[0].group, row.eligible, row.ask_league) == (None, False, True)


def test_past_the_end_of_the_table_the_league_is_asked() -> None:
    outings = {"a": [Outing(DAY - ONE_DAY, 51)]}
    (row,) = board(rules("usa-joint-2015"), {"a": Pitcher(age=8)}, outings, DAY).rows
    assert (row.eligible, row.ask_league) == (False, True)


def test_rules_in_doubt_need_a_word_from_the_reader() -> None:
    with pytest.raises(UnverifiedRulesError):
        board(rules("usa-joint-later"), {}, {}, DAY)
    assert board(rules("usa-joint-later"), {}, {}, DAY, unverified=True).rows == ()


class TestSeveralRuleSets:
    """An arm under two rule sets is eligible only where both allow it, and the later day wins."""

    SETS = ("little-league", "pony", "usssa-baseball", "baseball-alberta-league", "japan-high-school")

    @given(st.lists(st.sampled_from(SETS), min_size=2, max_size=3, unique=True), st.integers(0, 99))
    @settings(max_examples=60, deadline=None)
    def test_the_latest_day_wins_and_every_set_must_allow_it(self, slugs, seed) -> None:
        roster, outings = league(8, 6, seed)
        roster = {name: Pitcher(born=datetime.date(2013, 1 + seed % 12, 9)) for name in roster}
        sets = [rules(slug) for slug in slugs]
        together = board(sets[0], roster, outings, DAY, True, own_rules=dict.fromkeys(roster, sets)).rows
        alone = [board(one, roster, outings, DAY, True).rows for one in sets]
        for row, *singly in zip(together, *alone, strict=True):
            days = [one.first_day for one in singly]
            assert row.first_day == (None if None in days else max(days))
            assert row.eligible == all(one.eligible for one in singly)
            assert row.ask_league == any(one.ask_league for one in singly)

    def test_each_pitcher_goes_by_their_own(self) -> None:
        outings = {name: [Outing(DAY - ONE_DAY, outs=9, pitches=60)] for name in "ab"}
        roster = dict.fromkeys("ab", Pitcher(age=12))
        found = board(
            rules("little-league"), roster, outings, DAY, own_rules={"b": [rules("usssa-baseball")]}
        )
        assert [one.slug for one in found.rules] == ["little-league", "usssa-baseball"]
        assert [row.standings[0].rules.counts for row in found.rows] == ["pitches", "outs"]

    def test_where_nobody_knows_the_rules_the_league_is_asked(self) -> None:
        (row,) = board(rules("little-league"), {"a": Pitcher(age=12)}, {}, DAY, own_rules={"a": ()}).rows
        assert (row.eligible, row.ask_league, row.first_day) == (False, True, None)

    def test_rules_set_beside_decide_nothing(self) -> None:
        roster, outings = league(30, 8, seed=3)
        own, joint = rules("little-league"), rules("usa-joint-2015")
        plain = board(own, roster, outings, DAY).rows
        beside = board(own, roster, outings, DAY, beside=joint).rows
        assert [row._replace(beside=None) for row in beside] == list(plain)
        alone = board(joint, roster, outings, DAY).rows
        assert [row.beside for row in beside] == [row.standings[0] for row in alone]

    def test_rules_in_doubt_need_a_word_also_for_one_pitcher(self) -> None:
        with pytest.raises(UnverifiedRulesError):
            board(
                rules("little-league"),
                dict.fromkeys("ab", Pitcher(age=12)),
                {},
                DAY,
                own_rules={"b": [rules("usa-joint-later")]},
            )


def test_totals_of_a_league_miss_nothing() -> None:
    roster, outings = league(40, 12, seed=9)
    rows = board(rules("little-league"), roster, outings, DAY).rows
    known = sum(
        outing.pitches or 0
        for of_one in outings.values()
        for outing in of_one
        if DAY - 28 * ONE_DAY < outing.date <= DAY
    )
    assert sum(row.last_28.known for row in rows) == known

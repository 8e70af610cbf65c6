"""What counts as an outing, and what several outings come to on one day."""

from __future__ import annotations

import datetime

import pytest

from calculators.workload.ages import Pitcher, group_for
from calculators.workload.availability import availability
from calculators.workload.days import add_up
from calculators.workload.flags import flags
from calculators.workload.outings import Outing, OutingError
from calculators.workload.rest import ONE_DAY
from calculators.workload.rules import read
from tests.workload.shelf import load_rules, rules

SATURDAY = datetime.date(2026, 5, 16)


def added(slug: str, age: int, *outings: Outing):
    return add_up(rules(slug), group_for(rules(slug), Pitcher(age=age), SATURDAY).band, outings)


def test_an_unknown_count_is_the_daily_limit_and_never_zero() -> None:
    day = added("usa-joint-2015", 12, Outing(SATURDAY))
    assert (day.total, day.known, day.unknown) == (85, 0, True)


def test_a_game_nobody_counted_never_makes_ninety_known_pitches_fewer() -> None:
    day = added("usa-joint-2015", 12, Outing(SATURDAY, 90, game=1), Outing(SATURDAY, game=2))
    assert (day.total, day.unknown) == (90, True)


def test_an_unknown_count_of_unknown_age_owes_the_most_any_group_can_owe() -> None:
    answer = availability(rules("usa-joint-2015"), Pitcher(), [Outing(SATURDAY)], SATURDAY)
    assert answer.group.band.label == "Ages 7-8"
    assert answer.first_day == SATURDAY + 5 * ONE_DAY


def test_an_unknown_age_is_the_youngest_group() -> None:
    answer = availability(rules("usa-joint-2015"), Pitcher(), [], SATURDAY)
    assert (answer.group.band.label, answer.group.assumed) == ("Ages 7-8", True)
    assert answer.days[0].most == 50


def test_no_pitch_and_no_batter_is_no_outing() -> None:
    outings = [Outing(SATURDAY - back * ONE_DAY, 0) for back in range(3)]
    answer = availability(rules("usa-joint-2015"), Pitcher(age=12), outings, SATURDAY)
    assert answer.first_day == SATURDAY
    assert answer.days[0].most == 85


def test_a_walk_without_a_pitch_is_an_outing() -> None:
    day = added("little-league", 12, Outing(SATURDAY, 0, automatic_walks=1))
    assert (day.appearances, day.total) == (1, 4)


def test_games_of_one_day_add_up_for_rest_and_for_the_limit() -> None:
    day = added("usa-joint-2015", 12, Outing(SATURDAY, 30), Outing(SATURDAY, 25))
    assert (day.total, day.for_rest, day.appearances) == (55, 55, 2)


def test_the_order_of_two_games_must_be_known_for_the_last_batter_to_help() -> None:
    first, second = Outing(SATURDAY, 20, 15), Outing(SATURDAY, 31, 25)
    assert added("little-league", 12, first, second).for_rest == 51
    numbered = (Outing(SATURDAY, 20, 15, game=1), Outing(SATURDAY, 31, 25, game=2))
    assert added("little-league", 12, *numbered).for_rest == 46
    assert added("little-league", 12, *reversed(numbered)).for_rest == 46


def test_bullpen_throws_are_load_and_not_an_outing() -> None:
    assert not Outing(SATURDAY, 0, other_throws=30).pitched


@pytest.mark.parametrize(
    ("mistake", "field"),
    [
        ({"pitches": -1}, "pitches"),
        ({"pitches": 20, "before_last_batter": 21}, "before_last_batter"),
        ({"innings_caught": -1}, "innings_caught"),
        ({"automatic_walks": -1}, "automatic_walks"),
    ],
)
def test_an_outing_that_cannot_be_names_its_field(mistake, field) -> None:
    with pytest.raises(OutingError) as err:
        Outing(SATURDAY, **mistake)
    assert err.value.field == field


def test_the_same_outing_twice_is_flagged_and_counted() -> None:
    outings = [Outing(SATURDAY, 40), Outing(SATURDAY, 40)]
    answer = availability(rules("usa-joint-2015"), Pitcher(age=12), outings, SATURDAY)
    assert answer.first_day == SATURDAY + 5 * ONE_DAY
    assert "duplicate" in [flag.kind for flag in flags(answer)]


def test_an_outing_after_today_holds_the_pitcher_back_and_is_flagged() -> None:
    outings = [Outing(SATURDAY + 2 * ONE_DAY, 66)]
    answer = availability(rules("usa-joint-2015"), Pitcher(age=12), outings, SATURDAY)
    assert answer.first_day == SATURDAY + 7 * ONE_DAY
    assert "after today" in [flag.kind for flag in flags(answer)]


def test_pitching_before_the_rest_was_over_is_flagged() -> None:
    outings = [Outing(SATURDAY, 66), Outing(SATURDAY + 3 * ONE_DAY, 10)]
    answer = availability(rules("usa-joint-2015"), Pitcher(age=12), outings, SATURDAY + 3 * ONE_DAY)
    flagged = [flag for flag in flags(answer) if flag.kind == "too soon"]
    assert [(flag.date, flag.reason.rule) for flag in flagged] == [(SATURDAY + 3 * ONE_DAY, "rest")]
    assert answer.first_day == SATURDAY + 5 * ONE_DAY


def test_a_third_day_in_a_row_and_a_second_game_are_flagged() -> None:
    three_days = [Outing(SATURDAY - back * ONE_DAY, 5) for back in range(3)]
    answer = availability(
        rules("little-league"), Pitcher(age=12), [*three_days, Outing(SATURDAY, 6)], SATURDAY
    )
    flagged = [(flag.kind, flag.reason and flag.reason.rule, flag.date) for flag in flags(answer)]
    assert flagged == [("too soon", "days running", SATURDAY), ("second game", None, SATURDAY)]


def test_pitching_and_catching_four_innings_on_a_day_asks_which_came_first() -> None:
    """Regulation VI bars pitching after four innings at catcher. The other way round it may be legal."""
    outings = [Outing(SATURDAY, 10, innings_caught=4)]
    answer = availability(rules("little-league"), Pitcher(age=12), outings, SATURDAY)
    assert [(flag.kind, flag.counted, flag.limit) for flag in flags(answer)] == [("pitched and caught", 4, 4)]


def test_overlapping_teams_are_flagged_and_their_counts_add_up() -> None:
    outings = [Outing(SATURDAY, 30, team="red"), Outing(SATURDAY, 25, team="blue")]
    answer = availability(rules("usa-joint-2015"), Pitcher(age=12), outings, SATURDAY)
    assert answer.first_day == SATURDAY + 4 * ONE_DAY
    assert "several teams" in [flag.kind for flag in flags(answer)]


def test_a_birthday_does_not_shorten_the_rest_already_owed() -> None:
    """40 pitches at league age 14 owe two days; from 15 on they would owe one."""
    born = datetime.date(2011, 5, 17)
    league = rules("usa-joint-2015")
    answer = availability(league, Pitcher(born=born), [Outing(SATURDAY, 40)], SATURDAY)
    assert answer.first_day == SATURDAY + 3 * ONE_DAY


class TestWhatARuleSetCounts:
    """The axes on which rule books differ, tried on one small rule set."""

    def small(self, **rule: object):
        plain = {**load_rules()["usa-joint-2015"], **rule}
        return read("small", plain)

    def total(self, printed, *outings: Outing) -> int:
        return add_up(printed, group_for(printed, Pitcher(age=12), SATURDAY).band, outings).total

    def test_warm_up_throws_count_only_where_the_rules_say_so(self) -> None:
        outing = Outing(SATURDAY, 30, other_throws=20)
        assert self.total(self.small(), outing) == 30
        assert self.total(self.small(warmups_count=True), outing) == 50

    def test_a_game_called_off_counts_unless_the_rules_say_it_does_not(self) -> None:
        outing = Outing(SATURDAY, 30, called_off=True)
        assert self.total(self.small(), outing) == 30
        assert self.total(self.small(no_game_counts=False), outing) == 0

    def test_coming_back_is_a_second_appearance_unless_the_rules_say_it_is_not(self) -> None:
        outing = Outing(SATURDAY, 30, reentered=True)
        for counts, appearances in ((None, 2), (True, 2), (False, 1)):
            printed = self.small(reentry_is_second_appearance=counts)
            band = group_for(printed, Pitcher(age=12), SATURDAY).band
            assert add_up(printed, band, (outing,)).appearances == appearances

    def test_without_a_daily_limit_an_unknown_count_uses_up_the_week(self) -> None:
        answer = availability(rules("japan-high-school"), Pitcher(), [Outing(SATURDAY)], SATURDAY)
        assert answer.first_day == SATURDAY + 7 * ONE_DAY

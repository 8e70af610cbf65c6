"""Seven days as words and signs, and several rule sets at once: what one of them forbids is forbidden."""

from __future__ import annotations

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.desk.counter import answer
from calculators.desk.drawing import Circle, Label
from calculators.workload.ages import Pitcher
from calculators.workload.availability import availability
from calculators.workload.library import rule_set
from calculators.workload.outings import Outing

TODAY = datetime.date(2026, 5, 16)
GAMES = ({"date": "2026-05-16", "pitches": "66"},)


def test_the_strip_has_a_sign_and_a_ceiling_for_each_of_seven_days(answered, spoken) -> None:
    (strip,) = answered("pitch-count", outings=GAMES).drawings
    rings = [mark for mark in strip.marks if isinstance(mark, Circle)]
    labels = [spoken(mark.text) for mark in strip.marks if isinstance(mark, Label)]
    assert len(rings) == 2
    assert [text for text in labels if text in ("none", "85")] == ["none"] * 5 + ["85"] * 2
    assert labels[:2] == ["Sat", "16"]


def test_the_strip_is_told_in_words_to_those_who_do_not_see_it(answered, spoken) -> None:
    (strip,) = answered("pitch-count", outings=GAMES).drawings
    told = spoken(strip.description)
    assert "Wednesday, May 20: not yet, none." in told
    assert "Thursday, May 21: eligible, 85 pitches." in told


def test_catching_is_told_where_the_rules_speak_of_it(answered, cells) -> None:
    rows = cells(answered("pitch-count", rules="little-league", outings=GAMES), "The next days")
    assert [row[2] for row in rows] == ["not that day"] + ["no rule forbids it"] * 6


class TestTwoTeams:
    def test_both_rule_sets_count_every_game_and_the_later_day_wins(self, answered, spoken) -> None:
        """45 before the last batter, 51 after: two days by Regulation VI, three by the guideline."""
        games = ({"date": "2026-05-16", "pitches": "51", "before": "45"},)
        found = answered("pitch-count", rules="little-league", also="usa-joint-2015", outings=games)
        assert spoken(found.headline) == (
            "Under both rule sets, the first day the pitcher may pitch again is Wednesday, May 20."
        )
        said = [spoken(line) for line in found.more]
        assert "Little League Baseball, Regulation VI: first day Tuesday, May 19." in said
        assert "USA Baseball and MLB joint guideline: first day Wednesday, May 20." in said

    def test_each_ceiling_is_named_with_its_rules(self, answered, spoken) -> None:
        found = answered("pitch-count", rules="little-league", also="usssa-baseball", outings=())
        labels = [spoken(fact.label) for fact in found.facts[:2]]
        assert labels[0] == "Pitches left today, at most (Little League Baseball, Regulation VI)"
        assert labels[1].startswith("Outs left today, at most (USSSA")

    def test_the_second_age_may_differ(self, asked) -> None:
        (problem,) = asked(
            "pitch-count", rules="usa-joint-2015", also="little-league", also_age="17", outings=()
        )
        assert problem.field == "also_age"

    @given(
        days=st.lists(st.tuples(st.integers(0, 5), st.integers(0, 90)), max_size=5),
        first=st.sampled_from(["little-league", "pony"]),
        second=st.sampled_from(["usa-joint-2015", "little-league"]),
    )
    def test_no_day_is_eligible_that_one_of_them_forbids(
        self, arm_shelf, spoken, days, first, second
    ) -> None:
        games = [(TODAY - datetime.timedelta(days=ago), count) for ago, count in days]
        found = answer(
            "pitch-count",
            {
                "pain": "no",
                "rules": first,
                "also": second,
                "age": "12",
                "today": TODAY.isoformat(),
                "outings": [{"date": day.isoformat(), "pitches": str(count)} for day, count in games],
            },
            arm_shelf,
        )
        outings = [Outing(day, count) for day, count in games]
        alone = [
            availability(rule_set(slug, arm_shelf.rules), Pitcher(age=12), outings, TODAY)
            for slug in (first, second)
        ]
        for index, row in enumerate(found.tables[0].rows):
            eligible = spoken(row[1]).startswith("eligible")
            assert eligible == all(one.days[index].may_pitch and not one.beyond_table for one in alone)


class TestTheYear:
    def test_breaking_balls_are_inside_the_pitches(self, answered, spoken) -> None:
        games = (
            {"date": "2026-05-10", "pitches": "50", "breaking": "8"},
            {"date": "2026-05-02", "pitches": "20"},
        )
        facts = {spoken(fact.label): fact for fact in answered("pitch-count", outings=games).facts}
        assert spoken(facts["Last 28 days, all teams"].value) == "70 pitches"
        assert spoken(facts["Breaking balls in 28 days"].value) == "8"
        assert "inside the pitches" in spoken(facts["Breaking balls in 28 days"].note)

    def test_more_breaking_balls_than_pitches_must_be_corrected(self, asked, spoken) -> None:
        (problem,) = asked("pitch-count", outings=({"date": "2026-05-10", "pitches": "5", "breaking": "8"},))
        assert "more breaking balls than pitches" in spoken(problem.message)

    def test_months_and_innings_stand_beside_the_guidelines_advice(self, answered, spoken) -> None:
        """The joint guideline: 80 innings in 12 months at 11 and 12, four months off (mlb.com, ages 13-14 page)."""
        games = tuple({"date": f"2026-0{month}-10", "pitches": "30", "outs": "9"} for month in (2, 3, 4, 5))
        facts = {
            spoken(fact.label): fact
            for fact in answered("pitch-count", rules="little-league", outings=games).facts
        }
        assert spoken(facts["Months pitched in, of the last 12"].value) == "4"
        assert "4 or more without" in spoken(facts["Months pitched in, of the last 12"].note)
        assert spoken(facts["Innings in the last 12 months"].value) == "12 and 0 outs"
        assert "at most 80" in spoken(facts["Innings in the last 12 months"].note)


class TestTheCalendar:
    def test_the_first_day_comes_as_a_calendar_file_with_the_nickname(self, answered, files) -> None:
        text = files(answered("pitch-count", nickname="Ace", outings=GAMES))["first-day.ics"]
        assert "DTSTART;VALUE=DATE:20260521" in text
        assert "SUMMARY:Ace: first day under the rules" in text

    @pytest.mark.parametrize("typed", [{"pain": "yes"}, {"outings": ()}, {"age": "8", "outings": GAMES}])
    def test_there_is_none_without_a_day_that_can_be_named(self, answered, files, typed) -> None:
        """Pain names no day, an eligible pitcher needs none, and past the table the league must be asked."""
        assert files(answered("pitch-count", **{"outings": GAMES, **typed})) == {}


@pytest.mark.parametrize(("rules", "also"), [("pony", "little-league"), ("little-league", "pony")])
def test_a_second_game_is_offered_only_where_every_rule_set_allows_it(answered, spoken, rules, also) -> None:
    games = ({"date": "2026-05-16", "pitches": "15"},)
    found = answered(
        "pitch-count", rules=rules, also=also, age="12", also_age="12", today="2026-05-16", outings=games
    )
    said = " ".join(map(spoken, found.more))
    assert "forbid a second game" in said
    assert "allow a second game" not in said


@pytest.mark.parametrize(
    ("rules", "also"), [("usa-joint-2015", "little-league"), ("little-league", "usa-joint-2015")]
)
def test_catching_ends_where_one_of_two_rule_sets_ends_it(answered, spoken, rules, also) -> None:
    games = ({"date": "2026-05-16", "pitches": "45"},)
    found = answered(
        "pitch-count", rules=rules, also=also, age="12", also_age="12", today="2026-05-16", outings=games
    )
    assert "No catching for the rest of today" in " ".join(map(spoken, found.more))

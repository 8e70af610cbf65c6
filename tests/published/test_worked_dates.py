"""Dates worked out by the bodies themselves, by leagues, or by plain arithmetic from the printed tables.

Whole days of rest: the outing's own day does not count, so the first day is outing + rest + 1.
"""

from __future__ import annotations

import datetime

import pytest

from calculators.workload.ages import Pitcher, age_on, group_for
from calculators.workload.availability import availability, strictest
from calculators.workload.catching import bar_to_catching
from calculators.workload.days import add_up
from calculators.workload.flags import flags
from calculators.workload.outings import Outing
from tests.workload.shelf import rules


def day(text: str) -> datetime.date:
    return datetime.date.fromisoformat(text)


def after(slug: str, age: int | None, *outings: Outing, level: str | None = None):
    """Return what holds right after the last of some outings."""
    today = max(outing.date for outing in outings)
    return availability(rules(slug), Pitcher(age=age, level=level), outings, today)


@pytest.mark.parametrize(
    ("slug", "age", "date", "pitches", "rest", "eligible"),
    [
        # Arithmetic from the printed tables; 16 May 2026 is a Saturday.
        ("usa-joint-2015", 12, "2026-05-16", 66, 4, "2026-05-21"),
        ("usa-joint-2015", 12, "2026-05-16", 50, 2, "2026-05-19"),
        ("usa-joint-2015", 12, "2026-05-16", 35, 1, "2026-05-18"),
        ("usa-joint-2015", 12, "2026-05-16", 20, 0, "2026-05-17"),
        ("usa-joint-2015", 12, "2026-05-16", 86, 4, "2026-05-21"),
        ("usa-joint-2015", 14, "2026-05-16", 66, 4, "2026-05-21"),
        ("usa-joint-2015", 15, "2026-05-16", 76, 4, "2026-05-21"),
        ("usa-joint-later", 17, "2026-05-16", 78, 3, "2026-05-20"),
        ("usa-joint-later", 19, "2026-05-16", 106, 5, "2026-05-22"),
        # The end of a month, a plain February, and the night the clocks go forward in the US.
        ("usa-joint-2015", 12, "2026-04-30", 66, 4, "2026-05-05"),
        ("usa-joint-2015", 12, "2027-02-26", 66, 4, "2027-03-03"),
        ("usa-joint-2015", 12, "2028-02-26", 66, 4, "2028-03-02"),
        ("usa-joint-2015", 12, "2026-03-07", 36, 2, "2026-03-10"),
        ("usa-joint-2015", 12, "2026-12-30", 66, 4, "2027-01-04"),
        # A game that ends late on Tuesday: 90 hours later is Saturday, but rest counts whole days.
        ("little-league", 12, "2026-05-12", 70, 4, "2026-05-17"),
    ],
)
def test_first_day_after_one_outing(slug, age, date, pitches, rest, eligible) -> None:
    answer = after(slug, age, Outing(day(date), pitches))
    assert answer.first_day == day(eligible)
    owed = [reason.rest.rest for reason in answer.reasons if reason.rest is not None]
    assert owed == ([rest] if rest else [])


def test_the_editions_of_the_joint_guideline_disagree_at_seventeen() -> None:
    outing = Outing(day("2026-05-16"), 78)
    assert after("usa-joint-2015", 17, outing).first_day == day("2026-05-21")
    assert after("usa-joint-later", 17, outing).first_day == day("2026-05-20")


def test_past_the_end_of_the_table_rest_is_never_nothing() -> None:
    """51 pitches at age 8: the joint guideline's row stops at 50."""
    answer = after("usa-joint-2015", 8, Outing(day("2026-05-16"), 51))
    assert answer.beyond_table
    assert answer.first_day == day("2026-05-20")
    kinds = {flag.kind for flag in flags(answer)}
    assert {"over the daily limit", "past the rest table"} <= kinds


def test_past_the_end_of_a_table_the_rest_of_the_next_group_is_not_undercut() -> None:
    assert after("usa-joint-2015", 8, Outing(day("2026-05-16"), 70)).first_day == day("2026-05-21")


class TestLittleLeague:
    """Regulation VI, with the examples local leagues print beside it."""

    @pytest.mark.parametrize(
        ("age", "before", "total", "rest"),
        [
            # fcll.org: 45 before the batter, 51 after, owes 2 days.
            (12, 45, 51, 2),
            # crnewtown.org: 34 before, 39 after, goes down as 35 and owes 1 day.
            (12, 34, 39, 1),
            # dallastowncougarbaseball.com: an at-bat that starts on pitch 35, and one on pitch 36.
            (12, 34, 38, 1),
            (12, 35, 36, 2),
            (12, 36, 40, 2),
            # fcll.org: age 10, 71 before and 76 after owes 4 days.
            (10, 71, 76, 4),
        ],
    )
    def test_rest_goes_by_the_first_pitch_to_the_last_batter(self, age, before, total, rest) -> None:
        answer = after("little-league", age, Outing(day("2026-05-04"), total, before))
        assert [reason.rest.rest for reason in answer.reasons if reason.rest is not None] == [rest]

    def test_without_the_count_before_the_last_batter_the_total_decides(self) -> None:
        answer = after("little-league", 12, Outing(day("2026-05-04"), 51))
        assert answer.first_day == day("2026-05-08")

    def test_passing_the_daily_limit_to_finish_the_batter_is_allowed(self) -> None:
        """fcll.org: age 10, limit 75, 71 before the batter and 76 after."""
        answer = after("little-league", 10, Outing(day("2026-05-04"), 76, 71))
        kinds = [flag.kind for flag in flags(answer)]
        assert "finished the batter" in kinds
        assert "over the daily limit" not in kinds

    def test_a_suspended_game_resumes_only_after_the_rest_is_over(self) -> None:
        """fcll.org, examples 4 and 5: 70 pitches on Monday, no pitching on Thursday."""
        answer = after("little-league", 12, Outing(day("2026-05-04"), 70))
        thursday = answer.days[3]
        assert thursday.date == day("2026-05-07")
        assert not thursday.may_pitch

    def test_no_third_day_in_a_row_although_no_rest_is_owed(self) -> None:
        """vplittleleague.net, in force since 2018."""
        answer = after("little-league", 12, Outing(day("2026-05-04"), 18), Outing(day("2026-05-05"), 15))
        assert answer.first_day == day("2026-05-07")
        assert "days running" in [reason.rule for reason in answer.reasons]

    @pytest.mark.parametrize(("pitches", "may_catch"), [(40, True), (41, False)])
    def test_forty_one_pitches_end_catching_for_the_day(self, pitches, may_catch) -> None:
        """nw45ll.com, Regulation VI."""
        outing = Outing(day("2026-05-04"), pitches)
        band = group_for(rules("little-league"), Pitcher(age=12), outing.date).band
        assert (bar_to_catching(band, add_up(rules("little-league"), band, (outing,))) is None) == may_catch

    @pytest.mark.parametrize(("before", "pitches", "may_catch"), [(39, 46, True), (40, 46, False)])
    def test_a_batter_begun_by_the_fortieth_pitch_may_be_finished_and_catching_goes_on(
        self, before, pitches, may_catch
    ) -> None:
        """Regulation VI, as local copies print it: who reaches 40 facing a batter may finish and still catch."""
        outing = Outing(day("2026-05-04"), pitches, before)
        band = group_for(rules("little-league"), Pitcher(age=12), outing.date).band
        assert (bar_to_catching(band, add_up(rules("little-league"), band, (outing,))) is None) == may_catch

    @pytest.mark.parametrize(("innings", "may_pitch"), [(3, True), (4, False)])
    def test_four_innings_at_catcher_end_pitching_for_the_day(self, innings, may_pitch) -> None:
        """nw45ll.com and vplittleleague.net."""
        answer = after("little-league", 12, Outing(day("2026-05-04"), 0, innings_caught=innings))
        assert answer.days[0].may_pitch == may_pitch

    @pytest.mark.parametrize(
        ("age", "pitches", "may_catch"), [(12, 20, True), (12, 21, False), (15, 30, True)]
    )
    def test_a_catcher_who_pitched_may_not_return(self, age, pitches, may_catch) -> None:
        """The league's own wording as copied by a district: up to three innings, then 21 pitches."""
        outing = Outing(day("2026-05-04"), pitches, innings_caught=3)
        band = group_for(rules("little-league"), Pitcher(age=age), outing.date).band
        assert (bar_to_catching(band, add_up(rules("little-league"), band, (outing,))) is None) == may_catch

    def test_an_automatic_walk_adds_four(self) -> None:
        """fcll.org."""
        band = group_for(rules("little-league"), Pitcher(age=12), day("2026-05-04")).band
        outing = Outing(day("2026-05-04"), 33, automatic_walks=1)
        assert add_up(rules("little-league"), band, (outing,)).total == 37

    @pytest.mark.parametrize(
        ("born", "on", "league_age"),
        [
            ("2014-08-31", "2026-05-16", 12),
            ("2014-09-01", "2026-05-16", 11),
            # 14 on the day itself, but already of the older group.
            ("2011-06-10", "2026-05-16", 15),
        ],
    )
    def test_the_league_age_is_the_age_on_the_last_of_august(self, born, on, league_age) -> None:
        """queencreeklittleleague.org."""
        assert age_on(day(born), day(on), rules("little-league")) == league_age

    def test_a_second_game_is_barred_up_to_twelve(self) -> None:
        """vplittleleague.net."""
        answer = after("little-league", 12, Outing(day("2026-05-04"), 5))
        assert [reason.rule for reason in answer.days[0].reasons] == ["second game"]


class TestOtherBodies:
    def test_texas_friday_to_wednesday(self) -> None:
        """The UIL manual's own example: 95 pitches on a Friday, eligible on Wednesday."""
        answer = after("uil-texas", None, Outing(day("2026-03-13"), 95), level="grades-9-12")
        assert answer.first_day == day("2026-03-18")

    def test_california_monday_to_friday(self) -> None:
        """CIF bylaw, question and answer: 76 pitches on a Monday, eligible on Friday."""
        answer = after("cif-california", None, Outing(day("2026-03-16"), 76, outs=15), level="varsity")
        assert answer.first_day == day("2026-03-20")

    def test_california_three_appearances_a_week(self) -> None:
        """CIF bylaw 1501: the week begins on Monday, and coming back counts as another appearance."""
        monday = day("2026-03-16")
        outings = [Outing(monday, 10, outs=1, reentered=True), Outing(day("2026-03-17"), 10, outs=1)]
        answer = after("cif-california", None, *outings, level="varsity")
        assert answer.first_day == day("2026-03-23")

    def test_california_thirty_outs_a_week(self) -> None:
        outings = [Outing(day("2026-03-16"), 20, outs=15), Outing(day("2026-03-18"), 20, outs=15)]
        answer = after("cif-california", None, *outings, level="varsity")
        assert answer.first_day == day("2026-03-23")

    def test_a_limit_whose_number_is_missing_is_said_not_to_be_checked(self) -> None:
        answer = after("cif-california", None, Outing(day("2026-03-16"), 20), level="varsity")
        flagged = flags(answer)
        assert [flag.limit for flag in flagged if flag.kind == "limit not checked"] == [30]

    def test_two_games_of_a_doubleheader_add_up(self) -> None:
        """jcbaseball.org: at age 10, 42 in the first game leave 33; 75 on Saturday, next on Tuesday."""
        saturday = day("2026-07-11")
        first = Outing(saturday, 42, game=1)
        today = after("babe-ruth-tournament-2018", 10, first).days[0]
        assert (today.may_pitch, today.most) == (True, 33)
        both = after("babe-ruth-tournament-2018", 10, first, Outing(saturday, 33, game=2))
        assert both.first_day == day("2026-07-14")

    def test_a_new_tournament_level_begins_afresh(self) -> None:
        """Babe Ruth League: full eligibility again at each level."""
        saturday, sunday = day("2026-07-11"), day("2026-07-12")
        answer = availability(
            rules("babe-ruth-tournament-2018"),
            Pitcher(age=10),
            [Outing(saturday, 75)],
            sunday,
            level_since=sunday,
        )
        assert answer.first_day == sunday
        joint = availability(
            rules("usa-joint-2015"), Pitcher(age=10), [Outing(saturday, 75)], sunday, level_since=sunday
        )
        assert joint.first_day == day("2026-07-16")

    def test_new_york_counts_nights(self) -> None:
        """100 pitches owe four nights, the first of them the night of the game."""
        answer = after("nysphsaa-2017", None, Outing(day("2026-04-06"), 100), level="varsity-regular-season")
        assert answer.first_day == day("2026-04-10")

    def test_pennsylvania_leaves_what_the_week_has_left(self) -> None:
        """Times-Tribune, January 2017: 200 in a calendar week; 50 and 75 leave 75, not the daily 100."""
        monday, wednesday = Outing(day("2026-05-11"), 50), Outing(day("2026-05-13"), 75)
        answer = after("piaa-pennsylvania", None, monday, wednesday, level="high-school")
        saturday = answer.days[3]
        assert (saturday.date, saturday.may_pitch, saturday.most) == (day("2026-05-16"), True, 75)
        assert flags(answer) == ()

    def test_korea_takes_the_pitcher_out_at_the_limit(self) -> None:
        """No finishing of the batter: 105 is the end, and one more is over the limit."""
        answer = after("kbsa-high-school-2019", None, Outing(day("2026-04-10"), 105))
        assert answer.first_day == day("2026-04-15")
        over = after("kbsa-high-school-2019", None, Outing(day("2026-04-10"), 107, 102))
        assert "over the daily limit" in [flag.kind for flag in flags(over)]

    def test_japan_leaves_what_seven_days_have_left(self) -> None:
        outings = [Outing(day(f"2026-08-{date}"), count) for date, count in ((11, 140), (13, 150), (15, 160))]
        answer = availability(rules("japan-high-school"), Pitcher(), outings, day("2026-08-17"))
        assert answer.days[0].most == 50
        assert answer.days[1].most == 190

    def test_seventy_on_three_days_use_up_a_week_of_elementary_school(self) -> None:
        twice = [Outing(day("2026-04-13"), 70), Outing(day("2026-04-15"), 70)]
        level = Pitcher(level="grades-5-6")
        elementary = rules("japan-rubber-ball-elementary")
        friday = availability(elementary, level, twice, day("2026-04-17")).days[0]
        assert (friday.may_pitch, friday.most) == (True, 70)
        thrice = availability(elementary, level, [*twice, Outing(day("2026-04-17"), 70)], day("2026-04-18"))
        assert thrice.first_day == day("2026-04-20")
        assert [reason.rule for reason in thrice.reasons] == ["several days"]

    @pytest.mark.parametrize(("first_game", "may_go_on"), [(30, True), (31, False)])
    def test_ohio_bars_a_second_game_from_thirty_one(self, first_game, may_go_on) -> None:
        """News Democrat, 2 February 2017."""
        answer = after("ohsaa-ohio", None, Outing(day("2026-04-11"), first_game))
        assert answer.days[0].may_pitch == may_go_on

    def test_pony_goes_by_the_actual_age(self) -> None:
        """fvbsa.org: 14 until the birthday; a birthday the next day does not shorten the rest owed."""
        born, eve = day("2011-06-10"), day("2026-06-09")
        pony = rules("pony")
        assert group_for(pony, Pitcher(born=born), eve).band.label == "Ages 13-14"
        answer = availability(pony, Pitcher(born=born), [Outing(eve, 60)], eve)
        assert answer.first_day == day("2026-06-13")


class TestOuts:
    """USSSA: 9 outs and still the next day, a daily limit, 24 outs in three days, no fourth day."""

    def outs(self, age: int, *by_day: int):
        first = day("2026-06-06")
        outings = [
            Outing(first + ahead * (day("2026-06-07") - first), outs=outs)
            for ahead, outs in enumerate(by_day)
            if outs
        ]
        today = first + len(by_day) * (day("2026-06-07") - first)
        return availability(rules("usssa-baseball"), Pitcher(age=age), outings, today).days[0]

    @pytest.mark.parametrize(
        ("age", "innings", "most_innings"),
        [
            # The state page's own examples (iowausssabaseball.com, 22 November 2016), in innings.
            (12, (3, 0), 5),
            (12, (6, 0), 2),
            (12, (2, 3, 3, 0), 5),
            (14, (7, 0, 1, 3), 4),
        ],
    )
    def test_three_days_are_looked_at_together(self, age, innings, most_innings) -> None:
        today = self.outs(age, *(3 * inning for inning in innings))
        assert (today.may_pitch, today.most) == (True, 3 * most_innings)

    def test_nine_and_nine_leave_six(self) -> None:
        assert self.outs(12, 9, 9).most == 6

    def test_ten_outs_bar_the_next_day(self) -> None:
        assert not self.outs(12, 10).may_pitch

    def test_three_days_bar_a_fourth(self) -> None:
        assert not self.outs(12, 3, 3, 3).may_pitch

    def test_no_outs_cost_no_rest(self) -> None:
        outing = Outing(day("2026-06-06"), 12, outs=0)
        assert after("usssa-baseball", 12, outing).first_day == day("2026-06-07")


def test_two_teams_and_two_rule_books_answer_with_the_later_day() -> None:
    """30 pitches for one team and 25 with 6 outs for another on one day: the guideline sees 55."""
    outings = [
        Outing(day("2026-05-16"), 30, outs=3, team="spring"),
        Outing(day("2026-05-16"), 25, outs=6, team="travel"),
    ]
    answers = [after(slug, 12, *outings) for slug in ("usssa-baseball", "little-league", "usa-joint-2015")]
    assert [answer.first_day for answer in answers] == [
        day("2026-05-17"),
        day("2026-05-20"),
        day("2026-05-20"),
    ]
    assert strictest(answers).first_day == day("2026-05-20")
    kinds = [flag.kind for flag in flags(answers[2])]
    assert {"several teams", "second game"} <= set(kinds)

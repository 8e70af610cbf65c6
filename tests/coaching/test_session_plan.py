"""The next practice: inside the day's room, inside the share, one cue, one gate, and the stages in order."""

from __future__ import annotations

import datetime

import pytest

from calculators.coaching.next_cue import Learner, Offer
from calculators.coaching.session_plan import (
    Room,
    plan_session,
    stage_after_failing,
    stages_passed,
    trial_block,
)
from calculators.coaching.stop_rules import Day, Drift, breaking_balls_allowed
from tests.coaching.handbook import cues, drills, stages

WELL = Day(pain=False)
ROOM = Room(True, 80)
SLASH = Offer("diagonal-slash", "analogy", 1.0, 1.0, None, 0.0, "low", (), "", "")


def plan(age: int, learner: Learner, room: Room = ROOM, day: Day = WELL, **more):
    return plan_session(age, learner, day, room, drills(), stages(), **more)


@pytest.mark.parametrize("age", [9, 12, 13, 14, 15, 18])
@pytest.mark.parametrize("most", [5, 18, 40, 75, 120])
@pytest.mark.parametrize("offer", [None, SLASH])
def test_no_plan_goes_beyond_the_day_or_the_share(age: int, most: int, offer: Offer | None) -> None:
    for start in ("none-yet", "slurve"):
        for stage in stages():
            found = plan(age, Learner(start, stage), Room(True, most), offer=offer)
            assert found.throws <= most
            assert found.breaking <= breaking_balls_allowed(most, age)
            assert found.breaking <= 0.25 * found.throws


@pytest.mark.parametrize("age", range(9, 21))
def test_short_spin_throws_count_neither_as_breaking_balls_nor_among_the_throws_of_the_share(
    age: int,
) -> None:
    # Common practice: a quarter, at 13 and 14 a fifth; spin throws inside 15 ft stand outside it.
    share = 0.20 if age <= 14 else 0.25
    for stage in stages():
        for most in (*range(0, 41), 60, 75, 95, 130):
            for offer in (None, SLASH):
                found = plan(age, Learner("slurve", stage), Room(True, most), offer=offer)
                short = sum(part.throws for part in found.parts if part.drill and close(part.drill))
                assert found.spin == short
                assert found.throws <= most
                assert found.breaking <= share * (found.throws - short) + 1e-9
                assert found.breaking <= found.breaking_most


def close(drill: str) -> bool:
    feet = drills()[drill]["distance_ft"]
    return feet is not None and feet[1] <= 15


def test_with_thirty_throws_a_tied_down_drill_stays_inside_a_quarter_of_them() -> None:
    found = plan(16, Learner("slurve", "body-constraint"), Room(True, 30))
    assert (found.throws, found.spin, found.breaking) == (28, 0, 7)


@pytest.mark.parametrize("age", [13, 16])
def test_too_few_breaking_balls_for_a_trial_try_no_cue(age: int) -> None:
    # A trial has blocks of five or more, so fewer than five balls in all can try nothing.
    for most in range(1, 61):
        for stage in stages():
            found = plan(age, Learner("slurve", stage), Room(True, most), offer=SLASH)
            if found.cue is not None:
                assert found.breaking + found.spin >= 5
    few = plan(16, Learner("slurve", "bullpen"), Room(True, 5), offer=SLASH)
    assert (few.throws, few.cue) == (4, None)
    assert "Too few breaking balls today to try a cue" in few.notes[-1].text


@pytest.mark.parametrize("age", [9, 10, 11, 12])
def test_under_thirteen_the_spin_game_is_played_with_a_soft_ball(age: int) -> None:
    # Common practice: the soft-ball spinners are what players under 13 do.
    assert [part.drill for part in plan(age, Learner("none-yet", "spin-only")).parts] == [
        "soft-ball-spinners"
    ]
    assert plan(13, Learner("none-yet", "spin-only")).parts[-1].drill == "self-spin-ups"


@pytest.mark.parametrize("age", [12, 13, 16, 20])
def test_the_day_after_a_game_has_no_breaking_balls_and_no_spin_throws_at_any_stage(age: int) -> None:
    # Common practice: the first day after a game is for recovery, without breaking balls.
    for stage in stages():
        found = plan(age, Learner("slurve", stage), day=Day(pain=False, game_yesterday=True), offer=SLASH)
        assert (found.parts, found.cue, found.breaking_most) == ((), None, 0)
        assert "recovery" in found.stops[0].message.text
        assert "fastball grip, or rest" in found.notes[-1].text


@pytest.mark.parametrize("age", [12, 13, 16, 20])
def test_where_rest_is_owed_there_are_ten_short_spin_throws_at_most_at_any_stage(age: int) -> None:
    # Common practice: ten spin throws on a day between games.
    for start in ("none-yet", "slurve"):
        for stage in stages():
            found = plan(age, Learner(start, stage), Room(False, 80), offer=SLASH)
            assert (found.stage, found.breaking) == ("spin-only", 0)
            assert found.throws == found.spin <= 10
            assert age < 13 or "Rest is owed" in found.notes[0].text


@pytest.mark.parametrize("age", [13, 16, 20])
def test_a_grip_that_slides_is_not_thrown_beyond_short_spin_throws(age: int) -> None:
    # Common practice: no grip that the hand cannot hold against a light tug.
    for stage in stages():
        found = plan(age, Learner("slurve", stage), offer=SLASH, grip_slides=True)
        assert (found.stage, found.breaking, found.cue) == ("spin-only", 0, None)
        assert found.throws == found.spin <= 15
        assert "slid in the hand" in found.notes[0].text


def test_every_drill_of_a_plan_is_for_the_pitchers_age() -> None:
    for age in (9, 13, 14, 16):
        for stage in stages():
            for part in plan(age, Learner("slurve", stage), offer=SLASH).parts:
                assert not part.drill or drills()[part.drill]["youngest"] <= age


@pytest.mark.parametrize("age", [9, 11, 12])
def test_under_thirteen_there_are_spin_games_only(age: int) -> None:
    found = plan(age, Learner("slurve", "bullpen"), offer=SLASH)
    assert (found.stage, found.breaking, found.cue) == ("spin-only", 0, None)
    assert found.throws <= 15


def test_at_eight_there_is_nothing_to_plan() -> None:
    assert plan(8, Learner("none-yet", "spin-only")).parts == ()


def test_a_first_breaking_ball_takes_the_stages_in_order() -> None:
    passed: tuple[str, ...] = ()
    order = []
    for _ in range(5):
        found = plan(13, Learner("none-yet", "short-box", passed))
        order.append(found.stage)
        passed = (*passed, found.stage)
    assert order == ["spin-only", "body-constraint", "catch-play", "flat-ground", "short-box"]


def test_a_gate_counts_once_it_is_met_on_another_day() -> None:
    monday, tuesday = datetime.date(2026, 5, 4), datetime.date(2026, 5, 5)
    assert stages_passed([("spin-only", monday), ("spin-only", monday)]) == ()
    assert stages_passed([("spin-only", monday), ("spin-only", tuesday)]) == ("spin-only",)


@pytest.mark.parametrize(
    ("failed", "days", "stage"),
    [(0, 0, "flat-ground"), (1, 0, "flat-ground"), (2, 1, "catch-play"), (2, 2, "body-constraint")],
)
def test_two_missed_gates_go_back_a_stage_and_two_such_days_two(failed: int, days: int, stage: str) -> None:
    assert stage_after_failing("flat-ground", stages(), failed, days) == stage
    assert stage_after_failing("spin-only", stages(), 2, 2) == "spin-only"


@pytest.mark.parametrize(
    "day", [Day(pain=True), Day(), Day(pain=False, tired=True), Day(pain=False, soreness=6)]
)
def test_pain_an_open_question_about_it_a_tired_or_a_very_sore_arm_means_no_practice(day: Day) -> None:
    found = plan(16, Learner("slurve", "bullpen"), day=day, offer=SLASH)
    assert found.parts == ()
    assert found.cue is None
    assert found.stops


def test_a_fastball_that_slowed_means_no_more_practice() -> None:
    assert plan(16, Learner("slurve", "bullpen"), drift=Drift(80, 77.5)).parts == ()


@pytest.mark.parametrize(
    ("room", "day"),
    [
        (Room(False, 80), WELL),
        (ROOM, Day(pain=False, soreness=4)),
        (ROOM, Day(pain=False, slept_badly=True)),
    ],
)
def test_rest_owed_soreness_or_a_short_night_keep_the_pitcher_off_the_mound(room, day) -> None:
    found = plan(16, Learner("slurve", "bullpen"), room, day, offer=SLASH)
    assert (found.stage, found.breaking, found.cue) == ("spin-only", 0, None)


def test_a_cue_is_tried_plain_first_then_with_it_then_plain() -> None:
    found = plan(18, Learner("slurve", "bullpen"), Room(True, 130), offer=SLASH)
    trial = found.parts[-1]
    assert (trial.drill, trial.blocks, trial.breaking) == ("cue-trial", 10, 30)
    assert found.cue == "diagonal-slash"
    assert found.gate == drills()["cue-trial"]["gate"]


def test_at_thirteen_and_fourteen_a_trial_is_five_by_five_by_five() -> None:
    # content/drills/cue-trial.md.
    assert trial_block(13, 15) == 5
    assert trial_block(14, 14) == 0
    assert trial_block(18, 40) == 10
    assert plan(14, Learner("slurve", "bullpen"), Room(True, 75), offer=SLASH).breaking == 15


def test_without_room_for_a_trial_there_is_an_ordinary_pen() -> None:
    found = plan(14, Learner("slurve", "bullpen"), Room(True, 40), offer=SLASH)
    assert found.parts[-1].drill == "blocked-then-mixed"


def test_a_drill_whose_gate_is_met_gives_way_to_the_next() -> None:
    first = plan(16, Learner("slurve", "catch-play")).parts[-1].drill
    assert plan(16, Learner("slurve", "catch-play"), done={first}).parts[-1].drill != first


def test_a_plan_without_a_limit_says_so() -> None:
    found = plan(16, Learner("slurve", "bullpen"), Room(True, None))
    assert any("No limit" in note.text for note in found.notes)
    assert found.throws <= 60


def test_every_plan_ends_with_when_to_stop() -> None:
    found = plan(16, Learner("slurve", "bullpen"))
    assert "pain" in found.stop_signs[0].text
    assert cues()["diagonal-slash"]["stop_sign"]

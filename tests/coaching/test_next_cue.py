"""The rules of the trade, asked of the handbook's own cues."""

from __future__ import annotations

import datetime
from dataclasses import replace
from functools import cache

import pytest

from calculators.coaching.comparison import compare
from calculators.coaching.gap import Now
from calculators.coaching.next_cue import Advice, Learner, Logged, logged_from, next_cue
from calculators.coaching.stop_rules import Day, Drift
from calculators.coaching.target import Pitcher, Role, Target, targets
from calculators.coaching.verdict import Decision
from tests.coaching.handbook import cues, profiles, shapes, slots, stages
from tests.coaching.pens import MONDAY, trial_day

WELL = Day(pain=False)
STARTS = ("none-yet", "downer", "loopy", "three-quarter-drop", "slurve", "sweeping", "bullet", "arm-side")
ROLES: tuple[Role, ...] = ("swing-and-miss", "steal-a-strike", "same-hand-hitter", "opposite-hand-hitter")


def aim(role: Role, shape: str, slot: str, **known) -> Target:
    pitcher = Pitcher(slot, **{"age": 17, **known})
    choice = targets(role, pitcher, (), shapes(), slots())
    return next(target for target in choice.targets if target.shape == shape)


def ask(target: Target, start: str, stage: str = "bullpen", day: Day = WELL, **more) -> Advice:
    return next_cue(target, Learner(start, stage), day, cues(), profiles(), stages(), **more)


def best(advice: Advice, most: int = 3) -> list[str]:
    return [offer.cue for offer in advice.offers[:most]]


def every_question():
    for role in ROLES:
        for slot in slots():
            for target in targets(role, Pitcher(slot, 19), (), shapes(), slots()).targets:
                for start in STARTS:
                    for stage in ("spin-only", "catch-play", "bullpen"):
                        yield target, start, stage


@cache
def every_answer() -> list[tuple[Target, str, str, Advice]]:
    return [(target, start, stage, ask(target, start, stage)) for target, start, stage in every_question()]


class TestADownerShortOfSpeed:
    """The hand is in front of the ball already: sideways buys speed, more pull-down only costs it."""

    @pytest.mark.parametrize(
        ("role", "shape", "slot"),
        [
            ("swing-and-miss", "hard-downer", "high-three-quarter"),
            ("swing-and-miss", "hard-downer", "overhand"),
            ("opposite-hand-hitter", "three-quarter-drop", "high-three-quarter"),
        ],
    )
    @pytest.mark.parametrize("now", [Now(78.5, 6.2, 86.0), None])
    def test_the_sideways_and_the_slurve_thought_are_offered(self, role, shape, slot, now) -> None:
        advice = ask(aim(role, shape, slot), "downer", now=now, short_of={"speed"})
        assert advice.offers[0].cue == "box-line"
        assert {"box-line", "diagonal-slash"} <= set(best(advice))

    @pytest.mark.parametrize("shape", ["hard-downer", "straight-downer"])
    def test_more_pull_down_is_not(self, shape: str) -> None:
        advice = ask(aim("swing-and-miss", shape, "overhand"), "downer", now=Now(78.5, 6.2, 86.0))
        pulling = {"window-blind", "karate-chop", "hat-off-the-shelf"}
        assert not pulling & {offer.cue for offer in advice.offers}
        assert pulling <= {left.cue for left in advice.left_out}

    def test_where_the_target_stays_a_straight_downer_the_other_target_is_named(self) -> None:
        advice = ask(aim("swing-and-miss", "straight-downer", "overhand"), "downer", now=Now(78.5, 6.2, 86.0))
        assert {"box-line", "diagonal-slash"} == {other.cue for other in advice.other_targets}


class TestASweepingBallThatWantsDepth:
    """The slurve thought or the hand over the front, with the grip as it is."""

    @pytest.mark.parametrize("slot", ["three-quarter", "low-three-quarter"])
    @pytest.mark.parametrize("now", [Now(83.0, 8.8, 60.0), None])
    def test_slurve_or_over_the_front_is_offered(self, slot: str, now: Now | None) -> None:
        advice = ask(
            aim("same-hand-hitter", "slurve", slot),
            "sweeping",
            "flat-ground",
            now=now,
            short_of={"drop", "active"},
        )
        assert set(best(advice, 2)) == {"diagonal-slash", "handshake-over-the-plate"}

    def test_pulling_straight_down_is_left_out(self) -> None:
        advice = ask(aim("same-hand-hitter", "slurve", "low-three-quarter"), "sweeping", "flat-ground")
        assert "window-blind" not in best(advice, 99)
        assert "karate-chop" not in best(advice, 99)

    def test_the_entry_itself_says_to_keep_the_grip(self) -> None:
        for slug in ("diagonal-slash", "handshake-over-the-plate"):
            note = next(one for one in cues()[slug]["effects"] if one["start"] == "sweeping")["note"]
            assert "Keep the" in note
            assert "grip" in note


class TestTheOrderOfThings:
    def test_pain_stops_everything(self) -> None:
        for target, start, stage in every_question():
            advice = ask(target, start, stage, Day(pain=True))
            assert advice.offers == ()
            assert [stop.weight for stop in advice.stops] == ["stop"]

    def test_nobody_gets_a_cue_before_the_question_about_pain(self) -> None:
        advice = ask(aim("swing-and-miss", "hard-downer", "overhand"), "downer", day=Day())
        assert advice.offers == ()

    def test_a_tired_arm_gets_no_cue(self) -> None:
        target = aim("swing-and-miss", "hard-downer", "overhand")
        assert ask(target, "downer", drift=Drift(80.0, 77.0)).offers == ()

    @pytest.mark.parametrize("stage", ["short-box", "bullpen", "live", "game"])
    def test_a_first_curve_starts_with_spin_and_not_on_the_mound(self, stage: str) -> None:
        target = aim("first-pitch", "three-quarter-drop", "high-three-quarter", age=13)
        advice = ask(target, "none-yet", stage)
        assert advice.offers == ()
        assert advice.first_stage == "spin-only"

    def test_then_one_thing_is_tied_down_and_the_mound_comes_last(self) -> None:
        target = aim("first-pitch", "three-quarter-drop", "high-three-quarter", age=13)
        passed: tuple[str, ...] = ()
        order = []
        while True:
            learner = Learner("none-yet", "short-box", passed)
            advice = next_cue(target, learner, WELL, cues(), profiles(), stages())
            if advice.first_stage is None:
                break
            order.append(advice.first_stage)
            passed = (*passed, advice.first_stage)
        assert order == ["spin-only", "body-constraint", "catch-play", "flat-ground"]
        assert advice.offers

    def test_the_first_thoughts_make_the_ball_spin_forward(self) -> None:
        target = aim("first-pitch", "three-quarter-drop", "high-three-quarter", age=13)
        assert set(best(ask(target, "none-yet", "spin-only"), 4)) == {
            "drop-kick-tumble",
            "karate-chop",
            "off-the-finger-front",
            "stripe-standing",
        }


class TestWhatIsNeverOffered:
    def test_a_retired_cue(self) -> None:
        retired = {slug for slug, cue in cues().items() if cue["retired"]}
        assert retired
        for *_, advice in every_answer():
            assert not retired & {offer.cue for offer in advice.offers}

    def test_a_cue_that_usually_does_harm_from_this_start_or_spoils_the_shape(self) -> None:
        for target, start, _, advice in every_answer():
            for offer in advice.offers:
                cue = cues()[offer.cue]
                assert target.shape not in cue["never_for"]
                assert not any(one["unwanted"] for one in cue["effects"] if one["start"] == start)

    def test_a_cue_before_its_age_or_outside_its_stage(self) -> None:
        target = aim("steal-a-strike", "three-quarter-drop", "high-three-quarter", age=14)
        for stage in stages():
            for offer in ask(target, "downer", stage, short_of={"speed", "drop", "strikes"}).offers:
                assert cues()[offer.cue]["youngest"] <= 14
                assert stage in cues()[offer.cue]["stages"]

    @pytest.mark.parametrize("stage", ["body-constraint", "catch-play", "flat-ground", "bullpen"])
    def test_a_slower_arm_as_a_way_to_drop(self, stage: str) -> None:
        """A slow and loopy ball: no cue that gets drop by slowing down, whatever the coach wishes for."""
        target = aim("steal-a-strike", "straight-downer", "overhand")
        for offer in ask(target, "loopy", stage, short_of={"drop"}).offers:
            effects = [one for one in cues()[offer.cue]["effects"] if one["start"] in ("loopy", "any")]
            assert effects[0]["speed"]["goes"] != "down"
            assert effects[-1]["speed"]["goes"] != "down"

    def test_a_straighter_drop_than_the_arm_reaches(self) -> None:
        low = ask(aim("opposite-hand-hitter", "three-quarter-drop", "low-three-quarter"), "slurve")
        high = ask(aim("opposite-hand-hitter", "three-quarter-drop", "three-quarter"), "slurve")
        assert "window-blind" not in best(low, 99)
        assert best(high)[0] == "window-blind"

    def test_every_cue_is_either_offered_or_left_out_with_a_reason(self) -> None:
        for *_, advice in every_answer():
            if advice.first_stage is None:
                named = [offer.cue for offer in advice.offers] + [left.cue for left in advice.left_out]
                assert sorted(named) == sorted(cues())


@pytest.mark.parametrize(
    ("start", "role", "shape", "slot", "stage", "first"),
    [
        # Routes from a start to a target, first thought first (common practice).
        ("loopy", "steal-a-strike", "straight-downer", "overhand", "bullpen", {"eighty-five-percent"}),
        (
            "slurve",
            "opposite-hand-hitter",
            "three-quarter-drop",
            "three-quarter",
            "bullpen",
            {"window-blind"},
        ),
        (
            "slurve",
            "same-hand-hitter",
            "sweeper",
            "three-quarter",
            "bullpen",
            {"around-the-balloon", "backhand-slap"},
        ),
        (
            "arm-side",
            "steal-a-strike",
            "three-quarter-drop",
            "three-quarter",
            "bullpen",
            {"chest-to-the-mitt"},
        ),
    ],
)
def test_common_routes(start: str, role: Role, shape: str, slot: str, stage: str, first: set[str]) -> None:
    assert best(ask(aim(role, shape, slot), start, stage))[0] in first


@pytest.mark.parametrize(
    "wanted", ["middle-finger-pulls", "thumb-through", "off-the-finger-front", "karate-chop"]
)
def test_a_bullet_spinner_who_wants_a_true_curve_is_sent_to_the_fingers(wanted: str) -> None:
    target = aim("steal-a-strike", "three-quarter-drop", "three-quarter")
    assert wanted in best(ask(target, "bullet", "catch-play"), 8)


def test_a_scattered_pitcher_gets_steadiness_before_shape() -> None:
    target = aim("steal-a-strike", "three-quarter-drop", "three-quarter")
    advice = ask(target, "scattered", "catch-play")
    assert {"set-wrist", "stripe-standing"} <= set(best(advice, 4))


def test_a_strike_thrower_is_told_where_to_start_it() -> None:
    target = aim("steal-a-strike", "straight-downer", "overhand")
    assert (
        best(ask(target, "downer", now=Now(81.0, 6.2, 85.0, 0.35), short_of={"strikes"}))[0]
        == "start-at-the-mask"
    )


def test_a_left_hander_gets_the_same_advice_in_the_mirror() -> None:
    right = aim("same-hand-hitter", "slurve", "low-three-quarter")
    left = aim("same-hand-hitter", "slurve", "low-three-quarter", hand="left")
    of_right = ask(right, "sweeping", "flat-ground", now=Now(83.0, 8.75, 60.0))
    of_left = ask(left, "sweeping", "flat-ground", now=Now(83.0, 3.25, 60.0))
    assert best(of_left, 99) == best(of_right, 99)
    assert [one.score for one in of_left.offers] == pytest.approx([one.score for one in of_right.offers])


def test_each_offer_says_why_what_it_may_break_and_when_to_stop() -> None:
    for *_, advice in every_answer():
        for offer in advice.offers:
            assert offer.why
            assert offer.may_break == cues()[offer.cue]["over_correction"]
            assert offer.stop_at == cues()[offer.cue]["stop_sign"]


class TestTheOwnLog:
    """The handbook is where one starts; the pitcher's own days are where one ends."""

    TARGET = aim("swing-and-miss", "hard-downer", "overhand", fastball=80.0)
    NOW = Now(78.5, 6.4, 84.0)
    RIVALS = ("box-line", "diagonal-slash")

    def days(self, cue: str, mph: float, count: int, decision: Decision = "try again", throws: int = 10):
        return [
            Logged(cue, MONDAY + datetime.timedelta(day), {"speed": mph}, throws, decision)
            for day in range(count)
        ]

    def ranked(self, *log: Logged) -> list[str]:
        return best(ask(self.TARGET, "downer", now=self.NOW, own=log), 99)

    def test_a_cue_the_handbook_likes_less_wins_with_enough_good_days(self) -> None:
        before = self.ranked()
        assert before.index("through-the-mitt") > before.index("box-line")
        log = (*self.days("through-the-mitt", 3.0, 6), *self.days("box-line", 0.0, 6))
        after = self.ranked(*log)
        assert after[0] == "through-the-mitt"
        assert "box-line" not in after[:3]

    def test_a_single_day_moves_the_ranking_less_than_many(self) -> None:
        scores = []
        for count in (0, 1, 3, 10):
            advice = ask(self.TARGET, "downer", now=self.NOW, own=self.days("through-the-mitt", 3.0, count))
            scores.append(next(one for one in advice.offers if one.cue == "through-the-mitt"))
        rising = [offer.score for offer in scores]
        assert rising == sorted(rising)
        assert rising[-1] < scores[-1].by_own_days
        assert [offer.own_weight for offer in scores] == pytest.approx([0, 1 / 3, 3 / 5, 10 / 12])

    def test_a_short_trial_counts_for_less_than_a_full_one(self) -> None:
        short = ask(self.TARGET, "downer", now=self.NOW, own=self.days("through-the-mitt", 3.0, 1, throws=5))
        full = ask(self.TARGET, "downer", now=self.NOW, own=self.days("through-the-mitt", 3.0, 1))
        weights = [
            next(one for one in advice.offers if one.cue == "through-the-mitt").own_weight
            for advice in (short, full)
        ]
        assert weights[0] < weights[1]

    def test_a_dropped_cue_stays_dropped(self) -> None:
        assert "box-line" not in self.ranked(*self.days("box-line", 1.0, 2, "drop"))

    def test_a_kind_of_cue_that_failed_twice_gives_way_to_another_kind(self) -> None:
        log = [*self.days("through-the-mitt", 0.0, 1, "drop"), *self.days("shoe-top", 0.0, 1, "drop")]
        before = ask(self.TARGET, "downer", now=self.NOW)
        after = ask(self.TARGET, "downer", now=self.NOW, own=log)
        assert after.change_kind == ("outside",)
        # The box line speaks of a target, as both failed cues did; the slash is a picture.
        places = {cue: [best(advice, 99).index(cue) for advice in (before, after)] for cue in self.RIVALS}
        assert places["box-line"][0] < places["diagonal-slash"][0]
        assert places["diagonal-slash"][1] < places["box-line"][1]

    def test_own_proof_reopens_what_the_handbook_warns_of_but_not_what_it_retired(self) -> None:
        target = aim("steal-a-strike", "three-quarter-drop", "high-three-quarter")
        proven = [
            Logged("window-blind", MONDAY, {"up": -4.0, "clock": -0.6, "active": 6.0}, 20, "keep"),
            Logged("door-handle", MONDAY, {"up": -4.0}, 20, "keep"),
        ]
        now = Now(86.5, 9.0, 60.0)
        without = ask(target, "sweeping", "bullpen", now=now)
        advice = ask(target, "sweeping", "bullpen", now=now, own=proven)
        assert "window-blind" not in best(without, 99)
        assert "window-blind" in best(advice, 99)
        assert "door-handle" not in best(advice, 99)

    def test_a_left_handers_clock_counts_in_the_mirror(self) -> None:
        left = replace(self.TARGET.pitcher, hand="left")
        target = next(
            one
            for one in targets("swing-and-miss", left, (), shapes(), slots()).targets
            if one.shape == "hard-downer"
        )
        log_right = [Logged("box-line", MONDAY, {"clock": 0.4, "speed": 1.0})]
        log_left = [Logged("box-line", MONDAY, {"clock": -0.4, "speed": 1.0})]
        of_right = ask(self.TARGET, "downer", now=Now(78.5, 6.0, 84.0), own=log_right)
        of_left = ask(target, "downer", now=Now(78.5, 6.0, 84.0), own=log_left)
        assert of_left.offers[0].score == pytest.approx(of_right.offers[0].score)


def test_a_trial_becomes_an_entry_of_the_log() -> None:
    trial = compare(trial_day("box-line", 3.0, block=8), "box-line")
    entry = logged_from(trial, "try again")
    assert (entry.cue, entry.date, entry.throws) == ("box-line", MONDAY, 8)
    assert entry.changes["speed"] == trial.differences["speed"].change

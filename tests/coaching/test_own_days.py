"""The pitcher's own days with a cue: what counts of them, and what goes on being used."""

from __future__ import annotations

import datetime

import pytest

from calculators.coaching.gap import Now
from calculators.coaching.next_cue import Advice, Learner, Logged, next_cue
from calculators.coaching.stop_rules import Day
from calculators.coaching.target import Pitcher, Target, targets
from calculators.coaching.verdict import Decision
from tests.coaching.handbook import cues, profiles, shapes, slots, stages
from tests.coaching.pens import MONDAY

A_SLURVE = Now(81.0, 7.9, 72.0)


def three_quarter_drop() -> Target:
    pitcher = Pitcher("three-quarter", 17, fastball=76.0)
    found = targets("steal-a-strike", pitcher, (), shapes(), slots()).targets
    return next(target for target in found if target.shape == "three-quarter-drop")


def kept(days: int, decision: Decision = "keep", **changed: float) -> list[Logged]:
    changes = {"clock": -0.6, **changed}
    return [
        Logged("window-blind", MONDAY + datetime.timedelta(7 * day), changes, 10, decision)
        for day in range(days)
    ]


def of_blind(*own: Logged, now: Now = A_SLURVE, cue: str = "", **more) -> Advice:
    learner = Learner("slurve", "bullpen", cue=cue)
    aim = three_quarter_drop()
    return next_cue(aim, learner, Day(pain=False), cues(), profiles(), stages(), now=now, own=own, **more)


def test_strikes_of_a_few_own_throws_count_for_nothing() -> None:
    """Ten throws are 31 points off by luck alone, so they speak neither for a cue nor against it."""
    scores = {of_blind(*kept(2, strikes=strikes)).offers[0].score for strikes in (-0.4, 0.0, 0.4)}
    assert len(scores) == 1
    plain = of_blind(*kept(2)).offers[0]
    assert (plain.cue, plain.kept) == ("window-blind", True)


def test_strikes_of_sixty_own_throws_count() -> None:
    def score(days: int, strikes: float) -> float:
        advice = of_blind(*kept(days, strikes=strikes), short_of={"strikes"})
        return next(one for one in advice.offers if one.cue == "window-blind").score

    assert score(5, -0.2) == score(5, 0.2)
    assert score(6, -0.05) < score(6, 0.0) < score(6, 0.05)


def test_more_days_of_the_same_good_make_a_cue_look_no_worse() -> None:
    offers = [of_blind(*kept(days, strikes=-0.1)).offers[0] for days in range(1, 5)]
    assert len({round(one.by_own_days or 0.0, 9) for one in offers}) == 1
    assert [one.own_weight for one in offers] == sorted(one.own_weight for one in offers)


def test_luck_from_day_to_day_evens_out_before_it_is_held_against_a_cue() -> None:
    def gained(*turns: float) -> float | None:
        log = [Logged("window-blind", MONDAY, {"clock": turn}, 10) for turn in turns]
        advice = of_blind(*log)
        return next(one.by_own_days for one in advice.offers if one.cue == "window-blind")

    assert gained(-1.4, 0.2) == pytest.approx(gained(-0.6, -0.6))


def test_a_cue_that_was_kept_is_never_said_to_do_little() -> None:
    there = Now(83.0, 7.1, 80.0)
    left = {one.cue: one.reason.text for one in of_blind(*kept(2), now=there).left_out}
    assert left["window-blind"] == "You kept it. Use it, and test without it in a week."
    tried = of_blind(*kept(2, "try again"), now=there)
    assert {one.cue: one.reason.text for one in tried.left_out}["window-blind"].startswith("It does little")


def test_a_cue_that_is_kept_and_in_use_comes_before_any_other() -> None:
    for now in (Now(83.0, 7.1, 80.0), Now(83.0, 7.1, 60.0), Now(81.0, 7.9, 72.0)):
        first = of_blind(*kept(2), now=now, cue="window-blind").offers[0]
        assert (first.cue, first.kept) == ("window-blind", True)
        assert first.why[0].text == "You kept it. Use it, and test without it in a week."


@pytest.mark.parametrize("throws", [0, -20])
def test_a_day_without_throws_is_no_day(throws: int) -> None:
    log = [Logged("window-blind", MONDAY, {"clock": -0.6}, throws, "drop")]
    assert of_blind(*log) == of_blind()


def test_too_few_throws_are_called_so() -> None:
    few = of_blind(now=Now(83.0, 7.1, 80.0, few=True))
    assert not any(left.reason.text.startswith("It does little") for left in few.left_out)
    words = [left.reason.text for left in few.left_out] + [why.text for one in few.offers for why in one.why]
    assert "Too few throws to say what is missing. Throw ten." in words

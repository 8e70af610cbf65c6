"""What must hold for any log of outings under any rule set of the handbook."""

from __future__ import annotations

import datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.workload.ages import Pitcher
from calculators.workload.availability import availability
from calculators.workload.library import rule_set
from calculators.workload.outings import Outing
from calculators.workload.rest import ONE_DAY
from calculators.workload.rules import RuleSet
from tests.workload.shelf import load_rules, rules

TODAY = datetime.date(2026, 5, 16)
COUNTS = st.one_of(st.none(), st.integers(0, 130))


@st.composite
def an_outing(draw: st.DrawFn) -> Outing:
    pitches = draw(COUNTS)
    before = draw(st.one_of(st.none(), st.integers(0, 130 if pitches is None else pitches)))
    return Outing(
        date=TODAY - draw(st.integers(-2, 9)) * ONE_DAY,
        pitches=pitches,
        before_last_batter=before,
        outs=draw(st.one_of(st.none(), st.integers(0, 21))),
        innings_caught=draw(st.one_of(st.none(), st.integers(0, 7))),
        game=draw(st.one_of(st.none(), st.integers(1, 3))),
        automatic_walks=draw(st.integers(0, 2)),
        reentered=draw(st.booleans()),
    )


LOGS = st.lists(an_outing(), max_size=6)


@st.composite
def a_pitcher(draw: st.DrawFn, of: RuleSet) -> Pitcher:
    if of.by_level:
        return Pitcher(level=draw(st.sampled_from([None, *(band.level for band in of.bands)])))
    ages = [age for band in of.bands for age in range(band.age_min, band.age_max + 1)]
    return Pitcher(age=draw(st.sampled_from([None, *ages])))


@pytest.mark.parametrize("slug", load_rules())
@settings(max_examples=25)
@given(st.data())
def test_one_more_outing_never_makes_anyone_available_earlier(slug, data) -> None:
    printed = rules(slug)
    pitcher = data.draw(a_pitcher(printed))
    log, one_more = data.draw(LOGS), data.draw(an_outing())
    before = availability(printed, pitcher, log, TODAY)
    after = availability(printed, pitcher, [*log, one_more], TODAY)
    assert after.first_day >= before.first_day
    for was, now in zip(before.days, after.days, strict=True):
        assert was.may_pitch or not now.may_pitch
        assert was.most is None or now.most <= was.most


@pytest.mark.parametrize("slug", load_rules())
@settings(max_examples=10)
@given(st.data())
def test_the_order_in_which_outings_are_written_never_matters(slug, data) -> None:
    printed = rules(slug)
    pitcher = data.draw(a_pitcher(printed))
    log = data.draw(LOGS)
    shuffled = data.draw(st.permutations(log))
    written, mixed = (availability(printed, pitcher, outings, TODAY) for outings in (log, shuffled))
    assert (written.first_day, written.days) == (mixed.first_day, mixed.days)


@pytest.mark.parametrize("slug", load_rules())
@settings(max_examples=25)
@given(st.data())
def test_a_stricter_local_rule_never_gives_an_earlier_day(slug, data) -> None:
    shelf = dict(load_rules())
    base = rules(slug)
    shelf["local"] = {**shelf[slug], **_stricter(base, data), "extends": slug}
    local = rule_set("local", shelf)
    pitcher = data.draw(a_pitcher(base))
    log = data.draw(LOGS)
    wide, narrow = (availability(printed, pitcher, log, TODAY) for printed in (base, local))
    assert narrow.first_day >= wide.first_day


def _stricter(base: RuleSet, data: st.DataObject) -> dict[str, object]:
    bands = []
    for band in base.bands:
        cut = data.draw(st.integers(0, 20))
        longer = data.draw(st.integers(0, 2))
        bands.append(
            {
                "label": band.label,
                "daily_max": None if band.daily_max is None else max(1, band.daily_max - cut),
                "rest": [
                    {"low": step.low, "high": step.high, "rest": step.rest + longer} for step in band.rest
                ],
                "most_days_running": data.draw(st.sampled_from([None, 1])),
                "second_game": data.draw(st.sampled_from([None, "barred"])),
            }
        )
    cap = {"most": data.draw(st.integers(1, 200)), "unit": base.counts, "window": "rolling", "days": 5}
    return {"bands": bands, "caps": data.draw(st.sampled_from([[], [cap]]))}


@settings(max_examples=100)
@given(st.sampled_from(sorted(load_rules())), LOGS, st.data())
def test_an_unknown_group_is_never_told_an_earlier_day_than_any_group(slug, log, data) -> None:
    printed = rules(slug)
    known = data.draw(a_pitcher(printed))
    unknown = availability(printed, Pitcher(), log, TODAY)
    assert unknown.first_day >= availability(printed, known, log, TODAY).first_day

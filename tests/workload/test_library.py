"""Rule sets as data: what does not fit together is refused by name, and a local rule may only tighten."""

from __future__ import annotations

import datetime

import pytest
from pydantic import ValidationError

from build_tools.schema.rules import RuleSet as RuleSetEntry
from calculators.workload.ages import Pitcher
from calculators.workload.availability import availability
from calculators.workload.library import rule_set, rule_sets
from calculators.workload.outings import Outing
from calculators.workload.plain import RuleSetError
from calculators.workload.rules import read
from tests.workload.shelf import FOLDER, load_rules

SMALL = {
    "title": "A small league",
    "body": "A body",
    "document": "A book",
    "edition": "2026",
    "status": "read at the body",
    "link": "https://example.org/",
    "last_checked": "2026-11-25",
    "kind": "rule",
    "source": "a-source",
    "counts": "pitches",
    "rest_unit": "days",
    "age_basis": "actual age",
    "second_game": "allowed",
    "bands": [
        {
            "label": "Ages 9-12",
            "age_min": 9,
            "age_max": 12,
            "daily_max": 70,
            "rest": [{"low": 1, "high": 30, "rest": 0}, {"low": 31, "rest": 2}],
        }
    ],
}


def band(**changes: object) -> dict[str, object]:
    return {**SMALL, "bands": [{**SMALL["bands"][0], **changes}]}


@pytest.mark.parametrize(
    ("plain", "field"),
    [
        ({**SMALL, "counts": "throws"}, "counts"),
        ({**SMALL, "rest_unit": None}, "rest_unit"),
        ({**SMALL, "last_checked": "last spring"}, "last_checked"),
        ({**SMALL, "bands": []}, "bands"),
        ({**SMALL, "age_basis": "league age"}, "age_reference"),
        ({**SMALL, "second_game": "after a small first game"}, "second_game_first_most"),
        ({**SMALL, "finish_batter": "perhaps"}, "finish_batter"),
        ({**SMALL, "caps": [{"most": 200, "unit": "pitches", "window": "week"}]}, "week_starts"),
        ({**SMALL, "caps": [{"most": 0, "unit": "pitches", "window": "rolling", "days": 3}]}, "most"),
        ({**SMALL, "caps": [{"most": 9, "unit": "pitches", "window": "rolling", "days": 1}]}, "days"),
        ({**SMALL, "most_days_running": 0}, "most_days_running"),
        (band(rest=[{"low": 1, "rest": 11}]), "rest"),
        (band(daily_max=0), "daily_max"),
        (band(daily_max="seventy"), "daily_max"),
        (band(age_max=8), "age_max"),
        (band(gaps=["resting"]), "gaps"),
        (band(rest=[{"low": 5, "high": 30, "rest": 0}]), "rest"),
        (band(rest=[{"low": 1, "high": 30, "rest": 0}, {"low": 32, "rest": 1}]), "rest"),
        (band(rest=[{"low": 1, "high": 30, "rest": 1}, {"low": 31, "rest": 1}]), "rest"),
        (band(rest=[{"low": 1, "rest": 0}, {"low": 31, "rest": 1}]), "rest"),
        (band(rest=[{"low": 1, "high": 60, "rest": 0}]), "daily_max"),
    ],
)
def test_a_rule_set_that_does_not_fit_together_is_refused_by_field(plain, field) -> None:
    with pytest.raises(RuleSetError) as err:
        read("small", plain)
    assert err.value.field == field


def test_the_longest_rest_a_rule_set_may_ask_for_is_kept_to_its_last_day() -> None:
    steps = [{"low": 1, "high": 69, "rest": 9}, {"low": 70, "high": 70, "rest": 10}]
    printed = read("small", band(rest=steps))
    day = datetime.date(2026, 5, 1)
    for pitches, rest in ((69, 9), (70, 10), (71, 11)):
        answer = availability(printed, Pitcher(age=10), [Outing(day, pitches)], day)
        assert answer.first_day == day + datetime.timedelta(days=rest + 1)


def test_bands_must_follow_one_another_without_a_gap_in_age() -> None:
    older = {**SMALL["bands"][0], "label": "Ages 14-15", "age_min": 14, "age_max": 15}
    with pytest.raises(RuleSetError, match="a band ends at age 12"):
        read("small", {**SMALL, "bands": [*SMALL["bands"], older]})


def test_the_schema_refuses_what_the_calculators_would_refuse() -> None:
    with pytest.raises(ValidationError, match="the next begins at 31"):
        RuleSetEntry.model_validate(band(rest=[{"low": 1, "high": 30, "rest": 0}, {"low": 32, "rest": 1}]))


def test_the_schema_refuses_a_name_it_does_not_know() -> None:
    with pytest.raises(ValidationError, match="pitch_limit"):
        RuleSetEntry.model_validate({**SMALL, "pitch_limit": 70})


def test_every_rule_set_of_the_handbook_can_be_read() -> None:
    assert set(rule_sets(load_rules())) == {path.stem for path in FOLDER.glob("*.yml")}


def test_what_is_from_memory_or_has_a_gap_is_unverified() -> None:
    assert all(read("x", {**SMALL, "status": "from memory"}).unverified(b) for b in read("x", SMALL).bands)
    gap = read("x", band(gaps=["rest"], rest=[]))
    assert gap.unverified(gap.bands[0])
    assert not read("x", SMALL).unverified(read("x", SMALL).bands[0])


class TestLocalRules:
    def local(self, **changes: object):
        named = ("title", "body", "document", "edition", "status", "link", "last_checked", "kind", "source")
        return {name: SMALL[name] for name in named} | {"extends": "small", **changes}

    def resolve(self, **changes: object):
        return rule_set("local", {"small": SMALL, "local": self.local(**changes)})

    def test_it_states_only_what_it_changes(self) -> None:
        """One league takes ten pitches off every daily limit (dallastowncougarbaseball.com)."""
        local = self.resolve(bands=[{"label": "Ages 9-12", "daily_max": 60}])
        assert local.bands[0].daily_max == 60
        assert [step.rest for step in local.bands[0].rest] == [0, 2]
        assert local.bands[0].second_game == "allowed"

    def test_an_unknown_count_still_counts_as_the_limit_of_the_rules_beneath(self) -> None:
        assert self.resolve(bands=[{"label": "Ages 9-12", "daily_max": 20}]).bands[0].unknown_as == 70

    def test_its_limits_over_several_days_come_on_top(self) -> None:
        cap = {"most": 90, "unit": "pitches", "window": "rolling", "days": 4}
        assert [c.most for c in self.resolve(caps=[cap]).bands[0].caps] == [90]

    @pytest.mark.parametrize(
        ("changes", "field"),
        [
            ({"bands": [{"label": "Ages 9-12", "daily_max": 71}]}, "bands Ages 9-12, daily_max"),
            ({"bands": [{"label": "Ages 9-12", "rest": [{"low": 1, "rest": 1}]}]}, "bands Ages 9-12, rest"),
            ({"finish_batter": True}, "finish_batter"),
            ({"threshold_relief": True}, "threshold_relief"),
            ({"no_game_counts": False}, "no_game_counts"),
            ({"rest_unit": "nights"}, "rest_unit"),
            ({"bands": [{"label": "Ages 13-14"}]}, "bands"),
            ({"extends": "large"}, "extends"),
        ],
    )
    def test_it_may_not_loosen_anything(self, changes, field) -> None:
        with pytest.raises(RuleSetError) as err:
            self.resolve(**changes)
        assert err.value.field == field

    @pytest.mark.parametrize(
        ("changes", "field"),
        [
            ({"most_days_running": 3}, "most_days_running"),
            ({"catching": {"no_catching_after_pitches": 41, "threshold_relief": True}}, "catching"),
        ],
    )
    def test_it_may_not_allow_a_third_day_or_more_catching_than_the_rules_beneath(
        self, changes, field
    ) -> None:
        beneath = {**SMALL, "most_days_running": 2, "catching": {"no_catching_after_pitches": 41}}
        with pytest.raises(RuleSetError) as err:
            rule_set("local", {"small": beneath, "local": self.local(**changes)})
        assert err.value.field == f"bands Ages 9-12, {field}"

    def test_where_a_body_made_it_looser_the_reason_is_told(self) -> None:
        looser = {"bands": [{"label": "Ages 9-12", "daily_max": 71}], "looser_because": "Voted in 2026."}
        found = self.resolve(**looser)
        assert found.bands[0].daily_max == 71
        assert found.notes[0] == "In places looser than A small league. Voted in 2026."

    def test_no_reason_turns_pitches_into_outs(self) -> None:
        with pytest.raises(RuleSetError) as err:
            self.resolve(counts="outs", looser_because="Voted in 2026.")
        assert err.value.field == "counts"

    def test_it_may_not_extend_itself(self) -> None:
        with pytest.raises(RuleSetError, match="must not extend itself"):
            rule_set("local", {"local": self.local(extends="local")})


def test_dates_leave_the_schema_as_text() -> None:
    """The build exports JSON, so the calculators meet no date objects."""
    assert load_rules()["usa-joint-2015"]["last_checked"] == "2026-11-25"

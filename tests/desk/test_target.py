"""The target calculator: what it aims at, what it refuses, and what it writes down."""

from __future__ import annotations

import datetime
import json
import subprocess

import pytest

from build_tools.places import PROJECT
from build_tools.schema.pitcher_file import pitcher_file_schema
from build_tools.schema.shape import Shape
from build_tools.shape_numbers import shape_numbers
from calculators.coaching.pitcher_file import read_pitcher
from calculators.desk import next_session, target_movement
from calculators.desk.target import CALCULATOR
from tests.coaching.handbook import shapes
from tests.desk.loop_shelf import answer, asked, facts, file_text, headline, shelf, table, text

AJV = """
const Ajv = require("ajv/dist/2020").default;
const { schema, files } = JSON.parse(require("fs").readFileSync(0, "utf8"));
const fits = new Ajv({ strict: true, validateFormats: false }).compile(schema);
process.stdout.write(JSON.stringify(files.map((file) => fits(file))));
"""


def test_the_box_of_a_three_quarter_arm_lies_at_the_opposite_of_its_fastball() -> None:
    # Kimura 2023: the direction of a curve can in general be told from the four-seam fastball's.
    assert facts(CALCULATOR)["Clock"] == "6:45 to 7:30"
    assert headline(CALCULATOR).startswith("Aim for a three-quarter drop")


def test_a_left_hander_gets_the_mirror_image() -> None:
    found = facts(CALCULATOR, hand="left", fastball_clock="10:30")
    assert found["Clock"] == "4:30 to 5:15"
    assert found["Up or down"] == facts(CALCULATOR)["Up or down"]
    assert found["To the side"] == facts(CALCULATOR)["To the side"]


def test_a_shape_that_the_arm_does_not_reach_is_no_target() -> None:
    # Common practice: the arm slot does not change for a shape.
    found = text(CALCULATOR, shape="straight-downer")
    assert found.startswith("Do not aim for a straight downer here. Aim for the three-quarter drop.")
    assert "Never change the arm slot" in found


def test_before_thirteen_there_is_no_target() -> None:
    # The joint US guideline: fastball and changeup only to age 12.
    assert headline(CALCULATOR, age="12").startswith("At 12, throw the fastball and the changeup.")


def test_every_job_costs_something() -> None:
    for role in shelf().roles:
        found = answer(CALCULATOR, role=role, age="19")
        assert "What it costs" in text(CALCULATOR, role=role, age="19") or "no target" in str(found.headline)


def test_a_pitch_that_it_would_run_into_is_named_and_how_to_keep_apart() -> None:
    slider = ({"name": "my slider", "speed": "63", "clock": "7:15", "breaking": "yes"},)
    assert "my slider is so near in speed and direction" in text(
        CALCULATOR, arsenal=slider, shape="three-quarter-drop"
    )


def test_a_shorter_mound_leaves_less_time_to_move() -> None:
    assert facts(CALCULATOR, mound="46")["Up or down"] != facts(CALCULATOR)["Up or down"]
    # The push is steady, so movement goes with the square of the time of flight: (40.5/55)^2 is 0.54.
    assert facts(CALCULATOR)["Up or down"] == "15 to 20 in down"
    low, high = facts(CALCULATOR, mound="46")["Up or down"].split(" in ")[0].split(" to ")
    assert (int(low), int(high)) == pytest.approx((15 * 0.54, 20 * 0.54), abs=1)


def test_the_movement_agrees_with_the_shapes_own_page() -> None:
    # The shape's page flies all speeds of a level; this pitcher's slower ball has a little longer to move.
    numbers = {one.level: one for one in shape_numbers(Shape.model_validate(shapes()["three-quarter-drop"]))}
    level = numbers["high_school"]
    low, high = facts(CALCULATOR)["Up or down"].split(" in ")[0].split(" to ")
    assert -level.up[1] - 3 <= int(low)
    assert int(high) <= -level.up[0] + 3


def test_it_is_written_down_with_the_day_and_room_for_one_grip_and_one_cue() -> None:
    card = table(answer(CALCULATOR), "Target, written down on 2026-03-02")
    assert {"Good enough", "Stop", "One grip", "One cue, or none"} <= set(card)


def test_the_file_holds_the_target_and_obeys_its_schema() -> None:
    # JSON Schema 2020-12, checked by ajv, the validator that html-validate brings along.
    found = file_text(answer(CALCULATOR, nickname="Juniper"))
    told = json.dumps(
        {"schema": pitcher_file_schema(), "files": [json.loads(found), {"kind": "bendbook pitcher"}]}
    )
    done = subprocess.run(
        ["node", "-e", AJV], input=told, capture_output=True, text=True, check=True, cwd=PROJECT
    )
    assert json.loads(done.stdout) == [True, False]
    record = read_pitcher(found)
    assert [(one.date, one.shape) for one in record.targets] == [
        (datetime.date(2026, 3, 2), "three-quarter-drop")
    ]


def test_the_file_holds_what_was_said_of_arm_and_hand_and_fills_it_in_the_next_time() -> None:
    first = answer(CALCULATOR, nickname="Juniper", hand_check="holds", notes="Tuesdays")
    record = read_pitcher(file_text(first))
    assert (record.fastball_speed, record.hand_check, record.notes) == (76.0, "holds", "Tuesdays")
    blank = {"fastball_clock": "", "fastball_speed": "", "arsenal": (), "record": file_text(first)}
    again = answer(CALCULATOR, **blank)
    assert (again.headline, again.facts) == (first.headline, first.facts)
    assert read_pitcher(file_text(again)) == record


def test_no_grip_that_the_hand_cannot_hold() -> None:
    """Common practice: the ball is held out and lightly tugged; where it slides, another grip is taken."""
    assert "Take an easier grip" in text(CALCULATOR, hand_check="slides")
    assert "easier grip" not in text(CALCULATOR, hand_check="holds")
    kept = file_text(answer(CALCULATOR, nickname="Juniper", hand_check="slides"))
    assert "Take an easier grip" in text(next_session.CALCULATOR, record=kept)


FIRST = {"role": "first-pitch", "age": "13", "fastball_speed": "58", "fastball_clock": "2:20", "arsenal": ()}


def test_a_first_breaking_ball_lies_around_the_opposite_of_the_fastball_and_has_no_inches() -> None:
    # Common practice: teach clean spin, not inches, in any direction near the fastball's opposite.
    found = facts(CALCULATOR, **FIRST)
    assert found["Clock"] == "7:50 to 8:50"
    assert {"Up or down", "To the side"}.isdisjoint(found)
    assert not any("moves" in drawing.title.text for drawing in answer(CALCULATOR, **FIRST).drawings)
    assert "Inches" not in text(CALCULATOR, **FIRST)


def test_a_first_breaking_ball_comes_after_fastball_and_changeup_and_with_a_parents_yes() -> None:
    # content/guide/when-to-start.md.
    found = text(CALCULATOR, **FIRST)
    assert "No changeup is listed above. It comes before any breaking ball." in found
    assert "55 of 100 fastballs are strikes, and a changeup is used in games" in found
    assert "A parent or guardian knows, and says yes" in found
    changeup = ({"name": "changeup", "speed": "51", "clock": "", "breaking": "no"},)
    assert "No changeup is listed" not in text(CALCULATOR, **{**FIRST, "arsenal": changeup})
    assert "guardian" not in text(CALCULATOR)


@pytest.mark.parametrize("speed", ["58", "66"])
def test_a_pitch_that_is_not_slower_than_the_fastball_is_asked_about(speed: str) -> None:
    changeup = ({"name": "changeup", "speed": speed, "clock": "", "breaking": "no"},)
    said = asked(CALCULATOR, **{**FIRST, "arsenal": changeup})["arsenal"]
    assert said == "changeup is not slower than the fastball at 58.0 mph. Correct one of the two."
    slower = ({"name": "changeup", "speed": "57.9", "clock": "", "breaking": "no"},)
    assert answer(CALCULATOR, **{**FIRST, "arsenal": slower})


def test_good_enough_is_marked_as_an_estimate() -> None:
    assert "(estimate)" in table(answer(CALCULATOR), "Target")["Good enough"][0]


def test_without_a_nickname_no_file_is_made() -> None:
    assert not answer(CALCULATOR).files


def test_a_file_of_a_newer_edition_is_refused_and_stays_as_it_is() -> None:
    newer = '{"kind": "bendbook pitcher", "version": 99, "nickname": "Juniper", "hand": "right"}'
    assert "It is untouched" in asked(CALCULATOR, record=newer)["record"]


def test_a_damaged_file_is_refused_with_the_place() -> None:
    assert asked(CALCULATOR, record='{"kind": ')["record"].startswith("line 1")


def test_a_file_of_the_other_hand_is_asked_about() -> None:
    left = '{"kind": "bendbook pitcher", "version": 2, "nickname": "Juniper", "hand": "left"}'
    assert "hand" in asked(CALCULATOR, record=left)


def test_a_full_name_is_refused() -> None:
    assert "nickname" in asked(CALCULATOR, nickname="Juniper Rowe")


def test_a_fastball_clock_of_the_other_hand_is_asked_about() -> None:
    assert "catcher's view" in asked(CALCULATOR, fastball_clock="10:30")["fastball_clock"]


def test_neither_clock_nor_slot_is_no_arm() -> None:
    assert set(asked(CALCULATOR, fastball_clock="")) == {"fastball_clock", "slot"}


@pytest.mark.parametrize("mound", ["46", "60.5"])
def test_the_box_in_inches_hardly_knows_how_finely_its_balls_are_flown(
    mound: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    # Movement is the difference of two flights from one release: aim and step size nearly cancel out.
    coarse = facts(CALCULATOR, mound=mound)
    monkeypatch.setattr(target_movement, "NEAR_ENOUGH", 1e-4)
    monkeypatch.setattr(target_movement, "STEPS", 200)
    assert facts(CALCULATOR, mound=mound) == coarse

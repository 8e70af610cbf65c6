"""Every field says how to put a wrong entry right, and nothing typed becomes a silent zero."""

from __future__ import annotations

import datetime
import gettext

import pytest

from calculators.desk.fields import (
    Choice,
    ChoiceField,
    ClockField,
    DateField,
    NumberField,
    RowsField,
    read_fields,
)
from calculators.words import Message, say, speak

SPIN = NumberField("spin_rpm", say("Spin rate"), "rpm", 100, 4000, usual=(800, 3600))
PITCHES = NumberField("pitches", say("Pitches"), "pitches", 0, 250, usual=(1, 100), optional=True)
DAY = DateField("date", say("Date"))
CLOCK = ClockField("clock", say("Clock"))
HAND = ChoiceField("hand", say("Hand"), (Choice("right", say("Right")), Choice("left", say("Left"))))
OUTINGS = RowsField("outings", say("Outings"), (DAY, PITCHES), say("Add an outing"), most_rows=3)


def spoken(message: object) -> str:
    assert isinstance(message, Message)
    return speak(message, gettext.NullTranslations())


def test_a_zero_too_many_is_suspected_and_named() -> None:
    text = spoken(SPIN.read("24000"))
    assert text == "Spin rate is usually 800 to 3600 rpm; you entered 24000. A zero too many?"


def test_a_zero_too_few_is_suspected_and_named() -> None:
    assert spoken(SPIN.read("24")).endswith("A zero too few?")


@pytest.mark.parametrize(
    "typed", ["abc", "NaN", "inf", "-inf", "1e999", "12 34", "0x10", "--5", "٣٤", "1.2.3"]
)
def test_what_is_not_a_plain_number_gets_a_message(typed: str) -> None:
    assert isinstance(SPIN.read(typed), Message)


@pytest.mark.parametrize("typed", ["-5", "0", "99999999999999999999", "9" * 400])
def test_a_number_out_of_range_gets_a_message_that_is_short(typed: str) -> None:
    assert len(spoken(SPIN.read(typed))) < 200


def test_a_blank_is_asked_for_unless_it_may_be_missing() -> None:
    assert isinstance(SPIN.read("  "), Message)
    assert PITCHES.read("") is None


def test_thousands_separators_are_read_and_decimal_commas_are_asked_about() -> None:
    assert SPIN.read("2,400") == 2400
    assert "point" in spoken(SPIN.read("7,5"))


def test_pitches_come_whole() -> None:
    assert isinstance(PITCHES.read("12.5"), Message)


@pytest.mark.parametrize(
    ("typed", "hours"), [("7:30", 7.5), ("12:00", 0.0), ("12:45", 0.75), ("6", 6.0), ("1.15", 1.25)]
)
def test_a_clock_is_read_in_hours(typed: str, hours: float) -> None:
    assert CLOCK.read(typed) == pytest.approx(hours)


@pytest.mark.parametrize("typed", ["", "13:00", "0:30", "7:60", "noon", "7:3"])
def test_a_clock_that_is_none_gets_a_message(typed: str) -> None:
    assert isinstance(CLOCK.read(typed), Message)


def test_dates_are_read_strictly() -> None:
    assert DAY.read("2026-05-16") == datetime.date(2026, 5, 16)
    assert "2027-02-29" in spoken(DAY.read("2027-02-29"))
    assert isinstance(DAY.read("5/16/2026"), Message)


def test_a_choice_that_was_not_offered_is_refused() -> None:
    assert HAND.read("left") == "left"
    assert isinstance(HAND.read("both"), Message)


def test_rows_left_blank_are_skipped_and_a_wrong_cell_is_named_by_row_and_column() -> None:
    raw = {
        "outings": [
            {"date": "2026-05-16", "pitches": "40"},
            {"date": "", "pitches": ""},
            {"date": "2026-05-40", "pitches": ""},
        ]
    }
    values, problems = read_fields((OUTINGS,), raw)
    assert [(p.field, p.row, p.column) for p in problems] == [("outings", 2, "date")]
    rows = values["outings"]
    assert isinstance(rows, tuple)
    assert rows[0] == {"date": datetime.date(2026, 5, 16), "pitches": 40}


def test_too_many_rows_are_refused_rather_than_cut() -> None:
    _, problems = read_fields((OUTINGS,), {"outings": [{"date": "2026-05-16"}] * 4})
    assert problems[0].field == "outings"


def test_names_the_calculator_does_not_know_are_ignored_and_missing_ones_are_asked_for() -> None:
    values, problems = read_fields((SPIN, HAND), {"hand": "right", "colour": "red"})
    assert values == {"hand": "right"}
    assert [p.field for p in problems] == ["spin_rpm"]

"""Calendar files against RFC 5545 (https://www.rfc-editor.org/rfc/rfc5545)."""

from __future__ import annotations

import datetime

import icalendar
from hypothesis import given
from hypothesis import strategies as st

from calculators.workload.icalendar import CalendarDay, calendar_text, escaped, folded

WRITTEN = datetime.datetime(2026, 5, 16, 20, 30, tzinfo=datetime.UTC)
DAY = datetime.date(2026, 5, 31)


def test_text_is_escaped_as_in_the_example_of_section_3_3_11() -> None:
    printed = r"Project XYZ Final Review\nConference Room - 3B\nCome Prepared."
    assert escaped("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.") == printed
    assert escaped("a\\b;c,d\r\ne\rf") == r"a\\b\;c\,d\ne\nf"


@given(st.text(max_size=300))
def test_no_line_is_longer_than_75_octets_and_unfolding_gives_it_back(text) -> None:
    """Section 3.1: a line end followed by one space is taken out again."""
    line = "SUMMARY:" + escaped(text)
    parts = folded(line).split("\r\n")
    assert all(len(part.encode()) <= 75 for part in parts)
    assert all(part.startswith(" ") for part in parts[1:])
    assert folded(line).replace("\r\n ", "") == line


def test_a_whole_day_ends_on_the_next_day() -> None:
    """Section 3.6.1: DTEND of a DATE value is the day after the last one."""
    text = calendar_text([CalendarDay(DAY, "First day")], WRITTEN)
    assert "DTSTART;VALUE=DATE:20260531\r\nDTEND;VALUE=DATE:20260601\r\n" in text


def test_every_entry_has_what_the_standard_requires() -> None:
    """Section 3.6: VERSION and PRODID once; section 3.6.1: UID and DTSTAMP on every entry."""
    days = [CalendarDay(DAY, "First day", about="a"), CalendarDay(DAY, "First day", about="b")]
    lines = calendar_text(days, WRITTEN).split("\r\n")
    assert (lines[0], lines[-2], lines[-1]) == ("BEGIN:VCALENDAR", "END:VCALENDAR", "")
    assert lines.count("VERSION:2.0") == 1
    assert sum(line.startswith("PRODID:") for line in lines) == 1
    uids = [line for line in lines if line.startswith("UID:")]
    assert len(set(uids)) == len(uids) == 2
    assert lines.count("DTSTAMP:20260516T203000Z") == 2


@given(
    st.lists(
        st.tuples(
            st.dates(max_value=datetime.date(9999, 12, 30)), st.text(max_size=120), st.text(max_size=200)
        ),
        max_size=4,
    )
)
def test_an_independent_reader_gets_every_day_and_word_back(days) -> None:
    """The library icalendar (https://icalendar.readthedocs.io) is not ours."""
    text = calendar_text([CalendarDay(*day) for day in days], WRITTEN)
    found = icalendar.Calendar.from_ical(text.encode()).walk("VEVENT")
    assert [one["DTSTART"].dt for one in found] == [day for day, _, _ in days]
    for one, (_, summary, description) in zip(found, days, strict=True):
        for key, written in (("SUMMARY", summary), ("DESCRIPTION", description)):
            kept = written.replace("\r\n", "\n").replace("\r", "\n")
            assert one.get(key, "") == "".join(sign for sign in kept if sign.isprintable() or sign == "\n")


def test_the_same_entry_keeps_its_name_so_that_a_calendar_replaces_it() -> None:
    day = CalendarDay(DAY, "First day", about="a")
    assert calendar_text([day], WRITTEN) == calendar_text([day], WRITTEN)

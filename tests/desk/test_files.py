"""A file on its way from the reader's device: its bytes come through whole, and what is no file is refused."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.desk.files import EXAMPLE, MOST_BYTES, FileField, as_typed
from calculators.words import Message, say

FIELD = FileField("roster", say("Roster"))


@given(st.binary(max_size=300))
def test_bytes_come_through_whole(data) -> None:
    assert FIELD.read(as_typed(data)) == data


def test_it_is_read_as_a_browsers_file_reader_writes_it() -> None:
    """RFC 2397, the "data" URL scheme; a browser puts the file's type before the base64 mark."""
    assert FIELD.read("data:text/csv;base64,QSxC") == b"A,B"


@pytest.mark.parametrize("text", ["", "C:\\fakepath\\roster.csv", "data:text/csv,plain", "data:;base64,%%%"])
def test_what_is_no_file_asks_for_one(text) -> None:
    assert isinstance(FIELD.read(text), Message)


def test_a_blank_is_allowed_where_the_field_is_optional() -> None:
    assert FileField("more", say("More"), optional=True).read("") is None


def test_the_made_up_file_goes_by_its_own_name() -> None:
    assert FIELD.read(EXAMPLE) == EXAMPLE


def test_a_file_far_too_large_is_refused_unread() -> None:
    assert isinstance(FIELD.read("data:;base64," + "A" * (MOST_BYTES * 4 // 3 + 4)), Message)

"""A table as a spreadsheet writes it: what parts the cells is seen outside quotation marks only."""

from __future__ import annotations

import csv
import io

import pytest

from calculators.coaching.sheet import open_sheet


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
def test_signs_inside_quotation_marks_part_nothing(delimiter: str) -> None:
    headings = ("speed, mph", "spin, rpm", "up; down", "clock")
    out = io.StringIO()
    csv.writer(out, delimiter=delimiter, quoting=csv.QUOTE_ALL).writerows(
        [headings, ("61", "1900", "-9", "7:30")]
    )
    sheet = open_sheet(out.getvalue())
    assert sheet.headings == headings
    assert sheet.rows == (("61", "1900", "-9", "7:30"),)


def test_a_heading_with_more_commas_than_there_are_semicolons_is_still_one_cell() -> None:
    sheet = open_sheet('"speed, mph";"spin, rpm";clock\n61,5;1900;7:30\n')
    assert sheet.headings == ("speed, mph", "spin, rpm", "clock")
    assert sheet.rows == (("61,5", "1900", "7:30"),)
    assert sheet.decimal_comma

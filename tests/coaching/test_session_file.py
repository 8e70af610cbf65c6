"""A session file: nothing guessed, nothing lost, every doubt asked, every bad cell named."""

from __future__ import annotations

import datetime
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.coaching.column_guess import guess_columns
from calculators.coaching.session_columns import COLUMNS
from calculators.coaching.session_file import (
    Imported,
    Mapped,
    is_our_own,
    own_mapping,
    read_sheet,
    write_sessions,
)
from calculators.coaching.sheet import SheetError, open_sheet
from calculators.coaching.throws import Session, Throw, to_the_minute
from calculators.coaching.unit_doubts import Key
from tests.coaching.pens import breaking_balls, fastballs, numbered, trial_day

ALL_KEYS: tuple[Key, ...] = Key.__args__


def read_own(text: str, **more) -> Imported:
    sheet = open_sheet(text)
    return read_sheet(sheet, own_mapping(sheet, "right"), **more)


def read_columns(text: str, columns, *, confirmed=(), bad_reads=False, **about) -> Imported:
    mapped = Mapped(dict(enumerate(columns)), **{"hand": "right", "view": "pitcher", **about})
    return read_sheet(open_sheet(text), mapped, confirmed, bad_reads)


def keys(found: Imported) -> list[str]:
    return [question.key for question in found.questions]


class TestOwnColumns:
    def test_a_session_comes_back_as_it_was_written(self) -> None:
        day = trial_day("box-line", 2.0)
        text = write_sessions([day])
        assert is_our_own(open_sheet(text))
        assert read_own(text) == Imported((day,))

    def test_the_headings_are_the_documented_ones(self) -> None:
        heads = write_sessions([]).strip().split(",")
        assert heads == [column.heading for column in COLUMNS]
        assert all(column.holds.text for column in COLUMNS)

    def test_several_days_come_back_as_several_sessions(self) -> None:
        days = [trial_day("box-line", 2.0, date=datetime.date(2026, 5, day)) for day in (4, 6, 9)]
        assert read_own(write_sessions(days)).sessions == tuple(days)

    numbers = st.one_of(st.none(), st.floats(20, 100))
    clocks = st.one_of(st.none(), st.floats(0, 11.9).map(to_the_minute))
    words = st.one_of(st.just(""), st.from_regex(r"[a-z][a-z ,;\"'-]{0,10}[a-z]", fullmatch=True))
    throws = st.builds(
        Throw,
        number=st.integers(1, 999),
        pitch=st.sampled_from(["fastball", "breaking ball", "slider, hard"]),
        grip=words,
        cue=words,
        block=st.one_of(st.none(), st.integers(1, 9)),
        strike=st.one_of(st.none(), st.booleans()),
        speed=numbers,
        spin=st.one_of(st.none(), st.floats(0, 4000)),
        clock=clocks,
        active=numbers,
        up=st.one_of(st.none(), st.floats(-30, 30)),
        rating=st.one_of(st.none(), st.integers(1, 5)),
        guess_speed=numbers,
        guess_clock=clocks,
        missing=st.sampled_from([(), (("glove", "bad read"),), (("glove", "did not throw"),)]),
    )

    @settings(max_examples=60, deadline=None)
    @given(st.lists(throws, min_size=1, max_size=12))
    def test_whatever_a_throw_holds_comes_back(self, thrown: list[Throw]) -> None:
        session = Session(tuple(thrown), datetime.date(2026, 5, 4), "mound", 60.5, "league ball", 90.0, "gun")
        assert read_own(write_sessions([session]), confirmed=ALL_KEYS).sessions == (session,)


class TestOtherColumns:
    def test_headings_and_units_of_others_are_named_once(self) -> None:
        text = "No;Pitch type;Velocity km/h;Spin rate;Tilt\n1;FB;128,7;2100;1:00\n2;CB;104,6;2050;6:15\n"
        sheet = open_sheet(text)
        guess = guess_columns(sheet)
        assert guess[1] == ("pitch", "")
        assert guess[2] == ("speed", "km/h")
        assert guess[3] == ("spin", "rpm")
        assert guess[4] == ("clock", "h:mm")
        mapped = Mapped(guess, "right", "pitcher", pitch_names={"FB": "fastball", "CB": "breaking ball"})
        (session,) = read_sheet(sheet, mapped).sessions
        # 1 mile is 1.609344 km, exactly.
        assert [throw.speed for throw in session.throws] == pytest.approx(
            [128.7 / 1.609344, 104.6 / 1.609344]
        )
        assert [throw.pitch for throw in session.throws] == ["fastball", "breaking ball"]
        assert session.throws[1].clock == 6.25

    @pytest.mark.parametrize(
        ("view", "hand", "positive", "written", "glove"),
        [
            # Seen from behind, a right-hander's arm side is right; the catcher sees it on the left.
            ("pitcher", "right", "right", "-7", 7.0),
            ("catcher", "right", "right", "7", 7.0),
            ("pitcher", "left", "right", "7", 7.0),
            ("catcher", "left", "left", "7", 7.0),
            ("pitcher", "right", "glove side", "7", 7.0),
            ("catcher", "left", "arm side", "-7", 7.0),
        ],
    )
    def test_side_movement_ends_up_toward_the_glove(self, view, hand, positive, written, glove) -> None:
        found = read_columns(
            f"a,b\nfastball,{written}\n",
            [("pitch", ""), ("side", "in")],
            view=view,
            hand=hand,
            side_positive=positive,
            movement="spin, whole flight",
            confirmed=("mirrored movement",),
        )
        assert found.sessions[0].throws[0].glove == glove

    def test_the_catchers_clock_is_turned_round(self) -> None:
        found = read_columns("a,b\nslurve,4:30\n", [("pitch", ""), ("clock", "h:mm")], view="catcher")
        assert found.sessions[0].throws[0].clock == 7.5

    @pytest.mark.parametrize(
        ("unit", "written", "clock"),
        [
            ("degrees from 12:00", "225", 7.5),
            ("degrees from 6:00", "45", 7.5),
            ("degrees from 12:00", "360", 0.0),
        ],
    )
    def test_degrees_become_clocks(self, unit: str, written: str, clock: float) -> None:
        found = read_columns(f"a,b\nslurve,{written}\n", [("pitch", ""), ("clock", unit)])
        assert found.sessions[0].throws[0].clock == pytest.approx(clock)

    def test_a_column_of_drop_is_turned_over(self) -> None:
        found = read_columns(
            "a,b\nslurve,25.4\n",
            [("pitch", ""), ("up", "cm")],
            up_positive=False,
            movement="spin, whole flight",
        )
        assert found.sessions[0].throws[0].up == pytest.approx(-10.0)

    def test_view_and_movement_are_asked_where_nobody_said(self) -> None:
        text = "a,b,c\nfastball,1:00,14\n"
        columns = [("pitch", ""), ("clock", "h:mm"), ("up", "in")]
        assert keys(read_columns(text, columns, view=None)) == ["view", "movement"]
        assert keys(read_columns(text, columns, movement="with gravity")) == []

    def test_two_columns_cannot_mean_the_same(self) -> None:
        with pytest.raises(SheetError):
            read_columns("a,b\n70,71\n", [("speed", "mph"), ("speed", "mph")])


class TestStrictness:
    TEXT = "pitch,speed mph,strike\nfastball,80,strike\nfastball,8O,ball\nbreaking ball,66,maybe\n,65,ball\n"

    def test_each_bad_cell_is_named_by_row_and_column_and_nothing_is_kept(self) -> None:
        found = read_own(self.TEXT)
        assert found.sessions == ()
        assert [(one.row, one.column) for one in found.problems] == [
            (3, "speed mph"),
            (4, "strike"),
            (5, "pitch"),
        ]

    def test_on_the_readers_word_unreadable_measurements_become_bad_reads_and_are_listed(self) -> None:
        found = read_own("pitch,speed mph\nfastball,80\nfastball,8O\n", bad_cells_are_bad_reads=True)
        assert [(one.row, one.column) for one in found.set_aside] == [(3, "speed mph")]
        assert len(found.sessions[0].throws) == 2
        assert found.sessions[0].throws[1].why_missing("speed") == "bad read"

    def test_that_word_does_not_cover_other_cells(self) -> None:
        found = read_own(self.TEXT, bad_cells_are_bad_reads=True)
        assert found.sessions == ()
        assert [one.column for one in found.problems] == ["strike", "pitch"]

    def test_a_blank_is_not_measured_and_never_zero(self) -> None:
        (session,) = read_own("pitch,speed mph\nfastball,80\nfastball,\n").sessions
        assert session.throws[1].speed is None
        assert session.throws[1].why_missing("speed") == "not measured"

    def test_a_reason_may_stand_in_the_cell(self) -> None:
        (session,) = read_own("pitch,speed mph\nfastball,80\nfastball,did not throw\n").sessions
        assert session.throws[1].why_missing("speed") == "did not throw"

    def test_a_row_with_a_cell_too_many_is_named(self) -> None:
        found = read_own("pitch,speed mph\nfastball,80\nfastball,80,5\n")
        assert [(one.row, one.message.values["count"]) for one in found.problems] == [(3, "3")]

    def test_a_quoted_cell_over_two_lines_keeps_the_count_of_lines(self) -> None:
        found = read_own('pitch,grip\nfastball,"two\nlines"\nfastball,rails\n,x\n')
        assert [one.row for one in found.problems] == [3, 5]

    def test_a_session_that_contradicts_itself_is_named(self) -> None:
        found = read_own("pitch,speed mph,place\nfastball,80,mound\nfastball,80,indoors\n")
        assert [(one.row, one.column) for one in found.problems] == [(3, "place")]

    @pytest.mark.parametrize("cell", ["=1+1", "+x", "-x", "@x"])
    def test_a_cell_that_a_sheet_would_compute_is_refused(self, cell: str) -> None:
        assert read_own(f"pitch,grip\nfastball,{cell}\n").problems

    @pytest.mark.parametrize("text", ["", "\n\n", "pitch,speed mph\n", "a\0b,c\n1,2\n", 'a,b\n"1,2\n'])
    def test_what_is_no_table_is_refused(self, text: str) -> None:
        with pytest.raises(SheetError):
            open_sheet(text)

    @settings(max_examples=80, deadline=None)
    @given(st.text(st.characters(exclude_categories=["Cs"]), max_size=80))
    def test_any_text_is_read_or_refused_politely(self, text: str) -> None:
        try:
            found = read_own("pitch,speed mph,clock,missing\n" + text)
        except SheetError:
            return
        assert not (found.sessions and found.problems)


class TestDoubts:
    """Units that look mixed up are asked about; confirmed, they are kept as they are, and never changed."""

    def session(self, **changes) -> str:
        throws = numbered([*fastballs(8), *breaking_balls(8)])
        changed = [
            replace(throw, **{name: change(getattr(throw, name)) for name, change in changes.items()})
            for throw in throws
        ]
        return write_sessions([Session(tuple(changed), movement="spin, whole flight")])

    def ask(self, text: str, **about) -> Imported:
        sheet = open_sheet(text)
        mapped = replace(own_mapping(sheet, "right"), **about)
        return read_sheet(sheet, mapped)

    def test_an_ordinary_session_raises_none(self) -> None:
        assert self.ask(self.session()).questions == ()

    def test_kmh_called_mph_is_asked(self) -> None:
        text = self.session().replace("speed mph", "speed")
        sheet = open_sheet(text)
        rows = [list(row) for row in sheet.rows]
        place = sheet.headings.index("speed")
        for row in rows:
            row[place] = str(round(float(row[place]) * 1.609344, 1))
        kmh = replace(sheet, rows=tuple(tuple(row) for row in rows))
        columns = {**own_mapping(sheet, "right").columns, place: ("speed", "mph")}
        wrong = read_sheet(kmh, Mapped(columns, "right", "pitcher", movement="not known"))
        assert (wrong.sessions, wrong.problems, keys(wrong)) == ((), (), ["speed unit"])
        right = read_sheet(
            kmh, Mapped({**columns, place: ("speed", "km/h")}, "right", "pitcher", movement="not known")
        )
        assert right.sessions[0].throws[0].speed == pytest.approx(80, abs=3)

    def test_a_childs_kmh_is_caught_by_the_age(self) -> None:
        text = self.session(speed=lambda mph: mph * 55 / 80 * 1.609344)
        assert keys(self.ask(text, age=11)) == ["speed unit"]
        assert keys(self.ask(text, age=20)) == []

    def test_metres_a_second_are_asked(self) -> None:
        text = self.session(speed=lambda mph: mph * 0.44704)
        assert keys(self.ask(text, age=16)) == ["speed unit"]
        assert keys(self.ask(text, age=9)) == []

    def test_two_units_in_one_column_are_asked(self) -> None:
        text = self.session(speed=lambda mph: mph * 1.609344 if mph < 64.5 else mph)
        assert keys(self.ask(text)) == ["mixed speeds"]

    def test_centimetres_called_inches_are_asked(self) -> None:
        text = self.session(up=lambda inches: inches * 2.54, glove=lambda inches: inches * 2.54)
        assert keys(self.ask(text)) == ["movement unit"]

    def test_inches_called_centimetres_are_asked(self) -> None:
        text = self.session(up=lambda inches: inches / 2.54 / 2, glove=lambda inches: inches / 2.54 / 2)
        assert keys(self.ask(text)) == ["movement unit"]

    def test_turns_a_second_are_asked(self) -> None:
        assert keys(self.ask(self.session(spin=lambda rpm: None if rpm is None else rpm / 60))) == [
            "spin unit"
        ]

    def test_a_share_called_percent_is_asked(self) -> None:
        text = self.session(active=lambda percent: None if percent is None else percent / 100)
        assert keys(self.ask(text)) == ["active unit"]

    def test_the_catchers_view_called_the_pitchers_is_asked(self) -> None:
        text = self.session(clock=lambda clock: (12 - clock) % 12, glove=lambda side: -side)
        assert keys(self.ask(text)) == ["mirrored clock", "mirrored movement"]

    @pytest.mark.parametrize(("clock", "asked"), [("8:30", True), ("11:15", True), ("11:45", False)])
    def test_a_fastball_that_leans_to_the_glove_side_is_asked_about_down_to_a_sidearms(
        self, clock: str, asked: bool
    ) -> None:
        # content/lists/slots.yml: a sidearm's fastball reads up to 3:30, which the catcher sees as 8:30. An
        # overhand arm that tips over the top may read 11:45.
        found = read_columns("a,b\n" + 3 * f"fastball,{clock}\n", [("pitch", ""), ("clock", "h:mm")])
        assert (keys(found) == ["mirrored clock"]) is asked

    def test_a_left_hander_looks_the_other_way(self) -> None:
        assert keys(replace_hand(self.session(), "left")) == ["mirrored clock"]

    def test_clocks_upside_down_are_asked(self) -> None:
        assert keys(self.ask(self.session(clock=lambda clock: (clock + 6) % 12))) == ["upside-down clock"]

    def test_degrees_called_clocks_are_asked(self) -> None:
        found = read_columns("a,b\nslurve,225\nslurve,231.5\n", [("pitch", ""), ("clock", "h:mm")])
        assert keys(found) == ["clock unit"]
        assert found.problems == ()

    def test_a_file_that_names_no_fastball_is_asked_which_it_is(self) -> None:
        assert keys(read_own("pitch,speed mph\nFB,80\n")) == ["fastball name"]

    def test_a_sheet_of_breaking_balls_in_the_handbooks_word_needs_no_fastball(self) -> None:
        assert keys(read_own("pitch,speed mph\nbreaking ball,57\n")) == []
        assert keys(read_own("pitch,speed mph\nbreaking ball,57\nFB,80\n")) == ["fastball name"]

    def test_confirmed_numbers_are_kept_as_they_are(self) -> None:
        text = self.session(active=lambda percent: None if percent is None else percent / 100)
        sheet = open_sheet(text)
        (session,) = read_sheet(sheet, own_mapping(sheet, "right"), ("active unit",)).sessions
        assert max(throw.active for throw in session.throws if throw.active is not None) < 1


def replace_hand(text: str, hand) -> Imported:
    sheet = open_sheet(text)
    return read_sheet(sheet, own_mapping(sheet, hand))

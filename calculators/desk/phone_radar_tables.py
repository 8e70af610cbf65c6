"""Tables of the phone radar: what one frame is worth, and speed and spin by frames for paper."""

from __future__ import annotations

from calculators.coaching.camera import EASY_FRAMES_A_REPEAT, LEAST_FRAMES_A_REPEAT, frame_rate_needed
from calculators.desk.answers import Table
from calculators.desk.measures import Measures
from calculators.desk.phone_radar_fields import CountedSpin, TimedPitch, TypedFilm
from calculators.physics.units import FOOT, MPH
from calculators.words import Message, number, say

PAPER_RATE = 240.0
PAPER_FRAMES = (90, 100, 110, 120, 130, 140, 150, 160, 170)
PAPER_MOUNDS = ((46.0, 4.5), (50.0, 5.0), (54.0, 5.0), (60.5, 5.5))
PAPER_MITT = 2.0
"""For paper: rubber to plate and extension, and the mitt behind the plate's rear tip [ft] (estimate)."""

PAPER_TURNS = 5
PAPER_TURN_FRAMES = (25, 30, 35, 40, 45, 50, 60)
PAPER_SPINS = (1200, 1500, 1800, 2100, 2400, 2700)


def frames_table(film: TypedFilm, timed: TimedPitch, measures: Measures) -> Table:
    """Return the speed for one frame less, the frames counted, and one frame more."""
    rows = tuple(
        (
            say("{frames}", frames=number(timed.frames + off)),
            measures.speed(timed.speed(film.frames_per_second, timed.frames + off), 1),
        )
        for off in (-1, 0, 1)
    )
    return Table(say("What one frame is worth"), (say("Frames"), say("Speed out of the hand")), rows)


def film_tables() -> tuple[Table, ...]:
    """Return speed by frames, spin by frames, and the frame rates that spins need."""
    return _speeds(), _spins(), _rates()


def _speeds() -> Table:
    def cell(mound: float, extension: float, frames: float) -> Message:
        timed = TimedPitch(frames, (mound - extension + PAPER_MITT) * FOOT)
        return say("{mph}", mph=number(timed.speed(PAPER_RATE) / MPH))

    rows = tuple(
        (say("{frames}", frames=number(frames)), *(cell(*mound, frames) for mound in PAPER_MOUNDS))
        for frames in PAPER_FRAMES
    )
    heads = (say("Frames"), *(say("{feet} ft", feet=f"{mound:g}") for mound, _ in PAPER_MOUNDS))
    caption = say("Speed out of the hand in mph, by frames from release to the mitt at 240 a second")
    return Table(caption, heads, rows)


def _spins() -> Table:
    rows = tuple(
        (
            say("{frames}", frames=number(frames)),
            say("{rpm}", rpm=number(60 * CountedSpin(PAPER_TURNS, frames).rate(PAPER_RATE))),
        )
        for frames in PAPER_TURN_FRAMES
    )
    caption = say("Spin in rpm, by the frames that five turns take at 240 a second")
    return Table(caption, (say("Frames"), say("Spin")), rows)


def _rates() -> Table:
    def cell(rpm: float, repeats: int, frames: float) -> Message:
        return say("{fps}", fps=number(frame_rate_needed(rpm / 60, repeats, frames)))

    rows = tuple(
        (
            say("{rpm} rpm", rpm=number(rpm)),
            cell(rpm, 1, LEAST_FRAMES_A_REPEAT),
            cell(rpm, 1, EASY_FRAMES_A_REPEAT),
            cell(rpm, 2, EASY_FRAMES_A_REPEAT),
        )
        for rpm in PAPER_SPINS
    )
    heads = (say("Spin"), say("More than"), say("Easy with one dot"), say("Easy with two dots"))
    return Table(say("Frames a second that a spin needs"), heads, rows)

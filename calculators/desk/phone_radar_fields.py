"""The questions about a film of a pitch, and what is read from them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import cast

from calculators.coaching.camera import Filming, release_speed, spin_rate, stripe_clock
from calculators.desk.answers import FieldGroup, Shelf
from calculators.desk.fields import Choice, ChoiceField, ClockField, Field, NumberField, Problem, Raw, Values
from calculators.desk.pitch_fields import pitch_fields
from calculators.physics.flight import PLATE_FRONT, STILL_AIR
from calculators.physics.units import FOOT, MPH
from calculators.words import number, say

SLOWING = STILL_AIR.air_grip * STILL_AIR.drag
SLOWEST, FASTEST = 15 * MPH, 110 * MPH
MOST_SPIN = 4000 / 60
"""No pitch spins faster [turns a second] (estimate)."""


@dataclass(frozen=True)
class TimedPitch:
    """Frames from release to arrival and the distance flown [m]."""

    frames: float
    distance: float

    def speed(self, frames_per_second: float, frames: float | None = None, slowing: float = SLOWING) -> float:
        """Return the speed out of the hand [m/s], for another count of frames if one is given."""
        time = (self.frames if frames is None else frames) / frames_per_second
        return release_speed(self.distance, time, slowing)


@dataclass(frozen=True)
class CountedSpin:
    """Turns counted over a number of frames."""

    turns: float
    frames: float

    def rate(self, frames_per_second: float, frames: float | None = None) -> float:
        """Return the spin [turns a second], for another count of frames if one is given."""
        return spin_rate(self.turns, self.frames if frames is None else frames, frames_per_second)


@dataclass(frozen=True)
class TypedFilm:
    """A film as entered; what was not counted is None.

    clock: where spin pushes the ball, as the pitcher sees it [hours]. exposure: of one frame [s].
    """

    filming: Filming
    timed: TimedPitch | None
    spin: CountedSpin | None
    clock: float | None
    exposure: float | None
    left_handed: bool

    @property
    def frames_per_second(self) -> float:
        """The camera's true frame rate."""
        return self.filming.frames_per_second


def film_fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, in order."""
    shared = {field.name: field for field in pitch_fields(shelf)}
    return (
        shared["hand"],
        NumberField(
            "fps",
            say("Frame rate of the camera"),
            "frames a second",
            20,
            1000,
            (60, 240),
            1,
            help=say("What it recorded, such as 240. Slow motion plays back slower than it records."),
        ),
        NumberField(
            "frames",
            say("Frames from release to arrival"),
            "frames",
            4,
            2000,
            (25, 200),
            1,
            optional=True,
            help=say("Step through the film. Count from the last frame in the hand."),
        ),
        ChoiceField(
            "ends",
            say("Where the count ends"),
            (
                Choice("mitt", say("The ball hits the mitt")),
                Choice("plate", say("The ball is over the front of the plate")),
            ),
        ),
        shared["mound"],
        shared["extension"],
        NumberField("mitt", say("Mitt behind the plate's rear tip"), "ft", 0, 10, (1, 4), 1),
        NumberField(
            "turns",
            say("Turns counted"),
            "turns",
            0.5,
            60,
            (1, 10),
            1,
            optional=True,
            help=say("Whole turns are best. More turns are better."),
        ),
        NumberField(
            "turn_frames", say("Frames those turns took"), "frames", 1, 2000, (5, 80), 1, optional=True
        ),
        ChoiceField(
            "mark",
            say("What is drawn on the ball"),
            (
                Choice("one", say("One dot, or a stripe with one gap")),
                Choice("two", say("Two opposite dots, or a stripe that tumbles")),
            ),
        ),
        ClockField(
            "stripe",
            say("Stripe: one end points to"),
            optional=True,
            help=say("For a stripe round the ball that stands still and runs along itself."),
        ),
        ChoiceField(
            "runs",
            say("The side you see runs"),
            (Choice("toward", say("toward that end")), Choice("away", say("away from it"))),
        ),
        ChoiceField(
            "camera",
            say("The camera stood"),
            (
                Choice("pitcher", say("behind the pitcher")),
                Choice("catcher", say("behind the catcher")),
            ),
        ),
        NumberField(
            "shutter",
            say("Shutter: one part in"),
            "of a second",
            30,
            20000,
            (500, 4000),
            optional=True,
            help=say("For 1/2000 s enter 2000."),
        ),
        shared["units"],
    )


FILM_GROUPS = (
    FieldGroup(say("Speed"), ("frames", "ends", "mound", "extension", "mitt")),
    FieldGroup(say("Spin"), ("turns", "turn_frames", "mark", "shutter")),
    FieldGroup(say("Clock"), ("stripe", "runs", "camera"), open=False),
    FieldGroup(say("How to answer"), ("units",), open=False),
)

EXAMPLE_FILM: Raw = {
    "hand": "right",
    "fps": "240",
    "frames": "145",
    "ends": "mitt",
    "mound": "60.5",
    "extension": "5.5",
    "mitt": "2",
    "turns": "5",
    "turn_frames": "35",
    "mark": "one",
    "stripe": "1:00",
    "runs": "toward",
    "camera": "pitcher",
    "shutter": "2000",
    "units": "imperial",
}
"""A high-school curve filmed from behind with a phone's slow motion."""


def read_film(values: Values) -> TypedFilm | tuple[Problem, ...]:
    """Return the film the fields describe, or the problems that involve several of them."""

    def maybe(name: str) -> float | None:
        return cast("float | None", values[name])

    fps = cast(float, values["fps"])
    film = TypedFilm(
        Filming(fps, 2 if values["mark"] == "two" else 1),
        _timed(values),
        None,
        _clock(values),
        None if values["shutter"] is None else 1 / cast(float, values["shutter"]),
        values["hand"] == "left",
    )
    turns, turn_frames = maybe("turns"), maybe("turn_frames")
    if (turns is None) != (turn_frames is None):
        message = say("Spin needs both: how many turns, and how many frames they took.")
        return (Problem("turns" if turns is None else "turn_frames", message),)
    if turns is not None and turn_frames is not None:
        film = replace(film, spin=CountedSpin(turns, turn_frames))
    if film.timed is None and film.spin is None and film.clock is None:
        message = say("Count frames for the speed, or turns for the spin, or read the stripe.")
        return tuple(Problem(name, message) for name in ("frames", "turns", "stripe"))
    return _too_fast(film) or film


def _timed(values: Values) -> TimedPitch | None:
    frames = cast("float | None", values["frames"])
    if frames is None:
        return None
    release = float(str(values["mound"])) - cast(float, values["extension"])
    if values["ends"] == "plate":
        return TimedPitch(frames, release * FOOT - PLATE_FRONT)
    return TimedPitch(frames, (release + cast(float, values["mitt"])) * FOOT)


def _clock(values: Values) -> float | None:
    end = cast("float | None", values["stripe"])
    if end is None:
        return None
    return stripe_clock(end, values["runs"] == "toward", values["camera"] == "catcher")


def _too_fast(film: TypedFilm) -> tuple[Problem, ...]:
    """Return problems where the counts and the frame rate give a pitch that nobody throws."""
    fps = film.frames_per_second
    if film.timed is not None:
        speed = film.timed.speed(fps)
        if not SLOWEST <= speed <= FASTEST:
            message = say(
                "{frames} frames at {fps} a second would be a pitch of {mph} mph. Correct one of them. "
                "The frame rate is what the camera recorded, not what it plays.",
                frames=number(film.timed.frames),
                fps=number(fps),
                mph=number(speed / MPH),
            )
            return (Problem("fps", message), Problem("frames", message))
    if film.spin is not None and film.spin.rate(fps) > MOST_SPIN:
        message = say(
            "{turns} turns in {frames} frames at {fps} a second would be {rpm} rpm. Correct one of them.",
            turns=number(film.spin.turns, 1),
            frames=number(film.spin.frames),
            fps=number(fps),
            rpm=number(60 * film.spin.rate(fps)),
        )
        return tuple(Problem(name, message) for name in ("fps", "turns", "turn_frames"))
    return ()

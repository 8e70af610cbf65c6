"""The phone radar: speed, spin and clock from a phone's slow motion, and what it takes to see them."""

from __future__ import annotations

import math
from collections.abc import Iterator

from calculators.coaching.camera import (
    EASY_FRAMES_A_REPEAT,
    LEAST_FRAMES_A_REPEAT,
    LONGEST_BLUR,
    blur_turn,
    frame_rate_needed,
    longest_exposure,
)
from calculators.desk.answers import Answer, Calculator, Fact, HowSure, Outcome, Shelf
from calculators.desk.drawing import Drawing
from calculators.desk.fields import Values
from calculators.desk.measures import Measures
from calculators.desk.movement_tables import clock_words
from calculators.desk.phone_radar_fields import (
    EXAMPLE_FILM,
    FILM_GROUPS,
    SLOWING,
    CountedSpin,
    TimedPitch,
    TypedFilm,
    film_fields,
    read_film,
)
from calculators.desk.phone_radar_figures import frame_by_frame, striped_ball
from calculators.desk.phone_radar_tables import film_tables, frames_table
from calculators.physics.ball import RULE_BOOK_BALL
from calculators.physics.drag import DRAG_SPREAD, STANDARD_DRAG
from calculators.physics.units import DEGREE, FOOT
from calculators.words import Message, number, say

FEWEST_RPM, MOST_RPM = 600.0, 3600.0
"""Spins between which another reading of the same pictures is worth a warning (estimate)."""

DISTANCE_DOUBT = 0.5 * FOOT
"""How far the distance flown may be off, as release and mitt are judged by eye (estimate)."""


def work_out(values: Values, _: Shelf) -> Outcome:
    """Return what the film shows, or the problems that involve several fields."""
    film = read_film(values)
    if not isinstance(film, TypedFilm):
        return film
    measures = Measures("metric" if values["units"] == "metric" else "imperial")
    headline = _headline(film, measures)
    return Answer(
        headline=headline,
        more=tuple(_more(film)),
        drawings=tuple(_drawings(film, headline)),
        facts=tuple(_facts(film, measures)),
        tables=(frames_table(film, film.timed, measures),) if film.timed else (),
        how_sure=_how_sure(film, measures),
        cannot_tell=(
            say("How much of the spin is bullet spin. A stripe that wobbles has some."),
            say("Movement. For that use the numbers found here in spin to break."),
        ),
        cautions=tuple(_cautions(film)),
        sources=("wilcox-fluid-mechanics", "ijiri-2017", "nathan-2008", "rulebook-field"),
    )


def other_readings(film: TypedFilm) -> tuple[float, ...]:
    """Return other spins a pitcher could throw that give the same pictures [turns a second]."""
    if film.spin is None:
        return ()
    rate = film.spin.rate(film.frames_per_second)
    found = film.filming.same_pictures(rate, MOST_RPM / 60)
    return tuple(other for other in found if other >= FEWEST_RPM / 60)


def _headline(film: TypedFilm, measures: Measures) -> Message:
    fps = film.frames_per_second
    speed = measures.speed(film.timed.speed(fps)) if film.timed else None
    if film.spin is None:
        if speed is None:
            return say("Spin pushes this ball to {clock}.", clock=clock_words(film.clock or 0.0))
        return say("About {speed} out of the hand.", speed=speed)
    rpm = _rpm(film.spin.rate(fps))
    others = other_readings(film)
    if others:
        listed = ", ".join(map(_rpm, others))
        return say("Too few frames for this spin. It may be {rpm} rpm or {others}.", rpm=rpm, others=listed)
    if speed is None:
        return say("It spins at about {rpm} rpm.", rpm=rpm)
    return say("About {speed} out of the hand, spinning at about {rpm} rpm.", speed=speed, rpm=rpm)


def _more(film: TypedFilm) -> Iterator[Message]:
    if film.clock is not None and (film.timed or film.spin):
        yield say("Spin pushes it to {clock}, as the pitcher sees it.", clock=clock_words(film.clock))
    if film.spin is None:
        return
    rate = film.spin.rate(film.frames_per_second)
    needed = frame_rate_needed(rate, film.filming.repeats, EASY_FRAMES_A_REPEAT)
    if other_readings(film) or not film.filming.sees(rate):
        yield say(
            "A mark caught less than {times} times in each repeat can seem slower than it is, or backward. "
            "Film with more frames a second.",
            times=number(LEAST_FRAMES_A_REPEAT),
        )
    elif film.frames_per_second < needed:
        yield say("To follow this spin by eye, film at {fps} frames a second or more.", fps=number(needed))
    else:
        yield say("The camera is fast enough for this spin.")


def _drawings(film: TypedFilm, headline: Message) -> Iterator[Drawing]:
    if film.clock is not None:
        yield striped_ball(film.clock, film.left_handed)
    if film.spin is not None:
        yield frame_by_frame(film.frames_per_second / film.spin.rate(film.frames_per_second), headline)


def _facts(film: TypedFilm, measures: Measures) -> Iterator[Fact]:
    fps = film.frames_per_second
    if film.timed is not None:
        speed, time = film.timed.speed(fps), film.timed.frames / fps
        doubt = math.hypot(*(amount for _, amount in speed_doubts(film.timed, fps)))
        yield Fact(
            say("Speed out of the hand"),
            measures.speed(speed, 1),
            say("give or take {amount}", amount=measures.speed(doubt, 1)),
            say("slowing by the air undone"),
        )
        yield Fact(
            say("Average speed on the way"),
            measures.speed(film.timed.distance / time, 1),
            note=say(
                "{distance} in {seconds} s",
                distance=measures.far(film.timed.distance),
                seconds=number(time, 3),
            ),
        )
    if film.spin is not None:
        yield from _spin_facts(film, film.spin)
    if film.clock is not None:
        yield Fact(
            say("Clock"), say("{clock}", clock=clock_words(film.clock)), say("give or take 20 minutes")
        )
    if film.exposure is not None:
        yield from _blur_facts(film, film.exposure, measures)


def _spin_facts(film: TypedFilm, spin: CountedSpin) -> Iterator[Fact]:
    fps, repeats = film.frames_per_second, film.filming.repeats
    rate = spin.rate(fps)
    yield Fact(
        say("Spin"),
        say("{rpm} rpm", rpm=_rpm(rate)),
        say("give or take {rpm} rpm", rpm=_rpm(rate / spin.frames)),
        say("{frames} frames to a turn", frames=number(fps / rate, 1)),
    )
    yield Fact(
        say("Frame rate this spin needs"),
        say("{fps} a second", fps=number(frame_rate_needed(rate, repeats, EASY_FRAMES_A_REPEAT))),
        note=say(
            "to follow it by eye; below {fps} the count can be wrong altogether",
            fps=number(frame_rate_needed(rate, repeats, LEAST_FRAMES_A_REPEAT)),
        ),
    )


def _blur_facts(film: TypedFilm, exposure: float, measures: Measures) -> Iterator[Fact]:
    if film.spin is not None:
        turn = blur_turn(film.spin.rate(film.frames_per_second), exposure)
        yield Fact(
            say("Turn during one picture"),
            say("{degrees}°", degrees=number(turn / DEGREE, 1)),
            note=say("more than {most}° smears a stripe (estimate)", most=number(LONGEST_BLUR / DEGREE)),
        )
    if film.timed is not None:
        travel = film.timed.speed(film.frames_per_second) * exposure
        yield Fact(
            say("Travel during one picture"),
            measures.small(travel, 1),
            note=say("a ball is {width} wide", width=measures.small(2 * RULE_BOOK_BALL.radius, 1)),
        )


def speed_doubts(timed: TimedPitch, fps: float) -> tuple[tuple[Message, float], ...]:
    """Return what may shift the speed and by how much either way [m/s], largest first."""
    speed = timed.speed(fps)
    farther = TimedPitch(timed.frames, timed.distance + DISTANCE_DOUBT)
    draggier = timed.speed(fps, slowing=SLOWING * (1 + DRAG_SPREAD / STANDARD_DRAG))
    found = (
        (say("one frame more or less"), timed.speed(fps, timed.frames - 1) - speed),
        (say("half a foot of distance"), farther.speed(fps) - speed),
        (say("how hard air slows the ball"), draggier - speed),
    )
    return tuple(sorted(found, key=lambda each: each[1], reverse=True))


def _how_sure(film: TypedFilm, measures: Measures) -> HowSure:
    fps = film.frames_per_second
    rate = say(
        "Phones may record a little faster or slower than they say, and some vary. The time stamps of the "
        "frames, if you can see them, are better than counting."
    )
    if film.timed is None:
        if film.spin is None:
            return HowSure(say("A stripe read from a film is good to about 20 minutes (estimate)."))
        sentence = say(
            "One frame more or less is {rpm} rpm. Count more turns to know better.",
            rpm=_rpm(film.spin.rate(fps) / film.spin.frames),
        )
        return HowSure(sentence, (rate,))
    doubts = speed_doubts(film.timed, fps)
    total = math.hypot(*(amount for _, amount in doubts))
    sentence = say(
        "The speed is good to about {amount}. The largest doubt is {cause}.",
        amount=measures.speed(total, 1),
        cause=doubts[0][0],
    )
    causes = tuple(
        say("{cause}: {amount}", cause=cause, amount=measures.speed(amount, 1)) for cause, amount in doubts
    )
    level = say("The path is taken as level. A slow ball that arches was up to 1 percent faster.")
    return HowSure(sentence, (*causes, level, rate))


def _cautions(film: TypedFilm) -> Iterator[Message]:
    if film.exposure is not None and film.spin is not None:
        rate = film.spin.rate(film.frames_per_second)
        if blur_turn(rate, film.exposure) > LONGEST_BLUR:
            yield say(
                "The shutter is too slow for this spin. Use 1/{part} s or shorter, which needs daylight.",
                part=number(math.ceil(1 / longest_exposure(rate) / 100) * 100),
            )
    yield say("Stand behind a fence or a screen. Never film from where a ball can hit you or the phone.")
    yield say("Before filming a young player, ask the player and the parents.")


def _rpm(turns_per_second: float) -> str:
    return number(10 * round(6 * turns_per_second))


CALCULATOR = Calculator(
    name="phone-radar",
    title=say("Speed and spin from a phone"),
    fields=film_fields,
    example=EXAMPLE_FILM,
    work_out=work_out,
    common_cases=lambda _: film_tables(),
    groups=FILM_GROUPS,
)

"""The questions that come before any cue: the pitcher, what the ball is for, and what is thrown already."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, cast, get_args

from calculators.coaching.clock_faces import hours_apart
from calculators.coaching.pitcher_file import PitcherFile
from calculators.coaching.slot_and_shape import Slot, read_shapes, read_slots, slot_of
from calculators.coaching.stop_rules import YOUNGEST_FOR_A_BREAKING_BALL
from calculators.coaching.target import Choice as TargetChoice
from calculators.coaching.target import NotThis, Owned, Pitcher, Role, Target, targets
from calculators.coaching.throws import Hand
from calculators.desk.answers import Shelf
from calculators.desk.fields import (
    Choice,
    ChoiceField,
    ClockField,
    Field,
    NumberField,
    Problem,
    Raw,
    RowsField,
    TextField,
    Value,
    Values,
)
from calculators.desk.mounds import mound_field
from calculators.desk.movement_tables import clock_words
from calculators.desk.slot_and_shape_fields import FARTHEST_FASTBALL, USUAL_FASTBALL, fastball_span
from calculators.physics.spin import other_hand_clock
from calculators.words import Message, number, say

OWN_WORDS: Mapping[str, Message] = {
    "swing-and-miss": say("Swing and miss"),
    "steal-a-strike": say("Steal a strike"),
    "ground-ball": say("Ground ball"),
    "same-hand-hitter": say("Hitter on the same side"),
    "opposite-hand-hitter": say("Hitter on the other side"),
    "slow-the-game": say("Slow the game"),
    "first-pitch": say("A first breaking ball"),
}
"""What each role is called in a list to choose from."""

PITCHER_NAMES = ("hand", "age", "fastball_clock", "slot", "fastball_speed", "mound")
TARGET_NAMES = ("role", "shape")
ARSENAL_NAMES = ("arsenal",)

EXAMPLE_PITCHER: Raw = {
    "hand": "right",
    "age": "16",
    "fastball_clock": "1:30",
    "slot": "",
    "fastball_speed": "76",
    "mound": "60.5",
    "role": "steal-a-strike",
    "shape": "",
}
"""A high-school right-hander who throws from three-quarter and wants a called strike."""

NOT_DECIDED = Choice("", say("Not decided"))


def pitcher_fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions about the pitcher."""
    return (
        ChoiceField("hand", say("Throws"), (Choice("right", say("Right")), Choice("left", say("Left")))),
        NumberField("age", say("Age"), "years", 5, 60, (9, 22)),
        ClockField(
            "fastball_clock",
            say("Fastball clock"),
            optional=True,
            help=say("Where spin pushes the four-seam fastball, seen from behind. Take the middle of ten."),
        ),
        ChoiceField(
            "slot",
            say("Arm slot by eye"),
            (NOT_DECIDED, *_titled(shelf.slots)),
            style="select",
            optional=True,
            help=say("Only needed where nobody has measured the fastball clock."),
        ),
        NumberField(
            "fastball_speed",
            say("Fastball speed"),
            "mph",
            30,
            105,
            (50, 95),
            1,
            optional=True,
            help=say("The middle of ten, on the day."),
        ),
        mound_field(shelf),
    )


def target_fields(shelf: Shelf, optional: bool = False) -> tuple[Field, ...]:
    """Return the questions about what the breaking ball is for."""
    roles = tuple(Choice(slug, OWN_WORDS[slug]) for slug in get_args(Role))
    return (
        ChoiceField(
            "role",
            say("What the breaking ball is for"),
            (NOT_DECIDED, *roles) if optional else roles,
            style="select",
            optional=optional,
            help=say("Chosen before the first throw. Without it no throw is inside or outside."),
        ),
        ChoiceField(
            "shape",
            say("Shape"),
            (
                Choice("", say("What fits best")),
                *(
                    Choice(shape.slug, say("{title}", title=str(shelf.shapes[shape.slug]["title"])))
                    for shape in read_shapes(shelf.shapes)
                ),
            ),
            style="select",
            optional=True,
        ),
    )


def arsenal_field() -> RowsField:
    """Return the table of pitches that the pitcher has already."""
    return RowsField(
        "arsenal",
        say("Other pitches, fastball left out"),
        (
            TextField("name", say("Pitch"), longest=30, optional=False, private=False),
            NumberField("speed", say("Speed"), "mph", 25, 105, (40, 90), 1),
            ClockField("clock", say("Clock"), optional=True),
            ChoiceField(
                "breaking",
                say("Breaks"),
                (Choice("yes", say("Yes")), Choice("no", say("No, a changeup or the like"))),
                style="select",
            ),
        ),
        say("Add a pitch"),
        most_rows=8,
        help=say("A new pitch must not run into one of these."),
    )


def _titled(entries: Mapping[str, Mapping[str, Any]]) -> tuple[Choice, ...]:
    return tuple(Choice(slug, say("{title}", title=str(entry["title"]))) for slug, entry in entries.items())


def league_age(shelf: Shelf) -> int:
    """Return the age from which breaking balls are allowed: the handbook's, or a league's later one."""
    return int(shelf.edition.get("breaking_balls_from", YOUNGEST_FOR_A_BREAKING_BALL))


def league_starts(shelf: Shelf) -> tuple[Message, ...]:
    """Return that the league starts later than the handbook, if it does."""
    age = league_age(shelf)
    if age <= YOUNGEST_FOR_A_BREAKING_BALL:
        return ()
    return (_starts_at(age),)


def _starts_at(age: int) -> Message:
    return say("This league starts breaking balls at {age}.", age=str(age))


def _none_before(age: int, choice: TargetChoice) -> TargetChoice:
    held_back = tuple(NotThis(one.shape, _starts_at(age)) for one in choice.targets)
    return TargetChoice((), (*held_back, *choice.ruled_out))


def _with_own_ages(shelf: Shelf) -> Mapping[str, Mapping[str, Any]]:
    """Return the shapes; those that the league alone holds back are open from the handbook's age."""
    age = league_age(shelf)
    return {
        slug: {**shape, "youngest": YOUNGEST_FOR_A_BREAKING_BALL} if shape["youngest"] == age else shape
        for slug, shape in shelf.shapes.items()
    }


@dataclass(frozen=True)
class Aiming:
    """A pitcher and what was asked of the ball.

    seen: how the arm is known, "clock" or "slot". mound: from the rubber to the plate's rear tip [ft].
    choice: the targets for the role; None where no role was chosen. target: the one to go by; None where
    nothing fits. wanted: the shape that was asked for, "" for none.
    """

    pitcher: Pitcher
    seen: str
    mound: float
    arsenal: tuple[Owned, ...]
    role: Role | None
    wanted: str
    choice: TargetChoice | None
    target: Target | None

    @property
    def target_as_wanted(self) -> bool:
        """True where there is a target, and of the shape that was asked for if one was."""
        return self.target is not None and self.wanted in ("", self.target.shape)

    @property
    def hand(self) -> Hand:
        """The throwing hand."""
        return self.pitcher.hand


def read_aiming(
    values: Values, shelf: Shelf, record: PitcherFile | None = None
) -> Aiming | tuple[Problem, ...]:
    """Return what the fields say of pitcher and target, or the problems that involve several fields.

    record: the pitcher's file, which fills what was left blank.
    """
    age = cast(float, values["age"])
    if age != int(age):
        return (Problem("age", say("Enter the age in whole years.")),)
    hand = cast(Hand, values["hand"])
    clock = cast("float | None", values["fastball_clock"])
    slot = str(values["slot"] or "")
    if record is not None:
        clock = record.fastball_clock if clock is None and not slot else clock
        slot = slot or record.slot
    slots = read_slots(shelf.slots)
    if clock is None and slot not in shelf.slots:
        need = say("Give the fastball clock, or choose the arm slot.")
        return (Problem("fastball_clock", need), Problem("slot", need))
    if clock is not None:
        for_right = other_hand_clock(clock) if hand == "left" else clock
        if hours_apart(for_right, USUAL_FASTBALL) > FARTHEST_FASTBALL:
            start, end = fastball_span(hand == "left")
            return (
                Problem(
                    "fastball_clock",
                    say(
                        "A fastball of this hand lies between {start} and {end}. {entered} does not. "
                        "Is it the catcher's view, or the other hand?",
                        start=start,
                        end=end,
                        entered=clock_words(clock),
                    ),
                ),
            )
        slot = slot if slot in shelf.slots else _nearest_slot(for_right, slots)
    fastball = cast("float | None", values["fastball_speed"])
    if fastball is None and record is not None:
        fastball = record.fastball_speed
    pitcher = Pitcher(slot, int(age), hand, clock, fastball)
    arsenal = read_arsenal(values, fastball)
    if isinstance(arsenal, Problem):
        return (arsenal,)
    owned = arsenal
    if not owned and record is not None:
        owned = record.arsenal
    role, wanted = cast("Role | None", values.get("role") or None), str(values.get("shape") or "")
    if role is None and record is not None and record.targets:
        role, wanted = record.targets[-1].role, wanted or record.targets[-1].shape
    choice = None
    if role and slot in shelf.slots:
        choice = targets(role, pitcher, owned, _with_own_ages(shelf), shelf.slots)
    target = None
    if choice is not None and pitcher.age < league_age(shelf):
        choice = _none_before(league_age(shelf), choice)
    if choice is not None:
        fitting = [one for one in choice.targets if wanted in ("", one.shape)] or list(choice.targets)
        target = fitting[0] if fitting else None
    seen = "slot" if clock is None else "clock"
    return Aiming(pitcher, seen, float(str(values["mound"])), owned, role or None, wanted, choice, target)


def _nearest_slot(clock: float, slots: tuple[Slot, ...]) -> str:
    found = slot_of(clock, slots)
    if found is not None:
        return found.slug
    return min(slots, key=lambda slot: slot.fastball.outside(clock)).slug if slots else ""


def read_arsenal(values: Values, fastball: float | None) -> tuple[Owned, ...] | Problem:
    """Return the pitches of the table; their speeds become percent of the fastball, which is then needed.

    A pitch as fast as the fastball, or faster, is asked about.
    """
    rows = cast("tuple[Mapping[str, Value], ...]", values.get("arsenal", ()))
    if rows and fastball is None:
        return Problem(
            "fastball_speed", say("Give the fastball's speed, to set the other pitches beside it.")
        )
    for index, row in enumerate(rows):
        if cast(float, row["speed"]) >= cast(float, fastball):
            faster = say(
                "{pitch} is not slower than the fastball at {fastball} mph. Correct one of the two.",
                pitch=str(row["name"]),
                fastball=number(cast(float, fastball), 1),
            )
            return Problem("arsenal", faster, index, "speed")
    return tuple(
        Owned(
            str(row["name"]),
            100 * cast(float, row["speed"]) / cast(float, fastball),
            cast("float | None", row["clock"]),
            row["breaking"] != "no",
        )
        for row in rows
    )

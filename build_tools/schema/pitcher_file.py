"""The pitcher's file as JSON Schema, so that other programs can read and write it.

It follows from the same classes as the reader of the file: `calculators.coaching.pitcher_file`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, get_args

from calculators.coaching.pitcher_file import (
    KIND,
    LONGEST_NICKNAME,
    LONGEST_NOTES,
    OLDEST,
    VERSION,
    YOUNGEST,
    HandCheck,
)
from calculators.coaching.target import Role
from calculators.coaching.throws import LIMITS, QUANTITIES, REASONS, Hand, MovementKind, Place, Quantity
from calculators.coaching.verdict import Decision

Schema = Mapping[str, Any]

TEXT: Schema = {"type": "string", "maxLength": 60}
DATE: Schema = {"type": "string", "format": "date"}
NUMBER: Schema = {"type": "number"}
COUNT: Schema = {"type": "integer", "minimum": 1}
CLOCK: Schema = {
    "description": 'A clock time like "7:30", or hours from 0 up to 12 where it is finer than a minute.',
    "anyOf": [
        {"type": "string", "pattern": "^(1[0-2]|[1-9]):[0-5][0-9]$"},
        {"type": "number", "minimum": 0, "exclusiveMaximum": 12},
    ],
}


def pitcher_file_schema() -> dict[str, Any]:
    """Return the JSON Schema of the pitcher's file in its newest version."""
    whole = _object(
        {
            "kind": {"const": KIND},
            "version": {"const": VERSION},
            "nickname": {"type": "string", "minLength": 1, "maxLength": LONGEST_NICKNAME},
            "hand": _one_of(get_args(Hand)),
            "age": {
                "type": "integer",
                "minimum": YOUNGEST,
                "maximum": OLDEST,
                "description": "In whole years, on the day `as_of`.",
            },
            "as_of": DATE,
            "slot": {**TEXT, "description": "An arm slot of the handbook."},
            "start": {**TEXT, "description": "A starting profile of the handbook."},
            "fastball_clock": CLOCK,
            "fastball_speed": {**_measured("speed"), "description": "The middle of ten, in mph."},
            "hand_check": _one_of(get_args(HandCheck)),
            "notes": {"type": "string", "maxLength": LONGEST_NOTES},
            "arsenal": _list(_owned()),
            "targets": _list(
                _object(
                    {"date": DATE, "role": _one_of(get_args(Role)), "shape": TEXT}, ("date", "role", "shape")
                )
            ),
            "gates": _list(_object({"stage": TEXT, "date": DATE}, ("stage", "date"))),
            "log": _list(_logged()),
            "sessions": _list(_session()),
        },
        ("kind", "version", "nickname", "hand"),
    )
    return {"title": "The pitcher's file", **whole}


def _object(parts: Mapping[str, Schema], needed: Sequence[str] = ()) -> dict[str, Any]:
    return {
        "type": "object",
        "properties": dict(parts),
        "required": list(needed),
        "additionalProperties": False,
    }


def _list(item: Schema) -> dict[str, Any]:
    return {"type": "array", "items": item}


def _one_of(words: Sequence[str]) -> dict[str, Any]:
    return {"enum": list(words)}


def _owned() -> dict[str, Any]:
    parts = {
        "name": TEXT,
        "speed": {**NUMBER, "description": "Percent of the fastball."},
        "clock": CLOCK,
        "breaking": {"type": "boolean"},
    }
    return _object(parts, ("name", "speed"))


def _logged() -> dict[str, Any]:
    changes = _object(dict.fromkeys((*QUANTITIES, "strikes"), NUMBER))
    parts = {
        "cue": TEXT,
        "date": DATE,
        "changes": {**changes, "description": "With the cue minus plain; the unit of each quantity."},
        "throws": {"type": "integer", "description": "How many the smaller kind had."},
        "decision": _one_of(get_args(Decision)),
    }
    return _object(parts, ("cue", "changes", "throws", "decision"))


def _session() -> dict[str, Any]:
    parts = {
        "throws": _list(_throw()),
        "date": DATE,
        "place": _one_of(get_args(Place)),
        "distance": {"type": "number", "description": "From the plate to the pitcher [ft]."},
        "ball": TEXT,
        "effort": {"type": "number", "minimum": 0, "maximum": 100},
        "system": TEXT,
        "movement": _one_of(get_args(MovementKind)),
    }
    return _object(parts)


_UNITS = {"speed": "mph", "spin": "rpm", "active": "percent", "up": "in", "glove": "in"}


def _measured(name: Quantity) -> dict[str, Any]:
    least, most = LIMITS[name]
    return {"type": "number", "minimum": least, "maximum": most, "description": f"[{_UNITS[name]}]"}


def _throw() -> dict[str, Any]:
    measured: dict[str, Schema] = {name: _measured(name) for name in QUANTITIES if name != "clock"}
    parts: dict[str, Schema] = {
        "number": COUNT,
        "pitch": TEXT,
        "grip": TEXT,
        "cue": TEXT,
        "block": COUNT,
        "strike": {"type": "boolean"},
        **measured,
        "clock": CLOCK,
        "rating": {"type": "integer", "minimum": 1, "maximum": 5},
        "guess_speed": NUMBER,
        "guess_clock": CLOCK,
        "missing": _object({name: _one_of(REASONS) for name in QUANTITIES}),
    }
    return _object(parts, ("number", "pitch"))

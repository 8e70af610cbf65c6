"""The handbook's own cues, shapes and lists, read from content/ for the tests."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from pydantic import BaseModel

from build_tools.loading.front_matter import cut
from build_tools.loading.marked_yaml import read_yaml
from build_tools.schema.coaching import Cue, Drill
from build_tools.schema.lists import Profile, Role, Slot, Stage
from build_tools.schema.shape import Shape

CONTENT = Path(__file__).parents[2] / "content"
Entries = Mapping[str, Mapping[str, Any]]


def _plain(model: type[BaseModel], value: Any) -> Mapping[str, Any]:
    return model.model_validate(value).model_dump(mode="json")


def _folder(kind: str, model: type[BaseModel]) -> Entries:
    files = sorted((CONTENT / kind).glob("*.md"))
    return {file.stem: _plain(model, read_yaml(cut(file.read_text("utf-8")).front).value) for file in files}


def _list(name: str, model: type[BaseModel]) -> Entries:
    values = read_yaml((CONTENT / "lists" / f"{name}.yml").read_text("utf-8")).value
    return {slug: _plain(model, value) for slug, value in values.items()}


@cache
def cues() -> Entries:
    """Return every cue of the handbook as the plain data the build exports."""
    return _folder("cues", Cue)


@cache
def drills() -> Entries:
    """Return every drill."""
    return _folder("drills", Drill)


@cache
def shapes() -> Entries:
    """Return every shape."""
    return _folder("shapes", Shape)


@cache
def slots() -> Entries:
    """Return every arm slot."""
    return _list("slots", Slot)


@cache
def profiles() -> Entries:
    """Return every starting profile."""
    return _list("profiles", Profile)


@cache
def roles() -> Entries:
    """Return every role."""
    return _list("roles", Role)


@cache
def stages() -> tuple[str, ...]:
    """Return the stages of learning, in order."""
    return tuple(stage_entries())


@cache
def stage_entries() -> Entries:
    """Return the stages of learning as plain data, in order."""
    return _list("stages", Stage)

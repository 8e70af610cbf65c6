"""Starts a new edition from a handful of answers, alone or after the pattern of another edition."""

from __future__ import annotations

import datetime
import re
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from build_tools.editions.colors import COLOR, TEXT, nearest_passing, weakest
from build_tools.editions.opening import EDITIONS
from build_tools.editions.overlay import EDITION_FILE
from build_tools.editions.schemes import Scheme, grounds
from build_tools.loading.marked_yaml import read_yaml
from build_tools.loading.slugs import slug_of

SCHEMA_LINE = "# yaml-language-server: $schema=../../.schemas/editions.json\n"
THEN_PROMPT = """\
# Add to emergency, after where, what to do next here, one thing a line: who meets the ambulance and at which
# gate, where the AED hangs, who stays with the player. Like this: then: ["First thing.", "Second thing."]
"""

_DIVISION = re.compile(
    r"\s*(?P<name>[^;]*?[^\s;\d])\s+(?P<low>\d+)\s*-\s*(?P<high>\d+)\s+(?P<feet>\d+(\.\d+)?)\s*"
)


class AnswerError(Exception):
    """An answer cannot be used; the message says how to mend it."""


@dataclass(frozen=True)
class Answers:
    """What is asked before an edition is started. Colors as #rrggbb; see League for the rest."""

    name: str
    short_name: str
    light: str
    dark: str
    rules: str
    rules_review_by: datetime.date
    divisions: str
    from_age: int
    pages_above_our_ages: str
    contact: str
    reach: str
    call: str
    where: str
    site_url: str


def start(content: Path, answers: Answers, like: str | None = None, slug: str = "") -> Path:
    """Write a new edition and return its folder.

    content: the content folder. like: another edition, whose entries, logo and what it hides or replaces come
    along; its notices and its steps in an emergency do not. slug: the folder's name; made from the league's
    name where it is empty.
    Raises AnswerError.
    """
    slug = slug or slug_of(answers.name)
    if not slug or slug_of(slug) != slug:
        raise AnswerError(
            f'"{slug or answers.name}" makes no folder name. Give one with --slug, in plain letters.'
        )
    folder = content / EDITIONS / slug
    if folder.exists():
        raise AnswerError(f"There is an edition in {folder} already. Change it, or give another --slug.")
    described = _described(answers, {} if like is None else description_of(content, like))
    folder.parent.mkdir(exist_ok=True)
    if like is not None:
        shutil.copytree(content / EDITIONS / like, folder, ignore=shutil.ignore_patterns("history"))
    else:
        folder.mkdir()
    text = yaml.safe_dump(described, allow_unicode=True, sort_keys=False, width=100, default_flow_style=None)
    (folder / EDITION_FILE).write_text(SCHEMA_LINE + text + THEN_PROMPT, encoding="utf-8")
    return folder


def description_of(content: Path, name: str) -> Mapping[str, Any]:
    """Return what stands in another edition's file; raises AnswerError where there is none."""
    path = content / EDITIONS / name / EDITION_FILE
    if not path.is_file():
        raise AnswerError(f"There is no edition named {name} to start from.")
    found = read_yaml(path.read_text(encoding="utf-8")).value
    return found if isinstance(found, dict) else {}


def color_on(scheme: Scheme, color: str) -> str:
    """Return a color that can be read on the page of a scheme; raises AnswerError naming the nearest one."""
    color = color.strip().lower()
    if not COLOR.fullmatch(color):
        raise AnswerError('Write the color as # and six digits, like "#1f5c3d".')
    ground = grounds()[scheme].values()
    if (least := weakest(color, ground)) >= TEXT:
        return color
    near = nearest_passing(color, ground)
    offered = f"The nearest shade that can is {near}." if near else "Choose another one."
    raise AnswerError(f"{color} cannot be read on the {scheme} page: contrast {least:.1f}. {offered}")


def dark_shade(light: str) -> str:
    """Return the shade of a light page's color that can be read on the dark page."""
    return nearest_passing(light, grounds()["dark"].values()) or "#ffffff"


def divisions_in(text: str) -> list[dict[str, Any]]:
    """Read divisions as `Minors 9-10 46; Majors 11-12 46`: name, ages, feet from rubber to plate.

    Raises AnswerError with an example.
    """
    divisions = []
    for part in (part for part in text.split(";") if part.strip()):
        found = _DIVISION.fullmatch(part)
        if not found:
            raise AnswerError(
                f'"{part.strip()}" is no division. Write name, ages and feet, like: Minors 9-10 46; Majors 11-12 46'
            )
        feet = float(found["feet"])
        ages = [int(found["low"]), int(found["high"])]
        divisions.append(
            {"name": found["name"], "ages": ages, "mound_ft": int(feet) if feet == int(feet) else feet}
        )
    if not divisions:
        raise AnswerError("Name at least one division, like: Minors 9-10 46")
    return divisions


def _described(answers: Answers, other: Mapping[str, Any]) -> dict[str, Any]:
    reach = "email" if "@" in answers.reach else "phone"
    described: dict[str, Any] = {
        "name": answers.name,
        "short_name": answers.short_name,
        "colors": {"light": color_on("light", answers.light), "dark": color_on("dark", answers.dark)},
        "contacts": [{"role": answers.contact, reach: answers.reach}],
        "rules": answers.rules,
        "rules_review_by": answers.rules_review_by,
        "divisions": divisions_in(answers.divisions),
        "breaking_balls": {
            "from_age": answers.from_age,
            "pages_above_our_ages": answers.pages_above_our_ages,
        },
        "emergency": {"call": answers.call, "where": answers.where},
    }
    if answers.site_url:
        described["site_url"] = answers.site_url
    kept = ("paper", "logo", "based_on", "hides", "replaces")
    return described | {name: other[name] for name in kept if name in other}

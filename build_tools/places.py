"""Where things lie: the content, what is built from it, and the site; and which handbook is wanted."""

from __future__ import annotations

import datetime
import json
import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

PROJECT = Path(__file__).resolve().parent.parent
TEMPLATES = Path(__file__).resolve().parent / "templates"
THEME = Path(__file__).resolve().parent / "theme"

_VARIABLE = "BENDBOOK_PLACES"
"""Environment variable that hands the places on to mkdocs, which runs as a process of its own."""


@dataclass(frozen=True)
class Wanted:
    """Which handbook is wanted.

    edition: the name of a league's edition; None for the handbook itself.
    drafts: true to have entries marked as drafts in it.
    allow_overdue: true to build an edition whose rules were not checked in time; it says so on its pages.
    today: the day the edition's rules must hold; today where it is None.
    """

    edition: str | None = None
    drafts: bool = False
    allow_overdue: bool = False
    today: datetime.date | None = None


THE_HANDBOOK = Wanted()
"""The handbook itself, without drafts."""


@dataclass(frozen=True)
class Places:
    """The folders a build reads and writes, and which handbook it is to be."""

    content: Path = PROJECT / "content"
    build: Path = PROJECT / "build"
    site: Path = PROJECT / "site"
    wanted: Wanted = THE_HANDBOOK

    @property
    def docs(self) -> Path:
        """The Markdown pages that the site builder reads."""
        return self.build / "docs"

    @property
    def locale(self) -> Path:
        """The catalogues of words, one folder a language."""
        return self.content / "locale"

    @property
    def frame(self) -> Path:
        """What the frame of the pages needs to know of the edition."""
        return self.build / "frame.json"

    def environment(self) -> Mapping[str, str]:
        """Return the environment variables that tell another process of these places."""
        told = {
            "content": str(self.content.resolve()),
            "build": str(self.build.resolve()),
            "site": str(self.site.resolve()),
            "edition": self.wanted.edition,
            "drafts": self.wanted.drafts,
            "allow_overdue": self.wanted.allow_overdue,
        }
        return {_VARIABLE: json.dumps(told), "BENDBOOK_DOCS": str(self.docs.resolve())}


def of_edition(name: str | None) -> Places:
    """Return where an edition is built, beside the handbook itself; None for the handbook."""
    if name is None:
        return Places()
    return Places(
        build=PROJECT / "build" / "editions" / name, site=PROJECT / f"site-{name}", wanted=Wanted(name)
    )


def site_url(of_edition: str | None = None) -> str:
    """Return the address the site is built for, with a slash at its end; empty where nobody has said.

    of_edition: the address a league's edition gives. SITE_URL in the environment goes before it.
    """
    told = os.environ.get("SITE_URL") or of_edition or ""
    return f"{told.rstrip('/')}/" if told else ""


def site_address(places: Places) -> str:
    """Return the address of a site whose pages were made; empty where nobody has said."""
    return site_url(json.loads(places.frame.read_text(encoding="utf-8"))["site_url"])


def site_base(places: Places) -> str:
    """Return the path of that address: "/" unless the site lies in a folder of its server."""
    return urlsplit(site_address(places)).path or "/"


def told_places(docs: Path) -> Places:
    """Return the places that the environment tells of; where it tells of none, those around `docs`."""
    text = os.environ.get(_VARIABLE)
    if not text:
        return Places(build=docs.parent)
    told = json.loads(text)
    wanted = Wanted(told["edition"], told["drafts"], told["allow_overdue"])
    return Places(Path(told["content"]), Path(told["build"]), Path(told["site"]), wanted)

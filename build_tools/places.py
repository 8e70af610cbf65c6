"""Where things lie: the content, what is built from it, and the site."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

PROJECT = Path(__file__).resolve().parent.parent
TEMPLATES = Path(__file__).resolve().parent / "templates"
THEME = Path(__file__).resolve().parent / "theme"


@dataclass(frozen=True)
class Places:
    """The folders a build reads and writes."""

    content: Path = PROJECT / "content"
    build: Path = PROJECT / "build"
    site: Path = PROJECT / "site"

    @property
    def docs(self) -> Path:
        """The Markdown pages that the site builder reads."""
        return self.build / "docs"

    @property
    def locale(self) -> Path:
        """The catalogues of words, one folder a language."""
        return self.content / "locale"

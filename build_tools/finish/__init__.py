"""Finishes a built site: the runtime, the calculators, the page's script, the copy kept offline."""

from __future__ import annotations

import datetime
import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from build_tools.dates import edition_date
from build_tools.finish.edition import Edition, put_edition
from build_tools.finish.errors import FinishError
from build_tools.finish.home_screen import put_home_screen
from build_tools.finish.node import BROWSER, PROJECT, bundle
from build_tools.finish.page_changes import let_pages_change
from build_tools.finish.page_script import page_values
from build_tools.finish.runtime import Questions, put_runtime
from build_tools.finish.tidy import tidy
from build_tools.hosting.policy import put_policy

__all__ = ["FinishError", "Report", "edition_date", "finish", "put_page_script"]

ASSETS = Path("assets") / "bendbook"
MOST_SENT = 8_000_000
"""Bytes, compressed, that the whole handbook may take on its way to a reader's device."""


@dataclass(frozen=True)
class Report:
    """What was finished: the edition, and its bytes by part, as kept and as sent."""

    edition: Edition
    kept: Mapping[str, int]
    sent: Mapping[str, int]

    @property
    def text(self) -> str:
        """The report in lines for the one who builds."""
        lines = [f"edition {self.edition.mark} of {self.edition.date}, {len(self.edition.files)} files"]
        for part, size in self.kept.items():
            lines.append(f"  {part:<11} {size / 1e6:6.2f} MB kept, {self.sent[part] / 1e6:5.2f} MB sent")
        total, sent = sum(self.kept.values()), sum(self.sent.values())
        return "\n".join([*lines, f"  {'all':<11} {total / 1e6:6.2f} MB kept, {sent / 1e6:5.2f} MB sent"])


def finish(
    site: Path,
    build: Path,
    *,
    questions: Questions,
    package: Path = PROJECT / "calculators",
    base: str = "/",
    date: datetime.date | None = None,
    most_sent: int = MOST_SENT,
) -> Report:
    """Finish a built site in place, so that its calculators run and it can be kept offline.

    site: the folder that the site builder wrote.
    build: the build folder, with `shelf.json` and any `words.<language>.json`.
    questions: calculator name to the fields of its worked example; each must be answered.
    package: the folder of the calculators.
    base: the path of the address the site was built for; "/handbook/" for https://example.org/handbook/.
    date: the day the edition is of; by default that of the last commit.
    most_sent: compressed bytes that the kept files may take.
    The same inputs give the same files to the byte.
    Raises FinishError, saying what to do, where something is missing or the site is too large to keep.
    """
    if not (site / "index.html").is_file():
        raise FinishError(f"{site} holds no built site. Build the pages first.")
    put_page_script(site / ASSETS, build, questions=questions, package=package, keeps_a_copy=True)
    put_home_screen(site, *_names(build))
    tidy(site)
    let_pages_change(site)
    put_policy(site)
    report = _reported(put_edition(site, date or edition_date(), base))
    sent = sum(report.sent.values())
    if sent > most_sent:
        raise FinishError(
            f"The handbook takes {sent / 1e6:.1f} MB on its way to a phone; it may take {most_sent / 1e6:.1f} MB. "
            "Look in the site for what grew, or give more room with most_sent."
        )
    return report


def put_page_script(
    assets: Path,
    build: Path,
    *,
    questions: Questions,
    package: Path = PROJECT / "calculators",
    keeps_a_copy: bool = False,
) -> None:
    """Put the page's script and the runtime into `assets`, the site's folder assets/bendbook.

    keeps_a_copy: False for an author's preview, where a kept copy would show yesterday's page.
    """
    mark = put_runtime(assets, build, package, questions)
    values = page_values(mark, keeps_a_copy=keeps_a_copy)
    bundle(BROWSER / "page" / "bendbook.js", assets / "bendbook.js", values)


def _names(build: Path) -> tuple[str, ...]:
    """Return the name and the short name of a league's edition; nothing for the handbook itself."""
    frame = build / "frame.json"
    told = json.loads(frame.read_text(encoding="utf-8")) if frame.is_file() else {}
    return (told["name"], told["short_name"]) if told.get("league") else ()


def _reported(edition: Edition) -> Report:
    kept = {"interpreter": 0, "calculators": 0, "search": 0, "theme": 0, "pages": 0}
    sent = dict(kept)
    for file in edition.files:
        part = _part(file.path)
        kept[part] += file.size
        sent[part] += file.size_sent
    return Report(edition, kept, sent)


def _part(path: str) -> str:
    if path.startswith("assets/bendbook/runtime/py") or path.startswith("assets/bendbook/pyscript/"):
        return "interpreter"
    if path.startswith("assets/bendbook/"):
        return "calculators"
    if path.startswith("search/"):
        return "search"
    return "theme" if path.startswith("assets/") else "pages"

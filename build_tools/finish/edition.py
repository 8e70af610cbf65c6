"""One edition of the handbook: what a reader's device keeps of it, and the worker that keeps it."""

from __future__ import annotations

import base64
import datetime
import gzip
import hashlib
import json
import re
from dataclasses import dataclass
from pathlib import Path

from build_tools.finish.node import BROWSER, bundle
from build_tools.hand_outs.kinds import NOT_KEPT_OFFLINE

NOT_KEPT = ("sw.js", "robots.txt", "CNAME", ".nojekyll")
"""Files of the site that a reader's device has no use for."""

FOR_PAPER = re.compile(rf"(.+/)?print/({'|'.join(NOT_KEPT_OFFLINE)})/.*|.+\.pdf")
"""What is only there to be printed and too heavy for every phone."""


@dataclass(frozen=True)
class KeptFile:
    """A file that is kept offline: its address within the site, its SHA-256 and its size in bytes."""

    path: str
    sha256: bytes
    size: int
    size_sent: int

    @property
    def hash(self) -> str:
        """The hash as browsers write it."""
        return base64.b64encode(self.sha256).decode()


@dataclass(frozen=True)
class Edition:
    """An edition: the day it is of, and every file kept of it, in the order of their addresses."""

    date: datetime.date
    files: tuple[KeptFile, ...]

    @property
    def mark(self) -> str:
        """Changes with any kept file."""
        listed = "\n".join(f"{file.path} {file.hash}" for file in self.files)
        return hashlib.sha256(listed.encode()).hexdigest()[:16]


def put_edition(site: Path, date: datetime.date, base: str) -> Edition:
    """Write `edition.json` and the offline worker `sw.js` for everything that now lies in the site.

    base: the path the site was built for, such as "/" or "/handbook/"; its 404 page holds it.
    """
    edition = Edition(date, tuple(_kept_files(site)))
    stamp = {"date": date.isoformat(), "edition": edition.mark, "files": len(edition.files)}
    stamped = site / "edition.json"
    stamped.write_text(json.dumps(stamp, indent=1) + "\n", encoding="utf-8")
    edition = Edition(date, tuple(sorted([*edition.files, _kept(site, stamped)], key=lambda file: file.path)))
    described = {
        "date": date.isoformat(),
        "base": base,
        "files": [[file.path, file.hash, file.size] for file in edition.files],
    }
    bundle(BROWSER / "offline" / "service_worker.js", site / "sw.js", {"EDITION": described})
    return edition


def _kept_files(site: Path) -> list[KeptFile]:
    paths = sorted(path for path in site.rglob("*") if path.is_file())
    return [_kept(site, path) for path in paths if _is_kept(site, path) and path != site / "edition.json"]


def _is_kept(site: Path, path: Path) -> bool:
    return path.name not in NOT_KEPT and not FOR_PAPER.fullmatch(path.relative_to(site).as_posix())


def _kept(site: Path, path: Path) -> KeptFile:
    content = path.read_bytes()
    sent = len(gzip.compress(content, 6, mtime=0))
    address = path.relative_to(site).as_posix()
    return KeptFile(address, hashlib.sha256(content).digest(), len(content), min(sent, len(content)))

"""A copy of the handbook that opens from a memory stick or a disk, without a server and without a network."""

from __future__ import annotations

import datetime
import json
import re
import shutil
import tempfile
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from build_tools.disk.pages import open_from_disk
from build_tools.disk.scripts import put_scripts
from build_tools.finish.errors import FinishError
from build_tools.hand_outs.linking import link_files
from build_tools.hand_outs.pages import FOLDER

MOST_BYTES = 10_000_000
"""How large the packed copy may be."""

LEFT_OUT = ("sw.js", "sitemap.xml", "manifest.webmanifest", "404.html")
"""What only a server's copy needs."""

PDFS = (FOLDER,)
"""Too large for the copy; the browser prints the same pages."""

NOT_FETCHED = ("assets/bendbook/runtime", "assets/bendbook/pyscript")

NO_FOLDER_NAME = re.compile(r'[<>:"/\\|?*\x00-\x1f]+')

READ_ME = """{name}, edition of {date}

1. Copy this folder out of the zip file, to a stick or a disk.
2. Double-click index.html. It opens in your browser.

It needs no connection. Everything you type stays on this computer.
"""


@dataclass(frozen=True)
class DiskCopy:
    """The packed copy: where it is and how large [bytes]."""

    path: Path
    size: int


def put_disk_copy(site: Path, out: Path, date: datetime.date) -> DiskCopy:
    """Pack a finished site as a zip file whose index.html opens by double-click.

    site: as `build` leaves it. out: the zip file. date: the day the edition is of.
    The same site gives the same file to the byte.
    Raises FinishError where there is no site or the copy is too large.
    """
    if not (site / "index.html").is_file():
        raise FinishError(f"{site} holds no built site. Build it first.")
    about = json.loads((site / "manifest.webmanifest").read_text(encoding="utf-8"))
    folder = NO_FOLDER_NAME.sub(" ", about["short_name"]).strip()
    with tempfile.TemporaryDirectory() as work:
        copy = Path(work) / "copy"
        _copy(site, copy)
        link_files(copy)
        put_scripts(site, copy, date.isoformat())
        open_from_disk(copy)
        (copy / "READ ME FIRST.txt").write_text(
            READ_ME.format(name=about["name"], date=date.isoformat()), encoding="utf-8"
        )
        out.parent.mkdir(parents=True, exist_ok=True)
        with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as packed:
            for path, inside in _in_order(copy):
                entry = zipfile.ZipInfo(f"{folder}/{inside}", (1980, 1, 1, 0, 0, 0))
                entry.compress_type, entry.external_attr = zipfile.ZIP_DEFLATED, 0o644 << 16
                packed.writestr(entry, path.read_bytes())
    size = out.stat().st_size
    if size > MOST_BYTES:
        raise FinishError(f"{out} takes {size / 1e6:.1f} MB; it may take {MOST_BYTES / 1e6:.0f} MB.")
    return DiskCopy(out, size)


def _copy(site: Path, copy: Path) -> None:
    dropped = {site / name for name in (*LEFT_OUT, *PDFS, *NOT_FETCHED)}

    def leave_out(folder: str, names: list[str]) -> set[str]:
        return {name for name in names if Path(folder) / name in dropped}

    shutil.copytree(site, copy, ignore=leave_out)


def _in_order(folder: Path) -> Iterator[tuple[Path, str]]:
    for path in sorted(path for path in folder.rglob("*") if path.is_file()):
        yield path, path.relative_to(folder).as_posix()

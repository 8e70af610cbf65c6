"""Writes files only where they changed and takes away what is no longer made, so that `serve` stays quiet."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True)
class Written:
    """How many files were new or changed, how many stayed, how many went."""

    changed: int
    kept: int
    removed: int


def write_files(folder: Path, files: Mapping[str, bytes]) -> Written:
    """Make `folder` hold exactly `files`.

    files: path inside the folder to content.
    """
    changed = 0
    for name, content in files.items():
        path = folder / name
        if not (path.is_file() and path.read_bytes() == content):
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(content)
            changed += 1
    removed = _remove_others(folder, {folder / name for name in files})
    return Written(changed, len(files) - changed, removed)


def as_json(content: object) -> bytes:
    """Return plain data as JSON, in the order it has: the order of some lists, such as the stages, means something."""
    text = json.dumps(content, ensure_ascii=False, separators=(",", ":"))
    return f"{text}\n".encode()


def write_if_changed(path: Path, content: bytes) -> bool:
    """Write one file unless it already holds `content`; returns whether it was written."""
    if path.is_file() and path.read_bytes() == content:
        return False
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content)
    return True


def _remove_others(folder: Path, wanted: set[Path]) -> int:
    removed = 0
    for path in sorted(folder.rglob("*"), reverse=True):
        if path.is_file() and path not in wanted:
            path.unlink()
            removed += 1
        elif path.is_dir() and not any(path.iterdir()):
            path.rmdir()
    return removed

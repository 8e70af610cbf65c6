"""A copy on a disk, opened in Firefox with the network cut."""

from __future__ import annotations

import json
import os
import subprocess
from collections.abc import Iterable
from pathlib import Path
from typing import Any

FIREFOX = os.environ.get("BENDBOOK_FIREFOX", "/usr/bin/firefox")
SCRIPT = Path(__file__).with_name("disk_in_firefox.mjs")


def seen_in_firefox(unpacked: Path, calculators: Iterable[str]) -> dict[str, Any]:
    """Ask each calculator its worked example, search, and return what was seen."""
    done = subprocess.run(
        ["node", str(SCRIPT), FIREFOX, str(unpacked), *calculators],
        capture_output=True,
        text=True,
        timeout=400,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    seen: dict[str, Any] = json.loads(done.stdout)
    return seen

"""The day an edition is of."""

from __future__ import annotations

import datetime
import os
import subprocess

from build_tools.places import PROJECT


def edition_date() -> datetime.date:
    """Return SOURCE_DATE_EPOCH's day where it is set, else that of the last commit, else today."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH")
    if epoch:
        return datetime.datetime.fromtimestamp(int(epoch), datetime.UTC).date()
    asked = ["git", "log", "-1", "--format=%cs"]
    found = subprocess.run(asked, cwd=PROJECT, capture_output=True, text=True, check=False).stdout.strip()
    return datetime.date.fromisoformat(found) if found else datetime.date.today()

"""What the build puts into the page's script."""

from __future__ import annotations

from collections.abc import Mapping

from build_tools.finish.runtime import version_of


def page_values(
    runtime_mark: str, *, keeps_a_copy: bool = False, on_disk_since: str = ""
) -> Mapping[str, str | bool]:
    """Return the values that the page's script is bundled with, by the name it knows them under.

    runtime_mark: changes with any file of the runtime.
    keeps_a_copy: False for an author's preview, where a kept copy would show yesterday's page.
    on_disk_since: the day of the edition, YYYY-MM-DD, in a copy that is opened from a disk.
    """
    return {
        "RUNTIME_MARK": runtime_mark,
        "KEEPS_A_COPY": keeps_a_copy,
        "FROM_DISK": bool(on_disk_since),
        "EDITION_DATE": on_disk_since,
        "PYODIDE_VERSION": version_of("pyodide"),
    }

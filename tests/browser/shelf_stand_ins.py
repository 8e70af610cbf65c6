"""Run first in the wasm Python: helpers of the tests that would need what is compiled for this machine only.

The tests read the handbook's entries through pydantic. Here they get the same entries as a browser does: from
the shelf that the build wrote, which the runner puts at /shelf.json.
"""

from __future__ import annotations

import json
import sys
import types
from pathlib import Path

from calculators.desk.counter import shelf_from
from calculators.workload.library import rule_set

content = json.loads(Path("/shelf.json").read_text(encoding="utf-8"))

demo = {path.name: path.read_text(encoding="utf-8") for path in Path("content/demo").glob("league-*.csv")}

shelf = types.ModuleType("tests.workload.shelf")
vars(shelf).update(
    load_rules=lambda: content["rules"],
    shelf=lambda: shelf_from({"rules": content["rules"], "demo": demo}),
    rules=lambda slug: rule_set(slug, content["rules"]),
)

handbook = types.ModuleType("tests.coaching.handbook")
vars(handbook).update(CONTENT=Path("content").resolve())
vars(handbook).update({kind: lambda kind=kind: content[kind] for kind in content})
vars(handbook).update(stages=lambda: tuple(content["stages"]), stage_entries=lambda: content["stages"])

# Tests of drawn examples are not chosen; tests/conftest.py only asks for their settings.
drawn = types.ModuleType("hypothesis")
drawn.settings = types.SimpleNamespace(register_profile=lambda *_, **__: None, load_profile=lambda _: None)

sys.modules.update({module.__name__: module for module in (shelf, handbook, drawn)})

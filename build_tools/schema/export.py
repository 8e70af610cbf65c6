"""The schema as JSON Schema, for editors: content/.schemas/*.json."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from pydantic import TypeAdapter

from build_tools.editions.league import League
from build_tools.schema.kinds import ENTRY_KINDS, LISTS, RULE_SET
from build_tools.schema.pitcher_file import pitcher_file_schema

FOLDER = ".schemas"


def schemas() -> Mapping[str, dict[str, Any]]:
    """Return file name to JSON Schema: one for each kind of entry, each list, and others."""
    entries = {kind: model.model_json_schema() for kind, model in ENTRY_KINDS.items()}
    lists = {name: TypeAdapter(dict[str, model]).json_schema() for name, model in LISTS.items()}  # type: ignore[valid-type]
    others = {
        "rules": RULE_SET.model_json_schema(),
        "editions": League.model_json_schema(),
        "pitcher-file": pitcher_file_schema(),
    }
    every = {**entries, **lists, **others}
    dialect = {"$schema": "https://json-schema.org/draft/2020-12/schema"}
    return {f"{name}.json": {**dialect, **schema} for name, schema in every.items()}


def schema_text(schema: Mapping[str, Any]) -> str:
    """Return a schema as it stands in its file."""
    return json.dumps(schema, ensure_ascii=False, indent=2, sort_keys=True) + "\n"


def write_schemas(content: Path) -> int:
    """Write the schemas that changed; returns how many."""
    folder = content / FOLDER
    folder.mkdir(exist_ok=True)
    written = 0
    for name, schema in schemas().items():
        path, text = folder / name, schema_text(schema)
        if not path.is_file() or path.read_text(encoding="utf-8") != text:
            path.write_text(text, encoding="utf-8")
            written += 1
    return written

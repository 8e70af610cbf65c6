"""The JSON Schemas that editors use are the schema that the build checks with."""

from __future__ import annotations

import json

from build_tools.places import PROJECT, Places
from build_tools.schema.export import schema_text, schemas, write_schemas
from build_tools.schema.kinds import ENTRY_KINDS, LIST_FILES

OTHERS = ("rules", "editions", "pitcher-file")


def test_the_schemas_for_editors_are_up_to_date() -> None:
    folder = Places().content / ".schemas"
    kept = {path.name: path.read_text(encoding="utf-8") for path in folder.glob("*.json")}
    made = {name: schema_text(schema) for name, schema in schemas().items()}
    assert kept == made, "Run: python -m build_tools schema"


def test_there_is_a_schema_for_every_kind_of_file(tmp_path) -> None:
    assert write_schemas(tmp_path) == len(ENTRY_KINDS) + len(LIST_FILES) + len(OTHERS)
    assert write_schemas(tmp_path) == 0
    assert {path.stem for path in (tmp_path / ".schemas").glob("*")} == {*ENTRY_KINDS, *LIST_FILES, *OTHERS}


def test_a_schema_names_choices_and_forbids_unknown_fields() -> None:
    grip = schemas()["grips.json"]
    assert grip["additionalProperties"] is False
    assert grip["properties"]["family"]["enum"] == ["curve", "slider", "fastball", "changeup"]
    assert "summary" in grip["required"]


def test_editors_are_told_which_schema_goes_with_which_yaml_file() -> None:
    settings = json.loads((PROJECT / ".vscode" / "settings.json").read_text(encoding="utf-8"))
    told = settings["yaml.schemas"]
    assert told == {
        **{f"content/.schemas/{name}.json": f"content/{file}" for name, file in LIST_FILES.items()},
        "content/.schemas/rules.json": ["content/rules/*.yml", "content/editions/*/rules/*.yml"],
        "content/.schemas/editions.json": "content/editions/*/edition.yml",
    }

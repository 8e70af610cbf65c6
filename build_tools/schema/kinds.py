"""Which model checks which folder or file of the content."""

from __future__ import annotations

from types import MappingProxyType

from build_tools.schema.coaching import Cue, Drill, Fault, Plan
from build_tools.schema.common import Entry, Strict
from build_tools.schema.grip import Grip
from build_tools.schema.guide import CalculatorWords, Guide
from build_tools.schema.lists import AgeGate, Profile, Role, Slot, Source, Stage, Term
from build_tools.schema.rules import RuleSet
from build_tools.schema.shape import Shape

ENTRY_KINDS: MappingProxyType[str, type[Entry]] = MappingProxyType(
    {
        "grips": Grip,
        "shapes": Shape,
        "cues": Cue,
        "drills": Drill,
        "faults": Fault,
        "plans": Plan,
        "guide": Guide,
        "calculators": CalculatorWords,
    }
)
"""Folder of content/ to the model of each entry in it."""

LISTS: MappingProxyType[str, type[Strict]] = MappingProxyType(
    {
        "slots": Slot,
        "roles": Role,
        "profiles": Profile,
        "stages": Stage,
        "age_gates": AgeGate,
        "glossary": Term,
        "sources": Source,
    }
)
"""Name of a list to the model of each line in it."""

LIST_FILES: MappingProxyType[str, str] = MappingProxyType(
    {
        "slots": "lists/slots.yml",
        "roles": "lists/roles.yml",
        "profiles": "lists/profiles.yml",
        "stages": "lists/stages.yml",
        "age_gates": "lists/age_gates.yml",
        "glossary": "glossary.yml",
        "sources": "sources.yml",
    }
)
"""Name of a list to its file in content/."""

RULE_SET = RuleSet
"""The model of each file in content/rules/."""

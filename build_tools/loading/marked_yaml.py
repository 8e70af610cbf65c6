"""YAML read with the line of every value, and only the plain part of YAML.

Values are built straight from the parser's events, so no tag can make an object. Anchors and aliases are
read, but only up to MOST_VALUES values in all, because a few lines of them can stand for gigabytes; merge
keys are not. Plain words are read by the core rules of YAML 1.2 [1]_: `off` is a word and `7:30` is not a
number of seconds, as they were in YAML 1.1. Dates stay text; the schema reads them. Text over several
lines becomes one line.

.. [1] YAML 1.2.2, section 10.3, https://yaml.org/spec/1.2.2/#103-core-schema
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import yaml

from build_tools.loading.mistakes import Location

DEEPEST = 20
"""Lists and fields inside one another; the schema needs five."""

MOST_VALUES = 20_000
"""Values in one document, those that an alias stands for counted each time; the longest list has 2,000."""

MOST_DIGITS = 40
"""Signs of a number; the longest so far has 8."""

_Loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)

_NULL = frozenset({"", "~", "null", "Null", "NULL"})
_TRUE = frozenset({"true", "True", "TRUE"})
_FALSE = frozenset({"false", "False", "FALSE"})
_WHOLE = re.compile(r"[-+]?(0|[1-9]\d*)")
_DECIMAL = re.compile(r"[-+]?(\.\d+|(0|[1-9]\d*)(\.\d*)?)([eE][-+]?\d+)?")


@dataclass(frozen=True)
class YamlFault:
    """What is wrong with the YAML itself, before any schema."""

    line: int
    location: Location
    expected: str
    found: str = ""


class YamlError(Exception):
    """The text is not plain YAML. Carries every fault found."""

    def __init__(self, faults: tuple[YamlFault, ...]) -> None:
        self.faults = faults
        super().__init__("; ".join(f"line {fault.line}: {fault.expected}" for fault in faults))


@dataclass(frozen=True)
class MarkedData:
    """A value read from YAML and the line of each part of it."""

    value: object
    lines: Mapping[Location, int]

    def line(self, location: Location) -> int:
        """Return the line of `location`, or of the nearest part around it that was written."""
        for length in range(len(location), -1, -1):
            found = self.lines.get(location[:length])
            if found is not None:
                return found
        return 1


def read_yaml(text: str, first_line: int = 1) -> MarkedData:
    """Read one YAML document.

    text: the document.
    first_line: the line of its file on which it starts, counted from 1.
    Raises YamlError with every duplicate name, or with the first fault in the writing itself.
    """
    builder = _Builder(text, first_line)
    try:
        value = builder.build()
    except yaml.MarkedYAMLError as error:
        raise YamlError((_syntax_fault(error, first_line),)) from error
    except yaml.YAMLError as error:
        expected = "plain text; a character that cannot stand in YAML is in the way"
        raise YamlError((YamlFault(first_line, (), expected),)) from error
    if builder.faults:
        raise YamlError(tuple(builder.faults))
    return MarkedData(value, builder.lines)


class _Builder:
    """Turns the parser's events into values, noting lines on the way."""

    def __init__(self, text: str, first_line: int) -> None:
        self._events: Iterator[yaml.Event] = yaml.parse(text, Loader=_Loader)
        self._first_line = first_line
        self._count = 0
        self._anchored: dict[str, tuple[object, int]] = {}
        self.lines: dict[Location, int] = {}
        self.faults: list[YamlFault] = []

    def build(self) -> object:
        next(self._events)
        event = next(self._events)
        if isinstance(event, yaml.StreamEndEvent):
            self.lines[()] = self._first_line
            return None
        value = self._value(next(self._events), ())
        next(self._events)
        after = next(self._events)
        if not isinstance(after, yaml.StreamEndEvent):
            raise YamlError((YamlFault(self._line(after), (), "one document; a second one starts here"),))
        return value

    def _line(self, event: yaml.Event) -> int:
        mark = event.start_mark
        return (mark.line if mark else 0) + self._first_line

    def _refuse(self, event: yaml.Event, location: Location, expected: str) -> YamlError:
        return YamlError((YamlFault(self._line(event), location, expected),))

    def _value(self, event: yaml.Event, location: Location) -> object:
        self.lines.setdefault(location, self._line(event))
        before = self._count
        anchor = getattr(event, "anchor", None)
        if isinstance(event, yaml.AliasEvent):
            if anchor not in self._anchored:
                raise self._refuse(
                    event, location, f"an anchor &{anchor} further up, finished before its use"
                )
            value, size = self._anchored[anchor]
            self._counted(event, location, size)
            return value
        if getattr(event, "tag", None) not in (None, "!"):
            raise self._refuse(event, location, "a plain value; tags (!) are not read")
        if len(location) > DEEPEST:
            raise self._refuse(event, location[:3], f"at most {DEEPEST} lists or fields inside one another")
        self._counted(event, location, 1)
        value = self._built(event, location)
        if anchor is not None:
            self._anchored[anchor] = (value, self._count - before)
        return value

    def _counted(self, event: yaml.Event, location: Location, size: int) -> None:
        self._count += size
        if self._count > MOST_VALUES:
            expected = f"at most {MOST_VALUES} values, counting what aliases (*) stand for"
            raise self._refuse(event, location[:3], expected)

    def _built(self, event: yaml.Event, location: Location) -> object:
        if isinstance(event, yaml.MappingStartEvent):
            return self._mapping(location)
        if isinstance(event, yaml.SequenceStartEvent):
            return self._sequence(location)
        assert isinstance(event, yaml.ScalarEvent)
        text = str(event.value)
        if "\n" in text:
            return " ".join(text.split())
        if event.style not in (None, ""):
            return text
        if len(text) > MOST_DIGITS and _DECIMAL.fullmatch(text):
            raise self._refuse(event, location, f"a number of at most {MOST_DIGITS} digits")
        return _plain(text)

    def _mapping(self, location: Location) -> dict[str, object]:
        fields: dict[str, object] = {}
        while not isinstance(event := next(self._events), yaml.MappingEndEvent):
            if not isinstance(event, yaml.ScalarEvent) or event.anchor is not None:
                raise self._refuse(event, location, "a plain name before the colon")
            name = str(event.value)
            if name == "<<":
                raise self._refuse(event, location, "fields written out; merging with << is not read")
            inside = (*location, name)
            if name in fields:
                first = self.lines[inside]
                expected = f"each name once; this one already stands on line {first}"
                self.faults.append(YamlFault(self._line(event), inside, expected))
            self.lines.setdefault(inside, self._line(event))
            fields[name] = self._value(next(self._events), inside)
        return fields

    def _sequence(self, location: Location) -> list[object]:
        values: list[object] = []
        while not isinstance(event := next(self._events), yaml.SequenceEndEvent):
            values.append(self._value(event, (*location, len(values))))
        return values


def _plain(text: str) -> object:
    if text in _NULL:
        return None
    if text in _TRUE or text in _FALSE:
        return text in _TRUE
    if _WHOLE.fullmatch(text):
        return int(text)
    if _DECIMAL.fullmatch(text):
        return float(text)
    return text


_ADVICE = (
    ("mapping values are not allowed", "quotes round text that has a colon in it, such as an evidence mark"),
    ("cannot start any token", "quotes round text that starts with a special character"),
    ("expected <block end>", "fields of one set to start in the same column, and quotes to close"),
    ("did not find expected key", "fields of one set to start in the same column, and quotes to close"),
    ("while scanning a quoted scalar", "a closing quote"),
    ("unexpected end of stream", "a closing quote"),
    ("did not find expected ',' or", "a closing bracket, or quotes round text that starts with one"),
    ("expected ',' or", "a closing bracket, or quotes round text that starts with one"),
    ("could not find expected ':'", "a colon after the name of the field"),
    ("tab", "spaces; a tab cannot indent"),
)


def _syntax_fault(error: yaml.MarkedYAMLError, first_line: int) -> YamlFault:
    said = f"{error.context or ''} {error.problem or ''}"
    mark = error.problem_mark or error.context_mark
    line = (int(mark.line) if mark else 0) + first_line
    for part, advice in _ADVICE:
        if part in said:
            return YamlFault(line, (), advice)
    return YamlFault(line, (), f"YAML that can be read ({said.strip()})")

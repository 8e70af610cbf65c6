"""YAML is read plainly: core words of YAML 1.2, lines kept, nothing that can grow or run."""

from __future__ import annotations

import pytest

from build_tools.loading.marked_yaml import YamlError, read_yaml


@pytest.mark.parametrize(
    ("written", "read"),
    [
        # YAML 1.2.2, section 10.3.2, core schema: how plain words resolve.
        ("null", None),
        ("~", None),
        ("", None),
        ("true", True),
        ("False", False),
        ("0", 0),
        ("-19", -19),
        ("+1.5", 1.5),
        ("6.8523015e+5", 685230.15),
        # The same document, section 1.2 and YAML 1.1's known traps: words, not booleans or base-60 numbers.
        ("off", "off"),
        ("no", "no"),
        ("7:30", "7:30"),
        ("0o14", "0o14"),
        ("2026-05-16", "2026-05-16"),
        ("'7'", "7"),
    ],
)
def test_plain_words_resolve_as_in_the_core_schema(written: str, read: object) -> None:
    assert read_yaml(f"value: {written}").value == {"value": read}


def test_every_value_has_the_line_it_stands_on() -> None:
    data = read_yaml("a: 1\nb:\n  c: [x, y]\n  d:\n    - p\n    - q\n", first_line=2)
    assert data.line(("a",)) == 2
    assert data.line(("b", "c", 1)) == 4
    assert data.line(("b", "d", 1)) == 7
    assert data.line(("b", "missing")) == 3


def test_text_over_several_lines_becomes_one_line() -> None:
    data = read_yaml("a: |\n  one\n  two\nb: >-\n  three\n\n  four\nc: five\n  six\n")
    assert data.value == {"a": "one two", "b": "three four", "c": "five six"}


def test_each_name_written_twice_is_told_with_both_lines() -> None:
    with pytest.raises(YamlError) as error:
        read_yaml("a: 1\nb: 2\na: 3\nb: 4\n")
    assert [(fault.line, fault.location) for fault in error.value.faults] == [(3, ("a",)), (4, ("b",))]
    assert "line 1" in error.value.faults[0].expected


def test_a_few_lines_cannot_stand_for_billions_of_values() -> None:
    layers = ["l0: &l0 [x, x, x, x, x, x, x, x, x, x]"]
    layers += [f"l{n}: &l{n} [{', '.join([f'*l{n - 1}'] * 10)}]" for n in range(1, 10)]
    with pytest.raises(YamlError, match="at most 20000 values"):
        read_yaml("\n".join(layers))


def test_an_alias_inside_its_own_anchor_is_refused() -> None:
    with pytest.raises(YamlError, match="finished before its use"):
        read_yaml("a: &a [*a]")


@pytest.mark.parametrize(
    "written",
    [
        "a: !!python/object/apply:os.system [true]",
        "a: !something 1",
        "a: {<<: {b: 1}}",
        "? [a, b]\n: 1",
        "a: 1\n---\nb: 2",
        "a: " + "[" * 40 + "]" * 40,
    ],
)
def test_yaml_that_no_entry_needs_is_refused(written: str) -> None:
    with pytest.raises(YamlError):
        read_yaml(written)


@pytest.mark.parametrize(
    ("written", "line", "advice"),
    [
        ("a: 1\nb: Pull: hard", 2, "quotes round text that has a colon"),
        ("a: 1\nb: @home", 2, "quotes round text that starts with"),
        ('a: 1\nb: "open', 3, "a closing quote"),
        ("a: [1, 2\nb: 3", 2, "a closing bracket"),
        ("a: 1\n\tb: 2", 2, "tab"),
    ],
)
def test_slips_in_the_writing_are_told_with_line_and_mend(written: str, line: int, advice: str) -> None:
    with pytest.raises(YamlError) as error:
        read_yaml(written)
    (fault,) = error.value.faults
    assert advice in fault.expected
    assert abs(fault.line - line) <= 1

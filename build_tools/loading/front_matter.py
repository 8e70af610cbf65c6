"""An entry file cut into its front matter and its body, with the line where each starts."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Cut:
    """The two halves of an entry. Lines count from 1 in the file."""

    front: str
    front_line: int
    body: str
    body_line: int


class NoFrontMatterError(Exception):
    """The file does not start with front matter between two lines of three hyphens."""

    def __init__(self, line: int, expected: str) -> None:
        self.line = line
        self.expected = expected
        super().__init__(f"line {line}: {expected}")


def cut(text: str) -> Cut:
    """Cut an entry in two.

    text: the whole file.
    Raises NoFrontMatterError, which names the line where the mark is missing.
    """
    lines = text.splitlines()
    if not lines or lines[0].rstrip() != "---":
        raise NoFrontMatterError(1, "a first line of three hyphens (---), then the fields")
    for index, line in enumerate(lines[1:], start=1):
        if line.rstrip() == "---":
            front = "\n".join(lines[1:index])
            body = "\n".join(lines[index + 1 :])
            return Cut(front, 2, body, index + 2)
    raise NoFrontMatterError(len(lines), "a line of three hyphens (---) after the last field")

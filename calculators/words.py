"""Words shown to a reader, kept apart from the language they are shown in.

Calculators never format a finished sentence. They return a `Message`: the English text, which is
also its key in the catalogue, and the values to put in it. A renderer speaks it in a language.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Protocol


class Catalogue(Protocol):
    """A gettext catalogue: what `gettext.NullTranslations` and its kin offer."""

    def gettext(self, message: str) -> str:
        """Return `message` in the catalogue's language."""
        ...

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """Return the form of the message that goes with the number `n`."""
        ...


@dataclass(frozen=True)
class Message:
    """A sentence or label to be spoken in any language.

    `text` holds the English with `{names}`; `values` fills them with strings or further messages.
    `plural` and `count` are set where the wording depends on a number.
    """

    text: str
    values: Mapping[str, str | Message] = field(default_factory=dict)
    plural: str | None = None
    count: int | None = None


def say(text: str, /, **values: str | Message) -> Message:
    """Make a message; `text` is the English wording and the catalogue key."""
    return Message(text, values)


def say_count(one: str, many: str, /, count: int, **values: str | Message) -> Message:
    """Make a message whose wording depends on `count`; `{count}` is filled in as well."""
    return Message(one, {"count": str(count), **values}, many, count)


def speak(message: Message, catalogue: Catalogue) -> str:
    """Return the message in the catalogue's language, with its values filled in."""
    if message.plural is not None and message.count is not None:
        text = catalogue.ngettext(message.text, message.plural, message.count)
    else:
        text = catalogue.gettext(message.text)
    if not message.values:
        return text
    spoken = {
        name: speak(value, catalogue) if isinstance(value, Message) else value
        for name, value in message.values.items()
    }
    return text.format_map(spoken)


def number(value: float, decimals: int = 0) -> str:
    """Write a number for a reader: fixed decimals, a true minus sign, never a negative zero."""
    text = f"{value:.{decimals}f}"
    if float(text) == 0.0:
        text = text.lstrip("-")
    return text.replace("-", "\u2212")


def signed(value: float, decimals: int = 0) -> str:
    """Write a number with its sign, also when it is positive."""
    text = number(value, decimals)
    return text if text.startswith("\u2212") or float(text) == 0.0 else "+" + text

"""A counter with one calculator, so that the page and the worker can be tested on their own."""

from __future__ import annotations

import json
import math


class Counter:
    """Answers `fall`: how far a thing falls in a time, from rest and without air."""

    def __init__(self, gravity: float, words: dict[str, str]) -> None:
        self._gravity = gravity
        self._words = words

    def answer(self, name: str, fields_json: str) -> str:
        """Answer as the handbook's counter does."""
        if name != "fall":
            raise LookupError(f"There is no calculator named {name}.")
        fields = json.loads(fields_json)
        problems = [
            {"field": field, "row": None, "column": None, "text": self._say("Enter a number.")}
            for field in ("seconds",)
            if not fields.get(field, "").replace(".", "", 1).isdigit()
        ]
        drops = 0.0
        for row, entry in enumerate(fields.get("drops", [])):
            if not entry["height"].isdigit():
                text = self._say("Enter a number.")
                problems.append({"field": "drops", "row": row, "column": "height", "text": text})
            else:
                drops += float(entry["height"])
        if problems:
            return json.dumps({"html": None, "problems": problems, "stop": False})
        fallen = self._gravity * float(fields["seconds"]) ** 2 / 2 + drops
        text = (
            f"{self._say('It falls')} {fallen:.3f} m ({fields.get('planet', '')}, {fields.get('today', '')})."
        )
        html = f'<div class="answer"><p class="headline">{text}</p><p>{math.sqrt(2 * fallen):.6f}</p></div>'
        return json.dumps({"html": html, "problems": [], "stop": False})

    def _say(self, english: str) -> str:
        return self._words.get(english, english)


def open_counter(shelf_json: str, words_json: str | None = None) -> Counter:
    """Open a counter; the shelf holds the one number it needs."""
    return Counter(json.loads(shelf_json)["gravity"], json.loads(words_json) if words_json else {})

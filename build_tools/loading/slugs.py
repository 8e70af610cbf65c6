"""Names of files made from anybody's words: plain lower-case words joined by hyphens."""

from __future__ import annotations

import re
import unicodedata


def slug_of(words: str) -> str:
    """Return words as a name: "Liga de San José" becomes liga-de-san-jose; empty where no letter is left."""
    apart = unicodedata.normalize("NFKD", words)
    letters = "".join(sign for sign in apart if not unicodedata.combining(sign)).lower()
    return "-".join(re.findall(r"[a-z]+", letters.replace("'", "").replace("\u2019", "")))

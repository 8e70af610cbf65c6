"""The policy that keeps a page from asking anything of another host, and from running what is not its own.

References
----------
[1] W3C, Content Security Policy Level 3, working draft: directives, and hashes of inline scripts.
"""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Iterable
from html import escape
from pathlib import Path

INLINE_SCRIPT = re.compile(r"<script>(.*?)</script>", re.DOTALL)
PLACE = re.compile(r'(<meta charset="?utf-8"?>)(\s*<meta http-equiv="Content-Security-Policy"[^>]*>)?', re.I)
ONLY_AS_HEADER = ("frame-ancestors 'none'",)
"""What a browser heeds in a header alone."""

FROM_DISK = (
    "default-src 'none'; script-src file: data: blob: 'unsafe-inline' 'wasm-unsafe-eval'; worker-src data: blob:; "
    "connect-src data: blob:; style-src file: 'unsafe-inline'; img-src file: data:; font-src file:; "
    "frame-src file: blob: data: about:; base-uri 'none'; form-action 'none'"
)
"""The policy of the copy that is opened from a disk: no address of the network at all."""


def policy_of(pages: Iterable[str]) -> str:
    """Return the policy that allows the handbook's own files and the inline scripts of some pages [1]_.

    pages: their HTML; one for the policy of a page, all for that of a server.
    """
    inline = sorted({script for page in pages for script in INLINE_SCRIPT.findall(page)})
    hashes = " ".join(f"'sha256-{_digest(script)}'" for script in inline)
    return "; ".join(
        (
            "default-src 'none'",
            # Python in the browser is compiled code; a worker of ours begins as a blob.
            f"script-src 'self' blob: 'wasm-unsafe-eval' {hashes}".strip(),
            "worker-src 'self' blob:",
            "connect-src 'self' blob:",
            "style-src 'self'",
            "img-src 'self' data:",
            "font-src 'self'",
            "manifest-src 'self'",
            "base-uri 'none'",
            "form-action 'self'",
        )
    )


def put_policy(site: Path) -> None:
    """Put into each page of a finished site its own policy."""
    for path in sorted(site.rglob("*.html")):
        text = path.read_text(encoding="utf-8")
        path.write_text(with_policy(text, policy_of([text])), encoding="utf-8")


def with_policy(page: str, policy: str) -> str:
    """Return a page with the policy as its second word, in place of one that it had."""
    meta = f'<meta http-equiv="Content-Security-Policy" content="{escape(policy, quote=False)}">'
    return PLACE.sub(lambda found: f"{found[1]}\n{meta}", page, count=1)


def _digest(script: str) -> str:
    return base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()

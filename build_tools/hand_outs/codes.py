"""QR codes that lead from paper to the live page."""

from __future__ import annotations

from html import escape

import segno

QUIET = 4
"""Blank modules around a code, as ISO/IEC 18004 asks."""


def qr_code(address: str, label: str) -> str:
    """Return a QR code as one `<svg>` of black on white.

    address: the whole web address. label: what is read out in place of the picture.
    """
    code = segno.make(address, error="m", micro=False)
    drawn = str(code.svg_inline(border=QUIET, omitsize=True, light="#fff", dark="#000", svgclass="qr"))
    return drawn.replace("<svg ", f'<svg role="img" aria-label="{escape(label)}" ', 1)

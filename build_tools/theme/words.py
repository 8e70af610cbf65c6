"""Words of the page frame. The generator speaks them and hands them to the templates as `extra.words`."""

from __future__ import annotations

from collections.abc import Mapping

from calculators.words import Message, say

FRAME_WORDS: Mapping[str, Message] = {
    "hand_question": say("The pitcher throws"),
    "hand_right": say("Right-handed"),
    "hand_left": say("Left-handed"),
    "keep_on_this_phone": say("Keep it on this phone"),
    "print_this_page": say("Print this page"),
    "large_print": say("Large print"),
    "questions_to": say("Questions:"),
    "not_medical_advice": say(
        "Not medical advice. Limits are ceilings, not targets. Your league's stricter rule wins. "
        "Pain overrides every number."
    ),
    "licence": say("Bendbook. Words and figures CC BY 4.0, code MIT. Nothing you type leaves this device."),
}
"""Names used in the page frame's templates, each with its wording."""

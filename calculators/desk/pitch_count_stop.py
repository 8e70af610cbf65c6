"""What a reader is told when an arm hurts: stop, and see a clinician. It holds no date and no number."""

from __future__ import annotations

from calculators.desk.answers import Answer
from calculators.words import say

STOP = Answer(
    headline=say("Stop. No throwing. See a licensed clinician before the pitcher throws again."),
    more=(
        say("Pain comes before every count and every rest table. This page gives no day to come back."),
        say("Stop throwing of every kind, at practice and at home too."),
        say("Tell a parent or guardian today. Write down what hurt, where, and on which throw."),
        say("Only a clinician can say what it is and when throwing may begin again. A coach cannot."),
        say("Do not use pills or ice to keep a pitcher going."),
        say("Get urgent care if the arm looks out of shape or cannot move, or if the hand is numb or cold."),
        say(
            "Only tired, with no pain at all: no throwing today. "
            "If it hurts, or if it is still tired after rest, see a clinician."
        ),
    ),
    stop=True,
    live=(say("Stop. No more pitches tonight. See a licensed clinician before the pitcher throws again."),),
)
"""The answer to pain, the same under all rules."""

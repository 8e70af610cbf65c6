"""How the fixed choices of the schema are said to a reader."""

from __future__ import annotations

from collections.abc import Mapping

from calculators.words import Message, say

LABELS: Mapping[str, Mapping[str, Message]] = {
    "family": {
        "curve": say("Curves"),
        "slider": say("Sliders"),
        "fastball": say("Fastballs"),
        "changeup": say("Changeups"),
    },
    "base": {
        "four-seam": say("four-seam: across the wide part of the horseshoe"),
        "two-seam": say("two-seam: along the narrow seams"),
        "one-seam": say("one-seam: a single run of seam"),
        "offset": say("offset: between four-seam and two-seam"),
        "leather": say("leather: no seam under the fingers"),
    },
    "base_short": {
        "four-seam": say("four-seam"),
        "two-seam": say("two-seam"),
        "one-seam": say("one-seam"),
        "offset": say("offset"),
        "leather": say("leather"),
    },
    "spike": {
        "none": say("not bent"),
        "pad-press": say("bent, the pad pressed on the ball"),
        "nail-tip": say("bent, the tip or nail on the ball"),
        "first-knuckle": say("bent, the first knuckle on the ball"),
        "high-knuckle": say("bent high, only the tip brushes the ball"),
    },
    "depth": {
        "fingertips": say("out on the fingertips"),
        "first-joint": say("to the first joint"),
        "middle": say("to the middle of the fingers"),
        "choked": say("choked back"),
        "palm": say("in the palm"),
    },
    "surface": {
        "pad": say("the pad"),
        "side": say("the side"),
        "tucked": say("tucked, on its knuckle"),
        "circle": say("in a circle with the index finger"),
    },
    "on": {
        "seam": say("on a seam"),
        "leather": say("on leather"),
        "either": say("on seam or leather"),
    },
    "focus": {
        "analogy": say("A picture"),
        "outside": say("Outside the body: ball or target"),
        "inside": say("On the body"),
        "task": say("A task that does the talking"),
    },
    "confidence": {
        "low": say("low"),
        "medium": say("medium"),
        "high": say("high"),
    },
    "speed_goes": {
        "up": say("faster"),
        "down": say("slower"),
        "same": say("the same"),
        "unknown": say("not known"),
    },
    "goes": {
        "up": say("more"),
        "down": say("less"),
        "same": say("the same"),
        "unknown": say("not known"),
    },
    "turns": {
        "toward six": say("toward 6:00"),
        "toward the mirror": say("toward the fastball's opposite"),
        "toward the side": say("toward the side"),
        "steadier": say("steadier"),
        "same": say("the same"),
        "unknown": say("not known"),
    },
    "by": {
        "eye": say("by eye"),
        "phone": say("with a phone in slow motion"),
        "radar": say("with a radar gun"),
        "tracking": say("with ball tracking"),
        "sheet": say("on the chart"),
        "question": say("ask"),
    },
    "fault_group": {
        "flight": say("How the ball flies"),
        "hand": say("In the hand"),
        "arm and body": say("In the arm and the body"),
        "arsenal": say("Beside the other pitches"),
        "practice": say("In practice and in games"),
    },
    "term_group": {
        "ball and grip": say("Ball and grip"),
        "arm and body": say("Arm and body"),
        "flight": say("Flight"),
        "pitches": say("Pitches"),
        "use": say("Use"),
        "practice": say("Practice"),
        "arm care": say("Arm care"),
    },
    "section": {
        "start": say("Start here"),
        "coach": say("For coaches"),
        "pitcher": say("For pitchers"),
        "arm care": say("Arm care"),
        "evidence": say("Evidence"),
        "about": say("About this handbook"),
    },
    "read": {
        "whole": say("We read all of it."),
        "summary": say("We read its summary."),
        "reported by others": say("We read it as others report it."),
        "from memory": say("From memory; we have not read it again. No sentence here rests on it alone."),
    },
    "status": {
        "read at the body": say("Read at the body that makes the rule."),
        "read in a copy": say("Read in somebody's copy."),
        "from memory": say("From memory. Check it before you rely on it."),
    },
    "rule_kind": {
        "guideline": say("A guideline: advice, unless your league makes it a rule."),
        "rule": say("A rule of this body."),
    },
    "counts": {
        "pitches": say("pitches"),
        "outs": say("outs"),
    },
}
"""Group of choices, then the choice as the schema writes it, to the words."""

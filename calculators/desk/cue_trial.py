"""The cue-trial calculator: plain throws, throws with the cue, plain again, and what they can show."""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import cast

from calculators.coaching.comparison import (
    Difference,
    Measured,
    Trial,
    TrialError,
    chance_needed,
    compare,
    together,
)
from calculators.coaching.next_cue import Logged, logged_from
from calculators.coaching.pitcher_file import PitcherFile
from calculators.coaching.throws import QUANTITIES, Hand, Session
from calculators.coaching.verdict import SLOW_ARM, Aim, Verdict, speed_price, verdict
from calculators.desk.answers import Answer, Calculator, Fact, FieldGroup, HowSure, Outcome, Shelf, Table
from calculators.desk.cue_trial_figures import change_strip
from calculators.desk.cue_trial_words import (
    AIMS,
    DECISIONS,
    STANDINGS,
    common_cases,
    size_words,
    strikes_fell,
)
from calculators.desk.day_fields import pain_field, stop_at_pain
from calculators.desk.fields import Choice, ChoiceField, Field, Problem, TextField, Values
from calculators.desk.files import EXAMPLE
from calculators.desk.loop_fields import pitcher_fields
from calculators.desk.measures import Measures, units_field
from calculators.desk.quantities import (
    IN_A_SENTENCE,
    NAMES,
    between,
    change_words,
    spread_words,
    value_words,
)
from calculators.desk.record_fields import (
    RECORD_NAMES,
    handed_out,
    open_record,
    record_fields,
    record_to_keep,
    with_sessions,
)
from calculators.desk.session_figures import Kind, session_drawings
from calculators.desk.sheet_fields import (
    COLUMN_NAMES,
    DOUBT_NAMES,
    PITCH_NAMES,
    UNIT_NAMES,
    VIEW_NAMES,
    ReadSheet,
    made_up,
    mapping_fields,
    read_typed_sheet,
    sheet_field,
)
from calculators.words import Message, number, say


def fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, pain first."""
    hand, age, *_ = pitcher_fields(shelf)
    return (
        pain_field(),
        sheet_field(),
        ChoiceField(
            "aim",
            say("What the cue is meant to change"),
            tuple(Choice(value, words) for value, (_, words) in AIMS.items()),
            style="select",
            help=say("Chosen before the first throw. Nothing else decides."),
        ),
        TextField(
            "cue",
            say("The cue, as the sheet writes it"),
            longest=60,
            private=False,
            help=say("Blank: the cue with the most throws."),
        ),
        hand,
        age,
        *mapping_fields(),
        *record_fields(),
        units_field(),
    )


@dataclass(frozen=True)
class Tried:
    """One cue and all its trials: the latest is shown, all of them decide."""

    cue: str
    title: str
    aim: Aim
    trials: tuple[Trial, ...]
    found: Verdict

    @property
    def latest(self) -> Trial:
        """The trial of the last day."""
        return max(self.trials, key=lambda trial: trial.date or datetime.date.min)

    @property
    def beyond_luck(self) -> bool:
        """True where the change is one that luck alone would seldom make, as the decision counts it."""
        found = self.found.difference
        return found is not None and found.chance <= chance_needed(max(one.tried for one in self.trials))


def work_out(values: Values, shelf: Shelf) -> Outcome:
    """Return what the trials of a cue can show, or what must be asked or thrown first."""
    record = open_record(values)
    if isinstance(record, Problem):
        return (record,)
    kept = record_to_keep(values, record)
    if isinstance(kept, Problem):
        return (kept,)
    if kept is not None and (example := made_up(values, shelf)):
        return (example,)
    age = cast(float, values["age"])
    if age != int(age):
        return (Problem("age", say("Enter the age in whole years.")),)
    sheet = read_typed_sheet(values, shelf)
    if not isinstance(sheet, ReadSheet):
        return sheet
    if not sheet.sessions:
        if values.get("sheet") == EXAMPLE:
            return Answer(say("There is no made-up session in this edition. Paste one of your own."))
        return (Problem("sheet", say("Paste a sheet with the cue written beside each throw.")),)
    sessions = sheet.sessions
    if record is not None:
        sessions = with_sessions(record, sessions).sessions
    cue = str(values.get("cue") or "") or _most_thrown(sheet.sessions)
    trials = _trials(sessions, cue)
    if isinstance(trials, Message):
        return (Problem("cue" if cue else "sheet", trials),)
    aim, hand = AIMS[str(values["aim"])][0], cast(Hand, values["hand"])
    entry = shelf.cues.get(cue)
    title = cue if entry is None else str(entry["title"])
    price = SLOW_ARM if entry is None else speed_price(entry, trials, hand, shelf.profiles)
    tried = Tried(cue, title, aim, trials, verdict(trials, aim, price))
    measures = Measures("metric" if values["units"] == "metric" else "imperial")
    answer = _answer(tried, hand == "left", measures)
    if kept is None:
        return answer
    return replace(answer, files=(handed_out(_logged(with_sessions(kept, sheet.sessions), tried)),))


def _most_thrown(sessions: Sequence[Session]) -> str:
    counts = Counter(throw.cue for session in sessions for throw in session.throws if throw.cue)
    return counts.most_common(1)[0][0] if counts else ""


def _trials(sessions: Sequence[Session], cue: str) -> tuple[Trial, ...] | Message:
    """Return one trial a day on which the cue was thrown, or why there is none."""
    found: list[Trial] = []
    why = say("No throw of the sheet has this cue. Write it beside each throw it was given for.")
    for session in sessions:
        if not any(throw.cue == cue for throw in session.throws) or not cue:
            continue
        try:
            found.append(compare(session, cue))
        except TrialError as error:
            why = error.message
    return tuple(found) or why


def _answer(tried: Tried, left_handed: bool, measures: Measures) -> Answer:
    trial = tried.latest
    headline = _headline(tried, measures)
    kinds: list[Kind] = [
        (say("with the cue"), trial.cued, "accent"),
        (say("plain"), trial.plain, "strong"),
    ]
    drawings = session_drawings(kinds, None, None, None, left_handed, measures, headline, both_clocks=True)
    found = tried.found.difference
    if found is not None and found.interval is not None:
        strip = change_strip(tried.aim.quantity, found, found.interval, measures, headline)
        drawings = (strip, *drawings)
    return Answer(
        headline=headline,
        more=tuple(_more(tried, measures)),
        drawings=drawings,
        facts=tuple(_facts(tried, measures)),
        tables=tuple(_tables(tried, measures)),
        how_sure=_how_sure(tried, measures),
        cannot_tell=(
            say("Whether it will still be there next week. Ask again without the cue."),
            say("Whether the cue or the wish did it. The pitcher knows which throws had it."),
        ),
        read_on=(f"cues/{tried.cue}",),
        cautions=(
            *trial.cautions,
            *strikes_fell(tried.trials, tried.aim, tried.found),
            say(
                "Any pain in elbow, shoulder or forearm comes before every number here. Stop, and see someone."
            ),
        ),
    )


def _headline(tried: Tried, measures: Measures) -> Message:
    decision = DECISIONS[tried.found.decision]
    found = tried.found.difference
    if found is None:
        return say(
            "{cue}: {decision}. What it is meant to change was not measured.",
            cue=tried.title,
            decision=decision,
        )
    if tried.found.standing == "too few":
        return say("{cue}: {decision}. Too few throws to say anything.", cue=tried.title, decision=decision)
    if not tried.beyond_luck:
        return say(
            "{cue}: {decision}. No change in {what} larger than luck was seen.",
            cue=tried.title,
            decision=decision,
            what=IN_A_SENTENCE[tried.aim.quantity],
        )
    size = size_words(tried.aim.quantity, abs(found.change), measures)
    if tried.aim.quantity == "clock":
        words = say("The clock went {size} later.", size=size)
        if found.change < 0:
            words = say("The clock went {size} earlier.", size=size)
    elif tried.aim.quantity == "up":
        words = say("It dropped {size} less.", size=size)
        if found.change < 0:
            words = say("It dropped {size} more.", size=size)
    else:
        what = NAMES[tried.aim.quantity]
        words = say("{what}: {size} more.", what=what, size=size)
        if found.change < 0:
            words = say("{what}: {size} less.", what=what, size=size)
    return say("{cue}: {decision}. {words}", cue=tried.title, decision=decision, words=words)


def _more(tried: Tried, measures: Measures) -> Iterator[Message]:
    yield tried.found.why
    yield say("That is {standing}.", standing=STANDINGS[tried.found.standing])
    found = tried.found.difference
    if found is None or found.interval is None:
        return
    low, high = (
        change_words(tried.aim.quantity, end, measures) for end in (found.interval.low, found.interval.high)
    )
    if tried.beyond_luck:
        yield say("The change lies between {low} and {high}.", low=low, high=high)
    else:
        yield say("It may be luck. The true change may be from {low} to {high}.", low=low, high=high)
    if found.smallest is not None:
        yield say(
            "So many throws could be counted on to show a change of {smallest} or more. A smaller one may "
            "hide.",
            smallest=size_words(tried.aim.quantity, found.smallest, measures),
        )


def _facts(tried: Tried, measures: Measures) -> Iterator[Fact]:
    trial = tried.latest
    blocks = say(
        "{before} plain, {cued} with the cue, {after} plain",
        before=str(len(trial.before)),
        cued=str(len(trial.cued)),
        after=str(len(trial.after)),
    )
    day = say("{day}", day=trial.date.isoformat()) if trial.date else None
    yield Fact(say("Last trial"), blocks, note=day)
    yield Fact(say("Days tried"), say("{count}", count=str(len(tried.trials))))
    found = tried.found.difference
    if found is not None:
        luck = (
            say("less than 1")
            if found.chance < 0.01
            else say("{percent}", percent=number(100 * found.chance))
        )
        yield Fact(say("How often luck alone does this, in 100"), luck)


def _tables(tried: Tried, measures: Measures) -> Iterator[Table]:
    heads = (say("Quantity"), say("Plain"), say("With cue"), say("Change"), say("Between"), say("Could show"))
    trials, several = tried.trials, len(tried.trials) > 1
    rows = []
    for name in (*QUANTITIES, "strikes"):
        found = together(trials, cast(Measured, name))
        if found is not None:
            rows.append(_row(cast(Measured, name), found, measures))
    caption = say("Plain against cue, all days together") if several else say("Plain against cue")
    yield Table(caption, heads, tuple(rows))
    steadier = tuple(
        (
            NAMES[name],
            spread_words(name, found.plain, measures),
            spread_words(name, found.cued, measures),
            between(name, found.interval, measures, change=True),
        )
        for name, found in tried.latest.steadier.items()
    )
    if steadier:
        yield Table(
            say("Is it steadier? How far throws lie from their own middle, last day"),
            (say("Quantity"), say("Plain"), say("With cue"), say("Change between")),
            steadier,
        )


def _row(name: Measured, found: Difference, measures: Measures) -> tuple[Message, ...]:
    return (
        NAMES[name],
        value_words(name, found.plain, measures),
        value_words(name, found.cued, measures),
        change_words(name, found.change, measures),
        between(name, found.interval, measures, change=True),
        say("none") if found.smallest is None else size_words(name, found.smallest, measures),
    )


def _how_sure(tried: Tried, measures: Measures) -> HowSure:
    causes = [
        say("It goes by order and not by size, so one wild throw does not decide."),
        say("Only the quantity chosen beforehand decides. Of six others, one may well look good by luck."),
        say("The number of days and throws that it takes is common practice."),
    ]
    if tried.latest.tried > 1:
        causes.insert(0, say("Several cues were tried on one day, so more is asked of each."))
    if len(tried.trials) > 1:
        causes.insert(0, say("Days may differ more than this interval shows."))
    return HowSure(
        say("Nine such intervals in ten hold the true change of the day."),
        tuple(causes),
    )


def _logged(record: PitcherFile, tried: Tried) -> PitcherFile:
    """Return the file with every trial of the cue in its log; the verdict is that of all days."""
    dates = {trial.date for trial in tried.trials}
    earlier = tuple(one for one in record.log if one.cue != tried.cue or one.date not in dates)
    new: tuple[Logged, ...] = tuple(logged_from(trial, tried.found.decision) for trial in tried.trials)
    return replace(record, log=(*earlier, *new))


CALCULATOR = Calculator(
    name="cue-trial",
    title=say("Cue trial"),
    fields=fields,
    example={
        "pain": "no",
        "sheet": EXAMPLE,
        "aim": "clock earlier",
        "cue": "",
        "hand": "right",
        "age": "16",
        "side_up": "glove side",
        "drop_sign": "minus",
        "units": "imperial",
    },
    work_out=work_out,
    common_cases=common_cases,
    groups=(
        FieldGroup(say("What the columns are"), COLUMN_NAMES, open=False),
        FieldGroup(say("Whose view, which sign"), VIEW_NAMES, open=False),
        FieldGroup(say("Units in the sheet"), UNIT_NAMES, open=False),
        FieldGroup(say("Names and day in the sheet"), PITCH_NAMES, open=False),
        FieldGroup(say("Numbers that look odd"), DOUBT_NAMES, open=False),
        FieldGroup(say("Keep it"), RECORD_NAMES, open=False),
        FieldGroup(say("How to answer"), ("units",), open=False),
    ),
    stops_first=stop_at_pain,
    tools=("throws", "record"),
)

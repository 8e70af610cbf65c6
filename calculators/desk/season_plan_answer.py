"""Puts a season plan together: the sentence first, then build-up, week, months, and the calendar."""

from __future__ import annotations

import contextlib
import datetime
from dataclasses import dataclass

from calculators.desk.answers import NOTHING, Answer, Fact, HowSure, Table
from calculators.desk.drawing import Circle, Drawing, Label, Mark, Path
from calculators.desk.files import OutFile
from calculators.desk.pitch_count_words import (
    SHORT_MONTHS,
    WEEKDAYS,
    amount,
    plain_day,
    short_day,
)
from calculators.desk.rule_doubts import doubts, how_read
from calculators.desk.season_plan_parts import OPENING, PARTS, Part, share_at
from calculators.words import Catalogue, Message, number, say, say_count, speak
from calculators.workload.ages import NoGroupError, Pitcher, group_for
from calculators.workload.icalendar import CalendarDay, calendar_text
from calculators.workload.rest import ONE_DAY
from calculators.workload.rules import Band, RuleSet
from calculators.workload.season import (
    ONE_WEEK,
    GameDay,
    Season,
    Use,
    longest_off,
    lower_of,
    months_of,
    week_of_games,
)

USES: dict[Use, Message] = {"off": say("off"), "build-up": say("build-up"), "games": say("games")}

CANNOT_TELL = (
    say("How much any one pitcher should throw. These are ceilings and an order, not a program."),
    say("Whether an arm keeps up with the plan. Watch and ask; go slower when it does not."),
    say("Throws you do not see: other teams, lessons, the back yard."),
)

CAUTIONS = (
    say("Stop at pain, and see a licensed clinician. No plan outranks that."),
    say("A way back from pain or injury is planned by a clinician."),
    say("A ceiling is not a target. Your league's own rules come first where they are stricter."),
    say("This is not medical advice."),
)

EDITION_KEPT = say("Another edition of these rules owes more rest. Its lower ceiling is kept.")

CELL, ROW = 60.0, 66.0


@dataclass(frozen=True)
class Plan:
    """A season, the rules and the pitcher. joint: the joint guideline, whose advice on the year is used.

    editions: other editions of the rules, whose ceilings hold where they are lower.
    """

    season: Season
    rules: RuleSet
    pitcher: Pitcher
    joint: RuleSet | None
    editions: tuple[RuleSet, ...] = ()

    @property
    def band(self) -> Band:
        """The pitcher's group under the rules when the season begins."""
        return group_for(self.rules, self.pitcher, self.season.first).band

    @property
    def advice(self) -> Band:
        """The group whose advice on innings and months off counts: the joint guideline's where it has one."""
        if self.joint is None or self.pitcher.age is None:
            return self.band
        try:
            return group_for(self.joint, self.pitcher, self.season.first).band
        except NoGroupError:
            return self.band


def answer_for(plan: Plan) -> Answer:
    """Return the plan as an answer."""
    season = plan.season
    own_week = week_of_games(plan.rules, plan.pitcher, season.weekdays, season.first)
    week = _strictest_week(plan, own_week)
    months = months_of(season)
    share = share_at(plan.pitcher.age)
    return Answer(
        headline=say(
            "Throwing begins on {start}, games on {first}, and {off}.",
            start=plain_day(season.starts),
            first=plain_day(season.first),
            off=say_count(
                "{count} month stays free of throwing",
                "{count} months stay free of throwing",
                sum(use == "off" for _, use in months),
            ),
        ),
        more=(
            *_months_said(plan, months),
            share.why,
            *_no_ceiling(week),
            *((EDITION_KEPT,) if week != own_week else ()),
        ),
        drawings=(_year(months),),
        facts=_facts(plan),
        tables=(_build_up(plan), _week(plan, week), _opening(plan, week)),
        how_sure=HowSure(
            how_read([plan.rules]),
            (
                say("The ceilings come from these rules. The order of the build-up is common practice."),
                say("No study shows that one build-up is better than another for children."),
                say("The ceilings of the first two weeks with games are an estimate, made to be low."),
                *doubts([(plan.rules, plan.band)]),
            ),
        ),
        cannot_tell=CANNOT_TELL,
        cautions=CAUTIONS,
        sources=tuple(
            dict.fromkeys(
                (
                    plan.rules.source,
                    *(() if plan.joint is None else (plan.joint.source,)),
                    "florida-interval-throwing",
                )
            )
        ),
        files=(
            OutFile(
                "season.ics",
                "text/calendar",
                say("The plan as a calendar file"),
                lambda words: _calendar(plan, week, months, words),
            ),
        ),
    )


def _strictest_week(plan: Plan, week: tuple[GameDay, ...]) -> tuple[GameDay, ...]:
    """Return a week with the lower of its ceilings and those of other editions that have a group."""
    for edition in plan.editions:
        with contextlib.suppress(NoGroupError):
            other = week_of_games(edition, plan.pitcher, plan.season.weekdays, plan.season.first)
            week = lower_of(week, other)
    return week


def _months_said(plan: Plan, months: tuple[tuple[datetime.date, Use], ...]) -> tuple[Message, ...]:
    off, running = sum(use == "off" for _, use in months), longest_off(months)
    advice = plan.advice
    if advice.months_off is None:
        return ()
    wanted = say_count(
        "The guideline asks for {count} month off or more in twelve.",
        "The guideline asks for {count} months off or more in twelve.",
        advice.months_off,
    )
    if advice.months_off_running is not None:
        wanted = say(
            "{wanted} {running} or more of them in a row.",
            wanted=wanted,
            running=str(advice.months_off_running),
        )
    if off < advice.months_off or running < (advice.months_off_running or 0):
        return (say("{wanted} This plan leaves too few. Start later or end sooner.", wanted=wanted),)
    return (say("{wanted} This plan leaves them. Keep them free of other teams too.", wanted=wanted),)


def _no_ceiling(week: tuple[GameDay, ...]) -> tuple[Message, ...]:
    """Return why some game days have no ceiling: the rules ask for rest that was not found, or forbid the day."""
    if any(game.ask for game in week):
        return (say("A limit of these rules was not found, so no ceiling can be named. Ask the league."),)
    return tuple(
        say(
            "{day}: a rule forbids pitching on every one of these game days. Give this one to somebody else.",
            day=WEEKDAYS[game.weekday],
        )
        for game in week
        if game.barred
    )


def _facts(plan: Plan) -> tuple[Fact, ...]:
    season, advice = plan.season, plan.advice
    facts = [
        Fact(say("Weeks with games"), say("{weeks}", weeks=str(season.weeks))),
        Fact(say("Rules"), say("{title}", title=plan.rules.title)),
        Fact(say("Group"), say(plan.band.label)),
        Fact(say("Last checked"), plain_day(plan.rules.last_checked)),
    ]
    if advice.year_innings is not None:
        a_week = advice.year_innings / season.weeks
        facts.insert(
            1,
            Fact(
                say("Innings in twelve months, at most"),
                say("{most}", most=str(advice.year_innings)),
                note=say(
                    "The guideline's advice, all teams together. Over this season that is about {week} a week.",
                    week=number(a_week, 1 if a_week < 10 else 0),
                ),
            ),
        )
    return tuple(facts)


def _build_up(plan: Plan) -> Table:
    return Table(
        caption=say("Before the first game. The order is common practice"),
        heads=(say("From"), say("Part"), say("What belongs in it"), say("Breaking balls")),
        rows=tuple(
            (short_day(start), part.title, part.what, _breaking(plan, part))
            for start, part in _starts(plan.season)
        ),
        stacked=True,
    )


def _starts(season: Season) -> list[tuple[datetime.date, Part]]:
    begins = 0.0
    found = []
    for part in PARTS:
        found.append((season.starts + round(begins * season.build_up) * ONE_WEEK, part))
        begins = part.until
    return found


def _breaking(plan: Plan, part: Part) -> Message:
    return part.breaking if share_at(plan.pitcher.age).percent else say("none")


def _week(plan: Plan, week: tuple[GameDay, ...]) -> Table:
    games = {game.weekday: game for game in week}
    return Table(
        caption=say("A week in the season, if the pitcher pitches on every game day"),
        heads=(say("Day"), say("What"), say("Ceiling"), say("Breaking balls in it")),
        rows=tuple(_week_row(plan, weekday, games) for weekday in range(7)),
        stacked=True,
    )


def _week_row(plan: Plan, weekday: int, games: dict[int, GameDay]) -> tuple[Message, ...]:
    day = WEEKDAYS[weekday]
    game = games.get(weekday)
    if game is None:
        if (weekday - 1) % 7 in games:
            return (day, say("the day after: no mound"), NOTHING, say("none"))
        return (day, say("rest or light catch; a bullpen only where no rest is owed"), NOTHING, NOTHING)
    if game.ask:
        return (day, say("game"), say("ask the league"), _most_breaking(plan, None))
    if not game.most and game.most is not None:
        return (day, say("game: not this pitcher, or the next game day is lost"), say("none"), say("none"))
    if game.most is None:
        return (day, say("game"), say("no daily limit in these rules"), _most_breaking(plan, None))
    return (day, say("game"), amount(game.most, plan.rules.counts), _most_breaking(plan, game.most))


def _most_breaking(plan: Plan, most: int | None) -> Message:
    percent = share_at(plan.pitcher.age).percent
    if percent == 0:
        return say("none")
    if most is None or plan.rules.counts == "outs":
        return say("{percent} in 100 pitches", percent=str(percent))
    return say("at most {count}", count=str(most * percent // 100))


def _opening(plan: Plan, week: tuple[GameDay, ...]) -> Table:
    """Return the first weeks with games: a share of the daily limit, so that nobody begins at the ceiling."""
    return Table(
        caption=say("The first weeks with games. The shares are an estimate, made to be low"),
        heads=(say("Week from"), say("Ceiling of a game")),
        rows=(
            *(
                (short_day(plan.season.first + (number - 1) * ONE_WEEK), _opening_words(plan, week, percent))
                for number, percent in OPENING
            ),
            (
                short_day(plan.season.first + len(OPENING) * ONE_WEEK),
                say("as in the week above, and never more than the rules allow that day"),
            ),
        ),
    )


def _opening_words(plan: Plan, week: tuple[GameDay, ...], percent: int) -> Message:
    if any(game.ask for game in week):
        return say("ask the league")
    most = _opening_most(plan, week, percent)
    if most is None:
        return say("{percent} in 100 of the daily limit", percent=str(percent))
    return amount(most, plan.rules.counts)


def _opening_most(plan: Plan, week: tuple[GameDay, ...], percent: int) -> int | None:
    """Return the ceiling of every game of an opening week: no more than the lowest of an ordinary week's."""
    if plan.band.daily_max is None:
        return None
    share = plan.band.daily_max * percent // 100
    return min([share, *(game.most for game in week if game.most)])


def _year(months: tuple[tuple[datetime.date, Use], ...]) -> Drawing:
    marks: list[Mark] = []
    described = say("Month by month.")
    for index, (month, use) in enumerate(months):
        left, top = index % 6 * CELL, index // 6 * ROW
        name = SHORT_MONTHS[month.month - 1]
        described = say("{before} {month}: {use}.", before=described, month=name, use=USES[use])
        edges = ((left, top), (left + CELL, top), (left + CELL, top + ROW), (left, top + ROW))
        marks += [
            Path(edges, "faint", closed=True, fill="paper"),
            Label((left + CELL / 2, top + 17), name, "middle", bold=True),
            Label((left + CELL / 2, top + 58), USES[use], "middle", size=0.92),
        ]
        middle = (left + CELL / 2, top + 34)
        if use == "games":
            marks.append(Circle(middle, 8, "strong", fill="strong"))
        elif use == "build-up":
            marks.append(Circle(middle, 8, "strong", width=2.5))
        else:
            marks.append(Path(((middle[0] - 9, middle[1]), (middle[0] + 9, middle[1])), "strong", width=2.5))
    return Drawing(
        title=say("Twelve months. A dash: off. A ring: build-up. A full disc: games."),
        description=described,
        width=6 * CELL,
        height=2 * ROW,
        marks=tuple(marks),
        text_size=13.0,
    )


def _calendar(
    plan: Plan, week: tuple[GameDay, ...], months: tuple[tuple[datetime.date, Use], ...], catalogue: Catalogue
) -> str:
    """Return build-up, game days with their ceilings, and the first day off as a calendar file."""
    season = plan.season
    note = speak(
        say("A ceiling, not a target. Pain overrides every count. Ask the pitcher first."), catalogue
    )
    days = [
        CalendarDay(start, speak(part.title, catalogue), speak(part.what, catalogue), about="build-up")
        for start, part in _starts(season)
    ]
    for day in season.game_days():
        words = say("Game day")
        most = _most_on(plan, day, week)
        if most is not None:
            words = say("Game day: at most {most}", most=amount(most, plan.rules.counts))
        days.append(CalendarDay(day, speak(words, catalogue), note, about="game"))
    days.append(
        CalendarDay(season.last + ONE_DAY, speak(say("Time off begins"), catalogue), note, about="off")
    )
    written = datetime.datetime.combine(season.starts, datetime.time(), datetime.UTC)
    return calendar_text(days, written)


def _most_on(plan: Plan, day: datetime.date, week: tuple[GameDay, ...]) -> int | None:
    """Return the ceiling of one game day: the week's, or the lower one of the first weeks."""
    ceiling = {game.weekday: game.most for game in week}.get(day.weekday())
    percent = dict(OPENING).get((day - plan.season.first).days // 7 + 1)
    if percent is None or any(game.ask for game in week):
        return ceiling
    opening = _opening_most(plan, week, percent)
    return opening if ceiling is None or opening is None else min(ceiling, opening)

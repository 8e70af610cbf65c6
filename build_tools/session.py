"""Sessions in bulk as a command: the page's own calculator, over many files. Nothing is sent anywhere."""

from __future__ import annotations

import csv
import gettext
import io
from collections.abc import Iterator, Sequence
from html import escape
from pathlib import Path

import click

from build_tools.generate.calculator_pages import calculator_names
from build_tools.generate.shelf import shelves
from build_tools.league_board import STYLE
from build_tools.loading.library import load
from build_tools.places import Places
from calculators.coaching.throws import QUANTITIES
from calculators.desk.answers import Answer, Shelf
from calculators.desk.counter import shelf_from
from calculators.desk.fields import Problem, Raw, Values, read_fields
from calculators.desk.loop_fields import Aiming, read_aiming
from calculators.desk.movement_tables import clock_words
from calculators.desk.read_session import CALCULATOR, SessionRead, session_read
from calculators.desk.render_html import answer_html
from calculators.desk.render_text import answer_text
from calculators.desk.sheet_fields import ReadSheet, read_typed_sheet
from calculators.words import speak

ENGLISH = gettext.NullTranslations()

HEADINGS = (
    "file",
    "date",
    "breaking balls",
    "kind",
    "fastball mph",
    "fastball lost mph",
    "strikes",
    "called",
    "inside",
    "judged",
    *(f"{name} {part}" for name in QUANTITIES for part in ("middle", "spread", "measured")),
)


class SessionFilesError(click.ClickException):
    """A file cannot be read as it stands; says in which file, and what to answer or mend."""


@click.command()
@click.argument(
    "files", nargs=-1, required=True, type=click.Path(exists=True, dir_okay=False, path_type=Path)
)
@click.option("--hand", type=click.Choice(("right", "left")), required=True)
@click.option("--age", type=int, required=True)
@click.option("--fastball-clock", metavar="H:MM", help="As the pitcher sees it, like 1:30.")
@click.option("--slot", metavar="SLUG", help="The arm slot, where nobody measured the fastball clock.")
@click.option("--role", metavar="SLUG", help="What the ball is for; without it there is no target.")
@click.option("--mound", default="60.5", show_default=True, metavar="FEET")
@click.option(
    "--set",
    "more",
    multiple=True,
    metavar="FIELD=VALUE",
    help="Any other field of the page, such as columns_right=yes, view=pitcher or speed_unit=km/h.",
)
@click.option("--html", "html_file", type=click.Path(dir_okay=False, path_type=Path))
@click.option("--csv", "csv_file", type=click.Path(dir_okay=False, path_type=Path))
def session(
    files: tuple[Path, ...],
    hand: str,
    age: int,
    fastball_clock: str | None,
    slot: str | None,
    role: str | None,
    mound: str,
    more: tuple[str, ...],
    html_file: Path | None,
    csv_file: Path | None,
) -> None:
    """Read every session in FILES: one answer each, and one row each in --csv."""
    typed = {
        "hand": hand,
        "age": str(age),
        "fastball_clock": fastball_clock or "",
        "slot": slot or "",
        "role": role or "",
        "mound": mound,
        "units": "imperial",
        **_pairs(more),
    }
    shelf = shelf_from(shelves(load(Places().content, calculator_names())))
    found = [one for file in files for one in _sessions(file, typed, shelf)]
    for _, _, outcome in found:
        click.echo(answer_text(outcome, shelf, ENGLISH) + "\n")
    if html_file is not None:
        html_file.write_text(_page(found, shelf), encoding="utf-8")
        click.echo(f"{html_file} written.")
    if csv_file is not None:
        csv_file.write_text(_table(found), encoding="utf-8", newline="")
        click.echo(f"{csv_file} written.")


Found = tuple[Path, SessionRead, Answer]


def _pairs(more: Sequence[str]) -> dict[str, str]:
    pairs = [text.partition("=") for text in more]
    wrong = [name for name, sign, _ in pairs if not sign]
    if wrong:
        raise SessionFilesError(f"Write --set as FIELD=VALUE; found {wrong[0]}.")
    known = {field.name for field in CALCULATOR.fields(Shelf())}
    strange = [name for name, _, _ in pairs if name not in known]
    if strange:
        raise SessionFilesError(f"The page has no field {strange[0]}; it has {', '.join(sorted(known))}.")
    return {name: value for name, _, value in pairs}


def _sessions(file: Path, typed: Raw, shelf: Shelf) -> Iterator[Found]:
    """Yield each session of a file with its answer. Raises SessionFilesError."""
    try:
        text = file.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise SessionFilesError(f"{file}: save the file as UTF-8.") from None
    raw = {**typed, "sheet": text}
    values = _values(file, raw, shelf)
    sheet = read_typed_sheet(values, shelf)
    if not isinstance(sheet, ReadSheet):
        raise _refused(file, sheet)
    aiming = read_aiming(values, shelf)
    if not isinstance(aiming, Aiming):
        raise _refused(file, aiming)
    for one in sheet.sessions:
        day = _values(file, {**raw, "day": one.date.isoformat() if one.date else ""}, shelf)
        outcome = CALCULATOR.work_out(day, shelf)
        if not isinstance(outcome, Answer):
            raise _refused(file, outcome)
        yield file, session_read(one, aiming, values, shelf), outcome


def _values(file: Path, raw: Raw, shelf: Shelf) -> Values:
    values, problems = read_fields(CALCULATOR.fields(shelf), raw)
    if problems:
        raise _refused(file, problems)
    return values


def _refused(file: Path, problems: Sequence[Problem]) -> SessionFilesError:
    told = "\n".join(f"  {one.field}: {speak(one.message, ENGLISH)}" for one in problems)
    return SessionFilesError(f"{file} is not read yet.\n{told}\nAnswer with --set FIELD=VALUE, or mend it.")


def _page(found: Sequence[Found], shelf: Shelf) -> str:
    parts = [
        f"<h2>{escape(file.name)} {one.session.date or ''}</h2>{answer_html(said, shelf, ENGLISH, f's{index}')}"
        for index, (file, one, said) in enumerate(found)
    ]
    return (
        '<!doctype html><html lang="en"><head><meta charset="utf-8">'
        f"<title>Sessions</title><style>{STYLE}{DRAWN}</style></head><body>{''.join(parts)}</body></html>\n"
    )


DRAWN = """
svg.drawing { max-width: 34rem; display: block }
svg.drawing .mark { stroke: currentColor } svg.drawing .words { fill: currentColor }
svg.drawing .ink-accent { stroke: #a4161a } svg.drawing .words.ink-accent { fill: #a4161a; stroke: none }
svg.drawing .fill-accent { fill: #a4161a } svg.drawing .fill-strong { fill: currentColor }
svg.drawing .fill-shade { fill: #8882 } svg.drawing .fill-paper { fill: Canvas }
svg.drawing .dashed, svg.drawing .ink-ghost { stroke-dasharray: 5 5 }
"""


def _table(found: Sequence[Found]) -> str:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(HEADINGS)
    writer.writerows(_row(file, one) for file, one, _ in found)
    return out.getvalue()


def _row(file: Path, one: SessionRead) -> list[str]:
    """Return one session as cells; what is not known stays blank."""
    reading, inside, drift = one.reading, one.inside, one.drift
    cells = [
        file.name,
        str(one.session.date or ""),
        str(len(one.balls)),
        one.recognition.profile or "",
        "" if one.fastball is None else f"{one.fastball:.1f}",
        "" if drift is None else f"{drift.lost:.1f}",
        str(reading.strikes) if reading.called else "",
        str(reading.called),
        "" if inside is None else str(inside.inside),
        "" if inside is None else str(inside.judged),
    ]
    for name in QUANTITIES:
        summary = reading.summaries.get(name)
        if summary is None:
            cells += ["", "", "0"]
            continue
        middle = summary.typical.value
        cells.append(clock_words(middle) if name == "clock" else f"{middle:.1f}")
        cells.append("" if summary.deviation is None else f"{summary.deviation:.2f}")
        cells.append(str(summary.count))
    return cells

"""The session command: the page's analysis over files, and how it asks what the page would ask."""

from __future__ import annotations

import csv
from pathlib import Path

from click.testing import CliRunner, Result

from build_tools.command_line import commands
from build_tools.places import Places

SEASON = Places().content / "demo" / "season.csv"
PITCHER = ("--hand", "right", "--age", "16", "--fastball-clock", "1:30", "--role", "steal-a-strike")


def run(*arguments: str) -> Result:
    return CliRunner().invoke(commands, ["session", *arguments])


def test_every_session_gets_an_answer_a_row_and_a_page(tmp_path: Path) -> None:
    table, page = tmp_path / "out.csv", tmp_path / "out.html"
    done = run(str(SEASON), *PITCHER, "--csv", str(table), "--html", str(page))
    assert done.exit_code == 0, done.output
    rows = list(csv.DictReader(table.open(encoding="utf-8")))
    assert [row["date"] for row in rows] == ["2026-03-03", "2026-03-10", "2026-03-17"]
    assert next(row["kind"] for row in rows) == "slurve"
    assert "None of 9 throws was inside the target yet." in done.output
    assert page.read_text(encoding="utf-8").count("<svg") == 9


def test_what_the_page_would_ask_is_asked_with_the_file_and_the_field(tmp_path: Path) -> None:
    metric = tmp_path / "metric.csv"
    metric.write_text("pitch,speed mph\n" + "fastball,122\n" * 6 + "breaking ball,98\n" * 6, encoding="utf-8")
    asked = run(str(metric), *PITCHER)
    assert asked.exit_code == 1
    assert "metric.csv is not read yet." in asked.output
    assert "mph is very fast. Are the speeds in km/h?" in asked.output
    assert run(str(metric), *PITCHER, "--set", "speed_unit=km/h").exit_code == 0


def test_a_field_that_the_page_does_not_have_is_refused() -> None:
    assert "The page has no field views" in run(str(SEASON), *PITCHER, "--set", "views=pitcher").output

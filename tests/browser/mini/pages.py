"""A handbook of four pages, built as the real one is, to test what runs beside the page."""

from __future__ import annotations

import datetime
import gettext
import json
from pathlib import Path

from build_tools.browser.words import words_script
from build_tools.finish import Report, finish, put_page_script

HERE = Path(__file__).parent
QUESTIONS = {"fall": {"seconds": "2", "planet": "earth", "drops": []}}
EXAMPLE = '<div class="answer"><p class="headline">It falls 4.905 m (earth, 2026-05-16).</p></div>'
STYLE = """
[hidden] { display: none !important }
.no-js [data-needs-script] { display: none }
.only-heard { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%) }
.term-note { display: block; border: 1px solid; background: #fff }
html:not([data-hand=left]) .for-left, html[data-hand=left] .for-right { display: none }
"""


def make_site(
    site: Path, build: Path, *, edition: str = "first", date: str = "2026-05-16", gravity: float = 9.81
) -> Report:
    """Write and finish a site; `edition` is a word on its pages, `date` the day of the edition."""
    build.mkdir(parents=True, exist_ok=True)
    (build / "shelf.json").write_text(json.dumps({"gravity": gravity}), encoding="utf-8")
    (build / "words.es.json").write_text('{"It falls": "Cae"}', encoding="utf-8")
    _write(site / "index.html", "", f'<h1>Mini</h1><p id="edition">{edition}</p><p data-kept></p>{KEEP}')
    _write(site / "calculators" / "fall" / "index.html", "../../", f"<h1>Fall</h1><p>{edition}</p>{FALL}")
    _write(site / "guide" / "terms" / "index.html", "../../", f"<h1>Terms</h1>{TERMS}")
    _write(site / "404.html", "/", "<h1>Not in this handbook</h1>")
    (site / "bendbook.css").write_text(STYLE, encoding="utf-8")
    (site / "sitemap.xml").write_text("<urlset/>", encoding="utf-8")
    return finish(
        site,
        build,
        questions=QUESTIONS,
        package=HERE / "calculators",
        date=datetime.date.fromisoformat(date),
    )


def make_preview(site: Path, build: Path) -> None:
    """Put the script that an author's preview runs into a finished site."""
    put_page_script(site / "assets" / "bendbook", build, questions=QUESTIONS, package=HERE / "calculators")


def _write(path: Path, root: str, body: str) -> None:
    words = words_script("en", gettext.NullTranslations())
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(
        f"""<!doctype html>
<html lang="en" class="no-js"><head><meta charset="utf-8"><title>Mini handbook</title>
<meta name="viewport" content="width=device-width">
<link rel="icon" href="{root}assets/bendbook/icons/icon.svg">
<link rel="manifest" href="{root}manifest.webmanifest">
<link rel="stylesheet" href="{root}bendbook.css">
<script>{words}</script>
<script type="module" src="{root}assets/bendbook/bendbook.js"></script></head>
<body><nav><a id="home" href="{root or "./"}">Home</a>
<a id="to-fall" href="{root}calculators/fall/">Fall</a>
<a id="to-terms" href="{root}guide/terms/">Terms</a></nav><main>{body}</main></body></html>
""",
        encoding="utf-8",
    )


KEEP = '<button type="button" data-keep data-needs-script>Keep it on this phone</button>'
TERMS = """
<p>A <a class="term" id="term" href="../../#seam" data-meaning="The stitched line of a ball.">seam</a> holds it.
<a id="after" href="../../">Home</a></p>
<div data-hand-choice data-needs-script role="group" aria-label="The pitcher throws">
<button type="button" data-hand="right" aria-pressed="true">Right-handed</button>
<button type="button" data-hand="left" aria-pressed="false">Left-handed</button></div>
<p class="for-right">glove side is left</p><p class="for-left">glove side is right</p>
"""


def _row(number: str, height: str = "") -> str:
    ident = f"fall-drops-{number}-height"
    return f"""<div data-row="{number}"><div class="field" data-field="height">
<label for="{ident}">Height</label>
<input id="{ident}" name="drops.{number}.height" value="{height}" aria-describedby="{ident}-problem">
<p class="problem" id="{ident}-problem" hidden></p></div>
<button type="button" data-remove-row data-needs-script aria-label="Take this row away">x</button></div>"""


FALL = f"""<div data-desk>
<form data-calculator="fall" id="calculator-fall" novalidate>
<div class="field" data-field="seconds"><label for="fall-seconds">Seconds</label>
<input id="fall-seconds" name="seconds" value="1" inputmode="decimal" aria-describedby="fall-seconds-problem">
<p class="problem" id="fall-seconds-problem" hidden></p></div>
<fieldset data-field="planet"><legend>Planet</legend>
<label><input type="radio" name="planet" id="fall-planet-earth" value="earth" checked> Earth</label>
<label><input type="radio" name="planet" id="fall-planet-moon" value="moon"> Moon</label>
<p class="problem" id="fall-planet-problem" hidden></p></fieldset>
<div class="field" data-field="today"><label for="fall-today">Today</label>
<input type="date" id="fall-today" name="today" value="2026-05-16"></div>
<div class="field" data-field="nickname"><label for="fall-nickname">Nickname</label>
<input id="fall-nickname" name="nickname" data-private></div>
<fieldset data-field="drops" data-rows="drops"><legend>Drops</legend>
<template data-row-template>{_row("ROW")}</template>
<button type="button" data-add-row data-needs-script>Add a drop</button></fieldset>
<button type="submit" data-needs-script>Work it out</button></form>
<div data-status role="status" aria-live="polite"></div>
<p data-example-note>A worked example.</p>
<div data-answer>{EXAMPLE}</div>
<button type="button" data-copy-link data-needs-script>Copy a link</button></div>
"""

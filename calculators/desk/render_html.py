"""Turns a calculator's form and its answer into HTML, at build time and in the browser alike."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from html import escape

from calculators.desk.answers import NOTHING, Answer, Calculator, Fact, FieldGroup, HowSure, Shelf, Table
from calculators.desk.fields import (
    Choice,
    ChoiceField,
    ClockField,
    DateField,
    Field,
    NumberField,
    Raw,
    Row,
    RowsField,
    SimpleField,
    TextAreaField,
    TextField,
)
from calculators.desk.files import EXAMPLE, FileField
from calculators.desk.render_svg import svg
from calculators.words import Catalogue, Message, say, signed, speak

HANDBOOK = "../../"
SOURCES_PAGE = f"{HANDBOOK}sources/"
WARNING_SIGNS_PAGE = f"{HANDBOOK}guide/warning-signs/"

PHONE_COLUMNS = 4
"""More columns than this do not fit a phone; the style sheet then stacks the cells of a row."""


def answer_html(answer: Answer, shelf: Shelf, catalogue: Catalogue, ident: str) -> str:
    """Return the answer as an HTML fragment: the sentence first, then figures, numbers and doubts.

    ident: a name unique on the page, for the ids of the drawings.
    """
    write = _Writer(catalogue)
    kind = "answer stop" if answer.stop else "answer"
    parts = [f'<div class="{kind}"><p class="headline">{write(answer.headline)}</p>']
    parts += [f"<p>{write(sentence)}</p>" for sentence in answer.more]
    if answer.files:
        parts.append('<ul class="downloads" data-files hidden></ul>')
    if not answer.stop:
        parts += [
            f"<figure>{svg(drawing, catalogue, f'{ident}-{index}')}"
            f"<figcaption>{write(drawing.title)}</figcaption></figure>"
            for index, drawing in enumerate(answer.drawings)
        ]
        parts.append(_facts(answer.facts, write))
        parts.append(_read_on(answer.read_on, shelf, write))
        parts += [table_html(table, catalogue) for table in answer.tables]
        parts.append(_how_sure(answer.how_sure, write))
        parts.append(_points("cannot-tell", say("What this cannot tell you"), answer.cannot_tell, write))
    else:
        parts.append(
            f'<p><a href="{WARNING_SIGNS_PAGE}">{write(say("Warning signs, and what to do"))}</a></p>'
        )
    parts.append(_points("cautions", say("Keep in mind"), answer.cautions, write))
    parts.append(_sources(answer.sources, shelf, write))
    return "".join(parts) + "</div>"


def table_html(table: Table, catalogue: Catalogue) -> str:
    """Return a table with its caption; the first cell of a row heads the row."""
    write = _Writer(catalogue)
    heads = "".join(f'<th scope="col">{write(head)}</th>' for head in table.heads)
    rows = "".join(
        f'<tr><th scope="row">{write(row[0])}</th>'
        + "".join(
            f'<td data-head="{write(head)}"{" data-none" if cell == NOTHING else ""}>{write(cell)}</td>'
            for head, cell in zip(table.heads[1:], row[1:], strict=True)
        )
        + "</tr>"
        for row in table.rows
    )
    stacked = table.stacked or len(table.heads) > PHONE_COLUMNS
    frame = "table-frame wide" if stacked else "table-frame"
    framed = (
        f'<div class="{frame}" tabindex="0" role="region" aria-label="{write(table.caption)}">'
        f"<table><caption>{write(table.caption)}</caption>"
        f"<thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table></div>"
    )
    if not table.sheet:
        return framed
    button = write(say("Print this sheet"))
    return (
        f'<section class="sheet">{framed}<p data-needs-script>'
        f'<button type="button" class="button quiet" data-print>{button}</button></p></section>'
    )


def form_html(calculator: Calculator, shelf: Shelf, catalogue: Catalogue) -> str:
    """Return the calculator's form, filled with its worked example, without the answer."""
    form = _FormWriter(calculator.name, calculator.example, shelf, _Writer(catalogue))
    fields = {field.name: field for field in calculator.fields(shelf)}
    grouped = {name for group in calculator.groups for name in group.names}
    loose = "".join(form.field(field) for name, field in fields.items() if name not in grouped)
    groups = "".join(form.group(group, [fields[name] for name in group.names]) for group in calculator.groups)
    button = _Writer(catalogue)(say("Work it out"))
    return (
        f'<form class="calculator-form" id="calculator-{calculator.name}"'
        f' data-calculator="{calculator.name}" autocomplete="off" novalidate>'
        f'{loose}{groups}<p class="form-end" data-needs-script>'
        f'<button type="submit" class="button">{button}</button></p></form>'
    )


class _Writer:
    """Speaks messages in one language, escaped for HTML."""

    def __init__(self, catalogue: Catalogue) -> None:
        self._catalogue = catalogue

    def __call__(self, message: Message) -> str:
        return escape(speak(message, self._catalogue))


def _facts(facts: tuple[Fact, ...], write: _Writer) -> str:
    if not facts:
        return ""
    items = "".join(
        f'<div class="fact"><dt>{write(fact.label)}</dt><dd><span class="value">{_value(fact, write)}</span>'
        + (f' <span class="give-or-take">{write(fact.give_or_take)}</span>' if fact.give_or_take else "")
        + (f'<span class="note">{write(fact.note)}</span>' if fact.note else "")
        + "</dd></div>"
        for fact in facts
    )
    return f'<dl class="facts">{items}</dl>'


def _value(fact: Fact, write: _Writer) -> str:
    value = write(fact.value)
    return f'<a href="{escape(fact.address)}" rel="noreferrer">{value}</a>' if fact.address else value


def _how_sure(how_sure: HowSure | None, write: _Writer) -> str:
    if how_sure is None:
        return ""
    causes = "".join(f"<li>{write(cause)}</li>" for cause in how_sure.causes)
    listed = f"<ul>{causes}</ul>" if causes else ""
    heading = write(say("How sure"))
    return f'<section class="how-sure"><h3>{heading}</h3><p>{write(how_sure.sentence)}</p>{listed}</section>'


def _points(kind: str, heading: Message, points: Iterable[Message], write: _Writer) -> str:
    items = "".join(f"<li>{write(point)}</li>" for point in points)
    return f'<section class="{kind}"><h3>{write(heading)}</h3><ul>{items}</ul></section>' if items else ""


def _read_on(addresses: Iterable[str], shelf: Shelf, write: _Writer) -> str:
    links = [
        f'<a href="{HANDBOOK}{escape(address)}/">{escape(title)}</a>'
        for address in addresses
        if (title := shelf.title(address))
    ]
    return f'<p class="read-on">{write(say("Read on:"))} {", ".join(links)}</p>' if links else ""


def _sources(ids: tuple[str, ...], shelf: Shelf, write: _Writer) -> str:
    if not ids:
        return ""
    links = ", ".join(
        f'<a href="{SOURCES_PAGE}#{escape(ident)}">{escape(shelf.sources.get(ident, ident))}</a>'
        for ident in ids
    )
    return f'<p class="sources">{write(say("Sources:"))} {links}</p>'


class _FormWriter:
    """Writes the fields of one form; ids are the form's name and the field's name."""

    def __init__(self, form: str, example: Raw, shelf: Shelf, write: _Writer) -> None:
        self._form = form
        self._example = example
        self._shelf = shelf
        self._write = write

    def group(self, group: FieldGroup, fields: list[Field]) -> str:
        inside = "".join(self.field(field) for field in fields)
        shown = " open" if group.open else ""
        label = self._write(group.label)
        if group.paired:
            inside = f'<div class="paired">{inside}</div>'
        return f'<details class="field-group"{shown}><summary>{label}</summary>{inside}</details>'

    def field(self, field: Field) -> str:
        entered = self._example.get(field.name, "")
        if isinstance(field, RowsField):
            return self._rows(field, () if isinstance(entered, str) else entered)
        if isinstance(field, FileField):
            return self._file(field, f"{self._form}-{field.name}", str(entered))
        if isinstance(field, TextAreaField):
            return self._text_area(field, f"{self._form}-{field.name}", str(entered))
        return self._simple(field, f"{self._form}-{field.name}", field.name, str(entered))

    def _simple(self, field: SimpleField, ident: str, name: str, value: str) -> str:
        if isinstance(field, ChoiceField) and field.style == "radio":
            return self._radio(field, ident, name, value)
        unit = (
            f' <span class="unit">{self._write(field.unit_words)}</span>'
            if isinstance(field, NumberField)
            else ""
        )
        optional = f' <span class="optional">{self._write(say("if known"))}</span>' if field.optional else ""
        described = f"{ident}-help {ident}-problem" if field.help else f"{ident}-problem"
        return (
            f'<div class="field" data-field="{field.name}">'
            f'<label for="{ident}">{self._write(field.label)}{unit}{optional}</label>'
            f"{self._help(field.help, ident)}"
            f"{self._control(field, ident, name, value, described)}"
            f'<p class="problem" id="{ident}-problem" hidden></p></div>'
        )

    def _control(self, field: SimpleField, ident: str, name: str, value: str, described: str) -> str:
        common = f'id="{ident}" name="{name}" aria-describedby="{described}"'
        if isinstance(field, ChoiceField):
            offered = "".join(
                f'<option value="{escape(choice.value)}"{" selected" if choice.value == value else ""}>'
                f"{self._write(choice.label)}</option>"
                for choice in field.choices
            )
            return f"<select {common}>{offered}</select>"
        kind = (
            'type="date"' if isinstance(field, DateField) else f'type="text" inputmode="{_keyboard(field)}"'
        )
        private = " data-private" if isinstance(field, TextField) and field.private else ""
        control = f'<input {common} {kind} value="{escape(value)}" autocomplete="off"{private}>'
        if isinstance(field, NumberField) and field.taps:
            return f'<span class="with-taps">{control}{self._taps(field)}</span>'
        return control

    def _taps(self, field: NumberField) -> str:
        label = self._write(field.label)
        return "".join(
            f'<button type="button" class="button quiet tap" data-tap="{step}" data-needs-script'
            f' aria-label="{label} {signed(step)}">{signed(step)}</button>'
            for step in field.taps
        )

    def _file(self, field: FileField, ident: str, value: str) -> str:
        optional = f' <span class="optional">{self._write(say("if known"))}</span>' if field.optional else ""
        described = f"{ident}-help {ident}-problem" if field.help else f"{ident}-problem"
        return (
            f'<div class="field" data-field="{field.name}">'
            f'<label for="{ident}">{self._write(field.label)}{optional}</label>'
            f"{self._help(field.help, ident)}"
            f'<input type="file" id="{ident}" name="{field.name}" aria-describedby="{described}"'
            f' accept="{escape(field.accept)}" data-unless-picked="{escape(value)}" data-needs-script>'
            f'<p class="problem" id="{ident}-problem" hidden></p></div>'
        )

    def _text_area(self, field: TextAreaField, ident: str, value: str) -> str:
        if value == EXAMPLE:
            value = self._shelf.demo.get(field.example_file, "")
        optional = f' <span class="optional">{self._write(say("if known"))}</span>' if field.optional else ""
        described = f"{ident}-help {ident}-problem" if field.help else f"{ident}-problem"
        pick = self._write(say("Or choose the file"))
        return (
            f'<div class="field" data-field="{field.name}">'
            f'<label for="{ident}">{self._write(field.label)}{optional}</label>'
            f"{self._help(field.help, ident)}"
            f'<textarea id="{ident}" name="{field.name}" rows="{field.rows}" aria-describedby="{described}"'
            f' spellcheck="false" autocomplete="off" data-private>\n{escape(value)}</textarea>'
            f'<p class="pick" data-needs-script><label for="{ident}-pick">{pick}</label>'
            f'<input type="file" id="{ident}-pick" accept="{escape(field.accept)}" data-fills="{ident}"></p>'
            f'<p class="problem" id="{ident}-problem" hidden></p></div>'
        )

    def _radio(self, field: ChoiceField, ident: str, name: str, value: str) -> str:
        offered = "".join(
            self._radio_button(choice, f"{ident}-{choice.value}", name, choice.value == value)
            for choice in field.choices
        )
        return (
            f'<fieldset class="field" data-field="{field.name}" aria-describedby="{ident}-problem">'
            f"<legend>{self._write(field.label)}</legend>{self._help(field.help, ident)}"
            f'<div class="choices">{offered}</div>'
            f'<p class="problem" id="{ident}-problem" hidden></p></fieldset>'
        )

    def _radio_button(self, choice: Choice, ident: str, name: str, chosen: bool) -> str:
        checked = " checked" if chosen else ""
        return (
            f'<label class="choice" for="{ident}">'
            f'<input type="radio" id="{ident}" name="{name}" value="{escape(choice.value)}"{checked}>'
            f" <span>{self._write(choice.label)}</span></label>"
        )

    def _rows(self, field: RowsField, rows: Iterable[Row]) -> str:
        shown = "".join(self._row(field, str(index), row) for index, row in enumerate(rows))
        blank = self._row(field, "ROW", {})
        ident = f"{self._form}-{field.name}"
        return (
            f'<fieldset class="field rows" data-field="{field.name}" data-rows="{field.name}">'
            f"<legend>{self._write(field.label)}</legend>{self._help(field.help, ident)}{shown}"
            f"<template data-row-template>{blank}</template>"
            f'<p class="problem" id="{ident}-problem" hidden></p>'
            f'<p data-needs-script><button type="button" class="button quiet" data-add-row>'
            f"{self._write(field.add_label)}</button></p></fieldset>"
        )

    def _row(self, field: RowsField, index: str, row: Mapping[str, str]) -> str:
        cells = "".join(
            self._simple(
                column,
                f"{self._form}-{field.name}-{index}-{column.name}",
                f"{field.name}.{index}.{column.name}",
                str(row.get(column.name, "")),
            )
            for column in field.columns
        )
        remove = self._write(say("Take this row away"))
        return (
            f'<div class="row" data-row="{index}">{cells}'
            f'<button type="button" class="button quiet remove" data-remove-row data-needs-script'
            f' aria-label="{remove}" title="{remove}">\u00d7</button></div>'
        )

    def _help(self, help_text: Message | None, ident: str) -> str:
        return f'<p class="help" id="{ident}-help">{self._write(help_text)}</p>' if help_text else ""


def _keyboard(field: SimpleField) -> str:
    if isinstance(field, NumberField):
        if field.low < 0:
            return "text"
        return "numeric" if field.decimals == 0 else "decimal"
    return "text" if isinstance(field, (TextField, ClockField)) else "numeric"

"""Turns an answer into plain text, for the command line and for whoever copies it into a message."""

from __future__ import annotations

from calculators.desk.answers import Answer, Shelf, Table
from calculators.words import Catalogue, Message, say, speak


def answer_text(answer: Answer, shelf: Shelf, catalogue: Catalogue) -> str:
    """Return the answer as lines of text, the sentence first; drawings become their descriptions."""

    def words(message: Message) -> str:
        return speak(message, catalogue)

    lines = [words(answer.headline), *map(words, answer.more)]
    if not answer.stop:
        lines += [words(drawing.description) for drawing in answer.drawings]
        for fact in answer.facts:
            extra = [words(part) for part in (fact.give_or_take, fact.note) if part]
            extra += [fact.address] if fact.address else []
            lines.append(f"{words(fact.label)}: {' '.join([words(fact.value), *extra])}")
        titles = [title for address in answer.read_on if (title := shelf.title(address))]
        if titles:
            lines.append(f"{words(say('Read on:'))} {', '.join(titles)}")
        for table in answer.tables:
            lines += ["", *_table_lines(table, catalogue), ""]
        if answer.how_sure:
            sure = answer.how_sure
            lines += [
                f"{words(say('How sure'))}: {words(sure.sentence)}",
                *(f"- {words(c)}" for c in sure.causes),
            ]
        if answer.cannot_tell:
            lines += [
                words(say("What this cannot tell you")) + ":",
                *(f"- {words(c)}" for c in answer.cannot_tell),
            ]
    if answer.cautions:
        lines += [words(say("Keep in mind")) + ":", *(f"- {words(c)}" for c in answer.cautions)]
    if answer.sources:
        named = ", ".join(shelf.sources.get(ident, ident) for ident in answer.sources)
        lines.append(f"{words(say('Sources:'))} {named}")
    return "\n".join(lines)


def _table_lines(table: Table, catalogue: Catalogue) -> list[str]:
    cells = [[speak(cell, catalogue) for cell in row] for row in (table.heads, *table.rows)]
    widths = [max(len(row[column]) for row in cells) for column in range(len(table.heads))]
    lined = [
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in cells
    ]
    return [speak(table.caption, catalogue), *lined]

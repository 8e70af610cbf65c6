"""Every page of one edition, from its library."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any, TypeVar, get_args

from pydantic import BaseModel

from build_tools.figures.home import home_drawing
from build_tools.generate.calculator_pages import CalculatorPage
from build_tools.generate.choices import shown_variants
from build_tools.generate.cue_effects import columns, effect_rows, rows_from
from build_tools.generate.figures_html import FigureStore
from build_tools.generate.labels import LABELS
from build_tools.generate.shape_figures import clock_figure, index_charts, page_charts
from build_tools.generate.shape_rows import shape_rows
from build_tools.generate.writer import Page, Writer
from build_tools.loading.reading import Loaded
from build_tools.schema.coaching import Cue, Fault
from build_tools.schema.common import Entry
from build_tools.schema.grip import Grip, Thumb
from build_tools.schema.guide import Guide
from build_tools.schema.lists import Term
from calculators.desk.render_svg import svg
from calculators.words import say

HOME = say("Bendbook")
TITLES = {
    "guide": say("Guide"),
    "faults": say("What do you see?"),
    "grips": say("Grips"),
    "shapes": say("Shapes"),
    "cues": say("Cues"),
    "drills": say("Drills"),
    "plans": say("Plans"),
    "calculators": say("Calculators"),
    "age-gates": say("Age gates"),
    "rules": say("Pitch limits and rest"),
    "starting-points": say("Starting points, slots and stages"),
    "glossary": say("Words"),
    "sources": say("Sources"),
    "changes": say("What changed"),
    "print": say("On paper"),
}
"""First part of a place to the title of the page that stands there."""

BESIDE_THE_GUIDE = ("age-gates", "rules", "starting-points", "glossary", "sources", "changes")
"""Pages that are no entries, listed with the guide."""

SINGULAR_TEMPLATES = {
    "shapes": "shape.md.j2",
    "grips": "grip.md.j2",
    "cues": "cue.md.j2",
    "drills": "drill.md.j2",
    "faults": "fault.md.j2",
    "plans": "plan.md.j2",
    "guide": "guide.md.j2",
}


def all_pages(
    writer: Writer, calculators: tuple[CalculatorPage, ...], figures: FigureStore
) -> Iterator[Page]:
    """Yield every page of the writer's edition."""
    yield from _entry_pages(writer, figures)
    yield from _index_pages(writer, figures)
    yield from _calculator_pages(writer, calculators)
    yield from _shared_pages(writer, calculators)
    library = writer.edition.library
    ways_in = sorted(
        (one for one in library.guide.values() if one.model.way_in), key=lambda one: one.model.order
    )
    context = {
        "ways_in": ways_in,
        "figure": svg(home_drawing(), writer.edition.catalogue, "home"),
        "calculators": calculators,
    }
    yield writer.write("", "home.md.j2", writer.edition.speak(HOME), "", context, indexed=True)


def _entry_pages(writer: Writer, figures: FigureStore) -> Iterator[Page]:
    for kind, template in SINGULAR_TEMPLATES.items():
        for loaded in writer.edition.library.kinds[kind].values():
            entry: Entry = loaded.model
            yield writer.write(
                f"{kind}/{loaded.slug}/",
                template,
                entry.title,
                entry.summary,
                {"loaded": loaded, **_more(writer, figures, kind, loaded)},
                without=(loaded.address,),
                meta={"kind": kind},
            )


def _more(writer: Writer, figures: FigureStore, kind: str, loaded: Loaded[Any]) -> dict[str, object]:
    """What a template of this kind needs besides the entry."""
    if kind == "grips":
        return {
            "figures": figures.html(loaded.model, writer.edition),
            "thumb": _thumb(writer, loaded.model.choices.thumb),
        }
    if kind == "cues":
        rows = effect_rows(loaded, writer.edition)
        return {"rows": rows, "columns": columns(rows, writer.edition)}
    if kind == "guide":
        return _choice(writer, figures, loaded)
    if kind == "shapes":
        return {
            "numbers": shape_rows(loaded.model, writer.edition),
            "charts": page_charts(loaded, tuple(writer.edition.library.shapes.values()), writer.edition),
            "clock_face": clock_figure(loaded.model, writer.edition),
        }
    return {}


def _choice(writer: Writer, figures: FigureStore, loaded: Loaded[Guide]) -> dict[str, object]:
    """The body of a guide page, cut where the variants of its choice stand, and these."""
    choice = loaded.model.choice
    if choice is None:
        return {"before": loaded.body, "variants": (), "after": ""}
    before, _, after = loaded.body.partition("\n## ")
    grips = writer.edition.library.grips.values()
    return {
        "before": before,
        "variants": shown_variants(choice, grips, figures, writer.edition),
        "after": f"## {after}",
    }


def _by_profile(writer: Writer, cues: list[Loaded[Cue]]) -> Iterator[tuple[object, ...]]:
    """Yield each starting profile with the cues to use from it, those that are a bad trade, and columns."""
    for slug, profile in writer.edition.library.profiles.items():
        use, bad = rows_from(slug, cues, writer.edition)
        yield profile, use, bad, columns(use, writer.edition)


def _index(writer: Writer, place: str, template: str, **context: object) -> Iterator[Page]:
    """Yield the list of a kind; nothing where an edition has left out all of it."""
    if place in SINGULAR_TEMPLATES and not writer.edition.library.kinds[place]:
        return
    title = writer.edition.speak(TITLES[place])
    yield writer.write(f"{place}/", template, title, title, context, indexed=True)


def _index_pages(writer: Writer, figures: FigureStore) -> Iterator[Page]:
    library = writer.edition.library
    yield from _index(
        writer,
        "grips",
        "grips.md.j2",
        families=_by(library.grips.values(), Grip, "family"),
        choosing=[one.address for one in library.guide.values() if one.model.choice],
        pictures={slug: figures.small(one.model, writer.edition) for slug, one in library.grips.items()},
    )
    shapes = list(library.shapes.values())
    yield from _index(
        writer,
        "shapes",
        "shapes.md.j2",
        charts=index_charts(shapes, writer.edition),
        shapes=[(one, shape_rows(one.model, writer.edition)[0]) for one in shapes],
        breaking=[one for one in shapes if not one.model.reference],
        reference=[one for one in shapes if one.model.reference],
    )
    cues = list(library.cues.values())
    in_use = [one for one in cues if not one.model.retired]
    yield from _index(
        writer,
        "cues",
        "cues.md.j2",
        for_profile=[one for one in _by_profile(writer, in_use) if one[1] or one[2]],
        by_focus=_by(in_use, Cue, "focus"),
        retired=[one for one in cues if one.model.retired],
    )
    by_stage = [
        (stage, [one for one in library.drills.values() if one.model.stage == slug])
        for slug, stage in library.stages.items()
    ]
    yield from _index(writer, "drills", "drills.md.j2", by_stage=[one for one in by_stage if one[1]])
    yield from _index(writer, "faults", "faults.md.j2", by_group=_by(library.faults.values(), Fault, "group"))
    yield from _index(writer, "plans", "plans.md.j2", plans=list(library.plans.values()))
    by_section = _by(library.guide.values(), Guide, "section")
    beside = [(f"{place}/", writer.edition.speak(TITLES[place])) for place in BESIDE_THE_GUIDE]
    yield from _index(writer, "guide", "guides.md.j2", by_section=by_section, beside=beside)
    yield from _index(writer, "calculators", "calculators.md.j2")


def _calculator_pages(writer: Writer, calculators: tuple[CalculatorPage, ...]) -> Iterator[Page]:
    library = writer.edition.library
    cues = [(one.slug, one.model.title) for one in library.cues.values() if not one.model.retired]
    grips = [(one.slug, one.model.title) for one in library.grips.values()]
    for one in calculators:
        address = f"calculators/{one.name}"
        words = library.calculator_words.get(one.name)
        yield writer.write(
            f"{address}/",
            "calculator.md.j2",
            one.title,
            one.headline if words is None else words.model.summary,
            {
                "words": words,
                "desk": writer.fragment(
                    "desk.html.j2",
                    form=one.form,
                    answer=one.answer,
                    headline=one.headline,
                    tools=one.tools,
                    cues=cues,
                    grips=grips,
                ),
                "tables": one.tables,
                "address": address,
            },
            without=(address,),
            meta={"kind": "calculators", "calculator": one.name},
        )


def _shared_pages(writer: Writer, calculators: tuple[CalculatorPage, ...]) -> Iterator[Page]:
    library = writer.edition.library

    def shared(place: str, template: str, without: tuple[str, ...] = (), **context: object) -> Page:
        title = writer.edition.speak(TITLES[place])
        return writer.write(f"{place}/", template, title, title, context, without=without)

    terms = sorted(library.glossary.values(), key=lambda one: one.model.term.lower())
    by_group = _by(terms, Term, "group")
    yield shared("glossary", "glossary.md.j2", without=tuple(library.glossary), by_group=by_group)
    sources = sorted(library.sources.values(), key=lambda one: writer.edition.title(one.address).lower())
    uses = [(source, _uses(writer, source, calculators)) for source in sources]
    yield shared("sources", "sources.md.j2", sources=uses)
    yield shared("age-gates", "age_gates.md.j2")
    yield shared("starting-points", "starting_points.md.j2")
    binding = library.league.rules if library.league else None
    in_order = sorted(library.rules.values(), key=lambda one: one.slug != binding)
    yield shared("rules", "rules.md.j2", sets=in_order, binding=binding)


def _uses(writer: Writer, source: Loaded[Any], calculators: tuple[CalculatorPage, ...]) -> list[str]:
    """Return the kind/slug of everything that names a source, each once."""
    mentions = writer.edition.library.mentions.get(source.address, ())
    worked = [f"calculators/{one.name}" for one in calculators if source.slug in one.sources]
    return list(dict.fromkeys([*(one.address for one in mentions), *worked]))


def _thumb(writer: Writer, thumb: Thumb) -> str:
    clock = writer.clock_span((thumb.clock, thumb.to_clock or thumb.clock))
    surface = writer.edition.speak(LABELS["surface"][thumb.surface])
    on = writer.edition.speak(LABELS["on"][thumb.on])
    return writer.edition.speak(say("{clock}; {surface}, {on}", clock=clock, surface=surface, on=on))


L = TypeVar("L", bound=Loaded[Any])


def _by(entries: Iterable[L], model: type[BaseModel], part: str) -> list[tuple[str, list[L]]]:
    """Group entries by one of their fixed choices, in the order in which the schema lists the choices."""
    groups: dict[str, list[L]] = {choice: [] for choice in get_args(model.model_fields[part].annotation)}
    for one in entries:
        groups[getattr(one.model, part)].append(one)
    return [(choice, group) for choice, group in groups.items() if group]

"""An answer becomes the same words in HTML and in text, and what a reader typed never becomes markup."""

from __future__ import annotations

import gettext
import xml.etree.ElementTree as ET

from calculators.desk.answers import Answer, Calculator, Fact, FieldGroup, HowSure, Shelf, Table
from calculators.desk.drawing import Circle, Drawing, Label, Path
from calculators.desk.fields import (
    Choice,
    ChoiceField,
    DateField,
    NumberField,
    Problem,
    RowsField,
    TextField,
    Values,
)
from calculators.desk.render_html import answer_html, form_html
from calculators.desk.render_svg import svg
from calculators.desk.render_text import answer_text
from calculators.words import number, say, say_count, signed, speak

ENGLISH = gettext.NullTranslations()
SHELF = Shelf(sources={"nathan-2008": "Nathan 2008"})
CURVE = Path(((0, 0), (10, 5), (20, 20)), "accent", smooth=True, arrow=True)
DRAWING = Drawing(
    title=say("From the side"),
    description=say("The ball drops {inches} inches.", inches="14"),
    width=100,
    height=50,
    marks=(CURVE, Circle((20, 20), 3, "strong", fill="paper"), Label((22, 20), say("<plate> & batter"))),
)
ANSWER = Answer(
    headline=say("It drops {inches} inches more than a ball without spin.", inches="14"),
    more=(say("It arrives in half a second."),),
    drawings=(DRAWING,),
    facts=(Fact(say("Drop"), say("14 in"), say("give or take 2"), say("spin only")),),
    tables=(Table(say("Rest owed"), (say("Pitches"), say("Days")), ((say("1 to 20"), say("0")),)),),
    how_sure=HowSure(say("Within 2 inches."), (say("The clock matters most."),)),
    cannot_tell=(say("What the seams add."),),
    cautions=(say("Pain overrides every number."),),
    sources=("nathan-2008",),
)


def html_of(answer: Answer) -> str:
    return answer_html(answer, SHELF, ENGLISH, "a")


def test_the_sentence_comes_before_any_number() -> None:
    html = html_of(ANSWER)
    places = [
        html.index(part) for part in ("It drops 14", "<svg", "<dl", "<table", "How sure", "Keep in mind")
    ]
    assert places == sorted(places)


def test_html_is_well_formed_and_ids_are_unique() -> None:
    root = ET.fromstring(html_of(ANSWER))
    ids = [element.get("id") for element in root.iter() if element.get("id")]
    assert len(ids) == len(set(ids)) == 2


def test_the_text_says_what_the_html_says() -> None:
    text = answer_text(ANSWER, SHELF, ENGLISH)
    root = ET.fromstring(html_of(ANSWER))
    seen = " ".join("".join(root.itertext()).split())
    for sentence in ("It drops 14 inches more than a ball without spin.", "Within 2 inches.", "Nathan 2008"):
        assert sentence in text
        assert sentence in seen


def test_an_answer_to_stop_shows_no_figure_and_no_number() -> None:
    stop = Answer(say("Stop throwing today."), stop=True, drawings=ANSWER.drawings, facts=ANSWER.facts)
    assert "<svg" not in html_of(stop)
    assert "14" not in html_of(stop)
    assert "14" not in answer_text(stop, SHELF, ENGLISH)


def test_a_drawing_names_itself_for_those_who_cannot_see_it() -> None:
    root = ET.fromstring(svg(DRAWING, ENGLISH, "side"))
    named = {child.get("id"): child.text for child in root if child.get("id")}
    assert root.get("aria-labelledby") == "side-title side-description"
    assert named == {"side-title": "From the side", "side-description": "The ball drops 14 inches."}


def test_a_smooth_path_passes_through_its_points() -> None:
    drawn = svg(DRAWING, ENGLISH, "side")
    assert "M0 0C" in drawn
    assert "10 5C" in drawn
    assert "20 20" in drawn


def example_calculator() -> Calculator:
    fields = (
        ChoiceField("hand", say("Hand"), (Choice("right", say("Right")), Choice("left", say("Left")))),
        NumberField("speed_mph", say("Speed"), "mph", 20, 110, usual=(40, 95), help=say("As measured.")),
        TextField("nickname", say("Nickname")),
        RowsField(
            "outings",
            say("Outings"),
            (
                DateField("date", say("Date")),
                NumberField("pitches", say("Pitches"), "pitches", 0, 250, (1, 99)),
            ),
            say("Add an outing"),
        ),
    )

    def work_out(values: Values, shelf: Shelf) -> Answer | tuple[Problem, ...]:
        return ANSWER

    return Calculator(
        name="sample",
        title=say("Sample"),
        fields=lambda shelf: fields,
        example={
            "hand": "left",
            "speed_mph": "70",
            "nickname": '"><b>',
            "outings": [{"date": "2026-05-16", "pitches": "40"}],
        },
        work_out=work_out,
        common_cases=lambda shelf: (),
        groups=(FieldGroup(say("More"), ("nickname",), open=False),),
    )


def test_every_control_has_a_label_and_a_place_for_its_problem() -> None:
    html = form_html(example_calculator(), SHELF, ENGLISH)
    for ident in ("sample-speed_mph", "sample-outings-0-date", "sample-outings-ROW-pitches"):
        assert f'for="{ident}"' in html
        assert f'id="{ident}"' in html
        assert f'id="{ident}-problem"' in html


def test_what_a_reader_typed_never_becomes_markup() -> None:
    html = form_html(example_calculator(), SHELF, ENGLISH)
    assert "&quot;&gt;&lt;b&gt;" in html
    assert "<b>" not in html


def test_the_form_opens_with_the_worked_example() -> None:
    html = form_html(example_calculator(), SHELF, ENGLISH)
    assert 'value="left" checked' in html
    assert 'value="70"' in html
    assert 'value="2026-05-16"' in html


def test_numbers_are_written_for_readers() -> None:
    assert number(-0.4) == "0"
    assert number(-3.25, 1) == "\u22123.2"
    assert signed(4) == "+4"
    assert signed(-4) == "\u22124"


def test_wording_that_counts_follows_the_number() -> None:
    def rest(days: int) -> str:
        return speak(say_count("{count} day of rest", "{count} days of rest", count=days), ENGLISH)

    assert [rest(0), rest(1), rest(2)] == ["0 days of rest", "1 day of rest", "2 days of rest"]


def test_a_fact_about_a_page_elsewhere_leads_there_on_the_screen_and_names_its_address_in_text() -> None:
    rules = Fact(say("Read them at"), say("the <league>"), address='https://example.org/?a=1&b="2"')
    answer = Answer(say("Rest."), facts=(rules,))
    root = ET.fromstring(f"<div>{html_of(answer)}</div>")
    link = root.find(".//dd//a")
    assert link is not None
    assert (link.get("href"), link.text) == (rules.address, "the <league>")
    assert f"the <league> {rules.address}" in answer_text(answer, SHELF, ENGLISH)

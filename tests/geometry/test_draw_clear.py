"""What a ruler finds on the printed figures: texts clear of everything, all on the page, no type too small.

Every figure of the fixtures, of every topic, and random ones; true to scale, as a sketch, in two colours.
"""

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from ruamel.yaml import YAML

from paperaudit.audit import audit, audit_file
from paperaudit.geometry.draw.type_metrics import SIZES
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Derived, Impossible, NotRead, Outcome
from paperaudit.model.paper import Line, Paper, Part, Question, Section
from paperaudit.model.reading import Reading
from paperaudit.reports.figure import render, render_cases
from paperaudit.resources import shipped
from paperaudit.wording import read
from tests.geometry.drawn_figures import Drawn, figures
from tests.geometry.random_circles import random_circle
from tests.geometry.random_figures import random_figure, random_question
from tests.geometry.read_svg import read_svg

QUESTIONS = Path(__file__).parents[2] / "fixtures" / "questions"
LEAST_TYPE = 9.0
RANDOM, ROUND = range(300, 360), range(40)
Shown = tuple[str, AuditedPart]


def reading_of(figure: tuple[str, ...], given: tuple[str, ...], ask: str) -> Reading:
    part = Part(id="1", number="1", ask=Line(ask))
    question = Question("1", (part,), figure=tuple(map(Line, figure)), given=tuple(map(Line, given)))
    found = read(question, part)
    assert not found.unread, found.unread
    return found


def as_part(drawn: Drawn) -> AuditedPart:
    """A part whose answer is not looked for, with the figure's own coordinates."""
    found = reading_of(drawn.figure, drawn.given, drawn.ask)
    return AuditedPart(found.question, found.part, found, Derived((), (), drawn.at), "derived")


def topics() -> list[Shown]:
    return [(drawn.title, as_part(drawn)) for drawn in figures()]


def random_ones() -> list[Shown]:
    found = []
    for seed in RANDOM:
        question, at = random_question(seed, letters=seed % 2 == 1), random_figure(seed).at
        spots = tuple((name, x, y) for name, (x, y) in at.items())
        found.append((f"random {seed}", Drawn("", tuple(question.figure), tuple(question.given), question.ask, spots)))
    for seed in ROUND:
        figure = random_circle(seed)
        arm, vertex, other = next(iter(figure.angles()))
        given = [f"∠{a}{b}{c} = {float(figure.size(a, b, c)):g}°" for a, b, c in list(figure.angles())[1:4]]
        spots = tuple((name, x, y) for name, (x, y) in figure.at.items())
        found.append((f"round {seed}", Drawn("", tuple(figure.figure), tuple(given), f"∠{arm}{vertex}{other}", spots)))
    return [(title, as_part(drawn)) for title, drawn in found]


@cache
def fixtures() -> list[Shown]:
    """Every question and part of the fixtures that has a figure; questions are drawn without looking for answers."""
    found = []
    for title, question, verdict in questions():
        reading = read(question, question.parts[0])
        outcome: Outcome = Impossible((), ()) if verdict == "Impossible" else NotRead("")
        found.append((title, AuditedPart(question, question.parts[0], reading, outcome, "not-read")))
    for paper in sorted(shipped("papers").glob("*/paper.yaml")):
        found += [(f"{paper.parent.name} {one.part.id}", one) for one in audit_file(str(paper)).parts]
    return [(title, one) for title, one in found if render(one)]


def questions() -> Iterator[tuple[str, Question, str]]:
    """The title, the question and the expected kind of outcome of every small question on a figure."""
    files = sorted(QUESTIONS.glob("geometry*.yaml"))
    rows = [row for file in files for row in YAML(typ="safe").load(file.read_text("utf-8"))]
    for number, row in enumerate(rows, start=1):
        part = Part(id=str(number), number=str(number), ask=Line(row["ask"]) if "ask" in row else None)
        question = Question(
            str(number),
            (part,),
            text=Line(row["text"]) if "text" in row else None,
            figure=tuple(Line(line) for line in row.get("figure", ())),
            given=tuple(Line(line) for line in row.get("given", ())),
            sketch=tuple((name, float(x), float(y)) for name, (x, y) in row.get("sketch", {}).items()),
        )
        yield row["title"], question, row.get("verdict", "")


def open_ones() -> Iterator[Shown]:
    """The questions with more than one figure, audited."""
    for title, question, verdict in questions():
        if verdict in ("Several", "NotDetermined"):
            (audited,) = audit(Paper("Sails", sections=(Section(questions=(question,)),))).parts
            yield title, audited


def test_there_are_enough_figures() -> None:
    assert len(topics()) > 75 and len(fixtures()) > 60
    assert all(render(part) for _, part in (*topics(), *random_ones()))


LOOKS: dict[str, dict[str, object]] = {
    "true to scale": {}, "sketch": {"scale": "sketch"}, "triangle's sides": {"colours": "triangle-sides"}
}  # fmt: skip


@pytest.mark.parametrize("look", LOOKS.values(), ids=LOOKS)
@pytest.mark.parametrize("source", [topics, random_ones, fixtures])
def test_nothing_touches_a_text_and_all_is_on_the_page(source: object, look: dict[str, object]) -> None:
    found = {title: read_svg(render(part, **look)).touching() for title, part in source()}  # type: ignore[operator,arg-type]
    assert {title: touched for title, touched in found.items() if touched} == {}


def test_no_type_is_smaller_than_its_size() -> None:
    sizes = {text.size for _, part in (*topics(), *random_ones()) for text in read_svg(render(part)).texts}
    assert min(sizes) >= LEAST_TYPE and sizes <= {*SIZES.values(), 9.5}


def test_cases_side_by_side_keep_clear_of_one_another() -> None:
    drawn = {title: svg for title, part in open_ones() if (svg := render_cases(part))}
    assert len(drawn) > 3
    assert {title: touched for title, svg in drawn.items() if (touched := read_svg(svg).touching())} == {}


def test_the_ruler_finds_what_touches() -> None:
    """A text on a line, two texts on one another, a text on an arc, beyond the page: all are found."""
    texts = '<text x="50" y="53" font-size="12">AB</text><text x="55" y="53" font-size="12">C</text>'
    svg = (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">'
        '<g fill="none" stroke="#000" stroke-width="1"><polyline points="0,50 100,50"/></g>'
        '<g fill="none" stroke="#000" stroke-width="1"><path d="M10 20A10 10 0 0 1 30 20"/></g>'
        f'{texts}<text x="18" y="14" font-size="12">D</text><text x="95" y="90" font-size="12">E</text></svg>'
    )
    assert read_svg(svg).touching() == [
        ("AB", "a line"), ("C", "the text AB"), ("C", "a line"), ("D", "a arc"), ("E", "the edge"),
    ]  # fmt: skip

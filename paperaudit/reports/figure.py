"""Writes a part's figure as SVG: true to scale, its givens marked, what is asked for shown by a question mark."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Literal

from paperaudit.geometry.draw.cases import beside
from paperaudit.geometry.draw.elements import Layout, StrokeKind
from paperaudit.geometry.draw.ground import DOT
from paperaudit.geometry.draw.page import BORDER
from paperaudit.geometry.draw.shown import ShownFigure, drawn, own_givens, skeleton
from paperaudit.geometry.draw.structure import NotDrawable
from paperaudit.geometry.draw.type_metrics import SIZES
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Case, Derived, Impossible, NotDetermined, NotRead, Position, Several
from paperaudit.model.fact import Origin
from paperaudit.model.reading import Reading
from paperaudit.resources import shipped

if TYPE_CHECKING:
    from jinja2 import Template

Colours = Literal["", "triangle-sides"]
Scale = Literal["true", "sketch"]

MOST_CASES = 4
NOT_TO_SCALE = "not to scale"
ONE_OF_SEVERAL = "one of several figures that are possible"
SHADE = "#e4e4e4"
"""A grey of a tenth for areas that are asked for: the lines round them stand out from it."""


@dataclass(frozen=True, slots=True)
class Look:
    """How a kind of line is printed; widths and dashes tell the kinds apart in grey too."""

    colour: str
    width: float
    dashes: str = ""


LOOKS: dict[StrokeKind, Look] = {
    "line": Look("#000", 1.1),
    "produced side": Look("#b5481a", 1.3, "5 3"),
    "triangle side": Look("#1b4f8a", 2.0),
    "heavy": Look("#000", 2.4),
    "mark": Look("#000", 0.9),
    "thin": Look("#000", 0.5),
    "dashed": Look("#000", 0.8, "4 3"),
}


def render(part: AuditedPart, *, colours: Colours = "", scale: Scale = "true", asked: bool = True) -> str:
    """The SVG of a part's figure, "" where it has none.

    Without `asked` nothing shows what the part asks for: for a figure that stands over several parts.
    A part that was read and not derived has its figure all the same, where its givens can be drawn.

    True to scale, unless `scale` is "sketch": then order and turning are the figure's, the sizes are
    not, and a note says so; so it does for a part whose givens nothing satisfies. Where several
    figures are possible the first is shown, with a note. `colours="triangle-sides"` draws the sides
    of the triangle that is asked about, and their produced parts, each in a way of its own.
    """
    outcome = part.outcome
    sides = colours == "triangle-sides"
    try:
        match outcome:
            case Derived(figure=positions) if positions:
                return _svg(part, _layout(part, positions, sides, scale, "", asked), asked=asked)
            case Several(cases=cases) | NotDetermined(cases=cases) if cases:
                return _svg(part, _layout(part, cases[0].figure, sides, scale, ONE_OF_SEVERAL, asked), asked=asked)
            case Impossible():
                shown = ShownFigure(part.reading, skeleton(part.reading), asked)
                return _svg(part, shown.as_skeleton(sides, NOT_TO_SCALE), asked=asked)
            case NotRead() if not part.reading.unread:
                return _svg(part, _layout(part, drawn(part.reading), sides, scale, "", asked), asked=asked)
    except NotDrawable:
        pass
    return ""


def render_case(part: AuditedPart, case: Case) -> str:
    """The SVG of one case of an open question, true to scale; "" where the case has no figure."""
    outcome = part.outcome
    cases = outcome.cases if isinstance(outcome, Several | NotDetermined) else ()
    number = cases.index(case) + 1 if case in cases else 0
    try:
        return _svg(part, _layout(part, case.figure, False, "true", ""), f"case-{number}")
    except NotDrawable:
        return ""


def render_cases(part: AuditedPart) -> str:
    """The SVG of all the cases of an open question side by side, true to one scale; "" where there are not two.

    For a claim that does not follow: a figure in which it holds and one in which it does not.
    """
    outcome = part.outcome
    cases = outcome.cases if isinstance(outcome, Several | NotDetermined) else ()
    shown = [case for case in cases if case.figure][:MOST_CASES]
    try:
        figures = [ShownFigure(part.reading, case.figure) for case in shown]
        if len(figures) < 2:
            return ""
        layout = beside(figures, [case.description for case in shown])
    except NotDrawable:
        return ""
    return _svg(part, layout, "cases", cases=tuple(case.description for case in shown))


def _layout(
    part: AuditedPart, positions: Sequence[Position], sides: bool, scale: Scale, note: str, asked: bool = True
) -> Layout:
    shown = ShownFigure(part.reading, positions, asked)
    if scale == "sketch":
        return shown.as_sketch(sides, NOT_TO_SCALE)
    # The cases of an open length differ in nothing but that length.
    return shown.to_scale(isinstance(part.outcome, NotDetermined | Several), sides, note)


def _svg(part: AuditedPart, layout: Layout, suffix: str = "", asked: bool = True, cases: tuple[str, ...] = ()) -> str:
    pieces = ("figure", *re.split(r"[^A-Za-z0-9]+", part.part.id), suffix)
    return _template().render(
        id="-".join(piece for piece in pieces if piece),
        title=f"Figure of question {part.part.id if asked else part.question.number}",
        description=_description(part.reading, layout.note, asked, cases),
        layout=layout,
        looks=tuple(LOOKS.items()),
        outline=LOOKS["line"],
        sizes=SIZES,
        shade=SHADE,
        dot=DOT,
        border=BORDER,
    )


def _description(reading: Reading, note: str, asked: bool, cases: tuple[str, ...] = ()) -> str:
    """The figure in words, for those who cannot see it: what is drawn, given and asked."""
    shown = [given for given in own_givens(reading) if given.origin is not Origin.CONVENTION]
    sentences = [
        ("Drawn: ", [given.text for given in shown if given.origin is Origin.FIGURE]),
        ("Given: ", [given.text for given in shown if given.origin is not Origin.FIGURE]),
        ("Asked: ", [reading.ask.text] if reading.ask and asked else []),
        ("Scale: ", [note if note == NOT_TO_SCALE else f"true to scale, {note}" if note else "true to scale"]),
    ]
    sentences += [(f"Case {number}: ", [text]) for number, text in enumerate(cases, start=1)]
    said = [lead + "; ".join(dict.fromkeys(texts)).rstrip(".") + "." for lead, texts in sentences if texts]
    return " ".join(said)


@cache
def _template() -> "Template":
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    environment = Environment(
        loader=FileSystemLoader(shipped("schemes", "templates", "figure")),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    environment.filters["number"] = number
    return environment.get_template("figure.svg")


def number(value: float) -> str:
    """A coordinate with at most two decimals.

    >>> number(12.5), number(-0.001), number(3)
    ('12.5', '0', '3')
    """
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text

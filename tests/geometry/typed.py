"""Short ways to write typed facts and the figures that they make."""

from fractions import Fraction

from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import Figure
from paperaudit.geometry.figure.sketch import settled_by_sketch
from paperaudit.model.expression import (
    AngleOf,
    Expression,
    LengthOf,
    Measured,
    Number,
    NumberForm,
    Relation,
    RelationSign,
)
from paperaudit.model.fact import Fact, Given, Holds, Shape


def number(value: float | str, unit: str = "") -> Expression:
    text = str(value)
    places = len(text.partition(".")[2])
    amount = Number(Fraction(text), NumberForm.DECIMAL if places else NumberForm.INTEGER, places)
    return Measured(amount, unit) if unit else amount


def length(name: str) -> LengthOf:
    return LengthOf(name[0], name[1])


def angle(name: str) -> AngleOf:
    return AngleOf(name[0], name[1], name[2])


def is_(left: Expression, right: Expression | float, sign: RelationSign = "=") -> Holds:
    return Holds(Relation(left, sign, right if not isinstance(right, int | float) else number(right)))


def triangle(name: str) -> Shape:
    return Shape("triangle", tuple(name))


def plain_figure(*facts: Fact, sketch: dict[str, tuple[float, float]] | None = None) -> Figure:
    places = tuple((name, x, y) for name, (x, y) in (sketch or {}).items())
    return FigureBuilder(tuple(Given("", (fact,)) for fact in facts)).figure(places)


def figure_of(*facts: Fact, sketch: dict[str, tuple[float, float]] | None = None) -> Figure:
    """The figure with what its sketch settles."""
    return settled_by_sketch(plain_figure(*facts, sketch=sketch))

"""Points and curves of a question: coordinates of named points, the equation of "the line"."""

from dataclasses import dataclass
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import exact_expression
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.parse import read_expression
from paperaudit.maths.write import write
from paperaudit.model.coordinates_task import Curve, CurveSaid, PlanePoint
from paperaudit.model.expression import Expression, Letter, Relation, letters_of
from paperaudit.model.fact import Holds
from paperaudit.model.function_task import Function
from paperaudit.model.reading import Reading
from paperaudit.strands.functions_given import called_in
from paperaudit.strands.numbers.working import exact as exact_number
from paperaudit.strands.numbers.working import with_givens

_LOWERED = str.maketrans("₁₂₃", "123")


@dataclass(frozen=True, slots=True)
class Place:
    """A point with its rational coordinates and the texts of the givens that state them."""

    name: str
    x: Fraction
    y: Fraction
    texts: tuple[str, ...] = ()

    @property
    def text(self) -> str:
        """The point as it is written: A(2, 3), or (2, 3) where it has no name."""
        return f"{self.name}{pair_text(self.x, self.y)}"


def pair_text(x: Fraction | Expression, y: Fraction | Expression) -> str:
    """Two coordinates in brackets: (2, −3), (1/2, √5)."""
    one, other = (write(exact_expression(value) if isinstance(value, Fraction) else value) for value in (x, y))
    return f"({one}, {other})"


def placed(point: PlanePoint, reading: Reading) -> Place:
    """The point with its coordinates, from the ask or from a given. Raises NoValue where it has none."""
    found, texts = stated_point(point, reading)
    assert found.x is not None and found.y is not None
    (x, first), (y, second) = with_givens(found.x, reading), with_givens(found.y, reading)
    return Place(point.name, exact_number(x), exact_number(y), tuple(dict.fromkeys((*texts, *first, *second))))


def stated_point(point: PlanePoint, reading: Reading) -> tuple[PlanePoint, tuple[str, ...]]:
    """The point as the ask or a given states it, with the given's text. Raises NoValue where none does."""
    if point.x is not None:
        return point, ()
    known = [(fact, given) for given in reading.givens for fact in given.facts
             if isinstance(fact, PlanePoint) and fact.name == point.name]  # fmt: skip
    if len(known) != 1:
        raise NoValue(f"the coordinates of {point.name} are not given" if not known else
                      f"{point.name} is given more than once")  # fmt: skip
    return known[0][0], (known[0][1].text,)


def all_placed(points: tuple[PlanePoint, ...], reading: Reading) -> tuple[tuple[Place, ...], tuple[str, ...]]:
    """Every point placed, with the texts of the givens behind them, each once."""
    places = tuple(placed(point, reading) for point in points)
    return places, tuple(dict.fromkeys(text for place in places for text in place.texts))


def equation_for(curve: CurveSaid, reading: Reading) -> tuple[Relation, tuple[str, ...]]:
    """The equation that an ask says, that of the curve that it names, or the only one that the givens state.

    Raises NoValue where none or two are there.
    """
    if isinstance(curve, Curve):
        return curve.relation, ()
    found = _stated(reading)
    if curve is not None:
        found = [one for one in found if _same_name(one[0], curve.name)]
    if len(found) != 1:
        name = f" of {curve.name}" if curve is not None else ""
        raise NoValue(f"no equation{name} is given" if not found else "it is not said which of the equations is meant")
    return found[0][1:]


def _same_name(name: str, said: str) -> bool:
    return name.translate(_LOWERED).replace("_", "") == said.translate(_LOWERED).replace("_", "")


def _stated(reading: Reading) -> list[tuple[str, Relation, tuple[str, ...]]]:
    """The curves of the givens, each with its name or "", its equation and the given's text."""
    found: list[tuple[str, Relation, tuple[str, ...]]] = []
    for given in reading.givens:
        for fact in given.facts:
            if isinstance(fact, Function) and fact.formula is not None and fact.letter == "x" and not fact.order:
                found.append((fact.name, Relation(Letter("y"), "=", fact.formula), (given.text,)))
            elif isinstance(fact, Curve):
                found.append((fact.name, fact.relation, (given.text,)))
            elif isinstance(fact, Holds) and _letters(fact.relation) == {"x", "y"}:
                found.append(("", fact.relation, (given.text,)))
            elif isinstance(fact, Holds) and (called := called_in(fact.relation, given.text)) is not None:
                name, formula = called
                if formula.letter == "x":
                    found.append((name, Relation(Letter("y"), "=", formula.formula), (given.text,)))
    return list({(name, relation): (name, relation, texts) for name, relation, texts in reversed(found)}.values())


def _letters(relation: Relation) -> set[str]:
    return {*letters_of(relation.left), *letters_of(relation.right)}


def fraction_text(value: Fraction) -> str:
    """A number as it is written."""
    return write(whole_or_fraction(value))


def read_pair(text: str) -> tuple[Fraction, Fraction]:
    """The coordinates of a point as it is printed, read again; raises NoValue where they are irrational.

    >>> read_pair("(−1/2, 3)")
    (Fraction(-1, 2), Fraction(3, 1))
    """
    x, _, y = text.removeprefix("(").removesuffix(")").partition(", ")
    return exact_number(read_expression(x)), exact_number(read_expression(y))


def in_brackets(value: Fraction) -> str:
    """A number behind a sign, in brackets where it is negative: (−3)."""
    text = fraction_text(value)
    return f"({text})" if value < 0 else text


def over(above: Fraction, below: Fraction) -> str:
    """A quotient before it is worked out: 8/6, (−3)/4, written with ÷ where one of the two is a fraction."""
    if above.denominator == below.denominator == 1:
        return f"{fraction_text(above)}/{in_brackets(below)}"
    return f"{fraction_text(above)} ÷ {in_brackets(below)}"

"""Relations of a paper turned into linear forms over angles, lengths and letters."""

from collections.abc import Iterable
from fractions import Fraction
from typing import Literal

from paperaudit.geometry.figure.figure import Size, angle, arc, length
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.units import conversion, unit_named
from paperaudit.model.expression import (
    AngleOf,
    AnswerTo,
    ArcOf,
    AreaOf,
    BearingOf,
    CircleSize,
    Expression,
    LengthOf,
    Letter,
    Measured,
    Negative,
    Number,
    Of,
    PerimeterOf,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
    parts_of,
)

_WORDS = {AreaOf: "an area", Power: "a power", Root: "a root", Of: "a share", AnswerTo: "an earlier answer"}


MOST_POWER = 20
"""The highest power of a number that is worked out in a relation."""


class NotLinear(Exception):
    """A relation that is not linear in angles, lengths and letters; caught by the strand."""


def linear_form(expression: Expression, unit: str = "") -> LinearForm[Size]:
    """The linear form of an expression, angles in degrees and lengths in `unit`.

    Raises NotLinear for products of unknowns, areas, powers and unknown units.

    >>> linear_form(Sum((Letter("x"), Number(Fraction(10)))))
    LinearForm({Letter(name='x'): 1}, 10)
    """
    match expression:
        case Number(value):
            return LinearForm.number(value)
        case Letter(name) if name != "π":
            return LinearForm.of(expression)
        case AngleOf(arm, vertex, other, reflex):
            return LinearForm.of(angle(arm, vertex, other, reflex))
        case LengthOf(start, end):
            return LinearForm.of(length(start, end))
        case ArcOf(start, end, through, major, centre):
            return LinearForm.of(arc(start, end, centre, through, major))
        case CircleSize("radius") | BearingOf():
            return LinearForm.of(expression)
        case CircleSize("diameter", centre):
            return LinearForm.of(CircleSize("radius", centre), Fraction(2))
        case PerimeterOf(points):
            sides = zip(points, points[1:] + points[:1], strict=True)
            return _total(LinearForm.of(length(start, end)) for start, end in sides)
        case Negative(operand):
            return linear_form(operand, unit).times(-1)
        case Sum(terms):
            return _total(linear_form(term, unit) for term in terms)
        case Product(factors):
            return _product([linear_form(factor, unit) for factor in factors])
        case Of(share, whole):
            return _product([linear_form(share, unit), linear_form(whole, unit)])
        case Quotient(numerator, denominator):
            below = linear_form(denominator, unit)
            if not below.is_constant or not below.constant:
                raise NotLinear("a letter or a nought under the fraction bar")
            return linear_form(numerator, unit).over(below.constant)
        case Power(Number(value), Number(exponent)) if exponent.denominator == 1 and 0 <= exponent <= MOST_POWER:
            return LinearForm.number(value**exponent.numerator)
        case Measured(amount, symbol):
            return linear_form(amount, unit).times(_scale(symbol, unit))
    raise NotLinear(f"{_WORDS.get(type(expression), 'an expression of this kind')} in a relation of the figure")


def _total(forms: Iterable[LinearForm[Size]]) -> LinearForm[Size]:
    result: LinearForm[Size] = LinearForm()
    for form in forms:
        result = result + form
    return result


def _product(forms: list[LinearForm[Size]]) -> LinearForm[Size]:
    result: LinearForm[Size] = LinearForm.number(1)
    for form in forms:
        if form.is_constant:
            result = result.times(form.constant)
        elif result.is_constant:
            result = form.times(result.constant)
        else:
            raise NotLinear("a product of unknowns")
    return result


def _scale(symbol: str, unit: str) -> Fraction:
    if symbol in ("°", unit, ""):
        return Fraction(1)
    factor = conversion(symbol, unit) if unit else Fraction(1)
    if _is_length(symbol) and factor is not None:
        return factor
    raise NotLinear(f"the unit {symbol}")


def _is_length(symbol: str) -> bool:
    unit = unit_named(symbol)
    return unit is not None and unit.dimension == "length"


def kind_of(form: LinearForm[Size]) -> Literal["angle", "length", "letters"]:
    """Whether a form is about angles, lengths, or letters alone; raises NotLinear if about both."""
    kinds = {
        "length" if isinstance(key, LengthOf | CircleSize) else "angle"
        for key in form.terms
        if not isinstance(key, Letter)
    }
    if len(kinds) == 2:
        raise NotLinear("angles and lengths in one relation")
    return "length" if "length" in kinds else "angle" if kinds else "letters"


def refuse_foreign_units(form: LinearForm[Size], relation: Relation) -> None:
    """Raises NotLinear for an angle in centimetres or a length in degrees."""
    units = {unit for side in (relation.left, relation.right) for unit in _units_in_order(side)}
    if kind_of(form) == "angle" and units - {"°"}:
        raise NotLinear(f"an angle measured in {min(units - {'°'})}")
    if kind_of(form) == "length" and "°" in units:
        raise NotLinear("a length measured in degrees")


def length_unit(expressions: tuple[Expression, ...]) -> str:
    """The first unit of length that occurs, else that of the first area, "" where neither does.

    >>> length_unit((Measured(Number(Fraction(24)), "cm²"),))
    'cm'
    """
    symbols = [symbol for expression in expressions for symbol in _units_in_order(expression)]
    lengths = [symbol for symbol in symbols if _is_length(symbol)]
    squared = [unit_named(symbol) for symbol in symbols]
    roots = [unit.symbol.removesuffix("²") for unit in squared if unit is not None and unit.symbol.endswith("²")]
    return next(iter((*lengths, *roots)), "")


def _units_in_order(expression: Expression) -> list[str]:
    own = [expression.unit] if isinstance(expression, Measured) else []
    return own + [symbol for part in parts_of(expression) for symbol in _units_in_order(part)]

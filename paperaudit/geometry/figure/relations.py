"""Relations that a paper states turned into conditions: linear ones, balances, inequalities."""

from collections.abc import Iterator
from fractions import Fraction
from typing import Literal, TypeAlias

from paperaudit.errors import NoValue
from paperaudit.geometry.coordinates.graded import constant_value
from paperaudit.geometry.coordinates.measure import in_unit
from paperaudit.geometry.figure.figure import Balance, Compared, Condition, EqualLengths, Size, SizeRelation, length
from paperaudit.geometry.figure.sizes import NotLinear, kind_of, linear_form, refuse_foreign_units
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.number_forms import as_decimal
from paperaudit.maths.units import unit_named
from paperaudit.model.expression import (
    AngleOf,
    ArcLengthOf,
    ArcOf,
    AreaOf,
    BearingOf,
    CircleSize,
    DistanceOf,
    Expression,
    Function,
    LengthOf,
    Letter,
    Measured,
    Negative,
    Number,
    NumberForm,
    Of,
    PerimeterOf,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    SectorOf,
    SegmentOf,
    Sum,
    leaves,
    parts_of,
    with_leaves,
)

Dimension: TypeAlias = Fraction | Literal["number", "angle", "any"]
"""The power of a length that an expression is; "any" where a letter may stand for whatever fits."""


def relation_conditions(relation: Relation, label: int, unit: str) -> Iterator[Condition]:
    """The conditions of one relation, its angles, arcs and circles named in full; raises NotLinear for nonsense.

    Two lengths are equal lengths; what is linear once fractions are cleared stays linear; the rest
    is a balance, brought to the figure's unit of length.
    """
    left, right = relation.left, relation.right
    if all(isinstance(leaf, Number) or leaf == Letter("π") for side in (left, right) for leaf in leaves(side)):
        raise NotLinear("a relation between numbers alone")
    if relation.sign != "=":
        _same_dimension(left, right)
        yield Compared(in_figure_unit(left, unit), relation.sign, in_figure_unit(right, unit), label)
    elif isinstance(left, LengthOf) and isinstance(right, LengthOf):
        yield EqualLengths(length(left.start, left.end), length(right.start, right.end), label)
    elif form := _linear(relation, unit):
        yield SizeRelation(form, kind_of(form), label, play=_play(relation, form, unit))
    else:
        _same_dimension(left, right)
        sides = in_figure_unit(left, unit), in_figure_unit(right, unit)
        yield Balance(*sides, label, play=sum(_share_of_play(side) for side in sides))


def _linear(relation: Relation, unit: str) -> LinearForm[Size] | None:
    """The relation as a form that is 0, unknown denominators cleared; None where it is not linear."""
    for left, right in ((relation.left, relation.right), _cleared(relation.left, relation.right)):
        try:
            form = linear_form(left, unit) - linear_form(right, unit)
            kind_of(form)
        except NotLinear:
            continue
        refuse_foreign_units(form, relation)
        return form
    return None


def _play(relation: Relation, form: LinearForm[Size], unit: str) -> Fraction:
    """By how much the number in a form is off at most where the decimals of its relation are rounded ones."""
    total = Fraction(0)
    for decimal in _decimals(relation.left) | _decimals(relation.right):
        sides = [_rounded_up(side, decimal) for side in (relation.left, relation.right)]
        other = _linear(Relation(sides[0], "=", sides[1]), unit)
        if other is not None and other.terms == form.terms:
            total += abs(Fraction(other.constant - form.constant))
    return total


def _share_of_play(side: Expression) -> float:
    """By what share a side without letters and sizes is off at most where its decimals are rounded ones."""
    value = constant_value(side)
    if not value:
        return 0.0
    rounded = [constant_value(_rounded_up(side, decimal)) or value for decimal in _decimals(side)]
    return sum(abs(other / value - 1) for other in rounded)


def _decimals(expression: Expression) -> set[Number]:
    return {leaf for leaf in leaves(expression) if isinstance(leaf, Number) and leaf.places > 0}


def _rounded_up(expression: Expression, decimal: Number) -> Expression:
    half = Fraction(1, 2 * 10**decimal.places)
    return with_leaves(expression, lambda leaf: Number(decimal.value + half) if leaf == decimal else leaf)


def _cleared(left: Expression, right: Expression) -> tuple[Expression, Expression]:
    """Both sides times the denominators of the other: AB/CD = 2/3 becomes 3AB = 2CD."""
    above, below = _fraction(left)
    other_above, other_below = _fraction(right)
    return Product((above, other_below)), Product((other_above, below))


def _fraction(side: Expression) -> tuple[Expression, Expression]:
    if isinstance(side, Quotient):
        return side.numerator, side.denominator
    return side, Number(Fraction(1))


def in_figure_unit(expression: Expression, unit: str) -> Expression:
    """The expression with its numbers in the figure's unit of length or its square.

    Raises NotLinear for units of anything else.

    >>> in_figure_unit(Measured(Number(Fraction(2)), "m"), "cm")
    Measured(amount=Number(value=Fraction(200, 1), form=<NumberForm.INTEGER: 'integer'>, places=0), unit='cm')
    """
    if isinstance(expression, Measured):
        try:
            factor = in_unit(expression.unit, unit)
        except NoValue:
            raise NotLinear(f"the unit {expression.unit}") from None
        if factor == 1:
            return expression
        symbol = unit if dimension_of(expression) == 1 else f"{unit}²"
        return Measured(_multiplied(expression.amount, factor), symbol)
    return _with_parts(expression, tuple(in_figure_unit(part, unit) for part in parts_of(expression)))


def _with_parts(expression: Expression, parts: tuple[Expression, ...]) -> Expression:
    match expression:
        case Negative():
            return Negative(*parts)
        case Sum():
            return Sum(parts)
        case Product(_, sign):
            return Product(parts, sign)
        case Quotient(sign=bar):
            return Quotient(parts[0], parts[1], bar)
        case Power():
            return Power(*parts)
        case Root(_, degree):
            return Root(parts[0], degree)
        case Of():
            return Of(*parts)
        case Function(name):
            return Function(name, *parts)
    return expression


def _multiplied(amount: Expression, factor: Fraction) -> Expression:
    if isinstance(amount, Number):
        value = amount.value * factor
        return as_decimal(value) or Number(value, NumberForm.FRACTION)
    return Product((Number(factor), amount))


def _same_dimension(left: Expression, right: Expression) -> None:
    _common([dimension_of(left), dimension_of(right)])


def dimension_of(expression: Expression) -> Dimension:
    """What an expression measures; raises NotLinear where a sum or an angle's function makes no sense.

    >>> dimension_of(Product((LengthOf("A", "B"), LengthOf("C", "D"))))
    Fraction(2, 1)
    """
    match expression:
        case Number() | Letter("π"):
            return "number"
        case Letter():
            return "any"
        case AngleOf() | ArcOf() | BearingOf():
            return "angle"
        case LengthOf() | PerimeterOf() | ArcLengthOf() | DistanceOf():
            return Fraction(1)
        case AreaOf():
            return Fraction(2)
        case CircleSize(kind) | SectorOf(kind) | SegmentOf(kind):
            return Fraction(2 if kind == "area" else 1)
        case Measured(_, symbol):
            return _of_unit(symbol)
        case Negative(operand):
            return dimension_of(operand)
        case Sum(terms):
            return _common([dimension_of(term) for term in terms])
        case Product(factors):
            return _multiple([(dimension_of(factor), 1) for factor in factors])
        case Of(share, whole):
            return _multiple([(dimension_of(share), 1), (dimension_of(whole), 1)])
        case Quotient(numerator, denominator):
            return _multiple([(dimension_of(numerator), 1), (dimension_of(denominator), -1)])
        case Power(base, Number(exponent)):
            return _multiple([(dimension_of(base), exponent)])
        case Root(radicand, degree):
            return _multiple([(dimension_of(radicand), Fraction(1, degree))])
        case Function(name, argument) if not isinstance(dimension_of(argument), Fraction):
            return "angle" if "⁻¹" in name else "number"
    raise NotLinear("an expression of this kind in a relation of the figure")


def _of_unit(symbol: str) -> Dimension:
    unit = unit_named(symbol)
    powers: dict[str, Dimension] = {"angle": "angle", "length": Fraction(1), "area": Fraction(2)}
    if unit is None or unit.dimension not in powers:
        raise NotLinear(f"the unit {symbol}")
    return powers[unit.dimension]


def _common(dimensions: list[Dimension]) -> Dimension:
    """The one dimension of terms that are added or compared; bare numbers and letters fit any."""
    told = {dimension for dimension in dimensions if dimension not in ("number", "any")}
    if len(told) > 1:
        raise NotLinear("sizes of different kinds in one relation")
    if told:
        return told.pop()
    return "any" if "any" in dimensions else "number"


def _multiple(factors: list[tuple[Dimension, Fraction | int]]) -> Dimension:
    if any(dimension == "any" for dimension, _ in factors):
        return "any"
    if any(dimension == "angle" for dimension, _ in factors):
        return "angle" if sum(dimension != "number" for dimension, _ in factors) == 1 else "any"
    power = sum((dimension * times for dimension, times in factors if isinstance(dimension, Fraction)), Fraction(0))
    return power or "number"

"""Answers of the search beyond linear relations in print, with their exact values and units."""

from fractions import Fraction

from paperaudit.geometry.beyond.amounts import Value, as_fraction
from paperaudit.geometry.beyond.spelled import size_unit, spelled
from paperaudit.geometry.figure.notation import Notation, number
from paperaudit.maths.cancelling import fraction_expression
from paperaudit.model.derivation import Answer
from paperaudit.model.expression import (
    Expression,
    Letter,
    Measured,
    Negative,
    Number,
    PerimeterOf,
    Product,
    Quotient,
    Sum,
    leaves,
)


def unit_of(item: Expression, notation: Notation) -> str:
    """The unit of an expression asked for: that of its sizes in a sum or beside a number, none for a ratio."""
    match item:
        case Sum(terms):
            units = {unit_of(term, notation) for term in terms} - {""}
            return units.pop() if len(units) == 1 else ""
        case Negative(operand):
            return unit_of(operand, notation)
        case Product(factors) if sum(not isinstance(factor, Number) for factor in factors) == 1:
            return next(unit_of(factor, notation) for factor in factors if not isinstance(factor, Number))
        case Quotient(numerator, Number()):
            return unit_of(numerator, notation)
        case PerimeterOf():
            return notation.length_unit
        case _ if item in leaves(item) and not isinstance(item, Letter | Number):
            return size_unit(item, notation.length_unit)
    return ""


def answer_of(item: Expression, value: Value, notation: Notation, about_angles: bool) -> Answer:
    """The answer's text and exact value with its unit."""
    if isinstance(item, Letter):
        unit = "°" if about_angles and not notation.bare_letters else ""
        return Answer(f"{item.name} = {spelled(value, unit)}", _exact(value, unit), item.name, _is_rounded(value))
    unit = unit_of(item, notation)
    return Answer(spelled(value, unit), _exact(value, unit), rounded=_is_rounded(value))


def _is_rounded(value: Value) -> bool:
    return value.approx and value.exact is None


def _exact(value: Value, unit: str) -> Expression:
    rational = as_fraction(value)
    if rational is not None:
        amount: Expression = number(rational)
    elif value.approx:
        amount = value.exact or Number(_endless(value.number))
    else:
        amount = fraction_expression(value.fraction)
    return Measured(amount, unit) if unit else amount


def _endless(value: float) -> Fraction:
    """A fraction with endless decimals within 1e-13 of a rounded value, so that it is compared as one that has none."""
    scale = 10 ** max(0, 13 - len(str(int(abs(value)))))
    return Fraction(round(value * scale) * 3 + 1, 3 * scale)

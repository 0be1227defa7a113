"""The unit of an expression, and the expression without it."""

from paperaudit.errors import PaperauditError
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.units import conversion, same_unit, unit_named
from paperaudit.model.expression import (
    Expression,
    Function,
    Logarithm,
    Measured,
    Negative,
    Number,
    Of,
    Power,
    Product,
    Quotient,
    Sum,
    parts_of,
)

_POWERS = {2: "²", 3: "³"}


class UnitClash(PaperauditError):
    """Units that do not go together: a length added to a mass, 12 cm by itself asked for in litres."""


def unit_of(expression: Expression) -> str:
    """The unit that the value of an expression comes in, "" for a bare number.

    In a sum it is the first one met; letters and bare numbers take it over, as in 2x + 10°. A sine has none. Raises
    UnitClash for units that cannot be added, multiplied or divided.

    >>> from fractions import Fraction
    >>> unit_of(Of(Number(Fraction(1, 2)), Measured(Number(Fraction(9)), "cm")))
    'cm'
    """
    match expression:
        case Measured(_, unit):
            return unit
        case Sum(terms):
            return _unit_of_sum(terms)
        case Product(factors):
            return _unit_of_product([unit for unit in map(unit_of, factors) if unit])
        case Of(share, whole):
            return _unit_of_product([unit for unit in (unit_of(share), unit_of(whole)) if unit])
        case Quotient(numerator, denominator):
            return _unit_of_quotient(unit_of(numerator), unit_of(denominator))
        case Power(base, exponent):
            unit = unit_of(base)
            if not unit:
                return ""
            count = exponent.value if isinstance(exponent, Number) else 0
            return _unit_of_product([unit] * int(count))
        case Negative(operand):
            return unit_of(operand)
        case Function() | Logarithm():
            return ""
    found = [unit for unit in map(unit_of, parts_of(expression)) if unit]
    if found:
        raise UnitClash(f"a root of {found[0]}")
    return ""


def _unit_of_sum(terms: tuple[Expression, ...]) -> str:
    units = [unit for unit in map(unit_of, terms) if unit]
    for unit in units[1:]:
        if conversion(unit, units[0]) is None:
            raise UnitClash(f"{units[0]} and {unit} cannot be added")
    return units[0] if units else ""


def _unit_of_product(units: list[str]) -> str:
    if len(units) < 2:
        return units[0] if units else ""
    known = unit_named(units[0])
    lengths = known is not None and known.dimension == "length" and len(units) in _POWERS
    if not lengths or any(conversion(unit, units[0]) is None for unit in units):
        raise UnitClash(f"{' times '.join(units)} is no unit of a school paper")
    return units[0] + _POWERS[len(units)]


def _unit_of_quotient(above: str, below: str) -> str:
    if not below or conversion(below, above) is not None:
        return above if not below else ""
    if known := unit_named(f"{above}/{below}"):
        return known.symbol
    raise UnitClash(f"{above or 'a number'} divided by {below} is no unit of a school paper")


def without_units(expression: Expression, unit: str) -> Expression:
    """The expression with every measure as a bare number of its own kind of unit.

    Sums are brought to `unit`; inside a product each measure keeps its own amount, after the length
    units of an area were brought together. Raises UnitClash where a measure cannot be in `unit`.
    """
    match expression:
        case Measured(amount, own):
            return _scaled(amount, own, unit)
        case Negative(operand):
            return Negative(without_units(operand, unit))
        case Sum(terms):
            return Sum(tuple(without_units(term, unit) for term in terms))
        case Product(factors, sign):
            return Product(tuple(without_units(factor, _linear(factor, unit)) for factor in factors), sign)
        case Of(share, whole):
            return Of(share, without_units(whole, unit))
        case Quotient(numerator, denominator, bar):
            below = unit_of(denominator)
            above = (unit_of(numerator) or unit) if below else unit
            divisor = without_units(denominator, above if conversion(below, above) else below)
            return Quotient(without_units(numerator, above), divisor, bar)
        case Power(base, exponent):
            return Power(without_units(base, _linear(base, unit)), exponent)
    return expression


def _linear(factor: Expression, unit: str) -> str:
    """The unit for one factor of a product in `unit`: cm for a length in cm²."""
    own = unit_of(factor)
    if not own or conversion(own, unit) is not None:
        return unit
    root = unit.rstrip("²³")
    return root if conversion(own, root) is not None else own


def _scaled(amount: Expression, own: str, unit: str) -> Expression:
    scale = conversion(own, unit)
    if scale is None:
        raise UnitClash(f"{own} is not {unit or 'a bare number'}")
    if scale == 1 or same_unit(own, unit):
        return amount
    if isinstance(amount, Number):
        return as_decimal(amount.value * scale) or whole_or_fraction(amount.value * scale)
    return Product((amount, Number(scale)), "×")


def bare(expression: Expression) -> tuple[Expression, str]:
    """An expression without its units, and the unit of its value; raises UnitClash."""
    unit = unit_of(expression)
    return without_units(expression, unit), unit

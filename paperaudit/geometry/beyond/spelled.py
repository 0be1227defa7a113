"""Values in print: the unit of a size, a surd with its decimal, a rounded value with its sign."""

import re
from decimal import Decimal

from paperaudit.geometry.beyond.amounts import Value, as_fraction
from paperaudit.geometry.figure.notation import number
from paperaudit.maths.approximate import decimal_beside
from paperaudit.maths.cancelling import fraction_expression, is_number
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    AngleOf,
    ArcOf,
    AreaOf,
    BearingOf,
    CircleSize,
    Expression,
    Letter,
    Measured,
    SectorOf,
    SegmentOf,
)


def size_unit(size: Expression, length: str) -> str:
    """The unit of a single size: °, the unit of length, or that squared."""
    match size:
        case AngleOf() | ArcOf() | BearingOf():
            return "°"
        case Letter():
            return ""
        case AreaOf() | CircleSize("area") | SectorOf("area") | SegmentOf("area"):
            return f"{length}²" if length else ""
    return length


def as_bearing(text: str) -> str:
    """The text of a bearing with three figures before its point.

    >>> as_bearing("15°"), as_bearing("tan⁻¹ 0.5 ≈ 26.57°"), as_bearing("x + 10°"), as_bearing("105°")
    ('015°', 'tan⁻¹ 0.5 ≈ 026.57°', 'x + 10°', '105°')
    """
    return re.sub(r"(?:^|(?<=≈ ))(\d{1,2})(?=(?:\.\d+)?°$)", lambda found: found[1].zfill(3), text)


def spelled(value: Value, unit: str) -> str:
    """The text of a value: 5 cm, 3√5 cm ≈ 6.708 cm, 70.53°; the sign before a rounded one is not in it."""
    if not is_number(value.fraction):
        whole = fraction_expression(value.fraction)
        return write(Measured(whole, unit) if unit else whole)
    beside = decimal_beside(Decimal(repr(value.number)))
    if value.approx:
        rounded = write(Measured(beside, unit) if unit else beside)
        if value.exact is None:
            return rounded
        exact = Measured(value.exact, unit) if unit and unit != "°" else value.exact
        return f"{write(exact)} ≈ {rounded}"
    rational = as_fraction(value)
    if rational is not None:
        exact_number = number(rational)
        return write(Measured(exact_number, unit) if unit else exact_number)
    exact = fraction_expression(value.fraction)
    exact = Measured(exact, unit) if unit else exact
    return f"{write(exact)} ≈ {write(Measured(beside, unit) if unit else beside)}"


def equals_sign(value: Value) -> str:
    """= before an exact value, ≈ before a rounded one."""
    return "≈" if value.approx and value.exact is None else "="

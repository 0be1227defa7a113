"""Powers with negative and fractional exponents, brought to roots and reciprocals as a pupil does it."""

from fractions import Fraction

from paperaudit.maths.exact import rational_value
from paperaudit.maths.measure import unit_of
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.settled import settled_value
from paperaudit.model.expression import Expression, Negative, Number, Power, Quotient, Root


def in_roots(base: Expression, exponent: Fraction, decimals: bool = False) -> Expression | None:
    """8^(2/3) as (∛8)², 2⁻³ as 1/2³, (2/3)⁻² as (3/2)²; None for what is worked out at once.

    Among `decimals`, 10⁻² is 0.01 without a line of its own.

    >>> from paperaudit.maths.write import write
    >>> write(in_roots(Number(Fraction(8)), Fraction(2, 3)))
    '(∛8)²'
    """
    if unit_of(base) or (exponent.denominator == 1 and (exponent >= 0 or decimals)):
        return None
    size = settled_value(base)
    if not size:
        return None
    if exponent < 0:
        return _reciprocal(base, size, -exponent)
    root = Root(base, exponent.denominator)
    if rational_value(root) is None:
        return None
    return root if exponent.numerator == 1 else Power(root, Number(Fraction(exponent.numerator)))


def _reciprocal(base: Expression, size: Fraction, exponent: Fraction) -> Expression:
    """One over the positive power, or the power of a fraction turned over."""
    if size.denominator == 1:
        return Quotient(Number(Fraction(1)), base if exponent == 1 else Power(base, whole_or_fraction(exponent)))
    turned = whole_or_fraction(abs(1 / size))
    under: Expression = Negative(turned) if size < 0 else turned
    return under if exponent == 1 else Power(under, whole_or_fraction(exponent))

"""Polynomials in sines and cosines as a pupil writes them."""

from fractions import Fraction
from math import lcm

from paperaudit.maths.cancelling import polynomial_expression
from paperaudit.maths.exact import exact_expression
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.parts import with_parts
from paperaudit.maths.polynomial import ONE, AlgebraicFraction, Polynomial
from paperaudit.maths.surd import Surd
from paperaudit.maths.trig.angles import RATIOS, functions_in
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Negative, Number, Product, Quotient, Sum, with_leaves


def as_written(fraction: AlgebraicFraction) -> Expression:
    """The quotient as it is printed: sines before cosines, 1 + cos x, fractions and roots and no decimals."""
    above = written_sum(fraction.above)
    return above if fraction.below == ONE else Quotient(above, written_sum(fraction.below))


def written_sum(polynomial: Polynomial) -> Expression:
    """A polynomial as it is printed, a number that is added first."""
    constant = polynomial.constant
    if constant is not None:
        return written_number(constant)
    written = ordered_factors(
        with_leaves(
            polynomial_expression(polynomial),
            lambda leaf: whole_or_fraction(leaf.value) if isinstance(leaf, Number) else leaf,
        )
    )
    if isinstance(written, Sum) and not functions_in(written.terms[-1]) and not isinstance(written.terms[-1], Negative):
        return Sum((written.terms[-1], *written.terms[:-1]))
    return written


def written_number(value: Surd) -> Expression:
    """A number as it is printed, a sum of roots over one denominator: (√6 − √2)/4."""
    if value.fraction is not None or len(value.parts) == 1:
        return exact_expression(value if value.fraction is None else value.fraction)
    below = lcm(*(share.denominator for share in value.parts.values()))
    above = polynomial_expression(Polynomial.number(value * Surd.rational(below)))
    return above if below == 1 else Quotient(above, Number(Fraction(below)))


def ordered_factors(expression: Expression) -> Expression:
    """Sines before cosines in every product."""
    changed = with_parts(expression, ordered_factors)
    if not isinstance(changed, Product):
        return changed
    if isinstance(changed.factors[0], Negative):
        return Negative(Product((changed.factors[0].operand, *changed.factors[1:]), changed.sign))
    plain = [factor for factor in changed.factors if not functions_in(factor)]
    functions = [factor for factor in changed.factors if functions_in(factor)]
    functions.sort(
        key=lambda factor: (write(functions_in(factor)[0].argument), -RATIOS[::-1].index(functions_in(factor)[0].name))
    )
    return Product((*plain, *functions), changed.sign)


def _rank(factor: Expression) -> tuple[str, int]:
    function = functions_in(factor)[0]
    place = RATIOS.index(function.name) if function.name in RATIOS else len(RATIOS)
    return write(function.argument), place


def times(one: Polynomial, other: Polynomial) -> Expression:
    """One polynomial before another in brackets, neither multiplied out."""
    if one == ONE:
        return written_sum(other)
    return ordered_factors(Product((written_sum(one), written_sum(other))))

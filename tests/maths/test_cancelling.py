"""Algebraic fractions in lowest terms and their roots, against sympy and by multiplying back."""

import math
from fractions import Fraction

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from paperaudit.maths.cancelling import (
    NoRoot,
    float_value,
    fraction_expression,
    quotient,
    reduced,
    square_root,
    surd_root,
)
from paperaudit.maths.parse import read_expression
from paperaudit.maths.polynomial import AlgebraicFraction, Polynomial, algebraic_fraction
from paperaudit.maths.surd import Surd
from paperaudit.maths.write import write
from paperaudit.model.expression import Letter

X = Polynomial.of(Letter("x"))
small = st.integers(-9, 9)


def _linear(a: int, b: int) -> Polynomial:
    return X * Polynomial.number(Surd.rational(a)) + Polynomial.number(Surd.rational(b))


@pytest.mark.parametrize(
    ("written", "printed"),
    [
        ("(x^2+2x+1)/(x+1)", "x + 1"),
        ("(x^2-9)/(x-3)", "x + 3"),
        ("(14-x)*1", "14 − x"),
        ("12√3/2", "6√3"),
        ("x/(x^2)", "1/x"),
        ("πx^2/4", "πx²/4"),
        ("x^2+x-12", "x² + x − 12"),
    ],
)
def test_a_fraction_is_printed_in_lowest_terms(written: str, printed: str) -> None:
    assert write(fraction_expression(reduced(algebraic_fraction(read_expression(written))))) == printed


@given(small, small, small, small)
def test_a_product_divides_back(a: int, b: int, c: int, d: int) -> None:
    one, two = _linear(a, b), _linear(c, d)
    if one.terms and two.terms:
        assert quotient(one * two, two) == one


@given(small.filter(bool), small)
def test_the_root_of_a_square_is_the_polynomial_or_its_opposite(a: int, b: int) -> None:
    linear = _linear(a, b)
    root = square_root(AlgebraicFraction(linear * linear)).above
    assert root in (linear, -linear)


@given(st.integers(1, 30), st.integers(1, 30))
def test_the_root_of_a_square_of_two_surds(a: int, b: int) -> None:
    """√(a + b + 2√(ab)) = √a + √b, as in Euclid X.54 to X.59 (from memory)."""
    total = Surd.root(Fraction(a)) + Surd.root(Fraction(b))
    root = surd_root(total * total)
    assert root == total
    assert math.isclose(float(root.to_decimal()), math.sqrt(a) + math.sqrt(b))


@pytest.mark.parametrize("value", [Surd({1: Fraction(1), 2: Fraction(1)}), Surd.rational(-4), Surd({2: Fraction(1)})])
def test_what_has_no_root_among_surds_says_so(value: Surd) -> None:
    with pytest.raises(NoRoot):
        surd_root(value)


@settings(deadline=None)
@given(small, small, small, small.filter(bool))
def test_reducing_changes_no_value_against_sympy(a: int, b: int, c: int, d: int) -> None:
    above, below = _linear(a, b) * _linear(c, d), _linear(c, d)
    x = sympy.Symbol("x")
    point = Fraction(1, 3)
    truth = sympy.cancel((a * x + b) * (c * x + d) / (c * x + d)).subs(x, sympy.Rational(1, 3))
    if not below.terms or c * point + d == 0:
        return
    found = float_value(reduced(AlgebraicFraction(above, below)), {Letter("x"): float(point)})
    assert math.isclose(found, float(truth), rel_tol=1e-12, abs_tol=1e-12)

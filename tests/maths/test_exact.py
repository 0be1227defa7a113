"""Exact values: fractions, surds, and what is beyond both or beyond the limits."""

import random
import time
from fractions import Fraction

import pytest
import sympy

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.approximate import decimal_beside, nearest_decimal, to_decimal
from paperaudit.maths.exact import NotSurd, exact_expression, exact_value, rational_value
from paperaudit.maths.parse import read_expression
from paperaudit.maths.postfix import agree, decimal_value
from paperaudit.maths.surd import Surd, square_part
from paperaudit.maths.symbolic import symbolic_value
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Negative, Number, Power, Product, Quotient, Root, Sum


@pytest.mark.parametrize(
    ("text", "exact"),
    [
        ("7/12 + 11/15", "79/60"),
        ("0.1 + 0.2", "3/10"),
        ("√45", "3√5"),
        ("√8 × √2", "4"),
        ("2/√5", "2√5/5"),
        ("1/(2 − √3)", "2 + √3"),
        ("(1 + √2)^2", "3 + 2√2"),
        ("∛(−27)", "−3"),
        ("16^(3/4)", "8"),
        ("2^-3", "1/8"),
        ("√(1/2)", "√2/2"),
        ("√2 × √3 − √6", "0"),
        ("(√2 + √3)(√3 − √2)", "1"),
        ("65%", "13/20"),
    ],
)
def test_exact_values(text: str, exact: str) -> None:
    assert write(exact_expression(exact_value(read_expression(text)))) == exact


@pytest.mark.parametrize("text", ["∛2", "√(1 + √2)", "π"])
def test_values_beyond_square_roots_are_named_so(text: str) -> None:
    with pytest.raises(NotSurd):
        exact_value(read_expression(text))
    assert rational_value(read_expression(text)) is None


@pytest.mark.parametrize("text", ["1/(3 − 3)", "√(−2)", "0^0", "x + 1", "0^-1", "5 cm"])
def test_expressions_without_a_value(text: str) -> None:
    with pytest.raises(NoValue):
        exact_value(read_expression(text))


def tower(height: int) -> Expression:
    nine = Number(Fraction(9))
    return Power(nine, tower(height - 1)) if height else nine


@pytest.mark.parametrize(
    "expression",
    [
        tower(2),
        tower(4),
        read_expression("9^999"),
        read_expression("(9^300)(9^300)(9^300)(9^300)"),
        Power(Sum((Number(Fraction(1)), Root(Number(Fraction(2))))), Number(Fraction(10**6))),
        Root(Number(Fraction(10**500 + 7))),
        Root(Number(Fraction(7)), 10**6),
    ],
)
def test_towers_and_giants_are_refused_at_once(expression: Expression) -> None:
    started = time.perf_counter()
    with pytest.raises(BudgetExceeded):
        exact_value(expression)
    assert time.perf_counter() - started < 0.5


def random_expression(source: random.Random, depth: int) -> Expression:
    """Integers, fractions and small roots under the four operations and small powers."""
    if depth == 0:
        number = Number(Fraction(source.randint(-9, 9), source.choice([1, 1, 2, 3, 4])))
        return Root(Number(Fraction(source.randint(1, 30)))) if source.random() < 0.3 else number
    left, right = random_expression(source, depth - 1), random_expression(source, source.randrange(depth))
    match source.randrange(5):
        case 0:
            return Sum((left, right))
        case 1:
            return Sum((left, Negative(right)))
        case 2:
            return Product((left, right), "×")
        case 3:
            return Quotient(left, right)
    return Power(left, Number(Fraction(source.randint(1, 3))))


def test_sympy_and_the_postfix_evaluator_find_the_same_values() -> None:
    source, compared = random.Random(20), 0
    for _ in range(300):
        expression = random_expression(source, 3)
        try:
            value = exact_expression(exact_value(expression))
        except (NoValue, BudgetExceeded):
            continue
        compared += 1
        difference = symbolic_value(expression) - symbolic_value(value)
        assert abs(difference.evalf(50)) < 1e-40, write(expression)
        assert agree(decimal_value(expression), decimal_value(value)), write(expression)
    assert compared > 200


def test_a_surd_times_its_reciprocal_is_one() -> None:
    source = random.Random(3)
    for _ in range(300):
        roots = {square_part(source.randint(1, 60))[1] for _ in range(source.randint(1, 4))}
        shares = (Fraction(source.randint(1, 9) * source.choice((1, -1)), source.randint(1, 4)) for _ in roots)
        surd = Surd(dict(zip(roots, shares, strict=True)))
        assert surd * surd.reciprocal() == Surd.rational(1)


def test_square_parts_agree_with_sympy() -> None:
    for whole in [*range(1, 400), 10007**2 * 3, 10007 * 10009]:
        outside, inside = square_part(whole)
        assert outside * outside * inside == whole
        assert all(power == 1 for power in sympy.factorint(inside).values())


@pytest.mark.parametrize(
    ("text", "decimal"),
    [
        ("3√5", "6.708"),
        ("√2", "1.414"),
        ("√2/1000", "0.001414"),
        ("1234√2", "1745.1"),
        ("∛16", "2.520"),
        ("π", "3.142"),
        ("−√2", "−1.414"),
    ],
)
def test_the_decimal_behind_an_irrational_answer(text: str, decimal: str) -> None:
    assert write(decimal_beside(to_decimal(read_expression(text)))) == decimal


def test_decimals_are_rounded_from_all_figures() -> None:
    assert nearest_decimal(to_decimal(read_expression("√2")), 30) == Fraction("1.414213562373095048801688724210")

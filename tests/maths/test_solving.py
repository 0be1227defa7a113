"""Linear equations in a pupil's lines, with sympy as the referee of every line."""

import random
from fractions import Fraction

import pytest
import sympy

from paperaudit.errors import NoValue
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.parse import read_expression, read_relation
from paperaudit.maths.solving import LinearSolution, solve_linear, unit_of_constants
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Letter,
    Measured,
    Negative,
    Number,
    Product,
    Quotient,
    Relation,
    Sum,
)

X = sympy.Symbol("x")


def solution(text: str, letter: str = "x", unit: str = "") -> LinearSolution:
    return solve_linear(read_relation(text), letter, unit)


@pytest.mark.parametrize(
    "lines",
    [
        ("3(x − 4) = 2x + 5", "3x − 12 = 2x + 5", "x − 12 = 5", "x = 17"),
        ("5x + 40 = 180", "5x = 140", "x = 28"),
        ("2x = 6", "x = 3"),
        ("5 = x", "x = 5"),
        ("−x = 5", "x = −5"),
        ("7 − 2x = 1", "−2x = −6", "x = 3"),
        ("3x + 5 = 5x − 7", "5 = 2x − 7", "12 = 2x", "x = 6"),
        ("8x − 14 = x", "8x = x + 14", "7x = 14", "x = 2"),
        ("x/2 + x/3 = 10", "3x + 2x = 60", "5x = 60", "x = 12"),
        ("(x + 1)/2 − (x − 1)/3 = 1", "3(x + 1) − 2(x − 1) = 6", "3x + 3 − 2x + 2 = 6", "x + 5 = 6", "x = 1"),
        ("(2/3)x − 4 = x/6", "4x − 24 = x", "4x = x + 24", "3x = 24", "x = 8"),
        (
            "0.25x + 0.05(x + 5) = 2.95",
            "25x + 5(x + 5) = 295",
            "25x + 5x + 25 = 295",
            "30x + 25 = 295",
            "30x = 270",
            "x = 9",
        ),
        ("0.5(16x + 34) = −15", "8x + 17 = −15", "8x = −32", "x = −4"),
        (
            "6[4 − 2(7x − 1)] = 8(13 − 8x)",
            "6(4 − 14x + 2) = 104 − 64x",
            "6(6 − 14x) = 104 − 64x",
            "36 − 84x = 104 − 64x",
            "36 = 104 + 20x",
            "−68 = 20x",
            "x = −17/5",
        ),
        ("2 × 3x = 12", "6x = 12", "x = 2"),
        ("65% of x = 13", "0.65x = 13", "65x = 1300", "x = 20"),
        ("x + 27.5 = 90", "x = 62.5"),
        ("5x = 2x", "3x = 0", "x = 0"),
    ],
    ids=lambda lines: lines[0],
)
def test_the_lines_of_a_pupil(lines: tuple[str, ...]) -> None:
    assert solution(lines[0]).lines == lines


def test_no_solution_and_every_number() -> None:
    none = solution("60(2x − 1) = 15(8x + 5)")
    assert (none.lines[-1], none.value) == ("−60 = 75", "none")
    every = solution("3(2x − 1) = 6x − 3")
    assert (every.lines[-1], every.value) == ("−3 = −3", "all")


def test_constants_carry_the_unit() -> None:
    assert solution("5x + 40 = 180", unit="°").lines == ("5x + 40° = 180°", "5x = 140°", "x = 28°")
    assert solution("2x + 10° + 3x = 180°", unit="°").lines[1:] == ("5x + 10° = 180°", "5x = 170°", "x = 34°")
    assert solution("2x = 1.5 m + 20 cm", unit="m").lines[1:] == ("2x = 1.7 m", "x = 0.85 m")
    assert solution("2x + 15 = 70", unit="°").lines[-1] == "x = 27.5°"
    angle = solve_linear(read_relation("∠ABC + 112° = 180°"), read_expression("∠ABC"), "°")  # type: ignore[arg-type]
    assert angle.lines == ("∠ABC + 112° = 180°", "∠ABC = 68°")


@pytest.mark.parametrize(
    ("relations", "unit"),
    [(("2x + 10° = 90°",), "°"), (("(2x + 10)° = 90°",), ""), (("a + b = $5", "a = 2b"), "$"), (("x = 2",), "")],
)
def test_the_unit_that_equations_are_in(relations: tuple[str, ...], unit: str) -> None:
    assert unit_of_constants(*map(read_relation, relations)) == unit


@pytest.mark.parametrize(
    ("text", "error"),
    [
        ("x² = 4", NotLinear),
        ("xy = 4", NotLinear),
        ("3/x = 2", NotLinear),
        ("√x = 2", NotLinear),
        ("x < 3", NotLinear),
        ("x + y = 3", NotLinear),
        ("x/(2 − 2) = 1", NoValue),
        ("x + 2 kg = 3 m", UnitClash),
        ("√2 x = 1", NotLinear),
    ],
)
def test_what_is_not_a_linear_equation_in_one_letter(text: str, error: type[Exception]) -> None:
    with pytest.raises(error):
        solution(text)


def random_side(source: random.Random, depth: int) -> Expression:
    """Sums of multiples of x, numbers and brackets, with whole, fractional or decimal factors."""
    terms: list[Expression] = []
    for _ in range(source.randint(1, 3)):
        below = source.choice([1, 1, 1, 2, 3, 4, 6])
        factor = Number(Fraction(source.randint(1, 9), below))
        kind = source.randrange(4 if depth else 2)
        inside = random_side(source, depth - 1) if kind > 1 else Letter("x")
        term: Expression = factor if not kind else Product((factor, inside))
        term = Quotient(inside, Number(Fraction(source.randint(2, 6)))) if kind == 3 else term
        terms.append(Negative(term) if source.random() < 0.4 else term)
    return Sum(tuple(terms)) if len(terms) > 1 else terms[0]


def symbolic(expression: Expression) -> sympy.Expr:
    match expression:
        case Number(value):
            return sympy.Rational(value.numerator, value.denominator)
        case Letter(name):
            return sympy.Symbol(name)
        case Negative(operand):
            return -symbolic(operand)
        case Sum(terms):
            return sympy.Add(*map(symbolic, terms))
        case Product(factors):
            return sympy.Mul(*map(symbolic, factors))
        case Quotient(above, below):
            return symbolic(above) / symbolic(below)
        case Measured(amount):
            return symbolic(amount)
    raise AssertionError(write(expression))


def solutions(relation: Relation) -> Fraction | str:
    """By sympy: the one solution, "none" or "all"."""
    difference = sympy.expand(symbolic(relation.left) - symbolic(relation.right))
    share, constant = difference.coeff(X, 1), difference.coeff(X, 0)
    assert sympy.expand(share * X + constant - difference) == 0
    if share == 0:
        return "all" if constant == 0 else "none"
    value = sympy.Rational(-constant, share)
    return Fraction(int(value.p), int(value.q))


def test_every_line_of_random_equations_has_the_solution_that_sympy_finds() -> None:
    source, kinds = random.Random(7), {"one": 0, "none": 0, "all": 0}
    for number in range(180):
        depth = 2 if number % 3 == 0 else 1
        relation = Relation(random_side(source, depth), "=", random_side(source, depth))
        if source.random() < 0.1:
            relation = Relation(relation.left, "=", Sum((relation.left, Number(Fraction(source.randint(0, 1))))))
        if not any(symbolic(side).has(X) for side in (relation.left, relation.right)):
            continue
        found = solve_linear(relation, "x")
        lines = [read_relation(line) for line in found.lines]
        assert {solutions(line) for line in (relation, *lines)} == {found.value}, found.lines
        kinds["one" if isinstance(found.value, Fraction) else found.value] += 1
    assert kinds["one"] > 120 and kinds["none"] > 3 and kinds["all"] > 3

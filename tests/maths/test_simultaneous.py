"""Simultaneous linear equations: the shorter way, its lines, and sympy as referee."""

import random
from fractions import Fraction

import pytest
import sympy

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.parse import read_relation
from paperaudit.maths.simultaneous import SimultaneousSolution, solve_simultaneous
from paperaudit.maths.solving import unit_of_constants
from paperaudit.model.expression import Expression, Letter, Negative, Number, Product, Relation, Sum


def solution(*texts: str, asked: tuple[str, ...] = ()) -> SimultaneousSolution:
    relations = [read_relation(text) for text in texts]
    return solve_simultaneous(relations, asked, unit_of_constants(*relations))


def test_adding_where_a_letter_cancels() -> None:
    assert solution("x − 4y = −4", "−3x + 4y = 0").lines == (
        "(1): x − 4y = −4",
        "(2): −3x + 4y = 0",
        "(1) + (2): −2x = −4",
        "x = 2",
        "x = 2 in (1): 2 − 4y = −4",
        "−4y = −6",
        "y = 3/2",
    )


def test_a_multiple_of_one_equation() -> None:
    assert solution("4x + y = 2", "3x + 2y = −1").lines[2:] == (
        "(3) = 2 × (1): 8x + 2y = 4",
        "(3) − (2): 5x = 5",
        "x = 1",
        "x = 1 in (1): 4(1) + y = 2",
        "4 + y = 2",
        "y = −2",
    )


def test_fractions_are_cleared_first() -> None:
    assert solution("(1/3)x − (1/2)y = 1", "(3/4)x − y = 5/2").lines[2:4] == (
        "(3) = 6 × (1): 2x − 3y = 6",
        "(4) = 4 × (2): 3x − 4y = 10",
    )


def test_substituting_where_a_letter_stands_alone() -> None:
    assert solution("A + B = 180°", "B = A + 100°").lines[2:] == (
        "(2) in (1): A + A + 100° = 180°",
        "2A + 100° = 180°",
        "2A = 80°",
        "A = 40°",
        "A = 40° in (2): B = 40° + 100°",
        "B = 140°",
    )


def test_only_what_is_asked_for_is_worked_out() -> None:
    found = solution("h + w = 110000", "w = 2h − 16000", asked=("h",))
    assert found.lines[-1] == "h = 42000"
    assert found.values == ((Letter("h"), Fraction(42000)),)


def test_three_unknowns() -> None:
    found = solution("x + y + z = 6", "2x − y + z = 3", "x + 2y − z = 2")
    assert found.values == tuple((Letter(name), Fraction(value)) for name, value in (("x", 1), ("y", 2), ("z", 3)))
    assert "(4) = (2) − (1): x − 2y = −3" in found.lines


def test_equations_that_clash_or_say_the_same() -> None:
    none = solution("3x + 2y = 9", "y = −(3/2)x + 1")
    assert (none.values, none.lines[-1]) == ("none", "2 = 9")
    same = solution("2x − 3y = 12", "−12y + 8x = 48")
    assert (same.values, same.lines[-1]) == ("all", "(3) − (2): 0 = 0")
    assert solution("x + y = 5").values == "all"
    assert solution("x + y = 5", "x − y = 1", "2x + y = 9").values == "none"


def test_what_is_refused() -> None:
    with pytest.raises(NotLinear):
        solution("xy = 6", "x + y = 5")
    with pytest.raises(BudgetExceeded):
        solution("a + b + c + d = 1", "a − b = 1")


def linear(source: random.Random, letters: str) -> Expression:
    terms: list[Expression] = []
    for letter in letters:
        if size := source.choice([0, 1, 1, 2, 3, 5]):
            share = Number(Fraction(size, source.choice([1, 1, 1, 1, 2])))
            term: Expression = Product((share, Letter(letter))) if share.value != 1 else Letter(letter)
            terms.append(Negative(term) if source.random() < 0.4 else term)
    if source.random() < 0.3 or not terms:
        terms.append(Number(Fraction(source.randint(1, 20))))
    return Sum(tuple(terms)) if len(terms) > 1 else terms[0]


def difference(relation: Relation) -> sympy.Expr:
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
        raise AssertionError(expression)

    return symbolic(relation.left) - symbolic(relation.right)


@pytest.mark.parametrize("letters", ["xy", "xyz"])
def test_random_systems_against_sympy(letters: str) -> None:
    source, found = random.Random(5), {"one": 0, "none": 0, "all": 0}
    for _ in range(200 if letters == "xy" else 80):
        relations = [
            Relation(
                linear(source, letters),
                "=",
                source.choice([Number(Fraction(source.randint(-20, 20))), linear(source, letters[:1])]),
            )
            for _ in letters
        ]
        if source.random() < 0.15:
            first, shifted = relations[0], Number(Fraction(source.randint(0, 1)))
            relations[-1] = Relation(Sum((first.left, shifted)), "=", first.right)
        solution = solve_simultaneous(relations, tuple(letters))
        symbols = [sympy.Symbol(letter) for letter in letters]
        expected = sympy.linsolve(list(map(difference, relations)), symbols)
        if expected == sympy.S.EmptySet:
            assert solution.values == "none", solution.lines
            found["none"] += 1
        elif next(iter(expected)).free_symbols:
            assert solution.values == "all", solution.lines
            found["all"] += 1
        else:
            values = [Fraction(int(value.p), int(value.q)) for value in next(iter(expected))]
            assert solution.values == tuple(zip(map(Letter, letters), values, strict=True)), solution.lines
            found["one"] += 1
    assert found["one"] > 40 and found["none"] > 3 and found["all"] > 3

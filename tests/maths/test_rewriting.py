"""Expressions of the first degree expanded, simplified and factorised, with sympy as referee."""

import random
from fractions import Fraction

import pytest
import sympy

from paperaudit.maths.answer_form import form_fault
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.parse import read_expression
from paperaudit.maths.rewriting import rewritten_lines
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask, Command, Transform
from paperaudit.model.expression import Expression, Letter, Negative, Number, Product, Quotient, Sum

CASES: list[tuple[Command, list[str]]] = [
    ("simplify", ["3(x + 2) − 2(x − 1)", "3x + 6 − 2x + 2", "x + 8"]),
    ("simplify", ["4a − 3b + 2a + 5b", "6a + 2b"]),
    ("simplify", ["x/2 + x/3", "(3x + 2x)/6", "5x/6"]),
    ("simplify", ["(x + 1)/2 + (x − 1)/3", "[3(x + 1) + 2(x − 1)]/6", "(3x + 3 + 2x − 2)/6", "(5x + 1)/6"]),
    ("simplify", ["(2x + 4)/2", "x + 2"]),
    ("simplify", ["(2x + 2)/4", "(x + 1)/2"]),
    ("simplify", ["5 − 2(3 − x)", "5 − 6 + 2x", "2x − 1"]),
    ("simplify", ["2 × 3x", "6x"]),
    ("simplify", ["x − x", "0"]),
    ("simplify", ["3x"]),
    ("expand", ["3(x + 2) + 2(x − 1)", "3x + 6 + 2x − 2", "5x + 4"]),
    ("expand", ["−2(x − 4)", "−2x + 8"]),
    ("expand", ["0.5(x + 3)", "0.5x + 1.5"]),
    ("factorise", ["6x + 9", "3 × 2x + 3 × 3", "3(2x + 3)"]),
    ("factorise", ["−4x − 8", "−4 × x − 4 × 2", "−4(x + 2)"]),
    ("factorise", ["10a + 15b − 5", "5 × 2a + 5 × 3b − 5 × 1", "5(2a + 3b − 1)"]),
    ("factorise", ["x + 3x + 8", "4x + 8", "4 × x + 4 × 2", "4(x + 2)"]),
]


@pytest.mark.parametrize(("command", "lines"), CASES, ids=[f"{command} {lines[0]}" for command, lines in CASES])
def test_the_lines_of_a_pupil(command: Command, lines: list[str]) -> None:
    assert [write(line) for line in rewritten_lines(read_expression(lines[0]), command)] == lines


@pytest.mark.parametrize(
    ("command", "text"),
    [("simplify", "x² + x"), ("expand", "x(x + 1)"), ("factorise", "2x + 3"), ("factorise", "6x"), ("simplify", "1/x")],
)
def test_what_is_left_to_others(command: Command, text: str) -> None:
    with pytest.raises(NotLinear):
        rewritten_lines(read_expression(text), command)


def random_expression(source: random.Random, depth: int) -> Expression:
    terms: list[Expression] = []
    for _ in range(source.randint(1, 3)):
        number = Number(Fraction(source.randint(1, 9)))
        deeper = depth and source.random() < 0.5
        inside = random_expression(source, depth - 1) if deeper else Letter(source.choice("xy"))
        quotient = Quotient(inside, Number(Fraction(source.randint(2, 4))))
        term = source.choice([number, Product((number, inside)), quotient])
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
    raise AssertionError(write(expression))


@pytest.mark.parametrize("command", ["simplify", "expand", "factorise"])
def test_random_expressions_keep_their_value_and_end_in_the_form_asked_for(command: Command) -> None:
    source, finished = random.Random(command), 0
    for _ in range(150):
        expression = random_expression(source, 2)
        try:
            lines = rewritten_lines(expression, command)
        except NotLinear:
            assert command == "factorise"
            continue
        assert {sympy.expand(symbolic(line)) for line in lines} == {sympy.expand(symbolic(expression))}
        written = [write(line) for line in lines]
        assert form_fault(lines[-1], Ask(Transform(command, expression), command)) == "", written
        assert read_expression(written[-1]) is not None
        finished += 1
    assert finished > 40

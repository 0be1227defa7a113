"""Arithmetic in a pupil's lines, with sympy as the referee of every line."""

import random
from fractions import Fraction

import pytest

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.arithmetic import worked_lines
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.parse import read_expression
from paperaudit.maths.symbolic import symbolic_value
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Negative, Number, NumberForm, Power, Product, Quotient, Sum


def lines(text: str, unit: str = "") -> list[str]:
    return [write(line) for line in worked_lines(read_expression(text), unit)]


@pytest.mark.parametrize(
    "expected",
    [
        ["(−3)² − 24/(8 − 2)", "(−3)² − 24/6", "9 − 24/6", "9 − 4", "5"],
        ["25 − [10 − (3 − 12)]", "25 − [10 − (−9)]", "25 − 19", "6"],
        ["2 + 3 × 4", "2 + 12", "14"],
        ["2(3 + 4) + 5 × 6", "2 × 7 + 5 × 6", "14 + 30", "44"],
        ["12 ÷ 3 × 2", "4 × 2", "8"],
        ["−3²", "−9"],
        ["7/12 + 11/15", "35/60 + 44/60", "79/60"],
        ["1 − 3/8", "5/8"],
        ["(−5/6)/(−2/3)", "−5/6 × (−3/2)", "15/12", "5/4"],
        ["(1/3 + 1/2)/(3/4 − 1/3)", "(2/6 + 3/6)/(9/12 − 4/12)", "(5/6)/(5/12)", "5/6 × 12/5", "2"],
        ["8 1/2 − 3 4/5", "17/2 − 19/5", "85/10 − 38/10", "47/10", "4 7/10"],
        ["2 1/4 ÷ 3/8", "9/4 ÷ 3/8", "9/4 × 8/3", "6"],
        ["65% of 240 litres", "65/100 × 240 litres", "156 litres"],
        ["16% of $74.25", "0.16 × $74.25", "$11.88"],
        ["240 + 15% of 240", "240 + 15/100 × 240", "240 + 36", "276"],
        ["100% − 35%", "65%"],
        ["3 × $0.75 + 6 × $0.62", "$2.25 + $3.72", "$5.97"],
        ["2/3 of (1/4 of 60)", "2/3 × (1/4 × 60)", "2/3 × 15", "10"],
        ["1/3 + 0.5", "1/3 + 1/2", "2/6 + 3/6", "5/6"],
        ["1/2 + 0.25", "0.5 + 0.25", "0.75"],
        ["7 ÷ 2", "3.5"],
        ["7 ÷ 3", "7/3"],
        ["2³ × 5 − √49", "8 × 5 − 7", "40 − 7", "33"],
        ["3√5 + √20", "5√5"],
        ["6/8", "3/4"],
        [
            "5",
        ],
    ],
    ids=lambda expected: expected[0],
)
def test_the_lines_of_a_pupil(expected: list[str]) -> None:
    assert lines(expected[0]) == expected


def test_measures_are_added_in_the_unit_asked_for() -> None:
    assert lines("1.5 m + 20 cm") == ["1.5 m + 20 cm", "1.5 m + 0.2 m", "1.7 m"]
    assert lines("1.5 m + 20 cm", "cm") == ["1.5 m + 20 cm", "150 cm + 20 cm", "170 cm"]


@pytest.mark.parametrize(("text", "error"), [("5/(3 − 3)", NoValue), ("∛2", NotSurd), ("9^999", BudgetExceeded)])
def test_what_has_no_lines(text: str, error: type[Exception]) -> None:
    with pytest.raises(error):
        lines(text)


def random_calculation(source: random.Random, depth: int, form: NumberForm) -> Expression:
    if depth == 0:
        return random_number(source, form)
    left = random_calculation(source, depth - 1, form)
    right = random_calculation(source, source.randrange(depth), form)
    match source.randrange(6):
        case 0 | 1:
            return Sum((left, Negative(right) if source.random() < 0.5 else right))
        case 2 | 3:
            return Product((left, right), "×")
        case 4:
            return Quotient(left, right, source.choice(("/", "÷")))
    return Power(left, Number(Fraction(source.randint(2, 3))))


def random_number(source: random.Random, form: NumberForm) -> Expression:
    match form:
        case NumberForm.FRACTION:
            value = Fraction(source.randint(1, 9), source.randint(2, 9))
            number = Number(value, form if value.denominator > 1 else NumberForm.INTEGER)
        case NumberForm.DECIMAL:
            number = Number(Fraction(source.randint(1, 99), 10), form, 1)
        case NumberForm.MIXED:
            number = Number(source.randint(1, 4) + Fraction(1, source.randint(2, 6)), form)
        case _:
            number = Number(Fraction(source.randint(0, 12)))
    return Negative(number) if source.random() < 0.2 else number


@pytest.mark.parametrize("form", [NumberForm.INTEGER, NumberForm.FRACTION, NumberForm.DECIMAL, NumberForm.MIXED])
def test_every_line_of_random_calculations_has_the_value_that_sympy_finds(form: NumberForm) -> None:
    source, compared = random.Random(form.value), 0
    for _ in range(100):
        expression = random_calculation(source, 3, form)
        try:
            expected = symbolic_value(expression)
            working = worked_lines(expression)
        except (NoValue, BudgetExceeded):
            continue
        compared += 1
        assert {symbolic_value(line) for line in working} == {expected}, [write(line) for line in working]
        assert isinstance(working[-1], Number) or expected.is_negative, [write(line) for line in working]
    assert compared > 60

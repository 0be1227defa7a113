"""Expressions in a pupil's notation, and back through the parser to the same value."""

from fractions import Fraction

import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as st

from paperaudit.errors import NoValue
from paperaudit.maths.parse import read_expression, read_relation
from paperaudit.maths.polynomial import algebraic_fraction
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    AnswerTo,
    AreaOf,
    Expression,
    LengthOf,
    Letter,
    Measured,
    Negative,
    Number,
    NumberForm,
    Of,
    PerimeterOf,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
)

X, Y = Letter("x"), Letter("y")


def n(value: str | int, form: NumberForm = NumberForm.INTEGER, places: int = 0) -> Number:
    return Number(Fraction(value), form, places)


@pytest.mark.parametrize(
    ("expression", "text"),
    [
        (Product((n(3), X)), "3x"),
        (Product((n(2), Sum((X, Negative(n(4)))))), "2(x − 4)"),
        (Power(X, n(2)), "x²"),
        (n("7/12", NumberForm.FRACTION), "7/12"),
        (Root(n(5)), "√5"),
        (Product((n(3), Root(n(5)))), "3√5"),
        (n("65/100", NumberForm.PERCENT), "65%"),
        (n("625/1000", NumberForm.PERCENT, 1), "62.5%"),
        (n("1/2", NumberForm.DECIMAL, 2), "0.50"),
        (n("-47/10", NumberForm.MIXED), "−4 7/10"),
        (Measured(n(68), "°"), "68°"),
        (Measured(n("7.5", NumberForm.DECIMAL, 1), "cm"), "7.5 cm"),
        (Measured(n(156), "litre"), "156 litres"),
        (Measured(n(1), "litre"), "1 litre"),
        (Measured(n("11.60", NumberForm.DECIMAL, 2), "$"), "$11.60"),
        (Measured(n(-5), "R"), "−R5"),
        (AngleOf("A", "B", "C"), "∠ABC"),
        (AngleOf("A", "B", "C", reflex=True), "reflex ∠ABC"),
        (AngleAt("B", 1), "B̂₁"),
        (AngleAt("B"), "∠B"),
        (LengthOf("A", "B"), "AB"),
        (AreaOf(("A", "B", "C")), "area of △ABC"),
        (PerimeterOf(("A", "B", "C", "D")), "perimeter of ABCD"),
        (AnswerTo("a"), "answer to a"),
        (n(-2), "−2"),
        (Of(n("65/100", NumberForm.PERCENT), Measured(n(240), "litre")), "65% of 240 litres"),
        (Measured(Sum((Product((n(2), X)), n(10))), "°"), "(2x + 10)°"),
        (Sum((Product((n(2), X)), Measured(n(10), "°"))), "2x + 10°"),
    ],
)
def test_a_pupils_notation(expression: Expression, text: str) -> None:
    assert write(expression) == text


@pytest.mark.parametrize(
    ("expression", "text"),
    [
        (Quotient(n(1), Product((n(2), X))), "1/(2x)"),
        (Quotient(Product((n(2), X)), n(3)), "2x/3"),
        (Product((n("2/3", NumberForm.FRACTION), X)), "(2/3)x"),
        (Quotient(Sum((X, n(1))), n(2)), "(x + 1)/2"),
        (Negative(Sum((X, Y))), "−(x + y)"),
        (Sum((n(25), Negative(n(-9)))), "25 − (−9)"),
        (Sum((n(7), Product((n(-3), X)))), "7 + (−3x)"),
        (Sum((n(25), Negative(Sum((n(10), Negative(Sum((n(3), Negative(n(12)))))))))), "25 − [10 − (3 − 12)]"),
        (Power(Negative(n(3)), n(2)), "(−3)²"),
        (Negative(Power(n(3), n(2))), "−3²"),
        (Power(Power(X, n(2)), n(3)), "(x²)³"),
        (Power(n("1/2", NumberForm.FRACTION), n(2)), "(1/2)²"),
        (Product((n(3), n(4))), "3(4)"),
        (Product((n(-2), n(-3)), "×"), "−2 × (−3)"),
        (Product((Root(n(5)), X)), "(√5)x"),
        (Quotient(n(6), Product((n(2), Sum((n(1), n(2))))), "÷"), "6 ÷ [2(1 + 2)]"),
        (Quotient(Quotient(n(1), n(2)), n(3)), "(1/2)/3"),
        (Root(Sum((X, Y))), "√(x + y)"),
    ],
)
def test_brackets_exactly_where_they_are_needed(expression: Expression, text: str) -> None:
    assert write(expression) == text


def test_a_relation() -> None:
    assert write(Relation(Product((n(3), X)), "≤", n(12))) == "3x ≤ 12"
    assert write(read_relation("3(x - 4) = 2x+5")) == "3(x − 4) = 2x + 5"


whole = st.integers(1, 120).map(n)
decimal = st.integers(1, 9999).map(lambda value: Number(Fraction(value, 100), NumberForm.DECIMAL, 2))
fraction = (
    st.fractions(0, 20, max_denominator=12)
    .filter(lambda value: value.denominator > 1)
    .map(lambda value: Number(value, NumberForm.FRACTION))
)
letter = st.sampled_from("xyzabn").map(Letter)


def larger(inner: st.SearchStrategy[Expression]) -> st.SearchStrategy[Expression]:
    term = st.tuples(st.booleans(), inner).map(lambda pair: Negative(pair[1]) if pair[0] else pair[1])
    exponent = st.integers(2, 4).map(n)
    return st.one_of(
        st.lists(term, min_size=2, max_size=3).map(lambda terms: Sum(tuple(terms))),
        st.lists(inner, min_size=2, max_size=3).map(lambda factors: Product(tuple(factors), "×")),
        st.tuples(whole, inner).map(Product),
        st.tuples(inner, inner, st.sampled_from("/÷")).map(lambda parts: Quotient(*parts)),
        st.tuples(inner, exponent).map(lambda parts: Power(*parts)),
        st.tuples(inner, inner).map(lambda parts: Of(*parts)),
        whole.map(Root),
    )


expressions = st.recursive(st.one_of(whole, decimal, fraction, letter), larger, max_leaves=7)


@settings(max_examples=400, deadline=None)
@given(expressions)
def test_what_is_written_is_read_back_with_the_same_value(expression: Expression) -> None:
    read = read_expression(write(expression))
    if isinstance(read, Number) and isinstance(expression, Number):
        assert read == expression
    try:
        value = algebraic_fraction(expression)
    except NoValue:  # a division by nought
        reject()
    assert algebraic_fraction(read).same_as(value)

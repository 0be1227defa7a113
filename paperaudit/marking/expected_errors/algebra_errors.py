"""Errors in algebra: brackets, powers, like terms, cancelling, equations."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.marking.expected_errors.expected_error import ExpectedError
from paperaudit.marking.expected_errors.occasions import Occasion, Rewriting, rewritten, rewritten_relation
from paperaudit.maths.exact import NotSurd, rational_value
from paperaudit.maths.polynomial import ONE, Polynomial, algebraic_fraction
from paperaudit.maths.same_value import same_value
from paperaudit.model.ask import Transform
from paperaudit.model.expression import (
    Expression,
    Letter,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Relation,
    Sum,
    letters_of,
)


class _InExpressions:
    """The wrong forms of an expression, or the wrong solutions of an equation, that a rewriting leads to."""

    def __init__(self, rewrite: Rewriting) -> None:
        self._rewrite = rewrite

    def __call__(self, occasion: Occasion) -> Iterator[Expression]:
        expression, equation = occasion.expression, occasion.equation
        if expression is not None:
            yield from rewritten(expression, self._rewrite)
        elif equation is not None:
            for wrong in rewritten_relation(equation, self._rewrite):
                solution = solution_of(wrong)
                if solution is not None:
                    yield solution


def solution_of(equation: Relation) -> Expression | None:
    """The one solution of an equation of the first degree in one letter, None of any other."""
    line = line_of(equation)
    return None if line is None else Number(-line[1] / line[0])


def line_of(equation: Relation) -> tuple[Fraction, Fraction] | None:
    """a and b of the equation ax + b = 0, where it is one with a other than 0."""
    names = letters_of(Sum((equation.left, equation.right)))
    if len(names) != 1:
        return None
    try:
        difference = algebraic_fraction(Sum((equation.left, Negative(equation.right))))
    except (NotSurd, NoValue, BudgetExceeded):
        return None
    if difference.below != ONE or difference.above.degree != 1:
        return None
    slope = _coefficient(difference.above, ((Letter(names[0]), 1),))
    constant = _coefficient(difference.above, ())
    return (slope, constant) if slope and constant is not None else None


def _coefficient(polynomial: Polynomial, monomial: tuple[tuple[Expression, int], ...]) -> Fraction | None:
    share = polynomial.terms.get(monomial)
    return Fraction(0) if share is None else share.fraction


def _first_term_only(expression: Expression) -> Iterator[Expression]:
    """3(x + 2) as 3x + 2."""
    match expression:
        case Product((factor, Sum((first, *rest)))) if not isinstance(factor, Sum):
            yield Sum((Product((factor, first)), *rest))


def _square_of_a_sum(expression: Expression) -> Iterator[Expression]:
    """(x + 3)² as x² + 9."""
    match expression:
        case Power(Sum((one, two)), Number(exponent) as power) if exponent == 2:
            way = isinstance(two, Negative)
            other = Power(two.operand, power) if isinstance(two, Negative) else Power(two, power)
            yield Sum((Power(one, power), Negative(other) if way else other))


def _minus_into_bracket(expression: Expression) -> Iterator[Expression]:
    """−(x − 4) as −x − 4."""
    match expression:
        case Negative(Sum((first, *rest))):
            yield Sum((Negative(first), *rest))
        case Negative(Product((factor, Sum((first, *rest))))) if not isinstance(factor, Sum):
            yield Sum((Negative(Product((factor, first))), *(_times(factor, term) for term in rest)))


def _times(factor: Expression, term: Expression) -> Expression:
    if isinstance(term, Negative):
        return Negative(Product((factor, term.operand)))
    return Product((factor, term))


def _term_cancelled(expression: Expression) -> Iterator[Expression]:
    """(4x + 8)/4 as x + 8."""
    match expression:
        case Quotient(Sum(terms), below):
            for place, term in enumerate(terms):
                quotient = _divided(term, below)
                if quotient is not None:
                    yield Sum((*terms[:place], quotient, *terms[place + 1 :]))


def _divided(term: Expression, below: Expression) -> Expression | None:
    """A term over what stands below the bar, where that goes into it."""
    if term == below:
        return Number(Fraction(1))
    match term, below:
        case Product((Number(share), *rest)), Number(divisor) if divisor and (share / divisor).denominator == 1:
            return Product((Number(share / divisor), *rest))
    return None


def _powers_multiplied(expression: Expression) -> Iterator[Expression]:
    """x³ × x² as x⁶."""
    match expression:
        case Product((Power(one, Number(m)), Power(two, Number(n)))) if one == two:
            yield Power(one, Number(m * n))


def _power_as_multiple(expression: Expression) -> Iterator[Expression]:
    """5² as 5 × 2."""
    match expression:
        case Power(Number() | Letter() as base, Number(exponent) as power) if exponent > 1:
            yield Product((base, power), "×")


def _coefficient_left(expression: Expression) -> Iterator[Expression]:
    """(2x)² as 2x²."""
    match expression:
        case Power(Product((Number() as share, *rest)), power):
            yield Product((share, *(Power(factor, power) for factor in rest)))


def _joined_up(occasion: Occasion) -> Iterator[Expression]:
    """4 + 3n as 7n: what cannot be simplified is joined."""
    answer, ask = occasion.answer, occasion.part.reading.ask
    if answer is None or ask is None or not isinstance(ask.task, Transform) or ask.task.command == "factorise":
        return
    match answer.value:
        case Sum((Number(constant), Product((Number(share), Letter() as letter)))) | Sum(
            (Product((Number(share), Letter() as letter)), Number(constant))
        ):
            yield Product((Number(constant + share), letter))


def _line(occasion: Occasion) -> tuple[Fraction, Fraction, Fraction] | None:
    """a, b and c of the equation ax + b = c as it is printed."""
    equation = occasion.equation
    if equation is None or letters_of(equation.right):
        return None
    line, right = line_of(equation), rational_value(equation.right)
    if line is None or right is None or same_value(equation.left, Number(right)):
        return None
    return line[0], line[1] + right, right


def _sign_kept(occasion: Occasion) -> Iterator[Expression]:
    """x + 5 = 12 solved by 12 + 5."""
    if (found := _line(occasion)) and found[1]:
        slope, constant, right = found
        yield Number((right + constant) / slope)


def _coefficient_subtracted(occasion: Occasion) -> Iterator[Expression]:
    """3x = 12 solved by 12 − 3."""
    if (found := _line(occasion)) and found[0] != 1:
        slope, constant, right = found
        yield Number(right - constant - slope)


ALGEBRA_ERRORS = (
    ExpectedError(
        "conjoining",
        21,
        "joins unlike terms into one",
        "Küchemann in Hart 1981; Booth 1984",
        _joined_up,
        {"ask": "simplify 4 + n + 2n"},
        "7n",
    ),
    ExpectedError(
        "first term only",
        24,
        "multiplies the first term of the bracket only",
        "Booth 1984; Matz 1982",
        _InExpressions(_first_term_only),
        {"ask": "expand 3(x + 2)"},
        "3x + 2",
    ),
    ExpectedError(
        "square of a sum",
        25,
        "squares each term of a bracket on its own",
        "Matz 1982",
        _InExpressions(_square_of_a_sum),
        {"ask": "calculate (2 + 3)²"},
        "13",
    ),
    ExpectedError(
        "minus into the bracket",
        26,
        "changes the sign of the first term of the bracket only",
        "Matz 1982",
        _InExpressions(_minus_into_bracket),
        {"ask": "simplify 7 − (x − 4)"},
        "3 − x",
    ),
    ExpectedError(
        "sign kept",
        27,
        "moves a term to the other side with its own sign",
        "Kieran 1992",
        _sign_kept,
        {"ask": "solve x + 5 = 12"},
        "17",
    ),
    ExpectedError(
        "coefficient subtracted",
        28,
        "subtracts the coefficient where it should divide by it",
        "Kieran 1992",
        _coefficient_subtracted,
        {"ask": "solve 3x = 12"},
        "9",
    ),
    ExpectedError(
        "term cancelled",
        31,
        "cancels the denominator against one term of the numerator",
        "Matz 1982",
        _InExpressions(_term_cancelled),
        {"ask": "simplify (4x + 8)/4"},
        "x + 8",
    ),
    ExpectedError(
        "indices multiplied",
        32,
        "multiplies the indices of a product of powers",
        "examiners' reports",
        _InExpressions(_powers_multiplied),
        {"ask": "calculate 2³ × 2²"},
        "64",
    ),
    ExpectedError(
        "power as multiple",
        33,
        "takes a power for a multiple",
        "Ryan and Williams 2007",
        _InExpressions(_power_as_multiple),
        {"ask": "calculate 5²"},
        "10",
    ),
    ExpectedError(
        "coefficient not raised",
        34,
        "leaves the coefficient out of the power",
        "Matz 1982",
        _InExpressions(_coefficient_left),
        {"ask": "calculate (2 × 3)²"},
        "18",
    ),
)
"""Rows 21, 24 to 28 and 31 to 34 of the table of documented errors."""

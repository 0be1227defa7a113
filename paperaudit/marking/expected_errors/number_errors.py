"""Errors in calculations with numbers: order of operations, signs, fractions, decimals, percentages."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.marking.expected_errors.expected_error import ExpectedError
from paperaudit.marking.expected_errors.occasions import Occasion, Rewriting, is_number, rewritten
from paperaudit.maths.exact import rational_value
from paperaudit.model.expression import Expression, Negative, Number, NumberForm, Of, Product, Quotient, Sum, leaves


def _in_calculations(rewrite: Rewriting) -> "_Wrong":
    return _Wrong(rewrite)


class _Wrong:
    """The wrong values that a rewriting gives to an expression of numbers alone."""

    def __init__(self, rewrite: Rewriting) -> None:
        self._rewrite = rewrite

    def __call__(self, occasion: Occasion) -> Iterator[Expression]:
        expression = occasion.expression
        if expression is not None and all(isinstance(leaf, Number) for leaf in leaves(expression)):
            yield from rewritten(expression, self._rewrite)


def _value(expression: Expression) -> Fraction:
    found = rational_value(expression)
    assert found is not None
    return found


def _left_to_right(expression: Expression) -> Iterator[Expression]:
    """2 + 3 × 4 as (2 + 3) × 4."""
    match expression:
        case Sum((first, *rest)) if all(map(is_number, (first, *rest))) and any(map(_is_worked, rest)):
            total = _value(first)
            for term in rest:
                total = _carried_on(total, term)
            yield Number(total)


def _is_worked(term: Expression) -> bool:
    inner = term.operand if isinstance(term, Negative) else term
    return (isinstance(inner, Product) and inner.sign == "×") or (isinstance(inner, Quotient) and inner.sign == "÷")


def _carried_on(total: Fraction, term: Expression) -> Fraction:
    """What comes next done to what there is so far: + 3 × 4 adds 3, then takes four times all of it."""
    inner, way = (term.operand, -1) if isinstance(term, Negative) else (term, 1)
    match inner:
        case Product((first, *rest), "×"):
            total += way * _value(first)
            for factor in rest:
                total *= _value(factor)
            return total
        case Quotient(above, below, "÷") if _value(below):
            return (total + way * _value(above)) / _value(below)
    return total + _value(term)


def _negative_subtracted(expression: Expression) -> Iterator[Expression]:
    """5 − (−3) as 5 − 3."""
    match expression:
        case Sum(terms):
            for place, term in enumerate(terms):
                if place and isinstance(term, Negative) and isinstance(term.operand, Negative):
                    yield Sum((*terms[:place], term.operand, *terms[place + 1 :]))


def _two_minuses(expression: Expression) -> Iterator[Expression]:
    """−3 − 5 as 8."""
    match expression:
        case Sum((Negative(one), Negative(two))) if not isinstance(two, Negative):
            yield Sum((one, two))


def _fraction(expression: Expression) -> tuple[int, int] | None:
    match expression:
        case Number(value, NumberForm.FRACTION):
            return value.numerator, value.denominator
        case Quotient(Number(above, NumberForm.INTEGER), Number(below, NumberForm.INTEGER), "/"):
            return int(above), int(below)
    return None


def _pair_of_fractions(expression: Expression) -> tuple[tuple[int, int], tuple[int, int], int] | None:
    """Two fractions that are added (+1) or subtracted (−1)."""
    match expression:
        case Sum((first, second)):
            way = -1 if isinstance(second, Negative) else 1
            one, two = _fraction(first), _fraction(second.operand if isinstance(second, Negative) else second)
            return (one, two, way) if one and two else None
    return None


def _top_and_bottom(expression: Expression) -> Iterator[Expression]:
    """1/2 + 1/3 as 2/5."""
    if found := _pair_of_fractions(expression):
        (a, b), (c, d), way = found
        if b + way * d:
            yield Number(Fraction(a + way * c, b + way * d))


def _larger_denominator(expression: Expression) -> Iterator[Expression]:
    """3/5 + 3/10 as 6/10."""
    if found := _pair_of_fractions(expression):
        (a, b), (c, d), way = found
        if b != d:
            yield Number(Fraction(a + way * c, max(b, d)))


def _nought_put_on(expression: Expression) -> Iterator[Expression]:
    """2.5 × 10 as 2.50."""
    match expression:
        case Product((Number(value, NumberForm.DECIMAL), Number(power, NumberForm.INTEGER)), "×") if power in (
            10,
            100,
            1000,
        ):
            yield Number(value)


def _tenths_kept(expression: Expression) -> Iterator[Expression]:
    """0.3 × 0.2 as 0.6."""
    match expression:
        case Product((Number(one, NumberForm.DECIMAL, 1), Number(two, NumberForm.DECIMAL, 1)), "×") if (
            one < 1 and two < 1
        ):
            yield Number(one * two * 10)


def _smaller_from_larger(expression: Expression) -> Iterator[Expression]:
    """62 − 38 as 36: in each column the smaller digit is taken from the larger."""
    match expression:
        case Sum((Number(one, NumberForm.INTEGER), Negative(Number(two, NumberForm.INTEGER)))) if one > two >= 10:
            above, below = str(one), str(two).rjust(len(str(one)), "0")
            digits = "".join(str(abs(int(a) - int(b))) for a, b in zip(above, below, strict=True))
            if any(a < b for a, b in zip(above, below, strict=True)):
                yield Number(Fraction(int(digits)))


def _divided_by_percentage(expression: Expression) -> Iterator[Expression]:
    """5% of 60 as 60 ÷ 5."""
    match expression:
        case Of(Number(share, NumberForm.PERCENT), whole) if share:
            yield Quotient(whole, Number(share * 100))


NUMBER_ERRORS = (
    ExpectedError(
        "left to right",
        30,
        "works from left to right, whatever the operations are",
        "Ryan and Williams 2007",
        _in_calculations(_left_to_right),
        {"ask": "2 + 3 × 4"},
        "20",
    ),
    ExpectedError(
        "subtracting a negative",
        35,
        "subtracts the number where its opposite is to be subtracted",
        "Hart 1981",
        _in_calculations(_negative_subtracted),
        {"ask": "calculate 5 − (−3)"},
        "2",
    ),
    ExpectedError(
        "two minuses",
        36,
        "takes two minus signs in a sum for a plus",
        "Hart 1981; Ryan and Williams 2007",
        _in_calculations(_two_minuses),
        {"ask": "calculate −3 − 5"},
        "8",
    ),
    ExpectedError(
        "tops and bottoms",
        38,
        "adds or subtracts numerators and denominators",
        "IES practice guide on fractions 2010",
        _in_calculations(_top_and_bottom),
        {"ask": "calculate 1/2 + 1/3"},
        "2/5",
    ),
    ExpectedError(
        "larger denominator",
        39,
        "keeps the larger denominator without changing the numerator",
        "IES practice guide on fractions 2010",
        _in_calculations(_larger_denominator),
        {"ask": "calculate 3/5 + 3/10"},
        "6/10",
    ),
    ExpectedError(
        "nought put on",
        44,
        "multiplies a decimal by ten by putting a nought on",
        "Hart 1981",
        _in_calculations(_nought_put_on),
        {"ask": "calculate 2.5 × 10"},
        "2.5",
    ),
    ExpectedError(
        "tenths kept",
        45,
        "keeps tenths in a product of tenths",
        "Hart 1981; Ryan and Williams 2007",
        _in_calculations(_tenths_kept),
        {"ask": "calculate 0.3 × 0.2"},
        "0.6",
    ),
    ExpectedError(
        "smaller from larger",
        46,
        "takes the smaller digit from the larger in each column",
        "Brown and Burton 1978",
        _in_calculations(_smaller_from_larger),
        {"ask": "calculate 62 − 38"},
        "36",
    ),
    ExpectedError(
        "divided by the percentage",
        48,
        "divides by the number of per cent",
        "Ryan and Williams 2007",
        _in_calculations(_divided_by_percentage),
        {"ask": "5% of 60"},
        "12",
    ),
)
"""Rows 30, 35, 36, 38, 39, 44, 45, 46 and 48 of the table of documented errors."""

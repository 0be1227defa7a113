"""The laws of logarithms: sums as one logarithm, one logarithm as a sum, and the numbers that come out."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.exact import NotSurd, bounded_power, exact_value, rational_value, whole_root
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Absolute,
    Euler,
    Expression,
    Logarithm,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    letters_of,
    parts_of,
)

ONE = Number(Fraction(1))
TEN = Number(Fraction(10))


@dataclass(frozen=True, slots=True)
class LogTerm:
    """A logarithm with the number in front of it: 2 log x."""

    size: Fraction
    log: Logarithm

    def expression(self) -> Expression:
        """As it is written, the sign in front."""
        amount = abs(self.size)
        body: Expression = self.log if amount == 1 else Product((whole_or_fraction(amount), self.log))
        return Negative(body) if self.size < 0 else body


def has_logarithm(expression: Expression) -> bool:
    """Whether a logarithm stands in an expression."""
    return isinstance(expression, Logarithm) or any(map(has_logarithm, parts_of(expression)))


def has_absolute(expression: Expression) -> bool:
    """Whether something stands between bars."""
    return isinstance(expression, Absolute) or any(map(has_absolute, parts_of(expression)))


def log_terms(expression: Expression) -> tuple[list[LogTerm], Fraction]:
    """The logarithms of a sum with their numbers, and the number that stands beside them.

    Raises NotTerms for a product or a quotient of logarithms and for a term in letters.
    """
    logs: list[LogTerm] = []
    number = Fraction(0)
    for sign, term in signed_terms(expression):
        if not has_logarithm(term):
            value = None if letters_of(term) else _rational(term)
            if value is None:
                raise NotTerms(f"{write(term)} beside logarithms")
            number += sign * value
            continue
        logs.append(_log_term(sign, term))
    return logs, number


def _rational(expression: Expression) -> Fraction | None:
    return None if any(isinstance(part, Euler) for part in (expression, *parts_of(expression))) else rational_value(
        expression
    )  # fmt: skip


def _log_term(sign: int, term: Expression) -> LogTerm:
    size, rest = Fraction(sign), term
    if isinstance(rest, Quotient) and (below := _rational(rest.denominator)):
        size, rest = size / below, rest.numerator
    if isinstance(rest, Negative):
        size, rest = -size, rest.operand
    if isinstance(rest, Product):
        logs = [factor for factor in rest.factors if has_logarithm(factor)]
        for factor in rest.factors:
            value = None if factor in logs or letters_of(factor) else _rational(factor)
            if value is None and factor not in logs:
                raise NotTerms(f"{write(term)}, a logarithm times what is no number")
            size *= value if value is not None else 1
        rest = logs[0] if len(logs) == 1 else rest
    if not isinstance(rest, Logarithm):
        raise NotTerms(f"{write(term)}, which is no multiple of a logarithm")
    return LogTerm(size, rest)


def signed_terms(expression: Expression) -> list[tuple[int, Expression]]:
    """The terms of a sum with their signs."""
    found: list[tuple[int, Expression]] = []
    for term in expression.terms if isinstance(expression, Sum) else (expression,):
        sign = 1
        while isinstance(term, Negative):
            sign, term = -sign, term.operand
        found.append((sign, term))
    return found


def total_of(terms: Iterable[LogTerm], number: Fraction = Fraction(0)) -> Expression:
    """The sum as it is written: 2 log x + log y − 1."""
    pieces = [term.expression() for term in terms]
    if number or not pieces:
        size = whole_or_fraction(abs(number))
        pieces.append(Negative(size) if number < 0 and pieces else whole_or_fraction(number))
    if isinstance(pieces[0], Negative):
        pieces.sort(key=lambda piece: isinstance(piece, Negative))
    return pieces[0] if len(pieces) == 1 else Sum(tuple(pieces))


def one_base(terms: Sequence[LogTerm]) -> Expression:
    """The base that all of them have; raises NotTerms where they have several."""
    bases = {term.log.base for term in terms}
    if len(bases) != 1:
        raise NotTerms("logarithms to several bases")
    return bases.pop()


def powers_inside(terms: Sequence[LogTerm]) -> list[LogTerm]:
    """2 log x as log x², (1/2) log x as log √x; the signs stay in front."""
    return [LogTerm(Fraction(1 if term.size > 0 else -1), _raised_inside(term)) for term in terms]


def _raised_inside(term: LogTerm) -> Logarithm:
    return Logarithm(raised(term.log.argument, abs(term.size)), term.log.base)


def single_argument(terms: Sequence[LogTerm]) -> Expression:
    """What the one logarithm is taken of: factors above for added ones, below for those taken away."""
    above = [term.log.argument for term in terms if term.size > 0]
    below = [term.log.argument for term in terms if term.size < 0]
    return joined(above, below)


def raised(expression: Expression, exponent: Fraction) -> Expression:
    """A power with the exponent worked in: (x²)³ is x⁶, 5² is 25, the half of an exponent is a root."""
    if exponent == 1:
        return expression
    value = None if letters_of(expression) else _rational(expression)
    if value is not None:
        return _number_raised(value, exponent)
    match expression:
        case Power(base, Number(count)):
            return raised(base, count * exponent)
        case Product(factors):
            return Product(tuple(raised(factor, exponent) for factor in factors))
        case Quotient(over, under):
            return Quotient(raised(over, exponent), raised(under, exponent))
        case Root(radicand, degree):
            return raised(radicand, exponent / degree)
    if exponent.denominator == 1:
        return Power(expression, Number(exponent))
    inside = raised(expression, Fraction(exponent.numerator))
    return Root(inside, exponent.denominator)


def _number_raised(value: Fraction, exponent: Fraction) -> Expression:
    power = bounded_power(value, exponent.numerator)
    degree = exponent.denominator
    over, under = whole_root(power.numerator, degree), whole_root(power.denominator, degree)
    if over is not None and under is not None:
        return whole_or_fraction(Fraction(over, under))
    return Root(whole_or_fraction(power), degree)


def joined(above: Sequence[Expression], below: Sequence[Expression]) -> Expression:
    """A quotient of products, its numbers worked out and put in front."""
    size = Fraction(1)
    tops: list[Expression] = []
    bottoms: list[Expression] = []
    waiting = [(one, True) for one in above] + [(one, False) for one in below]
    while waiting:
        one, up = waiting.pop(0)
        value = None if letters_of(one) else _rational(one)
        if value is not None:
            size = size * value if up else size / value
        elif isinstance(one, Product):
            waiting = [(factor, up) for factor in one.factors] + waiting
        elif isinstance(one, Quotient):
            waiting = [(one.numerator, up), (one.denominator, not up), *waiting]
        else:
            (tops if up else bottoms).append(one)
    for factor in list(tops):
        if factor in bottoms:
            tops.remove(factor)
            bottoms.remove(factor)
    top, bottom = _product(size.numerator, tops), _product(size.denominator, bottoms)
    return top if bottom == ONE else Quotient(top, bottom)


def _product(size: int, factors: list[Expression]) -> Expression:
    """The number, letters, brackets; equal factors as a power."""
    ordered = sorted(dict.fromkeys(factors), key=lambda factor: isinstance(factor, Sum))
    counted = [raised(factor, Fraction(factors.count(factor))) for factor in ordered]
    pieces = [*([whole_or_fraction(Fraction(size))] if size != 1 or not counted else []), *counted]
    return pieces[0] if len(pieces) == 1 else Product(tuple(pieces))


def parted(log: Logarithm) -> list[LogTerm]:
    """log (x²y/z) as log x² + log y − log z."""
    return [LogTerm(Fraction(sign), Logarithm(factor, log.base)) for sign, factor in _factors(log.argument, 1)]


def _factors(expression: Expression, sign: int) -> list[tuple[int, Expression]]:
    match expression:
        case Product(factors):
            return [pair for factor in factors for pair in _factors(factor, sign)]
        case Quotient(above, below):
            return [*_factors(above, sign), *_factors(below, -sign)]
        case Number(value) if value.denominator > 1:
            return [
                *_factors(Number(Fraction(value.numerator)), sign),
                *_factors(Number(Fraction(value.denominator)), -sign),
            ]
        case Root(radicand, degree) if isinstance(radicand, Product | Quotient):
            return [(one, raised(part, Fraction(1, degree))) for one, part in _factors(radicand, sign)]
    return [] if expression == ONE else [(sign, expression)]  # fmt: skip


def powers_in_front(terms: Sequence[LogTerm]) -> list[LogTerm]:
    """log x² as 2 log x, log √x as (1/2) log x."""
    return [_in_front(term) for term in terms]


def _in_front(term: LogTerm) -> LogTerm:
    match term.log.argument:
        case Power(base, exponent) if not letters_of(exponent) and (count := _rational(exponent)) is not None:
            return _in_front(LogTerm(term.size * count, Logarithm(base, term.log.base)))
        case Root(radicand, degree):
            return _in_front(LogTerm(term.size / degree, Logarithm(radicand, term.log.base)))
    return term


def worked_out(log: Logarithm) -> Fraction | None:
    """The value of a logarithm that is a fraction, else None."""
    if letters_of(log):
        return None
    match log.argument:
        case Power(base, exponent) if base == log.base:
            return rational_value(exponent)
        case Root(radicand, degree) if isinstance(log.base, Euler):
            inner = worked_out(Logarithm(radicand, log.base))
            return None if inner is None else inner / degree
        case Quotient(Number(Fraction(numerator=1, denominator=1)), below) if isinstance(log.base, Euler):
            inner = worked_out(Logarithm(below, log.base))
            return None if inner is None else -inner
    try:
        value = exact_value(log)
    except NotSurd:
        return None
    return value if isinstance(value, Fraction) else None

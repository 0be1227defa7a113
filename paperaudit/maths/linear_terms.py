"""One side of a linear equation as a pupil sees it: terms and brackets in the order written."""

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from paperaudit.errors import NoValue, PaperauditError
from paperaudit.maths.exact import rational_value
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    AnswerTo,
    Expression,
    Letter,
    Measured,
    Negative,
    Number,
    Of,
    Power,
    Product,
    Quantity,
    Quotient,
    Root,
    Sum,
    leaves,
)

Unknown: TypeAlias = Letter | Quantity | AnswerTo
_UNKNOWN = Letter | Quantity | AnswerTo


class NotLinear(PaperauditError):
    """An expression that is not of the first degree in its letters; the message names what it is."""


@dataclass(frozen=True, slots=True)
class Term:
    """A multiple of an unknown, or a number where `unknown` is None."""

    coefficient: Fraction
    unknown: Unknown | None = None


@dataclass(frozen=True, slots=True)
class Bracket:
    """A multiple of terms in brackets, (x + 1)/2 included."""

    factor: Fraction
    inside: "tuple[Term | Bracket, ...]"


Side: TypeAlias = tuple[Term | Bracket, ...]


def has_unknowns(expression: Expression) -> bool:
    """Whether any letter or quantity occurs."""
    return any(isinstance(leaf, _UNKNOWN) for leaf in leaves(expression))


def side_of(expression: Expression) -> Side:
    """The terms of an expression without units. Raises NotLinear, and NoValue for a division by nought.

    >>> side_of(Sum((Letter("x"), Number(Fraction(3)))))[0]
    Term(coefficient=Fraction(1, 1), unknown=Letter(name='x'))
    """
    if not has_unknowns(expression):
        if isinstance(expression, Sum):
            return tuple(term for part in expression.terms for term in side_of(part))
        return (Term(_number(expression)),)
    match expression:
        case Negative(operand):
            return _times(side_of(operand), Fraction(-1), isinstance(operand, Sum))
        case Sum(terms):
            return tuple(term for part in terms for term in _as_term(part))
        case Product(factors):
            return _product(factors)
        case Of(share, whole):
            return _product((share, whole))
        case Quotient(numerator, denominator):
            if has_unknowns(denominator):
                raise NotLinear("a letter under a fraction bar")
            divisor = _number(denominator)
            if not divisor:
                raise NoValue("a division by nought")
            return _times(side_of(numerator), 1 / divisor, isinstance(numerator, Sum))
        case Power() | Root():
            raise NotLinear(f"the power or root {write(expression)}")
    if not isinstance(expression, _UNKNOWN):
        raise NotLinear(write(expression))
    return (Term(Fraction(1), expression),)


def _number(expression: Expression) -> Fraction:
    value = rational_value(expression)
    if value is None:
        raise NotLinear(f"the irrational number {write(expression)}")
    return value


def _as_term(part: Expression) -> Side:
    """A term of a sum; one that is a sum itself stands in brackets."""
    terms = side_of(part)
    return (Bracket(Fraction(1), terms),) if isinstance(part, Sum) and len(terms) > 1 else terms


def _product(factors: tuple[Expression, ...]) -> Side:
    scale = Fraction(1)
    with_letters = [factor for factor in factors if has_unknowns(factor)]
    for factor in factors:
        scale *= Fraction(1) if has_unknowns(factor) else _number(factor)
    if len(with_letters) > 1:
        raise NotLinear(f"the product {write(Product(tuple(with_letters)))}")
    return _times(side_of(with_letters[0]), scale, isinstance(with_letters[0], Sum))


def _times(terms: Side, scale: Fraction, in_brackets: bool) -> Side:
    if in_brackets and len(terms) > 1:
        return (Bracket(scale, terms),)
    return tuple(multiplied(term, scale) for term in terms)


def multiplied(term: Term | Bracket, scale: Fraction) -> Term | Bracket:
    """A term times a number, a bracket by what stands before it."""
    if isinstance(term, Term):
        return Term(scale * term.coefficient, term.unknown)
    return Bracket(scale * term.factor, term.inside)


def needs_working(expression: Expression) -> bool:
    """Whether numbers of a term are still to be multiplied or added: 2 × 3x, 4(1), (2 + 1)x."""
    match expression:
        case Product(factors):
            numbers = [factor for part in factors for factor in _flat(part) if not has_unknowns(factor)]
            worked = len(numbers) > 1 or any(not _is_numeral(number) for number in numbers)
            return worked or any(map(needs_working, factors))
        case Of() | Power() | Root():
            return True
        case Quotient(numerator, denominator):
            return not has_unknowns(expression) or needs_working(numerator) or not _is_numeral(denominator)
        case Sum(terms):
            return any(needs_working(term) or _is_sum_of_numbers(term) for term in terms)
        case Negative(operand) | Measured(operand):
            return needs_working(operand)
    return False


def _flat(factor: Expression) -> tuple[Expression, ...]:
    if not isinstance(factor, Product):
        return (factor,)
    return tuple(inner for part in factor.factors for inner in _flat(part))


def _is_sum_of_numbers(term: Expression) -> bool:
    inner = term.operand if isinstance(term, Negative) else term
    return isinstance(inner, Sum) and not has_unknowns(inner)


def _is_numeral(expression: Expression) -> bool:
    match expression:
        case Number():
            return True
        case Quotient(Number(), Number()) | Negative(Number()):
            return True
    return False

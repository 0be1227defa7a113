"""Expressions as one polynomial over another, and the numbers that make a divisor nought."""

from dataclasses import dataclass
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.algebra.factorising import factors_of
from paperaudit.maths.algebra.terms import (
    Term,
    Terms,
    added,
    expression_of,
    letters_in,
    negated,
    number_terms,
    product,
    terms_of,
    whole_exponent,
)
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Negative,
    Number,
    Of,
    Power,
    Product,
    Quotient,
    Sum,
    letters_of,
    parts_of,
)


@dataclass(frozen=True, slots=True)
class Ratio:
    """Terms over terms, not cancelled."""

    above: Terms
    below: Terms


def ratio_of(expression: Expression) -> Ratio:
    """The expression as one fraction. Raises NotTerms, NoValue and BudgetExceeded."""
    match expression:
        case Negative(operand):
            inner = ratio_of(operand)
            return Ratio(negated(inner.above), inner.below)
        case Sum(terms):
            total = Ratio((), number_terms(1))
            for term in map(ratio_of, terms):
                if total.below == term.below:
                    total = Ratio(added(total.above, term.above), total.below)
                else:
                    above = added(product(total.above, term.below), product(term.above, total.below))
                    total = Ratio(above, product(total.below, term.below))
            return total
        case Product(factors):
            parts = [ratio_of(factor) for factor in factors]
            return Ratio(product(*(part.above for part in parts)), product(*(part.below for part in parts)))
        case Of(share, whole):
            return ratio_of(Product((share, whole)))
        case Quotient(above, below):
            one, other = ratio_of(above), ratio_of(below)
            if not other.above:
                raise NoValue("a division by nought")
            return Ratio(product(one.above, other.below), product(one.below, other.above))
        case Power(base, exponent):
            if isinstance(exponent, Negative) or (isinstance(exponent, Number) and exponent.value < 0):
                size = exponent.operand if isinstance(exponent, Negative) else Number(-exponent.value)
                return ratio_of(Quotient(Number(Fraction(1)), Power(base, size)))
            count, inner = whole_exponent(exponent), ratio_of(base)
            return Ratio(product(*(inner.above,) * count), product(*(inner.below,) * count))
    return Ratio(terms_of(expression), number_terms(1))


def excluded(expression: Expression) -> tuple[str, ...]:
    """The values that make a divisor nought, where these are linear in one letter: x ≠ 2."""
    found: list[str] = []
    for below in _divisors(expression):
        factors = factors_of(below)
        linear = [*((Term(Fraction(1), ((letter, 1),)),) for letter, _ in factors.front.powers), *factors.factors]
        for factor in linear:
            letters = letters_in(factor)
            if len(letters) == 1 and len(factor) <= 2 and max(term.degree for term in factor) == 1:
                slope = next(term.coefficient for term in factor if term.powers)
                constant = next((term.coefficient for term in factor if not term.powers), Fraction(0))
                found.append(f"{letters[0]} ≠ {write(expression_of(number_terms(-constant / slope)))}")
    return tuple(dict.fromkeys(found))


def _divisors(expression: Expression) -> list[Terms]:
    """Everything that is divided by, at any depth."""
    inside = [below for part in parts_of(expression) for below in _divisors(part)]
    if isinstance(expression, Quotient) and letters_of(expression.denominator):
        ratio = ratio_of(expression.denominator)
        return [*inside, ratio.above]
    return inside


def has_letters_below(expression: Expression) -> bool:
    """Whether a letter stands under a fraction bar or behind a division sign."""
    if isinstance(expression, Quotient) and letters_of(expression.denominator):
        return True
    return any(map(has_letters_below, parts_of(expression)))

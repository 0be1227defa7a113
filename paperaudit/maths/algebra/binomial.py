"""The terms of a power of two terms by binomial coefficients, letters below the fraction bar too."""

from dataclasses import dataclass
from fractions import Fraction
from math import comb

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.algebra.terms import NotTerms, Term, Terms, collected, product, terms_of, times
from paperaudit.maths.exact import bounded_power, rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Letter,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
    letters_of,
)

HIGHEST = 60
_LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")


@dataclass(frozen=True, slots=True)
class Binomial:
    """(first + second)^count times a polynomial in front, () for none; the two terms as they are written too."""

    first: Term
    second: Term
    count: int
    shown: tuple[Expression, Expression]
    front: Terms = ()

    def term(self, place: int) -> Term:
        """The term with the second one to the power `place`."""
        letters = times(power_of(self.first, self.count - place), power_of(self.second, place))
        return times(Term(Fraction(comb(self.count, place))), letters)

    def turned(self) -> "Binomial":
        """The same with its two terms the other way round."""
        return Binomial(self.second, self.first, self.count, (self.shown[1], self.shown[0]), self.front)

    def written_term(self, place: int) -> str:
        """⁶C₂ × 2⁴ × (3x)², ones left out."""
        pieces = [choice(self.count, place)]
        for shown, exponent in zip(self.shown, (self.count - place, place), strict=True):
            if exponent and shown != Number(Fraction(1)):
                pieces.append(write(shown if exponent == 1 else Power(shown, Number(Fraction(exponent)))))
        return " × ".join(f"({piece})" if piece.startswith("−") else piece for piece in pieces)


def choice(count: int, place: int) -> str:
    """⁶C₂, as on the keys of a calculator.

    >>> choice(6, 2)
    '⁶C₂'
    """
    return f"{str(count).translate(_RAISED)}C{str(place).translate(_LOWERED)}"


def binomial_of(expression: Expression) -> Binomial:
    """The power of two terms that an expression is, perhaps with a polynomial in front. Raises NotTerms."""
    match expression:
        case Power(Sum((one, other)), exponent) if not letters_of(exponent):
            count = rational_value(exponent)
            if count is None or count.denominator != 1 or count < 1:
                raise NotTerms(f"{write(expression)}, whose exponent is no positive integer")
            if count > HIGHEST:
                raise BudgetExceeded("a power of a bracket beyond any school paper's")
            return Binomial(term_of(one), term_of(other), int(count), (one, other))
        case Product(factors):
            powers = [factor for factor in factors if isinstance(factor, Power) and isinstance(factor.base, Sum)]
            for factor in sorted(powers, key=lambda one: -(rational_value(one.exponent) or 0)):
                others = [other for other in factors if other is not factor]
                found = binomial_of(factor)
                front = product(*map(terms_of, others))
                return Binomial(found.first, found.second, found.count, found.shown, front)
    raise NotTerms(f"{write(expression)}, which is no power of two terms")


def term_of(expression: Expression) -> Term:
    """One term, its letters above or below: 2x, −1/x², x/2. Raises NotTerms."""
    match expression:
        case Negative(operand):
            inner = term_of(operand)
            return Term(-inner.coefficient, inner.powers)
        case Letter(name):
            return Term(Fraction(1), ((name, 1),))
        case Product(factors):
            result = Term(Fraction(1))
            for factor in factors:
                result = times(result, term_of(factor))
            return result
        case Quotient(above, below):
            bottom = term_of(below)
            inverse = tuple((name, -exponent) for name, exponent in bottom.powers)
            return times(term_of(above), Term(1 / bottom.coefficient, inverse))
        case Power(base, exponent) if not letters_of(exponent) and letters_of(base):
            count = rational_value(exponent)
            if count is None or count.denominator != 1:
                raise NotTerms(f"{write(expression)} in a binomial expansion")
            return power_of(term_of(base), int(count))
    value = None if letters_of(expression) else rational_value(expression)
    if not value:
        raise NotTerms(f"{write(expression)} in a binomial expansion")
    return Term(value)


def power_of(term: Term, count: int) -> Term:
    """A whole power of a term, negative ones too."""
    return Term(
        bounded_power(term.coefficient, count),
        tuple((name, exponent * count) for name, exponent in term.powers if exponent * count),
    )


def multiplied_out(found: Binomial) -> Terms:
    """The whole expansion by multiplying bracket after bracket, without a binomial coefficient."""
    total: Terms = found.front or (Term(Fraction(1)),)
    for _ in range(found.count):
        total = collected(times(one, other) for one in total for other in (found.first, found.second))
    return total


def laurent_expression(term: Term) -> Expression:
    """A term as it is written, letters with negative exponents below: 240/x²."""
    from paperaudit.maths.algebra.terms import expression_of_term

    above = tuple((name, exponent) for name, exponent in term.powers if exponent > 0)
    below = tuple((name, -exponent) for name, exponent in term.powers if exponent < 0)
    if not below:
        return expression_of_term(term)
    size = abs(term.coefficient)
    top = expression_of_term(Term(Fraction(size.numerator), above))
    bottom = expression_of_term(Term(Fraction(size.denominator), below))
    result = Quotient(top, bottom)
    return Negative(result) if term.coefficient < 0 else result


def total_of_terms(terms: list[Term]) -> Expression:
    """Terms in the order given."""
    pieces = tuple(laurent_expression(term) for term in terms)
    return pieces[0] if len(pieces) == 1 else Sum(pieces) if pieces else whole_or_fraction(Fraction(0))

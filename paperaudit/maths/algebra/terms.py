"""Terms such as 3x²y with exact coefficients, in the order written or collected and ordered."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import reduce
from math import gcd, lcm

from paperaudit.errors import BudgetExceeded, NoValue, PaperauditError
from paperaudit.maths.exact import MAX_DEGREE, rational_value
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction, within_limits
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Letter,
    Negative,
    Number,
    NumberForm,
    Of,
    Power,
    Product,
    Quotient,
    Sum,
    leaves,
    letters_of,
)

Powers = tuple[tuple[str, int], ...]
MAX_TERMS = 120


class NotTerms(PaperauditError):
    """An expression that is no sum of terms: a letter under a root, in an exponent or under a fraction bar."""


@dataclass(frozen=True, slots=True)
class Term:
    """A coefficient and letters with their exponents, by the alphabet: 3x²y."""

    coefficient: Fraction
    powers: Powers = ()

    @property
    def degree(self) -> int:
        """The sum of the exponents."""
        return sum(exponent for _, exponent in self.powers)

    def exponent(self, letter: str) -> int:
        """How often a letter is a factor."""
        return dict(self.powers).get(letter, 0)


Terms = tuple[Term, ...]
ONE = Term(Fraction(1))


def times(one: Term, other: Term) -> Term:
    """The product of two terms."""
    powers = dict(one.powers)
    for letter, exponent in other.powers:
        powers[letter] = powers.get(letter, 0) + exponent
    if sum(powers.values()) > 2 * MAX_DEGREE:
        raise BudgetExceeded("a power beyond any school paper's")
    kept = tuple(sorted((letter, exponent) for letter, exponent in powers.items() if exponent))
    return Term(within_limits(one.coefficient * other.coefficient), kept)


def scaled(terms: Terms, factor: Term | Fraction | int) -> Terms:
    """Every term times a term or a number."""
    by = factor if isinstance(factor, Term) else Term(Fraction(factor))
    return tuple(times(by, term) for term in terms)


def multiplied(one: Terms, other: Terms) -> Terms:
    """Every term times every term, in the order in which a pupil writes them, nothing collected."""
    if len(one) * len(other) > MAX_TERMS:
        raise BudgetExceeded("a product with more than a hundred terms")
    return tuple(times(term, by) for term in one for by in other)


def collected(terms: Iterable[Term]) -> Terms:
    """Like terms added up, the highest degree first, letters by the alphabet; () is nought.

    >>> collected((Term(Fraction(2)), Term(Fraction(1), (("x", 1),)), Term(Fraction(3))))
    (Term(coefficient=Fraction(1, 1), powers=(('x', 1),)), Term(coefficient=Fraction(5, 1), powers=()))
    """
    sums: dict[Powers, Fraction] = {}
    for term in terms:
        sums[term.powers] = sums.get(term.powers, Fraction(0)) + term.coefficient
    letters = sorted({letter for powers in sums for letter, _ in powers})

    def place(powers: Powers) -> tuple[int, ...]:
        exponents = dict(powers)
        return -sum(exponents.values()), *(-exponents.get(letter, 0) for letter in letters)

    return tuple(Term(sums[powers], powers) for powers in sorted(sums, key=place) if sums[powers])


def product(*factors: Terms) -> Terms:
    """The product, collected."""
    return reduce(lambda one, other: collected(multiplied(one, other)), factors, (ONE,))


def added(one: Terms, other: Terms) -> Terms:
    """The sum, collected."""
    return collected((*one, *other))


def negated(terms: Terms) -> Terms:
    """Every sign turned."""
    return scaled(terms, -1)


def degree(terms: Terms) -> int:
    """The highest degree of a term, 0 for nought."""
    return max((term.degree for term in terms), default=0)


def letters_in(terms: Terms) -> tuple[str, ...]:
    """The letters that occur, by the alphabet."""
    return tuple(sorted({letter for term in terms for letter, _ in term.powers}))


def number_terms(value: Fraction | int) -> Terms:
    """A number as terms."""
    return (Term(Fraction(value)),) if value else ()


def common_term(terms: Terms) -> Term:
    """The largest term that divides every term with whole quotients; negative where the first is."""
    above = reduce(gcd, (term.coefficient.numerator for term in terms), 0)
    below = reduce(lcm, (term.coefficient.denominator for term in terms), 1)
    size = Fraction(above or 1, below)
    shared = [
        (letter, min(term.exponent(letter) for term in terms)) for letter, _ in (terms[0].powers if terms else ())
    ]
    sign = -1 if terms and terms[0].coefficient < 0 else 1
    return Term(sign * size, tuple((letter, exponent) for letter, exponent in shared if exponent))


def over_term(terms: Terms, divisor: Term) -> Terms:
    """Every term over a term that divides it."""
    inverse = tuple((letter, -exponent) for letter, exponent in divisor.powers)
    return tuple(times(term, Term(1 / divisor.coefficient, inverse)) for term in terms)


def terms_of(expression: Expression) -> Terms:
    """The expression multiplied out and collected.

    Raises NotTerms where it is no sum of terms, BudgetExceeded and NoValue.
    """
    match expression:
        case Number(value):
            return number_terms(value)
        case Letter(name):
            return (Term(Fraction(1), ((name, 1),)),)
        case Negative(operand):
            return negated(terms_of(operand))
        case Sum(terms):
            return collected(inner for term in terms for inner in terms_of(term))
        case Product(factors):
            return product(*map(terms_of, factors))
        case Of(share, whole):
            return product(terms_of(share), terms_of(whole))
        case Quotient(above, below):
            divisor = terms_of(below)
            if not divisor:
                raise NoValue("a division by nought")
            if letters_in(divisor):
                raise NotTerms(f"{write(below)} under a fraction bar")
            return scaled(terms_of(above), 1 / divisor[0].coefficient)
        case Power(base, exponent):
            return power(terms_of(base), whole_exponent(exponent))
    number = None if letters_of(expression) else rational_value(expression)
    if number is None:
        raise NotTerms(write(expression))
    return number_terms(number)


def whole_exponent(exponent: Expression) -> int:
    """The exponent of a power of a bracket or letter; raises NotTerms unless it is 0, 1, 2 …"""
    if letters_of(exponent):
        raise NotTerms(f"the exponent {write(exponent)}")
    value = rational_value(exponent)
    if value is None or value.denominator != 1 or value < 0:
        raise NotTerms(f"the exponent {write(exponent)}")
    if value > MAX_DEGREE:
        raise BudgetExceeded("a power beyond any school paper's")
    return int(value)


def power(terms: Terms, exponent: int) -> Terms:
    """A whole power, multiplied out."""
    if len(terms) > 1 and exponent > 12:
        raise BudgetExceeded("a power of a bracket beyond any school paper's")
    return product(*(terms,) * exponent)


def value_at(terms: Terms, values: Mapping[str, Fraction]) -> Fraction:
    """The value for numbers in place of the letters."""
    total = Fraction(0)
    for term in terms:
        part = term.coefficient
        for letter, exponent in term.powers:
            part *= values[letter] ** exponent
        total += part
    return total


def coefficients(terms: Terms, letter: str) -> list[Fraction]:
    """The coefficients by the exponent of the only letter, lowest first; [] for nought."""
    found = [Fraction(0)] * (degree(terms) + 1 if terms else 0)
    for term in terms:
        found[term.exponent(letter)] += term.coefficient
    return found


def from_coefficients(numbers: Sequence[Fraction], letter: str) -> Terms:
    """The terms with these coefficients, lowest exponent first.

    >>> written(from_coefficients([Fraction(1), Fraction(-2), Fraction(3)], "x"))
    '3x² − 2x + 1'
    """
    return collected(
        Term(number, ((letter, exponent),) if exponent else ()) for exponent, number in enumerate(numbers) if number
    )


def expression_of_term(term: Term, decimals: bool = False) -> Expression:
    """A term as a pupil writes it: −3x²y, 2x/3 with the letters above."""
    size = abs(term.coefficient)
    pieces: list[Expression] = [
        Power(Letter(letter), Number(Fraction(exponent))) if exponent != 1 else Letter(letter)
        for letter, exponent in term.powers
    ]
    as_written = as_decimal(size) if decimals else None
    result: Expression
    if not pieces:
        result = as_written or whole_or_fraction(size)
    elif as_written is not None or size.denominator == 1:
        front: list[Expression] = [] if size == 1 else [as_written or whole_or_fraction(size)]
        everything = [*front, *pieces]
        result = everything[0] if len(everything) == 1 else Product(tuple(everything))
    else:
        above = [*([Number(Fraction(size.numerator))] if size.numerator != 1 else []), *pieces]
        top = above[0] if len(above) == 1 else Product(tuple(above))
        result = Quotient(top, Number(Fraction(size.denominator)))
    return Negative(result) if term.coefficient < 0 else result


def expression_of(terms: Terms, decimals: bool = False) -> Expression:
    """Terms in the order given; 0 for none."""
    pieces = tuple(expression_of_term(term, decimals) for term in terms)
    return Sum(pieces) if len(pieces) > 1 else pieces[0] if pieces else Number(Fraction(0))


def written(terms: Terms, decimals: bool = False) -> str:
    """The text of terms in the order given."""
    return write(expression_of(terms, decimals))


def in_decimals(expression: Expression) -> bool:
    """Whether numbers are written as decimals and none as a fraction."""
    forms = {leaf.form for leaf in leaves(expression) if isinstance(leaf, Number)}
    return NumberForm.DECIMAL in forms and NumberForm.FRACTION not in forms

"""Equations with the letter in an exponent: powers of one base, and logarithms where there is none."""

from fractions import Fraction
from math import gcd

from paperaudit.maths.algebra.terms import (
    NotTerms,
    Term,
    Terms,
    added,
    coefficients,
    common_term,
    degree,
    expression_of,
    number_terms,
    product,
    scaled,
    terms_of,
    written,
)
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.primes import powers, prime_factors
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
    letters_of,
)
from paperaudit.strands.algebra.roots import Roots, rational_value_of, roots_of, solve_polynomial
from paperaudit.strands.algebra.working import Working

_LARGEST = 10**9


def solve_exponential(relation: Relation, letter: str, working: Working) -> Roots:
    """The lines to the roots where both sides are powers of one base. Raises NotTerms where they are not."""
    working.given(relation)
    if any(isinstance(side, Sum) for side in (relation.left, relation.right)):
        return _in_powers(relation, letter, working)
    relation = _divided(relation, working)
    bases = bases_of(relation.left) | bases_of(relation.right)
    if len(bases) != 1:
        raise NotTerms(f"{write(relation)}, which is not two powers of one base")
    (base,) = bases
    left, right = exponent_of(relation.left, base), exponent_of(relation.right, base)
    number = Number(Fraction(base))
    working.say(Relation(_power(number, left), "=", _power(number, right)))
    following = Relation(expression_of(left), "=", expression_of(right))
    working.say(following)
    if degree(added(left, tuple(right))) < 1:
        raise NotTerms(write(following))
    return solve_polynomial(following, letter, working)


def _divided(relation: Relation, working: Working) -> Relation:
    """3 × 2^x = 24 is 2^x = 8."""
    left, right = relation.left, relation.right
    if letters_of(right) and not letters_of(left):
        left, right = right, left
    if not isinstance(left, Product) or letters_of(right) or len(left.factors) != 2:
        return relation
    front, power = left.factors
    size, value = rational_value_of(front), rational_value_of(right)
    if size is None or value is None or not size or not isinstance(power, Power):
        return relation
    divided = Relation(power, "=", whole_or_fraction(value / size))
    working.say(divided)
    return divided


def _in_powers(relation: Relation, letter: str, working: Working) -> Roots:
    """A sum of powers of one base as an equation in u = 2^x."""
    addends = [*_addends(relation.left, 1), *_addends(relation.right, -1)]
    bases = set[int]().union(*(bases_of(power) for _, power in addends if power is not None))
    if len(bases) != 1:
        raise NotTerms(f"{write(relation)}, which is not in powers of one base")
    (base,) = bases
    name = next(other for other in "utvw" if other != letter)
    total: Terms = ()
    for size, power in addends:
        exponent = coefficients(exponent_of(power, base), letter) if power is not None else [Fraction(0)]
        shift, slope = exponent[0] if exponent else Fraction(0), exponent[1] if len(exponent) > 1 else Fraction(0)
        if len(exponent) > 2 or shift.denominator != 1 or slope.denominator != 1:
            raise NotTerms(f"{write(relation)}, whose exponents are not whole multiples of {letter}")
        total = added(total, (Term(size * Fraction(base) ** int(shift), ((name, int(slope)),) if slope else ()),))
    lowest = min((term.exponent(name) for term in total), default=0)
    if lowest < 0:
        total = tuple(Term(term.coefficient, _raised(name, term.exponent(name) - lowest)) for term in total)
    working.say(f"let {name} = {base}^{letter}: {written(total)} = 0")
    values: list[Expression] = []
    found = roots_of(primitive(total), name, working)
    last = working.steps[-1].statement
    for root in found.values:
        value_of = rational_value(root)
        if value_of is not None and value_of <= 0:
            working.say(f"{base}^{letter} = {write(root)} is rejected: a power of {base} is positive", uses=(last,))
            continue
        if value_of is None:
            raise NotTerms(f"{base}^{letter} = {write(root)}, which is no power of {base}")
        (value,) = [term.coefficient for term in exponent_of(whole_or_fraction(value_of), base)] or [Fraction(0)]
        working.say(f"{base}^{letter} = {write(root)}, {letter} = {write(whole_or_fraction(value))}", uses=(last,))
        values.append(whole_or_fraction(value))
    return Roots(values)


def primitive(terms: Terms) -> Terms:
    """Whole coefficients without a common factor, the first one positive."""
    common = common_term(terms)
    return scaled(terms, 1 / common.coefficient) if terms else terms


def _raised(name: str, exponent: int) -> tuple[tuple[str, int], ...]:
    return ((name, exponent),) if exponent else ()


def _addends(side: Expression, sign: int) -> list[tuple[Fraction, Expression | None]]:
    """Each term of a side as a number times a power with the letter in its exponent."""
    found: list[tuple[Fraction, Expression | None]] = []
    for term in side.terms if isinstance(side, Sum) else (side,):
        size = Fraction(sign)
        if isinstance(term, Negative):
            size, term = -size, term.operand
        numbers: list[Expression] = []
        for factor in term.factors if isinstance(term, Product) else (term,):
            value = rational_value_of(factor)
            if value is None:
                numbers.append(factor)
            else:
                size *= value
        power = None if not numbers else numbers[0] if len(numbers) == 1 else Product(tuple(numbers))
        found.append((size, power))
    return found


def _power(base: Expression, exponent: Terms) -> Expression:
    return Power(base, expression_of(exponent))


def bases_of(expression: Expression) -> set[int]:
    """The numbers, no powers themselves, that the numbers of a product are powers of."""
    match expression:
        case Power(base, exponent) if letters_of(exponent):
            return bases_of(base)
        case Product(factors):
            return set().union(*map(bases_of, factors))
        case Quotient(above, below) if letters_of(expression):
            return bases_of(above) | bases_of(below)
        case Root(radicand) if letters_of(expression):
            return bases_of(radicand)
    value = None if letters_of(expression) else _number(expression)
    if value is None or value <= 0:
        raise NotTerms(f"{write(expression)}, which is no power")
    found = {_base_of(size) for size in (value.numerator, value.denominator) if size > 1}
    return found


def _number(expression: Expression) -> Fraction | None:
    match expression:
        case Root(radicand):
            return _number(radicand)
        case Power(base, exponent):
            return _number(base) if not letters_of(exponent) else None
        case Product(factors) if any(isinstance(factor, Root) for factor in factors):
            values = [_number(factor) for factor in factors]
            found = {value for value in values if value is not None}
            return max(found) if len(found) == 1 else None
    return rational_value(expression)


def _base_of(size: int) -> int:
    if size > _LARGEST:
        raise NotTerms("numbers too large")
    found = powers(prime_factors(size))
    common = gcd(*(count for _, count in found))
    base = 1
    for prime, count in found:
        base *= prime ** (count // common)
    return base


def exponent_of(expression: Expression, base: int) -> Terms:
    """The exponent of the base that an expression is."""
    match expression:
        case Power(inner, exponent):
            return product(exponent_of(inner, base), terms_of(exponent))
        case Root(radicand, count):
            return product(exponent_of(radicand, base), number_terms(Fraction(1, count)))
        case Product(factors):
            total: Terms = ()
            for factor in factors:
                total = added(total, exponent_of(factor, base))
            return total
        case Quotient(above, below):
            return added(exponent_of(above, base), product(number_terms(-1), exponent_of(below, base)))
        case Negative():
            raise NotTerms(f"{write(expression)}, which is negative")
    value = rational_value(expression)
    if value is None:
        raise NotTerms(write(expression))
    size, sign = (value, 1) if value >= 1 else (1 / value, -1)
    count = 0
    while size > 1 and size.denominator == 1 and size % base == 0:
        size /= base
        count += 1
    if size != 1:
        raise NotTerms(f"{write(expression)}, which is no power of {base}")
    return number_terms(sign * count)

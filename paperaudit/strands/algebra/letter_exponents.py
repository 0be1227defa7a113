"""Products, quotients and differences of powers of one number with letters in their exponents."""

from fractions import Fraction

from paperaudit.maths.algebra.logarithms import signed_terms
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Terms,
    added,
    degree,
    expression_of,
    letters_in,
    negated,
    number_terms,
)
from paperaudit.maths.exact import bounded_power, rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
    letters_of,
    parts_of,
)
from paperaudit.strands.algebra.exponents import bases_of, exponent_of


def has_letter_exponent(expression: Expression) -> bool:
    """Whether a number is raised to an exponent with a letter."""
    if isinstance(expression, Power) and letters_of(expression.exponent):
        return True
    return any(map(has_letter_exponent, parts_of(expression)))


def letter_exponent_lines(expression: Expression) -> list[Expression]:
    """The lines to one power, or to a number: (9^(n + 1) × 3^(n − 1))/27^n = 3. Raises NotTerms."""
    bases = bases_of(expression) if not _has_sum(expression) else _bases_in_sums(expression)
    if len(bases) != 1:
        raise NotTerms(f"{write(expression)}, which is not in powers of one number")
    (base,) = bases
    number = Number(Fraction(base))
    if not _has_sum(expression):
        lines = [expression, _in_base(expression, base)]
        total = exponent_of(expression, base)
        lines.append(Power(number, expression_of(total)))
        if not letters_in(total):
            lines.append(_number(base, total))
        return _different(lines)
    if isinstance(expression, Quotient):
        return _common_power(expression, expression.numerator, expression.denominator, base)
    return _common_power(expression, expression, None, base)


def _common_power(expression: Expression, above: Expression, below: Expression | None, base: int) -> list[Expression]:
    """(2^(n + 2) − 2^n)/2^n = 2^n(2² − 1)/2^n = 3."""
    number = Number(Fraction(base))
    tops, top = _shifts(above, base)
    lines: list[Expression] = [expression]
    inside = _sum_of_shifts(tops, number)
    unit = Power(number, expression_of(top))
    amount = sum((sign * bounded_power(Fraction(base), shift) for sign, shift in tops), Fraction(0))
    if below is None:
        lines += [Product((unit, inside)), Product((whole_or_fraction(amount), unit), "×")]
        return _different(lines)
    bottoms, bottom = _shifts(below, base)
    size = sum((sign * bounded_power(Fraction(base), shift) for sign, shift in bottoms), Fraction(0))
    other = Power(number, expression_of(bottom))
    plain = len(bottoms) == 1 and not bottoms[0][1]
    divisor: Expression = other if plain and size == 1 else Product((other, _sum_of_shifts(bottoms, number)))
    if plain and size != 1:
        divisor = Product((whole_or_fraction(size), other), "×")
    lines.append(Quotient(Product((unit, inside)), divisor))
    difference = added(top, negated(bottom))
    if not size:
        raise NotTerms("a division by nought")
    result: Expression = whole_or_fraction(amount / size)
    if difference and not letters_in(difference):
        result = whole_or_fraction(amount / size * bounded_power(Fraction(base), int(difference[0].coefficient)))
    elif difference:
        power = Power(number, expression_of(difference))
        result = power if amount == size else Product((result, power), "×")
    else:
        lines.append(inside if size == 1 else Quotient(inside, _sum_of_shifts(bottoms, number)))
    lines.append(result)
    return _different(lines)


def _shifts(expression: Expression, base: int) -> tuple[list[tuple[Fraction, int]], Terms]:
    """Every term as a number times base^(shift) times one common power."""
    found: list[tuple[Fraction, Terms]] = []
    for sign, term in signed_terms(expression):
        size, power = _size_and_power(term)
        found.append((sign * size, exponent_of(power, base)))
    parts = [tuple(one for one in exponent if one.powers) for _, exponent in found]
    if len(set(parts)) != 1 or degree(parts[0]) > 1:
        raise NotTerms(f"{write(expression)}, whose exponents have different letters")
    shifts = [next((one.coefficient for one in exponent if not one.powers), Fraction(0)) for _, exponent in found]
    if any(shift.denominator > 1 for shift in shifts):
        raise NotTerms(f"{write(expression)}, whose exponents differ by fractions")
    lowest = min(shifts)
    common = added(parts[0], number_terms(lowest))
    return [(size, int(shift - lowest)) for (size, _), shift in zip(found, shifts, strict=True)], common


def _size_and_power(term: Expression) -> tuple[Fraction, Expression]:
    """4 × 5^n as 4 and 5^n."""
    if not isinstance(term, Product):
        return Fraction(1), term
    size = Fraction(1)
    powers: list[Expression] = []
    for factor in term.factors:
        value = None if letters_of(factor) else rational_value(factor)
        if value is None:
            powers.append(factor)
        else:
            size *= value
    if not powers:
        raise NotTerms(f"{write(term)} beside powers with letters")
    return size, powers[0] if len(powers) == 1 else Product(tuple(powers), "×")


def _sum_of_shifts(shifts: list[tuple[Fraction, int]], number: Expression) -> Expression:
    pieces: list[Expression] = []
    for size, shift in shifts:
        raised: Expression = number if shift == 1 else Power(number, Number(Fraction(shift)))
        amount = whole_or_fraction(abs(size))
        body = amount if not shift else raised if abs(size) == 1 else Product((amount, raised), "×")
        pieces.append(Negative(body) if size < 0 else body)
    return pieces[0] if len(pieces) == 1 else Sum(tuple(pieces))


def _bases_in_sums(expression: Expression) -> set[int]:
    sides = (expression.numerator, expression.denominator) if isinstance(expression, Quotient) else (expression,)
    return set().union(*(bases_of(_size_and_power(term)[1]) for side in sides for _, term in signed_terms(side)))


def _has_sum(expression: Expression) -> bool:
    if isinstance(expression, Power):
        return _has_sum(expression.base)
    return isinstance(expression, Sum) or any(map(_has_sum, parts_of(expression)))


def _in_base(expression: Expression, base: int) -> Expression:
    """Every number as a power of the base."""
    match expression:
        case Product(factors):
            return Product(tuple(_in_base(factor, base) for factor in factors), "×")
        case Quotient(above, below):
            return Quotient(_in_base(above, base), _in_base(below, base))
    exponent = exponent_of(expression, base)
    return Power(Number(Fraction(base)), expression_of(exponent)) if exponent else Number(Fraction(1))


def _number(base: int, exponent: Terms) -> Expression:
    size = exponent[0].coefficient if exponent else Fraction(0)
    if size.denominator > 1:
        raise NotTerms("a root of a number")
    return whole_or_fraction(bounded_power(Fraction(base), int(size)))


def _different(lines: list[Expression]) -> list[Expression]:
    kept: list[Expression] = []
    for line in lines:
        if not kept or write(kept[-1]) != write(line):
            kept.append(line)
    return kept

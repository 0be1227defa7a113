"""One step of factorising: squares, cubes, trinomials, grouping, the factor theorem."""

from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations
from math import isqrt
from typing import TypeAlias

from paperaudit.maths.algebra.division import divided, rational_roots
from paperaudit.maths.algebra.terms import (
    Powers,
    Term,
    Terms,
    added,
    coefficients,
    collected,
    common_term,
    degree,
    expression_of,
    expression_of_term,
    from_coefficients,
    letters_in,
    negated,
    over_term,
    product,
    scaled,
    times,
    written,
)
from paperaudit.maths.exact import whole_root
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Negative, Number, Power, Product, Sum

Line: TypeAlias = Expression | str


@dataclass(frozen=True, slots=True)
class Split:
    """Lines that lead to two or more factors; a line that is text is a remark."""

    between: tuple[Line, ...]
    factors: tuple[Terms, ...]


def split(terms: Terms) -> Split | None:
    """Factors of terms without a common term, by the first method that applies; None where none does."""
    methods = {2: (_squares, _cubes), 3: (_trinomial,), 4: (_grouping, _square_less_square)}.get(len(terms), ())
    for method in (*methods, _by_root, _in_general):
        found = method(terms)
        if found is not None and product(*found.factors) == collected(terms):
            return found
    return None


def _root(term: Term, exponent: int) -> Term | None:
    """The square or cube root of a term, where it is a term."""
    size = abs(term.coefficient)
    above, below = whole_root(size.numerator, exponent), whole_root(size.denominator, exponent)
    if above is None or below is None or any(power % exponent for _, power in term.powers):
        return None
    return Term(Fraction(above, below), tuple((letter, power // exponent) for letter, power in term.powers))


def _powered(term: Term, exponent: int) -> Expression:
    return Power(expression_of_term(term), Number(Fraction(exponent)))


def _squares(terms: Terms) -> Split | None:
    """a² − b² is (a − b)(a + b)."""
    plus, minus = sorted(terms, key=lambda term: -term.coefficient)
    one, other = _root(plus, 2), _root(minus, 2)
    if plus.coefficient < 0 or minus.coefficient > 0 or one is None or other is None:
        return None
    shown = Sum((_powered(one, 2), Negative(_powered(other, 2))))
    return Split((shown,), ((one, *negated((other,))), (one, other)))


def _cubes(terms: Terms) -> Split | None:
    """a³ + b³ is (a + b)(a² − ab + b²), and a³ − b³ is (a − b)(a² + ab + b²)."""
    first, second = terms if terms[0].coefficient > 0 else terms[::-1]
    one, other = _root(first, 3), _root(second, 3)
    if first.coefficient < 0 or one is None or other is None:
        return None
    minus = second.coefficient < 0
    sign = -1 if minus else 1
    shown = Sum((_powered(one, 3), Negative(_powered(other, 3)) if minus else _powered(other, 3)))
    long = (times(one, one), *scaled((times(one, other),), -sign), times(other, other))
    return Split((shown,), ((one, *scaled((other,), sign)), long))


def _trinomial(terms: Terms) -> Split | None:
    """Perfect squares, x² + sx + p by two numbers, and ax² + bx + c by splitting the middle term."""
    first, middle, last = terms
    if times(first, last).powers != times(middle, middle).powers:
        return None
    a, b, c = first.coefficient, middle.coefficient, last.coefficient
    one, other = _root(first, 2), _root(last, 2)
    if a > 0 and c > 0 and b * b == 4 * a * c and one is not None and other is not None:
        return _perfect_square(one, other, b < 0)
    inside = b * b - 4 * a * c
    root = isqrt(int(inside)) if inside >= 0 and inside.denominator == 1 else None
    if root is None or root * root != inside:
        return None
    pair = sorted(((b + root) / 2, (b - root) / 2), key=lambda number: (abs(number), number < 0))
    parts = [Term(number, middle.powers) for number in reversed(pair)]
    found = _grouped((first, parts[0]), (parts[1], last)) or _grouped((first, parts[1]), (parts[0], last))
    if found is None:
        return None
    return Split((), found.factors) if a == 1 else found


def _perfect_square(one: Term, other: Term, minus: bool) -> Split:
    double = Product((Number(Fraction(2)), expression_of_term(one), expression_of_term(other)), "×")
    shown = Sum((_powered(one, 2), Negative(double) if minus else double, _powered(other, 2)))
    factor = (one, *scaled((other,), -1 if minus else 1))
    return Split((shown,), (factor, factor))


def _grouped(first: Terms, second: Terms) -> Split | None:
    """Two pairs with the same bracket behind what each has in common."""
    one, other = common_term(first), common_term(second)
    inside, beside = collected(over_term(first, one)), collected(over_term(second, other))
    if inside == collected(negated(beside)):
        other, beside = Term(-other.coefficient, other.powers), inside
    if inside != beside:
        return None
    spread = expression_of((*first, *second))
    brackets = Sum((_fronted(one, inside), _fronted(other, inside)))
    return Split((spread, _flat(brackets)), (inside, collected((one, other))))


def _fronted(front: Term, inside: Terms) -> Expression:
    bracket = expression_of(inside)
    size = Term(abs(front.coefficient), front.powers)
    piece = bracket if size == Term(Fraction(1)) else Product((*_factors(expression_of_term(size)), bracket))
    return Negative(piece) if front.coefficient < 0 else piece


def _factors(expression: Expression) -> tuple[Expression, ...]:
    return expression.factors if isinstance(expression, Product) else (expression,)


def _flat(total: Sum) -> Sum:
    """A bracket that stands alone as a term keeps its 1: x(a + b) + 1(a + b) is easier to follow."""
    return Sum(tuple(
        Product((Number(Fraction(1)), term)) if isinstance(term, Sum)
        else Negative(Product((Number(Fraction(1)), term.operand)))
        if isinstance(term, Negative) and isinstance(term.operand, Sum) else term
        for term in total.terms
    ))  # fmt: skip


def _grouping(terms: Terms) -> Split | None:
    """Four terms in two pairs."""
    for partner in (1, 2, 3):
        first = (terms[0], terms[partner])
        second = tuple(term for place, term in enumerate(terms) if place not in (0, partner))
        found = _grouped(first, second)
        if found is not None:
            same = partner == 1
            return Split(found.between[1:] if same else found.between, found.factors)
    return None


def _square_less_square(terms: Terms) -> Split | None:
    """x² + 2x + 1 − y² is (x + 1)² − y²."""
    for three in combinations(terms, 3):
        (alone,) = (term for term in terms if term not in three)
        for turned in (1, -1):
            inner = _trinomial(collected(scaled(three, turned)))
            other = _root(alone, 2)
            if inner is None or other is None or alone.coefficient * turned > 0 or len(set(inner.factors)) > 1:
                continue
            bracket = inner.factors[0]
            square = Power(expression_of(bracket), Number(Fraction(2)))
            shown = Sum((square, Negative(_powered(other, 2))))
            if turned < 0:
                shown = Sum((_powered(other, 2), Negative(square)))
                return Split((shown,), (added((other,), negated(bracket)), added((other,), bracket)))
            return Split((shown,), (added(bracket, negated((other,))), added(bracket, (other,))))
    return None


def _by_root(terms: Terms) -> Split | None:
    """The factor theorem, for one letter and degree 3 or more."""
    letters = letters_in(terms)
    if len(letters) != 1 or degree(terms) < 3:
        return None
    numbers = coefficients(terms, letters[0])
    roots = rational_roots(numbers)
    if not roots:
        return None
    root = roots[0]
    factor = [Fraction(-root.numerator), Fraction(root.denominator)]
    quotient, _ = divided(numbers, factor)
    linear = from_coefficients(factor, letters[0])
    value = write(whole_or_fraction(root))
    return Split(
        (f"{letters[0]} = {value} makes {written(terms)} equal to 0, so {written(linear)} is a factor",),
        (linear, from_coefficients(quotient, letters[0])),
    )


def _in_general(terms: Terms) -> Split | None:
    """Factors that none of the school methods finds, by Kronecker's successors; loads sympy."""
    if degree(terms) < 4 and len(letters_in(terms)) < 2:
        return None
    import sympy

    symbols = {letter: sympy.Symbol(letter) for letter in letters_in(terms)}
    total = sympy.Add(*(_symbolic(term, symbols) for term in terms))
    constant, found = sympy.factor_list(total)
    if sum(count for _, count in found) < 2 or constant != 1:
        return None
    factors = tuple(_terms(factor, symbols) for factor, count in found for _ in range(count))
    return Split((), factors)


def _symbolic(term: Term, symbols: dict[str, "object"]) -> "object":
    import sympy

    powers = (sympy.Pow(symbols[letter], exponent) for letter, exponent in term.powers)
    return sympy.Mul(sympy.Rational(term.coefficient.numerator, term.coefficient.denominator), *powers)


def _terms(factor: object, symbols: dict[str, "object"]) -> Terms:
    import sympy

    letters = sorted(symbols)
    found = sympy.Poly(factor, *(symbols[letter] for letter in letters)).terms()
    return collected(
        Term(Fraction(int(number.p), int(number.q)), _powers(letters, exponents)) for exponents, number in found
    )


def _powers(letters: list[str], exponents: tuple[int, ...]) -> Powers:
    return tuple((letter, int(exponent)) for letter, exponent in zip(letters, exponents, strict=True) if exponent)

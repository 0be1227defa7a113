"""Equations of a story that are not of the first degree: one letter, up to the second degree, in a pupil's lines."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, isqrt, lcm

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.equations_named import replaced
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.polynomial import ONE, AlgebraicFraction, Polynomial, algebraic_fraction
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Letter, Negative, Number, Power, Product, Relation, Sum, letters_of

_ZERO = Number(Fraction(0))


@dataclass(frozen=True, slots=True)
class Roots:
    """The lines from an equation in `letter` to its rational roots; `irrational` says that others are left out.

    Where they are, `standard` is the side that is nought.
    """

    letter: str
    lines: tuple[str, ...]
    values: tuple[Fraction, ...]
    irrational: bool = False
    standard: Expression | None = None


def roots_of(relation: Relation, letter: str) -> Roots:
    """The rational roots of an equation in one letter, with lines by factorising.

    Raises NotSurd, NoValue and BudgetExceeded where it is no such equation.

    >>> from paperaudit.maths.parse import read_relation
    >>> roots_of(read_relation("x(x + 3) = 40"), "x").lines
    ('x(x + 3) = 40', 'x² + 3x − 40 = 0', '(x + 8)(x − 5) = 0', 'x = −8 or x = 5')
    """
    left, right = algebraic_fraction(relation.left), algebraic_fraction(relation.right)
    lines = [write(relation)]
    below = _common(left, right)
    if below != ONE:
        cleared = [_coefficients((side * AlgebraicFraction(below)), letter) for side in (left, right)]
        lines.append(
            f"multiply by {write(_polynomial(_shares(below, letter), letter))}: "
            + " = ".join(write(_polynomial(side, letter)) for side in cleared)
        )
        together = _less(*cleared)
    else:
        together = _less(_shares(left.above, letter), _shares(right.above, letter))
    whole = _whole(together)
    if len(whole) > 3:
        raise BudgetExceeded("an equation of the third or a higher degree")
    if len(whole) < 2:
        raise NoValue("an equation in which no letter is left")
    if len(whole) == 2:
        return Roots(
            letter,
            (*lines, *_linear(cleared if below != ONE else None, whole, letter)),
            _allowed((Fraction(-whole[0], whole[1]),), below, letter),
        )
    standard = f"{write(_polynomial([Fraction(n) for n in whole], letter))} = 0"
    lines += [standard] if standard != lines[-1] else []
    c, b, a = whole
    under = b * b - 4 * a * c
    if under < 0:
        return Roots(
            letter,
            (
                *lines,
                f"b² − 4ac = {_shown(b)}² − 4 × {_shown(a)} × {_shown(c)} = {write(whole_or_fraction(under))}, "
                "which is negative, so there is no real root",
            ),
            (),
        )
    root = isqrt(under)
    if root * root != under:
        side = _polynomial([Fraction(n) for n in whole], letter)
        return Roots(letter, tuple(lines), (), irrational=True, standard=side)
    values = tuple(sorted({Fraction(-b - root, 2 * a), Fraction(-b + root, 2 * a)}))
    lines.append(f"{_factors(a, values, letter)} = 0")
    lines.append(" or ".join(f"{letter} = {write(whole_or_fraction(value))}" for value in values))
    return Roots(letter, tuple(lines), _allowed(values, below, letter))


def _common(left: AlgebraicFraction, right: AlgebraicFraction) -> Polynomial:
    if left.below == right.below or right.below == ONE:
        return left.below
    return right.below if left.below == ONE else left.below * right.below


def _allowed(values: Sequence[Fraction], below: Polynomial, letter: str) -> tuple[Fraction, ...]:
    """The roots at which no denominator is nought."""
    shares = _shares(below, letter)
    return tuple(value for value in values if sum(share * value**at for at, share in enumerate(shares)))


def _shares(polynomial: Polynomial, letter: str) -> list[Fraction]:
    """The coefficients by exponent of the letter; raises NoValue where there is another letter or a root."""
    shares = [Fraction(0)] * (polynomial.degree + 1)
    for monomial, share in polynomial.terms.items():
        value = share.fraction
        if value is None or any(unknown != Letter(letter) for unknown, _ in monomial):
            raise NoValue("a coefficient that is no number")
        shares[sum(exponent for _, exponent in monomial)] += value
    return shares


def _coefficients(side: AlgebraicFraction, letter: str) -> list[Fraction]:
    """The coefficients of a fraction that comes out even."""
    above, below = _shares(side.above, letter), _shares(side.below, letter)
    result = [Fraction(0)] * max(len(above) - len(below) + 1, 1)
    rest = list(above)
    for at in range(len(above) - len(below), -1, -1):
        result[at] = rest[at + len(below) - 1] / below[-1]
        for place, share in enumerate(below):
            rest[at + place] -= result[at] * share
    if any(rest):
        raise NoValue("a fraction that does not cancel")
    return result


def _less(left: Sequence[Fraction], right: Sequence[Fraction]) -> list[Fraction]:
    size = max(len(left), len(right))
    first, second = ([*side, *[Fraction(0)] * (size - len(side))] for side in (left, right))
    return [a - b for a, b in zip(first, second, strict=True)]


def _whole(shares: Sequence[Fraction]) -> list[int]:
    """Whole coefficients without a common factor, the leading one positive."""
    kept = list(shares)
    while kept and not kept[-1]:
        kept.pop()
    scale = lcm(*(share.denominator for share in kept)) if kept else 1
    numbers = [int(share * scale) for share in kept]
    common = gcd(*numbers) if numbers else 1
    return [number // common * (1 if numbers[-1] > 0 else -1) for number in numbers]


def _linear(cleared: Sequence[Sequence[Fraction]] | None, whole: Sequence[int], letter: str) -> Iterator[str]:
    constant, share = Number(Fraction(-whole[0])), whole[1]
    if share != 1:
        yield f"{write(_polynomial([Fraction(0), Fraction(share)], letter))} = {write(constant)}"
    yield f"{letter} = {write(whole_or_fraction(Fraction(-whole[0], share)))}"


def _polynomial(shares: Sequence[Fraction], letter: str) -> Expression:
    terms: list[Expression] = []
    for exponent in range(len(shares) - 1, -1, -1):
        share = shares[exponent]
        if not share:
            continue
        power: Expression = Letter(letter)
        if exponent > 1:
            power = Power(power, Number(Fraction(exponent)))
        size = whole_or_fraction(abs(share))
        term: Expression = size if not exponent else power if size.value == 1 else Product((size, power))
        terms.append(Negative(term) if share < 0 else term)
    return Sum(tuple(terms)) if len(terms) > 1 else terms[0] if terms else _ZERO


def _factors(leading: int, values: Sequence[Fraction], letter: str) -> str:
    """The factors with whole numbers: (2x − 5)(x + 4), (x − 3)²."""
    roots = values if len(values) == 2 else (*values, *values)
    parts = [_polynomial([Fraction(-value.numerator), Fraction(value.denominator)], letter) for value in roots]
    outside = Fraction(leading)
    for value in roots:
        outside /= value.denominator
    front = "" if outside == 1 else write(whole_or_fraction(outside))
    texts = [text if text == letter else f"({text})" for text in map(write, parts)]
    texts.sort(key=len)
    return front + (f"{texts[0]}²" if texts[0] == texts[1] else "".join(texts))


def _shown(number: int) -> str:
    return f"({write(whole_or_fraction(number))})" if number < 0 else str(number)


def put_in(relations: Sequence[Relation], letters: Sequence[str]) -> tuple[str, Expression, Relation] | None:
    """For two equations in two letters, one of them of the first degree: a letter by the other, put into the other."""
    from paperaudit.maths.linear_terms import NotLinear
    from paperaudit.strands.equation_checks import form_at_points
    from paperaudit.strands.finishing import ChecksDisagree

    found: list[tuple[int, str, Expression, Relation]] = []
    for relation, other in (tuple(relations), tuple(reversed(relations))):
        try:
            form = form_at_points(relation, letters)
        except (NotLinear, ChecksDisagree, NoValue):
            continue
        for letter in reversed(letters):
            share = Fraction(form.terms.get(letter, 0))
            (free,) = (name for name in letters if name != letter)
            if not share:
                continue
            terms = [-form.constant / share, -Fraction(form.terms.get(free, 0)) / share]
            value = _ordered(terms, free)
            cost = sum(term.denominator for term in terms)
            found.append((cost, letter, value, replaced(other, {Letter(letter): value})))
    return min(found, key=lambda one: one[0])[1:] if found else None


def _ordered(terms: Sequence[Fraction], letter: str) -> Expression:
    """10 − x with the number first where the letter's share is negative, else x + 10."""
    written = _polynomial(terms, letter)
    if isinstance(written, Sum) and terms[1] < 0 < terms[0]:
        return Sum(tuple(reversed(written.terms)))
    return written


def letters_of_relation(relation: Relation) -> tuple[str, ...]:
    """The letters of both sides, each once."""
    return tuple(dict.fromkeys((*letters_of(relation.left), *letters_of(relation.right))))

"""Quotients of polynomials in sines and cosines, made shorter by sin² x + cos² x = 1 and by cancelling."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm

from paperaudit.maths.algebra.division import divided
from paperaudit.maths.cancelling import quotient, reduced
from paperaudit.maths.parts import with_parts
from paperaudit.maths.polynomial import ONE, AlgebraicFraction, Monomial, Polynomial
from paperaudit.maths.surd import Surd
from paperaudit.maths.trig.writing import as_written, times, written_sum
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Function,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
    leaves,
)


@dataclass(frozen=True, slots=True)
class Shortened:
    """A quotient as sin² + cos² = 1 leaves it, with its factors shown, and cancelled."""

    put_in: Expression | None
    replaced: Expression
    factored: Expression | None
    cancelled: Expression

    @property
    def lines(self) -> tuple[Expression, ...]:
        """The steps as lines, those that differ."""
        found: list[Expression] = [self.replaced] if self.put_in is None else [self.put_in, self.replaced]
        for line in (self.factored, self.cancelled):
            if line is not None and write(line) != write(found[-1]):
                found.append(line)
        return tuple(found)


def shortenings(fraction: AlgebraicFraction) -> tuple[Shortened, ...]:
    """What a quotient comes to by each way of using sin² + cos² = 1, the shortest first."""
    found: dict[str, Shortened] = {}
    for above, put_in in _variants(fraction.above):
        for below, _ in _variants(fraction.below):
            if not below.terms:
                continue
            whole = put_in if put_in is None or fraction.below == ONE else Quotient(put_in, written_sum(below))
            one = _shortened(AlgebraicFraction(above, below), whole)
            found.setdefault(write(one.cancelled), one)
    return tuple(sorted(found.values(), key=lambda one: (_length(one.cancelled), _length(one.replaced))))


def _length(expression: Expression) -> tuple[int, int]:
    return len(leaves(expression)), len(write(expression))


def _shortened(fraction: AlgebraicFraction, put_in: Expression | None) -> Shortened:
    simple = reduced(fraction)
    if simple.above.terms and simple.below != ONE:
        simple = _with_whole_numbers(_without_common_factor(simple))
    factored = None
    if simple.below != fraction.below and fraction.above.terms:
        common = quotient(fraction.below, simple.below)
        if common is not None and len(common.terms) > 1:
            factored = Quotient(times(simple.above, common), times(simple.below, common))
    return Shortened(put_in, as_written(fraction), factored, _written(simple))


def _with_whole_numbers(fraction: AlgebraicFraction) -> AlgebraicFraction:
    """Both polynomials with whole coefficients that have no common factor, the first one below positive."""
    shares = [share.fraction for side in (fraction.above, fraction.below) for share in side.terms.values()]
    if None in shares:
        return fraction
    numbers = [share for share in shares if share is not None]
    scale = Fraction(lcm(*(share.denominator for share in numbers)))
    scale /= gcd(*(int(share * scale) for share in numbers))
    below = fraction.below.terms
    first = next((share.fraction for monomial, share in below.items() if not monomial), None)
    first = first or next(iter(below.values())).fraction
    factor = Polynomial.number(Surd.rational(-scale if first is not None and first < 0 else scale))
    above, under = fraction.above * factor, fraction.below * factor
    whole = AlgebraicFraction(above, under)
    return whole


def _written(fraction: AlgebraicFraction) -> Expression:
    """The quotient, tan x in place of sin x/cos x where nothing else stands in it."""
    if len(fraction.above.terms) == len(fraction.below.terms) == 1 and fraction.below != ONE:
        ((above, share),), ((below, divisor),) = fraction.above.terms.items(), fraction.below.terms.items()
        value = (share * divisor.reciprocal()).fraction
        if value is not None and abs(value) == 1 and len(above) <= 1 and len(below) == 1:
            written = _as_tangent(above, below)
            if written is not None:
                return written if value > 0 else Negative(written)
    return as_written(fraction)


def _as_tangent(above: Monomial, below: Monomial) -> Expression | None:
    ((bottom, exponent),) = below
    top, raised = above[0] if above else (None, 0)
    if not isinstance(bottom, Function) or not isinstance(top, Function) or raised != exponent:
        return None
    if top.argument != bottom.argument or top.name == bottom.name:
        return None
    tangent: Expression = Function("tan", top.argument)
    if exponent > 1:
        tangent = Power(tangent, Number(Fraction(exponent)))
    return tangent if top.name == "sin" else Quotient(Number(Fraction(1)), tangent)


def _variants(polynomial: Polynomial) -> tuple[tuple[Polynomial, Expression | None], ...]:
    """The polynomial as it is, with sin² + cos² put together, without squares of cosines, and without those of sines.

    Beside each stands the line with the squares put in, where they have to be multiplied out.
    """
    found: dict[Polynomial, Expression | None] = {polynomial: None}
    found.setdefault(_together(polynomial), _with_bracket(polynomial))
    for name in ("cos", "sin"):
        whole = _without(name, polynomial)
        high = any(
            isinstance(key, Function) and key.name == name and count > 2
            for monomial in polynomial.terms
            for key, count in monomial
        )
        found.setdefault(whole, _with_squares_put_in(written_sum(polynomial), name) if high else None)
    return tuple(found.items())


def _with_bracket(polynomial: Polynomial) -> Expression | None:
    """cos x(cos² x + sin² x), where all terms have something in common."""
    keys = dict.fromkeys(key for monomial in polynomial.terms for key, _ in monomial)
    common = {key: min(dict(monomial).get(key, 0) for monomial in polynomial.terms) for key in keys}
    if len(polynomial.terms) < 2 or not any(common.values()):
        return None
    before = Polynomial({_ordered({key: count for key, count in common.items() if count}): Surd.rational(1)})
    rest = quotient(polynomial, before)
    return None if rest is None else Product((written_sum(before), written_sum(rest)))


def _with_squares_put_in(expression: Expression, name: str) -> Expression:
    """cos⁴ x as (1 − sin² x)², cos³ x as cos x (1 − sin² x)."""
    match expression:
        case Power(Function(own, argument) as function, Number(count)) if own == name and count > 1:
            other = Function("sin" if name == "cos" else "cos", argument)
            square: Expression = Sum((Number(Fraction(1)), Negative(Power(other, Number(Fraction(2))))))
            times = int(count) // 2
            raised = square if times == 1 else Power(square, Number(Fraction(times)))
            return raised if count % 2 == 0 else Product((raised, function))
    return with_parts(expression, lambda part: _with_squares_put_in(part, name))


def arguments(polynomial: Polynomial) -> tuple[Expression, ...]:
    """The angles that its sines and cosines are taken of."""
    names = (key for monomial in polynomial.terms for key, _ in monomial)
    return tuple(dict.fromkeys(key.argument for key in names if isinstance(key, Function)))


def _without(name: str, polynomial: Polynomial) -> Polynomial:
    """Every square of this function as 1 less the square of the other."""
    result = polynomial
    for argument in arguments(polynomial):
        own = Function(name, argument)  # type: ignore[arg-type]
        other = Polynomial.of(Function("sin" if name == "cos" else "cos", argument))
        whole = Polynomial({})
        for monomial, share in result.terms.items():
            powers = dict(monomial)
            count = powers.pop(own, 0)
            if count % 2:
                powers[own] = 1
            term = Polynomial({_ordered(powers): share})
            for _ in range(count // 2):
                term = term * (ONE - other * other)
            whole = whole + term
        result = whole
    return result


def normal(polynomial: Polynomial) -> Polynomial:
    """The polynomial without squares of cosines: two are equal for every angle when these are the same."""
    return _without("cos", polynomial)


def _ordered(powers: dict[Expression, int]) -> Monomial:
    return tuple(sorted(powers.items(), key=lambda pair: write(pair[0])))


def _together(polynomial: Polynomial) -> Polynomial:
    """a sin² x + a cos² x as a, wherever two terms are so."""
    result = polynomial
    changed = True
    while changed:
        changed = False
        for monomial, other, rest in _pairs(result):
            if other in result.terms and result.terms[other] == result.terms[monomial]:
                share = result.terms[monomial]
                kept = {key: value for key, value in result.terms.items() if key not in (monomial, other)}
                result = Polynomial(kept) + Polynomial({rest: share})
                changed = True
                break
    return result


def _pairs(polynomial: Polynomial) -> Iterator[tuple[Monomial, Monomial, Monomial]]:
    """Each term with a square of a sine, the term with the cosine in its place, and both without the square."""
    for monomial in polynomial.terms:
        powers = dict(monomial)
        for key, count in monomial:
            if not isinstance(key, Function) or key.name != "sin" or count < 2:
                continue
            rest = {**powers, key: count - 2}
            rest = {unknown: exponent for unknown, exponent in rest.items() if exponent}
            cosine = Function("cos", key.argument)
            turned = {**rest, cosine: rest.get(cosine, 0) + 2}
            yield monomial, _ordered(turned), _ordered(rest)


def cancelled_powers(fraction: AlgebraicFraction) -> AlgebraicFraction:
    """The quotient with what all terms have in common cancelled, where one term stands below."""
    return (
        _with_whole_numbers(reduced(fraction)) if len(fraction.below.terms) == 1 and fraction.above.terms else fraction
    )


def _without_common_factor(fraction: AlgebraicFraction) -> AlgebraicFraction:
    """A factor that both polynomials in one and the same function have in common, cancelled."""
    keys = {key for side in (fraction.above, fraction.below) for monomial in side.terms for key, _ in monomial}
    if len(keys) != 1:
        return fraction
    (key,) = keys
    above, below = (_coefficients(side, key) for side in (fraction.above, fraction.below))
    if above is None or below is None:
        return fraction
    one, other = above, below
    while other:
        one, other = other, divided(one, other)[1]
    if len(one) < 2:
        return fraction
    whole = [_polynomial(divided(side, one)[0], key) for side in (above, below)]
    return AlgebraicFraction(*whole)


def _coefficients(polynomial: Polynomial, key: Expression) -> list[Fraction] | None:
    """Its coefficients, lowest exponent first; None where roots stand among them."""
    numbers = [Fraction(0)] * (polynomial.degree + 1)
    for monomial, share in polynomial.terms.items():
        if share.fraction is None:
            return None
        numbers[dict(monomial).get(key, 0)] = share.fraction
    return numbers


def _polynomial(numbers: list[Fraction], key: Expression) -> Polynomial:
    return Polynomial({((key, place),) if place else (): Surd.rational(number) for place, number in enumerate(numbers)})

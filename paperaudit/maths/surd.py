"""Sums of rational multiples of square roots, such as 2 + 3√5, worked with exactly."""

from collections.abc import Mapping
from decimal import Context, Decimal
from fractions import Fraction
from functools import cache
from math import gcd, isqrt

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.number_forms import whole_or_fraction, within_limits
from paperaudit.model.expression import Expression, Negative, Number, Product, Quotient, Root, Sum

MAX_TERMS = 64
_TRIAL_LIMIT = 10_000
_ZERO = Fraction(0)


@cache
def square_part(whole: int) -> tuple[int, int]:
    """`(s, n)` with whole = s²n and n free of squares; raises BudgetExceeded where that takes too long.

    >>> square_part(45)
    (3, 5)
    """
    outside, inside, rest, divisor = 1, 1, whole, 2
    while divisor * divisor <= rest and divisor <= _TRIAL_LIMIT:
        while rest % (divisor * divisor) == 0:
            rest //= divisor * divisor
            outside *= divisor
        if rest % divisor == 0:
            rest //= divisor
            inside *= divisor
        divisor += 1
    root = isqrt(rest)
    if root * root == rest:
        return outside * root, inside
    # What is left has no prime factor up to the limit, so below its cube it holds no square but its own.
    if rest >= _TRIAL_LIMIT**3:
        raise BudgetExceeded("a square root of a number too large to take apart")
    return outside, inside * rest


class Surd:
    """An exact value Σ qᵢ√nᵢ with rational qᵢ and square-free whole nᵢ. Immutable and hashable.

    >>> Surd.root(Fraction(45)) == Surd({5: Fraction(3)})
    True
    """

    __slots__ = ("parts",)

    def __init__(self, parts: Mapping[int, Fraction]) -> None:
        self.parts: dict[int, Fraction] = {root: within_limits(share) for root, share in sorted(parts.items()) if share}
        if len(self.parts) > MAX_TERMS:
            raise BudgetExceeded("a sum of dozens of different roots")

    @staticmethod
    def rational(value: Fraction | int) -> "Surd":
        """A rational number."""
        return Surd({1: Fraction(value)})

    @staticmethod
    def root(value: Fraction) -> "Surd":
        """The square root of a rational number; raises NoValue for a negative one."""
        if value < 0:
            raise NoValue("the square root of a negative number")
        if not value:
            return Surd({})
        outside, inside = square_part(value.numerator * value.denominator)
        return Surd({inside: Fraction(outside, value.denominator)})

    @property
    def fraction(self) -> Fraction | None:
        """The value where it is rational, else None."""
        if not self.parts:
            return _ZERO
        return self.parts.get(1) if len(self.parts) == 1 else None

    def __add__(self, other: "Surd") -> "Surd":
        parts = dict(self.parts)
        for root, share in other.parts.items():
            parts[root] = parts.get(root, _ZERO) + share
        return Surd(parts)

    def __neg__(self) -> "Surd":
        return Surd({root: -share for root, share in self.parts.items()})

    def __sub__(self, other: "Surd") -> "Surd":
        return self + -other

    def __mul__(self, other: "Surd") -> "Surd":
        parts: dict[int, Fraction] = {}
        for one, share in self.parts.items():
            for two, other_share in other.parts.items():
                outside, inside = square_part(one * two)
                parts[inside] = parts.get(inside, _ZERO) + share * other_share * outside
        return Surd(parts)

    def reciprocal(self) -> "Surd":
        """One over the value, its denominator made rational; raises NoValue for nought."""
        if not self.parts:
            raise NoValue("a division by nought")
        above, below = Surd.rational(1), self
        while below.fraction is None:
            turned = below._conjugate()
            above, below = above * turned, below * turned
        assert below.fraction is not None
        return above * Surd.rational(1 / below.fraction)

    def _conjugate(self) -> "Surd":
        """The value with the sign of one root turned wherever that root is a factor: 2 − √3 of 2 + √3.

        The product of the two no longer holds that root. A factor that every root has wholly or not
        at all serves in place of a prime, which would have to be searched for.
        """
        factor = max(self.parts)
        for root in (*self.parts, *self.parts):
            shared = gcd(factor, root)
            factor = shared if shared > 1 else factor
        return Surd({root: -share if root % factor == 0 else share for root, share in self.parts.items()})

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Surd) and self.parts == other.parts

    def __hash__(self) -> int:
        return hash(tuple(self.parts.items()))

    def __repr__(self) -> str:
        return f"Surd({self.parts!r})"

    def to_decimal(self, digits: int = 60) -> Decimal:
        """The value to about `digits` figures; not a rounding, its last figures may be off."""
        context = Context(prec=digits + 10)
        total = Decimal(0)
        for root, share in self.parts.items():
            part = context.multiply(context.sqrt(Decimal(root)), Decimal(share.numerator))
            total = context.add(total, context.divide(part, Decimal(share.denominator)))
        return total


def surd_expression(surd: Surd) -> Expression:
    """The value as a pupil writes it, rational part first: 5/2 + √61/2 is `5/2 + √61/2`, 3√5 is `3√5`."""
    terms = [_term(root, share) for root, share in surd.parts.items()]
    return Sum(tuple(terms)) if len(terms) > 1 else terms[0] if terms else Number(_ZERO)


def _term(root: int, share: Fraction) -> Expression:
    if root == 1:
        return whole_or_fraction(share)
    sign, size = share < 0, abs(share)
    radical: Expression = Root(Number(Fraction(root)))
    if size.numerator != 1:
        radical = Product((Number(Fraction(size.numerator)), radical))
    if size.denominator != 1:
        radical = Quotient(radical, Number(Fraction(size.denominator)))
    return Negative(radical) if sign else radical

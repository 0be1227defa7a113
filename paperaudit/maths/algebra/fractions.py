"""Algebraic fractions cancelled, multiplied, divided and added, line by line."""

from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.factorising import Factorised, factors_of, product_expression
from paperaudit.maths.algebra.ratios import ratio_of
from paperaudit.maths.algebra.terms import (
    ONE,
    NotTerms,
    Term,
    Terms,
    collected,
    expression_of,
    multiplied,
    negated,
    number_terms,
    product,
    scaled,
)
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
)

_MOST_FACTORS = 40
_MOST_IN_COMMON = 12
"""Brackets and letters of a common denominator: its numerators are multiplied out, each with all but its own."""


@dataclass(slots=True)
class _Fraction:
    """A fraction by its factors: a number in front, brackets and letters above and below."""

    size: Fraction
    above: Counter[Terms]
    below: Counter[Terms]

    @staticmethod
    def of(above: Factorised, below: Factorised) -> "_Fraction":
        """Numerator and denominator together."""
        made = _Fraction(above.front.coefficient / below.front.coefficient, Counter(), Counter())
        for found, into in ((above, made.above), (below, made.below)):
            for letter, exponent in found.front.powers:
                into[(Term(Fraction(1), ((letter, 1),)),)] += exponent
            for factor in found.factors:
                into[factor] += 1
        return made

    def cancelled(self) -> "_Fraction":
        """Without what stands above and below; a − b over b − a is −1."""
        size, above, below = self.size, Counter(self.above), Counter(self.below)
        for factor in list(above):
            shared = min(above[factor], below[factor])
            above[factor] -= shared
            below[factor] -= shared
            turned = tuple(negated(factor))
            for other in list(below):
                if above[factor] and below[other] and collected(other) == collected(turned):
                    shared = min(above[factor], below[other])
                    size *= (-1) ** shared
                    above[factor] -= shared
                    below[other] -= shared
        return _Fraction(size, +above, +below)

    def expression(self) -> Expression:
        """As it is written: the sign in front, numbers and letters before the brackets."""
        sign = self.size < 0
        top = _factored(Fraction(abs(self.size).numerator), self.above)
        bottom = _factored(Fraction(abs(self.size).denominator), self.below)
        result = top if bottom == Number(Fraction(1)) else Quotient(top, bottom)
        return Negative(result) if sign else result


def _factored(size: Fraction, factors: Counter[Terms]) -> Expression:
    letters = {term[0].powers[0][0]: count for term, count in factors.items() if _is_letter(term)}
    brackets = tuple(factor for factor, count in factors.items() if not _is_letter(factor) for _ in range(count))
    front = Term(size, tuple(sorted(letters.items())))
    return product_expression(front, brackets)


def _is_letter(terms: Terms) -> bool:
    return len(terms) == 1


def fraction_lines(expression: Expression) -> tuple[Expression, ...]:
    """The lines from an expression with letters under fraction bars to one fraction in lowest terms.

    >>> from paperaudit.maths.parse import read_expression
    >>> [write(line) for line in fraction_lines(read_expression("(x^2 - 9)/(x^2 + 3x)"))]
    ['(x² − 9)/(x² + 3x)', '(x − 3)(x + 3)/[x(x + 3)]', '(x − 3)/x']
    """
    lines = [expression]
    match expression:
        case Sum(terms) if len(terms) > 1:
            _add_up(terms, lines)
        case _:
            _multiply(expression, lines)
    return tuple(lines)


def _put(lines: list[Expression], line: Expression) -> None:
    if write(line) != write(lines[-1]):
        lines.append(line)


def _multiply(expression: Expression, lines: list[Expression]) -> None:
    """Division turned into multiplication, everything factorised, then cancelled."""
    turned = _turned(expression)
    if turned != expression:
        _put(lines, turned)
    parts: list[tuple[Terms, int]] = []
    _walk(turned, 1, parts)
    above, below = Factorised(ONE, ()), Factorised(ONE, ())
    for terms, sign in parts:
        if not terms and sign < 0:
            raise NoValue("a division by nought")
        if not terms:
            _put(lines, Number(Fraction(0)))
            return
        found = factors_of(terms)
        if sign > 0:
            above = _joined(above, found)
        else:
            below = _joined(below, found)
    if len(above.factors) + len(below.factors) > _MOST_FACTORS:
        raise BudgetExceeded("a fraction with dozens of factors")
    _put(lines, _shown(above, below))
    _put(lines, _Fraction.of(above, below).cancelled().expression())


def _shown(above: Factorised, below: Factorised) -> Expression:
    top, bottom = above.expression(), below.expression()
    return top if bottom == Number(Fraction(1)) else Quotient(top, bottom)


def _joined(one: Factorised, other: Factorised) -> Factorised:
    front = multiplied((one.front,), (other.front,))[0]
    return Factorised(front, (*one.factors, *other.factors))


def _turned(expression: Expression) -> Expression:
    """a ÷ b/c as a × c/b, and fractions over fractions likewise."""
    match expression:
        case Quotient(above, below, sign):
            if isinstance(below, Quotient):
                flipped: Expression = Quotient(_turned(below.denominator), _turned(below.numerator))
                return Product((_turned(above), flipped), "×")
            if sign == "÷":
                return Product((_turned(above), Quotient(Number(Fraction(1)), below)), "×")
            return Quotient(_turned(above), _turned(below))
        case Product(factors, sign):
            return Product(tuple(map(_turned, factors)), sign)
        case Negative(operand):
            return Negative(_turned(operand))
    return expression


def _walk(expression: Expression, sign: int, parts: list[tuple[Terms, int]]) -> None:
    match expression:
        case Negative(operand):
            parts.append((number_terms(-1), 1))
            _walk(operand, sign, parts)
        case Product(factors):
            for factor in factors:
                _walk(factor, sign, parts)
        case Quotient(above, below):
            _walk(above, sign, parts)
            _walk(below, -sign, parts)
        case Power(base, Number(value)) if value.denominator == 1 and abs(value) <= 12:
            for _ in range(abs(int(value))):
                _walk(base, sign if value > 0 else -sign, parts)
        case _:
            ratio = ratio_of(expression)
            parts.append((ratio.above, sign))
            parts.append((ratio.below, -sign))


def _add_up(terms: tuple[Expression, ...], lines: list[Expression]) -> None:
    """Denominators factorised, brought to the lowest common one, numerators added, the sum cancelled."""
    signs = [-1 if isinstance(term, Negative) else 1 for term in terms]
    ratios = [ratio_of(term.operand if isinstance(term, Negative) else term) for term in terms]
    found = [factors_of(ratio.below) for ratio in ratios]
    shown = [_over(ratio.above, below) for ratio, below in zip(ratios, found, strict=True)]
    _put(lines, Sum(tuple(_signed(piece, sign) for piece, sign in zip(shown, signs, strict=True))))
    size, common = _common(found)
    if common.total() > _MOST_IN_COMMON:
        raise BudgetExceeded("a common denominator with dozens of factors")
    pieces: list[Expression] = []
    raw: list[Term] = []
    bracketed = False
    for ratio, below, sign in zip(ratios, found, signs, strict=True):
        missing = _missing(below, size, common)
        bracketed |= len(ratio.above) > 1 or bool(missing.factors)
        raw.extend(scaled(multiplied(ratio.above, product((missing.front,), *missing.factors)), sign))
        pieces.append(_signed(_numerator(ratio.above, missing), sign))
    total = collected(raw)
    bottom = _factored(Fraction(size), common)
    if bracketed:
        _put(lines, Quotient(Sum(tuple(pieces)), bottom))
    _put(lines, Quotient(expression_of(tuple(raw)), bottom))
    if not total:
        _put(lines, Number(Fraction(0)))
        return
    _put(lines, Quotient(expression_of(total), bottom))
    above = factors_of(total)
    whole = _Fraction.of(above, Factorised(Term(Fraction(size)), _brackets(common)))
    whole.below = Counter(common)
    short = whole.cancelled()
    if short.below != whole.below or abs(short.size).denominator != size:
        _put(lines, Quotient(above.expression(), bottom))
        _put(lines, short.expression())


def _signed(piece: Expression, sign: int) -> Expression:
    return Negative(piece) if sign < 0 else piece


def _brackets(common: Counter[Terms]) -> tuple[Terms, ...]:
    return tuple(factor for factor in common.elements() if not _is_letter(factor))


def _over(above: Terms, below: Factorised) -> Expression:
    top = expression_of(above)
    return top if not below.factors and below.front == ONE else Quotient(top, below.expression())


def _common(found: list[Factorised]) -> tuple[int, Counter[Terms]]:
    size = lcm(*(abs(one.front.coefficient).numerator for one in found))
    common: Counter[Terms] = Counter()
    for one in found:
        if one.front.coefficient.denominator > 1:
            raise NotTerms("a fraction inside a denominator")
        own: Counter[Terms] = _Fraction.of(one, Factorised(ONE, ())).above
        for factor, count in own.items():
            common[factor] = max(common[factor], count)
    return size, common


def _missing(below: Factorised, size: int, common: Counter[Terms]) -> Factorised:
    """What numerator and denominator are multiplied by."""
    own = _Fraction.of(below, Factorised(ONE, ())).above
    rest = common - own
    letters = tuple(sorted((f[0].powers[0][0], count) for f, count in rest.items() if _is_letter(f)))
    brackets = tuple(factor for factor, count in rest.items() if not _is_letter(factor) for _ in range(count))
    return Factorised(Term(Fraction(size) / below.front.coefficient, letters), brackets)


def _numerator(above: Terms, missing: Factorised) -> Expression:
    if missing.front == ONE and not missing.factors:
        return expression_of(above)
    if len(above) == 1:
        front = multiplied(above, (missing.front,))[0]
        return product_expression(front, missing.factors)
    return product_expression(missing.front, (*([above] if len(above) > 1 else []), *missing.factors))


@dataclass(frozen=True, slots=True)
class CommonFactors:
    """The letters and brackets of a lowest common denominator."""

    counted: Counter[Terms]

    def front_of(self, size: int) -> Term:
        """The number and letters in front."""
        letters = sorted(
            (factor[0].powers[0][0], count) for factor, count in self.counted.items() if _is_letter(factor)
        )
        return Term(Fraction(size), tuple(letters))

    @property
    def brackets(self) -> tuple[Terms, ...]:
        """The brackets, each as often as it occurs."""
        return _brackets(self.counted)


def common_denominator(found: list[Factorised]) -> tuple[int, CommonFactors]:
    """The lowest common multiple of factorised denominators: its number, and its letters and brackets."""
    size, common = _common(found)
    return size, CommonFactors(common)


def missing_factor(below: Factorised, size: int, common: CommonFactors) -> Factorised:
    """What a numerator is multiplied by to stand over the common denominator."""
    return _missing(below, size, common.counted)


def numerator(above: Terms, missing: Factorised) -> Expression:
    """A numerator times what its denominator lacks, not yet multiplied out."""
    return _numerator(above, missing)

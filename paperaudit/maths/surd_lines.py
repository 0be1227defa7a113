"""Square roots worked on line by line: taken apart, multiplied out, collected, cleared from a denominator."""

from collections.abc import Callable
from fractions import Fraction
from itertools import product
from math import gcd

from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.parts import with_parts
from paperaudit.maths.surd import square_part
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Negative, Number, Power, Product, Quotient, Root, Sum, parts_of

MAX_LINES = 12
_MOST_TERMS = 8
Term = tuple[Fraction, int]
"""A share and the number under its root: 3√2 is (3, 2), and 5 is (5, 1)."""

Rule = Callable[[Expression], Expression | None]


def surd_lines(start: Expression, final: Expression) -> tuple[Expression, ...]:
    """The lines from an expression with square roots to its simplest form, both ends among them.

    Only the ends where no way of a pupil's leads from one to the other in a dozen lines.

    >>> from paperaudit.maths.parse import read_expression
    >>> [write(line) for line in surd_lines(read_expression("√50 + √18"), read_expression("8√2"))]
    ['√50 + √18', '√(25 × 2) + √(9 × 2)', '5√2 + 3√2', '8√2']
    """
    lines = [start]
    while len(lines) < MAX_LINES:
        following = _next(lines[-1])
        if following is None or write(following) == write(lines[-1]):
            break
        lines.append(following)
    if write(lines[-1]) != write(final) and not _over_one_number(lines[-1]):
        if len(lines) == MAX_LINES:
            return start, final
        lines.append(final)
    return tuple(lines)


def _over_one_number(line: Expression) -> bool:
    """Whether a sum stands over one number, as pupils leave it: (15 − 5√2)/7."""
    return (
        isinstance(line, Quotient)
        and isinstance(line.numerator, Sum)
        and isinstance(line.denominator, Number)
        and _next(line) is None
    )


def has_roots(expression: Expression) -> bool:
    """Whether a square root stands in an expression."""
    return (isinstance(expression, Root) and expression.degree == 2) or any(map(has_roots, parts_of(expression)))


def _next(line: Expression) -> Expression | None:
    """The line behind one: the first rule that changes something, applied wherever it can be."""
    for rule in _RULES:
        changed = _everywhere(line, rule)
        if changed != line:
            return changed
    return None


def _everywhere(expression: Expression, rule: Rule) -> Expression:
    """The rule applied to every part; where something inside is changed, what is round it waits for the next line."""
    inside = with_parts(expression, lambda part: _everywhere(part, rule))
    if inside != expression:
        return _spelled(inside)
    changed = rule(expression)
    return expression if changed is None else changed


def _spelled(expression: Expression) -> Expression:
    """A product with a × sign where a factor came to be a number or a product of its own: 12 × 2√3."""
    if isinstance(expression, Product) and not expression.sign:
        later = any(isinstance(one, Number) for one in expression.factors[1:])
        if later or any(isinstance(one, Product) for one in expression.factors):
            return Product(expression.factors, "×")
    return expression


def _term(expression: Expression) -> Term | None:
    """A share of a root, as written: 3√2, −√5, √3/2, 7."""
    match expression:
        case Number(value):
            return value, 1
        case Root(Number(value), 2) if value.denominator == 1 and value >= 0:
            return Fraction(1), int(value)
        case Negative(operand):
            inner = _term(operand)
            return None if inner is None else (-inner[0], inner[1])
        case Product((Number(value), Root() as root)):
            inner = _term(root)
            return None if inner is None else (value * inner[0], inner[1])
        case Quotient(above, Number(below)) if below:
            inner = _term(above)
            return None if inner is None or inner[1] == 1 else (inner[0] / below, inner[1])
    return None


def _terms(expression: Expression) -> list[Term] | None:
    """The terms of a sum of shares of roots."""
    if isinstance(expression, Sum):
        found = [_term(term) for term in expression.terms]
        known = [one for one in found if one is not None]
        return known if len(known) == len(found) else None
    single = _term(expression)
    return None if single is None else [single]


def _written(term: Term) -> Expression:
    share, under = term
    if share < 0:
        return Negative(_written((-share, under)))
    if under == 1:
        return whole_or_fraction(share)
    root: Expression = Root(Number(Fraction(under)))
    above = root if share.numerator == 1 else Product((Number(Fraction(share.numerator)), root))
    return above if share.denominator == 1 else Quotient(above, Number(Fraction(share.denominator)))


def _sum(terms: list[Term]) -> Expression:
    kept = [term for term in terms if term[0]] or [(Fraction(0), 1)]
    return _written(kept[0]) if len(kept) == 1 else Sum(tuple(map(_written, kept)))


def _opened(part: Expression) -> Expression | None:
    """√72 as √(36 × 2)."""
    if not (isinstance(part, Root) and part.degree == 2 and isinstance(part.radicand, Number)):
        return None
    value = part.radicand.value
    if value.denominator > 1:
        above, below = Number(Fraction(value.numerator)), Number(Fraction(value.denominator))
        return Quotient(Root(above), Root(below))
    outside, inside = square_part(int(value)) if value > 0 else (1, 1)
    if outside == 1 or inside == 1:
        return None
    return Root(Product((Number(Fraction(outside * outside)), Number(Fraction(inside))), "×"))


def _taken_out(part: Expression) -> Expression | None:
    """√(36 × 2) as 6√2, √9 as 3."""
    match part:
        case Root(Product((Number(square), Number(rest)), "×"), 2):
            outside, one = square_part(int(square))
            return _written((Fraction(outside), int(rest))) if one == 1 else None
        case Root(Number(value), 2) if value.denominator == 1 and value > 0:
            outside, inside = square_part(int(value))
            return Number(Fraction(outside)) if inside == 1 else None
    return None


def _merged(part: Expression) -> Expression | None:
    """3 × 6√2 as 18√2, 2√3 × 5√6 as 10√18, −(2√3) and (5√2)/10 as they are written shortest."""
    match part:
        case Product(factors):
            terms = [_term(factor) for factor in factors]
            known = [one for one in terms if one is not None]
            if len(known) < len(terms) or _term(part) is not None:
                return None
            share, under = Fraction(1), 1
            for one, below in known:
                share, under = share * one, under * below
            outside, inside = square_part(under)
            if inside == 1:
                return whole_or_fraction(share * outside)
            return _written((share, under))
        case Power(base, Number(count)) if count == 2 and (single := _term(base)) is not None:
            return whole_or_fraction(single[0] ** 2 * single[1])
        case Negative(Negative(inner)):
            return inner
    return None


def _collected(part: Expression) -> Expression | None:
    """Like terms together: 5√2 + 3√2 as 8√2; a sum within a sum without its brackets."""
    if not isinstance(part, Sum):
        return None
    flat: list[Term] = []
    for term in part.terms:
        turned = isinstance(term, Negative)
        inner = _terms(term.operand if isinstance(term, Negative) else term)
        if inner is None:
            return None
        flat += [(-share if turned else share, under) for share, under in inner]
    shares: dict[int, Fraction] = {}
    for share, under in flat:
        shares[under] = shares.get(under, Fraction(0)) + share
    if len(shares) == len(part.terms) and all(shares.values()):
        return None
    # The number stands first, the roots in their order: −1 − √3.
    return _sum(sorted(((share, under) for under, share in shares.items()), key=lambda term: term[1]))


def _expanded(part: Expression) -> Expression | None:
    """Brackets multiplied out: (2 + √3)(1 − √3), (√5 − 2)², 5(3 − √2)."""
    match part:
        case Power(Sum() as base, Number(count)) if count == 2:
            return _expanded(Product((base, base)))
        case Power(Sum() as base, Number(count)) if count in (3, 4):
            return Product((Power(base, Number(count - 1)), base))
        case Product((first, second, *rest)):
            one, other = _terms(first), _terms(second)
            if one is None or other is None or len(one) * len(other) > _MOST_TERMS or len(one) + len(other) < 3:
                return None
            result = _difference(one, other) or _sum([_multiplied(*pair) for pair in product(one, other)])
            return Product((result, *rest), part.sign) if rest else result
    return None


def _multiplied(one: Term, other: Term) -> Term:
    share, under = one[0] * other[0], one[1] * other[1]
    outside, inside = square_part(under)
    return (share * outside, 1) if inside == 1 else (share, under)


def _difference(one: list[Term], other: list[Term]) -> Expression | None:
    """(a + b)(a − b) as a² − b²."""
    if len(one) != 2 or len(other) != 2 or one[0] != other[0]:
        return None
    if one[1] != (-other[1][0], other[1][1]):
        return None
    first, second = (share * share * under for share, under in (one[0], one[1]))
    return Sum((whole_or_fraction(first), Negative(whole_or_fraction(second))))


def _divided(part: Expression) -> Expression | None:
    """A quotient by a number or by a root that goes into the one above: (4 + 2√3)/2, √45/√5."""
    if not isinstance(part, Quotient):
        return None
    above, below = _terms(part.numerator), _term(part.denominator)
    if above is None or below is None or not below[0]:
        return None
    if any(under % below[1] for _, under in above):
        return None
    result = [(share / below[0], under // below[1]) for share, under in above]
    if len(above) > 1 and any(share.denominator > 1 for share, _ in result):
        return _lowest(above, below)
    shown = _sum(result)
    return None if write(shown) == write(part) else shown


def _lowest(above: list[Term], below: Term) -> Expression | None:
    """A common factor of all terms above and the number below divided out: (6 + 4√2)/10."""
    if below[1] != 1 or any(share.denominator > 1 for share, _ in above) or below[0].denominator > 1:
        return None
    common = gcd(*(share.numerator for share, _ in above), below[0].numerator)
    sign = -1 if below[0] < 0 else 1
    if common == 1 and sign == 1:
        return None
    return Quotient(_sum([(sign * share / common, under) for share, under in above]), Number(sign * below[0] / common))


def _rationalised(part: Expression) -> Expression | None:
    """A root below cleared: 6/√3 as (6 × √3)/(√3 × √3), 5/(3 + √2) with 3 − √2 above and below."""
    if not isinstance(part, Quotient):
        return None
    above, below = _terms(part.numerator), _terms(part.denominator)
    if above is None or below is None:
        return None
    if len(below) == 1 and below[0][1] > 1:
        root = Root(Number(Fraction(below[0][1])))
        return Quotient(Product((part.numerator, root), "×"), Product((part.denominator, root), "×"))
    if len(below) == 2:
        other = _sum([below[0], (-below[1][0], below[1][1])])
        one = Product((part.numerator, other), "" if part.numerator != Number(Fraction(1)) else "×")
        top: Expression = other if part.numerator == Number(Fraction(1)) else one
        return Quotient(top, Product((part.denominator, other)))
    return None


_RULES: tuple[Rule, ...] = (_taken_out, _opened, _merged, _divided, _expanded, _collected, _rationalised)

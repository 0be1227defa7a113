"""Expressions that are the same in two letters, by their sum and product: α² + β² from α + β and αβ."""

from collections.abc import Sequence
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Term,
    Terms,
    added,
    coefficients,
    collected,
    degree,
    letters_in,
    negated,
    power,
    product,
    scaled,
    terms_of,
    value_at,
)
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.polynomial import algebraic_fraction
from paperaudit.maths.write import write
from paperaudit.model.algebra_task import OfRoots
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Derived
from paperaudit.model.expression import Expression, Letter, Negative, Number, Power, Product, Quotient, Relation, Sum
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree, answer_of

SKILL = "roots of quadratic equations"
CONFIRMED = "worked out with the two numbers themselves, in floating point"
_CLOSE = 1e-9
_SUM, _PRODUCT = "s", "p"


def of_roots(task: OfRoots, reading: Reading) -> Derived:
    """Expressions in the two roots of a quadratic equation, without solving it."""
    whole = added(terms_of(task.relation.left), negated(terms_of(task.relation.right)))
    letters = letters_in(whole)
    if task.relation.sign != "=" or len(letters) != 1 or degree(whole) != 2:
        raise NotTerms(f"{write(task.relation)}, which is not quadratic in one letter")
    c, b, a = coefficients(whole, letters[0])
    one, other = task.letters
    working = Working(SKILL)
    working.given(task.relation)
    total, times = -b / a, c / a
    working.say(f"{one} + {other} = −b/a = {write(whole_or_fraction(total))}", uses=())
    working.say(f"{one}{other} = c/a = {write(whole_or_fraction(times))}", uses=())
    return symmetric_values(task.wanted, (one, other), total, times, working)


def from_sum_and_product(
    relations: Sequence[Relation], wanted: Sequence[Expression], texts: tuple[str, ...], ask: Ask
) -> Derived | None:
    """x² + y² from x + y = 7 and xy = 12; None for other equations."""
    if len(relations) != 2 or any(relation.sign != "=" for relation in relations):
        return None
    found: dict[str, Fraction] = {}
    names: tuple[str, ...] = ()
    for relation in relations:
        left, right = terms_of(relation.left), terms_of(relation.right)
        if letters_in(right) or len(letters_in(left)) != 2 or any(term.coefficient != 1 for term in left):
            return None
        kind = "sum" if [term.degree for term in left] == [1, 1] else "product" if len(left) == 1 else ""
        if not kind or (kind == "product" and left[0].degree != 2) or (names and names != letters_in(left)):
            return None
        names = letters_in(left)
        found[kind] = right[0].coefficient if right else Fraction(0)
    if len(found) != 2:
        return None
    working = Working(SKILL, texts)
    return symmetric_values(wanted, (names[0], names[1]), found["sum"], found["product"], working)


def symmetric_values(
    wanted: Sequence[Expression], names: tuple[str, str], total: Fraction, times: Fraction, working: Working
) -> Derived:
    """The values, each by way of the sum and the product. Raises NotTerms for what is not the same in both."""
    answers = []
    start = tuple(step.statement for step in working.steps) or working.used
    for one in wanted:
        above, below = _parts(one)
        top, bottom = (_in_sum_and_product(part, names) for part in (above, below))
        at = {_SUM: total, _PRODUCT: times}
        low = value_at(bottom, at)
        if not low:
            raise NoValue(f"{write(one)}, a division by nought")
        value = value_at(top, at) / low
        _confirm(one, names, total, times, value)
        shown, put = (_written(top, bottom, names, how) for how in (None, (total, times)))
        if shown != write(one):
            working.say(f"{write(one)} = {shown}", uses=start)
        text = write(whole_or_fraction(value))
        opening = "=" if shown != write(one) else f"{write(one)} ="
        if put != text:
            working.say(f"{opening} {put}")
            opening = "="
        working.say(f"{opening} {text}", text)
        answers.append(answer_of(whole_or_fraction(value)))
    return working.derived(*answers, confirmed_by=CONFIRMED)


def _parts(expression: Expression) -> tuple[Terms, Terms]:
    """Numerator and denominator, with whole coefficients."""
    try:
        return terms_of(expression), (Term(Fraction(1)),)
    except NotTerms:
        pass
    whole = algebraic_fraction(expression)
    found = []
    for part in (whole.above, whole.below):
        terms = []
        for monomial, share in part.terms.items():
            if share.fraction is None:
                raise NotTerms(f"{write(expression)}, with roots")
            powers = tuple(sorted((write(letter), count) for letter, count in monomial))
            terms.append(Term(share.fraction, powers))
        found.append(collected(terms))
    return found[0], found[1]


def _in_sum_and_product(terms: Terms, names: tuple[str, str]) -> Terms:
    """A polynomial that is the same in two letters, in their sum s and product p."""
    one, other = names
    result: list[Term] = []
    sum_terms = (Term(Fraction(1), ((one, 1),)), Term(Fraction(1), ((other, 1),)))
    rest = terms
    while rest:
        first = max(rest, key=lambda term: (term.degree, term.exponent(one)))
        high, low = first.exponent(one), first.exponent(other)
        if high < low or first.degree != high + low:
            raise NotTerms("an expression that is not the same in both letters")
        both = Term(Fraction(1), tuple(sorted(((one, low), (other, low)))) if low else ())
        taken = scaled(product(power(sum_terms, high - low), (both,)), first.coefficient)
        powers = tuple(pair for pair in ((_PRODUCT, low), (_SUM, high - low)) if pair[1])
        result.append(Term(first.coefficient, powers))
        rest = added(rest, negated(taken))
    return tuple(result)


def _written(top: Terms, bottom: Terms, names: tuple[str, str], values: tuple[Fraction, Fraction] | None) -> str:
    """(α + β)² − 2αβ, or with the numbers of sum and product."""
    above = _side(top, names, values)
    if bottom == (Term(Fraction(1)),):
        return write(above)
    return write(Quotient(above, _side(bottom, names, values)))


def _side(terms: Terms, names: tuple[str, str], values: tuple[Fraction, Fraction] | None) -> Expression:
    pieces: list[Expression] = []
    for term in terms:
        size = abs(term.coefficient)
        factors: list[Expression] = [] if size == 1 and term.powers else [whole_or_fraction(size)]
        for name, count in sorted(term.powers, reverse=True):
            base: Expression
            if values is None and name == _SUM:
                base = Sum((Letter(names[0]), Letter(names[1])))
            elif values is None:
                base = Product((Letter(names[0]), Letter(names[1])))
            else:
                base = _signed(values[0] if name == _SUM else values[1])
            factors.append(base if count == 1 else Power(base, Number(Fraction(count))))
        sign = "×" if values is not None else ""
        piece = factors[0] if len(factors) == 1 else Product(tuple(factors), sign)  # type: ignore[arg-type]
        pieces.append(Negative(piece) if term.coefficient < 0 else piece)
    return pieces[0] if len(pieces) == 1 else Sum(tuple(pieces)) if pieces else Number(Fraction(0))


def _signed(value: Fraction) -> Expression:
    size = whole_or_fraction(abs(value))
    return Negative(size) if value < 0 else size


def _confirm(one: Expression, names: tuple[str, str], total: Fraction, times: Fraction, value: Fraction) -> None:
    """The expression with the two numbers, which may be complex, in floating point."""
    root = complex(total * total - 4 * times) ** 0.5
    numbers = {names[0]: (float(total) + root) / 2, names[1]: (float(total) - root) / 2}
    above, below = (sum(_at(term, numbers) for term in part) for part in _parts(one))
    if abs(above / below - float(value)) > _CLOSE * max(1.0, abs(float(value))):
        raise ChecksDisagree(f"the value of {write(one)}")


def _at(term: Term, numbers: dict[str, complex]) -> complex:
    result = complex(float(term.coefficient))
    for name, count in term.powers:
        result *= numbers[name] ** count
    return result

"""First terms of powers of two terms whose exponent is no positive integer, and where the series converges."""

from decimal import Decimal
from fractions import Fraction

from paperaudit.maths.algebra.binomial import power_of, term_of
from paperaudit.maths.algebra.terms import (
    ONE,
    NotTerms,
    Term,
    Terms,
    collected,
    expression_of,
    expression_of_term,
    terms_of,
    times,
    written,
)
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expansion_task import BinomialExpansion
from paperaudit.model.expression import Expression, Negative, Number, Power, Product, Quotient, Root, Sum, letters_of
from paperaudit.strands.algebra.confirming import number_at
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree

SKILL = "binomial expansion"
CONFIRMED = "compared with the expression itself, on sixty figures, at numbers close to 0"
_MOST = 7
_NEAR = (Fraction(1, 10**7), Fraction(-1, 10**7), Fraction(3, 10**8))
_SHARE = Decimal(10**4)
"""A last coefficient that is off by more than its inverse shows at these numbers."""


def is_series(expression: Expression) -> bool:
    """Whether it is a power of two terms with a negative or fractional exponent, perhaps times a polynomial."""
    try:
        _power_in(expression)
    except NotTerms:
        return False
    return True


def _power_in(expression: Expression) -> tuple[Terms, Sum, Fraction]:
    """The polynomial in front, the bracket of two terms, its exponent."""
    match expression:
        case Power(Sum(terms) as bracket, exponent) if len(terms) == 2 and letters_of(bracket):
            value = None if letters_of(exponent) else rational_value(exponent)
            if value is None or (value.denominator == 1 and value > 0):
                raise NotTerms(f"{write(expression)}, whose exponent is a positive integer")
            return (ONE,), bracket, value
        case Root(Sum(terms) as bracket, degree) if len(terms) == 2 and letters_of(bracket):
            return (ONE,), bracket, Fraction(1, degree)
        case Root(Power(Sum(terms) as bracket, Number(count)), degree) if len(terms) == 2 and count.denominator == 1:
            return (ONE,), bracket, count / degree
        case Quotient(above, below):
            front, inside, power = _below(below)
            return collected(times(one, other) for one in terms_of(above) for other in front), inside, power
        case Product(factors) if sum(map(_is_bracket_power, factors)) == 1:
            (own,) = [factor for factor in factors if _is_bracket_power(factor)]
            front, inside, power = _power_in(own)
            for factor in factors:
                if factor is not own:
                    front = collected(times(one, other) for one in front for other in terms_of(factor))
            return front, inside, power
    raise NotTerms(f"{write(expression)}, which is no power of two terms")


def _is_bracket_power(factor: Expression) -> bool:
    try:
        _power_in(factor)
    except NotTerms:
        return False
    return True


def _below(below: Expression) -> tuple[Terms, Sum, Fraction]:
    match below:
        case Sum(terms) if len(terms) == 2:
            return (ONE,), below, Fraction(-1)
        case Power(Sum(terms) as bracket, exponent) if len(terms) == 2 and not letters_of(exponent):
            value = rational_value(exponent)
            if value is not None:
                return (ONE,), bracket, -value
        case Root():
            front, inside, power = _power_in(below)
            return front, inside, -power
    raise NotTerms(f"{write(below)} under a fraction bar")


def series(task: BinomialExpansion) -> Derived:
    """The terms asked for, and for which numbers the series converges. Raises NotTerms, ChecksDisagree."""
    front, bracket, exponent = _power_in(task.expression)
    letters = letters_of(bracket)
    if len(letters) != 1 or exponent.numerator == 0:
        raise NotTerms(f"{write(bracket)} with other letters")
    (letter,) = letters
    first, second = sorted((term_of(one) for one in bracket.terms), key=lambda term: term.exponent(letter))
    if first.powers or first.coefficient <= 0:
        raise NotTerms(f"{write(bracket)}, which does not begin with a positive number")
    outside = rational_value(Power(whole_or_fraction(first.coefficient), whole_or_fraction(exponent)))
    if outside is None:
        raise NotTerms(
            f"{write(whole_or_fraction(first.coefficient))} to the power {write(whole_or_fraction(exponent))}"
        )
    inner = Term(second.coefficient / first.coefficient, second.powers)
    step = inner.exponent(letter)
    highest = task.highest or (task.count - 1) * step
    if not 0 < highest <= _MOST or not (task.count or task.highest):
        raise NotTerms("an expansion without an end: how many terms?")
    working = Working(SKILL)
    counted = [_coefficient(exponent, place) for place in range(highest // step + 1)]
    raised = [times(Term(counted[place]), power_of(inner, place)) for place in range(len(counted))]
    _say(task, bracket, exponent, outside, inner, front, len(counted), working)
    terms = collected(times(Term(outside), times(one, other)) for one in raised for other in front)
    kept = sorted((term for term in terms if term.exponent(letter) <= highest), key=lambda term: term.exponent(letter))
    if task.count:
        kept = kept[: task.count]
    value = expression_of(tuple(kept))
    _confirm(task.expression, value, letter, kept[-1].exponent(letter))
    working.say(f"= {write(value)} + …", write(value))
    limit = _limit(inner, step, letter)
    working.say(limit)
    if not task.validity:
        return working.derived(Answer(write(value), value, kind="expansion"), confirmed_by=CONFIRMED)
    text = f"{write(value)}, {limit}"
    return working.derived(Answer(text, value, letter, kind="expansion and range"), confirmed_by=CONFIRMED)


def _coefficient(exponent: Fraction, place: int) -> Fraction:
    result = Fraction(1)
    for count in range(place):
        result *= (exponent - count) / (count + 1)
    return result


def _limit(inner: Term, step: int, letter: str) -> str:
    """|x| < 1/3, where the second term over the first is between −1 and 1."""
    size = rational_value(Power(whole_or_fraction(1 / abs(inner.coefficient)), whole_or_fraction(Fraction(1, step))))
    if size is None:
        raise NotTerms("an irrational limit of the series")
    return f"|{letter}| < {write(whole_or_fraction(size))}"


def _say(
    task: BinomialExpansion,
    bracket: Sum,
    exponent: Fraction,
    outside: Fraction,
    inner: Term,
    front: Terms,
    count: int,
    working: Working,
) -> None:
    """The lines before the terms are collected."""
    power = whole_or_fraction(exponent)
    one = Sum((Number(Fraction(1)), expression_of_term(inner)))
    before = "" if front == (ONE,) else f"({written(front)})" if len(front) > 1 else f"{written(front)} × "
    start = write(task.expression)
    plain = f"{before}{write(Power(bracket, power))}"
    if plain != start:
        working.say(f"{start} = {plain}")
    number = "" if outside == 1 else f"{write(whole_or_fraction(outside))} × "
    if number:
        opening = "" if working.steps else f"{start} "
        working.say(f"{opening}= {before}{number}{write(Power(one, power))}")
    shown = [_written(exponent, inner, place) for place in range(count)]
    series_text = " + ".join(shown)
    whole = f"{before}{number}[{series_text} + …]" if before or number else f"{series_text} + …"
    working.say(f"{start} = {whole}" if not working.steps else f"= {whole}")


def _written(exponent: Fraction, inner: Term, place: int) -> str:
    """(1/2)(−1/2)/2! × (3x)², as the formula has it."""
    if not place:
        return "1"
    base = expression_of_term(inner)
    bracketed = isinstance(base, Negative | Product | Quotient) or (place > 1 and isinstance(base, Power))
    body = f"({write(base)})" if bracketed else write(base)
    body = body if place == 1 else f"{body}{str(place).translate(_RAISED)}"
    factors = "".join(f"({write(whole_or_fraction(exponent - count))})" for count in range(place))
    return f"{factors}{body}" if place == 1 else f"{factors}/{place}! × {body}"


_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")


def _confirm(expression: Expression, value: Expression, letter: str, highest: int) -> None:
    """What is left out must fall faster than the last power kept; raises ChecksDisagree."""
    for at in _NEAR:
        exact, near = (Decimal(_decimal(number_at(one, {letter: at}))) for one in (expression, value))
        bound = abs(_decimal(at)) ** highest / _SHARE
        if abs(exact - near) > bound:
            raise ChecksDisagree("the terms of the series")


def _decimal(value: Fraction | Decimal) -> Decimal:
    from decimal import Context

    if isinstance(value, Decimal):
        return value
    return Context(prec=80).divide(Decimal(value.numerator), Decimal(value.denominator))

"""Logarithms of numbers worked out, in the lines that a pupil writes."""

from collections.abc import Sequence
from fractions import Fraction

from paperaudit.maths.algebra.logarithms import (
    ONE,
    TEN,
    LogTerm,
    has_logarithm,
    log_terms,
    one_base,
    powers_inside,
    single_argument,
    total_of,
    worked_out,
)
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.euler import means_euler, with_euler
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.primes import powers, prime_factors
from paperaudit.maths.write import write
from paperaudit.model.algebra_task import SingleLogarithm
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Derived, Impossible
from paperaudit.model.expression import (
    Euler,
    Expression,
    Letter,
    Logarithm,
    Power,
    Product,
    Quotient,
    Relation,
    letters_of,
    parts_of,
)
from paperaudit.strands.algebra.confirming import number_at
from paperaudit.strands.algebra.logarithm_laws import CONFIRMED, SKILL, confirm_value, say_equal, single_logarithm
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import finished

_LARGEST_BASE = 10**6


def evaluate(expression: Expression, ask: Ask) -> Derived:
    """The value of an expression with logarithms of numbers, exact where it is a fraction."""
    expression = with_euler(expression) if means_euler(expression) else expression
    if letters_of(expression):
        return single_logarithm(SingleLogarithm(expression), None)
    working = Working(SKILL)
    value = _value(expression, working)
    confirm_value(expression, value)
    if not working.steps:
        working.say(write(expression), write(expression))
    last = working.steps[-1].statement
    answer, closing = finished(value, ask, last)
    working.steps.extend(closing)
    return working.derived(answer, confirmed_by=CONFIRMED)


def no_logarithm(expression: Expression) -> Impossible | None:
    """What stands against a logarithm of nought, of a negative number, or to such a base; None where nothing does."""
    if isinstance(expression, Logarithm):
        for part, words in ((expression.argument, "has a logarithm"), (expression.base, "is a base")):
            if letters_of(part) or means_euler(part) or isinstance(part, Euler):
                continue
            size = Fraction(number_at(part, {}))
            if size <= 0:
                false = f"{write(part)} > 0 is false, and only a positive number {words}"
                return Impossible((write(expression),), (false,), "change what the logarithm is taken of")
    return next(filter(None, map(no_logarithm, parts_of(expression))), None)


def _value(expression: Expression, working: Working) -> Expression:
    """The value with the lines to it: a fraction, or one logarithm."""
    if isinstance(expression, Logarithm):
        return _of_one(expression, working)
    try:
        terms, number = log_terms(expression)
    except NotTerms:
        return _of_product(expression, working)
    try:
        base = one_base(terms)
    except NotTerms:
        return _term_by_term(expression, terms, number, working)
    if len(terms) > 1 and all(worked_out(term.log) is not None for term in terms):
        return _term_by_term(expression, terms, number, working)
    inside = powers_inside(terms)
    say_equal(working, expression, total_of(inside, number))
    log = Logarithm(single_argument(inside), base)
    say_equal(working, expression, total_of([LogTerm(Fraction(1), log)], number))
    size = worked_out(log)
    if size is None:
        if number:
            return total_of([LogTerm(Fraction(1), log)], number)
        return log
    if log.argument != ONE and size != 1:
        say_equal(working, expression, _as_power(log, size, number))
    value = whole_or_fraction(size + number)
    say_equal(working, expression, value)
    return value


def _as_power(log: Logarithm, size: Fraction, number: Fraction) -> Expression:
    """log₂ 8 as log₂ 2³."""
    return total_of([LogTerm(Fraction(1), Logarithm(Power(log.base, whole_or_fraction(size)), log.base))], number)


def _of_one(log: Logarithm, working: Working) -> Expression:
    """A single logarithm: a power of the base, another power of the same number, or a decimal."""
    size = worked_out(log)
    if size is None:
        return _changed_base(log, working)
    value = whole_or_fraction(size)
    root = _common_root(log) if size.denominator > 1 else None
    if root is None or isinstance(log.argument, Power) or log.base == whole_or_fraction(Fraction(root)):
        if size not in (0, 1) and not (isinstance(log.argument, Power) and log.argument.base == log.base):
            say_equal(working, log, _as_power(log, size, Fraction(0)))
        say_equal(working, log, value)
        return value
    name = "x"
    number = whole_or_fraction(Fraction(root))
    base, argument = (_exponent_of(part, root) for part in (log.base, log.argument))
    working.say(f"let {name} = {write(log)}: {write(Power(log.base, Letter(name)))} = {write(log.argument)}")
    exponent = Letter(name) if base == 1 else Product((whole_or_fraction(base), Letter(name)))
    working.say(Relation(Power(number, exponent), "=", Power(number, whole_or_fraction(argument))))
    working.say(Relation(exponent, "=", whole_or_fraction(argument)))
    working.say(f"{name} = {write(value)}", write(value))
    return value


def _common_root(log: Logarithm) -> int | None:
    """The smallest whole number that base and argument are powers of."""
    base = None if isinstance(log.base, Euler) else rational_value(log.base)
    if base is None or base.numerator > _LARGEST_BASE or base.denominator > _LARGEST_BASE:
        return None
    found = powers(prime_factors(max(base.numerator, base.denominator)))
    from math import gcd

    common = gcd(*(count for _, count in found))
    root = 1
    for prime, count in found:
        root *= prime ** (count // common)
    return root


def _exponent_of(expression: Expression, root: int) -> Fraction:
    return worked_out(Logarithm(expression, whole_or_fraction(Fraction(root)))) or Fraction(0)


def _changed_base(log: Logarithm, working: Working) -> Expression:
    """log₂ 10 on a calculator: log 10 over log 2."""
    if isinstance(log.base, Euler) or log.base == TEN:
        return log
    quotient = Quotient(Logarithm(log.argument, TEN), Logarithm(log.base, TEN))
    say_equal(working, log, quotient)
    return quotient


def _term_by_term(expression: Expression, terms: Sequence[LogTerm], number: Fraction, working: Working) -> Expression:
    """log₂ 8 + log₃ 9: each logarithm by itself."""
    total = number
    shown: list[str] = []
    for term in terms:
        inner = Working(SKILL)
        value = _of_one(term.log, inner)
        size = rational_value(value) if not has_logarithm(value) else None
        if size is None:
            raise NotTerms(f"{write(term.log)}, which is irrational, among logarithms to other bases")
        for step in inner.steps:
            working.say(step.statement, step.value, uses=step.uses)
        total += term.size * size
        shown.append(step_text(term.size, size, bool(shown)))
    if number:
        shown.append(step_text(Fraction(1), number, True))
    value = whole_or_fraction(total)
    sources = tuple(step.statement for step in working.steps)
    sum_text = " ".join(shown)
    middle = f"{sum_text} = " if sum_text != write(value) else ""
    working.say(f"{write(expression)} = {middle}{write(value)}", write(value), uses=sources)
    return value


def step_text(size: Fraction, value: Fraction, follows: bool) -> str:
    """A product in a sum of numbers: "+ 2 × 3", "− 4", the sign of a first one only where it is negative."""
    amount = write(whole_or_fraction(value))
    text = f"({amount})" if value < 0 and (follows or size != 1) else amount
    if abs(size) != 1:
        text = f"{write(whole_or_fraction(abs(size)))} × {text}"
    sign = "− " if size < 0 and follows else "−" if size < 0 else "+ " if follows else ""
    return sign + text


def _of_product(expression: Expression, working: Working) -> Expression:
    """Products and quotients of logarithms by a change of base: log₂ 3 × log₃ 8."""
    size, above, below = _split(expression)
    say_equal(working, expression, _quotient(size, above, below))
    tops, bottoms, factor = _over_roots(above), _over_roots(below), size
    for count, _ in tops:
        factor *= count
    for count, _ in bottoms:
        factor /= count
    ups, downs = [root for _, root in tops], [root for _, root in bottoms]
    for root in list(ups):
        if root in downs:
            ups.remove(root)
            downs.remove(root)
    if ups or downs:
        raise NotTerms(f"{write(expression)}, whose logarithms do not cancel")
    shown = _quotient(size, [_with_root(log) for log in above], [_with_root(log) for log in below])
    say_equal(working, expression, shown)
    value = whole_or_fraction(factor)
    say_equal(working, expression, value)
    return value


def _split(expression: Expression) -> tuple[Fraction, list[Logarithm], list[Logarithm]]:
    """A product of logarithms to any base as logarithms to base 10 above and below."""
    match expression:
        case Logarithm(argument, base) if base == TEN or isinstance(base, Euler):
            return Fraction(1), [Logarithm(argument, TEN)], []
        case Logarithm(argument, base):
            return Fraction(1), [Logarithm(argument, TEN)], [Logarithm(base, TEN)]
        case Product(factors):
            size, above, below = Fraction(1), list[Logarithm](), list[Logarithm]()
            for factor in factors:
                one, tops, bottoms = _split(factor)
                size, above, below = size * one, [*above, *tops], [*below, *bottoms]
            return size, above, below
        case Quotient(top, bottom):
            one, tops, bottoms = _split(top)
            other, downs, ups = _split(bottom)
            return one / other, [*tops, *ups], [*bottoms, *downs]
    value = None if has_logarithm(expression) else rational_value(expression)
    if value is None:
        raise NotTerms(f"{write(expression)}, which is no product of logarithms")
    return value, [], []


def _quotient(size: Fraction, above: Sequence[Expression], below: Sequence[Expression]) -> Expression:
    front = [whole_or_fraction(size)] if size != 1 else []
    top: list[Expression] = [*front, *above] or [ONE]
    over = top[0] if len(top) == 1 else Product(tuple(top), "×")
    if not below:
        return over
    return Quotient(over, below[0] if len(below) == 1 else Product(tuple(below), "×"))


def _over_roots(logs: Sequence[Logarithm]) -> list[tuple[Fraction, int]]:
    """log 8 as 3 log 2."""
    return [_count_and_root(log) for log in logs]


def _count_and_root(log: Logarithm) -> tuple[Fraction, int]:
    root = _common_root(Logarithm(ONE, log.argument)) if rational_value(log.argument) else None
    if root is None or root < 2:
        raise NotTerms(f"{write(log)} in a product of logarithms")
    return _exponent_of(log.argument, root), root


def _with_root(log: Logarithm) -> Expression:
    count, root = _count_and_root(log)
    return LogTerm(count, Logarithm(whole_or_fraction(Fraction(root)), log.base)).expression()

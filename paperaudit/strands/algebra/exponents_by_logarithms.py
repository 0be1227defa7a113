"""Exponential equations that are no powers of one base, by logarithms: 5^(2x − 1) = 12, 3^(x + 1) = 5^(2x), e^x = 7."""

from fractions import Fraction

from paperaudit.maths.algebra.logarithms import TEN, signed_terms, worked_out
from paperaudit.maths.algebra.terms import NotTerms, coefficients, expression_of, from_coefficients, terms_of
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Euler,
    Expression,
    Letter,
    Logarithm,
    Negative,
    Number,
    NumberForm,
    Power,
    Product,
    Quotient,
    Relation,
    Sum,
    leaves,
    letters_of,
)
from paperaudit.strands.algebra.changing import opposite, total
from paperaudit.strands.algebra.exponents import solve_exponential
from paperaudit.strands.algebra.roots import Roots, roots_of
from paperaudit.strands.algebra.working import Working

LN_E = Logarithm(Euler(), Euler())


def by_logarithms(relation: Relation, letter: str, working: Working) -> Roots:
    """The lines to the root. Raises NotTerms where logarithms do not lead there either."""
    working.given(relation)
    left, right = (_parted(side, letter) for side in (relation.left, relation.right))
    powers = [*left, *right]
    if all(power is None for _, power in powers):
        raise NotTerms(write(relation))
    with_letter = [(size, power) for size, power in left if power is not None]
    other_side = [(size, power) for size, power in right if power is not None]
    number = sum((size for size, power in right if power is None), Fraction(0)) - sum(
        (size for size, power in left if power is None), Fraction(0)
    )
    if len(with_letter) + len(other_side) == 1:
        (size, power), *_ = with_letter or other_side
        if len(left) + len(right) > 2 or other_side:
            number = number if with_letter else -number
            working.say(Relation(_front(size, power), "=", whole_or_fraction(number)))
        return _one_power(size, power, number, letter, working, _has_decimals(relation))
    if len(with_letter) == len(other_side) == 1 and not number:
        return _two_powers(with_letter[0], other_side[0], letter, working)
    moved = [*with_letter, *((-size, power) for size, power in other_side)]
    return _in_one_power(moved, number, letter, working)


def _parted(side: Expression, letter: str) -> list[tuple[Fraction, Power | None]]:
    """Each term as a number times one power with the letter in its exponent; None for a bare number."""
    found: list[tuple[Fraction, Power | None]] = []
    for sign, term in signed_terms(side):
        size, power = Fraction(sign), None
        if isinstance(term, Quotient) and not letters_of(term.denominator):
            size, term = size / (rational_value(term.denominator) or 1), term.numerator
        for factor in term.factors if isinstance(term, Product) else (term,):
            if letter not in letters_of(factor):
                value = rational_value(factor)
                if value is None:
                    raise NotTerms(f"{write(factor)} in an exponential equation")
                size *= value
            elif isinstance(factor, Power) and power is None and not letters_of(factor.base):
                power = factor
            else:
                raise NotTerms(f"{write(term)}, which is no power with {letter} in its exponent")
        found.append((size, power))
    return found


def _exponent(power: Power, letter: str) -> tuple[Fraction, Fraction]:
    numbers = coefficients(terms_of(power.exponent), letter)
    if len(numbers) != 2:
        raise NotTerms(f"{write(power)}, whose exponent is not of the first degree")
    return numbers[0], numbers[1]


def _base_size(power: Power) -> Fraction | None:
    return None if isinstance(power.base, Euler) else rational_value(power.base)


def _one_power(
    size: Fraction, power: Power, number: Fraction, letter: str, working: Working, decimals: bool = False
) -> Roots:
    """2 × 5^(2x − 1) = 24."""
    value = number / size
    amount = (as_decimal(value) if decimals else None) or whole_or_fraction(value)
    alone = Relation(power, "=", amount)
    working.say(alone)
    if value <= 0:
        working.say(f"{write(power)} is always positive, so there are no solutions")
        return Roots()
    before = list(working.steps)
    try:
        return solve_exponential(alone, letter, working)
    except NotTerms:
        working.steps[:] = before
    return _taken(power, value, amount, letter, working)


def _has_decimals(relation: Relation) -> bool:
    """Whether a number of the equation is written as a decimal."""
    return any(
        isinstance(leaf, Number) and leaf.form is NumberForm.DECIMAL
        for side in (relation.left, relation.right)
        for leaf in leaves(side)
    )


def _front(size: Fraction, power: Power) -> Expression:
    body: Expression = power if abs(size) == 1 else Product((whole_or_fraction(abs(size)), power), "×")
    return Negative(body) if size < 0 else body


def _taken(power: Power, value: Fraction, amount: Expression, letter: str, working: Working) -> Roots:
    """Logarithms of both sides of 5^(2x − 1) = 12."""
    constant, slope = _exponent(power, letter)
    base = _base_size(power)
    if base is not None and (base <= 0 or base == 1):
        raise NotTerms(f"{write(power)}, which is no exponential")
    taken_to = Euler() if base is None else TEN
    log_value: Expression = Logarithm(amount, taken_to)
    if base is None or base == 10:
        exponent_is: Expression = log_value if value != 1 else Number(Fraction(0))
        working.say(Relation(power.exponent, "=", exponent_is))
    else:
        log_base = Logarithm(power.base, TEN)
        working.say(f"{write(Logarithm(power, TEN))} = {write(log_value)}")
        working.say(Relation(_times_log(power.exponent, log_base), "=", log_value))
        exponent_is = Quotient(log_value, log_base) if value != 1 else Number(Fraction(0))
        working.say(Relation(power.exponent, "=", exponent_is))
    return Roots([_freed(exponent_is, constant, slope, letter, working)])


def _times_log(exponent: Expression, log: Expression) -> Expression:
    factors = exponent.factors if isinstance(exponent, Product) and not exponent.sign else (exponent,)
    return Product((*factors, log))


def _freed(right: Expression, constant: Fraction, slope: Fraction, letter: str, working: Working) -> Expression:
    """The letter from 2x − 1 = log 12/log 5."""
    if right == Number(Fraction(0)):
        value: Expression = whole_or_fraction(-constant / slope)
        working.say(f"{letter} = {write(value)}")
        return value
    if constant:
        shift = whole_or_fraction(abs(constant))
        right = Sum((right, Negative(shift) if constant > 0 else shift))
        if slope != 1:
            alone = expression_of(from_coefficients([Fraction(0), slope], letter))
            working.say(Relation(alone, "=", right))
    value = _over(right, slope)
    working.say(f"{letter} = {write(value)}")
    return value


def _over(right: Expression, slope: Fraction) -> Expression:
    if slope < 0:
        return _over(opposite(right), -slope) if isinstance(right, Sum) else opposite(_over(right, -slope))
    if slope == 1:
        return right
    if slope.numerator == 1:
        return Product((whole_or_fraction(1 / slope), right))
    if slope.denominator > 1:
        right = Product((whole_or_fraction(Fraction(slope.denominator)), right))
    below = whole_or_fraction(Fraction(slope.numerator))
    if isinstance(right, Quotient) and slope.denominator == 1:
        return Quotient(right.numerator, Product((below, right.denominator)))
    return Quotient(right, below)


def _two_powers(one: tuple[Fraction, Power], other: tuple[Fraction, Power], letter: str, working: Working) -> Roots:
    """3^(x + 1) = 5^(2x): a linear equation whose coefficients are logarithms."""
    (size, power), (other_size, other_power) = one, other
    ratio = other_size / size
    if ratio <= 0:
        working.say("one side is positive and the other is negative, so there are no solutions")
        return Roots()
    if size != 1:
        right: Expression = Product((whole_or_fraction(ratio), other_power), "×")
        working.say(Relation(power, "=", right))
    to = Euler() if Euler() in (power.base, other_power.base) else TEN
    logs = [Logarithm(part.base, to) for part in (power, other_power)]
    (c, p), (d, q) = _exponent(power, letter), _exponent(other_power, letter)
    sides = [_log_side(part.exponent, log) for part, log in zip((power, other_power), logs, strict=True)]
    extra: tuple[Expression, ...] = (Logarithm(whole_or_fraction(ratio), to),) if ratio != 1 else ()
    working.say(Relation(sides[0], "=", Sum((*extra, sides[1])) if extra else sides[1]))
    of_letter: list[tuple[Fraction, Expression]] = [(p, logs[0]), (-q, logs[1])]
    alone: list[tuple[Fraction, Expression]] = [*((Fraction(1), one) for one in extra), (d, logs[1]), (-c, logs[0])]
    if all(share <= 0 for share, _ in alone):
        of_letter, alone = ([(-share, log) for share, log in one] for one in (of_letter, alone))
    slopes, constants = _sum_of(of_letter), _sum_of(alone)
    if any(isinstance(part.exponent, Sum) for part in (power, other_power)):
        terms = [_multiplied(part, log, letter) for part, log in zip((power, other_power), logs, strict=True)]
        working.say(Relation(total(terms[0]), "=", total((*extra, *terms[1]))))
    numeric = isinstance(slopes, Number)
    working.say(Relation(Product((slopes, Letter(letter)) if numeric else (Letter(letter), slopes)), "=", constants))
    value = constants if constants == Number(Fraction(0)) else Quotient(constants, slopes)
    working.say(f"{letter} = {write(value)}")
    return Roots([value])


def _multiplied(power: Power, log: Expression, letter: str) -> tuple[Expression, ...]:
    """(x + 1) log 3 as x log 3 + log 3."""
    constant, slope = _exponent(power, letter)
    pieces: list[Expression] = []
    for size, of_letter in ((slope, True), (constant, False)):
        factors: list[Expression] = [Letter(letter)] if of_letter else []
        factors += [] if log == LN_E else [log]
        if abs(size) != 1 or not factors:
            factors = [whole_or_fraction(abs(size)), *factors]
        body = factors[0] if len(factors) == 1 else Product(tuple(factors))
        if size:
            pieces.append(Negative(body) if size < 0 else body)
    return tuple(pieces)


def _log_side(exponent: Expression, log: Expression) -> Expression:
    return exponent if log == LN_E else _times_log(exponent, log)


def _sum_of(pieces: list[tuple[Fraction, Expression]]) -> Expression:
    """A sum of multiples of logarithms, ln e as 1, a positive term first."""
    terms: list[Expression] = []
    number = sum((size for size, log in pieces if log == LN_E), Fraction(0))
    kept = [(size, log) for size, log in pieces if log != LN_E and size]
    for size, log in sorted([*kept, *([(number, LN_E)] if number else [])], key=lambda pair: pair[0] < 0):
        amount = whole_or_fraction(abs(size))
        body: Expression = amount if log == LN_E else log if abs(size) == 1 else Product((amount, log))
        terms.append(Negative(body) if size < 0 else body)
    if not terms:
        return Number(Fraction(0))
    return terms[0] if len(terms) == 1 else Sum(tuple(terms))


def _common_base(bases: list[Expression]) -> tuple[Expression, dict[Expression, Fraction]]:
    """The smallest base, and what power of it each one is."""
    if any(isinstance(base, Euler) for base in bases):
        if len(set(bases)) > 1:
            raise NotTerms("an exponential equation with several bases")
        return bases[0], {bases[0]: Fraction(1)}
    least = min(bases, key=lambda base: rational_value(base) or 0)
    shares = {base: worked_out(Logarithm(base, least)) for base in bases}
    found = {base: share for base, share in shares.items() if share is not None}
    if len(found) < len(shares):
        raise NotTerms("an exponential equation with several bases")
    return least, found


def _in_one_power(terms: list[tuple[Fraction, Power]], number: Fraction, letter: str, working: Working) -> Roots:
    """e^(2x) − 5e^x + 6 = 0 as an equation in u = e^x, whose roots need logarithms."""
    base, shares = _common_base([power.base for _, power in terms])
    name = next(other for other in "utvw" if other != letter)
    found: dict[int, Fraction] = {0: -number}
    for size, power in terms:
        constant, slope = (share * shares[power.base] for share in _exponent(power, letter))
        value = rational_value(Power(base, whole_or_fraction(constant))) if not isinstance(base, Euler) else None
        if constant and value is None:
            raise NotTerms(f"{write(power)}, whose exponent is no multiple of {letter}")
        if slope.denominator != 1:
            raise NotTerms(f"{write(power)}, whose exponent is no whole multiple of {letter}")
        found[int(slope)] = found.get(int(slope), Fraction(0)) + size * (value if constant and value else 1)
    lowest, highest = min(found), max(found)
    if highest - lowest > 6:
        raise NotTerms("an exponential equation of a high degree")
    numbers = [found.get(place, Fraction(0)) for place in range(lowest, highest + 1)]
    polynomial = from_coefficients(numbers, name)
    unit = Power(base, Letter(letter))
    working.say(f"let {name} = {write(unit)}: {write(expression_of(polynomial))} = 0")
    roots = roots_of(polynomial, name, working).values
    last = working.steps[-1].statement
    kept: list[Expression] = []
    for root in roots:
        value_there = rational_value(root)
        if value_there is None:
            raise NotTerms(f"{write(unit)} = {write(root)}")
        if value_there <= 0:
            working.say(f"{write(unit)} = {write(root)} is rejected: {write(unit)} is always positive", uses=(last,))
            continue
        working.say(f"{write(unit)} = {write(root)}", uses=(last,))
        kept.extend(_one_power(Fraction(1), unit, value_there, letter, working).values)
    return Roots(kept)

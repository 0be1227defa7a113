"""Products and quotients of powers written as one power, by the laws of indices."""

from collections.abc import Iterable
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.primes import powers, prime_factors
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Negative, Number, Power, Product, Quotient, Root
from paperaudit.model.number_form_task import PowerOf
from paperaudit.model.reading import Reading
from paperaudit.strands.calculating import confirm
from paperaudit.strands.numbers.working import Working, number

SKILL = "powers and roots"
_HIGHEST = 400


def as_power(task: PowerOf, reading: Reading | None) -> Derived:
    """A calculation with powers of one base as a single power of it.

    Raises NoValue where its bases have no common one.
    """
    base = task.base or _base(task.expression)
    if base < 2:
        raise NoValue(f"powers of {base}")
    working = Working(SKILL)
    in_base = _in_base(task.expression, base)
    exponent = _exponent(in_base, base)
    if abs(exponent) > _HIGHEST:
        raise BudgetExceeded("a power with hundreds of digits")
    final = Power(number(base), _written(exponent)) if exponent != 1 else number(base)
    confirm((task.expression, in_base, final))
    texts = list(dict.fromkeys(map(write, (task.expression, in_base, final))))
    for text in texts[1:]:
        working.say(f"= {text}" if working.steps else f"{texts[0]} = {text}", text)
    if not working.steps:
        working.say(write(final), write(final))
    return working.derived(
        Answer(write(final), final, kind="power"), confirmed_by="worked out a second time on decimals of eighty figures"
    )


def _written(exponent: Fraction) -> Expression:
    above, below = number(abs(exponent.numerator)), number(exponent.denominator)
    size = above if exponent.denominator == 1 else Quotient(above, below)
    return Negative(size) if exponent < 0 else size


def _leaves(expression: Expression) -> Iterable[int]:
    """The whole numbers that are bases: 2 and 8 of 2³ × 8²."""
    match expression:
        case Number(value) if value.denominator == 1 and value > 1:
            yield int(value)
        case Number(value) if value.numerator == 1 and value.denominator > 1:
            yield value.denominator
        case Power(base) | Root(base):
            yield from _leaves(base)
        case Product(factors):
            for factor in factors:
                yield from _leaves(factor)
        case Quotient(above, below):
            yield from _leaves(above)
            yield from _leaves(below)
        case _:
            raise NoValue(f"{write(expression)} is no power")


def _base(expression: Expression) -> int:
    """The smallest number that all bases are powers of."""
    found = set(_leaves(expression))
    smallest = {_smallest(base) for base in found}
    if len(smallest) != 1:
        raise NoValue("its bases are not powers of one number")
    return min(found) if all(_power_of(base, min(found)) is not None for base in found) else smallest.pop()


def _smallest(whole: int) -> int:
    """The number that it is the highest power of: 8 is a power of 2, 36 of 6, 12 of itself."""
    counts = powers(prime_factors(whole))
    share = next(size for size in range(max(count for _, count in counts), 0, -1)
                 if all(count % size == 0 for _, count in counts))  # fmt: skip
    product = 1
    for prime, count in counts:
        product *= prime ** (count // share)
    return product


def _power_of(whole: int, base: int) -> int | None:
    """How often the base has to be multiplied to give a number; None where it does not."""
    count, rest = 0, whole
    while rest % base == 0:
        rest, count = rest // base, count + 1
    return count if rest == 1 else None


def _in_base(expression: Expression, base: int) -> Expression:
    """The expression with every base as a power of the one: 8² as (2³)²."""
    match expression:
        case Number(value) if value.denominator == 1:
            count = _power_of(int(value), base) if value > 0 else None
            if count is None:
                raise NoValue(f"{write(expression)} is no power of {base}")
            return expression if count == 1 else Power(number(base), number(count))
        case Number(value) if value.numerator == 1:
            return Quotient(number(1), _in_base(number(value.denominator), base))
        case Power(inner, exponent):
            return Power(_in_base(inner, base), exponent)
        case Root(inner, degree):
            return Root(_in_base(inner, base), degree)
        case Product(factors):
            return Product(tuple(_in_base(factor, base) for factor in factors), "×")
        case Quotient(above, below, sign):
            one = above if above == number(1) else _in_base(above, base)
            return Quotient(one, _in_base(below, base), sign)
    raise NoValue(f"{write(expression)} is no power of {base}")


def _exponent(expression: Expression, base: int) -> Fraction:
    """The exponent of the single power, by the laws of indices."""
    match expression:
        case Number(value):
            return Fraction(1) if value == base else Fraction(0)
        case Power(inner, exponent):
            size = rational_value(exponent)
            if size is None:
                raise NoValue("an irrational exponent")
            return _exponent(inner, base) * size
        case Root(inner, degree):
            return _exponent(inner, base) / degree
        case Product(factors):
            return sum((_exponent(factor, base) for factor in factors), Fraction(0))
        case Quotient(above, below):
            return _exponent(above, base) - _exponent(below, base)
    raise NoValue(f"{write(expression)} is no power of {base}")

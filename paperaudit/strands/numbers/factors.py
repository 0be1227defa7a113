"""Prime factors, factors and multiples, highest common factor and lowest common multiple, remainders."""

from dataclasses import replace
from math import gcd, lcm, prod

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths import primes
from paperaudit.maths.exact import rational_value
from paperaudit.maths.parse import read_expression
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived, StepKind
from paperaudit.model.expression import Expression, Letter, Power, Product
from paperaudit.model.number_task import Common, CommonName, PrimeFactors, Remainder
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import Working, natural, number, require, text_of, whole, with_givens

SKILL = "factors and multiples"
_SHORT = {"highest common factor": "HCF", "lowest common multiple": "LCM", "lowest common denominator": "LCD"}
_LONGEST_LIST = 200
_MOST_DIVISIONS = 15


def index_form(factors: tuple[int, ...]) -> Expression:
    """Prime factors as a product of powers: 2³ × 3² × 5."""
    pieces = tuple(
        Power(number(prime), number(count)) if count > 1 else number(prime) for prime, count in primes.powers(factors)
    )
    return pieces[0] if len(pieces) == 1 else Product(pieces, "×")


def in_primes(task: PrimeFactors, reading: Reading) -> Derived:
    """The prime factors of a number, as a product, in index form or as a list of the different ones."""
    expression, used = with_givens(task.number, reading)
    size = natural(expression)
    if size == 1:
        raise NoValue("1 has no prime factors")
    found = primes.prime_factors(size)
    require(primes.is_product_of_primes(found, size), f"the prime factors of {size}")
    working = Working(SKILL, used)
    if len(found) == 1:
        working.say(f"{size} is a prime number", str(size))
    else:
        working.say(_ladder(size, found))
        working.say(f"{size} = {_product(found)}", _product(found))
    if task.form == "list":
        text = ", ".join(str(prime) for prime, _ in primes.powers(found))
        working.conclude(f"the prime factors are {text}", text)
        return working.derived(Answer(text, kind="numbers"), confirmed_by=_PRIMES)
    text = write(index_form(found)) if task.form == "index" else _product(found)
    require(rational_value(read_expression(text)) == size, f"{text} multiplied out again")
    if task.form == "index" and len(set(found)) < len(found):
        working.say(f"= {text}", text)
    kind = "prime powers" if task.form == "index" else "prime product"
    return working.derived(Answer(text, kind=kind), confirmed_by=_PRIMES)


_PRIMES = "multiplied out again; each factor tested for being prime in another way"


def _product(found: tuple[int, ...]) -> str:
    """Prime factors with × between them."""
    return " × ".join(map(str, found))


def _ladder(size: int, found: tuple[int, ...]) -> str:
    """The divisions one after the other: 12 ÷ 2 = 6, 6 ÷ 2 = 3."""
    pieces = []
    for prime in found[:-1]:
        pieces.append(f"{size} ÷ {prime} = {size // prime}")
        size //= prime
    return ", ".join(pieces)


def common(task: Common, reading: Reading) -> Derived:
    """The highest common factor, the lowest common multiple, or both, from prime factors."""
    values = [with_givens(one, reading) for one in task.numbers]
    working = Working(SKILL, tuple(dict.fromkeys(text for _, texts in values for text in texts)))
    if task.what == "lowest common denominator":
        sizes = [(rational_value(value) or number(1).value).denominator for value, _ in values]
        working.say(f"the denominators are {', '.join(map(str, sizes))}")
    else:
        sizes = [natural(value) for value, _ in values]
    if task.what == "common factors":
        return _common_factors(sizes, working)
    names = [
        write(one) if isinstance(one, Letter) else str(size) for one, size in zip(task.numbers, sizes, strict=True)
    ]
    taken = _from_primes(dict(zip(names, sizes, strict=True)), task.what != _HIGHEST, working)
    lines = tuple(step.statement for step in working.steps) or working.used
    answers = [_in_common(task.what, taken, sizes, lines, working, task.also is not None)]
    if task.also is not None:
        taken = _taken([primes.prime_factors(size) for size in sizes], task.also != _HIGHEST)
        answers.append(_in_common(task.also, taken, sizes, lines, working, True))
    checks = {_SHORT[what]: _CHECKS[what == _HIGHEST] for what in (task.what, task.also) if what is not None}
    check = "; ".join(f"the {name} {how}" for name, how in checks.items())
    if task.also is None:
        return working.derived(
            replace(answers[0], text=answers[0].text.split()[-1], letter="", kind=""), confirmed_by=check
        )
    return working.derived(*answers, confirmed_by=check)


_HIGHEST = "highest common factor"
_CHECKS = {
    True: "found again by Euclid's algorithm",
    False: "divided by each number without remainder, and compared by Euclid's algorithm",
}


def _in_common(
    what: CommonName, taken: tuple[int, ...], sizes: list[int], lines: tuple[str, ...], working: Working, of_two: bool
) -> Answer:
    """The product of the prime factors taken, with its lines, compared with Euclid's algorithm.

    One `of_two` is named where it is stated, so that each answer has its own mark.
    """
    name, size, multiple = _SHORT[what], prod(taken), what != _HIGHEST
    if len(taken) > 1:
        working.say(f"{name} = {write(index_form(taken))}", write(index_form(taken)), lines)
        working.conclude(f"{name} = {size}" if of_two else f"= {size}", str(size))
    else:
        why = "" if taken else ", as all of them are 1" if multiple else ", as they have no prime factor in common"
        working.say(f"{name} = {size}{why}", str(size), lines, StepKind.CONCLUSION)
    require(size == (lcm(*sizes) if multiple else gcd(*sizes)), f"the {what} of {sizes}")
    return Answer(f"{name} = {size}", number(size), name, kind="named values")


def _from_primes(sizes: dict[str, int], multiple: bool, working: Working) -> tuple[int, ...]:
    """The prime factors of the answer, with a line for each of the numbers, by the names that they have."""
    try:
        apart = {name: primes.prime_factors(size) for name, size in sizes.items()}
    except BudgetExceeded:
        if multiple or len(sizes) != 2:
            raise
        larger, smaller = sorted(sizes.values(), reverse=True)
        return _by_euclid(larger, smaller, working)
    for name, found in apart.items():
        if found:
            plain = f"{name} is a prime number" if name.isdecimal() else f"{name} = {found[0]}"
            working.say(f"{name} = {write(index_form(found))}" if len(found) > 1 else plain, uses=working.used)
    return _taken(list(apart.values()), multiple)


def _taken(apart: list[tuple[int, ...]], multiple: bool) -> tuple[int, ...]:
    every = sorted({prime for found in apart for prime in found})
    choose = max if multiple else min
    return tuple(prime for prime in every for _ in range(choose(found.count(prime) for found in apart)))


def _by_euclid(larger: int, smaller: int, working: Working) -> tuple[int, ...]:
    """The common factor of two numbers too large to be taken apart, by division with remainder."""
    while smaller:
        if len(working.steps) == _MOST_DIVISIONS:
            raise BudgetExceeded("numbers too large for a pupil to find their common factor")
        times, rest = divmod(larger, smaller)
        working.say(f"{larger} = {times} × {smaller} + {rest}")
        larger, smaller = smaller, rest
    return (larger,) if larger > 1 else ()


def _common_factors(sizes: list[int], working: Working) -> Derived:
    lists = [primes.factors(size) for size in sizes]
    if max(map(len, lists)) > _LONGEST_LIST:
        raise BudgetExceeded("a list of hundreds of factors")
    for size, found in zip(sizes, lists, strict=True):
        working.say(f"factors of {size}: {', '.join(map(str, found))}", uses=())
    shared = [one for one in lists[0] if all(one in other for other in lists[1:])]
    text = ", ".join(map(str, shared))
    working.conclude(f"common factors: {text}", text)
    again = [one for one in range(1, gcd(*sizes) + 1) if gcd(*sizes) % one == 0] if gcd(*sizes) < 10**6 else shared
    require(shared == again, f"the common factors of {sizes}")
    return working.derived(Answer(text, kind="numbers"), confirmed_by="every number tried as a factor of the highest")


def remainder(task: Remainder, reading: Reading) -> Derived:
    """The remainder of a division of whole numbers."""
    (above, first), (below, second) = with_givens(task.number, reading), with_givens(task.divisor, reading)
    size, divisor = whole(above), natural(below)
    if size < 0:
        raise NoValue("the remainder of a negative number, on which conventions differ")
    times, rest = divmod(size, divisor)
    working = Working(SKILL, tuple(dict.fromkeys((*first, *second))))
    working.say(f"{divisor} × {times} = {times * divisor}")
    working.say(f"{size} − {times * divisor} = {rest}", str(rest))
    require(0 <= rest < divisor and times * divisor + rest == size, f"the remainder of {size} ÷ {divisor}")
    return working.derived(
        Answer(str(rest), number(rest)), confirmed_by="divisor times quotient plus remainder gives the number again"
    )


def listed_text(values: list[int]) -> str:
    """Whole numbers in a row as they are printed."""
    return ", ".join(text_of(value) for value in values)

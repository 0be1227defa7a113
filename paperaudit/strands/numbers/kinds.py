"""Whether a number is prime, even, a square, a factor or a multiple; and lists of numbers of a kind."""

from math import isqrt, prod

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths import primes
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.number_task import IsOfKind, Listed, NumberKind
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.factors import SKILL, index_form, listed_text
from paperaudit.strands.numbers.working import Working, natural, number, require, text_of, whole, with_givens

_LONGEST = 100
_FEW = 12
_WIDEST = 100_000
_ARTICLES = {"even": "an even", "odd": "an odd"}


def is_of_kind(task: IsOfKind, reading: Reading) -> Derived:
    """Yes or no, with the division, the factors or the root that show it."""
    expression, used = with_givens(task.number, reading)
    size = whole(expression)
    working = Working(SKILL, used)
    if task.of is not None:
        return _divides(task, size, reading, working)
    true = shown(task.kind, size, working)
    require(true == holds(task.kind, size), f"whether {size} is {task.kind}")
    named = f"{_ARTICLES.get(task.kind, 'a ' + task.kind)} number"
    working.conclude(f"{text_of(size)} is {'' if true else 'not '}{named}", "yes" if true else "no")
    return working.derived(Answer("yes" if true else "no"), confirmed_by=_AGAIN[task.kind])


_AGAIN = {
    "prime": "tested for being prime by the strong test of Miller and Rabin",
    "composite": "tested for being prime by the strong test of Miller and Rabin",
    "even": "its last digit looked at",
    "odd": "its last digit looked at",
    "square": "its prime factors occur in pairs",
    "cube": "its prime factors occur in threes",
    "triangular": "the sums 1 + 2 + … + n counted up to it",
}


def _divides(task: IsOfKind, size: int, reading: Reading, working: Working) -> Derived:
    """Whether a number is a factor or a multiple of another."""
    assert task.of is not None
    other, used = with_givens(task.of, reading)
    working.used = (*working.used, *used)
    above, below = (size, natural(other)) if task.kind == "multiple" else (whole(other), size)
    if below < 1:
        raise NoValue(f"{below} as a factor")
    times, rest = divmod(above, below)
    true = rest == 0
    require(true == (below * times == above), f"whether {below} divides {above}")
    tail = "" if true else f" remainder {rest}"
    working.say(f"{text_of(above)} ÷ {below} = {text_of(times)}{tail}")
    pair = (above, below) if task.kind == "multiple" else (below, above)
    name = f"{text_of(pair[0])} is {'' if true else 'not '}a {task.kind} of {text_of(pair[1])}"
    working.conclude(name, "yes" if true else "no")
    return working.derived(Answer("yes" if true else "no"), confirmed_by="quotient times divisor compared with it")


def shown(kind: NumberKind, size: int, working: Working) -> bool:
    """Whether a number is of a kind, with the line that a pupil writes for it."""
    match kind:
        case "prime" | "composite":
            return _shown_prime(size, working) == (kind == "prime") and not (kind == "composite" and size < 2)
        case "even" | "odd":
            half, rest = divmod(size, 2)
            working.say(f"{text_of(size)} ÷ 2 = {text_of(half)}{' remainder 1' if rest else ''}")
            return bool(rest) == (kind == "odd")
        case "square":
            return _shown_root(size, 2, working)
        case "cube":
            return _shown_root(size, 3, working)
    raise NoValue(f"whether {size} is {kind}")


def _shown_prime(size: int, working: Working) -> bool:
    if size < 2:
        working.say(f"a prime number is greater than 1, and {text_of(size)} is not")
        return False
    smallest = primes.prime_factors(size)[0]
    if smallest < size:
        working.say(f"{size} = {smallest} × {size // smallest}")
        return False
    root = isqrt(size)
    tried = listed_text([one for one in range(2, min(root, _LONGEST) + 1) if primes.is_prime(one)])
    if root > _LONGEST:
        working.say(f"no prime up to √{size}, that is up to {root}, divides {size}")
    elif tried:
        working.say(f"none of the primes up to √{size} divides {size}: {tried}")
    return True


def _shown_root(size: int, degree: int, working: Working) -> bool:
    root = _root_below(size, degree)
    sign, raised = ("²", 2) if degree == 2 else ("³", 3)
    if root**raised == size:
        working.say(f"{text_of(size)} = {root}{sign}")
        return True
    working.say(f"{root}{sign} = {root**raised}, {root + 1}{sign} = {(root + 1) ** raised}")
    return False


def _root_below(size: int, degree: int) -> int:
    if size < 0:
        raise NoValue("a negative number")
    low, high = 0, 1 << (size.bit_length() // degree + 1)
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if pow(middle, degree) <= size else (low, middle)
    return low


def holds(kind: NumberKind, size: int) -> bool:
    """The same another way."""
    match kind:
        case "prime":
            return primes.is_prime(size)
        case "composite":
            return size > 1 and not primes.is_prime(size)
        case "even":
            return str(size)[-1] in "02468"
        case "odd":
            return str(size)[-1] in "13579"
        case "square" | "cube":
            step = 2 if kind == "square" else 3
            return size in (0, 1) or all(count % step == 0 for _, count in primes.powers(primes.prime_factors(size)))
        case "triangular":
            return primes.is_square(8 * size + 1)
    raise NoValue(kind)


def listed(task: Listed, reading: Reading) -> Derived:
    """Numbers of a kind, all of them, the first few, or those in a range; or how many there are."""
    working = Working(SKILL)
    of = _value(task.of, reading, working) if task.of is not None else 0
    values = _values(task, of, reading, working)
    if task.kind == "factor" and task.counted and len(values) > _FEW:
        return _counted_factors(of, values, working)
    if len(values) > _LONGEST:
        raise BudgetExceeded("a list of hundreds of numbers")
    require(_same(task, of, values, reading), "the list of numbers")
    text = listed_text(values)
    if task.kind == "factor":
        pairs = [f"{one} × {of // one}" for one in values if one * one <= of]
        working.say(f"{of} = {' = '.join(pairs)}")
    check = "every number up to the last one tried"
    if task.counted:
        working.say(text)
        working.conclude(f"{len(values)} numbers", str(len(values)))
        return working.derived(Answer(str(len(values)), number(len(values))), confirmed_by=check)
    working.conclude(text or "there is none", text)
    return working.derived(
        Answer(text or "none", kind="one of numbers" if task.one and len(values) > 1 else "numbers"), confirmed_by=check
    )


def _counted_factors(of: int, values: list[int], working: Working) -> Derived:
    """How many factors a number has, by the exponents of its primes."""
    found = primes.prime_factors(of)
    exponents = [count for _, count in primes.powers(found)]
    working.say(f"{of} = {write(index_form(found))}")
    count = prod(exponent + 1 for exponent in exponents)
    working.say(f"{' × '.join(f'({exponent} + 1)' for exponent in exponents)} = {count}", str(count))
    require(count == len(values), f"the number of factors of {of}")
    return working.derived(Answer(str(count), number(count)), confirmed_by="all factors put together from the primes")


def _value(expression: object, reading: Reading, working: Working) -> int:
    value, used = with_givens(expression, reading)  # type: ignore[arg-type]
    working.used = (*working.used, *used)
    return natural(value)


def _values(task: Listed, of: int, reading: Reading, working: Working) -> list[int]:
    """The numbers, by the rule of their kind."""
    if task.kind == "factor":
        return list(primes.factors(of))
    low = _value(task.low, reading, working) if task.low is not None else 1
    high = _value(task.high, reading, working) if task.high is not None else None
    if task.count > _LONGEST or (high is not None and high - low > _WIDEST):
        raise BudgetExceeded("a list of hundreds of numbers")
    found: list[int] = []
    at = 0
    while high is None or at <= high:
        at += 1
        value = _nth(task.kind, at, of)
        if high is not None and value > high:
            break
        if value >= low and (task.kind not in ("prime", "composite") or holds(task.kind, value)):
            found.append(value)
        if high is None and len(found) == task.count:
            break
    return found


def _nth(kind: NumberKind, at: int, of: int) -> int:
    match kind:
        case "multiple":
            return at * of
        case "even":
            return 2 * at
        case "odd":
            return 2 * at - 1
        case "square":
            return at * at
        case "cube":
            return at * at * at
        case "triangular":
            return at * (at + 1) // 2
    return at


def _same(task: Listed, of: int, values: list[int], reading: Reading) -> bool:
    """Whether trying every number up to the last gives the same list."""
    last = of if task.kind == "factor" else values[-1] if values else 0
    if task.high is not None:
        last = natural(with_givens(task.high, reading)[0])
    if last > _WIDEST:
        return all(_is(task.kind, value, of) for value in values)
    low = natural(with_givens(task.low, reading)[0]) if task.low is not None else 1
    again = [one for one in range(low, last + 1) if _is(task.kind, one, of)]
    return again == values


def _is(kind: NumberKind, value: int, of: int) -> bool:
    if kind == "factor":
        return of % value == 0
    if kind == "multiple":
        return value % of == 0
    if kind in ("prime", "composite"):
        divisible = any(value % one == 0 for one in range(2, isqrt(value) + 1))
        return value > 1 and divisible == (kind == "composite")
    return holds(kind, value)

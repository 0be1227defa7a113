"""Arrangements and choices: factorials, permutations, combinations, letters of a word, one choice after the other."""

from collections import Counter
from fractions import Fraction
from itertools import pairwise, permutations
from math import comb, factorial, prod

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.model.counting_task import Count
from paperaudit.model.derivation import Answer
from paperaudit.strands.chance.lines import Lines
from paperaudit.strands.numbers.working import require

LARGEST = 60
_FACTORS = 12
_LISTED = 8


def counted(task: Count, lines: Lines) -> Answer:
    """The number of arrangements or choices, with its calculation; raises BudgetExceeded for huge ones."""
    lines.skill = "counting"
    if task.how == "beyond":
        raise NoValue("factorials and nCr in a longer calculation are not read yet")
    sizes = (task.n, task.r, *(n for n, _ in task.groups), *task.choices, len(task.word))
    if max(sizes) > LARGEST:
        raise BudgetExceeded(f"counts beyond {LARGEST}")
    match task.how:
        case "factorial":
            value = _factorial(task, lines)
        case "circle":
            value = _product(list(range(task.n - 1, 0, -1)), f"({task.n} − 1)!", lines)
            require(value * task.n == _by_steps(task.n, task.n), "the count in two ways")
        case "permutations":
            _at_most(task.r, task.n)
            value = _product(list(range(task.n, task.n - task.r, -1)), f"{task.n}P{task.r}", lines)
            require(value == _by_steps(task.n, task.r) and value == comb(task.n, task.r) * factorial(task.r),
                    "the count in two ways")  # fmt: skip
        case "letters":
            value = _letters(task.word, lines)
        case "choices":
            value = _choices(task, lines)
        case _:
            value = _product(list(task.choices), "", lines)
            again = 1
            for size in reversed(task.choices):
                again = sum(again for _ in range(size))
            require(again == value, "the count in two ways")
    return lines.end(Fraction(value))


def _at_most(part: int, whole: int) -> None:
    if part > whole:
        raise NoValue(f"{part} cannot be chosen from {whole}")


def _by_steps(n: int, r: int) -> int:
    """Ordered choices of r from n a second way: the choices without one thing, and those with it in each place."""
    row = [1] * (n + 1)
    for places in range(1, r + 1):
        fresh = [0] * (n + 1)
        for size in range(1, n + 1):
            fresh[size] = fresh[size - 1] + places * row[size - 1]
        row = fresh
    return row[n]


def _product(factors: list[int], name: str, lines: Lines) -> int:
    value = prod(factors)
    if len(factors) > 1:
        shown = factors if len(factors) <= _FACTORS else [*factors[:4], 0, *factors[-2:]]
        text = " × ".join(str(one) if one else "…" for one in shown)
        lines.say(f"{name} = {text}" if name else text, starts=True)
        lines.say(f"= {value}", str(value))
    else:
        lines.say(f"{name} = {value}" if name else str(value), str(value), starts=True)
    return value


def _factorial(task: Count, lines: Lines) -> int:
    """n!, or n! ÷ r! where both are whole."""
    if not task.r:
        value = _product(list(range(task.n, 0, -1)) or [1], f"{task.n}!", lines)
        require(value == _by_steps(task.n, task.n), "the count in two ways")
        return value
    if task.r > task.n:
        raise NoValue("a factorial over a larger one")
    value = _product(list(range(task.n, task.r, -1)) or [1], f"{task.n}!/{task.r}!", lines)
    require(value * factorial(task.r) == factorial(task.n), "the count in two ways")
    return value


def _letters(word: str, lines: Lines) -> int:
    """n! over the factorials of how often letters repeat."""
    repeats = Counter(word)
    size = len(word)
    several = [(letter, count) for letter, count in sorted(repeats.items()) if count > 1]
    if not several:
        value = _product(list(range(size, 0, -1)), f"{size}!", lines)
    else:
        lines.say(f"{size} letters, {', '.join(f'{letter} {count} times' for letter, count in several)}", starts=True)
        below = " × ".join(f"{count}!" for _, count in several)
        lines.say(f"{size}!/({below})" if len(several) > 1 else f"{size}!/{below}")
        value = factorial(size) // prod(factorial(count) for _, count in several)
        lines.say(f"= {factorial(size)}/{prod(factorial(count) for _, count in several)}")
        lines.say(f"= {value}", str(value))
    # A second way: the places of one letter after the other; short words are written out.
    again, left = 1, size
    for count in repeats.values():
        again, left = again * comb(left, count), left - count
    require(again == value, "the count in two ways")
    require(size > _LISTED or len(set(permutations(word))) == value, "the count in two ways")
    return value


def _choices(task: Count, lines: Lines) -> int:
    values = []
    for n, r in task.groups:
        _at_most(r, n)
        value = comb(n, r)
        small = min(r, n - r)
        if small > 1:
            above = " × ".join(map(str, range(n, n - small, -1)))
            below = " × ".join(map(str, range(small, 0, -1)))
            lines.say(f"{n}C{r} = ({above})/({below})", starts=True)
            lines.say(f"= {value}", str(value))
        else:
            lines.say(f"{n}C{r} = {value}", str(value), starts=True)
        require(_pascal(n, r) == value, "the count in two ways")
        values.append(value)
    if len(values) > 1:
        lines.say(f"{' × '.join(map(str, values))} = {prod(values)}", str(prod(values)))
    return prod(values)


def _pascal(n: int, r: int) -> int:
    """A number of Pascal's triangle by adding row after row."""
    row = [1]
    for _ in range(n):
        row = [1, *(one + other for one, other in pairwise(row)), 1]
    return row[r]

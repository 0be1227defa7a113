"""Arrangements under a condition: things together or apart, letters at the ends, digits of even numbers."""

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations, pairwise, permutations, product
from math import comb, factorial, perm, prod

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.model.counting_task import Committee, Digits, Row, Spelling
from paperaudit.model.derivation import Answer
from paperaudit.strands.chance.lines import Lines
from paperaudit.strands.numbers.working import require

MOST_THINGS = 14
_WRITTEN_OUT = 8
_MOST_NUMBERS = 100_000
VOWELS = frozenset("AEIOU")


def row(task: Row, lines: Lines) -> Answer:
    """Orders of two kinds of different things in a row."""
    special, others = task.special, task.others
    lines.skill = "counting"
    if special + others > MOST_THINGS:
        raise BudgetExceeded(f"more than {MOST_THINGS} things in a row")
    parts: tuple[tuple[str, int], ...]
    match task.rule:
        case "together":
            parts = ((f"{others + 1}!", factorial(others + 1)), (f"{special}!", factorial(special)))
            lines.say(f"the {special} as one: {others} + 1 = {others + 1} things", str(others + 1), starts=True)
        case "both together":
            parts = (("2!", 2), (f"{special}!", factorial(special)), (f"{others}!", factorial(others)))
        case "alternate":
            if abs(special - others) > 1:
                raise NoValue(f"{special} and {others} cannot alternate")
            turns = (("2", 2),) if special == others else ()
            parts = (*turns, (f"{special}!", factorial(special)), (f"{others}!", factorial(others)))
        case _:
            return _apart(special, others, lines)
    return _ended(parts, task, lines)


def _apart(special: int, others: int, lines: Lines) -> Answer:
    """No two of the special ones side by side: all orders less those with both together, or into the gaps."""
    task = Row(special, others, "apart")
    if special == 2:
        total, together = factorial(others + 2), factorial(others + 1) * 2
        lines.say(f"all: {others + 2}! = {total}", str(total), starts=True)
        lines.say(f"together: {others + 1}! × 2! = {together}", str(together), starts=True)
        value = total - together
        lines.say(f"{total} − {together} = {value}", str(value))
        require(_by_patterns(task) == value, "the count in two ways")
        return lines.end(Fraction(value))
    if special > others + 1:
        raise NoValue(f"{special} of them cannot all be apart")
    lines.say(f"the {others} others: {others}! = {factorial(others)}", str(factorial(others)), starts=True)
    gaps = perm(others + 1, special)
    factors = " × ".join(str(others + 1 - at) for at in range(special))
    lines.say(f"into {others + 1} gaps: {factors} = {gaps}", str(gaps))
    return _ended(((str(factorial(others)), factorial(others)), (str(gaps), gaps)), task, lines)


def _ended(parts: tuple[tuple[str, int], ...], task: Row, lines: Lines) -> Answer:
    value = prod(size for _, size in parts)
    lines.say(" × ".join(text for text, _ in parts), starts=not lines.steps)
    if any("!" in text for text, _ in parts):
        lines.say("= " + " × ".join(str(size) for _, size in parts))
    lines.say(f"= {value}", str(value))
    require(_by_patterns(task) == value, "the count in two ways")
    return lines.end(Fraction(value))


def _by_patterns(task: Row) -> int:
    """A second way: every pattern of the two kinds is looked at, the things of each kind in any order."""
    size = task.special + task.others
    good = 0
    for places in combinations(range(size), task.special):
        kinds = [at in places for at in range(size)]
        changes = sum(one != other for one, other in pairwise(kinds))
        match task.rule:
            case "together":
                fits = not places or places[-1] - places[0] == task.special - 1
            case "both together":
                fits = changes == 1
            case "alternate":
                fits = changes == size - 1
            case _:
                fits = all(other - one > 1 for one, other in pairwise(places))
        good += fits
    return good * factorial(task.special) * factorial(task.others)


def spelling(task: Spelling, lines: Lines) -> Answer:
    """Arrangements of a word's letters with a letter fixed at an end, or with the vowels as one."""
    lines.skill = "counting"
    word = Counter(task.word)
    fixed = Counter(task.begins + task.ends)
    if fixed - word:
        raise NoValue("the word does not have such a letter")
    if len(task.word) > MOST_THINGS:
        raise BudgetExceeded(f"words of more than {MOST_THINGS} letters")
    if task.vowels_together:
        value = _vowels_together(word, lines)
    else:
        left = word - fixed
        ends = [f"{letter} {where}" for letter, where in ((task.begins, "first"), (task.ends, "last")) if letter]
        lines.say(f"{' and '.join(ends)}: {left.total()} letters are left", str(left.total()), starts=True)
        value = _multiset(left, lines)
    if len(task.word) <= _WRITTEN_OUT:
        require(sum(_spelled(one, task) for one in set(permutations(task.word))) == value, "the count in two ways")
    else:
        require(_letter_by_letter(task) == value, "the count in two ways")
    return lines.end(Fraction(value))


def _multiset(letters: Counter[str], lines: Lines) -> int:
    size = letters.total()
    repeats = [count for count in letters.values() if count > 1]
    value = factorial(size) // prod(factorial(count) for count in repeats)
    below = " × ".join(f"{count}!" for count in sorted(repeats))
    over = f"/({below})" if len(repeats) > 1 else f"/{below}" if repeats else ""
    lines.say(f"{size}!{over} = {value}", str(value))
    return value


def _vowels_together(word: Counter[str], lines: Lines) -> int:
    vowels = Counter({letter: count for letter, count in word.items() if letter in VOWELS})
    others = word - vowels
    if not vowels:
        raise NoValue("the word has no vowels")
    lines.say(f"the vowels as one: {others.total()} + 1 = {others.total() + 1} things", starts=True)
    outer = _multiset(others + Counter({"*": 1}), lines)
    inner = _multiset(vowels, lines)
    lines.say(f"{outer} × {inner} = {outer * inner}", str(outer * inner))
    return outer * inner


def _spelled(letters: tuple[str, ...], task: Spelling) -> bool:
    places = [at for at, letter in enumerate(letters) if letter in VOWELS]
    together = not task.vowels_together or places[-1] - places[0] == len(places) - 1
    return together and (not task.begins or letters[0] == task.begins) and (not task.ends or letters[-1] == task.ends)


def _letter_by_letter(task: Spelling) -> int:
    """A second way for long words: the places of one letter after the other."""
    letters = Counter(task.word) - Counter(task.begins + task.ends)
    if not task.vowels_together:
        return _placed(letters)
    vowels = Counter({letter: count for letter, count in letters.items() if letter in VOWELS})
    others = letters - vowels
    return _placed(others) * _placed(vowels) * (others.total() + 1)


def _placed(letters: Counter[str]) -> int:
    ways, left = 1, letters.total()
    for count in letters.values():
        ways, left = ways * comb(left, count), left - count
    return ways


def digits(task: Digits, lines: Lines) -> Answer:
    """Numbers of given digits, the place with the condition filled first."""
    lines.skill = "counting"
    size = len(task.digits)
    if size**task.places > _MOST_NUMBERS:
        raise BudgetExceeded("too many numbers to look at")
    if not task.repeats and task.places > size:
        raise NoValue("more places than digits")
    value = 0
    ends = [None] if set(task.last) == set(task.digits) else [*task.last]
    by_last = len({_starts(task, last) for last in ends}) > 1
    groups = [(last,) for last in ends] if by_last else [tuple(ends)]
    for group in groups:
        starts = _starts(task, group[0])
        middle = task.places - 1 - (group[0] is not None)
        used = 1 + (group[0] is not None)
        counts = [starts] + [size if task.repeats else size - used - at for at in range(middle)]
        counts += [len(group)] if group[0] is not None else []
        ways = prod(counts)
        head = f"{group[0]} last: " if by_last else ""
        lines.say(f"{head}{' × '.join(map(str, counts))} = {ways}", str(ways), starts=True)
        value += ways
    if len(groups) > 1:
        lines.say(f"total: {value}", str(value))
    require(sum(1 for _ in _numbers(task)) == value, "the count in two ways")
    return lines.end(Fraction(value))


def _starts(task: Digits, last: int | None) -> int:
    """How many digits may stand first once the last one is chosen."""
    return len([one for one in task.first if task.repeats or one != last])


def _numbers(task: Digits) -> Iterator[tuple[int, ...]]:
    every = product(task.digits, repeat=task.places) if task.repeats else permutations(task.digits, task.places)
    return (one for one in every if one[0] in task.first and one[-1] in task.last)


def committee(task: Committee, lines: Lines) -> Answer:
    """Choices from two kinds, case by case, or all less the other cases."""
    lines.skill = "counting"
    one, other = task.pools
    if max(one, other) > 30:
        raise BudgetExceeded("choices from so many")
    possible = range(max(0, task.size - other), min(one, task.size) + 1)
    good = [count for count in possible if task.least <= count <= task.most]
    rest = [count for count in possible if count not in good]
    if not good:
        raise NoValue("no such choice is possible")
    total = comb(one + other, task.size)
    if rest and len(rest) < len(good):
        lines.say(f"all: {one + other}C{task.size} = {total}", str(total), starts=True)
        without = _cases(task, rest, lines)
        value = total - sum(without)
        lines.say(f"{total} − {' − '.join(map(str, without))} = {value}", str(value))
    else:
        ways = _cases(task, good, lines)
        value = sum(ways)
        if len(ways) > 1:
            lines.say(f"{' + '.join(map(str, ways))} = {value}", str(value))
    again = _chosen(task)
    require(again == value, "the count in two ways")
    return lines.end(Fraction(value))


def _cases(task: Committee, counts: list[int], lines: Lines) -> list[int]:
    ways = []
    for count in counts:
        one, other = comb(task.pools[0], count), comb(task.pools[1], task.size - count)
        lines.say(f"{count} {task.names[0]} and {task.size - count} {task.names[1]}: {task.pools[0]}C{count} × "
                  f"{task.pools[1]}C{task.size - count} = {one} × {other} = {one * other}",
                  str(one * other), starts=True)  # fmt: skip
        ways.append(one * other)
    return ways


def _chosen(task: Committee) -> int:
    """A second way: one person after the other is taken or left."""
    ways = {(0, 0): 1}
    for kind in (0,) * task.pools[0] + (1,) * task.pools[1]:
        taken: dict[tuple[int, int], int] = dict(ways)
        for (first, second), count in ways.items():
            key = (first + 1, second) if kind == 0 else (first, second + 1)
            if sum(key) <= task.size:
                taken[key] = taken.get(key, 0) + count
        ways = taken
    return sum(count for (first, second), count in ways.items()
               if first + second == task.size and task.least <= first <= task.most)  # fmt: skip

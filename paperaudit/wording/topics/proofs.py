"""Claims to be proved in algebra: the sum of three consecutive integers is a multiple of 3; and counter-examples."""

import re
from dataclasses import dataclass
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.related import relations_of
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.maths.write import write
from paperaudit.model.ask import Task
from paperaudit.model.expression import Expression, Letter, Negative, Number, Power, Product, Relation, Sum, letters_of
from paperaudit.model.proof_task import CounterExample, EqualSums, IntegerClaim, PositiveClaim, Property
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.topic import Readers

_COUNTS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7}
_LETTERS = ("n", "m", "k", "p", "q", "r", "t")


@dataclass(frozen=True, slots=True)
class _Numbers:
    """Integers in letters, and the sentence that says what they are."""

    members: tuple[Expression, ...]
    setting: str


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, "counter", "equal_sums", "positive", "property")
    if asides.unit or asides.accuracy is not None:
        raise NotUnderstood("a unit or an accuracy with a proof", chosen.start)
    match chosen.expr_name:
        case "counter":
            return _counter(chosen)
        case "positive":
            return _positive(chosen)
        case "equal_sums":
            numbers = _numbers(the(chosen, "worded"))
            return EqualSums(_combined(the(chosen, "worded"), numbers), Sum(numbers.members), numbers.setting)
    claim, divisor, remainder, said = _quality(the(chosen, "quality"))
    never = "never" in the(chosen, "is").text or the(chosen, "quality").text.startswith("not ")
    worded = first(the(chosen, "quantity"), "worded")
    positive = bool(re.search(r"positive|natural|[>≥] ?[01]", chosen.text.partition(" is ")[2]))
    if worded is not None:
        numbers = _numbers(worded)
        combined = _combined(worded, numbers)
        return IntegerClaim(combined, claim, said, divisor, remainder, numbers.setting, never, False)
    expression = expression_of(the(chosen, "expression"))
    if not letters_of(expression):
        raise NotUnderstood("a claim about a number", chosen.start)
    return IntegerClaim(expression, claim, said, divisor, remainder, "", never, positive)


def _quality(node: Node) -> tuple[Property, int, int, str]:
    """The property, its divisor and remainder, and the words for it."""
    kind, text = the(node, "offset", "multiple", "parity", "square", "prime"), node.text.removeprefix("not ")
    match kind.expr_name:
        case "offset":
            amount, more, *_, number = text.split(" ")
            size = _COUNTS.get(amount) or int(amount)
            return "remainder", _divisor(number, node), -size if more == "less" else size, text
        case "multiple":
            number = text.rpartition(" ")[2]
            return "remainder", _divisor(number, node), 0, f"a multiple of {number}"
        case "parity":
            odd = "odd" in text
            return "remainder", 2, int(odd), "odd" if odd else "even"
        case "square":
            return "square", 1, 0, "a square number"
    return "prime", 1, 0, "prime"


def _divisor(text: str, node: Node) -> int:
    if int(text) < 2:
        raise NotUnderstood(f"a multiple of {text}", node.start)
    return int(text)


def _numbers(worded: Node) -> _Numbers:
    """The integers that the words name."""
    several = first(worded, "several")
    if several is None:
        member, words = _single(the(worded, "single").text, "n")
        return _Numbers((member,), f"let the number be {write(member)}, {words}")
    if has(several, "both"):
        found = [_single(one.text, name) for one, name in zip(every(several, "single"), _LETTERS, strict=False)]
        members = tuple(member for member, _ in found)
        return _Numbers(members, f"let the numbers be {_listed(members)}, {_integers(members)}")
    counted = first(several, "count")
    count = 2 if counted is None else _COUNTS.get(counted.text) or int(counted.text)
    kind = the(several, "kind").text
    step = _step(kind)
    if has(several, "consecutive"):
        shift = 1 if "odd" in kind else 0
        members = tuple(_multiple(step, "n", step * place + shift) for place in range(count))
    else:
        shift = 1 if "odd" in kind else 0
        members = tuple(_multiple(step, name, shift) for name in _LETTERS[:count])
    return _Numbers(members, f"let the numbers be {_listed(members)}, {_integers(members)}")


def _step(kind: str) -> int:
    if "even" in kind or "odd" in kind:
        return 2
    multiple = re.search(r"multiples? of (\d+)", kind)
    return int(multiple[1]) if multiple else 1


def _single(text: str, name: str) -> tuple[Expression, str]:
    member = _multiple(_step(text), name, 1 if "odd" in text else 0)
    return member, _integers((member,))


def _multiple(step: int, name: str, shift: int) -> Expression:
    """2n + 1, n + 2, 5n."""
    body: Expression = Letter(name) if step == 1 else Product((Number(Fraction(step)), Letter(name)))
    return Sum((body, Number(Fraction(shift)))) if shift else body


def _listed(members: tuple[Expression, ...]) -> str:
    texts = [write(member) for member in members]
    return f"{', '.join(texts[:-1])} and {texts[-1]}"


def _integers(members: tuple[Expression, ...]) -> str:
    names = tuple(dict.fromkeys(name for member in members for name in letters_of(member)))
    return f"where {' and '.join(names)} {'is an integer' if len(names) == 1 else 'are integers'}"


def _combined(worded: Node, numbers: _Numbers) -> Expression:
    """The sum, product or difference; of consecutive numbers the later one less the earlier one."""
    squares = first(worded, "of_squares")
    operation = the(worded, "of_squares", "of_these", "of_one").text.removeprefix("the ")
    members = numbers.members
    if first(worded, "several") is None:
        return Power(members[0], Number(Fraction(2 if operation.startswith("square") else 3)))
    if squares is not None:
        members = tuple(Power(member, Number(Fraction(2))) for member in members)
    if operation.startswith("sum"):
        return Sum(members)
    if operation.startswith("product"):
        return Product(members)
    if len(members) != 2:
        raise NotUnderstood("the difference of more than two numbers", worded.start)
    return Sum((members[1], Negative(members[0])))


def _positive(node: Node) -> PositiveClaim:
    expression = expression_of(the(node, "expression"))
    rest = node.text[the(node, "expression").end - node.start :]
    negative = bool(re.search(r"negative|less than|<|≤", rest)) and "non-negative" not in rest
    zero = bool(re.search(r"non-negative|≥|≤|never", rest))
    if "never" in rest:
        negative = not negative
    if not letters_of(expression):
        raise NotUnderstood("a claim about a number", node.start)
    return PositiveClaim(expression, zero, negative)


def _counter(node: Node) -> CounterExample:
    zero = Number(Fraction(0))
    if has(node, "all_primes"):
        return CounterExample("odd", None, Letter("p"), "remainder", 2, 1, True, False, True)
    if has(node, "own_square"):
        number = Letter("x")
        relation = Relation(Power(number, Number(Fraction(2))), ">", number)
        return CounterExample("greater than the number", relation, None, "prime", 1, 0, False)
    words = node.text
    from_one = bool(re.search(r"positive|natural|[>≥] ?[01]\b", words.partition(" for ")[2]))
    related = first(node, "relation")
    if related is not None:
        (relation,) = relations_of(related)
        integers = "real" not in words and bool(re.search(r"integer|whole|natural", words))
        return CounterExample("true", relation, None, "prime", 1, 0, integers, from_one)
    claim, divisor, remainder, said = _quality(the(node, "quality"))
    expression = expression_of(the(node, "expression"))
    if not letters_of(expression) or expression == zero:
        raise NotUnderstood("a statement about a number", node.start)
    return CounterExample(said, None, expression, claim, divisor, remainder, True, from_one)


READERS = Readers(task=_task)

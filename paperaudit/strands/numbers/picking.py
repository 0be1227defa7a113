"""Numbers of a kind picked out of a list; rational and irrational numbers."""

from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import ExactValue, NotSurd, exact_expression, exact_value, rational_value
from paperaudit.maths.near import near_value
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived, NotRead, Outcome
from paperaudit.model.expression import Expression, Letter
from paperaudit.model.number_task import EqualTo, FromList, IsOfKind, NumberKind
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.factors import SKILL
from paperaudit.strands.numbers.kinds import holds, is_of_kind, shown
from paperaudit.strands.numbers.working import Working, natural, require, with_givens

_ALIKE = Decimal(10) ** -40
"""Numbers that differ by less on fifty figures have the same value."""
_RATIONAL: tuple[NumberKind, ...] = ("rational", "irrational")


def from_list(task: FromList, reading: Reading) -> Outcome:
    """The numbers of the list that are of the kind, each tried."""
    working = Working("powers and roots" if task.kind in _RATIONAL else SKILL)
    of = natural(task.of) if task.of is not None else 0
    values = [with_givens(one, reading)[0] for one in task.numbers]
    found = [
        one
        for one, value in zip(task.numbers, values, strict=True)
        if _is(task.kind, of, value, working) != task.outside
    ]
    if not found:
        kind = "not of that kind" if task.outside else "of the kind that is asked for"
        return NotRead(f"none of the numbers is {kind}")
    text = ", ".join(map(write, found))
    working.say(text, text, tuple(step.statement for step in working.steps))
    kind = "one of numbers" if task.one and len(found) > 1 else "numbers"
    return working.derived(Answer(text, kind=kind), confirmed_by="every number of the list tried in two ways")


def _is(kind: NumberKind, of: int, value: Expression, working: Working) -> bool:
    if kind in _RATIONAL:
        return (_rational_shown(value, working) == "rational") == (kind == "rational")
    size = rational_value(value)
    if size is None or size.denominator != 1:
        return False
    whole = int(size)
    if kind in ("factor", "multiple"):
        above, below = (of, whole) if kind == "factor" else (whole, of)
        if below < 1:
            return False
        times, rest = divmod(above, below)
        working.say(f"{above} ÷ {below} = {times}{f' remainder {rest}' if rest else ''}", uses=())
        require((rest == 0) == (below * times == above), f"{above} ÷ {below}")
        return rest == 0
    result = shown(kind, whole, working)
    require(result == holds(kind, whole), f"whether {whole} is {kind}")
    return result


def equal_to(task: EqualTo, reading: Reading) -> Outcome:
    """The numbers of the list with the value of another; forty decimals are the second way."""
    working = Working("comparing numbers")
    other = _exact(task.other)
    if task.other != exact_expression(other):
        working.say(f"{write(task.other)} = {write(exact_expression(other))}", uses=())
    found = []
    for one in task.numbers:
        value = _exact(one)
        alike = value == other
        near = abs(near_value(one, {}) - near_value(task.other, {})) < _ALIKE
        require(near == alike, f"{write(one)} compared with {write(task.other)}")
        working.say(f"{write(one)} {'=' if alike else '≠'} {write(task.other)}", uses=())
        if alike != task.outside:
            found.append(one)
    if not found:
        return NotRead("none of the numbers is the one that is asked for")
    text = ", ".join(map(write, found))
    working.say(text, text, tuple(step.statement for step in working.steps))
    return working.derived(Answer(text, kind="one of numbers"), confirmed_by="each compared on its decimals")


def _exact(value: Expression) -> ExactValue:
    try:
        return exact_value(value)
    except NotSurd:
        raise NoValue(f"the exact value of {write(value)}") from None


def of_kind(task: IsOfKind, reading: Reading) -> Derived:
    """Whether a number is of a kind."""
    return rational_or_not(task, reading) if task.kind in _RATIONAL else is_of_kind(task, reading)


def rational_or_not(task: IsOfKind, reading: Reading) -> Derived:
    """Whether a number is rational; the word for it where the ask gives both words."""
    value, used = with_givens(task.number, reading)
    working = Working("powers and roots", used)
    word = _rational_shown(value, working)
    text = word if task.named else "yes" if word == task.kind else "no"
    working.conclude(f"{write(value)} is {word}", text)
    answer = Answer(text, kind="word" if task.named else "")
    return working.derived(answer, confirmed_by="its exact value, as a fraction or as a sum of square roots")


def _rational_shown(value: Expression, working: Working) -> str:
    """The word for a number, with a line that shows it."""
    if value == Letter("π"):
        working.say("π is irrational", uses=())
        return "irrational"
    try:
        exact = exact_value(value)
    except NotSurd:
        raise NoValue(f"whether {write(value)} is rational") from None
    if isinstance(exact, Fraction):
        shown_as = f"{exact.numerator}/{exact.denominator}" if exact.denominator > 1 else f"{exact.numerator}/1"
        working.say(f"{write(value)} = {shown_as.replace('-', '−')}", uses=())
        return "rational"
    working.say(f"{write(value)} holds the root of a number that is no square", uses=())
    return "irrational"

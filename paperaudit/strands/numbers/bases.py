"""Numbers in other bases: place values summed up, repeated division, adding and subtracting."""

from math import prod

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Negative, Product, Sum
from paperaudit.model.number_task import InBase
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import Working, number, require, text_of

SKILL = "number bases"
_DIGITS = "0123456789abcdefghijklmnopqrstuvwxyz"
_LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_LONGEST = 40
MINUS = "−"


def in_base(task: InBase, reading: Reading) -> Derived:
    """The numbers brought to base ten, added up there, and written in the base asked for."""
    if not all(2 <= base <= 36 for base in (task.to, *(base for _, _, base in task.terms))):
        raise NoValue("a base that is not from 2 to 36")
    if any(len(digits) > _LONGEST for _, digits, _ in task.terms):
        raise BudgetExceeded("a number of dozens of digits")
    working = Working(SKILL)
    values = [_to_ten(digits, base, working) for _, digits, base in task.terms]
    total = _total(task, values, working)
    digits = _from_ten(abs(total), task.to, working)
    require(int(digits, task.to) == abs(total), f"the digits in base {task.to}")
    text = f"{MINUS if total < 0 else ''}{digits}"
    working.conclude(f"= {text}{_sub(task.to)}" if task.to != 10 else f"= {text}", text)
    shown = text if task.to == 10 else f"{text}{_sub(task.to)}"
    return working.derived(Answer(shown, kind="digits"), confirmed_by="read back from its digits into base ten")


def _sub(base: int) -> str:
    return str(base).translate(_LOWERED)


def _to_ten(digits: str, base: int, working: Working) -> int:
    """The value of digits, by the powers of the base; raises NoValue for a digit that the base does not have."""
    total = 0
    for digit in digits:
        at = _DIGITS.find(digit.lower())
        if not 0 <= at < base:
            raise NoValue(f"the digit {digit} in base {base}")
        total = total * base + at
    require(total == int(digits, base), f"{digits} in base {base}")
    if base != 10:
        sums = [
            f"{_DIGITS.find(digit.lower())} × {base}{str(len(digits) - 1 - at).translate(_RAISED)}"
            for at, digit in enumerate(digits)
            if digit != "0"
        ]
        said = f"{digits}{_sub(base)} = {' + '.join(sums)} = {total}" if sums else f"{digits}{_sub(base)} = 0"
        working.say(said, str(total), uses=())
    return total


def _total(task: InBase, values: list[int], working: Working) -> int:
    signed = [sign * value for (sign, _, _), value in zip(task.terms, values, strict=True)]
    if len(signed) == 1:
        return signed[0]
    total = signed[0]
    for value in signed[1:]:
        total = total * value if task.times else total + value
    require(total == (prod(signed) if task.times else sum(signed)), "the numbers in base ten put together")
    factors = tuple(map(number, signed))
    said = write(Product(factors, "×") if task.times else Sum(tuple(map(_signed, signed))))
    uses = tuple(step.statement for step in working.steps)
    working.say(f"{said} = {text_of(total)}", text_of(total), uses)
    return total


def _signed(value: int) -> Expression:
    return Negative(number(-value)) if value < 0 else number(value)


def _from_ten(size: int, base: int, working: Working) -> str:
    """The digits of a number in a base, by repeated division with remainder."""
    if base == 10:
        return str(size)
    digits, divisions, rest = "", [], size
    while rest or not digits:
        whole, remainder = divmod(rest, base)
        divisions.append(f"{rest} ÷ {base} = {whole} remainder {remainder}")
        digits, rest = _DIGITS[remainder] + digits, whole
    working.say(", ".join(divisions), digits)
    return digits

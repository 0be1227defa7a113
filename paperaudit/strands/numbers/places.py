"""Place value: the digit at a place, and what a digit is worth."""

from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.number_forms import as_decimal, decimal_places, whole_or_fraction
from paperaudit.maths.number_words import from_words, in_words
from paperaudit.maths.rounding import step_of
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Number, NumberForm
from paperaudit.model.number_task import DigitAt, InWords, Truncated, ValueOfDigit
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import Working, exact, number, require, whole, with_givens

SKILL = "place value"
PLACES = {
    6: "millions",
    5: "hundred thousands",
    4: "ten thousands",
    3: "thousands",
    2: "hundreds",
    1: "tens",
    0: "units",
    -1: "tenths",
    -2: "hundredths",
    -3: "thousandths",
    -4: "ten-thousandths",
    7: "ten millions",
    8: "hundred millions",
    9: "billions",
    10: "ten billions",
    11: "hundred billions",
}


def digit_at(task: DigitAt, reading: Reading) -> Derived:
    """The digit of a number at a place, read off its decimal and found again by division."""
    expression, used = with_givens(task.number, reading)
    size = abs(exact(expression))
    digits = _digits(size)
    digit = digits.get(task.power, 0)
    require(digit == size / Fraction(10) ** task.power // 1 % 10, f"the digit at {task.power}")
    working = Working(SKILL, used)
    working.say(_taken_apart(digits))
    name = PLACES.get(task.power, f"10^{task.power}")
    working.conclude(f"{name}: {digit}", str(digit))
    return working.derived(Answer(str(digit), number(digit)), confirmed_by="found by division with remainder")


def value_of_digit(task: ValueOfDigit, reading: Reading) -> Derived:
    """What a digit that occurs once in a number is worth there."""
    expression, used = with_givens(task.number, reading)
    size = abs(exact(expression))
    digits = _digits(size)
    at = [power for power, digit in digits.items() if digit == task.digit]
    if len(at) != 1:
        raise NoValue(f"the digit {task.digit} occurs {len(at) or 'not once'} in {write(expression)}")
    worth = task.digit * Fraction(10) ** at[0]
    require(size // Fraction(10) ** at[0] % 10 == task.digit, f"the digit {task.digit}")
    working = Working(SKILL, used)
    working.say(_taken_apart(digits))
    shown = as_decimal(worth) or whole_or_fraction(worth)
    name = PLACES.get(at[0], "")
    working.conclude(f"the {task.digit} stands for {task.digit} {name} = {write(shown)}", write(shown))
    return working.derived(Answer(f"{write(shown)}", shown, name, kind="place"), confirmed_by="found again by division")


def _digits(size: Fraction) -> dict[int, int]:
    """The digits of a decimal by the power of ten of their place, as they stand on the paper."""
    places = decimal_places(size)
    if places is None:
        raise NoValue("endless decimals")
    text = format(Decimal(size.numerator) / Decimal(size.denominator), "f")
    front, _, decimals = text.partition(".")
    found = {power: int(digit) for power, digit in enumerate(reversed(front))}
    return dict(sorted({**found, **{-1 - at: int(digit) for at, digit in enumerate(decimals)}}.items(), reverse=True))


def _taken_apart(digits: dict[int, int]) -> str:
    """The number as its digits with their places: 3 thousands + 4 hundreds + 5 units."""
    named = [f"{digit} {PLACES.get(power, f'× 10^{power}')}" for power, digit in digits.items() if digit]
    return " + ".join(named) or "0 units"


def worded(task: InWords, reading: Reading) -> Derived:
    """A whole number in words, or words in figures."""
    expression, used = with_givens(task.number, reading)
    size = whole(expression)
    text = in_words(size)
    require(from_words(text) == size, f"{size} in words")
    working = Working(SKILL, used)
    check = "the words read back into figures"
    if task.figures:
        working.conclude(str(size), str(size))
        return working.derived(Answer(str(size), number(size)), confirmed_by=check)
    working.conclude(text, text)
    return working.derived(Answer(text, number(size), kind="number words"), confirmed_by=check)


def truncated(task: Truncated, reading: Reading) -> Derived:
    """A number cut off, without rounding."""
    expression, used = with_givens(task.number, reading)
    value = exact(expression)
    step = step_of(task.accuracy, value)
    size = abs(value) // step * step
    require(size <= abs(value) < size + step, f"{write(expression)} truncated")
    places = decimal_places(step) or 0
    signed = -size if value < 0 else size
    shown = Number(signed, NumberForm.DECIMAL if places else NumberForm.INTEGER, places)
    working = Working("rounding", used)
    working.conclude(f"{write(expression)} is cut off to {write(shown)}", write(shown))
    return working.derived(Answer(write(shown), shown, kind="bound"), confirmed_by="one step further is too much")

"""Recurring decimals turned into fractions by algebra, and fractions into recurring decimals by long division."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import decimal_places, whole_or_fraction
from paperaudit.maths.postfix import agree, decimal_value
from paperaudit.maths.recurring import Recurring, recurring_of
from paperaudit.maths.settled import is_settled
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived, StepKind
from paperaudit.model.expression import Expression
from paperaudit.model.number_form_task import RecurringAsFraction
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import Working, require

SKILL = "recurring decimals"


def as_fraction(task: RecurringAsFraction, reading: Reading) -> Derived:
    """The fraction of a recurring decimal: two multiples of it with the same digits behind the point, subtracted."""
    decimal = Recurring(task.whole, task.fixed, task.cycle)
    behind, before = len(task.fixed) + len(task.cycle), len(task.fixed)
    working = Working(SKILL)
    say = working.say
    first = say(f"x = {decimal.shifted(0)}", kind=StepKind.GIVEN)
    if before:
        first = say(f"{10**before}x = {decimal.shifted(before)}", kind=StepKind.ALGEBRA)
    second = say(f"{10**behind}x = {decimal.shifted(behind)}", kind=StepKind.ALGEBRA)
    times = 10**behind - 10**before
    digits = str(task.whole) + task.fixed
    above = int(digits + task.cycle) - int(digits)
    say(f"{times}x = {above}", uses=(first, second), kind=StepKind.ALGEBRA)
    value = Fraction(above, times)
    text = write(whole_or_fraction(value))
    if f"{above}/{times}" != text:
        say(f"x = {above}/{times}", f"{above}/{times}", kind=StepKind.ALGEBRA)
        say(f"= {text}", text)
    else:
        say(f"x = {text}", text, kind=StepKind.ALGEBRA)
    shown = whole_or_fraction(value)
    require(agree(decimal_value(shown), decimal.decimal()), f"{text} and {decimal.text()}")
    answer = Answer(text, shown)
    if task.claimed is not None:
        told = f"false: {decimal.text()} is {text}, not {write(task.claimed)}"
        answer = Answer("shown" if rational_value(task.claimed) == value else told)
    return working.derived(answer, confirmed_by="divided out again, and compared over eighty decimals")


def is_endless(expression: Expression) -> bool:
    """Whether an expression is a fraction whose decimals do not end."""
    value = rational_value(expression) if is_settled(expression) else None
    return value is not None and decimal_places(value) is None


def as_recurring(expression: Expression) -> Derived:
    """A fraction as a recurring decimal; raises NoValue where its decimals end."""
    value = rational_value(expression)
    if value is None or decimal_places(value) is not None:
        raise NoValue(f"{write(expression)} has no recurring decimals")
    decimal = recurring_of(value)
    require(decimal.fraction() == value, f"{decimal.text()} and {write(expression)}")
    working = Working(SKILL)
    divided = f"{abs(value.numerator)} ÷ {value.denominator} = {decimal.shifted(0)}"
    working.say(divided)
    working.say(f"{write(expression)} = {decimal.text()}", decimal.text(), kind=StepKind.CONCLUSION)
    answer = Answer(decimal.text(), whole_or_fraction(value), kind="recurring")
    return working.derived(answer, confirmed_by="turned into a fraction again by the nines of its cycle")

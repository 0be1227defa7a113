"""The end of a calculation: the unit and the accuracy asked for, and the answer as it is printed."""

from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.approximate import decimal_beside
from paperaudit.maths.exact import exact_expression, exact_value
from paperaudit.maths.measure import UnitClash, bare
from paperaudit.maths.number_forms import as_decimal, decimal_places, form_of, whole_or_fraction
from paperaudit.maths.rounding import accuracy_text, round_to, step_of
from paperaudit.maths.same_value import number_of
from paperaudit.maths.units import MONEY, conversion, same_unit, unit_text
from paperaudit.maths.write import write
from paperaudit.model.ask import Accuracy, Ask
from paperaudit.model.derivation import Answer, Step, StepKind
from paperaudit.model.expression import Expression, Measured, Number, NumberForm, Product

_CONTEXT = Context(prec=200)


class ChecksDisagree(Exception):
    """Two ways gave two results; caught by the strand, which then derives nothing."""


def finished(value: Expression, ask: Ask, before: str, letter: str = "") -> tuple[Answer, tuple[Step, ...]]:
    """The answer in the unit and to the accuracy asked for, and the lines that this takes.

    `before` is the statement that the value stands in. Raises UnitClash, NoValue and ChecksDisagree.
    """
    steps: list[Step] = []
    name = f"{letter} " if letter else ""
    amount, unit = bare(value)
    if ask.unit and unit and conversion(unit, ask.unit) is None:
        raise UnitClash(f"the answer is in {unit}, it is asked for in {ask.unit}")
    if ask.unit and unit and not same_unit(unit, ask.unit):
        said = f"{name}= {_conversion_text(amount, unit, ask.unit)}"
        amount, unit = _converted(amount, unit, ask.unit), ask.unit
        steps.append(_step(said, before, said.partition("= ")[2], "units"))
        steps.append(_step(f"= {_measure(amount, unit)}", said, _measure(amount, unit), "units"))
    elif ask.unit and not unit:
        unit = ask.unit
    if ask.accuracy is not None:
        rounded = rounded_number(amount, ask.accuracy, unit)
        if unrounded := _unrounded(amount, rounded):
            said = f"{name}= {_with_unit(unrounded, unit)}"
            steps.append(_step(said, steps[-1].statement if steps else before, said.partition("= ")[2], "decimals"))
        exact = number_of(amount) == number_of(rounded)
        text = _measure(rounded, unit)
        said = f"{name}{'=' if exact else '≈'} {text} (to {accuracy_text(ask.accuracy)})"
        steps.append(_step(said, steps[-1].statement if steps else before, text, "rounding", StepKind.CONCLUSION))
        amount = rounded
    return answer_of(amount, unit, letter), tuple(steps)


def answer_of(amount: Expression, unit: str = "", letter: str = "") -> Answer:
    """The printed answer: exact, an irrational one with its decimal behind it."""
    value = Measured(amount, unit) if unit else amount
    text = write(value)
    number = number_of(amount)
    if isinstance(number, Decimal):
        text = f"{text} ≈ {_measure(decimal_beside(number), unit)}"
    return Answer(f"{letter} = {text}" if letter else text, value, letter)


def rounded_number(amount: Expression, accuracy: Accuracy, unit: str = "") -> Number:
    """A number rounded once from its exact value, checked by a second way of rounding.

    A percentage is rounded as it is written: 12.34% to one decimal place is 12.3%.
    """
    exact = number_of(amount)
    if exact is None:
        raise NoValue(f"{write(amount)} has no value that could be rounded")
    scale = 100 if form_of(amount) is NumberForm.PERCENT else 1
    rounded = round_to(Fraction(exact) * scale, accuracy, unit)
    if _rounded_again(Fraction(exact) * scale, accuracy, unit) != rounded.value:
        raise ChecksDisagree(f"rounding {write(amount)} in two ways gave two results")
    return rounded if scale == 1 else Number(rounded.value / 100, NumberForm.PERCENT, rounded.places)


def _rounded_again(value: Fraction, accuracy: Accuracy, unit: str) -> Fraction:
    """The same by decimal.ROUND_HALF_UP on two hundred figures of the count of steps."""
    step = step_of(accuracy, value, unit)
    count = value / step
    decimal = _CONTEXT.divide(Decimal(count.numerator), Decimal(count.denominator))
    return Fraction(decimal.quantize(Decimal(1), rounding=ROUND_HALF_UP, context=_CONTEXT)) * step


def _converted(amount: Expression, unit: str, target: str) -> Expression:
    scale = conversion(unit, target)
    if scale is None:
        raise NoValue(f"{write(amount)} {unit} in {target}")
    value = exact_value(Product((amount, Number(scale))))
    return as_decimal(value) or whole_or_fraction(value) if isinstance(value, Fraction) else exact_expression(value)


def _conversion_text(amount: Expression, unit: str, target: str) -> str:
    """The line that shows the change of unit: 2.5 × 1000 m, 150 ÷ 100 m."""
    scale = conversion(unit, target) or Fraction(1)
    if scale < 1 and scale.numerator == 1:
        return f"{write(amount)} ÷ {write(Measured(whole_or_fraction(1 / scale), target))}"
    factor = Measured(as_decimal(scale) or whole_or_fraction(scale), target)
    return write(Product((amount, factor), "×"))


def _unrounded(amount: Expression, rounded: Number) -> str:
    """The first decimals of a value whose decimals do not end, cut off behind two more than are asked for."""
    number = number_of(amount)
    if number is None or (isinstance(number, Fraction) and decimal_places(number) is not None):
        return ""
    percent = form_of(amount) is NumberForm.PERCENT
    places = rounded.places + 2
    shifted = abs(Fraction(number)) * (100 if percent else 1) * 10**places
    cut = Fraction(shifted.__floor__(), 10**places)
    return f"{write(Number(-cut if number < 0 else cut, NumberForm.DECIMAL, places))}…{'%' if percent else ''}"


def _with_unit(text: str, unit: str) -> str:
    """A number that is cut off, with its unit: 3.3166… cm, R3.3166…"""
    return f"{unit}{text}" if unit in MONEY else text + unit_text(unit, True) if unit else text


def _measure(amount: Expression, unit: str) -> str:
    return write(Measured(amount, unit) if unit else amount)


def _step(statement: str, before: str, value: str, skill: str, kind: StepKind = StepKind.CALCULATION) -> Step:
    return Step(statement, kind, None, (before,) if before else (), value, skill)

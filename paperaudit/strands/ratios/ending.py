"""The last lines of a reckoning: the unit and the accuracy asked for."""

import re
from dataclasses import replace
from fractions import Fraction

from paperaudit.maths.measure import UnitClash
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.units import MONEY, conversion, same_unit, unit_named, unit_text
from paperaudit.maths.write import write
from paperaudit.model.ask import Accuracy, Ask
from paperaudit.model.derivation import Answer, StepKind
from paperaudit.model.expression import Expression, Measured, Number, Product, Quotient
from paperaudit.strands.finishing import finished
from paperaudit.strands.numbers.working import Working
from paperaudit.strands.ratios.amounts_worked import has_decimals, simplest

_STEP_UNIT = re.compile(r"[\d.,]* ?([^\d\s.,]+)$")


def ended(value: Expression, ask: Ask, working: Working, name: str = "") -> Answer:
    """The answer in the unit and to the accuracy asked for; a step of rounding in a unit asks for that unit.

    Raises UnitClash where the unit is of another kind, NoValue and ChecksDisagree.
    """
    wished = ask.unit or _unit_of_step(ask.accuracy)
    if isinstance(value, Measured) and wished and not same_unit(value.unit, wished):
        value = converted(value, wished, working, bool(ask.unit))
    value = _with_places(value)
    before = working.steps[-1].statement if working.steps else ""
    kept = replace(ask, unit=value.unit) if ask.unit and isinstance(value, Measured) else ask
    answer, closing = finished(value, kept, before)
    working.steps.extend(replace(step, skill=step.skill or working.skill) for step in closing)
    concluded = before == f"{name} = {answer.text}" if name else before.endswith(f"= {answer.text}")
    if not closing and concluded:
        working.steps[-1] = replace(working.steps[-1], kind=StepKind.CONCLUSION)
    elif not closing:
        working.conclude(f"{name} = {answer.text}" if name else f"= {answer.text}", answer.text)
    return answer


def _with_places(value: Expression) -> Expression:
    """Money with its cents, other measures as short decimals where they have one."""
    if not isinstance(value, Measured) or not isinstance(value.amount, Number) or value.amount.value.denominator == 1:
        return value
    short = as_decimal(value.amount.value, 2 if value.unit in MONEY else 0)
    return Measured(short, value.unit) if short is not None and short.places <= 4 else value


def _unit_of_step(accuracy: Accuracy | None) -> str:
    """The unit in "to the nearest litre", "" for money and plain steps."""
    found = _STEP_UNIT.match(accuracy.amount) if accuracy is not None and accuracy.kind == "nearest" else None
    unit = unit_named(found[1]) if found is not None else None
    return "" if unit is None or unit.symbol in MONEY or unit.symbol in ("c", "p", "°") else unit.symbol


def converted(value: Measured, unit: str, working: Working, asked: bool = True) -> Measured:
    """The measure in another unit, with its line; itself where a mere step of rounding is of another kind."""
    scale = conversion(value.unit, unit)
    if scale is None:
        if asked:
            raise UnitClash(f"the answer is in {value.unit}, it is asked for in {unit}")
        return value
    if scale == 1:
        return Measured(value.amount, unit)
    short = as_decimal(scale)
    down = short is None or (scale < 1 and scale.numerator == 1)
    factor = whole_or_fraction(1 / scale) if down else short
    assert factor is not None
    said = Quotient(value.amount, factor, "÷") if down else Product((value.amount, factor), "×")
    amount = simplest(said, _decimals(value.amount, scale))
    working.say(f"= {write(said)}{unit_text(unit, True)}", write(said))
    working.say(f"= {write(Measured(amount, unit))}", write(amount))
    return Measured(amount, unit)


def _decimals(amount: Expression, scale: Fraction) -> bool:
    if isinstance(amount, Number):
        return as_decimal(amount.value * scale) is not None
    return has_decimals(amount) or scale < 1

"""Estimates: every number of a calculation rounded, then worked out."""

from fractions import Fraction
from math import isqrt

from paperaudit.errors import NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.measure import unit_of, without_units
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.parts import with_parts
from paperaudit.maths.postfix import decimal_value
from paperaudit.maths.write import write
from paperaudit.model.accuracy_task import Estimated
from paperaudit.model.ask import Accuracy
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Letter, Number, NumberForm, Power, Root
from paperaudit.model.reading import Reading
from paperaudit.strands.calculating import calculated
from paperaudit.strands.finishing import answer_of, rounded_number
from paperaudit.strands.numbers.working import Working, require, with_givens

SKILL = "estimating"
_FARTHEST = 3
"""An estimate that is three times the exact value, or a third of it, is not one."""


def estimated(task: Estimated, reading: Reading) -> Derived:
    """The calculation with rounded numbers, and its value; a root that does not come out is that of a near square."""
    expression, used = with_givens(task.expression, reading)
    working = Working(SKILL, used)
    rough = _rounded(expression, task.accuracy)
    if rough == expression:
        raise NoValue("none of its numbers can be rounded further")
    working.say(f"{write(expression)} ≈ {write(rough)}", write(rough))
    plain = _worked_radicands(rough)
    if plain != rough and _with_near_roots(rough) != rough:
        working.say(f"= {write(plain)}", write(plain))
        rough = plain
    squared = _with_near_roots(rough)
    if squared != rough:
        working.say(f"≈ {write(squared)}", write(squared))
    lines = calculated(squared)
    for line in lines[1:]:
        working.say(f"= {write(line)}", write(line))
    _require_close(expression, lines[-1])
    unit = unit_of(lines[-1])
    bare = without_units(lines[-1], unit)
    answer = answer_of(bare, unit)
    return working.derived(
        Answer(answer.text, answer.value, kind="estimate"), confirmed_by="compared with the value of the exact numbers"
    )


def _rounded(expression: Expression, accuracy: Accuracy) -> Expression:
    """The expression with every number in it rounded, exponents left as they are; π is 3."""
    match expression:
        case Number(value, form) if form not in (NumberForm.FRACTION, NumberForm.MIXED) and value:
            return _plain(rounded_number(expression, accuracy))
        case Letter("π"):
            return Number(Fraction(3))
        case Power(base, exponent):
            return Power(_rounded(base, accuracy), exponent)
    return with_parts(expression, lambda part: _rounded(part, accuracy))


def _plain(number: Number) -> Number:
    """A rounded number without noughts at its end."""
    if number.form is NumberForm.PERCENT:
        return Number(number.value, NumberForm.PERCENT)
    return as_decimal(number.value) or whole_or_fraction(number.value)


def _worked_radicands(expression: Expression) -> Expression:
    """The expression with what stands under its roots worked out: √(4 × 10) as √40."""
    if isinstance(expression, Root):
        value = rational_value(expression.radicand)
        if value is not None:
            return Root(as_decimal(value) or whole_or_fraction(value), expression.degree)
    return with_parts(expression, _worked_radicands)


def _with_near_roots(expression: Expression) -> Expression:
    """The expression with √50 as √49: the root of the nearest number that has one."""
    if isinstance(expression, Root) and expression.degree == 2:
        value = rational_value(expression.radicand)
        if value is None or value <= 0 or rational_value(expression) is not None:
            return expression
        scale = 1 if value >= 1 else 100
        size = value * scale
        low = isqrt(int(size))
        near = min((low, low + 1), key=lambda root: abs(root * root - size))
        square = Fraction(near * near, scale)
        return Root(as_decimal(square) or whole_or_fraction(square))
    return with_parts(expression, _with_near_roots)


def _require_close(expression: Expression, result: Expression) -> None:
    unit = unit_of(expression)
    exact = decimal_value(without_units(expression, unit))
    found = decimal_value(without_units(result, unit))
    close = exact * found > 0 and 1 < _FARTHEST * abs(found / exact) < _FARTHEST * _FARTHEST
    require(close, f"{write(result)} as an estimate")

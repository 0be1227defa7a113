"""Integrals of sums of powers, between limits and without, and areas down to the x-axis."""

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

from paperaudit.errors import NoValue
from paperaudit.maths.exact import ExactValue, NotSurd, exact_expression
from paperaudit.maths.plane_curves import decimal_of, zeros
from paperaudit.maths.powers import PowerSum, power_sum
from paperaudit.maths.surd import Surd
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import Expression, Letter, Sum
from paperaudit.model.function_task import Function, Integral
from paperaudit.model.reading import Reading
from paperaudit.strands.functions.formulas import at, confirm_derivative, defined, formula_of, numeric
from paperaudit.strands.numbers.working import Working, exact, require, with_givens
from paperaudit.strands.refusals import impossible

SKILL = "integration"
_STRIPS = 400
_CLOSE = Fraction(1, 10**4)
_MEASURED = "the area measured in four hundred strips"


def integral(task: Integral, reading: Reading) -> Outcome:
    """An integral, or the area between a curve and the x-axis."""
    function, used = defined(task.function, reading)
    working = Working(SKILL, used)
    form = power_sum(formula_of(function), function.letter)
    whole = form.integral()
    text = write(formula_of(function))
    if form.text(function.letter) != text and ("(" in text or "/" in text or "√" in text):
        working.say(f"{write(formula_of(function))} = {form.text(function.letter)}")
    if task.area:
        return _area(task, function, form, working, reading)
    confirm_derivative(whole.expression(function.letter), formula_of(function), function.letter)
    if task.low is None or task.high is None:
        summed = Sum((*_terms(whole.expression(function.letter)), Letter("c")))
        text = write(summed)
        working.say(f"∫ ({form.text(function.letter)}) d{function.letter} = {text}", text)
        return working.derived(Answer(text, whole.expression(function.letter), kind="integral"),
                               confirmed_by="differentiated again by gradients close by")  # fmt: skip
    low, high = (exact(with_givens(bound, reading)[0]) for bound in (task.low, task.high))
    value = integrated(form, whole, function, low, high, working)
    result = exact_expression(value)
    return working.derived(Answer(write(result), result), confirmed_by=_MEASURED)


def _terms(expression: Expression) -> tuple[Expression, ...]:
    return expression.terms if isinstance(expression, Sum) else (expression,)


def integrated(
    form: PowerSum, whole: PowerSum, function: Function, low: ExactValue, high: ExactValue, working: Working
) -> ExactValue:
    """The integral between two limits, with its lines, compared with a sum of strips."""
    letter = function.letter
    if any(exponent < 0 for exponent in form.terms) and decimal_of(low) <= 0 <= decimal_of(high):
        raise NoValue("an integral over a place where the function has no value")
    ends = [exact_expression(end) for end in (low, high)]
    working.say(f"[{whole.text(letter)}] from {write(ends[0])} to {write(ends[1])}")
    values = [whole.at(end, letter) for end in ends]
    shown = [write(at(Function("", letter, whole.expression(letter)), end)) for end in (ends[1], ends[0])]
    working.say(f"= ({shown[0]}) − ({shown[1]})")
    value = surd_of(values[1]) - surd_of(values[0])
    result: ExactValue = value if value.fraction is None else value.fraction
    working.say(f"= {write(exact_expression(result))}", write(exact_expression(result)))
    measured = _strips(formula_of(function), letter, decimal_of(low), decimal_of(high))
    require(abs(measured - decimal_of(result)) <= _CLOSE * max(Fraction(1), abs(measured)), "the integral")
    return result


def surd_of(value: ExactValue) -> Surd:
    """An exact value as a sum of roots."""
    return value if isinstance(value, Surd) else Surd.rational(value)


def _strips(formula: Expression, letter: str, low: Fraction, high: Fraction) -> Fraction:
    """The integral by Simpson's rule on the formula as it is given."""
    low, high = low.limit_denominator(10**12), high.limit_denominator(10**12)
    step = (high - low) / _STRIPS
    total = Fraction(0)
    for place in range(_STRIPS + 1):
        weight = 1 if place in (0, _STRIPS) else 4 if place % 2 else 2
        height = float(numeric(formula, letter, low + place * step))
        total += weight * Fraction(height)
    return total * step / 3


def encloses_nothing(height: Callable[[Fraction], Decimal]) -> None:
    """Raises ChecksDisagree where a height changes its sign twice: values of it at numbers from −75 to 75."""
    signs: list[bool] = []
    for place in range(-300, 301):
        try:
            size = float(height(Fraction(place, 4) + Fraction(1, 997)))
        except NoValue:
            continue
        if size:
            signs.append(size > 0)
    require(sum(one != other for one, other in pairwise(signs)) < 2, "whether a region is enclosed")


def _area(task: Integral, function: Function, form: PowerSum, working: Working, reading: Reading) -> Outcome:
    if not form.is_polynomial:
        raise NotSurd("an area under a curve that is no polynomial")
    letter = function.letter
    cuts = zeros(form)
    if task.low is None or task.high is None:
        if len(cuts) < 2:
            encloses_nothing(lambda at: numeric(formula_of(function), letter, at))
            crossings = " or ".join(f"{letter} = {text_of(cut)}" for cut in cuts) or "no real solution"
            raise impossible(
                working.used or (write(formula_of(function)),),
                f"{form.text(letter)} = 0: {crossings}",
                "that the curve and the x-axis enclose a region is false",
            )
        working.say(f"{form.text(letter)} = 0: " + " or ".join(f"{letter} = {text_of(cut)}" for cut in cuts))
        ends: tuple[ExactValue, ...] = cuts
    else:
        low, high = (exact(with_givens(bound, reading)[0]) for bound in (task.low, task.high))
        inside = [cut for cut in cuts if low < decimal_of(cut) < high]
        if inside:
            working.say(f"{form.text(letter)} = 0: " + " or ".join(f"{letter} = {text_of(cut)}" for cut in inside))
        ends = (low, *inside, high)
    return say_areas(function, form, ends, working)


def say_areas(function: Function, form: PowerSum, ends: tuple[ExactValue, ...], working: Working) -> Outcome:
    """The areas between a curve and the x-axis from each end to the next, added."""
    whole = form.integral()
    total = Surd.rational(0)
    sizes = []
    for one, other in pairwise(ends):
        value = surd_of(integrated(form, whole, function, one, other, working))
        size = -value if value.to_decimal() < 0 else value
        sizes.append(text_of(size if size.fraction is None else size.fraction))
        total = total + size
    result = exact_expression(total if total.fraction is None else total.fraction)
    if len(sizes) > 1 or write(result) != working.steps[-1].value:
        working.conclude(
            f"area = {' + '.join(sizes)}" + (f" = {write(result)}" if len(sizes) > 1 else ""), write(result)
        )
    return working.derived(Answer(write(result), result), confirmed_by=_MEASURED)


def text_of(value: ExactValue) -> str:
    """An exact value as it is written."""
    return write(exact_expression(value))

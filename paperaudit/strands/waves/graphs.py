"""Amplitude, period and range of y = a sin k(x − p) + c; degrees and radians."""

from fractions import Fraction
from math import cos, pi, radians, sin, tan

from paperaudit.maths.exact import NotSurd, rational_value
from paperaudit.maths.near import float_value
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.parts import with_parts
from paperaudit.maths.postfix import decimal_value
from paperaudit.maths.powers import power_sum, put_in
from paperaudit.maths.trig.angles import functions_in
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import (
    Expression,
    Function,
    Letter,
    Measured,
    Negative,
    Number,
    Product,
    Quotient,
    letters_of,
)
from paperaudit.model.reading import Reading
from paperaudit.model.trig_task import InRadians, OfWave
from paperaudit.strands.numbers.working import Working, exact, require, with_givens
from paperaudit.strands.refusals import impossible
from paperaudit.strands.waves.single_ratio import as_letter

SKILL = "trigonometric graphs"
_CLOSE = 1e-9
_AN = {"amplitude": "an amplitude", "range": "a bounded range", "greatest value": "a greatest value",
       "least value": "a least value"}  # fmt: skip
_RATIOS = {"sin": sin, "cos": cos, "tan": tan}


def of_wave(task: OfWave, reading: Reading) -> Outcome:
    """The amplitude, the period, the range or an extreme value of a sine, cosine or tangent graph."""
    ratio = _ratio(task.formula)
    letters = [name for name in letters_of(task.formula) if name != "π"]
    if len(letters) != 1:
        raise NotSurd("a graph in more than one letter")
    (letter,) = letters
    outer = power_sum(as_letter(task.formula), "t")
    inner = power_sum(_bare(ratio.argument), letter)
    if outer.degree != 1 or inner.degree != 1 or not inner.is_polynomial:
        raise NotSurd("a graph that is not a sin(kx + p) + c")
    a, c, k = outer.share(1), outer.share(0), abs(inner.share(1))
    working = Working(SKILL)
    if task.what == "period":
        full = 180 if ratio.name == "tan" else 360
        period = Fraction(full) / k
        size = Measured(as_decimal(period) or whole_or_fraction(period), "°")
        working.say(f"period = {full}° ÷ {write(whole_or_fraction(k))} = {write(size)}", write(size))
        _confirm_period(task.formula, float(period))
        return working.derived(Answer(write(size), size), confirmed_by="values one period apart are the same")
    if ratio.name == "tan":
        if task.what == "range":
            return _range_of_tangent(task.formula, float(k), working)
        raise impossible((write(task.formula),), f"a tangent takes every value: that it has {_AN[task.what]} is false")
    low, high = c - abs(a), c + abs(a)
    # One period and more, whatever its length is.
    values = [_at(task.formula, place / 3000 * 360 / float(k)) for place in range(-3000, 3001)]
    require(abs(max(values) - float(high)) < 1e-3 and abs(min(values) - float(low)) < 1e-3, "the range of the graph")
    check = "the greatest and the least of values all along the graph"
    match task.what:
        case "amplitude":
            working.say(f"a = {write(whole_or_fraction(a))}")
            working.say(f"amplitude = {write(whole_or_fraction(abs(a)))}", write(whole_or_fraction(abs(a))))
            return working.derived(
                Answer(write(whole_or_fraction(abs(a))), whole_or_fraction(abs(a))), confirmed_by=check
            )
        case "range":
            working.say(f"−1 ≤ {write(ratio)} ≤ 1")
            text = f"{write(whole_or_fraction(low))} ≤ y ≤ {write(whole_or_fraction(high))}"
            working.say(text, text)
            return working.derived(Answer(text, kind="range"), confirmed_by=check)
    value = high if task.what == "greatest value" else low
    working.say(f"−1 ≤ {write(ratio)} ≤ 1")
    working.say(f"{task.what} = {_extreme(abs(a), c, task.what == 'greatest value')}", write(whole_or_fraction(value)))
    return working.derived(Answer(write(whole_or_fraction(value)), whole_or_fraction(value)), confirmed_by=check)


def _extreme(size: Fraction, middle: Fraction, greatest: bool) -> str:
    """How an extreme value is found: 1 + 2 = 3."""
    end = middle + size if greatest else middle - size
    text = write(whole_or_fraction(end))
    if not middle:
        return text
    return f"{write(whole_or_fraction(middle))} {'+' if greatest else '−'} {write(whole_or_fraction(size))} = {text}"


def _range_of_tangent(formula: Expression, k: float, working: Working) -> Outcome:
    """A tangent takes every value: it comes near to each of many numbers, and far beyond them."""
    values = sorted(_at(formula, (place + 0.5) / 20_000 * 180 / k) for place in range(20_000))
    for size in range(-50, 51):
        require(any(abs(value - size) < 1 for value in values), "the range of the graph")
    require(values[0] < -1000 and values[-1] > 1000, "the range of the graph")
    text = "all real numbers"
    working.say("a tangent takes every value", text)
    working.conclude(f"range: {text}", text)
    return working.derived(Answer(text, letter="y", kind="domain"), confirmed_by="values all along the graph")


def _at(formula: Expression, degrees: float) -> float:
    return float_value(formula, degrees, _RATIOS, radians)


def _confirm_period(formula: Expression, period: float) -> None:
    for place in (10.0, 77.0, 201.0):
        require(abs(_at(formula, place) - _at(formula, place + period)) < _CLOSE, "the period")
        for part in (2, 3):
            apart = [abs(_at(formula, x) - _at(formula, x + period / part)) for x in (10.0, 77.0, 201.0)]
            require(max(apart) > _CLOSE, "the period, which is shorter")


def _ratio(expression: Expression) -> Function:
    found = functions_in(expression)
    if len(found) != 1 or found[0].name not in _RATIOS:
        raise NotSurd("a graph of more than one sine, cosine or tangent")
    return found[0]


def _bare(expression: Expression) -> Expression:
    if isinstance(expression, Measured) and expression.unit == "°":
        return expression.amount
    return with_parts(expression, _bare)


def in_radians(task: InRadians, reading: Reading) -> Outcome:
    """Degrees as a multiple of π, or radians as degrees."""
    working = Working("radians")
    if not task.back:
        degrees = exact(with_givens(task.angle, reading)[0])
        share = degrees / 180
        value = _of_pi(share)
        working.say(f"{write(whole_or_fraction(degrees))}° = {write(whole_or_fraction(degrees))} × π/180")
        working.say(f"= {write(value)}", write(value))
        require(abs(radians(float(degrees)) - float(share) * pi) < _CLOSE, "the angle in radians")
        require(abs(radians(float(degrees)) - float(decimal_value(value))) < _CLOSE, "the angle as it is written")
        return working.derived(Answer(write(value), value), confirmed_by="compared in floating point")
    turned = rational_value(put_in(Product((task.angle, Number(Fraction(180)))), "π", Number(Fraction(1))))
    if turned is None or "π" not in letters_of(task.angle):
        raise NotSurd("an angle in radians that is no multiple of π")
    size = Measured(as_decimal(turned) or whole_or_fraction(turned), "°")
    working.say(f"{write(task.angle)} × 180°/π = {write(size)}", write(size))
    doubled = rational_value(put_in(task.angle, "π", Number(Fraction(2))))
    require(doubled is not None and doubled * 90 == turned, "the angle in degrees")
    return working.derived(Answer(write(size), size), confirmed_by="half of it found from 2π")


def _of_pi(share: Fraction) -> Expression:
    above: Expression = Letter("π")
    if abs(share.numerator) != 1:
        above = Product((Number(Fraction(abs(share.numerator))), above))
    value: Expression = above if share.denominator == 1 else Quotient(above, Number(Fraction(share.denominator)))
    return Negative(value) if share < 0 else value if share else Number(Fraction(0))

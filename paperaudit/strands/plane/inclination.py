"""The angle that a straight line makes with the positive x-axis."""

from decimal import Decimal
from fractions import Fraction
from math import atan2, degrees

from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.same_value import number_of
from paperaudit.model.ask import Ask
from paperaudit.model.coordinates_task import Inclination
from paperaudit.model.derivation import Answer, Derivation, Derived
from paperaudit.model.expression import Expression, Function, Measured, Negative, Number, Sum
from paperaudit.model.reading import Reading
from paperaudit.strands.finishing import finished
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.plane.lines import say_gradient_of
from paperaudit.strands.plane.places import all_placed, equation_for, fraction_text
from paperaudit.strands.plane.points import say_gradient

SKILL = "straight-line graphs"
_CLOSE = 1e-9
_HALF_TURN = Number(Fraction(180))
_EXACT = {Fraction(0): 0, Fraction(1): 45, Fraction(-1): 135}
_ROUND = "the direction of a step along the line, worked out in floating point"


def inclination(task: Inclination, reading: Reading, ask: Ask) -> Derived:
    """The inclination of a line in degrees, from 0° up to 180°; obtuse where the gradient is negative."""
    if task.points:
        (a, b), used = all_placed(task.points, reading)
        working = Working(SKILL, used)
        slope = say_gradient(a, b, working)
    else:
        relation, used = equation_for(task.curve, reading)
        working = Working(SKILL, used)
        slope = say_gradient_of(relation, working)
    if slope is None:
        working.conclude("the line is vertical: θ = 90°", "90°")
        return working.derived(Answer("90°", Measured(Number(Fraction(90)), "°")), confirmed_by=_ROUND)
    working.say(f"tan θ = {fraction_text(slope)}")
    value = _angle(slope, working)
    _confirm(value, slope)
    answer, more = finished(Measured(value, "°"), ask, working.steps[-1].statement, "θ")
    steps = (*working.steps, *more)
    plain = Answer(answer.text.removeprefix("θ = "), answer.value)
    return Derived((plain,), (Derivation(steps, _ROUND, working.used),))


def _angle(slope: Fraction, working: Working) -> Expression:
    exact = _EXACT.get(slope)
    if exact is not None:
        working.say(f"θ = {exact}°", f"{exact}°")
        return Number(Fraction(exact))
    acute = Function("tan⁻¹", whole_or_fraction(abs(slope)))
    said = fraction_text(abs(slope))
    inverse = f"tan⁻¹({said})"
    if slope > 0:
        working.say(f"θ = {inverse}")
        return acute
    working.say(f"θ = 180° − {inverse}, since the gradient is negative")
    return Sum((_HALF_TURN, Negative(acute)))


def _confirm(value: Expression, slope: Fraction) -> None:
    number = number_of(value)
    require(
        isinstance(number, Fraction | Decimal) and abs(float(number) - degrees(atan2(float(slope), 1)) % 180) < _CLOSE,
        "the angle of inclination",
    )

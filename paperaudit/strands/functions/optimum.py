"""The greatest or least value of a formula, told in mathematics: V = x(10 − 2x)², x for which V is greatest."""

from fractions import Fraction

from paperaudit.maths.exact import ExactValue, NotSurd, exact_expression, exact_value
from paperaudit.maths.plane_curves import decimal_of, zeros
from paperaudit.maths.powers import PowerSum, power_sum, put_in
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import Expression
from paperaudit.model.graph_task import Optimum
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.root_lines import say_to_roots
from paperaudit.strands.finishing import answer_of
from paperaudit.strands.functions.derivatives import say_derivatives
from paperaudit.strands.functions.formulas import at, defined, formula_of, label, numeric
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.refusals import impossible

SKILL = "differentiation"
_STEP = Fraction(1, 10**3)


def optimum(task: Optimum, reading: Reading) -> Outcome:
    """Where a formula has its turning value of the kind asked for, or that value itself."""
    function, used = defined(task.function, reading)
    working = Working(SKILL, used)
    x, formula = function.letter, formula_of(function)
    slope = power_sum(say_derivatives(function, 1, working), x)
    cleared = _cleared(slope)
    found = zeros(cleared)
    working.say(f"{slope.text(x)} = 0")
    kind = "greatest" if task.greatest else "least"
    turning = [value for value in found if _turns(slope, value, task.greatest)]
    name = label(function)
    if not turning:
        said = " or ".join(f"{x} = {write(exact_expression(value))}" for value in found) or "no real solution"
        raise impossible(
            used or (f"{name} = {write(formula)}",),
            f"{slope.text(x)} = 0: {said}",
            f"that {name} has a {kind} value there is false",
        )
    if len(turning) > 1:
        raise NotSurd(f"a formula with several turning values of that kind: {len(turning)}")
    (place,) = turning
    say_to_roots(cleared.expression(x), x, working.say)
    working.say(" or ".join(f"{x} = {write(exact_expression(value))}" for value in found))
    bend = slope.derivative()
    value_there = exact_expression(bend.at(exact_expression(place), x))
    sign = "< 0" if task.greatest else "> 0"
    working.say(
        f"{label(function, 2)} = {bend.text(x)}; {x} = {write(exact_expression(place))}: {write(value_there)} {sign}, "
        f"so {name} is {kind}"
    )
    _confirm(task, formula, x, place)
    check = "values on both sides of it compared"
    if task.at:
        text = f"{x} = {write(exact_expression(place))}"
        if len(found) > 1:
            working.conclude(text, text)
        return working.derived(Answer(text, exact_expression(place), x), confirmed_by=check)
    put = at(function, exact_expression(place))
    height = exact_expression(exact_value(put_in(formula, x, exact_expression(place))))
    working.say(f"{name} = {write(put)} = {write(height)}", write(height))
    return working.derived(answer_of(height), confirmed_by=check)


def _cleared(slope: PowerSum) -> PowerSum:
    """The slope times a power of the letter, so that no negative exponent stands in it: 2x − 16/x²."""
    lowest = min(slope.terms, default=Fraction(0))
    if any(exponent.denominator != 1 for exponent in slope.terms):
        raise NotSurd("a formula with roots of the letter")
    return PowerSum({exponent - min(lowest, Fraction(0)): share for exponent, share in slope.terms.items()})


def _turns(slope: PowerSum, place: ExactValue, greatest: bool) -> bool:
    bend = decimal_of(slope.derivative().at(exact_expression(place), "x"))
    return bend < 0 if greatest else bend > 0


def _confirm(task: Optimum, formula: Expression, letter: str, place: ExactValue) -> None:
    """Values close by on both sides, of the formula as it is given."""
    middle = decimal_of(place)
    left, here, right = (Fraction(numeric(formula, letter, middle + step)) for step in (-_STEP, Fraction(0), _STEP))
    require(left < here > right if task.greatest else left > here < right, "the greatest or least value")

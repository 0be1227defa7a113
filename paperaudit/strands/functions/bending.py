"""Where the graph of a polynomial bends up or down, and its points of inflection."""

from collections.abc import Callable
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.algebra.intervals import text_of
from paperaudit.maths.exact import NotSurd, exact_expression, exact_value
from paperaudit.maths.plane_curves import zeros
from paperaudit.maths.powers import PowerSum, power_sum, put_in
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.graph_task import Bending
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.root_lines import say_to_roots
from paperaudit.strands.algebra.signs import by_signs
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.functions.formulas import defined, formula_of, label
from paperaudit.strands.numbers.working import require
from paperaudit.strands.plane.places import pair_text

_STEP = Fraction(1, 10**4)
_CHECKED = "heights of three close points compared"


def bending(task: Bending, reading: Reading) -> Outcome:
    """The intervals of one bend, or the points where the bend changes."""
    function, used = defined(task.function, reading)
    formula, x = formula_of(function), function.letter
    form = power_sum(formula, x)
    if not form.is_polynomial or not form.degree or form.degree < 2:
        raise NotSurd("the bend of a graph that is no polynomial's")
    working = Working("differentiation", used)
    slope = form.derivative()
    second = slope.derivative()
    working.say(f"{label(function, 1)} = {slope.text(x)}", slope.text(x))
    working.say(f"{label(function, 2)} = {second.text(x)}", second.text(x))
    ends = zeros(second) if second.degree else ()
    if task.what in ("up", "down"):
        sign = ">" if task.what == "up" else "<"
        working.say(f"{second.text(x)} {sign} 0")
        places = tuple(map(exact_expression, ends))
        if len(places) > 1:
            say_to_roots(second.expression(x), x, working.say)
        found = by_signs(places, (), sign, x, second.value, working)
        text = text_of(found, x) if found else "nowhere"
        _confirm(form, lambda at: any(one.holds(at) for one in found), task.what == "up")
        working.conclude(f"concave {task.what} for {text}" if found else f"nowhere concave {task.what}", text)
        return working.derived(Answer(text, letter=x, kind="open set"), confirmed_by=_CHECKED)
    working.say(f"{second.text(x)} = 0")
    say_to_roots(second.expression(x), x, working.say)
    bent = [place for place in ends if isinstance(place, Fraction) and _changes(form, place)]
    if len(bent) != len(ends) or not bent:
        raise NoValue("a point of inflection with irrational coordinates, or none")
    working.say(" or ".join(f"{x} = {write(exact_expression(place))}" for place in bent))
    if task.what == "x":
        answers = [Answer(f"{x} = {write(exact_expression(place))}", exact_expression(place), x) for place in bent]
        return working.derived(*answers, confirmed_by=_CHECKED)
    pairs = []
    for place in bent:
        at_place = exact_expression(place)
        height = exact_expression(exact_value(put_in(formula, x, at_place)))
        working.say(f"{x} = {write(at_place)}: y = {write(height)}", write(height))
        pairs.append(pair_text(at_place, height))
    text = " and ".join(pairs)
    working.conclude(f"point of inflection: {text}" if len(pairs) == 1 else f"points of inflection: {text}", text)
    return working.derived(Answer(text, kind="points" if len(pairs) > 1 else "point"), confirmed_by=_CHECKED)


def _bend(form: PowerSum, at: Fraction) -> Fraction:
    """Twice the height of the chord over the curve at a number: positive where the graph bends up."""
    return form.value(at + _STEP) - 2 * form.value(at) + form.value(at - _STEP)


def _changes(form: PowerSum, place: Fraction) -> bool:
    side = Fraction(1, 100)
    return _bend(form, place - side) * _bend(form, place + side) < 0


def _confirm(form: PowerSum, inside: Callable[[Fraction], bool], up: bool) -> None:
    for place in range(-200, 201):
        at = Fraction(place, 8) + Fraction(1, 997)
        bend = _bend(form, at)
        require(not bend or inside(at) == ((bend > 0) == up), "where the graph bends")

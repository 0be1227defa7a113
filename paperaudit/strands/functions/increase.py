"""Where polynomials increase or decrease."""

from dataclasses import replace
from fractions import Fraction

from paperaudit.maths.algebra.intervals import Intervals, joined, text_of
from paperaudit.maths.exact import NotSurd, exact_expression
from paperaudit.maths.plane_curves import zeros
from paperaudit.maths.powers import PowerSum, power_sum
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.graph_task import Rising
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.root_lines import say_to_roots
from paperaudit.strands.algebra.signs import by_signs
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.functions.formulas import defined, formula_of, label
from paperaudit.strands.numbers.working import require


def rising(task: Rising, reading: Reading) -> Outcome:
    """The intervals in which a polynomial increases or decreases."""
    function, used = defined(task.function, reading)
    formula, x = formula_of(function), function.letter
    form = power_sum(formula, x)
    if not form.is_polynomial or not form.degree:
        raise NotSurd("where a function increases that is no polynomial")
    working = Working("differentiation", used)
    slope = form.derivative()
    working.say(f"{label(function, 1)} = {slope.text(x)}", slope.text(x))
    word, sign = ("decreasing", "<") if task.falling else ("increasing", ">")
    working.say(f"{slope.text(x)} {sign} 0" if task.by_slope else f"{word} where {slope.text(x)} {sign} 0")
    ends = tuple(map(exact_expression, zeros(slope)))
    if ends:
        working.say(f"{slope.text(x)} = 0")
        say_to_roots(slope.expression(x), x, working.say)
    found = by_signs(ends, (), sign, x, slope.value, working)
    if not task.by_slope:
        found = _through_level_points(found)
    text = text_of(found, x) if found else "nowhere"
    _confirm_rising(form, found, task.falling)
    said = f"{word} for {text}" if found else f"nowhere {word}"
    working.conclude(text if task.by_slope else said, text)
    return working.derived(Answer(text, letter=x, kind="open set"), confirmed_by="values at pairs of close numbers")


def _through_level_points(found: Intervals) -> Intervals:
    """Intervals that touch, joined: x³ increases for every number, though its slope is 0 at 0."""
    closed = joined([replace(one, has_low=one.low is not None, has_high=one.high is not None) for one in found])
    return tuple(replace(one, has_low=False, has_high=False) for one in closed)


def _confirm_rising(form: PowerSum, found: Intervals, falling: bool) -> None:
    step = Fraction(1, 10**6)
    for place in range(-200, 201):
        at = Fraction(place, 8) + Fraction(1, 997)
        change = form.value(at + step) - form.value(at)
        inside = any(interval.holds(at) for interval in found)
        require(not change or inside == ((change < 0) == falling), "where the function increases or decreases")

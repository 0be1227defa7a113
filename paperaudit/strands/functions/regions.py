"""The area that two curves enclose, by the integral of their difference."""

from fractions import Fraction

from paperaudit.maths.plane_curves import zeros
from paperaudit.maths.powers import power_sum
from paperaudit.maths.write import write
from paperaudit.model.derivation import Outcome
from paperaudit.model.function_task import Function
from paperaudit.model.graph_task import RegionBetween
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.root_lines import say_to_roots
from paperaudit.strands.functions.formulas import formula_of, numeric
from paperaudit.strands.functions.integrals import SKILL, encloses_nothing, say_areas, text_of
from paperaudit.strands.numbers.working import Working
from paperaudit.strands.refusals import impossible


def between(task: RegionBetween, reading: Reading) -> Outcome:
    """Where the curves meet, and the areas between them from one crossing to the next."""
    del reading
    one, other = formula_of(task.first), formula_of(task.second)
    x = task.first.letter
    working = Working(SKILL)
    form = whole = power_sum(one, x) - power_sum(other, x)
    working.say(f"{write(one)} = {write(other)}")
    cuts = zeros(form)
    found = " or ".join(f"{x} = {text_of(cut)}" for cut in cuts) or "no real solution"
    if len(cuts) < 2:
        encloses_nothing(lambda place: numeric(one, x, place) - numeric(other, x, place))
        names = tuple(f"y = {write(side)}" for side in (one, other))
        raise impossible(names, f"{form.text(x)} = 0: {found}", "that the curves enclose a region is false")
    if form.terms[form.degree] < 0 and len(cuts) == 2:
        working.say(f"{form.scaled(Fraction(-1)).text(x)} = 0")
    else:
        form = form if len(cuts) > 2 else form.scaled(Fraction(-1))
        working.say(f"{whole.text(x)} = 0")
    say_to_roots(whole.expression(x), x, working.say)
    working.say(found)
    working.say(f"the difference of the heights: {form.text(x)}", form.text(x))
    return say_areas(Function("", x, form.expression(x)), form, cuts, working)

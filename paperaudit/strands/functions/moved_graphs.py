"""Graphs moved, reflected and stretched: their equations, where a point goes, what maps one onto another."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import NotSurd, exact_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.powers import NotPowers, PowerSum, power_sum, put_in
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import Expression, Letter, Negative, Product, Sum
from paperaudit.model.graph_task import GraphPoint, ImageOnGraph, ShiftedGraph
from paperaudit.model.reading import Reading
from paperaudit.strands.functions.formulas import defined, formula_of, numeric
from paperaudit.strands.numbers.working import Working, exact, require
from paperaudit.strands.plane.places import fraction_text, in_brackets, pair_text

SKILL = "graphs of functions"
_TRIED = (Fraction(1), Fraction(5, 2), Fraction(-3), Fraction(4))


def shifted(task: ShiftedGraph, reading: Reading) -> Outcome:
    """The equation of a graph after one step or several."""
    function, used = defined(task.function, reading)
    working = Working(SKILL, used)
    formula, x = formula_of(function), function.letter
    for step, size in task.steps:
        formula = _stepped(formula, x, step, size)
        working.say(f"{_in_words(step, size)}: y = {write(formula)}", write(formula))
    try:
        worked = power_sum(formula, x).expression(x)
    except NotPowers:
        worked = formula
    if write(worked) != write(formula) and len(write(worked)) < len(write(formula)) + 8:
        working.say(f"= {write(worked)}", write(worked))
    _confirm(task, formula_of(function), worked, x)
    text = f"y = {write(worked)}"
    return working.derived(Answer(text, worked, kind="function"), confirmed_by="points of the graph moved one by one")


def _stepped(formula: Expression, x: str, step: str, size: Expression | None) -> Expression:
    """The formula after a step: f(x − 3), f(x) + 2, −f(x), f(−x), 2f(x)."""
    terms = formula.terms if isinstance(formula, Sum) else (formula,)
    match step:
        case "right" | "left":
            assert size is not None
            return put_in(formula, x, Sum((Letter(x), Negative(size) if step == "right" else size)))
        case "up" | "down":
            assert size is not None
            return Sum((*terms, size if step == "up" else Negative(size)))
        case "stretched":
            assert size is not None
            return Product((size, formula))
        case "reflected x":
            return Negative(formula)
    return put_in(formula, x, Negative(Letter(x)))


def _in_words(step: str, size: Expression | None) -> str:
    if step.startswith("reflected"):
        return f"reflection in the {step[-1]}-axis"
    said = write(size) if size is not None else ""
    return f"stretch by {said} parallel to the y-axis" if step == "stretched" else f"{said} {step}"


def _confirm(task: ShiftedGraph, before: Expression, after: Expression, x: str) -> None:
    """Points of the first graph, moved step by step, are on the second."""
    compared = 0
    for start in _TRIED:
        try:
            place, height = start, Fraction(numeric(before, x, start))
            for step, size in task.steps:
                amount = exact(size) if size is not None else Fraction(0)
                place += {"right": amount, "left": -amount}.get(step, 0)
                height += {"up": amount, "down": -amount}.get(step, 0)
                height *= amount if step == "stretched" else -1 if step == "reflected x" else 1
                place *= -1 if step == "reflected y" else 1
            there = Fraction(numeric(after, x, place))
        except NoValue:
            continue
        require(
            abs(there - height) < Fraction(1, 10**9) * max(Fraction(1), abs(height)), "the equation of the moved graph"
        )
        compared += 1
    require(compared > 1, "the moved graph, which could be compared nowhere")


def image_on(task: ImageOnGraph, reading: Reading) -> Outcome:
    """Where a point goes, or the transformations in words, one after the other."""
    inner, outer = _linear(task.inner, "x"), _linear(task.outer, "t")
    (k, p), (a, q) = inner, outer
    working = Working(SKILL)
    if task.describe:
        return _described(k, p, a, q, working)
    x, y, used = _start(task, reading)
    working.used = used
    new_x, new_y = (x - p) / k, a * y + q
    inside = _equation(k, p)
    solved = f"x = {fraction_text(new_x)}"
    working.say(solved if inside == "x" else f"{inside} = {fraction_text(x)}, so {solved}", fraction_text(new_x))
    height, worked = _height(a, q, y), fraction_text(new_y)
    working.say(f"y = {worked}" if height in (worked, f"({worked})") else f"y = {height} = {worked}", worked)
    text = pair_text(new_x, new_y)
    working.conclude(text, text)
    back = exact_value(put_in(task.inner, "x", whole_or_fraction(new_x)))
    require(back == x and exact_value(put_in(task.outer, "t", whole_or_fraction(y))) == new_y, "the image of the point")
    return working.derived(Answer(text, kind="point"), confirmed_by="put into the equation of the new graph")


def _linear(expression: Expression, letter: str) -> tuple[Fraction, Fraction]:
    form = power_sum(expression, letter)
    if form.degree != 1 or not form.is_polynomial:
        raise NotSurd("a change of a graph that is not of the first degree")
    return form.share(1), form.share(0)


def _equation(k: Fraction, p: Fraction) -> str:
    return PowerSum({Fraction(1): k, Fraction(0): p}).text("x")


def _height(a: Fraction, q: Fraction, y: Fraction) -> str:
    first = in_brackets(y) if a == 1 else f"{fraction_text(a)} × {in_brackets(y)}"
    return first if not q else f"{first} {'+' if q > 0 else '−'} {fraction_text(abs(q))}"


def _start(task: ImageOnGraph, reading: Reading) -> tuple[Fraction, Fraction, tuple[str, ...]]:
    if task.point is not None:
        return exact(task.point[0]), exact(task.point[1]), ()
    found = [(fact, given.text) for given in reading.givens for fact in given.facts
             if isinstance(fact, GraphPoint) and fact.name == task.name]  # fmt: skip
    if len(found) != 1:
        raise NoValue(f"no point of the graph of {task.name} is given, or more than one")
    fact, text = found[0]
    return exact(fact.x), exact(fact.y), (text,)


def _described(k: Fraction, p: Fraction, a: Fraction, q: Fraction, working: Working) -> Outcome:
    """The steps in an order in which they lead from y = f(x) to y = a f(kx + p) + q."""
    said: list[str] = []
    if abs(k) != 1:
        said.append(f"stretch parallel to the x-axis by the scale factor {fraction_text(1 / abs(k))}")
    if k < 0:
        said.append("reflection in the y-axis")
    if abs(a) != 1:
        said.append(f"stretch parallel to the y-axis by the scale factor {fraction_text(abs(a))}")
    if a < 0:
        said.append("reflection in the x-axis")
    if p or q:
        said.append(f"translation by {pair_text(-p / k, q)}")
    if not said:
        raise NoValue("the two graphs are the same")
    moved = {"x": (Fraction(3) - p) / k, "y": a * 5 + q}
    across, up = Fraction(3) / k, Fraction(5) * a
    require((across - p / k, up + q) == (moved["x"], moved["y"]), "the transformations")
    for one in said:
        working.say(one, one)
    text = ", then ".join(said)
    return working.derived(Answer(text, kind="transformation"), confirmed_by="a point taken through all steps")

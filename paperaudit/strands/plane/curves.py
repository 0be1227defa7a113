"""Parabolas, hyperbolas and circles by their equations; where two curves meet."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import ExactValue, NotSurd, exact_expression, exact_value, rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.plane_curves import is_line, on_curve, plane_terms, solved_for_y, zeros
from paperaudit.maths.powers import PowerSum, put_in
from paperaudit.maths.write import write
from paperaudit.model.coordinates_task import Meeting, OfCurve
from paperaudit.model.derivation import Answer, Case, Derived, NotDetermined
from paperaudit.model.expression import Expression, Relation
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.root_lines import say_to_roots
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.plane.by_solving import intercepts_by_solving, y_intercept_by_value
from paperaudit.strands.plane.lines import gradient_of
from paperaudit.strands.plane.places import equation_for, fraction_text, in_brackets, over, pair_text, placed, read_pair
from paperaudit.strands.refusals import Faulty, impossible

SKILL = "graphs of functions"


def of_curve(task: OfCurve, reading: Reading) -> Derived:
    """What a line or curve has: an intercept, a turning point, an axis of symmetry."""
    relation, used = equation_for(task.curve, reading)
    match task.what:
        case "gradient":
            return gradient_of(relation, used)
        case "y-intercept" if _is_polynomial(relation) and solved_for_y(plane_terms(relation)) is None:
            return intercepts_by_solving(relation, used, reading, "y")
        case "y-intercept" if _is_polynomial(relation):
            return _y_intercept(relation, used)
        case "y-intercept":
            return y_intercept_by_value(relation, used)
        case "x-intercept" if _is_polynomial(relation):
            return _x_intercepts(relation, used)
        case "x-intercept":
            return intercepts_by_solving(relation, used, reading)
        case "intercepts":
            return _both_intercepts(relation, used)
        case "on it":
            return _on_it(task, relation, used, reading)
    return _of_parabola(task, relation, used)


def _is_polynomial(relation: Relation) -> bool:
    try:
        return bool(plane_terms(relation))
    except NotSurd:
        return False


def _y_intercept(relation: Relation, used: tuple[str, ...]) -> Derived:
    working = Working(SKILL, used)
    y = _say_y_intercept(relation, working)
    text = pair_text(Fraction(0), y)
    _on_both(relation, text)
    return working.derived(Answer(text, whole_or_fraction(y), "y", kind="intercept"),
                           confirmed_by="put into the equation as it stands")  # fmt: skip


def _on_both(relation: Relation, text: str) -> None:
    """The point as it is printed is on the curve and on an axis."""
    x, y = read_pair(text)
    require(not x * y and on_curve(relation, whole_or_fraction(x), whole_or_fraction(y)), text)


def _say_y_intercept(relation: Relation, working: Working) -> Fraction:
    form = solved_for_y(plane_terms(relation))
    if form is None:
        raise NoValue(f"{write(relation)} is not solved for y")
    y = form.share(0)
    working.say(f"x = 0: y = {fraction_text(y)}", fraction_text(y))
    require(on_curve(relation, whole_or_fraction(0), whole_or_fraction(y)), "the y-intercept")
    return y


def _x_intercepts(relation: Relation, used: tuple[str, ...]) -> Derived:
    working = Working(SKILL, used)
    found = _say_x_intercepts(relation, working)
    for x in found:
        if rational_value(x) is not None:
            _on_both(relation, pair_text(x, Fraction(0)))
    if not found:
        return working.derived(Answer("none", kind="points"), confirmed_by="the equation has no real solution at y = 0")
    if len(found) == 1:
        text = pair_text(found[0], Fraction(0))
        return working.derived(Answer(text, found[0], "x", kind="intercept"), confirmed_by=_PUT_BACK)
    text = " and ".join(pair_text(x, Fraction(0)) for x in found)
    return working.derived(Answer(text, kind="points"), confirmed_by=_PUT_BACK)


_PUT_BACK = "put into the equation as it stands"


def _say_x_intercepts(relation: Relation, working: Working) -> tuple[Expression, ...]:
    at_nought = PowerSum({Fraction(i): share for (i, j), share in plane_terms(relation).items() if not j})
    if not at_nought.degree:
        raise NoValue(f"{write(relation)} has no x at y = 0")
    found = tuple(map(exact_expression, zeros(at_nought)))
    positive = at_nought if at_nought.terms[at_nought.degree] > 0 else at_nought.scaled(Fraction(-1))
    working.say(f"y = 0: {positive.text('x')} = 0")
    if found:
        say_to_roots(positive.expression("x"), "x", working.say)
    working.say(_x_is(found), _x_is(found))
    for x in found:
        require(on_curve(relation, x, whole_or_fraction(0)), "an x-intercept")
    return found


def _x_is(found: tuple[Expression, ...]) -> str:
    return " or ".join(f"x = {write(x)}" for x in found) or "no real solution"


def _both_intercepts(relation: Relation, used: tuple[str, ...]) -> Derived:
    working = Working(SKILL, used)
    xs, y = _say_x_intercepts(relation, working), _say_y_intercept(relation, working)
    pairs = [pair_text(x, Fraction(0)) for x in xs]
    on_y = pair_text(Fraction(0), y)
    _on_both(relation, on_y)
    text = " and ".join(dict.fromkeys((*pairs, on_y)))
    return working.derived(Answer(text, kind="points"), confirmed_by=_PUT_BACK)


def _on_it(task: OfCurve, relation: Relation, used: tuple[str, ...], reading: Reading) -> Derived:
    assert task.at is not None
    place = placed(task.at, reading)
    working = Working("coordinates", tuple(dict.fromkeys((*used, *place.texts))))
    sides = [
        put_in(put_in(side, "x", whole_or_fraction(place.x)), "y", whole_or_fraction(place.y))
        for side in (relation.left, relation.right)
    ]
    values = [exact_value(side) for side in sides]
    left, right = (write(exact_expression(value)) for value in values)
    yes = values[0] == values[1]
    working.say(f"x = {fraction_text(place.x)}, y = {fraction_text(place.y)}: left side {left}, right side {right}")
    said = working.conclude(f"the point is {'' if yes else 'not '}on it", "yes" if yes else "no")
    terms = plane_terms(relation)
    total = sum((share * place.x**i * place.y**j for (i, j), share in terms.items()), Fraction(0))
    require(yes == (total == 0), "whether the point is on the curve")
    text = "yes" if yes else f"false: {said}" if task.claimed else "no"
    return working.derived(Answer(text), confirmed_by="worked out again term by term")


def _of_parabola(task: OfCurve, relation: Relation, used: tuple[str, ...]) -> Derived:
    form = solved_for_y(plane_terms(relation))
    if form is None or form.degree != 2:
        raise NoValue(f"{write(relation)} is not y = ax² + bx + c")
    a, b, c = (form.share(exponent) for exponent in (2, 1, 0))
    x = -b / (2 * a)
    y = form.value(x)
    working = Working(SKILL, used)
    working.say(f"x = −b/(2a) = {over(-b, 2 * a)} = {fraction_text(x)}", fraction_text(x))
    for step in (Fraction(1), Fraction(5, 2)):
        require(form.value(x + step) == form.value(x - step) == y + a * step * step, "the axis of symmetry")
    check = "two points as far on either side of it are as high"
    if task.what == "axis of symmetry":
        text = f"x = {fraction_text(x)}"
        working.conclude(f"axis of symmetry: {text}", text)
        return working.derived(Answer(text, kind="equation"), confirmed_by=check)
    terms = [f"{fraction_text(a)} × {in_brackets(x)}²", f"{fraction_text(b)} × {in_brackets(x)}", fraction_text(c)]
    working.say(f"y = {' + '.join(terms).replace('+ −', '− ')} = {fraction_text(y)}", fraction_text(y))
    if task.what == "turning point":
        text = pair_text(x, y)
        working.conclude(f"turning point: {text}", text)
        return working.derived(Answer(text, kind="point"), confirmed_by=check)
    if task.what not in ("least value", "greatest value"):
        raise NoValue(f"the {task.what} of a parabola")
    if (a > 0) != (task.what == "least value"):
        way = "upwards" if a > 0 else "downwards"
        raise impossible(
            used or (write(relation),),
            f"a = {fraction_text(a)}, so the parabola opens {way}",
            f"it has a {'least' if a > 0 else 'greatest'} value only: that there is a {task.what} is false",
        )
    working.conclude(f"{task.what}: {fraction_text(y)}", fraction_text(y))
    return working.derived(Answer(fraction_text(y), whole_or_fraction(y), "y"), confirmed_by=check)


def meeting(task: Meeting, reading: Reading) -> Derived:
    """The points that two lines, or a line and a curve, have in common."""
    (one, _), (other, _) = (equation_for(curve, reading) for curve in (task.first, task.second))
    first, second = plane_terms(one), plane_terms(other)
    if not (is_line(first) or is_line(second)) and (solved_for_y(first) is None or solved_for_y(second) is None):
        raise NotSurd("two curves neither of which is a line")
    working = Working("simultaneous equations")
    points = _points_of(first, second, working)
    for x, y in points:
        require(on_curve(one, x, y) and on_curve(other, x, y), "a point of intersection")
    if not points:
        return working.derived(Answer("none", kind="points"), confirmed_by="no real solution of the equation in x")
    text = " and ".join(pair_text(x, y) for x, y in points)
    working.conclude(f"they meet at {text}", text)
    return working.derived(Answer(text, kind="points" if len(points) > 1 else "point"), confirmed_by=_PUT_BACK)


Terms = dict[tuple[int, int], Fraction]


def _one_and_the_same(line: Terms) -> Faulty:
    """Two equations of one line: every point of it is one of both, two of them are shown."""
    form = solved_for_y(line)
    if form is None:
        return impossible(("the two lines",), "both are vertical and the same: that they meet in a point is false")
    found = [pair_text(Fraction(x), form.value(x)) for x in (0, 1)]
    cases = tuple(Case(f"{pair} is on both", (Answer(pair, kind="point"),)) for pair in found)
    return Faulty(NotDetermined(cases, "the equation of another line"))


def _points_of(first: Terms, second: Terms, working: Working) -> list[tuple[Expression, Expression]]:
    line, curve = (first, second) if is_line(first) else (second, first)
    y = solved_for_y(line)
    if y is None:
        return _on_vertical(line, curve, working)
    explicit = solved_for_y(curve)
    if explicit is not None:
        working.say(f"{explicit.text('x')} = {y.text('x')}")
        whole = explicit - y
    else:
        working.say(f"y = {y.text('x')}")
        whole = PowerSum({})
        for (i, j), share in curve.items():
            whole = whole + PowerSum({Fraction(i): share}) * y.power(j)
    if not whole.degree:
        if not whole.terms:
            raise _one_and_the_same(first)
        working.say(f"{fraction_text(whole.share(0))} = 0 is false: they do not meet")
        return []
    if whole.terms[whole.degree] < 0:
        whole = whole.scaled(Fraction(-1))
    working.say(f"{whole.text('x')} = 0")
    found = tuple(map(exact_expression, zeros(whole)))
    if found:
        say_to_roots(whole.expression("x"), "x", working.say)
    working.say(_x_is(found), _x_is(found))
    points = [(x, exact_expression(y.at(x))) for x in found]
    for x, height in points:
        working.say(f"x = {write(x)}: y = {write(height)}", write(height))
    return points


def _on_vertical(line: Terms, curve: Terms, working: Working) -> list[tuple[Expression, Expression]]:
    x = -line.get((0, 0), Fraction(0)) / line[1, 0]
    whole = PowerSum({})
    for (i, j), share in curve.items():
        whole = whole + PowerSum({Fraction(j): share * x**i})
    if not whole.degree:
        raise NoValue("two lines that are both vertical")
    working.say(f"x = {fraction_text(x)}: {whole.text('y')} = 0")
    heights: tuple[ExactValue, ...] = zeros(whole)
    return [(whole_or_fraction(x), exact_expression(height)) for height in heights]

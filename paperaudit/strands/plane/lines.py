"""Equations of straight lines: through two points, with a gradient, beside another line, halving a segment."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.parse import read_relation
from paperaudit.maths.plane_curves import is_line, on_curve, plane_terms, solved_for_y
from paperaudit.maths.powers import PowerSum
from paperaudit.maths.write import write
from paperaudit.model.coordinates_task import Direction, LineThrough, OfPoints
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Relation
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import Working, exact, require, with_givens
from paperaudit.strands.plane.places import Place, all_placed, equation_for, fraction_text, in_brackets, placed
from paperaudit.strands.plane.points import say_gradient, say_midpoint

SKILL = "straight-line graphs"
_ON_IT = "the points put into the equation"


def line_text(slope: Fraction, intercept: Fraction) -> str:
    """The equation of a line that is not vertical: y = 2x − 1."""
    return f"y = {PowerSum({Fraction(1): slope, Fraction(0): intercept}).text('x')}"


def say_line(place: Place, slope: Fraction | None, working: Working) -> str:
    """The lines from a point and a gradient (None: vertical) to the equation of the line, which is given back."""
    if slope is None:
        return working.say(f"x = {fraction_text(place.x)}", f"x = {fraction_text(place.x)}")
    intercept = place.y - slope * place.x
    if slope:
        working.say(f"y − {in_brackets(place.y)} = {_times(slope)}(x − {in_brackets(place.x)})")
        if place.y and place.x:
            right = PowerSum({Fraction(1): slope, Fraction(0): -slope * place.x}).text("x")
            working.say(f"y {'−' if place.y > 0 else '+'} {fraction_text(abs(place.y))} = {right}")
    text = line_text(slope, intercept)
    working.say(text, text)
    require(PowerSum({Fraction(1): slope, Fraction(0): intercept}).value(place.x) == place.y, text)
    written = read_relation(text)
    for step in (0, 1):
        across, up = whole_or_fraction(place.x + step), whole_or_fraction(place.y + step * slope)
        require(on_curve(written, across, up), text)
    return text


def _times(slope: Fraction) -> str:
    """A gradient before a bracket: 2(, −(, (3/4)(."""
    if abs(slope) == 1:
        return "−" if slope < 0 else ""
    return fraction_text(slope) if slope.denominator == 1 else f"({fraction_text(slope)})"


def through_two(task: OfPoints, reading: Reading) -> Derived:
    """The equation of the line through two points."""
    (a, b), used = all_placed(task.points, reading)
    working = Working(SKILL, used)
    slope = say_gradient(a, b, working)
    text = say_line(a, slope, working)
    require(slope is None or a.y - slope * a.x == b.y - slope * b.x, text)
    return working.derived(Answer(text, kind="equation"), confirmed_by=_ON_IT)


def through_one(task: LineThrough, reading: Reading) -> Derived:
    """The equation of the line through a point with a gradient, or parallel or at right angles to another."""
    place = placed(task.point, reading)
    used = list(place.texts)
    if task.gradient is not None:
        value, texts = with_givens(task.gradient, reading)
        working = Working(SKILL, tuple(dict.fromkeys((*used, *texts))))
        text = say_line(place, exact(value), working)
        return working.derived(Answer(text, kind="equation"), confirmed_by=_ON_IT)
    if task.pair:
        (a, b), texts = all_placed(task.pair, reading)
        working = Working(SKILL, tuple(dict.fromkeys((*used, *texts))))
        beside = say_gradient(a, b, working)
    else:
        relation, texts = equation_for(task.beside, reading)
        working = Working(SKILL, tuple(dict.fromkeys((*used, *texts))))
        beside = say_gradient_of(relation, working)
    slope = say_turned(beside, working) if task.at_right_angles else beside
    text = say_line(place, slope, working)
    if task.at_right_angles:
        require((beside or 0) * (slope or 0) in (-1, 0), text)
    return working.derived(Answer(text, kind="equation"), confirmed_by=f"{_ON_IT}; the gradients compared")


def say_turned(slope: Fraction | None, working: Working) -> Fraction | None:
    """The gradient at right angles to one, with its line; None stands for a vertical line."""
    if slope is None:
        working.say("a line at right angles to a vertical one has the gradient 0", "0")
        return Fraction(0)
    if not slope:
        working.say("a line at right angles to a horizontal one is vertical")
        return None
    turned = -1 / slope
    working.say(
        f"gradient at right angles = −1 ÷ {in_brackets(slope)} = {fraction_text(turned)}", fraction_text(turned)
    )
    return turned


def say_gradient_of(relation: Relation, working: Working, name: str = "m") -> Fraction | None:
    """The gradient of the line with this equation, with its lines; None where it is vertical."""
    terms = plane_terms(relation)
    if not is_line(terms):
        raise NoValue(f"{write(relation)} is not the equation of a straight line")
    form = solved_for_y(terms)
    if form is None:
        working.say(f"{write(relation)} is a vertical line")
        return None
    text = f"y = {form.text('x')}"
    if text != write(relation):
        working.say(f"{write(relation)}, so {text}", text)
    slope = form.share(1)
    require(form.value(1) - form.value(0) == slope, f"the gradient of {text}")
    working.say(f"{name} = {fraction_text(slope)}", fraction_text(slope))
    return slope


def gradient_of(relation: Relation, used: tuple[str, ...]) -> Derived:
    """The gradient of a line by its equation."""
    working = Working(SKILL, used)
    slope = say_gradient_of(relation, working)
    if slope is None:
        working.conclude("its gradient is undefined", "undefined")
        return working.derived(Answer("undefined", kind="undefined"), confirmed_by="no y in its equation")
    return working.derived(
        Answer(fraction_text(slope), whole_or_fraction(slope)), confirmed_by="the rise of the line from x = 0 to x = 1"
    )


def bisector(task: OfPoints, reading: Reading) -> Derived:
    """The line through the middle of a segment, at right angles to it."""
    (a, b), used = all_placed(task.points, reading)
    working = Working(SKILL, used)
    x, y = say_midpoint(a, b, working)
    slope = say_turned(say_gradient(a, b, working), working)
    middle = Place("", x, y)
    text = say_line(middle, slope, working)
    other = Place("", x + (1 if slope is not None else 0), y + (slope if slope is not None else 1))
    require(_square(other, a) == _square(other, b), text)
    return working.derived(Answer(text, kind="equation"), confirmed_by="points on it are as far from both ends")


def _square(one: Place, other: Place) -> Fraction:
    return (one.x - other.x) ** 2 + (one.y - other.y) ** 2


def direction(task: Direction, reading: Reading) -> Derived:
    """Whether two lines are parallel, or at right angles, by their gradients."""
    working = Working(SKILL)
    one, other = (
        say_gradient_of(curve.relation, working, name)
        for curve, name in ((task.first, "m of the first line"), (task.second, "m of the second line"))
    )
    if task.at_right_angles:
        yes = (
            (one is None and other == 0)
            or (other is None and one == 0)
            or (one is not None and other is not None and one * other == -1)
        )
        compared = "the product of the gradients is " + ("−1" if yes else "not −1")
    else:
        yes = one == other
        compared = "the gradients are " + ("equal" if yes else "different")
    word = "perpendicular" if task.at_right_angles else "parallel"
    said = working.conclude(f"{compared}, so the lines are {word if yes else f'not {word}'}", "yes" if yes else "no")
    require(yes == _by_normals(task), "the direction of the lines")
    text = "yes" if yes else f"false: {said}" if task.claimed else "no"
    return working.derived(Answer(text), confirmed_by="compared again by the shares of x and y")


def _by_normals(task: Direction) -> bool:
    first, second = plane_terms(task.first.relation), plane_terms(task.second.relation)
    a, b = first.get((1, 0), Fraction(0)), first.get((0, 1), Fraction(0))
    c, d = second.get((1, 0), Fraction(0)), second.get((0, 1), Fraction(0))
    return a * c + b * d == 0 if task.at_right_angles else a * d == b * c

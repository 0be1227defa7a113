"""What points with coordinates have: a gradient, a mid-point, a distance, one line, an area."""

from decimal import Decimal
from fractions import Fraction
from itertools import pairwise
from math import hypot

from paperaudit.maths.exact import exact_expression
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.same_value import number_of
from paperaudit.maths.surd import Surd
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.coordinates_task import OfPoints
from paperaudit.model.derivation import Answer, Derivation, Derived
from paperaudit.model.expression import Expression, Root
from paperaudit.model.reading import Reading
from paperaudit.strands.finishing import answer_of, finished
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.plane.places import Place, all_placed, fraction_text, in_brackets, over, pair_text, read_pair
from paperaudit.strands.refusals import impossible

SKILL = "coordinates"
_CLOSE = Decimal("1e-20")


def gradient(task: OfPoints, reading: Reading) -> Derived:
    """The gradient of the line through two points, or the words that it has none."""
    (a, b), used = all_placed(task.points, reading)
    working = Working("straight-line graphs", used)
    slope = say_gradient(a, b, working)
    if slope is None:
        working.conclude("the line is vertical, its gradient is undefined", "undefined")
        return working.derived(Answer("undefined", kind="undefined"), confirmed_by="both points have one x-coordinate")
    return working.derived(Answer(fraction_text(slope), whole_or_fraction(slope)), confirmed_by=_STEPPED)


_STEPPED = "from the first point, the gradient times the step across arrives at the second"


def say_gradient(a: Place, b: Place, working: Working, name: str = "m") -> Fraction | None:
    """The lines to a gradient, and the gradient; None where the line is vertical."""
    across, up = b.x - a.x, b.y - a.y
    if not across and not up:
        same = f"{a.text} and {b.text} are one and the same point"
        raise impossible((*a.texts, *b.texts) or (f"{a.text} and {b.text}",), f"{same}: that there is a line is false")
    if not across:
        return None
    slope = up / across
    above, below = f"{fraction_text(b.y)} − {in_brackets(a.y)}", f"{fraction_text(b.x)} − {in_brackets(a.x)}"
    working.say(f"{name} = ({above})/({below})")
    plain, worked = over(up, across), fraction_text(slope)
    working.say(f"= {worked}" if plain == worked or across == 1 else f"= {plain} = {worked}", worked)
    require(a.y + slope * (b.x - a.x) == b.y, f"the gradient from {a.text} to {b.text}")
    return slope


def midpoint(task: OfPoints, reading: Reading) -> Derived:
    """The point half way between two points."""
    (a, b), used = all_placed(task.points, reading)
    working = Working(SKILL, used)
    x, y = say_midpoint(a, b, working)
    text = pair_text(x, y)
    require(read_pair(text) == ((a.x + b.x) / 2, (a.y + b.y) / 2), text)
    return working.derived(Answer(text, kind="point"), confirmed_by="as far across and up from one end as to the other")


def say_midpoint(a: Place, b: Place, working: Working) -> tuple[Fraction, Fraction]:
    """The lines to a mid-point, and its coordinates."""
    x, y = (a.x + b.x) / 2, (a.y + b.y) / 2
    sums = [f"({fraction_text(one)} + {in_brackets(other)})/2" for one, other in ((a.x, b.x), (a.y, b.y))]
    working.say(f"mid-point = ({', '.join(sums)})")
    working.say(f"= {pair_text(x, y)}", pair_text(x, y))
    require((x - a.x, y - a.y) == (b.x - x, b.y - y), f"the mid-point of {a.text} and {b.text}")
    return x, y


def distance(task: OfPoints, reading: Reading, ask: Ask) -> Derived:
    """How far two points are apart."""
    (a, b), used = all_placed(task.points, reading)
    working = Working(SKILL, used)
    value = say_distance(a, b, working)
    return _measured(value, working, ask, "measured again to sixty figures from the coordinates")


def say_distance(a: Place, b: Place, working: Working, name: str = "d") -> Surd:
    """The lines to a distance, and the distance."""
    across, up = b.x - a.x, b.y - a.y
    squares = across * across + up * up
    value = Surd.root(squares)
    differences = [f"({fraction_text(one)} − {in_brackets(other)})²" for one, other in ((b.x, a.x), (b.y, a.y))]
    working.say(f"{name} = √({' + '.join(differences)})")
    working.say(f"= √({in_brackets(across)}² + {in_brackets(up)}²)")
    under = write(Root(whole_or_fraction(squares)))
    worked = write(exact_expression(value.fraction if value.fraction is not None else value))
    working.say(f"= {under}" if under == worked else f"= {under} = {worked}", worked)
    decimal = Decimal(0) + value.to_decimal()
    # |b − a|² = |a|² + |b|² − 2ab, without the differences of the lines.
    again = _dot(a, a) + _dot(b, b) - 2 * _dot(a, b)
    near = _CLOSE * max(Decimal(1), _decimal(again))
    require(abs(decimal * decimal - _decimal(again)) < near, f"{a.text} to {b.text}")
    return value


def _dot(a: Place, b: Place) -> Fraction:
    return a.x * b.x + a.y * b.y


def _decimal(value: Fraction) -> Decimal:
    return Decimal(value.numerator) / Decimal(value.denominator)


def expression_of_surd(value: Surd) -> Expression:
    """A surd as it is written, a rational one as a number."""
    return exact_expression(value.fraction if value.fraction is not None else value)


def _measured(value: Surd, working: Working, ask: Ask, check: str) -> Derived:
    expression = expression_of_surd(value)
    answer = answer_of(expression)
    steps = tuple(working.steps)
    if ask.accuracy is not None and isinstance(number_of(expression), Decimal | Fraction):
        answer, more = finished(expression, ask, steps[-1].statement)
        steps = (*steps, *more)
    return Derived((answer,), (Derivation(steps, check, working.used),))


def collinear(task: OfPoints, reading: Reading) -> Derived:
    """Whether points are on one line, by the gradients from one to the next."""
    places, used = all_placed(task.points, reading)
    working = Working("straight-line graphs", used)
    slopes = []
    for one, other in pairwise(places):
        name = f"m of {one.name}{other.name}" if one.name and other.name else f"m from {one.text} to {other.text}"
        slope = say_gradient(one, other, working, name)
        if slope is None:
            working.say(f"{one.text} and {other.text} are on a vertical line")
        slopes.append(slope)
    yes = len(set(slopes)) == 1
    first = places[0]
    crossed = all(
        (p.x - first.x) * (places[1].y - first.y) == (p.y - first.y) * (places[1].x - first.x) for p in places[2:]
    )
    require(yes == crossed, "whether the points are on one line")
    why = "the gradients are equal and the lines share a point, so the points are collinear"
    why = why if yes else "the gradients differ, so the points are not collinear"
    working.conclude(why, "yes" if yes else "no")
    text = "yes" if yes else f"false: {why}" if task.claimed else "no"
    return working.derived(Answer(text), confirmed_by="the triangles of the points have the area 0" if yes else
                           "a triangle of the points has an area")  # fmt: skip


def area(task: OfPoints, reading: Reading) -> Derived:
    """The area of a polygon by its corners in order."""
    places, used = all_placed(task.points, reading)
    working = Working(SKILL, used)
    turned = [*places[1:], places[0]]
    products = [(one.x * other.y, other.x * one.y) for one, other in zip(places, turned, strict=True)]
    twice = sum((one - other for one, other in products), Fraction(0))
    forward, back = (" + ".join(in_brackets(pair[side]) for pair in products) for side in (0, 1))
    value = abs(twice) / 2
    working.say(f"area = ½|({forward}) − ({back})|")
    working.say(f"= ½ × {fraction_text(abs(twice))} = {fraction_text(value)}", fraction_text(value))
    require(value == _by_triangles(places), "the area")
    if not value:
        named = "".join(place.name for place in places) or "the points"
        raise impossible(used or (named,), f"the area of {named} is 0, all corners are on one line: a figure is false")
    return working.derived(
        Answer(fraction_text(value), whole_or_fraction(value)), confirmed_by="found again from triangles at one corner"
    )


def _by_triangles(places: tuple[Place, ...]) -> Fraction:
    first = places[0]
    parts = [
        (one.x - first.x) * (other.y - first.y) - (other.x - first.x) * (one.y - first.y)
        for one, other in pairwise(places[1:])
    ]
    return abs(sum(parts, Fraction(0))) / 2


def perimeter(task: OfPoints, reading: Reading, ask: Ask) -> Derived:
    """The sum of the sides of a polygon."""
    places, used = all_placed(task.points, reading)
    working = Working(SKILL, used)
    total, texts = Surd.rational(0), []
    for one, other in zip(places, [*places[1:], places[0]], strict=True):
        side = say_distance(one, other, working, f"{one.name}{other.name}" or "side")
        texts.append(write(expression_of_surd(side)))
        total = total + side
    worked = write(expression_of_surd(total))
    around = sum(hypot(one.x - other.x, one.y - other.y) for one, other in pairwise((*places, places[0])))
    require(abs(around - float(total.to_decimal())) <= around / 10**9, "the perimeter")
    working.say(f"perimeter = {' + '.join(texts)} = {worked}", worked, tuple(step.statement for step in working.steps))
    return _measured(total, working, ask, "each side measured again to sixty figures")

"""Circles by their equations: centre and radius, the equation, the tangent at a point; asymptotes of hyperbolas."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import NotSurd, exact_value, rational_value
from paperaudit.maths.parse import read_relation
from paperaudit.maths.plane_curves import on_curve, plane_terms
from paperaudit.maths.polynomial import Polynomial, algebraic_fraction
from paperaudit.maths.powers import PowerSum
from paperaudit.maths.surd import Surd
from paperaudit.maths.write import write
from paperaudit.model.coordinates_task import CircleWith, OfCurve
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Letter, Relation
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import Working, require, with_givens
from paperaudit.strands.plane.by_solving import exponential_asymptote, has_x_in_exponent
from paperaudit.strands.plane.lines import say_line, say_turned
from paperaudit.strands.plane.places import Place, equation_for, fraction_text, pair_text, placed
from paperaudit.strands.plane.points import expression_of_surd, say_distance, say_gradient
from paperaudit.strands.refusals import impossible

SKILL = "equations of circles"


def circle_of(relation: Relation) -> tuple[Fraction, Fraction, Fraction]:
    """Centre and the square of the radius; raises NoValue where the equation is not that of a circle."""
    terms = plane_terms(relation)
    share = terms.get((2, 0))
    if share is None or terms.get((0, 2)) != share or any(i + j > 2 or (i, j) == (1, 1) for i, j in terms):
        raise impossible((write(relation),), f"that {write(relation)} is the equation of a circle is false")
    x, y = (-terms.get(key, Fraction(0)) / (2 * share) for key in ((1, 0), (0, 1)))
    square = x * x + y * y - terms.get((0, 0), Fraction(0)) / share
    if square <= 0:
        raise impossible(
            (write(relation),),
            circle_text(x, y, square),
            f"the square of the radius is {fraction_text(square)}: a radius is false",
        )
    return x, y, square


def circle_text(x: Fraction, y: Fraction, square: Fraction) -> str:
    """The equation of a circle: (x − 2)² + (y + 3)² = 25."""
    sides = [
        f"({PowerSum({Fraction(1): Fraction(1), Fraction(0): -value}).text(letter)})²" if value else f"{letter}²"
        for letter, value in (("x", x), ("y", y))
    ]
    return f"{sides[0]} + {sides[1]} = {fraction_text(square)}"


def centre(task: OfCurve, reading: Reading) -> Derived:
    """Centre, radius or both of a circle, by completing the squares."""
    relation, used = equation_for(task.curve, reading)
    x, y, square = circle_of(relation)
    radius = Surd.root(square)
    working = Working(SKILL, used)
    if circle_text(x, y, square) != write(relation):
        working.say(circle_text(x, y, square))
    length = expression_of_surd(radius)
    for across, up in ((radius, Surd({})), (Surd({}), radius), (-radius, Surd({}))):
        point = [expression_of_surd(Surd.rational(value) + step) for value, step in ((x, across), (y, up))]
        require(on_curve(relation, point[0], point[1]), "the centre and the radius")
    check = "three points at that distance from the centre satisfy the equation"
    middle, far = pair_text(x, y), write(length)
    if task.what == "centre":
        working.conclude(f"centre: {middle}", middle)
        return working.derived(Answer(middle, kind="point"), confirmed_by=check)
    if task.what == "radius":
        working.conclude(f"radius: {far}", far)
        return working.derived(Answer(far, length, "r"), confirmed_by=check)
    working.conclude(f"centre {middle}, radius {far}", f"centre {middle}, radius {far}")
    return working.derived(Answer(f"centre {middle}, radius {far}", length, kind="centre and radius"),
                           confirmed_by=check)  # fmt: skip


def circle_with(task: CircleWith, reading: Reading) -> Derived:
    """The equation of a circle from its centre and its radius, or a point on it."""
    middle = placed(task.centre, reading)
    if task.radius is not None:
        value, texts = with_givens(task.radius, reading)
        working = Working(SKILL, tuple(dict.fromkeys((*middle.texts, *texts))))
        radius = exact_value(value)
        surd = radius if isinstance(radius, Surd) else Surd.rational(radius)
        square = (surd * surd).fraction
        if square is None or square <= 0:
            raise NoValue(f"a circle of the radius {write(value)}")
    else:
        assert task.through is not None
        place = placed(task.through, reading)
        working = Working(SKILL, tuple(dict.fromkeys((*middle.texts, *place.texts))))
        surd = say_distance(middle, place, working, "r")
        square = (surd * surd).fraction
        require(square == (place.x - middle.x) ** 2 + (place.y - middle.y) ** 2, "the radius")
    assert square is not None
    text = circle_text(middle.x, middle.y, square)
    written = read_relation(text)
    for across, up in ((surd, Surd({})), (Surd({}), surd), (Surd({}), -surd)):
        point = [
            expression_of_surd(Surd.rational(value) + step) for value, step in ((middle.x, across), (middle.y, up))
        ]
        require(on_curve(written, point[0], point[1]), text)
    working.say(text, text)
    return working.derived(Answer(text, kind="equation"), confirmed_by="the distance of the centre from the circle")


def tangent(task: OfCurve, reading: Reading) -> Derived:
    """The tangent to a circle at one of its points, at right angles to the radius."""
    relation, used = equation_for(task.curve, reading)
    assert task.at is not None
    place = placed(task.at, reading)
    x, y, square = circle_of(relation)
    if (place.x - x) ** 2 + (place.y - y) ** 2 != square:
        away = (place.x - x) ** 2 + (place.y - y) ** 2
        raise impossible(
            tuple(dict.fromkeys((*place.texts, *used))) or (place.text, write(relation)),
            f"the square of the distance of {place.text} from the centre {pair_text(x, y)} is {fraction_text(away)}",
            f"that {place.text} is on the circle is false, {fraction_text(away)} is not {fraction_text(square)}",
        )
    working = Working(SKILL, tuple(dict.fromkeys((*used, *place.texts))))
    working.say(f"centre {pair_text(x, y)}", pair_text(x, y))
    slope = say_turned(say_gradient(Place("", x, y), place, working, "m of the radius"), working)
    text = say_line(place, slope, working)
    away = (
        (abs(slope * (x - place.x) - (y - place.y)) ** 2 / (slope**2 + 1))
        if slope is not None
        else ((x - place.x) ** 2)
    )
    require(away == square, "the tangent")
    return working.derived(Answer(text, kind="equation"), confirmed_by="its distance from the centre is the radius")


def asymptotes(task: OfCurve, reading: Reading) -> Derived:
    """The asymptotes of y = a/(x + p) + q, and of what can be brought to that; of y = a × bˣ + q."""
    relation, used = equation_for(task.curve, reading)
    if relation.left != Letter("y"):
        raise NotSurd("an equation that is not solved for y")
    if has_x_in_exponent(relation.right):
        return exponential_asymptote(relation, used)
    whole = algebraic_fraction(relation.right)
    above, below = _in_x(whole.above), _in_x(whole.below)
    if below.degree != 1 or above.degree > 1 or not above.value(-below.share(0) / below.share(1)):
        raise NoValue(f"{write(relation)} is not of the form y = a/(x + p) + q")
    x, y = -below.share(0) / below.share(1), above.share(1) / below.share(1)
    working = Working("graphs of functions", used)
    working.say(f"the denominator is 0 for x = {fraction_text(x)}", f"x = {fraction_text(x)}")
    working.say(f"for large x, y comes close to {fraction_text(y)}", f"y = {fraction_text(y)}")
    text = f"x = {fraction_text(x)} and y = {fraction_text(y)}"
    working.conclude(text, text)
    far = rational_value(relation.right, {"x": Fraction(10**12)})
    require(far is not None and abs(far - y) < Fraction(1, 10**6), "the horizontal asymptote")
    near = rational_value(relation.right, {"x": x + Fraction(1, 10**12)})
    require(near is not None and abs(near) > 10**6, "the vertical asymptote")
    return working.derived(Answer(text, kind="equations"), confirmed_by="values far out and close to the asymptote")


def _in_x(part: Polynomial) -> PowerSum:
    """A polynomial in x alone."""
    terms: dict[Fraction, Fraction] = {}
    for monomial, share in part.terms.items():
        exponent = dict(monomial).get(Letter("x"), 0)
        if share.fraction is None or len(monomial) > (exponent > 0):
            raise NotSurd("letters other than x, or roots")
        terms[Fraction(exponent)] = share.fraction
    return PowerSum(terms)

"""Claims about points with coordinates: parallel, perpendicular, collinear, isosceles, a parallelogram."""

from collections.abc import Callable
from fractions import Fraction

from paperaudit.maths.exact import NotSurd, exact_value
from paperaudit.maths.surd import Surd
from paperaudit.maths.write import write
from paperaudit.model.ask import Establish
from paperaudit.model.coordinates_task import OfPoints, PlanePoint
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import AngleOf, LengthOf, Measured, Number, Relation
from paperaudit.model.fact import Collinear, Fact, Holds, Midpoint, Parallel, Perpendicular, Shape
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.plane import by_vectors
from paperaudit.strands.plane.places import Place, pair_text, placed
from paperaudit.strands.plane.points import collinear, expression_of_surd, say_distance, say_gradient, say_midpoint

SKILL = "coordinates"
_HOLDS = {"show": "shown", "prove": "proved", "decide": "yes"}
Shown = tuple[bool, str]
"""Whether a claim holds, and the sentence that says so."""


def can_be_claimed(fact: Fact) -> bool:
    """Whether a claim is one of these."""
    match fact:
        case Collinear() | Perpendicular() | Midpoint():
            return True
        case Parallel(paths):
            return len(paths) == 2
        case Shape(kind, _, qualities):
            return (kind in _SHAPES and not qualities) or (kind == "triangle" and len(qualities) == 1)
        case Holds(relation):
            return relation.sign == "=" and (isinstance(relation.left, LengthOf) or _right_at(relation) is not None)
    return False


def _right_at(relation: Relation) -> AngleOf | None:
    """The angle that a relation says to be 90°."""
    right = Measured(Number(Fraction(90)), "°")
    return relation.left if isinstance(relation.left, AngleOf) and relation.right == right else None


def verdict(holds: bool, sentence: str, how: str) -> str:
    """The answer to a claim: shown, or what is false about it; yes or no where it is to be decided."""
    if holds:
        return _HOLDS[how]
    return "no" if how == "decide" else f"false: {sentence}"


def claim(task: Establish, reading: Reading) -> Outcome:
    """The lines that show a claim, or what holds in its place."""
    (fact,) = task.claims
    if isinstance(fact, Collinear):
        return collinear(OfPoints("collinear", tuple(map(PlanePoint, fact.points)), task.how != "decide"), reading)
    names = _names(fact)
    places = {name: placed(PlanePoint(name), reading) for name in names}
    used = tuple(dict.fromkeys(text for place in places.values() for text in place.texts))
    working = Working("straight-line graphs" if isinstance(fact, Parallel | Perpendicular) else SKILL, used)
    holds, sentence = _shown(fact, places, working)
    working.conclude(sentence, "yes" if holds else "no")
    return working.derived(Answer(verdict(holds, sentence, task.how)), confirmed_by=_BY_VECTORS)


_BY_VECTORS = "decided again by products of the steps across and up"


def _names(fact: Fact) -> tuple[str, ...]:
    match fact:
        case Parallel(paths):
            return tuple(dict.fromkeys(name for path in paths for name in path))
        case Perpendicular(one, other):
            return tuple(dict.fromkeys((*one, *other)))
        case Midpoint(point, path):
            return (point, *path)
        case Shape(_, points):
            return points
        case Holds(relation) if (angle := _right_at(relation)) is not None:
            return angle.arm, angle.vertex, angle.other
        case Holds(relation):
            sides = (side for side in (relation.left, relation.right) if isinstance(side, LengthOf))
            return tuple(dict.fromkeys(name for side in sides for name in (side.start, side.end)))
    raise NotSurd("a claim about coordinates of another kind")


def _shown(fact: Fact, places: dict[str, Place], working: Working) -> Shown:
    match fact:
        case Parallel((one, other)):
            return _lines(tuple(places[name] for name in (*one, *other)), False, working)
        case Perpendicular(one, other):
            return _lines(tuple(places[name] for name in (*one, *other)), True, working)
        case Midpoint(point, (start, end)):
            x, y = say_midpoint(places[start], places[end], working)
            holds = (x, y) == (places[point].x, places[point].y)
            said = f"the mid-point of {start}{end} is {'' if holds else 'not '}{point}"
            return holds, said if holds else f"{said}, it is {pair_text(x, y)}"
        case Shape("triangle", (one, two, three), _) if not by_vectors.cross(
            places[one], places[two], places[one], places[three]
        ):
            working.say(f"the gradients of {one}{two} and {one}{three} are equal")
            return False, f"{one}, {two} and {three} are on one line, there is no triangle"
        case Shape("triangle", points, (quality,)):
            return _TRIANGLES[quality](tuple(places[name] for name in points), working)
        case Shape(kind, points):
            return _SHAPES[kind](tuple(places[name] for name in points), working)
        case Holds(relation) if (angle := _right_at(relation)) is not None:
            ends = (angle.vertex, angle.arm, angle.vertex, angle.other)
            return _lines(tuple(places[name] for name in ends), True, working)
        case Holds():
            return _length(fact, places, working)
    raise NotSurd("a claim about coordinates of another kind")


def _lines(ends: tuple[Place, ...], upright: bool, working: Working) -> Shown:
    """Whether two lines are parallel, or at right angles (`upright`), by their gradients."""
    a, b, c, d = ends
    slopes = []
    for one, other in ((a, b), (c, d)):
        slope = say_gradient(one, other, working, f"m of {one.name}{other.name}")
        if slope is None:
            working.say(f"{one.name}{other.name} is vertical")
        slopes.append(slope)
    first, second = slopes
    if upright:
        holds = {first, second} == {None, Fraction(0)} or (None not in slopes and first * second == -1)  # type: ignore[operator]
        said = "the product of the gradients is " if None not in slopes else "the angle between the lines is "
        said += ("−1" if holds else "not −1") if None not in slopes else ("90°" if holds else "not 90°")
        require(holds == (by_vectors.dot(a, b, c, d) == 0), "whether the lines are at right angles")
        sign, word = "⊥", "at right angles to"
    else:
        holds = first == second
        said = "the gradients are " + ("equal" if holds else "different")
        require(holds == (by_vectors.cross(a, b, c, d) == 0), "whether the lines are parallel")
        sign, word = "∥", "parallel to"
    one_text, other_text = a.name + b.name, c.name + d.name
    end = f"{one_text} {sign} {other_text}" if holds else f"{one_text} is not {word} {other_text}"
    return holds, f"{said}, so {end}"


def _sides(points: tuple[Place, ...], working: Working) -> list[Surd]:
    return [
        say_distance(one, other, working, f"{one.name}{other.name}")
        for one, other in zip(points, (*points[1:], points[0]), strict=True)
    ]


def _isosceles(points: tuple[Place, ...], working: Working) -> Shown:
    sides = _sides(points, working)
    names = [one.name + other.name for one, other in zip(points, (*points[1:], points[0]), strict=True)]
    equal = next(((i, j) for i, j in ((0, 1), (1, 2), (0, 2)) if sides[i] == sides[j]), None)
    require((equal is not None) == by_vectors.is_isosceles(points), "whether two sides are equal")
    if equal is None:
        return False, "no two sides are equal, so the triangle is not isosceles"
    return True, f"{names[equal[0]]} = {names[equal[1]]}, so the triangle is isosceles"


def _equilateral(points: tuple[Place, ...], working: Working) -> Shown:
    sides = _sides(points, working)
    holds = sides[0] == sides[1] == sides[2]
    require(holds == by_vectors.is_equilateral(points), "whether three sides are equal")
    end = "equilateral" if holds else "not equilateral"
    return holds, f"the sides are {'' if holds else 'not all '}equal, so the triangle is {end}"


def _right_angled(points: tuple[Place, ...], working: Working) -> Shown:
    sides = _sides(points, working)
    squares = [(side * side).fraction or Fraction(0) for side in sides]
    longest = squares.index(max(squares))
    others = [place for place in range(3) if place != longest]
    names = [one.name + other.name for one, other in zip(points, (*points[1:], points[0]), strict=True)]
    total = squares[others[0]] + squares[others[1]]
    holds = total == squares[longest]
    one, other = (f"{names[place]}²" for place in others)
    working.say(f"{one} + {other} = {squares[others[0]]} + {squares[others[1]]} = {total}", str(total))
    sign = "=" if holds else "≠"
    require(holds == by_vectors.has_right_angle(points), "whether an angle is right")
    end = "right-angled" if holds else "not right-angled"
    return holds, f"{one} + {other} {sign} {names[longest]}² = {squares[longest]}, so the triangle is {end}"


def _parallelogram(points: tuple[Place, ...], working: Working) -> Shown:
    a, b, c, d = points
    holds = _say_diagonals(points, working)
    require(holds == (by_vectors.step(a, b) == by_vectors.step(d, c)), "whether it is a parallelogram")
    if not holds:
        return False, "the diagonals do not bisect each other, so it is not a parallelogram"
    return True, "the diagonals bisect each other, so it is a parallelogram"


def _say_diagonals(points: tuple[Place, ...], working: Working) -> bool:
    a, b, c, d = points
    working.say(f"mid-points of the diagonals {a.name}{c.name} and {b.name}{d.name}")
    return say_midpoint(a, c, working) == say_midpoint(b, d, working)


def _rectangle(points: tuple[Place, ...], working: Working) -> Shown:
    return _upright(points, _parallelogram(points, working), "a parallelogram", "a rectangle", working)


def _upright(points: tuple[Place, ...], shown: Shown, plain: str, special: str, working: Working) -> Shown:
    """Whether a plain figure that is shown, or not, has a right angle as well: a rectangle, a square."""
    a, b, c, _ = points
    holds, said = shown
    if not holds:
        return False, said.replace(plain, special)
    working.say(said)
    upright, why = _lines((a, b, b, c), True, working)
    require(upright == by_vectors.diagonals_equal(points), f"whether it is {special}")
    return upright, f"{why}, so it is {'' if upright else 'not '}{special}"


def _rhombus(points: tuple[Place, ...], working: Working) -> Shown:
    sides = _sides(points, working)
    holds = all(side == sides[0] for side in sides)
    require(holds == by_vectors.is_rhombus(points), "whether it is a rhombus")
    return holds, f"the sides are {'' if holds else 'not all '}equal, so it is {'' if holds else 'not '}a rhombus"


def _square(points: tuple[Place, ...], working: Working) -> Shown:
    return _upright(points, _rhombus(points, working), "a rhombus", "a square", working)


def _trapezium(points: tuple[Place, ...], working: Working) -> Shown:
    a, b, c, d = points
    slopes = []
    for one, other in ((a, b), (d, c), (a, d), (b, c)):
        slope = say_gradient(one, other, working, f"m of {one.name}{other.name}")
        if slope is None:
            working.say(f"{one.name}{other.name} is vertical")
        slopes.append(slope)
    first, second = slopes[0] == slopes[1], slopes[2] == slopes[3]
    require(first == (by_vectors.cross(a, b, d, c) == 0), "whether sides are parallel")
    require(second == (by_vectors.cross(a, d, b, c) == 0), "whether sides are parallel")
    if not first and not second:
        return False, "no two sides are parallel, so it is not a trapezium"
    pair = f"{a.name}{b.name} ∥ {d.name}{c.name}" if first else f"{a.name}{d.name} ∥ {b.name}{c.name}"
    return True, f"{pair}, so it is a trapezium"


_TRIANGLES: dict[str, Callable[[tuple[Place, ...], Working], Shown]] = {
    "isosceles": _isosceles,
    "equilateral": _equilateral,
    "right-angled": _right_angled,
}
_SHAPES: dict[str, Callable[[tuple[Place, ...], Working], Shown]] = {
    "parallelogram": _parallelogram,
    "rectangle": _rectangle,
    "rhombus": _rhombus,
    "square": _square,
    "trapezium": _trapezium,
}


def _length(fact: Holds, places: dict[str, Place], working: Working) -> Shown:
    relation = fact.relation
    lengths = []
    for side in (relation.left, relation.right):
        if isinstance(side, LengthOf):
            one, other = places[side.start], places[side.end]
            lengths.append(say_distance(one, other, working, one.name + other.name))
        else:
            value = exact_value(side)
            lengths.append(value if isinstance(value, Surd) else Surd.rational(value))
    holds = lengths[0] == lengths[1]
    decimals = [length.to_decimal() for length in lengths]
    require(holds == (abs(decimals[0] - decimals[1]) < by_vectors.CLOSE), "the lengths")
    if holds:
        return True, write(relation)
    if isinstance(relation.right, LengthOf):
        return False, f"{write(relation.left)} and {write(relation.right)} are different"
    return False, f"{write(relation.left)} = {write(expression_of_surd(lengths[0]))}"

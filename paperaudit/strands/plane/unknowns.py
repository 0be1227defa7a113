"""A letter among coordinates from a gradient, a distance, one line, a middle or a curve; a point from a middle."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import exact_expression, exact_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.plane_curves import zeros
from paperaudit.maths.powers import PowerSum, power_sum, put_in
from paperaudit.maths.write import write
from paperaudit.model.coordinates_task import PlaneCondition, PlanePoint, PlaneUnknown, PointWanted
from paperaudit.model.derivation import Answer, Case, NotDetermined, Outcome
from paperaudit.model.expression import (
    Expression,
    LengthOf,
    Letter,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Relation,
    Sum,
    letters_of,
)
from paperaudit.model.fact import Collinear, Fact, Holds, Midpoint, Shape
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.root_lines import say_to_roots
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.plane.places import Place, pair_text, placed
from paperaudit.strands.plane.points import say_midpoint
from paperaudit.strands.refusals import Faulty, impossible

SKILL = "coordinates"
_TWO = Number(Fraction(2))
Pair = tuple[Expression, Expression]


def letter_of(
    letter: str, conditions: tuple[PlaneCondition, ...], points: tuple[PlanePoint, ...], reading: Reading
) -> Outcome:
    """The numbers for which points with a letter among their coordinates meet a condition."""
    if len(conditions) != 1:
        raise NoValue(f"{letter} is to be found from {'several statements' if conditions else 'nothing'}")
    (condition,) = conditions
    used: list[str] = []
    pairs = [_pair(point, points, reading, used) for point in condition.points]
    used.extend(given.text for given in reading.givens if any(condition in _conditions(fact) for fact in given.facts))
    working = Working(SKILL, tuple(dict.fromkeys(used)))
    said = next(iter(used[::-1]), "") or f"the {condition.what}"
    form = _equation(condition, pairs, letter, working)
    clash = working.used or (said,)
    if not form.degree:
        if form.terms:
            raise impossible(clash, f"{form.text(letter)} = 0 is false for every {letter}")
        raise _open(letter)
    if form.degree > 1:
        working.say(f"{_positive(form).text(letter)} = 0")
    found = tuple(map(exact_expression, zeros(form)))
    if not found:
        raise impossible(clash, f"{_positive(form).text(letter)} = 0", "that this has a real solution is false")
    if form.degree > 1:
        say_to_roots(_positive(form).expression(letter), letter, working.say)
    for value in found:
        _confirm(condition, [(put_in(x, letter, value), put_in(y, letter, value)) for x, y in pairs])
    text = " or ".join(f"{letter} = {write(value)}" for value in found)
    working.say(text, text)
    answers = tuple(Answer(f"{letter} = {write(value)}", value, letter) for value in found)
    return working.derived(*answers, confirmed_by="the points with the number put in were measured again")


def _open(letter: str) -> Faulty:
    cases = tuple(Case(f"{letter} = {value} meets it", (Answer(f"{letter} = {value}"),)) for value in (0, 1))
    return Faulty(NotDetermined(cases, f"a statement in which {letter} counts"))


def _positive(form: PowerSum) -> PowerSum:
    return form.scaled(Fraction(-1)) if form.terms[form.degree] < 0 else form


def unknown(task: PlaneUnknown, reading: Reading) -> Outcome:
    """A letter from a condition that the ask itself states."""
    return letter_of(task.letter, (task.condition,), task.points, reading)


def conditions_of(reading: Reading) -> tuple[PlaneCondition, ...]:
    """What the givens say of points, other than their coordinates."""
    return tuple(found for given in reading.givens for fact in given.facts for found in _conditions(fact))


def _conditions(fact: Fact) -> Iterator[PlaneCondition]:
    match fact:
        case PlaneCondition():
            yield fact
        case Collinear(names):
            yield PlaneCondition("collinear", tuple(map(PlanePoint, names)))
        case Midpoint(point, path) if len(path) == 2:
            yield PlaneCondition("mid-point", tuple(map(PlanePoint, (point, *path))))
        case Holds(Relation(LengthOf(start, end), "=", right)) if not letters_of(right):
            yield PlaneCondition("distance", (PlanePoint(start), PlanePoint(end)), right)


def _pair(point: PlanePoint, said: tuple[PlanePoint, ...], reading: Reading, used: list[str]) -> Pair:
    """The coordinates of a point, a letter among them where one is to be found."""
    found = [(one, "") for one in said if one.name == point.name]
    if point.x is not None:
        found = [(point, "")]
    found += [] if found else [
        (fact, given.text) for given in reading.givens for fact in given.facts
        if isinstance(fact, PlanePoint) and fact.name == point.name
    ]  # fmt: skip
    if len(found) != 1:
        raise NoValue(f"the coordinates of {point.name} are {'given more than once' if found else 'not given'}")
    one, text = found[0]
    assert one.x is not None and one.y is not None
    if text:
        used.append(text)
    return one.x, one.y


def _less(one: Expression, other: Expression) -> Expression:
    if isinstance(other, Number) and other.value < 0:
        other = Negative(Number(-other.value, other.form, other.places))
    return Sum((one, Negative(other)))


def _equation(condition: PlaneCondition, pairs: list[Pair], letter: str, working: Working) -> PowerSum:
    """What must be 0, with the lines to it."""
    match condition.what:
        case "gradient":
            (a, b), value = pairs, condition.value
            assert value is not None
            above, below = _less(b[1], a[1]), _less(b[0], a[0])
            working.say(f"{write(Quotient(above, below))} = {write(value)}")
            return _say_cleared(above, Product((value, below)), letter, working)
        case "distance":
            (a, b), value = pairs, condition.value
            assert value is not None
            squares = tuple(Power(_less(one, other), _TWO) for one, other in zip(b, a, strict=True))
            working.say(f"{write(Sum(squares))} = {write(Power(value, _TWO))}")
            return power_sum(_less(Sum(squares), Power(value, _TWO)), letter)
        case "collinear":
            a, b, c = pairs
            slopes = [(_less(two[1], one[1]), _less(two[0], one[0])) for one, two in ((a, b), (b, c))]
            (up, across), (other_up, other_across) = slopes
            working.say("the gradients are equal")
            working.say(f"{write(Quotient(up, across))} = {write(Quotient(other_up, other_across))}")
            return _say_cleared(Product((up, other_across)), Product((other_up, across)), letter, working)
        case "mid-point":
            middle, a, b = pairs
            for at in (0, 1):
                total = Quotient(Sum((a[at], b[at])), _TWO)
                if letter in (*letters_of(total), *letters_of(middle[at])):
                    working.say(f"{write(total)} = {write(middle[at])}")
                    return _say_cleared(Sum((a[at], b[at])), Product((_TWO, middle[at])), letter, working)
            raise NoValue(f"{letter} stands in none of the points")
        case "on":
            assert condition.curve is not None
            ((x, y),) = pairs
            sides = [put_in(put_in(side, "x", x), "y", y) for side in (condition.curve.left, condition.curve.right)]
            working.say(f"{write(sides[0])} = {write(sides[1])}")
            return power_sum(_less(*sides), letter)


def _say_cleared(left: Expression, right: Expression, letter: str, working: Working) -> PowerSum:
    one, other = power_sum(left, letter), power_sum(right, letter)
    working.say(f"{one.text(letter)} = {other.text(letter)}")
    return one - other


def _confirm(condition: PlaneCondition, pairs: list[Pair]) -> None:
    """The points measured with the number in place: by steps across and up."""

    def product(one: Expression, other: Expression) -> Expression:
        return Product((one, other))

    def value(expression: Expression) -> bool:
        return exact_value(expression) == 0

    def step(axis: int, one: int, other: int) -> Expression:
        return Sum((pairs[other][axis], Negative(pairs[one][axis])))

    match condition.what:
        case "gradient":
            assert condition.value is not None
            require(exact_value(pairs[0][0]) != exact_value(pairs[1][0]), "the gradient, of a vertical line")
            holds = value(Sum((pairs[0][1], product(condition.value, step(0, 0, 1)), Negative(pairs[1][1]))))
        case "distance":
            assert condition.value is not None
            squares = [product(step(axis, 0, 1), step(axis, 0, 1)) for axis in (0, 1)]
            holds = value(Sum((*squares, Negative(product(condition.value, condition.value)))))
        case "collinear":
            area = Sum((product(step(0, 0, 1), step(1, 0, 2)), Negative(product(step(1, 0, 1), step(0, 0, 2)))))
            holds = value(area)
        case "mid-point":
            holds = all(value(Sum((step(axis, 1, 0), Negative(step(axis, 0, 2))))) for axis in (0, 1))
        case "on":
            assert condition.curve is not None
            left, right = (
                put_in(put_in(side, "x", pairs[0][0]), "y", pairs[0][1])
                for side in (condition.curve.left, condition.curve.right)
            )
            holds = exact_value(left) == exact_value(right)
    require(holds, "the points with the number put in")


def point_wanted(task: PointWanted, reading: Reading) -> Outcome:
    """The coordinates of a point by a mid-point or as the fourth corner of a parallelogram."""
    for given in reading.givens:
        for fact in given.facts:
            match fact:
                case Midpoint(middle, path):
                    ends: tuple[str, ...] = (middle, *path)
                case PlaneCondition("mid-point", points):
                    ends = tuple(point.name for point in points)
                case Shape(kind, corners) if kind in _PARALLELOGRAMS and task.name in corners:
                    return _fourth(task.name, corners, given.text, reading)
                case _:
                    continue
            if task.name in ends:
                return _other_end(task.name, ends, given.text, reading)
    raise NoValue(f"nothing says where {task.name} is")


_PARALLELOGRAMS = ("parallelogram", "rectangle", "rhombus", "square")


def _other_end(name: str, ends: tuple[str, ...], text: str, reading: Reading) -> Outcome:
    middle = ends[0]
    others = [placed(PlanePoint(end), reading) for end in ends if end != name]
    working = Working(SKILL, tuple(dict.fromkeys((*(t for place in others for t in place.texts), text))))
    if name == middle:
        x, y = say_midpoint(others[0], others[1], working)
        return _point(name, x, y, working)
    half, known = others
    _say_end((half.x, half.y), known, working)
    x, y = 2 * half.x - known.x, 2 * half.y - known.y
    require((x + known.x, y + known.y) == (2 * half.x, 2 * half.y), "the end of the segment")
    return _point(name, x, y, working)


def _say_end(middle: tuple[Fraction, Fraction], known: Place, working: Working) -> None:
    """The lines from a middle and one end to the other end."""
    for letter, whole, one in (("x", middle[0], known.x), ("y", middle[1], known.y)):
        said = Quotient(Sum((whole_or_fraction(one), Letter(letter))), _TWO)
        worked = write(whole_or_fraction(2 * whole - one))
        working.say(f"{write(said)} = {write(whole_or_fraction(whole))}, so {letter} = {worked}", worked)


def _fourth(name: str, corners: tuple[str, ...], text: str, reading: Reading) -> Outcome:
    at = corners.index(name)
    before, opposite, after = (placed(PlanePoint(corners[(at + step) % 4]), reading) for step in (-1, 2, 1))
    used = tuple(dict.fromkeys((*before.texts, *opposite.texts, *after.texts, text)))
    working = Working(SKILL, used)
    x, y = before.x + after.x - opposite.x, before.y + after.y - opposite.y
    working.say(
        f"the diagonals bisect each other: {before.name}{after.name} and {opposite.name}{name} have one mid-point"
    )
    middle = say_midpoint(before, after, working)
    _say_end(middle, opposite, working)
    require((x - after.x, y - after.y) == (before.x - opposite.x, before.y - opposite.y), "the fourth corner")
    return _point(name, x, y, working)


def _point(name: str, x: Fraction, y: Fraction, working: Working) -> Outcome:
    text = pair_text(x, y)
    if not working.steps[-1].statement.endswith(text):
        working.conclude(f"{name}{text}", text)
    return working.derived(Answer(text, kind="point"), confirmed_by="the steps across and up compared")

"""Images of points under reflections, rotations, translations and enlargements."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.plane_curves import is_line, plane_terms
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import Negative, Sum
from paperaudit.model.movement_task import Enlarged, Image, Movement, Reflected, Shifted, Turned
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import Working, exact, require
from paperaudit.strands.plane.places import Place, pair_text, placed

SKILL = "transformations"
Pair = tuple[Fraction, Fraction]
_AXES = {
    "y = 0": "the x-axis: (x, y) → (x, −y)",
    "x = 0": "the y-axis: (x, y) → (−x, y)",
    "y = x": "the line y = x: (x, y) → (y, x)",
    "y = −x": "the line y = −x: (x, y) → (−y, −x)",
}
_TURNS = {90: "(−y, x)", 180: "(−x, −y)", 270: "(y, −x)"}


def image(task: Image, reading: Reading) -> Outcome:
    """The images of the points, one movement after the other."""
    working = Working(SKILL)
    found: list[str] = []
    for point in task.points:
        place = placed(point, reading)
        for movement in task.movements:
            before, place = place, moved(place, movement, reading)
            _confirm(before, place, movement, reading)
            working.say(f"{_rule(movement)}: {before.text} → {place.text}", place.text)
        found.append(pair_text(place.x, place.y))
    text = " and ".join(found)
    if len(found) > 1:
        text = ", ".join(f"{point.name}′{pair}" for point, pair in zip(task.points, found, strict=True))
        working.conclude(text, text)
    return working.derived(Answer(text, kind="points" if len(found) > 1 else "point"), confirmed_by=_CHECKED)


_CHECKED = "distances from the line, the centre or the first point compared"


def _rule(movement: Movement) -> str:
    """What a movement does to (x, y), in words."""
    match movement:
        case Reflected(line):
            return f"reflection in {_AXES.get(write(line), f'the line {write(line)}')}"
        case Turned(degrees):
            way = {90: "90° anticlockwise", 180: "180°", 270: "90° clockwise"}[degrees]
            return f"rotation of {way}, from the centre (x, y) → {_TURNS[degrees]}"
        case Shifted(across, up):
            return f"translation by ({write(across)}, {write(up)})"
        case Enlarged(factor):
            return f"enlargement, {write(factor)} times as far from the centre"


def moved(place: Place, movement: Movement, reading: Reading) -> Place:
    """The image of a place under one movement."""
    name = f"{place.name}′" if place.name else ""
    match movement:
        case Shifted(across, up):
            return Place(name, place.x + exact(across), place.y + exact(up))
        case Enlarged(factor, centre):
            about, times = placed(centre, reading), exact(factor)
            return Place(name, about.x + times * (place.x - about.x), about.y + times * (place.y - about.y))
        case Turned(degrees, centre):
            about = placed(centre, reading)
            x, y = place.x - about.x, place.y - about.y
            for _ in range(degrees // 90):
                x, y = -y, x
            return Place(name, about.x + x, about.y + y)
        case Reflected():
            a, b, c = _line(movement)
            step = (a * place.x + b * place.y + c) / (a * a + b * b)
            return Place(name, place.x - 2 * a * step, place.y - 2 * b * step)


def _line(movement: Reflected) -> tuple[Fraction, Fraction, Fraction]:
    terms = plane_terms(movement.line)
    if not is_line(terms):
        raise NoValue(f"{write(movement.line)} is not the equation of a straight line")
    a, b, c = (terms.get(key, Fraction(0)) for key in ((1, 0), (0, 1), (0, 0)))
    return a, b, c


def _square(one: Place, other: Place) -> Fraction:
    return (one.x - other.x) ** 2 + (one.y - other.y) ** 2


def _confirm(before: Place, after: Place, movement: Movement, reading: Reading) -> None:
    """What a movement keeps: mid-points on the mirror line, distances and angles at the centre."""
    match movement:
        case Shifted(across, up):
            require((after.x - before.x, after.y - before.y) == (exact(across), exact(up)), "the translation")
        case Enlarged(factor, centre):
            about = placed(centre, reading)
            require(_square(after, about) == exact(factor) ** 2 * _square(before, about), "the enlargement")
            one, other = (before.x - about.x, before.y - about.y), (after.x - about.x, after.y - about.y)
            require(one[0] * other[1] == one[1] * other[0], "the enlargement")
            require((one[0] * other[0] + one[1] * other[1]) * exact(factor) >= 0, "the enlargement")
        case Turned(degrees, centre):
            about = placed(centre, reading)
            one, other = (before.x - about.x, before.y - about.y), (after.x - about.x, after.y - about.y)
            turned = one[0] * other[1] - one[1] * other[0]
            along = one[0] * other[0] + one[1] * other[1]
            size = _square(before, about)
            nought = Fraction(0)
            expected = {90: (size, nought), 180: (nought, -size), 270: (-size, nought)}[degrees]
            require((turned, along) == expected, "the rotation")
        case Reflected():
            a, b, c = _line(movement)
            middle = ((before.x + after.x) / 2, (before.y + after.y) / 2)
            require(a * middle[0] + b * middle[1] + c == 0, "the reflection")
            require(a * (after.y - before.y) == b * (after.x - before.x), "the reflection")
            sides = Sum((movement.line.left, Negative(movement.line.right)))
            there = {"x": middle[0], "y": middle[1]}
            require(not rational_value(sides, there), "the reflection: half way is not on the line")
            foot = {"x": middle[0] + b, "y": middle[1] - a}
            require(not rational_value(sides, foot), "the reflection: the line as it is stated")

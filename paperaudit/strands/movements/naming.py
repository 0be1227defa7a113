"""The single transformation that maps one figure onto another, described fully."""

from dataclasses import dataclass
from fractions import Fraction

from paperaudit.maths.exact import NotSurd
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.powers import PowerSum
from paperaudit.maths.write import write
from paperaudit.model.coordinates_task import PlanePoint
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import Expression, Letter, Relation
from paperaudit.model.movement_task import Enlarged, Movement, Reflected, Shifted, Turned, WhichMovement
from paperaudit.model.reading import Reading
from paperaudit.strands.movements.images import moved
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.plane.places import Place, all_placed, fraction_text, pair_text
from paperaudit.strands.refusals import impossible

SKILL = "transformations"
Pair = tuple[Fraction, Fraction]
_TURNS: dict[Pair, int] = {
    (Fraction(0), Fraction(1)): 90,
    (Fraction(-1), Fraction(0)): 180,
    (Fraction(0), Fraction(-1)): 270,
}


@dataclass(frozen=True, slots=True)
class _Similarity:
    """Multiplication by a pair (as of numbers in the plane) and a shift; `turned_over` mirrors in the x-axis first."""

    factor: Pair
    shift: Pair
    turned_over: bool


def which_movement(task: WhichMovement, reading: Reading) -> Outcome:
    """Translation, reflection, rotation or enlargement, with what describes it fully."""
    before, used = all_placed(task.before, reading)
    after, more = all_placed(task.after, reading)
    working = Working(SKILL, tuple(dict.fromkeys((*used, *more))))
    found = [one for over in (False, True) if (one := _similarity(before, after, over)) is not None]
    if len(found) > 1:
        raise NotSurd("corners on one line, which say too little")
    if not found and _keeps_a_line(before, after):
        raise NotSurd("a stretch or a shear")
    if not found:
        raise impossible(working.used, "lengths and angles of the two figures do not agree",
                         "that one transformation maps one onto the other is false")  # fmt: skip
    (one,) = found
    movement, text = _named(one, before, after, working)
    for start, end in zip(before, after, strict=True):
        there = moved(start, movement, reading)
        require((there.x, there.y) == (end.x, end.y), f"the image of {start.text}")
    working.conclude(text, text)
    return working.derived(Answer(text, kind="transformation"), confirmed_by="every corner moved by it")


def _times(one: Pair, other: Pair) -> Pair:
    return one[0] * other[0] - one[1] * other[1], one[0] * other[1] + one[1] * other[0]


def _over(one: Pair, other: Pair) -> Pair:
    size = other[0] ** 2 + other[1] ** 2
    product = _times(one, (other[0], -other[1]))
    return product[0] / size, product[1] / size


def _similarity(before: tuple[Place, ...], after: tuple[Place, ...], over: bool) -> _Similarity | None:
    starts = [(place.x, -place.y if over else place.y) for place in before]
    ends = [(place.x, place.y) for place in after]
    step = (starts[1][0] - starts[0][0], starts[1][1] - starts[0][1])
    if not any(step):
        raise NotSurd("two corners in one place")
    factor = _over((ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]), step)
    first = _times(factor, starts[0])
    shift = (ends[0][0] - first[0], ends[0][1] - first[1])
    for start, end in zip(starts, ends, strict=True):
        there = _times(factor, start)
        if (there[0] + shift[0], there[1] + shift[1]) != end:
            return None
    return _Similarity(factor, shift, over)


def _keeps_a_line(before: tuple[Place, ...], after: tuple[Place, ...]) -> bool:
    """Whether the first three corners are moved by a stretch or a shear, which leaves every point of a line alone."""
    (a, b, c), (p, q, r) = before[:3], after[:3]
    steps = (b.x - a.x, b.y - a.y), (c.x - a.x, c.y - a.y)
    size = steps[0][0] * steps[1][1] - steps[0][1] * steps[1][0]
    if not size:
        return True
    # What the change of a corner is, as across and up: a first-degree formula in its coordinates.
    changes = [(end.x - start.x, end.y - start.y) for start, end in ((a, p), (b, q), (c, r))]
    rows = []
    for axis in (0, 1):
        one, other = (changes[at][axis] - changes[0][axis] for at in (1, 2))
        by_x = (one * steps[1][1] - other * steps[0][1]) / size
        by_y = (other * steps[0][0] - one * steps[1][0]) / size
        rows.append((by_x, by_y, changes[0][axis] - by_x * a.x - by_y * a.y))
    first, second = rows
    return all(first[i] * second[j] == first[j] * second[i] for i, j in ((0, 1), (0, 2), (1, 2)))


def _named(
    one: _Similarity, before: tuple[Place, ...], after: tuple[Place, ...], working: Working
) -> tuple[Movement, str]:
    a, b = one.factor
    if one.turned_over:
        return _mirror(one, before, after, working)
    if a == 1 and not b:
        for start, end in zip(before, after, strict=True):
            working.say(f"{start.text} → {end.text}: {pair_text(end.x - start.x, end.y - start.y)}")
        if not any(one.shift):
            raise NotSurd("two figures in one place")
        movement = Shifted(whole_or_fraction(one.shift[0]), whole_or_fraction(one.shift[1]))
        return movement, f"translation by the vector {pair_text(*one.shift)}"
    x, y = _over(one.shift, (1 - a, -b))
    centre = PlanePoint("", whole_or_fraction(x), whole_or_fraction(y))
    about = "the origin" if not x and not y else pair_text(x, y)
    degrees = _TURNS.get((a, b))
    if degrees is not None:
        for start, end in zip(before, after, strict=True):
            arms = [pair_text(place.x - x, place.y - y) for place in (start, end)]
            working.say(f"from the centre {pair_text(x, y)}: {start.text} is at {arms[0]}, {end.text} at {arms[1]}")
        way = "180°" if degrees == 180 else "90° anticlockwise" if degrees == 90 else "90° clockwise"
        return Turned(degrees, centre), f"rotation of {way} about {about}"
    if b:
        if a * a + b * b == 1:
            raise NotSurd("a rotation through an angle that is no multiple of 90°")
        raise impossible(working.used, "the figure is turned and made larger or smaller",
                         "that a single transformation does both is false")  # fmt: skip
    for start, end in zip(before, after, strict=True):
        arms = [pair_text(place.x - x, place.y - y) for place in (start, end)]
        working.say(f"from the centre {pair_text(x, y)}: {arms[0]} → {arms[1]}, {fraction_text(a)} times")
    return Enlarged(whole_or_fraction(a), centre), f"enlargement with scale factor {fraction_text(a)}, centre {about}"


def _mirror(
    one: _Similarity, before: tuple[Place, ...], after: tuple[Place, ...], working: Working
) -> tuple[Movement, str]:
    a, b = one.factor
    slid = _times(one.factor, (one.shift[0], -one.shift[1]))
    if a * a + b * b != 1 or one.shift[0] + slid[0] or one.shift[1] + slid[1]:
        raise impossible(working.used, "the figure is turned over and moved along, or made larger or smaller",
                         "that a single transformation does both is false")  # fmt: skip
    for start, end in zip(before, after, strict=True):
        working.say(f"half way from {start.text} to {end.text}: {pair_text(*_middle(start, end))}")
    start, end = next(
        (one, other) for one, other in zip(before, after, strict=True) if (one.x, one.y) != (other.x, other.y)
    )
    left, right = _line(end.x - start.x, end.y - start.y, _middle(start, end))
    relation = Relation(Letter(left), "=", right)
    names = {"x = 0": "the y-axis", "y = 0": "the x-axis"}
    said = write(relation)
    return Reflected(relation), f"reflection in {names.get(said, f'the line {said}')}"


def _middle(start: Place, end: Place) -> Pair:
    return (start.x + end.x) / 2, (start.y + end.y) / 2


def _line(across: Fraction, up: Fraction, middle: Pair) -> tuple[str, Expression]:
    """The line through the middle at right angles to the step from a corner to its image."""
    if not up:
        return "x", whole_or_fraction(middle[0])
    slope = -across / up
    form = PowerSum({Fraction(1): slope, Fraction(0): middle[1] - slope * middle[0]})
    return "y", form.expression("x")

"""Quadrilaterals that are of a special kind in a drawing: where it is worth while to ask whether they must be."""

from collections.abc import Iterator
from functools import lru_cache
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import length
from paperaudit.geometry.theorems.like_triangles import CLOSE
from paperaudit.geometry.theorems.theorem import Instance, Predicate, is_shape, lines_parallel
from paperaudit.maths.linear import LinearForm

MOST_SHAPES = 40
"""Parallelograms and kites that a figure is looked through for; a grid of lines has very many."""
Corners = tuple[str, str, str, str]


@lru_cache(maxsize=8)
def parallelograms(arrangement: Arrangement) -> tuple[Corners, ...]:
    """Quadrilaterals with drawn sides whose diagonals have one middle in the drawing; those that are named first."""
    spots = arrangement.at
    size = max((abs(part) for spot in spots.values() for part in spot), default=1.0) or 1.0
    middles: dict[tuple[int, int], list[tuple[str, str]]] = {}
    for a, c in combinations(arrangement.figure.points, 2):
        middle = tuple(round((spots[a][i] + spots[c][i]) / size * 1e5) for i in (0, 1))
        middles.setdefault(middle, []).append((a, c))  # type: ignore[arg-type]
    found = [
        (a, b, c, d)
        for group in middles.values()
        for (a, c), (b, d) in combinations(group, 2)
        if all(arrangement.joined(*side) for side in ((a, b), (b, c), (c, d), (d, a)))
        and len({arrangement.ray(*side).line for side in ((a, b), (b, c), (c, d), (d, a))}) == 4
    ]
    named = [set(shape.points) for shape, _ in arrangement.figure.shapes]
    return tuple(sorted(found, key=lambda corners: set(corners) not in named)[:MOST_SHAPES])


@lru_cache(maxsize=8)
def kites(arrangement: Arrangement) -> tuple[Corners, ...]:
    """Quadrilaterals with drawn sides that are kites in the drawing, the ends of the axis first and third."""
    found: list[Corners] = []
    for b, d in combinations(arrangement.figure.points, 2):
        ends = [
            point
            for point in arrangement.figure.points
            if point not in (b, d)
            and arrangement.joined(point, b)
            and arrangement.joined(point, d)
            and same_length(arrangement, (point, b), (point, d))
        ]
        for a, c in combinations(ends, 2):
            turns = [arrangement.turn(end, b, d) for end in (a, c)]
            if turns[0] * turns[1] < 0 and abs(turns[0]) < 180 - CLOSE and abs(turns[1]) < 180 - CLOSE:
                found.append((a, b, c, d))
    return tuple(found[:MOST_SHAPES])


def isosceles_trapeziums(arrangement: Arrangement) -> Iterator[tuple[Corners, Predicate]]:
    """Trapeziums with equal legs in the drawing, parallel sides first–second and third–fourth, and that these are."""
    for first, second in combinations(range(len(arrangement.lines)), 2):
        way = arrangement.parallel_way(first, second)
        if not way or arrangement.meet(first, second):
            continue
        one, two = arrangement.lines[first], arrangement.lines[second][::way]
        for (a, b), (d, c) in ((p, q) for p in combinations(one, 2) for q in combinations(two, 2)):
            if not arrangement.joined(a, d) or not arrangement.joined(b, c):
                continue
            if same_length(arrangement, (a, d), (b, c)) and not same_length(arrangement, (a, b), (d, c)):
                yield (a, b, c, d), lines_parallel(first, second)


def same_length(arrangement: Arrangement, one: tuple[str, str], two: tuple[str, str]) -> bool:
    """Whether two segments measure the same in the drawing."""
    first, second = arrangement.measured(length(*one)), arrangement.measured(length(*two))
    return abs(first - second) < CLOSE * first


def is_right(arrangement: Arrangement, a: str, b: str, c: str) -> bool:
    """Whether an angle measures 90° in the drawing."""
    return abs(arrangement.measured(arrangement.corner(a, b, c)) - 90) < CLOSE


def kind_text(kind: str, points: Corners) -> str:
    """ABCD is a parallelogram."""
    article = "an" if kind.startswith("isosceles") else "a"
    return f"{''.join(points)} is {article} {kind}"


def shown(reason: str, premises: tuple[Predicate, ...], kind: str, points: Corners, weight: int = 12) -> Instance:
    """The instance that concludes that a quadrilateral is of a kind."""
    return Instance(reason, premises, LinearForm(), is_shape(kind, points), kind_text(kind, points), weight)

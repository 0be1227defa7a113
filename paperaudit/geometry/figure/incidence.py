"""Which points lie on one line, and what a lone angle letter means."""

from collections.abc import Iterable, Iterator
from itertools import combinations
from typing import TypeAlias

from paperaudit.geometry.figure.figure import angle
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    AreaOf,
    CircleSize,
    DistanceOf,
    Expression,
    LengthOf,
    PerimeterOf,
    Relation,
    SectorOf,
    SegmentOf,
    leaves,
)
from paperaudit.model.fact import (
    AngleName,
    BisectsAngle,
    BisectsSegment,
    Centre,
    CirclesTouch,
    Collinear,
    Congruent,
    Crossing,
    Diameter,
    Drawn,
    Fact,
    Holds,
    Incircle,
    Midline,
    Midpoint,
    Parallel,
    Perpendicular,
    RayInside,
    RoundPoint,
    Shape,
    Similar,
    Tangent,
)


class Unclear(Exception):
    """A statement whose meaning the figure does not settle; caught by the strand, its text is shown."""


def drawn_paths(fact: Fact) -> list[tuple[str, ...]]:
    """The runs of collinear points that a fact puts on the page, each of two points or more."""
    match fact:
        case Shape(_, points):
            return _round(points)
        case Congruent(first, second) | Similar(first, second):
            return _round(first) + _round(second)
        case Drawn(_, path):
            return [path]
        case Collinear(points):
            return [points]
        case Crossing(first, second, point):
            return [(first[0], point, first[1]), (second[0], point, second[1])]
        case Parallel(paths):
            return list(paths)
        case Perpendicular(first, second):
            return [first, second]
        case BisectsAngle(path, bisected):
            return [path, *expression_paths(bisected)]
        case Midpoint(point, path):
            return [(path[0], point, path[1])]
        case BisectsSegment(path, segment):
            return [path, segment]
        case Midline(path, polygon):
            return [path, *_round(polygon)]
        case Centre(polygon=polygon) | Incircle(polygon=polygon):
            return _round(polygon)
        case Tangent(path):
            return [path]
        case CirclesTouch(first, second, at, inside) if at and inside != "one in the other":
            return [(first, second, at) if inside else (first, at, second)]
        case Diameter(path, centre):
            return [(path[0], centre, path[1])] if centre else [path]
        case RayInside(vertex, arm, point, other):
            return [(vertex, arm), (vertex, point), (vertex, other)]
        case RoundPoint(centre, points):
            return [(centre, point) for point in points]
        case AngleName(_, named):
            return expression_paths(named)
        case Holds(Relation(left, "<" | ">", right)) if isinstance(left, CircleSize) or isinstance(right, CircleSize):
            # "P is outside circle O" draws no line from P to O.
            return []
        case Holds(relation):
            return expression_paths(relation.left) + expression_paths(relation.right)
        case _:
            return []


def expression_paths(expression: Expression) -> list[tuple[str, ...]]:
    """The arms, segments and sides that an expression's quantities are made of."""
    paths: list[tuple[str, ...]] = []
    for leaf in leaves(expression):
        match leaf:
            case AngleOf(arm, vertex, other):
                paths += [(arm, vertex), (vertex, other)]
            case LengthOf(start, end):
                paths.append((start, end))
            case PerimeterOf(points) | AreaOf(points):
                paths += _round(points)
            case SectorOf(_, arc) if arc.centre:
                paths += [(arc.centre, arc.start), (arc.centre, arc.end)]
            case SegmentOf(_, arc):
                paths.append((arc.start, arc.end))
            case DistanceOf(_, path):
                paths.append(path)
    return paths


def lines_through_centres(facts: Iterable[Fact], paths: Iterable[tuple[str, ...]]) -> Iterator[tuple[str, ...]]:
    """Drawn medians, bisectors and altitudes with the centroid, incentre or orthocentre that lies on each of them.

    >>> medians = [Midpoint("D", ("B", "C")), Centre("centroid", "G", ("A", "B", "C"))]
    >>> list(lines_through_centres(medians, [("A", "D")]))
    [('A', 'G', 'D')]
    """
    stated, drawn = tuple(facts), [set(path) for path in paths]
    for centre in stated:
        if not isinstance(centre, Centre) or len(centre.polygon) != 3:
            continue
        for corner in centre.polygon:
            side = set(centre.polygon) - {corner}
            for fact in stated:
                foot = _foot_of(centre.kind, corner, side, fact)
                run = (corner, centre.point, foot)
                if foot and len(set(run)) == 3 and any(len(path & set(run)) > 1 for path in drawn):
                    yield run


def _foot_of(kind: str, corner: str, side: set[str], fact: Fact) -> str:
    """The other end of a line from a corner that a fact makes one of those that meet in a centre; "" where none."""
    match kind, fact:
        case "centroid", Midpoint(point, path) if set(path) == side:
            return point
        case "incentre", BisectsAngle(path, AngleOf(arm, vertex, other)) if vertex == corner and {arm, other} == side:
            return next(iter(set(path) - {corner}), "")
        case "orthocentre", Perpendicular(first, second):
            for line, base in ((first, second), (second, first)):
                if corner in line and set(base) == side:
                    return next(iter(set(line) - {corner}), "")
    return ""


def _round(points: tuple[str, ...]) -> list[tuple[str, ...]]:
    return [(start, end) for start, end in zip(points, points[1:] + points[:1], strict=True)]


def merged_lines(paths: Iterable[tuple[str, ...]]) -> tuple[tuple[str, ...], ...]:
    """Runs of points joined into lines: two that share two points are one line.

    >>> merged_lines([("A", "B"), ("B", "A"), ("A", "B", "D")])
    (('A', 'B', 'D'),)
    """
    lines: list[list[str]] = []
    for path in paths:
        points = list(dict.fromkeys(path))
        if len(points) > 1:
            lines.append(points)
        while pair := _on_one_line(lines):
            first, second = pair
            lines[first].extend(point for point in lines.pop(second) if point not in lines[first])
    return tuple(tuple(line) for line in lines)


def _on_one_line(lines: list[list[str]]) -> tuple[int, int] | None:
    """The first two lines that share two points, by index, None where no two do."""
    for (i, one), (j, two) in combinations(enumerate(lines), 2):
        if len(set(one) & set(two)) >= 2:
            return i, j
    return None


def stated_order(fact: Fact) -> list[tuple[str, str, str]]:
    """The triples of points that a fact puts in order on a line, the middle one in the middle."""
    match fact:
        case Collinear(points, True):
            return list(combinations(points, 3))
        case Crossing(first, second, point, True):
            return [(path[0], point, path[1]) for path in (first, second)]
        case Midpoint(point, (start, end)):
            return [(start, point, end)]
    return []


def resolve_angle(
    name: AngleAt,
    names: dict[AngleAt, AngleOf],
    shapes: Iterable[Shape],
    lines: tuple[tuple[str, ...], ...],
    between: frozenset[tuple[str, str, str]] = frozenset(),
) -> AngleOf:
    """The three points of ∠B or B̂₁: by the figure's own naming, else where only one angle is meant.

    One shape with a corner there settles it, or several between the same rays, else exactly two drawn arms;
    `between` holds the triples (first, middle, last) that are stated to be in order on a line. Raises Unclear.
    """
    plain = AngleAt(name.vertex, name.number)
    if plain in names:
        found = names[plain]
        return angle(found.arm, found.vertex, found.other, name.reflex)
    if name.number:
        raise Unclear(f"the figure does not say which angle {name.vertex}{name.number} is")
    corners = {_corner(shape.points, name.vertex) for shape in shapes if name.vertex in shape.points}
    if corners and len({_between_rays(corner, name.vertex, lines, between) for corner in corners}) == 1:
        arm, other = min(corners)
        return angle(arm, name.vertex, other, name.reflex)
    through = [line for line in lines if name.vertex in line]
    one_sided = [line for line in through if not _runs_through(line, name.vertex, between)]
    if not corners and len(through) == len(one_sided) == 2:
        arms = [next(point for point in line if point != name.vertex) for line in through]
        return angle(arms[0], name.vertex, arms[1], name.reflex)
    raise Unclear(f"∠{name.vertex} could be more than one angle: name it by three letters")


Ray: TypeAlias = str | tuple[str, ...]


def _between_rays(
    arms: tuple[str, str], vertex: str, lines: tuple[tuple[str, ...], ...], between: frozenset[tuple[str, str, str]]
) -> frozenset[Ray]:
    """The two rays of a corner: each its line where the vertex is stated to be an end of it, else its point."""

    def ray(arm: str) -> Ray:
        line = next((line for line in lines if vertex in line and arm in line), (vertex, arm))
        other = [point for point in line if point not in (vertex, arm)]
        beside = all(
            (vertex, arm, point) in between
            or (point, arm, vertex) in between
            or (vertex, point, arm) in between
            or (arm, point, vertex) in between
            for point in other
        )
        return line if other and beside else arm

    return frozenset(map(ray, arms))


def _runs_through(line: tuple[str, ...], vertex: str, between: frozenset[tuple[str, str, str]]) -> bool:
    """Whether a line has points on both sides of `vertex`, so far as their order is stated."""
    return any(
        (first, vertex, last) in between or (last, vertex, first) in between for first, last in combinations(line, 2)
    )


def _corner(points: tuple[str, ...], vertex: str) -> tuple[str, str]:
    index = points.index(vertex)
    first, second = sorted((points[index - 1], points[(index + 1) % len(points)]))
    return first, second

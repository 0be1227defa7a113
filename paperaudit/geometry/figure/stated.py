"""From one typed fact to conditions on the points of a figure."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from paperaudit.geometry.figure.centres import (
    bisecting_conditions,
    centre_conditions,
    incircle_conditions,
    midline_conditions,
)
from paperaudit.geometry.figure.circles import KnownCircles
from paperaudit.geometry.figure.figure import (
    Balance,
    Condition,
    EqualLengths,
    InLine,
    InsidePolygon,
    Ordered,
    OutsidePolygon,
    ParallelPair,
    RayBetween,
    RightAngle,
    RoundOrder,
    SideOfLine,
    SizeRelation,
    angle,
    length,
)
from paperaudit.geometry.figure.incidence import Unclear
from paperaudit.geometry.figure.relations import relation_conditions
from paperaudit.geometry.figure.shapes import shape_conditions
from paperaudit.geometry.figure.sizes import linear_form
from paperaudit.model.expression import AngleOf, Expression, Quotient, Relation
from paperaudit.model.fact import (
    AngleName,
    Between,
    BisectsAngle,
    BisectsSegment,
    Centre,
    Circle,
    CirclesTouch,
    Collinear,
    Congruent,
    Crossing,
    Diameter,
    Drawn,
    Fact,
    Holds,
    Incircle,
    Inside,
    Midline,
    Midpoint,
    OnArc,
    Outside,
    Parallel,
    Path,
    Perpendicular,
    RayInside,
    RoundPoint,
    Shape,
    Sides,
    Similar,
    Tangent,
)


@dataclass(frozen=True, slots=True)
class Setting:
    """What the facts of one question share: all of them, the lines, the circles, the unit of length.

    `resolved` names angles by three points, and arcs and circles by their centres.
    """

    facts: tuple[tuple[Fact, ...], ...]
    lines: tuple[tuple[str, ...], ...]
    circles: KnownCircles
    unit: str
    resolved: Callable[[Expression], Expression]

    @property
    def parallel(self) -> frozenset[Path]:
        """Every line that is said to be parallel to another, named both ways."""
        paths = [path for facts in self.facts for fact in facts if isinstance(fact, Parallel) for path in fact.paths]
        return frozenset(path for start, end in paths for path in ((start, end), (end, start)))


def conditions_of(fact: Fact, label: int, setting: Setting) -> Iterator[Condition]:
    """What one fact asks of the drawing; facts about circles are put together by `circle_conditions`.

    Raises Unclear or NotLinear for what cannot be taken in.
    """
    match fact:
        case Shape():
            yield from shape_conditions(fact, label, setting.facts)
        case Collinear(points, ordered):
            for triple in zip(points, points[1:], points[2:], strict=False):
                yield Ordered(*triple, label) if ordered else InLine(triple, label)
        case Crossing(first, second, point, within):
            for path in (first, second):
                if point in path:
                    continue
                yield (Ordered(path[0], point, path[1], label) if within else InLine((path[0], point, path[1]), label))
        case Parallel(paths):
            for other in paths[1:]:
                yield ParallelPair(paths[0], other, label)
        case Perpendicular(first, second):
            yield RightAngle(first, second, label)
        case BisectsAngle(path, bisected):
            yield from _bisector(path, setting.resolved(bisected), label)
        case Midpoint(point, (start, end)):
            yield Ordered(start, point, end, label)
            yield EqualLengths(length(start, point), length(point, end), label, "midpoint")
        case RoundPoint(centre, points):
            yield RoundOrder(centre, points, label)
        case Inside(point, polygon):
            yield InsidePolygon(point, polygon, label)
        case Between(point, first, second):
            yield SideOfLine(point, second[0], first, True, label)
            yield SideOfLine(point, first[0], second, True, label)
        case Sides(points, line, same):
            yield SideOfLine(points[0], points[1], line, same, label)
        case Congruent(first, second):
            yield from _corresponding(first, second, label, sides=True)
        case Similar(first, second):
            yield from _corresponding(first, second, label, sides=False)
        case Holds(relation):
            left, right = setting.resolved(relation.left), setting.resolved(relation.right)
            yield from relation_conditions(Relation(left, relation.sign, right), label, setting.unit)
        case RayInside(vertex, arm, point, other):
            yield RayBetween(vertex, arm, point, other, label)
        case Outside(point, polygon):
            yield OutsidePolygon(point, polygon, label)
        case Centre():
            yield from centre_conditions(fact, label, setting.lines)
        case Incircle():
            yield from incircle_conditions(fact, setting.circles, label, setting.lines)
        case BisectsSegment():
            yield from bisecting_conditions(fact, label, setting.lines)
        case Midline():
            yield from midline_conditions(fact, label, setting.lines, setting.parallel)
        case Drawn() | AngleName() | Circle() | Tangent() | Diameter() | CirclesTouch() | OnArc():
            pass
        case _:
            raise Unclear(f"{type(fact).__name__.lower()} is not used yet")


def _bisector(path: Path, whole: Expression, label: int) -> Iterator[Condition]:
    assert isinstance(whole, AngleOf)
    if whole.vertex not in path:
        raise Unclear(f"{''.join(path)} does not start at {whole.vertex}, the vertex of the angle that it bisects")
    point = path[1] if path[0] == whole.vertex else path[0]
    first = linear_form(angle(whole.arm, whole.vertex, point))
    second = linear_form(angle(point, whole.vertex, whole.other))
    yield RayBetween(whole.vertex, whole.arm, point, whole.other, label, halves=True)
    yield SizeRelation(first - second, "angle", label, "angle-bisector")


def _corresponding(
    first: Path | tuple[str, ...], second: tuple[str, ...], label: int, sides: bool
) -> Iterator[Condition]:
    count = len(first)
    reason = "congruent-triangles-parts" if sides else "similar-triangles-angles"
    for index in range(count):
        before, after = (index - 1) % count, (index + 1) % count
        one = linear_form(angle(first[before], first[index], first[after]))
        two = linear_form(angle(second[before], second[index], second[after]))
        yield SizeRelation(one - two, "angle", label, reason)
        side, other = length(first[index], first[after]), length(second[index], second[after])
        if sides:
            yield EqualLengths(side, other, label, reason)
        elif count > 3 and index:
            ratio = Quotient(length(first[0], first[1]), length(second[0], second[1]))
            yield Balance(Quotient(side, other), ratio, label, "similar-triangles-sides")

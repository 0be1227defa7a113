"""From typed givens to a figure: every fact becomes points, lines and conditions."""

from collections.abc import Iterable, Iterator

from paperaudit.geometry.circles import circle_conditions
from paperaudit.geometry.figure import (
    Condition,
    Convex,
    EqualLengths,
    Figure,
    InLine,
    InsidePolygon,
    OnCircle,
    Ordered,
    OutsidePolygon,
    ParallelPair,
    RayBetween,
    RightAngle,
    RoundOrder,
    SideOfLine,
    SizeRelation,
    TangentAt,
    angle,
    length,
)
from paperaudit.geometry.incidence import (
    Unclear,
    drawn_paths,
    expression_paths,
    merged_lines,
    resolve_angle,
    stated_order,
)
from paperaudit.geometry.shapes import shape_conditions
from paperaudit.geometry.sizes import kind_of, length_unit, linear_form, refuse_foreign_units
from paperaudit.model.expression import AngleAt, AngleOf, Expression, LengthOf, leaves, letters_of, with_leaves
from paperaudit.model.fact import (
    AngleName,
    Between,
    BisectsAngle,
    Circle,
    Collinear,
    Congruent,
    Crossing,
    Diameter,
    Drawn,
    Fact,
    Given,
    Holds,
    Inside,
    Midpoint,
    Origin,
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

_SETTING = (
    Shape
    | Drawn
    | Collinear
    | Crossing
    | RoundPoint
    | Inside
    | Between
    | Sides
    | AngleName
    | Circle
    | Outside
    | RayInside
)


class FigureBuilder:
    """Collects the givens of one part into a `Figure`, and reads its asks in the same terms."""

    def __init__(self, givens: tuple[Given, ...], asked: Iterable[Expression | Fact] = ()) -> None:
        self._givens = givens
        facts = [fact for given in givens for fact in given.facts]
        wanted = list(asked)
        paths = [path for fact in facts for path in drawn_paths(fact)]
        for item in wanted:
            paths += expression_paths(item) if _is_expression(item) else drawn_paths(item)  # type: ignore[arg-type]
        self.lines = merged_lines(paths)
        self._names = {fact.name: fact.angle for fact in facts if isinstance(fact, AngleName)}
        self._shapes = [
            (fact, label) for label, given in enumerate(givens) for fact in given.facts if isinstance(fact, Shape)
        ]
        self._between = frozenset(triple for fact in facts for triple in stated_order(fact))
        relations = [fact.relation for fact in facts if isinstance(fact, Holds)]
        self.unit = length_unit(tuple(side for relation in relations for side in (relation.left, relation.right)))

    def resolved(self, expression: Expression) -> Expression:
        """The expression with every ∠B and B̂₁ replaced by its three points; raises Unclear."""
        return with_leaves(expression, self._resolve)

    def _resolve(self, leaf: Expression) -> Expression:
        if isinstance(leaf, AngleAt):
            shapes = [shape for shape, _ in self._shapes]
            return resolve_angle(leaf, self._names, shapes, self.lines, self._between)
        return leaf

    def figure(self, sketch: tuple[tuple[str, float, float], ...] = (), asked: Iterable[Expression] = ()) -> Figure:
        """The figure of all givens; raises Unclear or NotLinear for what it cannot take in."""
        conditions: list[Condition] = []
        for label, given in enumerate(self._givens):
            for fact in given.facts:
                conditions.extend(self._conditions(fact, label))
        conditions.extend(circle_conditions(self._givens))
        expressions = [
            side
            for given in self._givens
            for fact in given.facts
            if isinstance(fact, Holds)
            for side in (fact.relation.left, fact.relation.right)
        ]
        expressions += list(asked)
        points = tuple(dict.fromkeys(point for line in self.lines for point in line))
        facts = [fact for given in self._givens for fact in given.facts]
        stray = [fact.point for fact in facts if isinstance(fact, Inside | Between | Outside)]
        stray += [
            point
            for condition in conditions
            if isinstance(condition, OnCircle)
            for point in (*condition.points, condition.centre)
        ]
        stray += [condition.centre for condition in conditions if isinstance(condition, TangentAt)]
        stray += [point for fact in facts if isinstance(fact, Circle) and fact.centre for point in (fact.centre,)]
        names = tuple(
            dict.fromkeys(
                angle_name
                for side in expressions
                for angle_name in leaves(self.resolved(side))
                if isinstance(angle_name, AngleOf)
            )
        )
        conditions = [_with_reflex_corners(condition, conditions, names) for condition in conditions]
        return Figure(
            points=tuple(dict.fromkeys(points + tuple(stray))),
            lines=self.lines,
            shapes=tuple(self._shapes),
            conditions=tuple(conditions),
            letters=tuple(dict.fromkeys(letter for side in expressions for letter in letters_of(side))),
            sketch=sketch,
            fixed_names=names,
            midpoints=tuple(
                (fact.point, *fact.path, label)
                for label, given in enumerate(self._givens)
                for fact in given.facts
                if isinstance(fact, Midpoint)
            ),
            context=frozenset(label for label, given in enumerate(self._givens) if _sets_up(given)),
        )

    def _conditions(self, fact: Fact, label: int) -> Iterator[Condition]:
        match fact:
            case Shape():
                yield from shape_conditions(fact, label, [given.facts for given in self._givens])
            case Collinear(points, ordered):
                for triple in zip(points, points[1:], points[2:], strict=False):
                    yield Ordered(*triple, label) if ordered else InLine(triple, label)
            case Crossing(first, second, point, within):
                for path in (first, second):
                    if point in path:
                        continue
                    yield (
                        Ordered(path[0], point, path[1], label) if within else InLine((path[0], point, path[1]), label)
                    )
            case Parallel(paths):
                for other in paths[1:]:
                    yield ParallelPair(paths[0], other, label)
            case Perpendicular(first, second):
                yield RightAngle(first, second, label)
            case BisectsAngle(path, bisected):
                yield from self._bisector(path, bisected, label)
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
            case Holds():
                yield from self._relation(fact, label)
            case RayInside(vertex, arm, point, other):
                yield RayBetween(vertex, arm, point, other, label)
            case Outside(point, polygon):
                yield OutsidePolygon(point, polygon, label)
            case Drawn() | AngleName() | Circle() | Tangent() | Diameter():
                pass
            case _:
                raise Unclear(f"{type(fact).__name__.lower()} is not used yet")

    def _bisector(self, path: Path, bisected: AngleOf | AngleAt, label: int) -> Iterator[Condition]:
        whole = self.resolved(bisected)
        assert isinstance(whole, AngleOf)
        if whole.vertex not in path:
            raise Unclear(f"{''.join(path)} does not start at {whole.vertex}, the vertex of the angle that it bisects")
        point = path[1] if path[0] == whole.vertex else path[0]
        first = linear_form(angle(whole.arm, whole.vertex, point))
        second = linear_form(angle(point, whole.vertex, whole.other))
        yield RayBetween(whole.vertex, whole.arm, point, whole.other, label, halves=True)
        yield SizeRelation(first - second, "angle", label, "angle-bisector")

    def _relation(self, fact: Holds, label: int) -> Iterator[Condition]:
        relation = fact.relation
        left, right = self.resolved(relation.left), self.resolved(relation.right)
        if isinstance(left, LengthOf) and isinstance(right, LengthOf) and relation.sign == "=":
            yield EqualLengths(length(left.start, left.end), length(right.start, right.end), label)
            return
        if relation.sign != "=":
            raise Unclear(f"an inequality ({relation.sign}) between sizes is not used yet")
        form = linear_form(left, self.unit) - linear_form(right, self.unit)
        refuse_foreign_units(form, relation)
        yield SizeRelation(form, kind_of(form), label)


def _is_expression(item: Expression | Fact) -> bool:
    from typing import get_args

    return isinstance(item, get_args(Expression))


def _with_reflex_corners(condition: Condition, conditions: list[Condition], names: tuple[AngleOf, ...]) -> Condition:
    """A polygon of which the paper names a reflex corner is not convex there."""
    if not isinstance(condition, Convex):
        return condition
    points = condition.points
    stated = [size for other in conditions if isinstance(other, SizeRelation) for size in other.form.terms]
    named = {
        angle(size.arm, size.vertex, size.other)
        for size in (*stated, *names)
        if isinstance(size, AngleOf) and size.reflex
    }
    reflex = tuple(
        vertex
        for index, vertex in enumerate(points)
        if angle(points[index - 1], vertex, points[(index + 1) % len(points)]) in named
    )
    return Convex(points, condition.label, reflex)


def _sets_up(given: Given) -> bool:
    """Whether a statement belongs to the figure, by its heading or by what it says."""
    return given.origin in (Origin.FIGURE, Origin.CONVENTION) or all(isinstance(fact, _SETTING) for fact in given.facts)


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
        if sides:
            yield EqualLengths(length(first[index], first[after]), length(second[index], second[after]), label, reason)

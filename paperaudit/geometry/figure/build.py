"""From typed givens to a figure: every fact becomes points, lines and conditions."""

from collections.abc import Iterable
from typing import get_args

from paperaudit.geometry.figure.circles import circle_conditions, known_circles
from paperaudit.geometry.figure.figure import (
    HIDDEN,
    Condition,
    Convex,
    Figure,
    OnCircle,
    SizeRelation,
    TangentAt,
    angle,
)
from paperaudit.geometry.figure.incidence import (
    drawn_paths,
    expression_paths,
    lines_through_centres,
    merged_lines,
    resolve_angle,
    stated_order,
)
from paperaudit.geometry.figure.sizes import length_unit
from paperaudit.geometry.figure.stated import Setting, conditions_of
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    ArcLengthOf,
    ArcOf,
    BearingOf,
    CircleSize,
    DistanceOf,
    Expression,
    LengthOf,
    Letter,
    Number,
    SectorOf,
    SegmentOf,
    leaves,
    letters_of,
    with_leaves,
)
from paperaudit.model.fact import (
    AngleName,
    Between,
    Centre,
    Circle,
    Collinear,
    Congruent,
    Crossing,
    Diameter,
    Drawn,
    Fact,
    Given,
    Holds,
    Incircle,
    Inside,
    Midpoint,
    OnArc,
    Origin,
    Outside,
    RayInside,
    RoundPoint,
    Shape,
    Sides,
    Similar,
)
from paperaudit.model.quantity import centre_of_circle

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
    | OnArc
    | Outside
    | RayInside
)

_ROUND = ArcOf | ArcLengthOf | SectorOf | SegmentOf


class FigureBuilder:
    """Collects the givens of one part into a `Figure`, and reads its asks in the same terms."""

    def __init__(self, givens: tuple[Given, ...], asked: Iterable[Expression | Fact] = ()) -> None:
        self._givens = givens
        self._facts = [fact for given in givens for fact in given.facts]
        wanted = list(asked)
        self._asked = [side for item in wanted for side in _expressions(item)]
        paths = [path for fact in self._facts for path in drawn_paths(fact)]
        for item in wanted:
            paths += expression_paths(item) if _is_expression(item) else drawn_paths(item)  # type: ignore[arg-type]
        self.lines = merged_lines([*paths, *lines_through_centres(self._facts, paths)])
        self._names = {fact.name: fact.angle for fact in self._facts if isinstance(fact, AngleName)}
        self._shapes = [
            (fact, label) for label, given in enumerate(givens) for fact in given.facts if isinstance(fact, Shape)
        ]
        self._between = frozenset(triple for fact in self._facts for triple in stated_order(fact))
        self._sides = [
            side
            for fact in self._facts
            if isinstance(fact, Holds)
            for side in (fact.relation.left, fact.relation.right)
        ]
        self.unit = length_unit(tuple(self._sides))
        self._circles = known_circles(givens, tuple(self._asked))

    def resolved(self, expression: Expression) -> Expression:
        """The expression with ∠B and B̂₁ by three points, arcs and circles by their centres; raises Unclear.

        The radius of a circle with a letter for its centre is the length from there to a point of it.
        """
        return with_leaves(expression, self._resolve)

    def _resolve(self, leaf: Expression) -> Expression:
        if isinstance(leaf, AngleAt):
            shapes = [shape for shape, _ in self._shapes]
            return resolve_angle(leaf, self._names, shapes, self.lines, self._between)
        size = self._circles.named(leaf)
        if isinstance(size, CircleSize) and size.kind in ("radius", "diameter"):
            return self._through_centre(size)
        return size

    def _through_centre(self, size: CircleSize) -> Expression:
        """A radius or diameter as the segment that is drawn as one, else by a point of the circle that has a letter."""
        points = [point for point in self._circles.members.get(size.centre, ()) if not point.startswith(HIDDEN)]
        if size.kind == "diameter":
            for fact in self._facts:
                if isinstance(fact, Diameter) and size.centre == (fact.centre or self._circles.unnamed):
                    return LengthOf(*fact.path)
        middle = centre_of_circle(size.centre)
        drawn = [point for point in points if any({middle, point} <= set(line) for line in self.lines)]
        if size.kind == "radius" and points and not size.centre.startswith(HIDDEN):
            return LengthOf(middle, (drawn or points)[0])
        return size

    def figure(self, sketch: tuple[tuple[str, float, float], ...] = (), asked: Iterable[Expression] = ()) -> Figure:
        """The figure of all givens; raises Unclear or NotLinear for what it cannot take in."""
        groups = tuple(given.facts for given in self._givens)
        setting = Setting(groups, self.lines, self._circles, self.unit, self.resolved)
        conditions: list[Condition] = []
        for label, facts in enumerate(groups):
            for fact in facts:
                conditions.extend(conditions_of(fact, label, setting))
        conditions.extend(circle_conditions(self._givens, self._circles))
        sizes = [leaf for side in (*self._sides, *asked) for leaf in leaves(self.resolved(side))]
        names = tuple(dict.fromkeys(size for size in sizes if isinstance(size, AngleOf)))
        conditions = [_with_reflex_corners(condition, conditions, names) for condition in conditions]
        letters = (letter for side in (*self._sides, *asked) for letter in letters_of(side) if letter != "π")
        return Figure(
            points=self._points(conditions, sizes),
            lines=self.lines,
            shapes=tuple(self._shapes),
            conditions=tuple(conditions),
            letters=tuple(dict.fromkeys(letters)),
            sketch=sketch,
            fixed_names=names,
            named_sizes=self._named_sizes(),
            alike=tuple(
                (fact.first, fact.second, isinstance(fact, Congruent), label)
                for label, facts in enumerate(groups)
                for fact in facts
                if isinstance(fact, Congruent | Similar)
            ),
            midpoints=tuple(
                (fact.point, *fact.path, label)
                for label, facts in enumerate(groups)
                for fact in facts
                if isinstance(fact, Midpoint)
            ),
            context=frozenset(label for label, given in enumerate(self._givens) if _sets_up(given)),
            arcs=any(isinstance(size, _ROUND) for size in sizes),
        )

    def _named_sizes(self) -> tuple[Expression, ...]:
        """Every size that the givens and the question name, each once."""
        sides = [self.resolved(side) for side in (*self._sides, *self._asked)]
        found = dict.fromkeys(leaf for side in sides for leaf in leaves(side))
        return tuple(leaf for leaf in found if not isinstance(leaf, Letter | Number))

    def _points(self, conditions: list[Condition], sizes: list[Expression]) -> tuple[str, ...]:
        """Every point of the figure: those of its lines first, then those that no line goes through."""
        points = [point for line in self.lines for point in line]
        points += [fact.point for fact in self._facts if isinstance(fact, Inside | Between | Outside | Centre)]
        points += [point for fact in self._facts if isinstance(fact, Sides) for point in fact.points]
        for condition in conditions:
            if isinstance(condition, OnCircle):
                points += [*condition.points, condition.centre]
            elif isinstance(condition, TangentAt):
                points.append(condition.centre)
        points += [centre_of_circle(fact.centre) for fact in self._facts if isinstance(fact, Circle) and fact.centre]
        points += [fact.centre or self._circles.unnamed for fact in self._facts if isinstance(fact, Incircle)]
        for size in sizes:
            if isinstance(size, DistanceOf):
                points.append(size.point)
            elif isinstance(size, BearingOf):
                points += [size.start, size.end]
        return tuple(dict.fromkeys(points))


def _expressions(item: Expression | Fact) -> tuple[Expression, ...]:
    """What is asked for, or the two sides of a relation to be shown."""
    if isinstance(item, Holds):
        return item.relation.left, item.relation.right
    return (item,) if _is_expression(item) else ()  # type: ignore[return-value]


def _is_expression(item: Expression | Fact) -> bool:
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

"""Reads clauses on the named parts of figures and on lines through points: bases, legs, the angle at the apex."""

from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.maths.quantities import angle_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import AngleAt, AngleOf, DistanceOf, Expression, LengthOf, Relation
from paperaudit.model.fact import Collinear, Fact, Holds, Midpoint, Parallel, Path, Perpendicular, Shape
from paperaudit.wording.lines import on_line
from paperaudit.wording.named import (
    corners_of,
    distinct,
    measure_of,
    measures_of,
    path_of,
    paths_of,
    point_of,
    points_under,
    spots_of,
)
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import equal_sides, right_angle_at, shape_called

Facts = tuple[Fact, ...]


def bases_are(node: Node, scene: Scene) -> Facts:
    """AB and CD are the bases of a trapezium: they are parallel."""
    one, other = _own_paths(node)
    corners = _around(node, scene, one, other)
    return (Parallel((_along(corners, one), _along(corners[::-1], other))),)


def legs_are(node: Node, scene: Scene) -> Facts:
    """The legs are equal in an isosceles triangle, enclose the right angle, are the other sides of a trapezium."""
    one, other = _own_paths(node)
    known = _shape(node, scene, one, other)
    if len(known.points) == 4:
        _around(node, scene, one, other)
        a, b, c, d = known.points
        bases = ((a, b), (d, c)) if set(one) in ({b, c}, {d, a}) else ((b, c), (a, d))
        return (Parallel(bases),) if known.kind == "trapezium" else _none(node, "a trapezium")
    common = next(iter(set(one) & set(other)), "")
    facts: Facts = ()
    if "isosceles" in known.qualities or "equal" in node.text:
        facts = (equal_sides(common, known.points),)
    if "right-angled" in known.qualities:
        facts = (*facts, right_angle_at(common, known.points))
    return facts or _none(node, "an isosceles or a right-angled triangle")


def apex_angle(node: Node, scene: Scene) -> Facts:
    """∠A is the angle between the equal sides."""
    named = first(node, "angle", "of_shape")
    angle: Expression = angle_of(named) if named is not None and named.expr_name == "angle" else AngleAt(_letter(node))
    if not isinstance(angle, AngleOf | AngleAt):
        return _none(node, "an angle such as ∠ABC")
    return (equal_sides(angle.vertex, _triangle(node, scene, (angle.vertex,))),)


def base_angles(node: Node, scene: Scene) -> Facts:
    """∠B and ∠C are the angles at the base: the sides opposite them are equal."""
    named = first(node, "quantities")
    angles = measures_of(named) if named is not None else ()
    ends = tuple(angle.vertex for angle in angles if isinstance(angle, AngleOf | AngleAt)) or spots_of(node)
    if len(ends) != 2:
        return _none(node, "two angles")
    triangle = _triangle(node, scene, ends)
    return (equal_sides(next(point for point in triangle if point not in ends), triangle),)


def thirds(node: Node, scene: Scene) -> Facts:
    """D and E trisect BC, D the nearer to B."""
    if not ("trisect" in node.text or "three equal" in node.text):
        return _none(node, "as in “into three equal parts”")
    start, end = path_of(the(node, "path"))
    run = distinct((start, *points_under(node), end), node)
    parts = tuple(LengthOf(one, two) for one, two in pairwise(run))
    return (Collinear(run), *(Holds(Relation(one, "=", two)) for one, two in pairwise(parts)))


def halves_it(node: Node, scene: Scene) -> Facts:
    """D bisects BC."""
    return (Midpoint(point_of(the(node, "point")), path_of(the(node, "path"))),)


def on_beyond(node: Node, scene: Scene) -> Facts:
    """D is on BC extended beyond C."""
    past = next(c.text for c in every(node, "corner", "points", "path") if c.expr_name == "corner")
    start, end = path_of(the(node, "path"))
    if past not in (start, end):
        return _none(node, f"{start} or {end}")
    run = (start, end) if past == end else (end, start)
    return tuple(on_line(point, run, node, beyond=True) for point in points_under(the(node, "points")))


def upright_meets(node: Node, scene: Scene) -> Facts:
    """DE is the perpendicular bisector of AB and meets BC at E."""
    line, segment = _own_paths(node)
    met = _met(node)
    facts: list[Fact] = [Perpendicular(line, segment)]
    middle = [point for point, path in met if set(path) == set(segment)]
    middle += [end for end in line if any({end, *segment} <= set(known.points) for known in scene.lines)]
    others = [end for end in line if end not in [point for point, _ in met]]
    if not middle and len(others) == 1 and any(point in line for point, _ in met):
        middle = others
    if not middle or middle[0] not in line:
        return _none(node, "the letter of the mid-point as one end of the line")
    facts.append(Midpoint(middle[0], segment))
    return (*facts, *(on_line(point, path, node) for point, path in met if point != middle[0]))


def beside_cuts(node: Node, scene: Scene) -> Facts:
    """A line parallel to BC meets AB at D and AC at E; of a line DE one of the points may be known already."""
    met = _met(node)
    *own, beside = _own_paths(node)
    named = [path_of(piece) for piece in every(node, "length", "path", "met_at") if piece.expr_name == "length"]
    lines = [*own, *named] or [(one, other) for (one, _), (other, _) in pairwise(met)]
    if not lines or not {point for point, _ in met} <= set(lines[0]):
        return _none(node, "two points where it cuts the sides")
    start, end = lines[0] if len(met) == 1 else (met[0][0], met[1][0])
    turned = any(beside[point == end] not in side and beside[point == start] in side for point, side in met)
    way = Parallel(((start, end), (beside[1], beside[0]) if turned else beside))
    return (*(on_line(point, side, node) for point, side in met), way)


def through_cuts(node: Node, scene: Scene) -> Facts:
    """A line through O meets AD at E and BC at F."""
    past = points_under(node)[0]
    met = _met(node)
    ends = tuple(point for point, _ in met)
    named = first(node, "length", "point")
    if named is not None and named.expr_name == "length" and set(path_of(named)) != {*ends}:
        return _none(node, "the points of the line itself")
    run = (ends[0], past, ends[1]) if len(ends) == 2 else (past, *ends)
    on = tuple(on_line(point, path, node) for point, path in met if point not in path)
    return (*on, Collinear(distinct(run, node), ordered=False)) if len(run) > 2 else _none(node, "where else it cuts")


def beside_through(node: Node, scene: Scene) -> Facts:
    """Through C, CE is drawn parallel to BA."""
    point = point_of(the(node, "point"))
    line, beside = _own_paths(node)
    way = Parallel((line, beside))
    return (way,) if point in line else (Collinear(distinct((line[0], point, line[1]), node), ordered=False), way)


def passes(node: Node, scene: Scene) -> Facts:
    """EF passes through O."""
    point = point_of(the(node, "point"))
    path = the(node, "path")
    start, end = path_of(path)
    if point in (start, end):
        return _none(node, "another point of the line")
    noun = first(path, "path_noun")
    endless = noun is not None and "line" in noun.text and "segment" not in noun.text
    return (Collinear((start, point, end), ordered=not endless),)


def straight_angle(node: Node, scene: Scene) -> Facts:
    """∠AOB is a straight angle."""
    named = the(node, "angle", "corners")
    angle = angle_of(named) if named.expr_name == "angle" else None
    run: tuple[str, ...] = (angle.arm, angle.vertex, angle.other) if isinstance(angle, AngleOf) else ()
    run = run if angle is not None else corners_of(named)
    return (Collinear(distinct(run, node)),) if len(run) == 3 else _none(node, "an angle named by three letters")


def linear_pair(node: Node, scene: Scene) -> Facts:
    """∠AOB and ∠BOC form a linear pair: A, O, C lie on one line."""
    one, other = (angle_of(angle) for angle in every(node, "angle"))
    if not (isinstance(one, AngleOf) and isinstance(other, AngleOf) and one.vertex == other.vertex):
        return _none(node, "two angles at one point, as in ∠AOB and ∠BOC")
    arms = {one.arm, one.other} ^ {other.arm, other.other}
    if len(arms) != 2:
        return _none(node, "two angles with one arm in common")
    start, end = sorted(arms, key=(one.arm, one.other, other.arm, other.other).index)
    return (Collinear((start, one.vertex, end)),)


def diagonals_are(node: Node, scene: Scene) -> Facts:
    """The diagonals of a quadrilateral are perpendicular, or equal."""
    named = first(node, "of_shape")
    corners = _named(named, scene) if named is not None else scene.latest(None)
    if corners is None or len(corners) != 4:
        return _none(node, "the quadrilateral's name")
    one, other = corners[::2], corners[1::2]
    if "perpendicular" in node.text or "right angles" in node.text:
        return (Perpendicular((one[0], one[1]), (other[0], other[1])),)
    return (Holds(Relation(LengthOf(*one), "=", LengthOf(*other))),)


def height_is(node: Node, scene: Scene) -> Facts:
    """The height of a trapezium is 4 cm: the distance from one of its parallel sides to the other."""
    named = first(node, "of_shape")
    corners = _named(named, scene) if named is not None else scene.latest(4)
    for known in scene.parallels:
        one, other = known.paths[:2]
        if corners is not None and {*one, *other} == set(corners):
            size = measure_of(next(m for m in every(node, "of_shape", "measure") if m.expr_name == "measure"))
            return (Holds(Relation(DistanceOf(one[0], other), "=", size)),)
    return _none(node, "the parallel sides first, or the height by its two letters")


def _none(node: Node, expected: str) -> Facts:
    raise NotUnderstood(f"what “{node.text}” says of the figure is not clear", node.start, expected)


def _own_paths(node: Node) -> tuple[Path, ...]:
    """The paths of a clause without those that a line meets."""
    return tuple(path_of(path) for path in every(node, "path", "met_at", "of_shape") if path.expr_name == "path")


def _met(node: Node) -> tuple[tuple[str, Path], ...]:
    """The points in which a line meets others, each with the line that it is on."""
    met = the(node, "met_at")
    points, paths = points_under(met), paths_of(met)
    return tuple(zip(points, paths, strict=True))


def _named(of_shape: Node, scene: Scene) -> tuple[str, ...]:
    """The corners of the figure that is named, or of the one before that its noun fits."""
    named = the(of_shape, "the_shape", "polygon")
    return corners_of(named) if named.expr_name == "polygon" else shape_called(named, scene)


def _shape(node: Node, scene: Scene, one: Path, other: Path) -> Shape:
    """The figure named last of which both are sides."""
    for known in reversed(scene.shapes):
        sides = [set(side) for side in pairwise((*known.points, known.points[0]))]
        if len(known.points) < 5 and set(one) in sides and set(other) in sides and set(one) != set(other):
            return known
    raise NotUnderstood("no figure with these sides was named before", node.start, "the figure first")


def _around(node: Node, scene: Scene, one: Path, other: Path) -> tuple[str, ...]:
    """The corners of the quadrilateral of which both are opposite sides."""
    known = _shape(node, scene, one, other)
    if len(known.points) != 4 or {*one} & {*other}:
        raise NotUnderstood("these are no opposite sides of a quadrilateral", node.start, "two opposite sides")
    return known.points


def _along(corners: tuple[str, ...], side: Path) -> Path:
    """A side in the order of the corners."""
    return side if (side[0], side[1]) in pairwise((*corners, corners[0])) else (side[1], side[0])


def _letter(node: Node) -> str:
    return str(next(c.text for c in every(node, "corner", "of_shape") if c.expr_name == "corner"))


def _triangle(node: Node, scene: Scene, corners: tuple[str, ...]) -> tuple[str, ...]:
    """The triangle that is named, else the one named last with these corners."""
    named = first(node, "of_shape")
    found = _named(named, scene) if named is not None else None
    if found is None:
        candidates = [shape.points for shape in reversed(scene.shapes) if len(shape.points) == 3]
        found = next((points for points in candidates if set(corners) <= set(points)), None)
    if found is None or len(found) != 3 or not set(corners) <= set(found):
        raise NotUnderstood("the triangle is not named", node.start, "the triangle first")
    return found

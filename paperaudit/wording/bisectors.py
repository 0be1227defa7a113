"""Reads clauses on lines that halve an angle or a segment, on altitudes and on medians."""

from collections.abc import Iterator
from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.maths.quantities import angle_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import AngleAt, AngleOf, Expression
from paperaudit.model.fact import BisectsAngle, Collinear, Fact, Midpoint, Path, Perpendicular
from paperaudit.wording.circles import on_circle_with, ring_of
from paperaudit.wording.crossings import meeting
from paperaudit.wording.lines import on_line
from paperaudit.wording.named import corners_of, distinct, measures_of, path_of, paths_of, point_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import right_angle_at

Facts = tuple[Fact, ...]


def bisects(node: Node, scene: Scene) -> Facts:
    """AD bisects ∠BAC, and may then meet a line."""
    meets = first(node, "bisector_meets")
    paths = [path_of(path) for path in every(node, "path", "bisector_meets") if path.expr_name == "path"]
    ring = first(meets, "ring") if meets is not None else None
    several = first(node, "quantities", "last_quantities")
    angles = measures_of(several) if several is not None else tuple(map(angle_of, every(node, "angle")))
    if len(paths) == 1 and len(angles) == 2:
        paths = paths * 2
    if len(paths) != len(angles):
        raise NotUnderstood("there are not as many bisectors as angles", node.start, "a bisector for each angle")
    facts: list[Fact] = [_bisector(path, angle, node) for path, angle in zip(paths, angles, strict=True)]
    if meets is not None and ring is not None:
        point = point_of(the(meets, "point"))
        centre, on = ring_of(ring)
        facts += () if point in paths[0] else (Collinear(distinct((*paths[0], point), node), ordered=False),)
        facts += on_circle_with(centre, (*on, point))
    elif meets is not None:
        facts.extend(meeting(paths[0], path_of(the(meets, "path")), point_of(the(meets, "point")), node))
    return tuple(facts)


def _bisector(path: Path, angle: Expression, node: Node) -> BisectsAngle:
    """A path from the vertex of an angle that halves it; it may be named from either end."""
    if not isinstance(angle, AngleOf | AngleAt):
        raise NotUnderstood("what is halved is not an angle", node.start, "an angle such as ∠ABC")
    if angle.vertex not in path:
        raise NotUnderstood(f"the bisector starts at {angle.vertex}", node.start, f"a line from {angle.vertex}")
    return BisectsAngle(path if path[0] == angle.vertex else (path[1], path[0]), angle)


def bisectors(node: Node, scene: Scene) -> Facts:
    """The bisector of ∠BAC meets BC at D; the bisectors of ∠B and ∠C meet at I."""
    point = point_of(the(node, "point"))
    if has(node, "cuts"):
        named = the(node, "angle", "vertex_meant")
        angle = angle_of(named) if named.expr_name == "angle" else AngleAt(named.text)
        return _bisector((angle.vertex, point), angle, node), on_line(point, paths_of(node)[0], node)
    facts: list[Fact] = []
    for halved in measures_of(the(node, "quantities")):
        start = halved.vertex if isinstance(halved, AngleOf | AngleAt) else ""
        facts.append(_bisector((start, point), halved, node))
    return tuple(facts)


def bisected(node: Node, scene: Scene) -> Facts:
    """One segment halved by another at a point, or both by each other."""
    one, other = paths_of(node)
    point = point_of(the(node, "point"))
    if "bisect " in node.text:
        square: Facts = (Perpendicular(one, other),) if "right angles" in node.text else ()
        return Midpoint(point, one), Midpoint(point, other), *square
    cut, cutter = (one, other) if "bisected by" in node.text else (other, one)
    halves: Facts = (Midpoint(point, cut),)
    if point not in cutter:
        halves = (*halves, on_line(point, cutter, node))
    return (*halves, Perpendicular(cutter, cut)) if "perpendicular" in node.text else halves


def cevian(node: Node, scene: Scene) -> Facts:
    """BD is an altitude or a median of △ABC: it meets the side opposite its corner."""
    lines = paths_of(the(node, "paths", "last_paths"))
    names = every(node, "paths", "last_paths", "path")
    sides: list[Path | None] = [path_of(name) for name in names if name.expr_name == "path"]
    sides = sides or [None]
    words = the(node, "cevian_noun").text
    if len(sides) not in (1, len(lines)):
        raise NotUnderstood("there are not as many lines as sides", node.start, "a side for each line")
    facts: list[Fact] = []
    for line, side in zip(lines, sides * len(lines) if len(sides) == 1 else sides, strict=True):
        triangle = _triangle(line, side, node, scene)
        facts.extend(cevians(line, triangle, words, node))
        if has(node, "to_hypotenuse"):
            facts.append(right_angle_at(next(end for end in line if end in triangle), triangle))
    return tuple(facts)


def cevians_named(name: Node, scene: Scene) -> Iterator[Fact]:
    """What "the altitude AD" says in passing of a triangle named before."""
    words, line = the(name, "cevian_noun").text, path_of(the(name, "length"))
    yield from cevians(line, _triangle(line, None, name, scene), words, name)


def cevians_listed(name: Node, scene: Scene) -> Iterator[Fact]:
    """The same of "the altitudes BE and CF"."""
    words = the(name, "cevian_noun").text
    for line in map(path_of, every(name, "length")):
        yield from cevians(line, _triangle(line, None, name, scene), words, name)


def _triangle(line: Path, side: Path | None, node: Node, scene: Scene) -> tuple[str, ...]:
    named = first(node, "polygon")
    if named is not None:
        return corners_of(named)
    if side is not None:
        named = first(node, "point")
        corner = point_of(named) if named is not None else next((end for end in line if end not in side), "")
        return (corner, *side)
    known = next((found for end in line if (found := scene.latest(3, end))), None)
    if known is None and _is_height(node):
        known = _over_base(line, scene)
    if known is None:
        raise NotUnderstood("the triangle is not named", node.start, "the triangle, as in “of △ABC”")
    return known


def _is_height(node: Node) -> bool:
    """Whether a clause is about an altitude, which other figures than triangles have too."""
    return bool(the(node, "cevian_noun").text.startswith(("altitude", "height")))


def _over_base(line: Path, scene: Scene) -> tuple[str, ...] | None:
    """A corner of a quadrilateral and the side on which the foot of its height is known to lie, or the other base."""
    for shape in reversed(scene.shapes):
        corner = [end for end in line if end in shape.points]
        if len(shape.points) != 4 or len(corner) != 1:
            continue
        foot = next(end for end in line if end not in shape.points)
        for side in pairwise((*shape.points, shape.points[0])):
            if corner[0] not in side and any({foot, *side} <= set(known.points) for known in scene.lines):
                return (corner[0], *side)
        for known in scene.parallels:
            bases = known.paths[:2]
            if shape.kind == "trapezium" and {point for base in bases for point in base} == set(shape.points):
                return (corner[0], *next(base for base in bases if corner[0] not in base))
    return None


def cevians(line: Path, triangle: tuple[str, ...], words: str, node: Node) -> Facts:
    """A line from a corner of a triangle to the opposite side: its altitude, its median or the angle's bisector."""
    corner = next((end for end in line if end in triangle), "")
    foot = next((end for end in line if end not in triangle), "")
    if len(triangle) != 3 or not corner or not foot:
        raise NotUnderstood(
            f"{''.join(line)} does not join a corner of {''.join(triangle)} to the opposite side",
            node.start,
            "a corner of the triangle and a point on the opposite side",
        )
    one, other = (point for point in triangle if point != corner)
    if "median" in words:
        return (Midpoint(foot, (one, other)),)
    if "bisector" in words:
        return BisectsAngle((corner, foot), AngleOf(one, corner, other)), on_line(foot, (one, other), node)
    return Collinear((one, foot, other), ordered=False), Perpendicular((corner, foot), (one, other))

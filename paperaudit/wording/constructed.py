"""Reads clauses on lines drawn through points, on points that divide segments, and on special figures."""

from parsimonious.nodes import Node

from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import AngleOf, LengthOf, Relation
from paperaudit.model.fact import Collinear, Drawn, Fact, Holds, Parallel, Perpendicular, Quality, Shape, Similar
from paperaudit.wording.lines import on_line
from paperaudit.wording.named import corners_of, distinct, path_of, paths_of, point_of, points_under
from paperaudit.wording.relations import in_ratio, times
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import alike, kind_of, right_angle_at, shape, shape_before, tail_of

Facts = tuple[Fact, ...]
_FREE = ("A", "B", "C", "D", "E", "F")
_CORNERS = {"triangle": 3, "quadrilateral": 4, "pentagon": 5, "hexagon": 6}


def drop_meets(node: Node, scene: Scene) -> Facts:
    """The perpendicular from A to BC meets BC at D, or another line."""
    start, foot = distinct(points_under(node), node)
    line, *met = paths_of(node)
    drop = Perpendicular((start, foot), line)
    if has(node, "on_tail") and (not met or set(met[0]) == set(line)):
        return on_line(foot, met[0] if met else line, node, beyond=True), drop
    if not met or set(met[0]) == set(line):
        return (drop,) if foot in line else (Collinear((line[0], foot, line[1]), ordered=False), drop)
    return (drop,) if foot in met[0] else (on_line(foot, met[0], node, has(node, "on_tail")), drop)


def line_through(node: Node, scene: Scene) -> Facts:
    """The line through D parallel to BC meets AC at E."""
    start, end = distinct(points_under(node), node)
    beside, met = paths_of(node)
    parallel = "parallel" in node.text
    if parallel and not {start, end}.isdisjoint(beside):
        raise NotUnderstood(f"{start}{end} would be the line itself", node.start, "a line through another point")
    way: Fact = Parallel(((start, end), beside)) if parallel else Perpendicular((start, end), beside)
    return (way,) if end in met else (on_line(end, met, node, has(node, "on_tail")), way)


def divides(node: Node, scene: Scene) -> Facts:
    """D divides AB in the ratio 2 : 3, from A on."""
    point, (start, end) = point_of(the(node, "point")), path_of(the(node, "path"))
    shares = [expression_of(side) for side in every(node, "expression_side")]
    parts = LengthOf(start, point), LengthOf(point, end)
    return (on_line(point, (start, end), node), *in_ratio(parts, shares, node))


def hypotenuse_is(node: Node, scene: Scene) -> Facts:
    """AC is the hypotenuse of triangle ABC: the right angle faces it."""
    side = path_of(the(node, "length"))
    named = first(node, "the_shape", "polygon")
    if named is not None:
        corners: tuple[str, ...] | None = (
            shape_before(named, scene) if named.expr_name == "the_shape" else corners_of(named)
        )
    else:
        corners = next(
            (s.points for s in reversed(scene.shapes) if len(s.points) == 3 and set(side) < set(s.points)), None
        )
    if corners is None or len(corners) != 3 or not set(side) < set(corners):
        raise NotUnderstood("the triangle of this hypotenuse is not named", node.start, "the triangle first")
    return (right_angle_at(next(point for point in corners if point not in side), corners),)


def right_trapezium(node: Node, scene: Scene) -> Facts:
    """A right-angled trapezium ABCD, with right angles at A and B."""
    corners = corners_of(the(node, "corners"))
    points = points_under(node)
    if len(corners) != 4 or not set(points) <= set(corners):
        raise NotUnderstood("not corners of this trapezium", node.start, "its corners")
    return (Shape("trapezium", corners), *(right_angle_at(point, corners) for point in points))


def special_triangle(node: Node, scene: Scene) -> Facts:
    """A 45°-45°-90° or a 30°-60°-90° triangle; which corner has which angle its name leaves open."""
    corners = corners_of(the(node, "corners"))
    digits = "".join(character for character in the(node, "special_angles").text if character.isdigit())
    known: dict[str, tuple[Quality, ...]] = {
        "454590": ("isosceles", "right-angled"),
        "306090": ("right-angled", "30-60-90"),
        "603090": ("right-angled", "30-60-90"),
    }
    if digits not in known:
        raise NotUnderstood("it is not said which angle is which", node.start, "an angle such as ∠A = 30°")
    whole = Shape(kind_of("triangle", corners, node), corners, known[digits])
    tail = first(node, "shape_tail")
    return (whole, *(tail_of(tail, whole, whole.qualities) if tail is not None else ()))


def similarity(node: Node, scene: Scene) -> Facts:
    """△ABC ∼ △DEF with ratio 2 : 3, of sides of the first to sides of the second."""
    corners = [corners_of(run) for run in every(node, "corners")]
    one, other = corners[:2]
    alike_too: Facts = alike(the(node, "alike_sides"), scene) if has(node, "alike_sides") else (Similar(one, other),)
    sides = LengthOf(one[0], one[1]), LengthOf(other[0], other[1])
    if len(one) != len(other):
        raise NotUnderstood("the two polygons have different numbers of corners", node.start, "as many letters in both")
    ratio = first(node, "similar_ratio")
    if ratio is None:
        factor = expression_of(next(p for p in every(node, "polygon", "expression") if p.expr_name == "expression"))
        return (*alike_too, Holds(Relation(sides[1], "=", times(factor, sides[0]))))
    shares = [expression_of(side) for side in every(ratio, "expression_side")]
    if len(shares) == 2:
        return (*alike_too, *in_ratio(sides, shares, node))
    return (*alike_too, Holds(Relation(sides[0], "=", times(shares[0], sides[1]))))


def drawn_on(node: Node, scene: Scene) -> Facts:
    """The square ABDE is drawn on side AB, which its own letters say."""
    facts = shape(the(node, "shape_is", "shape_named"), scene)
    side = path_of(
        next(piece for piece in every(node, "shape_is", "shape_named", "length") if piece.expr_name == "length")
    )
    corners = facts[0].points if isinstance(facts[0], Shape) else ()
    if not set(side) <= set(corners):
        raise NotUnderstood(f"{''.join(side)} is no side of this figure", node.start, "a side of it")
    if "external" in node.text:
        raise NotUnderstood("outside which figure is not said", node.start, "as in “outside triangle ABC”")
    return facts


def cut_alone(node: Node, scene: Scene) -> Facts:
    """Parallel lines AB and CD, cut by BC, which joins a letter of each."""
    lines, cutter = paths_of(node), path_of(the(node, "paths", "path", "length", "parallel_named"))
    cutter = path_of([piece for piece in every(node, "path", "length") if piece.expr_name == "length"][-1])
    if len(lines) != 2 or not all(len(set(line) & set(cutter)) == 1 for line in lines):
        raise NotUnderstood("it is not said where the lines are cut", node.start, "as in “at G and H”")
    return Parallel(lines), Drawn("line", cutter)


def crossing_square(node: Node, scene: Scene) -> Facts:
    """The diagonals AC and BD of a figure named before intersect at right angles."""
    one, other = paths_of(node)
    around = next((found.points for found in reversed(scene.shapes) if {*one, *other} == set(found.points)), ())
    if len(around) != 4 or {frozenset(around[::2]), frozenset(around[1::2])} != {frozenset(one), frozenset(other)}:
        raise NotUnderstood("the point where the lines meet has no letter", node.start, "as in “at E”")
    return (Perpendicular(one, other),)


def angles_unnamed(node: Node, scene: Scene) -> Facts:
    """The angles of a triangle are x, 2x and 3x: it is called ABC where nothing has a letter yet."""
    noun = the(node, "unnamed_shape").text
    sizes = [expression_of(size) for size in every(node, "expression")]
    corners = _FREE[: _CORNERS[noun]]
    if scene.shapes or scene.lines or scene.centres or scene.on_circle or len(sizes) != len(corners):
        raise NotUnderstood(f"the letters of the {noun} are not said", node.start, f"the name of the {noun}")
    angles = (AngleOf(corners[at - 1], corner, corners[(at + 1) % len(corners)]) for at, corner in enumerate(corners))
    named = Shape(kind_of(noun, corners, node), corners)
    return (named, *(Holds(Relation(angle, "=", size)) for angle, size in zip(angles, sizes, strict=True)))

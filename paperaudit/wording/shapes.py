"""Reads clauses on polygons: their kind, their qualities, congruence and similarity."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.points import points_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import AngleOf, LengthOf, Relation
from paperaudit.model.fact import (
    Centre,
    Congruent,
    Fact,
    Holds,
    Inside,
    Parallel,
    Path,
    Quality,
    Shape,
    ShapeKind,
    Sides,
    Similar,
)
from paperaudit.wording.named import corners_of, distinct, measure_of, path_of, point_of, points_under
from paperaudit.wording.relations import RIGHT_ANGLE
from paperaudit.wording.scene import NotUnderstood, Scene

Facts = tuple[Fact, ...]

_SIDES = {
    "triangle": 3,
    "quadrilateral": 4,
    "parallelogram": 4,
    "rectangle": 4,
    "rhombus": 4,
    "square": 4,
    "kite": 4,
    "trapezium": 4,
    "pentagon": 5,
    "hexagon": 6,
    "heptagon": 7,
    "octagon": 8,
    "nonagon": 9,
    "decagon": 10,
    "dodecagon": 12,
}
_KINDS: dict[str, ShapeKind] = {
    "triangle": "triangle",
    "quadrilateral": "quadrilateral",
    "parallelogram": "parallelogram",
    "rectangle": "rectangle",
    "rhombus": "rhombus",
    "square": "square",
    "kite": "kite",
    "trapezium": "trapezium",
}
_BY_SIDES: dict[int, ShapeKind] = {3: "triangle", 4: "quadrilateral"}
_OTHER_NAMES = {"trapezoid": "trapezium", "trapezoids": "trapezium", "rhombi": "rhombus", "trapezia": "trapezium"}
_QUALITIES: dict[str, Quality] = {
    "isosceles": "isosceles",
    "equilateral": "equilateral",
    "scalene": "scalene",
    "right": "right-angled",
    "Rt": "right-angled",
    "RT": "right-angled",
    "acute": "acute-angled",
    "obtuse": "obtuse-angled",
    "regular": "regular",
    "convex": "convex",
}
_GENERAL = ("triangle", "quadrilateral", "polygon")
_RIGHT: tuple[Quality, ...] = ("right-angled",)


def shape(node: Node, scene: Scene) -> Facts:
    """A polygon with its kind and qualities: isosceles triangle ABC, ABCD is a kite."""
    qualities = _qualities(node)
    nouns = [noun.text for noun in every(node, "shape_noun")]
    facts: list[Fact] = []
    for corners in every(node, "corners", "the_shape"):
        points = shape_called(corners, scene) if corners.expr_name == "the_shape" else corners_of(corners)
        for noun in nouns[:-1]:
            kind_of(noun, points, corners)
        facts.append(Shape(kind_of(nouns[-1] if nouns else "", points, corners), points, qualities))
    tail = first(node, "shape_tail")
    if tail is not None:
        facts.extend(tail_of(tail, facts[-1], qualities))
    return tuple(facts)


def attached(node: Node, scene: Scene) -> Facts:
    """An equilateral triangle ABE drawn outside the square ABCD, or inside it."""
    facts = shape(the(node, "shape_is", "shape_named"), scene)
    *_, outer = every(node, "shape_is", "shape_named", "the_shape", "polygon", "it")
    added = facts[0]
    if outer.expr_name == "it":
        other = scene.latest(None) or ()
    else:
        other = shape_before(outer, scene) if outer.expr_name == "the_shape" else corners_of(outer)
    shared = tuple(point for point in other if isinstance(added, Shape) and point in added.points)
    new = tuple(point for point in added.points if point not in other) if isinstance(added, Shape) else ()
    if len(shared) != 2 or not new:
        raise NotUnderstood("the two figures do not share a side by their names", node.start, "a side in common")
    if "inside" in the(node, "attached_where").text:
        return (*facts, *(Inside(point, other) for point in new))
    beyond = next(point for point in other if point not in shared)
    return (*facts, *(Sides((point, beyond), shared, same=False) for point in new))


def shape_before(node: Node, scene: Scene) -> tuple[str, ...]:
    """The corners of "the square", named before."""
    noun = the(node, "shape_noun").text
    found = scene.latest(_SIDES.get(_OTHER_NAMES.get(noun, noun)))
    if found is None:
        raise NotUnderstood(f"no {noun} was named before", node.start, f"the name of the {noun}")
    return found


def shape_called(node: Node, scene: Scene) -> tuple[str, ...]:
    """The corners of "the square", named before as one; "the quadrilateral" may be of any kind."""
    noun = the(node, "shape_noun").text
    name = _OTHER_NAMES.get(noun, noun)
    for known in reversed(scene.shapes):
        if len(known.points) == _SIDES.get(name, len(known.points)) and (name not in _KINDS or name in _fitting(known)):
            return known.points
    raise NotUnderstood(f"no {noun} was named before", node.start, f"the name of the {noun}")


def _fitting(known: Shape) -> tuple[str, ...]:
    """The nouns by which a figure may be called again."""
    return (known.kind, "quadrilateral") if len(known.points) == 4 else (known.kind,)


def _qualities(node: Node) -> tuple[Quality, ...]:
    return tuple(dict.fromkeys(_QUALITIES[re.split("[ .-]", quality.text)[0]] for quality in every(node, "quality")))


def kind_of(noun: str, points: tuple[str, ...], node: Node) -> ShapeKind:
    """The kind by its noun, or by its number of corners where the noun does not say (△, polygon)."""
    name = _OTHER_NAMES.get(noun, noun)
    name = name if name in _SIDES else name.removesuffix("s")
    sides = _SIDES.get(name)
    if sides is not None and sides != len(points):
        message = f"a {name} has {sides} corners, {node.text} has {len(points)}"
        raise NotUnderstood(message, node.start, f"{sides} letters")
    return _KINDS.get(name) or _BY_SIDES.get(len(points), "polygon")


def introduced(clause: Node, scene: Scene, facts: Facts) -> Facts:
    """Polygons that a clause names in passing ("BD is a median of △ABC"), unless they are known."""
    known = [set(fact.points) for fact in facts if isinstance(fact, Shape)]
    kinds = {(frozenset(fact.points), fact.kind) for fact in facts if isinstance(fact, Shape)}
    found: list[Fact] = []
    plural = ""
    for polygon in every(clause, "polygon", "polygon_name"):
        run = first(polygon, "corners") or polygon
        corners = distinct(points_of(run.text), run)
        noun = first(polygon, "shape_noun")
        words = polygon.text.split(" ")[-2] if polygon.expr_name == "polygon_name" and " " in polygon.text else ""
        kind = noun.text if noun is not None else words or plural
        plural = kind if kind.endswith("s") and kind != "rhombus" else ""
        new = not scene.knows(corners) and set(corners) not in known
        if not new and noun is not None and set(corners) in known:
            called = kind_of(kind, corners, polygon)
            new = called not in _GENERAL and (frozenset(corners), called) not in kinds
        if (kind or "△" in polygon.text) and new:
            found.append(Shape(kind_of(kind, corners, polygon), corners, _qualities(polygon)))
    return tuple(dict.fromkeys(found))


def tail_of(tail: Node, whole: Fact, qualities: tuple[Quality, ...]) -> Facts:
    """What follows the name: right-angled at B, with apex A, with base BC."""
    assert isinstance(whole, Shape)
    inner = the(tail, "side_tail", "right_tail", "apex_tail", "base_tail", "centre_tail")
    if inner.expr_name in ("side_tail", "centre_tail"):
        return (_of_equal_parts(inner, whole),)
    if inner.expr_name == "base_tail":
        lines = tuple(path_of(line) for line in every(inner, "length"))
        if len(lines) == 2:
            return (_parallel_bases(lines, whole, inner),)
        (base,) = lines
        apex = [point for point in whole.points if point not in base]
        if len(apex) != 1:
            raise NotUnderstood(f"{inner.text} is no side of the triangle", inner.start, "a side as the base")
        return (equal_sides(apex[0], whole.points),)
    corner = point_of(the(inner, "point"))
    if corner not in whole.points:
        raise NotUnderstood(f"{corner} is no corner of {''.join(whole.points)}", inner.start, "one of its corners")
    if inner.expr_name == "right_tail":
        return (right_angle_at(corner, whole.points),)
    if "isosceles" not in qualities:
        return ()
    return (equal_sides(corner, whole.points),)


def _parallel_bases(lines: tuple[Path, ...], whole: Shape, node: Node) -> Fact:
    """The bases of a trapezium are parallel; both are named in one direction here, however the question names them."""
    a, b, c, d = whole.points if whole.kind == "trapezium" else ("", "", "", "")
    for one, other in (((a, b), (d, c)), ((b, c), (a, d))):
        if {frozenset(line) for line in lines} == {frozenset(one), frozenset(other)}:
            return Parallel((one, other))
    raise NotUnderstood(f"{node.text} are no opposite sides of a trapezium", node.start, "two opposite sides")


def _of_equal_parts(tail: Node, whole: Shape) -> Fact:
    """The length of each side of a square, a rhombus or a regular figure; the centre of one of these and of others."""
    equal = whole.kind in ("square", "rhombus") or {"regular", "equilateral"} & set(whole.qualities)
    if tail.expr_name == "centre_tail":
        if not equal and whole.kind not in ("rectangle", "parallelogram"):
            raise NotUnderstood("it is not clear what the centre of this figure is", tail.start, "the circle with it")
        return Centre("centre", the(tail, "corner").text, whole.points)
    if not equal:
        raise NotUnderstood("not all sides of this figure are equal", tail.start, "the side by its two letters")
    return Holds(Relation(LengthOf(whole.points[0], whole.points[1]), "=", measure_of(the(tail, "measure"))))


def equal_sides(apex: str, triangle: tuple[str, ...]) -> Fact:
    """The two sides from the apex of an isosceles triangle are equal."""
    first_point, second_point = (point for point in triangle if point != apex)
    return Holds(Relation(LengthOf(apex, first_point), "=", LengthOf(apex, second_point)))


def right_angle_at(corner: str, polygon: tuple[str, ...]) -> Fact:
    """The angle of a polygon at this corner is 90°."""
    at = polygon.index(corner)
    return Holds(Relation(AngleOf(polygon[at - 1], corner, polygon[(at + 1) % len(polygon)]), "=", RIGHT_ANGLE))


def right_at(node: Node, scene: Scene) -> Facts:
    """△ABC is right-angled at B."""
    corners = corners_of(the(node, "polygon"))
    corner = points_under(node)[-1]
    if corner not in corners:
        raise NotUnderstood(f"{corner} is no corner of {''.join(corners)}", node.start, "one of its corners")
    qualities = tuple(dict.fromkeys((*_qualities(node), *_RIGHT)))
    return Shape(kind_of("", corners, node), corners, qualities), right_angle_at(corner, corners)


def elided(node: Node, scene: Scene) -> Facts:
    """Right-angled at B, of the polygon named before."""
    facts: list[Fact] = []
    for corner in points_under(node):
        polygon = scene.latest(None, corner)
        if polygon is None:
            raise NotUnderstood("no polygon with this corner was named before", node.start, "the polygon's name")
        facts.append(right_angle_at(corner, polygon))
    return tuple(facts)


def alike(node: Node, scene: Scene) -> Facts:
    """Two polygons congruent or similar, corners in order."""
    one, other = (points_of(corners.text) for corners in every(node, "corners"))
    if len(one) != len(other):
        raise NotUnderstood("the two polygons have different numbers of corners", node.start, "as many letters in both")
    congruent = "≡" in node.text or "congruent" in node.text
    return (Congruent(one, other) if congruent else Similar(one, other),)

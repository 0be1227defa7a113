"""What the name of a part says beside naming it: the base, the hypotenuse, an obtuse angle, △ABC."""

from collections.abc import Iterator

from parsimonious.nodes import Node

from paperaudit.maths.quantities import angle_of
from paperaudit.maths.tree import every, first, has, names_in
from paperaudit.model.expression import AngleOf, Expression, Relation
from paperaudit.model.fact import Circle, Fact, Holds, Path, Quality, Shape
from paperaudit.wording.arcs import circles_named
from paperaudit.wording.bisectors import cevians_listed, cevians_named
from paperaudit.wording.chords import by_noun
from paperaudit.wording.named import path_of
from paperaudit.wording.relations import RIGHT_ANGLE
from paperaudit.wording.rings import sized_in_passing
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import equal_sides, introduced, right_angle_at
from paperaudit.wording.shared_centre import unnamed_chord
from paperaudit.wording.tangents import tangents_named
from paperaudit.wording.the_circle import THE_CIRCLE

_SIZE_NAMES = {
    "to_line",
    "arcs_named",
    "arc_named",
    "sector_size",
    "segment_size",
    "circle_size",
    "shape_ring",
    "cevian_name",
    "cevians_named",
}


def implied(clause: Node, scene: Scene, facts: tuple[Fact, ...]) -> tuple[Fact, ...]:
    """The facts that the names in a clause imply, those of `facts` left out."""
    found = list(_by_name(clause, scene, facts))
    return tuple(fact for fact in dict.fromkeys(found) if fact not in facts)


def _by_name(clause: Node, scene: Scene, facts: tuple[Fact, ...]) -> Iterator[Fact]:
    """What each kind of name says; a kind that does not occur in the clause is not looked for."""
    there = names_in(clause)
    if there & {"polygon", "polygon_name"}:
        yield from introduced(clause, scene, facts)
    if "path_noun" in there:
        yield from by_noun(clause, scene)
        yield from tangents_named(clause, scene, facts)
    if there & _SIZE_NAMES:
        yield from by_size(clause, scene, facts)
    if "ring_sized" in there:
        yield from sized_in_passing(clause)
    if "path_noun" in there:
        yield from _by_side(clause, scene)
    if "angle" in there:
        yield from _by_angle(clause, scene, facts)


def by_size(clause: Node, scene: Scene, facts: tuple[Fact, ...] = ()) -> Iterator[Fact]:
    """What the names of sizes say: arcs lie on the circle, a triangle has an incircle, AD is an altitude."""
    for chord in every(clause, "chord_touching"):
        yield from unnamed_chord(chord, scene)
    known = {*scene.on_circle, *(point for fact in facts if isinstance(fact, Circle) for point in fact.points)}
    yield from (fact for fact in circles_named(clause, scene, known) if fact not in facts)
    for name in every(clause, "path", "measure", "cevians_named"):
        if name.expr_name == "cevians_named":
            yield from cevians_listed(name, scene)
        elif has(name, "cevian_name") and not has(clause, "named_lines"):
            yield from cevians_named(name, scene)


def _by_side(clause: Node, scene: Scene) -> Iterator[Fact]:
    """The base of an isosceles triangle leaves the other two sides equal; the hypotenuse faces a right angle."""
    for path in every(clause, "path"):
        noun = first(path, "path_noun")
        words = noun.text if noun is not None else ""
        if words.startswith("hypotenuse"):
            triangle = _triangle(path_of(path), scene)
            if triangle is None:
                raise NotUnderstood("the triangle of this hypotenuse is not named", path.start, "the triangle first")
            yield right_angle_at(_facing(path_of(path), triangle), triangle)
        elif words.startswith("base") and (triangle := _triangle(path_of(path), scene, "isosceles")) is not None:
            yield equal_sides(_facing(path_of(path), triangle), triangle)


def _triangle(side: Path, scene: Scene, quality: Quality | None = None) -> tuple[str, ...] | None:
    """The triangle named last that has this side, and this quality where one is meant."""
    triangles = (shape for shape in reversed(scene.shapes) if len(shape.points) == 3)
    return next(
        (shape.points for shape in triangles if set(side) <= set(shape.points) and quality in (None, *shape.qualities)),
        None,
    )


def _facing(side: Path, triangle: tuple[str, ...]) -> str:
    return next(point for point in triangle if point not in side)


def _by_angle(clause: Node, scene: Scene, facts: tuple[Fact, ...]) -> Iterator[Fact]:
    """An angle called acute is below 90°, one called obtuse above; an exterior one is no angle of a polygon."""
    polygons = [*scene.shapes, *(fact for fact in facts if isinstance(fact, Shape))]
    for angle in every(clause, "angle"):
        words = angle.text.removeprefix("the ")
        if words.startswith("acute"):
            yield Holds(Relation(angle_of(angle), "<", RIGHT_ANGLE))
        elif words.startswith("exterior") and any(_is_corner(angle_of(angle), shape.points) for shape in polygons):
            raise NotUnderstood(
                "this is an interior angle", angle.start, "an exterior angle by a point beyond a corner"
            )
        elif words.startswith(("central", "inscribed")):
            yield from _round_angle(angle_of(angle), words.startswith("central"), scene, angle)
        elif words.startswith("obtuse"):
            yield Holds(Relation(angle_of(angle), ">", RIGHT_ANGLE))


def _is_corner(angle: Expression, polygon: tuple[str, ...]) -> bool:
    """Whether an angle lies between two sides of a polygon."""
    if not isinstance(angle, AngleOf) or angle.vertex not in polygon:
        return False
    at = polygon.index(angle.vertex)
    return {angle.arm, angle.other} == {polygon[at - 1], polygon[(at + 1) % len(polygon)]}


def _round_angle(angle: Expression, central: bool, scene: Scene, node: Node) -> Iterator[Fact]:
    """A central angle has its vertex in the centre, an inscribed one on the circle, both their arms' ends on it."""
    if not isinstance(angle, AngleOf):
        raise NotUnderstood("the ends of its arms are not named", node.start, "an angle such as ∠ABC")
    if central:
        yield Circle(angle.vertex, (angle.arm, angle.other))
    elif not {angle.arm, angle.vertex, angle.other} <= set(scene.on_circle):
        yield Circle(THE_CIRCLE, (angle.arm, angle.vertex, angle.other))

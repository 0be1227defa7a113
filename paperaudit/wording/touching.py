"""Reads clauses on circles that touch each other, and on circles inside and round figures."""

from collections.abc import Iterator

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import CircleSize, Relation
from paperaudit.model.fact import Circle, CirclesTouch, Collinear, Fact, Holds, Incircle, Path, Shape, Sides, Tangent
from paperaudit.wording.circles import on_circle_with, ring_of
from paperaudit.wording.named import corners_of, distinct, path_of, paths_of, point_of, points_under
from paperaudit.wording.rings import two_centres
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import shape, shape_before
from paperaudit.wording.the_circle import THE_CIRCLE, circle_in, circle_round

Facts = tuple[Fact, ...]


def circles_touch(node: Node, scene: Scene) -> Facts:
    """Circles O and P touch externally at T; circle P touches circle O internally at T."""
    first_centre, second_centre = two_centres(node)
    points = points_under(node)
    at = points[-1] if points else ""
    how = the(node, "touch_how").text if has(node, "touch_how") else ""
    if not how:
        raise NotUnderstood("from inside or from outside", node.start, "“externally” or “internally”")
    on = (Circle(first_centre, (at,)), Circle(second_centre, (at,))) if at else ()
    if "external" in how or "outside" in how:
        return (*on, CirclesTouch(first_centre, second_centre, at))
    if has(node, "rings_two"):
        return (*on, CirclesTouch(first_centre, second_centre, at, "one in the other"))
    return (*on, CirclesTouch(second_centre, first_centre, at, "second in first"))


def circles_equal(node: Node, scene: Scene) -> Facts:
    """Circles O and P are equal: they have the same radius."""
    one, other = two_centres(node)
    return (Holds(Relation(CircleSize("radius", one), "=", CircleSize("radius", other))),)


def common_tangent(node: Node, scene: Scene) -> Facts:
    """AB is a common tangent of circles O and P, touching them at A and B: from one side, or crossing between."""
    path = path_of(the(node, "path", "length"))
    known = tuple(dict.fromkeys(scene.centres))
    said = two_centres(node) if has(node, "rings_two") else known
    at = first(node, "common_at")
    contacts = points_under(at) if at is not None else path
    if at is not None and has(at, "ring"):
        said = tuple(ring_of(ring)[0] for ring in every(at, "ring"))
    if len(said) != 2 or len(contacts) != 2:
        raise NotUnderstood("it is not clear which two circles are meant", node.start, "as in “circles O and P”")
    kind = the(node, "tangent_kind").text if has(node, "tangent_kind") else ""
    facts: list[Fact] = []
    for centre, contact in zip(said, contacts, strict=True):
        if contact not in path:
            raise NotUnderstood(f"{contact} is not on the tangent by its name", node.start, "its ends")
        facts += [*on_circle_with(centre, (contact,)), Tangent(path, contact, centre)]
    crossing = any(word in kind for word in ("internal", "interior", "transverse"))
    if crossing or any(word in kind for word in ("external", "exterior", "direct")):
        facts.append(Sides((said[0], said[1]), path, same=not crossing))
    return tuple(facts)


def incircle(node: Node, scene: Scene) -> Facts:
    """The incircle of triangle ABC; circle O is inscribed in ABCD, touching its sides at named points."""
    polygon, where = _polygon(node, scene), first(node, "incircle_said")
    centre, on = ring_of(node) if has(node, "ring") else (THE_CIRCLE, ())
    if where is not None:
        said = first(where, "ring_centre") or next((c for c in every(where, "corner", "touches_sides")), None)
        if said is not None and said.expr_name != "touches_sides":
            centre = point_of(said) if said.expr_name == "ring_centre" else said.text
    centre = circle_in(polygon) if centre == THE_CIRCLE else centre
    facts: list[Fact] = [Incircle(centre, polygon)]
    shaped = first(node, "shape_is", "shape_named")
    facts += shape(shaped, scene) if shaped is not None else ()
    if "tangential" in node.text and len(polygon) == 4 and not scene.knows(polygon):
        facts.append(Shape("quadrilateral", polygon))
    each = first(node, "sides_each")
    if each is not None:
        pairs = [(path_of(the(one, "length")), the(one, "corner").text) for one in every(each, "side_each")]
        facts.extend(
            _contacts(tuple(p for _, p in pairs), tuple(side for side, _ in pairs), polygon, centre, scene, each)
        )
    at = first(node, "sides_at")
    if at is not None:
        named = first(node, "touches_sides", "sides_touched")
        sides = paths_of(named) if named is not None else tuple(_listed(node))
        facts.extend(_contacts(points_under(at), sides, polygon, centre, scene, at))
    return (*on_circle_with(centre, on), *facts) if on else tuple(facts)


def _listed(node: Node) -> Iterator[Path]:
    listed = first(node, "paths")
    yield from paths_of(listed) if listed is not None else ()


def _contacts(
    points: tuple[str, ...], sides: tuple[Path, ...], polygon: tuple[str, ...], centre: str, scene: Scene, node: Node
) -> Iterator[Fact]:
    """A tangent and a point between its ends for each side that the circle touches."""
    if not sides:
        sides = tuple(_side_with(point, polygon, scene, node) for point in points)
    edges = [{one, other} for one, other in zip(polygon, polygon[1:] + polygon[:1], strict=True)]
    if len(points) != len(sides) or any(set(side) not in edges for side in sides):
        raise NotUnderstood("there are not as many points as sides", node.start, "a side for each point")
    yield Circle(centre, distinct(points, node))
    for point, side in zip(points, sides, strict=True):
        yield Collinear(distinct((side[0], point, side[1]), node))
        yield Tangent(side, point, centre)


def _side_with(point: str, polygon: tuple[str, ...], scene: Scene, node: Node) -> Path:
    """The side of the polygon that a point is known to lie on."""
    for side in zip(polygon, polygon[1:] + polygon[:1], strict=True):
        if any({point, *side} <= set(line.points) for line in scene.lines):
            return side
    raise NotUnderstood("it is not said which side each point is on", node.start, "as in “touches BC, CA and AB at”")


def circumcircle(node: Node, scene: Scene) -> Facts:
    """Circle O is the circumcircle of triangle ABC; D lies on the circumcircle of triangle ABC."""
    polygon = _polygon(node, scene)
    centre = ring_of(node)[0] if has(node, "ring") else THE_CIRCLE
    listed = first(node, "points")
    if listed is None and not has(node, "ring"):
        pieces = every(node, "the_shape", "polygon", "ring_centre", "corner")
        centre = next(
            (point_of(p) if p.children else p.text for p in pieces if p.expr_name in ("ring_centre", "corner")), centre
        )
    centre = circle_round(polygon) if centre == THE_CIRCLE else centre
    on = points_under(listed) if listed is not None else ()
    return on_circle_with(centre, distinct((*polygon, *on), node))


def _polygon(node: Node, scene: Scene) -> tuple[str, ...]:
    named = first(node, "shape_named")
    if named is not None:
        return corners_of(named)
    sides = first(node, "round_it")
    if sides is not None:
        return _closed(paths_of(sides), sides)
    where = next(piece for piece in every(node, "the_shape", "polygon", "paths") if piece.expr_name != "paths")
    return shape_before(where, scene) if where.expr_name == "the_shape" else corners_of(where)


def _closed(sides: tuple[Path, ...], node: Node) -> tuple[str, ...]:
    """The corners of the polygon that some sides close, each side meeting the next: AB, BC, CD and DA."""
    corners, end = [sides[0][0]], sides[0][1]
    left = list(sides[1:])
    while left:
        following = next((side for side in left if end in side), None)
        if following is None or end in corners:
            break
        left.remove(following)
        corners.append(end)
        end = following[0] if following[1] == end else following[1]
    if left or end != corners[0]:
        raise NotUnderstood("these are not the sides of one polygon", node.start, "where it touches each of them")
    return tuple(corners)

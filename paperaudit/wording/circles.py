"""Reads clauses on circles: their centre, the points on them, cyclic polygons."""

from itertools import combinations

from parsimonious.nodes import Node

from paperaudit.maths.round_sizes import which_circle
from paperaudit.maths.tree import every, first, has
from paperaudit.model.fact import Circle, Fact, Shape, Sides
from paperaudit.wording.named import corners_of, distinct, path_of, point_of, points_under
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import kind_of, shape
from paperaudit.wording.the_circle import THE_CIRCLE, circle_round

Facts = tuple[Fact, ...]
_A_CIRCLE = ""
MOST_IN_ORDER = 6
"""Of so many points that are said to be in order the order is told; more are left to the drawing."""


def ring_of(node: Node) -> tuple[str, tuple[str, ...]]:
    """The centre of the circle that is named under a node, and the points that its name puts on it.

    The centre is THE_CIRCLE where no letter is said; circle O is named by its centre, circle ABC by its points.
    """
    ring = node if node.expr_name == "ring" else first(node, "ring")
    centre, on = THE_CIRCLE, points_through(node)
    if ring is None:
        return centre, on
    for piece in every(ring, "corners", "corner", "ring_centre", "circle_which"):
        if piece.expr_name == "circle_which":
            centre = which_circle(piece.text)
        elif piece.expr_name == "corners":
            on = (*corners_of(piece), *on)
        else:
            centre = point_of(piece) if piece.expr_name == "ring_centre" else piece.text
    if centre == THE_CIRCLE and "circum" in ring.text.partition(" of ")[0] and len(on) > 2:
        centre = circle_round(on)
    return centre, tuple(dict.fromkeys(on))


def points_through(node: Node) -> tuple[str, ...]:
    """The points of "through A, B and C"."""
    through = first(node, "through")
    if through is None:
        return ()
    polygon = first(through, "polygon")
    return corners_of(polygon) if polygon is not None else distinct(points_under(through), through)


def on_circle_with(centre: str, points: tuple[str, ...]) -> Facts:
    """The circle with these points, if that says anything."""
    points = tuple(dict.fromkeys(points))
    return (Circle(centre, points),) if points or centre.isupper() else ()


def circle_named(node: Node, scene: Scene) -> Facts:
    """Circle with centre O through A, B and C; the circle has centre O."""
    return on_circle_with(*ring_of(node))


def centre_is(node: Node, scene: Scene) -> Facts:
    """O is the centre of the circle."""
    named = next(piece for piece in every(node, "point", "ring", "through") if piece.expr_name == "point")
    centre, (said, on) = point_of(named), ring_of(node)
    if said not in (THE_CIRCLE, centre):
        raise NotUnderstood(f"the centre is named {centre} and {said}", node.start, "one letter for the centre")
    return on_circle_with(centre, on)


def on_circle(node: Node, scene: Scene) -> Facts:
    """A, B and C lie on the circle; on "a circle", they may share one of their own."""
    pieces = every(node, "points", "ring", "through")
    points = distinct(points_under(next(piece for piece in pieces if piece.expr_name == "points")), node)
    centre = _one_of_their_own(node) if has(node, "ring") else THE_CIRCLE
    facts = on_circle_with(centre, (*points, *ring_of(node)[1]))
    apart = first(node, "on_two_sides")
    if apart is not None:
        if len(points) != 2:
            raise NotUnderstood("on which side each point lies is not said", apart.start, "two points")
        return (*facts, Sides((points[0], points[1]), path_of(apart), "same side" in apart.text))
    return (*facts, *_in_order(points)) if has(node, "round_order") else facts


def _in_order(points: tuple[str, ...]) -> Facts:
    """Points in this order round a circle: of every four, the chord of two lies between the others."""
    fours = combinations(points[:MOST_IN_ORDER], 4)
    return tuple(Sides((second, fourth), (one, third), same=False) for one, second, third, fourth in fours)


def _one_of_their_own(node: Node) -> str:
    """The centre of a clause's circle; a circle without a letter or an article that points back is a new one."""
    ring = first(node, "ring")
    centre = ring_of(node)[0]
    own = ring is None or ring.text in ("a circle", "one circle", "the same circle", "circle")
    return _A_CIRCLE if own and centre == THE_CIRCLE else centre


def cyclic(node: Node, scene: Scene) -> Facts:
    """ABCD is a cyclic quadrilateral; A, B, C and D are concyclic; triangle ABC inscribed in a circle."""
    centre, on = _one_of_their_own(node), ring_of(node)[1]
    listed = first(node, "points")
    if listed is not None:
        return (Circle(centre, distinct(points_under(listed), node)),)
    whole = first(node, "shape_is", "shape_named")
    named = next(piece for piece in every(node, "corners", "ring") if piece.expr_name == "corners")
    corners = corners_of(named)
    noun = first(node, "shape_noun")
    polygon = Shape(kind_of(noun.text if noun is not None else "", corners, named), corners)
    shapes = shape(whole, scene) if whole is not None else () if scene.knows(corners) else (polygon,)
    return (*shapes, *on_circle_with(centre, (*corners, *on)))

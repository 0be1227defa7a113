"""Reads regions that words describe: the part of the square outside the circle, what lies between two circles.

A region is what one figure has beside another that lies inside it, so it has to be said that it does.
"""

from dataclasses import dataclass
from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.maths.round_sizes import LARGER, SMALLER, named_arc
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import ArcOf, AreaOf, CircleSize, Expression, Negative, SectorOf, SegmentOf, Sum
from paperaudit.model.fact import Fact
from paperaudit.wording.circles import ring_of
from paperaudit.wording.named import corners_of, path_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import shape_before
from paperaudit.wording.the_circle import THE_CIRCLE, circle_in, circle_round

_CONVEX = ("triangle", "square", "rectangle", "parallelogram", "rhombus", "trapezium")
NOT_SAID = "what is shaded is not said: name the figure, as in “area of segment AB”"
NOT_INSIDE = "it is not said that one of the two figures lies inside the other"


@dataclass(frozen=True, slots=True)
class _Surface:
    """A polygon by its corners, a sector by its centre and the ends of its arc, or a circle by its centre."""

    kind: str
    points: tuple[str, ...]

    def area(self) -> Expression:
        """Its area as a quantity."""
        if self.kind == "polygon":
            return AreaOf(self.points)
        centre, *ends = self.points
        if self.kind == "sector":
            return SectorOf("area", ArcOf(ends[0], ends[1], "", False, centre))
        return CircleSize("area", "" if centre == THE_CIRCLE else centre)


def shaded_is(node: Node, scene: Scene) -> tuple[Fact, ...]:
    """The shaded region is the part of the square outside the circle; what it is, is remembered for the ask."""
    region = first(node, "region")
    scene.shaded = region_of(region, scene) if region is not None else _surface(the(node, "surface"), scene).area()
    return ()


def region_size_of(node: Node, scene: Scene) -> Expression:
    """The area of a region that is described there, or of the shaded one that was described before."""
    region = first(node, "region")
    if region is not None:
        return region_of(region, scene)
    if scene.shaded is None:
        raise NotUnderstood(NOT_SAID, node.start)
    return scene.shaded


def region_of(node: Node, scene: Scene) -> Expression:
    """The area of a region, as a difference of areas or as a segment of a circle."""
    if has(node, "annulus"):
        return Sum((CircleSize("area", LARGER), Negative(CircleSize("area", SMALLER))))
    arc = first(node, "arc_named")
    if arc is not None:
        known = named_arc(arc)
        if set(path_of(the(node, "length"))) != {known.start, known.end}:
            raise NotUnderstood("the arc and the chord have different ends", node.start, "an arc over the chord")
        return SegmentOf("area", known)
    one, other = (_surface(piece, scene) for piece in every(node, "surface"))
    if _lies_in(other, one, scene):
        return Sum((one.area(), Negative(other.area())))
    if has(node, "region_between") and _lies_in(one, other, scene):
        return Sum((other.area(), Negative(one.area())))
    raise NotUnderstood(NOT_INSIDE, node.start, f"“inscribed”, or the area as a sum ({NOT_INSIDE})")


def _surface(node: Node, scene: Scene) -> _Surface:
    kind = the(node, "sector_surface", "ring", "the_shape", "polygon")
    match kind.expr_name:
        case "sector_surface":
            return _sector(kind, scene)
        case "ring":
            return _circle(kind, scene)
        case "the_shape":
            return _Surface("polygon", shape_before(kind, scene))
    return _Surface("polygon", corners_of(kind))


def _sector(node: Node, scene: Scene) -> _Surface:
    run = first(node, "corners")
    known = [one for one in scene.sectors if run is None or set(one) == set(corners_of(run))]
    if len(set(known)) != 1:
        raise NotUnderstood("which sector is meant is not said", node.start, "the sector by its letters")
    return _Surface("sector", known[0])


def _circle(node: Node, scene: Scene) -> _Surface:
    """A circle; one without a letter that lies in or round a polygon goes by that."""
    centre, on = ring_of(node)
    known = tuple(dict.fromkeys(scene.centres))
    if centre == THE_CIRCLE and len(known) == 1:
        (centre,) = known
    spoken = [*(one.centre for one in scene.rounds), *(one.centre for one in scene.incircles)]
    if centre == THE_CIRCLE and not on and len(spoken) == 1:
        (centre,) = spoken
    return _Surface("circle", (centre or THE_CIRCLE,))


def _lies_in(inner: _Surface, outer: _Surface, scene: Scene) -> bool:
    """Whether the question says that one figure lies inside another."""
    match outer.kind, inner.kind:
        case "polygon", "circle":
            named = (inner.points[0], circle_in(outer.points))
            return any(set(one.polygon) == set(outer.points) and one.centre in named for one in scene.incircles)
        case "circle", "polygon":
            around = circle_round(inner.points)
            there = (point for one in scene.rounds if one.centre == around for point in one.points)
            return set(inner.points) <= {*scene.on(outer.points[0]), *there}
        case "sector", "polygon":
            return set(inner.points) == set(outer.points)
        case "polygon", "sector":
            return _is_quarter_of(inner.points, outer.points, scene)
        case "polygon", "polygon":
            return _is_convex(outer, scene) and all(_on_boundary(point, outer, scene) for point in inner.points)
        case "circle", "circle":
            return (outer.points, inner.points) == ((LARGER,), (SMALLER,))
    return False


def _is_quarter_of(sector: tuple[str, ...], corners: tuple[str, ...], scene: Scene) -> bool:
    """Whether a sector has its centre in a corner of a square and its arc from one neighbour of it to the other."""
    squares = [shape.points for shape in scene.shapes if shape.kind == "square" and set(shape.points) == set(corners)]
    for points in squares:
        at = points.index(sector[0]) if sector[0] in points else -1
        if at >= 0 and {points[at - 1], points[(at + 1) % 4]} == set(sector[1:]):
            return True
    return False


def _is_convex(polygon: _Surface, scene: Scene) -> bool:
    kinds = {shape.kind for shape in scene.shapes if set(shape.points) == set(polygon.points)}
    return len(polygon.points) == 3 or bool(kinds & set(_CONVEX))


def _on_boundary(point: str, polygon: _Surface, scene: Scene) -> bool:
    """Whether a point is a corner of a polygon or is said to lie on a side of it."""
    corners = polygon.points
    if point in corners:
        return True
    sides = [{one, other} for one, other in pairwise((*corners, corners[0]))]
    for line in scene.lines:
        inner = line.points[1:-1]
        if line.ordered and point in inner and {line.points[0], line.points[-1]} in sides:
            return True
    return any(one.point == point and set(one.path) in sides for one in scene.midpoints)

"""Reads regions that words describe: the part of the square outside the circle, what lies between two circles.

A region is what one figure has beside another that lies inside it, so it has to be said that it does.
"""

from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.maths.round_sizes import LARGER, SMALLER, named_arc
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import (
    ArcOf,
    AreaOf,
    CircleSize,
    Expression,
    Negative,
    Number,
    Product,
    SectorOf,
    SegmentOf,
    Sum,
)
from paperaudit.model.fact import Fact
from paperaudit.wording.circles import ring_of
from paperaudit.wording.named import corners_of, path_of, paths_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import shape_before
from paperaudit.wording.the_circle import THE_CIRCLE, circle_in, circle_round

_CONVEX = ("triangle", "square", "rectangle", "parallelogram", "rhombus", "trapezium")
NOT_SAID = "what is shaded is not said: name the figure, as in “area of segment AB”"
NOT_INSIDE = "it is not said that one of the two figures lies inside the other"


@dataclass(frozen=True, slots=True)
class _Surface:
    """A polygon by its corners, a sector by its centre and the ends of its arc, a circle by its centre.

    A semicircle goes by the centre, the ends of its diameter and the points on it.
    """

    kind: str
    points: tuple[str, ...]

    def area(self) -> Expression:
        """Its area as a quantity."""
        if self.kind == "polygon":
            return AreaOf(self.points)
        centre, *ends = self.points
        if self.kind == "half":
            return Product((Number(Fraction(1, 2)), CircleSize("area", self.points[0])), "×")
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
    if has(node, "region_tangents"):
        return _between_tangents(node, scene)
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


def _between_tangents(node: Node, scene: Scene) -> Expression:
    """The region bounded by the tangents PA and PB and arc AB: the kite of tangents and radii without the sector.

    By the radii OA and OB and arc AB it is the sector.
    """
    one, other = paths_of(node)
    arc = named_arc(the(node, "arc_named"))
    shared = set(one) & set(other)
    centres = tuple(dict.fromkeys(scene.centres))
    if len(shared) != 1 or {*one, *other} - shared != {arc.start, arc.end} or len(centres) != 1:
        raise NotUnderstood("these lines and this arc bound no region", node.start, "two lines to the ends of an arc")
    (corner,), (centre,) = shared, centres
    sector = SectorOf("area", replace(arc, centre=centre))
    if corner == centre:
        return sector
    known = {frozenset(path) for path in scene.tangents}
    if not {frozenset(one), frozenset(other)} <= known or arc.major or arc.through:
        raise NotUnderstood("these lines are not said to be tangents", node.start, "two tangents and the minor arc")
    return Sum((AreaOf((corner, arc.start, centre, arc.end)), Negative(sector)))


def _surface(node: Node, scene: Scene) -> _Surface:
    kind = the(node, "sector_surface", "half_ring", "ring", "the_shape", "polygon")
    match kind.expr_name:
        case "sector_surface":
            return _sector(kind, scene)
        case "half_ring":
            return _half(kind, scene)
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


def _half(node: Node, scene: Scene) -> _Surface:
    """The semicircle that was named before, the only one and of the only circle."""
    centres = tuple(dict.fromkeys(scene.centres)) or (THE_CIRCLE,)
    if scene.semicircle is None or len(centres) != 1 or has(node, "length", "corners"):
        raise NotUnderstood("which semicircle is meant is not said", node.start, "“the semicircle with diameter AB”")
    return _Surface("half", ("" if centres[0] == THE_CIRCLE else centres[0], *scene.semicircle, *scene.on_semicircle))


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
        case "polygon", "half":
            return _holds_half(outer, inner, scene)
        case "half", "polygon":
            return set(inner.points) <= {*outer.points[1:], *scene.on(outer.points[0])}
        case "circle", "circle":
            return (outer.points, inner.points) == ((LARGER,), (SMALLER,))
    return False


def _holds_half(outer: _Surface, half: _Surface, scene: Scene) -> bool:
    """Whether a semicircle is said to lie inside a square, on a side of it; in a rectangle it might not fit."""
    square = any(one.kind == "square" and set(one.points) == set(outer.points) for one in scene.shapes)
    sides = [{one, other} for one, other in pairwise((*outer.points, outer.points[0]))]
    return square and set(half.points[1:3]) in sides and set(scene.semicircle_in) == set(outer.points)


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

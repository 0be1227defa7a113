"""Reads the quantities that a part asks for: sizes, sums, ratios, the area of the figure named before."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.distances import distance_between
from paperaudit.maths.round_sizes import circle_kind
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    ArcLengthOf,
    ArcOf,
    AreaOf,
    CircleSize,
    DistanceOf,
    Expression,
    LengthOf,
    Letter,
    Measured,
    Negative,
    Number,
    PerimeterOf,
    Product,
    Quotient,
    SectorOf,
    Sum,
)
from paperaudit.wording.arcs import shape_ring_centre
from paperaudit.wording.named import angle_named, corners_of, measure_of, measures_of
from paperaudit.wording.regions import region_size_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import shape_before, shape_called
from paperaudit.wording.shared_centre import CHORD
from paperaudit.wording.survey import sighted_angle


def wanted_of(node: Node, scene: Scene) -> tuple[Expression, ...]:
    """The quantities of a `wanted` list. Raises NotUnderstood where one needs a figure that was not named."""
    named = first(node, "angles_named")
    if named is not None and not has(node, "wanted_one"):
        return measures_of(named)
    return tuple(
        size
        for one in every(node, "wanted_one")
        for size in (angles_of_shape(one, scene) if has(one, "angles_wanted") else (_wanted(one, scene),))
    )


def _wanted(one: Node, scene: Scene) -> Expression:
    kind = the(one, *_KINDS)
    match kind.expr_name:
        case "extreme_angle":
            return _extreme(kind, scene)
        case "region_size":
            return region_size_of(kind, scene)
        case "remainder":
            return _remainder(kind.text, measure_of(the(kind, "measure")))
        case "elevation_named":
            return _elevation(kind, scene)
        case "combined":
            left, right = measures_of(kind)
            return Product((left, right), "×") if "product" in kind.text else Sum((left, right))
        case "ratio_of":
            return _ratio(kind)
        case "shape_size":
            return _of_shape(kind, scene)
        case "height_wanted":
            return _height(kind, scene)
        case "how_far":
            return distance_between(list(every(kind, "distant", "to_line")), kind)
        case "shape_ring":
            return CircleSize(circle_kind(kind.text), shape_ring_centre(kind, scene))
        case "sector_known":
            return _known_sector(kind, scene)
        case "chord_touching" | "chord_before":
            if kind.expr_name == "chord_before" and not scene.chord_lettered:
                raise NotUnderstood("no chord was spoken of", kind.start, "the chord by its ends, as in AB")
            return LengthOf(*CHORD)
        case "angle_name":
            return angle_named(kind.text)
        case _:
            return measure_of(kind)


_KINDS = (
    "extreme_angle",
    "region_size",
    "remainder",
    "elevation_named",
    "combined",
    "ratio_of",
    "shape_size",
    "height_wanted",
    "how_far",
    "shape_ring",
    "sector_known",
    "centres_apart",
    "chord_touching",
    "chord_before",
    "angle_name",
    "measure",
)


def _extreme(node: Node, scene: Scene) -> Expression:
    """The largest angle of a triangle lies opposite its longest side, the smallest opposite its shortest."""
    named = first(node, "the_shape", "polygon")
    if named is None:
        corners = scene.latest(3) or ()
    else:
        corners = shape_before(named, scene) if named.expr_name == "the_shape" else corners_of(named)
    opposite = {corner: scene.lengths.get(frozenset(corners) - {corner}) for corner in corners}
    known = {corner: size for corner, size in opposite.items() if size is not None}
    if len(known) != 3 or len(corners) != 3 or len({unit for _, unit in known.values()}) != 1:
        raise NotUnderstood("which angle that is the sides do not say", node.start, "a triangle with its three sides")
    largest = not re.search("smallest|least", node.text)
    values = [value for value, _ in known.values()]
    found = [corner for corner, (value, _) in known.items() if value == (max(values) if largest else min(values))]
    if len(found) != 1:
        raise NotUnderstood("two angles are as large", node.start, "the angle by its letters")
    at = corners.index(found[0])
    return AngleOf(corners[at - 1], corners[at], corners[(at + 1) % 3])


def _elevation(node: Node, scene: Scene) -> Expression:
    """The angle of elevation of T from A, where a right angle at the foot was said before."""
    angle, unsaid = sighted_angle(node, scene)
    if unsaid:
        raise NotUnderstood("the right angle at the foot is not said", node.start, "a right angle such as TB ⊥ AB")
    return angle


def _ratio(node: Node) -> Expression:
    """The ratio of AB to CD, of two areas; AB : CD is read as a quotient."""
    sizes = measures_of(node)
    if len(sizes) == 1 and isinstance(sizes[0], Quotient):
        return sizes[0]
    if len(sizes) != 2:
        raise NotUnderstood("not a ratio of two sizes", node.start, "two sizes, as in AB : CD")
    return Quotient(sizes[0], sizes[1], "÷")


def _of_shape(node: Node, scene: Scene) -> Expression:
    """The area or the perimeter of a figure that was named before: "its area", "the perimeter of the triangle"."""
    named = first(node, "the_shape")
    corners = shape_before(named, scene) if named is not None else scene.latest(None)
    if corners is None:
        raise NotUnderstood("no figure was named before", node.start, "the figure's name, as in “of ABCD”")
    return AreaOf(corners) if the(node, "figure_size").text == "area" else PerimeterOf(corners)


def angles_of_shape(node: Node, scene: Scene) -> tuple[Expression, ...]:
    """All angles of a figure, in the order of its letters."""
    named = the(the(node, "angles_wanted"), "the_shape", "polygon")
    corners = shape_called(named, scene) if named.expr_name == "the_shape" else corners_of(named)
    return tuple(
        AngleOf(corners[at - 1], corner, corners[(at + 1) % len(corners)]) for at, corner in enumerate(corners)
    )


def _height(node: Node, scene: Scene) -> Expression:
    """The altitude from A of the triangle named before; the distance of the parallel sides of a trapezium."""
    named = first(node, "the_shape", "polygon")
    if named is None:
        corner = the(node, "corner").text
        triangle = scene.latest(3, corner)
        if triangle is None:
            raise NotUnderstood("the triangle is not named", node.start, "the triangle first")
        one, other = (point for point in triangle if point != corner)
        return DistanceOf(corner, (one, other))
    corners = shape_called(named, scene) if named.expr_name == "the_shape" else corners_of(named)
    for known in scene.parallels:
        base, opposite = known.paths[:2]
        if {*base, *opposite} == set(corners):
            return DistanceOf(base[0], opposite)
    raise NotUnderstood("it is not clear which height is meant", node.start, "the height by its two letters")


def _known_sector(node: Node, scene: Scene) -> Expression:
    """A size of the sector that was named before."""
    known = set(scene.sectors)
    if len(known) != 1:
        raise NotUnderstood("which sector is meant is not said", node.start, "the sector by its letters")
    ((centre, start, end),) = known
    arc = ArcOf(start, end, centre=centre)
    if "arc" in node.text:
        return ArcLengthOf(arc)
    return SectorOf("perimeter" if "perimeter" in node.text else "area", arc)


def _remainder(words: str, angle: Expression) -> Expression:
    """What an angle lacks to 90° (its complement) or to 180° (its supplement)."""
    whole = Measured(Number(Fraction(90 if "complement" in words else 180)), "°")
    return Sum((whole, Negative(AngleAt(angle.name) if isinstance(angle, Letter) and angle.name.isupper() else angle)))

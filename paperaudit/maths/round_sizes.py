"""Reads what a circle has a size of: arcs, radii, sectors, segments."""

from fractions import Fraction
from typing import Literal, TypeAlias

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.points import points_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import (
    ArcLengthOf,
    ArcOf,
    CircleSize,
    Expression,
    Measured,
    Negative,
    Number,
    SectorOf,
    SegmentOf,
    Sum,
)

CircleKind: TypeAlias = Literal["radius", "diameter", "circumference", "area"]

CIRCLE_IN, CIRCLE_ROUND = "incircle ", "circumcircle "
"""With the corners of a polygon these stand for the centre of the circle in it or round it, until that is settled."""

LARGER, SMALLER = "the larger circle", "the smaller circle"
"""Stand for two circles about one centre, until it is settled which these are."""

_FULL = Measured(Number(Fraction(360)), "°")
_MAJOR = ("major", "longer", "larger")
_MINOR = ("minor", "shorter", "smaller")


def arc_of(node: Node) -> Expression:
    """The measure of an arc; of the arc AB that does not contain C, what arc ACB lacks to the whole circle."""
    named = the(node, "arc_named")
    holding = first(named, "arc_holding")
    if holding is not None and "not" in holding.text:
        return Sum((_FULL, Negative(named_arc(named))))
    return named_arc(named)


def arc_length_of(node: Node) -> ArcLengthOf:
    """The length of an arc."""
    named = the(node, "arc_named")
    holding = first(named, "arc_holding")
    if holding is not None and "not" in holding.text:
        raise ExpressionNotRead("the arc has no name", node.start, "the arc by three letters, as in arc ACB")
    return ArcLengthOf(named_arc(named))


def named_arc(node: Node) -> ArcOf:
    """The arc under `arc_named`, through the point that it is said to contain or, for `arc_of`, not to contain."""
    points = _run(the(node, "arc_points"))
    words, holding = first(node, "arc_words"), first(node, "arc_holding")
    major, minor = _said(words)
    if holding is not None:
        if len(points) > 2 or major or minor:
            raise ExpressionNotRead("the arc is named in two ways", node.start, "one name, as in arc ACB")
        points = (points[0], _run(the(holding, "corner"))[0], points[1])
    through = points[1] if len(points) == 3 else ""
    if through in (points[0], points[-1]):
        raise ExpressionNotRead("the arc names a point twice", node.start, "different letters")
    return ArcOf(points[0], points[-1], through, major and not through, centre_of(node))


def calls_minor_or_major(node: Node) -> tuple[bool, bool]:
    """Whether `arc_named` calls an arc of three letters major or minor, which says where its middle letter lies."""
    if len(points_of(the(node, "arc_points").text)) < 3:
        return False, False
    return _said(first(node, "arc_words"))


def centre_of(node: Node) -> str:
    """The centre of the circle that a size is said to be of; "" where no circle is named by a letter."""
    named = first(node, "circle_name")
    which = first(named, "circle_which") if named is not None else None
    if which is not None:
        return which_circle(which.text)
    centre = first(named, "corner") if named is not None else None
    return str(centre.text) if centre is not None else ""


def which_circle(words: str) -> str:
    """What stands for the larger or the smaller one of two circles.

    >>> which_circle("the inner circle")
    'the smaller circle'
    """
    return LARGER if any(word in words for word in ("larg", "big", "outer", "greater")) else SMALLER


def round_size_of(node: Node) -> Expression:
    """The radius of a circle, the area of a sector or of a segment."""
    inner = the(node, "circle_size", "sector_size", "segment_size")
    return circle_size_of(inner) if inner.expr_name == "circle_size" else figure_size_of(inner)


def circle_size_of(node: Node) -> CircleSize:
    """The radius, diameter, circumference or area under `circle_size`."""
    return CircleSize(circle_kind(node.text), _of_polygon(node) or centre_of(node))


def figure_size_of(node: Node) -> SectorOf | SegmentOf:
    """The area or the perimeter under `sector_size` or `segment_size`."""
    if node.expr_name == "sector_size":
        return SectorOf(_figure_kind(node.text), _sector_arc(node))
    return SegmentOf(_figure_kind(node.text), _segment_arc(node))


def _of_polygon(node: Node) -> str:
    """What stands for the centre of a polygon's incircle or circumcircle, "" where it is another circle."""
    named = first(node, "polygon_name")
    if named is None:
        return ""
    inside = "inradius" in node.text or "incircle" in node.text.replace("-", "") or "inscribed" in node.text
    return (CIRCLE_IN if inside else CIRCLE_ROUND) + " ".join(_run(named))


def _sector_arc(node: Node) -> ArcOf:
    """The arc of a sector that is named by three letters: its centre is O, else the one in the middle."""
    points = _run(the(node, "sector_points"))
    major, _ = _said(node)
    centre = centre_of(node)
    if centre and centre not in points:
        raise ExpressionNotRead(f"{centre} is not in the sector's name", node.start, "the sector by its centre and arc")
    centre = centre or ("O" if "O" in points else points[1])
    ends = [point for point in points if point != centre]
    through = ends.pop(1) if len(ends) == 3 else ""
    return ArcOf(ends[0], ends[1], through, major and not through, centre)


def _segment_arc(node: Node) -> ArcOf:
    chord, *arcs = (_run(run) for run in every(node, "arc_points"))
    major, minor = _said(the(node, "segment_words"))
    rest = node.text[: node.text.rfind("arc")] if arcs else ""
    if arcs:
        said = node.text[len(rest) - 7 : len(rest)]
        if {arcs[0][0], arcs[0][-1]} != {chord[0], chord[-1]} or len(chord) != 2:
            raise ExpressionNotRead("the arc and the chord have different ends", node.start, "an arc over the chord")
        major, minor = major or "major" in said, minor or "minor" in said
        chord = arcs[0]
    through = chord[1] if len(chord) == 3 else ""
    if major and minor:
        raise ExpressionNotRead("the segment is named in two ways", node.start, "one name for it")
    return ArcOf(chord[0], chord[-1], through, major and not through, centre_of(node))


def _said(words: Node | None) -> tuple[bool, bool]:
    """Whether words call an arc major, or minor."""
    text = words.text if words is not None else ""
    major, minor = (any(word in text for word in words) for words in (_MAJOR, _MINOR))
    if major and minor:
        raise ExpressionNotRead("both major and minor", words.start if words is not None else 0, "one of the two")
    return major, minor


def circle_kind(words: str) -> CircleKind:
    """Which size of a circle some words name.

    >>> circle_kind("the diameter of the circle")
    'diameter'
    """
    if "radius" in words:
        return "radius"
    if "diameter" in words:
        return "diameter"
    return "area" if "area" in words else "circumference"


def _figure_kind(words: str) -> Literal["area", "perimeter"]:
    return "area" if "area" in words.split(" of ")[0] else "perimeter"


def _run(node: Node) -> tuple[str, ...]:
    points = points_of(node.text)
    if len(set(points)) < len(points):
        raise ExpressionNotRead(f"{node.text} names a point twice", node.start, "different letters")
    return points

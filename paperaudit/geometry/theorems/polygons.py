"""Polygons of five sides and more, and closed outlines that no shape is named for."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import Size, angle
from paperaudit.geometry.theorems.points import total
from paperaudit.geometry.theorems.theorem import Instance, Stated, Theorem
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf


def corner_angles(arrangement: Arrangement, points: tuple[str, ...]) -> list[AngleOf] | None:
    """The interior angles of a simple polygon in the drawing, reflex ones as such; None if two sides are one line."""
    count = len(points)
    way = 1 if signed_area(arrangement, points) > 0 else -1
    found = []
    for index, vertex in enumerate(points):
        before, after = points[index - 1], points[(index + 1) % count]
        if arrangement.ray(vertex, before).line == arrangement.ray(vertex, after).line:
            return None
        convex = way * arrangement.turn(vertex, after, before) > 0
        found.append(arrangement.canonical(angle(before, vertex, after, not convex)))
    return found


def signed_area(arrangement: Arrangement, points: tuple[str, ...]) -> float:
    """Twice the area of a polygon in the drawing, positive if its letters run anticlockwise."""
    spots = [arrangement.at[point] for point in points]
    return sum(x * q - p * y for (x, y), (p, q) in zip(spots, spots[1:] + spots[:1], strict=True))


def _interior_sum(arrangement: Arrangement) -> Iterator[Instance]:
    for shape, _ in arrangement.figure.shapes:
        count = len(shape.points)
        parts = corner_angles(arrangement, shape.points) if count > 4 else None
        if parts:
            about = "".join(shape.points)
            yield Instance("angle-sum-polygon", (), total(parts, 180 * (count - 2)), about=about, weight=14)


def outlines(arrangement: Arrangement) -> Iterator[tuple[str, ...]]:
    """The closed outlines of the drawing's regions that have four corners or more, straight corners left out."""
    following = _turning_left(arrangement)
    seen: set[tuple[str, str]] = set()
    for start in following:
        edge, walked = start, []
        while edge not in seen:
            seen.add(edge)
            walked.append(edge[0])
            edge = following[edge]
        if edge != start or len(walked) < 4 or len(set(walked)) != len(walked):
            continue
        count = len(walked)
        corners = tuple(
            vertex
            for index, vertex in enumerate(walked)
            if arrangement.ray(vertex, walked[index - 1]).line
            != arrangement.ray(vertex, walked[(index + 1) % count]).line
        )
        if len(corners) >= 4 and signed_area(arrangement, tuple(walked)) > 0:
            yield corners


def _turning_left(arrangement: Arrangement) -> dict[tuple[str, str], tuple[str, str]]:
    """For every edge of the drawing, the next one when its left-hand region is walked round."""
    following = {}
    for vertex, rays in arrangement.rays.items():
        for ray in rays:
            near = ray.points[0]
            there = arrangement.rays[near]
            back = next(index for index, other in enumerate(there) if other.points[0] == vertex)
            following[vertex, near] = (near, there[back - 1].points[0])
    return following


def _closes(arrangement: Arrangement, parts: list[AngleOf]) -> bool:
    """Whether an outline is walked round once: one that crosses itself has another sum."""
    return abs(sum(arrangement.measured(part) for part in parts) - 180 * (len(parts) - 2)) < 1


def _outline_sum(arrangement: Arrangement) -> Iterator[Instance]:
    named = {frozenset(shape.points) for shape, _ in arrangement.figure.shapes}
    for points in outlines(arrangement):
        parts = None if frozenset(points) in named else corner_angles(arrangement, points)
        if parts and _closes(arrangement, parts):
            name = "angle-sum-quadrilateral" if len(points) == 4 else "angle-sum-polygon"
            whole = 180 * (len(points) - 2)
            yield Instance(name, (), total(parts, whole), about="".join(points), weight=12 + 2 * (len(points) - 4))


def _exterior_sum(arrangement: Arrangement) -> Iterator[Instance]:
    for shape, _ in arrangement.figure.shapes:
        outside = []
        for index, vertex in enumerate(shape.points):
            before, after = shape.points[index - 1], shape.points[(index + 1) % len(shape.points)]
            beyond = arrangement.opposite(arrangement.ray(vertex, before))
            if beyond is None:
                break
            outside.append(arrangement.between(beyond, arrangement.ray(vertex, after)))
        if len(outside) == len(shape.points):
            yield Instance("exterior-angles-polygon", (), total(outside, 360), about="".join(shape.points), weight=12)


def _regular_chords(arrangement: Arrangement) -> Iterator[Instance]:
    """The angle at one corner of a regular polygon between two others: 180°/n for each side between them."""
    for shape, label in arrangement.figure.shapes:
        if "regular" not in shape.qualities or len(shape.points) < 5:
            continue
        count = len(shape.points)
        for spot, vertex in enumerate(shape.points):
            turned = shape.points[spot + 1 :] + shape.points[:spot]
            for low, arm in enumerate(turned):
                for high in range(low + 1, len(turned)):
                    other = turned[high]
                    if not arrangement.joined(vertex, arm) or not arrangement.joined(vertex, other):
                        continue
                    size = Fraction(180 * (high - low), count)
                    form: LinearForm[Size] = LinearForm({arrangement.corner(arm, vertex, other): Fraction(1)}, -size)
                    yield Instance("regular-polygon", (Stated(label),), form, about="".join(shape.points), weight=16)


THEOREMS = (
    Theorem(
        "angle-sum-polygon",
        "The interior angles of a polygon with n sides add up to (n − 2) × 180°.",
        "angles in a polygon",
        "Euclid I.32, corollary (Proclus)",
        _interior_sum,
        fires=("pentagon ABCDE",),
        silent=("triangle ABC",),
    ),
    Theorem(
        "angle-sum-quadrilateral",
        "The interior angles of any closed outline with n corners add up to (n − 2) × 180°.",
        "angles in a quadrilateral",
        "Euclid I.32, corollary (Proclus)",
        _outline_sum,
        fires=("triangle ABC", "D lies on AB", "E lies on AC", "segment DE"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "exterior-angles-polygon",
        "The exterior angles of a convex polygon add up to 360°.",
        "angles in a polygon",
        "Euclid I.32, corollary",
        _exterior_sum,
        fires=("triangle ABC", "AB is produced to D", "BC is produced to E", "CA is produced to F"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "regular-polygon",
        "Two sides' ends of a regular polygon are seen from a third corner under equal steps of 180°/n.",
        "angles in a polygon",
        "Euclid III.21 and III.27 on the circumscribed circle",
        _regular_chords,
        fires=("regular pentagon ABCDE", "segment AC"),
        silent=("pentagon ABCDE", "segment AC"),
    ),
)

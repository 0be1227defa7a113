"""Lengths in circles: chords that cross, secants and tangents from a point, inscribed triangles and quadrilaterals."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.canonical import area_named
from paperaudit.geometry.figure.figure import HIDDEN, OnCircle, length
from paperaudit.geometry.theorems.areas import HALF, distances, perimeters
from paperaudit.geometry.theorems.circle_sizes import SKILL, radii
from paperaudit.geometry.theorems.circles import circles, on_circle, together
from paperaudit.geometry.theorems.incircles import tangential
from paperaudit.geometry.theorems.like_quadrilaterals import is_right, parallelograms
from paperaudit.geometry.theorems.right_triangles import squared
from paperaudit.geometry.theorems.tangents import TangentLine, tangents
from paperaudit.geometry.theorems.theorem import Equation, Predicate, Theorem, is_shape
from paperaudit.geometry.theorems.triangles import triangle_text
from paperaudit.geometry.theorems.trigonometry import times, whole
from paperaudit.model.expression import Expression, Function, Negative, PerimeterOf, Power, Product, Quotient, Sum

CROSSING, CIRCUMRADIUS, INRADIUS, FOUR_TANGENTS, PTOLEMY = 14, 22, 16, 14, 40
COSINES = 46
MOST_INSCRIBED = 40
"""Triangles and quadrilaterals of one circle that are looked at."""
Secant = tuple[int, str, str]
"""A drawn line with the two points in which it meets a circle."""


def secants(arrangement: Arrangement, circle: OnCircle) -> list[Secant]:
    """The drawn lines through two lettered points of a circle."""
    lettered = [point for point in circle.points if not point.startswith(HIDDEN)]
    return [
        (arrangement.ray(start, end).line, start, end)
        for start, end in combinations(lettered, 2)
        if arrangement.joined(start, end)
    ]


def _parts(point: str, start: str, end: str) -> Product:
    return times(length(point, start), length(point, end))


def _crossing(arrangement: Arrangement) -> Iterator[Equation]:
    """The parts of two chords that cross, or of two secants from a point outside, have equal products."""
    for circle in circles(arrangement):
        for (line, a, b), (other, c, d) in combinations(secants(arrangement, circle), 2):
            point = arrangement.meet(line, other) if line != other else None
            if point is None or point in (a, b, c, d):
                continue
            row = arrangement.lines[line]
            inside = min(row.index(a), row.index(b)) < row.index(point) < max(row.index(a), row.index(b))
            name = "intersecting-chords" if inside else "intersecting-secants"
            products = _parts(point, a, b), _parts(point, c, d)
            yield Equation(name, on_circle(circle, a, b, c, d), *products, f"{a}{b} and {c}{d}", CROSSING)


@dataclass(frozen=True, slots=True)
class TangentWithSecant:
    """A tangent of a drawing and a secant from one of its points: the square, the product, the secant's ends."""

    tangent: TangentLine
    ends: tuple[str, str]
    square: Power
    product: Product
    about: str


def tangents_with_secants(arrangement: Arrangement, circle: OnCircle) -> Iterator[TangentWithSecant]:
    """The tangents of a circle with each secant that meets them in a named point."""
    for tangent in tangents(arrangement, circle):
        for line, a, b in secants(arrangement, circle):
            point = arrangement.meet(tangent.line, line) if line != tangent.line else None
            if point is not None and point not in (a, b, tangent.at):
                about = f"tangent {point}{tangent.at}, secant {a}{b}"
                square = squared(length(point, tangent.at))
                yield TangentWithSecant(tangent, (a, b), square, _parts(point, a, b), about)


def _tangent_secant(arrangement: Arrangement) -> Iterator[Equation]:
    for circle in circles(arrangement):
        for found in tangents_with_secants(arrangement, circle):
            premises = together((found.tangent.premise,), on_circle(circle, *found.ends))
            yield Equation("tangent-secant", premises, found.square, found.product, found.about, CROSSING)


def _circumradius(arrangement: Arrangement) -> Iterator[Equation]:
    """A side of a triangle in a circle over the sine of the angle opposite is the diameter."""
    for circle in circles(arrangement):
        on = set(circle.points)
        inscribed = [triangle for triangle in arrangement.triangles if set(triangle.corners) <= on]
        for triangle in inscribed[:MOST_INSCRIBED]:
            about = triangle_text(arrangement, triangle.corners)
            radius, at = radii(arrangement, circle, *triangle.corners)[0]
            premises = together(on_circle(circle, *triangle.corners), at)
            for a, b, c in triangle.turned():
                ratio = Quotient(length(b, c), Function("sin", arrangement.corner(b, a, c)))
                yield Equation("circumradius", premises, ratio, times(whole(2), radius), about, CIRCUMRADIUS)


def _inradius(arrangement: Arrangement) -> Iterator[Equation]:
    """The radii to the points of contact are the heights of the triangles on the sides."""
    about_centre = {circle.centre: circle for circle in circles(arrangement)}
    for polygon in tangential(arrangement):
        corners = polygon.corners
        size = area_named(arrangement, corners)
        around = PerimeterOf(size.points)
        widths: list[tuple[Expression, tuple[Predicate, ...]]] = [
            (size, ()) for size in distances(arrangement) if size.point == polygon.centre
        ]
        if polygon.centre in about_centre:
            widths += radii(arrangement, about_centre[polygon.centre])
        for width, on in widths:
            area = times(HALF, around, width)
            premises = together(polygon.premises, on)
            yield Equation("inradius", premises, size, area, "".join(corners), INRADIUS)
        if widths and len(size.points) > 3:
            yield from perimeters(arrangement, size.points)


def _four_tangents(arrangement: Arrangement) -> Iterator[Equation]:
    """Opposite sides round a circle add up alike, as their parts are equal tangents."""
    for polygon in tangential(arrangement):
        if len(polygon.corners) == 4:
            a, b, c, d = polygon.corners
            one, other = (Sum((length(*p), length(*q))) for p, q in (((a, b), (c, d)), ((b, c), (d, a))))
            about = "".join(polygon.corners)
            yield Equation("tangential-quadrilateral", polygon.premises, one, other, about, FOUR_TANGENTS)


def _rectangle(arrangement: Arrangement) -> Iterator[Equation]:
    """The diagonals of a rectangle in a circle are diameters, since its angles are right."""
    for circle in circles(arrangement):
        on = set(circle.points)
        for corners in parallelograms(arrangement):
            a, b, c, _ = corners
            if not set(corners) <= on or not is_right(arrangement, a, b, c):
                continue
            (radius, at), *_ = radii(arrangement, circle, a)
            premises = together((is_shape("rectangle", corners),), on_circle(circle, *corners), at)
            sides = Sum((squared(length(a, b)), squared(length(b, c))))
            across = squared(times(whole(2), radius))
            yield Equation("rectangle-in-circle", premises, across, sides, "".join(corners), CROSSING)


def _ptolemy(arrangement: Arrangement) -> Iterator[Equation]:
    for circle in circles(arrangement):
        order = arrangement.rounds.get(circle.key)
        points = [point for point in order.points if not point.startswith(HIDDEN)] if order else []
        for a, b, c, d in list(combinations(points, 4))[:MOST_INSCRIBED]:
            pairs = ((a, c), (b, d), (a, b), (c, d), (b, c), (d, a))
            if all(arrangement.joined(*pair) for pair in pairs):
                diagonals, one, two = (times(length(*pairs[i]), length(*pairs[i + 1])) for i in (0, 2, 4))
                premises = on_circle(circle, a, b, c, d)
                yield Equation("ptolemy", premises, diagonals, Sum((one, two)), f"{a}{b}{c}{d}", PTOLEMY)


def _diagonal(arrangement: Arrangement) -> Iterator[Equation]:
    """The cosine rule on both sides of a diagonal: opposite angles add up to 180°, so their cosines are opposite."""
    for circle in circles(arrangement):
        order = arrangement.rounds.get(circle.key)
        points = [point for point in order.points if not point.startswith(HIDDEN)] if order else []
        for four in list(combinations(points, 4))[:MOST_INSCRIBED]:
            for a, b, c, d in (four, four[1:] + four[:1]):
                sides = ((a, b), (b, c), (c, d), (d, a), (a, c))
                if all(arrangement.joined(*pair) for pair in sides):
                    one, two = _cosine(a, b, c), _cosine(a, d, c)
                    about = f"△{a}{b}{c} and △{a}{d}{c}"
                    yield Equation("cyclic-cosines", on_circle(circle, *four), one, Negative(two), about, COSINES)


def _cosine(a: str, b: str, c: str) -> Quotient:
    """What the cosine rule says of cos ∠ABC."""
    one, two, across = length(a, b), length(b, c), length(a, c)
    return Quotient(Sum((squared(one), squared(two), Negative(squared(across)))), times(whole(2), one, two))


_CHORDS = ("circle with centre O through A, B, C and D", "AB and CD intersect at X")
_SECANTS = ("circle with centre O through A, B, C and D", "P-A-B", "P-C-D")
_TANGENT = ("circle with centre O through T, A and B", "PT is a tangent to the circle at T", "P-A-B")
_TRIANGLE = ("circle with centre O through A, B and C", "triangle ABC")
_IN_TRIANGLE = (
    "triangle ABC",
    "D lies on BC",
    "E lies on CA",
    "F lies on AB",
    "circle with centre I through D, E and F",
    "BC is a tangent to the circle at D",
    "CA is a tangent to the circle at E",
    "AB is a tangent to the circle at F",
)

THEOREMS = (
    Theorem(
        "intersecting-chords",
        "The products of the parts of two chords that cross are equal.",
        SKILL,
        "Euclid III.35",
        _crossing,
        fires=_CHORDS,
        silent=_TRIANGLE,
    ),
    Theorem(
        "intersecting-secants",
        "The products of the two parts of secants from one point are equal.",
        SKILL,
        "Euclid III.36, corollary",
        _crossing,
        fires=_SECANTS,
        silent=_CHORDS,
    ),
    Theorem(
        "tangent-secant",
        "The square of a tangent is the product of the parts of a secant from the same point.",
        SKILL,
        "Euclid III.36",
        _tangent_secant,
        fires=_TANGENT,
        silent=_SECANTS,
    ),
    Theorem(
        "circumradius",
        "A side of a triangle over the sine of the opposite angle is the diameter of the circle round it.",
        SKILL,
        "Ptolemy, Almagest I.10, chords as sines (from memory)",
        _circumradius,
        fires=_TRIANGLE,
        silent=_CHORDS,
    ),
    Theorem(
        "tangential-quadrilateral",
        "Opposite sides of a quadrilateral round a circle add up to the same length.",
        SKILL,
        "Pitot 1725, from Euclid III.36, corollary (from memory)",
        _four_tangents,
        fires=("quadrilateral ABCD", "the circle is inscribed in ABCD"),
        silent=("quadrilateral ABCD",),
    ),
    Theorem(
        "inradius",
        "The area of a polygon with a circle in it is half its perimeter times the radius.",
        SKILL,
        "Heron, Metrica I.8, in the proof",
        _inradius,
        fires=_IN_TRIANGLE,
        silent=_TRIANGLE,
    ),
    Theorem(
        "rectangle-in-circle",
        "The diagonal of a rectangle in a circle is a diameter.",
        SKILL,
        "Euclid III.31 with I.47",
        _rectangle,
        fires=("rectangle ABCD", "circle with centre O through A, B, C and D"),
        silent=_TRIANGLE,
    ),
    Theorem(
        "ptolemy",
        "In a cyclic quadrilateral the product of the diagonals is the sum of the products of opposite sides.",
        SKILL,
        "Ptolemy, Almagest I.10",
        _ptolemy,
        fires=("circle through A, B, C and D", "quadrilateral ABCD", "segments AC, BD"),
        silent=_TRIANGLE,
    ),
    Theorem(
        "cyclic-cosines",
        "In a cyclic quadrilateral the cosines of opposite angles, both by the cosine rule, are opposite numbers.",
        SKILL,
        "Euclid III.22 with II.12, II.13",
        _diagonal,
        fires=("circle through A, B, C and D", "quadrilateral ABCD", "segment AC"),
        silent=_TRIANGLE,
    ),
)

"""Regular polygons: the angle at the centre, the area by side, by apothem, and by the triangles round the centre."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.canonical import area_named
from paperaudit.geometry.figure.figure import HIDDEN, OnCircle, Size, length
from paperaudit.geometry.figure.notation import number
from paperaudit.geometry.theorems.area_polygons import feet, polygons
from paperaudit.geometry.theorems.areas import HALF, SKILL, upright
from paperaudit.geometry.theorems.circles import circles, on_circle, seen, together
from paperaudit.geometry.theorems.right_triangles import squared
from paperaudit.geometry.theorems.theorem import Equation, Instance, Predicate, Stated, Theorem
from paperaudit.geometry.theorems.trigonometry import times, whole
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AreaOf, Expression, Function, Measured, Product, Quotient

CENTRAL, BY_SIDE, APOTHEM, TRIANGLES = 10, 30, 14, 12


@dataclass(frozen=True, slots=True)
class Regular:
    """A polygon that the paper calls regular: its corners in order, and the premise."""

    corners: tuple[str, ...]
    stated: Stated

    @property
    def sides(self) -> tuple[tuple[str, str], ...]:
        """The ends of every side."""
        return tuple(zip(self.corners, self.corners[1:] + self.corners[:1], strict=True))


def regular_polygons(arrangement: Arrangement) -> Iterator[Regular]:
    """The polygons that the paper calls regular, triangles and squares left out."""
    for shape, label in arrangement.figure.shapes:
        if "regular" in shape.qualities and len(shape.points) > 4:
            yield Regular(shape.points, Stated(label))


def _about_centre(arrangement: Arrangement, polygon: Regular) -> Iterator[tuple[OnCircle, tuple[Predicate, ...]]]:
    """The circle round a regular polygon, about its centre."""
    for circle in circles(arrangement):
        if set(polygon.corners) <= set(circle.points):
            yield circle, together((polygon.stated,), on_circle(circle, *polygon.corners))


def _central(arrangement: Arrangement) -> Iterator[Instance]:
    """Corners that are k sides apart are seen from the centre under k times 360°/n."""
    for polygon in regular_polygons(arrangement):
        count, about = len(polygon.corners), "".join(polygon.corners)
        for circle, premises in _about_centre(arrangement, polygon):
            for first, start in enumerate(polygon.corners):
                for steps in range(1, (count - 1) // 2 + 1):
                    angle = seen(arrangement, start, circle.centre, polygon.corners[(first + steps) % count])
                    if angle:
                        size: LinearForm[Size] = LinearForm({angle: Fraction(1)}, Fraction(-360 * steps, count))
                        yield Instance("regular-central-angle", premises, size, None, about, CENTRAL)


def _area(arrangement: Arrangement) -> Iterator[Equation]:
    wanted = set(polygons(arrangement))
    for polygon in regular_polygons(arrangement):
        size = area_named(arrangement, polygon.corners)
        if size.points not in wanted:
            continue
        yield from _by_side(polygon, size)
        for circle, premises in _about_centre(arrangement, polygon):
            yield from _by_apothem(arrangement, polygon, size, circle, premises)
            yield from _by_triangles(arrangement, polygon, size, circle, premises)


def _half_angle(polygon: Regular) -> Expression:
    """Half the angle under which a side is seen from the centre: 180°/n."""
    return Measured(number(Fraction(180, len(polygon.corners))), "°")


def _radius_and_apothem(arrangement: Arrangement) -> Iterator[Equation]:
    """The distances of the corners and the sides from the centre, by a right-angled triangle on half a side."""
    for polygon in regular_polygons(arrangement):
        about, half_angle = "".join(polygon.corners), _half_angle(polygon)
        for circle, premises in _about_centre(arrangement, polygon):
            centre = circle.centre
            if centre.startswith(HIDDEN):
                continue
            for start, end in polygon.sides:
                half = times(HALF, length(start, end))
                sine, tangent = Function("sin", half_angle), Function("tan", half_angle)
                if arrangement.joined(centre, start):
                    radius = length(centre, start)
                    yield Equation("regular-polygon-radius", premises, sine, Quotient(half, radius), about, BY_SIDE)
                for foot in feet(arrangement, centre, start, end) if arrangement.joined(start, end) else ():
                    for right in upright(arrangement, centre, foot, start, end):
                        ratio = Quotient(half, length(centre, foot))
                        yield Equation("regular-polygon-apothem", (*premises, right), tangent, ratio, about, BY_SIDE)


def _by_side(polygon: Regular, size: AreaOf) -> Iterator[Equation]:
    """n triangles on the sides, each half the side times half the side over tan (180°/n)."""
    count = len(polygon.corners)
    half_angle = _half_angle(polygon)
    for side in polygon.sides:
        above = times(whole(count), squared(length(*side)))
        area = Quotient(above, Product((whole(4), Function("tan", half_angle))))
        yield Equation("regular-polygon-area", (polygon.stated,), size, area, "".join(polygon.corners), BY_SIDE)


def _by_apothem(
    arrangement: Arrangement, polygon: Regular, size: AreaOf, circle: OnCircle, premises: tuple[Predicate, ...]
) -> Iterator[Equation]:
    about, count = "".join(polygon.corners), whole(len(polygon.corners))
    for start, end in polygon.sides:
        if not arrangement.joined(start, end):
            continue
        for foot in feet(arrangement, circle.centre, start, end):
            for right in upright(arrangement, circle.centre, foot, start, end):
                around: Expression = times(count, length(start, end))
                area = times(HALF, around, length(circle.centre, foot))
                yield Equation("apothem-area", (*premises, right), size, area, about, APOTHEM)


def _by_triangles(
    arrangement: Arrangement, polygon: Regular, size: AreaOf, circle: OnCircle, premises: tuple[Predicate, ...]
) -> Iterator[Equation]:
    known = set(polygons(arrangement))
    for start, end in polygon.sides:
        part = area_named(arrangement, (circle.centre, start, end))
        if part.points in known:
            area = times(whole(len(polygon.corners)), part)
            yield Equation("regular-polygon-triangles", premises, size, area, "".join(polygon.corners), TRIANGLES)


_HEXAGON = ("regular hexagon ABCDEF", "circle with centre O through A, B, C, D, E and F", "segments OA, OB")
_AREA = "area of ABCDEF = 50"

THEOREMS = (
    Theorem(
        "regular-central-angle",
        "The sides of a regular polygon with n sides are seen from its centre under 360°/n.",
        "angles in a polygon",
        "Euclid IV.15, for the hexagon",
        _central,
        fires=_HEXAGON,
        silent=("regular hexagon ABCDEF",),
    ),
    Theorem(
        "regular-polygon-radius",
        "The sine of 180°/n is half a side of a regular polygon over its radius.",
        "trigonometric ratios",
        "Ptolemy, Almagest I.10, chords as sines (from memory)",
        _radius_and_apothem,
        fires=_HEXAGON,
        silent=("regular hexagon ABCDEF",),
    ),
    Theorem(
        "regular-polygon-apothem",
        "The tangent of 180°/n is half a side of a regular polygon over the distance of the centre from a side.",
        "trigonometric ratios",
        "common practice, no source",
        _radius_and_apothem,
        fires=(*_HEXAGON, "M lies on AB", "OM ⊥ AB"),
        silent=_HEXAGON,
    ),
    Theorem(
        "regular-polygon-area",
        "The area of a regular polygon with n sides a is n a² / (4 tan (180°/n)).",
        SKILL,
        "Heron, Metrica I.18 to I.25 (from memory)",
        _area,
        fires=("regular hexagon ABCDEF", _AREA),
        silent=("regular hexagon ABCDEF",),
    ),
    Theorem(
        "apothem-area",
        "The area of a regular polygon is half its perimeter times the distance of the centre from a side.",
        SKILL,
        "Heron, Metrica I.18 (from memory)",
        _area,
        fires=(*_HEXAGON, "M lies on AB", "OM ⊥ AB", _AREA),
        silent=("regular hexagon ABCDEF", _AREA),
    ),
    Theorem(
        "regular-polygon-triangles",
        "The radii of a regular polygon cut it into n triangles of equal area.",
        SKILL,
        "Euclid IV.15, corollary",
        _area,
        fires=(*_HEXAGON, "area of △OAB = 8"),
        silent=("regular hexagon ABCDEF", _AREA),
    ),
)

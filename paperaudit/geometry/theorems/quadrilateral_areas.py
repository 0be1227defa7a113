"""Areas of quadrilaterals: rectangles and squares, base times height, diagonals at right angles, trapeziums."""

from collections.abc import Iterator

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import length
from paperaudit.geometry.theorems.area_polygons import feet, polygons
from paperaudit.geometry.theorems.areas import HALF, SKILL, distances, upright
from paperaudit.geometry.theorems.like_quadrilaterals import is_right
from paperaudit.geometry.theorems.like_triangles import CLOSE
from paperaudit.geometry.theorems.quadrilaterals import crossing_of
from paperaudit.geometry.theorems.right_triangles import RIGHT, squared
from paperaudit.geometry.theorems.theorem import AngleIs, Equation, Predicate, Theorem, is_shape, lines_parallel
from paperaudit.geometry.theorems.trigonometry import times
from paperaudit.model.expression import AreaOf, Expression, Function, LengthOf, Sum

RECTANGLE, BASE, DIAGONALS, TRAPEZIUM, SINE = 10, 12, 14, 15, 20
Corners = tuple[str, str, str, str]


def quadrilaterals_with_area(arrangement: Arrangement) -> Iterator[tuple[AreaOf, Corners]]:
    """The quadrilaterals whose area matters and whose sides are drawn."""
    for corners in polygons(arrangement):
        if len(corners) == 4:
            a, b, c, d = corners
            if all(arrangement.joined(*side) for side in ((a, b), (b, c), (c, d), (d, a))):
                yield AreaOf(corners), (a, b, c, d)


def turned(corners: Corners) -> tuple[Corners, Corners, Corners, Corners]:
    """The corners with each in turn in front."""
    a, b, c, d = corners
    return (a, b, c, d), (b, c, d, a), (c, d, a, b), (d, a, b, c)


def is_parallelogram(arrangement: Arrangement, corners: Corners) -> bool:
    """Whether the diagonals have one middle in the drawing."""
    (a, b, c, d), at = corners, arrangement.at
    size = arrangement.measured(length(a, c))
    return all(abs(at[a][way] + at[c][way] - at[b][way] - at[d][way]) < CLOSE * size for way in (0, 1))


def _rectangle(arrangement: Arrangement) -> Iterator[Equation]:
    for size, corners in quadrilaterals_with_area(arrangement):
        a, b, c, d = corners
        if not is_parallelogram(arrangement, corners) or not is_right(arrangement, d, a, b):
            continue
        about = "".join(corners)
        sides = times(length(a, b), length(b, c))
        yield Equation("rectangle-area", (is_shape("rectangle", corners),), size, sides, about, RECTANGLE)
        square = (is_shape("square", corners),)
        for side in ((a, b), (b, c), (c, d), (d, a)):
            yield Equation("square-area", square, size, squared(length(*side)), about, RECTANGLE)


def heights(
    arrangement: Arrangement, base: tuple[str, str], top: tuple[str, str]
) -> Iterator[tuple[Expression, tuple[Predicate, ...]]]:
    """What measures the distance between two parallel sides, each with its premises.

    That is a drawn segment from a point of one line at right angles to the other, or a distance that the paper names.
    """
    for (start, end), (one, two) in ((base, top), (top, base)):
        line = arrangement.lines[arrangement.ray(one, two).line]
        for point in line:
            for foot in feet(arrangement, point, start, end):
                for premise in upright(arrangement, point, foot, start, end):
                    yield length(point, foot), (premise,)
        for size in distances(arrangement):
            if size.point in line and set(size.path) <= set(arrangement.lines[arrangement.ray(start, end).line]):
                yield size, ()


def _base_and_height(arrangement: Arrangement) -> Iterator[Equation]:
    for size, corners in quadrilaterals_with_area(arrangement):
        if not is_parallelogram(arrangement, corners) or is_right(arrangement, *corners[:3]):
            continue
        about, shape = "".join(corners), is_shape("parallelogram", corners)
        for a, b, c, d in turned(corners)[:2]:
            for height, premises in heights(arrangement, (a, b), (d, c)):
                for side in ((a, b), (d, c)):
                    area = times(length(*side), height)
                    yield Equation("parallelogram-area", (shape, *premises), size, area, about, BASE)
        for a, b, c, _ in turned(corners):
            sine = Function("sin", arrangement.corner(a, b, c))
            area = times(length(a, b), length(b, c), sine)
            yield Equation("parallelogram-area-sine", (shape,), size, area, about, SINE)


def _diagonals(arrangement: Arrangement) -> Iterator[Equation]:
    """Half the product of the diagonals of a rhombus, a kite, or where they are at right angles."""
    for size, corners in quadrilaterals_with_area(arrangement):
        a, b, c, d = corners
        area = times(HALF, length(a, c), length(b, d))
        about = "".join(corners)
        middle = crossing_of(arrangement, (a, c), (b, d))
        if middle and middle not in corners:
            right = arrangement.corner(a, middle, b)
            if abs(arrangement.measured(right) - 90) < CLOSE:
                yield Equation("diagonals-area", (AngleIs(right, RIGHT),), size, area, about, DIAGONALS)
        for axis in ((a, b, c, d), (b, c, d, a)):
            if _is_axis(arrangement, axis):
                yield Equation("diagonals-area", (is_shape("kite", axis),), size, area, about, DIAGONALS)


def _is_axis(arrangement: Arrangement, corners: Corners) -> bool:
    a, b, c, d = corners
    near, far = (
        abs(arrangement.measured(length(end, b)) - arrangement.measured(length(end, d)))
        < CLOSE * arrangement.measured(length(end, b))
        for end in (a, c)
    )
    return near and far


def _trapezium(arrangement: Arrangement) -> Iterator[Equation]:
    for size, corners in quadrilaterals_with_area(arrangement):
        if is_parallelogram(arrangement, corners):
            continue
        for a, b, c, d in turned(corners)[:2]:
            first, second = arrangement.ray(a, b).line, arrangement.ray(d, c).line
            if not arrangement.parallel_way(first, second):
                continue
            parallel = lines_parallel(first, second)
            sides: tuple[LengthOf, LengthOf] = (length(a, b), length(d, c))
            for height, premises in heights(arrangement, (a, b), (d, c)):
                area = times(HALF, Sum(sides), height)
                yield Equation("trapezium-area", (parallel, *premises), size, area, "".join(corners), TRAPEZIUM)


_NO_AREA = ("quadrilateral ABCD",)

THEOREMS = (
    Theorem(
        "rectangle-area",
        "The area of a rectangle is the product of its sides.",
        SKILL,
        "Euclid II, definition 1",
        _rectangle,
        fires=("rectangle ABCD", "area of ABCD = 24"),
        silent=("rectangle ABCD",),
    ),
    Theorem(
        "square-area",
        "The area of a square is the square of its side.",
        SKILL,
        "Euclid II, definition 1",
        _rectangle,
        fires=("square ABCD", "area of ABCD = 24"),
        silent=("square ABCD",),
    ),
    Theorem(
        "parallelogram-area",
        "The area of a parallelogram is its base times its height.",
        SKILL,
        "Euclid I.35, I.36",
        _base_and_height,
        fires=("parallelogram ABCD", "E lies on AB", "DE ⊥ AB", "area of ABCD = 24"),
        silent=("parallelogram ABCD", "area of ABCD = 24"),
    ),
    Theorem(
        "parallelogram-area-sine",
        "The area of a parallelogram is the product of two sides and the sine of the angle between them.",
        SKILL,
        "Euclid I.35 with the definition of the sine",
        _base_and_height,
        fires=("parallelogram ABCD", "area of ABCD = 24"),
        silent=_NO_AREA,
    ),
    Theorem(
        "diagonals-area",
        "Where the diagonals are at right angles, as in a kite or a rhombus, the area is half their product.",
        SKILL,
        "Heron, Metrica I.14 (from memory)",
        _diagonals,
        fires=("kite ABCD", "AC and BD intersect at E", "area of ABCD = 24"),
        silent=("parallelogram ABCD", "AC and BD intersect at E", "area of ABCD = 24"),
    ),
    Theorem(
        "trapezium-area",
        "The area of a trapezium is half the sum of its parallel sides times the distance between them.",
        SKILL,
        "Heron, Metrica I.11 (from memory)",
        _trapezium,
        fires=("trapezium ABCD with AB ∥ DC", "AD ⊥ AB", "area of ABCD = 24"),
        silent=("trapezium ABCD with AB ∥ DC", "area of ABCD = 24"),
    ),
)

"""Triangles with any angles: sine rule and cosine rule; the triangles whose sides are in known ratios."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import length
from paperaudit.geometry.theorems.like_triangles import Corners, corner_of, side_of
from paperaudit.geometry.theorems.right_triangles import CLOSE, RIGHT, right_corners, squared
from paperaudit.geometry.theorems.theorem import AngleIs, Equation, Theorem
from paperaudit.geometry.theorems.triangles import triangle_text
from paperaudit.model.expression import AngleOf, Expression, Function, Negative, Number, Product, Quotient, Root, Sum

MOST_TRIANGLES = 120
"""Triangles that the two rules are tried in; those that the paper names come first."""
SINE, COSINE, SPECIAL = 20, 24, 11


def ranked_triangles(arrangement: Arrangement) -> list[Corners]:
    """The triangles of a figure, those that the paper names first, at most MOST_TRIANGLES."""
    named = [set(shape.points) for shape, _ in arrangement.figure.shapes]
    corners = [triangle.corners for triangle in arrangement.triangles]
    return sorted(corners, key=lambda three: set(three) not in named)[:MOST_TRIANGLES]


def times(*factors: Expression) -> Product:
    """A product of sizes with its signs: 2 × AB × BC."""
    return Product(factors, "×")


def whole(value: int) -> Number:
    """A whole number."""
    return Number(Fraction(value))


def _sine_rule(arrangement: Arrangement) -> Iterator[Equation]:
    for corners in ranked_triangles(arrangement):
        about = triangle_text(arrangement, corners)
        for one, two in combinations(range(3), 2):
            left, right = (
                Quotient(side_of(corners, place), Function("sin", corner_of(arrangement, corners, place)))
                for place in (one, two)
            )
            yield Equation("sine-rule", (), left, right, about, SINE)


def _cosine_rule(arrangement: Arrangement) -> Iterator[Equation]:
    for corners in ranked_triangles(arrangement):
        about = triangle_text(arrangement, corners)
        for place in range(3):
            angle = corner_of(arrangement, corners, place)
            opposite = side_of(corners, place)
            one, two = side_of(corners, (place + 2) % 3), side_of(corners, (place + 1) % 3)
            product = times(whole(2), one, two, Function("cos", angle))
            right = Sum((squared(one), squared(two), Negative(product)))
            yield Equation("cosine-rule", (), squared(opposite), right, about, COSINE)


def _special(arrangement: Arrangement) -> Iterator[Equation]:
    """Half a square and half an equilateral triangle: every pair of sides in its ratio."""
    for a, b, c, right in right_corners(arrangement):
        about = triangle_text(arrangement, (a, b, c))
        hypotenuse = length(b, c)
        for near, far in ((b, c), (c, b)):
            angle = arrangement.corner(a, near, far)
            premises = (AngleIs(right, RIGHT), AngleIs(angle, Fraction(round(arrangement.measured(angle)))))
            short, long = length(a, far), length(a, near)
            if _is(arrangement, angle, 30):
                root = times(Root(whole(3)), short)
                yield Equation("special-triangle-30-60", premises, hypotenuse, times(whole(2), short), about, SPECIAL)
                yield Equation("special-triangle-30-60", premises, long, root, about, SPECIAL)
            elif _is(arrangement, angle, 45):
                yield Equation("special-triangle-45", premises, short, long, about, SPECIAL)
                for leg in (short, long):
                    diagonal = times(Root(whole(2)), leg)
                    yield Equation("special-triangle-45", premises, hypotenuse, diagonal, about, SPECIAL)


def _is(arrangement: Arrangement, angle: AngleOf, degrees: int) -> bool:
    return abs(arrangement.measured(angle) - degrees) < CLOSE


_ANY = ("triangle ABC",)
_NO_TRIANGLE = ("AB and CD intersect at E",)

THEOREMS = (
    Theorem(
        "special-triangle-30-60",
        "In a right-angled triangle with angles of 30° and 60° the hypotenuse is twice, "
        "the longer leg √3 times the shorter leg.",
        "trigonometric ratios",
        "Euclid XIII.12 (the side of the equilateral triangle in a circle), halved",
        _special,
        fires=("triangle ABC", "∠ABC = 90°", "∠BAC = 30°"),
        silent=("triangle ABC", "∠ABC = 90°", "∠BAC = 31°"),
    ),
    Theorem(
        "special-triangle-45",
        "In a right-angled triangle with angles of 45° the legs are equal and the hypotenuse is √2 times a leg.",
        "trigonometric ratios",
        "Euclid I.47 for half a square",
        _special,
        fires=("triangle ABC", "∠ABC = 90°", "∠BAC = 45°"),
        silent=("triangle ABC", "∠ABC = 90°", "∠BAC = 44°"),
    ),
    Theorem(
        "sine-rule",
        "The sides of a triangle are in the ratio of the sines of the opposite angles.",
        "sine and cosine rules",
        "Regiomontanus, De triangulis II.1 (from memory)",
        _sine_rule,
        fires=_ANY,
        silent=_NO_TRIANGLE,
    ),
    Theorem(
        "cosine-rule",
        "The square of a side of a triangle is the sum of the squares of the others without twice their product "
        "times the cosine of the angle between them.",
        "sine and cosine rules",
        "Euclid II.12, II.13",
        _cosine_rule,
        fires=_ANY,
        silent=_NO_TRIANGLE,
    ),
)

"""Right-angled triangles: Pythagoras, and the ratios that sine, cosine and tangent name."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import length
from paperaudit.geometry.theorems.theorem import AngleIs, Equation, Theorem
from paperaudit.geometry.theorems.triangles import triangle_text
from paperaudit.model.expression import AngleOf, Expression, Function, LengthOf, Number, Power, Quotient, Sum

RIGHT = Fraction(90)
CLOSE = 1e-6
"""Degrees by which a right angle of an exact drawing may be off."""


def squared(size: Expression) -> Power:
    """The square of a size."""
    return Power(size, Number(Fraction(2)))


def right_corners(arrangement: Arrangement) -> Iterator[tuple[str, str, str, AngleOf]]:
    """Triangles with a right angle in the drawing: its corner, the two others, and the angle."""
    for triangle in arrangement.triangles:
        for a, b, c in triangle.turned():
            corner = arrangement.corner(b, a, c)
            if abs(arrangement.measured(corner) - 90) < CLOSE:
                yield a, b, c, corner


def _pythagoras(arrangement: Arrangement) -> Iterator[Equation]:
    for a, b, c, corner in right_corners(arrangement):
        one, two = sorted((length(a, b), length(a, c)), key=lambda leg: (leg.start, leg.end))
        legs = Sum((squared(one), squared(two)))
        about = triangle_text(arrangement, (a, b, c))
        yield Equation("pythagoras", (AngleIs(corner, RIGHT),), squared(length(b, c)), legs, about, 14)


def _ratios(arrangement: Arrangement) -> Iterator[Equation]:
    """The sine, cosine and tangent of each acute angle of a right-angled triangle."""
    for a, b, c, right in right_corners(arrangement):
        about = triangle_text(arrangement, (a, b, c))
        for near, far in ((b, c), (c, b)):
            acute = arrangement.corner(a, near, far)
            adjacent, opposite, hypotenuse = length(a, near), length(a, far), length(b, c)
            for name, above, below in _sides(adjacent, opposite, hypotenuse):
                value = Function(name, acute)  # type: ignore[arg-type]
                yield Equation(
                    "trigonometric-ratio", (AngleIs(right, RIGHT),), value, Quotient(above, below), about, 16
                )


def _sides(adjacent: LengthOf, opposite: LengthOf, hypotenuse: LengthOf) -> tuple[tuple[str, LengthOf, LengthOf], ...]:
    return ("sin", opposite, hypotenuse), ("cos", adjacent, hypotenuse), ("tan", opposite, adjacent)


THEOREMS = (
    Theorem(
        "pythagoras",
        "In a right-angled triangle the square of the hypotenuse is the sum of the squares of the other two sides.",
        "Pythagoras' theorem",
        "Euclid I.47",
        _pythagoras,
        fires=("triangle ABC", "∠ABC = 90°"),
        silent=("triangle ABC", "∠ABC = 80°"),
    ),
    Theorem(
        "trigonometric-ratio",
        "Sine, cosine and tangent of an acute angle are ratios of the sides of a right-angled triangle.",
        "trigonometric ratios",
        "definition; Regiomontanus, De triangulis I.27 (from memory)",
        _ratios,
        fires=("triangle ABC", "∠ABC = 90°"),
        silent=("triangle ABC", "∠ABC = 80°"),
    ),
)

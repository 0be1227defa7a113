"""Steps across and up between points and their products: a second way to decide what gradients and lengths say."""

from decimal import Decimal
from fractions import Fraction

from paperaudit.strands.plane.places import Place

CLOSE = Decimal("1e-30")
"""Lengths to sixty figures that differ by less are equal."""
Step = tuple[Fraction, Fraction]


def step(one: Place, other: Place) -> Step:
    """From one point to another, across and up."""
    return other.x - one.x, other.y - one.y


def cross(a: Place, b: Place, c: Place, d: Place) -> Fraction:
    """Twice the area that the steps from a to b and from c to d make; 0 where they are parallel."""
    (p, q), (r, s) = step(a, b), step(c, d)
    return p * s - q * r


def dot(a: Place, b: Place, c: Place, d: Place) -> Fraction:
    """0 where the steps from a to b and from c to d are at right angles."""
    (p, q), (r, s) = step(a, b), step(c, d)
    return p * r + q * s


def is_isosceles(points: tuple[Place, ...]) -> bool:
    """Whether the line from a corner to the middle of the opposite side is at right angles to it."""
    for at in range(3):
        apex, one, other = points[at], points[at - 1], points[at - 2]
        middle = Place("", (one.x + other.x) / 2, (one.y + other.y) / 2)
        if dot(apex, middle, one, other) == 0:
            return True
    return False


def is_equilateral(points: tuple[Place, ...]) -> bool:
    """Whether the products of the sides at two corners are half the square of the side between them."""
    a, b, c = points
    side = dot(a, b, a, b)
    return dot(a, b, a, c) * 2 == side and dot(b, a, b, c) * 2 == side


def has_right_angle(points: tuple[Place, ...]) -> bool:
    """Whether the sides at a corner are at right angles."""
    return any(dot(points[at], points[at - 1], points[at], points[at - 2]) == 0 for at in range(3))


def diagonals_equal(points: tuple[Place, ...]) -> bool:
    """Whether the diagonals of a quadrilateral are as long as each other."""
    a, b, c, d = points
    return dot(a, c, a, c) == dot(b, d, b, d)


def is_rhombus(points: tuple[Place, ...]) -> bool:
    """Whether the diagonals bisect each other at right angles."""
    a, b, c, d = points
    return step(a, b) == step(d, c) and dot(a, c, b, d) == 0

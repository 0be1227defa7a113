"""Small facts of the plane, in floating point, for drawings only."""

from collections.abc import Sequence

Spot = tuple[float, float]

FLAT = 1e-4
"""Points this flat, as a share of the square of their spread, settle no circle."""


def side(point: Spot, start: Spot, end: Spot) -> float:
    """Twice the area of the triangle start, end, point: positive if `point` is on the left."""
    return (end[0] - start[0]) * (point[1] - start[1]) - (end[1] - start[1]) * (point[0] - start[0])


def mirrored(point: Spot, start: Spot, end: Spot) -> Spot:
    """The mirror image of a point in the line through two others.

    >>> mirrored((1.0, 2.0), (0.0, 0.0), (1.0, 0.0))
    (1.0, -2.0)
    """
    across = (end[0] - start[0], end[1] - start[1])
    square = across[0] ** 2 + across[1] ** 2 or 1.0
    height = 2 * side(point, start, end) / square
    return point[0] + height * across[1], point[1] - height * across[0]


def middle_of_circle(spots: Sequence[Spot]) -> Spot:
    """The centre of the circle that comes nearest to some points, by least squares of x² + y² − 2ax − 2by = c.

    The middle of the points where they lie on a line.

    >>> tuple(round(part, 9) for part in middle_of_circle([(2.0, 1.0), (1.0, 2.0), (0.0, 1.0)]))
    (1.0, 1.0)
    """
    count = len(spots)
    x, y = sum(p for p, _ in spots) / count, sum(q for _, q in spots) / count
    near = [(p - x, q - y) for p, q in spots]
    xx, yy, xy = sum(p * p for p, _ in near), sum(q * q for _, q in near), sum(p * q for p, q in near)
    by_x = sum(p * (p * p + q * q) for p, q in near) / 2
    by_y = sum(q * (p * p + q * q) for p, q in near) / 2
    spread = xx * yy - xy * xy
    if spread <= FLAT * (xx + yy) ** 2:
        return x, y
    return x + (by_x * yy - by_y * xy) / spread, y + (by_y * xx - by_x * xy) / spread


def circumcentre(a: Spot, b: Spot, c: Spot) -> Spot:
    """The point as far from each of three that are not on one line.

    >>> circumcentre((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0))
    (0.0, 0.0)
    """
    double = 2 * side(c, a, b)
    (p, q), (r, s) = (b[0] - a[0], b[1] - a[1]), (c[0] - a[0], c[1] - a[1])
    one, two = p * p + q * q, r * r + s * s
    return a[0] + (s * one - q * two) / double, a[1] + (p * two - r * one) / double


def along(start: Spot, end: Spot, share: float) -> Spot:
    """The point at a share of the way from one point to another, beyond them outside 0 to 1."""
    return start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])


def share_along(point: Spot, start: Spot, end: Spot) -> float:
    """How far along the way from one point to another the foot of a third lies: 0 at the start, 1 at the end."""
    across = (end[0] - start[0], end[1] - start[1])
    square = across[0] ** 2 + across[1] ** 2 or 1.0
    return ((point[0] - start[0]) * across[0] + (point[1] - start[1]) * across[1]) / square

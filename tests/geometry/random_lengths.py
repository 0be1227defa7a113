"""Random figures made from whole lengths: triangles, quadrilaterals and circles with what grows on them."""

import math

from tests.geometry.random_growth import (
    Growth,
    bisector,
    circumcircle,
    crossing,
    foot_of_a_perpendicular,
    grow,
    isosceles_on_a_side,
    joined,
    midpoint,
    parallel_to_a_side,
    point_on_a_side,
    produced,
    right_triangle_on_a_side,
    second_point_on_the_circle,
    tangent_at_a_point,
)
from tests.geometry.school_sheet import SchoolQuestion, Sheet, Unfit, polar, set_question, triangle


def _polygon(g: Growth, kind: str, *spots: complex) -> list[str]:
    names = [g.new(spot) for spot in spots]
    g.sheet.show(f"{kind} {''.join(names)}")
    g.lines += [[a, b] for a, b in zip(names, names[1:] + names[:1], strict=True)]
    return names


def three_sides(g: Growth) -> None:
    a, b, c = _polygon(g, "triangle", *triangle(*(g.whole(5, 18) for _ in range(3))))
    for side in (a + b, b + c, a + c):
        g.tell(side)


def right_angled(g: Growth) -> None:
    p, q = g.sheet.chance.choice(((3, 4), (5, 12), (8, 15), (6, 8), (g.whole(3, 12), g.whole(3, 12))))
    k = g.whole(1, 3)
    a, b, c = _polygon(g, "triangle", complex(p * k), 0j, q * k * 1j)
    g.sheet.tell(f"∠{a}{b}{c} = 90°")
    g.tell(a + b)
    g.tell(g.sheet.chance.choice((b + c, a + c)))


def isosceles(g: Growth) -> None:
    side, base = g.whole(5, 18), g.whole(4, 20)
    a, b, c = _polygon(g, "triangle", *triangle(base, side, side))
    g.sheet.tell(f"{a}{b} = {a}{c}")
    g.tell(a + b)
    g.tell(b + c)


def equilateral(g: Growth) -> None:
    side = g.whole(4, 16)
    a, b, _ = _polygon(g, "equilateral triangle", side * math.sqrt(3) / 2 * 1j, complex(-side / 2), complex(side / 2))
    g.tell(a + b)


def rectangle(g: Growth) -> None:
    p, q = g.whole(4, 16), g.whole(3, 12)
    a, b, c, _ = _polygon(g, "rectangle", 0j, complex(p), complex(p, q), q * 1j)
    g.tell(a + b)
    g.tell(b + c)


def square(g: Growth) -> None:
    p = g.whole(4, 16)
    a, b, _, _ = _polygon(g, "square", 0j, complex(p), complex(p, p), p * 1j)
    g.tell(a + b)


def rhombus(g: Growth) -> None:
    p, q = g.whole(3, 12), g.whole(3, 12)
    a, b, c, d = _polygon(g, "rhombus", complex(-p), complex(0, -q), complex(p), complex(0, q))
    e = g.new(0j)
    g.lines += [[a, e, c], [b, e, d]]
    g.sheet.show(f"{a}{c} and {b}{d} intersect at {e}")
    g.tell(a + c)
    g.tell(b + d)


def parallelogram(g: Growth) -> None:
    p, q, w = g.whole(4, 14), g.whole(4, 14), g.whole(40, 140)
    d = polar(q, w)
    names = _polygon(g, "parallelogram", 0j, complex(p), p + d, d)
    g.tell(names[0] + names[1])
    g.tell(names[0] + names[3])
    g.tell(f"∠{names[3]}{names[0]}{names[1]}")


def right_trapezium(g: Growth) -> None:
    p, q, h = g.whole(5, 16), g.whole(3, 12), g.whole(3, 12)
    if p == q:
        raise Unfit("rectangle")
    a, b, c, d = _polygon(g, "quadrilateral", 0j, complex(p), complex(q, h), h * 1j)
    g.sheet.tell(f"{a}{b} ∥ {d}{c}", f"{a}{d} ⊥ {a}{b}")
    for side in (a + b, d + c, a + d):
        g.tell(side)


def semicircle(g: Growth) -> None:
    p, q = g.whole(3, 13), g.whole(3, 13)
    h = math.hypot(p, q)
    a, b, c = g.new(complex(-h / 2)), g.new(complex(h / 2)), g.new(complex(-h / 2 + p * p / h, p * q / h))
    g.sheet.at["O"] = 0j
    g.circles["O"] = [a, b, c]
    g.lines += [[a, "O", b], [a, c], [c, b]]
    g.sheet.show(f"circle with centre O through {a}, {b} and {c}", f"segments {a}{c}, {c}{b}")
    g.sheet.tell(f"{a}{b} is a diameter of circle O")
    g.tell(a + c)
    g.tell(g.sheet.chance.choice((c + b,)))


STARTS = (
    three_sides, right_angled, right_angled, isosceles, equilateral, rectangle, square, rhombus, parallelogram,
    right_trapezium, semicircle, semicircle,
)  # fmt: skip
STEPS = (
    midpoint, midpoint, point_on_a_side, point_on_a_side, produced, foot_of_a_perpendicular, foot_of_a_perpendicular,
    bisector, parallel_to_a_side, parallel_to_a_side, crossing, crossing, joined, joined, right_triangle_on_a_side,
    isosceles_on_a_side, circumcircle, tangent_at_a_point, tangent_at_a_point, second_point_on_the_circle,
)  # fmt: skip


def grown_from_lengths(s: Sheet) -> None:
    grow(s, STARTS, STEPS, 3)


def random_lengths(seed: int) -> SchoolQuestion:
    """A random question on lengths."""
    return set_question(grown_from_lengths, seed)

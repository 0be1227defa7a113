"""Random chains of triangles from sides and angles in whole numbers: sine and cosine rules, ratios, areas."""

from tests.geometry.random_growth import (
    Growth,
    bisector,
    circumcircle,
    foot_of_a_perpendicular,
    grow,
    isosceles_on_a_side,
    produced,
    right_triangle_on_a_side,
)
from tests.geometry.random_lengths import parallelogram, three_sides
from tests.geometry.school_sheet import SchoolQuestion, Sheet, Unfit, meet, polar, set_question


def _triangle(g: Growth, *spots: complex) -> list[str]:
    names = [g.new(spot) for spot in spots]
    g.sheet.show(f"triangle {''.join(names)}")
    g.lines += [[names[0], names[1]], [names[1], names[2]], [names[0], names[2]]]
    return names


def two_sides_and_the_angle(g: Growth) -> None:
    a, b, c = _triangle(g, 0j, complex(g.whole(4, 15)), polar(g.whole(4, 15), g.whole(25, 150)))
    for size in (a + b, a + c, f"∠{b}{a}{c}"):
        g.tell(size)


def side_and_two_angles(g: Growth) -> None:
    p, q, side = g.whole(25, 100), g.whole(25, 75), g.whole(4, 16)
    if p + q > 155:
        raise Unfit("flat")
    spot = meet(0j, polar(1, p), complex(side), side + polar(1, 180 - q))
    a, b, c = _triangle(g, spot, 0j, complex(side))
    g.tell(b + c)
    for size in g.sheet.chance.sample((f"∠{a}{b}{c}", f"∠{b}{c}{a}", f"∠{b}{a}{c}"), 2):
        g.tell(size)


def right_angled_by_an_angle(g: Growth) -> None:
    w, side = g.whole(15, 76), g.whole(3, 16)
    way = polar(1, w)
    a, b, c = _triangle(g, 0j, complex(side), side * way / way.real)
    g.sheet.tell(f"∠{a}{b}{c} = 90°")
    g.tell(a + b)
    g.tell(f"∠{b}{a}{c}")


def triangle_on_a_side(g: Growth) -> None:
    """Another triangle beyond a side, from two angles at its ends."""
    a, b = g.side()
    p, q, way = g.whole(25, 80), g.whole(25, 80), g.sheet.chance.choice((1, -1))
    one, two = g.spot(a), g.spot(b)
    d = g.new(meet(one, one + (two - one) * polar(1, way * p), two, two + (one - two) * polar(1, -way * q)))
    g.sheet.show(f"triangle {a}{b}{d}")
    g.lines += [[a, d], [b, d]]
    g.tell(f"∠{b}{a}{d}")
    g.tell(f"∠{a}{b}{d}")


STARTS = (
    two_sides_and_the_angle, two_sides_and_the_angle, side_and_two_angles, side_and_two_angles,
    right_angled_by_an_angle, three_sides, parallelogram,
)  # fmt: skip
STEPS = (
    foot_of_a_perpendicular, triangle_on_a_side, triangle_on_a_side, right_triangle_on_a_side, bisector, produced,
    isosceles_on_a_side, circumcircle,
)  # fmt: skip


def grown_trigonometry(s: Sheet) -> None:
    grow(s, STARTS, STEPS, 2)


def random_trigonometry(seed: int) -> SchoolQuestion:
    """A random question on sides and angles of triangles."""
    return set_question(grown_trigonometry, seed)

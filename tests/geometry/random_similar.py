"""Random figures of similar triangles: parallels, crossings, altitudes, triangles copied to another size."""

from tests.geometry.random_growth import (
    Growth,
    bisector,
    crossing,
    foot_of_a_perpendicular,
    grow,
    joined,
    midpoint,
    parallel_to_a_side,
    point_on_a_side,
)
from tests.geometry.random_lengths import parallelogram, right_angled, right_trapezium, three_sides
from tests.geometry.school_sheet import SchoolQuestion, Sheet, Unfit, polar, set_question


def crossed_parallels(g: Growth) -> None:
    """Two parallel segments whose ends are joined crosswise."""
    p, q, k = g.whole(3, 10), g.whole(3, 10), g.sheet.chance.choice((0.5, 1.5, 2, 3))
    one, two = complex(-p), -polar(q, g.whole(50, 130))
    a, b, e = g.new(one), g.new(two), g.new(0j)
    c, d = g.new(-two * k), g.new(-one * k)
    g.lines += [[a, b], [c, d], [a, e, d], [b, e, c]]
    g.sheet.show(f"segments {a}{b}, {c}{d}", f"{a}{d} and {b}{c} intersect at {e}")
    g.sheet.tell(f"{a}{b} ∥ {c}{d}")
    for side in (a + e, b + e, e + d):
        g.tell(side)
    g.tell(f"∠{a}{e}{b}")


def side_with_a_parallel(g: Growth) -> None:
    three_sides(g)
    point_on_a_side(g)
    for _ in range(8):
        try:
            return parallel_to_a_side(g)
        except (Unfit, IndexError):
            continue
    raise Unfit("no parallel")


def two_sizes(g: Growth) -> None:
    """A triangle and its copy of another size, said to be similar."""
    three_sides(g)
    a, b, c = g.sheet.at
    k, way = g.sheet.chance.choice((0.5, 1.5, 2, 2.5, 3)), g.whole(0, 360)
    spots = [g.spot(name) * polar(k, way) + 60 + 10j for name in (a, b, c)]
    d, e, f = (g.new(spot) for spot in spots)
    g.lines += [[d, e], [e, f], [d, f]]
    g.sheet.show(f"triangle {d}{e}{f}")
    g.sheet.tell(
        *g.sheet.chance.choice(
            (
                (f"△{a}{b}{c} ∼ △{d}{e}{f}",),
                (f"∠{b}{a}{c} = ∠{e}{d}{f}", f"∠{a}{b}{c} = ∠{d}{e}{f}"),
            )
        )
    )
    g.tell(g.sheet.chance.choice((d + e, e + f, d + f)))


STARTS = (
    crossed_parallels,
    side_with_a_parallel,
    side_with_a_parallel,
    two_sizes,
    right_angled,
    parallelogram,
    right_trapezium,
)
STEPS = (
    midpoint, point_on_a_side, parallel_to_a_side, parallel_to_a_side, crossing, crossing, joined, bisector,
    foot_of_a_perpendicular,
)  # fmt: skip


def _length(size: str) -> bool:
    return len(size) == 2 or size.startswith(("area", "perimeter"))


def grown_similar(s: Sheet) -> None:
    grow(s, STARTS, STEPS, 2, _length)


def random_similar(seed: int) -> SchoolQuestion:
    """A random question on similar triangles."""
    return set_question(grown_similar, seed)

"""Figures made from coordinates, given with sketches stretched up to threefold and shaken: they come out as made."""

import math
import random
from collections.abc import Callable
from fractions import Fraction

import pytest

from paperaudit.geometry.coordinates.drawn import drawn
from paperaudit.geometry.coordinates.measure import measured
from paperaudit.model.expression import ArcOf, AreaOf, Expression, Number, NumberForm, Product
from paperaudit.model.fact import Circle, Collinear, Crossing, Drawn, Fact, Holds, Midpoint, Parallel, Tangent
from tests.geometry.typed import angle, is_, length, plain_figure, triangle

Spots = dict[str, tuple[float, float]]
Made = tuple[list[Fact], Expression]
SEEDS = range(12)


def exactly(size: Expression, at: Spots, circles: dict[str, tuple[str, ...]] | None = None) -> Holds:
    """The size as it is, to twelve figures and without a decimal form, so that nothing may be rounded."""
    value = Fraction(measured(size, at, {}, circles)).limit_denominator(10**9)
    return is_(size, Number(value, NumberForm.FRACTION))


def along(at: Spots, path: str, share: float) -> tuple[float, float]:
    (x, y), (p, q) = at[path[0]], at[path[1]]
    return x + share * (p - x), y + share * (q - y)


def some_triangle(chance: random.Random, at: Spots) -> None:
    while True:
        at.update({name: (chance.uniform(-8, 8), chance.uniform(-8, 8)) for name in "ABC"})
        if all(30 < measured(angle(name), at) < 120 for name in ("ABC", "BCA", "CAB")):
            return


def a_cevian(chance: random.Random, at: Spots) -> Made:
    some_triangle(chance, at)
    at["D"] = along(at, "BC", chance.uniform(0.3, 0.7))
    stated = [exactly(length(name), at) for name in ("AB", "AD", "BD", "DC")]
    return [triangle("ABC"), Collinear(("B", "D", "C")), Drawn("segment", ("A", "D")), *stated], length("AC")


def a_parallel(chance: random.Random, at: Spots) -> Made:
    some_triangle(chance, at)
    share = chance.uniform(0.3, 0.7)
    at.update(D=along(at, "AB", share), E=along(at, "AC", share))
    stated = [exactly(length(name), at) for name in ("AD", "DB", "DE")]
    facts = [Collinear(("A", "D", "B")), Collinear(("A", "E", "C")), Parallel((("D", "E"), ("B", "C")))]
    return [triangle("ABC"), *facts, *stated], length("BC")


def a_median_and_an_area(chance: random.Random, at: Spots) -> Made:
    some_triangle(chance, at)
    at["M"] = along(at, "BC", 0.5)
    stated = [exactly(AreaOf(tuple("ABM")), at), exactly(length("BC"), at), exactly(angle("ABC"), at)]
    return [triangle("ABC"), Midpoint("M", ("B", "C")), Drawn("segment", ("A", "M")), *stated], length("AB")


def chords(chance: random.Random, at: Spots) -> Made:
    places = [base + chance.uniform(-25, 25) for base in (20, 110, 200, 290)]
    at.update(
        {
            name: (6 * math.cos(math.radians(p)), 6 * math.sin(math.radians(p)))
            for name, p in zip("ABCD", places, strict=True)
        }
    )
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = (at[name] for name in "ABCD")
    turn = (cx - ax) * (dy - by) - (cy - ay) * (dx - bx)
    at["E"] = along(at, "AC", ((bx - ax) * (dy - by) - (by - ay) * (dx - bx)) / turn)
    stated = [exactly(length(name), at) for name in ("AE", "EC", "BE")]
    return [Circle("", tuple("ABCD")), Crossing(("A", "C"), ("B", "D"), "E"), *stated], length("ED")


def a_tangent_and_arcs(chance: random.Random, at: Spots) -> Made:
    places = [base + chance.uniform(-25, 25) for base in (0, 120, 240)]
    at.update(
        {
            name: (5 * math.cos(math.radians(p)), 5 * math.sin(math.radians(p)))
            for name, p in zip("ABC", places, strict=True)
        }
    )
    (x, y) = at["A"]
    at.update(O=(0.0, 0.0), T=(x + y, y - x))
    circles = {"O": ("A", "B", "C")}
    stated = [exactly(ArcOf(*ends, centre="O"), at, circles) for ends in ("AB", "BC")]
    facts = [Circle("O", ("A", "B", "C")), Tangent(("T", "A"), "A", "O")]
    return [triangle("ABC"), *facts, *stated, exactly(length("OA"), at)], angle("TAC")


def a_product(chance: random.Random, at: Spots) -> Made:
    some_triangle(chance, at)
    product = Product((length("AB"), length("AC")))
    return [triangle("ABC"), exactly(product, at), exactly(angle("BAC"), at)], AreaOf(tuple("ABC"))


def roughly(at: Spots, chance: random.Random) -> Spots:
    """The coordinates stretched in a random direction, shaken by up to a fortieth of the figure, at any scale."""
    bearing, factor, scale = chance.uniform(0, math.pi), chance.uniform(1, 3), 10 ** chance.uniform(-1, 2)
    cosine, sine = math.cos(bearing), math.sin(bearing)
    reach = max(abs(part) for spot in at.values() for part in spot)
    found = {}
    for name, (x, y) in at.items():
        further = (factor - 1) * (x * cosine + y * sine)
        shake = [reach / 40 * chance.uniform(-1, 1) for _ in range(2)]
        found[name] = (scale * (x + further * cosine + shake[0]), scale * (y + further * sine + shake[1]))
    return found


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("make", [a_cevian, a_parallel, a_median_and_an_area, chords, a_tangent_and_arcs, a_product])
def test_rough_sketches(make: Callable[[random.Random, Spots], Made], seed: int) -> None:
    """What fixes the size asked for gives the size that the coordinates have."""
    chance = random.Random(f"{make.__name__}{seed}")
    at: Spots = {}
    facts, target = make(chance, at)
    found = drawn(plain_figure(*facts, sketch=roughly(at, chance)))
    assert found.drawings
    assert not found.figure.rounded
    for drawing in found.drawings:
        value = measured(target, drawing.at, {}, found.figure.circles)
        assert value == pytest.approx(measured(target, at), rel=1e-6)

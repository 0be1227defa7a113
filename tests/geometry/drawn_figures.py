"""Figures of every topic of school geometry with coordinates, for tests of what is drawn. The scenario is a sail loft.

Coordinates are worked out here, so that nothing rests on the engine that draws figures from givens.
"""

import cmath
import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

Spot = tuple[float, float]
Points = dict[str, complex]


@dataclass(frozen=True)
class Drawn:
    """A question with the coordinates (y up) of a figure that meets its givens."""

    title: str
    figure: tuple[str, ...]
    given: tuple[str, ...]
    ask: str
    at: tuple[tuple[str, float, float], ...]


def polar(way: float, reach: float = 1.0, centre: complex = 0) -> complex:
    """The point `reach` from the centre in a direction in degrees."""
    return centre + cmath.rect(reach, math.radians(way))


def foot(point: complex, start: complex, end: complex) -> complex:
    across = end - start
    return start + across * ((point - start) / across).real


def cross(a: complex, b: complex, c: complex, d: complex) -> complex:
    """Where the lines ab and cd meet."""
    u, v = b - a, d - c
    return a + u * ((c - a).conjugate() * v).imag / (u.conjugate() * v).imag


def by_sides(a: float, b: float, c: float) -> Points:
    """Triangle ABC with BC = a on the x-axis, CA = b, AB = c."""
    x = (a * a + c * c - b * b) / (2 * a)
    return {"A": complex(x, math.sqrt(c * c - x * x)), "B": 0, "C": complex(a)}


def by_angles(at_b: float, at_c: float, base: float = 1.0) -> Points:
    """Triangle ABC with BC = base on the x-axis and the angles at B and C in degrees."""
    b, c = math.radians(at_b), math.radians(at_c)
    reach = base * math.sin(c) / math.sin(b + c)
    return {"A": cmath.rect(reach, b), "B": 0, "C": complex(base)}


def on_circle(radius: float, **ways: float) -> Points:
    return {"O": 0, **{name: polar(way, radius) for name, way in ways.items()}}


def figures() -> Iterator[Drawn]:
    """All of them, topic by topic."""
    for topic in (
        lengths,
        right_triangles,
        similar,
        areas,
        circles,
        arcs,
        sectors,
        tangents,
        several_circles,
        bearings,
        centres,
        polygons,
        crowded,
    ):
        for title, figure, given, ask, points in topic():
            at = tuple((name, spot.real, spot.imag) for name, spot in ((n, complex(p)) for n, p in points.items()))
            yield Drawn(f"{topic.__name__}: {title}", tuple(figure), tuple(given), ask, at)


Row = tuple[str, list[str], list[str], str, Mapping[str, complex]]


def lengths() -> Iterator[Row]:
    t = by_sides(14, 13, 15)
    yield "three sides", ["triangle ABC"], ["AB = 15 cm", "BC = 14 cm", "CA = 13 cm"], "∠ABC", t
    yield "sides in x", ["triangle ABC"], ["AB = x + 3", "BC = 2x − 1", "AC = 3x"], "x", by_sides(7, 12, 7.0001)
    yield (
        "surds",
        ["triangle ABC"],
        ["AB = 2√5 cm", "BC = 4 cm", "AC = √20 cm"],
        "perimeter of ABC",
        by_sides(4, 20**0.5, 20**0.5),
    )
    yield (
        "decimals",
        ["triangle KLM"],
        ["KL = 7.25 m", "LM = 4.6 m", "∠KLM = 63.5°"],
        "KM",
        {"K": polar(63.5, 7.25), "L": 0, "M": 4.6},
    )
    yield (
        "segments that add",
        ["A-B-C-D"],
        ["AB = 3 cm", "BC = 5.5 cm", "AD = 12 cm"],
        "CD",
        {"A": 0, "B": 3, "C": 8.5, "D": 12},
    )
    yield (
        "midpoint",
        ["segment AB", "M is the midpoint of AB"],
        ["AM = 2x + 1", "MB = 3x − 4"],
        "AB",
        {"A": 0, "M": 11, "B": 22},
    )
    yield (
        "two pairs of equal sides",
        ["quadrilateral ABCD"],
        ["AB = AD", "CB = CD", "∠BAD = 80°"],
        "∠BCD",
        {"A": 4j, "B": -3, "C": -5j, "D": 3},
    )
    hexagon = {name: polar(60 * n + 30, 3 + 0.2 * (n % 2)) for n, name in enumerate("ABCDEF")}
    yield (
        "three classes of ticks",
        ["segments AB, BC, CD, DE, EF, FA"],
        ["AB = DE", "BC = EF", "CD = FA"],
        "AB",
        hexagon,
    )
    yield (
        "perimeter",
        ["quadrilateral ABCD"],
        ["AB = 6 m", "BC = 4 m", "CD = 5 m"],
        "perimeter of ABCD",
        {"A": 0, "B": 6, "C": 6.8 + 3.92j, "D": 2 + 5.3j},
    )
    yield (
        "thirds of a side",
        ["triangle ABC", "B-D-E-C", "segments AD, AE"],
        ["BD = DE", "DE = EC", "BC = 12 cm"],
        "BD",
        {"A": 3 + 7j, "B": 0, "D": 4, "E": 8, "C": 12},
    )


def right_triangles() -> Iterator[Row]:
    yield "5-12-13", ["triangle KLM"], ["∠L = 90°", "KL = 5 cm", "LM = 12 cm"], "KM", {"K": 5j, "L": 0, "M": 12}
    yield "isosceles right", ["triangle ABC"], ["∠B = 90°", "AB = BC", "AC = 6√2 cm"], "AB", {"A": 6j, "B": 0, "C": 6}
    yield (
        "30-60",
        ["triangle ABC"],
        ["∠A = 30°", "∠C = 90°", "AB = 10 cm"],
        "BC",
        {"A": 0, "B": polar(30, 10), "C": polar(30, 10).real},
    )
    t = by_sides(25, 20, 15)
    yield (
        "altitude to the hypotenuse",
        ["triangle ABC", "AD is an altitude of triangle ABC"],
        ["∠BAC = 90°", "BD = 9 cm", "DC = 16 cm"],
        "AD",
        {**t, "D": foot(t["A"], t["B"], t["C"])},
    )
    t = by_sides(14, 13, 15)
    yield (
        "altitude",
        ["triangle ABC", "AD is an altitude of triangle ABC"],
        ["AB = 15 cm", "AC = 13 cm", "BC = 14 cm"],
        "AD",
        {**t, "D": foot(t["A"], t["B"], t["C"])},
    )
    yield "distance to a line", ["triangle ABC"], ["AB = 15 cm", "BC = 14 cm", "CA = 13 cm"], "distance from A to BC", t
    o = {"A": -3 + 5j, "B": 0, "C": 6}
    yield "height outside", ["triangle ABC"], ["distance from A to BC = 5 cm", "BC = 6 cm"], "area of triangle ABC", o
    yield (
        "ladder",
        ["triangle ABC"],
        ["∠C = 90°", "AC = 2.4 m", "∠ABC = 68°"],
        "AB",
        {"A": 2.4j, "C": 0, "B": 2.4 / math.tan(math.radians(68))},
    )
    yield (
        "two right triangles",
        ["triangle ABC", "triangle ACD"],
        ["∠ABC = 90°", "∠ACD = 90°", "AB = 4 cm", "BC = 3 cm", "CD = 12 cm"],
        "AD",
        {"A": 0, "B": 4, "C": 4 + 3j, "D": 4 + 3j + 12 * (4 + 3j) / 5 * 1j},
    )
    yield (
        "diagonal of a rectangle",
        ["rectangle ABCD", "segment AC"],
        ["AB = 8 cm", "BC = 6 cm"],
        "AC",
        {"A": 0, "B": 8, "C": 8 + 6j, "D": 6j},
    )
    yield (
        "depression",
        ["A-B-C", "segments DA, DB, DC", "DA ⊥ AC"],
        ["∠DBA = 55°", "∠DCA = 30°", "DA = 40 m"],
        "BC",
        {"A": 0, "D": 40j, "B": 40 / math.tan(math.radians(55)), "C": 40 / math.tan(math.radians(30))},
    )
    yield "sine", ["triangle ABC"], ["∠A = 41°", "∠B = 77°", "BC = 9.3 cm"], "AC", by_angles(77, 62, 9.3)


def similar() -> Iterator[Row]:
    t = by_sides(9, 8, 7)
    p = {**t, "D": t["B"] + (t["A"] - t["B"]) * 0.6, "E": t["C"] + (t["A"] - t["C"]) * 0.6}
    yield (
        "parallel to a side",
        ["triangle ABC", "D lies on AB", "E lies on AC", "segment DE"],
        ["DE ∥ BC", "AD = 4 cm", "DB = 6 cm", "BC = 15 cm"],
        "DE",
        p,
    )
    m = {**t, "D": (t["A"] + t["B"]) / 2, "E": (t["A"] + t["C"]) / 2}
    yield (
        "midpoints",
        ["triangle ABC", "D is the midpoint of AB", "E is the midpoint of AC", "segment DE"],
        ["DE = 4.5 cm"],
        "BC",
        m,
    )
    two = {**by_sides(6, 5, 4), **{n: 12 + 1.5 * s for n, s in zip("DEF", by_sides(6, 5, 4).values(), strict=True)}}
    yield "two similar triangles", ["△ABC ||| △DEF"], ["AB = 4 cm", "BC = 6 cm", "DE = 6 cm"], "EF", two
    con = {**by_angles(50, 65), **{n: 2 + s for n, s in zip("PQR", by_angles(50, 65).values(), strict=True)}}
    yield "two congruent triangles", ["△ABC ≡ △PQR"], ["∠ABC = 50°", "∠PRQ = 65°", "AB = 7 cm"], "PQ", con
    x = {"A": -3 + 2j, "B": 3 + 2j, "O": 0, "C": 4.5 - 3j, "D": -4.5 - 3j}
    yield (
        "hourglass",
        ["AC and BD intersect at O", "segments AB, CD"],
        ["AB ∥ DC", "AO = 4 cm", "OC = 6 cm", "AB = 5 cm"],
        "CD",
        x,
    )
    t = by_sides(10, 8, 6)
    d = 10 * 6 / 14
    yield (
        "bisector of an angle",
        ["triangle ABC", "D lies on BC", "AD bisects ∠BAC"],
        ["AB = 6 cm", "AC = 8 cm", "BC = 10 cm"],
        "BD",
        {**t, "D": d},
    )
    lines = {
        n: complex(x, y)
        for n, x, y in [("A", 0, 4), ("B", 1, 4), ("C", -0.5, 2.5), ("D", 2.5, 2.5), ("E", -1.5, 0), ("F", 4, 0)]
    }
    lines["B"], lines["D"], lines["F"] = 1 + 4j, 1.6 + 2.5j, 2.6 + 0j
    lines["A"], lines["C"], lines["E"] = 0 + 4j, -0.375 + 2.5j, -1 + 0j
    yield (
        "three parallels",
        ["A-C-E", "B-D-F", "AB ∥ CD", "CD ∥ EF"],
        ["AC = 3 cm", "CE = 5 cm", "BD = 4 cm"],
        "DF",
        lines,
    )
    yield (
        "four arrows",
        ["parallelogram ABCD", "segment EF", "E lies on AB", "F lies on CD", "EF ∥ AD"],
        ["∠A = 70°"],
        "∠EFC",
        {
            "D": 0,
            "C": 6,
            "A": polar(110, 3).conjugate().conjugate() + 0,
            "B": 6 + polar(110, 3),
            "E": polar(110, 3) + 2.5,
            "F": 2.5,
        },
    )


def areas() -> Iterator[Row]:
    yield (
        "triangle",
        ["triangle ABC"],
        ["AB = 7 cm", "AC = 9 cm", "∠A = 64°"],
        "area of triangle ABC",
        {"A": 0, "B": 7, "C": polar(64, 9)},
    )
    yield (
        "trapezium",
        ["trapezium ABCD"],
        ["AB ∥ DC", "AB = 5 cm", "DC = 9 cm", "∠ADC = 90°", "AD = 4 cm"],
        "area of ABCD",
        {"A": 4j, "B": 5 + 4j, "C": 9, "D": 0},
    )
    yield (
        "parallelogram",
        ["parallelogram ABCD"],
        ["AB = 8 cm", "AD = 5 cm", "∠DAB = 60°"],
        "area of ABCD",
        {"A": 0, "B": 8, "C": 8 + polar(60, 5), "D": polar(60, 5)},
    )
    yield (
        "part of a square",
        ["square ABCD", "E lies on AB", "segments DE, CE"],
        ["AB = 6 cm", "AE = 2 cm"],
        "area of triangle DEC",
        {"A": 6j, "E": 2 + 6j, "B": 6 + 6j, "C": 6, "D": 0},
    )
    yield (
        "kite",
        ["kite ABCD", "AC and BD intersect at E"],
        ["AC = 9 cm", "BD = 6 cm"],
        "area of ABCD",
        {"A": 6j, "B": -3, "C": -3j, "D": 3, "E": 0},
    )
    yield (
        "rhombus",
        ["rhombus ABCD"],
        ["AB = 5 cm", "∠A = 74°"],
        "perimeter of ABCD",
        {"A": 0, "B": 5, "C": 5 + polar(74, 5), "D": polar(74, 5)},
    )
    yield (
        "height of a parallelogram",
        ["parallelogram ABCD"],
        ["distance from D to AB = 4 cm", "AB = 9 cm"],
        "area of ABCD",
        {"A": 0, "B": 9, "C": 11 + 4j, "D": 2 + 4j},
    )


def circles() -> Iterator[Row]:
    c = on_circle(5, A=215, B=325, C=80)
    yield (
        "centre and circumference",
        ["circle with centre O through A, B and C", "segments OA, OB, CA, CB"],
        ["∠AOB = 110°"],
        "∠ACB",
        c,
    )
    c = on_circle(5, A=200, B=340)
    c["M"] = (c["A"] + c["B"]) / 2
    yield (
        "perpendicular from the centre",
        ["circle with centre O through A and B", "segment AB", "OM ⊥ AB", "M lies on AB", "segment OA"],
        ["OA = 5 cm", "AB = 9.4 cm"],
        "OM",
        c,
    )
    c = on_circle(5, A=160, B=250, C=350, D=60)
    c["E"] = cross(c["A"], c["C"], c["B"], c["D"])
    yield (
        "chords that cross",
        ["circle with centre O through A, B, C and D", "AC and BD intersect at E"],
        ["AE = 4 cm", "EC = 6 cm", "BE = 3 cm"],
        "ED",
        c,
    )
    c = on_circle(5, A=150, B=200, C=280, D=40)
    yield (
        "cyclic quadrilateral",
        ["ABCD is a cyclic quadrilateral"],
        ["∠A = 2x + 10°", "∠C = 3x − 20°"],
        "x",
        {k: v for k, v in c.items() if k != "O"},
    )
    c = on_circle(5, A=180, B=0, C=65)
    yield (
        "semicircle",
        ["AB is a diameter of circle O", "C lies on the circle", "segments AC, BC"],
        ["AC = 8 cm", "BC = 6 cm"],
        "AB",
        c,
    )
    yield (
        "radius given",
        ["circle with centre O through A and B", "segment AB"],
        ["radius of circle O = 5 cm", "AB = 8 cm"],
        "∠AOB",
        on_circle(5, A=200, B=306),
    )
    yield (
        "radius not drawn",
        ["circle with centre O"],
        ["radius of circle O = 7 cm"],
        "area of circle O",
        {"O": 0, "A": 7},
    )
    yield (
        "diameter not drawn",
        ["circle with centre O through P"],
        ["diameter of circle O = 12.5 m"],
        "circumference of circle O",
        on_circle(6.25, P=20),
    )
    c = on_circle(5, A=130, B=210, C=330, D=50)
    yield (
        "equal chords",
        ["circle with centre O through A, B, C and D", "segments AB, CD"],
        ["AB = CD", "∠AOB = 80°"],
        "∠COD",
        c,
    )
    c = on_circle(5, A=170, B=250, C=290, D=10)
    yield (
        "same segment",
        ["circle with centre O through A, B, C and D", "segments AC, AD, BC, BD"],
        ["∠CAD = 40°"],
        "∠CBD",
        c,
    )


def arcs() -> Iterator[Row]:
    c = on_circle(5, A=200, B=280, C=60)
    yield (
        "arc and inscribed angle",
        ["circle with centre O through A, B and C", "segments CA, CB"],
        ["arc AB = 80°"],
        "∠ACB",
        c,
    )
    yield (
        "two arcs",
        ["circle with centre O through A, B and C", "segments AB, BC, CA"],
        ["arc AB = 80°", "arc BC = 140°"],
        "∠ABC",
        c,
    )
    yield "arc asked", ["circle with centre O through A, B and C", "segments CA, CB"], ["∠ACB = 40°"], "arc AB", c
    yield (
        "arc length",
        ["circle with centre O through A and B", "segments OA, OB"],
        ["OA = 6 cm", "∠AOB = 100°"],
        "length of arc AB",
        on_circle(6, A=20, B=120),
    )
    yield (
        "arc length given",
        ["circle with centre O through A and B", "segments OA, OB"],
        ["length of arc AB = 5π cm", "OA = 6 cm"],
        "∠AOB",
        on_circle(6, A=-40, B=110),
    )
    c = on_circle(5, A=10, B=100, C=190, D=300)
    yield (
        "equal arcs",
        ["circle with centre O through A, B, C and D", "segments AB, BC, CD, DA"],
        ["arc AB = arc BC"],
        "∠ADB",
        c,
    )
    yield (
        "arcs in x",
        ["circle with centre O through A, B and C", "triangle ABC"],
        ["arc AB = 2x", "arc BC = 3x", "arc CA = 4x"],
        "x",
        on_circle(5, A=100, B=180, C=300),
    )


def sectors() -> Iterator[Row]:
    c = on_circle(6, A=-20, B=52)
    yield (
        "sector",
        ["circle with centre O through A and B"],
        ["radius of circle O = 6 cm", "∠AOB = 72°"],
        "area of sector AOB",
        c,
    )
    yield (
        "sector's perimeter",
        ["circle with centre O through A and B"],
        ["OA = 6 cm", "∠AOB = 72°"],
        "perimeter of sector AOB",
        c,
    )
    yield (
        "segment",
        ["circle with centre O through A and B", "segments OA, OB"],
        ["OA = 6 cm", "∠AOB = 110°"],
        "area of the minor segment AB",
        on_circle(6, A=35, B=145),
    )
    yield (
        "major sector",
        ["circle with centre O through A and B", "segments OA, OB"],
        ["OA = 4 cm", "∠AOB = 90°"],
        "area of the major sector AOB",
        on_circle(4, A=0, B=90),
    )


def tangents() -> Iterator[Row]:
    c = on_circle(3, A=60, B=-60)
    c["P"] = 6
    yield (
        "two tangents",
        ["PA and PB are tangents to the circle with centre O at A and B", "segments OA, OB"],
        ["OA = 3 cm", "OP = 6 cm"],
        "PA",
        c,
    )
    c = on_circle(5, T=270, A=20, B=130)
    c["P"], c["Q"] = -7 - 5j, 7 - 5j
    yield (
        "tangent and chord",
        ["circle with centre O through T, A and B", "P-T-Q", "PQ is a tangent to circle O at T", "triangle TAB"],
        ["∠QTA = 55°"],
        "∠TBA",
        c,
    )
    c = on_circle(3, T=90)
    p = 4 + 3j
    c["P"] = p
    a, b = sorted((_secant(p, -160)), key=lambda s: abs(s - p))
    c["A"], c["B"] = a, b
    yield (
        "tangent and secant",
        ["circle with centre O through T, A and B", "PT is a tangent to circle O at T", "P-A-B"],
        ["PT = 4 cm", "PA = 2.5 cm"],
        "AB",
        c,
    )


def _secant(p: complex, way: float, radius: float = 3.0) -> list[complex]:
    """The two points where the line from p in a direction meets the circle about 0."""
    u = polar(way)
    half = -(p * u.conjugate()).real
    off = math.sqrt(half**2 - abs(p) ** 2 + radius**2)
    return [p + (half - off) * u, p + (half + off) * u]


def several_circles() -> Iterator[Row]:
    p = {"P": 0, "Q": 5, "A": 2.2 + math.sqrt(9 - 2.2**2) * 1j, "B": 2.2 - math.sqrt(9 - 2.2**2) * 1j}
    yield (
        "two that cross",
        ["circle with centre P through A and B", "circle with centre Q through A and B", "segment AB", "segment PQ"],
        ["PA = 3 cm", "PQ = 5 cm"],
        "AB",
        p,
    )
    yield (
        "three centres",
        [
            "circle with centre P through A",
            "circle with centre Q through B",
            "circle with centre R through C",
            "triangle PQR",
        ],
        ["PQ = 5 cm", "PR = 6 cm"],
        "QR",
        {"P": 0, "Q": 5, "R": 2 + 5.6j, "A": -2, "B": 7, "C": 2 + 7.4j},
    )
    yield (
        "two apart",
        ["circle with centre P through A", "circle with centre Q through B", "P-A-B-Q"],
        ["PA = 2 cm", "AB = 3 cm", "BQ = 4 cm"],
        "PQ",
        {"P": 0, "A": 2, "B": 5, "Q": 9},
    )


def bearings() -> Iterator[Row]:
    a, b = 0j, polar(90 - 65, 5)
    c = b + polar(90 - 140, 4)
    t = {"A": a, "B": b, "C": c}
    yield (
        "two legs",
        ["triangle ABC"],
        ["the bearing of B from A is 065°", "the bearing of C from B is 140°", "AB = 5 km", "BC = 4 km"],
        "AC",
        t,
    )
    yield (
        "bearing asked",
        ["triangle ABC"],
        ["the bearing of B from A is 065°", "∠ABC = 105°", "AB = 5 km", "BC = 4 km"],
        "the bearing of C from A",
        t,
    )
    yield (
        "beyond south",
        ["segment PQ"],
        ["bearing of Q from P = 235°"],
        "bearing of P from Q",
        {"P": 0, "Q": polar(90 - 235, 6)},
    )
    yield (
        "due north",
        ["segments LM, LN"],
        ["bearing of M from L = 000°", "bearing of N from L = 300°"],
        "∠MLN",
        {"L": 0, "M": 5j, "N": polar(90 - 300, 6)},
    )


def centres() -> Iterator[Row]:
    t = by_sides(14, 13, 15)
    a, b, c = t["A"], t["B"], t["C"]
    mid = {"D": (b + c) / 2, "E": (a + c) / 2, "F": (a + b) / 2, "G": (a + b + c) / 3}
    yield (
        "medians",
        [
            "triangle ABC",
            "D is the midpoint of BC",
            "E is the midpoint of AC",
            "F is the midpoint of AB",
            "AD and BE intersect at G",
        ],
        ["GD = 3 cm"],
        "AG",
        {**t, **mid},
    )
    feet = {"D": foot(a, b, c), "E": foot(b, a, c)}
    feet["H"] = cross(a, feet["D"], b, feet["E"])
    yield (
        "altitudes",
        ["triangle ABC", "D lies on BC", "E lies on AC", "AD ⊥ BC", "BE ⊥ AC", "AD and BE intersect at H"],
        ["∠ACB = 67°"],
        "∠AHB",
        {**t, **feet},
    )
    i = (14 * a + 13 * b + 15 * c) / 42
    yield (
        "incentre",
        ["triangle ABC", "segments AI, BI, CI", "AI bisects ∠BAC", "BI bisects ∠ABC", "CI bisects ∠ACB"],
        ["∠BAC = 53°"],
        "∠BIC",
        {**t, "I": i},
    )


def polygons() -> Iterator[Row]:
    five = {name: polar(90 + 72 * n, 4) for n, name in enumerate("ABCDE")}
    yield "regular pentagon", ["regular pentagon ABCDE", "segment AC"], ["AB = 6 cm"], "∠BAC", five
    six = {name: polar(60 + 60 * n, 4) for n, name in enumerate("ABCDEF")}
    yield "regular hexagon", ["regular hexagon ABCDEF", "segments AD, BE"], ["AB = 4 cm"], "area of ABCDEF", six
    irregular = {"A": 0, "B": 5 - 1j, "C": 7 + 2j, "D": 4 + 5j, "E": 0.5 + 4j}
    yield (
        "pentagon",
        ["segments AB, BC, CD, DE, EA"],
        ["∠EAB = 3x", "∠ABC = 2x + 40°", "∠BCD = 110°", "∠CDE = 4x − 20°"],
        "∠DEA",
        irregular,
    )
    eight = {name: polar(22.5 + 45 * n, 4) for n, name in enumerate("ABCDEFGH")}
    yield "regular octagon", ["regular octagon ABCDEFGH", "segments AC, AD"], [], "∠CAD", eight


def crowded() -> Iterator[Row]:
    t = {"A": 2 + 9j, "B": 0, "C": 11}
    p = {**t, "D": 3, "E": 5.5, "F": 8.2}
    yield (
        "fan",
        ["triangle ABC", "B-D-E-F-C", "segments AD, AE, AF"],
        ["∠BAD = 21.3°", "∠DAE = 14.8°", "∠EAF = 12°", "∠FAC = 9.5°", "∠ABC = 77.5°"],
        "∠ACB",
        p,
    )
    yield (
        "slim triangle",
        ["triangle ABC"],
        ["∠BAC = 8°", "∠ABC = 86°", "BC = 1.4 cm", "AB = 10 cm"],
        "AC",
        {"A": 0, "B": 10, "C": polar(8, 10)},
    )
    r = {
        "A": -4 + 0j,
        "B": 4 + 0j,
        "C": polar(35, 4),
        "D": polar(215, 4),
        "E": polar(100, 4),
        "O": 0,
        "F": polar(280, 4),
    }
    yield "star", ["A-O-B", "C-O-D", "E-O-F"], ["∠AOE = 2x + 15°", "∠EOC = 3x − 10°", "∠COB = x + 5°"], "∠DOF", r
    c = on_circle(5, A=150, B=210, C=285, D=20, E=80)
    yield (
        "all chords",
        ["circle with centre O through A, B, C, D and E", "segments AB, BC, CD, DE, EA, AC, BD, CE, DA, EB"],
        ["∠ABE = 35°", "arc BC = 75°"],
        "∠BDC",
        c,
    )
    y = {"A": 4j, "B": 6 + 4j, "C": 1, "D": 7, "E": 2 + 6j, "G": 8 / 3 + 4j, "H": 4 + 0j}
    y["H"] = cross(2 + 6j, 8 / 3 + 4j, 1, 7)
    y["F"] = y["H"] + (y["H"] - y["G"]) * 0.4
    yield (
        "transversal",
        ["AB ∥ CD", "EF cuts AB at G and CD at H"],
        ["∠EGB = (5x + 12)°", "∠GHC = (3x − 4)°", "∠DHF = 2y"],
        "∠AGE",
        y,
    )

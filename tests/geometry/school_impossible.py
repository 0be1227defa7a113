"""School questions that nothing satisfies, each for a reason that a pupil could give; no coordinates exist.

The reasons: triangle inequality (Euclid I.20), the greater side lies opposite the greater angle (I.18, I.19),
angle sums (I.32), Pythagoras (I.47), a chord is at most a diameter (III.15), and the theorem that is broken.
"""

import random
from collections.abc import Callable

from tests.geometry.school_sheet import SchoolQuestion

Told = tuple[tuple[str, ...], tuple[str, ...], str]

IMPOSSIBLE: dict[str, Callable[[random.Random], Told]] = {}


def _kept(function: Callable[[random.Random], Told]) -> Callable[[random.Random], Told]:
    IMPOSSIBLE[function.__name__] = function
    return function


@_kept
def one_side_too_long(c: random.Random) -> Told:
    p, q = c.randrange(3, 12), c.randrange(3, 12)
    return (
        ("triangle ABC",),
        (f"AB = {p}", f"BC = {q}", f"AC = {p + q + c.randrange(1, 9)}"),
        c.choice(("∠ABC", "area of △ABC")),
    )


@_kept
def hypotenuse_shorter_than_a_leg(c: random.Random) -> Told:
    p = c.randrange(5, 15)
    return ("triangle ABC",), ("∠ABC = 90°", f"AB = {p}", f"AC = {p - c.randrange(1, 4)}"), c.choice(("BC", "∠ACB"))


@_kept
def three_sides_of_no_right_triangle(c: random.Random) -> Told:
    p, q, r = c.choice(((3, 4, 6), (5, 12, 14), (8, 15, 16), (6, 8, 9)))
    return ("triangle ABC",), ("∠ABC = 90°", f"AB = {p}", f"BC = {q}", f"AC = {r}"), "∠BAC"


@_kept
def side_opposite_too_short(c: random.Random) -> Told:
    """AC is shorter than the distance from A to BC."""
    p = c.randrange(8, 16)
    return ("triangle ABC",), (f"AB = {p}", f"AC = {p // 2 - 1}", "∠ABC = 40°"), c.choice(("BC", "∠ACB"))


@_kept
def greater_angle_opposite_the_smaller_side(c: random.Random) -> Told:
    p = c.randrange(6, 12)
    return ("triangle ABC",), (f"AB = {p}", f"AC = {p + c.randrange(1, 5)}", "∠ABC = 50°", "∠ACB = 60°"), "BC"


@_kept
def isosceles_too_flat(c: random.Random) -> Told:
    side = c.randrange(3, 9)
    return ("triangle ABC",), ("∠ABC = ∠ACB", f"AB = {side}", f"BC = {2 * side + c.randrange(1, 5)}"), "area of △ABC"


@_kept
def chord_longer_than_the_diameter(c: random.Random) -> Told:
    r = c.randrange(3, 9)
    figure = ("circle with centre O through A and B", "segments OA, OB, AB")
    return figure, (f"OA = {r}", f"AB = {2 * r + c.randrange(1, 5)}"), "∠AOB"


@_kept
def chord_and_distance_beyond_the_radius(c: random.Random) -> Told:
    r = c.randrange(4, 10)
    figure = ("circle with centre O through A and B", "M lies on AB", "segments AB, OM, OA")
    return figure, ("OM ⊥ AB", f"OA = {r}", f"OM = {r + c.randrange(1, 4)}"), "AB"


@_kept
def tangent_longer_than_the_way_to_the_centre(c: random.Random) -> Told:
    d = c.randrange(5, 12)
    figure = ("circle with centre O through T and B", "O-B-P", "segment OT")
    return figure, ("PT is a tangent to circle O at T", f"OP = {d}", f"PT = {d + c.randrange(1, 5)}"), "OT"


@_kept
def tangents_unequal(c: random.Random) -> Told:
    p = c.randrange(4, 12)
    figure = ("circle with centre O through A and B", "segments OA, OB")
    given = ("PA and PB are tangents to circle O at A and B", f"PA = {p}", f"PB = {p + c.randrange(1, 4)}", "OA = 3")
    return figure, given, "OP"


@_kept
def parallel_with_wrong_ratio(c: random.Random) -> Told:
    p, q, r = c.randrange(2, 8), c.randrange(2, 8), c.randrange(2, 8)
    figure = ("triangle ABC", "D lies on AB", "E lies on AC", "segment DE")
    given = ("DE ∥ BC", f"AD = {p}", f"DB = {q}", f"AE = {p * r}", f"EC = {q * r + c.randrange(1, 4)}", "BC = 9")
    return figure, given, "DE"


@_kept
def diagonal_of_a_rectangle_too_short(c: random.Random) -> Told:
    p, q = c.randrange(3, 10), c.randrange(3, 10)
    return ("rectangle ABCD", "diagonal AC"), (f"AB = {p}", f"BC = {q}", f"AC = {max(p, q)}"), "∠CAB"


@_kept
def rhombus_diagonals_too_long(c: random.Random) -> Told:
    s = c.randrange(4, 10)
    figure = ("rhombus ABCD", "AC and BD intersect at E")
    return figure, (f"AB = {s}", f"AC = {2 * s + c.randrange(1, 4)}"), "BD"


@_kept
def lengths_that_do_not_add(c: random.Random) -> Told:
    p, q = c.randrange(3, 10), c.randrange(3, 10)
    return ("A-B-C", "B-C-D"), (f"AB = {p}", f"BC = {q}", f"AC = {p + q + 1}", "CD = 4"), "AD"


@_kept
def part_longer_than_the_whole(c: random.Random) -> Told:
    p = c.randrange(3, 10)
    return ("A-B-C",), (f"AB = {p + 2}", f"AC = {p}"), "BC"


@_kept
def letter_makes_a_length_negative(c: random.Random) -> Told:
    """AB = x − k comes out negative."""
    x, k = c.randrange(2, 5), c.randrange(6, 9)
    return ("parallelogram ABCD",), (f"AB = x − {k}", f"CD = 2x − {k + x}", "BC = 7"), "x"


@_kept
def semicircle_leg_longer_than_the_diameter(c: random.Random) -> Told:
    r = c.randrange(3, 8)
    figure = ("circle with centre O through A, B and C", "segments AC, BC")
    return figure, ("AB is a diameter of circle O", f"OA = {r}", f"AC = {2 * r + c.randrange(1, 4)}"), "BC"


@_kept
def crossing_chords_products_differ(c: random.Random) -> Told:
    p, q, r = c.randrange(2, 8), c.randrange(2, 8), c.randrange(1, 4)
    figure = ("circle with centre O through A, B, C and D", "AB and CD intersect at E")
    given = (f"AE = {p * r}", f"EB = {q}", f"CE = {p}", f"ED = {q * r + c.randrange(1, 4)}")
    return figure, given, "CD"


def impossible_question(name: str, seed: int) -> SchoolQuestion:
    """A question of a kind that nothing satisfies; it has no truth and no sketch."""
    figure, given, ask = IMPOSSIBLE[name](random.Random(f"{name} {seed}"))
    return SchoolQuestion(name, figure, given, ask, 0.0, "", {}, {}, {})

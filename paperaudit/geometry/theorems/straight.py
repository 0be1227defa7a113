"""Points that lie on one straight line because angles, or parallels, say so."""

from collections.abc import Iterator
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement, Ray
from paperaudit.geometry.theorems.like_triangles import CLOSE
from paperaudit.geometry.theorems.points import total
from paperaudit.geometry.theorems.theorem import Instance, OnOneLine, Theorem, lines_parallel, on_one_line
from paperaudit.maths.linear import LinearForm


def _continued(arrangement: Arrangement) -> Iterator[tuple[Ray, Ray, tuple[OnOneLine, ...]]]:
    """Rays of different lines that continue each other in the drawing, and the points said to be on one line."""
    for vertex, rays in arrangement.rays.items():
        for one, two in combinations(rays, 2):
            turn = arrangement.turn(vertex, one.points[0], two.points[0])
            if one.line != two.line and abs(turn) > 180 - CLOSE:
                triples = [(a, vertex, c) for a in one.points for c in two.points]
                yield one, two, tuple(on_one_line(triple) for triple in triples)


def _text(claim: OnOneLine) -> str:
    return f"{', '.join(claim.points)} are on one straight line"


def _supplementary(arrangement: Arrangement) -> Iterator[Instance]:
    for one, two, claims in _continued(arrangement):
        for ray in arrangement.rays[one.vertex]:
            if ray not in (one, two):
                parts = (arrangement.between(one, ray), arrangement.between(ray, two))
                for claim in claims:
                    yield Instance("angles-on-a-line-converse", (), total(parts, 180), claim, _text(claim), 12)


def _parallel(arrangement: Arrangement) -> Iterator[Instance]:
    """Through one point there is one parallel to a line."""
    for one, two, claims in _continued(arrangement):
        for line in range(len(arrangement.lines)):
            if line in (one.line, two.line) or one.vertex in arrangement.lines[line]:
                continue
            if arrangement.parallel_way(line, one.line):
                premises = (lines_parallel(line, one.line), lines_parallel(line, two.line))
                for claim in claims:
                    yield Instance("one-parallel", premises, LinearForm(), claim, _text(claim), 12)


_TWO_RIGHT = ("OA, OC, OB in order round O", "∠AOC = 90°", "∠COB = 90°")

THEOREMS = (
    Theorem(
        "angles-on-a-line-converse",
        "Adjacent angles that add up to 180° make a straight line.",
        "angles on a straight line",
        "Euclid I.14",
        _supplementary,
        fires=_TWO_RIGHT,
        silent=("OA, OC, OB in order round O", "∠AOC = 90°", "∠COB = 80°"),
    ),
    Theorem(
        "one-parallel",
        "Through a point there is only one line parallel to another.",
        "proving lines parallel",
        "Playfair's form of Euclid's fifth postulate",
        _parallel,
        fires=("segments OA, OB, CD", "OA ∥ CD", "OB ∥ DC", "segments CO, DO"),
        silent=("segments OA, OB, CD", "OA ∥ CD", "segments CO, DO"),
    ),
)

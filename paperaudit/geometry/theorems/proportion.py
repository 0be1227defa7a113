"""Parallels that cut two lines: the parts are in proportion, halves with halves; and the converses."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import Size, length
from paperaudit.geometry.theorems.like_triangles import CLOSE
from paperaudit.geometry.theorems.parallels import parallel_text
from paperaudit.geometry.theorems.theorem import (
    Equation,
    Instance,
    LinesParallel,
    Theorem,
    lines_parallel,
    proportional,
    segments_equal,
)
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import LengthOf, Quotient


@dataclass(frozen=True, slots=True)
class Cut:
    """Two lines from `apex` cut by two parallels, in `near` points and `far` ones, one of each on each line."""

    apex: str
    near: tuple[str, str]
    far: tuple[str, str]
    parallel: LinesParallel
    about: str

    def parts(self, side: int) -> tuple[LengthOf, LengthOf, LengthOf]:
        """From the apex to the near point, from there to the far point, and the whole."""
        near, far = self.near[side], self.far[side]
        return length(self.apex, near), length(near, far), length(self.apex, far)


def cuts(arrangement: Arrangement) -> Iterator[Cut]:
    """Wherever two lines that meet in a labelled point are cut by two lines that are parallel in the drawing."""
    for first, second, way, third in cut_pairs(arrangement):
        for k, m in combinations(third, 2):
            apex = arrangement.meet(k, m)
            if apex is None or apex in arrangement.lines[first] or apex in arrangement.lines[second]:
                continue
            ends = [[arrangement.meet(line, cutter) or "" for cutter in (k, m)] for line in (first, second)]
            ends.sort(key=lambda pair: arrangement.measured(length(apex, pair[0])))
            about = parallel_text(arrangement, first, second, way)
            (d, e), (b, c) = ends
            yield Cut(apex, (d, e), (b, c), lines_parallel(first, second), about)


def cut_pairs(arrangement: Arrangement) -> Iterator[tuple[int, int, int, list[int]]]:
    """Pairs of lines that are parallel in the drawing, which way they run, and the lines that cut both."""
    for first, second in combinations(range(len(arrangement.lines)), 2):
        way = arrangement.parallel_way(first, second)
        if way and not arrangement.meet(first, second):
            third = [
                line
                for line in range(len(arrangement.lines))
                if line not in (first, second) and arrangement.meet(first, line) and arrangement.meet(second, line)
            ]
            yield first, second, way, third


def _intercepts(arrangement: Arrangement) -> Iterator[Equation]:
    for cut in cuts(arrangement):
        premises = (cut.parallel,)
        (ad, db, ab), (ae, ec, ac) = cut.parts(0), cut.parts(1)
        for one, two, other_one, other_two in ((ad, db, ae, ec), (ad, ab, ae, ac), (db, ab, ec, ac)):
            left, right = Quotient(one, two), Quotient(other_one, other_two)
            yield Equation("proportional-intercepts", premises, left, right, cut.about, 14)
        across = Quotient(length(*cut.near), length(*cut.far))
        for one, two in ((ad, ab), (ae, ac)):
            yield Equation("proportional-intercepts", premises, Quotient(one, two), across, cut.about, 15)


def _three_parallels(arrangement: Arrangement) -> Iterator[Equation]:
    """Three parallels cut any two lines in the same ratio."""
    for trio in combinations(range(len(arrangement.lines)), 3):
        if not all(arrangement.parallel_way(one, two) for one, two in combinations(trio, 2)):
            continue
        if any(arrangement.meet(one, two) for one, two in combinations(trio, 2)):
            continue
        cutters = [
            line
            for line in range(len(arrangement.lines))
            if line not in trio and all(arrangement.meet(line, one) for one in trio)
        ]
        for k, m in combinations(cutters, 2):
            on_k = [(point, one) for point in arrangement.lines[k] for one in trio if arrangement.meet(k, one) == point]
            (a, i), (b, j), (c, n) = on_k
            d, e, f = (arrangement.meet(m, one) or "" for one in (i, j, n))
            premises = (lines_parallel(i, j), lines_parallel(j, n))
            about = parallel_text(arrangement, i, j, arrangement.parallel_way(i, j))
            for one, two, other_one, other_two in (
                ((a, b), (b, c), (d, e), (e, f)),
                ((a, b), (a, c), (d, e), (d, f)),
                ((b, c), (a, c), (e, f), (d, f)),
            ):
                if len({*one, *two}) == 3 and len({*other_one, *other_two}) == 3:
                    left = Quotient(length(*one), length(*two))
                    right = Quotient(length(*other_one), length(*other_two))
                    yield Equation("three-parallels", premises, left, right, about, 14)


def _intercepts_converse(arrangement: Arrangement) -> Iterator[Instance]:
    for cut in cuts(arrangement):
        (ad, db, ab), (ae, ec, ac) = cut.parts(0), cut.parts(1)
        for ratio in ((ad, db, ae, ec), (ad, ab, ae, ac), (db, ab, ec, ac)):
            premises = (proportional(*ratio),)
            yield Instance("proportional-intercepts-converse", premises, LinearForm(), cut.parallel, cut.about, 14)


def _halved(arrangement: Arrangement) -> Iterator[Cut]:
    """Cuts whose near points halve the two lines, in the drawing, on one side of the apex."""
    for cut in cuts(arrangement):
        halves, rest, whole = (arrangement.measured(size) for size in cut.parts(0))
        if abs(halves - rest) < CLOSE * whole and abs(halves + rest - whole) < CLOSE * whole:
            yield cut


def _middle(cut: Cut, side: int) -> tuple[tuple[str, str], tuple[str, str]]:
    return (cut.apex, cut.near[side]), (cut.near[side], cut.far[side])


def _midpoint_theorem(arrangement: Arrangement) -> Iterator[Instance]:
    for cut in _halved(arrangement):
        premises = tuple(segments_equal(*_middle(cut, side)) for side in (0, 1))
        yield Instance("midpoint-theorem", premises, LinearForm(), cut.parallel, cut.about, 12)
        half: LinearForm[Size] = LinearForm({length(*cut.near): 2, length(*cut.far): -1})
        yield Instance("midpoint-theorem", premises, half, None, cut.about, 12)


def _midpoint_converse(arrangement: Arrangement) -> Iterator[Instance]:
    for cut in _halved(arrangement):
        for side in (0, 1):
            premises = (segments_equal(*_middle(cut, side)), cut.parallel)
            other = segments_equal(*_middle(cut, 1 - side))
            yield Instance("midpoint-theorem-converse", premises, LinearForm(), other, cut.about, 12)


_PARALLEL = ("triangle ABC", "D lies on AB", "E lies on AC", "DE ∥ BC")
_MIDDLES = ("triangle ABC", "D is the midpoint of AB", "E is the midpoint of AC", "segment DE")
_NONE = ("triangle ABC", "D lies on AB", "E lies on AC", "segment DE")

THEOREMS = (
    Theorem(
        "proportional-intercepts",
        "A line parallel to one side of a triangle cuts the other two sides in proportion.",
        "proportion in triangles",
        "Euclid VI.2",
        _intercepts,
        fires=_PARALLEL,
        silent=_NONE,
    ),
    Theorem(
        "three-parallels",
        "Parallel lines cut two lines in proportion.",
        "proportion in triangles",
        "Euclid VI.2, corollary",
        _three_parallels,
        fires=("AB ∥ CD", "CD ∥ EF", "GH cuts AB at K and CD at L", "GH and EF intersect at M", "A-C-E"),
        silent=_PARALLEL,
    ),
    Theorem(
        "proportional-intercepts-converse",
        "A line that cuts two sides of a triangle in proportion is parallel to the third.",
        "proportion in triangles",
        "Euclid VI.2",
        _intercepts_converse,
        fires=_PARALLEL,
        silent=_NONE,
    ),
    Theorem(
        "midpoint-theorem",
        "The line through the mid-points of two sides of a triangle is parallel to the third side and half of it.",
        "midpoints",
        "Euclid VI.2, corollary",
        _midpoint_theorem,
        fires=_MIDDLES,
        silent=_NONE,
    ),
    Theorem(
        "midpoint-theorem-converse",
        "The line through the mid-point of one side of a triangle parallel to a second side bisects the third.",
        "midpoints",
        "Euclid VI.2, corollary",
        _midpoint_converse,
        fires=("triangle ABC", "D is the midpoint of AB", "E lies on AC", "DE ∥ BC"),
        silent=_NONE,
    ),
)

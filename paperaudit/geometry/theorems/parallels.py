"""Parallel lines cut by a third: alternate, corresponding and co-interior angles, and their converses."""

from collections.abc import Callable, Iterator
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement, Ray
from paperaudit.geometry.figure.figure import RightAngle
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.theorem import Instance, Stated, Theorem, lines_parallel
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf

Pair = tuple[AngleOf, AngleOf]
Cut = tuple[int, int, str, str, int]
"""Two parallel lines, the points in which a third cuts them, and +1 or −1 for the same or opposite order."""


def _cuts(arrangement: Arrangement) -> Iterator[Cut]:
    for first, second in arrangement.parallels:
        if arrangement.meet(first, second):
            continue
        way = arrangement.parallel_way(first, second)
        for third in arrangement.crossed[first]:
            near, far = arrangement.meet(first, third), arrangement.meet(second, third)
            if near and far:
                yield first, second, near, far, way


def _along(arrangement: Arrangement, vertex: str, line: int, way: int) -> Ray | None:
    return next((ray for ray in arrangement.rays[vertex] if ray.line == line and ray.way == way), None)


def _pairs(arrangement: Arrangement, cut: Cut, kind: str) -> Iterator[Pair]:
    first, second, near, far, way = cut
    to_far, to_near = arrangement.ray(near, far), arrangement.ray(far, near)
    for side in (1, -1):
        here = _along(arrangement, near, first, side)
        there = _along(arrangement, far, second, -side * way if kind == "alternate" else side * way)
        if here is None or there is None:
            continue
        if kind in ("alternate", "co-interior"):
            yield arrangement.between(here, to_far), arrangement.between(there, to_near)
            continue
        beyond_near, beyond_far = arrangement.opposite(to_far), arrangement.opposite(to_near)
        if beyond_near:
            yield arrangement.between(here, beyond_near), arrangement.between(there, to_near)
        if beyond_far:
            yield arrangement.between(here, to_far), arrangement.between(there, beyond_far)


def parallel_text(arrangement: Arrangement, first: int, second: int, way: int) -> str:
    """AB ∥ CD, both named in the same direction, by the end points of the lines or the paper's own names."""
    one, two = arrangement.lines[first], arrangement.lines[second]
    second_path = two if way > 0 else two[::-1]
    return f"{one[0]}{one[-1]} ∥ {second_path[0]}{second_path[-1]}"


def _rule(kind: str, converse: bool) -> Callable[[Arrangement], Iterator[Instance]]:
    name = f"{kind}-angles" + ("-converse" if converse else "")
    skill = "proving lines parallel" if converse else f"parallel lines: {kind} angles"

    def find(arrangement: Arrangement) -> Iterator[Instance]:
        for cut in _cuts(arrangement):
            parallel = lines_parallel(cut[0], cut[1])
            about = parallel_text(arrangement, cut[0], cut[1], cut[4])
            for pair in _pairs(arrangement, cut, kind):
                relation = total(pair, 180) if kind == "co-interior" else difference(*pair)
                if converse:
                    yield Instance(name, (), relation, parallel, about, skill=skill)
                else:
                    yield Instance(name, (parallel,), relation, None, about, skill=skill)

    return find


def _both_parallel(arrangement: Arrangement) -> Iterator[Instance]:
    beside: dict[int, list[int]] = {}
    for one, two in arrangement.parallels:
        beside.setdefault(one, []).append(two)
        beside.setdefault(two, []).append(one)
    trios = {tuple(sorted((line, *pair))) for line, others in beside.items() for pair in combinations(others, 2)}
    for trio in sorted(trios):
        for k in trio:
            i, j = (line for line in trio if line != k)
            if any(arrangement.meet(*pair) for pair in combinations(trio, 2)):
                continue
            if arrangement.parallel_way(i, j) and arrangement.parallel_way(i, k):
                about = parallel_text(arrangement, i, j, arrangement.parallel_way(i, j))
                premises = (lines_parallel(i, k), lines_parallel(j, k))
                yield Instance("parallel-to-same-line", premises, LinearForm(), lines_parallel(i, j), about)


def _both_perpendicular(arrangement: Arrangement) -> Iterator[Instance]:
    upright = [
        (condition.label, *(arrangement.figure.line_of(*path) for path in (condition.first, condition.second)))
        for condition in arrangement.figure.conditions
        if isinstance(condition, RightAngle)
    ]
    for (one, a, b), (two, c, d) in combinations(upright, 2):
        common = {a, b} & {c, d}
        rest = sorted({a, b, c, d} - common)
        if len(common) == 1 and len(rest) == 2:
            way = arrangement.parallel_way(rest[0], rest[1])
            if way:
                about = parallel_text(arrangement, rest[0], rest[1], way)
                premises = (Stated(one), Stated(two))
                conclusion = lines_parallel(rest[0], rest[1])
                yield Instance("co-interior-angles-converse", premises, LinearForm(), conclusion, about)


_CUT = ("AB ∥ CD", "EF cuts AB at G and CD at H")
_NOT_PARALLEL = ("triangle ABC", "BC is produced to D")

THEOREMS = (
    Theorem(
        "alternate-angles",
        "Alternate angles between parallel lines are equal.",
        "parallel lines: alternate angles",
        "Euclid I.29",
        _rule("alternate", False),
        fires=_CUT,
        silent=_NOT_PARALLEL,
    ),
    Theorem(
        "corresponding-angles",
        "Corresponding angles at parallel lines are equal.",
        "parallel lines: corresponding angles",
        "Euclid I.29",
        _rule("corresponding", False),
        fires=_CUT,
        silent=_NOT_PARALLEL,
    ),
    Theorem(
        "co-interior-angles",
        "Co-interior angles between parallel lines add up to 180°.",
        "parallel lines: co-interior angles",
        "Euclid I.29",
        _rule("co-interior", False),
        fires=_CUT,
        silent=_NOT_PARALLEL,
    ),
    Theorem(
        "alternate-angles-converse",
        "If alternate angles are equal, the lines are parallel.",
        "proving lines parallel",
        "Euclid I.27",
        _rule("alternate", True),
        fires=_CUT,
        silent=_NOT_PARALLEL,
    ),
    Theorem(
        "corresponding-angles-converse",
        "If corresponding angles are equal, the lines are parallel.",
        "proving lines parallel",
        "Euclid I.28",
        _rule("corresponding", True),
        fires=_CUT,
        silent=_NOT_PARALLEL,
    ),
    Theorem(
        "co-interior-angles-converse",
        "If co-interior angles add up to 180°, the lines are parallel.",
        "proving lines parallel",
        "Euclid I.28",
        _rule("co-interior", True),
        fires=_CUT,
        silent=_NOT_PARALLEL,
    ),
    Theorem(
        "parallel-to-same-line",
        "Lines parallel to one line are parallel to each other.",
        "proving lines parallel",
        "Euclid I.30",
        _both_parallel,
        fires=("AB ∥ CD", "CD ∥ EF"),
        silent=_NOT_PARALLEL,
    ),
    Theorem(
        "co-interior-angles-converse",
        "Lines perpendicular to one line are parallel to each other.",
        "proving lines parallel",
        "Euclid I.28",
        _both_perpendicular,
        fires=("AB ⊥ BC", "BC ⊥ CD"),
        silent=_NOT_PARALLEL,
    ),
)

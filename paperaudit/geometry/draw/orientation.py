"""Turns a drawing as it is to stand on the page: like its sketch, else on a natural base with its first letter on top."""

import cmath
import math
from collections.abc import Mapping
from itertools import pairwise

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.figure import EqualLengths, ParallelPair
from paperaudit.geometry.plane import Spot

Turned = dict[str, complex]

LEVEL = 3.0
"""Degrees within which a line of a sketch is meant to be level (or upright)."""
NEARLY = 12.0
"""Degrees by which a drawing may be turned away from its sketch to bring such a line level again."""

BASE_OF_ISOSCELES = 3.0
PARALLEL_BASE = 3.0
LONGEST = 2.0
ABOVE = 2.5
LETTERS_IN_ORDER = 0.8
FIRST_ON_TOP = 1.2
LANDSCAPE = 1.0
"""The weights of what makes a good base: whose line it is, what stands above it, how the letters run."""


def oriented(arrangement: Arrangement, at: Mapping[str, Spot]) -> dict[str, Spot]:
    """The points turned, and mirrored where that serves; y still runs up."""
    points = {name: complex(*spot) for name, spot in at.items()}
    sketch = {name: complex(x, y) for name, x, y in arrangement.figure.sketch if name in points}
    turned = _as_sketched(arrangement, points, sketch) if len(sketch) > 1 else _on_base(arrangement, points)
    return {name: (z.real, z.imag) for name, z in turned.items()}


def _as_sketched(arrangement: Arrangement, points: Turned, sketch: Turned) -> Turned:
    """The rotation (after a reflection, if that fits better) with the least squares off the sketch: Procrustes."""
    middle = sum(points[name] for name in sketch) / len(sketch)
    centre = sum(sketch.values()) / len(sketch)

    def fit(mirrored: bool) -> complex:
        return sum(
            ((_flipped(points[name] - middle, mirrored)).conjugate() * (spot - centre) for name, spot in sketch.items()),
            0j,
        )

    mirrored = abs(fit(True)) > abs(fit(False)) * (1 + 1e-9)
    way = fit(mirrored)
    turn = way / abs(way) if abs(way) > 1e-12 else 1 + 0j
    turned = {name: _flipped(spot - middle, mirrored) * turn for name, spot in points.items()}
    return _levelled(arrangement, turned, sketch)


def _flipped(spot: complex, mirrored: bool) -> complex:
    return spot.conjugate() if mirrored else spot


def _levelled(arrangement: Arrangement, turned: Turned, sketch: Turned) -> Turned:
    """Turned a little further, so that what the sketch draws level (or upright) is so."""
    best: tuple[float, float] = (0.0, 0.0)
    for line in arrangement.lines:
        ends = [point for point in line if point in sketch]
        if len(ends) < 2:
            continue
        drawn, true = sketch[ends[-1]] - sketch[ends[0]], turned[ends[-1]] - turned[ends[0]]
        for aim in (0.0, 90.0):
            lean = _lean(true, aim)
            if abs(_lean(drawn, aim)) < LEVEL and abs(lean) < NEARLY:
                best = max(best, (abs(drawn) * (1.0 if aim == 0 else 0.5), lean), key=lambda pair: pair[0])
    return {name: spot * cmath.rect(1, -math.radians(best[1])) for name, spot in turned.items()}


def _lean(way: complex, aim: float) -> float:
    """How far a line leans from the direction `aim`, in degrees, −90 to 90."""
    return (math.degrees(cmath.phase(way)) - aim + 90) % 180 - 90


def _on_base(arrangement: Arrangement, points: Turned) -> Turned:
    """The best of all ways to stand on one of the lines."""
    if not arrangement.lines:
        return points
    worth = _worth_of_lines(arrangement, points)
    best: tuple[float, Turned] | None = None
    for number, line in enumerate(arrangement.lines):
        for mirrored in (False, True):
            for start, end in ((line[0], line[-1]), (line[-1], line[0])):
                way = _flipped(points[end] - points[start], mirrored)
                foot = _flipped(points[start], mirrored)
                turned = {name: (_flipped(spot, mirrored) - foot) * abs(way) / way for name, spot in points.items()}
                score = worth[number] + _stand(arrangement, turned, (start, end), line)
                if best is None or score > best[0] + 1e-6:
                    best = (score, turned)
    assert best is not None
    return best[1]


def _worth_of_lines(arrangement: Arrangement, points: Turned) -> list[float]:
    lengths = [abs(points[line[-1]] - points[line[0]]) for line in arrangement.lines]
    worth = [LONGEST * length / (max(lengths) or 1.0) for length in lengths]
    for condition in arrangement.figure.conditions:
        if isinstance(condition, ParallelPair):
            for path in {condition.first, condition.second}:
                number = arrangement.figure.line_of(*path)
                worth[number] = max(worth[number], PARALLEL_BASE + LONGEST * lengths[number] / max(lengths))
        elif isinstance(condition, EqualLengths):
            ends = {condition.first.start, condition.first.end} ^ {condition.second.start, condition.second.end}
            number = next((n for n, line in enumerate(arrangement.lines) if len(ends) == 2 and ends <= set(line)), -1)
            apart = number >= 0 and not {condition.first.start, condition.first.end} <= set(arrangement.lines[number])
            if apart:
                worth[number] += BASE_OF_ISOSCELES
    return worth


def _stand(arrangement: Arrangement, turned: Turned, ends: tuple[str, str], line: tuple[str, ...]) -> float:
    """How well a drawing stands on a level line: what is above it, how its letters run, its shape on the page."""
    heights = [spot.imag for name, spot in turned.items() if name not in line]
    size = max(max(abs(height) for height in heights), 1e-9) if heights else 1.0
    above = sum(heights) / size / len(heights) if heights else 0.0
    order = line if line[0] == ends[0] else line[::-1]
    steps = list(pairwise(order))
    in_order = sum(first < second for first, second in steps) / len(steps)
    width = max(spot.real for spot in turned.values()) - min(spot.real for spot in turned.values())
    height = max(spot.imag for spot in turned.values()) - min(spot.imag for spot in turned.values())
    shape = min(1.0, width / (1.2 * height)) if height > 1e-9 * width else 0.5
    top = max(spot.imag for spot in turned.values())
    first = _first_letter(arrangement)
    on_top = 1.0 if turned[first].imag > top - 0.02 * max(height, 1e-9) else 0.0
    left = sum(turned[a].real < turned[b].real for a, b in _named_sides(arrangement)) * 0.1
    return ABOVE * above + LETTERS_IN_ORDER * in_order + LANDSCAPE * shape + FIRST_ON_TOP * on_top + left


def _first_letter(arrangement: Arrangement) -> str:
    shapes = [point for shape, _ in arrangement.figure.shapes for point in shape.points]
    return min(shapes or arrangement.figure.points)


def _named_sides(arrangement: Arrangement) -> list[tuple[str, str]]:
    """The pairs of points that given parallels are named by: the first of each is to stand on the left."""
    return [
        path for condition in arrangement.figure.conditions if isinstance(condition, ParallelPair)
        for path in (condition.first, condition.second)
    ]

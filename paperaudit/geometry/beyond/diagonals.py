"""Diagonals that a pupil draws in: those of quadrilaterals, and of other polygons those that cut off a known shape."""

import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.linear.constructions import MOST_POINTS, Extended
from paperaudit.geometry.theorems import instances

MOST_JOINED = 4
LOOKS_PARALLEL = 1e-6
"""Sine of the angle between two segments of a drawing that are taken for parallel ones."""


def with_diagonals(arrangement: Arrangement) -> Extended | None:
    """Joins the opposite corners of named quadrilaterals; None where they are all joined."""
    lines = list(arrangement.lines)
    words: dict[str, str] = {}
    joined = 0
    for shape, _ in arrangement.figure.shapes:
        if len(shape.points) != 4 or len(arrangement.figure.points) > MOST_POINTS:
            continue
        a, b, c, d = shape.points
        for start, end in ((a, c), (b, d)):
            if joined < MOST_JOINED and not any(start in line and end in line for line in lines):
                joined += 1
                lines.append((start, end))
                text = f"Join {start}{end}"
                words.update({start + end: text, end + start: text})
    return _joined(arrangement, lines, words) if words else None


def with_cuts(arrangement: Arrangement) -> Iterator[Extended]:
    """Cuts a pentagon or hexagon in two, one diagonal at a time: those that run along a side in the drawing."""
    if len(arrangement.figure.points) > MOST_POINTS:
        return
    for shape, _ in arrangement.figure.shapes:
        corners = shape.points
        if not 5 <= len(corners) <= 6:
            continue
        sides = list(zip(corners, corners[1:] + corners[:1], strict=True))
        for start, end in combinations(corners, 2):
            drawn = any(start in line and end in line for line in arrangement.lines)
            if not drawn and any(_along(arrangement, (start, end), side) for side in sides):
                text = f"Join {start}{end}"
                lines = [*arrangement.lines, (start, end)]
                yield _joined(arrangement, lines, {start + end: text, end + start: text})


def _along(arrangement: Arrangement, one: tuple[str, str], other: tuple[str, str]) -> bool:
    """Whether two segments look parallel; what follows from that is proved later or not used."""
    (a, b), (c, d) = (arrangement.at[point] for point in one)
    (e, f), (g, h) = (arrangement.at[point] for point in other)
    u, v, x, y = c - a, d - b, g - e, h - f
    return abs(u * y - v * x) < LOOKS_PARALLEL * math.hypot(u, v) * math.hypot(x, y)


def _joined(arrangement: Arrangement, lines: list[tuple[str, ...]], words: dict[str, str]) -> Extended:
    grown = Arrangement(replace(arrangement.figure, lines=tuple(lines)), arrangement.drawing)
    return Extended(grown, tuple(instances(grown)), words)

"""Lines and points that a pupil draws in when the figure alone does not lead on."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import Drawing
from paperaudit.geometry.figure.figure import HIDDEN, OnCircle, Size
from paperaudit.geometry.theorems import instances
from paperaudit.geometry.theorems.theorem import Instance, lines_parallel
from paperaudit.maths.linear import LinearForm

MOST_POINTS = 14
"""Figures with more points than this get no constructions: the search would grow past its budget."""

MOST_JOINED = 7
"""Circles with more named points than this get no chords joined."""

INSIDE = 1e-6
MOST_PERPENDICULARS = 6
REACH = 3.0
"""How far, in its own length, a line is produced to meet another."""


@dataclass(frozen=True, slots=True)
class Extended:
    """An arrangement with points and lines drawn in, its instances, and the words for each new point."""

    arrangement: Arrangement
    found: tuple[Instance, ...]
    words: dict[str, str]


def with_crossings(arrangement: Arrangement) -> Extended | None:
    """Names the crossings of drawn segments that have no letter; None where there are none."""
    return _with_meets(arrangement, 0.0)


def with_extensions(arrangement: Arrangement) -> Extended | None:
    """Produces drawn lines until they meet, up to REACH of their length beyond either end; None where none do."""
    return _with_meets(arrangement, REACH)


def _with_meets(arrangement: Arrangement, beyond: float) -> Extended | None:
    _figure, at = arrangement.figure, dict(arrangement.at)
    letters = _free_letters(arrangement)
    lines = [list(line) for line in arrangement.lines]
    words = {}
    for i, j in combinations(range(len(lines)), 2):
        if arrangement.meet(i, j) or arrangement.parallel_way(i, j):
            continue
        spot = _crossing(arrangement, i, j, beyond)
        if spot and letters and len(at) < MOST_POINTS:
            name = letters.pop(0)
            at[name] = spot
            lines[i].append(name)
            lines[j].append(name)
            verb = "produced meet" if beyond else "cross"
            words[name] = f"Let {_ends(arrangement, i)} and {_ends(arrangement, j)} {verb} at {name}"
    if not words:
        return None
    return _extended(arrangement, tuple(tuple(line) for line in lines), at, words, ())


def with_parallels(arrangement: Arrangement) -> Extended | None:
    """Draws lines through points off a pair of parallels, parallel to them; None where there are no parallels."""
    at = dict(arrangement.at)
    letters = _free_letters(arrangement)
    lines = [tuple(line) for line in arrangement.lines]
    words: dict[str, str] = {}
    drawn: list[tuple[int, int, str]] = []
    for i, j in combinations(range(len(arrangement.lines)), 2):
        if not arrangement.parallel_way(i, j):
            continue
        for point in arrangement.figure.points:
            rays = arrangement.rays[point]
            new = not any(arrangement.parallel_way(ray.line, i) for ray in rays)
            already = any(name == point and arrangement.parallel_way(base, i) for base, _, name in drawn)
            if not rays or not new or already or len(letters) < 2 or len(at) + 2 > MOST_POINTS:
                continue
            ahead, behind = letters.pop(0), letters.pop(0)
            (x, y), (p, q) = at[lines[i][0]], at[lines[i][-1]]
            at[ahead] = (at[point][0] + p - x, at[point][1] + q - y)
            at[behind] = (at[point][0] - p + x, at[point][1] - q + y)
            lines.append((behind, point, ahead))
            drawn.append((i, len(lines) - 1, point))
            text = f"Draw {behind}{ahead} through {point} parallel to {_ends(arrangement, i)}"
            words.update({ahead: text, behind: text})
    if not words:
        return None
    extra = tuple(
        Instance("construction-parallel", (), LinearForm(), lines_parallel(base, line), words[lines[line][0]], 12)
        for base, line, _ in drawn
    )
    return _extended(arrangement, tuple(lines), at, words, extra)


def with_radii(arrangement: Arrangement) -> Extended | None:
    """Joins a lettered centre to the points of its circle; None where every radius is drawn."""
    lines = [tuple(line) for line in arrangement.lines]
    words: dict[str, str] = {}
    for condition in arrangement.figure.conditions:
        if not isinstance(condition, OnCircle) or condition.centre.startswith(HIDDEN):
            continue
        for point in condition.points:
            if not any(condition.centre in line and point in line for line in lines):
                lines.append((condition.centre, point))
                text = f"Join {condition.centre}{point}"
                words.update({condition.centre + point: text, point + condition.centre: text})
    if not words:
        return None
    return _extended(arrangement, tuple(lines), dict(arrangement.at), words, ())


def with_chords(arrangement: Arrangement) -> Extended | None:
    """Joins the points of every circle by chords; None where all are drawn or there are too many."""
    lines = [tuple(line) for line in arrangement.lines]
    words: dict[str, str] = {}
    for circle in arrangement.rounds.values():
        for start, end in combinations(sorted(circle.points), 2) if len(circle.points) <= MOST_JOINED else ():
            if not any(start in line and end in line for line in lines):
                lines.append((start, end))
                words.update({start + end: f"Join {start}{end}", end + start: f"Join {start}{end}"})
    if not words:
        return None
    return _extended(arrangement, tuple(lines), dict(arrangement.at), words, ())


def with_arcs(arrangement: Arrangement) -> Extended | None:
    """Takes arcs in degrees to help where the paper names none; None where there is no circle."""
    if arrangement.figure.arcs or not arrangement.rounds:
        return None
    grown = Arrangement(replace(arrangement.figure, arcs=True), arrangement.drawing)
    return Extended(grown, tuple(instances(grown)), {})


def with_perpendiculars(arrangement: Arrangement) -> Iterator[Extended]:
    """A perpendicular from a corner to a line that it is not on, one at a time, those with a foot inside first."""
    found: list[tuple[int, str, int, tuple[float, float]]] = []
    for index, line in enumerate(arrangement.lines):
        for point in arrangement.figure.points:
            foot = _foot(arrangement, point, line)
            if point not in line and not point.startswith(HIDDEN) and foot is not None:
                inside, spot = foot
                found.append((0 if inside else 1, point, index, spot))
    letters = _free_letters(arrangement)
    if not letters or len(arrangement.figure.points) >= MOST_POINTS:
        return
    for _, point, index, spot in sorted(found, key=lambda row: row[0])[:MOST_PERPENDICULARS]:
        name = letters[0]
        lines = [*map(list, arrangement.lines), [point, name]]
        lines[index].append(name)
        words = {name: f"Draw {point}{name} perpendicular to {_ends(arrangement, index)}"}
        at = {**arrangement.at, name: spot}
        grown = _extended(arrangement, tuple(map(tuple, lines)), at, words, ())
        rights = _right_angles_at(grown.arrangement, point, name)
        yield Extended(grown.arrangement, (*grown.found, *rights), words)


def _foot(arrangement: Arrangement, point: str, line: tuple[str, ...]) -> tuple[bool, tuple[float, float]] | None:
    """The foot of the perpendicular, and whether it is inside the line; None where it is a point that has a letter."""
    (a, b), (c, d), (x, y) = arrangement.at[line[0]], arrangement.at[line[-1]], arrangement.at[point]
    u, v = c - a, d - b
    share = ((x - a) * u + (y - b) * v) / (u * u + v * v)
    spot = (a + share * u, b + share * v)
    size = math.hypot(u, v)
    if not -REACH < share < 1 + REACH or any(math.dist(spot, other) < 1e-3 * size for other in arrangement.at.values()):
        return None
    return 0 < share < 1, spot


def _right_angles_at(arrangement: Arrangement, point: str, foot: str) -> Iterator[Instance]:
    upright = arrangement.ray(foot, point)
    for ray in arrangement.rays[foot]:
        if ray.line != upright.line:
            relation: LinearForm[Size] = LinearForm({arrangement.between(upright, ray): 1}, -90)
            yield Instance("perpendicular-given", (), relation, weight=8)


def _extended(
    arrangement: Arrangement,
    lines: tuple[tuple[str, ...], ...],
    at: dict[str, tuple[float, float]],
    words: dict[str, str],
    extra: tuple[Instance, ...],
) -> Extended:
    figure = replace(arrangement.figure, points=tuple(at), lines=lines)
    grown = Arrangement(figure, Drawing(at, arrangement.drawing.letters))
    return Extended(grown, (*instances(grown), *extra), words)


def _free_letters(arrangement: Arrangement) -> list[str]:
    return [name for name in "FGHJKLMNPQRSTUVWXYZ" if name not in arrangement.figure.points]


def _ends(arrangement: Arrangement, line: int) -> str:
    points = arrangement.lines[line]
    return points[0] + points[-1]


def _crossing(arrangement: Arrangement, i: int, j: int, beyond: float) -> tuple[float, float] | None:
    (a, b), (c, d) = (
        (arrangement.at[line[0]], arrangement.at[line[-1]]) for line in (arrangement.lines[i], arrangement.lines[j])
    )
    u, v = (b[0] - a[0], b[1] - a[1]), (d[0] - c[0], d[1] - c[1])
    cross = u[0] * v[1] - u[1] * v[0]
    if abs(cross) < 1e-12:
        return None
    w = (c[0] - a[0], c[1] - a[1])
    s, t = (w[0] * v[1] - w[1] * v[0]) / cross, (w[0] * u[1] - w[1] * u[0]) / cross
    low, high = INSIDE - beyond, 1 - INSIDE + beyond
    if low < s < high and low < t < high:
        return a[0] + s * u[0], a[1] + s * u[1]
    return None

"""Polygons with a circle in them: where a figure has one, and by what that is known."""

from collections.abc import Iterator
from dataclasses import dataclass

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import Balance
from paperaudit.geometry.figure.plane import side
from paperaudit.geometry.theorems.circles import circles
from paperaudit.geometry.theorems.tangents import tangents
from paperaudit.geometry.theorems.theorem import Predicate, Stated
from paperaudit.model.expression import DistanceOf

MOST_TRIANGLES = 60
"""Triangles that are looked at for having tangents of one circle as sides."""


@dataclass(frozen=True, slots=True)
class Tangential:
    """A polygon all of whose sides are as far from `centre` as the circle about it is wide."""

    centre: str
    corners: tuple[str, ...]
    premises: tuple[Predicate, ...]


def tangential(arrangement: Arrangement) -> Iterator[Tangential]:
    """Polygons with a circle in them, because their sides are tangents or because the paper says so."""
    yield from _by_tangents(arrangement)
    yield from _stated(arrangement)


def _by_tangents(arrangement: Arrangement) -> Iterator[Tangential]:
    shapes = [shape.points for shape, _ in arrangement.figure.shapes]
    triangles = [triangle.corners for triangle in arrangement.triangles[:MOST_TRIANGLES]]
    for circle in circles(arrangement):
        touching = {tangent.line: tangent.premise for tangent in tangents(arrangement, circle)}
        for corners in dict.fromkeys((*shapes, *triangles)) if len(touching) > 2 else ():
            lines = _sides(arrangement, corners)
            all_touch = len(set(lines)) == len(corners) and set(lines) <= touching.keys()
            if all_touch and circle.centre in arrangement.at and _within(arrangement, circle.centre, corners):
                premises = tuple(dict.fromkeys(touching[line] for line in lines))
                yield Tangential(circle.centre, corners, premises)


def _sides(arrangement: Arrangement, corners: tuple[str, ...]) -> list[int]:
    """The lines of the sides that are drawn."""
    pairs = zip(corners, corners[1:] + corners[:1], strict=True)
    return [arrangement.ray(*pair).line for pair in pairs if arrangement.joined(*pair)]


def _within(arrangement: Arrangement, point: str, corners: tuple[str, ...]) -> bool:
    """Whether a point lies on the same side of every side of a polygon."""
    spots = [arrangement.at[corner] for corner in corners]
    turns = [
        side(arrangement.at[point], start, end) > 0 for start, end in zip(spots, spots[1:] + spots[:1], strict=True)
    ]
    return all(turns) or not any(turns)


def _stated(arrangement: Arrangement) -> Iterator[Tangential]:
    """Polygons of which the paper names the incentre or the circle in it."""
    found: dict[tuple[str, int], dict[tuple[str, str], None]] = {}
    for condition in arrangement.figure.conditions:
        if isinstance(condition, Balance) and condition.reason == "incentre":
            for size in (condition.left, condition.right):
                if isinstance(size, DistanceOf):
                    found.setdefault((size.point, condition.label), {})[size.path] = None
    for (point, label), paths in found.items():
        corners = tuple(start for start, _ in paths)
        closed = list(paths) == list(zip(corners, corners[1:] + corners[:1], strict=True))
        drawn = point in arrangement.at and closed and len(corners) > 2
        if drawn and _within(arrangement, point, corners):
            yield Tangential(point, corners, (Stated(label),))

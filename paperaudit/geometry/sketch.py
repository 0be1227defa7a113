"""What a rough drawing settles: the order of points on a line and the way that each angle turns."""

import math
from dataclasses import replace
from itertools import combinations

from paperaudit.geometry.figure import Condition, DrawnTurn, Figure, InLine, Ordered

CLEAR_TURN = math.sin(math.radians(3))
"""Below 3° of turn, a hand-drawn angle does not say which way it opens."""

FROM_SKETCH = -1
"""The label of conditions that no given states."""


def settled_by_sketch(figure: Figure) -> Figure:
    """The figure with what its sketch settles added as conditions; nothing is measured on it.

    A stretched sketch settles the same things, since stretching keeps order and turning.
    """
    at = {name: (x, y) for name, x, y in figure.sketch}
    if len(at) < 3:
        return figure
    conditions = [_ordered(condition, at) for condition in figure.conditions]
    conditions += [
        turn for vertex in figure.points if vertex in at for turn in _turns(figure, vertex, at)
    ]
    return replace(figure, conditions=tuple(conditions))


def _ordered(condition: Condition, at: dict[str, tuple[float, float]]) -> Condition:
    if not isinstance(condition, InLine) or not all(point in at for point in condition.points):
        return condition
    far = max(combinations(condition.points, 2), key=lambda pair: math.dist(at[pair[0]], at[pair[1]]))
    middle = next(point for point in condition.points if point not in far)
    return Ordered(far[0], middle, far[1], condition.label)


def _turns(figure: Figure, vertex: str, at: dict[str, tuple[float, float]]) -> list[DrawnTurn]:
    found = []
    arms = [
        next((point for point in line if point != vertex and point in at), None)
        for line in figure.lines if vertex in line
    ]
    for arm, other in combinations([arm for arm in arms if arm], 2):
        u = (at[arm][0] - at[vertex][0], at[arm][1] - at[vertex][1])
        v = (at[other][0] - at[vertex][0], at[other][1] - at[vertex][1])
        sizes = math.hypot(*u) * math.hypot(*v)
        if sizes == 0:
            continue
        sine = (u[0] * v[1] - u[1] * v[0]) / sizes
        if abs(sine) >= CLEAR_TURN:
            found.append(DrawnTurn(vertex, arm, other, 1 if sine > 0 else -1, FROM_SKETCH))
    return found

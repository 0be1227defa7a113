"""The ink of a page stroke by stroke: which level strokes are mere rules, and what of the rest hangs together."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from paperaudit.model.place import Box
from paperaudit.readers.draft.drawing.plane import polar
from paperaudit.readers.draft.drawing.rounds import Bow, samples
from paperaudit.readers.draft.drawing.strokes import Dot, Shape, Straight, Strokes
from paperaudit.readers.draft.page import Path, Point

CELL = 9.0
"""Points: ink that is nearer than this hangs together."""
SPREAD = 6.0
"""Points between samples along a stroke."""
TOUCH = 1.5
"""Points between upright and level strokes that touch."""
MOST_PAIRS = 2_000_000
"""So many pairs of strokes are compared at most; what has more is no paper with rules and tables."""
LEVEL = 0.35
"""Points that a rule may rise or fall."""

Ink = Straight | Bow | Dot | Shape | Path


@dataclass
class Item:
    """One stroke with points along it."""

    ink: Ink
    kind: str
    points: list[Point]
    box: Box


def items_of(strokes: Strokes) -> Iterable[Item]:
    """Every stroke with points along it."""
    for one in strokes.straights:
        yield Item(one, "straights", _along(one), (*_low(one), *_high(one)))
    for bow in strokes.bows:
        steps = max(2, int(bow.length / SPREAD) + 1)
        points = [polar(bow.centre, bow.start + bow.sweep * at / steps, bow.radius) for at in range(steps + 1)]
        yield Item(bow, "bows", points, around(points))
    for dot in strokes.dots:
        yield Item(dot, "dots", [dot.centre], around([dot.centre]))
    for shape in strokes.shapes:
        yield Item(shape, "shapes", list(shape.corners), around(shape.corners))
    for kind in ("curves", "filled"):
        for path in getattr(strokes, kind):
            yield Item(path, kind, _outline(path), path.box)


def _along(one: Straight) -> list[Point]:
    steps = max(1, int(one.length / SPREAD) + 1)
    (ax, ay), (bx, by) = one.start, one.end
    return [(ax + (bx - ax) * at / steps, ay + (by - ay) * at / steps) for at in range(steps + 1)]


def _outline(path: Path) -> list[Point]:
    points = samples(path.pieces)
    found: list[Point] = [points[0]]
    for one, other in pairwise(points):
        found += _along(Straight(one, other, 0, 0))[1:]
    return found


def _low(one: Straight) -> Point:
    return min(one.start[0], one.end[0]), min(one.start[1], one.end[1])


def _high(one: Straight) -> Point:
    return max(one.start[0], one.end[0]), max(one.start[1], one.end[1])


def around(points: Sequence[Point]) -> Box:
    """The smallest box round points."""
    across, down = zip(*points, strict=True)
    return min(across), min(down), max(across), max(down)


def is_level(item: Item) -> bool:
    """Whether it is a level straight stroke."""
    return isinstance(item.ink, Straight) and abs(item.ink.start[1] - item.ink.end[1]) <= LEVEL


def without_rules(items: list[Item]) -> list[Item]:
    """The items without level strokes that touch nothing else: rules of fractions, answers, heads, underlines."""
    level = [item for item in items if is_level(item)]
    if len(level) * (len(items) - len(level)) > MOST_PAIRS:
        return items
    others = sorted((item for item in items if not is_level(item)), key=lambda item: item.box[1])
    tops = [item.box[1] for item in others]
    tallest = max((item.box[3] - item.box[1] for item in others), default=0.0)
    kept: list[Item] = []

    for item in level:
        left, top, right, bottom = item.box
        near = others[bisect_left(tops, top - tallest - 3) : bisect_right(tops, bottom + 3)]
        if any(_touches(other, (left - 2, top - 2, right + 2, bottom + 2)) for other in near):
            kept.append(item)
    return others + kept


def _touches(item: Item, box: Box) -> bool:
    if item.box[2] < box[0] or item.box[0] > box[2] or item.box[3] < box[1] or item.box[1] > box[3]:
        return False
    if isinstance(item.ink, Straight):
        return _meets_box(item.ink, box)
    return any(box[0] - 3 <= x <= box[2] + 3 and box[1] - 3 <= y <= box[3] + 3 for x, y in item.points)


def _meets_box(one: Straight, box: Box) -> bool:
    """Whether a stroke goes through a flat box."""
    (ax, ay), (bx, by) = sorted((one.start, one.end), key=lambda point: point[1])
    if by < box[1] or ay > box[3]:
        return False
    middle = (max(ay, box[1]) + min(by, box[3])) / 2
    across = ax + (bx - ax) * ((middle - ay) / (by - ay) if by > ay else 0.5)
    return box[0] <= across <= box[2] or (abs(by - ay) < 4 and max(ax, bx) >= box[0] and min(ax, bx) <= box[2])


def together(items: Sequence[Item]) -> list[list[Item]]:
    """The items in groups that hang together, by the cells that their ink touches."""
    parent = list(range(len(items)))

    def root(at: int) -> int:
        while parent[at] != at:
            parent[at] = parent[parent[at]]
            at = parent[at]
        return at

    cells: dict[tuple[int, int], int] = {}
    for number, item in enumerate(items):
        for x, y in item.points:
            cell = (int(x // CELL), int(y // CELL))
            if cell in cells:
                parent[root(number)] = root(cells[cell])
            else:
                cells[cell] = number
    for (across, down), number in cells.items():
        for neighbour in ((across + 1, down), (across, down + 1), (across + 1, down + 1), (across + 1, down - 1)):
            if neighbour in cells:
                parent[root(number)] = root(cells[neighbour])
    groups: dict[int, list[Item]] = {}
    for number, item in enumerate(items):
        groups.setdefault(root(number), []).append(item)
    return list(groups.values())


def nets_of(items: Sequence[Item]) -> list[list[Item]]:
    """The upright and level strokes in groups that touch each other: tables, frames, grids, rectangles."""
    level = [item for item in items if is_level(item)]
    upright = sorted((item for item in items if _is_upright(item)), key=lambda item: item.box[0])
    if len(level) * len(upright) > MOST_PAIRS:
        return []
    lefts = [item.box[0] for item in upright]
    group_of = {id(item): [item] for item in (*level, *upright)}
    for item in level:
        left, top, right, bottom = item.box
        for other in upright[bisect_left(lefts, left - TOUCH) : bisect_right(lefts, right + TOUCH)]:
            if other.box[1] - TOUCH <= bottom and other.box[3] + TOUCH >= top:
                _unite(group_of, item, other)
    found: list[list[Item]] = []
    seen: set[int] = set()
    for group in group_of.values():
        if len(group) > 3 and id(group) not in seen:
            seen.add(id(group))
            found.append(group)
    return found


def _unite(group_of: dict[int, list[Item]], one: Item, other: Item) -> None:
    larger, smaller = group_of[id(one)], group_of[id(other)]
    if larger is smaller:
        return
    if len(larger) < len(smaller):
        larger, smaller = smaller, larger
    larger += smaller
    for item in smaller:
        group_of[id(item)] = larger


def _is_upright(item: Item) -> bool:
    return isinstance(item.ink, Straight) and abs(item.ink.start[0] - item.ink.end[0]) <= LEVEL

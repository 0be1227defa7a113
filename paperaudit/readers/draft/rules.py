"""Thin horizontal strokes of a page: rules that may be fraction bars, roots, underlines or lines of tables."""

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from paperaudit.readers.draft.page import Path, Point

_LEVEL = 0.35
"""Points by which a rule may rise or fall."""
_SAME_LEVEL = 0.3
"""Points between rules that are one, one above or behind the other."""
_THICKEST = 2.2
"""Points; a filled box that is higher than this is no rule."""
_SHORTEST = 1.5
"""Points; what is shorter is a dot."""
_TOUCH = 1.6
"""Points between two ends that meet."""
_PALEST = 0.93
"""Lightness of a stroke that nobody sees."""


@dataclass(frozen=True, slots=True)
class Rule:
    """A horizontal stroke from `left` to `right`, `y` down the page, `thick` points thick.

    `hook` is how far left the sign of a root reaches that was drawn in one go with it, `foot` how far down;
    `framed` where an upright stroke meets one of its ends, as in tables and boxes.
    """

    left: float
    right: float
    y: float
    thick: float
    hook: float | None = None
    foot: float = 0.0
    framed: bool = False

    @property
    def width(self) -> float:
        """Its length."""
        return self.right - self.left


def rules_of(paths: Sequence[Path]) -> list[Rule]:
    """The rules among `paths`, each once, however often it was drawn, from the shortest to the longest."""
    seen = [path for path in paths if _visible(path)]
    flat = [rule for path in seen if (rule := _flat(path)) is not None]
    upright = _Uprights(stroke for path in seen for stroke in _upright(path))
    slanted = {_cell(ends[1]): ends for path in seen if (ends := _slanted(path)) is not None}
    roots = [root for path in seen if (root := _drawn_root(path)) is not None]
    joined = [replace(rule, framed=upright.meet(rule)) for rule in _joined(flat)]
    whole = roots + [_with_hook(rule, slanted) for rule in joined]
    return sorted(whole, key=lambda rule: (rule.width, rule.y, rule.left))


def by_level(rules: Iterable[Rule]) -> dict[int, list[Rule]]:
    """The rules by whole points down the page."""
    levels: dict[int, list[Rule]] = defaultdict(list)
    for rule in rules:
        levels[int(rule.y)].append(rule)
    return levels


def _visible(path: Path) -> bool:
    shown = [lightness for lightness in (path.stroke, path.fill) if lightness is not None]
    return bool(shown) and min(shown) < _PALEST


def _flat(path: Path) -> Rule | None:
    left, top, right, bottom = path.box
    if right - left < _SHORTEST or any(not piece.straight for piece in path.pieces):
        return None
    if path.straight and bottom - top < _LEVEL and path.stroke is not None:
        return Rule(left, right, (top + bottom) / 2, path.width)
    if path.fill is not None and bottom - top < min(_THICKEST, 0.5 * (right - left)):
        return Rule(left, right, (top + bottom) / 2, bottom - top)
    return None


def _joined(flat: Iterable[Rule]) -> list[Rule]:
    """Rules that were drawn in pieces or twice, as one."""
    levels: list[list[Rule]] = []
    for rule in sorted(flat, key=lambda one: (one.y, one.left, one.right)):
        if levels and rule.y - levels[-1][0].y < _SAME_LEVEL:
            levels[-1].append(rule)
        else:
            levels.append([rule])
    return [rule for level in levels for rule in _one_behind_another(level)]


def _one_behind_another(level: Sequence[Rule]) -> list[Rule]:
    joined: list[Rule] = []
    for rule in sorted(level, key=lambda one: (one.left, one.right)):
        last = joined[-1] if joined else None
        if last and rule.left <= last.right + _SAME_LEVEL:
            y, thick = min(last.y, rule.y), max(last.thick, rule.thick)
            joined[-1] = Rule(last.left, max(last.right, rule.right), y, thick)
        else:
            joined.append(rule)
    return joined


class _Uprights:
    """Vertical strokes by how far across they are, to ask whether a rule ends on one."""

    def __init__(self, strokes: Iterable[tuple[float, float, float]]) -> None:
        columns: dict[int, list[tuple[float, float]]] = defaultdict(list)
        for x, top, bottom in strokes:
            columns[round(x / _TOUCH)].append((top, bottom))
        self._columns: dict[int, list[tuple[float, float]]] = {}
        for column, spans in columns.items():
            whole: list[tuple[float, float]] = []
            for top, bottom in sorted(spans):
                if whole and top <= whole[-1][1] + _TOUCH:
                    whole[-1] = whole[-1][0], max(whole[-1][1], bottom)
                else:
                    whole.append((top, bottom))
            self._columns[column] = whole

    def meet(self, rule: Rule) -> bool:
        """Whether one of the rule's ends lies on a vertical stroke."""
        return any(self._at(round(x / _TOUCH) + aside, rule.y) for x in (rule.left, rule.right) for aside in (-1, 0, 1))

    def _at(self, column: int, y: float) -> bool:
        spans = self._columns.get(column, [])
        at = bisect_right(spans, y + _TOUCH, key=lambda span: span[0]) - 1
        return at >= 0 and spans[at][1] > y - _TOUCH


def _upright(path: Path) -> list[tuple[float, float, float]]:
    """A vertical stroke, or the sides of a drawn box: how far across, from where, to where."""
    left, top, right, bottom = path.box
    if any(not piece.straight for piece in path.pieces) or bottom - top < 3:
        return []
    if right - left < _THICKEST:
        return [((left + right) / 2, top, bottom)]
    box = len(path.pieces) == 4 and all(
        abs(one[0] - other[0]) < _LEVEL or abs(one[1] - other[1]) < _LEVEL
        for one, other in (piece.points for piece in path.pieces)
    )
    return [(left, top, bottom), (right, top, bottom)] if box and path.stroke is not None else []


def _slanted(path: Path) -> tuple[Point, Point] | None:
    """The foot and the top of a steep single stroke that leans to the right, as in the sign of a root."""
    if not path.straight:
        return None
    foot, top = sorted(path.ends, key=lambda end: -end[1])
    rise, run = foot[1] - top[1], top[0] - foot[0]
    return (foot, top) if rise > 3 and 0.3 < run < rise else None


def _cell(point: Point) -> tuple[int, int]:
    return round(point[0] / _TOUCH), round(point[1] / _TOUCH)


def _around(x: float, y: float) -> list[tuple[int, int]]:
    """The cells in which an end would meet the point."""
    across, down = _cell((x, y))
    return [(across + aside, down + below) for aside in (-1, 0, 1) for below in (-1, 0, 1)]


def _with_hook(rule: Rule, slanted: dict[tuple[int, int], tuple[Point, Point]]) -> Rule:
    for cell in _around(rule.left, rule.y):
        if cell in slanted:
            foot, top = slanted[cell]
            return replace(rule, hook=foot[0] - 0.4 * (foot[1] - top[1]), foot=foot[1])
    return rule


def _drawn_root(path: Path) -> Rule | None:
    """A root drawn in one go: (a tick,) down, up, and along the top to the right."""
    if path.closed or path.stroke is None or not 3 <= len(path.pieces) <= 5:
        return None
    if any(not piece.straight for piece in path.pieces):
        return None
    points = [path.pieces[0].points[0], *(piece.points[-1] for piece in path.pieces)]
    if points[0][0] > points[-1][0]:
        points.reverse()
    (corner_x, corner_y), (end_x, end_y) = points[-2], points[-1]
    level = abs(corner_y - end_y) < _LEVEL and end_x - corner_x > _SHORTEST
    foot = max(points, key=lambda point: point[1])
    rising = foot is points[-3] and corner_x > foot[0] and foot[1] - corner_y > 3
    highest = all(point[1] >= corner_y - _LEVEL for point in points)
    if not (level and rising and highest):
        return None
    return Rule(corner_x, end_x, corner_y, path.width, hook=min(point[0] for point in points), foot=foot[1])

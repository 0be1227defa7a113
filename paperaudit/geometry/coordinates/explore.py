"""Looks for every arrangement that the words allow: each angle that matters is asked to open either way."""

from collections.abc import Sequence
from itertools import permutations, product

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.chance import most_general
from paperaudit.geometry.coordinates.circle_order import arcs_of
from paperaudit.geometry.coordinates.realise import Drawing, realise
from paperaudit.geometry.figure.figure import DrawnTurn, EqualLengths, Figure, Ordered, SizeRelation
from paperaudit.geometry.figure.loosened import without_numbers
from paperaudit.geometry.figure.north import corners_by_north, has_north
from paperaudit.geometry.figure.sketch import clear_way
from paperaudit.model.expression import AngleOf
from paperaudit.model.quantity import centre_of_circle

MOST_TURNS = 8
"""Angles whose ways of opening tell arrangements apart."""
SAMPLE = range(200, 240)
"""Seeds of the drawings without numbers that show which combinations the words allow."""
TRIES = 12
"""Fresh starts for each combination that no drawing has yet."""
FRESH = 300
"""The first seed of those fresh starts."""
MOST_UNCLEAR = 8
MOST_ARRANGEMENTS = 8

LONG_LINE = 6
"""Lines with more points than this are taken to be in the order in which they were drawn."""

Ways = tuple[int, ...]


def arrangements(figure: Figure, drawings: Sequence[Drawing], complete: bool = False) -> list[Arrangement]:
    """One arrangement for each different signature, those that `drawings` show most often first.

    Each comes by the drawing of it in which the least is equal by chance.

    Every way of opening that the words allow is tried for the angles that the givens and the ask
    are about; where there is a sketch, only for those that it leaves unclear.
    """
    groups: dict[object, list[Arrangement]] = {}
    turns = turning_angles(figure)
    tried = [Arrangement(figure, drawing, complete) for drawing in drawings]
    tried += _opened_otherwise(figure, tried, turns, complete)
    for arrangement in tried:
        key = (arrangement.signature, _ways(arrangement, turns), _round_orders(arrangement) if figure.arcs else ())
        groups.setdefault(key, []).append(arrangement)
    first = tried[: len(drawings)]
    ordered = sorted(groups.values(), key=lambda group: sum(one in first for one in group), reverse=True)
    return [most_general(group) for group in ordered[:MOST_ARRANGEMENTS]]


def _round_orders(arrangement: Arrangement) -> tuple[tuple[str, ...], ...]:
    """The points of every circle in their order round it, mirror images alike."""
    orders = []
    for circle in arrangement.rounds.values():
        first = circle.points.index(min(circle.points))
        turned = circle.points[first:] + circle.points[:first]
        orders.append(min(turned, turned[:1] + turned[:0:-1]))
    return tuple(orders)


def _opened_otherwise(
    figure: Figure, known: list[Arrangement], turns: tuple[AngleOf, ...], complete: bool
) -> list[Arrangement]:
    """Drawings in which the angles that matter open in other combinations than in the known ones."""
    if len(turns) < (1 if has_north(figure) else 2):
        return []
    ways_of = _own_ways if figure.sketch or has_north(figure) else _ways
    allowed = (
        _unclear_ways(figure, turns, known[0])
        if figure.sketch
        else [ways_of(Arrangement(figure, drawing), turns) for drawing in realise(without_numbers(figure), SAMPLE)]
    )
    if has_north(figure) and not figure.sketch:
        allowed += [tuple(-way for way in ways) for ways in allowed]
    seen = {ways_of(arrangement, turns) for arrangement in known}
    missing = [ways for ways in dict.fromkeys(allowed) if ways not in seen]
    seeds = range(FRESH, FRESH + TRIES * len(missing))
    wanted = [ways for ways in missing for _ in range(TRIES)]
    drawings = realise(figure, seeds, (), turns, wanted) if missing else []
    return [Arrangement(figure, drawing, complete) for drawing in drawings]


def _unclear_ways(figure: Figure, turns: tuple[AngleOf, ...], known: Arrangement) -> list[Ways]:
    """The combinations that differ only in angles of which the sketch does not say which way they open."""
    drawn = {(turn.vertex, turn.arm, turn.other) for turn in figure.conditions if isinstance(turn, DrawnTurn)}
    either = [
        (1,) if (size.vertex, size.arm, size.other) in drawn or clear_way(figure, size) else (1, -1) for size in turns
    ]
    every = [
        tuple(way * flip for way, flip in zip(_own_ways(known, turns), flips, strict=True))
        for flips in product(*either)
    ]
    return every[:MOST_UNCLEAR]


def _ways(arrangement: Arrangement, turns: tuple[AngleOf, ...]) -> Ways:
    """Which way each angle opens, the first taken as +1 so that mirror images agree."""
    ways = _own_ways(arrangement, turns)
    return tuple(way * ways[0] for way in ways)


def _own_ways(arrangement: Arrangement, turns: tuple[AngleOf, ...]) -> Ways:
    return tuple(1 if arrangement.turn(size.vertex, size.arm, size.other) > 0 else -1 for size in turns)


def turning_angles(figure: Figure) -> tuple[AngleOf, ...]:
    """Angles that can open either way on their own: of those that relations, equal sides and the ask are about.

    Angles of one triangle of points open together, so one stands for them all. At most MOST_TURNS.
    """
    found = [
        size
        for condition in figure.conditions
        if isinstance(condition, SizeRelation)
        for size in condition.form.terms
        if isinstance(size, AngleOf)
    ]
    found += [
        angle
        for condition in figure.conditions
        if isinstance(condition, EqualLengths)
        for angle in _between_equal_sides(condition)
        if _has_line(figure, angle.vertex, angle.arm) and _has_line(figure, angle.vertex, angle.other)
    ]
    found[:0] = reversed(figure.fixed_names)
    found += [
        AngleOf(arc.start, centre_of_circle(arc.centre), arc.end)
        for condition in figure.conditions
        for arc in arcs_of(condition)
        if not arc.through
    ]
    found += corners_by_north(figure)
    independent: dict[frozenset[str], AngleOf] = {}
    for size in found:
        triple = frozenset(
            (size.vertex, _foremost(figure, size.vertex, size.arm), _foremost(figure, size.vertex, size.other))
        )
        if len(triple) == 3:
            independent.setdefault(triple, size)
    return tuple(independent.values())[:MOST_TURNS]


def _between_equal_sides(condition: EqualLengths) -> list[AngleOf]:
    ends = ({condition.first.start, condition.first.end}, {condition.second.start, condition.second.end})
    common = ends[0] & ends[1]
    if len(common) != 1:
        return []
    (vertex,) = common
    (arm,), (other,) = ends[0] - common, ends[1] - common
    return [AngleOf(arm, vertex, other)]


def _has_line(figure: Figure, start: str, end: str) -> bool:
    return any(start in line and end in line for line in figure.lines)


def _foremost(figure: Figure, vertex: str, point: str) -> str:
    """The point that stands for a line through `vertex`: its first other one, if the order on it is settled."""
    if not _has_line(figure, vertex, point):
        return point
    line = figure.lines[figure.line_of(vertex, point)]
    if len(line) > 2 and not order_is_settled(figure, line):
        return point
    return next(other for other in line if other != vertex)


def order_is_settled(figure: Figure, line: tuple[str, ...]) -> bool:
    """Whether the statements allow only one order of the points on a line, either way round; long lines count so."""
    stated = [
        (condition.first, condition.middle, condition.last)
        for condition in figure.conditions
        if isinstance(condition, Ordered) and {condition.first, condition.middle, condition.last} <= set(line)
    ]
    if len(line) > LONG_LINE:
        return True
    orders = [
        order
        for order in permutations(line)
        if order[0] < order[-1]
        and all(
            order.index(a) < order.index(b) < order.index(c) or order.index(a) > order.index(b) > order.index(c)
            for a, b, c in stated
        )
    ]
    return len(orders) == 1

"""Pairs the sizes that are printed in a figure with the angles and sides that they belong to."""

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from paperaudit.readers.draft.drawing.angles import AngleMark
from paperaudit.readers.draft.drawing.dimensions import Dimension
from paperaudit.readers.draft.drawing.lettering import LabelKind, Run
from paperaudit.readers.draft.drawing.matching import paired
from paperaudit.readers.draft.drawing.plane import apart, crossing, off_line, off_segment, towards, within
from paperaudit.readers.draft.drawing.sides import Span, spans_of
from paperaudit.readers.draft.drawing.spots import Ray, Skeleton, Spot
from paperaudit.readers.draft.page import Point

OUTSIDE = 45.0
"""Points that a label may stand outside its arc."""
BESIDE = 1.5
"""Sizes of print between a side and the nearest part of its label, at most."""
ON_IT = 0.2
"""Sizes of print between the middle of a label and the line that it is set into, at most."""
NARROW = 20.0
"""Degrees off the bisector at which a label may stand whose angle is narrower than it is wide."""
CORNER_REACH = 4.2
"""Sizes of print that a label without an arc may stand from its vertex."""
WANTED = 0.4
"""How much the cost of a single arc is less, since an arc without a label is rare."""
MARKED = 0.2
"""How much it is more where arcs or strokes already say that the angle equals another one."""
UNNAMED = 0.5
"""What an end without a letter costs a side that goes on beyond it."""
MOST = 2.4
"""The cost from which on a pairing is none."""
EITHER = 0.22
"""Two pairings whose costs differ by less could be either."""


@dataclass
class NumberedAngle:
    """A number that stands between two rays of a vertex."""

    vertex: Spot
    first: Ray
    second: Ray
    number: str
    run: Run


@dataclass
class Sizes:
    """Which label belongs to what; `left` belong to no angle and no side."""

    angles: list[tuple[Run, AngleMark]] = field(default_factory=list)
    corners: list[tuple[Run, AngleMark]] = field(default_factory=list)
    sides: list[tuple[Run, Span]] = field(default_factory=list)
    numbered: list[NumberedAngle] = field(default_factory=list)
    left: list[Run] = field(default_factory=list)
    doubts: list[str] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class _Target:
    kind: str
    what: AngleMark | Span | Dimension


def give_sizes(
    skeleton: Skeleton, marks: Sequence[AngleMark], runs: Sequence[Run], dimensions: Sequence[Dimension] = ()
) -> Sizes:
    """The labels among `runs` with what they measure; what cannot be told is a doubt."""
    found = Sizes()
    labels = [run for run in runs if run.kind in (LabelKind.ANGLE, LabelKind.LENGTH, LabelKind.SIZE)]
    found.numbered = _numbered(skeleton, labels)
    taken = {id(one.run) for one in found.numbered}
    labels = [label for label in labels if id(label) not in taken]
    targets = [_Target("arc", mark) for mark in marks if not mark.right]
    targets += [_Target("corner", mark) for mark in _unmarked(skeleton, marks)]
    targets += [_Target("side", span) for line in range(len(skeleton.lines)) for span in spans_of(skeleton, line)]
    targets += [_Target("dimension", one) for one in dimensions]
    costs = [[_cost(label, target, skeleton) for target in targets] for label in labels]
    columns = paired(costs, MOST)
    for label, column, row in zip(labels, columns, costs, strict=True):
        if column is None:
            found.left.append(label)
            continue
        target = targets[column]
        rival = _rival(row, column, targets, columns)
        if rival is not None:
            found.doubts.append(f"the label {label.text} could also belong to another {_word(rival)}")
        if isinstance(target.what, Dimension):
            found.sides.append((label, Span(-1, *target.what.points)))
        elif isinstance(target.what, Span):
            found.sides.append((label, target.what))
        elif target.kind == "arc":
            found.angles.append((label, target.what))
        else:
            found.corners.append((label, target.what))
    return found


def _word(target: _Target) -> str:
    return "side" if target.kind in ("side", "dimension") else "angle"


def _rival(
    row: Sequence[float], column: int, targets: Sequence[_Target], columns: Sequence[int | None]
) -> _Target | None:
    """Another thing without a label of its own that this label fits nearly as well."""
    for at, cost in enumerate(row):
        target = targets[at]
        if at == column or at in columns or cost >= min(MOST, row[column] + EITHER):
            continue
        return target
    return None


def _cost(label: Run, target: _Target, skeleton: Skeleton) -> float:
    if isinstance(target.what, Dimension):
        span = Span(-1, Spot(target.what.start), Spot(target.what.end))
        share, away = span.share(label.middle), _box_off(label, span)
        near = 0.25 < share < 0.75 and away <= BESIDE * label.size and label.kind is not LabelKind.ANGLE
        return 0.5 * away / label.size + abs(share - 0.5) if near else math.inf
    if isinstance(target.what, Span):
        return math.inf if label.kind is LabelKind.ANGLE else _beside(label, target.what, skeleton)
    if label.kind is LabelKind.LENGTH:
        return math.inf
    return _on_bisector(label, target.what, skeleton, target.kind == "arc")


def _on_bisector(label: Run, mark: AngleMark, skeleton: Skeleton, has_arc: bool) -> float:
    vertex, at, size = mark.vertex.at, label.middle, label.size
    away = math.dist(vertex, at)
    radius = max(mark.radii) if has_arc else 0.0
    turn = apart(towards(vertex, at), mark.bisector)
    across = away * math.sin(math.radians(min(turn, 90)))
    half = mark.sweep / 2
    if (has_arc and away > radius + OUTSIDE + label.half_width) or away < 0.35 * radius:
        return math.inf
    reach = max(CORNER_REACH, 1.4 / max(0.18, math.sin(math.radians(min(half, 90))))) * size + label.half_width
    if not has_arc and away > min(reach, OUTSIDE + label.half_width):
        return math.inf
    if turn > max(half + 6, NARROW) and across > 0.9 * size:
        return math.inf
    cost = 0.85 * across / (size + 0.5 * label.half_width)
    cost += 0.9 * max(0.0, away - radius - _extent(label, towards(vertex, at))) / OUTSIDE
    if not has_arc:
        cost += 0.75 + (0.5 if label.kind is LabelKind.SIZE else 0.0)
        cost += 0.6 if turn > half else 0.0
    else:
        cost += 0.25 if away < radius - 1 else 0.0
        cost += -WANTED if len(mark.radii) == 1 and not mark.strokes else MARKED
    return cost + 0.9 * _between(mark.vertex, at, skeleton)


def _extent(label: Run, direction: float) -> float:
    """How far a label reaches from its middle in a direction."""
    way = math.radians(direction)
    wide, high = label.half_width, 0.36 * label.size
    reaches = [reach / abs(part) for reach, part in ((wide, math.cos(way)), (high, math.sin(way))) if abs(part) > 1e-9]
    return min(reaches)


def _between(vertex: Spot, at: Point, skeleton: Skeleton) -> int:
    """How many lines that do not pass through a vertex lie between it and a label."""
    count = 0
    for number, line in enumerate(skeleton.lines):
        if number not in vertex.lines:
            met = crossing((vertex.at, at), line.ends)
            count += met is not None and 0.05 < met[1] < 0.97 and 0 <= met[2] <= 1
    return count


def _beside(label: Run, span: Span, skeleton: Skeleton) -> float:
    share = span.share(label.middle)
    if not 0.12 < share < 0.88:
        return math.inf
    away = _box_off(label, span)
    if away > BESIDE * label.size:
        return math.inf
    cost = 0.75 * away / label.size + 2.2 * max(0.0, abs(share - 0.5) - 0.03)
    inner = [end for end in (span.start, span.end) if not end.name and span.line not in end.ends]
    cost += UNNAMED * len(inner)
    if not _next_named(skeleton, span):
        cost += 0.3
    foot = (
        span.start.at[0] + share * (span.end.at[0] - span.start.at[0]),
        span.start.at[1] + share * (span.end.at[1] - span.start.at[1]),
    )
    for number, line in enumerate(skeleton.lines):
        if number != span.line:
            met = crossing((foot, label.middle), line.ends)
            cost += 0.8 if met is not None and 0.1 < met[1] < 0.9 and 0 <= met[2] <= 1 else 0.0
    if label.kind is LabelKind.SIZE:
        cost += 0.1
    return cost


def _next_named(skeleton: Skeleton, span: Span) -> bool:
    """Whether no spot with a letter lies between the ends of a span."""
    spots = skeleton.on_line(span.line)
    first, last = sorted((spots.index(span.start), spots.index(span.end)))
    return not any(spot.name for spot in spots[first + 1 : last])


def _box_off(label: Run, span: Span) -> float:
    """How far the edge of a label's letters lies from a span, 0 where the line runs through its middle."""
    x, y = label.middle
    if label.glyphs and not label.glyphs[0].upright:
        return max(0.0, off_segment((x, y), span.start.at, span.end.at) - 0.36 * label.size)
    off = off_line((x, y), span.start.at, span.end.at)
    if abs(off) < ON_IT * label.size:
        return 0.0
    # A line that runs through a part of a label is beside it by mistake rather than on purpose.
    turned = math.radians(towards(span.start.at, span.end.at))
    reach = label.half_width * abs(math.sin(turned)) + 0.36 * label.size * abs(math.cos(turned))
    return abs(abs(off) - reach)


def _sectors(skeleton: Skeleton, spot: Spot) -> Iterator[tuple[Ray, Ray]]:
    """The angles between neighbouring rays of a spot, clockwise."""
    rays = skeleton.rays(spot)
    for at, ray in enumerate(rays):
        yield ray, rays[(at + 1) % len(rays)]


def _unmarked(skeleton: Skeleton, marks: Sequence[AngleMark]) -> Iterator[AngleMark]:
    """The angles below 180° between neighbouring rays that no arc and no square marks."""
    lettered = sum(bool(spot.name) for spot in skeleton.spots) >= 3
    for spot in skeleton.spots:
        rays = skeleton.rays(spot)
        # In a figure with letters, an angle without an arc at a point without a letter is hardly meant.
        if len(rays) < 2 or (lettered and not spot.name):
            continue
        for first, second in _sectors(skeleton, spot):
            mark = AngleMark(spot, first, second, [0.0])
            known = any(one.vertex is spot and (one.first, one.second) == (first, second) for one in marks)
            if not known and 3 < mark.sweep < 178:
                yield mark


def _numbered(skeleton: Skeleton, labels: Sequence[Run]) -> list[NumberedAngle]:
    """Numbers from 1 on that stand between the rays of one vertex."""
    digits = [label for label in labels if re.fullmatch(r"[1-9]", label.text)]
    at_spots: dict[int, list[NumberedAngle]] = {}
    for digit in digits:
        near = sorted(
            (math.dist(spot.at, digit.middle), number)
            for number, spot in enumerate(skeleton.spots)
            if len(skeleton.rays(spot)) >= 3
        )
        if not near or near[0][0] > 3.0 * digit.size:
            continue
        spot = skeleton.spots[near[0][1]]
        way = towards(spot.at, digit.middle)
        for first, second in _sectors(skeleton, spot):
            if within(way, first.direction, (second.direction - first.direction) % 360):
                at_spots.setdefault(near[0][1], []).append(NumberedAngle(spot, first, second, digit.text, digit))
    found: list[NumberedAngle] = []
    for own in at_spots.values():
        numbers = sorted(one.number for one in own)
        if len(own) > 1 and numbers == [str(number) for number in range(1, len(own) + 1)]:
            found += own
    return found

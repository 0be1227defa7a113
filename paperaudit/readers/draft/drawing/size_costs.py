"""How badly a printed size fits an angle, a side or a dimension line, by where it stands."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from paperaudit.readers.draft.drawing.angles import AngleMark
from paperaudit.readers.draft.drawing.dimensions import Dimension
from paperaudit.readers.draft.drawing.label_kinds import LabelKind
from paperaudit.readers.draft.drawing.lettering import Run
from paperaudit.readers.draft.drawing.plane import apart, crossing, off_line, off_segment, towards
from paperaudit.readers.draft.drawing.sides import Span
from paperaudit.readers.draft.drawing.spots import Skeleton, Spot
from paperaudit.readers.draft.page import Point

OUTSIDE = 45.0
"""Points that a label may stand outside its arc."""
BESIDE = 1.5
"""Sizes of print between a side and the nearest part of its label, at most."""
ON_IT = 0.2
"""Sizes of print between the middle of a label and the line that it is set into, at most."""
INSIDE = 0.3
"""What a label costs that stands inside an outer side: sizes of outer sides stand outside as a rule."""
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
WITHOUT_ARC = 0.75
"""What a corner without an arc costs."""


@dataclass(frozen=True, slots=True)
class Target:
    """What a label may belong to: the angle of an arc, a corner without one, a side, a dimension line."""

    kind: str
    what: AngleMark | Span | Dimension


@dataclass(frozen=True, slots=True)
class Lean:
    """What a letter or a number without a unit costs at a side and in a corner without an arc."""

    side: float
    corner: float


def leaning(labels: Sequence[Run]) -> Lean:
    """Whether such sizes are rather angles or lengths, by what else is printed in the figure."""
    angles = any(label.kind is LabelKind.ANGLE for label in labels)
    lengths = any(label.kind is LabelKind.LENGTH or label.text.isdigit() for label in labels)
    if angles and not lengths:
        return Lean(0.35, 0.35)
    return Lean(0.0, 1.25) if lengths else Lean(0.0, 0.45)


def cost_of(label: Run, target: Target, skeleton: Skeleton, lean: Lean) -> float:
    """How badly a label fits a thing, infinite where it cannot be its size."""
    if isinstance(target.what, Dimension):
        span = Span(-1, Spot(target.what.start), Spot(target.what.end))
        share, away = span.share(label.middle), _box_off(label, span)
        near = 0.25 < share < 0.75 and away <= BESIDE * label.size and label.kind is not LabelKind.ANGLE
        return 0.5 * away / label.size + abs(share - 0.5) if near else math.inf
    if isinstance(target.what, Span):
        if label.kind is LabelKind.ANGLE:
            return math.inf
        return _beside(label, target.what, skeleton) + (lean.side if label.kind is LabelKind.SIZE else 0.0)
    if label.kind is LabelKind.LENGTH:
        return math.inf
    if target.kind == "arc":
        return _at_arc(label, target.what, skeleton)
    return _in_corner(label, target.what, skeleton, lean)


def _at_arc(label: Run, mark: AngleMark, skeleton: Skeleton) -> float:
    away, across, turn = _place(label, mark)
    radius = max(mark.radii)
    if not 0.35 * radius <= away <= radius + OUTSIDE + label.half_width:
        return math.inf
    if turn > max(mark.sweep / 2 + 6, NARROW) and across > 0.9 * label.size:
        return math.inf
    cost = 0.85 * across / (label.size + 0.5 * label.half_width)
    cost += 0.9 * max(0.0, away - radius - _extent(label, towards(mark.vertex.at, label.middle))) / OUTSIDE
    cost += 0.25 if away < radius - 1 else 0.0
    cost += -WANTED if len(mark.radii) == 1 and not mark.strokes else MARKED
    return cost + 0.9 * _between(mark.vertex, label.middle, skeleton)


def _in_corner(label: Run, mark: AngleMark, skeleton: Skeleton, lean: Lean) -> float:
    """Without an arc: on the bisector, where the angle is wide enough for the label or a little farther out."""
    away, across, turn = _place(label, mark)
    half = mark.sweep / 2
    room = label.size / max(0.15, math.sin(math.radians(min(half, 90))))
    if away > min(max(CORNER_REACH * label.size, 1.4 * room) + label.half_width, OUTSIDE + label.half_width):
        return math.inf
    if turn > half + 6 and across > 0.9 * label.size:
        return math.inf
    cost = 0.85 * across / (label.size + 0.5 * label.half_width)
    cost += 0.9 * max(0.0, away - room - _extent(label, towards(mark.vertex.at, label.middle))) / OUTSIDE
    cost += lean.corner if label.kind is LabelKind.SIZE else WITHOUT_ARC
    cost += 0.6 if turn > half else 0.0
    return cost + 0.9 * _between(mark.vertex, label.middle, skeleton)


def _place(label: Run, mark: AngleMark) -> tuple[float, float, float]:
    """How far a label stands from a vertex, how far off the bisector in points, and in degrees."""
    away = math.dist(mark.vertex.at, label.middle)
    turn = apart(towards(mark.vertex.at, label.middle), mark.bisector)
    return away, away * math.sin(math.radians(min(turn, 90))), turn


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
    return cost + (INSIDE if _inside_edge(label, span, skeleton) else 0.0)


def _inside_edge(label: Run, span: Span, skeleton: Skeleton) -> bool:
    """Whether a side is an outer one of its figure and a label stands on its inner side."""
    others = [off_line(spot.at, span.start.at, span.end.at) for spot in skeleton.spots]
    others = [off for off in others if abs(off) > 4]
    side = off_line(label.middle, span.start.at, span.end.at)
    return bool(others) and (min(others) > 0 or max(others) < 0) and side * others[0] > 0


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

"""Pairs the sizes that are printed in a figure with the angles and sides that they belong to."""

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from paperaudit.readers.draft.drawing.angles import AngleMark
from paperaudit.readers.draft.drawing.dimensions import Dimension
from paperaudit.readers.draft.drawing.label_kinds import LabelKind
from paperaudit.readers.draft.drawing.lettering import Run
from paperaudit.readers.draft.drawing.matching import paired
from paperaudit.readers.draft.drawing.plane import off_segment, towards, within
from paperaudit.readers.draft.drawing.sides import Span, spans_of
from paperaudit.readers.draft.drawing.size_costs import Target, cost_of, leaning
from paperaudit.readers.draft.drawing.spots import Ray, Skeleton, Spot

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


def give_sizes(
    skeleton: Skeleton, marks: Sequence[AngleMark], runs: Sequence[Run], dimensions: Sequence[Dimension] = ()
) -> Sizes:
    """The labels among `runs` with what they measure; what cannot be told is a doubt."""
    found = Sizes()
    labels = [run for run in runs if run.kind in (LabelKind.ANGLE, LabelKind.LENGTH, LabelKind.SIZE)]
    found.numbered = _numbered(skeleton, labels)
    taken = {id(one.run) for one in found.numbered}
    labels = [label for label in labels if id(label) not in taken]
    targets = [Target("arc", mark) for mark in marks if not mark.right]
    targets += [Target("corner", mark) for mark in _unmarked(skeleton, marks)]
    near = [line for line in range(len(skeleton.lines)) if _has_label(skeleton, line, labels)]
    targets += [Target("side", span) for line in near for span in spans_of(skeleton, line)]
    targets += [Target("dimension", one) for one in dimensions]
    lean = leaning(labels)
    costs = [[cost_of(label, target, skeleton, lean) for target in targets] for label in labels]
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


def _has_label(skeleton: Skeleton, line: int, labels: Sequence[Run]) -> bool:
    ends = skeleton.lines[line].ends
    return any(off_segment(label.middle, *ends) <= 2 * label.size + label.half_width for label in labels)


def _word(target: Target) -> str:
    return "side" if target.kind in ("side", "dimension") else "angle"


def _rival(
    row: Sequence[float], column: int, targets: Sequence[Target], columns: Sequence[int | None]
) -> Target | None:
    """Another thing without a label of its own that this label fits nearly as well."""
    for at, cost in enumerate(row):
        target = targets[at]
        if at == column or at in columns or cost >= min(MOST, row[column] + EITHER):
            continue
        return target
    return None


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

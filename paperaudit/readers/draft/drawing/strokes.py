"""What the pen drew, sorted by shape: straight strokes, round ones, dots, small filled shapes, other curves."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace

from paperaudit.readers.draft.drawing.plane import apart, towards
from paperaudit.readers.draft.drawing.rounds import Bow, bow_through, dot_of
from paperaudit.readers.draft.page import Path, Piece, Point

PALE = 0.97
"""Lightness from which on ink is not seen on white paper."""
THIN = 3.2
"""Points: a filled shape that is no thicker than this and much longer is a stroke."""
SLENDER = 5.0
"""How many times longer than thick such a shape is."""
HAIR, SLENDER_HAIR = 1.2, 2.5
"""The same for shapes so thin that they are dashes."""
SMALL = 16.0
"""Points: filled shapes up to this size may be heads of arrows."""
DOUBLE = 1.3
"""Points between the strokes of a double arc, at least."""
SMOOTH = 26.0
"""Degrees by which a curve turns at most where two of its pieces meet; a corner turns more."""
LEAST_PIECES = 3
"""So many straight pieces that turn little make a curve."""
FLAT = 0.01
"""A curve whose handles lie off its chord by less than this share of it is straight."""


@dataclass(frozen=True, slots=True)
class Straight:
    """A straight stroke; `path` is the index of the path that it is part of."""

    start: Point
    end: Point
    width: float
    path: int
    dashed: bool = False

    @property
    def length(self) -> float:
        """From end to end, in points."""
        return math.dist(self.start, self.end)


@dataclass(frozen=True, slots=True)
class Dot:
    """A small disc that marks a point."""

    centre: Point
    radius: float
    path: int


@dataclass(frozen=True, slots=True)
class Shape:
    """A small filled shape or a short curve that is no arc: its corners in order; `open` where it is not filled."""

    corners: tuple[Point, ...]
    path: int
    open: bool = False


@dataclass
class Strokes:
    """All that was drawn, by shape; `curves` are the paths with a curve that is no part of a circle."""

    straights: list[Straight] = field(default_factory=list)
    bows: list[Bow] = field(default_factory=list)
    dots: list[Dot] = field(default_factory=list)
    shapes: list[Shape] = field(default_factory=list)
    curves: list[Path] = field(default_factory=list)
    filled: list[Path] = field(default_factory=list)


def is_seen(path: Path) -> bool:
    """Whether a path leaves ink on white paper.

    >>> is_seen(Path((Piece(((0, 0), (9, 0))),), (0, 0, 9, 0), 0, stroke=1.0))
    False
    """
    return any(ink is not None and ink < PALE for ink in (path.stroke, path.fill))


def strokes_of(paths: Iterable[Path]) -> Strokes:
    """The shapes that `paths` draw."""
    found = Strokes()
    before: Path | None = None
    for path in paths:
        if is_seen(path):
            _take(path, found)
            before = path
        elif before is not None and _is_gap(path, before):
            found.bows += [_inner(bow, path) for bow in found.bows if bow.path == before.index]
    return found


def _is_gap(path: Path, before: Path) -> bool:
    """Whether white ink drawn over the path before makes a double stroke of it."""
    return path.stroke is not None and path.width < before.width and path.pieces == before.pieces


def _inner(bow: Bow, path: Path) -> Bow:
    """The inner stroke of a double arc."""
    return replace(bow, radius=bow.radius - max(DOUBLE, path.width), path=path.index)


def _take(path: Path, found: Strokes) -> None:
    stroked = path.stroke is not None and path.stroke < PALE
    filled = path.fill is not None and path.fill < PALE
    size = max(path.box[2] - path.box[0], path.box[3] - path.box[1])
    dot = dot_of(path, filled)
    if dot is not None:
        found.dots.append(Dot(*dot, path.index))
        return
    if filled and not stroked:
        rule = thin_rule(path)
        if rule is not None:
            found.straights.append(rule)
            return
    if filled and size <= SMALL and not _is_wedge(path) and not is_lozenge(path) and len(path.pieces) <= 14:
        found.shapes.append(Shape(tuple(piece.points[0] for piece in path.pieces), path.index))
        return
    if filled and not stroked and not _is_wedge(path):
        found.filled.append(path)
        return
    if size <= SMALL and _is_outline_of_head(path):
        found.shapes.append(Shape(tuple(piece.points[0] for piece in path.pieces), path.index))
        return
    runs = runs_of(path.pieces)
    if size <= SMALL / 2 and len(runs) > 1 and not all(piece.straight for piece in path.pieces) and not _is_wedge(path):
        found.shapes.append(Shape((*(piece.points[0] for piece in path.pieces), path.ends[1]), path.index, True))
        return
    for run in runs:
        _take_run(path, run, found, filled, size)


def _take_run(path: Path, run: Sequence[Piece], found: Strokes, filled: bool, size: float) -> None:
    if len(run) == 1 and _is_flat(run[0]):
        found.straights.append(Straight(run[0].points[0], run[0].points[-1], path.width, path.index, path.dashed))
        return
    bow = bow_through(run, path.index, path.width, filled)
    if bow is not None:
        found.bows.append(bow)
    elif all(piece.straight for piece in run):
        found.straights.extend(
            Straight(piece.points[0], piece.points[-1], path.width, path.index, path.dashed) for piece in run
        )
    elif size <= SMALL:
        found.shapes.append(Shape((*(piece.points[0] for piece in run), run[-1].points[-1]), path.index, True))
    else:
        found.curves.append(path)


def runs_of(pieces: Sequence[Piece]) -> list[list[Piece]]:
    """The pieces of a path between its corners: a smooth curve is one run, a straight side is one of its own."""
    runs: list[list[Piece]] = []
    for piece in pieces:
        if runs and _goes_on(runs[-1][-1], piece):
            runs[-1].append(piece)
        else:
            runs.append([piece])
    # A round path may begin in the middle of a curve.
    ends_meet = math.dist(pieces[-1].points[-1], pieces[0].points[0]) < 0.05
    if len(runs) > 1 and ends_meet and _goes_on(runs[-1][-1], runs[0][0]):
        runs[0] = runs.pop() + runs[0]
    return [part for run in runs for part in _curved_or_single(run)]


def _goes_on(one: Piece, other: Piece) -> bool:
    return (
        apart(_leaving(one), _setting_out(other)) <= SMOOTH
        and (one.straight == other.straight)
        and math.dist(one.points[-1], other.points[0]) < 0.05
    )


def _curved_or_single(run: list[Piece]) -> list[list[Piece]]:
    """Straight pieces that turn too seldom to be a curve are sides each."""
    if run[0].straight and len(run) < LEAST_PIECES:
        return [[piece] for piece in run]
    return [run]


def _setting_out(piece: Piece) -> float:
    start = piece.points[0]
    return towards(start, next((point for point in piece.points[1:] if math.dist(start, point) > 1e-6), start))


def _leaving(piece: Piece) -> float:
    end = piece.points[-1]
    return towards(next((point for point in piece.points[-2::-1] if math.dist(end, point) > 1e-6), end), end)


def _is_flat(piece: Piece) -> bool:
    if piece.straight:
        return True
    start, *handles, end = piece.points
    chord = math.dist(start, end)
    turned = [
        abs((end[0] - start[0]) * (point[1] - start[1]) - (end[1] - start[1]) * (point[0] - start[0]))
        for point in handles
    ]
    return chord > 0 and max(turned) <= FLAT * chord * chord


def thin_rule(path: Path) -> Straight | None:
    """The stroke that a filled shape of four corners amounts to where it is thin and long, else None."""
    if not all(piece.straight for piece in path.pieces):
        return None
    corners = [path.pieces[0].points[0]]
    for piece in path.pieces:
        if math.dist(piece.points[1], corners[-1]) > 0.01 and math.dist(piece.points[1], corners[0]) > 0.01:
            corners.append(piece.points[1])
    if len(corners) != 4:
        return None
    a, b, c, d = corners
    sides = [(math.dist(a, b) + math.dist(c, d)) / 2, (math.dist(b, c) + math.dist(d, a)) / 2]
    if sides[0] < sides[1]:
        a, b, c, d = b, c, d, a
    thick = min(sides)
    if thick > THIN or max(sides) < (SLENDER if thick > HAIR else SLENDER_HAIR) * thick:
        return None
    if abs(math.dist(a, b) - math.dist(c, d)) > 2 * thick:
        return None
    return Straight(_middle(a, d), _middle(b, c), thick, path.index)


def _middle(one: Point, other: Point) -> Point:
    return (one[0] + other[0]) / 2, (one[1] + other[1]) / 2


def _is_wedge(path: Path) -> bool:
    """Whether a filled path is a sector: two straight sides and a curve between their ends."""
    runs = runs_of(path.pieces)
    flat = [run for run in runs if len(run) == 1 and _is_flat(run[0])]
    round_runs = [run for run in runs if run not in flat]
    return len(round_runs) == 1 and len(flat) in (1, 2) and bow_through(round_runs[0], 0, 0, True) is not None


def is_lozenge(path: Path) -> bool:
    """Whether a path has four corners and opposite sides alike: a square at a right angle, no head of an arrow."""
    corners = [piece.points[0] for piece in path.pieces if math.dist(piece.points[0], piece.points[-1]) > 0.05]
    if len(corners) != 4 or not path.closed or not all(piece.straight for piece in path.pieces):
        return False
    a, b, c, d = corners
    off = math.hypot(a[0] + c[0] - b[0] - d[0], a[1] + c[1] - b[1] - d[1])
    sides = math.dist(a, b), math.dist(b, c)
    return off < 0.1 * max(sides) and min(sides) > 0.5 * max(sides)


def _is_outline_of_head(path: Path) -> bool:
    """Whether a small closed path has three or four corners and is no square: an arrow's head that is not filled."""
    straight = all(piece.straight for piece in path.pieces)
    return path.closed and straight and len(path.pieces) in (3, 4) and not is_lozenge(path)

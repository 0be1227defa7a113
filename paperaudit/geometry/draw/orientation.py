"""Turns a drawing as it is to stand on the page: like its sketch, else on a natural base, first letter on top."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations, pairwise

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import Drawing
from paperaudit.geometry.draw.pieces import Turned, scales, separate, side_by_side
from paperaudit.geometry.draw.sketched import as_sketched, flipped
from paperaudit.geometry.figure.figure import EqualLengths, ParallelPair, RightAngle, SameWay, SizeRelation, TangentAt
from paperaudit.geometry.figure.plane import Spot
from paperaudit.geometry.figure.shapes import kite_axis
from paperaudit.model.expression import AngleOf, LengthOf
from paperaudit.model.fact import Path
from paperaudit.model.quantity import centre_of_circle

BASE_OF_ISOSCELES = 3.0
PARALLEL_BASE = 3.0
LONGEST = 2.0
ABOVE = 2.5
LETTERS_IN_ORDER = 0.8
FIRST_ON_TOP = 1.2
LANDSCAPE = 1.0
UPRIGHT_KITE = 6.0
PERPENDICULAR = 1.0
NAMED_RIGHTWARDS = 0.1
FIRST_PARALLEL_ON_TOP = 0.8
FIRST_SIDE_LEVEL = 1.0
LINE_OF_CENTRES = 3.0
TANGENTS_ALIKE = 2.0
"""The weights of what makes a good base: whose line it is, what stands above it, how the letters run."""

TELLING = 1e-4
"""Differences below this share of the drawing's size say nothing: drawings are not exact to the last figure."""
STANDING = ("equal-sides-given", "equilateral-sides")
"""Reasons for equal sides that make the third side of their triangle a base; diagonals of a rhombus are none."""


def oriented(arrangement: Arrangement, at: Mapping[str, Spot]) -> dict[str, Spot]:
    """The points turned, and mirrored where that serves; y still runs up.

    Figures that no line joins are turned one by one and stand side by side, unless a condition other
    than one of sizes ties one's place to another's; one that would be too small to read is drawn larger.
    """
    points = {name: complex(*spot) for name, spot in at.items()}
    sketch = {name: complex(x, y) for name, x, y in arrangement.figure.sketch if name in points}
    if len(sketch) > 1:
        return _spots(as_sketched(arrangement, points, sketch))
    pieces = separate(arrangement.figure)
    if len(pieces) == 1:
        return _spots(_on_base(arrangement, points))
    drawn = [Arrangement(piece, Drawing({name: at[name] for name in piece.points}, {})) for piece in pieces]
    turned = [_on_base(one, {name: points[name] for name in one.at}) for one in drawn]
    return _spots(side_by_side(turned, pieces, scales(arrangement.figure, at)))


def enlarges(arrangement: Arrangement, at: Mapping[str, Spot]) -> bool:
    """Whether `oriented` draws one of several figures larger than the others, since it would be too small to read."""
    sketched = sum(name in at for name, *_ in arrangement.figure.sketch) > 1
    return not sketched and max(scales(arrangement.figure, at)) > 1.0


def _spots(points: Turned) -> dict[str, Spot]:
    return {name: (spot.real, spot.imag) for name, spot in points.items()}


@dataclass(frozen=True, slots=True)
class _Base:
    """A direction to be made level, the points on its line (none for the axis of a kite), and what it is worth."""

    way: complex
    line: tuple[str, ...]
    worth: float


def _on_base(arrangement: Arrangement, points: Turned) -> Turned:
    """The best of all ways to stand on one of the lines."""
    best: tuple[float, Turned] | None = None
    for base in _bases(arrangement, points):
        for mirrored in (False, True):
            for way in (flipped(base.way, mirrored), -flipped(base.way, mirrored)):
                turn = abs(way) / way
                turned = {name: flipped(spot, mirrored) * turn for name, spot in points.items()}
                score = base.worth + _stand(arrangement, turned, base.line)
                if best is None or score > best[0] + 1e-6:
                    best = (score, turned)
    return best[1] if best else points


def _bases(arrangement: Arrangement, points: Turned) -> list[_Base]:
    lengths = [abs(points[line[-1]] - points[line[0]]) for line in arrangement.lines]
    longest = max(lengths, default=1.0) or 1.0
    worth = [LONGEST * length / longest for length in lengths]
    for condition in arrangement.figure.conditions:
        if isinstance(condition, ParallelPair | SameWay):
            for number in _lines_of(arrangement, condition.first, condition.second):
                worth[number] = max(worth[number], PARALLEL_BASE + LONGEST * lengths[number] / longest)
        elif isinstance(condition, EqualLengths) and condition.reason in STANDING:
            side = {condition.first.start, condition.first.end}
            ends = side ^ {condition.second.start, condition.second.end}
            for number, line in enumerate(arrangement.lines):
                if len(ends) == 2 and ends <= set(line) and not side <= set(line):
                    worth[number] += BASE_OF_ISOSCELES
        elif right := _right_arms(condition):
            for number in _lines_of(arrangement, *right):
                worth[number] += PERPENDICULAR
    for number, line in enumerate(arrangement.lines):
        worth[number] += LINE_OF_CENTRES * (len(set(line) & {*map(centre_of_circle, arrangement.circles)}) > 1)
    found = [
        _Base(points[line[-1]] - points[line[0]], line, value)
        for line, value in zip(arrangement.lines, worth, strict=True)
    ]
    found += [_Base(points[c] - points[a], (), UPRIGHT_KITE) for a, c in _measured_diagonals(arrangement)]
    kites = [shape for shape, _ in arrangement.figure.shapes if shape.kind == "kite"]
    for shape in kites:
        first, _, third, _ = kite_axis(shape, ())
        found.append(_Base((points[third] - points[first]) * 1j, (), UPRIGHT_KITE))
    found += [
        _Base(points[centre] - points[start], (), TANGENTS_ALIKE + LONGEST) for start, centre in _axes(arrangement)
    ]
    return found


def _measured_diagonals(arrangement: Arrangement) -> Iterator[Path]:
    """The diagonal of a rhombus whose length is given: level or upright it is easy to measure beside."""
    lengths = [
        {size.start, size.end}
        for condition in arrangement.figure.conditions
        if isinstance(condition, SizeRelation)
        for size in condition.form.terms
        if isinstance(size, LengthOf)
    ]
    for shape, _ in arrangement.figure.shapes:
        if shape.kind in ("rhombus", "square"):
            a, b, c, d = shape.points
            yield from (pair for pair in ((a, c), (b, d)) if set(pair) in lengths)


def _right_arms(condition: object) -> tuple[Path, ...]:
    """The two lines that a condition puts at right angles."""
    match condition:
        case RightAngle(first, second):
            return first, second
        case SizeRelation(form, "angle") if len(form.terms) == 1:
            ((size, share),) = form.terms.items()
            if isinstance(size, AngleOf) and form.constant == -90 * share:
                return (size.arm, size.vertex), (size.other, size.vertex)
    return ()


def _axes(arrangement: Arrangement) -> Iterator[Path]:
    """From a point with two tangents to the centre of their circle."""
    touching = [one for one in arrangement.figure.conditions if isinstance(one, TangentAt)]
    for one, other in combinations(touching, 2):
        ends = set(one.path) & set(other.path)
        if one.key == other.key and one.at != other.at and ends:
            yield min(ends), one.centre


def _lines_of(arrangement: Arrangement, *paths: Path) -> list[int]:
    """The drawn lines among some paths; a shape's own conditions may name diagonals that are not drawn."""
    return [number for number, line in enumerate(arrangement.lines) for path in paths if set(path) <= set(line)]


def _stand(arrangement: Arrangement, turned: Turned, line: tuple[str, ...]) -> float:
    """How well a drawing stands on a level line: what is above it, how its letters run, its shape on the page."""
    spots = turned.values()
    left, right = min(spot.real for spot in spots), max(spot.real for spot in spots)
    low, top = min(spot.imag for spot in spots), max(spot.imag for spot in spots)
    height = max(top - low, 1e-9)
    floor = turned[line[0]].imag if line else low
    heights = [spot.imag - floor for name, spot in turned.items() if name not in line]
    above = sum(heights) / max(max(map(abs, heights)), 1e-9) / len(heights) if heights else 0.0
    order = sorted(line, key=lambda name: turned[name].real)
    steps = list(pairwise(order))
    in_order = sum(first < second for first, second in steps) / len(steps) if steps else 0.0
    shape = min(1.0, (right - left) / (1.2 * height)) if height > 1e-9 * (right - left) else 0.5
    score = ABOVE * above + LETTERS_IN_ORDER * in_order + LANDSCAPE * shape + _reads_well(arrangement, turned)
    if _is_trapezium(arrangement):  # stands on its longer side, wherever its letters begin
        return score
    first = turned[_first_letter(arrangement)].imag
    return score + FIRST_ON_TOP * (first > top - 0.02 * height)


def _reads_well(arrangement: Arrangement, turned: Turned) -> float:
    """Parallels named from left to right, the first on top; a quadrilateral's first side level, to the right."""
    score = 0.0
    least = TELLING * max(abs(one - two) for one, two in combinations(turned.values(), 2))
    for condition in arrangement.figure.conditions:
        if isinstance(condition, ParallelPair | SameWay):
            (a, b), (c, d) = ((turned[name] for name in path) for path in (condition.first, condition.second))
            score += NAMED_RIGHTWARDS * (((b - a).real > least) + ((d - c).real > least))
            if not _is_trapezium(arrangement):
                score += FIRST_PARALLEL_ON_TOP * ((a + b - c - d).imag > least)
    for shape, _ in arrangement.figure.shapes:
        if len(shape.points) == 4:
            way = turned[shape.points[1]] - turned[shape.points[0]]
            score += FIRST_SIDE_LEVEL * (way.real > 0 and abs(way.imag) < 0.02 * way.real)
    return score


def _is_trapezium(arrangement: Arrangement) -> bool:
    return any(shape.kind == "trapezium" for shape, _ in arrangement.figure.shapes)


def _first_letter(arrangement: Arrangement) -> str:
    shapes = [point for shape, _ in arrangement.figure.shapes for point in shape.points]
    return min(shapes or arrangement.figure.points)

"""What a drawing measures where a claim fails, in words."""

import math
from itertools import pairwise

from paperaudit.geometry.claims.circle_claims import off_circle
from paperaudit.geometry.claims.claim_forms import Claim
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import Angular, Size, length
from paperaudit.geometry.theorems.theorem import (
    AngleIs,
    AnglesEqual,
    Concyclic,
    Greater,
    IsDiameter,
    IsShape,
    LinesParallel,
    LinesPerpendicular,
    OnOneLine,
    SegmentsEqual,
    Touches,
    TrianglesAlike,
)
from paperaudit.maths.write import write
from paperaudit.model.expression import AngleOf, Expression, LengthOf, leaves, with_leaves


def measured_text(claim: Claim, arrangement: Arrangement) -> str:
    """The sizes that show that a claim fails: AB ≈ 5.2 and CD ≈ 6.1."""
    match claim.predicate:
        case SegmentsEqual(one, two) | AnglesEqual(one, two):
            return f"{_size(one, arrangement)} and {_size(two, arrangement)}"
        case Greater(one, two):
            return f"{_size(one, arrangement)} and {_size(two, arrangement)}"
        case AngleIs(angle, _):
            return _size(angle, arrangement)
        case LinesParallel(first, second) | LinesPerpendicular(first, second):
            return _between(arrangement, first, second)
        case TrianglesAlike(first, second, congruent):
            return _ratios(arrangement, first, second, congruent)
        case IsShape(kind, points):
            return _shape(arrangement, kind, points)
        case OnOneLine((a, b, c)):
            return _size(AngleOf(a, b, c), arrangement)
        case Concyclic() | IsDiameter() | Touches():
            sizes = [_size(size, arrangement) for size in off_circle(claim.predicate, arrangement)]
            return " and ".join(sizes) or f"{claim.text} fails"
    if claim.left is not None and claim.right is not None:
        return f"{_size(claim.left, arrangement)} and {_size(claim.right, arrangement)}"
    return f"{claim.text} fails"


def _size(size: Expression | Size, arrangement: Arrangement) -> str:
    named = with_leaves(size, lambda leaf: arrangement.name(leaf) if _is_drawn_angle(leaf, arrangement) else leaf)  # type: ignore[arg-type]
    value = arrangement.measured(size)
    unit = "°" if all(isinstance(leaf, Angular) for leaf in leaves(size)) else ""
    return f"{write(named)} ≈ {value:.4g}{unit}" if not _is_number(size) else f"{write(size)}"


def _is_number(size: Expression | Size) -> bool:
    return not any(part in "ABCDEFGHIJKLMNOPQRSTUVWXYZ" for part in write(size))


def _is_drawn_angle(size: Expression, arrangement: Arrangement) -> bool:
    return (
        isinstance(size, AngleOf)
        and arrangement.joined(size.vertex, size.arm)
        and arrangement.joined(size.vertex, size.other)
    )


def _between(arrangement: Arrangement, first: int, second: int) -> str:
    turn = (arrangement.bearings[first] - arrangement.bearings[second]) % 180
    one, two = (f"{line[0]}{line[-1]}" for line in (arrangement.lines[first], arrangement.lines[second]))
    between = min(turn, 180 - turn)
    return f"{one} and {two} make an angle of about {between:.4g}°" if between > 1e-3 else f"{one} ∥ {two}"


def _ratios(arrangement: Arrangement, first: tuple[str, ...], second: tuple[str, ...], congruent: bool) -> str:
    """The pair of sides that is most off."""
    pairs = [
        (length(*one), length(*two))
        for one, two in zip(pairwise((*first, first[0])), pairwise((*second, second[0])), strict=True)
    ]
    if congruent:
        one, two = max(pairs, key=lambda pair: abs(math.log(_ratio(arrangement, pair))))
        return f"{_size(one, arrangement)} and {_size(two, arrangement)}"
    least, most = (pick(pairs, key=lambda pair: _ratio(arrangement, pair)) for pick in (min, max))
    texts = [f"{write(one)}/{write(two)} ≈ {_ratio(arrangement, (one, two)):.4g}" for one, two in (least, most)]
    return " and ".join(texts)


def _ratio(arrangement: Arrangement, pair: tuple[LengthOf, LengthOf]) -> float:
    return arrangement.measured(pair[0]) / arrangement.measured(pair[1])


def _shape(arrangement: Arrangement, kind: str, points: tuple[str, ...]) -> str:
    """Sides that should be equal and are not, or the angle that is not right."""
    a, b, c, d = points
    opposite = ((length(a, b), length(c, d)), (length(b, c), length(d, a)))
    beside = ((length(a, b), length(d, a)), (length(b, c), length(c, d)))
    pairs = opposite if kind in ("parallelogram", "rectangle") else (*opposite, *beside)
    if kind == "kite":
        pairs = beside
    elif kind == "isosceles trapezium":
        pairs = ((length(b, c), length(d, a)), (length(a, c), length(b, d)))
    one, two = max(pairs, key=lambda pair: abs(math.log(_ratio(arrangement, pair))))
    if abs(math.log(_ratio(arrangement, (one, two)))) > 1e-4:
        return f"{_size(one, arrangement)} and {_size(two, arrangement)}"
    return _size(AngleOf(d, a, b), arrangement)

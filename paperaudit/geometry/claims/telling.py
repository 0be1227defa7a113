"""The sizes whose values show that a claim fails: two sides that should be equal, two ratios, an angle."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations, pairwise

from paperaudit.geometry.beyond.amounts import Value
from paperaudit.geometry.beyond.find_further import attempted
from paperaudit.geometry.beyond.further_answers import answer_of
from paperaudit.geometry.claims.circle_claims import circle_pairs
from paperaudit.geometry.claims.claim_forms import Claim
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.freedom import holds_still
from paperaudit.geometry.figure.figure import Balance, length
from paperaudit.geometry.figure.notation import Notation
from paperaudit.geometry.figure.sketch import FROM_SKETCH
from paperaudit.geometry.linear.examine import Settled
from paperaudit.geometry.theorems.right_triangles import RIGHT
from paperaudit.geometry.theorems.theorem import (
    AngleIs,
    AnglesEqual,
    Concyclic,
    IsDiameter,
    IsShape,
    LinesParallel,
    SegmentsEqual,
    Touches,
    TrianglesAlike,
)
from paperaudit.maths.write import write
from paperaudit.model.derivation import Derivation, Step, StepKind
from paperaudit.model.expression import Expression, LengthOf, Letter, Measured, Number, Quotient
from paperaudit.model.fact import Given

APART = 1e-6
"""Share by which two worked values differ that are not the same."""
MOST_TRIED = 3


@dataclass(frozen=True, slots=True)
class Shown:
    """The lines that work out what holds in a claim's place, and that in words."""

    derivation: Derivation
    instead: str


def shown_by_values(one: Settled, claim: Claim, givens: tuple[Given, ...], notation: Notation) -> Shown | None:
    """The values of two sizes that the claim says to be equal and that are not; None where they are not derived."""
    pairs = [pair for pair in telling_pairs(one.arrangement, claim) if _differ(one.arrangement, pair)]
    for pair in pairs[:MOST_TRIED]:
        asked = [item for item in pair if not _is_number(item)]
        if not all(_is_still(one.arrangement, item) for item in asked):
            continue
        attempt = attempted(one, asked, givens, notation)
        if attempt is None or not _apart(attempt.values, pair):
            continue
        texts = [_text(item, value, notation) for item, value in zip(asked, attempt.values, strict=True)]
        instead = ", ".join(texts)
        said = " and ".join(texts)
        last = Step(f"{said}, so {claim.text} does not hold", StepKind.CONCLUSION, None, tuple(texts), "", "")
        used = attempt.derivation
        return Shown(Derivation((*used.steps, last), used.confirmed_by, used.givens_used), instead)
    return None


def _is_still(arrangement: Arrangement, item: Expression) -> bool:
    """Whether the givens hold a size still: one that can change has no value to be derived."""
    value = Fraction(arrangement.measured(item)).limit_denominator(10**9)
    return holds_still(arrangement, Balance(item, Number(value), FROM_SKETCH))


def _text(item: Expression, value: Value, notation: Notation) -> str:
    answer = answer_of(item, value, notation, False)
    return answer.text if isinstance(item, Letter) else f"{write(item)} = {answer.text}"


def _apart(values: tuple[Value, ...], pair: tuple[Expression, Expression]) -> bool:
    if len(values) == 1:
        return True
    one, two = (value.number for value in values)
    return abs(one - two) > APART * (abs(one) + abs(two))


def _is_number(item: Expression) -> bool:
    return isinstance(item, Number) or (isinstance(item, Measured) and isinstance(item.amount, Number))


def _differ(arrangement: Arrangement, pair: tuple[Expression, Expression]) -> bool:
    one, two = (arrangement.measured(item) for item in pair)
    return abs(one - two) > APART * (abs(one) + abs(two))


def telling_pairs(arrangement: Arrangement, claim: Claim) -> Iterator[tuple[Expression, Expression]]:
    """Sizes that are equal where the claim holds, those most telling first."""
    match claim.predicate:
        case SegmentsEqual(one, two) | AnglesEqual(one, two):
            yield one, two
        case AngleIs(angle, degrees):
            yield angle, Number(degrees)
        case LinesParallel(first, second):
            yield from _cuts(arrangement, first, second)
        case TrianglesAlike(first, second, congruent):
            sides = [
                (length(*one), length(*two))
                for one, two in zip(pairwise((*first, first[0])), pairwise((*second, second[0])), strict=True)
            ]
            if congruent:
                yield from sorted(sides, key=lambda pair: -abs(math.log(_ratio(arrangement, pair))))
            else:
                yield from ((Quotient(*one), Quotient(*two)) for one, two in combinations(sides, 2))
            corners = zip(_corners(arrangement, first), _corners(arrangement, second), strict=True)
            yield from corners
        case IsShape(kind, points):
            yield from _sides(arrangement, kind, points)
        case Concyclic() | IsDiameter() | Touches():
            yield from circle_pairs(claim.predicate, arrangement)
    if claim.left is not None and claim.right is not None:
        yield claim.left, claim.right


def _corners(arrangement: Arrangement, points: tuple[str, ...]) -> list[Expression]:
    a, b, c = points
    return [arrangement.corner(*corner) for corner in ((c, a, b), (a, b, c), (b, c, a))]


def _ratio(arrangement: Arrangement, pair: tuple[LengthOf, LengthOf]) -> float:
    return arrangement.measured(pair[0]) / arrangement.measured(pair[1])


def _sides(arrangement: Arrangement, kind: str, points: tuple[str, ...]) -> Iterator[tuple[Expression, Expression]]:
    a, b, c, d = points
    opposite = [(length(a, b), length(c, d)), (length(b, c), length(d, a))]
    beside = [(length(a, b), length(d, a)), (length(b, c), length(c, d))]
    if kind == "isosceles trapezium":
        yield length(b, c), length(d, a)
        return
    if kind != "kite":
        yield from opposite
    if kind in ("rhombus", "square", "kite"):
        yield from beside
    if kind in ("rectangle", "square"):
        yield from ((arrangement.corner(*corner), Number(RIGHT)) for corner in ((d, a, b), (a, b, c)))
    if kind in ("parallelogram", "rhombus"):
        yield arrangement.corner(d, a, b), arrangement.corner(b, c, d)


def _cuts(arrangement: Arrangement, first: int, second: int) -> Iterator[tuple[Expression, Expression]]:
    """The ratios in which two lines from one point are cut."""
    third = [
        line
        for line in range(len(arrangement.lines))
        if line not in (first, second) and arrangement.meet(first, line) and arrangement.meet(second, line)
    ]
    for one, two in combinations(third, 2):
        apex = arrangement.meet(one, two)
        if apex is None or apex in (*arrangement.lines[first], *arrangement.lines[second]):
            continue
        near = [arrangement.meet(first, line) or "" for line in (one, two)]
        far = [arrangement.meet(second, line) or "" for line in (one, two)]
        if arrangement.measured(length(apex, near[0])) > arrangement.measured(length(apex, far[0])):
            near, far = far, near
        if any(d == b for d, b in zip(near, far, strict=True)):
            continue
        ratios = [Quotient(length(apex, d), length(d, b)) for d, b in zip(near, far, strict=True)]
        yield ratios[0], ratios[1]

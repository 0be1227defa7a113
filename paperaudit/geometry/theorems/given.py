"""What the paper states outright, in the same form as a theorem, so that the search takes it as a first line."""

from collections.abc import Iterator

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import EqualLengths, ParallelPair, RayBetween, RightAngle, Size, SizeRelation
from paperaudit.geometry.theorems.parallels import parallel_text
from paperaudit.geometry.theorems.theorem import Instance, SegmentsEqual, Stated, Theorem, lines_parallel
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import LengthOf

_PLAIN = ("given", "equal-sides-given", "perpendicular-given", "radii")
"""Reasons of facts that the paper states in so many words: they cost a pupil no line of their own."""


def _weight(reason: str) -> int:
    return 1 if reason in _PLAIN else 6


def equal_text(first: LengthOf, second: LengthOf) -> str:
    """AB = AC."""
    return f"{first.start}{first.end} = {second.start}{second.end}"


def _stated(arrangement: Arrangement) -> Iterator[Instance]:
    figure = arrangement.figure
    for condition in figure.conditions:
        stated = (Stated(condition.label),)
        match condition:
            case ParallelPair(first, second, _, _, reason):
                one, two = figure.line_of(*first), figure.line_of(*second)
                if one != two:
                    about = parallel_text(arrangement, one, two, arrangement.parallel_way(one, two) or 1)
                    yield Instance(reason, stated, LinearForm(), lines_parallel(one, two), about, _weight(reason))
            case EqualLengths(first_length, second_length, _, reason):
                ends = sorted((first_length, second_length), key=lambda size: (size.start, size.end))
                about = equal_text(first_length, second_length)
                yield Instance(reason, stated, LinearForm(), SegmentsEqual(*ends), about, _weight(reason))
            case SizeRelation(form, _, _, reason):
                yield Instance(reason, stated, arrangement.canonical_form(form), weight=_weight(reason))
            case RightAngle(first, second, _, reason):
                yield from _right_angles(arrangement, condition, reason)


def _bisected(arrangement: Arrangement) -> Iterator[Instance]:
    """Each half of a bisected angle is half of the whole."""
    for condition in arrangement.figure.conditions:
        if not isinstance(condition, RayBetween) or not condition.halves:
            continue
        vertex, stated = condition.vertex, (Stated(condition.label),)
        whole: LinearForm[Size] = LinearForm.of(arrangement.corner(condition.arm, vertex, condition.other))
        for arm in (condition.arm, condition.other):
            twice: LinearForm[Size] = LinearForm({arrangement.corner(arm, vertex, condition.point): 2})
            yield Instance("angle-bisector", stated, twice - whole, weight=10, skill="angle bisectors")


def _right_angles(arrangement: Arrangement, condition: RightAngle, reason: str) -> Iterator[Instance]:
    one = arrangement.figure.line_of(*condition.first)
    two = arrangement.figure.line_of(*condition.second)
    vertex = arrangement.meet(one, two)
    if vertex is None:
        return
    about = f"{''.join(condition.first)} ⊥ {''.join(condition.second)}"
    for ray in arrangement.rays[vertex]:
        for other in arrangement.rays[vertex]:
            if ray.line == one and other.line == two:
                relation: LinearForm[Size] = LinearForm({arrangement.between(ray, other): 1}, -90)
                yield Instance(reason, (Stated(condition.label),), relation, about=about, weight=_weight(reason))


THEOREMS = (
    Theorem(
        "given",
        "What the paper states holds.",
        "",
        "the paper itself",
        _stated,
        fires=("triangle ABC", "∠ABC = 40°"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "angle-bisector",
        "A bisector halves its angle.",
        "angle bisectors",
        "Euclid I.9 (definition of bisecting)",
        _bisected,
        fires=("triangle ABC", "D lies on BC", "AD bisects ∠BAC"),
        silent=("triangle ABC", "D lies on BC", "segment AD"),
    ),
)

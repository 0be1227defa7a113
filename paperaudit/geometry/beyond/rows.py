"""Theorem instances as rows of slopes: which sizes a theorem ties together at the drawing's values."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from paperaudit.geometry.beyond.slopes import Slopes, value_and_slopes
from paperaudit.geometry.beyond.standing import functions_in
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.theorems.theorem import (
    AngleIs,
    AnglesEqual,
    Balanced,
    Equation,
    Greater,
    Instance,
    Predicate,
    Proportional,
    SegmentsEqual,
    angles_equal,
    proportional,
    segments_equal,
)
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import (
    AngleOf,
    BearingOf,
    Expression,
    LengthOf,
    Number,
    Product,
    Quotient,
    leaves,
)

HOLDS = 1e-6
"""Share of its own size by which the two sides of a theorem may differ on a drawing that is exact to 1e-9."""
USUAL = (30, 45, 60, 90, 120, 135, 150)
NOTHING = 1e-8
"""Share of the largest term below which a slope counts as none."""
AWAY = 1e-3
"""Share of its own by which the first size is moved to tell a slope that is 0 here from one that is 0 everywhere."""

Source = Instance | Equation


@dataclass(frozen=True, slots=True, eq=False)
class Row:
    """An instance with the slopes of what it sets to 0; a row without `source` only observes what is known.

    Where `conclusion` is given it holds once the premises do and the terms are known to cancel. A size
    with the slope 0 (sin ∠A at 90°) has to be known, and cannot be found from the row.
    """

    source: Source | None
    terms: Slopes
    premises: tuple[Predicate, ...]
    conclusion: Predicate | None = None
    weight: int = 10
    rounded: frozenset[Size] = frozenset()
    """Angles that only a rounded value of their sine, cosine or tangent would give."""


def sides_of(predicate: Predicate) -> tuple[Expression, Expression] | None:
    """The two expressions that a predicate says to be equal, None for one that says something else."""
    match predicate:
        case SegmentsEqual(first, second) | AnglesEqual(first, second):
            return first, second
        case AngleIs(size, degrees):
            return size, Number(degrees)
        case Balanced(left, right):
            return left, right
        case Proportional((a, b, c, d)):
            return Product((a, d), "×"), Product((b, c), "×")
    return None


def rows_of(arrangement: Arrangement, sources: Iterable[Source]) -> list[Row]:
    """The rows of all instances that are true of the drawing, and of the equalities that they ask for."""
    rows = [row for source in sources for row in _rows(arrangement, source)]
    wanted = dict.fromkeys(premise for row in rows for premise in row.premises)
    rows += [row for predicate in wanted if (row := observed(arrangement, predicate))]
    equal = dict.fromkeys(row.conclusion for row in rows if isinstance(row.conclusion, SegmentsEqual))
    return rows + [row for predicate in equal for row in _same_length(arrangement, predicate)]


def _same_length(arrangement: Arrangement, equal: SegmentsEqual) -> Iterator[Row]:
    """Equal segments have the same length, whether or not the paper names it."""
    if equal.first != equal.second:
        relation = LinearForm[Size].of(equal.first) - LinearForm[Size].of(equal.second)
        yield from _rows(arrangement, Instance("equal-sides", (equal,), relation, weight=3))


def observed(arrangement: Arrangement, predicate: Predicate) -> Row | None:
    """The row that lets a predicate hold because the values of its sizes are known to agree."""
    if isinstance(predicate, Greater):
        return _compared(arrangement, predicate)
    sides = sides_of(predicate)
    terms = sides and _difference(arrangement, *sides)
    return None if terms is None else Row(None, terms, (), predicate, 3)


def _compared(arrangement: Arrangement, greater: Greater) -> Row | None:
    """The row of an inequality: it holds once all its sizes are numbers."""
    one, slopes = value_and_slopes(greater.left, arrangement.measured)
    two, others = value_and_slopes(greater.right, arrangement.measured)
    if one - two <= HOLDS * (abs(one) + abs(two)):
        return None
    return Row(None, {**slopes, **others}, (), greater, 3)


def _rows(arrangement: Arrangement, source: Source) -> Iterator[Row]:
    if isinstance(source, Equation):
        terms = _difference(arrangement, source.left, source.right)
        if terms is not None:
            yield Row(source, terms, source.premises, None, source.weight, _rounded(arrangement, source))
            same = _same_ratio(source)
            if same:
                yield Row(source, {}, source.premises, same, source.weight)
        return
    terms = _linear(arrangement, source)
    if terms is None:
        return
    yield Row(source, terms, source.premises, source.conclusion, source.weight)
    equal = _equality(source)
    if equal is None:
        return
    if source.conclusion is None:
        yield Row(source, {}, source.premises, equal, source.weight)
    elif equal != source.conclusion:
        yield Row(source, {}, (*source.premises, equal), source.conclusion, source.weight)


def _linear(arrangement: Arrangement, instance: Instance) -> Slopes | None:
    form = instance.relation
    total, size_of = float(form.constant), abs(float(form.constant))
    terms: Slopes = {}
    for size, coefficient in form.terms.items():
        part = float(coefficient) * arrangement.measured(size)
        terms[size] = float(coefficient)
        total += part
        size_of += abs(part)
    return terms if abs(total) <= HOLDS * size_of else None


def _difference(arrangement: Arrangement, left: Expression, right: Expression) -> Slopes | None:
    """The slopes of left − right without those that cancel; None where the two differ on the drawing."""
    try:
        one, slopes = value_and_slopes(left, arrangement.measured)
        two, others = value_and_slopes(right, arrangement.measured)
    except (ValueError, OverflowError, ZeroDivisionError):
        return None
    if abs(one - two) > HOLDS * (abs(one) + abs(two)):
        return None
    weights = {size: abs(slope) for size, slope in slopes.items()}
    for size, slope in others.items():
        slopes[size] = slopes.get(size, 0.0) - slope
        weights[size] = weights.get(size, 0.0) + abs(slope)
    heaviest = max((weight * _scale(arrangement, size) for size, weight in weights.items()), default=0.0)
    flat = [size for size, slope in slopes.items() if abs(slope) * _scale(arrangement, size) <= NOTHING * heaviest]
    turning = _turning(arrangement, left, right) if flat else {}
    slopes.update(dict.fromkeys(flat, 0.0))
    return {size: slope for size, slope in slopes.items() if slope or turning.get(size)}


def _scale(arrangement: Arrangement, size: Size) -> float:
    """How large a size is; a bearing may be 000° and is taken by the full turn."""
    return 360.0 if isinstance(size, BearingOf) else arrangement.measured(size)


def _turning(arrangement: Arrangement, left: Expression, right: Expression) -> Slopes:
    """The slopes of left − right near by, where those of sizes that truly cancel are still 0.

    A slope may be 0 here alone, as that of sin ∠A is at 90°: such a size has to be known.
    """
    shares = {
        size: 1 + AWAY * (number + 1) for number, size in enumerate(dict.fromkeys((*leaves(left), *leaves(right))))
    }

    def moved(size: Size) -> float:
        return arrangement.measured(size) * shares.get(size, 1.0)

    try:
        slopes, others = value_and_slopes(left, moved)[1], value_and_slopes(right, moved)[1]
    except (ValueError, OverflowError, ZeroDivisionError):
        return {}
    heaviest = max((abs(slope) * moved(size) for size, slope in (*slopes.items(), *others.items())), default=0.0)
    total = {size: slopes.get(size, 0.0) - others.get(size, 0.0) for size in (*slopes, *others)}
    return {size: slope for size, slope in total.items() if abs(slope) * moved(size) > NOTHING * heaviest}


def _equality(instance: Instance) -> Predicate | None:
    """What an instance says where its relation is that two angles, or two lengths, are equal."""
    form = instance.relation
    if form.constant or len(form.terms) != 2:
        return None
    (one, first), (two, second) = form.terms.items()
    if first != -second:
        return None
    if isinstance(one, AngleOf) and isinstance(two, AngleOf):
        return angles_equal(one, two)
    if isinstance(one, LengthOf) and isinstance(two, LengthOf):
        return segments_equal((one.start, one.end), (two.start, two.end))
    return None


def _rounded(arrangement: Arrangement, source: Equation) -> frozenset[Size]:
    """The angles that stand in a function and are none of those whose functions a pupil knows exactly."""
    inside = [part.argument for side in (source.left, source.right) for part in functions_in(side)]
    return frozenset(
        size
        for size in inside
        if isinstance(size, AngleOf) and all(abs(arrangement.measured(size) - usual) > HOLDS for usual in USUAL)
    )


def _same_ratio(equation: Equation) -> Proportional | None:
    match equation.left, equation.right:
        case Quotient(LengthOf() as a, LengthOf() as b), Quotient(LengthOf() as c, LengthOf() as d):
            return proportional(a, b, c, d)
    return None

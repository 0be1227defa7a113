"""Shapes whose name leaves a choice (isosceles, but which sides?): every reading is examined."""

import math
from fractions import Fraction
from itertools import permutations, product

from paperaudit.model.derivation import Case, Derived, Impossible, NotDetermined, NotRead, Outcome, Several
from paperaudit.model.expression import AngleAt, AngleOf, LengthOf, Measured, Number, Relation
from paperaudit.model.fact import Fact, Given, Holds, Parallel, Perpendicular, Shape

MOST_VARIANTS = 9
LEANS = 15
"""Degrees by which one leg of a right trapezium leans more than the other in a sketch that shows which is upright."""
HALF_OF_EQUILATERAL = (30, 60, 90)


Sketch = tuple[tuple[str, float, float], ...]


def variants(givens: tuple[Given, ...], sketch: Sketch = ()) -> list[tuple[Given, ...]]:
    """The givens with every open choice settled in each way; the givens alone where nothing is open.

    A sketch settles which sides of a kite are meant to be equal, which of a trapezium parallel.
    """
    facts = [fact for given in givens for fact in given.facts]
    choices: list[list[tuple[int, Fact | tuple[Fact, ...]]]] = []
    for label, given in enumerate(givens):
        for fact in given.facts:
            if isinstance(fact, Shape) and len(fact.points) == 3:
                if "30-60-90" in fact.qualities:
                    choices.append([(label, choice) for choice in _with_angles(fact, facts, sketch)])
                    continue
                if "isosceles" in fact.qualities and not _has_equal_sides(fact, facts):
                    choices.append([(label, choice) for choice in _equal_pairs(fact)])
                if "right-angled" in fact.qualities and not _has_right_angle(fact, facts):
                    choices.append([(label, choice) for choice in _right_corners(fact)])
            if isinstance(fact, Shape) and fact.kind == "trapezium" and not _has_parallel_sides(fact, facts):
                choices.append([(label, choice) for choice in _drawn_best(_parallel_pairs(fact), sketch)])
            upright = isinstance(fact, Shape) and fact.kind == "trapezium" and "right-angled" in fact.qualities
            if isinstance(fact, Shape) and upright and not _has_right_angle(fact, facts):
                choices.append([(label, choice) for choice in _right_legs(fact, facts, sketch)])
            if isinstance(fact, Shape) and fact.kind == "kite" and not _has_equal_sides(fact, facts):
                choices.append([(label, choice) for choice in _drawn_best(_kite_pairs(fact), sketch)])
    readings = []
    for choice in list(product(*choices))[:MOST_VARIANTS]:
        extra: dict[int, tuple[Fact, ...]] = {}
        for label, chosen in choice:
            added = chosen if isinstance(chosen, tuple) else (chosen,)
            extra[label] = (*extra.get(label, ()), *added)
        readings.append(
            tuple(
                Given(given.text, given.facts + extra.get(label, ()), given.origin, given.place)
                for label, given in enumerate(givens)
            )
        )
    return readings


def _with_angles(shape: Shape, facts: list[Fact], sketch: Sketch) -> list[tuple[Fact, ...]]:
    """Which corner of a 30-60-90 triangle has which angle: as stated ones say, then as a sketch comes nearest to."""
    ways = [dict(zip(shape.points, order, strict=True)) for order in permutations(HALF_OF_EQUILATERAL)]
    stated = _stated_angles(shape, facts)
    fitting = [way for way in ways if all(way[corner] == size for corner, size in stated.items())] or ways
    at = {name: (x, y) for name, x, y in sketch}
    if set(shape.points) <= set(at):
        fitting = [min(fitting, key=lambda way: sum(abs(_drawn(at, c, shape) - way[c]) for c in shape.points))]
    return [tuple(_angle_is(b, a, c, way[a]) for a, b, c in _corners(shape)) for way in fitting]


def _angle_is(arm: str, vertex: str, other: str, degrees: int) -> Fact:
    return Holds(Relation(AngleOf(arm, vertex, other), "=", Measured(Number(Fraction(degrees)), "°")))


def _drawn(at: dict[str, tuple[float, float]], corner: str, shape: Shape) -> float:
    """The angle of a sketched triangle at a corner, in degrees."""
    one, two = (point for point in shape.points if point != corner)
    return _angle_at(at, corner, one, two)


def _angle_at(at: dict[str, tuple[float, float]], corner: str, arm: str, other: str) -> float:
    x, y = at[corner]
    one, two = (math.atan2(at[p][1] - y, at[p][0] - x) for p in (arm, other))
    turn = abs(math.degrees(one - two)) % 360
    return min(turn, 360 - turn)


def _stated_angles(shape: Shape, facts: list[Fact]) -> dict[str, Fraction]:
    """The angles of a triangle that other statements give in degrees, by their corner."""
    found: dict[str, Fraction] = {}
    for fact in facts:
        match fact:
            case Holds(Relation(AngleAt(vertex), "=", Measured(Number(size), "°"))) if vertex in shape.points:
                found[vertex] = size
            case Holds(Relation(AngleOf(arm, vertex, other), "=", Measured(Number(size), "°"))):
                if {arm, vertex, other} == set(shape.points):
                    found[vertex] = size
            case Perpendicular(first, second) if len({*first, *second}) == 3:
                if {*first, *second} == set(shape.points):
                    found[next(point for point in first if point in second)] = Fraction(90)
    return found


def _corners(shape: Shape) -> list[tuple[str, str, str]]:
    a, b, c = shape.points
    return [(a, b, c), (b, c, a), (c, a, b)]


def _equal_pairs(shape: Shape) -> list[Fact]:
    return [Holds(Relation(LengthOf(a, b), "=", LengthOf(a, c))) for a, b, c in _corners(shape)]


def _parallel_pairs(shape: Shape) -> list[Fact]:
    a, b, c, d = shape.points
    return [Parallel(((a, b), (d, c))), Parallel(((a, d), (b, c)))]


def _kite_pairs(shape: Shape) -> list[Fact]:
    a, b, c, d = shape.points
    return [Holds(Relation(LengthOf(x, y), "=", LengthOf(x, z))) for x, y, z in ((a, b, d), (b, a, c))]


def _drawn_best(choices: list[Fact], sketch: Sketch) -> list[Fact]:
    """The choice that a sketch comes nearest to, every choice where there is no sketch of all its points."""
    at = {name: (x, y) for name, x, y in sketch}
    misfits = [_misfit(choice, at) for choice in choices]
    if any(misfit is None for misfit in misfits):
        return choices
    return [min(zip(misfits, range(len(choices)), choices, strict=True), key=lambda row: (row[0] or 0.0, row[1]))[2]]


def _misfit(choice: Fact, at: dict[str, tuple[float, float]]) -> float | None:
    """How far a sketch is from parallel sides (radians) or from equal ones (share); None if a point is not drawn."""
    match choice:
        case Parallel(((a, b), (c, d))) if {a, b, c, d} <= set(at):
            one, two = (math.atan2(at[q][1] - at[p][1], at[q][0] - at[p][0]) for p, q in ((a, b), (c, d)))
            return abs(math.sin(one - two))
        case Holds(Relation(LengthOf(a, b), "=", LengthOf(c, d))) if {a, b, c, d} <= set(at):
            return abs(math.log(math.dist(at[a], at[b]) / math.dist(at[c], at[d])))
    return None


def _has_parallel_sides(shape: Shape, facts: list[Fact]) -> bool:
    sides = {frozenset(side) for side in zip(shape.points, shape.points[1:] + shape.points[:1], strict=True)}
    return any(
        isinstance(fact, Parallel) and sum(frozenset(path) in sides for path in fact.paths) >= 2 for fact in facts
    )


def _right_corners(shape: Shape) -> list[Fact]:
    right = Measured(Number(Fraction(90)), "°")
    return [Holds(Relation(AngleOf(b, a, c), "=", right)) for a, b, c in _corners(shape)]


def _right_legs(shape: Shape, facts: list[Fact], sketch: Sketch) -> list[Fact]:
    """Which leg of a right trapezium stands upright: the one that a sketch shows so where the other leans clearly."""
    a, b, c, d = shape.points
    across = any(isinstance(fact, Parallel) and {a, d} in [set(path) for path in fact.paths] for fact in facts)
    ends = ((d, a, b), (c, d, a)) if across else ((d, a, b), (a, b, c))
    right = Measured(Number(Fraction(90)), "°")
    choices: list[Fact] = [Holds(Relation(AngleOf(*corner), "=", right)) for corner in ends]
    at = {name: (x, y) for name, x, y in sketch}
    if not set(shape.points) <= set(at):
        return choices
    lean = [abs(_angle_at(at, vertex, arm, other) - 90) for arm, vertex, other in ends]
    if abs(lean[0] - lean[1]) < LEANS:
        return choices
    return [choices[lean.index(min(lean))]]


def _has_equal_sides(shape: Shape, facts: list[Fact]) -> bool:
    for fact in facts:
        if isinstance(fact, Holds) and fact.relation.sign == "=":
            left, right = fact.relation.left, fact.relation.right
            inside = [
                side
                for side in (left, right)
                if isinstance(side, LengthOf) and {side.start, side.end} <= set(shape.points)
            ]
            angles = [
                side for side in (left, right) if isinstance(side, AngleOf | AngleAt) and side.vertex in shape.points
            ]
            if len(inside) == 2 or len(angles) == 2:
                return True
    return False


def _has_right_angle(shape: Shape, facts: list[Fact]) -> bool:
    for fact in facts:
        if isinstance(fact, Perpendicular) and {*fact.first, *fact.second} <= set(shape.points):
            return True
        if isinstance(fact, Holds) and isinstance(fact.relation.left, AngleOf | AngleAt):
            right = fact.relation.right
            if (
                isinstance(right, Measured)
                and right.amount == Number(Fraction(90))
                and fact.relation.left.vertex in shape.points
            ):
                return True
    return False


def combined(outcomes: list[Outcome]) -> Outcome:
    """One outcome from those of every reading: impossible readings drop out, different answers are several."""
    if len(outcomes) == 1:
        return outcomes[0]
    possible = [outcome for outcome in outcomes if not isinstance(outcome, Impossible)]
    if not possible:
        return outcomes[0]
    for kind in (NotRead, NotDetermined):
        for outcome in possible:
            if isinstance(outcome, kind):
                return outcome
    answers: dict[str, Outcome] = {}
    for outcome in possible:
        assert isinstance(outcome, Derived | Several)
        for answer in outcome.answers:
            answers.setdefault(answer.text, outcome)
    if (
        len({tuple(a.text for a in outcome.answers) for outcome in possible if isinstance(outcome, Derived | Several)})
        == 1
    ):
        return possible[0]
    cases = tuple(
        Case(", ".join(answer.text for answer in outcome.answers), outcome.answers, outcome.figure)
        for outcome in possible
        if isinstance(outcome, Derived)
    )
    several = tuple(
        answer for outcome in possible if isinstance(outcome, Derived | Several) for answer in outcome.answers
    )
    derivations = tuple(d for outcome in possible if isinstance(outcome, Derived) for d in outcome.derivations)
    return Several(tuple(dict.fromkeys(several)), cases, derivations)

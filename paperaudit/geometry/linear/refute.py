"""Proves that no figure meets the givens, and names a smallest set of them that clash.

Every arrangement that the words allow (numbers left out) has to be refuted: by a contradiction
among the exact linear equations, or by equations that force an angle out of its range.
"""

from dataclasses import dataclass, replace
from typing import Any

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.explore import arrangements
from paperaudit.geometry.coordinates.realise import Drawing, realise
from paperaudit.geometry.figure.figure import (
    EqualLengths,
    Figure,
    ParallelPair,
    RayBetween,
    RightAngle,
    SizeRelation,
    length,
)
from paperaudit.geometry.figure.loosened import without_numbers
from paperaudit.geometry.linear.theory import Labels, Theory, close
from paperaudit.geometry.theorems import instances
from paperaudit.geometry.theorems.theorem import Instance
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf, LengthOf

SKELETON_SEEDS = range(12)


@dataclass(frozen=True, slots=True)
class Refutation:
    """Givens that cannot hold together in any arrangement, and the arrangement in which this is shown."""

    clash: tuple[int, ...]
    arrangement: Arrangement
    found: tuple[Instance, ...]


def skeletons(figure: Figure) -> list[Arrangement]:
    """The arrangements of a figure with its numbers left out; with less still where that cannot be drawn."""
    for bare in (without_numbers(figure), _incidence_only(figure)):
        drawings = realise(bare, SKELETON_SEEDS)
        if drawings:
            return [Arrangement(figure, one.drawing) for one in arrangements(bare, drawings)]
    at = {name: (x, y) for name, x, y in figure.sketch}
    if set(figure.points) <= set(at):
        return [Arrangement(figure, Drawing(at, dict.fromkeys(figure.letters, 0.0)))]
    return []


def _incidence_only(figure: Figure) -> Figure:
    left_out = SizeRelation | EqualLengths | RightAngle | ParallelPair | RayBetween
    return replace(figure, conditions=tuple(c for c in figure.conditions if not isinstance(c, left_out)))


def refute(figure: Figure) -> Refutation | None:
    """The refutation of the arrangement that takes most givens, if every arrangement has one; None proves nothing.

    Its clash refutes every arrangement, and no part of it does.
    """
    refuted: list[Refutation] = []
    for arrangement in skeletons(figure):
        found = tuple(instances(arrangement))
        clash = clash_of(arrangement, found)
        if not clash or all(label < 0 for label in clash):
            return None
        refuted.append(Refutation(tuple(sorted(clash)), arrangement, found))
    if not refuted:
        return None
    longest = max(refuted, key=lambda one: len(one.clash))
    return replace(longest, clash=_of_all(refuted))


def _of_all(refuted: list[Refutation]) -> tuple[int, ...]:
    """Givens that clash in every arrangement, thinned out where arrangements have different clashes."""
    clash = frozenset(label for one in refuted for label in one.clash)
    if all(frozenset(one.clash) == clash for one in refuted):
        return refuted[0].clash
    context = refuted[0].arrangement.figure.context
    for label in sorted(clash, key=lambda label: (label in context, label)):
        if all(_clashes(one.arrangement, one.found, clash - {label}) for one in refuted):
            clash -= {label}
    return tuple(sorted(clash))


def _clashes(arrangement: Arrangement, found: tuple[Instance, ...], labels: Labels) -> bool:
    """Whether some givens contradict each other in an arrangement."""
    everything = frozenset(condition.label for condition in arrangement.figure.conditions)
    part = close(arrangement, found, everything - labels)
    return part.clash is not None or _out_of_range(part) is not None


def clash_of(arrangement: Arrangement, found: tuple[Instance, ...]) -> Labels | None:
    """An irreducible set of clashing givens of one arrangement, None if the linear theory has a model.

    Statements that only set the figure up are kept while the others are thinned out, so that with
    any member left out the whole figure and the other members can be satisfied.
    """
    theory = close(arrangement, found)
    clash = theory.clash if theory.clash is not None else _out_of_range(theory)
    if clash is None:
        return None
    context = arrangement.figure.context
    for label in sorted(clash - context):
        if _clashes(arrangement, found, (clash - {label}) | context):
            clash = clash - {label}
    clash |= context
    for label in sorted(context):
        if _clashes(arrangement, found, clash - {label}):
            clash -= {label}
    return clash


def _out_of_range(theory: Theory) -> Labels | None:
    """Givens that force some angle of the drawing to 0° or less, or to 180° or more, or a length to 0 or less."""
    ranges = _ranges(theory.arrangement)
    open_ranges = []
    for form in ranges:
        rest, multiples = theory.rows.reduce(form)
        if not rest.is_constant:
            open_ranges.append(form)
        elif rest.constant <= 0:
            return theory.labels_of(multiples)
    return _unsatisfiable(theory, open_ranges) if open_ranges else None


def _ranges(arrangement: Arrangement) -> list[LinearForm[object]]:
    """Forms that are positive in every figure of the arrangement."""
    forms = []
    for size in _bounded(arrangement):
        form = arrangement.directions(LinearForm.of(size))
        forms += [form, LinearForm[object].number(360 if size.reflex else 180) - form]
    for rays in arrangement.rays.values():
        for one, other in zip(rays, rays[1:] + rays[:1], strict=True):
            if one.line != other.line:
                form = arrangement.directions(LinearForm.of(arrangement.between(one, other)))
                clockwise = arrangement.turn(one.vertex, one.points[0], other.points[0]) < 0
                forms.append(LinearForm[object].number(360) - form if clockwise else form)
    lengths = {
        end
        for condition in arrangement.figure.conditions
        if isinstance(condition, EqualLengths)
        for end in (condition.first, condition.second)
    }
    lengths |= {
        key
        for condition in arrangement.figure.conditions
        if isinstance(condition, SizeRelation)
        for key in condition.form.terms
        if isinstance(key, LengthOf)
    }
    for triangle in arrangement.triangles:
        for a, b, c in triangle.turned():
            sides = (length(a, b), length(a, c), length(b, c))
            if all(side in lengths for side in sides):
                forms.append(LinearForm({sides[0]: 1, sides[1]: 1, sides[2]: -1}))
    return forms + [LinearForm.of(key) for key in sorted(lengths, key=lambda key: (key.start, key.end))]


def _bounded(arrangement: Arrangement) -> list[AngleOf]:
    """Angles that keep below 180° in the arrangement: corners of triangles, and those that the givens name."""
    corners = [arrangement.corner(c, a, b) for triangle in arrangement.triangles for a, b, c in triangle.turned()]
    named = [
        arrangement.canonical(size)
        for condition in arrangement.figure.conditions
        if isinstance(condition, SizeRelation)
        for size in condition.form.terms
        if isinstance(size, AngleOf) and not arrangement.is_straight(size)
    ]
    return list(dict.fromkeys(corners + named))


def _unsatisfiable(theory: Theory, positive: list[LinearForm[object]]) -> Labels | None:
    """Asks z3 whether rows and ranges hold together; its core, as givens, if they do not."""
    if not any(form.constant for form in theory.entries):
        return None
    import z3

    names: dict[object, Any] = {}

    def term(form: LinearForm[object]) -> Any:
        total = z3.Q(form.constant.numerator, form.constant.denominator)
        for key, value in form.terms.items():
            variable = names.setdefault(key, z3.Real(f"v{len(names)}"))
            total = total + z3.Q(value.numerator, value.denominator) * variable
        return total

    solver = z3.Solver()
    solver.set("timeout", 2000)
    for form in positive:
        solver.add(term(form) > 0)
    for number, form in enumerate(theory.entries):
        solver.assert_and_track(term(form) == 0, f"row{number}")
    if solver.check() != z3.unsat:
        return None
    return theory.labels_of(int(str(name)[3:]) for name in solver.unsat_core())

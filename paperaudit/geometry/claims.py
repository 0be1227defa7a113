"""Claims about a figure: show that, prove that, is it so? The derivation is the proof."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import combinations

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.build import FigureBuilder
from paperaudit.geometry.clash import impossible_outcome
from paperaudit.geometry.derive import Node
from paperaudit.geometry.examine import Settled, derive_targets, examine, measured_nodes_agree, other_case
from paperaudit.geometry.figure import Figure, SameWay, Size, angle, length
from paperaudit.geometry.find import CONFIRMED, notation_of
from paperaudit.geometry.incidence import Unclear
from paperaudit.geometry.line_writer import LineWriter
from paperaudit.geometry.notation import Notation
from paperaudit.geometry.sizes import linear_form
from paperaudit.geometry.sketch import FROM_SKETCH
from paperaudit.geometry.theorems.theorem import (
    Claimed,
    Instance,
    LinesParallel,
    Predicate,
    SegmentsEqual,
    lines_parallel,
    segments_equal,
)
from paperaudit.geometry.wanted import positions
from paperaudit.geometry.working import Working
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.write import write
from paperaudit.model.ask import Establish
from paperaudit.model.derivation import (
    Answer,
    Case,
    Derivation,
    Derived,
    NotDetermined,
    NotRead,
    Outcome,
    Step,
    StepKind,
)
from paperaudit.model.expression import AngleOf, LengthOf
from paperaudit.model.fact import BisectsAngle, Fact, Given, Holds, Midpoint, Parallel, Perpendicular, Shape
from paperaudit.model.reading import Reading

HOLDS = {"show": "shown", "prove": "proved", "decide": "yes"}
FAILS = {"show": "false", "prove": "false", "decide": "no"}


@dataclass(frozen=True, slots=True)
class Claim:
    """A claim as what the search can reach: a predicate, or a relation of sizes that has to be 0."""

    text: str
    predicate: Predicate | None = None
    form: LinearForm[Size] | None = None


def claim_outcome(reading: Reading, givens: tuple[Given, ...], task: Establish) -> Outcome:
    """Derived with the proof (or with "no", "false" and why), or why it cannot be told."""
    for fact in task.claims:
        if isinstance(fact, Parallel) and set(fact.paths[0]) & set(fact.paths[1]):
            return _meeting(fact, task)
    builder = FigureBuilder(givens, task.claims)
    figure = _named_alike(builder.figure(reading.question.sketch), task)
    notation = notation_of(builder, givens)
    result = examine(figure, [])
    if result.refutation:
        return impossible_outcome(result.refutation, givens, notation, result.otherwise)
    if not result.settled:
        return NotRead("the figure could neither be drawn from its givens nor shown to be impossible")
    outcomes = [_in_arrangement(one, builder, figure, givens, task, notation) for one in result.settled]
    for outcome in outcomes:
        if not isinstance(outcome, Derived):
            return outcome
    if len({outcome.answers for outcome in outcomes if isinstance(outcome, Derived)}) > 1:
        cases = tuple(Case(o.answers[0].text, o.answers, o.figure) for o in outcomes if isinstance(o, Derived))
        return NotDetermined(cases, "which arrangement of the figure is meant")
    return outcomes[0]


def _meeting(claim: Parallel, task: Establish) -> Outcome:
    """Lines that are named with a point in common are not parallel."""
    one, two = ("".join(path) for path in claim.paths[:2])
    common = next(point for point in one if point in two)
    text = f"{one} and {two} meet at {common}, so they are not parallel"
    derivation = Derivation((Step(text, StepKind.CONCLUSION),), "the names of the lines share a point")
    return Derived((Answer(FAILS[task.how] if task.how == "decide" else f"false: {text}"),), (derivation,))


def _named_alike(figure: Figure, task: Establish) -> Figure:
    """The figure with the lines of a claim AB ∥ CD running the same way, as the printed page names them."""
    alike = [
        SameWay(fact.paths[0], other, FROM_SKETCH)
        for fact in task.claims
        if isinstance(fact, Parallel)
        for other in fact.paths[1:]
    ]
    return replace(figure, conditions=(*figure.conditions, *alike))


def _in_arrangement(
    one: Settled, builder: FigureBuilder, figure: Figure, givens: tuple[Given, ...], task: Establish, notation: Notation
) -> Outcome:
    claims = [claim for fact in task.claims for claim in _claims(fact, builder, one.arrangement)]
    working = Working(LineWriter(one.arrangement, notation), givens)
    for number, claim in enumerate(claims):
        truth = _truth(one, claim)
        if truth is None:
            return _undecided(one, claim)
        if not truth:
            return _refused(one, claim, task, givens, notation)
        target = claim.predicate or Claimed(number)
        extra: tuple[Instance, ...] = ()
        if claim.form is not None:
            extra = (Instance("claim", (), one.arrangement.canonical_form(claim.form), target, claim.text, 5),)
        found = derive_targets(one, (target,), extra)
        if found is None or not measured_nodes_agree(found.arrangement, found.nodes):
            return NotRead(
                f"{claim.text} holds in the figure, but no chain of school theorems that proves it was found"
            )
        working.writer, working.words = LineWriter(found.arrangement, notation), found.words
        _write_claim(working, claim, found.nodes)
    used = tuple(givens[label].text for label in sorted(working.used))
    derivation = Derivation(tuple(working.steps), CONFIRMED, used)
    return Derived((Answer(HOLDS[task.how]),), (derivation,), positions(one.arrangement))


def _write_claim(working: Working, claim: Claim, nodes: list[Node]) -> None:
    node = nodes[0]
    if claim.form is None:
        text = working.add(node)
        if not working.steps or working.steps[-1].statement != text:
            working.steps.append(Step(text, StepKind.CONCLUSION, None, (text,), "", ""))
        return
    uses = tuple(working.add(before) for before in node.inputs)
    if uses and working.steps and claim.text == working.steps[-1].statement:
        return
    working.steps.append(Step(claim.text, StepKind.CONCLUSION, None, uses, "", ""))


def _claims(fact: Fact, builder: FigureBuilder, arrangement: Arrangement) -> Iterator[Claim]:
    figure = arrangement.figure
    match fact:
        case Parallel(paths):
            for other in paths[1:]:
                one, two = figure.line_of(*paths[0]), figure.line_of(*other)
                yield Claim(f"{''.join(paths[0])} ∥ {''.join(other)}", lines_parallel(one, two))
        case Perpendicular(first, second):
            yield _perpendicular(first, second, arrangement)
        case BisectsAngle(path, bisected):
            whole = builder.resolved(bisected)
            assert isinstance(whole, AngleOf)
            point = path[1] if path[0] == whole.vertex else path[0]
            halves = (angle(whole.arm, whole.vertex, point), angle(point, whole.vertex, whole.other))
            form: LinearForm[Size] = LinearForm({halves[0]: Fraction(1), halves[1]: Fraction(-1)})
            names = [write(arrangement.name(arrangement.canonical(half))) for half in halves]
            yield Claim(f"{names[0]} = {names[1]}", None, form)
        case Midpoint(point, (start, end)):
            yield Claim(f"{start}{point} = {point}{end}", segments_equal((start, point), (point, end)))
        case Shape("triangle", points, qualities):
            yield from _triangle_claims(points, qualities, arrangement)
        case Holds(relation) if relation.sign == "=":
            left, right = builder.resolved(relation.left), builder.resolved(relation.right)
            text = f"{write(left)} = {write(right)}"
            if isinstance(left, LengthOf) and isinstance(right, LengthOf):
                yield Claim(text, segments_equal((left.start, left.end), (right.start, right.end)))
            else:
                yield Claim(text, None, linear_form(left, builder.unit) - linear_form(right, builder.unit))
        case _:
            raise Unclear(f"a claim of this kind ({type(fact).__name__.lower()}) is not proved yet")


def _perpendicular(first: tuple[str, str], second: tuple[str, str], arrangement: Arrangement) -> Claim:
    one, two = arrangement.figure.line_of(*first), arrangement.figure.line_of(*second)
    vertex = arrangement.meet(one, two)
    if vertex is None:
        raise Unclear("perpendicular lines that do not meet in a named point are not proved yet")
    rays = [next(ray for ray in arrangement.rays[vertex] if ray.line == line) for line in (one, two)]
    form: LinearForm[Size] = LinearForm({arrangement.between(rays[0], rays[1]): Fraction(1)}, Fraction(-90))
    return Claim(f"{''.join(first)} ⊥ {''.join(second)}", None, form)


def _triangle_claims(points: tuple[str, ...], qualities: tuple[str, ...], arrangement: Arrangement) -> Iterator[Claim]:
    a, b, c = points
    pairs = [((x, y), (x, z)) for x, y, z in ((a, b, c), (b, c, a), (c, a, b))]
    if "equilateral" in qualities:
        for one, two in pairs[:2]:
            yield Claim(f"{one[0]}{one[1]} = {two[0]}{two[1]}", segments_equal(one, two))
    elif "isosceles" in qualities:
        gaps = [abs(arrangement.measured(length(*one)) - arrangement.measured(length(*two))) for one, two in pairs]
        one, two = pairs[gaps.index(min(gaps))]
        yield Claim(f"{one[0]}{one[1]} = {two[0]}{two[1]}", segments_equal(one, two))
    elif "right-angled" in qualities:
        corners = [angle(y, x, z) for x, y, z in ((a, b, c), (b, c, a), (c, a, b))]
        corner = min(corners, key=lambda size: abs(arrangement.measured(size) - 90))
        yield Claim(f"{write(corner)} = 90°", None, LinearForm({corner: Fraction(1)}, Fraction(-90)))
    else:
        raise Unclear("this claim about a triangle is not proved yet")


def _truth(one: Settled, claim: Claim) -> bool | None:
    """Whether the linear theory forces the claim or its opposite; None where it leaves it open."""
    theory, arrangement = one.theory, one.arrangement
    if claim.form is not None:
        value = theory.value(claim.form)
        return None if value is None else value == 0
    if isinstance(claim.predicate, LinesParallel):
        first, second = claim.predicate.first, claim.predicate.second
        value = theory.rows.value(arrangement.direction_difference(first, second, False))
        return None if value is None else value == 0
    assert isinstance(claim.predicate, SegmentsEqual)
    if claim.predicate in theory.predicates:
        return True
    gap: LinearForm[Size] = LinearForm({claim.predicate.first: Fraction(1), claim.predicate.second: Fraction(-1)})
    value = theory.value(gap)
    if value is not None:
        return value == 0
    return _opposite_angles_differ(one, claim.predicate)


def _opposite_angles_differ(one: Settled, equal: SegmentsEqual) -> bool | None:
    """False if the sides belong to one triangle whose angles opposite them are known and differ (Euclid I.19)."""
    for triangle in one.arrangement.triangles:
        for a, b, c in triangle.turned():
            if segments_equal((a, b), (a, c)) == equal:
                corners = (one.arrangement.corner(a, b, c), one.arrangement.corner(b, c, a))
                value = one.theory.value(LinearForm({corners[0]: Fraction(1), corners[1]: Fraction(-1)}))
                if value:
                    return False
    return None


def _undecided(one: Settled, claim: Claim) -> Outcome:
    case = Case("one figure that meets the givens", (), positions(one.arrangement))
    if claim.form is not None:
        second = other_case(one.arrangement.figure, one.arrangement, claim.form)
        if second is not None:
            other = Case("another figure that meets them", (), positions(second))
            return NotDetermined((case, other), f"a given from which {claim.text} follows")
    return NotRead(f"the givens were not found to settle whether {claim.text}")


def _refused(one: Settled, claim: Claim, task: Establish, givens: tuple[Given, ...], notation: Notation) -> Outcome:
    """The claim is false: the lines that show what holds in its place."""
    sizes = _telling_sizes(one.arrangement, claim)
    found = derive_targets(one, sizes) if sizes else None
    if not found or not measured_nodes_agree(found.arrangement, found.nodes):
        return NotRead(f"{claim.text} does not hold, but no chain of school theorems that shows it was found")
    working = Working(LineWriter(found.arrangement, notation), givens, found.words)
    texts = [working.add(node) for node in found.nodes]
    working.steps.append(
        Step(f"{' and '.join(texts)}, so {claim.text} does not hold", StepKind.CONCLUSION, None, tuple(texts))
    )
    used = tuple(givens[label].text for label in sorted(working.used))
    derivation = Derivation(tuple(working.steps), CONFIRMED, used)
    answer = FAILS[task.how] if task.how == "decide" else f"false: {', '.join(texts)}"
    return Derived((Answer(answer),), (derivation,), positions(one.arrangement))


def _telling_sizes(arrangement: Arrangement, claim: Claim) -> tuple[Size, ...]:
    if claim.form is not None:
        return tuple(arrangement.canonical_form(claim.form).terms)
    if isinstance(claim.predicate, SegmentsEqual):
        for triangle in arrangement.triangles:
            for a, b, c in triangle.turned():
                if segments_equal((a, b), (a, c)) == claim.predicate:
                    return arrangement.corner(a, b, c), arrangement.corner(b, c, a)
        return ()
    assert isinstance(claim.predicate, LinesParallel)
    return _cut_angles(arrangement, claim.predicate.first, claim.predicate.second)


def _cut_angles(arrangement: Arrangement, first: int, second: int) -> tuple[Size, ...]:
    """Two co-interior angles where some third line cuts two lines."""
    for third in range(len(arrangement.lines)):
        near, far = arrangement.meet(first, third), arrangement.meet(second, third)
        if third in (first, second) or near is None or far is None:
            continue
        for one, two in combinations((*arrangement.rays[near], *arrangement.rays[far]), 2):
            if one.line == first and two.line == second:
                return (
                    arrangement.between(one, arrangement.ray(near, far)),
                    arrangement.between(two, arrangement.ray(far, near)),
                )
    return ()

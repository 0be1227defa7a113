"""Consistency first, then uniqueness, then the derivation: what a figure says about the sizes asked for."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.drawn import FIRST_SEEDS, Concession, drawn
from paperaudit.geometry.coordinates.explore import arrangements
from paperaudit.geometry.coordinates.realise import overlaps, realise
from paperaudit.geometry.figure.figure import Angular, Balance, Figure, Measurable, ParallelPair, Size, SizeRelation
from paperaudit.geometry.figure.loosened import with_loose_directions
from paperaudit.geometry.figure.sketch import FROM_SKETCH, settled_by_sketch
from paperaudit.geometry.linear.constructions import (
    with_arcs,
    with_chords,
    with_crossings,
    with_extensions,
    with_parallels,
    with_radii,
)
from paperaudit.geometry.linear.derive import Node
from paperaudit.geometry.linear.introduce import search
from paperaudit.geometry.linear.refute import Refutation, refute
from paperaudit.geometry.linear.theory import Theory, close
from paperaudit.geometry.theorems import applicable
from paperaudit.geometry.theorems.theorem import Instance, Predicate
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import Expression, Letter, Number

SAME = 1e-6
"""Degrees, or share of a length, within which a measured size agrees with a derived one."""
CLEARLY_OTHER = 0.5
"""Degrees, or units of length, by which two cases of an open size must differ to be shown."""


@dataclass(frozen=True, slots=True)
class Settled:
    """One arrangement with what it derives: a value for every target (None where open).

    `words` say which lines were drawn in, by the points that they join.
    """

    arrangement: Arrangement
    theory: Theory
    found: tuple[Instance, ...]
    values: tuple[Fraction | None, ...]
    words: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Examination:
    """What came out: `settled` by arrangement, or a refutation, or neither (cannot tell).

    `otherwise` says of a refutation that a figure exists if the sketch's arrangement is given up, `concession`
    of drawings what of the sketch, or of the names of parallels, they do not keep.
    """

    settled: tuple[Settled, ...] = ()
    refutation: Refutation | None = None
    otherwise: bool = False
    concession: Concession = ""


def examine(figure: Figure, targets: Sequence[LinearForm[Size]]) -> Examination:
    """Draw the figure from several starts, close the theory of each arrangement, and value the targets.

    Without any drawing, try to prove that there is none. A sketch settles which arrangement is meant.
    """
    result = drawn(figure)
    if not result.drawings:
        merged = _merged(result.figure)
        if merged:
            return examine(merged, targets)
        refutation = _refuted(figure, result.figure)
        otherwise = bool(refutation and figure.sketch and realise(replace(figure, sketch=()), FIRST_SEEDS))
        return Examination(refutation=refutation, otherwise=otherwise)
    settled = []
    for arrangement in arrangements(result.figure, result.drawings, complete=True):
        found = applicable(arrangement)
        plain = _settled(arrangement, found, targets, {})
        joined = with_radii(arrangement) if None in plain.values else None
        further = _settled(joined.arrangement, joined.found, targets, joined.words) if joined else plain
        settled.append(plain if None in further.values else further)
    return Examination(tuple(settled), concession=result.concession)


def _refuted(figure: Figure, loosest: Figure) -> Refutation | None:
    """A proof that the figure is impossible as its sketch shows it, else with the least that was asked of the sketch.

    The sketch leaves one arrangement, whose clash is the shortest.
    """
    sketched = with_loose_directions(settled_by_sketch(figure))
    return refute(sketched) or (refute(loosest) if sketched != loosest else None)


def _settled(
    arrangement: Arrangement,
    found: tuple[Instance, ...],
    targets: Sequence[LinearForm[Size]],
    words: dict[str, str],
) -> Settled:
    theory = close(arrangement, found)
    return Settled(arrangement, theory, found, tuple(theory.value(target) for target in targets), words)


def _merged(figure: Figure) -> Figure | None:
    """The figure with lines joined that fall together in all its drawings; None where none do.

    What the givens force together is one line for the pupil too: a corner of one square on the side
    of another.
    """
    drawings = realise(figure, FIRST_SEEDS, overlapping=True)
    always = set.intersection(*(set(overlaps(figure, drawing)) for drawing in drawings)) if drawings else set()
    if not always:
        return None
    i, j = min(always)
    joined = figure.lines[i] + tuple(point for point in figure.lines[j] if point not in figure.lines[i])
    if _flat(figure, set(joined)):
        return None
    lines = tuple(joined if index == i else line for index, line in enumerate(figure.lines) if index != j)
    return replace(figure, lines=lines)


def _flat(figure: Figure, line: set[str]) -> bool:
    """Whether a line would hold three corners of one polygon, or two lines that are said to be parallel."""
    flattened = any(len(line & set(shape.points)) > 2 for shape, _ in figure.shapes)
    return flattened or any(
        isinstance(condition, ParallelPair) and {*condition.first, *condition.second} <= line
        for condition in figure.conditions
    )


def agrees_with_drawing(arrangement: Arrangement, target: LinearForm[Size], value: Fraction) -> bool:
    """Whether a value is what the drawing measures."""
    measured = measured_form(arrangement, target)
    return abs(measured - float(value)) < SAME * max(1.0, abs(measured))


def measured_form(arrangement: Arrangement, form: LinearForm[Size]) -> float:
    """A form's value in the drawing."""
    return float(form.constant) + sum(float(v) * arrangement.measured(size) for size, v in form.terms.items())


def other_case(arrangement: Arrangement, target: LinearForm[Size]) -> Arrangement | None:
    """A second drawing of the same figure in which an open target measures something clearly else."""
    here = measured_form(arrangement, target)
    figure = arrangement.figure
    angular = all(isinstance(size, Angular) or in_degrees(figure, size) for size in target.terms)
    for aim in _other_values(here, angular):
        pinned = SizeRelation(target - LinearForm.number(aim), "angle" if angular else "length", FROM_SKETCH)
        drawn = _pinned(arrangement, pinned)
        if drawn:
            return drawn
    return None


def other_case_of(arrangement: Arrangement, target: Expression) -> Arrangement | None:
    """The same for a target that is no linear form: an area, a ratio, the sine of an angle."""
    here = arrangement.measured(target)
    for aim in _other_values(here, False):
        drawn = _pinned(arrangement, Balance(target, Number(aim), FROM_SKETCH))
        if drawn:
            return drawn
    return None


def _other_values(here: float, angular: bool) -> Iterator[Fraction]:
    """Values clearly other than the one here, in degrees or as shares of it, further ones first."""
    steps = (
        (20, -20, 10, -10, 5, -5, 2, -2, 1, -1)
        if angular
        else tuple(here * s for s in (0.3, -0.3, 0.1, -0.1, 0.03, -0.03))
    )
    for step in steps:
        aim = Fraction(round((here + step) * 2), 2) if angular else Fraction(here + step).limit_denominator(10)
        if not angular and abs(float(aim) - here) < 0.5 * abs(step):
            aim = Fraction(here + step).limit_denominator(1000)
        if abs(float(aim) - here) >= CLEARLY_OTHER * (1 if angular else 1e-3):
            yield aim


def _pinned(arrangement: Arrangement, condition: SizeRelation | Balance) -> Arrangement | None:
    figure = arrangement.figure
    with_pin = replace(figure, conditions=(*figure.conditions, condition))
    drawings = realise(with_pin, FIRST_SEEDS, (arrangement.drawing,))
    return Arrangement(figure, drawings[0]) if drawings else None


@dataclass(frozen=True, slots=True)
class Reached:
    """The nodes of all targets, in the arrangement in which they were reached, with what was drawn in for them."""

    nodes: list[Node]
    arrangement: Arrangement
    words: dict[str, str]


def in_degrees(figure: Figure, size: Size) -> bool:
    """Whether a letter of the paper stands in relations of angles, so that its value is in degrees."""
    return isinstance(size, Letter) and any(
        isinstance(condition, SizeRelation) and condition.kind == "angle" and size in condition.form.terms
        for condition in figure.conditions
    )


def derive_targets(
    settled: Settled, targets: Sequence[Size | Predicate], extra: tuple[Instance, ...] = ()
) -> Reached | None:
    """The targets' derivations, with lines drawn in where the figure alone does not do; None if one is missed."""
    plain = settled.arrangement
    found = _search(plain, settled.found + extra, targets)
    if found:
        shorter = _with_radii_drawn(settled, targets, extra, found) if plain.rounds else None
        return shorter or Reached(found, plain, settled.words)
    for construct in (with_radii, with_chords, with_arcs, with_crossings, with_parallels, with_extensions):
        extended = construct(plain)
        nodes = extended and _search(extended.arrangement, extended.found + extra, targets)
        if extended and nodes:
            return Reached(nodes, extended.arrangement, {**settled.words, **extended.words})
    return None


def _with_radii_drawn(
    settled: Settled, targets: Sequence[Size | Predicate], extra: tuple[Instance, ...], plain: list[Node]
) -> Reached | None:
    """The derivation with radii drawn in, where the plain one calls a size by a letter and is no shorter."""
    if not any(node.kind == "let" for node in behind(plain)):
        return None
    drawn = with_radii(settled.arrangement)
    nodes = drawn and _search(drawn.arrangement, drawn.found + extra, targets)
    if drawn and nodes and sum(node.cost for node in nodes) < sum(node.cost for node in plain):
        return Reached(nodes, drawn.arrangement, {**settled.words, **drawn.words})
    return None


def behind(nodes: Sequence[Node]) -> list[Node]:
    """Some nodes and all that they rest on, each once."""
    seen: dict[int, Node] = {}
    pending = list(nodes)
    while pending:
        node = pending.pop()
        if id(node) not in seen:
            seen[id(node)] = node
            pending.extend(node.inputs)
    return list(seen.values())


def _search(
    arrangement: Arrangement, found: tuple[Instance, ...], targets: Sequence[Size | Predicate]
) -> list[Node] | None:
    wanted = tuple(target if isinstance(target, Predicate) else arrangement.known_as(target) for target in targets)
    result = search(found, wanted, arrangement.figure.letters)
    nodes = [node for target in wanted if (node := result.reached(target))]
    return nodes if len(nodes) == len(wanted) else None


def measured_nodes_agree(arrangement: Arrangement, nodes: Sequence[Node]) -> bool:
    """Whether every size behind some nodes measures on the drawing what the line says."""
    every = behind(nodes)
    introduced = {
        letter: arrangement.measured(node.subject) / float(multiple)
        for node in every
        if node.kind == "let" and isinstance(node.subject, Measurable)
        for letter, multiple in node.form.terms.items()
    }
    return all(_line_agrees(arrangement, node, introduced) for node in every)


def _line_agrees(arrangement: Arrangement, node: Node, introduced: dict[Letter, float]) -> bool:
    values = {
        **{letter: arrangement.drawing.letters.get(letter.name, 0.0) for letter in node.form.terms},
        **{letter: value for letter, value in introduced.items() if letter in node.form.terms},
    }
    said = float(node.form.constant) + sum(float(v) * values[letter] for letter, v in node.form.terms.items())
    if node.kind == "equation":
        return abs(said) < 1e-5
    if isinstance(node.subject, Letter):
        real = introduced.get(node.subject, arrangement.drawing.letters.get(node.subject.name, said))
    elif node.kind == "predicate" or node.subject is None:
        return True
    else:
        real = arrangement.measured(node.subject)  # type: ignore[arg-type]
    return abs(said - real) < 1e-5 * max(1.0, abs(real))

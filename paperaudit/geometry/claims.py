"""Claims about a figure: show that, prove that, is it so? The derivation is the proof."""

from dataclasses import replace
from itertools import pairwise

from paperaudit.geometry.build import FigureBuilder
from paperaudit.geometry.claim_cases import Truth, gaps, samples, truth
from paperaudit.geometry.claim_forms import claims_of
from paperaudit.geometry.claim_proofs import Proof
from paperaudit.geometry.clash import impossible_outcome
from paperaudit.geometry.examine import Settled, examine
from paperaudit.geometry.false_claims import Refusal
from paperaudit.geometry.figure import Figure, SameWay
from paperaudit.geometry.find import notation_of
from paperaudit.geometry.line_writer import LineWriter
from paperaudit.geometry.notation import Notation
from paperaudit.geometry.sketch import FROM_SKETCH
from paperaudit.geometry.wanted import positions
from paperaudit.geometry.working import CONFIRMED, Working
from paperaudit.model.ask import Establish
from paperaudit.model.derivation import Answer, Derivation, Derived, NotRead, Outcome, Step, StepKind
from paperaudit.model.fact import Collinear, Drawn, Fact, Given, Midpoint, Parallel
from paperaudit.model.reading import Reading

HOLDS = {"show": "shown", "prove": "proved", "decide": "yes"}


def claim_outcome(reading: Reading, givens: tuple[Given, ...], task: Establish) -> Outcome:
    """Derived with the proof (or with "no", "false" and why), or why it cannot be told.

    A claim that fails in a figure drawn from the givens is never proved; one that holds in every
    figure drawn is proved only by a chain of theorems.
    """
    for fact in task.claims:
        if isinstance(fact, Parallel) and set(fact.paths[0]) & set(fact.paths[1]):
            return _meeting(fact, task)
    known = FigureBuilder(givens).lines
    builder = FigureBuilder(givens, [drawn for fact in task.claims for drawn in _to_draw(fact, known)])
    figure = _named_alike(builder.figure(reading.question.sketch), task)
    notation = notation_of(builder, givens)
    result = examine(figure, [])
    if result.refutation:
        return impossible_outcome(result.refutation, givens, notation, result.otherwise)
    if not result.settled:
        return NotRead("the figure could neither be drawn from its givens nor shown to be impossible")
    drawn = samples(figure, [one.arrangement for one in result.settled])
    for fact in task.claims:
        off = gaps(fact, builder, drawn)
        found = truth(off)
        if found is not Truth.HOLDS:
            refusal = Refusal(fact, builder, givens, task, notation, reading.question.sketch, result.settled)
            return refusal.outcome(found, drawn, off)
    return _proved(result.settled, builder, givens, task, notation)


def _proved(
    settled: tuple[Settled, ...], builder: FigureBuilder, givens: tuple[Given, ...], task: Establish, notation: Notation
) -> Outcome:
    """The proof in every arrangement; the first one's is shown."""
    outcomes = []
    for one in settled:
        working = Working(LineWriter(one.arrangement, notation), givens)
        proof = Proof(one, notation, working)
        for fact in task.claims:
            for claim in claims_of(fact, builder, one.arrangement):
                if not proof.add(claim):
                    return NotRead(
                        f"{claim.text} holds in the figure, but no chain of school theorems that proves it was found"
                    )
        used = tuple(givens[label].text for label in sorted(working.used))
        derivation = Derivation(tuple(working.steps), CONFIRMED, used)
        outcomes.append(Derived((Answer(HOLDS[task.how]),), (derivation,), positions(one.arrangement)))
    return outcomes[0]


def _to_draw(fact: Fact, known: tuple[tuple[str, ...], ...]) -> list[Fact]:
    """What a claim puts into the figure: its segments, but not that points lie on one line unless that is known."""
    match fact:
        case Collinear(points):
            run: tuple[str, ...] = points
        case Midpoint(point, (start, end)):
            run = (start, point, end)
        case _:
            return [fact]
    if any(set(run) <= set(line) for line in known):
        return []
    return [Drawn("segment", pair) for pair in pairwise(run)]


def _meeting(claim: Parallel, task: Establish) -> Outcome:
    """Lines that are named with a point in common are not parallel."""
    one, two = ("".join(path) for path in claim.paths[:2])
    common = next(point for point in one if point in two)
    text = f"{one} and {two} meet at {common}, so they are not parallel"
    derivation = Derivation((Step(text, StepKind.CONCLUSION),), "the names of the lines share a point")
    return Derived((Answer("no" if task.how == "decide" else f"false: {text}"),), (derivation,))


def _named_alike(figure: Figure, task: Establish) -> Figure:
    """The figure with the lines of a claim AB ∥ CD running the same way, as the printed page names them."""
    alike = [
        SameWay(fact.paths[0], other, FROM_SKETCH)
        for fact in task.claims
        if isinstance(fact, Parallel)
        for other in fact.paths[1:]
    ]
    return replace(figure, conditions=(*figure.conditions, *alike))

"""Claims about a figure: show that, prove that, is it so? The derivation is the proof."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise, permutations

from paperaudit.geometry.claims.circle_claims import with_claimed_circle
from paperaudit.geometry.claims.claim_cases import Truth, gaps, more_samples, samples, truth
from paperaudit.geometry.claims.claim_forms import claims_of
from paperaudit.geometry.claims.claim_proofs import Proof
from paperaudit.geometry.claims.false_claims import Refusal
from paperaudit.geometry.claims.rounded_claims import rounded_claim_outcome
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import Figure, SameWay
from paperaudit.geometry.figure.notation import Notation, notation_of
from paperaudit.geometry.figure.sketch import FROM_SKETCH
from paperaudit.geometry.figure.wanted import positions
from paperaudit.geometry.linear.clash import impossible_outcome
from paperaudit.geometry.linear.examine import Settled, examine
from paperaudit.geometry.linear.line_writer import LineWriter
from paperaudit.geometry.linear.working import CONFIRMED, Working
from paperaudit.model.ask import Establish
from paperaudit.model.derivation import (
    Answer,
    Case,
    Derivation,
    Derived,
    Impossible,
    NotDetermined,
    NotRead,
    Outcome,
    Step,
    StepKind,
)
from paperaudit.model.fact import Collinear, Congruent, Diameter, Drawn, Fact, Given, Midpoint, Parallel, Similar
from paperaudit.model.reading import Reading

HOLDS = {"show": "shown", "prove": "proved", "decide": "yes"}


def claim_outcome(reading: Reading, givens: tuple[Given, ...], task: Establish) -> Outcome:
    """Derived with the proof (or with "no", "false" and why), or why it cannot be told.

    A claim that fails in a figure drawn from the givens is never proved; one that holds in every
    figure drawn is proved only by a chain of theorems.
    """
    givens, about = with_claimed_circle(givens, task.claims)
    task = replace(task, claims=about)
    known = FigureBuilder(givens).lines
    for fact in task.claims:
        common = _common_point(fact, known) if isinstance(fact, Parallel) else None
        if isinstance(fact, Parallel) and common:
            return _meeting(fact, task, common)
    builder = FigureBuilder(givens, [drawn for fact in task.claims for drawn in _to_draw(fact, known)])
    figure = _named_alike(builder.figure(reading.sketch), task)
    notation = notation_of(builder.unit, givens)
    result = examine(figure, [])
    if result.refutation:
        # Lines that are drawn for the claim alone may fall together (points to be shown to be in line):
        # that is no fault of the givens.
        builder = FigureBuilder(givens)
        figure = _named_alike(builder.figure(reading.sketch), task)
        plain = examine(figure, [])
        if not plain.settled:
            found = plain if plain.refutation else result
            assert found.refutation is not None
            return impossible_outcome(found.refutation, givens, notation, found.otherwise)
        result = plain
    if not result.settled:
        return NotRead("the figure could neither be drawn from its givens nor shown to be impossible")
    drawn = samples(figure, [one.arrangement for one in result.settled])
    text = reading.ask.text if reading.ask is not None else ""
    task = replace(task, claims=tuple(_in_order(fact, text, builder, drawn[0]) for fact in task.claims))
    refusals = [Refusal(fact, builder, givens, task, notation, reading.sketch, result.settled) for fact in task.claims]
    refused = _refused(refusals, drawn)
    if refused:
        accuracy = reading.ask.accuracy if reading.ask is not None else None
        said = HOLDS[task.how]
        return rounded_claim_outcome(result.settled, builder, givens, task, accuracy, notation, said) or refused
    outcome = _proved(result.settled, builder, givens, task, notation)
    if isinstance(outcome, NotRead):
        more = [one for settled in result.settled for one in more_samples(settled.arrangement.figure)]
        more += [one for refusal in refusals for one in refusal.pulled_apart()]
        return _refused(refusals, [*drawn, *more]) or outcome
    return outcome


def combined_claims(outcomes: Sequence[Outcome]) -> Outcome:
    """One outcome from those of every reading of the givens: where they differ, it is open which one is meant."""
    possible = [outcome for outcome in outcomes if not isinstance(outcome, Impossible)]
    if not possible:
        return outcomes[0]
    for kind in (NotRead, NotDetermined):
        for outcome in possible:
            if isinstance(outcome, kind):
                return outcome
    derived = [outcome for outcome in possible if isinstance(outcome, Derived)]
    verdicts = {outcome.answers[0].text.split(":")[0]: outcome for outcome in reversed(derived)}
    if len(verdicts) == 1:
        return derived[0]
    cases = tuple(Case(outcome.answers[0].text, outcome.answers, outcome.figure) for outcome in verdicts.values())
    return NotDetermined(cases, "which sides, or which corner, the name of the figure means")


def _refused(refusals: Sequence[Refusal], drawn: Sequence[Arrangement]) -> Outcome | None:
    """What is to be said of the first claim that fails in one of the drawings."""
    for refusal in refusals:
        off = gaps(refusal.fact, refusal.builder, drawn)
        found = truth(off, any(one.figure.rounded for one in drawn))
        if found is not Truth.HOLDS:
            return refusal.outcome(found, drawn, off)
    return None


def _in_order(fact: Fact, text: str, builder: FigureBuilder, drawn: Arrangement) -> Fact:
    """Two triangles that are said to be congruent or similar without a sign, corners in the order that fits best."""
    if not isinstance(fact, Congruent | Similar) or len(fact.first) != 3 or any(sign in text for sign in "≡∼≅~|"):
        return fact
    if " and " not in text:
        return fact
    kind = type(fact)
    orders = [kind(fact.first, (a, b, c)) for a, b, c in permutations(fact.second)]
    return min(orders, key=lambda one: gaps(one, builder, [drawn])[0])


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
        case Diameter(path):
            run = path
        case _:
            return [fact]
    if any(set(run) <= set(line) for line in known):
        return []
    return [Drawn("segment", pair) for pair in pairwise(run)]


def _common_point(claim: Parallel, known: tuple[tuple[str, ...], ...]) -> str | None:
    """A point in which two lines meet that are said to be parallel: in both names, or on both lines of the figure."""
    lines = [next((line for line in known if set(path) <= set(line)), path) for path in claim.paths[:2]]
    if set(lines[0]) == set(lines[1]):
        return None
    return next((point for point in lines[0] if point in lines[1]), None)


def _meeting(claim: Parallel, task: Establish, common: str) -> Outcome:
    """Lines with a named point in common are not parallel."""
    one, two = ("".join(path) for path in claim.paths[:2])
    text = f"{one} and {two} meet at {common}, so they are not parallel"
    derivation = Derivation((Step(text, StepKind.CONCLUSION),), "the lines share a point of the figure")
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
